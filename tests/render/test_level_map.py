"""
Maps of levels: contours where they belong, numbers where there is room, colours that keep their
order without colour.
"""

import re

import numpy as np
import pytest

from builder.render.contours import Frame, Levels, filled_paths, lines_of, loop_path, within
from builder.render.level_colours import TO_LINEAR_RGB, WHITE_D65, level_colours
from builder.render.level_map import (
    INK,
    Layer,
    Shape,
    Sheet,
    level_map_svg,
    number_places,
    round_metres,
    sided,
    signed,
)

SQUARE = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))


def slope() -> Levels:
    """A level that rises by 1 dB a metre to the right."""
    xs = np.arange(-1.0, 12.0)
    return Levels(xs, xs, np.tile(xs, (len(xs), 1)))


def sheet(**changed: object) -> Sheet:
    """One map of the slope."""
    given: dict[str, object] = {
        "panels": (("Floor", (Layer(slope(), SQUARE),)),),
        "shapes": (Shape(SQUARE, "Deck", heavy=True),),
        "spots": (("Desk", (8.0, 2.0)),),
        "extent_m": (0.0, 10.0, 0.0, 10.0),
        "steps_db": (3, 6),
        "reference": "the mix position",
    }
    return Sheet(**{**given, **changed})  # type: ignore[arg-type]  # given as a mapping, so that a test names what it changes alone


def channels(colour: str) -> list[float]:
    """Linear red, green and blue of a colour, by IEC 61966-2-1, from memory."""
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    return [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]


def lightness(linear: list[float]) -> float:
    """L* of a linear colour, by CIE 15, from memory."""
    luminance = float(np.linalg.inv(np.array(TO_LINEAR_RGB))[1] @ linear) / WHITE_D65[1]
    return 116 * float(np.cbrt(luminance)) - 16


def test_a_contour_of_a_slope_lies_where_the_slope_has_that_level() -> None:
    (line,) = lines_of(slope().contours(), 3)
    assert line[:, 0] == pytest.approx(3.0)


def test_what_is_louder_covers_what_is_quieter() -> None:
    frame = Frame(left_m=0, far_m=10, scale=10)
    paths = dict(filled_paths(slope().contours(), (3, 6), frame))
    assert [int(number) for number in re.findall(r"^M(-?\d+)", paths[3])] == [300]
    assert [int(number) for number in re.findall(r"^M(-?\d+)", paths[6])] == [600]


def test_a_loop_is_written_in_steps_without_those_that_stand_still() -> None:
    assert loop_path(np.array([[0, 0], [5, 0], [5, 0], [5, -4], [0, 0]])) == "M0 0l5 0 0-4z"
    assert loop_path(np.array([[0, 0], [1, 0], [0, 0]])) == ""


def test_inside_an_outline_by_hand() -> None:
    corner = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (5.0, 5.0), (0.0, 10.0))
    assert within(corner, np.array([[1.0, 1.0], [5.0, 8.0], [9.0, 8.0], [11.0, 1.0]])).tolist() == [
        True,
        False,
        True,
        False,
    ]


def test_numbers_stand_only_on_long_contours_and_well_inside_the_outline() -> None:
    line = np.array([(x / 2, 5.0) for x in range(21)])
    assert number_places(line[8:13], SQUARE, apart_m=14) == []
    (place,) = number_places(line, SQUARE, apart_m=14)
    assert place == pytest.approx((5.0, 5.0), abs=0.5)
    assert number_places(line + np.array([0, 4.9]), SQUARE, apart_m=14) == []


def test_a_map_is_cut_at_the_area_and_names_what_it_shows() -> None:
    drawn = level_map_svg(sheet())
    assert drawn.count("<clipPath") == 1
    for words in (
        ">Deck</text>",
        ">Desk</text>",
        ">+3</text>",
        ">dB relative to the mix position</text>",
        ">5 m SL</text>",
    ):
        assert words in drawn
    assert INK in drawn


def test_a_sheet_of_several_carries_titles_for_axes() -> None:
    drawn = level_map_svg(
        sheet(
            panels=(("63 Hz", (Layer(slope(), SQUARE),)), ("1 kHz", (Layer(slope()),))), columns=2
        )
    )
    assert ">63 Hz</text>" in drawn
    assert ">1 kHz</text>" in drawn
    assert " m SL</text>" not in drawn
    assert drawn.count("<clipPath") == 2


def test_a_sheet_without_panels_is_refused() -> None:
    with pytest.raises(ValueError, match=r"sheet\.panels must hold at least one map, got none"):
        level_map_svg(sheet(panels=()))


def test_a_name_on_a_map_cannot_become_markup() -> None:
    assert "<script" not in level_map_svg(
        sheet(spots=(("<script>x</script>", (1.0, 1.0)),), reference="<script>")
    )


def test_places_on_an_axis_are_said_as_crews_write_them() -> None:
    assert [sided(metres, "US", "DS") for metres in (-10, 0, 5)] == ["10 m DS", "0", "5 m US"]
    assert round_metres(-22.4, 6, 6.5) == [-20, -10, 0]
    assert round_metres(0.5, 3.2, 0.9) == [1, 2, 3]
    assert round_metres(-1, 4100, 600) == [0, 1000, 2000, 3000, 4000]


def test_levels_on_contours_carry_their_sign() -> None:
    assert [signed(step) for step in (-3, 0, 3)] == ["−3", "0", "+3"]


@pytest.mark.parametrize("count", [8, 9, 10])
def test_colours_rise_in_equal_steps_of_lightness(count: int) -> None:
    """
    CIE 15 lightness: no step differs from the mean by a tenth, so greys on paper keep the order and
    the spacing.
    """
    steps = np.diff([lightness(channels(colour)) for colour in level_colours(count)])
    assert steps == pytest.approx(np.full(count - 1, steps.mean()), rel=0.1)
    assert steps.mean() > 7


@pytest.mark.parametrize(
    "seen_as",
    [
        ((0.11238, 0.88762, 0), (0.11238, 0.88762, 0), (0.00401, -0.00401, 1)),
        ((0.29275, 0.70725, 0), (0.29275, 0.70725, 0), (-0.02234, 0.02234, 1)),
    ],
)
def test_the_colour_blind_see_the_same_order(seen_as: tuple[tuple[float, ...], ...]) -> None:
    """Viénot, Brettel, Mollon 1999, protanope and deuteranope in linear RGB, from memory."""
    linear = [channels(colour) for colour in level_colours(9)]
    seen = [lightness([float(value) for value in np.array(seen_as) @ colour]) for colour in linear]
    assert np.diff(seen).min() > 5


def test_the_last_label_below_a_map_keeps_within_the_drawing() -> None:
    drawn = level_map_svg(sheet())
    labels = [float(x) for x in re.findall(r'<text x="([\d.]+)"[^>]*>\d+ m SL</text>', drawn)]
    assert max(labels) <= 390 - 26
