"""The sizes of trucks and the largest case, each against the limit on its part of a way."""

from typing import TypedDict

from builder.fit.margins import LENGTH_TOLERANCE_M, SHARE_TOLERANCE
from builder.fit.notes import age_notes
from builder.fit.records import Fact, Item, TrucksAsked, Value, Word
from builder.fit.sentences import fill
from builder.fit.values import least_of, most_of
from builder.fit.verdicts import ASK, FITS, SHORT, fact_of
from builder.fit.way_in.sentences import (
    CASE_HEIGHT,
    CASE_WEIGHT,
    CASE_WIDTH,
    NOT_EXACT,
    NOT_LIMITED,
    NOT_STATED,
    SHORT_BY,
    TO_SPARE,
    TOLERATED,
    TRUCK_HEIGHT,
    TRUCK_LENGTH,
    TRUCK_WEIGHT,
)
from builder.fit.wording import both


class Size(TypedDict):
    """A size of what comes in, and the name of the limit that it has to pass."""

    title: str
    wanted: float
    limit: str
    kind: str


class Passage(TypedDict):
    """
    How a size passes its limit; ``tolerated`` where only the tolerance lets it, ``notes`` on the
    limit's check.
    """

    word: Word
    words: str
    tolerated: bool
    fact: Fact | None
    notes: list[str]


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
            "tolerated": False,
            "fact": fact,
            "notes": [],
        }
    else:
        answer = by_ends(wish, value, fact)
    answer["notes"] = age_notes(value)
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
    return {"word": ASK, "words": words, "tolerated": False, "fact": fact, "notes": []}


def not_stated(wish: Size, fact: Fact | None) -> Passage:
    """A limit that the house has not said."""
    words = fill(NOT_STATED, {"size": wish["title"]})
    return {"word": ASK, "words": words, "tolerated": False, "fact": fact, "notes": []}


def measured(wish: Size, limit: float, fact: Fact) -> Passage:
    """A size against a limit in numbers."""
    slack = limit - wish["wanted"]
    allowed = LENGTH_TOLERANCE_M if wish["kind"] == "length" else wish["wanted"] * SHARE_TOLERANCE
    parts = {"size": wish["title"], "amount": both(wish["kind"], abs(slack))[0]}
    answer: Passage = {
        "word": FITS,
        "words": fill(TO_SPARE, parts),
        "tolerated": False,
        "fact": fact,
        "notes": [],
    }
    if slack < -allowed:
        answer["word"] = SHORT
        answer["words"] = fill(SHORT_BY, parts)
    elif slack < 0:
        answer["words"] = fill(TOLERATED, parts)
        answer["tolerated"] = True
    return answer
