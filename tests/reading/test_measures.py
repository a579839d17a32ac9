"""
Words for quantities: the author's own, the same in the other system, and computed values in both.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.reading import quantities as q
from builder.reading.measures import both, shown


@pytest.mark.source(
    "1 ft = 0.3048 m and 1 lb = 0.453 592 37 kg (agreement of 1959); NIST SP 811, Appendix B.8, for"
    " psf, lb/ft and mph; by hand"
)
@pytest.mark.parametrize(
    ("kind", "text", "other"),
    [
        (q.Length, "18.3 m", "60'-0 1/2\""),
        (q.Length, "950 mm", "3'-1 1/2\""),
        (q.Length, "0.1 m", '4"'),
        (q.Length, "27'-10 1/2\"", "8.50 m"),
        (q.Length, '9"', "229 mm"),
        (q.Length, "285 m", "935 ft"),
        (q.Length, "-0.3 m", "-1'-0\""),
        (q.Mass, "900 kg", "1,984 lb"),
        (q.Mass, "1.5 t", "3,307 lb"),
        (q.Mass, "2000 lb", "907 kg"),
        (q.LoadPerArea, "7.4 kPa", "155 psf"),
        (q.LoadPerArea, "155 psf", "7.42 kPa"),
        (q.LoadPerLength, "30 lb/ft", "44.6 kg/m"),
        (q.Area, "260 m2", "2,799 sq ft"),
        (q.Temperature, "20 C", "68 °F"),
        (q.Temperature, "68 F", "20 °C"),
        (q.Temperature, "-40 °C", "-40 °F"),
        (q.Speed, "12 m/s", "26.8 mph"),
        (q.Volume, "10 US gal", "37.9 l"),
        (q.Across, "9.5 m SR", "31'-2\" SR"),
        (q.Depth, "3 ft 6 in US", "1.07 m US"),
        (q.Height, "1.4 m", "4'-7\" up"),
        (q.Height, "0.3 m down", "1'-0\" down"),
    ],
)
def test_the_other_system_stands_beside_the_authors_words(
    kind: type[q.Quantity], text: str, other: str
) -> None:
    assert both(kind.parse(text)) == (text, other)


@pytest.mark.parametrize(
    ("kind", "text"),
    [
        (q.Length, "24 ft (7.32 m)"),
        (q.Length, "60 ft / 18.3 m"),
        (q.Current, "400 A"),
        (q.Across, "centre"),
        (q.TimeOfDay, "22:30"),
        (q.Slope, "1:12"),
        (q.CrossSection, "35 mm2"),
        (q.Level, "98 dB(A)"),
    ],
)
def test_no_second_wording_where_the_author_wrote_both_or_there_is_none(
    kind: type[q.Quantity], text: str
) -> None:
    assert both(kind.parse(text)) == (text, "")


@pytest.mark.source("American wire gauge after ASTM B258: 4/0 has 107 mm2")
def test_a_wire_gauge_is_shown_in_square_millimetres_too() -> None:
    assert both(q.CrossSection.parse("4/0 AWG")) == ("4/0 AWG", "107 mm²")


@pytest.mark.parametrize(
    ("kind", "si", "words"),
    [
        (q.Mass, 1240.0, ("1,240 kg", "2,734 lb")),
        (q.Mass, 0.0, ("0.00 kg", "0.00 lb")),
        (q.Length, 12.345, ("12.34 m", "40'-6\"")),
        (q.Length, 0.012, ("12 mm", '1/2"')),
        (q.Length, 0.9996, ("1.00 m", "3'-3 1/2\"")),
        (q.Length, 0.0, ("0.00 m", '0"')),
        (q.Across, -4.2, ("4.20 m SR", "13'-9 1/2\" SR")),
        (q.Across, 0.0, ("centre", "centre")),
        (q.LoadPerArea, 7400.0, ("7.40 kPa", "155 psf")),
        (q.Current, 412.6, ("413 A", "")),
        (q.Voltage, 2.273, ("2.27 V", "")),
        (q.ApparentPower, 12000.0, ("12.0 kVA", "")),
        (q.Power, 640.0, ("640 W", "")),
        (q.Power, 6400.0, ("6.40 kW", "")),
        (q.Power, 0.05, ("50.0 mW", "")),
        (q.Frequency, 518.2e6, ("518.200 MHz", "")),
        (q.Frequency, 2500.0, ("2.5 kHz", "")),
        (q.Frequency, 63.0, ("63 Hz", "")),
        (q.DataRate, 1e9, ("1 Gbit/s", "")),
        (q.DataRate, 2.5e8, ("250 Mbit/s", "")),
        (q.Level, 102.0, ("102.0 dB", "")),
        (q.Duration, 0.035, ("35 ms", "")),
        (q.Duration, 3600.0, ("60 min", "")),
        (q.Duration, 432000.0, ("5 days", "")),
        (q.TimeOfDay, 81000.0, ("22:30", "")),
        (q.TimeOfDay, 86400.0, ("24:00", "")),
        (q.Slope, 1 / 12, ("1:12", "")),
        (q.Slope, -0.3, ("-1:3.33", "")),
        (q.Percent, 0.08, ("8 %", "")),
        (q.Angle, 4.76, ("4.8 deg", "")),
        (q.Stiffness, 2e6, ("2,000 kN m²", "")),
        (q.Volume, 5200.0, ("5,200 m³", "183,636 cu ft")),
    ],
)
def test_a_computed_value_is_written_with_digits_that_fit_its_size(
    kind: type[q.Quantity], si: float, words: tuple[str, str]
) -> None:
    assert shown(kind, si) == words


def test_the_other_system_can_come_first() -> None:
    assert shown(q.Mass, 1240.0, system="imperial") == ("2,734 lb", "1,240 kg")
    assert shown(q.Current, 16.0, system="imperial") == ("16.0 A", "")


def test_digits_are_those_asked_for_in_the_first_wording() -> None:
    assert shown(q.Mass, 1240.0, 1) == ("1,240.0 kg", "2,734 lb")
    assert shown(q.Length, 0.5, 3)[0] == "0.500 m"
    assert shown(q.Percent, 0.08, 2)[0] == "8.00 %"


@pytest.mark.source("round half to even, by hand: 0.125, 2.675 and 1234.5 as decimal numbers")
def test_halves_go_to_the_even_digit_of_the_decimal_form() -> None:
    assert [shown(q.Mass, value, digits)[0] for value, digits in ((0.125, 2), (0.135, 2), (2.675, 2), (1234.5, 0))] == [  # noqa: E501
        "0.12 kg", "0.14 kg", "2.68 kg", "1,234 kg",
    ]  # fmt: skip


def test_a_value_that_cannot_be_shown_is_named() -> None:
    with pytest.raises(ValueError, match=r"^si must be finite, got nan$"):
        shown(q.Mass, math.nan)
    with pytest.raises(ValueError, match=r"^digits must be 0 or more, got -1$"):
        shown(q.Mass, 1.0, -1)
    with pytest.raises(
        ValueError, match=r"^si must be between 0 and 86400 for a time of day, got 90000\.0$"
    ):
        shown(q.TimeOfDay, 90000.0)
    with pytest.raises(ValueError, match=r"^kind must be a kind of quantity, got Quantity$"):
        shown(q.Quantity, 1.0)


SIGNED = (q.Length, q.Across, q.Depth, q.Height, q.Level, q.Angle, q.Percent)
UNSIGNED = (
    q.Area, q.Volume, q.Mass, q.LoadPerArea, q.LoadPerLength, q.Temperature, q.Speed, q.Stiffness, q.CrossSection, q.Current, q.Voltage,  # noqa: E501
    q.ApparentPower, q.Power, q.Frequency, q.DataRate, q.Duration,
)  # fmt: skip


@given(
    st.sampled_from(SIGNED + UNSIGNED),
    st.floats(0, 1e6),
    st.booleans(),
    st.sampled_from(["metric", "imperial"]),
)
def test_what_is_shown_reads_back_to_the_same_value_within_its_rounding(
    kind: type[q.Quantity], si: float, minus: bool, system: str
) -> None:
    value = -si if minus and kind in SIGNED else si
    words, other = shown(kind, value, system=system)  # type: ignore[arg-type]  # hypothesis draws the text
    for wording in filter(None, (words, other)):
        half_digit = kind.amounts(wording)[0].step_si / 2
        half_of_half_an_inch = 0.00636 if issubclass(kind, q.Length) else 0.0
        assert abs(kind.parse(wording).si - value) <= max(
            half_digit * (1 + 1e-6), half_of_half_an_inch
        )


@given(st.integers(0, 1440))
def test_every_minute_of_the_day_reads_back(minute: int) -> None:
    assert q.TimeOfDay.parse(shown(q.TimeOfDay, minute * 60.0)[0]).minutes == minute


@given(st.sampled_from(SIGNED + UNSIGNED), st.floats(-1e6, 1e6))
def test_both_never_fails_on_what_was_read(kind: type[q.Quantity], si: float) -> None:
    wording = shown(kind, si if kind in SIGNED else abs(si))[0]
    assert both(kind.parse(wording))[0] == wording
