"""
Supports that cannot push, as a hung body meets them: which of them are let go, and what the others
then carry.

Pure arithmetic in + - * / and square roots, so that the check in a browser finds the same to the
last digit.
"""

from collections.abc import Sequence
from math import fsum, sqrt
from typing import Literal, TypedDict

from builder.formulas.beams import (
    BodyLoad,
    CondensedBeam,
    Matrix,
    check_supports,
    condensed_beam,
    level_reactions_kg,
)
from builder.formulas.cite import cites
from builder.formulas.releasing import released_supports
from builder.formulas.sources import COTTLE_PANG_STONE

PLUMB_M = 0.000001
"""A centre of mass this near to an outermost support hangs plumb under it."""
ROUNDING = 0.000000001
"""A reaction below this share of the load is nothing."""
UNRESOLVED = 0.000001
"""A support that pushes by more than this share of the load shows that nothing was found."""

Weight = tuple[float, float]
"""The whole load and its centre. [kg], [m]"""
Stability = Literal["held", "balanced", "tips", "unresolved"]


class Carried(TypedDict):
    """
    What each support carries, nothing where the body tips or that was not found, and how far the
    body stands clear of each, nothing where no beam was needed to tell. [kg], [m if EI is known]
    """

    kg: list[float]
    rise: list[float]
    stability: Stability


class HungBody(TypedDict):
    """
    A body on level supports, seen once for all its cases, in rising order of place.

    ``order`` tells which support, as given, stands at each place. ``pull_kg`` are the reactions if
    supports could push. A single support makes no beam: then it and they are empty.
    """

    weight: Weight
    places_m: list[float]
    order: list[int]
    beam: CondensedBeam
    pull_kg: list[float]


def hung_body(loads: Sequence[BodyLoad], supports_m: Sequence[float]) -> HungBody:
    """
    A body with its loads on its supports, in any order.

    Raises
    ------
    ValueError
        If there is no support or two are at one place.
    """
    check_supports(supports_m)
    order = sorted(range(len(supports_m)), key=lambda index: supports_m[index])
    places_m = [supports_m[index] for index in order]
    body: HungBody = {
        "weight": weight_of(loads),
        "places_m": places_m,
        "order": order,
        "beam": {"supports_m": [], "curvature_per_m2": [], "stiffness_per_m3": []},
        "pull_kg": [],
    }
    if len(places_m) > 1:
        body["beam"] = condensed_beam(places_m)
        body["pull_kg"] = level_reactions_kg(body["beam"], loads)
    return body


def weight_of(loads: Sequence[BodyLoad]) -> Weight:
    """The whole load, and where along the body it acts; at 0 where there is none. [kg], [m]"""
    total_kg = fsum([load["kg"] for load in loads])
    if total_kg <= 0:
        return (total_kg, 0.0)
    moments = [load["kg"] * ((load["from_m"] + load["to_m"]) / 2) for load in loads]
    return (total_kg, fsum(moments) / total_kg)


def level_case(body: HungBody) -> Carried:
    """What the supports carry, all level, in the order they were given."""
    case = standing(body["weight"], body["places_m"])
    if case is None:
        case = without_pushing(body["pull_kg"], body["beam"]["stiffness_per_m3"])
    return in_given_order(case, body["order"])


@cites(
    COTTLE_PANG_STONE,
    "ch. 2, principal pivot (Schur complement), once for each support; then as for level supports,"
    " from memory",
    equation="R_i' = R_i - k_ij R_j / k_jj, support j let go; then R_i >= 0 as before",
)
def slack_case(body: HungBody, slack: int) -> Carried:
    """
    What level supports carry with one of them let go.

    Parameters
    ----------
    body
        A body on its supports.
    slack
        Which support is let go, counted from 0 in the order they were given. [-]

    Returns
    -------
    Carried
        Its reaction is 0; others may go slack too. In the order given. [kg]
    """
    count = len(body["places_m"])
    gone = body["order"].index(slack)
    kept = [place for place in range(count) if place != gone]
    case = standing(body["weight"], [body["places_m"][place] for place in kept])
    if case is None:
        case = without_one(body["pull_kg"], body["beam"]["stiffness_per_m3"], gone, kept)
    if len(case["kg"]) == 0:
        return case
    carried_kg = [0.0] * count
    for index in range(len(kept)):
        carried_kg[kept[index]] = case["kg"][index]
    return in_given_order({**case, "kg": carried_kg, "rise": []}, body["order"])


def without_one(pull_kg: list[float], stiffness: Matrix, gone: int, kept: list[int]) -> Carried:
    """
    What the others carry with one support let go: its share goes over to them as the beam's
    stiffness has it.
    """
    share = [stiffness[place][gone] / stiffness[gone][gone] for place in kept]
    pulls: list[float] = []
    rest: Matrix = []
    for row in range(len(kept)):
        pulls.append(pull_kg[kept[row]] - share[row] * pull_kg[gone])
        rest.append(
            [stiffness[kept[row]][place] - share[row] * stiffness[gone][place] for place in kept]
        )
    return without_pushing(pulls, rest)


def standing(weight: Weight, places_m: Sequence[float]) -> Carried | None:
    """
    The cases that need no beam: no load, a single support, and a centre of mass on or beyond the
    outermost supports; places in rising order.
    """
    total_kg, centre_m = weight
    count = len(places_m)
    if count == 0:
        return {"kg": [], "rise": [], "stability": "tips"}
    if total_kg <= 0:
        return {"kg": [0.0] * count, "rise": [], "stability": "held"}
    # The same differences as below, so that no centre falls between the two by rounding.
    if places_m[0] - centre_m > PLUMB_M or centre_m - places_m[-1] > PLUMB_M:
        return {"kg": [], "rise": [], "stability": "tips"}
    for index in (0, count - 1):
        if abs(centre_m - places_m[index]) <= PLUMB_M:
            alone = [0.0] * count
            alone[index] = total_kg
            return {"kg": alone, "rise": [], "stability": "balanced"}
    return None


def in_given_order(case: Carried, order: list[int]) -> Carried:
    """A case in rising order of place, put into the order the supports were given."""
    kg = [0.0] * len(case["kg"])
    rise = [0.0] * len(case["rise"])
    for place in range(len(kg)):
        kg[order[place]] = case["kg"][place]
    for place in range(len(rise)):
        rise[order[place]] = case["rise"][place]
    return {**case, "kg": kg, "rise": rise}


@cites(
    COTTLE_PANG_STONE,
    "ch. 1 and 4, contact as a linear complementarity problem; complementary pivoting, from memory",
    equation="R = R_level + K g; R_i >= 0; g_i >= 0; R_i g_i = 0 for every support",
)
def without_pushing(pull_kg: list[float], stiffness: Matrix) -> Carried:
    """
    What supports carry that can pull and not push.

    Parameters
    ----------
    pull_kg
        Reactions if supports could push. [kg]
    stiffness
        Symmetric, positive semidefinite: change of reaction i for rise above support j. [kg/m]

    Returns
    -------
    Carried
        What each carries and how far the body rises above it; ``unresolved`` where that was not
        found. [kg], [m]
    """
    if min(pull_kg) >= 0:
        return {"kg": pull_kg, "rise": [0.0] * len(pull_kg), "stability": "held"}
    size = evening_sizes(stiffness)
    released = released_supports(evened_pull(pull_kg, size), evened_stiffness(stiffness, size))
    rise = None if released is None else rise_over(released, pull_kg, stiffness)
    if released is not None and rise is not None:
        kg = lifted_kg(released, rise, pull_kg, stiffness)
        if is_resolved(kg, rise, pull_kg, size):
            return {"kg": not_below_0(kg), "rise": not_below_0(rise), "stability": "held"}
    return {"kg": [], "rise": [], "stability": "unresolved"}


def evening_sizes(stiffness: Matrix) -> list[float]:
    """
    What evens a stiffness out: supports close together are stiffer by orders of magnitude than
    those far apart.
    """
    return [1 / sqrt(stiffness[row][row]) for row in range(len(stiffness))]


def evened_pull(pull: list[float], size: list[float]) -> list[float]:
    """Reactions evened out, the largest of them 1."""
    sized = [value * each for value, each in zip(pull, size, strict=True)]
    largest = max([abs(value) for value in sized])
    return [value / largest for value in sized]


def evened_stiffness(stiffness: Matrix, size: list[float]) -> Matrix:
    """A stiffness evened out, 1 for each support by itself."""
    count = len(size)
    return [
        [stiffness[row][column] * (size[row] * size[column]) for column in range(count)]
        for row in range(count)
    ]


def rise_over(released: list[int], pull: list[float], stiffness: Matrix) -> list[float] | None:
    """
    How far the body rises over the supports that are let go, nothing over the others; None where
    the equations have no single answer.
    """
    part = [[stiffness[row][column] for column in released] for row in released]
    solved = solution(part, [-pull[row] for row in released])
    if solved is None:
        return None
    rise = [0.0] * len(pull)
    for place in range(len(solved)):
        rise[released[place]] = solved[place]
    return rise


def lifted_kg(
    released: list[int], rise: list[float], pull_kg: list[float], stiffness: Matrix
) -> list[float]:
    """What the others carry with some supports let go."""
    carried_kg = [0.0] * len(pull_kg)
    for row in range(len(pull_kg)):
        if row not in released:
            carried_kg[row] = pull_kg[row]
            for column in released:
                carried_kg[row] += stiffness[row][column] * rise[column]
    return carried_kg


def is_resolved(
    kg: list[float], rise: list[float], pull_kg: list[float], size: list[float]
) -> bool:
    """Whether no support pushes and none is passed through, but for rounding."""
    largest = max([abs(value * each) for value, each in zip(pull_kg, size, strict=True)])
    deepest = min([value / each for value, each in zip(rise, size, strict=True)])
    return min(kg) >= -UNRESOLVED * fsum(pull_kg) and deepest >= -UNRESOLVED * largest


def not_below_0(values: list[float]) -> list[float]:
    """Values without what rounding left below 0."""
    return [value if value > 0 else 0.0 for value in values]


def solution(matrix: Matrix, right: list[float]) -> list[float] | None:
    """A symmetric, positive system, solved by elimination; None where it has no single answer."""
    count = len(right)
    rows = [[*matrix[index], right[index]] for index in range(count)]
    for pivot in range(count):
        if rows[pivot][pivot] <= 0:
            return None
        for below in range(pivot + 1, count):
            factor = rows[below][pivot] / rows[pivot][pivot]
            for column in range(pivot, count + 1):
                rows[below][column] -= factor * rows[pivot][column]
    found = [0.0] * count
    for index in range(count - 1, -1, -1):
        value = rows[index][count]
        for column in range(index + 1, count):
            value -= rows[index][column] * found[column]
        found[index] = value / rows[index][index]
    return found
