"""
The pack without the lines that are for the house only.

It was computed from sealed descriptions, so nothing in it knows a name. What still counts when a
show is checked (a board that public outlets hang on, a loaded point beside a free one) stays as a
bare item: a name that says nothing, and the few values that the check reads.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Set
from dataclasses import dataclass, replace

from builder.fit.wanted import BEYOND_RULES, FED
from builder.house_only.sealing import Descriptions, Sealed
from builder.pack import (
    Fact,
    Figure,
    Finding,
    InConfiguration,
    Item,
    Pack,
    Place,
    Section,
    Working,
)
from builder.reading.house_only import hidden_within
from builder.reading.references import definition, records_within, references


@dataclass(frozen=True, slots=True)
class Passed:
    """
    A kind of item that the check goes through: what it is to those that refer to it, and the values
    that the check then reads of it.
    """

    kind: str
    values: Set[str]


COUNTED_WITH: Mapping[tuple[str, str], Passed] = {
    **{
        (section, item): Passed(kind, BEYOND_RULES[section, item])
        for section, item, kind in (
            ("rigging", "beam", "beam"),
            ("rigging", "point", "point"),
            ("access", "approach", "approach"),
            ("access", "dock", "dock"),
        )
    },
    **{
        ("power", item): Passed("power source", FED)
        for item in ("supply", "generator", "service", "board")
    },
}
"""
The kinds of items that the check goes through on its way. Where a hidden service stands, and what
is connected there, it does not read: nobody is sent to it.
"""
NO_WORKING = Working("", (), ())


def withheld(pack: Pack, of: Sealed) -> Pack:
    """A pack of sealed descriptions as it is published. What is sealed has nothing confirmed."""
    needed = needed_names(of.descriptions)
    sections = [without_hidden(section, of, needed) for section in pack.sections]
    kept = {key for section in sections for key in keys_of(section)}
    gone = {key for section in pack.sections for key in keys_of(section)} - kept
    return replace(
        pack,
        sections=tuple(without_links(section, gone) for section in sections),
        findings=tuple(public_findings(pack.findings, of.places, gone)),
    )


def shown(pack: Pack) -> Pack:
    """A pack without what it only counts with: what pages and drawings show."""
    if not any(item.house_only for item in pack.items()):
        return pack
    return replace(pack, sections=tuple(shown_of(section) for section in pack.sections))


def shown_of(section: Section) -> Section:
    """A section without what it only counts with."""
    items = tuple(item for item in section.items if not item.house_only)
    return replace(section, items=items, elsewhere=elsewhere_by(section, shown_of))


def needed_names(descriptions: Descriptions) -> set[tuple[str, str]]:
    """The hidden things that a public line refers to, or another that is needed does."""
    files = list(descriptions.values())
    hidden = {id(record): record for file in files for record in hidden_within(file)}
    needed = {
        (referred.kind, referred.name)
        for file in files
        for record in records_within(file)
        if id(record) not in hidden
        for referred in references(record)
    }
    while True:
        more = {
            (referred.kind, referred.name)
            for record in hidden.values()
            if (own := definition(record)) and (own.kind, own.name) in needed
            for referred in references(record)
        }
        if more <= needed:
            return needed
        needed |= more


def without_hidden(section: Section, of: Sealed, needed: Set[tuple[str, str]]) -> Section:
    """A section without its hidden items, but for what is counted with."""
    hidden = hidden_keys(section, of)
    items = []
    for item in section.items:
        if item.key not in hidden:
            items.append(item)
        elif is_counted_with(item, section, needed):
            items.append(bare(item, section))
    fields = tuple(each for each in section.fields if each.name not in of.names)
    kept = {item.key for item in items} | {field.key for field in fields}
    elsewhere = elsewhere_by(section, lambda part: without_hidden(part, of, needed))
    return replace(
        section,
        items=tuple(items),
        outlines=tuple(each for each in section.outlines if each.name not in of.names),
        fields=fields,
        elsewhere=tuple(naming_only(each, kept) for each in elsewhere),
    )


def naming_only(there: InConfiguration, kept: Set[str]) -> InConfiguration:
    """What differs in a configuration, without the keys of what is not published."""
    return replace(
        there,
        without=tuple(key for key in there.without if key in kept),
        without_maps=tuple(key for key in there.without_maps if key in kept),
    )


def elsewhere_by(
    section: Section, change: Callable[[Section], Section]
) -> tuple[InConfiguration, ...]:
    """What differs of a section in other configurations, changed as a section is."""
    changed = []
    for each in section.elsewhere:
        own = replace(
            section,
            items=each.items,
            fields=each.fields,
            outlines=each.outlines,
            elsewhere=(),
        )
        there = change(own)
        changed.append(
            replace(
                each,
                items=there.items,
                fields=there.fields,
                outlines=there.outlines,
            )
        )
    return tuple(changed)


def hidden_keys(section: Section, of: Sealed) -> set[str]:
    """
    The keys of the items of lines for the house only: of those that stand there, of what was
    computed for them alone, and of the single units and parts of both.
    """
    hidden = {
        item.key
        for item in section.items
        if item.place in of.places or (item.place is None and item.name in of.names)
    }
    parts = {
        item.key
        for item in section.items
        if item.unit_of in hidden or any(item.key.startswith(f"{key}.") for key in hidden)
    }
    return hidden | parts


def is_counted_with(item: Item, section: Section, needed: Set[tuple[str, str]]) -> bool:
    """Whether the check goes through a hidden item on its way to something public."""
    passed = COUNTED_WITH.get((section.key, item.kind))
    if passed is None:
        return False
    carried = item.figure("carried")
    is_loaded = carried is not None and (carried.value is None or item.number("carried") != 0)
    return (passed.kind, item.name) in needed or is_loaded


def bare(item: Item, section: Section) -> Item:
    """A hidden item with no more than the check counts with."""
    passed = COUNTED_WITH[section.key, item.kind]
    wanted = {f"{item.key}.{name}" for name in passed.values}
    return Item(
        item.key,
        item.kind,
        item.name,
        facts=tuple(bare_fact(fact) for fact in item.facts if fact.key in wanted),
        figures=tuple(bare_figure(figure) for figure in item.figures if figure.key in wanted),
        condition=item.condition,
        terms=item.terms,
        house_only=True,
    )


def bare_fact(fact: Fact) -> Fact:
    """A fact of a hidden item without its place in the house's files."""
    return replace(fact, note="", place=None)


def bare_figure(figure: Figure) -> Figure:
    """A figure of a hidden item without how it was worked out."""
    return replace(figure, working=NO_WORKING)


def keys_of(section: Section) -> Iterator[str]:
    """The keys that something may link to."""
    for item in section.items:
        if not item.house_only:
            yield item.key
            yield from (fact.key for fact in item.facts)
            yield from (figure.key for figure in item.figures)
    yield from (field.key for field in section.fields)


def without_links(section: Section, gone: Set[str]) -> Section:
    """A section whose workings link to nothing that is gone."""
    items = tuple(
        replace(item, figures=tuple(unlinked_figure(figure, gone) for figure in item.figures))
        for item in section.items
    )
    fields = tuple(
        replace(field, working=unlinked(field.working, gone)) for field in section.fields
    )
    elsewhere = elsewhere_by(section, lambda part: without_links(part, gone))
    return replace(section, items=items, fields=fields, elsewhere=elsewhere)


def unlinked_figure(figure: Figure, gone: Set[str]) -> Figure:
    """A figure whose working links to nothing that is gone."""
    return replace(figure, working=unlinked(figure.working, gone))


def unlinked(working: Working, gone: Set[str]) -> Working:
    """A working that links to nothing that is gone."""
    if not any(part.key in gone for part in working.inputs):
        return working
    inputs = [replace(part, key="") if part.key in gone else part for part in working.inputs]
    return replace(working, inputs=tuple(inputs))


def public_findings(
    findings: Iterable[Finding], hidden: Set[Place], gone: Set[str]
) -> Iterator[Finding]:
    """The findings that are not of a hidden line."""
    return (
        finding
        for finding in findings
        if finding.place not in hidden and finding.subject not in gone
    )
