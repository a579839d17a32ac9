"""The tables further down the power page: supplies, boards, outlets, voltage drop, shore power."""

from collections.abc import Iterator, Sequence

from builder.departments.power.page.words import plain_words
from builder.document import Block, Heading, Inline, Paragraph, Row, Small, Table
from builder.layout import anchor_of, facts_list, item_table, name_cell, shown_fact, shown_figure
from builder.pack import Item, Section

DROPS = ("drop", "drop-total", "drop-left", "drop-alone", "feeder-carries")


def supplies(section: Section) -> Iterator[Block]:
    """What feeds it all, the boards between, and the outlets with their ratings."""
    figures = (
        "capacity",
        "continuous",
        "current.L1",
        "current.L2",
        "current.L3",
        "neutral-current",
        "imbalance",
        "free-kva",
    )
    for kind, title, first, columns in (
        ("supply", "Supplies", "Supply", ("rating", "breaker", "system", "earthing", *figures)),
        (
            "generator",
            "Generators",
            "Generator",
            ("prime", "site-rating", "load-share", "fuel", "runs-for", *figures),
        ),
        ("board", "Boards", "Board", ("fed_from", "rating", *figures[:-1])),
    ):
        if found := section.of_kind(kind):
            yield Heading(2, title, f"{kind}-table")
            yield item_table(found, columns, first=first, summary=title, elsewhere=None)
    yield from outlets(section)
    if found := section.of_kind("service"):
        yield Heading(2, "Services in numbers", "service-numbers")
        yield numbers_table(
            found,
            (
                "capacity",
                "continuous",
                "current.L1",
                "current.L2",
                "current.L3",
                "neutral-current",
                "neutral-left",
                "neutral-binds",
                "imbalance",
            ),
        )


def outlets(section: Section) -> Iterator[Block]:
    """Every line of outlets by place, with what protects it."""
    found = sorted(section.of_kind("outlet"), key=lambda item: item.text("place"))
    if not found:
        return
    yield Heading(2, "All outlets", "all-outlet")
    columns = (
        "Place",
        "Count",
        "Rating",
        "Phases",
        "Residual current device",
        "Breaker",
        "Fed from",
        "Meant for",
    )
    yield Table(
        columns,
        [outlet_row(item) for item in found],
        summary="Every line of outlets",
        numeric=(1, 2),
    )


def outlet_row(item: Item) -> Row:
    """One line of outlets, its connector under its place."""
    names = (
        "count",
        "rating",
        "phases",
        "residual_current_device",
        "breaker",
        "fed_from",
        "meant_for",
    )
    order = (None, item.number("count"), item.number("rating"), *(None for _ in range(5)))
    head: list[Inline] = [item.text("place") or item.name, Small(item.text("connector"))]
    name = name_cell(item, ("place", "connector", *names), head=head)
    cells = [shown_fact(item.fact(each)) for each in names]
    cells[1] = [*cells[1], *hours_words(item)]
    return Row([name, *cells], anchor=anchor_of(item.key), order=order)


def hours_words(item: Item) -> list[Inline]:
    """What one outlet may carry for hours, where that is less than its rating or not known."""
    hours, rating = item.figure("for-hours"), item.number("rating")
    if hours is None or hours.value is None or hours.value.number == rating:
        return []
    return [" ", Small(f"{hours.value.text} for hours")]


def numbers_table(items: Sequence[Item], names: Sequence[str]) -> Table:
    """Figures of services. The rows have no anchors: those are in the first table."""
    used = [name for name in names if any(item.figure(name) for item in items)]
    labels = [
        next(figure.label for item in items if (figure := item.figure(name))) for name in used
    ]
    rows = [
        Row(
            [item.name, *(shown_figure(item.figure(name)) for name in used)],
            order=(None, *(item.far_end(name) for name in used)),
        )
        for item in items
    ]
    return Table(
        ("Service", *labels),
        rows,
        summary="What services carry and what stands on them",
        numeric=range(1, len(used) + 1),
    )


def connectors(section: Section) -> Iterator[Block]:
    """What goes into what the house has."""
    if found := section.of_kind("connector"):
        yield Heading(2, "What goes into what", "connectors")
        yield Paragraph(
            "By the standards' own shapes. That a plug goes in says nothing of voltage, earth or"
            " who may switch on."
        )
        yield Table(
            ("Connector", "Takes", "Made for"),
            [connector_row(item) for item in found],
            summary="Connectors and the plugs they take",
        )


def connector_row(item: Item) -> Row:
    """One connector, with where it is under its name."""
    figure = item.figure("takes")
    taken = (
        [*shown_figure(figure), " ", Small(figure.note)]
        if figure and figure.note
        else shown_figure(figure)
    )
    return Row(
        [[item.name, " ", Small(item.text("at"))], taken, shown_figure(item.figure("made-for"))],
        anchor=anchor_of(item.key),
    )


def drops(section: Section) -> Iterator[Block]:
    """Voltage lost along the feeders at full continuous load."""
    found = [
        item
        for kind in ("service", "board")
        for item in section.of_kind(kind)
        if item.figure("drop")
    ]
    if not found:
        return
    yield Heading(2, "Feeders and voltage drop", "drop")
    rules = section.item("rules")
    limits = [fact for fact in rules.facts if "voltage_drop_limits" in fact.key] if rules else []
    if limits:
        yield facts_list(limits)
    rows = [drop_row(item) for item in found]
    yield Table(
        ("Feeder of", "Along it", "In all", "Left for tails", "One line alone", "It carries"),
        rows,
        summary="At the full continuous load of each, nothing else on; in all is from the supply",
        numeric=(1, 2, 3, 4, 5),
    )


def drop_row(item: Item) -> Row:
    """
    One feeder with what is lost along it; its length one way and its conductor under the name.
    """
    length, conductor = (
        plain_words(item.fact(name), label)
        for name, label in (("feeder.length", "length"), ("feeder.conductor", "conductor"))
    )
    name: list[Inline] = [item.name, " ", Small(f"{length} one way of {conductor}")]
    cells = [drop_cell(item, "drop"), *(shown_figure(item.figure(each)) for each in DROPS[1:])]
    return Row([name, *cells], order=(None, *(item.far_end(each) for each in DROPS)))


def drop_cell(item: Item, name: str) -> list[Inline]:
    """A drop with the base it is of."""
    figure = item.figure(name)
    return (
        [*shown_figure(figure), " ", Small(figure.note)]
        if figure and figure.value and figure.note
        else shown_figure(figure)
    )


def adaptors(section: Section) -> Iterator[Block]:
    """Adaptors in stock."""
    if found := section.of_kind("adaptor"):
        yield Heading(2, "Adaptors", "adaptors")
        yield item_table(found, ("count", "kept"), first="From what to what", summary="Adaptors")


def shore(section: Section) -> Iterator[Block]:
    """Power for buses and trucks, or that there is none."""
    yield Heading(2, "Shore power", "shore")
    if found := section.of_kind("shore"):
        columns = (
            "place",
            "count",
            "rating",
            "phases",
            "capacity",
            "distance",
            "meant_for",
            "hours",
            "fed_from",
        )
        yield item_table(found, columns, first="Connector", summary="Outlets for buses and trucks")
        return
    rules = section.item("rules")
    yield Paragraph(["Shore power: ", *shown_fact(rules.fact("shore_power") if rules else None)])
