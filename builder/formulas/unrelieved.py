"""
What hung loads bring to supports where a load that would lift a support counts as nothing there:
it may be absent, and what it relieves must not be given away.

Pure arithmetic in + - * /, so that the check in a browser finds the same to the last digit.
"""

from collections.abc import Sequence
from math import fsum

from builder.formulas.beams import BodyLoad, condensed_beam, level_reactions_kg
from builder.formulas.cite import cites
from builder.formulas.contact import ROUNDING
from builder.formulas.sources import KASSIMALI

Parts = list[list[float]]
"""Load by load, what it brings to each support; below 0 where it lifts it. [kg]"""
Ways = list[Parts]
"""The same for each set of supports that may hold."""
EVERY = -1
"""No support is slack."""


@cites(
    KASSIMALI,
    "ch. 8, influence lines: response to a single load, from memory",
    equation="R_il = P_l n_i(x_l), for each load l by itself; supports may pull and push",
)
def parts_kg(loads: Sequence[BodyLoad], places_m: Sequence[float], held: Sequence[int]) -> Parts:
    """
    What each load by itself brings to each support, only some of which hold.

    Parameters
    ----------
    loads
        Loads along the body. [m], [kg]
    places_m
        Places of all supports, in any order. [m]
    held
        The supports that hold, counted from 0. [-]

    Returns
    -------
    list of lists of float
        Load by load, one value for each support; 0 for those that do not hold. [kg]
    """
    count = len(places_m)
    if len(held) == 1:
        return [
            [load["kg"] if index == held[0] else 0.0 for index in range(count)] for load in loads
        ]
    rising = sorted(held, key=lambda index: places_m[index])
    beam = condensed_beam([places_m[index] for index in rising])
    parts: Parts = []
    for load in loads:
        on_each = [0.0] * count
        brought_kg = level_reactions_kg(beam, [load])
        for place in range(len(rising)):
            on_each[rising[place]] = brought_kg[place]
        parts.append(on_each)
    return parts


def ways_held(
    loads: Sequence[BodyLoad], places_m: Sequence[float], carried_kg: Sequence[float], slack: int
) -> Ways:
    """
    The parts of every load where all supports hold but the slack one, and where only those hold
    that carry anything of all loads together.

    Parameters
    ----------
    loads
        Loads along the body. [m], [kg]
    places_m
        Places of all supports. [m]
    carried_kg
        What each carries of all loads together. [kg]
    slack
        The support that is slack, ``EVERY`` where none is. [-]
    """
    least_kg = ROUNDING * fsum([load["kg"] for load in loads])
    there = [index for index in range(len(places_m)) if index != slack]
    carrying = [index for index in there if carried_kg[index] > least_kg]
    ways = [parts_kg(loads, places_m, there)]
    if len(carrying) > 0 and len(carrying) < len(there):
        ways.append(parts_kg(loads, places_m, carrying))
    return ways


@cites(
    KASSIMALI,
    "ch. 8, influence lines: loads are placed only where the ordinate is positive, from memory",
    equation="min(W max(a_i), sum over l of max(0, sum over i of a_i R_il)); W: all loads together",
)
def unrelieved_kg(ways: Ways, shares: Sequence[tuple[int, float]]) -> float:
    """
    The most that loads bring to some supports together, those that lift them counted as nothing.

    Parameters
    ----------
    ways
        The parts of every load, for each set of supports that may hold. [kg]
    shares
        Supports with how much of each counts. [-]

    Returns
    -------
    float
        Never below what all loads together bring there. [kg]

    Notes
    -----
    No support pushes while a body hangs, so what its supports carry adds up to its weight and none
    carries more than that: the sum ends there.
    """
    return max([unrelieved_in_kg(way, shares) for way in ways])


def unrelieved_in_kg(way: Parts, shares: Sequence[tuple[int, float]]) -> float:
    """The same for one set of supports that may hold. [kg]"""
    whole_kg = fsum([kg for parts in way for kg in parts])
    brought_kg = fsum([above_0(part_kg(parts, shares)) for parts in way])
    return min(brought_kg, whole_kg * max([share for _, share in shares], default=0.0))


def part_kg(parts: Sequence[float], shares: Sequence[tuple[int, float]]) -> float:
    """What one load brings to some supports together; below 0 where it lifts them. [kg]"""
    return fsum([parts[index] * share for index, share in shares])


def above_0(kg: float) -> float:
    """A load, or nothing where it lifts."""
    return kg if kg > 0 else 0.0
