"""What is possible, by kind and by field: whole messages as an author reads them."""

from collections.abc import Iterator
from typing import Annotated, Any, get_args

import pytest
from pydantic.fields import FieldInfo

from builder.keys import records_of
from builder.reading import quantities as q
from builder.reading.absent import Absent
from builder.reading.fields import mark_of
from builder.reading.maybe import Maybe
from builder.reading.outlines import Corner, Encloses
from builder.reading.possible import POSSIBLE, Possible
from builder.reading.problems import Refused
from builder.reading.reader import read
from builder.reading.words import Count, Ratio
from builder.reading.written import Written
from builder.registry import DEPARTMENTS


class Door(Written):
    """A door that shows what a field's range says."""

    width: q.Length
    """A field with the range of its kind."""
    height: Annotated[Maybe[q.Length], Possible(0.0, 12.5)] = Absent.NOT_STATED
    """A range of its own, zero included."""
    leaves: Annotated[Count, Possible(1, 12)] = 1
    """A count."""
    wear: Annotated[Ratio | None, Possible.above(0.0, 1.0)] = None
    """A ratio."""
    swing: Maybe[Annotated[q.Angle, Possible(0.0, 180.0)]] = Absent.NOT_STATED
    """A range within the type."""
    panels: tuple[q.Length, ...] = ()
    """A list."""
    at: q.Across | None = None
    """A place."""
    open_at: q.TimeOfDay | None = None
    """A time of day, which its reader keeps on the clock."""
    outline: Annotated[tuple[Corner, ...] | None, Encloses()] = None
    """An outline."""


def problems(text: str) -> list[str]:
    """What is refused of a text."""
    with pytest.raises(Refused) as refused:
        read(text, file="door.yml", kind=Door)
    return [str(problem) for problem in refused.value.problems]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "width: 0 m\n",
            "door.yml:1:8 width: '0 m' cannot be: above zero and at most 10,000 m is possible here;"
            " write what was measured [impossible]",
        ),
        (
            "width: -18 m\n",
            "door.yml:1:8 width: '-18 m' cannot be: above zero and at most 10,000 m is possible"
            " here; write what was measured [impossible]",
        ),
        (
            "width: 40,000 ft\n",
            "door.yml:1:8 width: '40,000 ft' cannot be: above zero and at most 32,808 ft is"
            " possible here; write what was measured [impossible]",
        ),
        (
            "width: 1 m\nheight: 12.6 m\n",
            "door.yml:2:9 height: '12.6 m' cannot be: from zero to 12.50 m is possible here; write"
            " what was measured, or `unknown` if nobody knows it yet [impossible]",
        ),
        (
            "width: 1 m\nleaves: 0\n",
            "door.yml:2:9 leaves: '0' cannot be: from 1 to 12 is possible here; write how many"
            " there are, or leave the key out [impossible]",
        ),
        (
            "width: 1 m\nwear: 1.2\n",
            "door.yml:2:7 wear: '1.2' cannot be: above 0 and at most 1 is possible here; write what"
            " was measured, or leave the key out [impossible]",
        ),
        (
            "width: 1 m\nswing: 181 deg\n",
            "door.yml:2:8 swing: '181 deg' cannot be: from zero to 180 deg is possible here; write"
            " what was measured, or `unknown` if nobody knows it yet [impossible]",
        ),
        (
            "width: 1 m\npanels: [1 m, 0 m]\n",
            "door.yml:2:15 panels[2]: '0 m' cannot be: above zero and at most 10,000 m is possible"
            " here; write what was measured, or leave the key out [impossible]",
        ),
        (
            "width: 1 m\nat: 99 km SR\n",
            "door.yml:2:5 at: '99 km SR' cannot be: from 10,000 m SR to 10,000 m SL is possible"
            " here; write what was measured, or leave the key out [impossible]",
        ),
    ],
)
def test_what_cannot_be_is_a_problem_that_says_what_can(text: str, message: str) -> None:
    assert problems(text) == [message]


def test_the_ends_of_a_range_are_possible_where_it_says_so() -> None:
    door = read(
        "width: 10 km\nheight: 0 m\nleaves: 12\nwear: 1\nswing: 180 deg\nopen_at: '24:00'\n",
        file="door.yml",
        kind=Door,
    )
    assert (door.leaves, door.wear) == (12, 1.0)


def test_everything_impossible_is_told_at_once() -> None:
    assert len(problems("width: 0 m\nheight: -1 m\nleaves: 0\npanels: [0 m, -1 m]\n")) == 5


CORNERS = {
    "a": "{across: 1 m SR, depth: 0 m}",
    "b": "{across: 1 m SL, depth: 0 m}",
    "c": "{across: 1 m SL, depth: 2 m US}",
    "d": "{across: 1 m SR, depth: 2 m US}",
    "near a": "{across: 999.5 mm SR, depth: 0 m}",
    "above a": "{across: 1 m SR, depth: 0.5 mm US}",
}


@pytest.mark.parametrize(
    ("corners", "message"),
    [
        (
            ["a", "b"],
            "outline has 2 corners, and an outline needs at least three; write the corners in order"
            " around it [outline-open]",
        ),
        (
            ["a", "c", "b", "d"],
            "outline[3] crosses itself: the side that begins at corner 3 meets the side that begins"
            " at corner 1; write the corners in order around it [outline-crosses]",
        ),
        (
            ["a", "b", "c", "d", "a"],
            "outline[5] is the same spot as corner 1 of the outline; is a side, SL or SR, US or DS,"
            " written wrong? The outline closes by itself, so leave the first corner out at its end"
            " [corner-twice]",
        ),
        (
            ["a", "near a", "above a"],
            "outline encloses nothing; write the corners in order around it, each as measured"
            " [outline-flat]",
        ),
        (
            ["a"] * 201,
            "outline has 201 corners, and 200 is the most; draw it with fewer, 25 mm on a plan are"
            " rounding [too-many]",
        ),
    ],
)
def test_corners_that_make_no_outline_are_a_problem(corners: list[str], message: str) -> None:
    listed = ", ".join(CORNERS[corner] for corner in corners)
    (told,) = problems(f"width: 1 m\noutline: [{listed}]\n")
    assert told.split(" ", 1)[1] == message


def test_corners_in_order_are_an_outline() -> None:
    listed = ", ".join(CORNERS[corner] for corner in "abcd")
    assert read(f"width: 1 m\noutline: [{listed}]\n", file="door.yml", kind=Door).outline


def kinds_within(annotation: Any) -> Iterator[type]:
    """The types that a field's type is made of."""
    if isinstance(annotation, type):
        yield annotation
    for part in get_args(annotation):
        yield from kinds_within(part)


def number_fields() -> Iterator[tuple[str, FieldInfo, type]]:
    """Every field of the departments' files that holds numbers of a kind."""
    for department in DEPARTMENTS:
        for record in (department.description, *records_of(department.description)):
            for name, field in record.model_fields.items():
                for kind in kinds_within(field.annotation):
                    yield f"{record.__name__}.{name}", field, kind


def test_every_kind_of_quantity_has_a_range() -> None:
    kinds = {kind for _, _, kind in number_fields() if issubclass(kind, q.Quantity)}
    assert {kind.__name__ for kind in kinds if not set(kind.__mro__) & set(POSSIBLE)} == set()


def test_every_bare_number_has_a_range_of_its_own() -> None:
    assert [
        name
        for name, field, kind in number_fields()
        if kind is float and not mark_of(field, Possible)
    ] == []


def test_every_list_of_corners_is_an_outline() -> None:
    assert [
        name
        for name, field, kind in number_fields()
        if issubclass(kind, Corner)
        and not any(isinstance(mark, Encloses) for mark in field.metadata)
    ] == []
