"""
Hoists cannot push: which supports of a hung body go slack, and what the others then carry.

A support either carries (its reaction is above 0 and the body rests on it) or is slack (it carries
nothing and the body stands clear of it). The same cases as the check of a show works out.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from builder.formulas.beams import changes_kg, checked_settlements_m, stiffness_kg_per_m
from builder.formulas.cite import cites
from builder.formulas.contact import (
    ROUNDING,
    Carried,
    HungBody,
    hung_body,
    in_given_order,
    level_case,
    slack_case,
    standing,
    without_pushing,
)
from builder.formulas.loads import Load
from builder.formulas.sources import COTTLE_PANG_STONE

Stability = Literal["held", "balanced", "tips"]


@dataclass(frozen=True, slots=True)
class Held:
    """
    How supports that cannot push hold a body, in the order the supports were given.

    ``slack`` lists the supports, counted from 0, that carry nothing. ``rise_m`` is how far the body
    stands clear of each support; None where no stiffness was given. ``stability`` is ``balanced``
    where all hangs on one support, and ``tips`` where no supports can hold the body: then there are
    no reactions. [kg], [m]
    """

    reactions_kg: tuple[float, ...]
    slack: tuple[int, ...]
    rise_m: tuple[float, ...] | None
    stability: Stability


@cites(
    COTTLE_PANG_STONE,
    "ch. 1 and 4, contact as a linear complementarity problem; complementary pivoting, from memory",
    equation=(
        "R = R_level - EI k (s - g); R_i >= 0; g_i >= 0; R_i g_i = 0 for every support; g: rise"
        " above the support"
    ),
)
def held(
    loads: Sequence[Load],
    supports_m: Sequence[float],
    *,
    settlements_m: Sequence[float] | None = None,
    ei_kn_m2: float | None = None,
) -> Held:
    """
    What supports carry that can pull but not push.

    Parameters
    ----------
    loads
        Point and uniform loads. [m], [kg]
    supports_m
        Places of the supports along the body, in any order. [m]
    settlements_m
        How far each support stands below the common level; needs ``ei_kn_m2``. [m]
    ei_kn_m2
        Bending stiffness of the body; level supports do not need it, and without it there is no
        rise. [kN·m²]

    Returns
    -------
    Held
        Reactions, slack supports, rise, and whether the body is held, balanced on one support, or
        tips. [kg], [m]

    Raises
    ------
    ValueError
        If there is no support, two are at one place, settlements come without stiffness or in
        another number, or the stiffness is not above 0.

    Notes
    -----
    Supports are released and taken up again until none pushes and none is passed through; reactions
    are unique. Straight beam, small deflections, rigid supports. A body is held only while its
    centre of mass is between two supports, however stiff it is.
    """
    body = hung_body([load.as_body_load for load in loads], supports_m)
    settled_m = checked_settlements_m(settlements_m, len(supports_m))
    needs_no_beam = standing(body["weight"], body["places_m"]) is not None
    if needs_no_beam or (settlements_m is None and ei_kn_m2 is None):
        return _as_held(level_case(body), body["weight"][0])
    return _out_of_level(body, settled_m, ei_kn_m2)


@cites(
    COTTLE_PANG_STONE,
    "ch. 2, principal pivot (Schur complement), once for each support; then as for level supports,"
    " from memory",
    equation="R_i' = R_i - k_ij R_j / k_jj, support j let go; then R_i >= 0 as before",
)
def each_slack(loads: Sequence[Load], supports_m: Sequence[float]) -> tuple[Held, ...]:
    """
    What level supports carry when each in turn is let go.

    Parameters
    ----------
    loads
        Point and uniform loads. [m], [kg]
    supports_m
        Places of the supports along the body, in any order. [m]

    Returns
    -------
    tuple of Held
        Entry j is the case with support j let go: it is listed as slack and carries 0. ``rise_m``
        is None. [kg]

    Raises
    ------
    ValueError
        If there is no support or two are at one place.

    Notes
    -----
    Others may go slack too; then they are released as well. The stiffness of the body does not
    matter.
    """
    body = hung_body([load.as_body_load for load in loads], supports_m)
    total_kg = body["weight"][0]
    return tuple(
        _as_held(slack_case(body, gone), total_kg, gone) for gone in range(len(supports_m))
    )


def _out_of_level(body: HungBody, settled_m: Sequence[float], ei_kn_m2: float | None) -> Held:
    """Supports that stand below the common level, in the order given."""
    stiffness = stiffness_kg_per_m(body["beam"], ei_kn_m2)
    ordered_m = [settled_m[index] for index in body["order"]]
    lost_kg = changes_kg(stiffness, ordered_m)
    pull_kg = [kg - lost for kg, lost in zip(body["pull_kg"], lost_kg, strict=True)]
    case = in_given_order(without_pushing(pull_kg, stiffness), body["order"])
    return replace(_as_held(case, body["weight"][0]), rise_m=tuple(case["rise"]))


def _as_held(case: Carried, total_kg: float, gone: int | None = None) -> Held:
    """A case as departments see it; ``gone`` is the support that was let go."""
    if case["stability"] == "unresolved":
        raise ArithmeticError(
            f"supports_m: which of {total_kg} kg comes on which support was not found"
        )
    if case["stability"] == "tips":
        return Held((), (), None, "tips")
    slack = {gone} if gone is not None else set()
    if total_kg > 0:
        slack |= {index for index, kg in enumerate(case["kg"]) if kg <= ROUNDING * total_kg}
    return Held(tuple(case["kg"]), tuple(sorted(slack)), None, case["stability"])
