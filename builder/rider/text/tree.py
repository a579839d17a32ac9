"""What a rider's text holds: texts, lists and groups of keys, each with its place."""

from typing import Literal, TypedDict


class Mistake(TypedDict):
    """
    What is wrong at one place of a text. Lines and columns count from 1; line 0 is the whole text.

    ``part`` is the part of the rider, such as ``needs[2]``, and ``path`` the key as the author
    would say it, such as ``needs[2].at least``; ``reason`` is what is wrong with the value,
    ``advice`` how to go on, ``code`` a heading of the problems page.
    """

    line: int
    column: int
    part: str
    path: str
    value: str
    reason: str
    code: str
    advice: str


class Node(TypedDict):
    """
    A value. A text has ``text``, a list has ``items``, a group has ``entries``; the others are
    empty.
    """

    kind: Literal["text", "list", "group"]
    text: str
    items: list["Node"]
    entries: list["Entry"]
    line: int
    column: int


class Entry(TypedDict):
    """A key of a group with its place and its value."""

    key: str
    line: int
    column: int
    value: Node


def text_node(text: str, line: int, column: int) -> Node:
    """A text at its place."""
    return {
        "kind": "text",
        "text": text,
        "items": [],
        "entries": [],
        "line": line,
        "column": column,
    }


def list_node(items: list[Node], line: int, column: int) -> Node:
    """A list at the place of its first sign."""
    return {
        "kind": "list",
        "text": "",
        "items": items,
        "entries": [],
        "line": line,
        "column": column,
    }


def group_node(entries: list[Entry], line: int, column: int) -> Node:
    """A group of keys at the place of its first sign."""
    return {
        "kind": "group",
        "text": "",
        "items": [],
        "entries": entries,
        "line": line,
        "column": column,
    }


def entry_of(group: Node, key: str) -> Entry | None:
    """The entry of a key, or None where the group does not have it."""
    for entry in group["entries"]:
        if entry["key"] == key:
            return entry
    return None


def key_path(path: str, key: str) -> str:
    """The path of a key below another path."""
    return f"{path}.{key}" if path != "" else key


def item_path(path: str, index: int) -> str:
    """The path of an item of a list; people count from 1."""
    return f"{path}[{index + 1}]"


def part_of(path: str) -> str:
    """The part of a rider that a path leads into: `needs[2]` for `needs[2].at least`."""
    point = path.find(".")
    return path[:point] if point >= 0 else path
