"""The tables further down the power page: supplies, boards, outlets, voltage drop, shore power."""

from collections.abc import Iterator, Sequence

from builder.document import Block, Facts, Heading, Inline, Paragraph, Row, Small, Table
from builder.layout import entry_of, item_table, shown_fact, shown_figure
from builder.pack import Item, Section

DROPS = ("drop", "drop-total")


def supplies(section: Section) -> Iterator[Block]:
    """What feeds it all, the boards between, and the outlets with their ratings."""
    figures = ("capacity", "continuous", "current.L1", "current.L2", "current.L3", "neutral-current", "imbalance", "free-kva")
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
        yield numbers_table(found, ("capacity", "continuous", "current.L1", "current.L2", "current.L3", "neutral-current", "imbalance"))


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
    rows = [drop_row(item) for item in found]
    columns = ("Feeder of", "Lost along it", "Lost from the supply", "Length one way", "Conductor")
    yield Table(columns, rows, summary="At the full continuous load of each, nothing else on")


def drop_row(item: Item) -> Row:
    """One feeder with what is lost along it."""
    cable = [shown_fact(item.fact(name)) for name in ("feeder.length", "feeder.conductor")]
    return Row([item.name, *(drop_cell(item, name) for name in DROPS), *cable])


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
