"""The stage's page. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence

from builder.departments.stage.drawing import stage_plan
from builder.document import Block, Caution, Entry, Heading, Page, Picture
from builder.layout import (
    anchor_of,
    checked_line,
    facts_block,
    item_table,
    name_of,
    shown_fact,
    workings,
)
from builder.pack import Item, Pack, Section

DECK_KEYS = (
    "area",
    "usable_width",
    "usable_depth",
    "height",
    "clear_height",
    "clear-under-rig",
    "load",
    "point_load",
)
TABLES = (
    (
        "wing",
        "Wings",
        "Side",
        ("width", "depth", "level_with_deck", "below_deck", "clear_height", "load"),
    ),
    ("zone", "Zones that differ", "Zone", ("load", "point_load")),
    ("obstruction", "In the way", "What", ("area", "width", "depth", "from_height")),
    (
        "lift",
        "Lifts in the floor",
        "Lift",
        ("kind", "width", "depth", "load_moving", "load_locked", "speed", "persons", "stops"),
    ),
    ("distance", "Distances", "From one line to another", ("length", "at")),
    (
        "riser",
        "Risers and decks",
        "What",
        ("count", "width", "depth", "heights", "rolling", "area", "kept"),
    ),
    ("furnishing", "Steps, barrier, drapes", "What", ("count", "size", "length", "kept")),
    (
        "place",
        "Places",
        "Place",
        ("area", "row", "at.across", "at.depth", "at.height", "width", "depth"),
    ),
    ("chain", "Distances in a row", "What", ("parts", "whole")),
)
IN_NAME = {"distance": ("from", "to")}
"""What the name of a line tells already, by kind."""


def pages(section: Section, _: Pack) -> Sequence[Page]:
    """One page: the deck in each state, plan, wings, what differs, stock, places."""
    return (
        Page(
            "stage",
            "Stage",
            tuple(blocks(section)),
            summary="Deck, wings, clear heights, floor loads, risers and places.",
        ),
    )


def blocks(section: Section) -> Iterator[Block]:
    """The page from top to bottom."""
    yield checked_line(section)
    decks = section.of_kind("deck")
    yield Heading(2, "Deck", "deck")
    yield item_table(
        decks,
        DECK_KEYS,
        first="State of the deck",
        summary="The deck in each of its states",
        elsewhere=None,
    )
    yield from (Caution(caution) for caution in section.cautions)
    yield from deck_plans(section, decks)
    yield from more_of_decks(decks)
    if datum := section.item("datum"):
        yield Heading(2, "Datum", "datum-lines")
        yield facts_block(datum)
    yield from tables(section)
    if ground := section.item("ground"):
        yield Heading(2, "Open ground", "ground")
        yield facts_block(ground)
    if floor := section.item("audience-floor"):
        yield Heading(2, "Audience floor", "audience-floor")
        yield facts_block(floor)
    if (whole := section.item("whole")) and whole.facts:
        yield Heading(2, "Crossover and opening", "crossover")
        yield facts_block(whole)
    yield workings(
        "Workings of areas and wings",
        [
            figure
            for item in (*decks, *section.of_kind("wing"), *section.of_kind("riser"))
            for figure in item.figures
        ],
    )


def deck_plans(section: Section, decks: Sequence[Item]) -> Iterator[Block]:
    """The plan of each deck that somebody drew."""
    drawn = {outline.name for outline in section.outlines if outline.kind == "deck"}
    for deck in (each for each in decks if each.name in drawn):
        svg, says = stage_plan(section, deck.name)
        yield Picture(
            f"stage-plan-{anchor_of(deck.key)}",
            svg,
            says,
            caption=f"Plan, {deck.name}. Audience at the bottom, stage left on the right.",
        )


def more_of_decks(decks: Sequence[Item]) -> Iterator[Block]:
    """What else is told of each deck than its table has."""
    for deck in decks:
        yield Heading(3, f"{deck.name}: more", f"{anchor_of(deck.key)}.more")
        yield facts_block(
            deck,
            only=[name for fact in deck.facts if (name := name_of(deck, fact)) not in DECK_KEYS],
        )


def tables(section: Section) -> Iterator[Block]:
    """The stage's tables, each under its heading where there is something to say."""
    for kind, title, first, columns in TABLES:
        if found := section.of_kind(kind):
            yield Heading(2, title, f"{kind}s")
            named = IN_NAME.get(kind, ())
            yield item_table(found, columns, first=first, summary=title, elsewhere=named)


def headline(section: Section, _: Pack) -> Sequence[Entry]:
    """The size of the deck for the home page."""
    return tuple(answer(deck) for deck in section.of_kind("deck")[:1])


def answer(deck: Item) -> Entry:
    """Usable width by depth and the height of one deck."""
    width, depth = deck.fact("usable_width"), deck.fact("usable_depth")
    words = [*shown_fact(width), " × ", *shown_fact(depth)]
    return Entry(
        "Stage",
        words,
        small=f"usable, {deck.name}; deck height {deck.text('height') or 'not stated'}",
        anchor=f"stage#{anchor_of(deck.key)}",
    )
