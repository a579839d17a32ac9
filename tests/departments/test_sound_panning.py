"""Hangs on the plan: the centre ray, and the audience's edge against the stated coverage."""

from math import radians, tan

import pytest

from builder.departments.sound.areas.edges import Throw
from builder.departments.sound.drawing.plan import hangs_from_above
from builder.pack import Pack, Revision
from tests.departments.sounding import HANGS, MODELS, ROOM, codes, item, published

WIDE = ROOM.replace("6 m S", "12 m S") + HANGS
OUT = (
    "fills: [{name: Out, kind: out fill, model: Line, boxes: [{at: {across: 5 m SL, depth: 1 m DS,"
    " height: 2 m up}, turned: {by: 45 deg, to: stage left}}]}]\n"
)


def test_the_centre_ray_goes_where_the_hang_is_turned() -> None:
    # 4 m SL and 1 m DS, turned 10 deg to stage right: 9 m further on at 4 - 9 tan 10 deg = 2.41 m
    # SL. By hand.
    turned = ROOM + HANGS.replace(
        "carried_by: L", "carried_by: L, turned: {by: 10 deg, to: stage right}"
    )
    assert item(turned, "hang").number("centre_ray") == pytest.approx(4 - 9 * tan(radians(10)))
    assert item(ROOM + HANGS, "hang").number("centre_ray") == pytest.approx(4.0)


def test_the_narrowest_octave_where_speech_is_understood_is_judged() -> None:
    assert item(ROOM + HANGS, "hang").number("judged") == 90.0
    narrow = (
        ROOM.replace("{band: 4 kHz, horizontal: 90 deg}", "{band: 4 kHz, horizontal: 60 deg}")
        + HANGS
    )
    assert item(narrow, "hang").number("judged") == 60.0


@pytest.mark.parametrize(
    ("across_m", "held"), [(13.9, True), (14.1, False), (-5.9, True), (-6.1, False)]
)
def test_a_seat_is_inside_up_to_half_the_coverage(across_m: float, held: bool) -> None:
    assert Throw("x", 4.0, -1.0, 0.0, 90.0).holds(across_m, -11.0) is held


def test_the_edge_is_held_from_where_half_the_coverage_meets_it() -> None:
    # Edge at 12 m SL, 8 m beside the hang: 45 deg reach it 8 m further on, at 9 m DS; seats stand
    # at half metres. By hand.
    assert item(WIDE, "hang").number("edge") == pytest.approx(-9.5)


def test_an_edge_that_nothing_covers_is_a_note_and_an_out_fill_mends_it() -> None:
    (finding,) = [
        finding for finding in published(WIDE).findings if finding.code == "edge-outside-coverage"
    ]
    assert "stage left edge of Floor from 2 m to 9 m downstage" in finding.sentence
    assert "edge-outside-coverage" not in codes(WIDE + OUT)


def test_two_metres_of_an_edge_are_not_told() -> None:
    # The edge 4 m beside the hang is reached at 5 m DS, 3 m into the floor; 3 m beside it at 4 m
    # DS, 2 m into the floor.
    assert "edge-outside-coverage" in codes(ROOM.replace("6 m S", "8 m S") + HANGS)
    assert "edge-outside-coverage" not in codes(ROOM.replace("6 m S", "7 m S") + HANGS)


def test_a_hang_near_the_centre_line_has_no_edge_of_its_own() -> None:
    centre = item(ROOM + HANGS.replace("4 m SL", "0.9 m SL"), "hang")
    assert centre.figure("edge") is None
    assert centre.figure("centre_ray") is not None


def test_a_model_without_stated_coverage_is_not_judged() -> None:
    bare = ROOM.replace(
        MODELS,
        MODELS.replace("band: 1 kHz", "band: 600 Hz")
        .replace("band: 2 kHz", "band: 700 Hz")
        .replace("band: 4 kHz", "band: 800 Hz"),
    )
    assert item(bare + HANGS, "hang").figure("judged") is None


def test_the_plan_of_the_hangs_says_where_they_look() -> None:
    section = published(WIDE).section
    picture = hangs_from_above(
        section, Pack("Room", Revision("1", "2026-06-01", "us", "0"), (section,), ())
    )
    hang = section.item("hang")
    assert picture is not None
    assert hang is not None
    assert hang.text("centre_ray") in picture.alt
    assert hang.text("edge") in picture.alt
