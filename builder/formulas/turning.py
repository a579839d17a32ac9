"""
Turns on a circle: how far in the last axle cuts, how far out the front wheel reaches.

Planning figures: the driver and the vehicle's own data decide.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import AASHTO_GREEN_BOOK, EU_1230_2012
from builder.formulas.tractrix import Piece, Point, Pose, Vehicle, drive, rear_axles


@dataclass(frozen=True, slots=True)
class Turn:
    """
    A turn on a circular arc, from straight to straight. [m]

    ``inside_radius_m`` is the closest that the inner side of the last rear axle comes to the centre
    of the turn, below 0 where it passes beyond it. ``outside_radius_m`` is the farthest of the
    outer front wheel, entry into the turn included. ``offtracking_m`` is how far inside the front
    axle's path the last axle runs.
    """

    inside_radius_m: float
    outside_radius_m: float
    offtracking_m: float


@cites(
    AASHTO_GREEN_BOOK,
    "2.1, steady turn of a train of units, from memory",
    equation="R_n = sqrt(R_1^2 - sum L_i^2)",
)
def steady_radius_m(*, front_radius_m: float, wheelbases_m: Sequence[float]) -> float:
    """
    Radius of the last axle once a turn has lasted for ever.

    Parameters
    ----------
    front_radius_m
        Radius of the front axle's path. [m]
    wheelbases_m
        Distances from axle to axle, kingpins on the axles. [m]

    Returns
    -------
    float
        Radius of the last axle's centre. [m]

    Raises
    ------
    ValueError
        If a length is not above 0, or the circle is too small for the train ever to settle on it.
    """
    squares = above_zero("front_radius_m", front_radius_m) ** 2 - math.fsum(
        above_zero("wheelbases_m", w) ** 2 for w in wheelbases_m
    )
    if squares < 0:
        raise ValueError(
            f"front_radius_m must be at least {math.sqrt(front_radius_m**2 - squares):.2f} for"
            f" these wheelbases, got {front_radius_m}"
        )
    return math.sqrt(squares)


@cites(
    AASHTO_GREEN_BOOK,
    "2.1, minimum design turning radius, from memory",
    equation="R_out = sqrt((sqrt(R^2 - L^2) + W/2)^2 + L^2)",
)
def outer_wheel_radius_m(*, front_radius_m: float, wheelbase_m: float, width_m: float) -> float:
    """
    Radius of the outer front wheel in a steady turn, from that of the front axle's centre.

    Parameters
    ----------
    front_radius_m
        Radius of the front axle's centre. [m]
    wheelbase_m
        Front to rear axle of the first unit. [m]
    width_m
        Width over the front tyres. [m]

    Returns
    -------
    float
        Radius of the outer front wheel. [m]

    Raises
    ------
    ValueError
        If a length is not above 0 or the circle is smaller than the wheelbase.
    """
    rear_m = steady_radius_m(front_radius_m=front_radius_m, wheelbases_m=[wheelbase_m])
    return math.hypot(rear_m + above_zero("width_m", width_m) / 2, wheelbase_m)


@cites(
    EU_1230_2012,
    "Annex I, part D, 3.1, from memory",
    equation="L = sqrt((R_outer - a)^2 - (R_inner + W/2)^2)",
)
def longest_trailer_wheelbase_m(
    *, width_m: float, outer_m: float = 12.5, inner_m: float = 5.3, kingpin_front_m: float = 2.04
) -> float:
    """
    Longest kingpin to axle distance of a semi-trailer that stays within the turning circle of the
    European rule.

    Parameters
    ----------
    width_m
        Width of the trailer. [m]
    outer_m, inner_m
        Outer and inner radius of the ring to stay in. [m]
    kingpin_front_m
        Swing radius ahead of the kingpin. [m]

    Returns
    -------
    float
        Wheelbase. [m]

    Raises
    ------
    ValueError
        If a number is out of range or no trailer of this width stays within the ring.
    """
    reach = above_zero("outer_m", outer_m) - not_negative("kingpin_front_m", kingpin_front_m)
    inside = not_negative("inner_m", inner_m) + above_zero("width_m", width_m) / 2
    if inside >= reach:
        raise ValueError(
            f"width_m must leave room in the ring of {inner_m} to {outer_m} m, got {width_m}"
        )
    return math.sqrt(reach**2 - inside**2)


@cites(
    AASHTO_GREEN_BOOK,
    "2.1, minimum turning paths, from memory",
    equation="inside = min |rear axle - centre| - W/2; outside = max |front axle + W/2 - centre|",
)
def turn_on_arc(vehicle: Vehicle, *, centre_radius_m: float, turn_deg: float = 180.0) -> Turn:
    """
    A turn with the front axle's centre on a circular arc, straight before it.

    Parameters
    ----------
    vehicle
        Its axles, hitch and width.
    centre_radius_m
        Radius of the front axle's path (centreline turning radius). [m]
    turn_deg
        Angle of the turn. [deg]

    Returns
    -------
    Turn
        Inside and outside radius and offtracking. [m]

    Raises
    ------
    ValueError
        If the radius or the angle is not above 0.
    """
    radius = above_zero("centre_radius_m", centre_radius_m)
    arc = radius * math.radians(above_zero("turn_deg", turn_deg))
    straight = 3 * (vehicle.wheelbase_m + vehicle.trailer_m)
    poses = drive(
        vehicle, [Piece(arc, radius), Piece(straight)], start=(radius, 0.0), heading_rad=math.pi / 2
    )
    closest = min(math.hypot(*rear_axles(vehicle, pose)[-1]) for pose in poses)
    turning = [pose for pose in poses if pose.driven_m <= arc + 1e-9]
    farthest = max(math.hypot(*_outer_front(vehicle, pose)) for pose in turning)
    return Turn(closest - vehicle.width_m / 2, farthest, radius - closest)


def _outer_front(vehicle: Vehicle, pose: Pose) -> Point:
    """The front wheel on the outside of a left turn."""
    half = vehicle.width_m / 2
    return pose.front[0] + half * math.sin(pose.heading), pose.front[1] - half * math.cos(
        pose.heading
    )
