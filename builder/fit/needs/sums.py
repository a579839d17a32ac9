"""What several items make together, where one of them need not be enough."""

from math import inf
from typing import TypedDict

from builder.fit.needs.amounts import against_number
from builder.fit.needs.choosing import value_for
from builder.fit.needs.sentences import (
    BORNE_ASKED,
    LEFT_OUT,
    PARTLY_AT_MOST,
    PARTLY_KNOWN,
    TOGETHER,
)
from builder.fit.notes import age_notes, item_notes, once, set_notes
from builder.fit.records import Fact, Item, NeedAmount, Rule, Value, Verdict
from builder.fit.sentences import fill
from builder.fit.values import asked_of_bearers, is_set, least_of, most_of
from builder.fit.verdicts import FITS, SHORT, asked, fact_of, settled
from builder.fit.wording import both, digits


class Sum(TypedDict):
    """
    What items add up to, how many count, and how much more they may be together: ``inf`` where
    nobody has said; ``told`` where the house says of one what it is at most. The fact of the last
    one that counts, and the keys of the values that the house sets.
    """

    total: float
    used: int
    more: float
    told: bool
    last: Fact | None
    notes: list[str]
    left_out: list[str]
    set_to: list[str]


def by_sum(requirement: NeedAmount, rule: Rule, items: list[Item]) -> Verdict:
    """
    What all items make together.

    What is not known can only add, so it turns a shortage into a question, and what is short for
    certain is so by what lacks at the most of it.
    """
    added = added_up(rule, items)
    answer = against_number(requirement, rule, added["total"])["verdict"]
    if answer["verdict"] == SHORT and may_be_enough(requirement, rule, added):
        answer = asked(requirement, rule, partly_known(rule, added))
    elif answer["verdict"] == SHORT and added["more"] > 0:
        answer = against_number(requirement, rule, added["total"] + added["more"])["verdict"]
    answer["fact"] = fact_together(rule, added)
    answer["leans_on"] = added["set_to"]
    if answer["verdict"] == FITS or len(added["left_out"]) > 0:
        answer["notes"] = [*answer["notes"], *added["left_out"], *once(added["notes"])]
    return settled(answer)


def added_up(rule: Rule, items: list[Item]) -> Sum:
    """The sum of what may be used and is known."""
    added: Sum = {
        "total": 0.0,
        "used": 0,
        "more": 0.0,
        "told": False,
        "last": None,
        "notes": [],
        "left_out": [],
        "set_to": [],
    }
    for item in items:
        value = counted_value(item, rule)
        least = least_of(value)
        why = why_left_out(item)
        if why != "":
            added["left_out"].append(fill(LEFT_OUT, {"item": item["name"], "why": why}))
        elif asked_of_bearers(item) != "":
            parts = {"item": item["name"], "why": asked_of_bearers(item)}
            added["left_out"].append(fill(BORNE_ASKED, parts))
            most = most_of(value)
            added["more"] += inf if most is None else most
        elif value is None:
            added["more"] += more_of(item, rule, value)
        elif least is not None:
            added["total"] += least
            added["used"] += 1
            added["more"] += more_of(item, rule, value)
            notes = [*set_notes(item, value, rule["kind"]), *item_notes(item), *age_notes(value)]
            added["notes"] = [*added["notes"], *notes]
            added["set_to"].extend([value["key"]] if is_set(value) else [])
            added["last"] = fact_of(value, item)
        elif value["standing"] != "none":
            added["more"] += more_of(item, rule, value)
        if why == "" and value is not None and value["most"] is not None:
            added["told"] = True
    return added


def more_of(item: Item, rule: Rule, value: Value | None) -> float:
    """
    What an item may add to what it is at least: one where it counts by being there, ``inf`` where
    nobody has said how much it is.
    """
    if rule["value"] == "" and item["kind"] == rule["item"]:
        return 1.0 if value is None else 0.0
    most, least = most_of(value), least_of(value)
    if most is None:
        return inf
    return most - (0.0 if least is None else least)


def partly_known(rule: Rule, added: Sum) -> str:
    """That not all is said, with how much is known, and what it is at most where that is."""
    amount = both(rule["kind"], added["total"])[0]
    if not added["told"] or added["more"] == inf:
        return fill(PARTLY_KNOWN, {"amount": amount})
    most = both(rule["kind"], added["total"] + added["more"])[0]
    return fill(PARTLY_AT_MOST, {"amount": amount, "most": most})


def why_left_out(item: Item) -> str:
    """Why an item is not counted; empty where it is."""
    if item["condition"] == "out of service":
        return item["condition"]
    if item["terms"] == "not for visitors":
        return item["terms"]
    return ""


def counted_value(item: Item, rule: Rule) -> Value | None:
    """What an item adds: a value of its own, or one for being there where the rule names none."""
    if rule["value"] != "" or item["kind"] != rule["item"]:
        return value_for(item, rule)
    return one_for(item) if is_rated(item) else None


def is_rated(item: Item) -> bool:
    """Whether it is known what a point of rigging carries at least; what is no point has none."""
    if item["kind"] != "point":
        return True
    limit = item["values"].get("limit")
    return limit is not None and least_of(limit) is not None


def one_for(item: Item) -> Value:
    """An item that counts as one by being there."""
    return {
        "key": item["key"],
        "label": item["name"],
        "standing": "stated",
        "text": item["name"],
        "also": "",
        "number": 1.0,
        "parts": [],
        "least": None,
        "most": None,
        "can_be_set": False,
        "settings": [],
        "page": item["page"],
        "checked": item["checked"],
        "stale": item["stale"],
        "remembered": item["remembered"],
    }


def may_be_enough(requirement: NeedAmount, rule: Rule, added: Sum) -> bool:
    """
    Whether what is not known could make up a shortage.

    What counts by being there adds at most one each, what is known at most no more than that; what
    else is unknown may add any amount.
    """
    if added["more"] == 0 or added["more"] == inf:
        return added["more"] > 0
    most = against_number(requirement, rule, added["total"] + added["more"])
    return most["verdict"]["verdict"] != SHORT


def fact_together(rule: Rule, added: Sum) -> Fact | None:
    """The fact of a sum: of the one item that counts, or of all of them together."""
    last = added["last"]
    if last is None or (added["used"] == 1 and rule["value"] != ""):
        return last
    words = both(rule["kind"], added["total"])
    return {
        **last,
        "item": fill(TOGETHER, {"count": digits(added["used"], 0)}),
        "label": rule["title"],
        "text": words[0],
        "also": words[1],
    }
