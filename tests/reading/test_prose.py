"""What prose tells that the figures do not know."""

from datetime import date

import pytest

from builder.departments.house.description import House
from builder.departments.stage.description import Stage
from builder.reading.reader import read
from builder.reading.remarks import Remark
from builder.reading.review import review
from builder.reading.written import Written

DATUM = "datum: {centre_line: a stud, reference_line: the edge}\ndecks: []\n"
HOUSE = (
    "name: H\nwhat: %s\ntown: T\nsetting: indoors\ntime_zone: UTC\n"
    "revision: {number: 1, on: 2026-06-01, by: me}\n"
)


def remarks(text: str, kind: type[Written] = Stage) -> tuple[Remark, ...]:
    """The remarks on a text as of the first of June 2026."""
    return review(read(text, file="f.yml", kind=kind), on=date(2026, 6, 1), stale_after_days=365)


def of_note(note: str, more: str = "") -> list[str]:
    """What a note on a line of stock gives cause for."""
    steps = f"furnishings: [{{name: Steps, count: 4{more}, note: '{note}'}}]\n"
    return [remark.code for remark in remarks(DATUM + steps)]


@pytest.mark.parametrize(
    "note",
    [
        "Closed until May.",
        "Not available until 2027-03-01.",
        "The lift is closed for repairs.",
        "Shut till spring",
        "Out of use.",
        "Being replaced this winter.",
        "Closed for the season.",
    ],
)
def test_what_is_closed_for_a_time_belongs_under_condition(note: str) -> None:
    assert of_note(note) == ["condition-in-prose"]
    assert of_note(note, ", condition: out of service") == []


@pytest.mark.parametrize(
    "note",
    [
        "Closed until 08:00.",
        "Closed until 8 am on weekdays.",
        "Not open until doors.",
        "Closed from above.",
        "It opens until 2027.",
        "A closed cable.",
        "Closed for privacy.",
    ],
)
def test_an_hour_of_the_day_is_a_rule_and_no_condition(note: str) -> None:
    assert of_note(note) == []


def test_a_house_that_is_closed_has_no_condition_to_write_it_under() -> None:
    (remark,) = remarks(HOUSE % "Closed until May 2027.", House)
    assert remark.code == "closed-in-prose"
    assert remark.sentence == (
        "What says 'Closed until May 2027.'. No other page tells it. Say it under closed in"
        " house.yml, which the first page shows and shows are held against, or put the lines that"
        " it is about out of service."
    )


def test_a_day_that_is_past_is_told_as_such() -> None:
    (remark,) = remarks(HOUSE % "Closed until 2026-05-30.", House)
    assert "That day is 2 days before this revision." in remark.sentence


@pytest.mark.parametrize(
    ("note", "count"),
    [
        ("8 per side", 16),
        ("Eight a side.", 16),
        ("two on each side", 4),
        ("8 a side upstairs, 4 a side below", 24),
        ("8 a side, and 9 in all", 16),
        ("side by side", 15),
        ("8 sides", 15),
    ],
)
def test_a_number_a_side_that_makes_the_count_is_not_told(note: str, count: int) -> None:
    lines = f"furnishings: [{{name: Lamps, count: {count}, note: '{note}'}}]\n"
    assert remarks(DATUM + lines) == ()


def test_a_number_a_side_that_does_not_make_the_count_quotes_both() -> None:
    (remark,) = remarks(DATUM + "furnishings: [{name: 15 lamps (8 per side), count: 15}]\n")
    assert remark.sentence == (
        "Name says '8 per side', which makes 16, and the line counts 15. Which one is right, or is"
        " one side short?"
    )
    assert remark.asks_about == "8 per side beside 15"


def test_a_line_that_counts_nothing_has_nothing_to_be_held_against() -> None:
    assert remarks(DATUM + "furnishings: [{name: Lamps, count: unknown, note: 8 per side}]\n") == ()


@pytest.mark.parametrize(
    ("note", "count"),
    [
        ("21 motorised and 6 manual", 27),
        ("8 wide, 4 high, hung since spring", 32),
        ("14 long and 7 short stands", 27),
        ("two black and two grey", 4),
        ("one is broken and two are lent", 27),
        ("12 in cones and 2 in drivers", 14),
        ("made in 2019 and 2020", 27),
    ],
)
def test_parts_that_make_the_count_or_nothing_like_it_are_not_told(note: str, count: int) -> None:
    lines = f"furnishings: [{{name: Bars, count: {count}, note: '{note}', condition: limited}}]\n"
    assert remarks(DATUM + lines) == ()


@pytest.mark.parametrize(
    ("note", "makes"),
    [
        ("21 motorised and 5 manual", 26),
        ("21 motorised bars, 4 manual and three dead", 28),
        ("Ten left, sixteen-foot ones: 20 long plus 8 short", 28),
    ],
)
def test_parts_that_nearly_make_the_count_are_told(note: str, makes: int) -> None:
    (remark,) = remarks(DATUM + f"furnishings: [{{name: Bars, count: 27, note: '{note}'}}]\n")
    assert remark.code == "parts-differ"
    assert remark.sentence.endswith(
        f"which makes {makes}, and the line counts 27. Which one is right?"
    )


def test_what_works_may_be_what_the_sides_make() -> None:
    text = "monitors: [{name: W, kind: wedge, count: 15, working: 14, size: seven a side}]\n"
    from builder.departments.sound.description import Sound

    assert [remark.code for remark in remarks(text, Sound)] == []
