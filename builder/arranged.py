"""A pack as it stands in one configuration of the house, for drawings and maps of it."""

from collections.abc import Sequence, Set
from dataclasses import replace

from builder.pack import Item, Outline, Pack, Section
from builder.reading.references import spelling

LISTED = "configurations"


def pack_in(pack: Pack, name: str) -> Pack:
    """The pack with what is there in a configuration, and its figures and maps."""
    return replace(pack, sections=tuple(section_in(section, name) for section in pack.sections))


def section_in(section: Section, name: str) -> Section:
    """A section with what is there in a configuration, and its figures and maps."""
    other = next((each for each in section.elsewhere if name in each.configurations), None)
    instead = {item.key: item for item in other.items} if other else {}
    fields = {field.key: field for field in section.fields}
    if other:
        fields |= {field.key: field for field in other.fields}
        fields = {key: field for key, field in fields.items() if key not in other.without_maps}
    gone = [item for item in section.items if not stands_in(instead.get(item.key, item), name)]
    keys = {item.key for item in gone} | set(other.without if other else ())
    items = tuple(instead.get(item.key, item) for item in section.items if not is_of(item, keys))
    outlines = (*section.outlines, *(other.outlines if other else ()))
    return replace(
        section,
        items=items,
        fields=tuple(fields.values()),
        outlines=tuple(each for each in outlines if is_drawn(each, items, gone)),
        elsewhere=(),
    )


def usual_pack(pack: Pack) -> Pack:
    """The pack as it usually stands: in the first configuration that the house names."""
    name = usual_name(pack)
    return pack_in(pack, name) if name else pack


def usual_part(section: Section, pack: Pack) -> Section:
    """A section as it usually stands."""
    name = usual_name(pack)
    return section_in(section, name) if name else section


def usual_name(pack: Pack) -> str:
    """The first configuration that the house names; empty where it names none."""
    house = pack.section("house")
    first = house.item("configuration") if house else None
    return first.name if first else ""


def stands_in(item: Item, name: str) -> bool:
    """Whether an item is there in a configuration: one that lists none is there in all."""
    listed = item.fact(LISTED)
    if listed is None or listed.value is None:
        return True
    return spelling(name) in map(spelling, listed.value.parts or (listed.value.text,))


def is_of(item: Item, keys: Set[str]) -> bool:
    """Whether an item is one of those of these keys, or a unit or part of one."""
    parts = item.key.split(".")
    around = {".".join(parts[:count]) for count in range(1, len(parts) + 1)}
    return item.unit_of in keys or not around.isdisjoint(keys)


def is_drawn(outline: Outline, items: Sequence[Item], gone: Sequence[Item]) -> bool:
    """Whether an outline is of something that is there."""
    is_gone = any(item.name == outline.name for item in gone)
    return not is_gone or any(item.name == outline.name for item in items)
