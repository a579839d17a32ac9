"""Crew that the house is to call, and what it is to do or to keep."""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.reading.problems import Refused
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import item, pack, value

RULES_OF_CREW = item(
    "crew",
    "Local crew",
    shortest_call=value("4 h", 14400.0),
    longest_call=value("14 h", 50400.0),
    meal_after=value("5 h", 18000.0),
)


def answer(asked: str) -> Any:
    """The verdict on one call or task."""
    rider = rider_of(f"act: A\n{asked}\n", file="a.yml", rules=RULES)
    (found,) = fit(pack(house=[RULES_OF_CREW]), [rider])["verdicts"]
    return found


@pytest.mark.parametrize(
    ("long", "notes"),
    [
        ("", []),
        (", long: 4 h", []),
        (", long: 3 h", ["The shortest call that is paid is 4 h."]),
        (", long: 8 h", ["A meal break is due after 5 h."]),
        (", long: 8 h, meals: 1", []),
        (
            ", long: 15 h, meals: 2",
            ["One crew works 14 h at the longest; beyond it a second one is called."],
        ),
    ],
)
def test_a_call_is_asked_with_what_the_house_says_of_calls_as_long(
    long: str, notes: list[str]
) -> None:
    found = answer(f"crew: [{{who: stagehands, count: 4{long}}}]")
    assert (found["verdict"], found["notes"]) == ("ask", notes)
    assert found["question"].startswith("Whom can you call of these")


def test_a_time_is_told_from_what_happens() -> None:
    moments = "from: {by: 30 h, before: show}, until: {after: end}"
    found = answer(f"crew: [{{who: flymen, what for: the rail, {moments}, meals: 1}}]")
    assert found["need"] == (
        "1 flymen, for the rail, from 30 h before show, until after end, one meal break"
    )


def test_a_task_is_the_houses_to_agree_to() -> None:
    found = answer('tasks: [{kind: meals, what: Hot, from: {at: "18:30"}, persons: 10}]')
    assert (found["title"], found["need"]) == ("Meals", "Hot, from 18:30, for 10 persons")
    assert found["verdict"] == "ask"
    assert found["question"].startswith("Do you do this, or see to it?")


@pytest.mark.parametrize("part", ["crew: [{who: loaders", "tasks: [{kind: cleaning, what: Deck"])
def test_what_the_show_brings_is_not_asked(part: str) -> None:
    assert answer(f"{part}, carried by: show}}]")["verdict"] == "not needed"


@pytest.mark.parametrize(
    "moment",
    [
        '{at: "10:00", before: show}',
        "{before: show, after: doors}",
        "{by: 30 min}",
        '{at: "10:00", by: 1 h}',
    ],
)
def test_a_time_that_tells_no_one_time_is_refused_with_its_place(moment: str) -> None:
    text = f"act: A\ntasks:\n  - {{kind: cleaning, what: Deck, from: {moment}}}\n"
    with pytest.raises(Refused) as refused:
        rider_of(text, file="a.yml", rules=RULES)
    (problem,) = refused.value.problems
    assert (problem.code, problem.where.line) == ("need-unclear", 3)
    assert "tells no one time; write on with a date, at with a time of day" in str(problem)
