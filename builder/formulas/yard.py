"""
Does a truck that drives forwards along a path stay within a yard?

Planning figures: the driver, a banksman and a drive-through decide. Reversing onto a dock is
outside this model.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from builder.formulas.cite import cites
from builder.formulas.polygons import (
    Side,
    contains,
    distance_to_side_m,
    polygon_area_m2,
    sides_cross,
    sides_of,
)
from builder.formulas.sources import AASHTO_GREEN_BOOK
from builder.formulas.tractrix import Piece, Point, Pose, Vehicle, drive, rear_axles

Corners = list[Point]


@dataclass(frozen=True, slots=True)
class YardFit:
    """
    Whether the swept path stays within the yard.

    ``clearance_m`` is the least distance between body and border, 0 where they cross.
    ``tightest_at_m`` is how far the front axle has driven there, and ``tightest_unit`` which unit
    is there: 'truck' or 'trailer'. [m]
    """

    fits: bool
    clearance_m: float
    tightest_at_m: float
    tightest_unit: str


@cites(
    AASHTO_GREEN_BOOK,
    "2.1, design vehicles: bodies around their axles, from memory",
    equation="corners = axle + overhang along, +- W/2 across",
)
def bodies(vehicle: Vehicle, pose: Pose) -> list[Corners]:
    """
    Outlines of each unit.

    Parameters
    ----------
    vehicle, pose
        The vehicle and where it is.

    Returns
    -------
    list of four corners each
        The truck, and its trailer if it has one. [m]
    """
    axles = rear_axles(vehicle, pose)
    truck = (axles[0], pose.heading, vehicle.wheelbase_m + vehicle.front_overhang_m)
    trailer = (axles[-1], pose.trailer_heading, vehicle.trailer_m + vehicle.trailer_front_m)
    if vehicle.trailer_m == 0:
        return [_outline(*truck, vehicle.rear_overhang_m, vehicle.width_m)]
    # The rear overhang of a tractor lies under its trailer, so the stated one is the trailer's.
    return [
        _outline(*truck, 0.0, vehicle.width_m),
        _outline(*trailer, vehicle.rear_overhang_m, vehicle.width_m),
    ]


def _outline(
    axle: Point, heading: float, ahead_m: float, behind_m: float, width_m: float
) -> Corners:
    cosine, sine, half = math.cos(heading), math.sin(heading), width_m / 2
    return [
        (axle[0] + along * cosine - across * sine, axle[1] + along * sine + across * cosine)
        for along, across in (
            (ahead_m, half),
            (ahead_m, -half),
            (-behind_m, -half),
            (-behind_m, half),
        )
    ]


@cites(
    AASHTO_GREEN_BOOK,
    "2.1, swept path, from memory",
    equation="fits where every outline lies within the border by the margin",
)
def fits_yard(
    vehicle: Vehicle,
    pieces: Sequence[Piece],
    yard: Sequence[Point],
    *,
    start: Point,
    heading_rad: float,
    margin_m: float = 0.0,
    step_m: float = 0.1,
) -> YardFit:
    """
    Whether a vehicle that drives forwards along a path stays within a yard.

    Parameters
    ----------
    vehicle
        Its axles, hitch and body.
    pieces
        Path of the front axle's centre.
    yard
        Border of the yard, corners in order. [m]
    start
        Where the front axle's centre begins. [m]
    heading_rad
        Heading at the start. [rad]
    margin_m
        Distance to keep from the border. [m]
    step_m
        Greatest distance between poses looked at. [m]

    Returns
    -------
    YardFit
        Whether it stays inside, and where it is tightest.

    Raises
    ------
    ValueError
        If the yard is no polygon, or a number of the path is out of range.

    Notes
    -----
    Between poses a corner may swing out by less than step² / (8 R); islands in the yard, slopes and
    reversing are left out.
    """
    polygon_area_m2(yard)
    border = sides_of(yard)
    tightest = YardFit(True, math.inf, 0.0, "truck")
    for pose in drive(vehicle, pieces, start=start, heading_rad=heading_rad, step_m=step_m):
        for unit, body in zip(("truck", "trailer"), bodies(vehicle, pose), strict=False):
            clearance_m = _clearance_m(body, yard, border)
            if clearance_m < tightest.clearance_m:
                tightest = YardFit(
                    clearance_m > 0 and clearance_m >= margin_m, clearance_m, pose.driven_m, unit
                )
    return tightest


def _clearance_m(body: Corners, yard: Sequence[Point], border: Sequence[Side]) -> float:
    """Least distance of an outline from the border; 0 where it crosses it or lies outside."""
    outline = sides_of(body)
    if not contains(yard, body[0]) or any(
        sides_cross(one, other) for one in outline for other in border
    ):
        return 0.0
    from_body = min(distance_to_side_m(corner, side) for corner in body for side in border)
    from_yard = min(distance_to_side_m(corner, side) for corner in yard for side in outline)
    return min(from_body, from_yard)
