"""The pack as JSON and back, without loss and with the same bytes on every machine."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import fields
from functools import cache
from typing import Any

from builder.pack import Pack, Section


def to_json(pack: Pack) -> str:
    """
    The pack as JSON: keys sorted, lists in the author's order, the same bytes on every machine.

    Each item, finding and change stands on a line of its own, so that two packs can be compared
    line by line.
    """
    sections = [record_lines(section_lines(section)) for section in pack.sections]
    lines = {
        name: entries(record_of(part)) for name, part in stated(pack).items() if name != "sections"
    }
    return record_lines({**lines, "sections": list_lines(sections)}) + "\n"


def section_lines(section: Section) -> dict[str, str]:
    """The JSON of each key of a section."""
    return {name: entries(record_of(part)) for name, part in stated(section).items()}


def record_lines(texts: Mapping[str, str]) -> str:
    """A JSON record with a line for each key, keys sorted."""
    return "{\n" + ",\n".join(f"{compact(key)}: {texts[key]}" for key in sorted(texts)) + "\n}"


def list_lines(texts: Sequence[str]) -> str:
    """A JSON list with a line for each entry."""
    return "[\n" + ",\n".join(texts) + "\n]" if texts else "[]"


def entries(value: object) -> str:
    """A value, on a line for each entry where it is a list of records."""
    if not isinstance(value, list) or not value or not isinstance(value[0], dict):
        return compact(value)
    return list_lines([compact(entry) for entry in value])


def compact(value: object) -> str:
    """A plain value as JSON on one line."""
    return json.dumps(value, sort_keys=True, ensure_ascii=False, allow_nan=False)


def stated(record: Any) -> dict[str, object]:
    """The keys of a record that are not as they are by default; the format always."""
    kind: Any = type(record)
    found = {}
    for name, usual in defaults_of(kind):
        value = getattr(record, name)
        if value != usual or name == "format":
            found[name] = value
    return found


@cache
def defaults_of(kind: Any) -> tuple[tuple[str, object], ...]:
    """The keys of a kind of record that are published, each with its default."""
    return tuple((part.name, part.default) for part in fields(kind) if part.compare)


def record_of(value: object) -> object:
    """
    A record as a plain mapping.

    What has its default value is left out: most facts have neither terms nor a note.
    """
    if isinstance(value, str | float | int | None):
        return value
    if isinstance(value, tuple):
        # Maps hold hundreds of thousands of numbers, and a list of them holds nothing else.
        plain = bool(value) and isinstance(value[0], float | int)
        return list(value) if plain else [record_of(part) for part in value]
    return {name: record_of(part) for name, part in stated(value).items()}


def from_json(text: str) -> Pack:
    """
    The pack that :func:`to_json` wrote.

    Raises
    ------
    ValueError
        If the text is no pack of this format.
    """
    from pydantic import (
        TypeAdapter,
    )  # the fit room reads packs as plain records and must not pay for this import

    return TypeAdapter(Pack).validate_json(text)
