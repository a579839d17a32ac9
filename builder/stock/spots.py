"""
Where each value stands in a file's text: the characters that are its own, so that an edit can
replace them and leave all others.
"""

from dataclasses import dataclass
from typing import Literal

import yaml

from builder.reading.nodes import Path, parsable


@dataclass(frozen=True, slots=True)
class Spot:
    """
    One value's own characters, ``text[start:end]``, without the white space and comments that
    follow.

    ``keys`` are the start of each key and its name, for a group; ``parts`` the values of a group or
    the entries of a list. ``mark`` is the quote or block sign of a text, empty where it has none.
    ``column`` counts from 0.
    """

    kind: Literal["text", "group", "list"]
    start: int
    end: int
    column: int
    mark: str = ""
    flow: bool = False
    keys: tuple[tuple[int, str], ...] = ()
    parts: "tuple[Spot, ...]" = ()

    def key(self, name: str) -> int | None:
        """Which of the keys bears the name, or None."""
        return next((count for count, (_, key) in enumerate(self.keys) if key == name), None)

    def starts(self) -> tuple[int, ...]:
        """Where each part begins: at its key in a group, at itself in a list."""
        return (
            tuple(start for start, _ in self.keys)
            if self.kind == "group"
            else tuple(part.start for part in self.parts)
        )


def spots_of(text: str) -> Spot:
    """The top level of a text that has been read without problems before."""
    node = yaml.compose(parsable(text), Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader))
    if node is None:
        raise ValueError("text must hold a value, got none")
    return spot_of(node, text)


def spot_of(node: yaml.Node, text: str) -> Spot:
    """
    A parser's node as a spot.

    A block's end is that of its last part: the parser counts what follows it too.
    """
    start, end, column = node.start_mark.index, node.end_mark.index, node.start_mark.column
    if isinstance(node, yaml.MappingNode):
        keys = tuple((key.start_mark.index, str(key.value)) for key, _ in node.value)
        parts = tuple(spot_of(value, text) for _, value in node.value)
        flow = bool(node.flow_style)
        return Spot(
            "group",
            start,
            end if flow else parts[-1].end,
            column,
            flow=flow,
            keys=keys,
            parts=parts,
        )
    if isinstance(node, yaml.SequenceNode):
        parts = tuple(spot_of(entry, text) for entry in node.value)
        flow = bool(node.flow_style)
        return Spot("list", start, end if flow else parts[-1].end, column, flow=flow, parts=parts)
    mark = (node.style or "") if isinstance(node, yaml.ScalarNode) else ""
    own = start + len(text[start:end].rstrip()) if mark in ("|", ">") else end
    return Spot("text", start, own, column, mark=mark)


def spot_at(root: Spot, path: Path) -> Spot | None:
    """The spot at a path, or None where nothing is written there."""
    found = root
    for step in path:
        place = (
            found.key(step) if isinstance(step, str) else step if step < len(found.parts) else None
        )
        if place is None:
            return None
        found = found.parts[place]
    return found


def line_start(text: str, position: int) -> int:
    """Where the line of a position begins."""
    return text.rfind("\n", 0, position) + 1


def line_end(text: str, position: int) -> int:
    """Where the line of a position ends, before its line end."""
    found = text.find("\n", position)
    if found < 0:
        return len(text)
    return found - 1 if found > position and text[found - 1] == "\r" else found


def past_line(text: str, position: int) -> int:
    """Where the next line begins, or the end of the text."""
    found = text.find("\n", position)
    return len(text) if found < 0 else found + 1
