"""What pages tell of other configurations than the usual one: what differs, side by side."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.by_configuration.joining import own_words
from builder.document import (
    Block,
    Caution,
    Entry,
    Facts,
    Heading,
    Page,
    Paragraph,
    Row,
    Small,
    Table,
    Words,
)
from builder.layout import facts_block, photos, shown_fact, shown_figure, workings
from builder.pack import Figure, InConfiguration, Item, Section
from builder.reading.addresses import address

ABOUT = (
    "Figures on this page are for the usual configuration of the house, the first that it names."
    " Here they differ, for something else is there."
)


def beside_the_usual(pages: Sequence[Page], elsewhere: Sequence[Page]) -> Iterator[Page]:
    """
    Pages with those of other configurations: ``sound-coverage-in-thrust`` after ``sound-coverage``,
    and at the end what has no such page.
    """
    left = list(elsewhere)
    for page in pages:
        own = [other for other in left if other.key.startswith(f"{page.key}-in-")]
        left = [other for other in left if other not in own]
        yield from (page, *own)
    yield from left


def configuration_blocks(section: Section, usual: str) -> Iterator[Block]:
    """
    A table for each other configuration in which figures of a department differ from those in the
    usual one.
    """
    told = [each for each in section.elsewhere if each.items]
    if not told:
        return
    yield Heading(2, "In other configurations", "other-configurations")
    yield Paragraph(ABOUT)
    yield from (Caution(text) for text in section.cautions)
    for each in told:
        yield from blocks_in(each, section, usual)


def blocks_in(other: InConfiguration, section: Section, usually: str) -> Iterator[Block]:
    """What differs in other configurations, figure by figure, and how it was worked out there."""
    names = "; ".join(other.configurations)
    usual = {item.key: item for item in section.items}
    pairs = [pair for item in other.items for pair in differing(item, usual[item.key])]
    rows = [
        *(row for item in other.items for row in fact_rows(item, usual[item.key])),
        *(
            Row([what(item, there.label), shown_figure(here), shown_figure(there)])
            for item, here, there in pairs
        ),
    ]
    others = [item for item in other.items if is_another(item, usual[item.key])]
    if not rows and not others:
        return
    within = f"in-{address(names)}"
    yield Heading(3, names, within)
    for item in others:
        entries = [
            replace(entry, anchor=f"{within}.{entry.anchor}" if entry.anchor else "")
            for entry in facts_block(item).entries
        ]
        yield Facts([Entry("What is there", item.name), *entries])
        yield from photos([item])
    if rows:
        columns = ("What", usually, names)
        yield Table(columns, rows, summary=f"What differs in {names}", to_compare=True)
    if pairs:
        yield workings(f"How it was worked out for {names}", [there for _, _, there in pairs])


def what(item: Item, label: str) -> Words:
    """What of which item a line compares."""
    return [item.name, " ", Small(label)]


def is_another(there: Item, here: Item) -> bool:
    """Whether an item is described otherwise in another configuration."""
    return any(fact_rows(there, here)) or own_words(there) != own_words(here)


def fact_rows(there: Item, here: Item) -> Iterator[Row]:
    """A row for each fact of an item that is another in another configuration."""
    known = {fact.key: fact for fact in here.facts}
    for fact in there.facts:
        own = known.get(fact.key)
        if shown_fact(own) != shown_fact(fact) and not (fact.value and fact.value.parts):
            yield Row([what(there, fact.label), shown_fact(own), shown_fact(fact)])


def differing(there: Item, here: Item) -> Iterator[tuple[Item, Figure | None, Figure]]:
    """The figures of an item that tell something else in another configuration, with the usual."""
    usual = {figure.key: figure for figure in here.figures}
    for figure in there.figures:
        own = usual.get(figure.key)
        if own is None or shown_figure(own) != shown_figure(figure):
            yield there, own, figure
