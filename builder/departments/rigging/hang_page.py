"""How hangs and bridles read on the rigging page. Reads the pack; computes nothing."""

from collections.abc import Iterator

from builder.departments.rigging.beam_diagram import beam_diagram
from builder.departments.rigging.shown import caution_of, parts_of
from builder.document import Block, Heading, Paragraph, Picture
from builder.layout import anchor_of, facts_block, figures_block, item_table
from builder.pack import Section

SIDE = "Above each support what it carries, hoist not counted; in brackets the most it carries while another hoist is slack. Seen from downstage."


def hangs(section: Section) -> Iterator[Block]:
    """Everything that hangs when a show arrives."""
    found = section.of_kind("hang")
    if not found:
        return
    yield Heading(2, "What hangs already", "hangs")
    for hang in found:
        yield Heading(3, hang.name, anchor_of(hang.key))
        yield figures_block([figure for figure in hang.figures if ".span-" not in figure.key])
        yield facts_block(hang, only=("truss", "trim", "weight", "weight_in_all", "stiffness"))
        if diagram := beam_diagram(section, hang):
            yield Picture(hang.key.replace(".", "-"), diagram[0], diagram[1], caption=f"{SIDE} {caution_of(section)}")
        columns = ("hoist", "along", "share", "with-hoist", "one-slack", "uneven")
        yield item_table(parts_of(section, hang, "support"), columns, first="Point", summary=f"{hang.name}: supports. {caution_of(section)}")
        yield item_table(parts_of(section, hang, "load"), ("by", "weight", "place"), first="Load", summary=f"{hang.name}: loads")
        spans = [figure for figure in hang.figures if ".span-" in figure.key]
        if spans:
            yield Paragraph("Each span against the maker's table, counted as a uniform load:")
            yield figures_block(spans)
