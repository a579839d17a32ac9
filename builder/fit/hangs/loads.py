"""
What a hang brings to its supports: the loads as stated or worked out, and the hoists, each at the
least and at the most.
"""

from math import fsum

from builder.fit.hangs.cases import CasesFound, cases_of, one_case
from builder.fit.hangs.hoist_weights import hoists_of
from builder.fit.hangs.issues import issue
from builder.fit.hangs.records import Brought, Cases, Share
from builder.fit.hangs.sentences import (
    CAN_IT_BE_CARRIED,
    CANNOT_BE_TOLD,
    FACTOR_COUNTED,
    HELD_WITHIN,
    WEIGHT_NOT_SAID,
)
from builder.fit.records import HangAsked, Section
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import number_of
from builder.fit.verdicts import ASK
from builder.fit.wording import both, digits
from builder.formulas.unrelieved import Ways, unrelieved_kg


def loads_of(hang: HangAsked, section: Section) -> Brought:
    """
    The loads of one hang: ``low`` and ``high`` are cases of what each load brings to each support,
    factor included, hoists not. [kg]

    The level case is the low one; the high ones add each support slack in turn. Where nothing can
    be worked out, all of it may come on any support.
    """
    found = stated_or_found(hang)
    cases = found["cases"]
    issues = [issue(ASK, WEIGHT_NOT_SAID)] if is_open(hang) else []
    if len(cases) == 0:
        reason = fill(CANNOT_BE_TOLD, {"why": found["why"]})
        issues.append(issue(ASK, reason, question=CAN_IT_BE_CARRIED))
    low = cases[:1] if len(cases) > 0 else anywhere(hang)
    high = held_cases(hang, cases) if len(cases) > 0 else low
    factor = factor_of(section)
    hoists = hoists_of(hang, section)
    return {
        "low": times(low, factor),
        "high": times(high, factor),
        "factor": factor,
        "hoist_low": hoists["low"] * factor,
        "hoist_high": hoists["high"] * factor,
        "issues": [*issues, *hoists["issues"]],
        "notes": [*hoists["notes"], *factor_notes(factor), *held_notes(hang, cases)],
    }


def held_cases(hang: HangAsked, cases: Cases) -> Cases:
    """
    The cases that count at the most. Where the show has a load cell on every support and stops
    before one goes so far beyond its level load, that counts and no slack support does.
    """
    held = hang["held"]
    return cases if held is None or len(cases) < 2 else times(cases[:1], 1.0 + held)


def held_notes(hang: HangAsked, cases: Cases) -> list[str]:
    """What a hang is counted with where load cells hold its supports."""
    held = hang["held"]
    if held is None or len(cases) < 2:
        return []
    return [fill(HELD_WITHIN, {"share": both("share", held)[0]})]


def is_open(hang: HangAsked) -> bool:
    """Whether the rider does not say what a hang weighs."""
    return len(hang["loads"]) == 0 and any(one["load_kg"] is None for one in hang["supports"])


def stated_or_found(hang: HangAsked) -> CasesFound:
    """
    What the show's plot states for every support, as one case, or what is worked out; hoists alone
    where the rider does not say what it weighs.
    """
    supports = hang["supports"]
    if is_open(hang):
        return {"cases": [one_case([0.0 for _ in supports])], "why": ""}
    stated = [support["load_kg"] for support in supports if support["load_kg"] is not None]
    if len(stated) == len(supports):
        return {"cases": [one_case(stated)], "why": ""}
    return cases_of(hang["loads"], [support["at_m"] for support in supports])


def times(cases: Cases, factor: float) -> Cases:
    """Cases with every load so many times as large."""
    return [[[[kg * factor for kg in parts] for parts in way] for way in case] for case in cases]


def factor_of(section: Section) -> float:
    """The house's factor for starting and stopping, 1 where it asks for none."""
    for item in items_of(section, "dynamic_factor"):
        factor = number_of(item, "factor")
        if factor is not None:
            return factor
    return 1.0


def factor_notes(factor: float) -> list[str]:
    """What the house's factor does to the loads."""
    if factor == 1:
        return []
    return [fill(FACTOR_COUNTED, {"factor": digits(factor, 2)})]


def anywhere(hang: HangAsked) -> Cases:
    """All of the load on each support in turn. [kg]"""
    total_kg = 0.0
    for load in hang["loads"]:
        total_kg += load["kg"]
    count = len(hang["supports"])
    return [
        one_case([total_kg if support == alone else 0.0 for support in range(count)])
        for alone in range(count)
    ]


def least_on_kg(cases: Cases, shares: list[Share], hoist_kg: float) -> float:
    """The least of some supports together over the cases, hoists counted. [kg]"""
    return min([on_supports_kg(case, shares, hoist_kg) for case in cases], default=0.0)


def most_on_kg(cases: Cases, shares: list[Share], hoist_kg: float) -> float:
    """The most of some supports together over the cases, hoists counted. [kg]"""
    return max([on_supports_kg(case, shares, hoist_kg) for case in cases], default=0.0)


def on_supports_kg(case: Ways, shares: list[Share], hoist_kg: float) -> float:
    """
    What some supports carry together in one case, hoists counted; a load that lifts them is
    nothing. [kg]
    """
    return unrelieved_kg(case, shares) + hoist_kg * fsum([part for _, part in shares])


def most_on_support_kg(brought: Brought, support: int) -> float:
    """The most that a hang brings to one support, hoists counted. [kg]"""
    return most_on_kg(brought["high"], [(support, 1.0)], brought["hoist_high"])
