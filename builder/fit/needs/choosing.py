"""Which items of the pack answer a rule, and by which of their values."""

from builder.fit.records import Item, Rule, Section, Value
from builder.fit.values import is_said, parts_of, text_of
from builder.reading.values.sentences import within_sentence


def items_for(section: Section, rule: Rule) -> list[Item]:
    """The items that are said to be of the sort that a rule looks at."""
    return [
        item for item in of_kind(section, rule) if unsaid(item, rule) == "" and fits(item, rule)
    ]


def items_perhaps(section: Section, rule: Rule) -> list[Item]:
    """The items that may be of that sort, for all that is said."""
    return [item for item in of_kind(section, rule) if fits(item, rule)]


def of_kind(section: Section, rule: Rule) -> list[Item]:
    """The items of a rule's kind, and those of other kinds that answer beside them."""
    return [
        item
        for item in section["items"]
        if item["kind"] == rule["item"] or value_beside(item, rule) is not None
    ]


def value_beside(item: Item, rule: Rule) -> Value | None:
    """The value by which an item of another kind answers beside a rule's own, or None."""
    for pair in rule["also"]:
        value = item["values"].get(pair[1]) if item["kind"] == pair[0] else None
        if value is not None and value["standing"] != "not stated":
            return value
    return None


def fits(item: Item, rule: Rule) -> bool:
    """Whether an item says nothing that makes it another sort than a rule looks at."""
    for condition in rule["where"]:
        name, wanted = condition
        is_so = told(item, name) in wanted.split("|") or wanted in parts_of(item, name)
        if is_told(item, name) and not is_so:
            return False
    return True


def unsaid(item: Item, rule: Rule) -> str:
    """What a rule goes by and an item does not say; empty where it says all."""
    for condition in rule["where"]:
        if not is_told(item, condition[0]):
            value = item["values"].get(condition[0])
            if value is None:
                return condition[0].replace("_", " ")
            return within_sentence(value["label"])
    return ""


def is_told(item: Item, name: str) -> bool:
    """Whether an item says something that a rule goes by. Its name is always said."""
    return name == "name" or is_said(item, name)


def told(item: Item, name: str) -> str:
    """What an item says of that."""
    return item["name"] if name == "name" else text_of(item, name)


def answered_elsewhere(rule: Rule) -> Rule:
    """The rule as the section that can answer in place of its own answers it."""
    section, item, value = rule["elsewhere"]
    return {
        **rule,
        "section": section,
        "item": item,
        "value": value,
        "beside": "",
        "where": [],
        "also": [],
    }


def value_for(item: Item, rule: Rule) -> Value | None:
    """The value of an item that answers a rule, or None."""
    if item["kind"] != rule["item"]:
        return value_beside(item, rule)
    value = item["values"].get(rule["value"])
    for name in rule["otherwise"]:
        if value is None or value["standing"] == "not stated":
            value = item["values"].get(name)
    return value
