"""
Edits of groups and lists that are written line by line, with the indentation, blank lines and line
ends of their neighbours.
"""

from builder.stock.splice import Splice
from builder.stock.spots import Spot, line_end, line_start, past_line
from builder.stock.wording import Data, written

LONG = 100
"""From how many characters on a list is written line by line."""


def block_key(text: str, group: Spot, after: int, name: str, value: Data, *, top: bool) -> Splice:
    """
    A key on a line of its own behind the one numbered ``after``, or behind the last where no key
    stands before the note.
    """
    place = after if after >= 0 else len(group.parts) - 1
    at = line_end(text, group.parts[place].end)
    gap = (
        end_of_lines(text) * blanks_above(text, above_comment(text, group.keys[-1][0]))
        if top and len(group.keys) > 1 and isinstance(value, list)
        else ""
    )
    return Splice(at, "", gap + key_lines(text, group.column, name, value))


def key_lines(text: str, column: int, name: str, value: Data) -> str:
    """
    A key with its value, each line begun by a line end; a list of groups, or a long one, takes a
    line an entry.
    """
    ending, key = end_of_lines(text), written(name, flow=False)
    begun = f"{ending}{' ' * column}{key}:"
    if isinstance(value, list) and by_lines(value):
        return begun + "".join(
            f"{ending}{' ' * column}  - {written(entry, flow=False)}" for entry in value
        )
    return f"{begun} {written(value, flow=False)}"


def by_lines(value: Data) -> bool:
    """Whether a value is a list that takes a line an entry: one of groups, or a long one."""
    return isinstance(value, list) and (
        any(isinstance(entry, dict) for entry in value) or len(written(value, flow=True)) > LONG
    )


def without_block_key(text: str, group: Spot, place: int, *, top: bool) -> Splice:
    """
    A key's lines taken out; comments above it stay.

    At the top of a file, the blank lines above a list go with it.
    """
    key = group.keys[place][0]
    start, end = line_start(text, key), line_end(text, group.parts[place].end)
    if text[start:key].strip():
        # The first key of an entry stands behind the dash: the next key takes its place.
        follower = group.keys[place + 1][0] if place + 1 < len(group.keys) else end
        return Splice(key, text[key:follower], "")
    if top and group.parts[place].kind == "list" and place:
        start = above_blanks(text, start)
    return whole_lines(text, start, end)


def appended_to_block(text: str, found: Spot, value: Data) -> Splice:
    """An entry behind the last, set out as the last is."""
    last = found.parts[-1]
    dash = dash_of(text, found, len(found.parts) - 1)
    ending = end_of_lines(text)
    gap = (
        ending * blanks_above(text, own_start(text, found, len(found.parts) - 1))
        if len(found.parts) > 1
        else ""
    )
    indent = " " * found.column
    if isinstance(value, dict) and last.kind == "group" and not last.flow:
        inner = " " * (last.column - found.column - 1)
        lines = [key_lines(text, last.column, name, part) for name, part in value.items()]
        body = (
            "-" + inner + lines[0].lstrip() + "".join(lines[1:])
            if same_line(text, dash, last)
            else "-" + "".join(lines)
        )
    else:
        body = "- " + written(value, flow=False, mark=last.mark if isinstance(value, str) else "")
    return Splice(line_end(text, last.end), "", f"{gap}{ending}{indent}{body}")


def same_line(text: str, dash: int, entry: Spot) -> bool:
    """True where an entry begins on the line of its dash."""
    return "\n" not in text[dash : entry.start]


def without_entry(text: str, found: Spot, place: int) -> Splice:
    """
    An entry taken out with its own comment, and with the blank lines that divided it from the one
    before.
    """
    start, end = own_start(text, found, place), line_end(text, found.parts[place].end)
    if place:
        return whole_lines(text, above_blanks(text, start), end)
    # Nothing stands before the first entry, so the blank lines behind it go.
    after = past_line(text, end)
    next_start = own_start(text, found, place + 1)
    while after < next_start and not text[after : line_end(text, after)].strip():
        after = past_line(text, after)
    return Splice(start, text[start:after], "")


def own_start(text: str, found: Spot, place: int) -> int:
    """
    Where an entry begins, its own comment included.

    Comment lines directly above an entry are its own, unless the next entry follows directly and
    without a comment: then they head the run.
    """
    start = line_start(text, dash_of(text, found, place))
    bare = comment_start(text, found, place)
    if bare == start or place + 1 >= len(found.parts):
        return bare
    after = line_start(text, dash_of(text, found, place + 1))
    divided = bool(blanks_above(text, after)) or comment_start(text, found, place + 1) != after
    return bare if divided else start


def comment_start(text: str, found: Spot, place: int) -> int:
    """
    Where the comment lines directly above an entry begin; the entry's own line where there are
    none.
    """
    start = line_start(text, dash_of(text, found, place))
    least = (
        past_line(text, found.parts[place - 1].end)
        if place
        else past_line(text, text.rfind(":", 0, start))
    )
    while start > least and text[line_start(text, start - 1) : start].lstrip(" ").startswith("#"):
        start = line_start(text, start - 1)
    return start


def dash_of(text: str, found: Spot, place: int) -> int:
    """The dash of an entry: the last one before it in the list's column."""
    at = found.parts[place].start
    while True:
        at = text.rindex("-", 0, at)
        if at - line_start(text, at) == found.column:
            return at


def whole_lines(text: str, start: int, end: int) -> Splice:
    """
    Lines taken out with the line end before them; at the top of the file, with the one behind.
    """
    if start:
        start = start - 2 if text[start - 2 : start] == "\r\n" else start - 1
        return Splice(start, text[start:end], "")
    return Splice(0, text[: past_line(text, end)], "")


def above_comment(text: str, position: int) -> int:
    """The start of the comment lines that stand directly above the line of a position."""
    start = line_start(text, position)
    while start and text[line_start(text, start - 1) : start].lstrip(" ").startswith("#"):
        start = line_start(text, start - 1)
    return start


def above_blanks(text: str, start: int) -> int:
    """The start of the blank lines that stand directly above a line."""
    while start and not text[line_start(text, start - 1) : start].strip():
        start = line_start(text, start - 1)
    return start


def blanks_above(text: str, position: int) -> int:
    """How many blank lines stand directly above the line of a position."""
    start = line_start(text, position)
    return text.count("\n", above_blanks(text, start), start)


def end_of_lines(text: str) -> str:
    """The line end that the file uses."""
    return "\r\n" if "\r\n" in text else "\n"
