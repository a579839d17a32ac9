"""The day that a text tells of, where people write it freely: a letter with its revision."""

import re
from calendar import monthrange
from collections.abc import Iterator
from datetime import date

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_ISO = re.compile(r"\b((?:19|20)\d\d)-(\d\d)-(\d\d)\b")
_MONTH = re.compile(
    r"(?:\b(?P<before>\d{1,2})(?:st|nd|rd|th)?\.?\s+)?"
    rf"\b(?P<month>{'|'.join(MONTHS)})[a-z]*\.?"
    r"(?:\s+(?P<after>\d{1,2})(?:st|nd|rd|th)?,)?\s+(?P<year>(?:19|20)\d\d)\b",
    re.IGNORECASE,
)
_YEAR = re.compile(r"(?<![\d,])(?:19|20)\d\d(?!\d)")


def latest_day(text: str) -> date | None:
    """
    The latest day that a text can mean; None where it names no year.

    A month without a day is its last day, a year alone its last: nobody is told that a letter is
    older than it may be. Days and months written as numbers in either order count as the year.
    """
    return max([*iso_days(text), *month_days(text)], default=None) or last_of_year(text)


def iso_days(text: str) -> Iterator[date]:
    """Days written year first."""
    for year, month, day in _ISO.findall(text):
        try:
            yield date(int(year), int(month), int(day))
        except ValueError:
            yield date(int(year), 12, 31)


def month_days(text: str) -> Iterator[date]:
    """Days with the month's English name, and months without a day."""
    for match in _MONTH.finditer(text):
        year, month = int(match["year"]), MONTHS.index(match["month"].casefold()) + 1
        last = monthrange(year, month)[1]
        yield date(year, month, min(int(match["before"] or match["after"] or last), last) or last)


def last_of_year(text: str) -> date | None:
    """The last day of the latest year that a text names."""
    years = [int(year) for year in _YEAR.findall(text)]
    return date(max(years), 12, 31) if years else None
