"""What several items make together, where one of them need not be enough."""

from typing import TypedDict

from builder.fit.needs.amounts import against_number
from builder.fit.needs.choosing import value_for
from builder.fit.needs.sentences import LEFT_OUT, PARTLY_KNOWN, TOGETHER
from builder.fit.notes import age_notes, item_notes, once
from builder.fit.records import Fact, Item, NeedAmount, Rule, Value, Verdict
from builder.fit.sentences import fill
from builder.fit.values import least_of
from builder.fit.verdicts import FITS, SHORT, asked, fact_of, settled
from builder.fit.wording import both, digits


class Sum(TypedDict):
    """
    What items add up to, how many count, and how many of them nobody has said enough of; the fact
    of the last one that counts.
    """

    total: float
    used: int
    unknown: int
    last: Fact | None
    notes: list[str]
    left_out: list[str]


def by_sum(requirement: NeedAmount, rule: Rule, items: list[Item]) -> Verdict:
    """
    What all items make together.

    What is not known can only add, so it turns a shortage into a question.
    """
    added = added_up(rule, items)
    answer = against_number(requirement, rule, added["total"])["verdict"]
    if answer["verdict"] == SHORT and may_be_enough(requirement, rule, added):
        amount = both(rule["kind"], added["total"])[0]
        answer = asked(requirement, rule, fill(PARTLY_KNOWN, {"amount": amount}))
    answer["fact"] = fact_together(rule, added)
    if answer["verdict"] == FITS or len(added["left_out"]) > 0:
        answer["notes"] = [*answer["notes"], *added["left_out"], *once(added["notes"])]
    return settled(answer)


def added_up(rule: Rule, items: list[Item]) -> Sum:
    """The sum of what may be used and is known."""
    added: Sum = {
        "total": 0.0,
        "used": 0,
        "unknown": 0,
        "last": None,
        "notes": [],
        "left_out": [],
    }
    for item in items:
        value = counted_value(item, rule)
        least = least_of(value)
        why = why_left_out(item)
        if why != "":
            added["left_out"].append(fill(LEFT_OUT, {"item": item["name"], "why": why}))
        elif value is None:
            added["unknown"] += 1
        elif least is not None:
            added["total"] += least
            added["used"] += 1
            added["unknown"] += 1 if value["number"] is None else 0
            added["notes"] = [*added["notes"], *item_notes(item), *age_notes(value)]
            added["last"] = fact_of(value, item)
        elif value["standing"] != "none":
            added["unknown"] += 1
    return added


def why_left_out(item: Item) -> str:
    """Why an item is not counted; empty where it is."""
    if item["condition"] == "out of service":
        return item["condition"]
    if item["terms"] == "not for visitors":
        return item["terms"]
    return ""


def counted_value(item: Item, rule: Rule) -> Value | None:
    """What an item adds: a value of its own, or one for being there where the rule names none."""
    if rule["value"] != "":
        return value_for(item, rule)
    return one_for(item) if is_rated(item) else None


def is_rated(item: Item) -> bool:
    """Whether a point of rigging has a known limit; what is no point has none to know."""
    if item["kind"] != "point":
        return True
    limit = item["values"].get("limit")
    return limit is not None and limit["number"] is not None


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

    What counts by being there adds at most one each; what else is unknown may add any amount.
    """
    if added["unknown"] == 0:
        return False
    if rule["value"] != "":
        return True
    most = against_number(requirement, rule, added["total"] + added["unknown"])
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
