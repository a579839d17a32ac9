"""
Hoists cannot push: which supports of a hung body go slack, and what the others then carry.

A support either carries (its reaction is above 0 and the body rests on it) or is slack (it carries
nothing and the body stands clear of it).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from builder.formulas.beams import (
    Array,
    _checked_settlements,
    _checked_supports,
    condensed_beam,
    level_reactions_kg,
    stiffness_kg_per_m,
)
from builder.formulas.cite import cites
from builder.formulas.loads import Load, centre_of_mass_m, total_load_kg
from builder.formulas.sources import COTTLE_PANG_STONE

PLUMB_M = 1e-6
"""A centre of mass this near to an outermost support hangs plumb under it."""
ROUNDING = 1e-9
"""A reaction below this share of the load is nothing."""

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
    places = np.array(_checked_supports(supports_m))
    moved = (
        np.zeros(len(places))
        if settlements_m is None
        else _checked_settlements(settlements_m, len(places))
    )
    order = np.argsort(places)
    standing = _standing(_weighed(loads), places[order])
    if standing is not None:
        return _in_given_order(standing, order)
    beam = condensed_beam(places)
    level_kg = level_reactions_kg(beam, loads)
    if settlements_m is None and ei_kn_m2 is None:
        unit_stiffness = beam.stiffness_per_m3
        return _in_given_order(_solved(level_kg, unit_stiffness, known_stiffness=False), order)
    stiffness = stiffness_kg_per_m(beam, ei_kn_m2)
    return _in_given_order(
        _solved(level_kg - stiffness @ moved[order], stiffness, known_stiffness=True), order
    )


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
    places = np.array(_checked_supports(supports_m))
    if len(places) < 3:
        return tuple(_without(_weighed(loads), places, j) for j in range(len(places)))
    order = np.argsort(places)
    beam = condensed_beam(places)
    level_kg, stiffness = level_reactions_kg(beam, loads), beam.stiffness_per_m3
    weighed = _weighed(loads)
    cases = [_let_go(weighed, places[order], level_kg, stiffness, j) for j in range(len(places))]
    by_given = {int(order[j]): _in_given_order(case, order) for j, case in enumerate(cases)}
    return tuple(by_given[j] for j in range(len(places)))


Weighed = tuple[float, float]
"""The whole load and its centre. [kg], [m]"""


def _weighed(loads: Sequence[Load]) -> Weighed:
    total_kg = total_load_kg(loads)
    return (total_kg, centre_of_mass_m(loads) if total_kg > 0 else 0.0)


def _standing(weighed: Weighed, places: Array) -> Held | None:
    """
    The cases that need no beam: no load, one support, and a centre of mass on or beyond the
    outermost supports.
    """
    count, (total_kg, centre_m) = len(places), weighed
    if total_kg == 0:
        return Held((0.0,) * count, (), None, "held")
    if centre_m < places[0] - PLUMB_M or centre_m > places[-1] + PLUMB_M:
        return Held((), (), None, "tips")
    for index in (0, count - 1):
        if abs(centre_m - places[index]) <= PLUMB_M:
            alone = tuple(total_kg if i == index else 0.0 for i in range(count))
            return Held(alone, tuple(i for i in range(count) if i != index), None, "balanced")
    return None


def _without(weighed: Weighed, places: Array, gone: int) -> Held:
    """One of two supports, or the only one, let go."""
    left = np.delete(places, gone)
    case = (_standing(weighed, left) if len(left) else None) or Held((), (), None, "tips")
    return _put_back(case, gone, len(places))


def _let_go(weighed: Weighed, places: Array, level_kg: Array, stiffness: Array, gone: int) -> Held:
    """The beam without one support, in rising order of place."""
    keep = np.arange(len(places)) != gone
    case = _standing(weighed, places[keep])
    if case is None:
        column = stiffness[keep, gone] / stiffness[gone, gone]
        case = _solved(
            level_kg[keep] - column * level_kg[gone],
            stiffness[np.ix_(keep, keep)] - np.outer(column, stiffness[gone, keep]),
            known_stiffness=False,
        )
    return _put_back(case, gone, len(places))


def _put_back(case: Held, gone: int, count: int) -> Held:
    """Number a case without one support as if that support were there and slack."""
    if case.stability == "tips":
        return case
    kept = [i for i in range(count) if i != gone]
    reactions_kg = [0.0] * count
    for i, reaction_kg in zip(kept, case.reactions_kg, strict=True):
        reactions_kg[i] = reaction_kg
    return Held(
        tuple(reactions_kg),
        tuple(sorted([gone, *(kept[i] for i in case.slack)])),
        None,
        case.stability,
    )


def _in_given_order(case: Held, order: np.ndarray[tuple[int, ...], np.dtype[np.intp]]) -> Held:
    """Turn a case in rising order of place into the order the supports were given."""
    if not case.reactions_kg:
        return case
    place_of = np.argsort(order)
    rise_m = None if case.rise_m is None else tuple(case.rise_m[i] for i in place_of)
    return Held(
        tuple(case.reactions_kg[i] for i in place_of),
        tuple(sorted(int(order[i]) for i in case.slack)),
        rise_m,
        case.stability,
    )


def _solved(pull_kg: Array, stiffness: Array, *, known_stiffness: bool) -> Held:
    """Release what pushes, take up what is passed through, and say what carries."""
    total_kg = float(pull_kg.sum())
    found_kg, rise = pull_kg, np.zeros(len(pull_kg))
    if pull_kg.min() < 0:
        found_kg, rise = _released(pull_kg, stiffness, total_kg)
    carried = found_kg.tolist()
    slack = tuple(i for i, kg in enumerate(carried) if kg <= ROUNDING * total_kg)
    return Held(tuple(carried), slack, tuple(rise.tolist()) if known_stiffness else None, "held")


def _released(pull_kg: Array, stiffness: Array, total_kg: float) -> tuple[Array, Array]:
    """
    Reactions and rise once no support pushes, computed afresh from the set of released supports.
    """
    even = 1 / np.sqrt(
        np.diag(stiffness)
    )  # supports close together are stiffer by orders of magnitude than those far apart
    evened_pull, evened_stiffness = (
        pull_kg * even / np.abs(pull_kg * even).max(),
        stiffness * np.outer(even, even),
    )
    released = complementary_release(evened_pull, evened_stiffness)
    rise = np.zeros(len(pull_kg))
    rise[released] = even[released] * np.linalg.solve(
        evened_stiffness[np.ix_(released, released)], -(pull_kg * even)[released]
    )
    found_kg = pull_kg + stiffness @ rise
    found_kg[released] = 0.0
    if (
        found_kg.min() < -1e-6 * total_kg
        or (rise / even).min() < -1e-6 * np.abs(pull_kg * even).max()
    ):
        raise ArithmeticError(
            f"supports_m: contact was not resolved, least reaction {found_kg.min()} kg of"
            f" {total_kg} kg"
        )
    return np.maximum(found_kg, 0.0), np.maximum(rise, 0.0)


@cites(
    COTTLE_PANG_STONE,
    "ch. 4, Lemke's method with lexicographic ratios, from memory",
    equation=(
        "w = q + M z; w >= 0; z >= 0; w_i z_i = 0, found by lifting all supports alike and lowering"
        " that lift to 0"
    ),
)
def complementary_release(pull: Array, stiffness: Array) -> list[int]:
    """
    Which supports to release so that none pushes and none is passed through.

    Parameters
    ----------
    pull
        Reactions if supports could push, of a load of 1. [-]
    stiffness
        Symmetric, positive semidefinite: change of reaction i for rise above support j. [-]

    Returns
    -------
    list of int
        The released supports, counted from 0; what is left can carry the load. [-]

    Raises
    ------
    ValueError
        If no set of supports can carry the load without pushing.

    Notes
    -----
    A common extra pull on all supports is taken away bit by bit; at every step one support is
    released or taken up again. Lexicographic ratios keep it from going round in circles, so it ends
    for every semidefinite stiffness.
    """
    count = len(pull)
    if pull.min() >= 0:
        return []
    table = np.hstack((np.eye(count), -stiffness, -np.ones((count, 1)), pull[:, None]))
    basis = list(range(count))
    entering, row = 2 * count, min(range(count), key=lambda i: (pull[i], -i))
    while True:
        table[row] /= table[row, entering]
        others = np.arange(count) != row
        table[others] -= np.outer(table[others, entering], table[row])
        leaving, basis[row] = basis[row], entering
        if leaving == 2 * count:
            return [index - count for index in sorted(basis) if index >= count]
        entering = leaving + count if leaving < count else leaving - count
        row = _lexicographic_row(table, entering, basis, count)


def _lexicographic_row(table: Array, entering: int, basis: list[int], count: int) -> int:
    """
    The row that first falls to 0, ties broken so that no basis comes twice; the common pull leaves
    as soon as it can.
    """
    column = table[:, entering]
    rows = np.flatnonzero(column > 1e-11)
    if not rows.size:
        raise ValueError("pull: no set of supports can carry this load without pushing")
    ratios = table[rows, -1] / column[rows]
    tied = rows[ratios <= ratios.min() + 1e-13]
    for i in tied:
        if basis[i] == 2 * count:
            return int(i)
    return int(min(tied, key=lambda i: tuple(table[i, :count] / column[i])))
