"""The access page. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence

from builder.document import Block, Caution, Entry, Heading, Inline, Page, Paragraph, Tag
from builder.layout import (
    anchor_of,
    checked_line,
    facts_block,
    figures_block,
    item_table,
    photos,
    shown_fact,
    shown_figure,
    state,
    under_name,
    workings,
)
from builder.pack import Item, Pack, Section, Standing

DOCK_KEYS = (
    "trucks_at_once",
    "height",
    "door_width",
    "door_height",
    "leveller",
    "covered",
    "platform_width",
    "platform_depth",
    "truck_takes",
    "unload_2",
    "unload_4",
)
PASSAGE_KEYS = ("width", "height", "length", "slope", "steps", "weight_limit", "floor_load", "turn")
TABLES = (
    (
        "approach",
        "Approach",
        "Way",
        (
            "lowest_clearance",
            "narrowest",
            "longest_truck",
            "longest_trailer",
            "weight_limit",
            "slope",
            "hours",
            "backing",
        ),
    ),
    (
        "shuttle",
        "Shuttles from a distant yard",
        "From",
        ("for_whom", "distance", "count", "gross_weight", "trip", "order"),
    ),
    (
        "vehicle",
        "Forklifts and lifts",
        "What",
        (
            "kind",
            "count",
            "capacity",
            "load_centre",
            "capacity_at_fork_end",
            "lift_height",
            "driver",
            "on_deck",
            "kept",
        ),
    ),
    ("parking", "Parking", "For", ("count", "lies", "length", "distance", "overnight")),
    ("storage", "Room for empty cases", "Where", ("area", "distance")),
)


def pages(section: Section, _: Pack) -> Sequence[Page]:
    """One page: docks, the way in with its tightest opening, approach, machines, parking."""
    return (
        Page(
            "access",
            "Access",
            tuple(blocks(section)),
            summary="Docks, the way in and its tightest opening, forklifts, parking.",
        ),
    )


def blocks(section: Section) -> Iterator[Block]:
    """The page from top to bottom."""
    yield checked_line(section)
    if docks := section.of_kind("dock"):
        yield Heading(2, "Docks", "docks")
        yield item_table(docks, DOCK_KEYS, first="Dock", summary="Docks")
        yield from photos(docks)
    yield from (Caution(caution) for caution in section.cautions)
    for route in section.of_kind("route"):
        yield from route_blocks(section, route)
    if not section.of_kind("route"):
        yield Heading(2, "The way in", "way-in")
        yield Paragraph(
            [
                Tag("not stated", "plain"),
                (
                    " The house describes no way from the dock to the deck, so the tightest opening"
                    " is not known."
                ),
            ]
        )
    for kind, title, first, columns in TABLES:
        if found := section.of_kind(kind):
            yield Heading(2, title, f"{kind}s")
            yield item_table(found, columns, first=first, summary=title)
    if whole := section.item("whole"):
        yield Heading(2, "Also", "also")
        yield facts_block(whole)
    yield workings("Workings", [figure for item in section.items for figure in item.figures])


def route_blocks(section: Section, route: Item) -> Iterator[Block]:
    """One route: the tightest opening in large, then each passage in order."""
    yield Heading(2, route.name, anchor_of(route.key))
    way = f"From {route.text('from_dock')} to {route.text('to_place')}."
    yield Paragraph([way, *state(route), *under_name(route, ("from_dock", "to_place"))])
    if route.figures:
        yield figures_block(route.figures)
    passages = [item for item in section.of_kind("passage") if item.key.startswith(f"{route.key}.")]
    yield item_table(
        passages, PASSAGE_KEYS, first="In order", summary=f"Passages of {route.name}, in order"
    )


def headline(section: Section, _: Pack) -> Sequence[Entry]:
    """Docks and the tightest opening of the first route for the home page."""
    return answers(section)


def answers(section: Section) -> tuple[Entry, ...]:
    """The same from the section alone; where no way in is described, that is said."""
    docks = section.of_kind("dock")
    entries = (
        [
            Entry(
                "Dock",
                dock_words(docks[0]),
                small=docks[0].name,
                anchor=f"access#{anchor_of(docks[0].key)}",
            )
        ]
        if docks
        else []
    )
    routes = [route for route in section.of_kind("route") if route.text("tightest_width")]
    if routes:
        words = [
            *shown_figure(routes[0].figure("tightest_width")),
            " × ",
            *shown_figure(routes[0].figure("tightest_height")),
        ]
        entries.append(
            Entry(
                "Tightest opening",
                words,
                small=routes[0].name,
                anchor=f"access#{anchor_of(routes[0].key)}",
            )
        )
    elif docks and not section.of_kind("route"):
        entries.append(
            Entry("Tightest opening", [Tag("not stated", "plain")], anchor="access#way-in")
        )
    return tuple(entries)


def dock_words(dock: Item) -> list[Inline]:
    """How many trucks at once, and at what height."""
    height = dock.fact("height")
    if height and height.standing is Standing.NONE:
        return [*shown_fact(dock.fact("trucks_at_once")), " at once, unloading from the ground"]
    return [*shown_fact(dock.fact("trucks_at_once")), " at once, ", *shown_fact(height), " high"]
