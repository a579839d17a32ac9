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
from builder.fit.records import FitPack, Verdict
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of

VENUE = Path(__file__).parents[1] / "transcribed" / "hired-stage"
DAY = date(2026, 12, 1)


DIFFERS = "    may_differ: Final figures vary with the trailer we are sent."
SINCE = f"{DIFFERS} We have twice been given its sister.\n"


@cache
def house(differs: str = "") -> FitPack:
    """What the stage publishes for the check, with how it may come otherwise; else as told."""
    folder = read_folder(VENUE)
    assert SINCE in folder.texts["house.yml"]
    told = folder.texts["house.yml"].replace(SINCE, differs)
    return fit_record(pack_of(venue_of({**folder.texts, "house.yml": told}, folder.photos), on=DAY))


def verdicts(asks: str, differs: str = "") -> list[str]:
    """The verdicts on what a rider asks."""
    return [each["verdict"] for each in answers(asks, differs)]


def answers(asks: str, differs: str = "") -> list[Verdict]:
    """The answers to what a rider asks."""
    rider = rider_of(f"act: A\n{asks}\n", file="rider.yml", rules=RULES)
    return fit(house(differs), [rider])["verdicts"]


@pytest.mark.parametrize(
    ("way", "enough", "too_much"),
    [
        ("", "ask", "ask"),
        ("either", "ask", "ask"),
        ("worse", "ask", "short"),
        ("better", "fits, with a note", "ask"),
        ("unknown", "ask", "ask"),
    ],
)
def test_what_rests_on_a_hired_stage_that_may_come_otherwise_is_asked(
    way: str, enough: str, too_much: str
) -> None:
    differs = SINCE + (f"    differs_to: {way}\n" if way else "")
    wing = "needs: [{{what: wing width stage left, at least: {} m}}]"
    assert verdicts(wing.format(2.5), differs) == [enough]
    assert verdicts(wing.format(3.2), differs) == [too_much]


def test_the_answer_says_what_may_come_otherwise_and_one_question_stands_for_all() -> None:
    wing, high = (
        "what: wing width stage left, at least: 2.5 m",
        "what: deck height, at least: 1.2 m",
    )
    asks = f"needs: [{{{wing}}}, {{{high}}}]"
    found = answers(asks, SINCE)
    assert found[0]["reason"].startswith("Stage and roof is hired in, and what comes may differ: ")
    assert found[0]["reason"].endswith("As it is told: Exactly enough.")
    assert {lack["key"] for each in found for lack in each["lacks"]} == {
        "house.hired.stage-and-roof.may_differ"
    }
    rider = rider_of(f"act: A\n{asks}\n", file="rider.yml", rules=RULES)
    questions = [
        words
        for each in fit(house(SINCE), [rider])["questions"]
        for words in each["questions"]
        if "comes" in words
    ]
    assert len(questions) == 1


def test_what_is_not_of_the_hired_stage_is_answered_as_before() -> None:
    assert verdicts("needs: [{what: car parking, at least: 4}]", SINCE) == ["fits, with a note"]
    assert verdicts("needs: [{what: subs, at least: 2}]", SINCE) == ["fits, with a note"]


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
