"""A value that was read, and how the parts of a group are taken from it."""

from typing import TypedDict

from builder.rider.text.tree import Node


class ReadValue(TypedDict):
    """
    A value of whichever sort: words, a count, yes or no, a day with its day of the week, a quantity
    in SI with its unit, a list, a group.

    ``whole`` says that nothing in it was wrong; of what is not whole only the place is true.
    """

    text: str
    si: float
    symbol: str
    count: int
    yes: bool
    weekday: str
    items: list["ReadValue"]
    keys: dict[str, "ReadValue"]
    whole: bool
    line: int
    column: int
    path: str


def blank_value(node: Node, path: str, whole: bool) -> ReadValue:
    """A value of which nothing but the place is known yet."""
    return {
        "text": "",
        "si": 0.0,
        "symbol": "",
        "count": 0,
        "yes": False,
        "weekday": "",
        "items": [],
        "keys": {},
        "whole": whole,
        "line": node["line"],
        "column": node["column"],
        "path": path,
    }


def has(group: ReadValue, key: str) -> bool:
    """Whether a group has a key whose value could be read."""
    return key in group["keys"] and group["keys"][key]["whole"]


def words_of(group: ReadValue, key: str) -> str:
    """The words of a key, or an author's wording of a quantity; empty where it is not written."""
    return group["keys"][key]["text"] if has(group, key) else ""


def si_of(group: ReadValue, key: str) -> float | None:
    """The quantity of a key in SI, or None where it is not written."""
    return group["keys"][key]["si"] if has(group, key) else None


def count_of(group: ReadValue, key: str) -> float | None:
    """The count of a key, as the check counts; None where it is not written."""
    return float(group["keys"][key]["count"]) if has(group, key) else None


def yes_of(group: ReadValue, key: str) -> bool:
    """Whether a key says yes; no where it is not written."""
    return has(group, key) and group["keys"][key]["yes"]


def items_of(group: ReadValue, key: str) -> list[ReadValue]:
    """The items of a list, or none."""
    return group["keys"][key]["items"] if key in group["keys"] else []


def group_of(group: ReadValue, key: str) -> ReadValue | None:
    """The group of a key, or None where it is not written or not whole."""
    return group["keys"][key] if has(group, key) else None


def place_of(group: ReadValue, key: str) -> ReadValue:
    """The value whose place is that of a key: its own, or the group's where it is not written."""
    return group["keys"].get(key, group)
