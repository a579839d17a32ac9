"""A pack as it stands in one arrangement of the house: what all share, and what stands in it."""

from builder.fit.arrangements.records import View
from builder.fit.records import FitPack, Item, Outline, Section
from builder.fit.sections import items_of, section_of
from builder.fit.values import is_choice, is_set, parts_of

CONFIGURATION = "configuration"
LISTED = "configurations"
ALL = "all"
STANDS, STANDS_NOT = "+", "-"


def configurations_of(pack: FitPack) -> list[str]:
    """The configurations that the house names, then those that only its lines name, each once."""
    named = [item["name"] for item in items_of(section_of(pack, "house"), CONFIGURATION)]
    for section in pack["sections"]:
        for item in section["items"]:
            named.extend(parts_of(item, LISTED))
    names: list[str] = []
    for name in named:
        if name not in names:
            names.append(name)
    return names


def view_of(pack: FitPack, configuration: str) -> View:
    """The pack of one configuration; of an empty one, what stands in all of them."""
    return {
        **pack,
        "sections": [section_in(section, configuration) for section in pack["sections"]],
        "standing": {
            section["key"]: standing_in(section, configuration) for section in pack["sections"]
        },
    }


def whole_view(pack: FitPack) -> View:
    """The pack with the lines of all configurations at once."""
    return {
        **pack,
        "standing": {section["key"]: ALL + set_in(section) for section in pack["sections"]},
    }


def narrowed(view: View, keys: list[str]) -> View:
    """A view of some sections only."""
    return {**view, "sections": [each for each in view["sections"] if each["key"] in keys]}


def section_in(section: Section, configuration: str) -> Section:
    """A section with those of its lines that stand in a configuration."""
    there = items_instead(section, configuration)
    every = [there.get(item["key"], item) for item in section["items"]]
    gone = [item["key"] for item in every if not stands_in(item, configuration)]
    without = gone_instead(section, configuration)
    return {
        **section,
        "items": [
            item
            for item in every
            if stands_in(item, configuration) and not is_of(item, gone, without)
        ],
        "outlines": outlines_in(section, configuration),
    }


def outlines_in(section: Section, configuration: str) -> list[Outline]:
    """The outlines of a section in a configuration."""
    if "instead" in section:
        for each in section["instead"]:
            if configuration in each["configurations"]:
                return each["outlines"]
    return section["outlines"]


def is_of(item: Item, gone: list[str], without: list[str]) -> bool:
    """
    Whether an item is a part of one that is gone, whose key it goes on from, or is not there though
    it says no configuration.
    """
    return item["key"] in without or any(item["key"].startswith(f"{key}.") for key in gone)


def items_instead(section: Section, configuration: str) -> dict[str, Item]:
    """The items that are otherwise in a configuration than in the usual one, by their keys."""
    found: dict[str, Item] = {}
    if "instead" not in section:
        return found
    for each in section["instead"]:
        if configuration in each["configurations"]:
            for item in each["items"]:
                found[item["key"]] = item
    return found


def standing_in(section: Section, configuration: str) -> str:
    """
    Which lines of a section stand in a configuration, of those that need not, in order; and at what
    its values stand that the house chooses.
    """
    stands = "".join(
        STANDS if stands_in(item, configuration) else STANDS_NOT
        for item in section["items"]
        if not stands_in(item, "")
    )
    return stands + which_instead(section, configuration) + set_in(section)


def gone_instead(section: Section, configuration: str) -> list[str]:
    """The keys of items that are not there in a configuration, though they say none."""
    if "instead" not in section:
        return []
    return [
        key
        for each in section["instead"]
        if configuration in each["configurations"]
        for key in each["without"]
    ]


def which_instead(section: Section, configuration: str) -> str:
    """Of which configurations a section has items otherwise; empty where it has none."""
    if "instead" not in section:
        return ""
    return "".join(
        "; ".join(each["configurations"])
        for each in section["instead"]
        if configuration in each["configurations"]
    )


def set_in(section: Section) -> str:
    """At what the values of a section stand that the house chooses; empty where none does."""
    return "".join(
        value["text"]
        for item in section["items"]
        for value in item["values"].values()
        if is_set(value)
    )


def has_choices(pack: FitPack) -> bool:
    """Whether the house chooses any value of a pack."""
    return any(
        is_choice(value)
        for section in pack["sections"]
        for item in section["items"]
        for value in item["values"].values()
    )


def stands_in(item: Item, configuration: str) -> bool:
    """
    Whether a line stands in a configuration: one that lists configurations stands in those only,
    found by their whole names.
    """
    if item["kind"] == CONFIGURATION:
        return item["name"] == configuration
    if LISTED not in item["values"] or item["values"][LISTED]["standing"] == "not stated":
        return True
    return configuration in parts_of(item, LISTED)
