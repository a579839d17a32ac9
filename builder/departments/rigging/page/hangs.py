"""
How hangs read on the rigging page: a line each, which opens.

Reads the pack; computes nothing.
"""

from collections.abc import Iterator

from builder.departments.rigging.page.beam_diagram import beam_diagram
from builder.departments.rigging.page.shown import caution_of, parts_of
from builder.document import Block, Folded, Heading, Paragraph, Picture
from builder.layout import anchor_of, facts_block, figures_block, item_table
from builder.pack import Item, Section

SIDE = (
    "Above each support what it carries, hoist not counted; in brackets the most it carries while"
    " another hoist is slack. Seen from downstage."
)


def hangs(section: Section) -> Iterator[Block]:
    """Everything that hangs when a show arrives."""
    found = section.of_kind("hang")
    if not found:
        return
    yield Heading(2, "What hangs already", "hangs")
    says = (
        "Each opens: side view, what each point carries, loads, trim, spans against the maker's"
        " table. In the lines, hoists are not counted."
    )
    yield Paragraph(f"{says} {caution_of(section)}")
    for hang in found:
        yield Folded(
            line_of(section, hang), tuple(of_hang(section, hang)), anchor=anchor_of(hang.key)
        )


def line_of(section: Section, hang: Item) -> str:
    """A hang in a line: its weight, its points with what each carries, its trim."""
    shares = ", ".join(
        f"{item.name} {item.text('share')}".rstrip() for item in parts_of(section, hang, "support")
    )
    trim = f"; trim {hang.text('trim')}" if hang.text("trim") else ""
    over = [item.name for item in parts_of(section, hang, "support") if is_over(section, item.name)]
    danger = f" – {' and '.join(over)} over the limit" if over else ""
    return f"{hang.name}{danger}: {hang.text('total') or 'weight not known'} on {shares}{trim}"


def is_over(section: Section, name: str) -> bool:
    """True where a point carries more than it may."""
    point = section.item("point", name)
    left = point.far_end("left") if point else None
    return left is not None and left < 0


def of_hang(section: Section, hang: Item) -> Iterator[Block]:
    """One hang in full."""
    yield figures_block([figure for figure in hang.figures if ".span-" not in figure.key])
    yield facts_block(hang)
    if diagram := beam_diagram(section, hang):
        yield Picture(
            hang.key,
            diagram[0],
            diagram[1],
            caption=f"{SIDE} {caution_of(section)}",
        )
    columns = ("hoist", "steel", "along", "share", "with-hoist", "one-slack", "uneven")
    yield item_table(
        parts_of(section, hang, "support"),
        columns,
        first="Point",
        summary=f"{hang.name}: supports. {caution_of(section)}",
    )
    yield item_table(
        parts_of(section, hang, "load"),
        ("by", "weight", "place"),
        first="Load",
        summary=f"{hang.name}: loads",
        elsewhere=("from", "to"),
    )
    if spans := [figure for figure in hang.figures if ".span-" in figure.key]:
        yield Paragraph("Each span against the maker's table, counted as a uniform load:")
        yield figures_block(spans)
