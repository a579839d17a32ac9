"""Neighbours on one beam that are nearer to each other than the house allows both to be loaded."""

from builder.fit.hangs.issues import issue
from builder.fit.hangs.limits import roof_of
from builder.fit.hangs.points import points_beside
from builder.fit.hangs.records import Issue
from builder.fit.hangs.sentences import (
    HOW_NEAR,
    NEAR_UNKNOWN,
    PERHAPS_TOO_NEAR,
    SPACING_RULE,
    TAKE_FARTHER,
    TOO_NEAR,
    TWO_POINTS,
)
from builder.fit.records import Item, Section, Value
from builder.fit.sentences import fill
from builder.fit.values import counted_least, number_of
from builder.fit.verdicts import ASK, SHORT
from builder.fit.wording import both

SPACING_ROUNDING_M = 0.000000001


def spacing_issues(point: Item, loaded: list[str], section: Section) -> list[Issue]:
    """
    Neighbours on the same beam, loaded by the house or the show, that are nearer than the house
    allows.
    """
    rule = spacing_rule(point, section)
    if rule is None:
        return []
    issues: list[Issue] = []
    is_after = False
    for other in points_beside(point, section):
        if other["key"] == point["key"]:
            is_after = True
        elif may_be_loaded(other, loaded):
            pair = (point, other) if is_after else (other, point)
            is_known = other["key"] in loaded or counted_least(other, "carried") is not None
            issues += neighbour_issues(pair, rule, point, is_known=is_known)
    return issues


def spacing_rule(point: Item, section: Section) -> Value | None:
    """
    How near another loaded point may be to a point: by its own rule, else the house's; None where
    nothing is set.
    """
    rule = point["values"].get("spacing_at_least")
    roof = roof_of(section)
    if rule is None and roof is not None:
        rule = roof["values"].get("spacing_at_least")
    if rule is None or rule["standing"] in ("none", "not stated"):
        return None
    return rule


def may_be_loaded(point: Item, loaded: list[str]) -> bool:
    """Whether the show or the house loads a point, or nobody says whether the house does."""
    carried_kg = number_of(point, "carried")
    return point["key"] in loaded or carried_kg is None or carried_kg > 0


def neighbour_issues(
    pair: tuple[Item, Item], rule: Value, point: Item, *, is_known: bool
) -> list[Issue]:
    """A point and a loaded neighbour, in the pack's order, against the spacing rule."""
    names = fill(TWO_POINTS, {"one": pair[0]["name"], "other": pair[1]["name"]})
    question = fill(HOW_NEAR, {"points": names})
    least_m = rule["number"]
    apart_m = apart_along_beam_m(pair[0], pair[1])
    if least_m is None or apart_m is None:
        reason = fill(NEAR_UNKNOWN, {"points": names})
        found = issue(ASK, reason, question=question, item=point)
        if least_m is None:
            found = {**found, "about": rule["key"], "words": SPACING_RULE}
        return [found]
    if apart_m >= least_m - SPACING_ROUNDING_M:
        return []
    parts = {
        "points": names,
        "apart": both("length", apart_m)[0],
        "rule": both("length", least_m)[0],
    }
    if is_known:
        return [issue(SHORT, fill(TOO_NEAR, parts), remedy=TAKE_FARTHER, item=point)]
    return [issue(ASK, fill(PERHAPS_TOO_NEAR, parts), question=question, item=point)]


def apart_along_beam_m(one: Item, other: Item) -> float | None:
    """How far two points of one beam are apart along it, or None. [m]"""
    aside_m = apart_by_m(one, other, "at.across")
    along_m = apart_by_m(one, other, "at.depth")
    if aside_m is None or along_m is None:
        return None
    return max(aside_m, along_m)


def apart_by_m(one: Item, other: Item, name: str) -> float | None:
    """How far two points are apart in one direction, or None. [m]"""
    here_m = number_of(one, name)
    there_m = number_of(other, name)
    if here_m is None or there_m is None:
        return None
    return abs(here_m - there_m)
