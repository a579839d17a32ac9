"""Which characters a rider may hold, and how its lines end."""

from builder.formulas.primitives import code_of
from builder.reading.values.sentences import fill

HIDDEN = (
    (0x00, 0x08),
    (0x0B, 0x1F),
    (0x7F, 0x9F),
    (0x2028, 0x2029),
    (0x202A, 0x202E),
    (0x2066, 0x2069),
    (0xD800, 0xDFFF),
    (0xE000, 0xE000),
    (0xFEFF, 0xFEFF),
    (0xFFFE, 0xFFFF),
)
"""
What a terminal or an editor would obey or hide: control characters, other line ends, byte-order
marks inside the text, marks that reverse the order of letters, halves of characters.
"""
BYTE_ORDER_MARK = "\ufeff"
HEX_DIGITS = "0123456789ABCDEF"
REASON = "has the control character U+{number}"


def with_plain_line_ends(text: str) -> str:
    """The text with one sign at each line's end and no byte-order mark in front."""
    return text.removeprefix(BYTE_ORDER_MARK).replace("\r\n", "\n").replace("\r", "\n")


def is_hidden(char: str) -> bool:
    """Whether a character hides what is written."""
    if " " <= char <= "~":
        return False
    code = code_of(char)
    return any(first <= code <= last for first, last in HIDDEN)


def hidden_character(text: str) -> str:
    """The first character of a text that hides what is written; empty where there is none."""
    for char in text:
        if is_hidden(char):
            return char
    return ""


def hidden_reason(char: str) -> str:
    """What is wrong with a hidden character."""
    return fill(REASON, {"number": hex_number(code_of(char))})


def hex_number(code: int) -> str:
    """A number with four digits of sixteen each, or more where it is larger."""
    digits = ""
    left = code
    while left > 0 or len(digits) < 4:
        digits = HEX_DIGITS[left % 16] + digits
        left = left // 16
    return digits
