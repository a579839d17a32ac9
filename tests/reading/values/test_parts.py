"""What values are made of, at both sides of each turn: the calendar, numbers, units, excerpts."""

import calendar
from datetime import date, timedelta

import pytest

from builder.reading.remarks import LONGEST_EXCERPT, excerpt
from builder.reading.values.amounts import two_units
from builder.reading.values.days import days_in, is_leap, weekday_of
from builder.reading.values.numerals import leading_numeral

YEARS = (1, 4, 100, 400, 1600, 1700, 1900, 1999, 2000, 2023, 2024, 2025, 2100, 2400, 9999)


@pytest.mark.parametrize("year", YEARS)
def test_the_calendar_is_that_of_the_standard_library(year: int) -> None:
    assert is_leap(year) == calendar.isleap(year)
    for month in range(1, 13):
        assert days_in(year, month) == calendar.monthrange(year, month)[1]


def test_the_day_of_the_week_is_that_of_the_standard_library() -> None:
    first = date(1999, 12, 25)
    for later in range(0, 1500, 7 * 13 + 1):
        day = first + timedelta(days=later)
        told = weekday_of(day.year, day.month, day.day)
        assert told.lower() == calendar.day_name[day.weekday()].lower()
    assert weekday_of(1, 1, 1).lower() == "monday"
    assert weekday_of(2000, 2, 29).lower() == "tuesday"


@pytest.mark.parametrize(
    ("text", "units"),
    [
        ("ft 6 in", ("ft", "6 in")),
        ("ft .5 in", ("ft", ".5 in")),
        ("ft-6 in", ("ft", "6 in")),
        ("' 10 1/2\"", ("'", '10 1/2"')),
        ("ft", ("", "")),
        ("kg in all", ("", "")),
        ("6 in", ("", "")),
        ("", ("", "")),
    ],
)
def test_a_second_number_behind_a_unit_is_found(text: str, units: tuple[str, str]) -> None:
    assert two_units(text) == units


@pytest.mark.parametrize(
    ("text", "top", "bottom"),
    [
        ("12", 12, 1),
        ("-1.5", -3, 2),
        ("1/4", 1, 4),
        ("2 1/2", 5, 2),
        ("1e3", 1000, 1),
        ("2.5e-1", 1, 4),
        ("1e15", 10**15, 1),
        ("1,234", 1234, 1),
        ("0.001", 1, 1000),
    ],
)
def test_a_number_is_read_exactly(text: str, top: int, bottom: int) -> None:
    found = leading_numeral(text)
    assert found["fault"] is None
    value = found["value"]
    assert int(value["top"]) * bottom == top * int(value["bottom"])


@pytest.mark.parametrize(
    "text", ["1e16", "1e-16", "1e100", "nan", "inf", "1/0", "1234567890123456"]
)
def test_a_number_out_of_bounds_is_refused(text: str) -> None:
    assert leading_numeral(text)["fault"] is not None


def test_an_excerpt_is_cut_only_where_it_is_too_long() -> None:
    whole = "a" * LONGEST_EXCERPT
    assert excerpt(whole) == whole
    assert excerpt(whole + "a") == "a" * (LONGEST_EXCERPT - 1) + "…"
    assert len(excerpt(whole * 2)) == LONGEST_EXCERPT
