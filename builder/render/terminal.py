"""
Text for a terminal: long lines broken between words, so that the eye finds where each begins.

No colour carries a meaning.
"""

import re
from textwrap import wrap

NARROW = 79
"""Columns of a terminal that is left as it opens."""


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
