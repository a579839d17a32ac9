"""The power page. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence

from builder.departments.power.page.one_line import one_line
from builder.departments.power.page.plan import Keyed, keyed_spots, outlet_plan
from builder.departments.power.page.services import services, terms_of
from builder.departments.power.page.tables import adaptors, connectors, drops, shore, supplies
from builder.document import (
    Block,
    Caution,
    Entry,
    Folded,
    Heading,
    Inline,
    Link,
    Page,
    Paragraph,
    Picture,
    Row,
    Small,
    Strong,
    Table,
)
from builder.layout import (
    anchor_of,
    checked_line,
    facts_block,
    findings_block,
    item_table,
    shown_figure,
    working_blocks,
)
from builder.pack import Figure, Item, Level, Pack, Section
from builder.reading.values.sentences import sentence_start

PHASES = ("L1", "L2", "L3")
NODES = ("supply", "generator", "service", "board")
DETAILED = ("service", "board", "supply", "generator")
LOADED = "How many can be loaded fully"
ALL_WORKINGS = Link("Workings and sources", "workings")


def pages(section: Section, pack: Pack) -> Sequence[Page]:
    """
    One page: what a visiting electrician needs first, then outlets, drawings, drops, shore power,
    workings.
    """
    summary = (
        "Services with rating, connector, free current and tie-in; outlets by place; voltage drop;"
        " shore power."
    )
    return (Page("power", "Power", tuple(blocks(section, pack)), summary=summary),)


def blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """The page from top to bottom."""
    yield from (Caution(caution) for caution in section.cautions)
    yield checked_line(section)
    yield from worst_first(section, pack)
    yield from services(section)
    yield from at_once(section)
    yield from next_loads(section)
    yield from drawings(section, pack)
    yield from details(section)
    yield from supplies(section)
    yield from connectors(section)
    yield from drops(section)
    yield from adaptors(section)
    yield from shore(section)
    yield from standing(section)
    yield from notes(section, pack)
    yield from folded(section)


def findings_of(section: Section, pack: Pack) -> list[tuple[Level, Block]]:
    """The department's findings with their levels."""
    found = [finding for finding in pack.findings if finding.subject.startswith(f"{section.key}.")]
    return [
        (finding.level, block) for finding, block in zip(found, findings_block(found), strict=True)
    ]


def worst_first(section: Section, pack: Pack) -> Iterator[Block]:
    """Dangers and cautions stand above all figures."""
    yield from (block for level, block in findings_of(section, pack) if level is not Level.NOTE)


def notes(section: Section, pack: Pack) -> Iterator[Block]:
    """Notes stand below the tables."""
    if found := [block for level, block in findings_of(section, pack) if level is Level.NOTE]:
        yield Heading(2, "Good to know", "notes")
        yield from found


def at_once(section: Section) -> Iterator[Block]:
    """Outlets by place: there, in use alone, at the same time."""
    found = sorted(section.of_kind("available"), key=lambda item: item.text("place"))
    whole = section.item("available-in-all")
    if not found:
        return
    yield Heading(2, "Outlets at the same time", "outlets")
    if whole and (figure := whole.figure("at-once")):
        words: list[Inline] = [
            Strong("All places together:"),
            " ",
            *shown_figure(figure),
            " can be loaded fully, house loads running.",
        ]
        if figure.note:
            words += [" ", Small(f"{sentence_start(figure.note)}.")]
        yield Paragraph(words)
    advice = (
        "All at once loads as many as can be, handed round among places on the same board; they may"
        " share them otherwise."
    )
    yield Paragraph(f"Outlets that work and that visitors may use. {advice}")
    yield Table(
        ("Place", "There", "Alone", "All at once"),
        [available_row(item) for item in found],
        summary=LOADED,
        numeric=(1, 2, 3),
    )


def available_row(item: Item) -> Row:
    """Outlets of one connector at one place."""
    numbers = ("there", "alone", "at-once")
    name: list[Inline] = [
        item.text("place"),
        " ",
        Small(f"{item.text('connector')}, on {item.text('fed_from')}"),
    ]
    cells = [name, item.text("there"), *(proven_cell(item.figure(name)) for name in numbers[1:])]
    return Row(
        cells, anchor=anchor_of(item.key), order=(None, *(item.far_end(name) for name in numbers))
    )


def proven_cell(figure: Figure | None) -> list[Inline]:
    """A count; where a better one was not ruled out, that stands under it."""
    return (
        [*shown_figure(figure), " ", Small("at least")]
        if figure and figure.value and figure.note
        else shown_figure(figure)
    )


def next_loads(section: Section) -> Iterator[Block]:
    """Single-phase sockets by board: which phase comes next, and how many hold."""
    found = section.of_kind("next")
    if not found:
        return
    yield Heading(2, "The next single-phase loads", "next-loads")
    words = (
        "Plug in this order: each load goes on the phase with most left. Counted for each board"
        " alone, every socket at full load for hours on end."
    )
    yield Paragraph(f"{words} Which socket is on which phase stands on its label.")
    rows = [
        Row([next_cell(item), *(shown_figure(item.figure(name)) for name in ("holds", *PHASES))])
        for item in found
    ]
    yield Table(
        ("Board, with its order", "Holds", *PHASES),
        rows,
        summary="Where the next single-phase loads go",
        numeric=range(1, 5),
    )


def next_cell(item: Item) -> list[Inline]:
    """A board with the order of phases, then its sockets and places."""
    sockets = (
        f"{item.text('there')} × {item.text('connector')}, {item.text('each')} each:"
        f" {item.text('places')}"
    )
    order = item.text("order")
    return [item.text("board"), *([": ", order] if order else []), " ", Small(sockets)]


def drawings(section: Section, pack: Pack) -> Iterator[Block]:
    """The circuits as one line, and where they come out."""
    caution = section.cautions[0] if section.cautions else ""
    if any(section.of_kind(kind) for kind in NODES):
        yield Heading(2, "Circuits in one line", "one-line")
        svg, says = one_line(section)
        caption = (
            "Each bar is the continuous limit of one phase: filled is what the house draws, open is"
            " free, with the free ampere beside it."
        )
        yield Picture("power-one-line", svg, says, caption=f"{caption} {caution}")
    keyed = keyed_spots(section, pack)
    plan = outlet_plan(keyed, pack)
    if plan:
        yield Heading(2, "Where it comes out", "plan")
        caption = (
            "Diamonds are supplies, double circles generators, squares services, circles outlets."
            " The key tells the numbers. Audience at the bottom, stage left on the right."
        )
        yield Picture("power-plan", plan[0], plan[1], caption=f"{caption} {caution}")
        yield key_table(keyed)


def key_table(keyed: Sequence[Keyed]) -> Table:
    """What each number on the plan stands for, and what lies off it."""
    ordered = sorted(keyed, key=lambda each: (not each.number, each.number))
    rows = [
        Row(
            [
                str(each.number) if each.number else "off the plan",
                [Strong(each.spot.name), " ", Small(each.spot.words)],
            ]
        )
        for each in ordered
    ]
    return Table(("Number", "What"), rows, summary="Key to the plan")


def details(section: Section) -> Iterator[Block]:
    """Everything that is stated of each service, board and source, folded."""
    for item in (item for kind in DETAILED for item in section.of_kind(kind)):
        yield Folded(f"{item.name}: all that is stated", (facts_block(item),))


def standing(section: Section) -> Iterator[Block]:
    """What the house draws anyway, and its rules."""
    if found := section.of_kind("load"):
        yield Heading(2, "Standing loads", "loads")
        yield Paragraph("What the house draws, show or no show. It is taken off what is free.")
        yield item_table(
            found,
            ("on", "draws", "phases", "power_factor", "third_harmonic"),
            first="Load",
            summary="Standing loads",
        )
    if rules := section.item("rules"):
        yield Heading(2, "House rules on power", "rules")
        # Limits of voltage drop and shore power have sections of their own.
        names = [
            name
            for fact in rules.facts
            if not (name := fact.key.removeprefix(f"{rules.key}.")).startswith(
                ("voltage_drop_limits", "shore_power")
            )
        ]
        yield facts_block(rules, only=names)


def folded(section: Section) -> Iterator[Block]:
    """
    The workings, one fold for each supply and service and one for all outlets; the rest are on the
    page of all workings.
    """
    yield Heading(2, "Workings", "workings")
    yield Paragraph(
        [
            (
                "Each figure can be redone by hand. Those of boards and single lines of outlets are"
                " under "
            ),
            ALL_WORKINGS,
            ".",
        ]
    )
    for kind in ("supply", "generator", "service", "available-in-all", "next"):
        for item in section.of_kind(kind):
            yield Folded(f"Workings: {item.name}", tuple(working_of(item)))


def working_of(item: Item) -> Iterator[Block]:
    """
    The workings of one thing.

    What is free is worked for its least phase; the caution is said once.
    """
    for figure in item.figures:
        if ".free.L" in figure.key:
            continue
        yield Paragraph([f"{figure.label}: ", *shown_figure(figure)])
        yield from working_blocks(figure.working)
    yield from (
        Caution(caution)
        for caution in dict.fromkeys(figure.caution for figure in item.figures)
        if caution
    )


def headline(section: Section, pack: Pack) -> Sequence[Entry]:
    """Services in a line, and what is free in all."""
    return tuple(answers(section, pack))


def answers(section: Section, _: Pack) -> Iterator[Entry]:
    """The home page's answers on power."""
    working = [item for item in section.of_kind("service") if item.condition != "out of service"]
    open_to_visitors = [item for item in working if terms_of(item) != "not for visitors"]
    if open_to_visitors:
        largest = max(open_to_visitors, key=lambda item: item.number("rating") or 0.0)
        words = f"{len(open_to_visitors)}, up to {largest.text('rating') or 'an unknown rating'}"
        names = "; ".join(
            f"{item.name} {item.text('rating') or 'rating not known'}" for item in open_to_visitors
        )
        yield Entry("Power services", words, small=names, anchor="power#services")
    for item in (*section.of_kind("supply"), *section.of_kind("generator")):
        figure = item.figure("free-kva")
        if figure and figure.value:
            yield Entry(
                f"Free power, {item.name}",
                shown_figure(figure),
                small="after the house's own loads, for hours on end",
                anchor="power#services",
            )
