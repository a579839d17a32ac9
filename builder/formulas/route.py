"""
The way from the truck to the stage: its tightest places, its slopes, what a forklift lifts, how
long docks take.

Planning figures: the truck's data plate, the local code and a competent person decide.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import COMMON_PRACTICE, OSHA_TRUCKS


@dataclass(frozen=True, slots=True)
class Opening:
    """
    A door, corridor, lift or ramp on a route. None where a limit is not stated.

    ``length_m`` is a limit only where something ends, such as a lift cab. [m, kg]
    """

    place: str
    width_m: float | None = None
    height_m: float | None = None
    carries_kg: float | None = None
    length_m: float | None = None


@dataclass(frozen=True, slots=True)
class Least:
    """The smallest value on a route and the place that has it; the first such place on a tie."""

    value: float
    place: str


@dataclass(frozen=True, slots=True)
class Tightest:
    """
    The tightest place of a route by each limit; None where no place states it.

    ``unknown`` names, for each limit, the places that do not state it: the true least may be there.
    """

    width_m: Least | None
    height_m: Least | None
    carries_kg: Least | None
    length_m: Least | None
    unknown: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True, slots=True)
class Slope:
    """One slope in three ways: rise over run [-], percent [%], and degrees [deg]."""

    rise_over_run: float
    percent: float
    degrees: float


@cites(COMMON_PRACTICE, "what stands on a way one after the other", equation="n = Σ n_i")
def on_the_way(counts: Sequence[int]) -> int:
    """
    How many of something one meets on a route: its steps, or its lifts.

    Parameters
    ----------
    counts
        How many there are at each place, in the order of the route.

    Returns
    -------
    int
        Their sum.

    Raises
    ------
    ValueError
        If a count is below 0.
    """
    for count in counts:
        not_negative("count", float(count))
    return sum(counts)


LIMITS = ("width_m", "height_m", "carries_kg", "length_m")


@cites(
    COMMON_PRACTICE, "a route is as wide as its narrowest place", equation="least = min over places"
)
def tightest(openings: Sequence[Opening]) -> Tightest:
    """
    The tightest place of a route in width, height, weight and length.

    Parameters
    ----------
    openings
        Places in the order of the route.

    Returns
    -------
    Tightest
        Least value and its place, by limit, and where a limit is not stated. [m, kg]

    Raises
    ------
    ValueError
        If a stated limit is not above 0.
    """
    least = {limit: _least(openings, limit) for limit in LIMITS}
    unknown = tuple(
        (limit, tuple(o.place for o in openings if getattr(o, limit) is None)) for limit in LIMITS
    )
    return Tightest(
        least["width_m"], least["height_m"], least["carries_kg"], least["length_m"], unknown
    )


def _least(openings: Sequence[Opening], limit: str) -> Least | None:
    stated = [
        Least(above_zero(f"{limit} of {o.place!r}", getattr(o, limit)), o.place)
        for o in openings
        if getattr(o, limit) is not None
    ]
    return min(stated, key=lambda least: least.value, default=None)


@cites(
    OSHA_TRUCKS,
    "load handling: field calculation of capacity",
    equation="C = C_rated * LC_rated / LC, at most C_rated",
)
def forklift_capacity_kg(*, rated_kg: float, rated_centre_m: float, load_centre_m: float) -> float:
    """
    What a forklift may lift when the load's centre is further out than its plate says.

    Parameters
    ----------
    rated_kg
        Capacity on the data plate. [kg]
    rated_centre_m
        Load centre on the data plate, from the face of the forks. [m]
    load_centre_m
        Load centre of this load. [m]

    Returns
    -------
    float
        Estimate of the capacity; never above the plate's. [kg]

    Raises
    ------
    ValueError
        If the capacity is negative or a distance is not above 0.

    Notes
    -----
    A field estimate. Height of lift, attachments and slope lower it; the data plate decides.
    """
    share = above_zero("rated_centre_m", rated_centre_m) / above_zero(
        "load_centre_m", load_centre_m
    )
    return not_negative("rated_kg", rated_kg) * min(1.0, share)


@cites(
    COMMON_PRACTICE,
    "trucks in rounds, one at each dock",
    equation="t = ceil(trucks / docks) * minutes",
)
def unloading_min(*, trucks: int, docks_at_once: int, minutes_per_truck: float) -> float:
    """
    Time to unload all trucks, in rounds of as many as there are docks.

    Parameters
    ----------
    trucks
        Number of trucks. [-]
    docks_at_once
        Docks that can be worked at the same time. [-]
    minutes_per_truck
        Time a truck takes, change of trucks included. [min]

    Returns
    -------
    float
        Time until the last truck is empty. [min]

    Raises
    ------
    ValueError
        If a number is negative or there is no dock.
    """
    rounds = math.ceil(not_negative("trucks", trucks) / above_zero("docks_at_once", docks_at_once))
    return rounds * not_negative("minutes_per_truck", minutes_per_truck)
