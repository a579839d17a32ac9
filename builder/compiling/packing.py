"""What is left out of a script that pages load: what means nothing to a browser."""

import re

TEXT = re.compile(r'("(?:[^"\\]|\\.)*")')
COMMENT = re.compile(r"^ *//.*\n", re.MULTILINE)
INDENTATION = re.compile(r"^ +", re.MULTILINE)
AROUND = re.compile(r" *([=*/<>?:,;{}()\[\]&|]) *")
"""Signs that need no space beside them. Two signs of plus or minus in a row would be another."""
LINE_END = re.compile(r"(?<=[;{,(\[])\n")
"""A line end after a sign that goes on by itself."""


def without_spaces(script: str) -> str:
    """
    A script that the compiler wrote, without spaces and line ends outside its texts that mean
    nothing.
    """
    parts = TEXT.split(INDENTATION.sub("", script))
    return "".join(
        part if place % 2 == 1 else LINE_END.sub("", AROUND.sub(r"\1", part))
        for place, part in enumerate(parts)
    )


def without_comments(script: str) -> str:
    """A script without the lines that are comments; ours have no text of several lines."""
    return COMMENT.sub("", script)


def as_loaded(script: str) -> str:
    """A script that was written by hand as pages load it: without comments and indentation."""
    return INDENTATION.sub("", without_comments(script))
