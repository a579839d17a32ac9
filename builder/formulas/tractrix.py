"""
Where the wheels of a truck and its trailer go when its front axle follows a path, forwards.

Each rear axle is pulled towards the point ahead of it: the tractrix. Tyres do not slip. Reversing
is outside this model.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero
from builder.formulas.sources import AASHTO_GREEN_BOOK

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Vehicle:
    """
    A rigid truck, or a tractor with one trailer. All lengths in metres.

    ``wheelbase_m`` is front to rear axle of the first unit; ``trailer_m`` kingpin to rear axle of
    the trailer, 0 where there is none; ``kingpin_ahead_m`` from the first unit's rear axle forward.
    Overhangs reach beyond the axles, ``trailer_front_m`` ahead of the kingpin.
    """

    name: str
    width_m: float
    wheelbase_m: float
    front_overhang_m: float
    rear_overhang_m: float
    trailer_m: float = 0.0
    kingpin_ahead_m: float = 0.0
    trailer_front_m: float = 0.0


@dataclass(frozen=True, slots=True)
class Pose:
    """
    Where a vehicle stands: its front axle's centre [m], the heading of the path there, of the first
    unit and of the trailer [rad].
    """

    front: Point
    path_heading: float
    heading: float
    trailer_heading: float
    driven_m: float


@dataclass(frozen=True, slots=True)
class Piece:
    """
    A piece of the front axle's path. ``radius_m`` None is straight on; above 0 turns left, below 0
    turns right. [m]
    """

    length_m: float
    radius_m: float | None = None


@cites(
    AASHTO_GREEN_BOOK,
    "2.1, swept path (tractrix), from memory",
    equation=(
        "dpsi1/ds = sin(theta - psi1) / L1; dpsi2/ds = (v1 sin(psi1 - psi2) + a psi1' cos(psi1 -"
        " psi2)) / L2"
    ),
)
def drive(
    vehicle: Vehicle,
    pieces: Sequence[Piece],
    *,
    start: Point,
    heading_rad: float,
    step_m: float = 0.05,
) -> list[Pose]:
    """
    Poses of a vehicle that drives forwards along a path, from straight.

    Parameters
    ----------
    vehicle
        Its axles and hitch.
    pieces
        Path of the front axle's centre.
    start
        Where the front axle's centre begins. [m]
    heading_rad
        Heading at the start, from the x axis towards y. [rad]
    step_m
        Greatest distance between poses. [m]

    Returns
    -------
    list of Pose
        From start to end.

    Raises
    ------
    ValueError
        If a length or the step is not above 0, or a radius is 0.

    Notes
    -----
    Fourth order Runge-Kutta steps. The front axle is taken to follow any arc; whether the wheels
    can steer that far is not checked.
    """
    poses = [Pose(start, heading_rad, heading_rad, heading_rad, 0.0)]
    for piece in pieces:
        length = above_zero("length_m", piece.length_m)
        if piece.radius_m == 0:
            raise ValueError("radius_m must not be 0, got 0")
        curvature = 0.0 if piece.radius_m is None else 1 / piece.radius_m
        steps = math.ceil(length / above_zero("step_m", step_m))
        for _ in range(steps):
            poses.append(_stepped(vehicle, poses[-1], curvature, length / steps))
    return poses


def _stepped(vehicle: Vehicle, pose: Pose, curvature: float, ds: float) -> Pose:
    state = (pose.heading, pose.trailer_heading)

    def rates(way: float, change: tuple[float, float], by: float) -> tuple[float, float]:
        return _rates(
            vehicle,
            pose.path_heading + curvature * way,
            state[0] + by * change[0],
            state[1] + by * change[1],
        )

    first = rates(0, (0, 0), 0)
    second = rates(ds / 2, first, ds / 2)
    third = rates(ds / 2, second, ds / 2)
    fourth = rates(ds, third, ds)
    heading, trailer = (
        state[k] + ds / 6 * (first[k] + 2 * second[k] + 2 * third[k] + fourth[k]) for k in (0, 1)
    )
    turned = pose.path_heading + curvature * ds
    return Pose(
        _along(pose.front, pose.path_heading, curvature, ds),
        turned,
        heading,
        trailer,
        pose.driven_m + ds,
    )


def _rates(vehicle: Vehicle, theta: float, heading: float, trailer: float) -> tuple[float, float]:
    """Turn of each unit for each metre of the front axle's path. [rad/m]"""
    turn = math.sin(theta - heading) / vehicle.wheelbase_m
    if vehicle.trailer_m == 0:
        return turn, turn
    speed, angle = math.cos(theta - heading), heading - trailer
    return (
        turn,
        (speed * math.sin(angle) + vehicle.kingpin_ahead_m * turn * math.cos(angle))
        / vehicle.trailer_m,
    )


def _along(point: Point, heading: float, curvature: float, ds: float) -> Point:
    """The point a distance on, along an arc; the chord has the mean heading."""
    chord = ds if curvature == 0 else 2 * math.sin(curvature * ds / 2) / curvature
    middle = heading + curvature * ds / 2
    return point[0] + chord * math.cos(middle), point[1] + chord * math.sin(middle)


@cites(
    AASHTO_GREEN_BOOK,
    "2.1, axle positions, from memory",
    equation="rear = front - L (cos psi, sin psi)",
)
def rear_axles(vehicle: Vehicle, pose: Pose) -> list[Point]:
    """
    Centres of the rear axle of each unit.

    Parameters
    ----------
    vehicle, pose
        The vehicle and where it is.

    Returns
    -------
    list of tuple
        One or two points. [m]
    """
    rear = _back(pose.front, pose.heading, vehicle.wheelbase_m)
    if vehicle.trailer_m == 0:
        return [rear]
    return [
        rear,
        _back(
            _back(rear, pose.heading, -vehicle.kingpin_ahead_m),
            pose.trailer_heading,
            vehicle.trailer_m,
        ),
    ]


def _back(point: Point, heading: float, distance: float) -> Point:
    return point[0] - distance * math.cos(heading), point[1] - distance * math.sin(heading)
