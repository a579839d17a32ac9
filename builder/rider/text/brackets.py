"""Lists in `[ ]` and groups in `{ }`, over one line or several."""

from builder.reading.syntax_words import NO_VALUE_HERE, OPEN_GROUP, OPEN_LIST
from builder.reading.values.faults import EMPTY_ADVICE
from builder.rider.text.cursor import (
    Cursor,
    Place,
    char_here,
    column_of,
    is_over,
    line_of,
    move,
    place_here,
    skip_gap,
)
from builder.rider.text.mistakes import stop_at, stop_here
from builder.rider.text.nodes import (
    advice_in_braces,
    check_key,
    check_number_lost,
    count_node,
    empty_at,
    opened,
    skip_marks,
    stop_for_key,
    stop_for_sign,
    text_at,
)
from builder.rider.text.plain import begins_plain, plain_text, plain_words
from builder.rider.text.quoted import quoted_text
from builder.rider.text.tree import Entry, Node, group_node, item_path, key_path, list_node

AFTER_VALUE = (",", "]", "}")


def bracket_value(cursor: Cursor, path: str, depth: int) -> Node:
    """The value that begins at the cursor, within brackets or with them."""
    place = place_here(cursor)
    if skip_marks(cursor, path) or cursor["stopped"]:
        return text_at(cursor, place, path, "")
    place = place_here(cursor)
    char = char_here(cursor)
    if char == "[":
        return bracket_list(cursor, path, depth)
    if char == "{":
        return bracket_group(cursor, path, depth)
    if char == '"' or char == "'":
        return text_at(cursor, place, path, quoted_text(cursor))
    if begins_plain(cursor, in_brackets=True):
        words = plain_text(cursor, -1, in_brackets=True)
        check_number_lost(cursor, place, path)
        return text_at(cursor, place, path, words)
    stop_for_sign(cursor)
    return text_at(cursor, place, path, "")


def bracket_list(cursor: Cursor, path: str, depth: int) -> Node:
    """A list from `[` to `]`."""
    start = place_here(cursor)
    items: list[Node] = []
    if opened(cursor, depth):
        move(cursor)
        while goes_on(cursor, "]", start):
            items.append(bracket_item(cursor, item_path(path, len(items)), depth + 1))
            pass_comma(cursor, "]", start)
    return list_node(items, line_of(start), column_of(start))


def bracket_item(cursor: Cursor, path: str, depth: int) -> Node:
    """An item of a list; `[a: 1]` is a list of one group."""
    start = place_here(cursor)
    is_bare = begins_plain(cursor, in_brackets=True)
    value = bracket_value(cursor, path, depth)
    if cursor["stopped"] or not is_pair_sign(cursor, start, is_bare):
        return value
    if value["kind"] != "text":
        stop_for_key(cursor, start, path)
        return value
    opened(cursor, depth)
    key = value["text"]
    check_key(cursor, start, key, key_path(path, key), path, is_bare, 0)
    entry = value_in_brackets(cursor, start, key, path, depth + 1)
    return group_node([entry], line_of(start), column_of(start))


def is_pair_sign(cursor: Cursor, start: Place, is_bare: bool) -> bool:
    """Whether a colon makes a key of what began on the same line; it may follow a quote at once."""
    if cursor["line"] != start["line"]:
        return False
    at = cursor["at"]
    while cursor["chars"][at] == " " or cursor["chars"][at] == "\t":
        at += 1
    if cursor["chars"][at] != ":":
        return False
    ahead = cursor["chars"][at + 1]
    return not is_bare or ahead == " " or ahead == "\t" or ahead == "\n"


def bracket_group(cursor: Cursor, path: str, depth: int) -> Node:
    """A group from `{` to `}`."""
    start = place_here(cursor)
    entries: list[Entry] = []
    lines: dict[str, int] = {}
    if opened(cursor, depth):
        move(cursor)
        while goes_on(cursor, "}", start):
            entry = bracket_entry(cursor, path, depth + 1, lines)
            entries.append(entry)
            lines.setdefault(entry["key"], entry["line"])
            pass_comma(cursor, "}", start)
    return group_node(entries, line_of(start), column_of(start))


def bracket_entry(cursor: Cursor, path: str, depth: int, lines: dict[str, int]) -> Entry:
    """A key and its value."""
    skip_marks(cursor, path)
    start = place_here(cursor)
    is_bare = begins_plain(cursor, in_brackets=True)
    key = key_in_brackets(cursor, path, is_bare)
    if not cursor["stopped"]:
        count_node(cursor, start)
        first = lines.get(key, 0)
        check_key(cursor, start, key, key_path(path, key), path, is_bare, first)
    return value_in_brackets(cursor, start, key, path, depth)


def key_in_brackets(cursor: Cursor, path: str, is_bare: bool) -> str:
    """The words of a key."""
    char = char_here(cursor)
    if is_bare:
        return plain_words(cursor, in_brackets=True)
    if char == '"' or char == "'":
        return quoted_text(cursor)
    if char == "[" or char == "{":
        stop_for_key(cursor, place_here(cursor), path)
    else:
        stop_for_sign(cursor)
    return ""


def value_in_brackets(cursor: Cursor, start: Place, key: str, path: str, depth: int) -> Entry:
    """The value after a key, which may be missing; the cursor stands behind the key."""
    own_path = key_path(path, key)
    skip_gap(cursor)
    has_colon = cursor["line"] == start["line"] and char_here(cursor) == ":"
    if has_colon:
        move(cursor)
        skip_gap(cursor)
    if cursor["stopped"]:
        value = text_at(cursor, start, own_path, "")
    elif not has_colon or char_here(cursor) in AFTER_VALUE:
        advice = advice_in_braces(key) if key != "" else EMPTY_ADVICE
        value = empty_at(cursor, place_here(cursor), own_path, advice)
    else:
        value = bracket_value(cursor, own_path, depth)
    return {"key": key, "line": line_of(start), "column": column_of(start), "value": value}


def goes_on(cursor: Cursor, end: str, start: Place) -> bool:
    """Whether another item or key follows; over the closing bracket where none does."""
    if cursor["stopped"]:
        return False
    skip_gap(cursor)
    if is_over(cursor):
        stop_at(cursor, start, OPEN_LIST if end == "]" else OPEN_GROUP)
        return False
    if char_here(cursor) == end:
        move(cursor)
        return False
    if char_here(cursor) in AFTER_VALUE:
        stop_here(cursor, NO_VALUE_HERE)
        return False
    return True


def pass_comma(cursor: Cursor, end: str, start: Place) -> None:
    """Over the comma that parts two items; the last one has none, or one too many."""
    skip_gap(cursor)
    if char_here(cursor) == ",":
        move(cursor)
    elif char_here(cursor) != end:
        stop_at(cursor, start, OPEN_LIST if end == "]" else OPEN_GROUP)
