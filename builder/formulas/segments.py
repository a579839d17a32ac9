"""Where a straight thing such as a beam lies over an area, seen from above, in metres."""

from collections.abc import Sequence
from itertools import pairwise

from builder.formulas.cite import cites
from builder.formulas.polygons import contains, sides_of
from builder.formulas.sources import CRC_TABLES

Point = tuple[float, float]
Segment = tuple[Point, Point]


@cites(
    CRC_TABLES,
    "plane analytic geometry, intersection of two lines",
    equation="p + t (q - p) meets a side where t = (a - p) x (b - a) / (q - p) x (b - a)",
)
def parts_inside(corners: Sequence[Point], segment: Segment) -> list[tuple[float, float]]:
    """
    The parts of a segment that lie inside a polygon.

    Parameters
    ----------
    corners
        Corners in order. [m]
    segment
        The two ends of the segment. [m]

    Returns
    -------
    list of pairs of float
        Where each part begins and ends, as shares of the segment from its first end, rising.
    """
    (px, py), (qx, qy) = segment
    shares = {0.0, 1.0}
    for (ax, ay), (bx, by) in sides_of(corners):
        across = (qx - px) * (by - ay) - (qy - py) * (bx - ax)
        if across != 0:
            share = ((ax - px) * (by - ay) - (ay - py) * (bx - ax)) / across
            shares.add(min(max(share, 0.0), 1.0))
    parts: list[tuple[float, float]] = []
    for begin, end in pairwise(sorted(shares)):
        middle = (begin + end) / 2
        if contains(corners, (px + middle * (qx - px), py + middle * (qy - py))):
            if parts and parts[-1][1] == begin:
                begin = parts.pop()[0]
            parts.append((begin, end))
    return parts
