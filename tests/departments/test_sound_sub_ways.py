"""The subs of a line in pairs: how many, how deep, which delays, and what changes."""

from math import log10

import numpy as np
import pytest

from builder.departments.sound.areas.coverage import listening
from builder.departments.sound.areas.sources import models_of
from builder.departments.sound.subs.line import delays_ms
from builder.departments.sound.subs.other_ways import (
    END_FIRE,
    GRADIENT,
    depth_m,
    levels_db,
    middle_hz,
    pairs_of,
)
from builder.formulas.sub_pairs import gradient_front_gain_db
from tests.departments.sounding import AIR, HANGS, MIX, ROOM, SUBS, item, published, sound

TEXT = ROOM + HANGS + SUBS % ", arc: 60 deg, out_of_service: [7]"
C = 343.2


def pairs(text: str = TEXT):  # type: ignore[no-untyped-def]  # what pairs_of gives, which each test unpacks
    """The pairs of the only line."""
    found = sound(text)
    (line,) = found.subs
    return pairs_of(line, models_of(found)[line.model], C)


def test_seven_subs_make_three_pairs_and_one_is_left_over() -> None:
    found = pairs()
    assert found is not None
    assert (len(found.across_m), found.left_over) == (3, 1)
    # Over the length of the line, from the first sub to the eighth: ±4.2 m, by hand.
    assert found.across_m == pytest.approx((-4.2, 0.0, 4.2))


def test_the_depth_is_a_quarter_of_a_wavelength_in_the_middle_of_what_the_subs_play() -> None:
    # 28 to 70 Hz: √(28 × 70) = 44.3 Hz, 343.2 / 44.3 / 4 = 1.94 m, in steps of 5 cm, by hand.
    model = models_of(sound(TEXT))["Sub"]
    assert middle_hz(model) == pytest.approx(44.27, abs=0.01)
    assert depth_m(model, C) == pytest.approx(1.95)


def test_end_fire_delays_the_front_and_a_gradient_the_rear_which_it_inverts() -> None:
    found = pairs()
    assert found is not None
    front, rear = found.boxes(END_FIRE)[2:4]
    assert (front.delay_s - rear.delay_s) * C == pytest.approx(1.95)
    assert (front.inverted, rear.inverted) == (False, False)
    front, rear = found.boxes(GRADIENT)[2:4]
    assert (rear.delay_s - front.delay_s) * C == pytest.approx(1.95)
    assert (front.inverted, rear.inverted) == (False, True)
    assert rear.at[1] - front.at[1] == pytest.approx(1.95)


def test_each_pair_keeps_the_delay_of_the_arc_at_its_place() -> None:
    found = pairs()
    (line,) = sound(TEXT).subs
    assert found is not None
    assert found.arc_ms[0] == pytest.approx(
        delays_ms(line, speed_m_s=C)[0] - min(delays_ms(line, speed_m_s=C)), abs=0.15
    )
    assert found.arc_ms[1] == pytest.approx(0.0)


@pytest.mark.parametrize(
    "changed", ["out_of_service: [1, 2, 3, 4, 5]", "sits: flown", "sits: under the stage"]
)
def test_pairs_need_four_subs_and_floor_behind_them(changed: str) -> None:
    assert pairs(TEXT.replace("out_of_service: [7]", changed)) is None
    assert not published(TEXT.replace("out_of_service: [7]", changed)).section.of_kind("subways")


def test_a_gradient_pair_far_ahead_is_the_closed_form() -> None:
    """
    20 lg (2 |sin(2 pi f d / c)|) against one sub, by H.

    F. Olson; 1 km ahead on the axis of one pair.
    """
    found, described = pairs(), sound(TEXT)
    heard = listening(described, AIR, [MIX])
    assert found is not None
    assert heard is not None
    boxes = found.boxes(GRADIENT)[2:4]
    far = np.array([[0.0, -1000.0, boxes[0].at[2]]])
    pair, one = (
        levels_db(boxes, (40.0,), far, heard)[40.0],
        levels_db(boxes[:1], (40.0,), far, heard)[40.0],
    )
    assert pair - one == pytest.approx(
        gradient_front_gain_db(depth_m=1.95, frequency_hz=39.69, speed_m_s=heard.air.speed_m_s),
        abs=0.1,
    )


def test_an_end_fire_pair_far_ahead_adds_six_decibels_in_every_third_octave() -> None:
    found, described = pairs(), sound(TEXT)
    heard = listening(described, AIR, [MIX])
    assert found is not None
    assert heard is not None
    boxes = found.boxes(END_FIRE)[2:4]
    far = np.array([[0.0, -1000.0, boxes[0].at[2]]])
    pair, one = (levels_db(each, (31.5, 63.0), far, heard) for each in (boxes, boxes[:1]))
    for hertz in (31.5, 63.0):
        assert pair[hertz] - one[hertz] == pytest.approx(20 * log10(2), abs=0.05)


def test_pairs_are_quieter_on_the_stage_than_the_line() -> None:
    band = item(TEXT, "subwayband", "40 Hz")
    for way in ("end_fire", "gradient"):
        stage, mix = band.number(f"{way}_stage"), band.number(f"{way}_mix")
        assert stage is not None
        assert mix is not None
        assert stage < mix - 6
