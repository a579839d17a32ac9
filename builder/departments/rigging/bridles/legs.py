"""What the legs of a bridle pull, two or three, between places in metres from the datum."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import acos, degrees, fsum, hypot

from builder.formulas.bridles import (
    Place,
    three_leg_apex,
    three_leg_bridle,
    two_leg_apex,
    two_leg_bridle,
)

IN_LINE_M = 0.05
"""
An apex this near to the line between the two points, seen from above, is on it: legs hang in one
plane.
"""
BETWEEN = {
    2: "an apex between its two points, seen from above",
    3: "an apex inside the triangle of its three points, seen from above",
}
BELOW = {2: "an apex below both points", 3: "an apex below all three points"}
MEETING = {
    2: "legs that meet between and below its two points",
    3: "legs that meet below its three points, all of them taut",
}


@dataclass(frozen=True, slots=True)
class Legs:
    """
    A loaded bridle: for each leg its run and rise from the apex, length, pull, vertical and
    sideways part. [m], [kg], [deg]
    """

    runs_m: tuple[float, ...]
    rises_m: tuple[float, ...]
    lengths_m: tuple[float, ...]
    tensions_kg: tuple[float, ...]
    verticals_kg: tuple[float, ...]
    sideways_kg: tuple[float, ...]
    angles_deg: tuple[float, ...]
    headroom_m: float

    @property
    def widest_deg(self) -> float:
        """The widest angle between two legs. [deg]"""
        return max(self.angles_deg)

    @property
    def leans_deg(self) -> tuple[float, ...]:
        """How far each leg stands from straight down. [deg]"""
        return tuple(
            degrees(acos(min(rise / length, 1.0)))
            for rise, length in zip(self.rises_m, self.lengths_m, strict=True)
        )


def legs_to(load_kg: float, apex: Place, anchors: Sequence[Place]) -> Legs | str:
    """The pulls of a bridle with its apex at a place, or what it needs to be one."""
    runs = tuple(hypot(anchor[0] - apex[0], anchor[1] - apex[1]) for anchor in anchors)
    rises = tuple(anchor[2] - apex[2] for anchor in anchors)
    if min(rises) <= 0:
        return BELOW[len(anchors)]
    return (
        two_legs(load_kg, runs, rises, anchors)
        if len(anchors) == 2
        else three_legs(load_kg, apex, runs, rises, anchors)
    )


def two_legs(
    load_kg: float, runs: tuple[float, ...], rises: tuple[float, ...], anchors: Sequence[Place]
) -> Legs | str:
    """Two legs in one plane."""
    apart_m = hypot(anchors[0][0] - anchors[1][0], anchors[0][1] - anchors[1][1])
    if apart_m == 0 or fsum(runs) - apart_m > IN_LINE_M:
        return BETWEEN[2]
    found = two_leg_bridle(
        load_kg, run_m=runs[0], rise_m=rises[0], other_run_m=runs[1], other_rise_m=rises[1]
    )
    sideways = (found.horizontal_kg, found.horizontal_kg)
    return Legs(
        runs,
        rises,
        found.lengths_m,
        found.tensions_kg,
        found.verticals_kg,
        sideways,
        (found.included_angle_deg,),
        found.headroom_m,
    )


def three_legs(
    load_kg: float,
    apex: Place,
    runs: tuple[float, ...],
    rises: tuple[float, ...],
    anchors: Sequence[Place],
) -> Legs | str:
    """
    Three legs in space. All anchors are above the apex here, so what the formula still refuses is
    an apex outside their triangle.
    """
    try:
        found = three_leg_bridle(
            load_kg, apex_m=apex, anchors_m=(anchors[0], anchors[1], anchors[2])
        )
    except ValueError:
        return BETWEEN[3]
    return Legs(
        runs,
        rises,
        found.lengths_m,
        found.tensions_kg,
        found.verticals_kg,
        found.horizontals_kg,
        found.included_angles_deg,
        found.headroom_m,
    )


def apex_of(lengths_m: Sequence[float], anchors: Sequence[Place]) -> Place | str:
    """Where legs of these lengths let the apex land, or what they need to meet."""
    try:
        if len(anchors) == 3:
            return three_leg_apex(
                anchors_m=(anchors[0], anchors[1], anchors[2]),
                legs_m=(lengths_m[0], lengths_m[1], lengths_m[2]),
            )
        return in_plane(lengths_m, anchors[0], anchors[1])
    except ValueError:
        return MEETING[len(anchors)]


def in_plane(lengths_m: Sequence[float], first: Place, second: Place) -> Place:
    """The apex of two legs, in the upright plane through both anchors."""
    span_m = hypot(second[0] - first[0], second[1] - first[1])
    apex = two_leg_apex(
        span_m=span_m,
        second_above_m=second[2] - first[2],
        first_leg_m=lengths_m[0],
        second_leg_m=lengths_m[1],
    )
    share = apex.from_first_m / span_m
    return (
        first[0] + share * (second[0] - first[0]),
        first[1] + share * (second[1] - first[1]),
        first[2] - apex.below_first_m,
    )
