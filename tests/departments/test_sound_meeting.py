"""Fills: how their delays drift with the air, and where the hangs are as loud."""

import pytest

from builder.departments.sound.findings import fills_of
from builder.departments.sound.geometry import boxes_of_fill
from builder.departments.sound.meeting import walk
from builder.exchange import Air
from tests.departments.sounding import FILL, FLOOR, HANGS, MIXING, MODELS, ROOM, figure, item, published, sound

TEXT = ROOM + HANGS + FILL % ", follows: [Left], aligned_at: 2 m, turned_down: 6 dB"


def test_cold_air_lets_the_further_hang_come_later() -> None:
    box = item(TEXT, "fillbox")
    drifts = [box.number(f"drift_{at_c}") for at_c in (5, 15, 25, 35)]
    assert all(drift is not None for drift in drifts)
    assert drifts == sorted(drifts, reverse=True, key=lambda drift: drift or 0.0)
    delay_s = box.number("delay")
    assert delay_s is not None
    # The delay is the same longer way, so it stretches as 1/c: sqrt(293.15 / 278.15) - 1 = 2.66 %, by hand.
    assert drifts[0] == pytest.approx(delay_s * 0.0266, rel=0.01)


def test_drift_counts_from_the_house_air() -> None:
    assert item(TEXT, "fillbox").text("drift_15") != "0 ms"
    warm = published(TEXT, air=Air(15.0, 50.0, 101.325)).section.item("fillbox")
    assert warm is not None
    assert warm.text("drift_15") == "0 ms"


def test_a_fill_that_follows_nothing_has_no_drift() -> None:
    assert item(ROOM + HANGS + FILL % "", "fillbox").figure("drift_5") is None


def test_the_hangs_meet_a_quiet_fill_sooner() -> None:
    loud, quiet = (figure(TEXT.replace("turned_down: 6 dB", f"turned_down: {down} dB"), "fillbox", "meets") for down in (6, 12))
    assert loud.value is not None
    assert quiet.value is not None
    assert loud.value.number is not None
    assert quiet.value.number is not None
    assert 2.0 <= quiet.value.number < loud.value.number
    assert loud.caution


def test_a_fill_far_below_the_hangs_is_met_at_the_first_listener() -> None:
    assert item(TEXT.replace("turned_down: 6 dB", "turned_down: 40 dB"), "fillbox").text("meets") == "from the first listener on"


def test_a_box_that_does_not_play_meets_nothing() -> None:
    silent = TEXT.replace("boxes: [{at:", "boxes: [{condition: out of service, at:")
    assert item(silent, "fillbox").figure("meets") is None


def test_under_a_balcony_the_walk_stays_below_it() -> None:
    above = FLOOR.replace("audience:\n", "").replace("name: Floor", "name: Balcony").replace("1 m down", "3 m up")
    text = MODELS + MIXING + FLOOR + above + HANGS + FILL.replace("height: 0 m}", "height: 2.5 m up}, down: 20 deg") % ""
    areas = sound(text).audience
    box = boxes_of_fill(fills_of(sound(text))[0])[0]
    assert [z for _, _, z in walk(box, areas)] == pytest.approx([0.65] * len(walk(box, areas)))
    assert len(walk(box, areas))
