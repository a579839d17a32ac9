"""How many points find room along a beam, by the distance that they keep."""

from math import floor

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import COMMON_PRACTICE

HAIR = 1e-9
"""The share of a distance that a change of its unit may cost in the last places."""


@cites(COMMON_PRACTICE, "posts along a fence", equation="n = floor(L / s) + 1")
def most_along(*, length_m: float, spacing_m: float) -> int:
    """
    How many points can be loaded at once along a straight length, each so far from the next.

    Parameters
    ----------
    length_m
        Length of the beam between the places where points may be. [m]
    spacing_m
        Smallest distance between two loaded points. [m]

    Returns
    -------
    int
        The most that find room, the first at one end. [-]

    Raises
    ------
    ValueError
        If the length is negative or the distance not above 0.
    """
    gaps = not_negative("length_m", length_m) / above_zero("spacing_m", spacing_m)
    return floor(gaps + HAIR) + 1


@cites(
    COMMON_PRACTICE,
    "posts along a fence whose first stands anywhere within the first gap",
    equation="floor(L / c) <= n <= floor(L / c) + 1",
)
def least_at_centres(*, length_m: float, centres_m: float) -> int:
    """
    How many points at equal centres lie on a straight length at least, wherever the first is.

    Parameters
    ----------
    length_m
        Length of the beam. [m]
    centres_m
        From each point to the next. [m]

    Returns
    -------
    int
        One less than the most. [-]
    """
    return most_along(length_m=length_m, spacing_m=centres_m) - 1
