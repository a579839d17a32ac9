"""What the search finds besides headings: every row of a table and every fact that has an anchor, so that a name leads to its own line."""

from collections.abc import Iterator, Sequence

from builder.document import Block, Document, Facts, Folded, Table
from builder.render.escaping import plain_html, slug
from builder.render.inline import said

Found = dict[str, str]


def line_entries(document: Document) -> Iterator[Found]:
    """An entry of the search index for each line: where it is, its name, what it says. Title and text are HTML, escaped."""
    for page in document.pages:
        for anchor, title, text in lines(page.blocks):
            yield {"location": f"{page.key}.html#{slug(anchor)}", "title": plain_html(title), "text": plain_html(text)}


def lines(blocks: Sequence[Block]) -> Iterator[tuple[str, str, str]]:
    """Anchor, name and text of each line that has an anchor."""
    for block in blocks:
        match block:
            case Table():
                for row in block.rows:
                    if row.anchor:
                        first, *others = (said(cell) for cell in row.cells)
                        yield row.anchor, first, "; ".join(f"{column}: {text}" for column, text in zip(block.columns[1:], others, strict=True))
            case Facts():
                yield from ((entry.anchor, entry.label, f"{said(entry.words)} {said(entry.small)}") for entry in block.entries if entry.anchor)
            case Folded():
                yield from lines(block.blocks)
            case _:
                pass
