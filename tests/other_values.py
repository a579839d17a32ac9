"""
For every key whose value takes no mark (a choice, a count, a day, a name of something else), and
for every key that no venue states: another value at one place of a venue, and how it reads.

Changes are made some at a time. Of those made at once in a file, no two stand in one record or have
words in common, so each is known again by its words.
"""

from collections.abc import Iterator, Mapping, Sequence
from copy import deepcopy
from dataclasses import dataclass
from datetime import date
from functools import cache
from itertools import chain
from typing import Any, get_args, get_origin

from pydantic import ValidationError

from builder.keys import Key, keys_of, records_of, refers_to, types_within, within
from builder.pack import in_a_row
from builder.reading.fields import mark_of
from builder.reading.how_many import numbers
from builder.reading.lists import empty_lists
from builder.reading.possible import impossible
from builder.reading.quantities import Quantity, TimeOfDay
from builder.reading.references import problems_with_names, records_within
from builder.reading.words import ReadBy
from builder.reading.written import DepartmentFile, Line, Numbered, Verification, Written
from builder.registry import DEPARTMENTS
from tests.facts import ABSENT, Marked, Path, Spot, at, is_told, put, records_of_venue, spots
from tests.sweep import DESCRIPTIONS, composed, literals

VENUES = ("demo", "quarry")
INSTEAD_OF = {"leg_lengths": "apex"}
"""Keys that stand in the place of another."""
Files = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Change:
    """Another value at a place of a venue, and the words by which a reader knows it."""

    venue: str
    spot: Spot
    value: Any
    words: str

    def __str__(self) -> str:
        return f"{self.venue} {self.spot} = {self.value}"


def every_key() -> Iterator[tuple[type[Written], Key]]:
    """Each key of each record of each description that pages tell and that holds no record."""
    kinds = [department.description for department in DEPARTMENTS]
    records = dict.fromkeys(
        record for kind in kinds for record in (kind, *records_of(kind), Verification)
    )
    for record in records:
        for key in keys_of(record):
            if is_told(key) and next(within(key.field.annotation), None) is None:
                yield record, key


@cache
def marked(venue: str) -> Marked:
    """A venue with marks, made once."""
    return Marked(venue)


def unmarked() -> Iterator[tuple[type[Written], Key]]:
    """The keys that no mark of any venue stands under."""
    covered = {
        (spot.record, spot.key.name) for venue in VENUES for spot in marked(venue).marks.values()
    }
    return ((record, key) for record, key in every_key() if (record, key.name) not in covered)


def possible_changes(record: type[Written], key: Key) -> Iterator[Change]:
    """
    Changes of one key that its file takes: where it is stated, where it is not, then a line more
    that states it; last the value as it stands, where no other can.
    """
    others = (
        Change(venue, spot, value, words)
        for venue, spot in chain(stated(record, key), unstated(record, key))
        for value, words in candidates(venue, spot)
    )
    as_it_stands = (
        Change(venue, spot, spot.value, spot.value) for venue, spot in stated(record, key)
    )
    for change in chain(others, lines_more(record, key), as_it_stands):
        never_refused = key.name in Line.model_fields
        if never_refused or takes(changed(base_data(change.venue), [change]), change.spot.file):
            yield change


def lines_more(record: type[Written], key: Key) -> Iterator[Change]:
    """A copy of a line that states the key, under another name, as the last of its list."""
    instead = INSTEAD_OF.get(key.name, "")
    for venue, spot in chain(stated(record, key), unstated(record, key)):
        here = spot.path[:-1]
        if not here or not isinstance(here[-1], int) or not (spot.value or instead):
            continue
        data = composed(venue)[spot.file]
        line = {name: value for name, value in at(data, here).items() if name != instead}
        more = Spot(spot.file, record, key, (*here[:-1], len(at(data, here[:-1]))), spot.value)
        if spot.value:
            yield Change(venue, more, {**line, "name": "Zq another"}, spot.value)
        else:
            for value, words in candidates(venue, spot):
                yield Change(venue, more, {**line, "name": "Zq another", key.name: value}, words)


def stated(record: type[Written], key: Key) -> list[tuple[str, Spot]]:
    """The places where a key is stated; of a list the list."""
    return [
        (venue, spot)
        for venue in VENUES
        for spot in spots(venue)
        if spot.record is record and spot.key.name == key.name and spot.path[-1] in (key.name, 0)
    ]


@cache
def lines_of_venues() -> Mapping[type[Written], list[tuple[str, str, Path]]]:
    """The places of each kind of record."""
    found: dict[type[Written], list[tuple[str, str, Path]]] = {}
    for venue in VENUES:
        for file, record, _ in records_of_venue(venue):
            found.setdefault(type(record), []).append((venue, file, record.path_in_file))
    return found


def unstated(record: type[Written], key: Key) -> Iterator[tuple[str, Spot]]:
    """The first places of a venue that could state a key and do not."""
    for venue, file, path in lines_of_venues().get(record, []):
        if at(composed(venue)[file], path).get(key.name, "none") in ABSENT:
            yield venue, Spot(file, record, key, (*path, key.name), "")


def candidates(venue: str, spot: Spot) -> Iterator[tuple[Any, str]]:
    """Other values for a key, each with its words; of a list of them the list of one."""
    for value in texts_for(venue, spot):
        if value in (spot.value, spot.key.field.default):
            continue
        if spot.path[-1] == 0:
            others = at(composed(venue)[spot.file], spot.path[:-1])
            entries = [value, *(entry for entry in others if entry != value)]
            yield entries, list_words(spot.key, entries)
        elif holds_list(spot.key):
            yield from (([value] * count, in_a_row([value] * count)) for count in (1, 2, 3))
        else:
            yield value, f"{int(value):,}" if value.isdigit() else value


def list_words(key: Key, entries: Sequence[str]) -> str:
    """How a page says a list: that of the numbers of single units in words."""
    if mark_of(key.field, Numbered):
        return numbers(entries)
    return in_a_row(entries)


def holds_list(key: Key) -> bool:
    """Whether a key holds a list."""
    annotation = key.field.annotation
    return any(get_origin(part) is tuple for part in (annotation, *get_args(annotation)))


def texts_for(venue: str, spot: Spot) -> Iterator[str]:
    """What else may stand under a key: the likeliest first."""
    types = list(types_within(spot.key.field.annotation))
    if kind := refers_to(spot.key.field):
        yield from names(venue, kind)
    elif choices := list(literals(spot.key.field.annotation)):
        yield from choices
    elif bool in types:
        yield from ("yes", "no") if spot.value == "no" else ("no", "yes")
    elif int in types:
        yield from (str(int(spot.value.replace(",", "") or 0) + step) for step in (17, -1, 1))
    elif float in types:
        yield f"{float(spot.value or 1) + 0.017:.3f}"
    elif date in types:
        yield "2021-04-05"
    elif TimeOfDay in types:
        yield from ("21:35", "09:35")
    elif spot.is_words:
        yield "Zq words"
    else:
        yield from (other.value for v in VENUES for other in spots(v) if same_key(other, spot))
        yield from (text for kind in types if issubclass(kind, Quantity) for text in kind.examples)
        yield from (by.example for by in (mark_of(spot.key.field, ReadBy),) if by)


def same_key(other: Spot, spot: Spot) -> bool:
    """Whether two values stand under keys of one name and one kind."""
    return (
        other.key.name == spot.key.name
        and other.key.field.annotation == spot.key.field.annotation
        and other.value != spot.value
    )


@cache
def names(venue: str, kind: str) -> tuple[str, ...]:
    """The names of everything of a kind in a venue."""
    return tuple(
        spot.value for spot in spots(venue) if spot.bears_name and spot.record.defines == kind
    )


@cache
def base_data(venue: str) -> Files:
    """A venue's files without its air: without maps all is quick, and all is stated."""
    data = {file: deepcopy(part) for file, part in composed(venue).items()}
    data["house.yml"].pop("air", None)
    return data


def changed(data: Files, made: Sequence[Change]) -> Files:
    """The files with some changes made; what is not changed is the same."""
    files = {change.spot.file for change in made}
    other = {file: deepcopy(part) if file in files else part for file, part in data.items()}
    for change in made:
        path = change.spot.path
        if isinstance(change.value, dict):
            at(other[change.spot.file], path[:-1]).append(change.value)
            continue
        put(other[change.spot.file], path[:-1] if path[-1] == 0 else path, change.value)
    return other


def takes(data: Files, file: str) -> bool:
    """Whether a file can be read."""
    try:
        description = described_by(data, file)
    except ValidationError:
        return False
    problems = (record.contradictions() for record in records_within(description))
    twice = (each for each in problems_with_names([description]) if each.code == "duplicate-name")
    bounds = (*impossible(description), *empty_lists(description))
    return not [*twice, *bounds, *chain.from_iterable(problems)]


def described_by(data: Files, file: str) -> DepartmentFile:
    """The description that a file's data makes."""
    return DESCRIPTIONS[file].model_validate(data[file])
