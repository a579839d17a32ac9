"""By how much a number moved, and what share of itself that is: each value by hand."""

import pytest

from builder.pack import Value
from builder.stock.amount import decimals, how_far, how_much, is_imperial, leading, unit_of
from builder.stock.blocks import LONG, by_lines, key_lines


def kg(number: float | None, unit: str = "kg") -> Value:
    """A mass."""
    return Value(f"{number} {unit}", number=number, unit=unit)


@pytest.mark.parametrize(
    ("before", "after", "share"),
    [
        (kg(1.0), kg(2.0), 0.5),
        (kg(2.0), kg(1.0), 0.5),
        (kg(3.0), kg(2.0), 0.3333),
        (kg(-1.0), kg(1.0), 1.0),
        (kg(0.0), kg(0.0), 0.0),
        (kg(0.0), kg(0.5), 1.0),
        (None, kg(2.0), 1.0),
        (kg(2.0), None, 1.0),
        (None, None, 0.0),
        (kg(None), kg(None), 0.0),
        (kg(None), kg(2.0), 1.0),
        (kg(2.0), kg(2.0, "m"), 1.0),
        # 20 dB are a tenth of the pressure, 6.0206 dB half of it, whatever the level.
        (kg(100.0, "dB"), kg(80.0, "dB"), 0.9),
        (kg(0.0, "dB"), kg(6.0206, "dB"), 0.5),
        (kg(100.0, "dB"), kg(100.0, "dB"), 0.0),
    ],
)
def test_how_far_a_number_moved_of_itself(
    before: Value | None, after: Value | None, share: float
) -> None:
    assert how_far(before, after) == share


@pytest.mark.parametrize(
    ("text", "number", "unit", "digits"),
    [
        ("+1.5 dB", 1.5, "dB", 1),
        ("−0.25 m", -0.25, "m", 2),
        ("1,240 kg", 1240.0, "kg", 0),
        ("−7 points", -7.0, "%", 0),
        ("9 of 10", 9.0, "of 10", 0),
        ("none", None, "none", 0),
    ],
)
def test_a_text_is_taken_apart_into_number_and_unit(
    text: str, number: float | None, unit: str, digits: int
) -> None:
    assert (leading(text), unit_of(text), decimals(text)) == (number, unit, digits)


@pytest.mark.parametrize("text", ["18 ft", "5'-0\"", '3"', "20 lb", "3 psf", "12 lb/ft", "9 sq ft"])
def test_feet_inches_and_pounds_are_imperial(text: str) -> None:
    assert is_imperial(text)
    assert not is_imperial("3.5 kg/m")


@pytest.mark.parametrize(
    ("before", "after", "by"),
    [
        (
            Value("at most 5 A", unit="A", most=5.0),
            Value("at most 8 A", unit="A", most=8.0),
            "+3 A",
        ),
        (Value("at most 5 A", unit="A", most=5.0), Value("at least 8 A", unit="A", least=8.0), ""),
        (Value("1 ft", number=0.3048, unit="m"), Value("2 ft", number=0.6096, unit="m"), "+1'-0\""),
        (
            Value("2.00 kg", number=2.0, unit="kg"),
            Value("2.00 kg", number=2.004, unit="kg"),
            "+0.004 kg",
        ),
    ],
)
def test_ends_are_compared_with_the_same_ends_alone(before: Value, after: Value, by: str) -> None:
    assert how_much(before, after) == by


def test_a_list_is_written_in_lines_where_it_is_longer_than_a_line() -> None:
    """By hand: brackets are two characters, each entry after the first a comma and a blank more."""
    fits = ["x" * 49, "y" * (LONG - 2 - 49 - 2)]
    assert not by_lines(list(fits))
    assert by_lines([*fits[:1], fits[1] + "y"])
    assert not by_lines("x" * 200)
    assert by_lines([{"a": "1"}])
    text = "a: 1\r\n"
    assert key_lines(text, 2, "k", [*fits[:1], fits[1] + "y"]) == (
        f"\r\n  k:\r\n    - {fits[0]}\r\n    - {fits[1]}y"
    )
    assert key_lines("a: 1\n", 0, "k", ["1", "2"]) == "\nk: [1, 2]"
