"""A tree as plain data, what a YAML parser says of the same text, and texts made by chance."""

import random
from pathlib import Path
from typing import Any

from builder.reading.nodes import compose
from builder.reading.problems import Problem, Refused, Where
from builder.rider.text.document import read_tree
from builder.rider.text.tree import Mistake, Node

ROOT = Path(__file__).parents[3]
RIDERS = [
    *(path.read_text("utf-8") for path in sorted((ROOT / "tests" / "riders").glob("*.yml"))),
    (ROOT / "builder" / "starter" / "rider.yaml").read_text("utf-8"),
]
Path_ = tuple[str | int, ...]
Placed = tuple[Any, dict[Path_, tuple[int, int]], dict[Path_, tuple[int, int]]]
"""Data, the place of each value, the place of each key."""

SHORT = "a b c 1 : ? [ ] { } , # ' \" % - @ | ~ é 😀 yes << --- ... \\ \\n \\x41 \\u0041 '' *x &x"
SPACED = ("a: ", "b: ", "key: ", "- ", "? ", ": ", ", ", " #", "!t ", " ", "  ", "\\ ", "12 m")
BREAKS = ("\n", "\n ", "\n  ", "\n    ", "\n\n", "\n- ", "\n  - ", "\t", "\r", "\r\n")
BLOCKS = ("|-\n", ">\n", ">+\n", "|2\n", "\x07", "\ufeff", "27'-10 1/2\"", "stage width")
SIGNS = [*SHORT.split(), *SPACED, *BREAKS, *BLOCKS]
"""Pieces of which texts are made by chance: mostly signs that YAML uses."""


def data_of(node: Node) -> Any:
    """A tree as texts, lists and dictionaries."""
    if node["kind"] == "text":
        return node["text"]
    if node["kind"] == "list":
        return [data_of(item) for item in node["items"]]
    return {entry["key"]: data_of(entry["value"]) for entry in node["entries"]}


def placed(node: Node) -> Placed:
    """A tree with its places."""
    values: dict[Path_, tuple[int, int]] = {}
    keys: dict[Path_, tuple[int, int]] = {}

    def note(node: Node, path: Path_) -> None:
        values[path] = (node["line"], node["column"])
        for index, item in enumerate(node["items"]):
            note(item, (*path, index))
        for entry in node["entries"]:
            keys[(*path, entry["key"])] = (entry["line"], entry["column"])
            note(entry["value"], (*path, entry["key"]))

    note(node, ())
    return data_of(node), values, keys


def by_the_parser(text: str) -> Placed | None:
    """What PyYAML makes of a text, or None where it is refused."""
    plain = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    try:
        composed = compose(plain, "rider.yml")
    except Refused:
        return None
    return (
        composed.data,
        {path: (where.line, where.column) for path, where in composed.places.items()},
        {path: (where.line, where.column) for path, where in composed.key_places.items()},
    )


def by_our_reader(text: str) -> Placed | None:
    """What our own reader makes of it, or None where it is refused."""
    reading = read_tree(text)
    return placed(reading["tree"]) if reading["mistakes"] == [] else None


def said(mistake: Mistake) -> str:
    """A mistake as the terminal prints it."""
    where = Where("rider.yml", mistake["line"], mistake["column"])
    words = mistake["reason"], mistake["code"], mistake["advice"]
    return str(Problem(where, mistake["path"], mistake["value"], *words))


def soup(draw: random.Random) -> str:
    """A text of pieces, below a key or not."""
    text = "".join(draw.choice(SIGNS) for _ in range(draw.randint(1, 14)))
    return f"a: {text}" if draw.random() < 0.6 else text


def damaged_rider(draw: random.Random) -> str:
    """A few lines of a rider with up to three changes."""
    lines = draw.choice(RIDERS).splitlines(keepends=True)
    first = draw.randrange(len(lines))
    text = "act: A\n" + "".join(lines[first : first + draw.randint(1, 12)])
    for _ in range(draw.randint(0, 3)):
        start = draw.randrange(len(text) + 1)
        text = text[:start] + draw.choice(SIGNS) + text[start + draw.choice((0, 0, 1, 2, 5)) :]
    return text


def spoiled(count: int, seed: int) -> list[str]:
    """So many texts made by chance, half of them near a rider."""
    draw = random.Random(seed)
    return [damaged_rider(draw) if draw.random() < 0.5 else soup(draw) for _ in range(count)]
