"""
Every fact that a venue states, with another value in its place that can be known again.

A text gets a word of its own, a quantity digits of its own; both are looked for as they are. Other
values (a choice, a count, a day, a name of something else) get another that the key takes.
"""

import re
from collections.abc import Iterator, Mapping
from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from typing import Any

from builder.keys import Key, keys_of, refers_to, types_within
from builder.reading.clock import TimeOfDay
from builder.reading.conductors import CrossSection
from builder.reading.fields import mark_of
from builder.reading.house_only import hidden_within
from builder.reading.numerals import Unreadable
from builder.reading.quantities import Quantity
from builder.reading.reader import read
from builder.reading.references import records_within
from builder.reading.words import ReadBy, name, prose
from builder.reading.written import Confirmation, NotInWords, Written
from tests.sweep import DESCRIPTIONS, composed, folder

Path = tuple[str | int, ...]
Files = dict[str, Any]
ABSENT = ("unknown", "none", "?")
NUMBER = re.compile(r"[0-9][0-9,]*(?:\.[0-9]+)?")
LONGEST_NAME = 80


@dataclass(frozen=True, slots=True)
class Spot:
    """One value at one place of a venue: its record, its key, its path in the file."""

    file: str
    record: type[Written]
    key: Key
    path: Path
    value: str
    bears_name: bool = False

    @property
    def is_words(self) -> bool:
        """Whether it holds a name or a text, and no name of something else."""
        by = mark_of(self.key.field, ReadBy)
        return by is not None and by.read in (name, prose) and not refers_to(self.key.field)

    @property
    def quantities(self) -> tuple[type[Quantity], ...]:
        """The kinds of quantity that it may be and that take more digits."""
        kinds = (kind for kind in types_within(self.key.field.annotation))
        return tuple(
            kind
            for kind in kinds
            if issubclass(kind, Quantity) and not issubclass(kind, TimeOfDay | CrossSection)
        )

    def __str__(self) -> str:
        return f"{self.file} {self.record.__name__}.{self.key.name} at {self.path}"


def records_of_venue(
    venue: str, *, is_hidden: bool = False
) -> Iterator[tuple[str, Written, Mapping[str, Any]]]:
    """
    Each record of a venue that is published, or each that is not, with its file and what is written
    of it.
    """
    texts = folder(venue).texts
    for file, data in composed(venue).items():
        description = read(texts[file], file=file, kind=DESCRIPTIONS[file])
        hidden = {id(record) for record in hidden_within(description)}
        for record in records_within(description):
            if (id(record) in hidden) == is_hidden:
                yield file, record, at(data, record.path_in_file)


@cache
def spots(venue: str, *, is_hidden: bool = False) -> tuple[Spot, ...]:
    """Every value that a venue publishes, or does not, each entry of a list by itself."""
    return tuple(
        spot
        for file, record, written in records_of_venue(venue, is_hidden=is_hidden)
        for key in keys_of(type(record))
        if key.name in written
        for spot in spots_of(file, record, key, written[key.name])
    )


def spots_of(file: str, record: Written, key: Key, written: Any) -> Iterator[Spot]:
    """The values under one key."""
    path: Path = (*record.path_in_file, key.name)
    bears_name = bool(record.defines) and key.name == "name"
    if isinstance(written, str) and written not in ABSENT:
        yield Spot(file, type(record), key, path, written, bears_name)
    if isinstance(written, list):
        for index, entry in enumerate(written):
            if isinstance(entry, str):
                yield Spot(file, type(record), key, (*path, index), entry)


def at(data: Any, path: Path) -> Any:
    """What stands at a path; what may be one or a list has its places as in a list."""
    for step in path:
        data = data if step == 0 and isinstance(data, dict) else data[step]
    return data


def put(data: Any, path: Path, value: Any) -> None:
    """Put a value at a path."""
    at(data, path[:-1])[path[-1]] = value


def data_of(venue: str) -> Files:
    """A venue's files as data of one's own."""
    return {file: deepcopy(data) for file, data in composed(venue).items()}


class Marked:
    """
    A venue in which every text and every quantity is marked, its files as data.

    Lines that say no note, no place where they are kept or no check get one.
    """

    def __init__(self, venue: str) -> None:
        self.data = data_of(venue)
        self.marks: dict[str, Spot] = {}
        self._names = {
            (spot.record.defines, spot.value): self._text(spot)
            for spot in spots(venue)
            if spot.bears_name and spot.is_words
        }
        for spot in spots(venue):
            if (value := self._other(spot)) is not None:
                put(self.data[spot.file], spot.path, value)
        for spot in spots(venue, is_hidden=True):
            if name := self._names.get((refers_to(spot.key.field), spot.value)):
                put(self.data[spot.file], spot.path, name)
        for file, record, written in records_of_venue(venue):
            self._qualify(file, record, written)

    def _other(self, spot: Spot) -> str | None:
        """
        The marked value; None for a value that takes no mark, such as one that a confirmation
        quotes.
        """
        if not is_told(spot.key) or spot.record is Confirmation:
            return None
        kind = spot.record.defines if spot.bears_name else refers_to(spot.key.field)
        if kind:
            return self._names.get((kind, spot.value))
        return self._text(spot) if spot.is_words else self._digits(spot)

    def _word(self, spot: Spot) -> str:
        word = f"Zq{len(self.marks):04}"
        self.marks[word] = spot
        return word

    def _text(self, spot: Spot) -> str:
        """The text with a word of its own behind it."""
        word = self._word(spot)
        room = LONGEST_NAME - len(word) - 1 if len(spot.value) <= LONGEST_NAME else None
        return f"{spot.value[:room]} {word}"

    def _digits(self, spot: Spot) -> str | None:
        """The quantity with digits of its own behind its first number; None where it takes none."""
        number = NUMBER.search(spot.value)
        if number is None or not spot.quantities:
            return None
        point = "" if "." in number[0] else "."
        digits = f"{number[0]}{point}00{len(self.marks):04}7"
        text = spot.value.replace(number[0], digits, 1)
        try:
            spot.quantities[0].read(text)
        except Unreadable:
            return None
        self.marks[digits] = spot
        return text

    def _qualify(self, file: str, record: Written, written: Mapping[str, Any]) -> None:
        for key in keys_of(type(record)):
            if key.name in written or key.name not in ("note", "kept", "verified"):
                continue
            path = (*record.path_in_file, key.name)
            word = self._word(Spot(file, type(record), key, path, ""))
            check = {"on": "2020-03-02", "by": word, "how": "drawing"}
            put(self.data[file], path, check if key.name == "verified" else word)


def is_told(key: Key) -> bool:
    """Whether pages tell the key in words."""
    return mark_of(key.field, NotInWords) is None
