"""The sizes of trucks and the largest case, each against the limit on its part of a way."""

from typing import TypedDict

from builder.fit.notes import age_notes, set_notes
from builder.fit.records import Fact, Item, TrucksAsked, Value, Word
from builder.fit.sentences import fill
from builder.fit.values import is_set, least_of, most_of
from builder.fit.verdicts import ASK, FITS, SHORT, fact_of
from builder.fit.way_in.sentences import (
    CASE_HEIGHT,
    CASE_WEIGHT,
    CASE_WIDTH,
    LENGTH_OF_WHAT,
    NOT_EXACT,
    NOT_LIMITED,
    NOT_STATED,
    SHORT_BY,
    TO_SPARE,
    TRAILER_ALONE,
    TRAILER_NOT_SAID,
    TRUCK_HEIGHT,
    TRUCK_LENGTH,
    TRUCK_WEIGHT,
)
from builder.fit.wording import both

WHOLE, TRAILER = "whole truck", "trailer"
TRAILER_LIMIT = "longest_trailer"


class Size(TypedDict):
    """A size of what comes in, and the name of the limit that it has to pass."""

    title: str
    wanted: float
    limit: str
    kind: str


class Passage(TypedDict):
    """
    How a size passes its limit, ``notes`` on the limit's check; ``of_act`` where the act alone is
    asked, ``is_set`` where the house sets the limit.
    """

    word: Word
    words: str
    fact: Fact | None
    notes: list[str]
    of_act: bool
    is_set: bool


def truck_sizes(requirement: TrucksAsked) -> list[Size]:
    """What the approach has to let through, as far as the rider says."""
    return [
        *size(TRUCK_LENGTH, requirement["length"], "longest_truck", "length"),
        *size(TRUCK_HEIGHT, requirement["height"], "lowest_clearance", "length"),
        *size(TRUCK_WEIGHT, requirement["weight"], "weight_limit", "mass"),
    ]


def case_sizes(requirement: TrucksAsked) -> list[Size]:
    """What the route has to let through, as far as the rider says."""
    return [
        *size(CASE_WIDTH, requirement["case_width"], "tightest_width", "length"),
        *size(CASE_HEIGHT, requirement["case_height"], "tightest_height", "length"),
        *size(CASE_WEIGHT, requirement["case_weight"], "tightest_weight", "mass"),
    ]


def size(title: str, wanted: float | None, limit: str, kind: str) -> list[Size]:
    """One size, or none where the rider does not say it."""
    if wanted is None:
        return []
    return [{"title": title, "wanted": wanted, "limit": limit, "kind": kind}]


def passage(wish: Size, holder: Item | None) -> Passage:
    """One size against one limit on the way."""
    value = None if holder is None else holder["values"].get(wish["limit"])
    if holder is None or value is None or value["standing"] in ("unknown", "not stated"):
        return not_stated(wish, None)
    fact = fact_of(value, holder)
    if value["standing"] == "none" or value["text"] == "no limit":
        words = fill(NOT_LIMITED, {"size": wish["title"]})
        answer: Passage = {
            "word": FITS,
            "words": words,
            "fact": fact,
            "notes": [],
            "of_act": False,
            "is_set": False,
        }
    else:
        answer = by_ends(wish, value, fact)
    answer["notes"] = [*set_notes(holder, value, wish["kind"]), *age_notes(value)]
    answer["is_set"] = is_set(value)
    return answer


def by_ends(wish: Size, value: Value, fact: Fact) -> Passage:
    """A size against a limit of which both ends, one or none are known."""
    least, most = least_of(value), most_of(value)
    if least is None and most is None:
        return not_stated(wish, fact)
    if most is not None:
        at_most = measured(wish, most, fact)
        if at_most["word"] == SHORT:
            return at_most
    if least is not None:
        at_least = measured(wish, least, fact)
        if at_least["word"] == FITS:
            return at_least
    words = fill(NOT_EXACT, {"size": wish["title"], "text": value["text"]})
    return {
        "word": ASK,
        "words": words,
        "fact": fact,
        "notes": [],
        "of_act": False,
        "is_set": False,
    }


def not_stated(wish: Size, fact: Fact | None) -> Passage:
    """A limit that the house has not said."""
    words = fill(NOT_STATED, {"size": wish["title"]})
    return {
        "word": ASK,
        "words": words,
        "fact": fact,
        "notes": [],
        "of_act": False,
        "is_set": False,
    }


def measured(wish: Size, limit: float, fact: Fact) -> Passage:
    """A size against a limit in numbers. A door gives nothing, so no rounding is allowed."""
    slack = limit - wish["wanted"]
    parts = {"size": wish["title"], "amount": both(wish["kind"], abs(slack))[0]}
    answer: Passage = {
        "word": FITS,
        "words": fill(TO_SPARE, parts),
        "fact": fact,
        "notes": [],
        "of_act": False,
        "is_set": False,
    }
    if slack < 0:
        answer["word"] = SHORT
        answer["words"] = fill(SHORT_BY, parts)
    return answer


def lengths(wish: Size, requirement: TrucksAsked, approach: Item | None) -> list[Passage]:
    """
    How a length passes what the approach states: a limit for the whole truck, one for its trailer,
    or both. Where it states neither, the whole is asked.
    """
    trailer_told = approach is not None and is_told(approach, TRAILER_LIMIT)
    whole_told = approach is not None and is_told(approach, wish["limit"])
    found: list[Passage] = []
    if trailer_told:
        found.append(
            of_the_trailer(passage({**wish, "limit": TRAILER_LIMIT}, approach), requirement)
        )
    if whole_told or not trailer_told:
        found.append(of_the_whole(passage(wish, approach), requirement))
    return found


def is_told(approach: Item, limit: str) -> bool:
    """Whether an approach says anything of a limit."""
    value = approach["values"].get(limit)
    return value is not None and value["standing"] not in ("unknown", "not stated")


def of_the_trailer(one: Passage, requirement: TrucksAsked) -> Passage:
    """
    How a truck's length passes a limit for its trailer: where the rider's length is not said to be
    of the trailer, that may be shorter.
    """
    if one["word"] != SHORT or requirement["length_of"] == TRAILER:
        return one
    words = fill(TRAILER_NOT_SAID, {"size": TRUCK_LENGTH})
    return {**one, "word": ASK, "words": words, "of_act": True}


def of_the_whole(one: Passage, requirement: TrucksAsked) -> Passage:
    """
    How a truck's length passes a limit for tractor and trailer: the rider's length may be of the
    trailer alone, and then the whole is longer.
    """
    if one["word"] == SHORT or requirement["length_of"] == WHOLE or one["fact"] is None:
        return one
    if one["fact"]["standing"] == "none":
        return one
    template = TRAILER_ALONE if requirement["length_of"] == TRAILER else LENGTH_OF_WHAT
    words = fill(template, {"size": TRUCK_LENGTH})
    return {**one, "word": ASK, "words": words, "of_act": one["word"] == FITS}
