"""
What notes and other prose tell that the figures do not know: that something is closed for a time,
and a number a side that does not make up the count.
"""

import re
from collections.abc import Iterable
from datetime import date

from builder.reading.dates import latest_day
from builder.reading.fields import Reviewed
from builder.reading.problems import shortened
from builder.reading.remarks import Remark, excerpt, spaced

CLOSED = re.compile(
    r"\b(?:closed|shut|unavailable|not (?:available|open|in use)) (?:"
    r"(?:until|till)\b(?! (?:\d{1,2}:\d\d|\d{1,2} ?[ap]\.?m\b|noon|midnight|doors))"
    r"|for (?:works?|repairs?|refurbishment|renovation|rebuilding"
    r"|the (?:season|winter|summer|year))\b)",
    re.IGNORECASE,
)
"""Closed for days or longer. Until an hour of the day is a rule of the house."""
NUMBERS = (
    "one", "two", "three", "four", "five", "six",
    "seven", "eight", "nine", "ten", "eleven", "twelve",
)  # fmt: skip
A_SIDE = re.compile(
    rf"\b(?P<number>\d{{1,3}}|{'|'.join(NUMBERS)}) (?:boxes |units |pieces )?"
    r"(?:a|per|each|either|on each|on either|at each) side\b",
    re.IGNORECASE,
)
COUNTS = ("count", "boxes", "channels")
"""The keys that say how many there are."""


def closed(reviewed: Reviewed, on: date) -> Iterable[Remark]:
    """Something that is closed for a time, told in prose, where no condition says so."""
    value = reviewed.value
    if not isinstance(value, str) or not CLOSED.search(value):
        return
    condition = getattr(reviewed.record, "condition", "")
    day = latest_day(value)
    past = f" That day is {(on - day).days} days before this revision." if day and day < on else ""
    quoted = f"{spaced(reviewed.key)} says {shortened(value)}.{past}"
    if condition == "in service":
        advice = "Write it under condition, so that counts, figures and shows know it."
        yield Remark(
            "caution",
            "condition-in-prose",
            f"{quoted} {advice}",
            reviewed.where,
            asks_about=excerpt(value),
        )
    elif not condition:
        advice = (
            "No other page tells it. Say it under trouble_spots in house.yml, which the first page"
            " shows, and put the lines that it is about out of service."
        )
        yield Remark(
            "caution",
            "closed-in-prose",
            f"{quoted} {advice}",
            reviewed.where,
            asks_about=excerpt(value),
        )


def sides(reviewed: Reviewed) -> Iterable[Remark]:
    """'Eight per side' in the words of a line that counts fifteen."""
    value, record = reviewed.value, reviewed.record
    counted = [
        count
        for key in (*COUNTS, "working")
        if isinstance(count := getattr(record, key, None), int)
    ]
    if not isinstance(value, str) or not counted:
        return
    said = [*A_SIDE.finditer(value)]
    doubled = [2 * whole_number(match["number"]) for match in said]
    if not said or {*doubled, sum(doubled)} & {*counted}:
        return
    sentence = (
        f"{spaced(reviewed.key)} says {shortened(said[0][0])}, which makes {sum(doubled)}, and the"
        f" line counts {counted[0]}."
    )
    question = " Which one is right, or is one side short?"
    yield Remark(
        "caution",
        "sides-differ",
        sentence + question,
        reviewed.where,
        asks_about=f"{said[0][0]} beside {counted[0]}",
        question=question,
    )


def whole_number(text: str) -> int:
    """A small number in digits or as a word."""
    word = text.casefold()
    return NUMBERS.index(word) + 1 if word in NUMBERS else int(text)
