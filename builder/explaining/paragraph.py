"""What an explanation is made of."""

import re
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Words that may be broken over lines, or an example that may not; indented."""

    text: str
    indent: int = 2
    is_example: bool = False


def plain(markdown: str) -> str:
    """Our own Markdown as words on one line: a link by its words, a code without its marks."""
    linked = re.sub(r"\[([^]]+)\]\([^)]*\)", r"\1", " ".join(markdown.split()))
    return re.sub(r"\*\*?([^*]+)\*\*?", r"\1", linked).replace("`", "")


def spelt(word: str) -> str:
    """A word however it is spelt: ``Clear_Height``, ``clear height`` and ``clear-height``."""
    return " ".join(re.sub(r"[_\-\s]+", " ", word.casefold()).split())
