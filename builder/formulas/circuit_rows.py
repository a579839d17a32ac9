"""
Circuits of one size on rows of outlets, one after the other, each where most is left.

Limits that lie one in another, such as breakers up a tree on one phase, make a matroid for circuits
of one size: then taking any circuit that still fits finds the most of them, so what this cannot
take, nobody can. Circuits between two lines share limits crosswise; there the greedy way may miss
some, and its count is only what was found.

Planning figures: the local code and a licensed electrician decide.
"""

from typing import TypedDict

from builder.formulas.cite import cites
from builder.formulas.phase_room import Room, Way, least_left, less
from builder.formulas.sources import EDMONDS


class Row(TypedDict):
    """
    Equal outlets on a node, for circuits of one size.

    ``way`` tells what a circuit takes from their node up to the supply. ``amount`` is what one
    takes of the room there, ``per_ampere`` how much room an ampere at the outlet is. ``preferred``
    rows are filled before others.
    """

    key: str
    way: Way
    phases: list[str]
    slots: int
    amount: float
    per_ampere: float
    preferred: bool


class Taken(TypedDict):
    """The room that is left, and how many outlets of each row are in use."""

    room: Room
    used: dict[str, int]


class Filled(TypedDict):
    """The rows that circuits went on, by their place in the list, and what is taken then."""

    rows: list[int]
    taken: Taken


def is_nested(rows: list[Row]) -> bool:
    """
    Whether each circuit takes from one phase of each node, and all take the same there, so that all
    limits lie one in another.
    """
    times: dict[str, float] = {}
    for row in rows:
        for step in row["way"]:
            if len(step["phases"]) != 1 or times.get(step["node"], step["times"]) != step["times"]:
                return False
            times[step["node"]] = step["times"]
    return True


def left_for(row: Row, taken: Taken) -> float | None:
    """What is left for a row's next circuit; None where it does not fit there."""
    if taken["used"].get(row["key"], 0) >= row["slots"]:
        return None
    left = least_left(taken["room"], row["way"])
    if left is None or left < row["amount"]:
        return None
    return left


@cites(
    EDMONDS,
    "the greedy algorithm for matroids; for circuits of one size, limits that lie one in another"
    " make one",
    equation="next = the row left with most: max over rows of min up the tree of what is left",
)
def next_row(rows: list[Row], taken: Taken) -> int | None:
    """
    The row for the next circuit: a preferred one before others, then the one with most left, so
    that phases fill evenly.

    Parameters
    ----------
    rows
        Rows of outlets, all for circuits of one size.
    taken
        What is left, and what is in use.

    Returns
    -------
    int or None
        The row by its place in the list, the first among equals; None where no circuit fits.
    """
    best: int | None = None
    best_left = 0.0
    for index, row in enumerate(rows):
        room = left_for(row, taken)
        if room is not None:
            left_a = room / row["per_ampere"]
            if best is None or is_better(row, left_a, rows[best], best_left):
                best, best_left = index, left_a
    return best


def is_better(row: Row, left_a: float, other: Row, other_left_a: float) -> bool:
    """Whether the next circuit goes on a row rather than on another that comes before it."""
    if row["preferred"] != other["preferred"]:
        return row["preferred"]
    return left_a > other_left_a


def with_one(row: Row, taken: Taken) -> Taken:
    """What is taken with one more circuit on a row."""
    return {
        "room": less(taken["room"], row["way"], row["amount"]),
        "used": {**taken["used"], row["key"]: taken["used"].get(row["key"], 0) + 1},
    }


def filled(rows: list[Row], number: int, taken: Taken) -> Filled:
    """So many circuits on rows, each by :func:`next_row`; fewer where no more fit."""
    chosen: list[int] = []
    while len(chosen) < number:
        index = next_row(rows, taken)
        if index is None:
            break
        chosen.append(index)
        taken = with_one(rows[index], taken)
    return {"rows": chosen, "taken": taken}
