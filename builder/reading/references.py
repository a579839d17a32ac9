"""
Names and what refers to them, over all files of a venue: a name written twice and a reference to
nothing are problems.
"""

import difflib
from collections.abc import Collection, Iterable, Iterator, Set
from dataclasses import dataclass
from typing import Any, get_args

from builder.reading.absent import Absent
from builder.reading.addresses import address
from builder.reading.problems import Problem, Where
from builder.reading.written import InConfigurations, Line, RefersTo, Written

NAME_KEYS = ("name", "what", "role", "number")
"""The keys that say what a line is, the first that it has."""


@dataclass(frozen=True, slots=True)
class Defined:
    """A name that something in the venue bears."""

    kind: str
    name: str
    where: Where


@dataclass(frozen=True, slots=True)
class Referred:
    """A name that a field refers to. ``key`` is the field."""

    kind: str
    name: str
    key: str
    where: Where


def problems_with_names(
    descriptions: Iterable[Written], elsewhere: Set[str] = frozenset()
) -> tuple[Problem, ...]:
    """
    Every name given twice to one kind of thing, and every reference to a name that nothing bears,
    but for the kinds of which names may stand ``elsewhere``.
    """
    records = [record for description in descriptions for record in records_within(description)]
    defined = [found for record in records if (found := definition(record))]
    known: dict[str, dict[str, Where]] = {}
    taken: dict[tuple[str, str], Defined] = {}
    problems = []
    for name in defined:
        known.setdefault(name.kind, {}).setdefault(name.name, name.where)
        first = taken.setdefault((name.kind, spelling(name.name)), name)
        if first is not name:
            problems.append(taken_already(name, first))
    dangling = (
        refusal(referred, known.get(referred.kind, {}))
        for record in records
        for referred in references(record)
        if referred.kind not in elsewhere
    )
    return (*problems, *(problem for problem in dangling if problem))


def kinds_named_in(description: type[Written]) -> Set[str]:
    """The kinds of things to which a file of a description may give names."""
    kinds: set[str] = set()
    seen: set[type[Written]] = set()
    open_ones = [description]
    while open_ones:
        record = open_ones.pop()
        if record not in seen:
            seen.add(record)
            kinds.add(record.defines)
            for field in record.model_fields.values():
                open_ones += record_types(field.annotation)
    return kinds - {""}


def record_types(annotation: Any) -> Iterator[type[Written]]:
    """The records that an annotation names."""
    if isinstance(annotation, type) and issubclass(annotation, Written):
        yield annotation
    for part in get_args(annotation):
        yield from record_types(part)


def spelling(name: str) -> str:
    """
    A name as part of a key: its address.

    Names that differ in no more than case, accents and signs are the same to a reader.
    """
    return address(name)


def stand_together(one: InConfigurations, other: InConfigurations) -> bool:
    """Whether two lines are there in one configuration; one that names none is there in all."""
    if not one.configurations or not other.configurations:
        return True
    return not set(map(spelling, one.configurations)).isdisjoint(
        map(spelling, other.configurations)
    )


def taken_already(name: Defined, first: Defined) -> Problem:
    """
    The problem with a name that something of its kind bears already, letter for letter or nearly.
    """
    reason = f"is already the name of a {name.kind} at {first.where}"
    if name.name != first.name:
        reason = f"is too near '{first.name}', the name of a {name.kind} at {first.where}"
    return Problem(
        name.where, "name", name.name, reason, "duplicate-name", "give each its own name"
    )


MOST_NAMES = 12
"""How many known names a message lists."""


def missing_photos(descriptions: Iterable[Written], photos: Collection[str]) -> tuple[Problem, ...]:
    """Every photo that a line shows and the venue's folder does not hold."""
    lines = [
        record
        for description in descriptions
        for record in records_within(description)
        if isinstance(record, Line) and record.photo
    ]
    return tuple(
        Problem(
            line.where("photo"),
            "photo",
            line.photo or "",
            "is not a file in photos/",
            "photo-missing",
            "put it there, or mend the name",
        )
        for line in lines
        if line.photo not in photos
    )


def refusal(referred: Referred, known: dict[str, Where]) -> Problem | None:
    """The problem with a reference, or None where the name exists."""
    if referred.name in known:
        return None
    near = difflib.get_close_matches(referred.name, known, n=1, cutoff=0.5)
    described = (
        f"described are: {', '.join(known)}"
        if 0 < len(known) <= MOST_NAMES
        else "give it a name where it is described, or refer to one that is"
    )
    advice = f"did you mean '{near[0]}'?" if near else described
    return Problem(
        referred.where,
        referred.key,
        referred.name,
        f"is not the name of any {referred.kind}",
        "reference-unknown",
        advice,
    )


def name_of(record: Written) -> str:
    """What a line is called, empty where nothing says so."""
    return next(
        (value for key in NAME_KEYS if isinstance(value := getattr(record, key, None), str)), ""
    )


def definition(record: Written) -> Defined | None:
    """The name a record bears, where its kind can be referred to."""
    name = getattr(record, "name", None)
    return (
        Defined(record.defines, name, record.where("name"))
        if record.defines and isinstance(name, str)
        else None
    )


def references(record: Written) -> Iterator[Referred]:
    """What the fields of a record refer to; a list of names refers to each."""
    for field_name, field in type(record).model_fields.items():
        kinds = [mark.kind for mark in field.metadata if isinstance(mark, RefersTo)]
        value = getattr(record, field_name)
        key = field.alias or field_name
        if not kinds or value is None or isinstance(value, Absent):
            continue
        if isinstance(value, str):
            yield Referred(kinds[0], value, key, record.where(key))
        else:
            yield from (
                Referred(kinds[0], name, f"{key}[{i + 1}]", record.where(key, i))
                for i, name in enumerate(value)
            )


def records_within(value: object) -> Iterator[Written]:
    """Every record within a description, itself included, in the author's order."""
    if isinstance(value, Written):
        yield value
        for _, part in value.holding():
            yield from records_within(part)
    elif isinstance(value, tuple | list):
        for part in value:
            yield from records_within(part)
    elif isinstance(value, dict):
        for part in value.values():
            yield from records_within(part)
