"""
A hired open-air stage, transcribed whole, against what shows ask: what nobody counted or placed is
asked, and never promised.
"""

from datetime import date
from functools import cache
from pathlib import Path

import pytest

from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of

VENUE = Path(__file__).parents[1] / "transcribed" / "hired-stage"
DAY = date(2026, 12, 1)


@cache
def house() -> FitPack:
    """What the stage publishes for the check."""
    folder = read_folder(VENUE)
    return fit_record(pack_of(venue_of(folder.texts, folder.photos), on=DAY))


def verdicts(asks: str) -> list[str]:
    """The verdicts on what a rider asks."""
    rider = rider_of(f"act: A\n{asks}\n", file="rider.yml", rules=RULES)
    return [each["verdict"] for each in fit(house(), [rider])["verdicts"]]


@pytest.mark.parametrize(
    ("need", "verdict"),
    [
        ("{what: subs, at least: 2}", "fits, with a note"),
        (
            "{what: subs, at least: 3}",
            "ask",
        ),  # two as stock; that there are no others, it does not say
        ("{what: car parking, at least: 4}", "fits, with a note"),
        ("{what: car parking, at least: 5}", "short"),  # the audience's cars are none of a show's
        ("{what: shore outlets, at least: 1}", "ask"),  # from the pavilion, nobody counted them
        ("{what: deck height, at least: 1.2 m}", "fits, with a note"),
        (
            "{what: deck height, at least: 1.6 m}",
            "ask",
        ),  # how high it is with the extension, nobody says
        ("{what: wing width stage left, at least: 2.5 m}", "fits"),
        ("{what: wing width stage left, at least: 2.8 m}", "ask"),
        ("{what: wing width stage left, at least: 3.2 m}", "short"),
    ],
)
def test_a_need_is_answered_from_what_the_stage_tells(need: str, verdict: str) -> None:
    assert verdicts(f"needs: [{need}]") == [verdict]


@pytest.mark.parametrize(
    ("load", "verdict"),
    [
        ("{for: backline, count: 4, current: 10 A, phases: single}", "ask"),
        ("{for: sound, count: 1, current: 10 A, phases: single, of: Mix position}", "ask"),
    ],
)
def test_outlets_that_nobody_traced_are_asked_and_promised_to_none(load: str, verdict: str) -> None:
    assert verdicts(f"power: [{load}]") == [verdict]


@pytest.mark.parametrize("kg", [10, 400, 3000])
def test_a_hang_over_a_roof_of_which_nobody_says_what_it_carries_is_never_promised(
    kg: int,
) -> None:
    ends = "{across: 1 m SR, depth: 3 m US, load: %s}, {across: 1 m SL, depth: 3 m US, load: %s}"
    supports = ends % (f"{kg / 2} kg", f"{kg / 2} kg")
    found = verdicts(f"hangs: [{{name: Truss, hoists: counted, supports: [{supports}]}}]")
    assert found
    assert not any(word.startswith("fits") for word in found)


def test_a_show_that_ends_after_a_curfew_that_nobody_calls_hard_is_asked() -> None:
    assert "short" not in verdicts("plays: 2027-07-08\nclock: {on stage: '20:00', ends: '22:30'}")
