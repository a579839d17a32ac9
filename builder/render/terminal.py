"""
Text for a terminal: long lines broken between words, so that the eye finds where each begins.

No colour carries a meaning.
"""

import re
from textwrap import wrap

from builder.render.escaping import coded, is_hidden

NARROW = 79
"""Columns of a terminal that is left as it opens."""


LINE_ENDS = re.compile(r"(\r?\n|\t)")


def obeyed_by_no_terminal(text: str) -> str:
    """
    The text with every sign that a terminal would obey, or a reader not see, as its code.

    What somebody else wrote into a pack or a rider must not move the cursor, change colours or hide
    a line.
    """
    return "".join(
        part if part.isprintable() or LINE_ENDS.fullmatch(part) else "".join(map(coded, part))
        for part in LINE_ENDS.split(text)
    )


def json_for_a_terminal(text: str) -> str:
    """The same for JSON, which still says what it said: such signs stand as JSON's own escapes."""
    return "\n".join(
        line
        if line.isprintable()
        else "".join(escaped_in_json(char) if is_hidden(char) else char for char in line)
        for line in text.split("\n")
    )


def escaped_in_json(char: str) -> str:
    """A character as JSON writes it in ASCII."""
    units = char.encode("utf-16-be", "surrogatepass")
    return "".join(
        f"\\u{int.from_bytes(units[start : start + 2]):04x}" for start in range(0, len(units), 2)
    )


def folded(words: str, indent: str = "", hanging: str = "", *, columns: int = NARROW) -> list[str]:
    """A long line over several, the later ones set in; a number stays with its unit."""
    bound = re.sub(r"(?<=\d) (?=\w)", "\xa0", words).replace(" / ", "\xa0/\xa0")
    lines = wrap(
        bound,
        columns,
        initial_indent=indent,
        subsequent_indent=indent + hanging,
        break_long_words=False,
        break_on_hyphens=False,
    )
    return [line.replace("\xa0", " ") for line in lines]


def hung(words: str, indent: int = 0) -> str:
    """A paragraph of 80 columns, its first line indented by so many and the rest by four more."""
    return "\n".join(folded(words, " " * indent, " " * 4))
