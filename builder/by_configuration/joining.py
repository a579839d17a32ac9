"""One section of what a department publishes in each configuration."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.pack import Fact, Field, Finding, InConfiguration, Item, Section, in_a_row

THERE = "In {names}: {sentence}"
Told = tuple[tuple[str, ...], Section]
"""The configurations in which a section is so, and the section."""


def section_of_all(every: Sequence[Told]) -> Section:
    """
    A section as it is in the usual configuration, the first, with what is there in others only, and
    what differs there.
    """
    usual = every[0][1]
    items = list(usual.items)
    for _, section in every[1:]:
        add_missing(items, section)
        named = {item.key: item for item in section.items}
        items = [naming_all(item, named.get(item.key)) for item in items]
    others = [told_in(names, section, usual, items) for names, section in every]
    return replace(usual, items=tuple(items), elsewhere=tuple(each for each in others if each))


def add_missing(items: list[Item], section: Section) -> None:
    """
    Add what is there in another configuration only: behind its like that stand above it in the
    file, else behind what stands before it there.
    """
    place = 0
    for item in section.items:
        here = next((at for at, each in enumerate(items) if each.key == item.key), None)
        if here is None:
            like = [at for at, each in enumerate(items) if is_above(each, item)]
            place = max(like) + 1 if like else place
            items.insert(place, item)
            place += 1
        else:
            place = here + 1


def is_above(one: Item, other: Item) -> bool:
    """Whether an item is of another's kind and stands above it in the file, or in none."""
    if one.kind != other.kind:
        return False
    return one.place is None or other.place is None or one.place.line < other.place.line


def naming_all(item: Item, other: Item | None) -> Item:
    """An item whose lists of names name what is there in another configuration too."""
    if other is None or other.facts == item.facts:
        return item
    facts = tuple(with_names(fact, other.fact(short_key(item, fact))) for fact in item.facts)
    return replace(item, facts=facts)


def short_key(item: Item, fact: Fact) -> str:
    """A fact's key within its item."""
    return fact.key.removeprefix(f"{item.key}.")


def with_names(fact: Fact, other: Fact | None) -> Fact:
    """A list of names with those that it has in another configuration."""
    if fact.value is None or other is None or other.value is None:
        return fact if fact.value is not None or other is None else other
    more = [name for name in other.value.parts if name not in fact.value.parts]
    if not more:
        return fact
    parts = (*fact.value.parts, *more)
    return replace(fact, value=replace(fact.value, text=in_a_row(parts), parts=parts))


def told_in(
    names: tuple[str, ...], section: Section, usual: Section, items: Sequence[Item]
) -> InConfiguration | None:
    """What differs of a section in other configurations; None where nothing does."""
    shown = {item.key: item for item in items}
    differing = tuple(
        item for item in section.items if values_of(item) != values_of(shown[item.key])
    )
    fields = tuple(differing_fields(section, usual))
    outlines = tuple(each for each in section.outlines if each not in usual.outlines)
    here, maps = {item.key for item in section.items}, {field.key for field in section.fields}
    without = tuple(item.key for item in items if item.key not in here)
    without_maps = tuple(field.key for field in usual.fields if field.key not in maps)
    if not (differing or fields or outlines or without or without_maps):
        return None
    return InConfiguration(names, differing, fields, outlines, without, without_maps)


def values_of(item: Item) -> list[tuple[object, ...]]:
    """
    What an item tells, without how its figures were worked out; lists of names tell what is there
    in any configuration.
    """
    facts = [fact for fact in item.facts if fact.value is None or not fact.value.parts]
    return [
        own_words(item),
        *((fact.key, fact.standing, fact.value) for fact in facts),
        *((figure.key, figure.value, figure.missing, figure.note) for figure in item.figures),
    ]


def own_words(item: Item) -> tuple[object, ...]:
    """What an item says of itself beside its facts."""
    return (item.name, item.condition, item.terms, item.note, item.photo, item.verified)


def differing_fields(section: Section, usual: Section) -> Iterator[Field]:
    """The maps that are others than in the usual configuration."""
    known = {field.key: field for field in usual.fields}
    yield from (field for field in section.fields if known.get(field.key) != field)


def findings_of_all(every: Sequence[tuple[tuple[str, ...], Sequence[Finding]]]) -> list[Finding]:
    """The findings of the usual configuration, then those that only others have, with which."""
    found = list(every[0][1])
    for names, findings in every[1:]:
        known = {(each.code, each.sentence) for each in found}
        found += [
            replace(each, sentence=THERE.format(names=in_a_row(names), sentence=each.sentence))
            for each in findings
            if (each.code, each.sentence) not in known
        ]
    return found
