"""
What the search finds: every row of a table, every fact and every part of a page, so that a name
leads to its own line.
"""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import takewhile

from builder.document import (
    Block,
    Bullets,
    Caution,
    Document,
    Entry,
    Facts,
    Folded,
    Heading,
    Page,
    Paragraph,
    Row,
    Small,
    Table,
    Tag,
    Words,
)
from builder.render.escaping import visible
from builder.render.inline import said
from builder.render.references import id_of, ids_on
from builder.site.aliases import ALIASES

ENTRIES = "assets/search/entries.js"
WEIGHTS: Mapping[str, float] = {
    "index": 0.5,
    "findings": 0.6,
    "changes": 0.4,
    "workings": 0.15,
    "glossary": 0.2,
}
"""
How much a page that repeats what others say weighs against them; a department's page weighs 1.
"""
GUIDE_WEIGHT = 0.12
NOTHING = "–"
"""What a cell shows that nobody filled."""
EVERY_PAGE = Caution("").title
"""
The title of the caution that stands beside every figure: whoever searches for a thing does not
search for this.
"""


@dataclass(frozen=True, slots=True)
class Found:
    """
    One line of the search: where it is on its page, its name, what it stands ``under``, what it
    says; ``folded`` away or in sight. Plain text.
    """

    anchor: str
    name: str
    under: str
    text: str
    folded: bool = False


@dataclass(frozen=True, slots=True)
class Searched:
    """
    A page with its lines; ``weight`` is 1 for the pack's own facts and less for what repeats or
    explains them.
    """

    address: str
    title: str
    weight: float
    lines: tuple[Found, ...]


def searched(document: Document) -> tuple[Searched, ...]:
    """Each page of a document as the search knows it."""
    return tuple(
        Searched(f"{page.key}.html", page.title, weight_of(page.key), tuple(page_lines(page)))
        for page in document.pages
    )


def weight_of(key: str) -> float:
    """How much a page weighs; the workings of a space as those of the house."""
    return WEIGHTS.get(key if key in WEIGHTS else key.rpartition("-")[2], 1)


def entries_script(pages: Sequence[Searched]) -> str:
    """
    What the search knows as a script, for a page in a folder cannot fetch a file.

    No text can end it early.
    """
    lines = [
        [
            number,
            line.anchor,
            visible(line.name),
            visible(line.under),
            visible(line.text),
            int(line.folded),
        ]
        for number, page in enumerate(pages)
        for line in page.lines
    ]
    known = {
        "pages": [[page.address, visible(page.title), page.weight] for page in pages],
        "lines": lines,
        "aliases": ALIASES,
    }
    text = json.dumps(known, ensure_ascii=True, sort_keys=True, separators=(",", ":")).replace(
        "<", chr(92) + "u003c"
    )
    return f"Object.assign(window.housesearch, {text});\n"


def page_lines(page: Page) -> Iterator[Found]:
    """The page itself, then its lines and parts from top to bottom, each with its id."""
    top, ids = Heading(2, page.title), ids_on(page)
    for line in merged((part_of(top, page.summary), *parts(page.blocks, top))):
        yield replace(line, anchor=id_of(line.anchor, ids))


def merged(found: Iterable[Found]) -> Iterator[Found]:
    """
    Lines as they come; all running text of one part of the page is one line, where the part begins.
    """
    lines: dict[object, Found] = {}
    for number, line in enumerate(found):
        place = number if line.under else (line.anchor, line.name)
        held = lines.get(place)
        lines[place] = (
            Found(line.anchor, line.name, line.under, f"{held.text} {line.text}".strip())
            if held
            else line
        )
    yield from lines.values()


def parts(blocks: Sequence[Block], under: Heading) -> Iterator[Found]:
    """
    The lines of some blocks; what has no anchor of its own leads to the heading ``under`` which it
    stands.
    """
    for block in blocks:
        match block:
            case Heading():
                under = block
                yield part_of(under, "")
            case Table():
                yield from (row_line(row, block, under) for row in block.rows)
            case Facts():
                yield from (
                    Found(
                        entry.anchor or under.anchor,
                        entry.label,
                        under.text,
                        fact_text(entry),
                    )
                    for entry in block.entries
                )
            case Folded():
                yield from folded(block, under)
            case Paragraph():
                yield part_of(under, said(block.words))
            case Caution() if block.title != EVERY_PAGE:
                yield part_of(under, f"{block.title}. {said(block.words)}")
            case Bullets():
                yield from (part_of(under, said(entry)) for entry in block.entries)
            case _:
                pass


def folded(block: Folded, under: Heading) -> Iterator[Found]:
    """
    What is folded: its title, and of what it holds each line that has a place of its own.

    A working is read, not searched for.
    """
    name, _, rest = block.title.partition(": ")
    within = Heading(3, name, block.anchor or under.anchor)
    yield Found(within.anchor, name, under.text, rest)
    yield from (
        replace(line, folded=True)
        for line in parts(block.blocks, within)
        if line.anchor and line.anchor != within.anchor
    )


def part_of(under: Heading, text: str) -> Found:
    """Running text as a line of its own part of the page."""
    return Found(under.anchor, under.text, "", text)


def row_line(row: Row, table: Table, under: Heading) -> Found:
    """One row of a table."""
    return Found(
        row.anchor or under.anchor,
        name_of(row.cells[0]),
        under.text,
        row_text(row, table),
    )


def name_of(words: Words) -> str:
    """What a row is called: its first cell up to the small print and the tags."""
    pieces = (words,) if isinstance(words, str) else words
    return said(
        tuple(takewhile(lambda piece: not isinstance(piece, Small | Tag), pieces))
    ).strip() or said(words)


def row_text(row: Row, table: Table) -> str:
    """What a row says: the small print beside its name, then each cell after its column's name."""
    first, *others = (said(cell) for cell in row.cells)
    beside = first.removeprefix(name_of(row.cells[0])).strip()
    cells = (
        f"{column}: {text}"
        for column, text in zip(table.columns[1:], others, strict=True)
        if text != NOTHING
    )
    return "; ".join((*((beside,) if beside else ()), *cells))


def fact_text(entry: Entry) -> str:
    """What a fact says."""
    return f"{said(entry.words)} {said(entry.small)}".strip()
