"""Out of service and back: a whole line, some of its number, or one numbered unit."""

from collections.abc import Mapping, Sequence
from typing import Any

from builder.overview.log import Log
from builder.reading.in_service import UNITS
from builder.stock.edits import Append, Edit, Set, Unset
from builder.stock.lines import Held, not_done
from builder.stock.order import (
    COUNTS,
    Order,
    data_of,
    entries_on,
    flat,
    how_many,
    order,
    working_of,
)

SERVICE = ("working", "condition", *UNITS)
"""Keys that going out and coming back may change."""
IN_SERVICE = "in service"


def out(
    line: Held, said: Mapping[str, Any], *, count: int | None = None, unit: int | None = None
) -> Order:
    """
    Put a line out of service: the whole of it, some of its number, or one numbered unit.

    Raises
    ------
    Refused
        `out-already`, `count-beyond`, `count-not-known` or `key-not-here`.
    """
    if unit is not None:
        return order("out", line, [unit_out(line, unit)])
    if count is not None:
        return order("out", line, some_out(line, said, count))
    if line.record.condition == "out of service":
        raise not_done(line, "is out of service already", "out-already", "nothing was changed")
    return order("out", line, [Set((*line.path, "condition"), "out of service")])


def unit_out(line: Held, unit: int) -> Edit:
    """One numbered unit added to those that do not work."""
    key, numbers = units_out(line)
    there = how_many(line)
    if not 1 <= unit <= there:
        raise not_done(
            line, f"has no unit {unit}", "count-beyond", f"they are numbered 1 to {there}"
        )
    if unit in numbers:
        raise not_done(
            line, f"has unit {unit} out of service already", "out-already", "nothing was changed"
        )
    return Append((*line.path, key), str(unit))


def units_out(line: Held) -> tuple[str, tuple[int, ...]]:
    """The key that lists units which do not work, and their numbers."""
    key = line.has(*UNITS)
    if key is None:
        raise not_done(
            line, "has no numbered units", "key-not-here", "leave --unit out, or give --count"
        )
    return key, tuple(getattr(line.record, key))


def some_out(line: Held, said: Mapping[str, Any], count: int) -> tuple[Edit, ...]:
    """Some of a line put out: fewer work, and its condition says so."""
    working = working_of(line, said)
    if not 1 <= count <= working:
        reason = f"has {working} that work, so {count} cannot go out"
        raise not_done(line, reason, "count-beyond", "give a number from 1 to that")
    state = (
        "out of service"
        if count == working
        else "limited"
        if line.record.condition == IN_SERVICE
        else line.record.condition
    )
    changed = [Set((*line.path, "working"), str(working - count))]
    return (
        (*changed, Set((*line.path, "condition"), state))
        if state != line.record.condition
        else tuple(changed)
    )


def back(
    line: Held,
    said: Mapping[str, Any],
    log: Log | None,
    *,
    count: int | None = None,
    unit: int | None = None,
) -> Order:
    """
    Bring back what was out. Where it undoes the last entry of the log on this line, each key gets
    what it said before, to the letter.

    Raises
    ------
    Refused
        `in-already`, `count-beyond`, `count-not-known` or `key-not-here`.
    """
    edits = (
        [unit_back(line, unit)]
        if unit is not None
        else some_back(line, said, count)
        if count is not None
        else whole_back(line)
    )
    return order("back", line, restored(line, said, log, edits) or edits)


def unit_back(line: Held, unit: int) -> Edit:
    """One numbered unit taken from those that do not work."""
    key, numbers = units_out(line)
    if unit not in numbers:
        raise not_done(
            line, f"does not have unit {unit} out of service", "in-already", "nothing was changed"
        )
    return Unset((*line.path, key, numbers.index(unit)))


def some_back(line: Held, said: Mapping[str, Any], count: int) -> tuple[Edit, ...]:
    """Some of a line brought back: more work, and where all do its condition is no longer said."""
    working, there = working_of(line, said), how_many(line)
    if working == there:
        raise not_done(
            line, f"has all {there} at work already", "in-already", "nothing was changed"
        )
    if not 1 <= count <= there - working:
        reason = f"has {there - working} out, so {count} cannot come back"
        raise not_done(line, reason, "count-beyond", "give a number from 1 to that")
    edits: list[Edit] = [Set((*line.path, "working"), str(working + count))]
    if working + count == there and "condition" in said:
        edits.append(Unset((*line.path, "condition")))
    elif line.record.condition == "out of service":
        edits.append(Set((*line.path, "condition"), "limited"))
    return tuple(edits)


def whole_back(line: Held) -> tuple[Edit, ...]:
    """A whole line brought back."""
    if line.record.condition == IN_SERVICE:
        raise not_done(line, "is in service already", "in-already", "nothing was changed")
    return (Unset((*line.path, "condition")),)


def restored(
    line: Held, said: Mapping[str, Any], log: Log | None, edits: Sequence[Edit]
) -> tuple[Edit, ...]:
    """
    The edits that lead back to what the log says stood there before, where that is what the order
    comes to; none otherwise.

    The log of the line is wound back entry by entry, as long as it agrees with what is written now.
    """
    now = flat(said)
    before: dict[str, str | None] = {}
    main = str(edits[0].path[len(line.path)])
    for entry in entries_on(line, log):
        if any(before.get(part.key, now.get(part.key)) != part.now for part in entry.changes):
            return ()
        before |= {part.key: part.was for part in entry.changes}
        counted_alike = all(before.get(key, now.get(key)) == now.get(key) for key in COUNTS)
        if main in before and counted_alike and comes_to(said, line, edits[0], before[main]):
            return tuple(
                edit
                for key in SERVICE
                if key in before and before[key] != now.get(key)
                for edit in [rewritten(line, key, before[key])]
            )
    return ()


def rewritten(line: Held, key: str, before: str | None) -> Edit:
    """The edit that gives a key what it said before."""
    return Unset((*line.path, key)) if before is None else Set((*line.path, key), data_of(before))


def comes_to(said: Mapping[str, Any], line: Held, edit: Edit, before: str | None) -> bool:
    """True where an edit leads back to what stood there before."""
    if isinstance(edit, Set):
        return edit.value == (before if before is not None else str(how_many(line)))
    if len(edit.path) > len(line.path) + 1:
        rest = [
            entry for place, entry in enumerate(said[str(edit.path[-2])]) if place != edit.path[-1]
        ]
        return rest == (data_of(before) if before is not None else [])
    return True
