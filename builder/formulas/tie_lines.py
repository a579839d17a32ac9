"""
Permanent lines between places: ways that work, ways in a row, and how far apart the ends are.

Counts are those of the house. Lengths of cable are stated, never worked out from a plan: a cable
goes round the room.
"""

import math
from collections.abc import Sequence

from builder.formulas.cite import cites
from builder.formulas.ranges import not_negative
from builder.formulas.sources import COMMON_PRACTICE, CRC_TABLES


@cites(
    COMMON_PRACTICE, "a way that is named as dead does not work", equation="working = ways - dead"
)
def working_ways(*, ways: int, dead: Sequence[int]) -> int:
    """
    Ways of a line that work, from those that are named as dead.

    Parameters
    ----------
    ways
        All ways of the line. [-]
    dead
        Numbers of the dead ways, 1 and on. A number given twice counts once. [-]

    Returns
    -------
    int
        Ways that work. [-]

    Raises
    ------
    ValueError
        If a dead way is not one of the ways.
    """
    for way in dead:
        if not 1 <= way <= ways:
            raise ValueError(f"dead must hold ways from 1 to {ways}, got {way}")
    return ways - len(set(dead))


@cites(COMMON_PRACTICE, "lines beside each other add up", equation="sum of ways")
def ways_in_all(counts: Sequence[int]) -> int:
    """
    Ways of several lines between the same two places.

    Parameters
    ----------
    counts
        Ways of each line. [-]

    Returns
    -------
    int
        Their sum; 0 for no lines. [-]

    Raises
    ------
    ValueError
        If a count is negative.
    """
    return sum(int(not_negative("counts", count)) for count in counts)


@cites(
    COMMON_PRACTICE,
    "what lies in a row passes as much as its narrowest part",
    equation="least of the ways in a row",
)
def ways_through(counts: Sequence[int]) -> int:
    """
    Ways that pass several things in a row, such as a panel, a line and a switcher.

    Parameters
    ----------
    counts
        Ways of each. [-]

    Returns
    -------
    int
        The least of them. [-]

    Raises
    ------
    ValueError
        If there are none or a count is negative.
    """
    if not counts:
        raise ValueError("counts must hold at least one count, got none")
    return min(int(not_negative("counts", count)) for count in counts)


@cites(
    COMMON_PRACTICE,
    "two inputs of one switcher change over without a plug",
    equation="no plug moves where both are on one switcher and their inputs differ",
)
def changes_by_switcher(*, before: tuple[str, int], after: tuple[str, int]) -> bool:
    """
    Whether one console follows another without a plug being moved.

    Parameters
    ----------
    before, after
        The switcher and the input that each console comes in on. [-]

    Returns
    -------
    bool
        True where the switcher alone does it. [-]

    Raises
    ------
    ValueError
        If an input is below 1.
    """
    for _, entry in (before, after):
        if entry < 1:
            raise ValueError(f"before and after must have inputs of 1 or more, got {entry}")
    return before[0] == after[0] and before[1] != after[1]


@cites(
    CRC_TABLES,
    "distance between two points in space",
    equation="d = sqrt((x2 - x1)^2 + (y2 - y1)^2 + (z2 - z1)^2)",
)
def straight_m(start_m: tuple[float, float, float], end_m: tuple[float, float, float]) -> float:
    """
    The straight line between two places. No cable is shorter.

    Parameters
    ----------
    start_m, end_m
        Across, depth and height of each place from the datum. [m]

    Returns
    -------
    float
        Distance. [m]

    Raises
    ------
    ValueError
        If a coordinate is not finite.
    """
    if not all(math.isfinite(each) for each in (*start_m, *end_m)):
        raise ValueError(f"start_m and end_m must be finite, got {start_m} and {end_m}")
    return math.dist(start_m, end_m)
