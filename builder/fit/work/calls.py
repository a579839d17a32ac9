"""
Crew and tasks. A call is judged by the people that the house names for its skill, with what the
house's own rules make of its length beside it; the house's quote decides what it costs.
"""

from builder.fit.needs.choosing import items_for, items_perhaps
from builder.fit.needs.comparing import compared
from builder.fit.records import (
    Advice,
    CallAsked,
    FitPack,
    Item,
    NeedAsked,
    Rule,
    Section,
    TaskAsked,
    Verdict,
)
from builder.fit.sections import items_of, section_of
from builder.fit.sentences import SHOW_BRINGS_IT, fill
from builder.fit.values import least_of, number_of, text_of
from builder.fit.verdicts import FITS, NOT_NEEDED, NOTED, asked, settled, verdict
from builder.fit.wording import both, digits
from builder.fit.work.sentences import (
    ABLE_TO,
    ALSO_CALLED,
    ASK_CALL,
    ASK_TASK,
    BILLED,
    COSTS,
    HIRE,
    HIRER,
    HOW_MANY,
    IT_AGREES,
    LONGEST,
    MEAL_DUE,
    MEALS_DUE,
    NAMES_OTHERS,
    ORDERED,
    PERHAPS_MORE,
)
from builder.formulas.meal_breaks import meal_breaks_due

CALL: Advice = {"question": ASK_CALL, "remedy": HIRE, "who": HIRER}
TASK: Advice = {"question": ASK_TASK, "remedy": "", "who": ""}


def crew_called(need: CallAsked, pack: FitPack) -> Verdict:
    """A call of crew: whether there are as many, and what the house's rules make of its length."""
    if need["carried"] == "show":
        return verdict(need, NOT_NEEDED, SHOW_BRINGS_IT)
    answer = by_people(need, pack, section_of(pack, "crew"))
    answer["notes"] = [*answer["notes"], *notes_on_length(need, section_of(pack, "house"))]
    return settled(answer)


def by_people(need: CallAsked, pack: FitPack, section: Section | None) -> Verdict:
    """Whether the house has as many of a skill, with all that are called for the same time."""
    rule = rule_for(need["who"])
    roles = items_of(section, "role")
    if section is None:
        return asked(need, CALL, HOW_MANY)
    if len(roles) > 0 and len(items_perhaps(section, rule)) == 0:
        words = {"roles": ", ".join(role["name"] for role in roles), "who": need["who"]}
        return asked(need, CALL, fill(NAMES_OTHERS, words))
    together = need["count"] + need["beside"]
    answer = compared(as_need(need, together), rule, pack)
    if need["beside"] > 0:
        parts = {"count": digits(need["beside"], 0), "all": digits(together, 0)}
        answer["notes"].append(fill(ALSO_CALLED, parts))
    if is_well(answer) and need["able"] != "":
        return asked(need, CALL, fill(ABLE_TO, {"words": need["able"]}))
    if is_well(answer):
        most = together + need["perhaps"]
        if not is_well(compared(as_need(need, most), rule, pack)):
            parts = {"count": digits(need["perhaps"], 0), "all": digits(most, 0)}
            answer["notes"].append(fill(PERHAPS_MORE, parts))
        for role in items_for(section, rule):
            answer["notes"].extend(terms_of(role, need["count"], section))
    return answer


def is_well(answer: Verdict) -> bool:
    """Whether an answer is that it fits, with a note or without."""
    return answer["verdict"] == FITS or answer["verdict"] == NOTED


def terms_of(role: Item, count: float, section: Section) -> list[str]:
    """By when a role is ordered and what its shortest call costs, unless all are in the rent."""
    there = least_of(role["values"].get("there"))
    if text_of(role, "there_terms") == "included" and there is not None and there >= count:
        return []
    notes: list[str] = []
    ordered_s = number_of(role, "ordered_by")
    if ordered_s is not None:
        words = {"name": role["name"], "amount": both("duration", ordered_s)[0]}
        notes.append(fill(ORDERED, words))
    for rate in items_of(section, "rate"):
        if rate["name"] == role["name"] and text_of(rate, "shortest-call") != "":
            words = {"name": role["name"], "amount": text_of(rate, "shortest-call")}
            notes.append(fill(COSTS, words))
    return notes


def as_need(need: CallAsked, count: float) -> NeedAsked:
    """A call as a need for so many people."""
    return {
        "act": need["act"],
        "line": need["line"],
        "department": need["department"],
        "title": need["title"],
        "need": need["need"],
        "strictness": need["strictness"],
        "carried": need["carried"],
        "sort": "rule",
        "what": need["who"],
        "own": False,
        "way": "at least",
        "low": count,
        "high": count,
        "words": "",
    }


def rule_for(who: str) -> Rule:
    """How people of one skill are found and counted."""
    return {
        "key": who,
        "title": who,
        "department": "crew",
        "kind": "count",
        "question": ASK_CALL,
        "ways": ["at least"],
        "section": "crew",
        "item": "role",
        "value": "at-call",
        "otherwise": [],
        "beside": "",
        "also": [],
        "elsewhere": [],
        "where": [["skill", who]],
        "combine": "sum",
        "whole": "people",
        "none_means": "lacking",
        "means_yes": [],
        "each": "",
        "day": "largest",
        "legal": False,
        "remedy": HIRE,
        "who": HIRER,
    }


def notes_on_length(need: CallAsked, section: Section | None) -> list[str]:
    """What the house says of calls as long as one. [s]"""
    long_s = need["long_s"]
    notes: list[str] = []
    if long_s is None:
        return notes
    for item in items_of(section, "crew"):
        shortest_s = number_of(item, "shortest_call")
        if shortest_s is not None and long_s < shortest_s:
            notes.append(fill(BILLED, {"amount": both("duration", shortest_s)[0]}))
        longest_s = number_of(item, "longest_call")
        if longest_s is not None and long_s > longest_s:
            notes.append(fill(LONGEST, {"amount": both("duration", longest_s)[0]}))
        meal_s = number_of(item, "meal_after")
        if meal_s is not None and meal_s > 0 and not works_on(item):
            notes.extend(notes_on_meals(long_s, need["meals"], meal_s, break_of(item)))
    return notes


def works_on(item: Item) -> bool:
    """Whether the house says that work goes on while the crew eats by turns."""
    value = item["values"].get("meal_break")
    return value is not None and value["standing"] == "none"


def break_of(item: Item) -> float:
    """How long a meal break is; none where the house does not say, or works on. [s]"""
    break_s = number_of(item, "meal_break")
    return 0.0 if break_s is None else break_s


def notes_on_meals(long_s: float, meals: float, meal_s: float, break_s: float) -> list[str]:
    """That a call tells fewer meal breaks than are due. [s]"""
    due = meal_breaks_due(long_s, meal_s, break_s)
    words = {"amount": both("duration", meal_s)[0], "due": digits(float(due), 0)}
    if due <= meals:
        return []
    return [fill(MEAL_DUE if due == 1 else MEALS_DUE, words)]


def task_seen_to(need: TaskAsked) -> Verdict:
    """Something that the house is to do or to keep: it is the house that agrees."""
    if need["carried"] == "show":
        return verdict(need, NOT_NEEDED, SHOW_BRINGS_IT)
    return asked(need, TASK, IT_AGREES)
