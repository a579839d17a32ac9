"""What is odd about the stage beside the steel above it, and what is not."""

from collections.abc import Sequence

import pytest

from builder.departments.stage.description import Stage
from builder.departments.stage.oddities import oddities
from builder.exchange import SteelHeight
from builder.reading.quantities import Height
from builder.reading.reader import read

DECK = (
    "datum: {centre_line: a stud, reference_line: the edge}\n"
    "decks:\n"
    "  - name: Deck\n"
    "    configurations: [Standing]\n"
    "    outline: [{across: 8 m SR, depth: 0 m}, {across: 8 m SL, depth: 0 m},"
    " {across: 8 m SL, depth: 10 m US}, {across: 8 m SR, depth: 10 m US}]\n"
    "    clear_height: %s\n"
)


def beam(left: str, right: str, depth_m: float = 5.0, half_m: float = 12.0) -> list[SteelHeight]:
    """A beam across, with the height of its two ends."""
    return [
        SteelHeight("B", -half_m, depth_m, Height.parse(left)),
        SteelHeight("B", half_m, depth_m, Height.parse(right)),
    ]


def odd(text: str, steel: Sequence[SteelHeight] = ()) -> list[str]:
    """What is odd about a stage below some steel."""
    stage = read(text, file="stage.yml", kind=Stage)
    return [finding.sentence for finding in oddities(stage, steel, "metric")]


@pytest.mark.parametrize("clear", ["9 m", "9.04 m", "6 m", "unknown", "none", "29 ft"])
def test_a_clear_height_below_the_steel_is_not_odd(clear: str) -> None:
    assert odd(DECK % clear, beam("9 m", "9 m")) == []


def test_a_clear_height_above_the_steel_is_asked_about() -> None:
    assert odd(DECK % "9.1 m", beam("9 m", "9 m")) == [
        "Deck: the clear height is 9.1 m, and the lowest steel above the deck, of B, is at 9.00 m."
        " Which one is right?"
    ]


def test_a_clear_height_in_feet_is_offered_in_feet() -> None:
    (sentence,) = odd(DECK % "28 m", beam("9 m", "9 m"))
    assert sentence.endswith(" Is it feet? Then write '28 ft'.")


def test_a_sloping_beam_is_lowest_where_it_leaves_the_deck() -> None:
    """From 12 m at the right end to 6 m at the left: 7 m high over the deck's edge at 8 m SL."""
    (sentence,) = odd(DECK % "8 m", beam("12 m", "6 m"))
    assert "the lowest steel above the deck, of B, is at 7.00 m" in sentence
    assert odd(DECK % "7 m", beam("12 m", "6 m")) == []


def test_steel_beside_the_deck_is_not_above_it() -> None:
    assert odd(DECK % "9.1 m", beam("5 m", "5 m", depth_m=11.0)) == []
    assert odd(DECK % "9.1 m", beam("5 m", "5 m", depth_m=-1.0)) == []


def test_steel_told_in_feet_as_metres_is_asked_about_by_what_is_clear_below_it() -> None:
    assert odd(DECK % "9 m", beam("33 m", "33 m")) == [
        "Deck: the clear height is 9 m, and the lowest steel above the deck, of B, is at 33.00 m."
        " The steel says 33 m. Is it feet? Then write '33 ft'."
    ]


def test_a_low_ceiling_under_high_steel_is_usual() -> None:
    assert odd(DECK % "7 m", beam("20 m", "20 m")) == [], "20 ft are below 7 m"
    assert odd(DECK % "4 m", beam("20 m", "20 m")) == [], "and far above 4 m"


def test_a_height_stated_once_stands_for_its_place_alone() -> None:
    assert len(odd(DECK % "9.1 m", [SteelHeight("B", 0.0, 5.0, Height.parse("8 m"))])) == 1
    assert odd(DECK % "9.1 m", [SteelHeight("B", 9.0, 5.0, Height.parse("8 m"))]) == []


def test_without_steel_nothing_is_compared() -> None:
    assert odd(DECK % "99 m") == []


def test_two_places_on_one_spot_are_told_and_two_heights_are_two_places() -> None:
    places = (
        "places: [{name: A, at: {across: 1 m SL, depth: 2 m US, height: 0 m}},"
        " {name: B, at: {across: 1 m SL, depth: 2 m US, height: %s}}]\n"
    )
    assert odd(DECK % "9 m" + places % "0 m") == [
        "A and B are at one spot, 1 m SL, 2 m US, 0 m. Was a line copied, or is a side, SL or SR,"
        " US or DS, written wrong?"
    ]
    assert odd(DECK % "9 m" + places % "3 m up") == []


@pytest.mark.parametrize(
    ("height", "sheet", "is_told"),
    [
        ("set from 1.1 m to 1.5 m", "set from 1 m to 1.4 m", True),
        ("set from 1.1 m to 1.4 m", "set from 1 m to 1.4 m", False),
        ("0.9 m", "set from 1 m to 1.4 m", True),
        ("4 ft", "1 to 1.4 m", False),
        ("5 ft", "at most 1.4 m", True),
        ("unknown", "1.4 m", False),
        ("1.4 m", "unknown", False),
    ],
)
def test_a_deck_beyond_its_maker_s_sheet_is_asked_about(
    height: str, sheet: str, is_told: bool
) -> None:
    keys = f"    height: {height}\n    height_by_sheet: {sheet.replace('at most', 'up to')}\n"
    told = odd(DECK % "none" + keys)
    assert len(told) == (1 if is_told else 0)
    assert all("Which one comes?" in sentence for sentence in told)
