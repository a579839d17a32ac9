"""
Every key explained: the guide to the description language, made from the descriptions themselves, so it cannot lag behind them.

``make guide`` writes it to ``docs/keys.md``; a test keeps the two equal. All text here is our own, so it is written as Markdown directly.
"""

import types
from collections.abc import Iterator, Sequence
from datetime import date
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic.fields import FieldInfo

from builder.reading.absent import OrAbsent
from builder.reading.quantities import Quantity
from builder.reading.words import ReadBy as WordField
from builder.reading.written import DepartmentFile, Line, RefersTo, Verification, Written
from builder.registry import DEPARTMENTS

INTRODUCTION = """# Every key explained

This page is made from the descriptions that read your files, so it says what the program does.

A value is one of these:

* a quantity with its unit, such as `18.3 m` or `60 ft`. Write both, `24 ft (7.32 m)`, and they are compared;
* a position, such as `4.2 m SL`, `3 ft 6 in US`, `1.4 m up`;
* a text, a count, a day such as `2026-03-02`, or one of the choices listed;
* `?` where nobody knows yet, `none` where there is none, where the table says so. Leave a key out to say nothing.

**Needed** keys must be there. **Decisive** keys are those that shows stop on: where one is left out, the pack says "not stated".
"""


def keys_page() -> str:
    """The whole guide as Markdown."""
    parts = [INTRODUCTION, *qualifiers()]
    for department in DEPARTMENTS:
        parts += [f"## {department.key}.yml", *tables(department.description)]
    return "\n\n".join(part.strip() for part in parts) + "\n"


def qualifiers() -> Iterator[str]:
    """What every line may also say, once for all departments."""
    yield "## On every line"
    yield "Each line of stock or of the building may also say:"
    yield table(Line, own_only=False)
    yield "And every file, and any line that differs from it, says when it was checked:"
    yield table(Verification, own_only=False)


def tables(kind: type[DepartmentFile]) -> Iterator[str]:
    """The tables of a department: the file's own keys, then each record within it, outer first."""
    yield document(kind)
    yield table(kind)
    for record in records_of(kind):
        yield f"### {title(record)}"
        yield document(record)
        yield table(record)


def records_of(kind: type[Written]) -> Sequence[type[Written]]:
    """The records that a description's keys hold, each once, in the order they are met."""
    found: dict[type[Written], None] = {}
    waiting = [kind]
    while waiting:
        for field in waiting.pop(0).model_fields.values():
            for record in within(field.annotation):
                if record not in found and record is not Verification:
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


def table(kind: type[Written], *, own_only: bool = True) -> str:
    """The keys of a record. Keys that every line has are explained once, at the top of the page."""
    shared = set(Line.model_fields) if own_only and issubclass(kind, Line | DepartmentFile) else set()
    rows = [row(name, field) for name, field in kind.model_fields.items() if name not in shared]
    return "\n".join(["| key | what it says | value |", "|---|---|---|", *rows])


def row(name: str, field: FieldInfo) -> str:
    """One key: its name, its explanation, its value, and whether it must be there."""
    marks = [type(mark).__name__ for mark in field.metadata]
    need = " **Needed.**" if field.is_required() else " **Decisive.**" if "Decisive" in marks else ""
    refers = next((mark.kind for mark in field.metadata if isinstance(mark, RefersTo)), "")
    value = value_of(field, refers)
    return f"| `{field.alias or name}` | {cell(field.description or '')}{need} | {cell(value)} |"


def value_of(field: FieldInfo, refers: str) -> str:
    """What may be written under a key: its own kind of value, then whether it may be unknown or none."""
    word = next((mark.description for mark in field.metadata if isinstance(mark, WordField)), "")
    value = word or value_words(field.annotation)
    if refers:
        value = f"a list of names of a {refers}" if get_origin(field.annotation) is tuple else f"the name of a {refers}"
    absent = "; or `?`, or `none`" if any(isinstance(mark, OrAbsent) for mark in field.metadata) else ""
    return f"{value}{absent}"


def value_words(annotation: Any) -> str:
    """What may be written as a value, in words."""
    if annotation in (None, type(None)):
        return ""
    if isinstance(annotation, type) and issubclass(annotation, Written):
        return f"keys, see {title(annotation)}"
    if isinstance(annotation, type) and issubclass(annotation, Quantity):
        return f"{annotation.kind}, such as `{annotation.examples[0]}`" if annotation.examples else annotation.kind
    return plain_words(annotation) or compound_words(annotation)


def plain_words(annotation: Any) -> str:
    """Texts, counts, days, yes and no."""
    plain = {str: "a text", int: "a count", float: "a number", bool: "`yes` or `no`", date: "a day, such as `2026-03-02`"}
    return plain.get(annotation, "") if isinstance(annotation, type) else ""


def compound_words(annotation: Any) -> str:
    """Choices, lists, and values that may also be unknown or none."""
    origin, inner = get_origin(annotation), get_args(annotation)
    if origin is Literal:
        return "one of: " + ", ".join(f"`{choice}`" for choice in inner)
    if origin is tuple:
        return f"a list; each entry {value_words(inner[0])}"
    if origin in (Union, types.UnionType):
        return next((words for part in inner if (words := value_words(part))), "")
    if origin is Annotated:
        mark = next((mark for mark in inner[1:] if isinstance(mark, WordField)), None)
        return mark.description if mark else value_words(inner[0])
    return ""


def title(kind: type[Written]) -> str:
    """A record's name as words: ``NoiseLimit`` is "noise limit"."""
    return "".join(f" {char.lower()}" if char.isupper() else char for char in kind.__name__).strip()


def document(kind: type[Written]) -> str:
    """The first line of a record's docstring."""
    return (kind.__doc__ or "").strip().splitlines()[0].replace("``", "`")


def cell(text: str) -> str:
    """Text within a table: a bar would end the cell."""
    return " ".join(text.split()).replace("|", "\\|")
