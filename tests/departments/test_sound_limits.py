"""Limits: what is left of them, and what the crew's ears get."""

from collections.abc import Sequence
from datetime import date

import pytest

from builder.department import Published, Surroundings
from builder.departments.sound.publish import publish
from builder.exchange import Offers, SoundLimit
from builder.stating import Ageing
from tests.departments.sounding import AIR, HANGS, MIX, ROOM, sound

HOUR = SoundLimit("Audience", 99.0, "A", "equivalent level", 60.0, "mix position")
CLAIM = (
    "claimed_levels: [{level: 100 dB(A), metric: equivalent level, over: 15 min, at: Mix"
    " position}]\n"
)


def limited(text: str, limits: Sequence[SoundLimit]) -> Published:
    """What a text publishes in a house with limits."""
    return publish(
        sound(text),
        Surroundings(
            Offers(spots=(MIX,), air=AIR, limits=tuple(limits)),
            Ageing(date(2026, 6, 1), 365),
            "metric",
        ),
    )


def test_an_hour_is_looked_at_after_10_20_30_and_45_minutes() -> None:
    budgets = limited(ROOM + HANGS, [HOUR]).section.of_kind("budget")
    assert [item.name for item in budgets] == [
        f"Audience, 99 dB(A) over 60 min: after {minutes} min" for minutes in (10, 20, 30, 45)
    ]


def test_what_is_left_is_what_the_energy_leaves() -> None:
    first, _, half, _ = limited(ROOM + HANGS, [HOUR]).section.of_kind("budget")
    # 10 min at +3 dB use 19.95 min of the limit's energy: 40.05 min for 50 min: 10 lg 0.801 = -0.96
    # dB. By hand.
    assert first.text("plus_3") == "98.0 dB(A)"
    # 30 min at +1 dB use 37.77 min: 22.23 min for 30 min: -1.30 dB. At +3 dB, 59.86 of 60 min: 10
    # lg(0.142/30) = -23.2 dB. By hand.
    assert half.text("plus_1") == "97.7 dB(A)"
    assert half.number("plus_3") == pytest.approx(99 - 23.3, abs=0.2)


def test_a_spent_budget_is_said_and_not_a_number() -> None:
    last = limited(ROOM + HANGS, [HOUR]).section.of_kind("budget")[-1]
    assert last.text("plus_3") == "nothing"
    assert last.number("plus_3") is None


@pytest.mark.parametrize(
    "limit",
    [
        SoundLimit("Peak", 135.0, "C", "peak level", 0.0, "x"),
        SoundLimit("Vague", 99.0, "A", "equivalent level", 0.0, "x"),
    ],
)
def test_a_limit_without_a_time_has_no_budget(limit: SoundLimit) -> None:
    assert limited(ROOM + HANGS, [limit]).section.of_kind("budget") == ()


def test_the_dose_at_the_claimed_level_is_that_of_the_published_tables() -> None:
    (dose,) = limited(ROOM + HANGS + CLAIM, []).section.of_kind("dose")
    # 29 CFR 1910.95, table G-16a: 100 dB(A), 2 h. NIOSH 98-126, table 1-1: 100 dB(A), 15 min.
    assert dose.text("osha") == "2.0 h"
    assert dose.text("niosh") == "15 min"
    assert dose.text("niosh_two_hours") == "800 %"
    assert all(figure.caution for figure in dose.figures)


@pytest.mark.parametrize(
    "change",
    [
        ("100 dB(A)", "unknown"),
        ("equivalent level", "unknown"),
        ("at: Mix position", "at: ?"),
    ],
)
def test_a_claim_that_may_be_a_dose_there_is_one_that_is_missing(change: tuple[str, str]) -> None:
    (dose,) = limited(ROOM + HANGS + CLAIM.replace(*change), []).section.of_kind("dose")
    assert all(figure.value is None and figure.missing for figure in dose.figures)


@pytest.mark.parametrize(
    "change",
    [("100 dB(A)", "100 dB(C)"), ("equivalent level", "peak level")],
)
def test_a_claim_that_is_no_dose_at_the_mix_position_gives_none(change: tuple[str, str]) -> None:
    assert limited(ROOM + HANGS + CLAIM.replace(*change), []).section.of_kind("dose") == ()


def test_a_limit_at_the_mix_position_is_a_dose_too() -> None:
    (dose,) = limited(ROOM + HANGS, [HOUR]).section.of_kind("dose")
    assert dose.name == "Audience: 99 dB(A) over 60 min"


def test_a_time_to_work_is_rounded_down() -> None:
    (dose,) = limited(ROOM + HANGS + CLAIM.replace("100 dB(A)", "103 dB(A)"), []).section.of_kind(
        "dose"
    )
    # 8 h / 2^6 = 7.5 min, by hand.
    assert dose.text("niosh") == "7 min"
