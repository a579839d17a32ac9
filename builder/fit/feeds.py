"""
What feeds what, and how much is free on each phase: the tree of power as plain records, and taking
from it.
"""

from typing import Any

from builder.fit.verdicts import Record

PHASES = ("L1", "L2", "L3")
ROUNDING_A = 0.000001


def tree(section: Any) -> dict[str, Record]:
    """
    What feeds what, by name: what is free on each phase, what is free there at least, and the name
    of what feeds it.
    """
    nodes: dict[str, Record] = {}
    for item in section["items"] if section is not None else []:
        if item["kind"] in ("supply", "generator", "service", "board"):
            above = item["values"]["fed_from"]["text"] if "fed_from" in item["values"] else ""
            nodes[item["name"]] = {
                "free": free_on(item),
                "least": least_on(item),
                "above": above,
                "item": item,
            }
    return nodes


def least_on(item: Record) -> dict[str, Any]:
    """
    What is free on each phase at least: where the figure is an upper bound, the pack's lower one,
    or nothing.
    """
    values = item["values"]
    least = free_on(item)
    for phase in PHASES:
        if least[phase] is not None and values["free." + phase]["bound"]:
            least[phase] = (
                values["free-least." + phase]["number"] if "free-least." + phase in values else 0.0
            )
    return least


def free_on(item: Record) -> dict[str, Any]:
    """Free current by phase; None where the pack has no such figure."""
    values = item["values"]
    return {
        phase: values["free." + phase]["number"] if "free." + phase in values else None
        for phase in PHASES
    }


def free_of(item: Record) -> Any:
    """Free current on the fullest phase, or None where the pack has no such figure."""
    return least_free(free_on(item))


def least_free(free: dict[str, Any]) -> Any:
    """The least of three phases, or None where none has a figure."""
    least = None
    for phase in PHASES:
        if free[phase] is not None:
            least = free[phase] if least is None or free[phase] < least else least
    return least


def fullest(item: Record) -> Any:
    """The figure of the phase with least free, or the rating where the pack has no such figure."""
    least = free_of(item)
    for phase in PHASES:
        if (
            "free." + phase in item["values"]
            and item["values"]["free." + phase]["number"] == least
            and least is not None
        ):
            return item["values"]["free." + phase]
    return item["values"].get("rating")


def above(name: str, nodes: dict[str, Record]) -> list[str]:
    """A service and all that feeds it."""
    path: list[str] = []
    while name in nodes and name not in path:
        path.append(name)
        name = nodes[name]["above"]
    return path


def outage(path: list[str], nodes: dict[str, Record]) -> str:
    """The nearest on a way up that is out of service; empty where all of it works."""
    for name in path:
        if nodes[name]["item"]["condition"] == "out of service":
            return name
    return ""


def room_of(nodes: dict[str, Record]) -> dict[str, Record]:
    """What is free everywhere before anything is placed."""
    return {name: nodes[name]["free"] for name in nodes}


def least_of_all(nodes: dict[str, Record]) -> dict[str, Record]:
    """What is free everywhere at least, before anything is placed."""
    return {name: nodes[name]["least"] for name in nodes}


def not_sure(
    path: list[str], phases: list[str], room: dict[str, Record], nodes: dict[str, Record]
) -> Any:
    """
    The first thing along a path that holds what was placed only if what nobody has measured draws
    little; None where all of it surely holds.
    """
    for name in path:
        for phase in phases:
            here = room[name][phase]
            if (
                here is not None
                and here - (nodes[name]["free"][phase] - nodes[name]["least"][phase]) < -ROUNDING_A
            ):
                return name
    return None


def least_room(path: list[str], phases: list[str], room: dict[str, Record]) -> Any:
    """The least that is free on these phases along a path, or None where no figure says."""
    least = None
    for name in path:
        for phase in phases:
            here = room[name][phase]
            if here is not None and (least is None or here < least):
                least = here
    return least


def less(
    room: dict[str, Record], path: list[str], phases: list[str], current_a: float
) -> dict[str, Record]:
    """
    The room once a current is taken on these phases along a path.

    The room given stays as it is.
    """
    left = {**room}
    for name in path:
        left[name] = {
            phase: taken(room[name][phase], current_a) if phase in phases else room[name][phase]
            for phase in PHASES
        }
    return left


def taken(free: Any, current_a: float) -> Any:
    """What is left of a free current; None stays None."""
    return None if free is None else free - current_a


def system_of(item: Record, section: Record) -> str:
    """The system of an item, or of what feeds it."""
    seen: list[str] = []
    here: Any = item
    while here is not None and here["name"] not in seen:
        seen.append(here["name"])
        if "system" in here["values"]:
            return str(here["values"]["system"]["text"])
        above_name = str(here["values"]["fed_from"]["text"]) if "fed_from" in here["values"] else ""
        here = next(
            (
                other
                for other in section["items"]
                if other["name"] == above_name and other["kind"] not in ("load", "outlet")
            ),
            None,
        )
    return ""


def volts(text: str) -> str:
    """The voltages of a system's words: 230/400 of "230/400 V three phase"."""
    return str(text).split("V")[0].replace(" ", "")
