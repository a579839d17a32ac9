"""Sound: which formula, which inputs, and what happens where an input is missing."""

from math import dist, log10

import pytest

from builder.departments.sound.areas.geometry import boxes_of_hang
from builder.departments.sound.publish import offer
from builder.exchange import Spot
from builder.pack import Standing
from tests.departments.sounding import (
    FILL,
    FLOOR,
    HANG,
    HANGS,
    MIX,
    MIXING,
    MODELS,
    ROOM,
    SUBS,
    figure,
    item,
    published,
    sound,
)

TWO = (
    f"hangs: [{{{HANG}}},"
    f" {{{HANG.replace('name: Left', 'name: Right').replace('4 m SL', '4 m SR')}}}]\n"
)


def test_a_hang_weighs_its_boxes_and_its_frame() -> None:
    weight = figure(ROOM + HANGS, "hang", "weight")
    assert weight.value is not None
    assert weight.value.number == pytest.approx(70.0)
    assert weight.working.steps == ("3 × 20 kg + 10 kg = 70 kg",)
    assert weight.caution


def test_an_unknown_frame_leaves_no_weight_and_says_what_is_missing() -> None:
    weight = figure(ROOM + HANGS.replace("frame: 10 kg", "frame: ?"), "hang", "weight")
    assert weight.value is None
    assert weight.missing == ("the weight of the frame",)


def test_rigging_is_told_what_hangs_where() -> None:
    loads = offer(sound(ROOM + HANGS)).loads
    assert [(load.hang, load.what, load.load_kg) for load in loads] == [
        ("L", "3 Line", 60.0),
        ("L", "Frame of Left", 10.0),
    ]


def test_the_weight_of_a_hang_acts_half_a_box_behind_its_fronts() -> None:
    straight = HANGS.replace("boxes: 3, splay: [2 deg, 4 deg]", "boxes: 2, splay: [0 deg]").replace(
        "down: 5 deg", "down: 0 deg"
    )
    deep = ROOM.replace("height: 250 mm", "height: 250 mm\n    depth: 400 mm")
    boxes, frame = offer(sound(deep + straight)).loads
    # Fronts at 1 m DS, looking straight downstage: the middle of a 400 mm deep box is 200 mm
    # upstage of its front. By hand.
    assert (boxes.across_m, boxes.depth_m) == (pytest.approx(4.0), pytest.approx(-0.8))
    assert (frame.across_m, frame.depth_m) == (boxes.across_m, boxes.depth_m)
    assert item(deep + straight, "hang").number("centre_depth") == pytest.approx(-0.8)


def test_boxes_of_unknown_depth_leave_their_place_to_rigging_and_not_their_frame() -> None:
    assert [load.depth_m for load in offer(sound(ROOM + HANGS)).loads] == [None, -1.0]
    assert item(ROOM + HANGS, "hang").figure("centre_depth") is None


def test_a_stack_that_nothing_carries_is_no_load() -> None:
    assert offer(sound(ROOM + HANGS.replace("carried_by: L", "carried_by: none"))).loads == ()


def test_others_are_told_the_audience_areas_with_their_slope() -> None:
    (shape,) = offer(sound(ROOM)).shapes
    assert (shape.kind, shape.name) == ("audience", "Floor")
    assert shape.height_m == (-1.0,) * 4


def test_boxes_follow_each_other_down_their_fronts_by_their_splay() -> None:
    (hang,) = sound(ROOM + HANGS).hangs
    boxes = boxes_of_hang(hang, box_height_m=0.25)
    assert [box.down_deg for box in boxes] == [5.0, 7.0, 11.0]
    assert dist(boxes[0].at, boxes[1].at) == pytest.approx(0.25, abs=1e-3)
    assert boxes[0].at[2] > boxes[1].at[2] > boxes[2].at[2]
    # Looking down, the front leans back: upstage, which is the greater depth.
    assert boxes[0].at[1] < boxes[1].at[1] < boxes[2].at[1]


def test_a_hang_turned_to_stage_left_looks_to_greater_across() -> None:
    turned = ROOM + HANGS.replace(
        "carried_by: L", "carried_by: L, turned: {by: 20 deg, to: stage left}"
    )
    straight = levels(ROOM + HANGS)
    aside = levels(turned)
    left = [index for index, (x, _, _) in enumerate(points(turned)) if x > 5]
    right = [index for index, (x, _, _) in enumerate(points(turned)) if x < -5]
    assert sum(aside[index] - straight[index] for index in left) / len(left) > sum(
        aside[index] - straight[index] for index in right
    ) / len(right)


def points(text: str) -> tuple[tuple[float, float, float], ...]:
    """The places of the first map."""
    return published(text).section.fields[0].points


def levels(text: str, band: str = "A") -> tuple[int, ...]:
    """One band of the first map, in tenths of a decibel."""
    field = published(text).section.fields[0]
    return field.levels[field.bands.index(band)]


def test_the_sub_delays_are_those_of_the_arc() -> None:
    # 8 subs at 1.2 m, 90 deg, c = 343.2 m/s: r = 4.2 / sin 45 deg = 5.940 m; r - sqrt(r^2 - 4.2^2)
    # - (r - sqrt(r^2 - 0.6^2)) = 1.7093 m, by hand.
    delay = figure(ROOM + HANGS + SUBS % ", arc: 90 deg", "sub", "delay", "Subs, number 1")
    assert delay.value is not None
    assert delay.value.number == pytest.approx(1.7093 / 343.2, abs=2e-6)


def test_the_inner_subs_of_an_arc_wait_for_nobody_and_a_straight_line_has_no_delays() -> None:
    assert (
        item(ROOM + HANGS + SUBS % ", arc: 60 deg", "sub", "Subs, number 4").number("delay") == 0.0
    )
    assert item(ROOM + HANGS + SUBS % "", "sub", "Subs, number 1").number("delay") == 0.0


def test_a_silent_sub_keeps_its_place_and_delay_but_is_marked_and_not_counted() -> None:
    text = ROOM + HANGS + SUBS % ", arc: 60 deg, out_of_service: [7]"
    assert item(text, "sub", "Subs, number 7").condition == "out of service"
    assert item(text, "subs").text("playing") == "7 of 8"
    assert item(text, "subband", "63 Hz").number("costs") != item(
        text.replace(", out_of_service: [7]", ""), "subband", "63 Hz"
    ).number("costs")


def test_a_fill_waits_for_the_nearest_hang_it_follows() -> None:
    text = (
        ROOM
        + TWO.replace("boxes: 3, splay: [2 deg, 4 deg]", "boxes: 1")
        + FILL % ", follows: [Left, Right], aligned_at: 2 m, after: 5 ms"
    )
    # Hang: middle of a box 0.25 m high, its top at 5 m, looking 5 deg down. Fill at the datum looks
    # straight out: they meet 2 m out.
    middle = (4.0, -1.0 + 0.125 * 0.0872, 5.0 - 0.125 * 0.9962)
    expected_ms = 1000 * (dist(middle, (0.0, -2.0, 0.0)) - 2.0) / 343.2 + 5.0
    delay = figure(text, "fillbox", "delay")
    assert delay.value is not None
    assert delay.value.number == pytest.approx(expected_ms / 1000, abs=5e-6)


def test_a_fill_that_follows_nothing_has_no_delay_and_says_what_is_missing() -> None:
    delay = figure(ROOM + HANGS + FILL % "", "fillbox", "delay")
    assert delay.value is None
    assert delay.missing == ("the hang it follows", "where they are brought together")


def test_two_mirrored_hangs_make_a_mirrored_map() -> None:
    by_place = dict(zip(points(ROOM + TWO), levels(ROOM + TWO), strict=True))
    assert all(abs(level - by_place[(-x, y, z)]) <= 1 for (x, y, z), level in by_place.items())


def test_levels_are_relative_to_the_mix_position() -> None:
    near = [
        level
        for (x, y, _), level in zip(points(ROOM + HANGS), levels(ROOM + HANGS), strict=True)
        if abs(x) < 1 and abs(y + 10) < 1
    ]
    assert near
    assert max(abs(level) for level in near) <= 20


def test_turning_everything_down_changes_no_relative_level() -> None:
    assert levels(ROOM + HANGS) == levels(
        ROOM + HANGS.replace("frame: 10 kg", "frame: 10 kg, turned_down: 12 dB")
    )


def test_without_fills_the_two_programme_maps_are_the_same_and_with_fills_they_are_not() -> None:
    assert levels(ROOM + HANGS) == levels(ROOM + HANGS, "A, without fills")
    filled = ROOM + HANGS + FILL % ""
    assert levels(filled) != levels(filled, "A, without fills")


def test_ears_lie_on_the_slope_above_its_floor() -> None:
    sloped = ROOM.replace("depth: 14 m DS, height: 1 m down", "depth: 14 m DS, height: 2 m up")
    for _, y, z in points(sloped + HANGS):
        assert z == pytest.approx(-1.0 + (-y - 2.0) * 3.0 / 12.0 + 1.65, abs=0.006)


def test_the_level_at_the_mix_position_falls_with_distance_from_the_makers_level() -> None:
    one = f"hangs: [{{{HANG}}}]\n".replace("boxes: 3, splay: [2 deg, 4 deg]", "boxes: 1").replace(
        "across: 4 m SL", "across: 0 m"
    )
    text = (
        MODELS
        + MIXING
        + FLOOR
        + one.replace("top: 5 m up, down: 5 deg", "top: 0.775 m up, down: 0 deg")
    )
    level = figure(text, "mix", "greatest_level")
    assert level.value is not None
    assert level.value.number is not None
    # Ears and box both 0.65 m up and 9 m apart; all of the box's third octaves are in the sum; air
    # takes 0.1 to 2 dB in a band. By hand.
    assert level.value.number == pytest.approx(130 - 20 * log10(9) - 0.4, abs=0.3)
    assert level.caution
    assert "±5 dB" in level.note


def test_the_mix_position_is_as_far_as_its_place_and_on_its_side() -> None:
    text = ROOM + HANGS
    aside = published(
        text, spots=[Spot("stage", "place", MIX.name, -0.6, -10.0, -1.0)]
    ).section.item("mix")
    assert aside is not None
    assert aside.number("distance") == pytest.approx(10.0)
    off = aside.figure("off_centre")
    assert off is not None
    assert off.note == "to stage right"


def test_decisive_facts_that_nobody_stated_are_shown_as_not_stated() -> None:
    found = item(ROOM + HANGS, "mix")
    standings = {key: found.fact(key) for key in ("cable_path", "power", "lines", "under_balcony")}
    assert all(
        fact is not None and fact.standing is Standing.NOT_STATED for fact in standings.values()
    )
    whole = item(ROOM + HANGS + "processor: ?\n", "whole")
    processor, drive = whole.fact("processor"), whole.fact("drive_lines")
    assert processor is not None
    assert processor.standing is Standing.UNKNOWN
    assert drive is not None
    assert drive.standing is Standing.NOT_STATED


def test_a_large_lawn_takes_a_coarser_grid() -> None:
    large = ROOM.replace("depth: 14 m DS", "depth: 214 m DS").replace("6 m S", "60 m S")
    field = published(large + HANGS).section.fields[0]
    assert field.step_m == 4.0
    assert len(field.points) <= 2000
