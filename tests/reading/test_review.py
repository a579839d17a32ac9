"""What the text alone gives cause to look at again."""

import json
from datetime import date

import pytest

from builder.departments.access.description import Access
from builder.departments.house.description import House
from builder.departments.stage.description import Stage
from builder.reading.reader import read
from builder.reading.remarks import Remark
from builder.reading.review import review
from builder.reading.written import Written

DATUM = "datum: {centre_line: a stud, reference_line: the edge}\ndecks: []\n"
ON = date(2026, 6, 1)


def remarks(text: str, kind: type[Written] = Stage) -> tuple[Remark, ...]:
    """The remarks on a text as of the first of June 2026, with a limit of 365 days."""
    return review(read(text, file="stage.yml", kind=kind), on=ON, stale_after_days=365)


def codes(text: str, kind: type[Written] = Stage) -> list[str]:
    """The codes of the remarks on a text."""
    return [remark.code for remark in remarks(text, kind)]


def test_two_units_that_agree_are_no_remark() -> None:
    assert (
        codes(DATUM + "risers: [{name: deck, count: 1, width: 8 ft (2.44 m), depth: 4 ft}]\n") == []
    )


def test_two_units_that_disagree_are_told_with_both_readings() -> None:
    """A published stage said 24 ft by 12 ft (3.05 m); 12 ft are 3.66 m."""
    (remark,) = remarks(
        DATUM + "risers: [{name: deck, count: 1, width: 2 m, depth: 12 ft (3.05 m)}]\n"
    )
    assert remark.code == "units-disagree"
    assert (
        remark.sentence
        == "Depth says '12 ft (3.05 m)', but that is 3.66 m against 3.05 m. Which one is right?"
    )
    assert (remark.where.line, remark.where.column) == (3, 52)


def test_a_feet_mark_for_inches_is_asked_about() -> None:
    (remark,) = remarks("docks: [{name: Dock, door_width: 63', door_height: 9'}]\n", Access)
    assert remark.code == "implausible"
    assert "Is it inches? Then write '63\"'." in remark.sentence


def test_a_value_at_the_edge_of_the_usual_range_is_no_remark() -> None:
    assert codes("docks: [{name: Dock, door_width: 8.0 m}]\n", Access) == []
    assert codes("docks: [{name: Dock, door_width: 8.01 m}]\n", Access) == ["implausible"]


@pytest.mark.parametrize(
    "note",
    [
        "The sheet of 2019 says 'TBC' here.",
        'The older pack has "load to be confirmed"; measured since.',
        "“TBA” stood on the drawing.",
        "„TBC“ stood on the drawing.",
        "‘TBD’ on the plate is a model's name.",
    ],
)
def test_a_placeholder_that_an_older_sheet_is_quoted_with_is_none(note: str) -> None:
    assert codes(DATUM + f"note: {json.dumps(note, ensure_ascii=False)}\n") == []


@pytest.mark.parametrize(
    "note",
    [
        "The crew's width is TBC, and the dock's too.",
        "'TBC'",
        "“TBC.”",
        "The sheet says '4 m', TBC.",
        "The width is 'TBC",
    ],
)
def test_a_placeholder_beside_a_quotation_is_one(note: str) -> None:
    assert codes(DATUM + f"note: {json.dumps(note, ensure_ascii=False)}\n") == ["placeholder"]


def test_a_placeholder_is_told_and_a_question_mark_alone_is_not() -> None:
    assert codes(DATUM + "crossover: TBC\n") == ["placeholder"]
    assert codes(DATUM + "crossover: ?\n") == []


def test_a_condition_hidden_in_a_note_is_told_unless_the_condition_says_it() -> None:
    hidden = "furnishings: [{name: Steps, count: 4, note: One is broken.}]\n"
    said = "furnishings: [{name: Steps, count: 4, condition: limited, note: One is broken.}]\n"
    assert codes(DATUM + hidden) == ["condition-in-prose"]
    assert codes(DATUM + said) == []


def test_a_check_is_old_one_day_after_the_limit() -> None:
    assert codes(DATUM + "verified: {on: 2025-06-01, by: rigger, how: measured}\n") == []
    assert codes(DATUM + "verified: {on: 2025-05-31, by: rigger, how: measured}\n") == ["stale"]


def test_a_check_after_the_revision_is_asked_about() -> None:
    assert codes(DATUM + "verified: {on: 2026-06-02, by: rigger, how: measured}\n") == [
        "verified-later"
    ]


def test_a_temperature_in_either_system_is_compared_in_the_same_range() -> None:
    house = (
        "name: A\nwhat: b\ntown: c\nsetting: indoors\ntime_zone: d\nrevision: {number: 1, on:"
        " 2026-01-02, by: e}\nair: {temperature: %s, humidity: 50 %%}\n"
    )
    assert codes(house % "72 F", House) == []
    assert codes(house % "72 C", House) == ["implausible"]
