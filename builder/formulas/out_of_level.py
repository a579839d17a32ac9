"""
The least and the most each support can carry while all supports are out of level by up to a stated
amount, exactly.

Corners of the tolerance (every support full high or full low) understate the most: it often lies
where one support only just goes slack.

The idea: let y be the height of the body at each support above the lowest level that the support
may have. Reactions are linear in y, and supports cannot push, so y and R are 0 or more: a linear
program. One condition is not linear: a support that carries stands no higher than its highest
level, so for each support either y is at most twice the tolerance or R is 0. Left out, it allows
too much, never too little; where the best answer breaks it at some support, the case is split in
two, one for either side of the 'or', until it holds for all. Every case keeps all levels of the
real problem that fall on its side, so the largest answer is the true extreme. The simplex steps
follow Bland's rule, which never goes round in a circle. It stops by count; then the relaxed answer,
which encloses the true one, is told as not proven.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from builder.formulas.beams import stiffness_kg_per_m
from builder.formulas.cite import cites
from builder.formulas.contact import (
    evened_pull,
    evened_stiffness,
    evening_sizes,
    hung_body,
    level_case,
    standing,
)
from builder.formulas.loads import Load
from builder.formulas.releasing import released_supports
from builder.formulas.sources import LAND_DOIG

Array = NDArray[np.float64]

ZERO = 1e-9
"""Rounding, as a share of the load or of the tolerance."""
TIE = 1e-12
"""Ratios this close are one: the rule against going round in circles has to see ties as ties."""
MOST_CASES = 20_000
"""Bound of one search, in cases looked at, so that the answer is the same on every machine."""
MOST_STEPS = 2_000
"""Bound of the steps within one case."""


@dataclass(frozen=True, slots=True)
class Extremes:
    """
    What one support can carry within the tolerance. [kg]

    ``settlements_m`` is a set of support levels, positive downwards, that gives ``most_kg``.
    ``proven`` is False where the search met its bound: then ``least_kg`` and ``most_kg`` still
    enclose the true values.
    """

    least_kg: float
    most_kg: float
    settlements_m: tuple[float, ...]
    proven: bool


@cites(
    LAND_DOIG,
    "branch and bound; contact conditions as in Cottle, Pang & Stone 1992",
    equation=(
        "max R_i over y >= 0, R = R_level + EI k y >= 0, for every j: y_j <= 2 h or R_j = 0; y:"
        " height above the lowest support level"
    ),
)
def out_of_level(
    loads: Sequence[Load], supports_m: Sequence[float], *, tolerance_m: float, ei_kn_m2: float
) -> tuple[Extremes, ...]:
    """
    Least and most that each support carries when every support may stand anywhere between
    ``-tolerance_m`` and ``+tolerance_m``.

    Parameters
    ----------
    loads
        Point and uniform loads. [m], [kg]
    supports_m
        Places of the supports along the body, in any order. [m]
    tolerance_m
        How far each support may stand above or below the common level. [m]
    ei_kn_m2
        Bending stiffness of the body. [kN·m²]

    Returns
    -------
    tuple of Extremes
        One for each support, in the order given; empty where the body tips. [kg], [m]

    Raises
    ------
    ValueError
        If the tolerance is negative, the stiffness is not above 0, there is no support or two are
        at one place.

    Notes
    -----
    Supports cannot push. Any level within the tolerance is possible and none is thought more
    likely. Each linear program leaves the condition 'low enough or slack' open for some supports
    and so cannot understate; a case is split until the condition holds for all. Straight beam,
    small deflections; shear flexibility and stretch of chain left out, both of which even the
    shares out.
    """
    if not 0 <= tolerance_m < math.inf:
        raise ValueError(f"tolerance_m must be a number of at least 0, got {tolerance_m}")
    body = hung_body([load.as_body_load for load in loads], supports_m)
    if tolerance_m == 0 or standing(body["weight"], body["places_m"]) is not None:
        given_kg = level_case(body)["kg"]
        return tuple(Extremes(kg, kg, (0.0,) * len(supports_m), True) for kg in given_kg)
    order = np.array(body["order"])
    stiffness_kg = np.array(stiffness_kg_per_m(body["beam"], ei_kn_m2))
    contact = _Contact.of(np.array(body["pull_kg"]), stiffness_kg * tolerance_m)
    found = [_extremes(contact, int(i), tolerance_m, order) for i in np.argsort(order)]
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _Contact:
    """
    All quantities of the contact problem as rows, linear in the heights y (in units of the
    tolerance, above the lowest level).

    Rows come in four blocks of N: height y, reaction R, room below the highest level 2 - y, and -R.
    Asking that a row be at least 0 states a condition. Reactions are shares of the load, divided by
    ``scale`` to keep rows of similar size.
    """

    rows: Array
    scale: Array
    total_kg: float
    start: list[int]

    @staticmethod
    def of(level_kg: Array, stiffness_kg: Array) -> "_Contact":
        count, total_kg = len(level_kg), float(level_kg.sum())
        stiff = stiffness_kg / total_kg
        scale = np.maximum(1.0, np.abs(stiff).max(axis=1))
        released = _released_when_level(level_kg / total_kg, stiff)
        pull = np.column_stack((level_kg / total_kg, stiff)) / scale[:, None]
        height = np.column_stack((np.zeros(count), np.eye(count)))
        room = np.column_stack((np.full(count, 2.0), -np.eye(count)))
        start = [count + j if j in released else j for j in range(count)]
        return _Contact(np.vstack((height, pull, room, -pull)), scale, total_kg, start)

    @property
    def count(self) -> int:
        return len(self.scale)

    def seen_from(self, corner: list[int]) -> Array:
        """All rows as functions of the N rows that are 0 at a corner."""
        turned = np.linalg.inv(self.rows[corner, 1:])
        slopes = self.rows[:, 1:] @ turned
        return np.column_stack((self.rows[:, 0] - slopes @ self.rows[corner, 0], slopes))


def _released_when_level(pull: Array, stiff: Array) -> list[int]:
    if pull.min() >= 0:
        return []
    stiffness = stiff.tolist()
    size = evening_sizes(stiffness) if np.diag(stiff).min() > 0 else [1.0] * len(pull)
    released = released_supports(
        evened_pull(pull.tolist(), size), evened_stiffness(stiffness, size)
    )
    if released is None:
        raise ArithmeticError("supports_m: which supports go slack when level was not found")
    return released


@dataclass(frozen=True, slots=True)
class _Peak:
    value: float
    heights: Array
    proven: bool


def _extremes(
    contact: _Contact,
    index: int,
    tolerance_m: float,
    order: np.ndarray[tuple[int, ...], np.dtype[np.intp]],
) -> Extremes:
    count = contact.count
    most = _search(contact, count + index)
    least = _search(contact, 3 * count + index)
    kg = contact.scale[index] * contact.total_kg
    levels = np.empty(count)
    levels[order] = tolerance_m * np.clip(1.0 - most.heights, -1.0, 1.0)
    return Extremes(
        max(0.0, float(-least.value * kg)),
        float(most.value * kg),
        tuple(float(level) for level in levels),
        most.proven and least.proven,
    )


def _search(contact: _Contact, goal: int) -> _Peak:
    """
    Most that a row can reach: relax, split on the support that breaks its condition most, drop what
    cannot beat the best.
    """
    count = contact.count
    level = contact.seen_from(contact.start)
    best = _Peak(float(level[goal, 0]), _resting_heights(level, count), True)
    bound = 0.0 if goal >= 3 * count else 1.0 / float(contact.scale[goal - count])
    try:
        root = _climb(contact, goal)
        bound = float(contact.seen_from(root)[goal, 0])
        cases = [(root, list(range(2 * count)))]
        for _ in range(MOST_CASES):
            if not cases:
                return best
            best = _looked_at(contact, cases, goal, best)
    except (_BoundMetError, np.linalg.LinAlgError):
        # the reader is told: the peak is then the relaxed one, which cannot be too low, and is
        # marked as not proven
        pass
    return _Peak(max(bound, best.value), best.heights, False)


def _looked_at(
    contact: _Contact, cases: list[tuple[list[int], list[int]]], goal: int, best: _Peak
) -> _Peak:
    """Take the last case: drop it, keep it as the new best, or split it in two."""
    count = contact.count
    corner, asked = cases.pop()
    reached = _repair(contact, corner, asked, goal, best.value)
    if reached is None:
        return best
    seen = contact.seen_from(reached)
    split = _broken(seen, count)
    if split is None:
        return _Peak(float(seen[goal, 0]), _resting_heights(seen, count), True)
    cases += [(reached, [*asked, 3 * count + split]), (reached, [*asked, 2 * count + split])]
    return best


def _resting_heights(seen: Array, count: int) -> Array:
    """Heights of the supports: the body's where it rests on them, lowest where it does not."""
    return np.where(seen[count : 2 * count, 0] > ZERO, seen[:count, 0], 0.0)


def _broken(seen: Array, count: int) -> int | None:
    """
    The support that carries while the body stands above its highest level; the worst of them, or
    None.
    """
    excess = np.minimum(-seen[2 * count : 3 * count, 0], 1e6) * (
        seen[2 * count : 3 * count, 0] < -ZERO
    )
    wrong = (
        excess * (seen[count : 2 * count, 0] > ZERO) * np.maximum(seen[count : 2 * count, 0], 0.0)
    )
    worst = int(np.argmax(wrong))
    return worst if wrong[worst] > 0 else None


def _climb(contact: _Contact, goal: int) -> list[int]:
    """
    Primal simplex with Bland's rule, from the level solution, with heights and reactions of at
    least 0 alone.
    """
    asked = np.arange(2 * contact.count)
    corner = list(contact.start)
    for _ in range(MOST_STEPS):
        seen = contact.seen_from(corner)
        rising = [k for k in range(contact.count) if seen[goal, 1 + k] > ZERO]
        if not rising:
            return corner
        k = min(rising, key=lambda place: corner[place])
        falling = asked[seen[asked, 1 + k] < -ZERO]
        ratios = np.maximum(seen[falling, 0], 0.0) / -seen[falling, 1 + k]
        corner[k] = int(falling[ratios <= ratios.min() + TIE].min())
    raise _BoundMetError


def _repair(
    contact: _Contact, corner: list[int], asked: list[int], goal: int, beat: float
) -> list[int] | None:
    """
    Dual simplex with Bland's rule: the best corner that meets all that is asked, or None where none
    beats what is known.
    """
    rows = np.array(sorted(asked))
    corner = list(corner)
    for _ in range(MOST_STEPS):
        seen = contact.seen_from(corner)
        if seen[goal, 0] <= beat + ZERO:
            return None
        short = rows[seen[rows, 0] < -ZERO]
        if not short.size:
            return corner
        row = int(short[0])
        costs = {
            k: max(-float(seen[goal, 1 + k]), 0.0) / float(seen[row, 1 + k])
            for k in range(contact.count)
            if seen[row, 1 + k] > ZERO
        }
        if not costs:
            return None
        cheapest = min(costs.values()) + TIE
        corner[min((k for k in costs if costs[k] <= cheapest), key=lambda place: corner[place])] = (
            row
        )
    raise _BoundMetError


class _BoundMetError(Exception):
    """A case took more steps than allowed."""
