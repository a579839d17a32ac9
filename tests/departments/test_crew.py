"""Crew: how many there are, what calls cost at both ends, and what does not go together."""

from collections.abc import Iterator
from typing import Any

import pytest

from builder.departments.crew import CREW
from builder.departments.crew.description import Crew
from builder.departments.crew.findings import findings
from builder.departments.crew.publish import items
from builder.exchange import CallRules
from builder.pack import Pack, Revision, Section
from builder.pipeline import pack_of, venue_of
from builder.reading.absent import Absent
from builder.reading.dated import dated
from builder.reading.problems import Refused
from builder.reading.quantities import Duration
from builder.reading.reader import read
from builder.stating import Ageing, Stater
from tests.sweep import folder

H = 3600.0
AGEING = Ageing(dated("2026-10-12").first, 365)
USUAL = CallRules(
    shortest=Duration(4 * 3600.0, "4 h"),
    meal_after=Duration(5 * 3600.0, "5 h"),
    meal_break=Duration(3600.0, "60 min"),
    meal_paid=False,
    longest=Duration(14 * 3600.0, "14 h"),
    turnaround=Duration(11 * 3600.0, "11 h"),
)
HANDS = "people: [{name: Hands, skill: stagehands, there: none, to_call: 12, pay: {amount: 20 EUR, per: hour}}]\n"  # noqa: E501
STEPS = "overtime: [{times: 1.5, after: 8 h}, {times: 2, from: 00:00, until: 06:00}]\n"


def crew(text: str) -> Crew:
    """A description of crew."""
    return read(text, file="crew.yml", kind=Crew)


def day(calls: str, more: str = "") -> str:
    """A usual day of some calls."""
    return f"days: [{{name: Day, calls: [{calls}]{more}}}]\n"


def figures(text: str, rules: CallRules = USUAL) -> dict[str, Any]:
    """Every figure of a description by its name: its two ends, or what it lacks."""
    found = items(crew(text), rules, Stater(AGEING))
    return {
        each.key.removeprefix("crew."): each.value.ends if each.value else each.missing
        for item in found
        for each in item.figures
    }


@pytest.mark.source("counting by hand: 2 with the house and 6 to call are 8")
@pytest.mark.parametrize(
    ("told", "ends"),
    [
        ("there: 2, to_call: 6", (8.0, 8.0)),
        ("there: none, to_call: 6", (6.0, 6.0)),
        ("there: 2, to_call: none", (2.0, 2.0)),
        ("there: none, to_call: none", (0.0, 0.0)),
        ("there: 2, to_call: 4 to 6", (6.0, 8.0)),
        ("there: 2, to_call: unknown", (2.0, None)),
        # Who only says how many can be called does not say that none come with the house.
        ("to_call: 6", (6.0, None)),
    ],
)
def test_people_are_counted_with_the_house_and_to_call(told: str, ends: tuple[Any, Any]) -> None:
    assert figures(f"people: [{{name: Hands, {told}}}]\n")["role.hands.at-call"] == ends


def test_nobody_knows_how_many_of_a_role_of_which_nothing_is_said() -> None:
    found = figures("people: [{name: Hands}]\n")["role.hands.at-call"]
    assert found == (
        "how many of Hands come with the house",
        "how many of Hands can be called",
    )


@pytest.mark.source("by hand: 4 h at 20 EUR; 6 h where the role has its own; a call at its price")
@pytest.mark.parametrize(
    ("pay", "ends"),
    [
        ("amount: 20 EUR, per: hour", (80.0, 80.0)),
        ("amount: 20 EUR, per: hour, least: 6 h", (120.0, 120.0)),
        ("amount: 20 EUR, per: hour, least: 4 h to 6 h", (80.0, 120.0)),
        ("amount: 95 EUR, per: show", (95.0, 95.0)),
    ],
)
def test_the_shortest_call_costs_its_hours_at_the_rate(pay: str, ends: tuple[Any, Any]) -> None:
    found = figures(f"people: [{{name: Hands, pay: {{{pay}}}}}]\n")
    assert found["rate.hands.shortest-call"] == ends


@pytest.mark.parametrize(
    ("pay", "lacks"),
    [
        ("amount: unknown, per: hour", ("the rate of Hands",)),
        ("amount: 20 EUR", ("the unit of the rate of Hands",)),
    ],
)
def test_a_rate_that_says_too_little_tells_no_cost(pay: str, lacks: tuple[str, ...]) -> None:
    found = figures(f"people: [{{name: Hands, pay: {{{pay}}}}}]\n")
    assert found["rate.hands.shortest-call"] == lacks


@pytest.mark.source(
    "by hand, 8 hands at 20 EUR from 09:00: 4 h are 4 paid hours; 2 h are paid as 4; 9 h with a"
    " meal of 1 h are 8; 14 h with two meals are 12 = 8 + 4 x 1.5 = 14 paid hours; 20:00 to 02:00"
    " is 6 h with a meal 01:00 to 02:00, so 4 + 1 x 2 = 6"
)
@pytest.mark.parametrize(
    ("from_", "until", "paid_h", "meals"),
    [
        ("09:00", "13:00", 4, 0),
        ("09:00", "11:00", 4, 0),
        ("09:00", "18:00", 8, 1),
        ("09:00", "23:00", 14, 2),
        ("20:00", "02:00", 6, 1),
    ],
)
def test_a_call_is_laid_out_on_the_clock(
    from_: str, until: str, paid_h: float, meals: float
) -> None:
    call = f'{{who: Hands, count: 8, from: "{from_}", until: "{until}"}}'
    found = figures(HANDS + STEPS + day(call))
    assert found["day.day.1.meals"] == (meals, meals)
    assert found["day.day.1.paid"] == (paid_h * H, paid_h * H)
    assert found["day.day.1.cost"] == found["day.day.cost"] == (8 * paid_h * 20.0,) * 2


LONG = '{who: Hands, count: 8, from: "09:00", until: "23:00"}'


@pytest.mark.source(
    "by hand: 14 h on the clock; unpaid meals leave 12 h, 14 paid with overtime; all paid are 14 h,"
    " 8 + 6 x 1.5 = 17; without any overtime known at least 12"
)
@pytest.mark.parametrize(
    ("rules", "steps", "paid_h"),
    [
        ({"meal_paid": True}, STEPS, (17, 17)),
        ({"meal_paid": Absent.NOT_STATED}, STEPS, (14, 17)),
        ({"meal_after": Absent.NONE}, STEPS, (17, 17)),
        ({}, "", (12, None)),
        ({}, "overtime: none\n", (12, 12)),
        ({"shortest": Absent.UNKNOWN}, STEPS, (14, None)),
        ({"shortest": Absent.NONE}, STEPS, (14, 14)),
        ({"meal_break": Absent.UNKNOWN}, STEPS, (4, 17)),
    ],
)
def test_what_is_not_known_of_calls_leaves_an_end_open(
    rules: dict[str, Any], steps: str, paid_h: tuple[float, float | None]
) -> None:
    told = CallRules(**{name: getattr(USUAL, name) for name in USUAL.__slots__} | rules)
    found = figures(HANDS + steps + day(LONG), told)["day.day.1.paid"]
    assert found == tuple(None if each is None else each * H for each in paid_h)


@pytest.mark.source("by hand: Sunday at double: 8 h are 16 paid hours; the day unknown: 8 to 16")
@pytest.mark.parametrize(
    ("more", "paid_h"),
    [(", day: Sunday", (16, 16)), (", day: Monday", (8, 8)), ("", (8, 16))],
)
def test_a_step_of_some_days_counts_on_those(more: str, paid_h: tuple[float, float]) -> None:
    call = '{who: Hands, count: 1, from: "09:00", until: "18:00"}'
    text = f"{HANDS}overtime: [{{times: 2, days: [Sunday]}}]\n{day(call, more)}"
    assert figures(text)["day.day.1.paid"] == tuple(each * H for each in paid_h)


@pytest.mark.source("by hand: 4 of 6 are in the rent, so 2 x 4 h x 20 EUR = 160; else 480")
@pytest.mark.parametrize(
    ("there", "cost"),
    [
        ("there: 4, there_terms: included", (160.0, 160.0)),
        ("there: 4, there_terms: extra charge", (480.0, 480.0)),
        ("there: 4", (160.0, 480.0)),
        ("there: none", (480.0, 480.0)),
        ("there: unknown, there_terms: included", (0.0, 480.0)),
        ("there: 8, there_terms: included", (0.0, 0.0)),
    ],
)
def test_who_is_in_the_rent_costs_nothing_more(there: str, cost: tuple[float, float]) -> None:
    people = f"people: [{{name: Hands, {there}, pay: {{amount: 20 EUR, per: hour}}}}]\n"
    call = '{who: Hands, count: 6, from: "09:00", until: "13:00"}'
    found = figures(f"{people}overtime: none\n{day(call)}")["day.day.1.cost"]
    assert tuple(each or 0.0 for each in found) == cost


@pytest.mark.source("by hand: 2 in the rent are not in it twice at the same time: 0 to 2 x 80 each")
def test_two_calls_at_the_same_time_do_not_both_have_those_in_the_rent() -> None:
    people = (
        "people: [{name: Hands, there: 2, there_terms: included, pay: {amount: 20 EUR,"
        " per: hour}}]\novertime: none\n"
    )
    calls = ", ".join('{who: Hands, count: 2, from: "09:00", until: "13:00"}' for _ in range(2))
    assert figures(people + day(calls))["day.day.cost"] == (None, 320.0)


def test_rates_in_two_currencies_are_not_added_up() -> None:
    people = (
        "people: [{name: Hands, there: none, pay: {amount: 20 EUR, per: hour}}, {name: Guards,"
        " there: none, pay: {amount: £15, per: hour}}]\novertime: none\n"
    )
    calls = ", ".join(
        f'{{who: {who}, count: 1, from: "09:00", until: "13:00"}}' for who in ("Hands", "Guards")
    )
    found = figures(people + day(calls))
    assert found["day.day.cost"] == ("one currency for all rates",)
    assert (found["day.day.1.cost"], found["day.day.2.cost"]) == ((80.0, 80.0), (60.0, 60.0))


@pytest.mark.source("by hand: the last call ends 02:00, and 11 h later it is 13:00")
def test_the_next_call_is_after_the_turnaround() -> None:
    call = '{who: Hands, count: 1, from: "20:00", until: "02:00"}'
    section = Section(
        "crew", "Crew", tuple(items(crew(HANDS + day(call)), USUAL, Stater(AGEING))), ()
    )
    told = section.item("day")
    assert told is not None
    figure = told.figure("next")
    assert figure is not None
    assert figure.value is not None
    assert (figure.value.text, figure.value.number) == ("13:00 the day after", 37 * H)


def test_a_call_without_its_times_says_which() -> None:
    found = figures(HANDS + day('{who: Hands, count: 1, from: "09:00", until: unknown}'))
    assert found["day.day.1.long"] == ("the times of Hands",)
    assert found["day.day.cost"] == ("the cost of Hands",)


@pytest.mark.source("counting by hand: 2 + 1 + 1 persons")
def test_the_least_crew_is_counted_where_it_is_counted_in_all() -> None:
    people = "people: [{name: A}, {name: B}, {name: C}]\n"
    least = "least: [{when: always, people: [{who: A, count: 2}, {who: B, count: 1}, {who: C"
    assert figures(f"{people}{least}, count: 1}}]}}]\n")["least.1.persons"] == (4.0, 4.0)
    assert figures(f"{people}{least}}}]}}]\n")["least.1.persons"] == (3.0, None)
    each = figures(f"{people}{least}, count: 1, for_each: each truck}}]}}]\n")
    assert "least.1.persons" not in each


def found_in(text: str) -> Iterator[tuple[str, str]]:
    """The findings of a description: code and sentence."""
    for each in findings(crew(text), USUAL, AGEING):
        yield each.code, each.sentence


@pytest.mark.parametrize(
    ("text", "code", "sentence"),
    [
        (
            HANDS + "least: [{when: always, people: [{who: Hands, count: 13}]}]\n",
            "crew-too-few",
            "The least crew for 'always' asks for 13 of Hands, and there are 12 with all that can"
            " be called. Which number is right?",
        ),
        (
            HANDS + day('{who: hands, count: 14, from: "09:00", until: "13:00"}'),
            "crew-too-few",
            "'Day' asks for 14 of hands, and there are 12 with all that can be called. Which number"
            " is right?",
        ),
        (
            HANDS + day('{who: Hands, count: 2, from: "09:00", until: "23:30"}'),
            "call-too-long",
            "'Day' calls Hands from 09:00 until 23:30. One crew works 14 h at the longest here: is"
            " a second one called?",
        ),
        (
            "people: [{name: Hands, pay: {amount: £17, per: hour, until: 2025}}]\n",
            "rate-ended",
            "The rate of Hands holds until 2025. What does it cost since?",
        ),
        (
            "people: [{name: Hands, pay: {amount: 17, per: hour}}]\n",
            "rate-without-currency",
            "The rate of Hands tells no currency. Write it with the number, like £17 or 17 EUR.",
        ),
    ],
)
def test_what_does_not_go_together_is_found(text: str, code: str, sentence: str) -> None:
    assert list(found_in(text)) == [(code, sentence)]


@pytest.mark.parametrize(
    "text",
    [
        HANDS + "least: [{when: always, people: [{who: Hands, count: 12}]}]\n",
        HANDS + day('{who: Hands, count: 12, from: "09:00", until: "23:00"}'),
        "people: [{name: Hands, to_call: 2}]\nleast: [{when: a, people: [{who: Hands, count: 3}]}]\n",  # noqa: E501
        "people: [{name: Hands, pay: {amount: £17, until: 2026}}]\n",
        "people: [{name: Hands, pay: {amount: £17, until: none}}]\n",
    ],
)
def test_what_goes_together_is_not_found(text: str) -> None:
    assert list(found_in(text)) == []


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("people: [{skill: stagehands}]\n", "name is missing here"),
        ("people: [{name: A, to_call: -3}]\n", "to_call"),
        ("people: [{name: A, pay: {amount: 17 hats}}]\n", "money-unreadable"),
        ("people: [{name: A, pay: {amount: £17, least: 4}}]\n", "unit-missing"),
        ("overtime: [{times: 2}]\n", "overtime-without-time"),
        ("overtime: [{times: 0.5, after: 8 h}]\n", "impossible"),
    ],
)
def test_what_cannot_be_read_is_told_with_its_line(text: str, told: str) -> None:
    with pytest.raises(Refused, match=told):
        crew(text)


def test_a_role_that_nobody_names_is_a_problem() -> None:
    with pytest.raises(Refused, match="Riggers"):
        demo("people: [{name: Hands}]\nleast: [{when: always, people: [{who: Riggers}]}]\n")


def demo(text: str) -> Pack:
    """The demo with another crew."""
    there = folder("demo")
    return pack_of(venue_of({**there.texts, "crew.yml": text}, there.photos))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("people: none\n", "There is no crew here."),
        ("people: unknown\n", "Nobody has said yet who works here."),
        ("overtime: none\n", "It is not described who works here."),
    ],
)
def test_a_page_without_people_says_which_kind_of_absence_it_is(text: str, words: str) -> None:
    section = demo(text).section("crew")
    assert section is not None
    whole = Pack("Hall", Revision("1", "2026-01-01", "us", "0"), (section,), ())
    assert words in str(CREW.pages(section, whole)[0].blocks)


def test_what_is_for_the_house_only_is_in_no_file() -> None:
    section = demo(
        "people: [{name: Hands, there: 2}, {name: Night gate, there: 1, house_only: yes}]\n"
    ).section("crew")
    assert section is not None
    assert [item.name for item in section.of_kind("role")] == ["Hands"]


@pytest.mark.source("by hand, call by call: 440 + 528 + 1760 + 550 + 1375 + 550 = 5203 EUR")
def test_the_usual_day_of_the_demo() -> None:
    section = demo(folder("demo").texts["crew.yml"]).section("crew")
    assert section is not None
    told = section.item("day")
    assert told is not None
    costs = [item.figure("cost") for item in section.of_kind("day-call")]
    numbers = [each.value.number for each in costs if each and each.value]
    assert numbers == [440.0, 528.0, 1760.0, 550.0, 1375.0, 550.0]
    total = told.figure("cost")
    assert total is not None
    assert total.value is not None
    assert (total.value.number, total.value.text) == (5203.0, "5,203 EUR")
    assert "quote decides" in total.caution
