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
        (", long: 3 h", ["It is billed as 4 h, the shortest call that is paid."]),
        (", long: 8 h", ["A meal break is due after 5 h."]),
        (", long: 8 h, meals: 1", []),
        (", long: 10 h, meals: 1", []),
        (", long: 11 h", ["2 meal breaks are due, one after each 5 h of work."]),
        (", long: 11 h, meals: 1", ["2 meal breaks are due, one after each 5 h of work."]),
        # From and until tell how long a call is, past midnight too.
        (
            ', from: {at: "23:00"}, until: {at: "02:00"}',
            ["It is billed as 4 h, the shortest call that is paid."],
        ),
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


def role(name: str, skill: str, least: float | None, most: float | None, **more: Any) -> Any:
    """People of a role, as the pack tells how many there are."""
    told = (
        value(f"{least:g}", least)
        if least is not None and least == most
        else value("some", None, least=least, most=most)
    )
    words = value(skill) if skill else value("", None, "unknown")
    return item("role", name, skill=words, **{"at-call": told}, **more)


HANDS = role("Hands", "stagehands", 8.0, 8.0)
RIGGERS = role("Riggers", "riggers", 2.0, None)


def called(asked: str, *roles: Any, whole: str = "stated") -> list[Any]:
    """The verdicts on calls in a house that names these roles."""
    rider = rider_of(f"act: A\ncrew:\n{asked}\n", file="a.yml", rules=RULES)
    listed = [*roles, item("whole", "Crew", people=value("", None, whole))] if roles else []
    sections = {"house": [RULES_OF_CREW], "crew": listed}
    return list(fit(pack(**sections), [rider])["verdicts"])


@pytest.mark.parametrize(
    ("call", "roles", "verdict"),
    [
        ("{who: stagehands, count: 8}", [HANDS], "fits"),
        ("{who: stagehands, count: 9}", [HANDS], "short"),
        # Two roles of one skill count together.
        ("{who: stagehands, count: 9}", [HANDS, role("Old hands", "stagehands", 1.0, 1.0)], "fits"),
        ("{who: riggers, count: 2}", [RIGGERS], "fits"),
        ("{who: riggers, count: 3}", [RIGGERS], "ask"),
        ("{who: riggers, count: 3}", [role("Riggers", "riggers", 1.0, 2.0)], "short"),
        ("{who: riggers, count: 2}", [role("Riggers", "riggers", 1.0, 2.0)], "ask"),
        # A role of which nobody says what it can do may be able to.
        ("{who: stagehands, count: 9}", [HANDS, role("Club", "", 4.0, 4.0)], "ask"),
        ("{who: stagehands, count: 8}", [HANDS, role("Club", "", 4.0, 4.0)], "fits"),
        ("{who: wardrobe}", [HANDS, RIGGERS], "ask"),
        ("{who: stagehands, count: 9, carried by: show}", [HANDS], "not needed"),
    ],
)
def test_a_call_is_judged_by_the_people_of_the_house(
    call: str, roles: list[Any], verdict: str
) -> None:
    (found,) = called(f"  - {call}", *roles)
    assert found["verdict"] == verdict


def test_a_skill_that_the_house_does_not_name_is_answered_with_those_that_it_names() -> None:
    (found,) = called("  - {who: wardrobe}", HANDS, RIGGERS)
    assert found["reason"] == "The house names Hands, Riggers. None of them is given as wardrobe."
    assert found["question"].startswith("Whom can you call of these")


def test_too_few_are_short_by_how_many_and_what_would_mend_it() -> None:
    (found,) = called("  - {who: stagehands, count: 10}", HANDS)
    assert (found["verdict"], found["margin"][0]) == ("short", "−2")
    assert found["remedy"].startswith("Bring them with the show")


EARLY = '{who: stagehands, count: 5, from: {at: "09:00"}, until: {at: "13:00"}}'


@pytest.mark.parametrize(
    ("other", "verdict", "note"),
    [
        ('{who: stagehands, count: 5, from: {at: "12:00"}, long: 4 h}', "short", "10 together"),
        (
            '{who: stagehands, count: 3, from: {at: "12:00"}, long: 4 h}',
            "fits, with a note",
            "8 to",
        ),
        ('{who: stagehands, count: 5, from: {at: "13:00"}, long: 4 h}', "fits", ""),
        ('{who: riggers, count: 2, from: {at: "09:00"}, long: 4 h}', "fits", ""),
        ("{who: stagehands, count: 5, from: {after: end}}", "fits, with a note", "too many"),
        ("{who: stagehands, count: 3, from: {after: end}}", "fits", ""),
        ("{who: stagehands, count: 5, from: {after: end}, carried by: show}", "fits", ""),
    ],
)
def test_calls_at_the_same_time_are_counted_together(other: str, verdict: str, note: str) -> None:
    found = called(f"  - {EARLY}\n  - {other}", HANDS, RIGGERS)[0]
    assert found["verdict"] == verdict
    assert note in " ".join(found["notes"])


@pytest.mark.parametrize(
    ("one", "other", "at_once"),
    [
        # Both begin 10 h before the show.
        ("from: {by: 10 h, before: show}", "from: {by: 10 h, before: show}", "yes"),
        # One ends 22 h before the show, the other begins 10 h before it.
        ("from: {by: 30 h, before: show}, long: 8 h", "from: {by: 10 h, before: show}", "no"),
        ("from: {by: 30 h, before: show}, long: 21 h", "from: {by: 10 h, before: show}", "yes"),
        ("from: {after: end}", "from: {by: 1 h, after: end}", "perhaps"),
        ("from: {after: end}, long: 1 h", "from: {by: 1 h, after: end}", "no"),
        ("from: {on: 2027-03-01, at: 09:00}", "from: {at: 09:00}", "perhaps"),
    ],
)
def test_times_told_from_what_happens_are_compared_where_it_is_the_same(
    one: str, other: str, at_once: str
) -> None:
    calls = [f"  - {{who: stagehands, count: 5, {each}}}" for each in (one, other)]
    found = called("\n".join(calls), HANDS)
    for each in found:
        assert (each["verdict"] == "short") == (at_once == "yes")
        assert ("too many" in " ".join(each["notes"])) == (at_once == "perhaps")


def test_what_else_they_must_be_able_to_do_is_asked() -> None:
    (found,) = called("  - {who: stagehands, count: 2, able to: run the desk}", HANDS)
    assert found["verdict"] == "ask"
    assert found["reason"] == (
        "There are as many. Whether they are able to run the desk, the house does not say."
    )
    (found,) = called("  - {who: stagehands, count: 9, able to: run the desk}", HANDS)
    assert found["verdict"] == "short"


def test_what_is_ordered_and_what_the_shortest_call_costs_is_told() -> None:
    more = {"ordered_by": value("7 days", 604_800.0), "there": value("2", 2.0)}
    hands = role("Hands", "stagehands", 8.0, 8.0, **more)
    rate = item("rate", "Hands", **{"shortest-call": value("80 EUR", 80.0)})
    other = item("rate", "Riggers", **{"shortest-call": value("120 EUR", 120.0)})
    (found,) = called("  - {who: stagehands, count: 2}", hands, rate, other)
    assert found["verdict"] == "fits, with a note"
    assert found["notes"] == [
        "Hands are ordered 7 days before the show.",
        "The shortest call of Hands costs 80 EUR a person at the house's rate. A planning figure:"
        " its quote decides.",
    ]
    included = {**more, "there_terms": value("included")}
    hands = role("Hands", "stagehands", 8.0, 8.0, **included)
    assert called("  - {who: stagehands, count: 2}", hands, rate)[0]["notes"] == []
    assert len(called("  - {who: stagehands, count: 3}", hands, rate)[0]["notes"]) == 2


@pytest.mark.parametrize(
    ("standing", "verdict"), [("none", "short"), ("unknown", "ask"), ("not stated", "ask")]
)
def test_a_house_without_people_says_whether_there_are_none(standing: str, verdict: str) -> None:
    whole = item("whole", "Crew", people=value("", None, standing))
    rider = rider_of("act: A\ncrew: [{who: riggers}]\n", file="a.yml", rules=RULES)
    (found,) = fit(pack(house=[RULES_OF_CREW], crew=[whole]), [rider])["verdicts"]
    assert found["verdict"] == verdict


def test_a_crew_that_eats_by_turns_is_due_no_break() -> None:
    by_turns = item(
        "crew", "Local crew", meal_after=value("5 h", 18_000.0), meal_break=value("", None, "none")
    )
    rider = rider_of("act: A\ncrew: [{who: riggers, long: 9 h}]\n", file="a.yml", rules=RULES)
    (found,) = fit(pack(house=[by_turns]), [rider])["verdicts"]
    assert found["notes"] == []


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
