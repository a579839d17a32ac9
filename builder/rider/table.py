"""
The language of riders as a plain table, made from the description: the readers of the terminal and
of the page go by it, so that no key stands in two lists.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from datetime import date
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic.fields import FieldInfo

from builder.reading import words
from builder.reading.fields import mark_of
from builder.reading.possible import COUNTED, Possible, range_of_kind, range_words
from builder.reading.quantity import Quantity
from builder.reading.words import ReadBy
from builder.reading.written import Written
from builder.rider.asking.language import KeyRule, Language
from builder.rider.asking.ranges import Range
from builder.rider.description import Rider
from builder.rider.units import KINDS, NAMES

READ_BY: Mapping[Callable[[str], Any], tuple[str, int]] = {
    words.name: ("words", words.LONGEST_NAME),
    words.prose: ("words", words.LONGEST_TEXT),
    words.count: ("count", 0),
    words.yes_no: ("yes", 0),
    words.day: ("day", 0),
}
"""The sort of a value by the function that reads it, and the most characters of words."""


def language_of(kind: type[Written]) -> Language:
    """The keys of a description, and of every group within it, outer first."""
    groups: dict[str, list[KeyRule]] = {}
    waiting = [kind]
    while waiting:
        record = waiting.pop(0)
        if record.__name__ not in groups:
            groups[record.__name__] = [
                key_rule(name, field) for name, field in record.model_fields.items()
            ]
            waiting += [
                found for field in record.model_fields.values() for found in groups_in(field)
            ]
    amounts = {name: from_zero(kind) for name, kind in KINDS.items()}
    amounts["count"] = range_data(COUNTED, None)
    return {"top": kind.__name__, "groups": groups, "amounts": amounts}


def key_rule(name: str, field: FieldInfo) -> KeyRule:
    """One key."""
    rule: KeyRule = {
        "key": field.alias or name,
        "needed": field.is_required(),
        "sort": "words",
        "many": many(field.annotation),
        "of": "",
        "longest": 0,
        "choices": [],
        "like": "",
        "otherwise": otherwise(field.default),
        "range": None,
    }
    return told(rule, list(parts_of(field)), mark_of(field, Possible))


def told(rule: KeyRule, parts: list[Any], own: Possible | None) -> KeyRule:
    """
    The rule of a key, told by the parts of its type; ``own`` is its own range, where it has one.

    Raises
    ------
    ValueError
        If the type is none that riders know.
    """
    for part in parts:
        if isinstance(part, ReadBy):
            sort, longest = READ_BY[part.read]
            rule |= {"sort": sort, "longest": longest, "like": part.example}  # type: ignore[typeddict-item]
            counted = range_data(own or COUNTED, None) if sort == "count" else None
            return {**rule, "range": counted}
        if get_origin(part) is Literal:
            return {**rule, "sort": "choice", "choices": list(get_args(part))}
        if isinstance(part, type) and issubclass(part, Quantity):
            possible = range_data(own or range_of_kind(part), part)
            rule |= {"sort": "quantity", "of": NAMES[part], "like": part.like()}
            return {**rule, "range": possible}
        if isinstance(part, type) and issubclass(part, Written):
            return {**rule, "sort": "group", "of": part.__name__}
    raise ValueError(f"field must be of a type that riders know, got {rule['key']}")


def range_data(possible: Possible, kind: type[Quantity] | None) -> Range:
    """A range as plain data, with its words."""
    return {
        "low": float(possible.low),
        "high": float(possible.high),
        "low_too": possible.low_too,
        "words": range_words(possible, kind),
    }


def from_zero(kind: type[Quantity]) -> Range:
    """What a need may ask of a kind: as much as there can be, nothing included."""
    possible = range_of_kind(kind)
    return range_data(replace(possible, low_too=True), kind)


def parts_of(field: FieldInfo) -> Iterator[Any]:
    """All types and marks of a field's annotation, outer first."""
    yield from field.metadata
    yield from within(field.annotation)


def within(annotation: Any) -> Iterator[Any]:
    """All types and marks within an annotation."""
    if get_origin(annotation) is Annotated:
        inner, *marks = get_args(annotation)
        yield from marks
        yield from within(inner)
    elif get_origin(annotation) in (Union, UnionType, tuple):
        for part in get_args(annotation):
            yield from within(part)
    elif annotation not in (NoneType, ...):
        yield annotation


def groups_in(field: FieldInfo) -> list[type[Written]]:
    """The groups that a field holds."""
    return [
        part for part in parts_of(field) if isinstance(part, type) and issubclass(part, Written)
    ]


def many(annotation: Any) -> Literal["one", "two", "list"]:
    """Whether a key has one value, two, or a list."""
    options = [annotation]
    if get_origin(annotation) in (Union, UnionType):
        options = list(get_args(annotation))
    for option in options:
        if get_origin(option) is tuple:
            return "list" if get_args(option)[-1] is ... else "two"
    return "one"


def otherwise(default: Any) -> str:
    """What is read where a key is not written, as an author would write it."""
    if isinstance(default, bool):
        return "yes" if default else ""
    return str(default) if isinstance(default, str | int | date) else ""


LANGUAGE = language_of(Rider)
"""The language of riders."""
