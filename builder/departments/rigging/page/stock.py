"""
Hoists and truss in stock, the wind plan, and how to submit a hang plan.

Reads the pack; computes nothing.
"""

from collections.abc import Iterator

from builder.document import Block, Caution, Folded, Heading
from builder.layout import facts_block, item_table
from builder.pack import Section


def stock(section: Section) -> Iterator[Block]:
    """Hoists and truss."""
    hoists, trusses, rows = (
        section.of_kind("hoist"),
        section.of_kind("truss"),
        section.of_kind("truss-row"),
    )
    none = section.item("whole")
    if hoists or trusses or none:
        yield Heading(2, "Hoists and truss", "stock")
    if none:
        yield facts_block(none)
    if hoists:
        yield item_table(
            hoists,
            ("count", "used", "free", "rating", "weight", "headroom", "chain", "control", "kept"),
            first="Hoist",
            summary="Hoists in stock",
        )
    if trusses:
        yield item_table(
            trusses,
            ("in_all", "used", "free", "sections", "height", "kept"),
            first="Truss",
            summary="Truss in stock",
        )
    if rows:
        table = item_table(
            rows, ("span", "uniform"), first="Truss", summary="Maker's table of uniform loads"
        )
        yield Folded("The maker's table", (table,), anchor="truss-table")
    if rails := section.of_kind("rail"):
        yield Heading(2, "Rails and balcony fronts", "rails")
        yield item_table(rails, ("load", "never_on_it"), first="Rail", summary="Rails")


def wind(section: Section) -> Iterator[Block]:
    """The site's own wind plan, and what the wind pushes at its steps."""
    steps, areas = section.of_kind("wind"), section.of_kind("wind-area")
    if steps or areas:
        yield Heading(2, "Wind", "wind")
        yield from (Caution(caution) for caution in section.cautions[1:])
    if steps:
        yield item_table(
            steps,
            ("at", "measured", "do", "comes_off", "takes", "sheet_says"),
            first="Step",
            summary="The site's wind plan",
        )
    if areas:
        yield item_table(
            areas,
            ("area", "coefficient", "alert", "lower", "clear", "roof-down"),
            first="Area",
            summary="What the wind pushes with",
        )


def held_down(section: Section) -> Iterator[Block]:
    """Ballast and guys, what one keeps clear of, and what it all stands on."""
    if found := section.of_kind("ballast"):
        yield Heading(2, "Ballast and guys", "ballast")
        columns = ("count", "weight", "lies", "keep_clear", "crosses")
        yield item_table(found, columns, first="What", summary="Ballast and guys")
    if item := section.item("base_pads"):
        yield Heading(2, "What it stands on", "base-pads")
        yield facts_block(item)


def submission(section: Section) -> Iterator[Block]:
    """How to submit a plan, or that nobody says."""
    if item := section.item("submission"):
        yield Heading(2, "Submit a hang plan", "submission")
        yield facts_block(item)
    if item := section.item("dynamic_factor"):
        yield Heading(2, "Starting and stopping", "dynamic")
        yield facts_block(item)
