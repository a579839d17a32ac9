"""When something was done, as far as anybody knows: a day, or only the month or the year."""

from calendar import monthrange
from dataclasses import dataclass
from datetime import date

from builder.reading.numerals import Unreadable
from builder.reading.values.days import ADVICE

ADVICE_DATED = f"{ADVICE}, or only the month or the year, like 2026-03 or 2026"


@dataclass(frozen=True, slots=True)
class Dated:
    """A day, or the first and the last day of the month or year that somebody wrote."""

    first: date
    last: date
    text: str

    def __str__(self) -> str:
        return self.text

    @property
    def is_day(self) -> bool:
        """Whether the day itself is known."""
        return self.first == self.last


FURTHER_NOTICE = "further notice"
OPEN_END = Dated(date.max, date.max, FURTHER_NOTICE)
"""The end of what has none yet: no day that anybody names lies after it."""


def until(text: str) -> Dated:
    """
    A day, a month or a year, year first, or 'further notice' where no end is set.

    Raises
    ------
    Unreadable
        `empty-value` or `date-unreadable`.
    """
    if " ".join(text.casefold().split()) == FURTHER_NOTICE:
        return OPEN_END
    try:
        return dated(text)
    except Unreadable as wrong:
        advice = f"{ADVICE_DATED}, or '{FURTHER_NOTICE}' where no end is set"
        raise Unreadable(wrong.reason, wrong.code, advice) from wrong


def age_days(checked: Dated, on: date) -> int:
    """
    How old something is at least on a day; below 0 where it is surely later than that. [days]

    Within the month or year that is written it may have been that very day.
    """
    if checked.first <= on <= checked.last:
        return 0
    nearest = checked.last if checked.last < on else checked.first
    return (on - nearest).days


def dated(text: str) -> Dated:
    """
    A day, a month or a year, year first.

    Raises
    ------
    Unreadable
        `empty-value` or `date-unreadable`.
    """
    line = text.strip()
    if not line:
        raise Unreadable("is empty", "empty-value", ADVICE_DATED)
    parts = line.split("-")
    shape = [len(part) for part in parts]
    plain = line.isascii() and all(part.isdigit() for part in parts)
    if not plain or shape not in ([4], [4, 2], [4, 2, 2]):
        raise Unreadable("is not a date, year first", "date-unreadable", ADVICE_DATED)
    try:
        return span_of([int(part) for part in parts], line)
    except ValueError as wrong:
        reason = "is not in the calendar"
        raise Unreadable(reason, "date-unreadable", ADVICE_DATED) from wrong


def span_of(parts: list[int], text: str) -> Dated:
    """The days of a year, a month or a day; a ValueError where the calendar has none."""
    year, months = parts[0], parts[1:2] or [1, 12]
    days = parts[2:] or [1, monthrange(year, months[-1])[1]]
    return Dated(date(year, months[0], days[0]), date(year, months[-1], days[-1]), text)
