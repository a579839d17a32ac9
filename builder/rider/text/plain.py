"""A text without quotes: where it can begin, where it ends, and how it goes on over lines."""

from builder.reading.syntax_words import STRAY_COLON, TAB
from builder.rider.text.cursor import (
    Cursor,
    char_after,
    char_before,
    char_here,
    column_here,
    go_back,
    is_blank,
    is_document_mark,
    is_gap,
    is_line_end,
    move,
    place_here,
    skip_blanks,
    text_between,
)
from builder.rider.text.mistakes import stop_here

SIGNS = ("-", "?", ":", ",", "[", "]", "{", "}", "#", "&", "*", "!", "|", ">", "'", '"', "%", "@")
"""What no text without quotes begins with; nor with a backtick."""
BRACKETS = (",", "[", "]", "{", "}")
AFTER_COLON = (",", "?", "[", "]", "{", "}")


def begins_plain(cursor: Cursor, in_brackets: bool) -> bool:
    """Whether a text without quotes begins here."""
    char = char_here(cursor)
    if is_lone_mark(cursor):
        return True
    if char == "-":
        return not is_gap(char_after(cursor, 1))
    if char == "?" or char == ":":
        return not in_brackets and not is_gap(char_after(cursor, 1))
    return not is_gap(char) and char not in SIGNS and char != "`"


def is_lone_mark(cursor: Cursor) -> bool:
    """
    Whether a `?` stands here by itself, where a value can stand: `width: ?`, `- ?`, `[?, 3 m]`.

    YAML reads it as the start of a key; here it is a value.
    """
    return char_here(cursor) == "?" and is_free_before(cursor) and is_free_behind(cursor)


def is_free_before(cursor: Cursor) -> bool:
    """Whether what stands before is a line's beginning or a sign that a value follows."""
    at = cursor["at"] - 1
    while at >= cursor["line_start"] and is_blank(cursor["chars"][at]):
        at -= 1
    if at < cursor["line_start"]:
        return True
    sign = cursor["chars"][at]
    if sign == "-":
        return at < cursor["at"] - 1
    return sign in ("[", ",", "{", ":")


def is_free_behind(cursor: Cursor) -> bool:
    """Whether what stands behind is a line's end, a comment, or a sign that the value is over."""
    at = cursor["at"] + 1
    while is_blank(cursor["chars"][at]):
        at += 1
    sign = cursor["chars"][at]
    if sign == "#":
        return at > cursor["at"] + 1
    return is_line_end(sign) or sign in (",", "]", "}")


def is_value_sign(cursor: Cursor) -> bool:
    """Whether a colon stands here that a value follows."""
    return char_here(cursor) == ":" and is_gap(char_after(cursor, 1))


def plain_words(cursor: Cursor, in_brackets: bool) -> str:
    """The words of a text on this line; the cursor then stands behind the last of them."""
    start = cursor["at"]
    end = start
    while not ends_plain(cursor, in_brackets):
        if in_brackets and char_here(cursor) == ":" and char_after(cursor, 1) in AFTER_COLON:
            stop_here(cursor, STRAY_COLON)
            return ""
        if not is_blank(char_here(cursor)):
            end = cursor["at"] + 1
        move(cursor)
    cursor["at"] = end
    return text_between(cursor, start, end)


def ends_plain(cursor: Cursor, in_brackets: bool) -> bool:
    """Whether a text without quotes cannot go on here."""
    char = char_here(cursor)
    if is_line_end(char) or is_value_sign(cursor):
        return True
    if char == "#" and is_gap(char_before(cursor)):
        return True
    return in_brackets and char in BRACKETS


def plain_text(cursor: Cursor, indent: int, in_brackets: bool) -> str:
    """
    A text without quotes over all its lines: one line's end is a space, several are one fewer.

    It goes on where a line is indented further than ``indent``; in brackets on any line.
    """
    parts = [plain_words(cursor, in_brackets)]
    breaks = breaks_to_more(cursor, indent, in_brackets)
    while breaks > 0 and not cursor["stopped"]:
        parts.append(folded_breaks(breaks))
        parts.append(plain_words(cursor, in_brackets))
        breaks = breaks_to_more(cursor, indent, in_brackets)
    return "".join(parts)


def folded_breaks(count: int) -> str:
    """What so many line ends within a text come to."""
    return " " if count == 1 else "\n" * (count - 1)


def breaks_to_more(cursor: Cursor, indent: int, in_brackets: bool) -> int:
    """How many lines end before the text goes on; 0 where it does not, the cursor as it was."""
    start = place_here(cursor)
    skip_blanks(cursor)
    while char_here(cursor) == "\n":
        move(cursor)
        skip_blanks(cursor)
    breaks = cursor["line"] - start["line"]
    goes_on = breaks > 0 and goes_on_here(cursor, indent, in_brackets)
    if goes_on and not in_brackets and has_tab_to(cursor, indent):
        stop_here(cursor, TAB)
    if not goes_on:
        go_back(cursor, start)
        return 0
    return breaks


def goes_on_here(cursor: Cursor, indent: int, in_brackets: bool) -> bool:
    """Whether the words at the cursor, the first of their line, belong to the text above."""
    if is_document_mark(cursor) or ends_plain(cursor, in_brackets):
        return False
    return in_brackets or column_here(cursor) > indent


def has_tab_to(cursor: Cursor, indent: int) -> bool:
    """Whether a tab stands among the blanks that indent a line at least."""
    start = cursor["line_start"]
    return "\t" in cursor["chars"][start : start + indent + 1]
