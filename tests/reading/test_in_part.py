"""What is known of a value in part: every form, its ends, and what does not tell what is meant."""

from copy import deepcopy
from datetime import date
from typing import Annotated, Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from builder.departments.power.description.bounds import PowerFactor
from builder.pack import Value
from builder.reading import quantities as q
from builder.reading.absent import Absent, is_unknown, why_absent
from builder.reading.in_part import Between, as_written, ends_of
from builder.reading.maybe import Maybe
from builder.reading.review import review
from builder.reading.words import Count, Day, Name, Ratio
from builder.reading.written import Rated, Written
from builder.stating import Ageing, Stater, value_in_part


class Field(Written):
    """One field of each sort."""

    width: Maybe[q.Length] = Absent.NOT_STATED
    across: Maybe[q.Across] = Absent.NOT_STATED
    height: Maybe[q.Height] = Absent.NOT_STATED
    weight: Maybe[q.Mass] = Absent.NOT_STATED
    slope: Maybe[q.Slope] = Absent.NOT_STATED
    at: Maybe[q.TimeOfDay] = Absent.NOT_STATED
    warmth: Maybe[q.Temperature] = Absent.NOT_STATED
    level: Maybe[q.Level] = Absent.NOT_STATED
    draws: Maybe[q.Power | q.ApparentPower | q.Current] = Absent.NOT_STATED
    count: Maybe[Count] = Absent.NOT_STATED
    factor: Maybe[Ratio] = Absent.NOT_STATED
    day: Maybe[Day] = Absent.NOT_STATED
    name: Maybe[Name] = Absent.NOT_STATED
    exact: q.Length | None = None


TODAY: Any = {"on": date(2026, 6, 1), "stale_after_days": 365}
DISPUTED = {
    "disputed": [
        {"says": "430 ft", "by": "drawing of 2009"},
        {"says": "200 ft", "by": "web page", "on": "2012"},
    ]
}


def read(key: str, text: Any) -> Any:
    """A field's value from its text."""
    return getattr(Field.model_validate({key: text}), key)


def shown(key: str, text: Any) -> Value:
    """A field's value as the pack has it."""
    known = read(key, text)
    assert isinstance(known, Between)
    return value_in_part(known)


def refused(key: str, text: Any) -> tuple[str, str, str]:
    """Code, reason and advice of a refused value."""
    with pytest.raises(ValidationError) as caught:
        Field.model_validate({key: text})
    first = caught.value.errors()[0]
    return first["type"], first["msg"], first.get("ctx", {}).get("advice", "")


# A foot is 0.3048 m, a pound 0.45359237 kg (NIST SP 811, appendix B.8); a tenth for 'about'.
@pytest.mark.parametrize(
    ("key", "text", "least", "most"),
    [
        ("width", "12 to 15 m", 12.0, 15.0),
        ("width", "12 m to 15 m", 12.0, 15.0),
        ("width", "40 to 50 ft", 40 * 0.3048, 50 * 0.3048),
        ("width", "27'-6\" to 30'", 27.5 * 0.3048, 30 * 0.3048),
        ("width", "12 to 15 m (40 to 50 ft)", 12.0, 15.0),
        ("width", "about 40 ft", 36 * 0.3048, 44 * 0.3048),
        ("width", "~40 ft", 36 * 0.3048, 44 * 0.3048),
        ("width", "40 ft +- 1 ft", 39 * 0.3048, 41 * 0.3048),
        ("width", "40 ±1 ft", 39 * 0.3048, 41 * 0.3048),
        ("width", "at least 15 m", 15.0, None),
        ("width", "up to 15 m", None, 15.0),
        ("width", "At most 15 m", None, 15.0),
        ("width", "set from 0.9 m to 1.4 m", 0.9, 1.4),
        ("width", "set to 4 ft or 5 ft", 4 * 0.3048, 5 * 0.3048),
        ("width", "set to 3, 4 or 5 ft", 3 * 0.3048, 5 * 0.3048),
        ("width", DISPUTED, 200 * 0.3048, 430 * 0.3048),
        ("weight", "up to 2 t", None, 2000.0),
        ("weight", "about 900 kg (1,984 lb)", 810.0, 990.0),
        ("across", "4 to 5 m SR", -5.0, -4.0),
        ("across", "2 m SR to 1 m SL", -2.0, 1.0),
        ("across", "about 4 m SR", -4.4, -3.6),
        ("height", "6 m up to 7 m up", 6.0, 7.0),
        ("slope", "1:12 to 1:10", 1 / 12, 1 / 10),
        ("at", "19:00 to 20:00", 19 * 3600.0, 20 * 3600.0),
        ("warmth", "18 to 22 °C", 291.15, 295.15),
        ("level", "99 dB +- 2 dB", 97.0, 101.0),
        ("draws", "3 to 4 kW", 3000.0, 4000.0),
        ("count", "about 12", 10, 14),
        ("count", "12 to 15", 12, 15),
        ("count", "15 +- 2", 13, 17),
        ("count", "about 3", 2, 4),
        ("count", "at least 15", 15, None),
        ("count", "set to 2 or 4", 2, 4),
        ("factor", "0.8 to 0.9", 0.8, 0.9),
    ],
)
def test_each_form_has_its_ends(
    key: str, text: Any, least: float | None, most: float | None
) -> None:
    value = shown(key, text)
    assert value.number is None
    assert value.least == (None if least is None else pytest.approx(least, rel=1e-12))
    assert value.most == (None if most is None else pytest.approx(most, rel=1e-12))


@pytest.mark.parametrize(
    ("text", "also"),
    [
        ("3 to 6 m", "9'-10\" to 19'-8\""),
        ("at least 3 m", "at least 9'-10\""),
        ("up to 3 m", "at most 9'-10\""),
        ("set to 1 m or 2 m", "3'-3 1/2\" or 6'-6 1/2\""),
        ("about 10 ft", "2.74 m to 3.35 m"),
        (DISPUTED, "131.1 m or 60.96 m"),
    ],
)
def test_the_other_system_shows_both_ends(text: Any, also: str) -> None:
    assert shown("width", text).also == also


def test_the_authors_wording_is_kept() -> None:
    assert shown("width", " about   40 ft").text == "about 40 ft"
    words = "disputed: 430 ft (drawing of 2009) or 200 ft (web page, 2012)"
    assert shown("width", DISPUTED).text == words


def test_settings_are_kept_apart_from_what_nobody_knows() -> None:
    assert not shown("width", "4 to 5 ft").can_be_set
    anywhere, some = shown("width", "set from 4 ft to 5 ft"), shown("width", "set to 4 or 5 ft")
    assert anywhere.can_be_set
    assert anywhere.settings == ()
    assert some.can_be_set
    assert some.settings == pytest.approx((1.2192, 1.524))


@pytest.mark.parametrize(
    ("key", "text", "reason"),
    [
        ("width", "15 to 12 m", "has its ends the wrong way round"),
        ("width", "12 to 12 m", "has twice the same end"),
        ("width", "1 to 2 to 3 m", "has more than two ends"),
        ("width", "set from 3 m", "has nothing after 'from ... to'"),
        ("width", "set to 4 ft", "does not name two or more different settings"),
        ("width", "set to 4 ft or 48 in or 5 ft", "does not name two or more different settings"),
        ("width", "40 ft +- 0 ft", "does not say how far it may be off"),
        ("width", "between 3 and 4 m", "is known in part, in a form that is not read here"),
        ("width", "12–15 m", "is known in part, in a form that is not read here"),
        ("width", "ca. 4 m", "is known in part, in a form that is not read here"),
        ("width", "4 m or 5 m", "is known in part, in a form that is not read here"),
        ("count", "3 or 4", "is known in part, in a form that is not read here"),
        ("width", "about 4 m +- 1 m", "says 'about' and how far it may be off"),
        ("width", "~4 m ± 1 m", "says 'about' and how far it may be off"),
        ("count", "15+", "is known in part, in a form that is not read here"),
        ("count", "about 0", "is about nothing"),
        ("across", "4 m SR +- 20 cm", "cannot be written with '+-'"),
        ("warmth", "20 °C +- 2 °C", "cannot be written with '+-'"),
        ("warmth", "about 20 °C", "does not say how far a temperature may be off"),
        ("at", "about 19:00", "does not say how far a time of day may be off"),
        ("level", "about 99 dB", "does not say how far a level may be off"),
        ("draws", "3 kW to 16 A", "has two ends of different kinds"),
        ("draws", "set to 3 kW or 16 A", "has settings of different kinds"),
        ("width", {"disputed": [{"says": "3 m", "by": "x"}]}, "does not tell who says what"),
        ("width", {"disputed": [{"says": "3 m"}] * 2}, "does not tell who says what"),
        (
            "width",
            {"disputed": [{"says": "3 m", "by": "x"}, {"says": "300 cm", "by": "y"}]},
            "is not disputed: all say the same",
        ),
        (
            "draws",
            {"disputed": [{"says": "3 kW", "by": "x"}, {"says": "16 A", "by": "y"}]},
            "has sayings of different kinds",
        ),
    ],
)
def test_what_does_not_tell_what_is_meant_is_refused(key: str, text: Any, reason: str) -> None:
    assert refused(key, text)[:2] == ("known-unclear", reason)


def test_what_must_be_exact_is_refused_by_its_own_reader() -> None:
    assert refused("exact", "12 to 15 m")[0] == "unit-unknown"
    assert refused("day", "2020-01-01 to 2021-01-01")[0] == "date-unreadable"
    assert read("name", "about a house") == "about a house"


def test_code_that_needs_one_number_goes_without() -> None:
    known = read("width", "12 to 15 m")
    assert isinstance(known, Absent)
    assert is_unknown(known)
    assert why_absent(known) == "known in part only"
    assert as_written(known) == "12 to 15 m"
    assert known not in (Absent.UNKNOWN, Absent.NONE, Absent.NOT_STATED)


def test_ends_of_what_is_exact_open_or_not_there() -> None:
    assert ends_of(read("count", "3")) == (3, 3)
    assert ends_of(read("count", "at least 3")) == (3, None)
    assert ends_of(Absent.UNKNOWN) == ends_of(Absent.NONE) == (None, None)


def test_a_copy_is_the_same() -> None:
    known = read("width", DISPUTED)
    assert deepcopy(known) == known
    assert deepcopy(Absent.UNKNOWN) is Absent.UNKNOWN


def test_it_is_written_as_it_was_read() -> None:
    written = Field(width=read("width", DISPUTED), weight=read("weight", "up to 2 t"))
    again = Field.model_validate(written.model_dump(exclude_unset=True))
    assert again == written


@given(st.integers(1, 9_999), st.integers(1, 9_999))
def test_a_range_holds_what_lies_between(one: int, other: int) -> None:
    least, most = sorted((one, one + other))
    value = shown("width", f"{least} to {most} mm")
    assert value.least == pytest.approx(least / 1000)
    assert value.most == pytest.approx(most / 1000)


@given(st.integers(1, 100_000))
def test_about_holds_the_value_and_a_tenth_to_each_side(count: int) -> None:
    value = shown("count", f"about {count}")
    assert value.least is not None
    assert value.most is not None
    assert value.least <= count - count / 10
    assert count + count / 10 <= value.most
    assert value.least > count - count / 10 - 1
    assert value.most < count + count / 10 + 1


@pytest.mark.parametrize("text", ["about 999999999999999 m", "999999999999999 m +- 1 m"])
def test_an_end_with_more_digits_than_can_be_read_is_refused(text: str) -> None:
    with pytest.raises(ValidationError) as refused:
        shown("width", text)
    assert [wrong["type"] for wrong in refused.value.errors()] == ["number-out-of-range"]


class Plated(Written):
    """A rating and a width."""

    rating: Annotated[Maybe[q.Current], Rated()] = Absent.NOT_STATED
    width: Maybe[q.Length] = Absent.NOT_STATED


@pytest.mark.parametrize("text", ["about 400 A", "400 A +- 20 A", "set from 300 A to 400 A"])
def test_an_estimated_rating_is_told(text: str) -> None:
    remarks = review(Plated.model_validate({"rating": text}), **TODAY)
    assert [remark.code for remark in remarks] == ["rating-estimated"]
    assert remarks[0].sentence.startswith(f"Rating says '{text}'. What may be carried stands on")


@pytest.mark.parametrize("text", ["set from 300 A to 400 A", "set to 300 A or 400 A"])
def test_what_may_be_carried_is_never_chosen(text: str) -> None:
    stater = Stater(Ageing(date(2026, 6, 1), 365))
    (fact,) = stater.facts(Plated.model_validate({"rating": text}), "x")
    assert fact.value is not None
    assert fact.value.ends == (300.0, 400.0)
    assert not fact.value.can_be_set
    assert fact.value.settings == ()


@pytest.mark.parametrize(
    ("key", "text"),
    [
        ("rating", "400 A"),
        ("rating", "at least 400 A"),
        ("rating", "300 to 400 A"),
        ("rating", "unknown"),
        ("width", "about 4 m"),
    ],
)
def test_what_is_no_estimate_of_a_rating_is_not_told(key: str, text: str) -> None:
    assert review(Plated.model_validate({key: text}), **TODAY) == ()


@pytest.mark.parametrize(
    ("text", "least", "most"),
    [("about 0.97", 0.873, 1.0), ("0.97 +- 0.05", 0.92, 1.0), ("about 0.5", 0.45, 0.55)],
)
def test_what_may_be_off_is_no_more_than_possible(text: str, least: float, most: float) -> None:
    found = TypeAdapter(Maybe[PowerFactor]).validate_python(text)
    assert (found.least, found.most) == pytest.approx((least, most))


def test_two_values_are_told_how_to_be_written_where_one_is_chosen_and_where_nobody_knows() -> None:
    advice = refused("width", "4 m or 5 m")[2]
    assert "'set to 4 m or 5 m' where it can be chosen" in advice
    assert "'4 m to 5 m' where nobody knows" in advice
    assert refused("width", "about 4 m +- 1 m")[2].endswith("like '40 ft +- 1 ft'")
