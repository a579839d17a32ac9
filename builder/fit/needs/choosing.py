"""Which items of the pack answer a rule, and by which of their values."""

from builder.fit.records import Item, Rule, Section, Value
from builder.fit.values import text_of

BUT = "not "
"""Stands before a name where the rule looks at items with any other text."""


def items_for(section: Section, rule: Rule) -> list[Item]:
    """The items that can answer."""
    return [
        item for item in section["items"] if item["kind"] == rule["item"] and matches(item, rule)
    ]


def matches(item: Item, rule: Rule) -> bool:
    """Whether an item is of the sort that a rule looks at."""
    for condition in rule["where"]:
        name = condition[0].removeprefix(BUT)
        text = item["name"] if name == "name" else text_of(item, name)
        agrees = text == condition[1]
        if agrees == condition[0].startswith(BUT):
            return False
    return True


def value_for(item: Item, rule: Rule) -> Value | None:
    """The value of an item that answers a rule, or None."""
    value = item["values"].get(rule["value"])
    if rule["otherwise"] != "" and (value is None or value["standing"] == "not stated"):
        return item["values"].get(rule["otherwise"])
    return value
