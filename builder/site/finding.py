"""What the search finds besides headings: every row of a table and every fact that has an anchor, so that a name leads to its own line."""

from collections.abc import Iterator, Sequence
from itertools import takewhile

from builder.document import Block, Document, Entry, Facts, Folded, Heading, Row, Small, Table, Tag, Words
from builder.render.escaping import plain_html, slug
from builder.render.inline import said

Found = dict[str, str]


def line_entries(document: Document) -> Iterator[Found]:
    """An entry of the search index for each line: where it is, its name, what it says. Title and text are HTML, escaped."""
    for page in document.pages:
        for anchor, title, text in lines(page.blocks):
            yield {"location": f"{page.key}.html#{slug(anchor)}", "title": plain_html(title), "text": plain_html(text)}


def lines(blocks: Sequence[Block], under: str = "") -> Iterator[tuple[str, str, str]]:
    """Anchor, name and text of each line that has an anchor. The text begins with the heading ``under`` which it stands."""
    for block in blocks:
        match block:
            case Heading():
                under = block.text
            case Table():
                yield from ((row.anchor, name_of(row.cells[0]), told(under, row_text(row, block))) for row in block.rows if row.anchor)
            case Facts():
                yield from ((entry.anchor, entry.label, told(under, fact_text(entry))) for entry in block.entries if entry.anchor)
            case Folded():
                yield from lines(block.blocks, block.title)
            case _:
                pass


def name_of(words: Words) -> str:
    """What a row is called: its first cell up to the small print and the tags."""
    pieces = (words,) if isinstance(words, str) else words
    return said(tuple(takewhile(lambda piece: not isinstance(piece, Small | Tag), pieces))).strip() or said(words)


def row_text(row: Row, table: Table) -> str:
    """What a row says: the small print beside its name, then each cell after its column's name."""
    first, *others = (said(cell) for cell in row.cells)
    beside = first.removeprefix(name_of(row.cells[0])).strip()
    cells = (f"{column}: {text}" for column, text in zip(table.columns[1:], others, strict=True))
    return "; ".join((*((beside,) if beside else ()), *cells))


def fact_text(entry: Entry) -> str:
    """What a fact says."""
    return f"{said(entry.words)} {said(entry.small)}".strip()


def told(under: str, text: str) -> str:
    """A text after the heading it stands under."""
    return f"{under}. {text}" if under else text
