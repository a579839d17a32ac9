"""Sound: each finding on both sides of its boundary."""

import pytest

from builder.exchange import Air, Spot
from builder.pack import Level
from builder.reading.problems import Refused
from tests.departments.sounding import (
    FILL,
    FLOOR,
    HANG,
    HANGS,
    MIXING,
    MODELS,
    ROOM,
    SUBS,
    codes,
    published,
)


def test_a_hang_that_is_whole_is_no_finding() -> None:
    assert codes(ROOM + HANGS) == []


def test_a_hang_without_boxes_is_found_and_drawn_nowhere() -> None:
    text = ROOM + HANGS.replace("boxes: 3, splay: [2 deg, 4 deg]", "boxes: 0")
    assert "hang-without-boxes" in codes(text)
    assert published(text).section.fields == ()


@pytest.mark.parametrize("angles", ["2 deg", "2 deg, 4 deg, 6 deg"])
def test_one_splay_angle_too_few_or_too_many_is_found(angles: str) -> None:
    text = ROOM + HANGS.replace("2 deg, 4 deg", angles)
    finding = next(
        finding for finding in published(text).findings if finding.code == "splay-mismatch"
    )
    assert "3 boxes" in finding.sentence
    assert "There should be 2" in finding.sentence
    assert finding.place is not None
    assert finding.place.line > 1


def test_a_splay_nobody_knows_is_a_note_and_not_a_guess() -> None:
    text = ROOM + HANGS.replace("[2 deg, 4 deg]", "?")
    assert "splay-unknown" in codes(text)
    assert "splay-mismatch" not in codes(text)
    assert published(text).section.fields == ()


def test_one_box_needs_no_splay() -> None:
    assert codes(ROOM + HANGS.replace("boxes: 3, splay: [2 deg, 4 deg]", "boxes: 1")) == []


def test_a_mix_position_of_any_size_stands_for_a_bounded_number_of_ears() -> None:
    mix = MIXING.replace("width: none, depth: none", "width: 100 m, depth: 4 m")
    (field,) = published(MODELS + mix + FLOOR + HANGS).section.fields
    (reference,) = (each.text for each in field.working.inputs if each.label == "Reference")
    assert reference.startswith("Mix position: mean energy of 225 places over its width and depth")


def test_an_audience_area_that_crosses_itself_is_refused() -> None:
    crossed = FLOOR.replace("across: 6 m SL, depth: 14 m DS", "across: 6 m SX, depth: 14 m DS")
    crossed = crossed.replace(
        "across: 6 m SR, depth: 14 m DS", "across: 6 m SL, depth: 14 m DS"
    ).replace("6 m SX", "6 m SR")
    with pytest.raises(Refused, match="meets the side that begins at corner 2") as refused:
        published(MODELS + MIXING + crossed + HANGS)
    assert [problem.code for problem in refused.value.problems] == ["outline-crosses"]


def test_the_mix_position_inside_an_area_is_no_finding_and_outside_every_area_is_one() -> None:
    assert (
        codes(ROOM + HANGS, spots=[Spot("stage", "place", "Mix position", 0.0, -13.9, -1.0)]) == []
    )
    assert codes(
        ROOM + HANGS, spots=[Spot("stage", "place", "Mix position", 0.0, -14.1, -1.0)]
    ) == ["mix-outside-audience"]


def test_a_delay_of_a_second_is_no_finding_and_above_it_is_one() -> None:
    assert "delay-long" not in codes(
        ROOM + HANGS.replace("frame: 10 kg", "frame: 10 kg, delay: 1 s")
    )
    assert "delay-long" in codes(
        ROOM + HANGS.replace("frame: 10 kg", "frame: 10 kg, delay: 1.001 s")
    )


@pytest.mark.parametrize(
    ("humidity", "found"), [(4.9, True), (5.0, False), (99.0, False), (99.1, True), (150.0, True)]
)
def test_air_that_no_audience_sits_in_is_found(humidity: float, found: bool) -> None:
    assert ("air-implausible" in codes(ROOM + HANGS, air=Air(20.0, humidity, 101.325))) is found


def test_air_hotter_than_the_absorption_is_known_for_is_found_and_has_no_map() -> None:
    hot = Air(50.1, 50.0, 101.325)
    assert {"air-implausible", "no-map"} <= set(codes(ROOM + HANGS, air=hot))
    assert published(ROOM + HANGS, air=hot).section.fields == ()


def test_a_model_without_coverage_in_an_octave_it_plays_is_a_note_that_names_it() -> None:
    text = (ROOM + HANGS).replace(", {band: 4 kHz, horizontal: 90 deg}", "")
    (finding,) = published(text).findings
    assert finding.code == "coverage-not-given"
    assert finding.level is Level.NOTE
    assert "4 kHz" in finding.sentence
    assert "2 kHz" not in finding.sentence


def test_a_silent_sub_is_a_note_that_counts_from_stage_right() -> None:
    findings = published(ROOM + HANGS + SUBS % ", out_of_service: [7]").findings
    (finding,) = findings
    assert finding.code == "sub-out-of-service"
    assert "Sub 7 of Subs, counted from stage right" in finding.sentence
    assert "7 of 8 play" in finding.sentence


def test_an_area_the_system_does_not_reach_is_found() -> None:
    away = FLOOR + FLOOR.replace("audience:\n", "").replace("name: Floor", "name: Annex").replace(
        "depth: 2 m DS", "depth: 160 m DS"
    ).replace("depth: 14 m DS", "depth: 200 m DS")
    assert "area-weak" in codes(MODELS + MIXING + away + HANGS)
    assert "area-weak" not in codes(ROOM + HANGS)


def test_a_floor_that_bends_is_found_and_one_slope_is_not() -> None:
    corner = "{across: 6 m SR, depth: 14 m DS, height: 1 m down}"
    assert "area-uneven" in codes(ROOM.replace(corner, corner.replace("1 m down", "0 m")) + HANGS)
    sloped = ROOM.replace("depth: 14 m DS, height: 1 m down", "depth: 14 m DS, height: 0 m")
    assert "area-uneven" not in codes(sloped + HANGS)


def test_a_drive_line_to_nothing_and_a_hang_without_one_are_found() -> None:
    lines = "drive_lines: [{name: L, feeds: [Lift], signals: [analogue]}]\n"
    assert sorted(codes(ROOM + HANGS + lines)) == ["drive-feeds-nothing", "not-driven"]
    assert codes(ROOM + HANGS + lines.replace("Lift", "Left")) == []


def test_a_frame_weight_that_is_none_can_be_weighed_and_an_unknown_one_cannot() -> None:
    assert codes(ROOM + HANGS.replace("frame: 10 kg", "frame: none")) == []
    assert codes(ROOM + HANGS.replace("frame: 10 kg", "frame: ?")) == ["hang-weight-incomplete"]
    assert codes(ROOM + HANGS.replace(", frame: 10 kg", "")) == ["hang-weight-incomplete"]


def test_without_air_or_mix_position_there_is_no_map_and_a_note_says_why() -> None:
    assert codes(ROOM + HANGS, air=None) == ["no-map"]
    assert codes(ROOM + HANGS, spots=[]) == ["no-map"]


def test_levels_of_two_models_without_a_makers_level_are_not_guessed() -> None:
    text = (ROOM + HANGS + SUBS % "").replace("kind: sub, level: 135 dB", "kind: sub")
    (finding,) = published(text).findings
    assert finding.code == "no-map"
    assert "the maker's level of Sub" in finding.sentence


def test_a_hang_out_of_service_is_in_no_map_but_still_weighs() -> None:
    found = published(ROOM + f"hangs: [{{{HANG}, condition: out of service}}]\n" + FILL % "")
    hang = found.section.item("hang")
    assert found.section.fields == ()
    assert hang is not None
    assert hang.number("weight") == pytest.approx(70.0)


def test_an_area_too_thin_for_a_map_is_found_and_stops_nothing() -> None:
    thin = FLOOR + FLOOR.replace("audience:\n", "").replace("name: Floor", "name: Ledge").replace(
        "6 m SR", "5.9999 m SL"
    )
    assert "area-too-thin" in codes(MODELS + MIXING + thin + HANGS)
    assert [field.name for field in published(MODELS + MIXING + thin + HANGS).section.fields] == [
        "Floor"
    ]


@pytest.mark.parametrize("far", ["900 m DS", "3000 m DS", "10000 m DS"])
def test_absurdly_large_areas_end_in_time_with_a_small_map(far: str) -> None:
    fields = published(
        ROOM.replace("depth: 14 m DS", f"depth: {far}") + HANGS + SUBS % ", arc: 40 deg"
    ).section.fields
    assert all(len(field.points) <= 12_000 for field in fields)
