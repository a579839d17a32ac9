"""
Headings, paragraphs and lists as Markdown that people also read as it is: only what Markdown would
act on is escaped.
"""

import re
from collections.abc import Sequence

from builder.document import Bullets, Heading, Paragraph
from builder.render.escaping import visible

# Marks that begin emphasis, code, links, tables, HTML or entities, and what some readers turn into
# a link without any mark.
ACTIVE = re.compile(
    r"[\\`*_{}\[\]<>#|&~$^=]|:(?=//)|(?<=www)\.|@|^[-+]|^\d+(?=[.)](?:\s|$))", re.IGNORECASE
)


def light_markdown(blocks: Sequence[Heading | Paragraph | Bullets]) -> str:
    """
    The blocks as Markdown, a blank line between them.

    Raises
    ------
    ValueError
        If a block's words are not plain text.
    """
    return "\n\n".join(light(block) for block in blocks) + "\n"


def light(block: Heading | Paragraph | Bullets) -> str:
    """One block."""
    match block:
        case Heading(level, text):
            return f"{'#' * level} {harmless(text)}"
        case Paragraph(words):
            return harmless(words)
        case Bullets(entries):
            return "\n".join(f"* {harmless(entry)}" for entry in entries)


def harmless(words: object) -> str:
    """Text in which nothing is markup."""
    if not isinstance(words, str):
        raise ValueError(f"words must be plain text, got {type(words).__name__}")
    return ACTIVE.sub(lambda found: f"&#{ord(found[0][0])};{found[0][1:]}", visible(words))
