"""Groups and lists that indentation holds together, and the values that stand in them."""

from builder.reading.syntax_words import (
    DIRECTIVE,
    LIST_ON_KEY_LINE,
    NO_COLON,
    STRAY_COLON,
    TAB,
    UNEVEN_BLOCK,
    UNEVEN_KEYS,
    UNEVEN_LIST,
)
from builder.reading.values.faults import EMPTY_ADVICE
from builder.rider.text.brackets import bracket_value
from builder.rider.text.cursor import (
    Cursor,
    Place,
    begins_line,
    char_after,
    char_here,
    column_here,
    column_of,
    go_back,
    is_gap,
    is_line_end,
    is_over,
    line_of,
    move,
    place_here,
    skip_blanks,
    skip_gap,
)
from builder.rider.text.long_text import long_text
from builder.rider.text.mistakes import stop_at, stop_here
from builder.rider.text.nodes import (
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
from builder.rider.text.plain import begins_plain, is_value_sign, plain_text, plain_words
from builder.rider.text.quoted import quoted_text
from builder.rider.text.tree import Entry, Node, group_node, item_path, key_path, list_node

LONGEST_KEY = 1024
"""Beyond this a parser of YAML no longer takes words before a colon for a key."""


def block_value(cursor: Cursor, indent: int, may_be_group: bool, path: str, depth: int) -> Node:
    """
    The value that begins at the cursor, within what is indented by ``indent``.

    A group of keys begins only where nothing but blanks and dashes stands before it.
    """
    place = place_here(cursor)
    if skip_marks(cursor, path) or is_line_end(char_here(cursor)):
        return text_at(cursor, place, path, "")
    if is_dash(cursor):
        if may_be_group:
            return block_list(cursor, indent, path, depth)
        stop_here(cursor, LIST_ON_KEY_LINE)
    if may_be_group and begins_group(cursor):
        return block_group(cursor, path, depth)
    return single_value(cursor, indent, may_be_group, path, depth)


def single_value(cursor: Cursor, indent: int, may_be_group: bool, path: str, depth: int) -> Node:
    """A text, or what brackets hold."""
    place = place_here(cursor)
    char = char_here(cursor)
    if cursor["stopped"]:
        return text_at(cursor, place, path, "")
    if char == "|" or char == ">":
        return text_at(cursor, place, path, long_text(cursor, indent))
    if begins_plain(cursor, in_brackets=False):
        words = plain_text(cursor, indent, in_brackets=False)
        check_number_lost(cursor, place, path)
        return text_at(cursor, place, path, words)
    if char not in ("[", "{", '"', "'"):
        stop_for_sign(cursor)
        return text_at(cursor, place, path, "")
    value = bracket_value(cursor, path, depth)
    if may_be_group and value["kind"] != "text" and stands_before_colon(cursor, place):
        stop_for_key(cursor, place, path)
    return value


def stands_before_colon(cursor: Cursor, start: Place) -> bool:
    """Whether what began on this line is followed by the colon of a key."""
    here = place_here(cursor)
    skip_blanks(cursor)
    follows = is_value_sign(cursor) and cursor["line"] == start["line"]
    go_back(cursor, here)
    return follows


def begins_group(cursor: Cursor) -> bool:
    """Whether a key and its colon stand at the cursor, which stays there."""
    start = place_here(cursor)
    nodes_before = cursor["nodes"]
    if not skip_key(cursor):
        go_back(cursor, start)
        return False
    skip_blanks(cursor)
    follows = is_value_sign(cursor) and cursor["line"] == start["line"]
    go_back(cursor, start)
    cursor["nodes"] = nodes_before
    return follows and not cursor["stopped"]


def skip_key(cursor: Cursor) -> bool:
    """Over the words of a key; whether there are any that can be one."""
    start = cursor["at"]
    if char_here(cursor) in ('"', "'"):
        quoted_text(cursor)
    elif begins_plain(cursor, in_brackets=False):
        plain_words(cursor, in_brackets=False)
    return start < cursor["at"] <= start + LONGEST_KEY


def block_group(cursor: Cursor, path: str, depth: int) -> Node:
    """A group of keys, each in the column of the first."""
    start = place_here(cursor)
    column = column_here(cursor)
    entries: list[Entry] = []
    lines: dict[str, int] = {}
    goes_on = opened(cursor, depth)
    while goes_on:
        entry = block_entry(cursor, column, path, depth + 1, lines)
        entries.append(entry)
        lines.setdefault(entry["key"], entry["line"])
        goes_on = another_key(cursor, column)
    return group_node(entries, line_of(start), column_of(start))


def block_entry(cursor: Cursor, column: int, path: str, depth: int, lines: dict[str, int]) -> Entry:
    """A key and its value."""
    skip_marks(cursor, path)
    start = place_here(cursor)
    is_bare = begins_plain(cursor, in_brackets=False)
    key = key_here(cursor, path, is_bare)
    own_path = key_path(path, key)
    if cursor["stopped"]:
        value = text_at(cursor, start, own_path, "")
    else:
        count_node(cursor, start)
        check_key(cursor, start, key, own_path, path, is_bare, lines.get(key, 0))
        value = value_after_key(cursor, column, own_path, depth)
    return {"key": key, "line": line_of(start), "column": column_of(start), "value": value}


def key_here(cursor: Cursor, path: str, is_bare: bool) -> str:
    """The words of a key; the cursor goes behind its colon."""
    start = place_here(cursor)
    char = char_here(cursor)
    key = ""
    if is_bare:
        key = plain_words(cursor, in_brackets=False)
    elif char == '"' or char == "'":
        key = quoted_text(cursor)
    elif char == "[" or char == "{":
        bracket_value(cursor, path, 0)
        if stands_before_colon(cursor, start):
            stop_for_key(cursor, start, path)
    else:
        stop_for_sign_of_key(cursor)
    skip_blanks(cursor)
    if is_value_sign(cursor) and cursor["line"] == start["line"]:
        move(cursor)
    else:
        stop_at(cursor, start, NO_COLON)
    return key


def stop_for_sign_of_key(cursor: Cursor) -> None:
    """Stop at a sign that no key begins with."""
    if is_dash(cursor):
        stop_here(cursor, UNEVEN_KEYS)
    elif char_here(cursor) == "%" and column_here(cursor) == 0:
        stop_here(cursor, DIRECTIVE)
    else:
        stop_for_sign(cursor)


def value_after_key(cursor: Cursor, column: int, path: str, depth: int) -> Node:
    """The value of a key that stands in a column: on its line, or below."""
    behind = place_here(cursor)
    if not skip_gap(cursor) and not is_over(cursor):
        return block_value(cursor, column, False, path, depth)
    here = column_here(cursor)
    if is_over(cursor) or here < column or (here == column and not is_dash(cursor)):
        return empty_at(cursor, behind, path, EMPTY_ADVICE)
    refuse_tab(cursor, cursor["line_start"])
    return block_value(cursor, column, True, path, depth)


def another_key(cursor: Cursor, column: int) -> bool:
    """Whether the group goes on; what stands neither in its column nor before it is refused."""
    if not ends_well(cursor, UNEVEN_KEYS):
        return False
    if column_here(cursor) > column:
        stop_here(cursor, UNEVEN_KEYS)
    return column_here(cursor) == column and not cursor["stopped"]


def ends_well(cursor: Cursor, words: tuple[str, str]) -> bool:
    """
    Whether a value ended with its line and the document goes on; the cursor goes to what comes
    next.
    """
    if cursor["stopped"]:
        return False
    skip_gap(cursor)
    if is_over(cursor):
        return False
    if not begins_line(cursor):
        stop_here(cursor, STRAY_COLON if char_here(cursor) == ":" else words)
        return False
    refuse_tab(cursor, cursor["line_start"])
    return not cursor["stopped"]


def block_list(cursor: Cursor, indent: int, path: str, depth: int) -> Node:
    """A list of dashes, each in the column of the first; below a key it may be the key's own."""
    start = place_here(cursor)
    column = column_here(cursor)
    items: list[Node] = []
    goes_on = opened(cursor, depth)
    while goes_on:
        items.append(block_item(cursor, column, item_path(path, len(items)), depth + 1))
        goes_on = another_item(cursor, column, indent)
    return list_node(items, line_of(start), column_of(start))


def block_item(cursor: Cursor, column: int, path: str, depth: int) -> Node:
    """What stands behind a dash, or below it further in."""
    move(cursor)
    behind = place_here(cursor)
    on_next_line = skip_gap(cursor)
    if is_over(cursor) or (on_next_line and column_here(cursor) <= column):
        return empty_at(cursor, behind, path, EMPTY_ADVICE)
    refuse_tab(cursor, cursor["line_start"] if on_next_line else behind["at"])
    return block_value(cursor, column, True, path, depth)


def another_item(cursor: Cursor, column: int, indent: int) -> bool:
    """Whether the list goes on. One in the column of its key ends with the next key."""
    if not ends_well(cursor, UNEVEN_BLOCK):
        return False
    here = column_here(cursor)
    if here == column and is_dash(cursor):
        return True
    if here >= column and column > indent:
        stop_here(cursor, UNEVEN_LIST)
    return False


def is_dash(cursor: Cursor) -> bool:
    """Whether a dash that begins an item stands here."""
    return char_here(cursor) == "-" and is_gap(char_after(cursor, 1))


def refuse_tab(cursor: Cursor, start: int) -> None:
    """Stop at a tab between a place and the cursor, where blanks tell what belongs together."""
    for at in range(start, cursor["at"]):
        if cursor["chars"][at] == "\t":
            place = place_here(cursor)
            stop_at(cursor, {**place, "at": at}, TAB)
            return
