"""
A place for every load of a show at the same time: feeds on three phases, each on one of several
services, and lines of single-phase circuits on rows of outlets.

The search tries the choices of each load in order and goes back where a later load has no place. It
stops after a bound of steps, which are counted, not timed, so that the answer is the same on every
machine. Lines of circuits are first spread evenly; where the loads after them have no place then,
every other way to share them among the rows is tried, rows in order, so that no way is tried twice.

Planning figures: the local code and a licensed electrician decide.
"""

from math import fsum
from typing import Literal, TypedDict

from builder.formulas.circuit_rows import Row, Taken, filled, is_nested, left_for, with_one
from builder.formulas.cite import cites
from builder.formulas.phase_room import Room, Way, least_left, less
from builder.formulas.sources import LAND_DOIG


class Feed(TypedDict):
    """A feed of so much on each of three phases, and the ways up from each node that would do."""

    sort: Literal["feed"]
    amount: float
    ways: list[Way]


class Line(TypedDict):
    """A number of single-phase circuits of one size, and the rows that would do."""

    sort: Literal["line"]
    number: int
    rows: list[Row]


class Steps(TypedDict):
    """How many steps the search may still take; below 0 where it gave up."""

    left: int


class Places(TypedDict):
    """
    Where loads stand, and what is taken then: for each load the places of its choices in its list,
    one for a feed, one for each circuit of a line.
    """

    taken: Taken
    choices: list[list[int]]


@cites(
    LAND_DOIG,
    "branching, and a bound that no branch beyond it can pass",
    equation="one choice a load, so that sum of amounts <= what is left, at every node and phase",
)
def places_for(loads: list[Feed | Line], taken: Taken, steps: Steps) -> Places | None:
    """
    Find a place for every load.

    Parameters
    ----------
    loads
        Feeds and lines of circuits, with the choices of each in the order to try.
    taken
        What is left before, and what is in use.
    steps
        The bound, counted down while the search goes on.

    Returns
    -------
    Places or None
        The first placing that holds; None where there is none, or where the steps ran out.
    """
    return places_from(0, loads, taken, steps)


def places_from(index: int, loads: list[Feed | Line], taken: Taken, steps: Steps) -> Places | None:
    """A place for every load from an index on."""
    if index == len(loads):
        return {"taken": taken, "choices": []}
    load = loads[index]
    if load["sort"] == "line":
        return places_of_line(index, load, loads, taken, steps)
    return places_of_feed(index, load, loads, taken, steps)


def places_of_feed(
    index: int, feed: Feed, loads: list[Feed | Line], taken: Taken, steps: Steps
) -> Places | None:
    """A feed on the first of its nodes beside which all later loads have a place."""
    for number, way in enumerate(feed["ways"]):
        steps["left"] -= 1
        if steps["left"] < 0:
            return None
        left = least_left(taken["room"], way)
        if left is None or left >= feed["amount"]:
            room = less(taken["room"], way, feed["amount"])
            after: Taken = {"room": room, "used": taken["used"]}
            rest = places_from(index + 1, loads, after, steps)
            if rest is not None:
                return before(rest, [number])
    return None


def before(rest: Places, chosen: list[int]) -> Places:
    """The places of a load before those of the loads after it."""
    return {"taken": rest["taken"], "choices": [chosen, *rest["choices"]]}


def places_of_line(
    index: int, line: Line, loads: list[Feed | Line], taken: Taken, steps: Steps
) -> Places | None:
    """A line of circuits, spread evenly where later loads let it, else shared in any way."""
    even = filled(line["rows"], line["number"], taken)
    if len(even["rows"]) < line["number"]:
        steps["left"] -= len(even["rows"]) + 1
        # Two lines of one circuit share limits crosswise, so there another order might still fit
        # them all.
        if is_nested(line["rows"]):
            return None
    else:
        steps["left"] -= line["number"]
        rest = places_from(index + 1, loads, even["taken"], steps)
        if rest is not None:
            return before(rest, even["rows"])
    return places_of_shares(index, line, [], loads, taken, steps)


def places_of_shares(
    index: int,
    line: Line,
    chosen: list[int],
    loads: list[Feed | Line],
    taken: Taken,
    steps: Steps,
) -> Places | None:
    """Every way to share the circuits among the rows, from the row of the last one on."""
    if len(chosen) == line["number"]:
        rest = places_from(index + 1, loads, taken, steps)
        return None if rest is None else before(rest, chosen)
    first = chosen[-1] if len(chosen) > 0 else 0
    for number in range(first, len(line["rows"])):
        steps["left"] -= 1
        if steps["left"] < 0:
            return None
        row = line["rows"][number]
        if left_for(row, taken) is not None:
            after = with_one(row, taken)
            shares = places_of_shares(index, line, [*chosen, number], loads, after, steps)
            if shares is not None:
                return shares
    return None


def ask_too_much(loads: list[Feed | Line], room: Room, rounding: float) -> bool:
    """
    A short proof that loads cannot stand together: on a node that all choices of a load hang on,
    they ask more than all its phases have.

    Parameters
    ----------
    loads
        Feeds and lines of circuits.
    room
        What is left before any of them.
    rounding
        How much more than there is may be asked, in the unit of the room.

    Returns
    -------
    bool
        True is a proof; False says nothing.
    """
    for node, phases in room.items():
        wanted = fsum([least_there(load, node, phases) for load in loads])
        if len(phases) > 0 and wanted > fsum(phases.values()) + rounding:
            return True
    return False


def least_there(load: Feed | Line, node: str, phases: dict[str, float]) -> float:
    """The least that a load takes of all phases of a node together, on any of its choices."""
    if load["sort"] == "feed":
        return least_of_ways(load["ways"], node, phases) * load["amount"]
    if len(load["rows"]) == 0:
        return 0.0
    ways = [row["way"] for row in load["rows"]]
    return least_of_ways(ways, node, phases) * load["number"] * load["rows"][0]["amount"]


def least_of_ways(ways: list[Way], node: str, phases: dict[str, float]) -> float:
    """What the way that takes least of a node takes there, over all phases that have a figure."""
    least: float | None = None
    for way in ways:
        here = 0.0
        for step in way:
            if step["node"] == node:
                here += step["times"] * len([one for one in step["phases"] if one in phases])
        least = here if least is None or here < least else least
    return 0.0 if least is None else least
