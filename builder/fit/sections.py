"""What of a pack is looked at: a section, its items of a kind."""

from builder.fit.records import FitPack, Item, Section


def section_of(pack: FitPack, key: str) -> Section | None:
    """A section of the pack, or None."""
    for section in pack["sections"]:
        if section["key"] == key:
            return section
    return None


def section_items(pack: FitPack, key: str) -> list[Item]:
    """All items of a section; none of one that is not there."""
    section = section_of(pack, key)
    return section["items"] if section is not None else []


def items_of(section: Section | None, kind: str) -> list[Item]:
    """The items of a kind, in the pack's order; none of a section that is not there."""
    if section is None:
        return []
    return [item for item in section["items"] if item["kind"] == kind]
