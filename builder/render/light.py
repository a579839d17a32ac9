"""
Headings, paragraphs and lists as Markdown that people also read as it is: only what Markdown would
act on is escaped.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from builder.document import Bullets, Heading, Markup, Paragraph
from builder.render.escaping import visible
from builder.render.markup import joined, markup

# Marks that begin emphasis, code, links, tables, HTML or entities, and what some readers turn into
# a link without any mark.
ACTIVE = re.compile(
    r"[\\`*_{}\[\]<>#|&~$^=]|:(?=//)|(?<=www)\.|@|^[-+]|^\d+(?=[.)](?:\s|$))", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Grid:
    """A table of plain text."""

    columns: Sequence[str]
    rows: Sequence[Sequence[str]]


def light_markdown(blocks: Sequence[Heading | Paragraph | Bullets | Grid]) -> str:
    """
    The blocks as Markdown, a blank line between them.

    Raises
    ------
    ValueError
        If a block's words are not plain text.
    """
    return "\n\n".join(light(block) for block in blocks) + "\n"


def light(block: Heading | Paragraph | Bullets | Grid) -> Markup:
    """One block."""
    match block:
        case Heading(level, text):
            return markup("{} {}", Markup("#" * level), harmless(text))
        case Paragraph(words):
            return harmless(words)
        case Bullets(entries):
            return joined((markup("* {}", harmless(entry)) for entry in entries), "\n")
        case Grid(columns, rows):
            rule = markup("|{}", Markup("---|" * len(columns)))
            return joined((row(columns), rule, *(row(cells) for cells in rows)), "\n")


def row(cells: Sequence[str]) -> Markup:
    """One row of a table."""
    return markup("|{}", joined(markup(" {} |", harmless(cell)) for cell in cells))


def harmless(words: object) -> Markup:
    """Text in which nothing is markup."""
    if not isinstance(words, str):
        raise ValueError(f"words must be plain text, got {type(words).__name__}")
    return Markup(ACTIVE.sub(lambda found: f"&#{ord(found[0][0])};{found[0][1:]}", visible(words)))
