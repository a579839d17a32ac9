"""
Bridles: one point hung from two or three anchors.

Legs have no weight and no stretch, and the load is still. Planning figures: a competent person
decides whether an anchor may be pulled sideways.
"""

import math
from dataclasses import dataclass

import numpy as np

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import HALL, HIBBELER
from builder.formulas.two_legs import leg_span, two_leg_forces

FLAT = 1e-9
"""
Below this share of the size of a bridle, its anchors are in one line or its apex is level with
them.
"""

Place = tuple[float, float, float]
"""Across, along and up, from any common origin. [m]"""


@dataclass(frozen=True, slots=True)
class TwoLegs:
    """
    A loaded two-leg bridle. [kg], [m], [deg]

    ``horizontal_kg`` pulls the two anchors towards each other, the same at both. ``headroom_m`` is
    from the lower anchor down to the apex.
    """

    lengths_m: tuple[float, float]
    tensions_kg: tuple[float, float]
    verticals_kg: tuple[float, float]
    horizontal_kg: float
    included_angle_deg: float
    headroom_m: float


@dataclass(frozen=True, slots=True)
class Apex:
    """
    Where the apex of two legs lands: along the line from the first anchor to the second, and below
    the first. [m]
    """

    from_first_m: float
    below_first_m: float


@dataclass(frozen=True, slots=True)
class ThreeLegs:
    """
    A loaded three-leg bridle. [kg], [m], [deg]

    ``horizontals_kg`` is the sideways pull on each anchor; ``included_angles_deg`` is between legs
    1 and 2, 2 and 3, 3 and 1.
    """

    lengths_m: tuple[float, float, float]
    tensions_kg: tuple[float, float, float]
    verticals_kg: tuple[float, float, float]
    horizontals_kg: tuple[float, float, float]
    included_angles_deg: tuple[float, float, float]
    headroom_m: float


@cites(
    HALL,
    "Lessons 3 and 4, bridle lengths and tensions",
    equation=(
        "L = sqrt(V^2 + H^2); T1 = W L1 H2 / (V1 H2 + V2 H1); pull = W H1 H2 / (V1 H2 + V2 H1)"
    ),
)
def two_leg_bridle(
    load_kg: float, *, run_m: float, rise_m: float, other_run_m: float, other_rise_m: float
) -> TwoLegs:
    """
    Leg lengths, tensions and sideways pull of a two-leg bridle for a wanted apex.

    Parameters
    ----------
    load_kg
        Load at the apex. [kg]
    run_m, rise_m
        Horizontal and vertical distance from the apex to the first leg's anchor. [m]
    other_run_m, other_rise_m
        The same for the second leg, whose anchor is on the other side. [m]

    Returns
    -------
    TwoLegs
        The bridle under load. [kg], [m], [deg]

    Raises
    ------
    ValueError
        If the load or a run is negative, an anchor is not above the apex, or both runs are zero.

    Notes
    -----
    Both legs and the load are in one plane. Above 120 degrees between equal legs, each carries more
    than the load. The angle is between the legs, not from the horizontal. Leaves out the weight and
    stretch of legs, and what the sideways pull does to the beam.
    """
    not_negative("load_kg", load_kg)
    not_negative("run_m", run_m)
    not_negative("other_run_m", other_run_m)
    above_zero("rise_m", rise_m)
    above_zero("other_rise_m", other_rise_m)
    first, second = leg_span(run_m, rise_m), leg_span(other_run_m, other_rise_m)
    one, other = two_leg_forces(first, second)
    return TwoLegs(
        lengths_m=(first["length_m"], second["length_m"]),
        tensions_kg=(load_kg * one["pull"], load_kg * other["pull"]),
        verticals_kg=(load_kg * one["share"], load_kg * other["share"]),
        horizontal_kg=load_kg * one["share"] * run_m / rise_m,
        included_angle_deg=math.degrees(
            math.atan2(run_m, rise_m) + math.atan2(other_run_m, other_rise_m)
        ),
        headroom_m=min(rise_m, other_rise_m),
    )


@cites(
    HIBBELER,
    "ch. 3, equilibrium of a particle; two circles meet",
    equation="|apex - anchor 1| = L1, |apex - anchor 2| = L2, the lower of the two meeting points",
)
def two_leg_apex(
    *, span_m: float, second_above_m: float, first_leg_m: float, second_leg_m: float
) -> Apex:
    """
    Where the apex lands when two legs of stock lengths hang between two anchors.

    Parameters
    ----------
    span_m
        Horizontal distance between the anchors. [m]
    second_above_m
        How far the second anchor is above the first; negative below. [m]
    first_leg_m, second_leg_m
        Lengths of the legs. [m]

    Returns
    -------
    Apex
        Distance along the line of the anchors, and drop below the first. [m]

    Raises
    ------
    ValueError
        If a length or the span is not above 0, the legs cannot reach each other, one leg is too
        long for the other to be taut, or the apex would not be between and below both anchors.
    """
    above_zero("span_m", span_m)
    above_zero("first_leg_m", first_leg_m)
    above_zero("second_leg_m", second_leg_m)
    apart_m = math.hypot(span_m, second_above_m)
    if first_leg_m + second_leg_m <= apart_m * (1 + FLAT):
        raise ValueError(
            f"first_leg_m and second_leg_m cannot reach over {apart_m:.6g} m between anchors, got"
            f" {first_leg_m} and {second_leg_m}"
        )
    along_m = (apart_m**2 + first_leg_m**2 - second_leg_m**2) / (2 * apart_m)
    square_m2 = first_leg_m**2 - along_m**2
    if square_m2 <= 0:
        raise ValueError(
            f"first_leg_m and second_leg_m differ by more than the {apart_m:.6g} m between anchors,"
            f" got {first_leg_m} and {second_leg_m}"
        )
    across_m = math.sqrt(square_m2)
    from_first_m = (along_m * span_m + across_m * second_above_m) / apart_m
    below_first_m = (across_m * span_m - along_m * second_above_m) / apart_m
    slop_m = FLAT * apart_m
    if not -slop_m <= from_first_m <= span_m + slop_m or below_first_m <= max(0.0, -second_above_m):
        raise ValueError(
            f"first_leg_m and second_leg_m put the apex {from_first_m:.6g} m along and"
            f" {below_first_m:.6g} m below the first anchor, not between and below both, got"
            f" {first_leg_m} and {second_leg_m}"
        )
    return Apex(from_first_m, below_first_m)


@cites(
    HIBBELER,
    "ch. 3, equilibrium of a particle in three dimensions",
    equation="sum(T_i u_i) = W upwards, u_i: unit vector from the apex to anchor i",
)
def three_leg_bridle(
    load_kg: float, *, apex_m: Place, anchors_m: tuple[Place, Place, Place]
) -> ThreeLegs:
    """
    Leg lengths, tensions and sideways pulls of a three-leg bridle for a wanted apex.

    Parameters
    ----------
    load_kg
        Load at the apex. [kg]
    apex_m
        Place of the apex: across, along, up. [m]
    anchors_m
        Places of the three anchors, from the same origin. [m]

    Returns
    -------
    ThreeLegs
        The bridle under load. [kg], [m], [deg]

    Raises
    ------
    ValueError
        If the load is negative, an anchor is not above the apex, the legs lie in one plane, or the
        apex is outside the anchors' triangle in plan.

    Notes
    -----
    With the apex on a side of the triangle the third leg is slack at 0 kg. Leaves out the weight
    and stretch of legs.
    """
    not_negative("load_kg", load_kg)
    legs = np.array(anchors_m, dtype=np.float64) - np.array(apex_m, dtype=np.float64)
    if not np.isfinite(legs).all() or legs[:, 2].min() <= 0:
        raise ValueError(
            f"anchors_m must all be above the apex at {apex_m[2]} m, got"
            f" {tuple(float(place[2]) for place in anchors_m)}"
        )
    lengths = np.sqrt((legs**2).sum(axis=1))
    units = legs / lengths[:, None]
    if abs(float(np.linalg.det(units))) < FLAT:
        raise ValueError(f"anchors_m must not be in one plane with the apex, got {anchors_m}")
    shares = np.linalg.solve(units.T, np.array([0.0, 0.0, 1.0]))
    if float(shares.min()) < -FLAT:
        raise ValueError(
            f"apex_m must be inside the triangle of the anchors, got {apex_m[:2]}: leg"
            f" {int(shares.argmin()) + 1} would have to push"
        )
    pulls = np.maximum(shares, 0.0) * load_kg
    cosines = [float(np.clip(units[i] @ units[(i + 1) % 3], -1.0, 1.0)) for i in range(3)]
    return ThreeLegs(
        lengths_m=_three(lengths),
        tensions_kg=_three(pulls),
        verticals_kg=_three(pulls * units[:, 2]),
        horizontals_kg=_three(pulls * np.sqrt((units[:, :2] ** 2).sum(axis=1))),
        included_angles_deg=_three(np.degrees(np.arccos(cosines))),
        headroom_m=float(legs[:, 2].min()),
    )


@cites(
    HIBBELER,
    "ch. 3, equilibrium of a particle in three dimensions; three spheres meet",
    equation="|apex - anchor i| = L_i for three legs, the lower of the two meeting points",
)
def three_leg_apex(
    *, anchors_m: tuple[Place, Place, Place], legs_m: tuple[float, float, float]
) -> Place:
    """
    Where the apex lands when three legs of stock lengths hang from three anchors.

    Parameters
    ----------
    anchors_m
        Places of the three anchors: across, along, up. [m]
    legs_m
        Length of the leg from each. [m]

    Returns
    -------
    tuple of three float
        Place of the apex, from the same origin. [m]

    Raises
    ------
    ValueError
        If a length is not above 0, the anchors are in one line, the legs cannot meet, or a leg
        would have to push to hold the apex there.

    Notes
    -----
    Legs that meet but would not all be taut under load are refused: the load would swing away from
    that place.
    """
    for length_m in legs_m:
        above_zero("legs_m", length_m)
    first, second, third = (np.array(place, dtype=np.float64) for place in anchors_m)
    side, size = second - first, float(np.linalg.norm(second - first))
    normal = np.cross(side, third - first)
    area = float(np.linalg.norm(normal))
    if not area > FLAT * max(size, float(np.linalg.norm(third - first)), 1e-3) ** 2:
        raise ValueError(f"anchors_m must not be in one line, got {anchors_m}")
    x_axis, z_axis = side / size, normal / area
    y_axis = np.cross(z_axis, x_axis)
    third_x, third_y = float((third - first) @ x_axis), float((third - first) @ y_axis)
    x = (legs_m[0] ** 2 - legs_m[1] ** 2 + size**2) / (2 * size)
    y = (legs_m[0] ** 2 - legs_m[2] ** 2 + third_x**2 + third_y**2 - 2 * third_x * x) / (
        2 * third_y
    )
    square = legs_m[0] ** 2 - x**2 - y**2
    if square <= 0:
        raise ValueError(f"legs_m cannot meet at one place below these anchors, got {legs_m}")
    drop = math.sqrt(square) * (-1.0 if z_axis[2] > 0 else 1.0)
    apex = _three(first + x * x_axis + y * y_axis + drop * z_axis)
    _check_taut(apex, anchors_m, legs_m)
    return apex


def _check_taut(
    apex_m: Place, anchors_m: tuple[Place, Place, Place], legs_m: tuple[float, float, float]
) -> None:
    try:
        three_leg_bridle(1.0, apex_m=apex_m, anchors_m=anchors_m)
    except ValueError as reason:
        raise ValueError(f"legs_m would not all be taut, got {legs_m}: {reason}") from reason


def _three(values: np.ndarray[tuple[int, ...], np.dtype[np.float64]]) -> tuple[float, float, float]:
    return (float(values[0]), float(values[1]), float(values[2]))
