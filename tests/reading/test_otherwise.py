"""What else a value may have been meant as."""

from collections.abc import Callable

import pytest

from builder.reading.otherwise import (
    MISTAKEN_UNITS,
    WORDS,
    other_digits,
    other_units,
    otherwise,
    otherwise_counted,
)
from builder.reading.quantities import (
    Across,
    CrossSection,
    Current,
    Duration,
    Height,
    Length,
    Level,
    Mass,
    Quantity,
    Slope,
    Temperature,
    TimeOfDay,
)
from builder.reading.units import KINDS

EVENING = " Is it the other half of the day? Then write '22:30'."


def between(low: float, high: float) -> Callable[[float], bool]:
    """Fits from one value to another."""
    return lambda si: low <= si <= high


@pytest.mark.parametrize(
    ("quantity", "low", "high", "questions"),
    [
        (Mass.parse("2,200 kg"), 980, 1020, " Is it pounds? Then write '2,200 lb'."),
        (Height.parse("27 m up"), 7, 9, " Is it feet? Then write '27 ft up'."),
        (Length.parse("63'"), 1.5, 1.7, " Is it inches? Then write '63\"'."),
        (Length.parse("9 ft"), 0.1, 0.3, " Is it inches? Then write '9 in'."),
        (
            Current.parse("1250 A"),
            110,
            140,
            " Is the decimal point in the wrong place? Then write '125 A'.",
        ),
        (
            Level.parse("9.9 dB(A)"),
            25,
            145,
            " Is the decimal point in the wrong place? Then write '99 dB(A)'.",
        ),
        (TimeOfDay.parse("10:30"), 79_200, 82_800, EVENING),
        (TimeOfDay.parse("10:30 am"), 79_200, 82_800, EVENING),
        (Temperature.parse("68 C"), 291, 295, " Is it °F? Then write '68 °F'."),
        (Current.parse("30 A"), 0.005, 0.1, " Is it mA? Then write '30 mA'."),
        (
            Across.parse("96 m SL"),
            -12,
            12,
            " Is it centimetres? Then write '96 cm SL'. Is the decimal point in the wrong place?"
            " Then write '9.6 m SL'.",
        ),
        (Duration.parse("45 h"), 600, 10_800, " Is it minutes? Then write '45 min'."),
        (
            Slope.parse("30 deg"),
            0,
            0.2,
            " Is the decimal point in the wrong place? Then write '3 deg'.",
        ),
    ],
)
def test_it_asks_what_would_fit(
    quantity: Quantity, low: float, high: float, questions: str
) -> None:
    assert otherwise(quantity, between(low, high)) == questions


def test_it_asks_nothing_where_nothing_else_fits() -> None:
    assert otherwise(Length.parse("77 m"), between(1000, 1001)) == ""


@pytest.mark.parametrize(
    "quantity",
    [
        Length.parse("27'-10 1/2\""),
        Length.parse("9 ft 6 in"),
        Duration.parse("1 h 30 min"),
        CrossSection.parse("4/0 AWG"),
        Slope.parse("1:12"),
        Across.parse("centre"),
    ],
)
def test_what_is_no_single_number_with_a_unit_has_no_other_unit(quantity: Quantity) -> None:
    assert list(other_units(quantity)) == []
    assert list(other_digits(quantity)) == []


def test_a_fraction_keeps_its_digits() -> None:
    assert list(other_digits(Length.parse('10 1/2"'))) == []


def test_a_second_wording_is_left_out_of_what_is_offered() -> None:
    assert (
        otherwise(Length.parse("60 m (18.3 m)"), between(18, 19))
        == " Is it feet? Then write '60 ft'."
    )


def test_a_count_has_no_unit_and_keeps_whole() -> None:
    assert otherwise_counted(4304, between(400, 450)) == "", (
        "430.4 places is no count, so it is not offered"
    )
    assert (
        otherwise_counted(90, between(1, 30)) == " Is a digit in the wrong place? Then write '9'."
    )


def test_every_unit_that_is_offered_is_one_that_the_language_reads() -> None:
    known = {unit.symbol for table in KINDS.values() for unit in table.values()}
    offered = {symbol for others in MISTAKEN_UNITS.values() for symbol in others}
    assert {*MISTAKEN_UNITS, *offered, *WORDS} <= known


def test_a_unit_is_never_offered_for_itself() -> None:
    assert [unit for unit, others in MISTAKEN_UNITS.items() if unit in others] == []
