"""
The log as it is published: without what was done to a line for the house only.

An entry is hidden where it says so itself, which ``housepack stock`` writes, for the line may be
gone tomorrow; and where it names a line that is for the house only today.
"""

import re
from collections.abc import Iterator, Set
from dataclasses import dataclass, replace

from builder.house_only.sealing import HOUSE_ONLY, Descriptions
from builder.overview.log import Log, Logged, change_of, list_file
from builder.pack import Altered, Change
from builder.reading.house_only import hidden_within
from builder.reading.nodes import spoken
from builder.reading.references import name_of, records_within
from builder.reading.written import Written

Told = tuple[str, str, str]
"""A line as the log tells it: its file, its list without numbers, its name."""


@dataclass(frozen=True, slots=True)
class HiddenNames:
    """
    Hidden lines as the log tells them, and the names of hidden lines that no public line bears.
    """

    lines: Set[Told]
    alone: Set[str]

    def has(self, file: str, within: str, name: str) -> bool:
        """Whether a line is hidden, by its file, its list and its name."""
        return (file, without_numbers(within), name) in self.lines

    def names_one(self, text: str) -> bool:
        """Whether a value as the log writes it is the name of a hidden line, or a list with one."""
        return any(part in self.alone for part in parts_of(text))

    def joined(self, other: "HiddenNames") -> "HiddenNames":
        """What is hidden here or there."""
        return HiddenNames(self.lines | other.lines, self.alone | other.alone)


def hidden_names(descriptions: Descriptions) -> HiddenNames:
    """What the hidden lines of a venue are called."""
    lines: set[Told] = set()
    public: set[str] = set()
    for key, file in descriptions.items():
        hidden = list(hidden_within(file))
        lines |= {told_as(record, key) for record in hidden if name_of(record)}
        known = {id(record) for record in hidden}
        public |= {name_of(record) for record in records_within(file) if id(record) not in known}
    return HiddenNames(lines, {name for _, _, name in lines} - public)


def told_as(record: Written, path: str) -> Told:
    """A line as the log tells it."""
    within = f"{list_file(path)}.{spoken(record.path_in_file[:-1])}"
    return (f"{path}.yml", without_numbers(within), name_of(record))


def without_numbers(within: str) -> str:
    """A list as the log names it, without which entries it goes through: they move."""
    return re.sub(r"\[\d+\]", "", within)


def public_changes(log: Log | None, descriptions: Descriptions) -> tuple[Change, ...]:
    """The log as it is published, in the author's order."""
    if log is None:
        return ()
    names = hidden_names(descriptions)
    return tuple(
        without_names(change_of(entry), names)
        for entry in log.entries
        if not is_hidden(entry, names)
    )


def is_hidden(entry: Logged, names: HiddenNames) -> bool:
    """Whether an entry is of a line for the house only."""
    if entry.house_only or entry.line is None:
        return bool(entry.house_only)
    if entry.file is None or entry.within is None:
        return entry.line in names.alone
    return names.has(entry.file, entry.within, entry.line)


def without_names(change: Change, names: HiddenNames) -> Change:
    """A change of a public line that names no hidden one in what it was, is and moved."""
    altered = tuple(
        Altered(part.key, nameless(part.was, names), nameless(part.now, names))
        for part in change.altered
    )
    return replace(change, altered=altered, moved=tuple(public_moves(change.moved, names)))


def nameless(text: str, names: HiddenNames) -> str:
    """A value that is the name of a hidden line, or a list with one, as it is published."""
    if not names.names_one(text):
        return text
    said = ", ".join(HOUSE_ONLY if part in names.alone else part for part in parts_of(text))
    return f"[{said}]" if text.startswith("[") else said


def parts_of(text: str) -> list[str]:
    """The entries of a list as the log writes it; one where it is none."""
    return text.removeprefix("[").removesuffix("]").split(", ")


def public_moves(moved: tuple[str, ...], names: HiddenNames) -> Iterator[str]:
    """The figures that moved, without those of hidden lines: each begins with its line's name."""
    for words in moved:
        if not any(words.startswith(f"{name}, ") for name in names.alone):
            yield words
