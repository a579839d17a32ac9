"""The sub line by frequency: on the floor, and against two stacks."""

from math import asin, atan, degrees

import pytest

from builder.departments.sound.subs.bands import crossings_m
from builder.exchange import Spot
from tests.departments.sounding import HANGS, ROOM, SUBS, figure, item, published

TEXT = ROOM + HANGS + SUBS % ", arc: 60 deg"


def test_only_what_the_subs_play_is_shown() -> None:
    assert [each.name for each in published(TEXT).section.of_kind("subband")] == [
        "31.5 Hz",
        "40 Hz",
        "50 Hz",
        "63 Hz",
    ]


def test_the_audience_is_as_wide_as_the_line_sees_it_at_the_mix_position() -> None:
    # The floor is 12 m wide; the mix position is 9 m in front of the line: 2 atan(6/9), by hand.
    found = figure(TEXT, "subs", "audience_angle")
    assert found.value is not None
    assert found.value.number == pytest.approx(2 * degrees(atan(6 / 9)))
    assert found.value.also == "12.0 m wide"


def test_delays_widen_a_line_on_the_floor() -> None:
    wide = (
        ROOM.replace("across: 6 m S", "across: 40 m S").replace("depth: 14 m DS", "depth: 60 m DS")
        + HANGS
        + SUBS % ", arc: 90 deg"
    )
    far = [Spot("stage", "place", "Mix position", 0.0, -40.0, -1.0)]
    (band,) = [
        each
        for each in published(wide, spots=far).section.of_kind("subband")
        if each.name == "63 Hz"
    ]
    as_set, straight = band.number("floor"), band.number("floor_straight")
    assert as_set is not None
    assert straight is not None
    assert as_set > 1.5 * straight


def test_a_straight_line_on_the_floor_far_away_is_as_wide_as_its_angle() -> None:
    far = [Spot("stage", "place", "Mix position", 0.0, -59.0, -1.0)]
    text = ROOM.replace("depth: 14 m DS", "depth: 60 m DS") + HANGS + SUBS % ""
    (band,) = [
        each
        for each in published(text, spots=far).section.of_kind("subband")
        if each.name == "63 Hz"
    ]
    angle, width_m = band.number("straight"), band.number("floor_straight")
    assert angle is not None
    assert width_m is not None
    # 58 m away the line of 8.4 m is in its far field (L^2 f / c = 13 m); a walk sideways also gets
    # further away, which takes 0.5 dB more.
    assert degrees(2 * atan(width_m / 2 / 58)) == pytest.approx(angle, rel=0.08)


def test_two_stacks_stand_where_the_outer_subs_stand() -> None:
    # Outer subs 8.4 m apart: asin(0.5 x (343.2 / 63) / 8.4), by hand.
    assert item(TEXT, "subband", "63 Hz").number("stack_nulls") == pytest.approx(
        degrees(asin(0.5 * 343.2 / 63 / 8.4))
    )
    short = TEXT.replace(", arc: 60 deg", ", arc: 60 deg, out_of_service: [8]")
    assert item(short, "subband", "63 Hz").number("stack_nulls") == pytest.approx(
        degrees(asin(0.5 * 343.2 / 63 / 7.2))
    )


def test_nulls_are_told_where_they_lie() -> None:
    assert item(TEXT, "subband", "63 Hz").text("alley").endswith("nulls among the audience")
    assert item(TEXT, "subband", "31.5 Hz").text("alley").endswith("nulls outside it")


def test_stacks_nearer_than_half_a_wavelength_have_no_null() -> None:
    close = ROOM + HANGS + SUBS.replace("spacing: 1.2 m", "spacing: 0.6 m") % ""
    band = item(close, "subband", "31.5 Hz")
    assert (band.text("stack_nulls"), band.text("alley")) == ("none", "no null")


@pytest.mark.parametrize("spots", [[], [Spot("stage", "place", "Mix position", 0.0, 2.0, -1.0)]])
def test_a_mix_position_that_is_not_in_front_leaves_the_floor_unsaid(spots: list[Spot]) -> None:
    band, *_ = published(TEXT, spots=spots).section.of_kind("subband")
    assert {figure.key.rsplit(".", 1)[-1] for figure in band.figures if figure.missing} == {
        "floor",
        "floor_straight",
        "alley",
    }


def test_an_outline_is_crossed_at_its_sides() -> None:
    assert sorted(crossings_m(((-4, -2), (4, -2), (8, -10), (-8, -10)), -6)) == [-6, 6]
