"""The page of rooms. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence

from builder.document import Block, Entry, Heading, Page, Paragraph, Tag
from builder.layout import (
    checked_line,
    facts_block,
    figures_block,
    item_table,
    shown_figure,
    workings,
)
from builder.pack import Item, Pack, Section, Standing

SUMMARY = "Dressing rooms, offices, showers, toilets, laundry, catering."
ROOM_COLUMNS = ("rooms", "persons", "area", "level", "showers", "toilets", "step_free", "steps")
OTHER_COLUMNS = ("use", "rooms", "persons", "area", "level", "cabled_network", "step_free")


def pages(section: Section, _: Pack) -> Sequence[Page]:
    """One page: what shows ask first, then room by room."""
    return (Page("rooms", "Rooms", tuple(blocks(section)), summary=SUMMARY),)


def blocks(section: Section) -> Iterator[Block]:
    """The page from top to bottom."""
    yield checked_line(section)
    whole = section.item("whole")
    if whole and whole.figures:
        yield figures_block(whole.figures)
    yield from rooms(section)
    for kind, title, first, columns in (
        (
            "washroom",
            "Washrooms",
            "Washroom",
            ("for_whom", "showers", "toilets", "basins", "level", "step_free"),
        ),
        ("equipment", "Laundry and towels", "What", ("count", "working", "coins", "kept")),
    ):
        if found := section.of_kind(kind):
            yield Heading(2, title, f"{kind}s")
            yield item_table(found, columns, first=first, summary=title)
    if whole:
        yield Heading(2, "Also", "also")
        yield facts_block(whole)
    yield workings("Workings", [figure for item in section.items for figure in item.figures])


def rooms(section: Section) -> Iterator[Block]:
    """Dressing rooms, then all others; or which kind of absence it is."""
    dressing, others = section.of_kind("dressing-room"), section.of_kind("room")
    yield Heading(2, "Dressing rooms", "dressing")
    if dressing:
        yield item_table(
            dressing, ROOM_COLUMNS, first="Room", summary="Dressing rooms", elsewhere=("count",)
        )
    else:
        yield Paragraph(absence(section))
    if others:
        yield Heading(2, "Other rooms", "others")
        yield item_table(
            others, OTHER_COLUMNS, first="Room", summary="Other rooms", elsewhere=("count",)
        )


def absence(section: Section) -> list[str | Tag]:
    """Why no dressing room stands on the page."""
    whole = section.item("whole")
    fact = whole.fact("dressing_rooms") if whole else None
    if fact is not None and fact.standing is Standing.NONE:
        return ["There are no dressing rooms."]
    return [Tag("not stated", "plain"), " No dressing room is described."]


def headline(section: Section, _: Pack) -> Sequence[Entry]:
    """How many dressing rooms, for how many persons, and showers, for the first page."""
    whole = section.item("whole")
    rooms_there = whole.figure("dressing-rooms") if whole else None
    if whole is None or rooms_there is None or not section.of_kind("dressing-room"):
        return []
    return [
        Entry(
            rooms_there.label,
            shown_figure(rooms_there),
            small="; ".join(in_words(whole)),
            anchor="rooms#dressing",
        )
    ]


def in_words(whole: Item) -> Iterator[str]:
    """What dressing rooms hold, and showers, in words."""
    for name, words in (("persons", "for {} persons"), ("showers", "{} showers")):
        found = whole.figure(name)
        if found is not None and found.value is not None:
            yield words.format(found.value.text)
