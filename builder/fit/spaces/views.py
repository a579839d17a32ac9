"""The pack of one space: what it has for itself, and what all share."""

from builder.fit.records import FitPack, FitSpace, Section

SPACE = "space"


def pack_of_space(pack: FitPack, space: FitSpace) -> FitPack:
    """The pack of one space, as that of a house of one stage."""
    own = [section for section in pack["sections"] if space_of(section) == space["key"]]
    keys = [section["key"] for section in own]
    shared = [
        section
        for section in pack["sections"]
        if space_of(section) == "" and section["key"] not in keys
    ]
    return {
        **pack,
        "sections": [with_own_space(section, space) for section in [*own, *shared]],
        "spaces": [],
    }


def space_of(section: Section) -> str:
    """The key of the space that a section is of; empty for what all share."""
    if "space" in section:
        return section["space"]
    return ""


def with_own_space(section: Section, space: FitSpace) -> Section:
    """A section that tells of no other space whether it can be had."""
    if section["key"] != "house":
        return section
    return {
        **section,
        "items": [
            item
            for item in section["items"]
            if item["kind"] != SPACE or item["name"] == space["name"]
        ],
    }
