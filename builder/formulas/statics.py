"""
What each support of a hung body carries: two supports by statics, more as a continuous beam.

Loads and reactions are masses in kg: a reaction of 500 kg is the pull of 500 kg at rest. Planning
figures: a competent person decides.
"""

import math
from collections.abc import Sequence

from builder.formulas.beams import (
    changes_kg,
    check_supports,
    checked_settlements_m,
    condensed_beam,
    level_reactions_kg,
    stiffness_kg_per_m,
)
from builder.formulas.cite import cites
from builder.formulas.contact import PLUMB_M
from builder.formulas.loads import Load, PointLoad, centre_of_mass_m, total_load_kg
from builder.formulas.sources import HIBBELER, KASSIMALI


@cites(
    HIBBELER,
    "ch. 5, equilibrium of a rigid body",
    equation="R_2 = sum(P_i (x_i - x_1)) / (x_2 - x_1); R_1 = sum(P_i) - R_2",
)
def two_support_reactions(
    loads: Sequence[Load], supports_m: tuple[float, float]
) -> tuple[float, float]:
    """
    What two supports carry, by force and moment alone.

    Parameters
    ----------
    loads
        Point and uniform loads; they may stand on overhangs. [m], [kg]
    supports_m
        Places of the two supports, in any order. [m]

    Returns
    -------
    tuple of two float
        Reactions in the order of the supports; negative where that support would have to push. [kg]

    Raises
    ------
    ValueError
        If the supports are at one place or not two.

    Notes
    -----
    Needs no stiffness: two supports are statically determinate.
    """
    check_supports(supports_m, at_least=2)
    if len(supports_m) != 2:
        raise ValueError(f"supports_m must hold 2 supports, got {len(supports_m)}")
    first_m, second_m = supports_m
    arm_kgm = math.fsum(load.total_kg * (load.centre_m - first_m) for load in loads)
    second_kg = arm_kgm / (second_m - first_m)
    return (total_load_kg(loads) - second_kg, second_kg)


@cites(
    KASSIMALI,
    "ch. 13, method of consistent deformations, with support settlements; App. D, three-moment"
    " equation; Müller-Breslau's principle",
    equation=(
        "R_i = sum(P n_i(x)) + sum(w integral of n_i) - EI sum(k_ij d_j); n_i: beam shape for unit"
        " movement of support i"
    ),
)
def reactions(
    loads: Sequence[Load],
    supports_m: Sequence[float],
    *,
    length_m: float | None = None,
    settlements_m: Sequence[float] | None = None,
    ei_kn_m2: float | None = None,
) -> tuple[float, ...]:
    """
    What each support carries if it can pull and push: a beam, continuous over all supports, with
    overhangs.

    Parameters
    ----------
    loads
        Point and uniform loads. [m], [kg]
    supports_m
        Places of the supports along the body, in any order. [m]
    length_m
        Length of the body; where given, loads and supports must lie on it. [m]
    settlements_m
        How far each support stands below the common level, in the order of the supports; needs
        ``ei_kn_m2``. [m]
    ei_kn_m2
        Bending stiffness of the body. [kN·m²]

    Returns
    -------
    tuple of float
        Reactions in the order of the supports; never clipped, negative where that support would
        have to push. [kg]

    Raises
    ------
    ValueError
        If there is no support, two are at one place, a load or support is off the body, a lone
        support is not over the centre of mass, settlements come without stiffness, or their number
        differs from that of the supports.

    Notes
    -----
    Straight beam of one section, small deflections, rigid level supports unless settlements are
    given. Left out: shear flexibility, hinges or play at joints, stretch of chain and rope, axial
    force. With level supports the answer does not depend on the stiffness. A hoist cannot push: see
    ``slack`` for what happens where a reaction here is negative.
    """
    check_supports(supports_m)
    _check_on_body(loads, supports_m, length_m)
    if len(supports_m) == 1:
        return (_lone_reaction_kg(loads, supports_m[0]),)
    order = sorted(range(len(supports_m)), key=lambda index: supports_m[index])
    beam = condensed_beam(supports_m)
    ordered_kg = level_reactions_kg(beam, [load.as_body_load for load in loads])
    if settlements_m is not None:
        settled_m = checked_settlements_m(settlements_m, len(supports_m))
        stiffness = stiffness_kg_per_m(beam, ei_kn_m2)
        lost_kg = changes_kg(stiffness, [settled_m[index] for index in order])
        ordered_kg = [kg - lost for kg, lost in zip(ordered_kg, lost_kg, strict=True)]
    given_kg = dict(zip(order, ordered_kg, strict=True))
    return tuple(given_kg[index] for index in range(len(order)))


def _lone_reaction_kg(loads: Sequence[Load], support_m: float) -> float:
    total_kg = total_load_kg(loads)
    if total_kg > 0 and abs(centre_of_mass_m(loads) - support_m) > PLUMB_M:
        raise ValueError(
            "supports_m: a lone support must be over the centre of mass at"
            f" {centre_of_mass_m(loads):.6g} m, got {support_m}"
        )
    return total_kg


def _check_on_body(
    loads: Sequence[Load], supports_m: Sequence[float], length_m: float | None
) -> None:
    if length_m is None:
        return
    if not 0 < length_m < math.inf:
        raise ValueError(f"length_m must be a number above 0, got {length_m}")
    ends = [("supports_m", place) for place in supports_m]
    for load in loads:
        ends += (
            [("at_m", load.at_m)]
            if isinstance(load, PointLoad)
            else [("from_m", load.from_m), ("to_m", load.to_m)]
        )
    for name, place in ends:
        if not 0 <= place <= length_m:
            raise ValueError(f"{name} must be on the body, 0 to {length_m} m, got {place}")
