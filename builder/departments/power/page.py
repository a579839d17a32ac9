"""The power page. Reads the pack; computes nothing."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.departments.power.drawing import Keyed, keyed_spots, outlet_plan
from builder.departments.power.one_line import one_line
from builder.document import (
    Block,
    Bullets,
    Caution,
    Entry,
    Facts,
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
    Tag,
    Words,
)
from builder.layout import anchor_of, checked_line, entry_of, facts_block, findings_block, item_table, shown_fact, shown_figure, state, working_blocks
from builder.pack import Item, Level, Pack, Section

PHASES = ("L1", "L2", "L3")
NODES = ("supply", "generator", "service", "board")
DROPS = ("drop", "drop-total")
ALL_WORKINGS = Link("Workings and sources", "workings")


def pages(section: Section, pack: Pack) -> Sequence[Page]:
    """One page: what a visiting electrician needs first, then outlets, drawings, drops, shore power, workings."""
    summary = "Services with rating, connector, free current and tie-in; outlets by place; voltage drop; shore power."
    return (Page("power", "Power", tuple(blocks(section, pack)), summary=summary),)


def blocks(section: Section, pack: Pack) -> Iterator[Block]:
    """The page from top to bottom."""
    yield from (Caution(caution) for caution in section.cautions)
    yield checked_line(section)
    yield from worst_first(section, pack)
    yield from services(section)
    yield from at_once(section)
    yield from drawings(section, pack)
    yield from details(section)
    yield from supplies(section)
    yield from drops(section)
    yield from shore(section)
    yield from standing(section)
    yield from notes(section, pack)
    yield from folded(section)


def findings_of(section: Section, pack: Pack) -> list[tuple[Level, Block]]:
    """The department's findings with their levels."""
    found = [finding for finding in pack.findings if finding.subject.startswith(f"{section.key}.")]
    return [(finding.level, block) for finding, block in zip(found, findings_block(found), strict=True)]


def worst_first(section: Section, pack: Pack) -> Iterator[Block]:
    """Dangers and cautions stand above all figures."""
    yield from (block for level, block in findings_of(section, pack) if level is not Level.NOTE)


def notes(section: Section, pack: Pack) -> Iterator[Block]:
    """Notes stand below the tables."""
    if found := [block for level, block in findings_of(section, pack) if level is Level.NOTE]:
        yield Heading(2, "Good to know", "notes")
        yield from found


def services(section: Section) -> Iterator[Block]:
    """The table that a visiting electrician comes for."""
    found = section.of_kind("service")
    if not found:
        return
    yield Heading(2, "Services", "services")
    yield Paragraph("Free is what the house's own loads leave on each phase, for hours on end. The switch or board that sets the limit is named.")
    columns = ("Service", "Free L1", "Free L2", "Free L3", "Rating", "Connectors", "Where", "Tie-in", "Bound by", "Kept for")
    yield Table(columns, [service_row(item) for item in found], summary="Services", numeric=(1, 2, 3))
    said: list[Words] = [[Strong(item.name), f": {item.note}"] for item in found if item.note]
    if said:
        yield Bullets(said)


def service_row(item: Item) -> Row:
    """One service: the few answers that decide."""
    free = [shown_figure(item.figure(f"free.{phase}")) for phase in PHASES]
    words = [rating(item), shown_fact(item.fact("connectors")), where(item), tie_in(item), bound_by(item)]
    numbers = [item.number(f"free.{phase}") for phase in PHASES]
    order = (None, *numbers, item.number("rating"), *(None for _ in range(5)))
    return Row([item.name, *free, *words, shown_fact(item.fact("dedicated_to"))], anchor=anchor_of(item.key), order=order)


def terms_of(item: Item) -> str:
    """The terms that stand on an item's line, where visitors cannot simply use it."""
    terms = next((fact.terms for fact in item.facts if fact.terms), "")
    return "" if terms == "included" else terms


def bound_by(item: Item) -> list[Inline]:
    """The limit that binds, and loads that nobody has measured."""
    figure = item.figure("binding")
    return [*shown_figure(figure), " ", Small(figure.note)] if figure and figure.note else shown_figure(figure)


def rating(item: Item) -> list[Inline]:
    """Ampere a phase with the state of the service, then the system, so that nobody guesses line to what."""
    terms = terms_of(item)
    tags: list[Inline] = [*state(item), *([Tag(terms, "note")] if terms else [])]
    spaced = [piece for tag in tags for piece in (" ", tag)]
    return [*shown_fact(item.fact("rating")), *spaced, " ", Small(item.text("system") or "system not stated")]


def where(item: Item) -> list[Inline]:
    """The place, then its position from the datum."""
    position = ", ".join(text for name in ("at.across", "at.depth", "at.height") if (text := item.text(name)))
    place = item.fact("place")
    if place is None and position:
        return [position]
    return [*shown_fact(place), " ", Small(position)] if position else [*shown_fact(place)]


def tie_in(item: Item) -> list[Inline]:
    """Who connects, and with what notice."""
    who, notice = item.text("tie_in.who"), item.text("tie_in.notice")
    if who or notice:
        return [who or "nobody named", " ", Small(f"notice {notice}" if notice else "notice not stated")]
    return ["–"] if terms_of(item) == "not for visitors" else shown_fact(item.fact("tie_in"))


def at_once(section: Section) -> Iterator[Block]:
    """Outlets by place: there, in use alone, at the same time."""
    found = sorted(section.of_kind("available"), key=lambda item: item.text("place"))
    whole = section.item("available-in-all")
    if not found:
        return
    yield Heading(2, "Outlets at the same time", "outlets")
    if whole:
        yield Paragraph([Strong("All places together:"), " ", *shown_figure(whole.figure("at-once")), " can be loaded fully, house loads running."])
    words = "All at once is one choice that loads most outlets; places on the same board may share them out otherwise."
    yield Paragraph(f"Outlets that work and that visitors may use. {words}")
    columns = ("Place", "There", "Alone", "All at once", "Connector", "Fed from")
    yield Table(columns, [available_row(item) for item in found], summary="How many can be loaded fully", numeric=(1, 2, 3))


def available_row(item: Item) -> Row:
    """Outlets of one connector at one place."""
    numbers = ("there", "alone", "at-once")
    cells = [
        item.text("place"),
        item.text("there"),
        *(shown_figure(item.figure(name)) for name in numbers[1:]),
        item.text("connector"),
        item.text("fed_from"),
    ]
    return Row(cells, anchor=anchor_of(item.key), order=(None, *(item.number(name) for name in numbers), None, None))


def drawings(section: Section, pack: Pack) -> Iterator[Block]:
    """The circuits as one line, and where they come out."""
    caution = section.cautions[0] if section.cautions else ""
    if any(section.of_kind(kind) for kind in NODES):
        yield Heading(2, "Circuits in one line", "one-line")
        svg, says = one_line(section)
        caption = "Each bar is the continuous limit of one phase: filled is what the house draws, open is free, with the free ampere beside it."
        yield Picture("power-one-line", svg, says, caption=f"{caption} {caution}")
    keyed = keyed_spots(section, pack)
    plan = outlet_plan(keyed, pack)
    if plan:
        yield Heading(2, "Where it comes out", "plan")
        caption = (
            "Diamonds are supplies, double circles generators, squares services, circles outlets. The key tells the numbers. Audience at the bottom."
        )
        yield Picture("power-plan", plan[0], plan[1], caption=f"{caption} {caution}")
        yield key_table(keyed)


def key_table(keyed: Sequence[Keyed]) -> Table:
    """What each number on the plan stands for, and what lies off it."""
    rows = [Row([str(each.number) if each.number else "off the plan", each.spot.name, each.spot.words]) for each in keyed]
    return Table(("Number", "What", "There"), rows, summary="Key to the plan")


def details(section: Section) -> Iterator[Block]:
    """Everything else that is said of each service, folded."""
    for item in section.of_kind("service"):
        yield Folded(f"{item.name}: all that is stated", tuple(stated(item)))


def stated(item: Item) -> Iterator[Block]:
    """The facts of one thing. What holds for the whole line is said once, above them."""
    whole = "; ".join(part for part in (terms_of(item), item.condition if item.condition != "in service" else "", item.note) if part)
    if whole:
        yield Paragraph(whole)
    yield Facts([entry_of(replace(fact, terms="", condition="", note="")) for fact in item.facts])


def supplies(section: Section) -> Iterator[Block]:
    """What feeds it all, the boards between, and the outlets with their ratings."""
    figures = ("capacity", "continuous", "current.L1", "current.L2", "current.L3", "neutral", "imbalance", "free-kva")
    for kind, title, first, columns in (
        ("supply", "Supplies", "Supply", ("rating", "breaker", "system", "earthing", *figures)),
        ("generator", "Generators", "Generator", ("prime", "site-rating", "load-share", "fuel", "runs-for", *figures)),
        ("board", "Boards", "Board", ("fed_from", "rating", *figures[:-1])),
        ("outlet", "All outlets", "Connector", ("place", "count", "rating", "breaker", "phases", "fed_from", "residual_current_device", "meant_for")),
    ):
        if found := section.of_kind(kind):
            yield Heading(2, title, f"all-{kind}" if kind == "outlet" else f"{kind}-table")
            yield item_table(found, columns, first=first, summary=title)
    if found := section.of_kind("service"):
        yield Heading(2, "Services in numbers", "service-numbers")
        yield numbers_table(found, ("capacity", "continuous", "current.L1", "current.L2", "current.L3", "neutral", "imbalance"))


def numbers_table(items: Sequence[Item], names: Sequence[str]) -> Table:
    """Figures of services. The rows have no anchors: those are in the first table."""
    used = [name for name in names if any(item.figure(name) for item in items)]
    labels = [next(figure.label for item in items if (figure := item.figure(name))) for name in used]
    rows = [
        Row([item.name, *(shown_figure(item.figure(name)) for name in used)], order=(None, *(item.number(name) for name in used))) for item in items
    ]
    return Table(("Service", *labels), rows, summary="What services carry and what stands on them", numeric=range(1, len(used) + 1))


def drops(section: Section) -> Iterator[Block]:
    """Voltage lost along the feeders at full continuous load."""
    found = [item for kind in ("service", "board") for item in section.of_kind(kind) if item.figure("drop")]
    if not found:
        return
    yield Heading(2, "Voltage drop", "drop")
    rules = section.item("rules")
    limits = [fact for fact in rules.facts if "voltage_drop_limits" in fact.key] if rules else []
    if limits:
        yield Facts([entry_of(fact) for fact in limits])
    rows = [
        Row(
            [item.name, shown_fact(item.fact("feeder.length")), shown_fact(item.fact("feeder.conductor")), *(drop_cell(item, name) for name in DROPS)]
        )
        for item in found
    ]
    columns = ("Feeder of", "Length one way", "Conductor", "Lost along it", "Lost from the supply")
    yield Table(columns, rows, summary="At the full continuous load of each, nothing else on")


def drop_row(item: Item) -> Row:
    """One feeder with what is lost along it."""
    cable = [shown_fact(item.fact(name)) for name in ("feeder.length", "feeder.conductor")]
    return Row([item.name, *cable, *(drop_cell(item, name) for name in DROPS)])


def drop_cell(item: Item, name: str) -> list[Inline]:
    """A drop with the base it is of."""
    figure = item.figure(name)
    return [*shown_figure(figure), " ", Small(figure.note)] if figure and figure.value and figure.note else shown_figure(figure)


def shore(section: Section) -> Iterator[Block]:
    """Power for buses and trucks, or that there is none."""
    yield Heading(2, "Shore power", "shore")
    if found := section.of_kind("shore"):
        columns = ("place", "count", "rating", "phases", "capacity", "distance", "meant_for", "hours", "fed_from")
        yield item_table(found, columns, first="Connector", summary="Outlets for buses and trucks")
        terms = [f"{item.name}: {fact.terms}" for item in found if (fact := item.fact("count")) and fact.terms]
        if terms:
            yield Paragraph(f"Terms: {'; '.join(terms)}.")
        return
    rules = section.item("rules")
    yield Paragraph(["Shore power: ", *shown_fact(rules.fact("shore_power") if rules else None)])


def standing(section: Section) -> Iterator[Block]:
    """What the house draws anyway, and its rules."""
    if found := section.of_kind("load"):
        yield Heading(2, "Standing loads", "loads")
        yield Paragraph("What the house draws, show or no show. It is taken off what is free.")
        yield item_table(found, ("on", "draws", "phases", "power_factor", "third_harmonic", "told_by"), first="Load", summary="Standing loads")
    if rules := section.item("rules"):
        yield Heading(2, "House rules on power", "rules")
        names = [fact.key.removeprefix(f"{rules.key}.") for fact in rules.facts if "voltage_drop_limits" not in fact.key]
        yield facts_block(rules, only=names)


def folded(section: Section) -> Iterator[Block]:
    """The workings, one fold for each supply and service and one for all outlets; the rest are on the page of all workings."""
    yield Heading(2, "Workings", "workings")
    yield Paragraph(["Each figure can be redone by hand. Those of boards and single lines of outlets are under ", ALL_WORKINGS, "."])
    for kind in ("supply", "generator", "service", "available-in-all"):
        for item in section.of_kind(kind):
            yield Folded(f"Workings: {item.name}", tuple(working_of(item)))


def working_of(item: Item) -> Iterator[Block]:
    """The workings of one thing. What is free is worked for its least phase; the caution is said once."""
    for figure in item.figures:
        if ".free.L" in figure.key:
            continue
        yield Paragraph([f"{figure.label}: ", *shown_figure(figure)])
        yield from working_blocks(figure.working)
    yield from (Caution(caution) for caution in dict.fromkeys(figure.caution for figure in item.figures) if caution)


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
        names = "; ".join(f"{item.name} {item.text('rating') or 'rating not known'}" for item in open_to_visitors)
        yield Entry("Power services", words, small=names, anchor="power#services")
    for item in (*section.of_kind("supply"), *section.of_kind("generator")):
        figure = item.figure("free-kva")
        if figure and figure.value:
            yield Entry(
                f"Free power, {item.name}", shown_figure(figure), small="after the house's own loads, for hours on end", anchor="power#services"
            )
