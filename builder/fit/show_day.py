"""
Several acts on one day: what adds up, and how much of the deck is free in front of what stays.
"""

from math import fsum
from typing import TypedDict

from builder.fit.margins import signed
from builder.fit.needs.amounts import Answer, beyond_a_hair
from builder.fit.needs.choosing import items_for
from builder.fit.needs.one_item import by_item
from builder.fit.needs.sentences import CHOSEN
from builder.fit.needs.several_items import better
from builder.fit.records import (
    FitPack,
    Item,
    NeedAsked,
    RiderAsked,
    Rule,
    Strictness,
    Value,
    Verdict,
)
from builder.fit.sections import section_of
from builder.fit.sentences import BOUNDED, NOT_SAID, fill
from builder.fit.show_day_sentences import (
    DEPTH_LEFT,
    DEPTH_SHORT,
    HOW_DEEP,
    IN_FRONT,
    STAYS_UNKNOWN,
    TOGETHER,
)
from builder.fit.values import least_of, most_of
from builder.fit.verdicts import (
    FITS,
    SHORT,
    asked,
    fact_of,
    of_the_act,
    settled,
    verdict,
    with_remedy,
)
from builder.fit.wording import both

THE_DAY = "The day"
AISLE_M = 0.9
DEPTH = "stage depth"
SUM, SHARED = "sum", "shared"


class OtherAct(TypedDict):
    """Another act of the day, and how deep what it leaves on deck is, where that is known. [m]"""

    act: str
    stays_m: float | None


def day_requirements(riders: list[RiderAsked], pack: FitPack) -> list[NeedAsked]:
    """
    One requirement more for each thing that several acts ask and that adds up over the day, and
    another for what only should be there on top.
    """
    requirements: list[NeedAsked] = []
    for rule in pack["rules"]:
        if rule["day"] in (SUM, SHARED):
            asking = [need for need in needs_of(riders, rule["key"]) if counts_today(need)]
            musts = [need for need in asking if need["strictness"] == "must"]
            must = adding_up(rule, musts)
            every = adding_up(rule, asking)
            if of_several(must):
                requirements.append(together(rule, must, "must"))
            if of_several(every) and total_of(every) > total_of(must):
                requirements.append(together(rule, every, "should"))
    return requirements


def adding_up(rule: Rule, asking: list[NeedAsked]) -> list[NeedAsked]:
    """
    What adds up of what acts ask: of each act the most, and of what they share the most of all.
    """
    acts: list[NeedAsked] = []
    shared: list[NeedAsked] = []
    for need in asking:
        is_shared = rule["day"] == SHARED and not need["own"]
        with_most(shared if is_shared else acts, need, "" if is_shared else need["act"])
    return [*acts, *shared] if rule["day"] == SUM or len(acts) > 0 else []


def of_several(asking: list[NeedAsked]) -> bool:
    """Whether several acts ask."""
    return any(need["act"] != asking[0]["act"] for need in asking)


def with_most(kept: list[NeedAsked], need: NeedAsked, act: str) -> None:
    """Keep a need in the place of a smaller one of its act, or of any where no act is named."""
    for index in range(len(kept)):
        if act == "" or kept[index]["act"] == act:
            if need["low"] > kept[index]["low"]:
                kept[index] = need
            return
    kept.append(need)


def total_of(asking: list[NeedAsked]) -> float:
    """The sum of what is asked. [SI]"""
    return fsum([need["low"] for need in asking])


def needs_of(riders: list[RiderAsked], key: str) -> list[NeedAsked]:
    """What riders ask of one rule."""
    needs: list[NeedAsked] = []
    for rider in riders:
        for requirement in rider["requirements"]:
            if requirement["sort"] == "rule" and requirement["what"] == key:
                needs.append(requirement)
    return needs


def counts_today(requirement: NeedAsked) -> bool:
    """Whether a requirement adds to the day's sum."""
    return requirement["way"] == "at least" and requirement["carried"] != "show"


def together(rule: Rule, asking: list[NeedAsked], strictness: Strictness) -> NeedAsked:
    """The sum of what several acts ask."""
    total = total_of(asking)
    parts = " + ".join(both(rule["kind"], need["low"])[0] for need in asking)
    return {
        **asking[0],
        "act": THE_DAY,
        "line": 0,
        "need": fill(TOGETHER, {"amount": both(rule["kind"], total)[0], "parts": parts}),
        "low": total,
        "strictness": strictness,
    }


def stays_on_deck(riders: list[RiderAsked], acts: list[str], pack: FitPack) -> list[Verdict]:
    """
    For each of some acts, whether its depth is free in front of what the others leave standing, an
    aisle of 0.9 m between.
    """
    verdicts: list[Verdict] = []
    rules = [rule for rule in pack["rules"] if rule["key"] == DEPTH]
    if len(rules) == 0:
        return verdicts
    for rider in riders:
        wishes = [need for need in needs_of([rider], DEPTH) if need["way"] == "at least"]
        others = left_by_others(riders, rider["act"])
        if rider["act"] in acts and len(wishes) > 0 and len(others) > 0:
            verdicts.append(in_front(wishes[0], others, rules[0], pack))
    return verdicts


def left_by_others(riders: list[RiderAsked], act: str) -> list[OtherAct]:
    """The other acts that leave something on deck, or have not said that they leave nothing."""
    others: list[OtherAct] = []
    for rider in riders:
        stays_m = rider["stays_m"]
        if rider["act"] != act and (stays_m is None or stays_m > 0):
            others.append({"act": rider["act"], "stays_m": stays_m})
    return others


def in_front(wish: NeedAsked, others: list[OtherAct], rule: Rule, pack: FitPack) -> Verdict:
    """One act's depth in front of what the others leave."""
    requirement: NeedAsked = {
        **wish,
        "act": THE_DAY,
        "title": fill(IN_FRONT, {"act": wish["act"]}),
        "line": 0,
    }
    silent = [other["act"] for other in others if other["stays_m"] is None]
    if len(silent) > 0:
        parts = {"acts": ", ".join(silent)}
        answer = asked(requirement, rule, fill(STAYS_UNKNOWN, parts))
        answer["question"] = fill(HOW_DEEP, parts)
        answer["lacks"] = []
        return of_the_act(answer)
    decks = [on_deck(requirement, kept_m(others), rule, deck) for deck in usable_decks(rule, pack)]
    if len(decks) == 0:
        return asked(requirement, rule, NOT_SAID)
    best = decks[0]
    for deck in decks:
        if better(deck, best):
            best = deck
    return best["verdict"]


def usable_decks(rule: Rule, pack: FitPack) -> list[Item]:
    """The decks that may be used and whose depth is known, exactly or in part."""
    section = section_of(pack, rule["section"])
    if section is None:
        return []
    return [
        item
        for item in items_for(section, rule)
        if item["condition"] != "out of service" and is_known(item["values"].get(rule["value"]))
    ]


def is_known(value: Value | None) -> bool:
    """Whether a value has a number or an end."""
    return least_of(value) is not None or most_of(value) is not None


def depths_in_front(riders: list[RiderAsked]) -> list[NeedAsked]:
    """The depth that acts ask together with what others leave on deck and the aisle."""
    needs: list[NeedAsked] = []
    for rider in riders:
        others = left_by_others(riders, rider["act"])
        silent = [other for other in others if other["stays_m"] is None]
        for need in needs_of([rider], DEPTH):
            if counts_today(need) and len(others) > 0 and len(silent) == 0:
                needs.append({**need, "low": need["low"] + kept_m(others) + AISLE_M})
    return needs


def kept_m(others: list[OtherAct]) -> float:
    """How deep what others leave is, one behind the other. [m]"""
    depth_m = 0.0
    for other in others:
        if other["stays_m"] is not None:
            depth_m += other["stays_m"]
    return depth_m


def on_deck(requirement: NeedAsked, kept: float, rule: Rule, deck: Item) -> Answer:
    """The depth that is left of a deck against the depth wanted, both ends where it has two."""
    value = deck["values"][rule["value"]]
    least_m, most_m = least_of(value), most_of(value)
    need_m = requirement["low"] + kept + AISLE_M
    if least_m is not None and beyond_a_hair(least_m - need_m, need_m) >= 0:
        fitting = left_in_front(verdict(requirement, FITS, DEPTH_LEFT), least_m, need_m, kept)
        fitting["verdict"]["notes"] = by_item(requirement, rule, deck)["verdict"]["notes"]
        return with_deck(fitting, value, deck)
    if most_m is not None and beyond_a_hair(most_m - need_m, need_m) < 0:
        short = with_remedy(verdict(requirement, SHORT, DEPTH_SHORT), rule)
        return with_deck(left_in_front(short, most_m, need_m, kept), value, deck)
    template = CHOSEN if value["can_be_set"] else BOUNDED
    open_one = asked(requirement, rule, fill(template, {"text": value["text"]}))
    return with_deck({"verdict": open_one, "slack": 0.0}, value, deck)


def left_in_front(answer: Verdict, depth_m: float, need_m: float, kept: float) -> Answer:
    """A verdict with how much of a depth is left, or short."""
    slack_m = beyond_a_hair(depth_m - need_m, need_m)
    words = both("length", abs(slack_m))
    parts = {
        "depth": both("length", depth_m)[0],
        "kept": both("length", kept)[0],
        "aisle": both("length", AISLE_M)[0],
        "amount": words[0],
    }
    answer["reason"] = fill(answer["reason"], parts)
    answer["margin"] = signed(words, slack_m)
    return {"verdict": answer, "slack": slack_m}


def with_deck(answer: Answer, value: Value, deck: Item) -> Answer:
    """An answer that shows the deck's depth."""
    answer["verdict"]["fact"] = fact_of(value, deck)
    settled(answer["verdict"])
    return answer
