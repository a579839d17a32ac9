"""
What is left on each phase of every node of a power tree, and taking from it.

Numbers are in one unit throughout, such as ampere, or milliampere at the supply.
"""

PHASES = ("L1", "L2", "L3")

Room = dict[str, dict[str, float]]
"""What is left, by node and phase. A phase that nobody has a figure for is left out."""


def least_left(room: Room, path: list[str], phases: list[str]) -> float | None:
    """The least that is left on some phases along a path of nodes; None where no figure says."""
    least: float | None = None
    for node in path:
        for phase in phases:
            if phase in room[node]:
                here = room[node][phase]
                least = here if least is None or here < least else least
    return least


def less(room: Room, path: list[str], phases: list[str], amount: float) -> Room:
    """The room once an amount is taken on some phases along a path. The room given stays."""
    left = {**room}
    for node in path:
        here: dict[str, float] = {}
        for phase, free in room[node].items():
            here[phase] = free - amount if phase in phases else free
        left[node] = here
    return left
