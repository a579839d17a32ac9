"""What of a pack is looked at: a section, its items of a kind, those of a configuration."""

from builder.fit.records import Asked, Asker, FitPack, Item, Section, Verdict
from builder.fit.sentences import (
    NO_SUCH_CONFIGURATION,
    NOT_FOR_CONFIGURATION,
    WHICH_CONFIGURATION,
    fill,
)
from builder.fit.verdicts import ASK, asked, verdict


def section_of(pack: FitPack, key: str) -> Section | None:
    """A section of the pack, or None."""
    for section in pack["sections"]:
        if section["key"] == key:
            return section
    return None


def items_of(section: Section | None, kind: str) -> list[Item]:
    """The items of a kind, in the pack's order; none of a section that is not there."""
    if section is None:
        return []
    return [item for item in section["items"] if item["kind"] == kind]


def in_configuration(item: Item, configuration: str) -> bool:
    """
    Whether an item belongs to the configuration asked for.

    Items that name none belong to all.
    """
    if configuration == "":
        return True
    if item["kind"] == "configuration":
        return item["name"] == configuration
    if "configurations" in item["values"]:
        return configuration in item["values"]["configurations"]["parts"]
    return True


def which_configuration(requirement: Asked, asker: Asker, pack: FitPack) -> Verdict:
    """
    The house has what is asked, but not for the configuration that the rider names: it names no
    such one, or has not said for it.
    """
    names = [item["name"] for item in items_of(section_of(pack, "house"), "configuration")]
    written = requirement["configuration"]
    if len(names) == 0 or written in names:
        return asked(requirement, asker, fill(NOT_FOR_CONFIGURATION, {"configuration": written}))
    parts = {
        "act": requirement["act"],
        "configuration": written,
        "names": "; ".join(names),
    }
    answer = verdict(requirement, ASK, fill(NO_SUCH_CONFIGURATION, parts))
    answer["question"] = fill(WHICH_CONFIGURATION, parts)
    return answer
