"""
Rectangles on a plan against outlines and each other, turned or not.

A rectangle is its centre, its sizes and its turn; lengths in metres. Where a tolerance is given, a
rectangle counts as so much smaller at each side. Pure arithmetic in + - * / and square roots, the
turn included, so that the check in a browser finds the same to the last digit.
"""

from collections.abc import Sequence
from math import floor, sqrt
from typing import Literal, TypedDict

from builder.formulas.cite import cites
from builder.formulas.polygons import (
    Box,
    Point,
    Side,
    box_around,
    contains,
    cut_off,
    distance_to_side_m,
    sides_of,
    twice_area_m2,
)
from builder.formulas.sources import ABRAMOWITZ_STEGUN, CRC_TABLES

ROUNDING_M = 0.000000001
"""What the arithmetic itself may cost."""
DEGREE = 0.017453292519943295
FAR_M = 1000000.0
"""Farther than anything on a stage."""

StageSide = Literal["stage left", "stage right", "upstage", "downstage"]


class Rectangle(TypedDict):
    """A rectangle about its centre, with cosine and sine of its turn. [m], [-]"""

    x: float
    y: float
    width: float
    depth: float
    cos: float
    sin: float


class Over(TypedDict):
    """How far something reaches over an edge, and to which side of the stage. [m]"""

    side: StageSide
    over_m: float


def rectangle(
    across_m: float, upstage_m: float, *, width_m: float, depth_m: float, turned_deg: float = 0.0
) -> Rectangle:
    """A rectangle about its centre, turned anticlockwise as seen from above."""
    cosine, sine = turn(turned_deg)
    return {
        "x": across_m,
        "y": upstage_m,
        "width": width_m,
        "depth": depth_m,
        "cos": cosine,
        "sin": sine,
    }


@cites(
    ABRAMOWITZ_STEGUN,
    "4.3.65 and 4.3.66, series of sine and cosine, from memory",
    equation="cos z = 1 - z^2/2! + ..., sin z = z - z^3/3! + ..., |z| <= pi/4",
)
def turn(turned_deg: float) -> Point:
    """
    Cosine and sine by whole quarters and a series, so that two languages find the same to the last
    digit; a quarter is exact.

    Parameters
    ----------
    turned_deg
        The angle. [degrees]

    Returns
    -------
    pair of floats
        Cosine and sine. [-]
    """
    quarter = floor(turned_deg / 90 + 0.5)
    angle = (turned_deg - 90 * quarter) * DEGREE
    cosine = 0.0
    sine = 0.0
    term = 1.0
    for half in range(10):
        power = 2 * half
        cosine += term
        sine += term * angle / (power + 1)
        term = -term * angle * angle / ((power + 1) * (power + 2))
    rest = quarter - 4 * (quarter // 4)
    if rest == 0:
        return (cosine, sine)
    if rest == 1:
        return (-sine, cosine)
    return (-cosine, -sine) if rest == 2 else (sine, -cosine)


def moved(rect: Rectangle, across_m: float, upstage_m: float) -> Rectangle:
    """The same rectangle somewhere else."""
    return {**rect, "x": rect["x"] + across_m, "y": rect["y"] + upstage_m}


def quarter_turned(rect: Rectangle) -> Rectangle:
    """The same rectangle, turned by a quarter about its centre."""
    return {**rect, "cos": -rect["sin"], "sin": rect["cos"]}


def corners_of(rect: Rectangle) -> list[Point]:
    """The four corners, in order around it."""
    corners: list[Point] = []
    for across, upstage in ((-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5)):
        wide_m = across * rect["width"]
        deep_m = upstage * rect["depth"]
        x_m = rect["x"] + wide_m * rect["cos"] - deep_m * rect["sin"]
        y_m = rect["y"] + wide_m * rect["sin"] + deep_m * rect["cos"]
        corners.append((x_m, y_m))
    return corners


def seen_from(rect: Rectangle, corners: Sequence[Point]) -> list[Point]:
    """An outline as the rectangle sees it: from its centre, along its own width and depth."""
    seen: list[Point] = []
    for corner in corners:
        across_m = corner[0] - rect["x"]
        upstage_m = corner[1] - rect["y"]
        along_m = across_m * rect["cos"] + upstage_m * rect["sin"]
        seen.append((along_m, upstage_m * rect["cos"] - across_m * rect["sin"]))
    return seen


def own_box(rect: Rectangle) -> Box:
    """The rectangle in its own frame."""
    return (-rect["width"] / 2, rect["width"] / 2, -rect["depth"] / 2, rect["depth"] / 2)


def inner_box(rect: Rectangle, tolerance_m: float) -> Box:
    """The same less the tolerance; what is hardly larger than that keeps its middle half."""
    less_m = tolerance_m + ROUNDING_M
    across_m = rect["width"] / 2 - min(less_m, rect["width"] / 4)
    depth_m = rect["depth"] / 2 - min(less_m, rect["depth"] / 4)
    return (-across_m, across_m, -depth_m, depth_m)


@cites(
    CRC_TABLES,
    "plane analytic geometry, a segment in its parameter, clipped along each axis, from memory",
    equation="low < start + t step < high on both axes for some 0 < t < 1",
)
def passes_through(box: Box, side: Side) -> bool:
    """
    Whether a side passes through the inside of a box. A corner written twice makes no side.

    Parameters
    ----------
    box
        An upright rectangle. [m]
    side
        The ends of the side. [m]

    Returns
    -------
    bool
        True where some of the side lies inside.
    """
    first = 0.0
    last = 1.0
    still = True
    for axis in range(2):
        start = side[0][axis]
        step = side[1][axis] - start
        low = box[axis * 2]
        high = box[axis * 2 + 1]
        if step == 0:
            if start <= low or start >= high:
                return False
        else:
            still = False
            one = (low - start) / step
            two = (high - start) / step
            first = max(first, min(one, two))
            last = min(last, max(one, two))
    return first < last and not still


def any_passes_through(box: Box, sides: list[Side]) -> bool:
    """Whether one of some sides passes through the inside of a box."""
    return any(passes_through(box, side) for side in sides)


def lies_within(rect: Rectangle, corners: Sequence[Point], tolerance_m: float) -> bool:
    """
    Whether all of a rectangle lies within an outline, but for the tolerance: no side passes through
    it, and its middle is in.
    """
    seen = seen_from(rect, corners)
    crossed = any_passes_through(inner_box(rect, tolerance_m), sides_of(seen))
    return contains(seen, (0.0, 0.0)) and not crossed


def meets(rect: Rectangle, corners: Sequence[Point], tolerance_m: float) -> bool:
    """Whether a rectangle and an outline share more floor than the tolerance."""
    seen = seen_from(rect, corners)
    if contains(seen, (0.0, 0.0)):
        return True
    return any_passes_through(inner_box(rect, tolerance_m), sides_of(seen))


def touches(rect: Rectangle, corners: Sequence[Point]) -> bool:
    """Whether a rectangle and an outline share any floor."""
    seen = seen_from(rect, corners)
    if contains(seen, (0.0, 0.0)):
        return True
    return any_passes_through(own_box(rect), sides_of(seen))


def beyond(rect: Rectangle, corners: Sequence[Point], tolerance_m: float) -> list[Over]:
    """
    How far a rectangle reaches over each edge that passes through it less the tolerance, by the
    edge's side of the stage.
    """
    return _beyond(rect, corners, inner_box(rect, tolerance_m))


def beyond_at_all(rect: Rectangle, corners: Sequence[Point]) -> list[Over]:
    """The same without a tolerance."""
    return _beyond(rect, corners, own_box(rect))


def _beyond(rect: Rectangle, corners: Sequence[Point], box: Box) -> list[Over]:
    """How far a rectangle reaches over each edge that passes through a box about its centre."""
    way = 1.0 if twice_area_m2(corners) >= 0 else -1.0
    sides = sides_of(corners)
    seen = sides_of(seen_from(rect, corners))
    found: list[Over] = [
        {"side": "stage left", "over_m": 0.0},
        {"side": "stage right", "over_m": 0.0},
        {"side": "upstage", "over_m": 0.0},
        {"side": "downstage", "over_m": 0.0},
    ]
    for index in range(len(sides)):
        if passes_through(box, seen[index]):
            one, two = sides[index]
            outward: Point = ((two[1] - one[1]) * way, (one[0] - two[0]) * way)
            facing = toward(outward)
            for over in found:
                if over["side"] == facing:
                    over["over_m"] = max(over["over_m"], _over_m(rect, one, outward))
    return [over for over in found if over["over_m"] > ROUNDING_M]


def _over_m(rect: Rectangle, start: Point, outward: Point) -> float:
    """How far the farthest corner reaches beyond a line that looks outward. [m]"""
    length = sqrt(outward[0] * outward[0] + outward[1] * outward[1])
    farthest_m = 0.0
    for corner in corners_of(rect):
        out_m2 = (corner[0] - start[0]) * outward[0] + (corner[1] - start[1]) * outward[1]
        farthest_m = max(farthest_m, out_m2 / length)
    return farthest_m


def toward(direction: Point) -> StageSide:
    """The side of the stage that a direction points to."""
    across, upstage = direction
    if abs(across) >= abs(upstage):
        return "stage left" if across > 0 else "stage right"
    return "upstage" if upstage > 0 else "downstage"


@cites(
    CRC_TABLES,
    "plane analytic geometry, distance from a point to a line",
    equation="least of corner to side and of side's ends to box",
)
def gap_m(rect: Rectangle, corners: Sequence[Point]) -> float:
    """
    From a rectangle within an outline to its nearest edge.

    Parameters
    ----------
    rect
        A rectangle that lies within the outline.
    corners
        The outline. [m]

    Returns
    -------
    float
        The gap; 0 where an edge passes through the rectangle. [m]
    """
    seen = sides_of(seen_from(rect, corners))
    box = own_box(rect)
    if any_passes_through(box, seen):
        return 0.0
    least_m = FAR_M
    for side in seen:
        least_m = min(least_m, to_box_m(side[0], box))
        for across_m in (box[0], box[1]):
            for depth_m in (box[2], box[3]):
                least_m = min(least_m, distance_to_side_m((across_m, depth_m), side))
    return least_m


def to_box_m(spot: Point, box: Box) -> float:
    """From a spot to a box. [m]"""
    across_m = max(box[0] - spot[0], 0.0, spot[0] - box[1])
    upstage_m = max(box[2] - spot[1], 0.0, spot[1] - box[3])
    return sqrt(across_m * across_m + upstage_m * upstage_m)


@cites(
    CRC_TABLES,
    "plane analytic geometry, projections; separating axes of convex shapes, from memory",
    equation="least over the axes of both of (half extents - distance of the centres)",
)
def overlap_m(one: Rectangle, other: Rectangle) -> float:
    """
    The shortest move that takes two rectangles apart, along a side of either.

    Parameters
    ----------
    one, other
        The rectangles.

    Returns
    -------
    float
        The move; below zero where they stand apart. [m]
    """
    along = abs(one["cos"] * other["cos"] + one["sin"] * other["sin"])
    athwart = abs(one["cos"] * other["sin"] - one["sin"] * other["cos"])
    return min(
        _overlap_along_m(one, other, along, athwart), _overlap_along_m(other, one, along, athwart)
    )


def _overlap_along_m(first: Rectangle, second: Rectangle, along: float, athwart: float) -> float:
    """The shortest move along a side of the first; cosine and sine between them without sign."""
    across_m = second["x"] - first["x"]
    upstage_m = second["y"] - first["y"]
    wide_m = (first["width"] + second["width"] * along + second["depth"] * athwart) / 2
    deep_m = (first["depth"] + second["width"] * athwart + second["depth"] * along) / 2
    off_across_m = abs(across_m * first["cos"] + upstage_m * first["sin"])
    off_upstage_m = abs(upstage_m * first["cos"] - across_m * first["sin"])
    return min(wide_m - off_across_m, deep_m - off_upstage_m)


def far_apart(one: Rectangle, other: Rectangle) -> bool:
    """
    Whether two centres lie so far apart that the circles about the rectangles cannot meet; the
    cheap look before the exact one.
    """
    across_m = other["x"] - one["x"]
    upstage_m = other["y"] - one["y"]
    sides_m2 = (
        one["width"] * one["width"]
        + one["depth"] * one["depth"]
        + other["width"] * other["width"]
        + other["depth"] * other["depth"]
    )
    # Two half diagonals p and q: (p + q)² is never more than 2 (p² + q²), which is half the sum of
    # the squares of all four sides.
    return across_m * across_m + upstage_m * upstage_m > sides_m2 / 2


def overlaps(one: Rectangle, other: Rectangle, tolerance_m: float) -> bool:
    """Whether two rectangles overlap by more than the tolerance."""
    return not far_apart(one, other) and overlap_m(one, other) > tolerance_m + ROUNDING_M


def into_m(rect: Rectangle, corners: Sequence[Point]) -> float:
    """The shortest move along the rectangle's own sides that takes it clear of an outline. [m]"""
    box = own_box(rect)
    other = box_around(seen_from(rect, corners))
    return min(box[1] - other[0], other[1] - box[0], box[3] - other[2], other[3] - box[2])


def shared_m2(rect: Rectangle, corners: Sequence[Point]) -> float:
    """
    The floor that a rectangle and an outline share: the outline cut along the rectangle's four
    sides, one after the other. [m²]
    """
    left, right, front, back = own_box(rect)
    shared = cut_off(seen_from(rect, corners), 0, left, 1.0)
    shared = cut_off(shared, 0, right, -1.0)
    shared = cut_off(shared, 1, front, 1.0)
    shared = cut_off(shared, 1, back, -1.0)
    return abs(twice_area_m2(shared)) / 2
