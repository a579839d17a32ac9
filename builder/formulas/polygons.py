"""
Areas and distances on plan, in metres: polygons given by their corners in order, without repeating
the first.

Pure arithmetic in + - * / and square roots, so that the check in a browser finds the same to the
last digit.
"""

from collections.abc import Sequence
from math import sqrt

from builder.formulas.cite import cites
from builder.formulas.sources import CRC_TABLES

Point = tuple[float, float]
Side = tuple[Point, Point]
Box = tuple[float, float, float, float]
"""Left, right, front and back of an upright rectangle."""


@cites(
    CRC_TABLES,
    "plane analytic geometry, polygons",
    equation="sides = consecutive corners, last to first",
)
def sides_of(corners: Sequence[Point]) -> list[Side]:
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
    return [(corner, corners[(index + 1) % len(corners)]) for index, corner in enumerate(corners)]


@cites(
    CRC_TABLES,
    "plane analytic geometry, area of a polygon",
    equation="2 A = sum(x_i y_i+1 - x_i+1 y_i)",
)
def twice_area_m2(corners: Sequence[Point]) -> float:
    """
    Twice the area of a polygon, with its sign.

    Parameters
    ----------
    corners
        Corners in order, either way round. [m]

    Returns
    -------
    float
        Twice the area; below zero where the corners go round clockwise. [m²]
    """
    total_m2 = 0.0
    for one, two in sides_of(corners):
        total_m2 += one[0] * two[1] - two[0] * one[1]
    return total_m2


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
    sides = sides_of(corners)
    for first in range(len(sides)):
        for second in range(first + 1, len(sides)):
            if sides_cross(sides[first], sides[second]):
                raise ValueError(
                    "corners must go round without crossing, got a crossing of the sides from"
                    f" corners {first + 1} and {second + 1}"
                )
    return abs(twice_area_m2(corners)) / 2


@cites(
    CRC_TABLES,
    "plane analytic geometry, rectangular coordinates",
    equation="min(x), max(x), min(y), max(y)",
)
def box_around(corners: Sequence[Point]) -> Box:
    """
    The smallest upright rectangle around a polygon.

    Parameters
    ----------
    corners
        Corners in order, at least one. [m]

    Returns
    -------
    tuple of four floats
        The least and the most across, then in depth. [m]
    """
    across_m = [corner[0] for corner in corners]
    depth_m = [corner[1] for corner in corners]
    return (min(across_m), max(across_m), min(depth_m), max(depth_m))


@cites(
    CRC_TABLES,
    "plane analytic geometry, rectangular coordinates",
    equation="w = max(x) - min(x), d = max(y) - min(y)",
)
def extent_m(corners: Sequence[Point]) -> Point:
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
    if len(corners) == 0:
        raise ValueError("corners must be at least one, got none")
    left_m, right_m, front_m, back_m = box_around(corners)
    return (right_m - left_m, back_m - front_m)


@cites(
    CRC_TABLES,
    "plane analytic geometry, orientation of three points",
    equation="cross product signs differ on both sides",
)
def sides_cross(one: Side, other: Side) -> bool:
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
    first = _turn(one[0], one[1], other[0])
    second = _turn(one[0], one[1], other[1])
    third = _turn(other[0], other[1], one[0])
    fourth = _turn(other[0], other[1], one[1])
    return first * second < 0 and third * fourth < 0


def _turn(a: Point, b: Point, c: Point) -> float:
    """Above zero where the way from a over b to c turns left."""
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
    across_m, depth_m = point
    for one, two in sides_of(corners):
        if (one[1] > depth_m) != (two[1] > depth_m):
            part = (depth_m - one[1]) / (two[1] - one[1])
            if across_m < one[0] + part * (two[0] - one[0]):
                inside = not inside
    return inside


@cites(
    CRC_TABLES,
    "plane analytic geometry, distance from a point to a line",
    equation="foot at t = (p - a).(b - a) / |b - a|^2, kept within 0 to 1",
)
def distance_to_side_m(point: Point, side: Side) -> float:
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
    start, end = side
    across_m = end[0] - start[0]
    depth_m = end[1] - start[1]
    length_m2 = across_m * across_m + depth_m * depth_m
    part = 0.0
    if length_m2 > 0:
        along_m2 = (point[0] - start[0]) * across_m + (point[1] - start[1]) * depth_m
        part = max(0.0, min(1.0, along_m2 / length_m2))
    off_across_m = start[0] + part * across_m - point[0]
    off_depth_m = start[1] + part * depth_m - point[1]
    return sqrt(off_across_m * off_across_m + off_depth_m * off_depth_m)


@cites(
    CRC_TABLES,
    "plane analytic geometry, points at a distance from a segment, from memory",
    equation="ends -/+ w u, each -/+ w n, u along and n athwart",
)
def strip_around(first: Point, last: Point, half_m: float) -> list[Point]:
    """
    The corners of the strip about a segment, or of a square about a point.

    Parameters
    ----------
    first, last
        The ends of the segment; the same for a point. [m]
    half_m
        How far the strip reaches to each side and beyond each end. [m]

    Returns
    -------
    list
        Its four corners in order. [m]
    """
    across_m, depth_m = last[0] - first[0], last[1] - first[1]
    length_m = sqrt(across_m * across_m + depth_m * depth_m)
    if length_m == 0:
        along = (half_m, 0.0)
    else:
        along = (half_m * across_m / length_m, half_m * depth_m / length_m)
    athwart = (-along[1], along[0])
    return [
        (first[0] - along[0] - athwart[0], first[1] - along[1] - athwart[1]),
        (last[0] + along[0] - athwart[0], last[1] + along[1] - athwart[1]),
        (last[0] + along[0] + athwart[0], last[1] + along[1] + athwart[1]),
        (first[0] - along[0] + athwart[0], first[1] - along[1] + athwart[1]),
    ]


@cites(
    CRC_TABLES,
    "plane analytic geometry, the side of a line that a point is on, from memory",
    equation="corners with way (x - limit) >= 0, and where a side meets the line",
)
def cut_off(corners: Sequence[Point], axis: int, limit_m: float, way: float) -> list[Point]:
    """
    The part of a polygon on one side of an upright line.

    Parameters
    ----------
    corners
        Corners in order. [m]
    axis
        0 for a limit across, 1 for one in depth. [-]
    limit_m
        Where the line is. [m]
    way
        1 keeps what lies beyond the limit, -1 what lies before it. [-]

    Returns
    -------
    list of points
        Corners of what is left, none where nothing is. [m]
    """
    kept: list[Point] = []
    for one, two in sides_of(corners):
        first_m = (one[axis] - limit_m) * way
        second_m = (two[axis] - limit_m) * way
        if first_m >= 0:
            kept.append(one)
        if (first_m >= 0) != (second_m >= 0):
            part = first_m / (first_m - second_m)
            kept.append((one[0] + part * (two[0] - one[0]), one[1] + part * (two[1] - one[1])))
    return kept
