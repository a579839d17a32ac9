"""What pages say of that which bears a thing."""

from dataclasses import replace

from builder.bearers.borne import Borne, bearing
from builder.pack import Item, Pack, Section


def as_pages_tell(pack: Pack) -> Pack:
    """
    A pack whose items say what bears them where that is limited, closed or out of service: beside
    their note, and as their state where they cannot work without it.
    """
    return replace(pack, sections=tuple(section_as_told(section) for section in pack.sections))


def section_as_told(section: Section) -> Section:
    """A section whose items say what bears them."""
    found = bearing(section)
    items = [
        as_told(item, found[item.key]) if item.key in found else item for item in section.items
    ]
    return replace(section, items=tuple(items))


def as_told(item: Item, borne: Borne) -> Item:
    """An item with what a page says of its bearers."""
    note = " ".join(part for part in (item.note, *borne.told) if part)
    return replace(item, condition=borne.condition, note=note)
