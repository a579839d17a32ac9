"""How bridles read on the rigging page: standing ones, and spots that points make. Reads the pack; computes nothing."""

from collections.abc import Iterator

from builder.departments.rigging.shown import caution_of
from builder.document import Block, Heading, Paragraph, Small
from builder.layout import anchor_of, facts_block, figures_block, item_table
from builder.pack import Section


def bridles(section: Section) -> Iterator[Block]:
    """Standing bridles, wanted spots, and the steels to make legs of."""
    standing, wanted = section.of_kind("bridle"), section.of_kind("wanted-spot")
    if standing:
        yield Heading(2, "Standing bridles", "bridles")
        for bridle in standing:
            yield Heading(3, bridle.name, anchor_of(bridle.key))
            yield facts_block(bridle)
            yield figures_block(bridle.figures)
    if wanted:
        yield Heading(2, "Spots between points", "wanted-spots")
        yield Paragraph(["Nothing hangs there yet. Points that make each spot, with all else staying up. ", Small(caution_of(section))])
        for spot in wanted:
            yield Heading(3, spot.name, anchor_of(spot.key))
            yield facts_block(spot)
            yield figures_block(spot.figures)
    if steels := section.of_kind("steel"):
        yield Heading(3, "Steels in stock", "steels")
        yield item_table(steels, ("count", "length", "rating"), first="Steel", summary="Steels in stock")
