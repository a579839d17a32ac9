"""Numbers in words: each expected text by hand, at both sides of where the wording turns."""

import pytest

from builder.fit.wording import both, clock, digits, feet, lasting, metres, significant, span

HOUR_S = 3600.0
DAY_S = 24 * HOUR_S


@pytest.mark.parametrize(
    ("number", "places", "text"),
    [
        (0.0, 0, "0"),
        (999.0, 0, "999"),
        (1234.5, 0, "1,235"),
        (1234567.0, 0, "1,234,567"),
        (-1234.0, 1, "-1,234.0"),
        (0.05, 1, "0.1"),
        (1.05, 2, "1.05"),
        (-0.05, 1, "-0.1"),
        (-0.04, 1, "0.0"),
        (99_999_999_999.0, 0, "99,999,999,999"),
        (100_000_000_000.0, 2, "over 100,000,000,000"),
        (-100_000_000_000.0, 2, "-over 100,000,000,000"),
    ],
)
def test_halves_go_away_from_zero_and_what_no_show_needs_is_only_called_large(
    number: float, places: int, text: str
) -> None:
    assert digits(number, places) == text


@pytest.mark.parametrize(
    ("number", "text"),
    [(100.0, "100"), (-100.0, "-100"), (99.0, "99.0"), (10.0, "10.0"), (9.0, "9.00")],
)
def test_a_small_number_has_more_decimals(number: float, text: str) -> None:
    assert significant(number) == text


@pytest.mark.parametrize(
    ("value_m", "text"),
    [
        (0.0, "0.00 m"),
        (0.0004, "less than 1 mm"),
        (0.0006, "1 mm"),
        (0.999, "999 mm"),
        (-0.25, "-250 mm"),
        (0.9996, "1.00 m"),
        (1.0, "1.00 m"),
        (12.345678, "12.35 m"),
    ],
)
def test_a_length_below_a_metre_is_told_in_millimetres(value_m: float, text: str) -> None:
    assert metres(value_m) == text


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (0.0, '0"'),
        (0.1, 'less than 1/2"'),
        (0.5, '1/2"'),
        (1.0, '1"'),
        (1.5, '1 1/2"'),
        (11.8, "1'-0\""),
        (12.0, "1'-0\""),
        (12.5, "1'-0 1/2\""),
        (74.0, "6'-2\""),
        (-0.5, '-1/2"'),
        (-15.0, "-1'-3\""),
        (12_000.0, "1,000'-0\""),
    ],
)
def test_a_length_in_feet_is_told_to_the_half_inch(inches: float, text: str) -> None:
    assert feet(inches * 0.0254) == text


@pytest.mark.parametrize(
    ("time_s", "text"),
    [
        (0.0, "00:00"),
        (9 * HOUR_S + 300, "09:05"),
        (DAY_S - 60, "23:59"),
        (DAY_S - 31, "23:59"),
        (DAY_S - 30, "00:00 the next day"),
        (25.5 * HOUR_S, "01:30 the next day"),
        (100_000_000_000.0, "over 100,000,000,000 s"),
    ],
)
def test_a_time_of_day_goes_on_after_midnight(time_s: float, text: str) -> None:
    assert clock(time_s) == text


@pytest.mark.parametrize(
    ("length_s", "text"),
    [
        (90.0, "1.5 min"),
        (2 * HOUR_S - 60, "119 min"),
        (2 * HOUR_S, "2 h"),
        (-2 * HOUR_S, "-2 h"),
        (47.5 * HOUR_S, "47.5 h"),
        (2 * DAY_S, "2 days"),
        (2.5 * DAY_S, "2.5 days"),
    ],
)
def test_a_length_of_time_is_told_in_minutes_hours_or_days(length_s: float, text: str) -> None:
    assert span(length_s) == text


@pytest.mark.parametrize(
    ("length_s", "text"),
    [
        (0.0, "0 min"),
        (3.0, "0.1 min"),
        (2 * HOUR_S - 6, "119.9 min"),
        (2 * HOUR_S - 3, "2 h"),
        (3.5 * HOUR_S + 6, "3 h 30.1 min"),
        (1200 * HOUR_S, "1,200 h"),
        (100_000_000_000.0, "over 100,000,000,000 s"),
    ],
)
def test_a_length_on_a_day_is_told_in_hours_and_minutes(length_s: float, text: str) -> None:
    assert lasting(length_s) == text


@pytest.mark.parametrize(
    ("kind", "value", "words"),
    [
        ("length", 3.048, ["3.05 m", "10'-0\""]),
        ("mass", 45.359237, ["45.4 kg", "100 lb"]),
        ("load", 100 * 47.880259, ["4.79 kPa", "100 psf"]),
        ("area", 9.290304, ["9.29 m²", "100 sq ft"]),
        ("current", 63.0, ["63.0 A", ""]),
        ("level", 98.25, ["98.3 dB", ""]),
        ("duration", 5400.0, ["90 min", ""]),
        ("count", 12.0, ["12", ""]),
    ],
)
def test_a_value_stands_in_both_systems(kind: str, value: float, words: list[str]) -> None:
    assert both(kind, value) == words
