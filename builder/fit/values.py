"""The values of an item by name, whether a verdict may show them or they are only counted with."""

from builder.fit.records import Item, Value

TOLD = "told"
"""Ends the name of what is told beside a value."""
LACKS = "lacks"
"""Ends the name of what a figure lacks."""
OPEN = "open"
"""Names what nobody weighed of what hangs in the house, on an item with at most so much left."""
RULE = "rule"
"""Ends the name of the rule of the house that a figure lacks, where it holds for many things."""
BEARERS = "bearers"
"""Names what is told of that which an item stands on, hangs from, is fed from or passes."""
BEARERS_ASKED = "bearers.asked"
"""Names what has to be asked of that, as a clause."""


def value_of(item: Item, name: str) -> Value | None:
    """A value that a verdict may show, or None where the item has none of that name."""
    return item["values"].get(name)


def number_of(item: Item | None, name: str) -> float | None:
    """A value's number, or None where the pack has no such item or number. [SI]"""
    if item is None:
        return None
    if name in item["numbers"]:
        return item["numbers"][name]
    if name in item["values"]:
        return item["values"][name]["number"]
    return None


def least_of(value: Value | None) -> float | None:
    """What a value is at least, or None where nobody knows. [SI]"""
    if value is None or value["number"] is not None:
        return None if value is None else value["number"]
    return value["least"]


def most_of(value: Value | None) -> float | None:
    """What a value is at most, or None where nobody knows. [SI]"""
    if value is None or value["number"] is not None:
        return None if value is None else value["number"]
    return value["most"]


def counted_least(item: Item, name: str) -> float | None:
    """What a value that is only counted with is at least, or None where nobody knows. [SI]"""
    number = number_of(item, name)
    return item["numbers"].get(f"{name}.least") if number is None else number


def counted_most(item: Item, name: str) -> float | None:
    """What a value that is only counted with is at most, or None where nobody knows. [SI]"""
    number = number_of(item, name)
    return item["numbers"].get(f"{name}.most") if number is None else number


def less(first: float | None, second: float | None) -> float | None:
    """The first less the second, or None where one of them is not known."""
    return None if first is None or second is None else first - second


def is_choice(value: Value | None) -> bool:
    """Whether the house chooses a value, and has not chosen yet."""
    if value is None or value["standing"] != "stated":
        return False
    return value["can_be_set"] and value["number"] is None


def key_beside(item: Item, name: str) -> str:
    """A key for something of an item, whether it has a value of that name or not."""
    return f"{item['key']}.{name}"


def lacking_of(item: Item, name: str) -> str:
    """What a figure of an item lacks, in words, or nothing."""
    return item["words"].get(f"{name}.{LACKS}", "")


def rule_lacking(item: Item) -> str:
    """The rule for all of its kind by which an item has no limit, in words, or nothing."""
    return item["words"].get(f"limit.{RULE}", "")


def is_set(value: Value) -> bool:
    """Whether a value that the house chooses stands at one of its choices."""
    return value["can_be_set"] and value["number"] is not None


def text_of(item: Item, name: str) -> str:
    """A value's text, or an empty one."""
    if name in item["words"]:
        return item["words"][name]
    if name in item["values"]:
        return item["values"][name]["text"]
    return ""


def told_of(item: Item, name: str) -> str:
    """What is told beside a value, or nothing."""
    return item["words"].get(f"{name}.{TOLD}", "")


def asked_of_bearers(item: Item) -> str:
    """What has to be asked of what bears an item, as a clause, or nothing."""
    return item["words"].get(BEARERS_ASKED, "")


def is_said(item: Item, name: str) -> bool:
    """Whether the house says a value, or that there is none of it."""
    if name in item["values"]:
        return item["values"][name]["standing"] not in ("unknown", "not stated")
    return name in item["words"]


def parts_of(item: Item, name: str) -> list[str]:
    """The entries of a value that is a list, or none."""
    if name in item["values"]:
        return item["values"][name]["parts"]
    return []


def listed(name: str, names: list[str]) -> bool:
    """Whether a name is among names, whatever the capitals. No name is among none."""
    return name != "" and any(other.lower() == name.lower() for other in names)


def known_number(item: Item, name: str) -> float:
    """
    A number that is known to be there. [SI]

    Raises
    ------
    ValueError
        If the item has no such number: whoever asks must have looked before.
    """
    number = number_of(item, name)
    if number is None:
        raise ValueError(f"{name} of {item['key']} must be known here, got no number")
    return number
