"""A text over several lines after `|` or `>`, with the signs for its end and its indentation."""

from typing import TypedDict

from builder.reading.syntax_words import TAB, WORDS_AFTER_SIGN
from builder.rider.text.cursor import (
    END,
    Cursor,
    char_here,
    column_here,
    is_blank,
    is_line_end,
    move,
    skip_blanks,
    skip_comment,
    text_between,
)
from builder.rider.text.mistakes import stop_here

DIGITS = "123456789"


class Header(TypedDict):
    """
    What stands behind the sign: whether lines are folded, what becomes of the line ends at the end
    (`-` none, `+` all, else one), and how many blanks indent the text, 0 where its first line
    tells.
    """

    folds: bool
    end: str
    indent: int


class Margin(TypedDict):
    """The line ends before the next words, and how far the text is indented; 0 while unknown."""

    breaks: int
    indent: int


def long_text(cursor: Cursor, indent: int) -> str:
    """The text of the `|` or `>` at the cursor, within what is indented by ``indent``."""
    header = header_here(cursor)
    parts: list[str] = []
    margin = skip_margin(
        cursor, indent, max(indent, 0) + header["indent"] if header["indent"] > 0 else 0
    )
    line_end = ""
    after_blank = False
    while (
        column_here(cursor) == margin["indent"]
        and char_here(cursor) != END
        and not cursor["stopped"]
    ):
        is_indented = is_blank(char_here(cursor))
        if header["folds"] and line_end != "" and not after_blank and not is_indented:
            parts.append(" " if margin["breaks"] == 0 else "")
        else:
            parts.append(line_end)
        parts.append("\n" * margin["breaks"])
        after_blank = is_indented
        parts.append(rest_of_line(cursor))
        line_end = "\n" if char_here(cursor) == "\n" else ""
        if line_end != "":
            move(cursor)
        margin = skip_margin(cursor, indent, margin["indent"])
    if header["end"] != "-":
        parts.append(line_end)
    if header["end"] == "+":
        parts.append("\n" * margin["breaks"])
    return "".join(parts)


def header_here(cursor: Cursor) -> Header:
    """The sign and what stands behind it; the cursor goes to the next line."""
    header: Header = {"folds": char_here(cursor) == ">", "end": "", "indent": 0}
    move(cursor)
    for _ in range(2):
        sign = char_here(cursor)
        if (sign == "+" or sign == "-") and header["end"] == "":
            header["end"] = sign
            move(cursor)
        elif DIGITS.find(sign) >= 0 and header["indent"] == 0:
            header["indent"] = DIGITS.find(sign) + 1
            move(cursor)
    skip_blanks(cursor)
    skip_comment(cursor)
    if not is_line_end(char_here(cursor)):
        stop_here(cursor, WORDS_AFTER_SIGN)
    elif char_here(cursor) == "\n":
        move(cursor)
    return header


def skip_margin(cursor: Cursor, outer: int, indent: int) -> Margin:
    """
    Over empty lines and the blanks that indent the text.

    Where its indentation is not known yet, the line that begins furthest to the right until the
    first words tells it.
    """
    breaks = 0
    furthest = 0
    while True:
        while char_here(cursor) == " " and (indent == 0 or column_here(cursor) < indent):
            move(cursor)
        furthest = max(furthest, column_here(cursor))
        if char_here(cursor) == "\t" and (indent == 0 or column_here(cursor) < indent):
            stop_here(cursor, TAB)
        if char_here(cursor) != "\n" or cursor["stopped"]:
            break
        move(cursor)
        breaks += 1
    return {"breaks": breaks, "indent": indent if indent > 0 else max(furthest, outer + 1, 1)}


def rest_of_line(cursor: Cursor) -> str:
    """The characters to the line's end."""
    start = cursor["at"]
    while not is_line_end(char_here(cursor)):
        move(cursor)
    return text_between(cursor, start, cursor["at"])
