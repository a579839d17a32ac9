"""How many of how many of a line do not work, and in which words."""

import pytest

from builder.departments.lines.cables import PermanentLine
from builder.departments.power.description import Outlet
from builder.departments.sound.description.positions import DropBox
from builder.departments.sound.description.stock import Radio, Stock
from builder.reading.how_many import numbers, out_words
from builder.reading.in_service import not_working
from builder.reading.written import Line

MICROPHONES = {"name": "Vellum", "kind": "microphone", "count": "14"}
BOX = {"name": "A", "ways": "16"}
RADIO = {"name": "Tern", "kind": "microphone", "channels": "8"}


def words(kind: type[Line], /, **keys: object) -> str:
    """What a line tells of those that do not work."""
    lost = not_working(kind.model_validate(keys))
    return lost.words if lost else "nobody says"


@pytest.mark.parametrize(
    ("keys", "expected"),
    [
        ({}, "nobody says"),
        ({"working": "13"}, "1 of 14 out of service"),
        ({"working": "14"}, ""),
        ({"working": "0"}, "all 14 out of service"),
        ({"working": "none"}, "all 14 out of service"),
        ({"working": "unknown"}, "nobody says"),
        ({"working": "13", "condition": "limited"}, "1 of 14 out of service"),
        ({"condition": "limited"}, "nobody says"),
        ({"condition": "out of service"}, "all 14 out of service"),
        ({"condition": "out of service", "count": "1"}, "out of service"),
    ],
)
def test_a_line_of_stock_tells_how_many_of_how_many_are_out(
    keys: dict[str, str], expected: str
) -> None:
    assert words(Stock, **{**MICROPHONES, **keys}) == expected


def test_the_number_of_a_unit_is_told_as_its_number() -> None:
    assert words(DropBox, **BOX, dead=["11"]) == "1 of 16 ways out of service, number 11"
    assert words(DropBox, **BOX, dead=["7"]) == "1 of 16 ways out of service, number 7"
    assert words(DropBox, **BOX, dead=["9", "3"]) == "2 of 16 ways out of service, numbers 3 and 9"
    assert words(DropBox, **BOX) == ""
    assert words(Radio, **RADIO, working="7") == "1 of 8 channels out of service"


def test_a_line_without_a_number_tells_none() -> None:
    outlet = {"place": "Left", "connector": "CEE 7/3", "count": "2", "fed_from": "Board"}
    assert words(Outlet, **outlet, condition="out of service") == "all 2 out of service"
    assert not_working(Line.model_validate({"condition": "out of service"})) is None


def test_ways_of_a_permanent_line_are_told_as_such() -> None:
    ends = {"from": {"place": "Left"}, "to": {"place": "Right"}}
    line = {"name": "Stage cross", "kind": "analogue", "ways": "12", **ends}
    assert words(PermanentLine, **line, dead=["3", "9"]) == (
        "2 of 12 ways out of service, numbers 3 and 9"
    )
    assert words(PermanentLine, **line, working="none") == "all 12 ways out of service"


@pytest.mark.parametrize(
    ("out", "of", "expected"),
    [
        (0, 10, ""),
        (1, 10, "1 of 10 out of service"),
        (10, 10, "all 10 out of service"),
        (1, 1, "out of service"),
        (0, 0, ""),
    ],
)
def test_none_all_and_a_single_one_have_words_of_their_own(
    out: int, of: int, expected: str
) -> None:
    assert out_words(out, of) == expected


def test_numbers_are_listed_as_numbers() -> None:
    assert [numbers([]), numbers([7]), numbers([3, 7]), numbers([3, 7, 9])] == [
        "",
        "number 7",
        "numbers 3 and 7",
        "numbers 3, 7 and 9",
    ]
