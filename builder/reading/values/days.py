"""Days of the calendar, year first, and their day of the week."""

from typing import TypedDict

from builder.reading.values.faults import Fault, empty_fault, fault
from builder.reading.values.spelling import folded, is_digit

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTH_DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
ADVICE = "write year-month-day, like 2026-03-02"


class Day(TypedDict):
    """A day as it is written, with its day of the week, or what is wrong with it."""

    text: str
    weekday: str
    fault: Fault | None


def read_day(text: str) -> Day:
    """A day, year first. Codes: `empty-value`, `date-unreadable`."""
    line = folded(text)
    if line == "":
        return no_day(empty_fault())
    if not is_shaped(line):
        return no_day(fault("is not a date, year first", "date-unreadable", ADVICE))
    parts = [line[:4], line[5:7], line[8:]]
    if not all(is_digit(char) for char in "".join(parts)):
        return no_day(not_in_calendar())
    year, month, day = int(parts[0]), int(parts[1]), int(parts[2])
    if year < 1 or not 1 <= month <= 12 or not 1 <= day <= days_in(year, month):
        return no_day(not_in_calendar())
    return {"text": line, "weekday": weekday_on(line), "fault": None}


def no_day(wrong: Fault) -> Day:
    """What is no day."""
    return {"text": "", "weekday": "", "fault": wrong}


def not_in_calendar() -> Fault:
    """The fault of a date that no calendar has."""
    return fault("is not a day of the calendar", "date-unreadable", ADVICE)


def is_shaped(line: str) -> bool:
    """Whether a text has the shape of a date: ten plain characters, dashes in their places."""
    if len(line) != 10 or not all(char <= "~" for char in line):
        return False
    return line[4] == "-" and line[7] == "-"


def is_leap(year: int) -> bool:
    """Whether a year has a 29th of February."""
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def days_in(year: int, month: int) -> int:
    """How many days a month has."""
    return 29 if month == 2 and is_leap(year) else MONTH_DAYS[month - 1]


def weekday_on(date: str) -> str:
    """The day of the week of a day of the calendar, written year first."""
    return weekday_of(int(date[:4]), int(date[5:7]), int(date[8:10]))


def weekday_of(year: int, month: int, day: int) -> str:
    """The day of the week, by the calendar that began on a Monday in year 1."""
    before = year - 1
    days = before * 365 + before // 4 - before // 100 + before // 400
    for earlier in range(1, month):
        days += days_in(year, earlier)
    return WEEKDAYS[(days + day - 1) % 7]
