"""
The keys whose absence has a meaning: what the code counts so is what `docs/pack/methods.md` lists,
and each tells in its own words what it means to leave it out.
"""

import re
from collections.abc import Iterator
from typing import Any

from builder.keys import within
from builder.reading.left_out import counts_left_out, is_listed
from builder.reading.written import Line, Written
from builder.registry import DEPARTMENTS
from tests.sweep import ROOT

METHODS = (ROOT / "docs" / "pack" / "methods.md").read_text("utf-8")
TITLE = "## Keys whose absence has a meaning"
CODE = re.compile(r"`([^`]+)`")


def keys_within(kind: type[Written], path: tuple[str, ...] = ()) -> Iterator[tuple[Any, str, str]]:
    """Each key of a description with its record, the name of its field and its dotted way there."""
    for name, field in kind.model_fields.items():
        way = (*path, field.alias or name)
        yield kind, name, ".".join(way)
        if name not in ("verified", "confirmed"):
            for record in within(field.annotation):
                yield from keys_within(record, way)


def counted_keys() -> dict[str, set[str]]:
    """The keys of each file that count as something where they are left out; no lists."""
    shared = {name for name in Line.model_fields if counts_left_out(Line, name)}
    return {
        f"{department.key}.yml": found
        for department in DEPARTMENTS
        if (
            found := {
                way
                for record, name, way in keys_within(department.description)
                if counts_left_out(record, name) and not (is_listed(record, name) or name in shared)
            }
        )
    }


def stand_ins() -> dict[str, set[str]]:
    """The keys of each file for which others stand in, with these."""
    found: dict[str, set[str]] = {}
    for department in DEPARTMENTS:
        for record, name, way in keys_within(department.description):
            others = record.stands_in.get(record.model_fields[name].alias or name, ())
            told = {other for other in others if not other.startswith("exceptions.")}
            if others:
                key = f"{department.key}.yml"
                found.setdefault(key, set()).update({way, *told})
    return found


def listed_in_methods(part: int) -> dict[str, set[str]]:
    """What one of the two tables of the guide lists, by file."""
    chapter = METHODS.split(TITLE, 1)[1].split("\n## ", 1)[0]
    tables = re.findall(r"(?:^\|.*\n)+", chapter, re.MULTILINE)
    rows = [CODE.findall(row) for row in tables[part].splitlines()]
    return {row[0]: set(row[1:]) for row in rows if row}


def test_the_guide_lists_every_key_whose_absence_has_a_meaning() -> None:
    assert listed_in_methods(0) == counted_keys()


def test_the_guide_lists_every_key_that_another_stands_in_for() -> None:
    assert listed_in_methods(1) == stand_ins()


def test_what_every_line_shares_is_told() -> None:
    chapter = METHODS.split(TITLE, 1)[1].split("\n## ", 1)[0]
    shared = {name for name in Line.model_fields if counts_left_out(Line, name)}
    assert shared == {"terms", "condition", "house_only", "confirmed"}
    assert all(f"`{name}`" in chapter for name in shared)


def test_what_is_marked_is_a_key_of_its_record() -> None:
    for department in DEPARTMENTS:
        for record, _, _ in keys_within(department.description):
            named = {field.alias or name for name, field in record.model_fields.items()}
            assert record.counts_when_left_out <= named | set(Line.model_fields), record
            assert record.stands_in.keys() <= named, record
