"""Who a balcony hides from the hangs: told by area, marked on the map, and said as a finding."""

import pytest

from builder.departments.sound.drawing.areas import pictures
from builder.pack import Pack, Revision
from builder.pack_json import from_json, to_json
from tests.departments.sounding import HANGS, MIXING, MODELS, codes, item, published

UNDER = """
audience:
  - name: Floor
    kind: floor
    ears: 1.65 m
    corners: [{across: 6 m SR, depth: 2 m DS, height: 1 m down}, {across: 6 m SL, depth: 2 m DS, height: 1 m down},
      {across: 6 m SL, depth: 22 m DS, height: 1 m down}, {across: 6 m SR, depth: 22 m DS, height: 1 m down}]
  - name: Balcony
    kind: balcony
    ears: 1.2 m
    corners: [{across: 8 m SR, depth: 12 m DS, height: 2 m up}, {across: 8 m SL, depth: 12 m DS, height: 2 m up},
      {across: 8 m SL, depth: 22 m DS, height: 3 m up}, {across: 8 m SR, depth: 22 m DS, height: 3 m up}]
"""  # noqa: E501
LOW, HIGH = HANGS, HANGS.replace("top: 5 m up", "top: 12 m up")
TEXT = MODELS + MIXING + UNDER + HIGH


def test_ears_far_below_a_balcony_see_no_hang_that_is_high() -> None:
    # By hand on the centre: from 11.6 m up, 1 m DS, past the edge at 2 m up, 12 m DS, down to ears
    # at 0.65 m 13.5 m DS. Behind that, none.
    shares = item(TEXT, "area", "Floor").number("sees")
    assert shares == pytest.approx((13.5 - 2) / 20, abs=0.05)
    assert item(TEXT, "area", "Balcony").number("sees") == 1.0
    assert "balcony-shadow" in codes(TEXT)


def test_a_low_hang_reaches_under_the_balcony_unless_its_underside_is_low() -> None:
    assert item(MODELS + MIXING + UNDER + LOW, "area", "Floor").number("sees") == pytest.approx(
        1.0, abs=0.25
    )
    thick = UNDER.replace("kind: balcony\n", "kind: balcony\n    underside: 1.2 m\n")
    thin, deep = (
        item(MODELS + MIXING + text + LOW, "area", "Floor").number("sees")
        for text in (UNDER, thick)
    )
    assert thin is not None
    assert deep is not None
    assert deep < thin - 0.05


def test_what_the_edge_takes_is_told_for_4_khz() -> None:
    # ISO 9613-2, 7.4: from 10 lg 3 = 4.8 dB where the line just touches the edge, at most 20 dB for
    # one edge.
    told = item(TEXT, "area", "Floor").text("edge_takes")
    low, high = (float(word) for word in told.removesuffix(" dB").split(" to "))
    assert 4.7 <= low < high <= 20


def test_hidden_ears_are_marked_on_the_map_and_the_caption_says_what_the_marks_are() -> None:
    pack = from_json(
        to_json(
            Pack("Room", Revision("1", "2026-06-01", "us", "0"), (published(TEXT).section,), ())
        )
    )
    section = pack.sections[0]
    field = next(field for field in section.fields if field.name == "Floor")
    assert all(field.points[index][1] < -12 for index in field.hidden)
    floor = next(
        picture for picture in pictures(section, pack) if picture.caption.startswith("Floor")
    )
    assert floor.svg.count("h0M") >= len(field.hidden) - 1
    assert "Dots: a balcony hides every hang" in floor.caption
    assert "with a straight line to a hang" in floor.alt


def test_without_a_balcony_nobody_is_told_of_shadows() -> None:
    text = MODELS + MIXING + UNDER.replace("kind: balcony", "kind: floor") + HIGH
    assert item(text, "area", "Floor").figure("sees") is None
    assert "balcony-shadow" not in codes(text)
