"""
How bridles read on the rigging page: standing ones, and spots that points make, a line each.

Reads the pack; computes nothing.
"""

from collections.abc import Iterator

from builder.departments.rigging.page.shown import caution_of
from builder.document import Block, Folded, Heading, Paragraph
from builder.layout import anchor_of, facts_block, figures_block, item_table
from builder.pack import Item, Section


def bridles(section: Section) -> Iterator[Block]:
    """Standing bridles, wanted spots, and the steels to make legs of."""
    standing, wanted = section.of_kind("bridle"), section.of_kind("wanted-spot")
    if standing:
        yield Heading(2, "Standing bridles", "bridles")
        yield from (opened(bridle, bridle_line(bridle)) for bridle in standing)
    if wanted:
        yield Heading(2, "Spots between points", "wanted-spots")
        yield Paragraph(
            "Nothing hangs there yet. Which points make each spot, with all else staying up."
            f" {caution_of(section)}"
        )
        yield from (opened(spot, spot_line(spot)) for spot in wanted)
    if steels := section.of_kind("steel"):
        table = item_table(
            steels, ("count", "length", "rating", "kept"), first="Steel", summary="Steels in stock"
        )
        yield Folded("Steels in stock", (table,), anchor="steels")


def opened(item: Item, line: str) -> Folded:
    """A bridle or a spot behind its line."""
    return Folded(
        line, (facts_block(item), figures_block(item.figures)), anchor=anchor_of(item.key)
    )


def bridle_line(item: Item) -> str:
    """A standing bridle in a line."""
    angle = f", legs {item.text('angle')} apart" if item.text("angle") else ", pulls not known"
    return f"{item.name}: {item.text('load')} on {item.text('legs')}{angle}"


def spot_line(item: Item) -> str:
    """A wanted spot in a line."""
    made, head = item.text("points"), f"{item.name}: {item.text('load')}"
    return (
        f"{head} by {made}, legs {item.text('angle')} apart"
        if made
        else f"{head}, no points make it"
    )
