"""The tables of points, beams, zones and exceptions. Reads the pack; computes nothing."""

from collections.abc import Iterator

from builder.document import (
    Block,
    Folded,
    Heading,
    Inline,
    Paragraph,
    Row,
    Small,
    Table,
    Tag,
    Words,
)
from builder.layout import anchor_of, item_table, name_cell, shown_fact, shown_figure
from builder.pack import Figure, Item, Section

POINT_COLUMNS = (
    "Point",
    "Left",
    "Bound by",
    "Carried",
    "May carry",
    "Low steel",
    "Across",
    "Depth",
    "Beam",
    "Hung there",
    "Worst if uneven",
)


IN_CELLS = ("at.across", "at.depth", "across", "depth", "beam", "rating")
"""The facts of a point that its row shows; a rating of its own is what it may carry."""


def points(section: Section) -> Iterator[Block]:
    """The point table."""
    found = section.of_kind("point")
    if not found:
        return
    yield Heading(2, "Points", "points")
    yield Paragraph(
        "Left is for one point alone, all else staying as it is: what one point takes, its beam,"
        " zone and roof lose. Where it says from and to, the lower number is what is left while the"
        " hoists of the house's own hangs are not as planned: count on that one."
    )
    yield Table(
        POINT_COLUMNS,
        [point_row(item) for item in found],
        summary="Points",
        numeric=(1, 3, 4, 5, 6, 7, 10),
        sortable=True,
    )


def point_row(item: Item) -> Row:
    """One point."""
    left, carried = item.far_end("left"), item.figure("carried")
    over: list[Inline] = [Tag("over", "danger")] if left is not None and left < 0 else []
    cells: list[Words] = [
        name_cell(item, IN_CELLS, head=[item.name, *over]),
        left_cell(item),
        item.text("binds") or "–",
        shown_figure(carried),
        limit_cell(item),
    ]
    cells += [
        shown_figure(item.figure("low-steel")),
        shown_fact(item.fact("at.across")),
        shown_fact(item.fact("at.depth")),
        item.text("beam"),
    ]
    cells += [(carried.note if carried else "") or "–", worst_cell(item.figure("worst"))]
    order = (
        None,
        left,
        None,
        *(item.number(name) for name in ("carried", "limit", "low-steel", "at.across", "at.depth")),
        None,
        None,
        item.number("worst"),
    )
    return Row(cells, anchor=anchor_of(item.key), order=order)


def left_cell(item: Item) -> list[Inline]:
    """
    What is left, or a dash where the point is not to be counted on: its state or its limit say why.
    """
    left, carried = item.figure("left"), item.figure("carried")
    known = carried is not None and carried.value is not None
    return ["–"] if left is None or (left.value is None and known) else shown_figure(left)


def limit_cell(item: Item) -> list[Inline]:
    """The limit of a point, or which kind of absence it is."""
    figure = item.figure("limit")
    if figure is None or figure.value is not None:
        return shown_figure(figure)
    return [Tag(figure.missing[0].removeprefix("a limit: "), "note")]


def worst_cell(figure: Figure | None) -> list[Inline]:
    """The worst case with what makes it, or what it lacks; a dash where nothing can be uneven."""
    if figure is None:
        return ["–"]
    cell = shown_figure(figure)
    return [*cell, " ", Small(figure.note)] if figure.note else cell


GROUP_COLUMNS = (
    "points",
    "count",
    "limit",
    "left",
    "place",
    "beams",
    "anywhere",
    "centres",
    "spacing_at_least",
    "low_steel",
    "each_point",
)


def points_by_rule(section: Section) -> Iterator[Block]:
    """Points that are told by a rule, and what holds for a point on a beam without any."""
    found = section.of_kind("point-group")
    if found:
        yield Heading(2, "Points by rule", "points-by-rule")
        yield Paragraph(
            "Where each of them is, nobody has written: a show's spots are judged by the rule."
            " Left is for one alone; what it takes, its beam, zone and roof lose."
        )
        yield item_table(
            found, GROUP_COLUMNS, first="Points", summary="Points told by a rule, not one by one"
        )


LIMIT_COLUMNS = (
    "limit",
    "carried",
    "worst",
    "left",
    "lowest-steel",
    "highest-steel",
    "each-point",
    "point-left",
    "room",
    "runs",
    "across",
    "depth",
    "underside",
    "use",
    "access",
    "beams",
    "points",
)


def limits(section: Section) -> Iterator[Block]:
    """Beams, zones, exceptions."""
    yield Heading(2, "Beams, zones, exceptions", "limits")
    for kind, title in (("zone", "Zone"), ("beam", "Beam")):
        if found := section.of_kind(kind):
            yield item_table(
                found,
                LIMIT_COLUMNS,
                first=title,
                summary=f"{title}s: what they may carry, carry, and have left",
            )
    if found := section.of_kind("low-steel"):
        heights = item_table(
            found,
            ("across", "depth", "height"),
            first="Beam",
            summary="Height of the steel along each beam",
        )
        yield Folded("Low steel along each beam", (heights,), anchor="low-steel")
    if found := section.of_kind("exception"):
        yield item_table(
            found,
            ("each_beam", "each_point"),
            first="Where",
            summary="Exceptions to the general limits",
        )
    if found := section.of_kind("by"):
        yield item_table(
            found, ("weight",), first="Hung by", summary="What hangs already, by who hung it"
        )
