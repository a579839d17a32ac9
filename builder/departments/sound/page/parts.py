"""What several of sound's pages are made of."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.document import Block, Heading, Paragraph
from builder.layout import facts_block, item_table
from builder.pack import Item, Section

Shown = tuple[str, str, str, tuple[str, ...]]


def noted(section: Section, kind: str, title: str, only: Sequence[str]) -> Iterator[Block]:
    """All facts of the one item of a kind, with its note."""
    item = section.item(kind)
    if item is None:
        return
    yield Heading(2, title, kind)
    if kind == "processor":
        yield Paragraph(item.name)
    yield facts_block(item, only=only)


def tables(section: Section, shown: Sequence[Shown]) -> Iterator[Block]:
    """Tables, each under its heading where the house has something to say."""
    for kind, title, first, columns in shown:
        if found := section.of_kind(kind):
            yield Heading(2, title, f"{kind}s")
            yield item_table(found, columns, first=first, summary=title, sortable=len(found) > 6)


def again(item: Item, part: str = "aim") -> Item:
    """
    The same item for a second table: its condition and note stand in the first, and so does what
    links point at.
    """
    key = f"{item.key}.{part}"
    facts = tuple(replace(fact, key=key + fact.key.removeprefix(item.key)) for fact in item.facts)
    figures = tuple(
        replace(figure, key=key + figure.key.removeprefix(item.key)) for figure in item.figures
    )
    return replace(
        item, key=key, facts=facts, figures=figures, note="", condition="", verified=None, out=0
    )
