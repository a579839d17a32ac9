"""
What the demo's pages read like, in plain text, kept in ``tests/golden/``.

A slip of two per cent in a figure, a lost caution or a changed label shows in review. After a
change that is meant, run ``HOUSEPACK_GOLDEN=write python -m pytest tests/test_golden.py`` and read
the difference before committing it.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest

from builder.document import (
    Block,
    Bullets,
    Caution,
    Day,
    Document,
    Entry,
    Facts,
    Folded,
    Heading,
    Headline,
    Link,
    Page,
    Paragraph,
    Photo,
    Picture,
    Small,
    Strong,
    Table,
    Tag,
    Words,
)
from builder.files import published
from builder.registry import DEPARTMENTS
from tests.golden_files import held

ROOT = Path(__file__).parent.parent
PAGES = ("index", *(department.key for department in DEPARTMENTS), "findings")


@pytest.fixture(scope="module")
def document() -> Document:
    """The demo's document."""
    return published(ROOT / "venue")


@pytest.mark.parametrize("key", PAGES)
def test_a_page_reads_as_it_did(document: Document, key: str) -> None:
    text = (
        "\n".join(line for page in document.pages if page.key == key for line in page_lines(page))
        + "\n"
    )
    held(f"{key}.txt", text)


def page_lines(page: Page) -> Iterator[str]:
    """A page as lines of plain text."""
    yield page.title
    for block in page.blocks:
        yield from block_lines(block)


def block_lines(block: Block) -> Iterator[str]:
    """One block as lines of plain text. Every kind of block is told, so none can be lost unseen."""
    match block:
        case Heading():
            yield from ("", f"{'#' * block.level} {block.text}")
        case Paragraph():
            yield words(block.words)
        case Bullets():
            yield from (f"- {words(entry)}" for entry in block.entries)
        case Facts() | Headline():
            yield from (entry_line(entry) for entry in block.entries)
        case Table():
            yield " | ".join(block.columns)
            yield from (" | ".join(words(cell) for cell in row.cells) for row in block.rows)
        case Caution():
            yield f"[{block.tone}: {block.title}] {words(block.words)}"
        case Picture():
            yield f"(drawing) {block.alt} {block.caption}".rstrip()
        case Photo():
            yield f"(photo) {block.alt}"
        case Folded():
            yield f"> {block.title}"
            yield from (f"  {line}" for inner in block.blocks for line in block_lines(inner))


def entry_line(entry: Entry) -> str:
    """A label, its value, and what qualifies it."""
    small = words(entry.small)
    return f"{entry.label}: {words(entry.words)}" + (f" ({small})" if small else "")


def words(given: Words) -> str:
    """Inline pieces as plain text."""
    if isinstance(given, str):
        return given
    return "".join(piece(part) for part in given).strip()


def piece(part: str | Link | Strong | Small | Tag | Day) -> str:
    """One inline piece as plain text."""
    match part:
        case str():
            return part
        case Small():
            return f" ({part.text})"
        case Tag():
            return f" [{part.text}] "
        case Day():
            return part.on
        case _:
            return part.text
