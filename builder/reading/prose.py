"""
What notes and other prose tell that the figures do not know: that something is closed for a time,
and numbers of parts, or a number a side, that do not make up the count.
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
_NUMBER = rf"(?:\d{{1,4}}|{'|'.join(NUMBERS)})"
_PART = rf"{_NUMBER} [a-z][a-z-]{{2,}}(?: [a-z-]+)?"
PARTS = re.compile(rf"\b{_PART}(?:, {_PART})*(?:,? and | plus |, ){_PART}\b", re.IGNORECASE)
"""Numbers of things in a row: `21 motorised and 5 manual`."""
NEARLY = 0.1
"""Parts that come within this share of a count, and at least within one, were meant to make it."""
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
            "No other page tells it. Say it under closed in house.yml, which the first page shows"
            " and shows are held against, or put the lines that it is about out of service."
        )
        yield Remark(
            "caution",
            "closed-in-prose",
            f"{quoted} {advice}",
            reviewed.where,
            asks_about=excerpt(value),
        )


def counts_of(reviewed: Reviewed) -> list[int]:
    """How many there are of what a line is about, and how many work, where it says so."""
    record = reviewed.record
    keys = [key for key in (*COUNTS, "working") if key in type(record).model_fields]
    return [count for key in keys if isinstance(count := getattr(record, key), int)]


def parts(reviewed: Reviewed) -> Iterable[Remark]:
    """'21 motorised and 5 manual' in the words of a line that counts 27."""
    value = reviewed.value
    if not isinstance(value, str) or not PARTS.search(value):
        return
    counted = counts_of(reviewed)
    for match in PARTS.finditer(value) if counted else ():
        numbers = re.findall(rf"\b({_NUMBER}) (?=[a-z])", match[0], re.IGNORECASE)
        whole = sum(whole_number(number) for number in numbers)
        near = 0 < abs(whole - counted[0]) <= max(1.0, NEARLY * counted[0])
        if near and whole not in counted:
            statement = (
                f"{spaced(reviewed.key)} says {shortened(match[0])}, which makes {whole}, and the"
                f" line counts {counted[0]}."
            )
            yield Remark(
                "caution",
                "parts-differ",
                f"{statement} Which one is right?",
                reviewed.where,
                asks_about=f"{excerpt(match[0])} beside {counted[0]}",
                question=" Which one is right?",
            )


def sides(reviewed: Reviewed) -> Iterable[Remark]:
    """'Eight per side' in the words of a line that counts fifteen."""
    value = reviewed.value
    said = [*A_SIDE.finditer(value)] if isinstance(value, str) else []
    counted = counts_of(reviewed) if said else []
    doubled = [2 * whole_number(match["number"]) for match in said]
    if not counted or {*doubled, sum(doubled)} & {*counted}:
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
