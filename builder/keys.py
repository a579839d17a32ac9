"""
What may be written under a key, in words and as an example, from the descriptions themselves.

The guide, the schemas and ``housepack explain`` all tell keys by these words.
"""

import types
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic.fields import FieldInfo

from builder.meanings import meanings_of
from builder.reading.fields import mark_of
from builder.reading.lists import AtMost
from builder.reading.maybe import OrAbsent, is_numeric
from builder.reading.possible import Possible, range_words
from builder.reading.quantities import Quantity
from builder.reading.words import ReadBy as WordField
from builder.reading.written import Confirmation, RefersTo, Verification, Written

SHARED: tuple[type[Written], ...] = (Verification, Confirmation)
"""What any line may hold: told once for all departments."""
RecordWords = Callable[[type[Written]], str]


@dataclass(frozen=True, slots=True)
class Key:
    """One key of a record, by the name that an author writes and by that of its field."""

    record: type[Written]
    name: str
    field: FieldInfo
    field_name: str

    @property
    def meaning(self) -> str:
        """What the key says, in plain words on one line."""
        return meanings_of(self.record).get(self.field_name, "")

    @property
    def is_needed(self) -> bool:
        """Whether the key must be there."""
        return self.field.is_required()

    @property
    def is_decisive(self) -> bool:
        """Whether shows stop on the key."""
        return any(type(mark).__name__ == "Decisive" for mark in self.field.metadata)


def keys_of(record: type[Written]) -> tuple[Key, ...]:
    """The keys of a record, in the order of the description."""
    return tuple(
        Key(record, field.alias or name, field, name) for name, field in record.model_fields.items()
    )


def records_of(kind: type[Written]) -> Sequence[type[Written]]:
    """The records that a description's keys hold, each once, in the order they are met."""
    found: dict[type[Written], None] = {}
    waiting = [kind]
    while waiting:
        for field in waiting.pop(0).model_fields.values():
            for record in within(field.annotation):
                if record not in found and record not in SHARED:
                    found[record] = None
                    waiting.append(record)
    return tuple(found)


def within(annotation: Any) -> Iterator[type[Written]]:
    """The records inside an annotation."""
    if isinstance(annotation, type) and issubclass(annotation, Written):
        yield annotation
    for part in (*get_args(annotation), *getattr(annotation, "__args__", ())):
        if part is not annotation:
            yield from within(part)


def title(kind: type[Written]) -> str:
    """A record's name as words: ``NoiseLimit`` is "noise limit"."""
    return "".join(f" {char.lower()}" if char.isupper() else char for char in kind.__name__).strip()


def document(kind: type[Written]) -> str:
    """The first paragraph of a record's docstring."""
    return " ".join((kind.__doc__ or "").strip().split("\n\n")[0].split()).replace("``", "`")


def group_words(record: type[Written]) -> str:
    """A record as a value: the first of its keys, what must be there before the rest."""
    own = [key for key in keys_of(record) if key.name in record.__annotations__]
    names = [key.name for key in sorted(own or keys_of(record), key=lambda key: not key.is_needed)]
    more = ", ..." if len(names) > 4 else ""
    return f"keys such as {', '.join(f'`{name}`' for name in names[:4])}{more}"


def value_of(field: FieldInfo, record_words: RecordWords = group_words) -> str:
    """
    What may be written under a key: its own kind of value, then the range that is its own, then
    whether it may be unknown or none.
    """
    word = next((mark.description for mark in field.metadata if isinstance(mark, WordField)), "")
    value = word or value_words(field.annotation, record_words)
    refers = refers_to(field)
    if refers:
        value = f"the name of a {refers}"
        if get_origin(field.annotation) is tuple:
            value = f"a list of names of a {refers}"
    value += own_range(field)
    if mark_of(field, OrAbsent) is not None:
        if is_numeric(field.annotation):
            return f"{value}, exact or known in part; or `unknown`, or `none`"
        return f"{value}; or `unknown`, or `none`"
    return value


def own_range(field: FieldInfo) -> str:
    """What is possible of a key whose range is not that of its kind; empty for others."""
    entries = mark_of(field, AtMost)
    if entries is not None:
        return f", at most {entries.entries}"
    possible = mark_of(field, Possible)
    if possible is None:
        return ""
    quantities = [kind for kind in types_within(field.annotation) if issubclass(kind, Quantity)]
    return f", {range_words(possible, quantities[0] if quantities else None)}"


def types_within(annotation: Any) -> Iterator[type]:
    """The types that an annotation is made of."""
    if isinstance(annotation, type):
        yield annotation
    for part in get_args(annotation):
        yield from types_within(part)


def refers_to(field: FieldInfo) -> str:
    """What a key's text is the name of, such as a point; empty where it refers to nothing."""
    return next((mark.kind for mark in field.metadata if isinstance(mark, RefersTo)), "")


def value_words(annotation: Any, record_words: RecordWords) -> str:
    """What may be written as a value, in words."""
    if annotation in (None, type(None)):
        return ""
    if isinstance(annotation, type) and issubclass(annotation, Written):
        return record_words(annotation)
    if isinstance(annotation, type) and issubclass(annotation, Quantity):
        if not annotation.examples:
            return annotation.kind
        return f"{annotation.kind}, such as `{annotation.examples[0]}`"
    return plain_words(annotation) or compound_words(annotation, record_words)


def plain_words(annotation: Any) -> str:
    """Texts, counts, days, yes and no."""
    plain = {
        str: "a text",
        int: "a count",
        float: "a number",
        bool: "`yes` or `no`",
        date: "a day, such as `2026-03-02`",
    }
    return plain.get(annotation, "") if isinstance(annotation, type) else ""


def compound_words(annotation: Any, record_words: RecordWords) -> str:
    """Choices, lists, and values that may also be unknown or none."""
    origin, inner = get_origin(annotation), get_args(annotation)
    if origin is Literal:
        return "one of: " + ", ".join(f"`{choice}`" for choice in inner)
    if origin is tuple:
        holds_keys = "with " if next(within(inner[0]), None) else ""
        return f"a list; each entry {holds_keys}{value_words(inner[0], record_words)}"
    if origin in (Union, types.UnionType):
        return next((words for part in inner if (words := value_words(part, record_words))), "")
    if origin is Annotated:
        mark = next((mark for mark in inner[1:] if isinstance(mark, WordField)), None)
        return mark.description if mark else value_words(inner[0], record_words)
    return ""
