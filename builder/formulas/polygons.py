"""
Areas and distances on plan, in metres: polygons given by their corners in order, without repeating
the first.
"""

import math
from collections.abc import Sequence
from itertools import combinations

from builder.formulas.cite import cites
from builder.formulas.sources import CRC_TABLES

Point = tuple[float, float]
Segment = tuple[Point, Point]


@cites(
    CRC_TABLES,
    "plane analytic geometry, area of a polygon",
    equation="A = |sum(x_i y_i+1 - x_i+1 y_i)| / 2",
)
def polygon_area_m2(corners: Sequence[Point]) -> float:
    """
    Area of a polygon.

    Parameters
    ----------
    corners
        Corners in order, either way round. [m]

    Returns
    -------
    float
        Area. [m²]

    Raises
    ------
    ValueError
        If there are fewer than three corners, or two sides cross.
    """
    if len(corners) < 3:
        raise ValueError(f"corners must be at least three, got {len(corners)}")
    for one, other in combinations(sides_of(corners), 2):
        if sides_cross(one, other):
            raise ValueError(
                f"corners must go round without crossing, got a crossing of {one} and {other}"
            )
    return abs(math.fsum(a[0] * b[1] - b[0] * a[1] for a, b in sides_of(corners))) / 2


@cites(
    CRC_TABLES,
    "plane analytic geometry, rectangular coordinates",
    equation="w = max(x) - min(x), d = max(y) - min(y)",
)
def extent_m(corners: Sequence[Point]) -> tuple[float, float]:
    """
    How wide and how deep the smallest upright rectangle around a polygon is.

    Parameters
    ----------
    corners
        Corners in order. [m]

    Returns
    -------
    pair of floats
        Width across and depth. [m]

    Raises
    ------
    ValueError
        If there are no corners.

    Notes
    -----
    A polygon that is no upright rectangle itself has less room than that.
    """
    if not corners:
        raise ValueError("corners must be at least one, got none")
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    return max(xs) - min(xs), max(ys) - min(ys)


@cites(
    CRC_TABLES,
    "plane analytic geometry, polygons",
    equation="sides = consecutive corners, last to first",
)
def sides_of(corners: Sequence[Point]) -> list[Segment]:
    """
    Sides of a polygon.

    Parameters
    ----------
    corners
        Corners in order. [m]

    Returns
    -------
    list of pairs of points
        One side for each corner. [m]
    """
    return list(zip(corners, [*corners[1:], corners[0]], strict=True))


@cites(
    CRC_TABLES,
    "plane analytic geometry, orientation of three points",
    equation="cross product signs differ on both sides",
)
def sides_cross(one: Segment, other: Segment) -> bool:
    """
    Whether two segments cross in a point inside both. Touching is not crossing.

    Parameters
    ----------
    one, other
        End points. [m]

    Returns
    -------
    bool
        True where they cross.
    """
    first, second = _turn(*one, other[0]), _turn(*one, other[1])
    third, fourth = _turn(*other, one[0]), _turn(*other, one[1])
    return first * second < 0 and third * fourth < 0


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


@cites(
    CRC_TABLES,
    "plane analytic geometry, a ray crosses the border an odd number of times",
    equation="inside where the count is odd",
)
def contains(corners: Sequence[Point], point: Point) -> bool:
    """
    Whether a point is inside a polygon. On the border either answer may come.

    Parameters
    ----------
    corners
        Corners in order. [m]
    point
        The point. [m]

    Returns
    -------
    bool
        True where it is inside.
    """
    inside = False
    for (x1, y1), (x2, y2) in sides_of(corners):
        if (y1 > point[1]) != (y2 > point[1]) and point[0] < x1 + (point[1] - y1) / (y2 - y1) * (
            x2 - x1
        ):
            inside = not inside
    return inside


@cites(
    CRC_TABLES,
    "plane analytic geometry, distance from a point to a line",
    equation="foot at t = (p - a).(b - a) / |b - a|^2, kept within 0 to 1",
)
def distance_to_side_m(point: Point, side: Segment) -> float:
    """
    Distance from a point to the nearest point of a segment.

    Parameters
    ----------
    point, side
        The point, and the ends of the segment. [m]

    Returns
    -------
    float
        Distance. [m]
    """
    (ax, ay), (bx, by) = side
    length_squared = (bx - ax) ** 2 + (by - ay) ** 2
    along = (
        0.0
        if length_squared == 0
        else ((point[0] - ax) * (bx - ax) + (point[1] - ay) * (by - ay)) / length_squared
    )
    way = min(1.0, max(0.0, along))
    return math.hypot(point[0] - ax - way * (bx - ax), point[1] - ay - way * (by - ay))
