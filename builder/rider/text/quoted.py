"""A text in single or double quotes, over one line or several."""

from builder.formulas.primitives import char_of
from builder.reading.syntax_words import BAD_ESCAPE, OPEN_QUOTE
from builder.rider.text.cursor import (
    END,
    Cursor,
    Place,
    char_after,
    char_here,
    is_blank,
    is_document_mark,
    move,
    move_by,
    place_here,
    skip_blanks,
    text_between,
)
from builder.rider.text.mistakes import stop_at, stop_here
from builder.rider.text.plain import folded_breaks

ESCAPES = {
    "0": "\x00",
    "a": "\x07",
    "b": "\x08",
    "t": "\t",
    "\t": "\t",
    "n": "\n",
    "v": "\x0b",
    "f": "\x0c",
    "r": "\r",
    "e": "\x1b",
    " ": " ",
    '"': '"',
    "/": "/",
    "\\": "\\",
    "N": "\x85",
    "_": "\xa0",
    "L": "\u2028",
    "P": "\u2029",
}
"""What a sign after a backslash stands for."""
NUMBERED = {"x": 2, "u": 4, "U": 8}
"""After these, so many digits of a character's number."""
HEX_DIGITS = "0123456789abcdef"
HALVES = (0xD800, 0xDFFF)
"""Numbers of halves of characters."""
LAST_CHARACTER = 0x10FFFF


def quoted_text(cursor: Cursor) -> str:
    """The text in the quotes that open at the cursor, which then stands behind them."""
    start = place_here(cursor)
    quote = char_here(cursor)
    parts: list[str] = []
    move(cursor)
    while not closes(cursor, quote) and not cursor["stopped"]:
        parts.append(part_of_quoted(cursor, quote, start))
    if not cursor["stopped"]:
        move(cursor)
    return "".join(parts)


def closes(cursor: Cursor, quote: str) -> bool:
    """Whether the closing quote stands here; two single ones are one within the text."""
    if char_here(cursor) != quote:
        return False
    return quote == '"' or char_after(cursor, 1) != quote


def part_of_quoted(cursor: Cursor, quote: str, start: Place) -> str:
    """The next character of the text, escape, blanks or line ends."""
    char = char_here(cursor)
    if char == END:
        stop_at(cursor, start, OPEN_QUOTE)
        return ""
    if char == quote:
        move_by(cursor, 2)
        return quote
    if char == "\\" and quote == '"':
        return escaped(cursor, start)
    if is_blank(char) or char == "\n":
        return gap_of_quoted(cursor, start)
    move(cursor)
    return char


def gap_of_quoted(cursor: Cursor, start: Place) -> str:
    """Blanks as they are; line ends folded, with the blanks about them left out."""
    first = cursor["at"]
    skip_blanks(cursor)
    if char_here(cursor) != "\n":
        return text_between(cursor, first, cursor["at"])
    return folded_breaks(line_ends(cursor, start))


def line_ends(cursor: Cursor, start: Place) -> int:
    """How many lines end here; the cursor goes to what stands first on the line after them."""
    count = 0
    while char_here(cursor) == "\n":
        move(cursor)
        count += 1
        if is_document_mark(cursor):
            stop_at(cursor, start, OPEN_QUOTE)
        skip_blanks(cursor)
    return count


def escaped(cursor: Cursor, start: Place) -> str:
    """What a backslash and the signs behind it stand for."""
    sign = char_after(cursor, 1)
    if sign == "\n":
        move(cursor)
        return "\n" * (line_ends(cursor, start) - 1)
    if sign in NUMBERED:
        return numbered(cursor, NUMBERED[sign])
    if sign not in ESCAPES:
        stop_here(cursor, BAD_ESCAPE)
        return ""
    move_by(cursor, 2)
    return ESCAPES[sign]


def numbered(cursor: Cursor, digits: int) -> str:
    """The character whose number is written in so many digits behind the backslash."""
    number = 0
    for place in range(digits):
        digit = -1
        if cursor["at"] + 2 + place < len(cursor["chars"]):
            digit = HEX_DIGITS.find(char_after(cursor, 2 + place).lower())
        if digit < 0:
            stop_here(cursor, BAD_ESCAPE)
            return ""
        number = number * 16 + digit
    if HALVES[0] <= number <= HALVES[1] or number > LAST_CHARACTER:
        stop_here(cursor, BAD_ESCAPE)
        return ""
    move_by(cursor, 2 + digits)
    return char_of(number)
