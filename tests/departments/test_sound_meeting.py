"""Fills: how their delays drift with the air, and where the hangs are as loud."""

import pytest

from builder.departments.sound.areas.geometry import boxes_of_fill
from builder.departments.sound.areas.meeting import walk
from builder.departments.sound.findings import fills_of
from builder.exchange import Air
from tests.departments.sounding import (
    FILL,
    FLOOR,
    HANGS,
    MIXING,
    MODELS,
    ROOM,
    figure,
    item,
    published,
    sound,
)

TEXT = ROOM + HANGS + FILL % ", follows: [Left], aligned_at: 2 m, turned_down: 6 dB"


def test_cold_air_lets_the_further_hang_come_later() -> None:
    drift_item = item(TEXT, "drift")
    drifts = [drift_item.number(f"drift_{at_c}") for at_c in (5, 15, 25, 35)]
    assert all(drift is not None for drift in drifts)
    assert drifts == sorted(drifts, reverse=True, key=lambda drift: drift or 0.0)
    delay_s = item(TEXT, "fillbox").number("delay")
    assert delay_s is not None
    # The delay is the same longer way, so it stretches as 1/c: sqrt(293.15 / 278.15) - 1 = 2.66 %,
    # by hand.
    assert drifts[0] == pytest.approx(delay_s * 0.0266, rel=0.01)


def test_drift_counts_from_the_house_air() -> None:
    assert item(TEXT, "drift").text("drift_15") != "0 ms"
    warm = published(TEXT, air=Air(15.0, 50.0, 101.325)).section.item("drift")
    assert warm is not None
    assert warm.text("drift_15") == "0 ms"


def test_a_fill_that_follows_nothing_has_no_drift() -> None:
    assert published(ROOM + HANGS + FILL % "").section.of_kind("drift") == ()


def test_the_hangs_meet_a_quiet_fill_sooner() -> None:
    loud, quiet = (
        figure(TEXT.replace("turned_down: 6 dB", f"turned_down: {down} dB"), "fillbox", "meets")
        for down in (6, 12)
    )
    assert loud.value is not None
    assert quiet.value is not None
    assert loud.value.number is not None
    assert quiet.value.number is not None
    assert 2.0 <= quiet.value.number < loud.value.number
    assert loud.caution


def test_a_fill_far_below_the_hangs_is_met_at_the_first_listener() -> None:
    assert (
        item(TEXT.replace("turned_down: 6 dB", "turned_down: 40 dB"), "fillbox").text("meets")
        == "from the first listener on"
    )


def test_a_box_that_does_not_play_meets_nothing() -> None:
    silent = TEXT.replace("boxes: [{at:", "boxes: [{condition: out of service, at:")
    assert item(silent, "fillbox").figure("meets") is None


def test_under_a_balcony_the_walk_stays_below_it() -> None:
    above = (
        FLOOR.replace("audience:\n", "")
        .replace("name: Floor", "name: Balcony")
        .replace("1 m down", "3 m up")
    )
    text = (
        MODELS
        + MIXING
        + FLOOR
        + above
        + HANGS
        + FILL.replace("height: 0 m}", "height: 2.5 m up}, down: 20 deg") % ""
    )
    areas = sound(text).audience
    box = boxes_of_fill(fills_of(sound(text))[0])[0]
    assert [z for _, _, z in walk(box, areas)] == pytest.approx([0.65] * len(walk(box, areas)))
    assert len(walk(box, areas))


def test_boxes_that_wait_equally_long_drift_together() -> None:
    two = TEXT.replace(
        "boxes: [{at:",
        "boxes: [{at: {across: 8 m SL, depth: 0 m, height: 0 m}}, {at: {across: 2 m SL, depth: 0 m,"
        " height: 0 m}}, {at:",
    )
    # The hang is at 4 m SL: 2 m and 6 m SL would be alike; 0 m and 8 m SL are. By hand.
    assert [each.name for each in published(two).section.of_kind("drift")] == [
        "Fills 1, 3",
        "Fills 2",
    ]
