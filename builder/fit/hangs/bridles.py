"""
A bridle of two legs for a spot that no point is near to: which free points make it with the
gentlest pull, by the house's rules.
"""

from math import sqrt

from builder.fit.hangs.bridle_rules import lean_cosine, may_take_a_leg, widest_cosine
from builder.fit.hangs.by_rule import is_unplaced
from builder.fit.hangs.points import NEAR_M, away_m, points_of, unusable
from builder.fit.hangs.records import Leg, LegEnd, Place
from builder.fit.records import HangAsked, Item, Section, SupportAsked
from builder.fit.values import known_number, number_of
from builder.formulas.two_legs import LegForces, included_cosine, leg_span, two_leg_forces

IN_LINE_M = 0.05
"""A spot this near to the line between two points, seen from above, is on it."""
REACH_M = 12.0
"""Points farther than this from a spot are not looked at: no leg in the trade's stock reaches."""
ROUNDING = 0.000000001


def with_bridles(
    hangs: list[HangAsked], places: list[list[Place]], section: Section, taken: list[str]
) -> None:
    """
    Give the spots that found no point two legs, where their apex is told and the house's rules
    allow it.

    Points that are taken stay so.
    """
    for hang, its_places in zip(hangs, places, strict=True):
        for index, support in enumerate(hang["supports"]):
            apex_m = support["apex_m"]
            is_open = its_places[index]["item"] is None and support["across_m"] is not None
            if apex_m is not None and is_open:
                legs = gentlest_bridle(support, apex_m, section, taken)
                if len(legs) > 0:
                    its_places[index] = at_bridle(legs, apex_m)
                    taken += [leg["item"]["key"] for leg in legs]


def at_bridle(legs: list[Leg], apex_m: float) -> Place:
    """A place under a bridle. [m]"""
    return {"item": None, "away_m": 0.0, "issues": [], "legs": legs, "apex_m": apex_m}


def gentlest_bridle(
    support: SupportAsked, apex_m: float, section: Section, taken: list[str]
) -> list[Leg]:
    """
    The two legs with the gentlest pull, or none.

    Each leg tells its share of the load straight down and its pull, for a load of 1.
    """
    ends = leg_ends(support, apex_m, section, taken)
    widest = widest_cosine(section)
    best: list[Leg] = []
    for first in range(len(ends)):
        for second in range(first + 1, len(ends)):
            legs = legs_of(ends[first], ends[second], widest)
            if len(legs) > 0 and is_gentler(legs, best):
                best = legs
    return best


def is_gentler(legs: list[Leg], best: list[Leg]) -> bool:
    """Whether two legs pull less than the best so far, by more than rounding."""
    return len(best) == 0 or hardest_pull(legs) < hardest_pull(best) - ROUNDING


def hardest_pull(legs: list[Leg]) -> float:
    """The greatest pull of some legs."""
    return max([leg["pull"] for leg in legs])


def leg_ends(
    support: SupportAsked, apex_m: float, section: Section, taken: list[str]
) -> list[LegEnd]:
    """The points that a leg may go to, in the pack's order."""
    ends: list[LegEnd] = []
    for point in points_of(section):
        if point["key"] not in taken and is_free(point, section):
            end = leg_end(support, apex_m, point, section)
            if end is not None:
                ends.append(end)
    return ends


def is_free(point: Item, section: Section) -> bool:
    """
    Whether a point is in service, rated, free of loads, and under a rule that allows bridles.
    """
    carried_kg = number_of(point, "carried")
    is_bare = carried_kg is not None and carried_kg <= 0
    is_rated = number_of(point, "limit") is not None
    return (
        is_bare
        and is_rated
        and not is_unplaced(point)
        and may_take_a_leg(point, section)
        and len(unusable(point, section)) == 0
    )


def leg_end(support: SupportAsked, apex_m: float, point: Item, section: Section) -> LegEnd | None:
    """A point within reach and above the apex, under a lean that is known; else None."""
    run_m = away_m(support, point)
    steel_m = number_of(point, "low-steel")
    lean = lean_cosine(point, section)
    if run_m is None or steel_m is None or lean is None:
        return None
    if run_m <= NEAR_M or run_m > REACH_M or steel_m <= apex_m:
        return None
    leg = leg_span(run_m, steel_m - apex_m)
    if leg["rise_m"] / leg["length_m"] < lean - ROUNDING:
        return None
    return {
        "item": point,
        "run_m": run_m,
        "rise_m": leg["rise_m"],
        "length_m": leg["length_m"],
    }


def legs_of(first: LegEnd, second: LegEnd, widest: float) -> list[Leg]:
    """
    Two legs in one plane that meet at the spot, or none where it is not between the points or the
    angle is too wide.
    """
    apart_m = apart_along_m(first["item"], second["item"])
    if apart_m <= 0 or first["run_m"] + second["run_m"] - apart_m > IN_LINE_M:
        return []
    if included_cosine(first, second) < widest - ROUNDING:
        return []
    one, other = two_leg_forces(first, second)
    return [leg_of(first, one), leg_of(second, other)]


def apart_along_m(one: Item, other: Item) -> float:
    """How far two points are apart, seen from above. [m]"""
    aside_m = known_number(one, "at.across") - known_number(other, "at.across")
    along_m = known_number(one, "at.depth") - known_number(other, "at.depth")
    return sqrt(aside_m * aside_m + along_m * along_m)


def leg_of(end: LegEnd, forces: LegForces) -> Leg:
    """A leg to a point, with what it takes of a load of 1."""
    return {"item": end["item"], "share": forces["share"], "pull": forces["pull"]}
