"""
Whether a date lies within a closure, by what is known of its ends: a day, a month, a year.

Dates are texts, year first. A month or a year is the beginning of every date in it, so one is
before another as their texts are.
"""

from typing import Literal

from builder.fit.closed.sentences import (
    DAY_UNKNOWN,
    HOUSE_CLOSED,
    PARTS_CLOSED,
    PARTS_CLOSED_IN,
    WHY,
)
from builder.fit.records import Item
from builder.fit.sentences import fill
from builder.fit.values import parts_of, text_of

Holds = Literal["yes", "no", "perhaps"]

FURTHER_NOTICE = "further notice"
DAY_LENGTH = 10
"""How many characters a whole day has: 2026-07-01."""


def closed_on(closure: Item, date: str) -> Holds:
    """Whether a closure takes in a date."""
    begun = has_begun(closure, date)
    over = is_over(closure, date)
    if begun == "no" or over == "yes":
        return "no"
    return "yes" if begun == "yes" and over == "no" else "perhaps"


def has_begun(closure: Item, date: str) -> Holds:
    """Whether a closure has begun on a date; its first day is closed."""
    first = text_of(closure, "from")
    if first == "":
        return "perhaps"
    start = date[: len(first)]
    if start != first:
        return "yes" if start > first else "no"
    return "yes" if len(first) == DAY_LENGTH else "perhaps"


def is_over(closure: Item, date: str) -> Holds:
    """Whether a closure is over on a date; its last day is closed."""
    last = text_of(closure, "until")
    if last == FURTHER_NOTICE:
        return "no"
    if last == "":
        return "perhaps"
    start = date[: len(last)]
    if start != last:
        return "yes" if start > last else "no"
    return "no" if len(last) == DAY_LENGTH else "perhaps"


def names_closed(closure: Item) -> list[str]:
    """The departments that are closed; none where the whole house is."""
    return parts_of(closure, "departments")


def spaces_closed(closure: Item) -> list[str]:
    """The spaces that are closed; none where it is not of some alone."""
    return parts_of(closure, "spaces")


def closure_words(closure: Item) -> str:
    """A closure in a sentence."""
    names = names_closed(closure)
    spaces = spaces_closed(closure)
    why = text_of(closure, "why").removesuffix(".")
    parts = {
        "first": day_words(text_of(closure, "from")),
        "last": day_words(text_of(closure, "until")),
        "why": "" if why == "" else fill(WHY, {"why": why}),
        "names": ", ".join(names if len(names) > 0 else spaces),
        "spaces": ", ".join(spaces),
    }
    if len(names) > 0 and len(spaces) > 0:
        return fill(PARTS_CLOSED_IN, parts)
    is_whole = len(names) == 0 and len(spaces) == 0
    return fill(HOUSE_CLOSED if is_whole else PARTS_CLOSED, parts)


def day_words(text: str) -> str:
    """A day as it is written, or that nobody knows it."""
    return DAY_UNKNOWN if text == "" else text
