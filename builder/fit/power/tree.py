"""What feeds what, and how much is free on each phase there. [A]"""

from typing import TypedDict

from builder.fit.notes import age_notes, once
from builder.fit.records import Item, Section, Value
from builder.fit.values import least_of, most_of, number_of, text_of, value_of
from builder.formulas.phase_room import PHASES, Room, Step, Way

ROUNDING_A = 0.000001
DELTA = 0.5773502691896258
"""1/√3: what one line of a delta carries of a load between one line and neutral behind it."""
NODE_KINDS = ("supply", "generator", "service", "board")


class Node(TypedDict):
    """
    A supply, generator, service or board, and the name of what feeds it.

    ``free`` is what is free on each phase, ``least`` what is free there at least; a phase without a
    figure is left out of both. [A]
    """

    item: Item
    above: str
    free: dict[str, float]
    least: dict[str, float]


Tree = dict[str, Node]
"""The nodes by name, in the pack's order."""


def is_for_visitors(item: Item) -> bool:
    """Whether something works and visitors may use it."""
    return item["condition"] != "out of service" and item["terms"] != "not for visitors"


def tree_of(section: Section | None) -> Tree:
    """What feeds what, by name."""
    tree: Tree = {}
    if section is None:
        return tree
    for item in section["items"]:
        if item["kind"] in NODE_KINDS:
            tree[item["name"]] = {
                "item": item,
                "above": text_of(item, "fed_from"),
                "free": free_on(item),
                "least": least_on(item),
            }
    return tree


def free_on(item: Item) -> dict[str, float]:
    """Free current by phase, as far as the pack has figures. [A]"""
    free: dict[str, float] = {}
    for phase in PHASES:
        free_a = most_of(value_of(item, f"free.{phase}"))
        if free_a is not None:
            free[phase] = free_a
    return free


def least_on(item: Item) -> dict[str, float]:
    """
    What is free on each phase at least, or nothing where nobody knows that. [A]
    """
    least: dict[str, float] = {}
    for phase in free_on(item):
        least_a = least_of(value_of(item, f"free.{phase}"))
        least[phase] = 0.0 if least_a is None else least_a
    return least


def least_free(free: dict[str, float]) -> float | None:
    """The least of three phases, or None where none has a figure. [A]"""
    least: float | None = None
    for free_a in free.values():
        least = free_a if least is None or free_a < least else least
    return least


def known_least(free: dict[str, float]) -> float:
    """
    The least of the phases that have a figure. [A]

    Raises
    ------
    ValueError
        If none has: whoever asks must have looked before.
    """
    least_a = least_free(free)
    if least_a is None:
        raise ValueError("free must have a figure of at least one phase, got none")
    return least_a


def fullest(item: Item) -> Value | None:
    """The figure of the phase with least free, or the rating where the pack has no such figure."""
    least = least_free(free_on(item))
    for phase in PHASES:
        figure = item["values"].get(f"free.{phase}")
        if figure is not None and least is not None and most_of(figure) == least:
            return figure
    return item["values"].get("rating")


def fed_notes(item: Item) -> list[str]:
    """
    What to know of the checks behind what is free on a node. A figure of what is free is as sure as
    all that feeds it.
    """
    names = ["rating", *[f"free.{phase}" for phase in PHASES]]
    return once([note for name in names for note in age_notes(item["values"].get(name))])


def way_up(name: str, tree: Tree) -> list[str]:
    """A node and all that feeds it, by name; empty for what is no node."""
    path: list[str] = []
    while name in tree and name not in path:
        path.append(name)
        name = tree[name]["above"]
    return path


def way_of(path: list[str], phases: list[str], tree: Tree) -> Way:
    """What a load on some phases takes of a node and of all that feeds it, through transformers."""
    way: Way = []
    here: Way = [{"node": "", "phases": phases, "times": 1.0}]
    for name in path:
        for part in here:
            way.append({"node": name, "phases": part["phases"], "times": part["times"]})
        here = before_transformer(here, tree[name]["item"])
    return way


def before_transformer(here: Way, item: Item) -> Way:
    """
    What a load takes in front of the transformer of a node, which may put it on other lines: the
    same as the pack's figures count.
    """
    ratio = number_of(item, "through")
    if ratio is None:
        return here
    lines = number_of(item, "stands_on")
    if lines == 2.0:
        return [
            step_on(wired_phases(item), ratio * (1.0 if is_on_two(here) else 0.5) * sum_of(here))
        ]
    if lines == 3.0 and len(here) > 1:
        return [step_on([*PHASES], ratio * sum_of(here))]
    own = here[0]
    if lines != 3.0 or len(own["phases"]) == len(PHASES):
        return [step_on(part["phases"], ratio * part["times"]) for part in here]
    others = [phase for phase in PHASES if phase not in own["phases"]]
    most = 2.0 * DELTA if len(own["phases"]) == 2 else 1.0
    return [
        step_on(own["phases"], ratio * most * own["times"]),
        step_on(others, ratio * DELTA * own["times"]),
    ]


def step_on(phases: list[str], times: float) -> Step:
    """So much on some phases, of a node that is named later."""
    return {"node": "", "phases": phases, "times": times}


def is_on_two(here: Way) -> bool:
    """Whether a load takes the same on more than one line."""
    return len(here) == 1 and len(here[0]["phases"]) > 1


def sum_of(here: Way) -> float:
    """All that a load may take of one line together."""
    total = 0.0
    for part in here:
        total += part["times"]
    return total


def wired_phases(item: Item) -> list[str]:
    """The phases that a node has, as far as the pack says."""
    return phases_in(text_of(item, "wired"))


def phases_in(text: str) -> list[str]:
    """The phases that words such as "L1 L2" name."""
    words = text.split(" ")
    return [phase for phase in PHASES if phase in words]


def outage(path: list[str], tree: Tree) -> str:
    """The nearest on a way up that is out of service; empty where all of it works."""
    for name in path:
        if tree[name]["item"]["condition"] == "out of service":
            return name
    return ""


def free_room(tree: Tree) -> Room:
    """What is free everywhere before anything is placed. [A]"""
    return {name: node["free"] for name, node in tree.items()}


def sure_room(tree: Tree) -> Room:
    """What is free everywhere at least, before anything is placed. [A]"""
    return {name: node["least"] for name, node in tree.items()}


def first_unsure(way: Way, room: Room, tree: Tree) -> str | None:
    """
    The first thing along a way that holds what was placed only if what nobody has measured draws
    little; None where all of it surely holds.
    """
    for step in way:
        name = step["node"]
        for phase in step["phases"]:
            if phase in room[name]:
                open_a = tree[name]["free"][phase] - tree[name]["least"][phase]
                if room[name][phase] - open_a < -ROUNDING_A:
                    return name
    return None
