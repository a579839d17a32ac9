"""
Fields as descriptions use them: absences, words, choices, and the schema an editor completes from.
"""

import re
from datetime import date
from typing import Any, Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import BaseModel, ValidationError

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.numerals import Unreadable
from builder.reading.quantities import Length, Mass
from builder.reading.words import WHOLE, Choice, Count, Day, Name, Ratio, Text, YesNo, count


class Inside(BaseModel):
    depth: Length


class Field(BaseModel):
    width: Maybe[Length] = Absent.NOT_STATED
    name: Name = "Intake"
    note: Maybe[Text] = Absent.NOT_STATED
    count: Maybe[Count] = Absent.NOT_STATED
    spare: YesNo = False
    on: Maybe[Day] = Absent.NOT_STATED
    power_factor: Ratio = 1.0
    how: Maybe[Choice[Literal["measured", "drawing", "maker's sheet"]]] = Absent.NOT_STATED
    loads: Maybe[tuple[Mass, ...]] = Absent.NOT_STATED
    inside: Maybe[Inside] = Absent.NOT_STATED


def errors(**written: Any) -> list[tuple[tuple[int | str, ...], str, str, str]]:
    with pytest.raises(ValidationError) as refused:
        Field.model_validate(written)
    return [
        (each["loc"], each["type"], each["msg"], each["ctx"]["advice"])
        for each in refused.value.errors()
    ]


def test_unknown_none_and_not_stated_are_three_things() -> None:
    assert Field.model_validate({"width": "unknown"}).width is Absent.UNKNOWN
    assert Field.model_validate({"width": "none"}).width is Absent.NONE
    assert Field.model_validate({}).width is Absent.NOT_STATED
    assert len({Absent.UNKNOWN, Absent.NONE, Absent.NOT_STATED}) == 3


@pytest.mark.parametrize("key", ["width", "note", "count", "on", "how", "loads", "inside"])
def test_any_field_that_may_be_absent_takes_unknown_and_none(key: str) -> None:
    assert getattr(Field.model_validate({key: " Unknown "}), key) is Absent.UNKNOWN
    assert getattr(Field.model_validate({key: "None"}), key) is Absent.NONE


def test_a_question_mark_the_older_word_is_still_read_as_unknown() -> None:
    assert Field.model_validate({"width": " ? "}).width is Absent.UNKNOWN


@pytest.mark.parametrize("word", ["unknown", "?", "none"])
def test_a_field_that_must_be_stated_refuses_an_absence(word: str) -> None:
    assert errors(inside={"depth": word}) == [
        (
            ("inside", "depth"),
            "number-unreadable",
            "does not start with a number",
            "write it like 18.3 m or 60 ft",
        )
    ]


def test_the_errors_of_a_field_keep_their_own_place_and_words() -> None:
    assert errors(width="12", loads=["900 kg", "2 ton"], inside={"depth": "3 kg"}) == [
        (("width",), "unit-missing", "needs a unit", "write '12 m' or '12 ft'"),
        (
            ("loads", 1),
            "unit-ambiguous",
            "does not say which ton",
            (
                "write 't' (1,000 kg), 'short ton' (2,000 lb) or 'long ton' (2,240 lb); for a"
                " hoist, its rated capacity in kg or lb"
            ),
        ),
        (
            ("inside", "depth"),
            "unit-wrong",
            "is a mass, and a length is wanted here",
            "write it like 18.3 m or 60 ft",
        ),
    ]


EMPTY = "write a value, `unknown` if nobody knows it yet, `none`, or leave the key out"


@pytest.mark.parametrize(
    ("key", "text", "code", "reason", "advice"),
    [
        ("name", "  ", "empty-value", "is empty", EMPTY),
        (
            "name",
            "x" * 81,
            "text-too-long",
            "is 81 characters long, and 80 is the most",
            "shorten it",
        ),
        (
            "note",
            "x" * 2001,
            "text-too-long",
            "is 2,001 characters long, and 2,000 is the most",
            "shorten it",
        ),
        (
            "count",
            "-4",
            "count-negative",
            "is below zero, and a count cannot be",
            "write it without the minus",
        ),
        (
            "count",
            "-0",
            "count-negative",
            "is below zero, and a count cannot be",
            "write it without the minus",
        ),
        (
            "count",
            "2.0",
            "number-unreadable",
            "is not a whole number",
            "count in whole numbers, such as 12",
        ),
        (
            "count",
            "1/2",
            "number-unreadable",
            "is not a whole number",
            "count in whole numbers, such as 12",
        ),
        (
            "count",
            "1e3",
            "number-unreadable",
            "is not a whole number",
            "count in whole numbers, such as 12",
        ),
        (
            "count",
            "4 (2 working)",
            "number-unreadable",
            "has '(2 working)' after the number",
            "write the number alone; put words in `note:`",
        ),
        ("count", "", "empty-value", "is empty", EMPTY),
        (
            "count",
            "9" * 5000,
            "number-out-of-range",
            "has more than 15 digits",
            "round it to what was measured",
        ),
        ("spare", "on", "choice-unknown", "is neither yes nor no", "write yes or no"),
        ("spare", "1", "choice-unknown", "is neither yes nor no", "write yes or no"),
        (
            "on",
            "2026-02-30",
            "date-unreadable",
            "is not a day of the calendar",
            "write year-month-day, like 2026-03-02",
        ),
        (
            "on",
            "2/3/2026",
            "date-unreadable",
            "is not a date, year first",
            "write year-month-day, like 2026-03-02",
        ),
        (
            "on",
            "20260302",
            "date-unreadable",
            "is not a date, year first",
            "write year-month-day, like 2026-03-02",
        ),
        (
            "power_factor",
            "nan",
            "number-out-of-range",
            "is not a finite number",
            "write the number, or `unknown` if nobody knows it yet",
        ),
        (
            "power_factor",
            "0,9",
            "number-unreadable",
            "has a comma that does not separate thousands",
            "write '0.9'",
        ),
        (
            "how",
            "mesured",
            "choice-unknown",
            "is not one of the choices",
            "did you mean 'measured'? write one of: measured, drawing, maker's sheet",
        ),
        (
            "how",
            "zzz",
            "choice-unknown",
            "is not one of the choices",
            "write one of: measured, drawing, maker's sheet",
        ),
        (
            "width",
            ["1 m"],
            "wrong-shape",
            "should be one value, not a group or a list",
            "write it like 18.3 m or 60 ft",
        ),
        (
            "name",
            {"a": "b"},
            "wrong-shape",
            "should be one value, not a group or a list",
            "write it like Stage right company switch",
        ),
    ],
)
def test_a_refusal_has_a_code_a_reason_and_advice(
    key: str, text: Any, code: str, reason: str, advice: str
) -> None:
    assert errors(**{key: text}) == [((key,), code, reason, advice)]


def test_words_are_read_into_what_they_mean() -> None:
    read = Field.model_validate(
        {
            "name": " Stage  right\n",
            "count": "1,200",
            "spare": "Yes",
            "on": "2026-03-02",
            "power_factor": "0.9",
            "how": "Maker's  sheet",
            "note": "hung from\nthe purlins",
        }
    )
    assert (read.name, read.count, read.spare, read.on) == (
        "Stage right",
        1200,
        True,
        date(2026, 3, 2),
    )
    assert (read.power_factor, read.how, read.note) == (
        0.9,
        "maker's sheet",
        "hung from the purlins",
    )


def test_values_that_are_already_read_pass_unchanged() -> None:
    width = Length.parse("3 m")
    field = Field(width=width, count=3, spare=True, on=date(2026, 3, 2))
    assert Field(width=field.width, count=field.count, spare=field.spare, on=field.on) == field
    assert field.width is width


def test_what_is_written_out_reads_back() -> None:
    field = Field.model_validate(
        {
            "width": "24 ft (7.32 m)",
            "note": "?",
            "count": "none",
            "loads": ["900 kg", "1.5 t"],
            "inside": {"depth": "9'"},
            "on": "2026-03-02",
        }
    )
    written = field.model_dump(mode="json", exclude_defaults=True)
    assert written == {
        "width": "24 ft (7.32 m)", "note": "unknown", "count": "none", "loads": ["900 kg", "1.5 t"], "inside": {"depth": "9'"}, "on": "2026-03-02",  # noqa: E501
    }  # fmt: skip
    assert Field.model_validate(written) == field


@given(st.text(st.sampled_from("0123456789,/- ½"), max_size=8))
def test_an_editor_marks_no_count_that_is_read(text: str) -> None:
    try:
        count(text)
    except Unreadable:
        return
    assert re.search(WHOLE, text)


@pytest.mark.parametrize("text", ["six", "3 of them", "1.5", ""])
def test_an_editor_marks_what_is_no_count(text: str) -> None:
    assert not re.search(WHOLE, text)


def test_the_schema_tells_an_editor_what_to_complete() -> None:
    schema = Field.model_json_schema()["properties"]
    absent = {
        "enum": ["unknown", "none"],
        "description": "unknown if nobody knows yet, none if there is none",
    }
    let_in = {"type": "string", "pattern": r"^\s*([Uu]nknown|[Nn]one|\?)\s*$"}
    assert schema["width"]["anyOf"][:3] == [
        {"type": "string", "description": "a length, such as 18.3 m or 60 ft", "examples": ["18.3 m", "60 ft"], "pattern": Length.pattern}, absent, let_in,  # noqa: E501
    ]  # fmt: skip
    in_part, disputed = schema["width"]["anyOf"][3:]
    assert in_part["description"].startswith("what is known in part: about 40 ft, ")
    assert disputed["properties"]["disputed"]["items"]["required"] == ["says", "by"]
    assert schema["how"]["anyOf"] == [
        {"type": "string", "enum": ["measured", "drawing", "maker's sheet"]},
        absent,
        let_in,
    ]
    assert schema["count"]["anyOf"][0] == {
        "type": ["string", "integer"],
        "description": "a whole number, zero or more",
        "examples": ["12"],
        "pattern": WHOLE,
    }
    assert schema["inside"]["anyOf"] == [{"$ref": "#/$defs/Inside"}, absent, let_in]


def test_the_authors_braces_are_no_template() -> None:
    assert errors(width="3 {advice}")[0][2] == "is not one number and its unit, as a length must be"
    assert errors(width="3 m {advice}")[0][2] == "has more after the unit: '{advice}'"
