"""The level at those who hear the show from outside."""

from collections.abc import Sequence
from datetime import date

import pytest

from builder.department import Published, Surroundings
from builder.departments.sound.publish import publish
from builder.exchange import Offers, SoundLimit
from builder.pack import Figure
from builder.stating import Ageing
from tests.departments.sounding import AIR, HANGS, MIX, ROOM, sound

FARM = (
    "neighbours: [{name: Farm, at: {across: 4 m SL, depth: 301 m DS, height: 0.5 m up},"
    " above_ground: 1.5 m, ground: {stage: hard, middle: hard, receiver: hard}, mix_level: 90"
    " dB(A), limit: Night}]\n"
)
TEXT = ROOM + HANGS + FARM


def heard(text: str, limits: Sequence[SoundLimit] = ()) -> Published:
    """What a text publishes in a house with limits."""
    return publish(
        sound(text),
        Surroundings(
            Offers(spots=(MIX,), air=AIR, limits=tuple(limits)),
            Ageing(date(2026, 6, 1), 365),
            "metric",
        ),
    )


def level(text: str) -> Figure:
    """The level at the farm."""
    item = heard(text).section.item("neighbour")
    assert item is not None
    (figure,) = item.figures
    return figure


def number(text: str) -> float:
    """The level at the farm. [dB(A)]"""
    value = level(text).value
    assert value is not None
    assert value.number is not None
    return value.number


def night(limit_dba: float) -> SoundLimit:
    """A limit at the farm."""
    return SoundLimit("Night", limit_dba, "A", "equivalent level", 15.0, "the farm")


def test_a_louder_mix_is_as_much_louder_there() -> None:
    assert number(TEXT.replace("90 dB(A)", "95 dB(A)")) - number(TEXT) == pytest.approx(5.0)


def test_porous_ground_takes_more_than_hard_ground() -> None:
    assert number(TEXT.replace("hard", "porous")) < number(TEXT) - 1


def test_a_box_straight_ahead_over_hard_ground_falls_by_distance_and_air() -> None:
    one = ROOM + HANGS.replace("boxes: 3, splay: [2 deg, 4 deg]", "boxes: 1").replace(
        "top: 5 m up, down: 5 deg", "top: 0.775 m up, down: 0 deg"
    )
    text = one.replace("across: 4 m SL, depth: 1 m", "across: 0 m, depth: 1 m") + FARM.replace(
        "across: 4 m SL", "across: 0 m"
    )
    # From 9 m to 300 m: -30.5 dB; hard ground +3 to +4.5 dB by ISO 9613-2, table 3 with G = 0 (-1.5
    # -1.5 -3q, q = 1 - 30 x 3.15/300 = 0.69);
    # air over 300 m takes 1 to 4 dB of pink noise. By hand.
    assert number(text) == pytest.approx(90 - 30.5 + 5.1 - 3.0, abs=1.5)


def test_a_level_without_its_weighting_gives_no_level_there() -> None:
    found = level(TEXT.replace("90 dB(A)", "90 dB"))
    assert found.value is None
    assert found.missing == ("an A-weighted level at the mix position",)


def test_a_limit_is_found_on_one_side_of_its_boundary_only() -> None:
    there = number(TEXT)
    assert "neighbour-over-limit" not in [
        finding.code for finding in heard(TEXT, [night(there + 0.1)]).findings
    ]
    (finding,) = [
        finding
        for finding in heard(TEXT, [night(there - 0.1)]).findings
        if finding.code == "neighbour-over-limit"
    ]
    assert "Farm" in finding.sentence
    assert "90 dB(A) at the mix position would meet it" in finding.sentence


def test_a_limit_that_the_house_does_not_state_is_found() -> None:
    assert "limit-not-stated" in [finding.code for finding in heard(TEXT).findings]
    assert "limit-not-stated" not in [
        finding.code for finding in heard(TEXT, [night(99.0)]).findings
    ]


def test_further_than_the_standard_states_its_accuracy_the_figure_says_so() -> None:
    assert "±3 dB" in level(TEXT).note
    assert (
        "states no accuracy"
        in level(TEXT.replace("301 m DS", "1,101 m DS").replace("1,101", "1101")).note
    )
    assert level(TEXT).caution
