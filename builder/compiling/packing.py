"""What is left out of a script that pages load: what means nothing to a browser."""

import re

TEXT = re.compile(r'("(?:[^"\\]|\\.)*")')
COMMENT = re.compile(r"^ *//.*\n", re.MULTILINE)
INDENTATION = re.compile(r"^ +", re.MULTILINE)
AROUND = re.compile(r" *([=*/<>?:,;{}()\[\]&|]) *")
"""Signs that need no space beside them. Two signs of plus or minus in a row would be another."""


def without_spaces(script: str) -> str:
    """A script that the compiler wrote, without spaces outside its texts; line ends stay."""
    parts = TEXT.split(INDENTATION.sub("", script))
    return "".join(
        part if place % 2 == 1 else AROUND.sub(r"\1", part) for place, part in enumerate(parts)
    )


def without_comments(script: str) -> str:
    """A script without the lines that are comments; ours have no text of several lines."""
    return COMMENT.sub("", script)


def as_loaded(script: str) -> str:
    """A script that was written by hand as pages load it: without comments and indentation."""
    return INDENTATION.sub("", without_comments(script))
