"""
An order on one line of the house's stock, as edits of its file; and how many of a line there are.
"""

import shlex
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from builder.overview.log import Log, Logged
from builder.reading.in_service import COUNTS as COUNTS
from builder.reading.nodes import Path, compose
from builder.stock.edits import Edit, reach
from builder.stock.lines import NAME_KEYS, Held, not_done
from builder.stock.wording import Data, written


@dataclass(frozen=True, slots=True)
class Order:
    """
    What is to be done to one line: the word for it, the line, and the edits, each with its file.
    """

    did: str
    file: str
    within: str
    name: str
    path: Path
    edits: tuple[tuple[str, Edit], ...]


def order(
    did: str, line: Held, edits: Sequence[Edit], elsewhere: Sequence[tuple[str, Edit]] = ()
) -> Order:
    """An order on a line that is there."""
    return Order(
        did,
        line.file,
        line.within,
        line.name,
        line.path,
        (*((line.file, edit) for edit in edits), *elsewhere),
    )


def written_line(line: Held, texts: Mapping[str, str]) -> dict[str, Any]:
    """A line as it is written."""
    found: dict[str, Any] = reach(compose(texts[line.file], line.file).data, line.path)
    return found


def how_many(line: Held) -> int:
    """
    How many there are of a line.

    Raises
    ------
    Refused
        `key-not-here` or `count-not-known`.
    """
    return known_count(line, count_key(line))


def count_key(line: Held) -> str:
    """The key that says how many there are."""
    key = next(
        (
            key
            for key in COUNTS
            if key in type(line.record).model_fields
            and not isinstance(getattr(line.record, key), tuple)
        ),
        None,
    )
    if key is None:
        raise not_done(line, "is not counted", "key-not-here", "give the order for the whole line")
    return key


def known_count(line: Held, key: str) -> int:
    """A count that the house knows."""
    found = getattr(line.record, key)
    if not isinstance(found, int):
        raise not_done(
            line,
            "is not known yet",
            "count-not-known",
            f"count first: housepack stock count {shlex.quote(line.name)} NUMBER",
            key=key,
        )
    return found


def working_of(line: Held, said: Mapping[str, Any]) -> int:
    """How many of a line work: as written, or all where nothing is said."""
    if line.has("working") is None:
        raise not_done(
            line, "does not tell how many work", "key-not-here", "give the order for the whole line"
        )
    return known_count(line, "working") if "working" in said else how_many(line)


def entries_on(line: Held, log: Log | None) -> list[Logged]:
    """
    The entries of the log about a line, newest first, under the names that it bore at the time.
    """
    name, found = line.name, []
    for entry in reversed(log.entries if log else ()):
        if (entry.file, entry.within) != (line.file, line.within):
            continue
        renamed = [part for part in entry.changes if part.key in NAME_KEYS and part.now == name]
        if renamed or entry.line == name:
            found.append(entry)
        if renamed:
            name = renamed[0].was or name
    return found


def text_of(value: Data | None) -> str:
    """A written value in one line, as the log tells it; empty where there is none."""
    return "" if value is None else value if isinstance(value, str) else written(value, flow=True)


def data_of(text: str) -> Data:
    """
    What was written, from one line: a list or a group where it is in brackets, a text otherwise.
    """
    if not text.startswith(("[", "{")):
        return text
    found: Data = compose(f"value: {text}\n", "order").data["value"]
    return found


def flat(data: Mapping[str, Any]) -> dict[str, str]:
    """The keys of a line with their values in one line each; a group's own keys follow a point."""
    parts: dict[str, str] = {}
    for key, value in data.items():
        if isinstance(value, dict):
            parts |= {f"{key}.{inner}": text for inner, text in flat(value).items()}
        else:
            parts[key] = text_of(value)
    return parts
