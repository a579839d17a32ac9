"""
Whether corners in order make an outline: at least three, each its own spot, no side meeting
another, and something enclosed.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import dist
from typing import Literal

from builder.formulas.cite import cites
from builder.formulas.polygons import (
    Point,
    Side,
    distance_to_side_m,
    sides_cross,
    sides_of,
    twice_area_m2,
)
from builder.formulas.sources import CRC_TABLES

TOUCHING_M = 1e-6
"""What is nearer touches. Coordinates are written in millimetres at best."""
SMALLEST_AREA_M2 = 1e-6

Kind = Literal["few corners", "corner twice", "sides meet", "no area"]


@dataclass(frozen=True, slots=True)
class Fault:
    """
    What is wrong with an outline. ``first`` and ``second`` count corners, or sides by the corner
    they begin at, from 1; 0 where they say nothing.
    """

    kind: Kind
    first: int = 0
    second: int = 0


@cites(
    CRC_TABLES,
    "plane analytic geometry, orientation of three points, distance from a point to a line, area"
    " of a polygon",
    equation="no two sides but neighbours have a point in common",
)
def fault_of(corners_m: Sequence[Point]) -> Fault | None:
    """
    What keeps corners from being an outline; None where nothing does.

    Parameters
    ----------
    corners_m
        Corners in order, either way round, the first not repeated at the end. [m]

    Returns
    -------
    Fault or None
        The first fault, in the order: corners lacking, corners alike, sides that meet, no area.

    Notes
    -----
    Every side is held against every other, so the work grows with the square of the corners.
    Corners on a straight line are no fault; a side that runs back over its neighbour is.
    """
    if len(corners_m) < 3:
        return Fault("few corners", len(corners_m))
    return next(_faults(corners_m), None)


def _faults(corners: Sequence[Point]) -> Iterator[Fault]:
    sides = sides_of(corners)
    pairs = list(combinations(range(len(corners)), 2))
    for one, other in pairs:
        if dist(corners[one], corners[other]) < TOUCHING_M:
            yield Fault("corner twice", one + 1, other + 1)
    for one, other in pairs:
        if _meet(sides[one], sides[other]):
            yield Fault("sides meet", one + 1, other + 1)
    if abs(twice_area_m2(corners)) / 2 < SMALLEST_AREA_M2:
        yield Fault("no area")


def _meet(one: Side, other: Side) -> bool:
    """Whether two sides have a point in common besides the corner that neighbours share."""
    return (
        sides_cross(one, other)
        or any(distance_to_side_m(end, other) < TOUCHING_M for end in one if end not in other)
        or any(distance_to_side_m(end, one) < TOUCHING_M for end in other if end not in one)
    )
