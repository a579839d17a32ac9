"""
From bytes to text that is fit to read: UTF-8, of sensible size, without characters that hide what
is written.
"""

import re

from builder.reading.problems import Problem, Refused, Where

LARGEST_BYTES = 2 * 1024 * 1024
MOST_SHOWN = 20

# What a terminal or an editor would obey or hide: control characters, other line ends, byte-order
# marks inside the text, marks that reverse the order of letters, halves of characters. U+E000
# stands for a lone `?` while YAML is parsed, so it cannot be the author's.
UNFIT = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff\ue000\ufeff\ufffe\uffff]|\r(?!\n)"
)


def decode(raw: bytes, file: str) -> str:
    """
    The text of a file. UTF-8 only; a byte-order mark at the front is dropped, and lines end alike
    whatever wrote them, so that neither changes what is said.

    Raises
    ------
    Refused
        `too-big`, `not-text` or `control-character`.
    """
    if len(raw) > LARGEST_BYTES:
        raise Refused([too_big(file)])
    if (zero := raw.find(b"\0")) >= 0:
        raise Refused([_not_text(raw, zero, file, "is zero")])
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as wrong:
        # The codec counts from after the byte-order mark.
        start = wrong.start + (3 if raw.startswith(b"\xef\xbb\xbf") else 0)
        raise Refused([_not_text(raw, start, file, "does not belong to UTF-8")]) from None
    text = one_line_end(text)
    refuse_unfit(text, file)
    return text


def one_line_end(text: str) -> str:
    """The text with every line ended by a line feed, as some systems write two signs or another."""
    return text.replace("\r\n", "\n").replace("\r", "\n")


def refuse_unfit(text: str, file: str) -> None:
    """
    Pass text without characters that hide what is written.

    Raises
    ------
    Refused
        `control-character`, for the first twenty.
    """
    problems = []
    for found in UNFIT.finditer(text):
        problems.append(unfit(found[0], _where(text, found.start(), file), ""))
        if len(problems) == MOST_SHOWN:
            break
    if problems:
        raise Refused(problems)


def unfit(character: str, where: Where, path: str) -> Problem:
    """A character that cannot stand in a description."""
    reason = f"has the control character U+{ord(character):04X}"
    return Problem(
        where,
        path,
        "",
        reason,
        "control-character",
        "delete it; an editor that shows hidden characters helps to find it",
    )


def too_big(file: str) -> Problem:
    """A file beyond the limit."""
    return Problem(
        Where(file),
        "",
        "",
        "is larger than 2 MiB",
        "too-big",
        "a description is a few pages; keep pictures and drawings in files of their own",
    )


def _not_text(raw: bytes, position: int, file: str, why: str) -> Problem:
    before = one_line_end(raw[:position].decode("utf-8-sig", "replace"))
    where = Where(file, before.count("\n") + 1, len(before) - before.rfind("\n"))
    return Problem(
        where,
        "",
        "",
        f"is not text: byte {position:,} {why}",
        "not-text",
        "save it as plain text in UTF-8",
    )


def _where(text: str, position: int, file: str) -> Where:
    return Where(file, text.count("\n", 0, position) + 1, position - text.rfind("\n", 0, position))
