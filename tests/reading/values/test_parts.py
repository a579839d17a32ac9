"""What values are made of, at both sides of each turn: the calendar, numbers, units, excerpts."""

import calendar
from datetime import date, timedelta
from typing import get_args

import pytest

from builder.reading import quantities as q
from builder.reading.measures import shown
from builder.reading.remarks import LONGEST_EXCERPT, excerpt
from builder.reading.values.amounts import two_units
from builder.reading.values.days import WEEKDAYS, days_in, is_leap, read_day, weekday_of
from builder.reading.values.numerals import leading_numeral
from builder.reading.values.sentences import sentence_start, within_sentence
from builder.reading.weekdays import DayOfWeek
from builder.reading.written import Plausible

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
    assert get_args(DayOfWeek) == WEEKDAYS
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


@pytest.mark.parametrize(
    ("hour", "is_usual"),
    [(22, True), (23.5, True), (0, True), (6, True), (6.1, False), (12, False), (21.9, False)],
)
def test_a_usual_time_may_go_over_midnight(hour: float, is_usual: bool) -> None:
    assert Plausible(22 * 3600, 6 * 3600).holds(hour * 3600) == is_usual
    assert Plausible(22, 22).holds(22)


@pytest.mark.parametrize("text", ["2026-01-05", "2024-02-29", "2026-12-31", "0001-01-01"])
def test_a_day_of_the_calendar_is_read(text: str) -> None:
    assert read_day(text)["fault"] is None


@pytest.mark.parametrize(
    "text",
    [
        *("2026-00-05", "2026-13-05", "2026-01-00", "2026-01-32", "2026-04-31", "2023-02-29"),
        *("2026-1-5", "2026-01-055", "2026/01/05", "2026-01/05", "2026 01-05", "0000-01-01"),
        *("2026-01-0５", "２026-01-05", "abcd-ef-gh", ""),
    ],
)
def test_what_is_no_day_of_the_calendar_is_refused(text: str) -> None:
    assert read_day(text)["fault"] is not None


@pytest.mark.parametrize(("si", "unit"), [(9.99, "l"), (10.0, "m³"), (12.0, "m³")])
def test_a_volume_is_told_in_litres_below_ten_cubic_metres(si: float, unit: str) -> None:
    assert shown(q.Volume, si)[0].endswith(f" {unit}")


@pytest.mark.parametrize(
    ("si", "text"),
    [
        *((0.5, "500 ms"), (1.0, "1 s"), (119.0, "119 s"), (120.0, "2 min"), (7140.0, "119 min")),
        *((7200.0, "2 h"), (169_200.0, "47 h"), (172_800.0, "2 days"), (216_000.0, "2.5 days")),
    ],
)
def test_a_duration_is_told_in_the_largest_unit_of_which_it_is_two_or_more(
    si: float, text: str
) -> None:
    assert shown(q.Duration, si)[0] == text


@pytest.mark.parametrize(
    ("si", "text"),
    [
        *((999.0, "999 bit/s"), (1000.0, "1 kbit/s"), (2500.0, "2.5 kbit/s")),
        *((1e6, "1 Mbit/s"), (1e9, "1 Gbit/s"), (999e6, "999 Mbit/s")),
    ],
)
def test_a_rate_is_told_with_the_largest_prefix(si: float, text: str) -> None:
    assert shown(q.DataRate, si)[0] == text


@pytest.mark.parametrize(
    ("metres", "texts"),
    [
        (0.0254, ("25 mm", '1"')),
        (0.999, ("999 mm", "3'-3 1/2\"")),
        (1.0, ("1.00 m", "3'-3 1/2\"")),
        (3.048, ("3.05 m", "10'-0\"")),
        (0.0127, ("13 mm", '1/2"')),
        (99.9, ("99.90 m", "327'-9\"")),
        (120.0, ("120.0 m", "394 ft")),
    ],
)
def test_a_length_is_told_in_both_systems(metres: float, texts: tuple[str, str]) -> None:
    assert shown(q.Length, metres) == texts


@pytest.mark.parametrize(
    ("si", "text"), [(0.0, "00:00"), (81_000.0, "22:30"), (86_340.0, "23:59"), (3_660.0, "01:01")]
)
def test_a_time_of_day_is_told_by_the_clock(si: float, text: str) -> None:
    assert shown(q.TimeOfDay, si)[0] == text


@pytest.mark.parametrize(
    ("metres", "text"), [(-2.0, "2.00 m SR"), (2.0, "2.00 m SL"), (0.0, "centre")]
)
def test_a_place_across_says_its_side(metres: float, text: str) -> None:
    assert shown(q.Across, metres)[0] == text


@pytest.mark.parametrize(
    ("words", "begins", "within"),
    [
        ("beam FOH truss A", "Beam FOH truss A", "beam FOH truss A"),
        ("Leg to R4-1", "Leg to R4-1", "leg to R4-1"),
        ("Network at Mix position", "Network at Mix position", "network at Mix position"),
        ("DMX, free", "DMX, free", "DMX, free"),
        ("L1 of the board", "L1 of the board", "L1 of the board"),
        ("", "", ""),
    ],
)
def test_names_keep_their_letters_in_a_sentence(words: str, begins: str, within: str) -> None:
    assert sentence_start(words) == begins
    assert within_sentence(words) == within
