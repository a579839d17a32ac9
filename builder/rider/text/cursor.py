"""
Where the reader stands in a rider's text, and how it moves.

Nothing is raised: a mistake that makes the rest unreadable stops the cursor, every loop looks at
that, and what was read until then is thrown away by whoever asked.
"""

from typing import TypedDict

from builder.rider.text.tree import Mistake

END = "\x00"
"""Stands after the last character; a rider cannot hold it."""
AHEAD = 4
"""How far one may look beyond where one stands."""


class Cursor(TypedDict):
    """
    The characters of a text and a place in it. ``line`` counts from 0; ``line_start`` is where its
    first character stands.
    """

    chars: list[str]
    at: int
    line: int
    line_start: int
    nodes: int
    mistakes: list[Mistake]
    stopped: bool


class Place(TypedDict):
    """Where a cursor stood."""

    at: int
    line: int
    line_start: int


def cursor_over(text: str) -> Cursor:
    """A cursor at the beginning of a text."""
    chars = list(text)
    for _ in range(AHEAD):
        chars.append(END)
    return {
        "chars": chars,
        "at": 0,
        "line": 0,
        "line_start": 0,
        "nodes": 0,
        "mistakes": [],
        "stopped": False,
    }


def char_here(cursor: Cursor) -> str:
    """The character that the cursor stands at."""
    return cursor["chars"][cursor["at"]]


def char_after(cursor: Cursor, count: int) -> str:
    """The character so many places further."""
    return cursor["chars"][cursor["at"] + count]


def char_before(cursor: Cursor) -> str:
    """The character before the cursor; a line's end before the first one."""
    return cursor["chars"][cursor["at"] - 1] if cursor["at"] > 0 else "\n"


def column_here(cursor: Cursor) -> int:
    """How many characters stand before the cursor on its line."""
    return cursor["at"] - cursor["line_start"]


def line_of(place: Place) -> int:
    """A place's line as people count, from 1."""
    return place["line"] + 1


def column_of(place: Place) -> int:
    """A place's column as people count, from 1."""
    return place["at"] - place["line_start"] + 1


def move(cursor: Cursor) -> None:
    """
    One character further. A loop that moves looks for the end of the text first.

    Raises
    ------
    ValueError
        At the end of the text.
    """
    char = char_here(cursor)
    if char == END:
        raise ValueError("the cursor must not move beyond the end of the text")
    cursor["at"] += 1
    if char == "\n":
        cursor["line"] += 1
        cursor["line_start"] = cursor["at"]


def move_by(cursor: Cursor, count: int) -> None:
    """So many characters further."""
    for _ in range(count):
        move(cursor)


def place_here(cursor: Cursor) -> Place:
    """Where the cursor stands now."""
    return {"at": cursor["at"], "line": cursor["line"], "line_start": cursor["line_start"]}


def go_back(cursor: Cursor, place: Place) -> None:
    """Back to a place where the cursor stood."""
    cursor["at"] = place["at"]
    cursor["line"] = place["line"]
    cursor["line_start"] = place["line_start"]


def text_between(cursor: Cursor, start: int, end: int) -> str:
    """The text from one place to before another."""
    return "".join(cursor["chars"][start:end])


def line_words(cursor: Cursor, line_start: int) -> str:
    """A line's text without blanks at its ends."""
    end = line_start
    while not is_line_end(cursor["chars"][end]):
        end += 1
    return text_between(cursor, line_start, end).strip(" \t")


def is_blank(char: str) -> bool:
    """Whether a character is a space or a tab."""
    return char == " " or char == "\t"


def is_line_end(char: str) -> bool:
    """Whether a line ends here."""
    return char == "\n" or char == END


def is_gap(char: str) -> bool:
    """Whether a character parts two words: a blank or a line's end."""
    return is_blank(char) or is_line_end(char)


def skip_blanks(cursor: Cursor) -> None:
    """Over spaces and tabs."""
    while is_blank(char_here(cursor)):
        move(cursor)


def skip_comment(cursor: Cursor) -> None:
    """Over a comment, to the end of its line. It begins after a blank or a line's end."""
    if char_here(cursor) == "#" and is_gap(char_before(cursor)):
        while not is_line_end(char_here(cursor)):
            move(cursor)


def skip_gap(cursor: Cursor) -> bool:
    """Over blanks, comments and line ends; whether a line ended."""
    line = cursor["line"]
    skip_blanks(cursor)
    skip_comment(cursor)
    while char_here(cursor) == "\n":
        move(cursor)
        skip_blanks(cursor)
        skip_comment(cursor)
    return cursor["line"] > line


def is_document_mark(cursor: Cursor) -> bool:
    """Whether `---` or `...` stands here at the beginning of a line."""
    if column_here(cursor) != 0:
        return False
    char = char_here(cursor)
    same = char == char_after(cursor, 1) and char == char_after(cursor, 2)
    return (char == "-" or char == ".") and same and is_gap(char_after(cursor, 3))


def begins_line(cursor: Cursor) -> bool:
    """Whether only blanks stand before the cursor on its line."""
    before = cursor["chars"][cursor["line_start"] : cursor["at"]]
    return all(is_blank(char) for char in before)


def is_over(cursor: Cursor) -> bool:
    """Whether the document ends here, or the reader has stopped."""
    return cursor["stopped"] or char_here(cursor) == END or is_document_mark(cursor)
