"""
A bridle of two legs for a spot that no point is near to: which free points make it with the
gentlest pull, by the house's rules.
"""

from math import sqrt
from typing import Any

from builder.fit.hangs.points import (
    NEAR_M,
    away_of,
    points_of,
    unusable,
)
from builder.fit.values import known_number, listed, number_of, parts_of, text_of
from builder.fit.verdicts import Record

IN_LINE_M = 0.05
"""A spot this near to the line between two points, seen from above, is on it."""
REACH_M = 12.0
"""Points farther than this from a spot are not looked at: no leg in the trade's stock reaches."""
FLATTEST = -0.5
"""The cosine of 120 degrees: beyond it, each of two equal legs carries more than the load."""
STEEPEST_LEAN = 0.5
"""The cosine of 60 degrees, half of that."""
ROUNDING = 0.000000001


def with_bridles(
    hangs: list[Record], places: list[list[Record]], section: Record, taken: list[str]
) -> None:
    """
    Give the spots that found no point two legs, where their apex is told and the house's rules
    allow it.

    Points that are taken stay so.
    """
    for hang, found in zip(hangs, places, strict=True):
        for index in range(len(found)):
            support = hang["supports"][index]
            if (
                found[index]["item"] is None
                and support["apex_m"] is not None
                and support["across_m"] is not None
            ):
                legs = bridle(support, section, taken)
                if len(legs) > 0:
                    found[index] = {
                        "item": None,
                        "away_m": 0.0,
                        "issues": [],
                        "legs": legs,
                        "apex_m": support["apex_m"],
                    }
                    taken += [leg["item"]["key"] for leg in legs]


def bridle(support: Record, section: Record, taken: list[str]) -> list[Record]:
    """
    The two legs with the gentlest pull, or none.

    Each leg tells its share of the load straight down and its pull, for a load of 1.
    """
    ends = [
        end
        for end in (
            end_of(support, item, section)
            for item in points_of(section)
            if item["key"] not in taken
        )
        if end is not None
    ]
    widest = widest_cosine(section)
    best: list[Record] = []
    for first in range(len(ends)):
        for second in range(first + 1, len(ends)):
            legs = legs_of(ends[first], ends[second], widest)
            if len(legs) > 0 and (len(best) == 0 or hardest(legs) < hardest(best) - ROUNDING):
                best = legs
    return best


def hardest(legs: list[Record]) -> float:
    """The greater pull of two legs."""
    return float(legs[0]["pull"] if legs[0]["pull"] > legs[1]["pull"] else legs[1]["pull"])


def end_of(support: Record, item: Record, section: Record) -> Any:
    """
    A point as the end of a leg: in service, free of loads, under a bridle rule and a lean that are
    known.

    None where it is not one.
    """
    run_m, steel_m, lean = (
        away_of(support, item),
        number_of(item, "low-steel"),
        lean_cosine(item, section),
    )
    if (
        len(unusable(item, section)) > 0
        or number_of(item, "carried") is None
        or known_number(item, "carried") > 0
        or not allowed(item, section)
    ):
        return None
    if (
        run_m is None
        or run_m <= NEAR_M
        or run_m > REACH_M
        or steel_m is None
        or steel_m <= support["apex_m"]
        or lean is None
    ):
        return None
    rise_m = steel_m - support["apex_m"]
    length_m = sqrt(run_m * run_m + rise_m * rise_m)
    return (
        {"item": item, "run_m": run_m, "rise_m": rise_m, "length_m": length_m}
        if rise_m / length_m >= lean - ROUNDING
        else None
    )


def allowed(item: Record, section: Record) -> bool:
    """Whether the house says that a leg may go to this point's beam."""
    for rule in section["items"]:
        if rule["kind"] == "bridles_allowed":
            said = text_of(rule, "allowed")
            return said == "yes" or (
                said == "between some beams"
                and listed(text_of(item, "beam"), parts_of(rule, "beams"))
            )
    return False


def widest_cosine(section: Record) -> float:
    """The cosine of the widest angle between two legs: the house's own, at most 120 degrees."""
    for rule in section["items"]:
        if rule["kind"] == "bridles_allowed" and number_of(rule, "widest_angle") is not None:
            cosine = known_number(rule, "widest_angle")
            return float(cosine) if cosine > FLATTEST else FLATTEST
    return FLATTEST


def lean_cosine(item: Record, section: Record) -> Any:
    """
    The cosine of the widest lean of a pull on a point: its own line first, then exceptions, then
    the rule for all.

    None: straight, or not said.
    """
    rules = [item]
    exceptions = [rule for rule in section["items"] if rule["kind"] == "exception"]
    rules = [
        *rules,
        *(rule for rule in exceptions if listed(item["name"], parts_of(rule, "points"))),
    ]
    rules = [
        *rules,
        *(rule for rule in exceptions if listed(text_of(item, "beam"), parts_of(rule, "beams"))),
    ]
    rules = [*rules, *(rule for rule in section["items"] if rule["kind"] == "roof")]
    for rule in rules:
        if "directions" in rule["words"]:
            lean = (
                number_of(rule, "widest_lean")
                if text_of(rule, "directions") == "at an angle"
                else None
            )
            return None if lean is None else lean if lean > STEEPEST_LEAN else STEEPEST_LEAN
    return None


def legs_of(first: Record, second: Record, widest: float) -> list[Record]:
    """
    Two legs in one plane that meet at the spot, or none where it is not between the points or the
    angle is too wide.
    """
    aside_m = known_number(first["item"], "at.across") - known_number(second["item"], "at.across")
    along_m = known_number(first["item"], "at.depth") - known_number(second["item"], "at.depth")
    apart_m = sqrt(aside_m * aside_m + along_m * along_m)
    if apart_m <= 0 or first["run_m"] + second["run_m"] - apart_m > IN_LINE_M:
        return []
    cosine = (first["rise_m"] * second["rise_m"] - first["run_m"] * second["run_m"]) / (
        first["length_m"] * second["length_m"]
    )
    if cosine < widest - ROUNDING:
        return []
    turn_m2 = first["rise_m"] * second["run_m"] + second["rise_m"] * first["run_m"]
    return [leg_of(first, second["run_m"] / turn_m2), leg_of(second, first["run_m"] / turn_m2)]


def leg_of(end: Record, per_m: float) -> Record:
    """A leg: its share of the load straight down, and its pull, for a load of 1."""
    return {"item": end["item"], "share": end["rise_m"] * per_m, "pull": end["length_m"] * per_m}
