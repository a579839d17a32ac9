"""
Things of which nobody knows whether they work, judged both ways.

A show is judged with all of them in service and with all of them out. What comes out the same does
not hang on them; anything else is asked, with the names of those that decide it.
"""

from collections.abc import Callable

from builder.fit.arrangements.records import View
from builder.fit.arrangements.sentences import IN_DOUBT, IS_IT_IN_SERVICE, LISTED_AND
from builder.fit.records import FitPack, Item, Section, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK, RANK, verdict, with_question

IN_SERVICE, OUT, NOBODY_KNOWS = "in service", "out of service", "unknown"
MOST_ALONE = 8
"""Of more things than these it is not tried which of them decides: all are named."""


def has_doubts(pack: FitPack) -> bool:
    """Whether nobody knows of something of the house if it works."""
    return any(
        item["condition"] == NOBODY_KNOWS
        for section in pack["sections"]
        for item in section["items"]
    )


def in_both_states(view: View, judge: Callable[[View], list[Verdict]]) -> list[Verdict]:
    """The verdicts of a judge whatever the state of things that nobody knows."""
    doubted = [
        item
        for section in view["sections"]
        for item in section["items"]
        if item["condition"] == NOBODY_KNOWS
    ]
    if len(doubted) == 0:
        return judge(view)
    keys = [item["key"] for item in doubted]
    best = judge(with_out(view, []))
    worst = judge(with_out(view, keys))
    alone: list[list[Verdict]] = []
    if best != worst and len(doubted) <= MOST_ALONE:
        alone = [judge(with_out(view, [key])) for key in keys]
    answers: list[Verdict] = []
    for index in range(len(best)):
        each = [run[index] for run in alone]
        answers.append(whatever_works(best[index], worst[index], doubted, each))
    return answers


def whatever_works(
    best: Verdict, worst: Verdict, doubted: list[Item], alone: list[Verdict]
) -> Verdict:
    """
    One verdict on a need: with all in service, with all out, and with each of them alone out.
    """
    if RANK[best["verdict"]] >= RANK[ASK]:
        return best
    if RANK[worst["verdict"]] < RANK[ASK]:
        return worst
    names = [
        item["name"]
        for item, answer in zip(doubted, alone, strict=False)
        if answer["verdict"] != best["verdict"]
    ]
    if len(names) == 0:
        names = [item["name"] for item in doubted]
    parts = {"items": LISTED_AND.join(names), "reason": worst["reason"]}
    answer = verdict(best, ASK, fill(IN_DOUBT, parts))
    answer["fact"] = best["fact"]
    return with_question(answer, best, fill(IS_IT_IN_SERVICE, parts))


def with_out(view: View, keys: list[str]) -> View:
    """A view in which some of what is in doubt is out of service, and the rest in service."""
    return {
        **view,
        "sections": [section_with_out(section, keys) for section in view["sections"]],
        "standing": {
            section["key"]: view["standing"].get(section["key"], "") + states_in(section, keys)
            for section in view["sections"]
        },
    }


def section_with_out(section: Section, keys: list[str]) -> Section:
    """A section in which some of what is in doubt is out of service, and the rest in service."""
    if states_in(section, keys) == "":
        return section
    return {**section, "items": [item_with_out(item, keys) for item in section["items"]]}


def item_with_out(item: Item, keys: list[str]) -> Item:
    """An item in the state that is tried, where nobody knows its own."""
    if item["condition"] != NOBODY_KNOWS:
        return item
    return {**item, "condition": OUT if item["key"] in keys else IN_SERVICE}


def states_in(section: Section, keys: list[str]) -> str:
    """The states that are tried of what is in doubt in a section; empty where nothing is."""
    return "".join(
        OUT if item["key"] in keys else IN_SERVICE
        for item in section["items"]
        if item["condition"] == NOBODY_KNOWS
    )
