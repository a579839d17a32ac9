"""The other orders on a line: count, move, add, remove, verified."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from builder.reading.nodes import Path
from builder.reading.written import RefersTo, Written
from builder.stock.edits import Append, Edit, Set, Unset
from builder.stock.lines import Held, not_done
from builder.stock.order import Order, count_key, data_of, order, working_of
from builder.stock.wording import Data


def count(
    line: Held,
    said: Mapping[str, Any],
    number: int,
    *,
    working: int | None = None,
    also: Mapping[str, str] | None = None,
) -> Order:
    """
    Set how many there are, and how many of them work.

    Raises
    ------
    Refused
        `key-not-here`, `count-below-zero`, `count-beyond`, `count-same`.
    """
    key = count_key(line)
    wanted = {key: number} if working is None else {key: number, "working": working}
    if working is not None:
        working_of(line, {})
    if min(wanted.values()) < 0:
        raise not_done(
            line, "cannot be counted below zero", "count-below-zero", "write how many there are"
        )
    at_work = working if working is not None else getattr(line.record, "working", None)
    if isinstance(at_work, int) and at_work > number:
        reason = f"cannot have {at_work} at work of {number}"
        raise not_done(line, reason, "count-beyond", "say how many work with --working")
    edits: list[Edit] = [
        Set((*line.path, key), str(value))
        for key, value in wanted.items()
        if said.get(key) != str(value)
    ]
    edits += settings(line, also or {})
    if not edits:
        raise not_done(line, "has that count already", "count-same", "nothing was changed")
    return order("count", line, edits)


NOWHERE = "nowhere"


def move(line: Held, said: Mapping[str, Any], place: str, also: Mapping[str, str]) -> Order:
    """
    Say that a line is somewhere else: at a named place, at a position, or both. Loose stock is
    moved to where it is kept.

    Raises
    ------
    Refused
        `key-not-here` where the line has no place, or lacks a key.

    ``nowhere`` takes the key out again: nobody says any more where it is.
    """
    edits: list[Edit] = list(settings(line, also, position_first=True))
    if place:
        key = next(
            (
                name
                for name, field in type(line.record).model_fields.items()
                if RefersTo("place") in field.metadata
            ),
            line.has("kept"),
        )
        if key is None:
            raise not_done(
                line, "has no place", "key-not-here", "give its position, such as across='4 m SL'"
            )
        if place != NOWHERE:
            edits.insert(0, Set((*line.path, key), place))
        elif key in said:
            edits.insert(0, Unset((*line.path, key)))
    return order("move", line, edits)


def settings(line: Held, also: Mapping[str, str], *, position_first: bool = False) -> list[Edit]:
    """
    Keys of a line set to what is said.

    A key that the line lacks is looked for in its position, or there first.
    """
    return [
        Set(path_of(line, key, position_first=position_first), data_of(value))
        for key, value in also.items()
    ]


def path_of(line: Held, key: str, *, position_first: bool) -> Path:
    """The path of a key of a line, or of its position."""
    steps = tuple(key.split("."))
    fields = type(line.record).model_fields
    known = {field.alias or name for name, field in fields.items()}
    at = getattr(line.record, "at", None)
    if (
        (position_first or steps[0] not in known)
        and isinstance(at, Written)
        and steps[0] in type(at).model_fields
    ):
        return (*line.path, "at", *steps)
    if steps[0] not in known:
        raise not_done(
            line, f"has no key '{key}'", "key-not-here", f"it has {', '.join(sorted(known))}"
        )
    if len(steps) > 1 and not isinstance(getattr(line.record, steps[0], None), Written):
        advice = f"write the whole of it, such as '{steps[0]}={{{steps[1]}: ...}}'"
        raise not_done(line, f"says nothing under '{steps[0]}'", "key-not-here", advice)
    return (*line.path, *steps)


def remove(line: Held) -> Order:
    """Take a line out of its list, with its own comment."""
    return order("remove", line, [Unset(line.path)])


def add(file: str, path: Path, within: str, said: Mapping[str, Data], *, begun: bool) -> Order:
    """
    Add a line to a list, set out as its neighbours are.

    ``said`` begins with the name; ``begun`` is false where `none` or `unknown` stands there.
    """
    edit = Append(path, dict(said)) if begun else Set(path, [dict(said)])
    return Order("add", file, within, str(next(iter(said.values()))), path, ((file, edit),))


def verified(
    file: str, line: Held | None, said: Mapping[str, Any], *, on: date, by: str, how: str
) -> Order:
    """Stamp a line, or a whole file, as checked."""
    path: Path = (*line.path, "verified") if line else ("verified",)
    stamp = {"on": on.isoformat(), "by": by, "how": how}
    edits: list[Edit] = [Set(path, dict(stamp))]
    if isinstance(said.get("verified"), dict):
        edits = [
            Set((*path, key), value)
            for key, value in stamp.items()
            if said["verified"].get(key) != value
        ]
    if line:
        return order("verified", line, edits)
    return Order(
        "verified", file, file.removesuffix(".yml"), "", (), tuple((file, edit) for edit in edits)
    )
