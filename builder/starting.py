"""
What still stands in a venue as ``housepack new`` wrote it.

The starting venue is an example: its fuses, its microphones and its name are nobody's. It is part
of the program, and is read as such.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache
from importlib import resources
from typing import Any, Literal, get_args, get_origin

from builder.pack import Finding, Level
from builder.reading.problems import Where
from builder.reading.quantities import Quantity
from builder.reading.reader import read
from builder.reading.written import DepartmentFile, Line, Loose, Written
from builder.registry import DEPARTMENTS
from builder.stating import place

MOST_NAMED = 5


@dataclass(frozen=True, slots=True)
class Kept:
    """Something that stands as it was written to begin with: what, and where."""

    what: str
    where: Where


@cache
def starting_files() -> Mapping[str, DepartmentFile]:
    """The description of each file of the starting venue, by department."""
    folder = resources.files("builder") / "starter"
    return {
        department.key: read(
            (folder / f"{department.key}.yml").read_text(encoding="utf-8"),
            file=f"{department.key}.yml",
            kind=department.description,
        )
        for department in DEPARTMENTS
    }


def as_it_began(descriptions: Mapping[str, DepartmentFile]) -> tuple[Finding, ...]:
    """A finding for each file in which something stands as in the starting venue."""
    findings = []
    for key, began in starting_files().items():
        if key in descriptions:
            kept = tuple(kept_in(descriptions[key], began))
            findings += [finding_of(kept)] if kept else []
    return tuple(findings)


def finding_of(kept: tuple[Kept, ...]) -> Finding:
    """What a file keeps of the starting venue, in a sentence, at the first of it."""
    named = ", ".join(each.what for each in kept[:MOST_NAMED])
    more = len(kept) - MOST_NAMED
    others = f" and {more} more" if more > 0 else ""
    return Finding(
        Level.CAUTION,
        "starting-venue",
        f"Still as in the venue to start from, which is nobody's: {named}{others}. Write what is"
        " true of the house, or delete it. A line that is true as it stands says so with verified.",
        place=place(kept[0].where),
    )


def kept_in(file: Written, began: Written) -> Iterator[Kept]:
    """What a file keeps of the file it began as: its own words, and the records within it."""
    for name, field in type(file).model_fields.items():
        value, before = getattr(file, name), getattr(began, name)
        key = field.alias or name
        if isinstance(value, str) and value == before and not is_choice(field.annotation):
            yield Kept(key, file.where(key))
        elif isinstance(value, tuple):
            yield from kept_of_list(key, value, before if isinstance(before, tuple) else ())
        elif isinstance(value, Written) and isinstance(before, Written):
            yield from kept_of(key, value, before)


def kept_of_list(
    key: str, entries: tuple[object, ...], before: tuple[object, ...]
) -> Iterator[Kept]:
    """What the entries of a list keep, each of the one that was called as it is."""
    for entry in entries:
        if isinstance(entry, Written):
            namesakes = [other for other in before if isinstance(other, Written)]
            namesakes = [other for other in namesakes if label(other) == label(entry)]
            same = [other for other in namesakes if alike(entry, other)]
            for other in (*same, *namesakes)[:1]:
                yield from kept_of(f"{key} ({label(entry)})", entry, other)


def kept_of(what: str, record: Written, began: Written) -> Iterator[Kept]:
    """All of a record, where nothing in it changed; otherwise the groups and lists within it."""
    if type(record) is not type(began):
        return
    if alike(record, began):
        if says_something(record):
            yield Kept(what, record.where())
        return
    for key, value in record.written():
        if isinstance(value, Written | tuple) and alike(value, dict(began.written())[key]):
            parts = value if isinstance(value, tuple) else (value,)
            if any(isinstance(part, Written) and says_something(part) for part in parts):
                yield Kept(f"{key} of {what}", record.where(key))


def alike(one: object, other: object) -> bool:
    """Whether two values say the same, wherever each was written."""
    if isinstance(one, Written) and isinstance(other, Written):
        return type(one) is type(other) and alike(one.written(), other.written())
    if isinstance(one, tuple) and isinstance(other, tuple):
        pairs = zip(one, other, strict=False)
        return len(one) == len(other) and all(alike(*pair) for pair in pairs)
    return one == other


def says_something(record: Written) -> bool:
    """
    Whether a record holds a number, a day or words of its own: a choice from a list, or that nobody
    knows, may well be true of any house.
    """
    for name, field in type(record).model_fields.items():
        value = getattr(record, name)
        parts = value if isinstance(value, tuple) else (value,)
        for part in parts:
            if isinstance(part, Written) and says_something(part):
                return True
            if isinstance(part, str) and not is_choice(field.annotation):
                return True
            if isinstance(part, Quantity | int | float | date) and not isinstance(part, bool):
                return True
    return False


def is_choice(annotation: Any) -> bool:
    """Whether a field takes one of the words of a list."""
    return get_origin(annotation) is Literal or any(
        is_choice(each) for each in get_args(annotation)
    )


def label(record: Written) -> str:
    """What an author calls a record: the first words that it holds of its own."""
    shared = Loose if isinstance(record, Loose) else Line
    names = [name for name in type(record).model_fields if name not in shared.model_fields]
    return next((value for name in names if isinstance(value := getattr(record, name), str)), "")
