"""
The house's hoists for the hangs that ask for them: whether enough are left, and whether the
strongest lifts what comes on each support.
"""

from builder.fit.hangs.hoist_weights import working_hoists
from builder.fit.hangs.issues import issue
from builder.fit.hangs.loads import least_on_kg, most_on_kg
from builder.fit.hangs.records import Brought, Issue, Share, SoFar
from builder.fit.hangs.sentences import (
    BRING_HOISTS,
    FREE_UNKNOWN,
    MAY_A_HOIST,
    RATINGS_UNKNOWN,
    STRONGER,
    TOO_FEW,
    TOO_WEAK,
    WHICH_HOISTS,
)
from builder.fit.records import HangAsked, Item, Section
from builder.fit.sentences import fill
from builder.fit.values import least_of, most_of, number_of, value_of
from builder.fit.verdicts import ASK, SHORT, fact_of
from builder.fit.wording import both, digits

GRAM_KG = 0.001
"""What a sum of masses may lose in arithmetic; no tolerance on a limit."""


def hoist_issues(hang: HangAsked, brought: Brought, so_far: SoFar, section: Section) -> list[Issue]:
    """
    What stands against hanging from the house's hoists, those of earlier hangs counted.

    Which hoist goes where is the riggers' to say.
    """
    if hang["hoists"] != "house":
        return []
    so_far["hoists"] += len(hang["supports"])
    hoists = working_hoists(section)
    if len(hoists) == 0:
        return []
    return [*too_few(so_far["hoists"], hoists), *too_weak(hang, brought, hoists)]


def too_few(wanted: int, hoists: list[Item]) -> list[Issue]:
    """Whether the house has that many left."""
    least, most = 0.0, 0.0
    for hoist in hoists:
        value = value_of(hoist, "free")
        at_most = most_of(value)
        if at_most is None:
            return [issue(ASK, FREE_UNKNOWN, question=WHICH_HOISTS)]
        at_least = least_of(value)
        least += 0.0 if at_least is None else max(at_least, 0.0)
        most += max(at_most, 0.0)
    if wanted <= least:
        return []
    if wanted <= most:
        return [issue(ASK, FREE_UNKNOWN, question=WHICH_HOISTS)]
    reason = fill(TOO_FEW, {"free": digits(most, 0), "wanted": digits(wanted, 0)})
    fact = fact_of(hoists[0]["values"]["free"], hoists[0])
    return [{**issue(SHORT, reason, remedy=BRING_HOISTS), "fact": fact}]


def too_weak(hang: HangAsked, brought: Brought, hoists: list[Item]) -> list[Issue]:
    """
    Whether the strongest hoist is rated for the heaviest support.

    The house's factor is left out: a hoist's rating has its maker's own.
    """
    strongest_kg = 0.0
    for hoist in hoists:
        rating_kg = number_of(hoist, "rating")
        if rating_kg is None:
            return [issue(ASK, RATINGS_UNKNOWN, question=WHICH_HOISTS)]
        strongest_kg = max(strongest_kg, rating_kg)
    for support in range(len(hang["supports"])):
        alone: list[Share] = [(support, 1.0)]
        worst_kg = most_on_kg(brought["high"], alone, 0.0) / brought["factor"]
        if worst_kg > strongest_kg + GRAM_KG:
            level_kg = least_on_kg(brought["low"], alone, 0.0) / brought["factor"]
            return [too_weak_issue(strongest_kg, worst_kg, level_kg)]
    return []


def too_weak_issue(strongest_kg: float, worst_kg: float, level_kg: float) -> Issue:
    """A support too heavy for the strongest hoist: short if it is so all level, else asked."""
    parts = {"rating": both("mass", strongest_kg)[0], "load": both("mass", worst_kg)[0]}
    if level_kg > strongest_kg + GRAM_KG:
        return issue(SHORT, fill(TOO_WEAK, parts), remedy=STRONGER)
    return issue(ASK, fill(TOO_WEAK, parts), question=MAY_A_HOIST)
