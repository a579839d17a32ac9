"""
What is left on each phase of every node of a power tree, and taking from it.

Numbers are in one unit throughout, such as ampere, or milliampere at the supply.
"""

from typing import TypedDict

PHASES = ("L1", "L2", "L3")

Room = dict[str, dict[str, float]]
"""What is left, by node and phase. A phase that nobody has a figure for is left out."""


class Step(TypedDict):
    """
    What a load takes at one node on its way up: on which phases, and how much there for each
    ampere of the load, which a transformer changes.
    """

    node: str
    phases: list[str]
    times: float


Way = list[Step]
"""What a load takes from its own node up to the supply."""


def way_along(path: list[str], phases: list[str]) -> Way:
    """The way of a load that takes the same on the same phases all the way up."""
    return [{"node": node, "phases": phases, "times": 1.0} for node in path]


def least_left(room: Room, way: Way) -> float | None:
    """The least that a way leaves to a load, as seen by the load; None where no figure says."""
    least: float | None = None
    for step in way:
        for phase in step["phases"]:
            if phase in room[step["node"]]:
                here = room[step["node"]][phase] / step["times"]
                least = here if least is None or here < least else least
    return least


def less(room: Room, way: Way, amount: float) -> Room:
    """The room once a load of an amount is taken along its way. The room given stays."""
    left = {**room}
    for step in way:
        here: dict[str, float] = {}
        for phase, free in left[step["node"]].items():
            taken = amount * step["times"] if phase in step["phases"] else 0.0
            here[phase] = free - taken
        left[step["node"]] = here
    return left
