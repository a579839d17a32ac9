"""Every value of a record beside the field it was written in, and the marks of that field."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, TypeVar, get_args, get_origin

from pydantic.fields import FieldInfo

from builder.reading.in_part import Between, values_within
from builder.reading.problems import Where
from builder.reading.written import Path, Written

Mark = TypeVar("Mark")


@dataclass(frozen=True, slots=True)
class Reviewed:
    """
    One value of one record, on its way through the checks. ``number`` counts from 0 in a list, and
    is None where there is none.
    """

    record: Written
    key: str
    field: FieldInfo
    value: object
    number: int | None = None

    @property
    def keys(self) -> Path:
        """The way from the record to the value."""
        return (self.key,) if self.number is None else (self.key, self.number)

    @property
    def where(self) -> Where:
        """Where the value was written."""
        return self.record.where(*self.keys)


def values_of(record: Written) -> Iterator[Reviewed]:
    """
    Each value of a record; a list of quantities or texts gives each entry, and what is known in
    part each value within it.
    """
    for name, field in type(record).model_fields.items():
        value, key = getattr(record, name), field.alias or name
        if isinstance(value, tuple):
            for number, part in enumerate(value):
                yield Reviewed(record, key, field, part, number)
        elif isinstance(value, Between):
            for part in values_within(value):
                yield Reviewed(record, key, field, part)
        else:
            yield Reviewed(record, key, field, value)


_MARKS: dict[int, tuple[FieldInfo, tuple[object, ...]]] = {}
"""The marks of each field that was asked for, by its identity: a field cannot be hashed."""


def mark_of(field: FieldInfo, kind: type[Mark]) -> Mark | None:
    """A field's mark of one kind, wherever in its type the mark stands; None where it has none."""
    return next((mark for mark in marks_of(field) if isinstance(mark, kind)), None)


def marks_of(field: FieldInfo) -> tuple[object, ...]:
    """All marks of a field and of what its type is made of, the field's own first."""
    known = _MARKS.get(id(field))
    if known is None:
        # The field is kept beside its marks, so that no other field is ever given its identity.
        known = _MARKS[id(field)] = (field, (*field.metadata, *marks_within(field.annotation)))
    return known[1]


def marks_within(annotation: object) -> Iterator[object]:
    """The marks of an annotation and of all that it is made of, outer first."""
    if get_origin(annotation) is Annotated:
        yield from getattr(annotation, "__metadata__", ())
    for part in get_args(annotation):
        yield from marks_within(part)
