"""
Edits of a file's text that leave every other character as it was: set a value, take a key or an
entry out, append an entry.

An edit is made in the text, and the same is done to the data; the new text is then read and must
hold that data. Where it does not, the file is one that only a person should change, and nothing is
written.
"""

from collections.abc import Sequence
from copy import deepcopy
from dataclasses import dataclass
from typing import Any

from builder.reading.nodes import Path, compose, spoken
from builder.reading.problems import Problem, Refused, Where
from builder.stock.blocks import (
    appended_to_block,
    block_key,
    by_lines,
    key_lines,
    without_block_key,
    without_entry,
)
from builder.stock.inline import appended_inline, inline_part, without_inline
from builder.stock.splice import Splice
from builder.stock.spots import Spot, spot_at, spots_of
from builder.stock.wording import Data, written

LAST = ("note",)
"""Keys that a crew writes last: a new key goes before them."""


@dataclass(frozen=True, slots=True)
class Set:
    """
    Write a value at a path. A key that its group lacks is added, after the others and before the
    note. ``by_lines`` lets a list of groups that comes in the place of a text take a line an entry.
    """

    path: Path
    value: Data
    by_lines: bool = False


@dataclass(frozen=True, slots=True)
class Unset:
    """Take the key or the list entry at a path out. A list's only entry goes with its key."""

    path: Path


@dataclass(frozen=True, slots=True)
class Append:
    """
    Add an entry to the list at a path, in the style of its neighbours. A list that is not there is
    begun.
    """

    path: Path
    value: Data


Edit = Set | Unset | Append


def edited(text: str, file: str, edits: Sequence[Edit]) -> str:
    """
    The text with the edits made, one after the other.

    Raises
    ------
    Refused
        `edit-by-hand` where the text is written in a way that an edit would disturb.
    """
    for edit in edits:
        text = spliced(text, file, edit).applied(text)
    return text


def spliced(text: str, file: str, edit: Edit) -> Splice:
    """
    The one replacement in the text that makes an edit, proven by reading the result.

    Raises
    ------
    Refused
        `edit-by-hand` as for :func:`edited`.
    """
    before = compose(text, file).data
    splice = splice_of(text, edit)
    if isinstance(edit, Set) and loses_comment(splice):
        raise Refused([by_hand(text, file, edit)])
    try:
        same = compose(splice.applied(text), file).data == intended(before, edit)
    except Refused:
        same = False
    if not same:
        raise Refused([by_hand(text, file, edit)])
    return splice


def loses_comment(splice: Splice) -> bool:
    """
    True where a value that gives way has a comment among its lines, or a text that looks like one.
    """
    return "\n" in splice.old and " #" in splice.old


def by_hand(text: str, file: str, edit: Edit) -> Problem:
    """The problem with a place that the program does not dare to change."""
    path, places = edit.path, compose(text, file).places
    while path and path not in places:
        path = path[:-1]
    reason = "is written in a way that cannot be changed without disturbing what stands around it"
    return Problem(
        places.get(path, Where(file)),
        spoken(edit.path),
        "",
        reason,
        "edit-by-hand",
        "change it in an editor; nothing was changed",
    )


def splice_of(text: str, edit: Edit) -> Splice:
    """The replacement in the text that makes an edit."""
    root = spots_of(text)
    match edit:
        case Set(path, value):
            found = spot_at(root, path)
            return (
                replaced(text, root, edit, found) if found else added_key(text, root, path, value)
            )
        case Append(path, value):
            found = spot_at(root, path)
            return appended(text, found, value) if found else added_key(text, root, path, [value])
        case Unset(path):
            return taken_out(text, root, path)


def replaced(text: str, root: Spot, edit: Set, found: Spot) -> Splice:
    """
    A value's own characters replaced, in the quotes it had.

    A value that stands on lines of its own gives way to one behind its key, and the other way
    round, so that a list comes back as it is mostly written.
    """
    path, value = edit.path, edit.value
    inside = any(spot.flow for count in range(len(path)) if (spot := spot_at(root, path[:count])))
    name, group = path[-1], spot_at(root, path[:-1])
    if isinstance(name, str) and group is not None and not inside:
        place = group.key(name)
        if place is not None and (below_its_key(found) or (edit.by_lines and by_lines(value))):
            key = group.keys[place][0]
            return Splice(
                key, text[key : found.end], key_lines(text, group.column, name, value).lstrip()
            )
    return Splice(
        found.start, text[found.start : found.end], written(value, flow=inside, mark=found.mark)
    )


def below_its_key(found: Spot) -> bool:
    """True where a value stands on lines of its own below its key."""
    return found.kind != "text" and not found.flow


def added_key(text: str, root: Spot, path: Path, value: Data) -> Splice:
    """A key added to its group."""
    group, name = spot_at(root, path[:-1]), path[-1]
    if group is None or group.kind != "group" or not isinstance(name, str):
        raise ValueError(f"path must lead to a key of a group that is there, got {spoken(path)}")
    after = before_last(group)
    if group.flow:
        return inline_part(group, after, f"{written(name, flow=True)}: {written(value, flow=True)}")
    return block_key(text, group, after, name, value, top=group is root)


def before_last(group: Spot) -> int:
    """After which of a group's keys a new one goes: the last, or the one before the note."""
    found = [place for name in LAST if (place := group.key(name))]
    return min(found) - 1 if found else len(group.parts) - 1


def appended(text: str, found: Spot, value: Data) -> Splice:
    """An entry added to a list."""
    if found.kind != "list":
        raise ValueError(f"path must lead to a list, got a {found.kind}")
    if found.flow:
        return inline_part(found, len(found.parts) - 1, appended_inline(value))
    return appended_to_block(text, found, value)


def taken_out(text: str, root: Spot, path: Path) -> Splice:
    """A key or an entry taken out."""
    within, last = spot_at(root, path[:-1]), path[-1]
    place = None if within is None else within.key(last) if isinstance(last, str) else last
    if within is None or place is None or place >= len(within.parts):
        raise ValueError(f"path must lead to something that is there, got {spoken(path)}")
    if within.kind == "list" and len(within.parts) == 1:
        return taken_out(text, root, path[:-1])
    if within.flow:
        return without_inline(text, within, place)
    if within.kind == "group":
        return without_block_key(text, within, place, top=within is root)
    return without_entry(text, within, place)


def intended(data: dict[str, Any], edit: Edit) -> dict[str, Any]:
    """The same edit made to the data."""
    made = deepcopy(data)
    within = reach(made, edit.path[:-1])
    key = edit.path[-1]
    match edit:
        case Set(_, value):
            within[key] = value
        case Append(_, value):
            (
                within.setdefault(key, []).append(value)
                if isinstance(within, dict)
                else within[key].append(value)
            )
        case Unset(path):
            forget(made, path)
    return made


def forget(data: dict[str, Any], path: Path) -> None:
    """Take a part out of the data; a list's only entry goes with its key."""
    within = reach(data, path[:-1])
    if isinstance(within, list) and len(within) == 1:
        forget(data, path[:-1])
    else:
        del within[path[-1]]


def reach(data: Any, path: Path) -> Any:
    """The part of the data at a path."""
    for step in path:
        data = data[step]
    return data
