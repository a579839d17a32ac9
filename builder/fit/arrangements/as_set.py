"""A pack as it stands when the house has set what it chooses."""

from builder.fit.arrangements.sentences import AT_SETTING
from builder.fit.records import FitPack, Item, Section, Setting, Value
from builder.fit.sentences import fill


def pack_at(pack: FitPack, settings: list[Setting]) -> FitPack:
    """A pack whose values stand at these settings."""
    by_key = {setting["key"]: setting for setting in settings}
    return {
        **pack,
        "sections": [section_at(section, by_key) for section in pack["sections"]],
    }


def section_at(section: Section, settings: dict[str, Setting]) -> Section:
    """A section whose values stand at these settings, in every configuration."""
    found: Section = {
        **section,
        "items": [item_at(item, settings) for item in section["items"]],
    }
    if "instead" in section:
        found["instead"] = [
            {**each, "items": [item_at(item, settings) for item in each["items"]]}
            for each in section["instead"]
        ]
    return found


def item_at(item: Item, settings: dict[str, Setting]) -> Item:
    """An item whose values stand at these settings, by the values' keys."""
    if all(value["key"] not in settings for value in item["values"].values()):
        return item
    return {
        **item,
        "values": {name: value_at(value, settings) for name, value in item["values"].items()},
    }


def value_at(value: Value, settings: dict[str, Setting]) -> Value:
    """A value at its setting, exact; as it is where it has none."""
    if value["key"] not in settings:
        return value
    setting = settings[value["key"]]
    parts = {"amount": setting["words"][0], "text": value["text"]}
    return {
        **value,
        "number": setting["number"],
        "text": fill(AT_SETTING, parts),
        "also": setting["words"][1],
    }
