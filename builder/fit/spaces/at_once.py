"""
What acts in several spaces come to on one day: what is counted of what the spaces share is added
up, and the rest is a question.
"""

from builder.fit.arrangements.in_place import in_any_state
from builder.fit.arrangements.views import view_of
from builder.fit.needs.comparing import compared
from builder.fit.records import (
    FitPack,
    Item,
    Line,
    NeedAsked,
    RiderAsked,
    Rule,
    Section,
    Strictness,
    Verdict,
)
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.show_day import (
    SHARED,
    SUM,
    THE_DAY,
    adding_up,
    counts_today,
    needs_of,
    together,
    total_of,
)
from builder.fit.spaces.records import Evening
from builder.fit.spaces.sentences import (
    AND,
    AT_ONCE,
    NOT_ALL_AT_ONCE,
    NOT_TOGETHER,
    SAME_HOURS,
    SERVE_ALL,
)
from builder.fit.spaces.views import SPACE, space_of
from builder.fit.verdicts import ASK, SHORT, question_of, verdict, with_question


def at_once(best: Evening, acts: str, pack: FitPack) -> list[Verdict]:
    """What acts in several spaces on one day are told of what these share."""
    if len(best["groups"]) < 2 or len(pack["shared"]) == 0:
        return []
    line: Line = {
        "act": THE_DAY,
        "line": 0,
        "department": "house",
        "title": AT_ONCE,
        "need": acts,
        "strictness": "must",
    }
    reason = fill(NOT_TOGETHER, {"shared": AND.join(pack["shared"])})
    question = with_question(verdict(line, ASK, reason), line, fill(SERVE_ALL, {"acts": acts}))
    return [*counted_at_once(best, pack), question]


def counted_at_once(best: Evening, pack: FitPack) -> list[Verdict]:
    """The verdict on each thing that is counted, is shared, and that acts in two spaces ask for."""
    shared = shared_by(best, pack)
    found: list[Verdict] = []
    for rule in pack["rules"]:
        adds_up = rule["combine"] == "sum" or rule["day"] in (SUM, SHARED)
        if adds_up and is_shared(rule, shared):
            musts = asked_of(rule, best, ["must"])
            every = asked_of(rule, best, ["must", "should"])
            if len(musts) > 1:
                found.extend(of_all(rule, musts, "must", shared))
            if len(every) > 1 and total_of(every) > total_of(musts):
                found.extend(of_all(rule, every, "should", shared))
    return found


def is_shared(rule: Rule, shared: FitPack) -> bool:
    """Whether the spaces share something that a rule counts."""
    return any(
        section["key"] == rule["section"] and len(items_of(section, rule["item"])) > 0
        for section in shared["sections"]
    )


def shared_by(best: Evening, pack: FitPack) -> FitPack:
    """
    What the spaces of an evening share, as the pack of a house. A kind of thing of which one of
    them has some for itself is left out: who asks for it there may mean those.
    """
    keys = [group["space"]["key"] for group in best["groups"]]
    own = [section for section in pack["sections"] if space_of(section) in keys]
    shared = [
        with_shared_kinds(section, [each for each in own if each["key"] == section["key"]])
        for section in [*of_one(own, keys[0]), *of_one(pack["sections"], "")]
    ]
    return {**pack, "sections": shared, "spaces": []}


def of_one(sections: list[Section], space: str) -> list[Section]:
    """The sections of one space; of none where it is empty."""
    return [section for section in sections if space_of(section) == space]


def with_shared_kinds(section: Section, everywhere: list[Section]) -> Section:
    """A section with the kinds of things of which no space has any for itself."""
    items = [
        item
        for item in section["items"]
        if item["kind"] != SPACE and all(has_none_for_itself(each, item) for each in everywhere)
    ]
    return {**section, "items": items}


def has_none_for_itself(section: Section, item: Item) -> bool:
    """Whether a space's section has nothing of a thing's kind but what all share."""
    if "shared" in section and item["kind"] in section["shared"]:
        return True
    return all(each["kind"] != item["kind"] for each in section["items"])


def asked_of(rule: Rule, best: Evening, strict: list[str]) -> list[NeedAsked]:
    """What the acts of each space ask of a rule, one after the other."""
    found: list[NeedAsked] = []
    for group in best["groups"]:
        found.extend(asked_in(rule, group["riders"], strict))
    return found


def asked_in(rule: Rule, riders: list[RiderAsked], strict: list[str]) -> list[NeedAsked]:
    """What acts in one space ask of a rule: what adds up there, else the most that one asks."""
    needs = [
        need
        for need in needs_of(riders, rule["key"])
        if counts_today(need) and need["strictness"] in strict
    ]
    summed = adding_up(rule, needs) if rule["day"] in (SUM, SHARED) else []
    if len(needs) == 0 or len(summed) > 0:
        return summed
    most = needs[0]
    for need in needs:
        if need["low"] > most["low"]:
            most = need
    return [most]


def of_all(
    rule: Rule, asking: list[NeedAsked], strictness: Strictness, shared: FitPack
) -> list[Verdict]:
    """
    The verdict on what is asked at once. What is free again after one act is short only where two
    want it at the same hours, which nobody has said; what one alone is short of is told there.
    """
    need = together(rule, asking, strictness)
    answer = judged(need, rule, shared)
    if answer["verdict"] != SHORT or rule["day"] == SUM:
        return [answer]
    if any(judged(each, rule, shared)["verdict"] == SHORT for each in asking):
        return []
    found = verdict(need, ASK, fill(NOT_ALL_AT_ONCE, {"reason": answer["reason"]}))
    found["act_question"] = question_of(need, SAME_HOURS)
    return [found]


def judged(need: NeedAsked, rule: Rule, shared: FitPack) -> Verdict:
    """The verdict on one need from what the spaces share."""
    view = view_of(shared, "")
    return in_any_state(view, lambda each: [compared(need, rule, each)])[0]
