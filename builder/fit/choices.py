"""
Loads and hangs that count on a condition, and loads that one of several ways feeds: which of them
stand, and in which way, before all are judged together.
"""

from typing import TypedDict

from builder.fit.arrangements.records import View
from builder.fit.needs.composed import (
    gravest_of_parts,
    in_place_of,
    may_hold,
    reason_of,
    under_condition,
    without_need,
)
from builder.fit.needs.within import is_joint
from builder.fit.records import (
    HangAsked,
    IfAsked,
    LoadsAsked,
    PowerAsked,
    Requirement,
    TrimAsked,
    Verdict,
)
from builder.fit.requirements import Known, alone_once, power_once, steel_once
from builder.fit.verdicts import ASK, RANK, SHORT

OUT = "-"
"""Stands for a load or a hang that is not needed, in the name of what is judged together."""


class Stand(TypedDict):
    """
    A requirement that is judged beside others, with its condition and the verdict on that if it has
    one; ``way`` is which of several ways is tried, below 0 where it is not needed.
    """

    need: Requirement
    condition: IfAsked | None
    met: Verdict | None
    way: int


def by_ways(requirements: list[Requirement], view: View, known: Known) -> list[Verdict]:
    """A verdict for each requirement, in order."""
    stands = [
        stand_of(requirements[index], str(index), view, known) for index in range(len(requirements))
    ]
    for index in range(len(stands)):
        choose_way(index, stands, view, known)
    together = judged_together(stands, view, known)
    verdicts: list[Verdict] = []
    for index in range(len(requirements)):
        stand, need = stands[index], requirements[index]
        if not is_joint(stand["need"]):
            verdicts.extend(alone_once(need, str(index), view, known))
        else:
            verdicts.append(whole_answer(stand, together[index]))
    return verdicts


def stand_of(need: Requirement, name: str, view: View, known: Known) -> Stand:
    """A requirement with the verdict on its condition, if it is judged beside others."""
    if need["sort"] != "if" or not is_joint(need["then"]):
        return {"need": need, "condition": None, "met": None, "way": 0}
    met = alone_once(need["condition"], f"if {name}", view, known)[0]
    way = 0 if may_hold(need, met) else -1
    return {"need": need["then"], "condition": need, "met": met, "way": way}


def choose_way(index: int, stands: list[Stand], view: View, known: Known) -> None:
    """
    Take the way that feeds a load best beside all others as they stand: fewest short, then fewest
    to ask, then its own verdict, then the rider's order.
    """
    stand = stands[index]
    need = stand["need"]
    if need["sort"] != "loads" or stand["way"] < 0:
        return
    best = 0
    least: list[int] = []
    for way in range(len(need["ways"])):
        stand["way"] = way
        told = judged_together(stands, view, known)
        own = max([RANK[answer["verdict"]] for answer in told[index]])
        score = [count_of(told, SHORT), count_of(told, ASK), own]
        if len(least) == 0 or is_less(score, least):
            best, least = way, score
    stand["way"] = best


def is_less(one: list[int], other: list[int]) -> bool:
    """Whether the first number in which two lists differ is less in the one."""
    for own, others in zip(one, other, strict=True):
        if own != others:
            return own < others
    return False


def count_of(told: list[list[Verdict]], word: str) -> int:
    """How many verdicts are of one word."""
    return len([answer for each in told for answer in each if answer["verdict"] == word])


def judged_together(stands: list[Stand], view: View, known: Known) -> list[list[Verdict]]:
    """The verdicts on all loads and hangs as they stand: for each requirement those of its own."""
    loads: list[PowerAsked] = []
    hangs: list[HangAsked | TrimAsked] = []
    names: list[str] = []
    for stand in stands:
        need = stand["need"]
        if stand["way"] < 0:
            names.append(OUT)
        elif need["sort"] == "power":
            loads.append(need)
        elif need["sort"] == "loads":
            loads.extend(need["ways"][stand["way"]])
        elif need["sort"] == "hang" or need["sort"] == "trim":
            hangs.append(need)
        names.append(str(stand["way"]))
    name = f" {' '.join(names)}"
    on_power = power_once(loads, name, view, known)
    on_steel = steel_once(hangs, name, view, known)
    told: list[list[Verdict]] = []
    loads_told = 0
    hangs_told = 0
    for stand in stands:
        own: list[Verdict] = []
        need = stand["need"]
        if stand["way"] >= 0 and need["sort"] == "power":
            own = [on_power[loads_told]]
            loads_told += 1
        elif stand["way"] >= 0 and need["sort"] == "loads":
            end = loads_told + len(need["ways"][stand["way"]])
            own = on_power[loads_told:end]
            loads_told = end
        elif stand["way"] >= 0 and (need["sort"] == "hang" or need["sort"] == "trim"):
            own = [on_steel[hangs_told]]
            hangs_told += 1
        told.append(own)
    return told


def whole_answer(stand: Stand, own: list[Verdict]) -> Verdict:
    """The verdict on a load or a hang, with its condition and its ways."""
    need, condition, met = stand["need"], stand["condition"], stand["met"]
    if condition is not None and met is not None and stand["way"] < 0:
        return without_need(condition, met)
    answer = of_ways(need, own) if need["sort"] == "loads" else {**own[0]}
    if condition is None or met is None:
        return answer
    return under_condition(condition, met, answer)


def of_ways(need: LoadsAsked, own: list[Verdict]) -> Verdict:
    """The verdict on a load that one of several ways feeds: that of the way that was taken."""
    if len(own) == 1:
        return in_place_of({**own[0], "reason": reason_of(own[0])}, need)
    return gravest_of_parts(need, [{**answer} for answer in own])
