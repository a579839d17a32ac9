"""
Keys of a space: each begins with the folder of the space, so that two rooms may each have a P1.
"""

from collections.abc import Callable, Iterable
from dataclasses import replace

from builder.pack import (
    Confirmed,
    Fact,
    Field,
    Figure,
    Finding,
    InConfiguration,
    Item,
    Outline,
    Section,
    Working,
)

Renamed = Callable[[str], str]


def scoped_key(key: str, folder: str) -> str:
    """A key within a space, as the pack of the whole house has it."""
    return f"{folder}/{key}" if key else ""


def section_with(section: Section, new: Renamed) -> Section:
    """A section whose items, maps and outlines have other keys."""
    return replace(
        section,
        items=tuple(item_with(item, new) for item in section.items),
        outlines=tuple(outline_with(outline, new) for outline in section.outlines),
        fields=tuple(field_with(field, new) for field in section.fields),
        elsewhere=tuple(elsewhere_with(each, new) for each in section.elsewhere),
    )


def elsewhere_with(other: InConfiguration, new: Renamed) -> InConfiguration:
    """What differs in other configurations, with other keys."""
    return replace(
        other,
        items=tuple(item_with(item, new) for item in other.items),
        fields=tuple(field_with(field, new) for field in other.fields),
        outlines=tuple(outline_with(outline, new) for outline in other.outlines),
        without=tuple(map(new, other.without)),
        without_maps=tuple(map(new, other.without_maps)),
    )


def item_with(item: Item, new: Renamed) -> Item:
    """An item with other keys."""
    return replace(
        item,
        key=new(item.key),
        unit_of=new(item.unit_of),
        facts=tuple(replace(fact, key=new(fact.key)) for fact in item.facts),
        figures=tuple(figure_with(figure, new) for figure in item.figures),
    )


def figure_with(figure: Figure, new: Renamed) -> Figure:
    """A figure with other keys."""
    return replace(figure, key=new(figure.key), working=working_with(figure.working, new))


def working_with(working: Working, new: Renamed) -> Working:
    """A working whose inputs come from other keys."""
    inputs = tuple(replace(each, key=new(each.key)) for each in working.inputs)
    return replace(working, inputs=inputs)


def outline_with(outline: Outline, new: Renamed) -> Outline:
    """An outline with another key."""
    return replace(outline, key=new(outline.key))


def field_with(field: Field, new: Renamed) -> Field:
    """A map with other keys."""
    return replace(field, key=new(field.key), working=working_with(field.working, new))


def finding_with(finding: Finding, new: Renamed) -> Finding:
    """A finding whose subject has another key."""
    return replace(finding, subject=new(finding.subject))


def confirmed_with(confirmed: Confirmed, new: Renamed) -> Confirmed:
    """What is confirmed, with another key."""
    return replace(confirmed, finding=finding_with(confirmed.finding, new))


def keys_of(sections: Iterable[Section]) -> set[str]:
    """Every key of some sections: of items, facts, figures, maps and outlines."""
    found: set[str] = set()
    for section in sections:
        found |= {field.key for field in section.fields}
        found |= {outline.key for outline in section.outlines}
        for item in section.items:
            values: tuple[Fact | Figure, ...] = (*item.facts, *item.figures)
            found |= {item.key, *(value.key for value in values)}
    return found
