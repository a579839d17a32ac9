"""The house's points: which there are, where they are, and whether a show may use one."""

from math import sqrt

from builder.fit.hangs.issues import issue
from builder.fit.hangs.records import Issue
from builder.fit.hangs.sentences import (
    BEAM_NOT_FOR_VISITORS,
    BEAM_OUT_OF_SERVICE,
    NOT_FOR_VISITORS,
    OUT_OF_SERVICE,
    OUT_OF_SERVICE_WHY,
    RATING_UNKNOWN,
    TAKE_ANOTHER,
    TAKE_OTHER_BEAM,
    WHAT_MAY_IT_CARRY,
    WHEN_BACK,
)
from builder.fit.records import Item, Section, SupportAsked
from builder.fit.sections import items_of
from builder.fit.sentences import LIMIT_BY_RULE, fill
from builder.fit.values import (
    BEARERS,
    least_of,
    most_of,
    number_of,
    rule_lacking,
    text_of,
    told_of,
    value_of,
)
from builder.fit.verdicts import ASK, SHORT

NEAR_M = 0.25
"""
A point this near to a spot takes it: about what a rigger leans a pick or moves a truss without
asking.
"""


def points_of(section: Section) -> list[Item]:
    """The house's points."""
    return items_of(section, "point")


def beam_name(point: Item) -> str:
    """The beam that a point is on, as names are compared: whatever the capitals."""
    return text_of(point, "beam").lower()


def beam_of(point: Item, section: Section) -> Item | None:
    """The beam that a point is on, or None where the pack does not describe it."""
    name = beam_name(point)
    for beam in items_of(section, "beam"):
        if beam["name"].lower() == name:
            return beam
    return None


def points_beside(point: Item, section: Section) -> list[Item]:
    """The points on the same beam, itself among them."""
    name = beam_name(point)
    return [other for other in points_of(section) if beam_name(other) == name]


def away_m(support: SupportAsked, point: Item) -> float | None:
    """
    How far a point is from a spot, seen from above, or None where its place or the spot is not
    known. [m]
    """
    across_m = number_of(point, "at.across")
    depth_m = number_of(point, "at.depth")
    if across_m is None or depth_m is None:
        return None
    if support["across_m"] is None or support["depth_m"] is None:
        return None
    aside_m = across_m - support["across_m"]
    along_m = depth_m - support["depth_m"]
    return sqrt(aside_m * aside_m + along_m * along_m)


def unusable(point: Item, section: Section) -> list[Issue]:
    """Why a point may not be used, or is not known well enough."""
    parts = {"point": point["name"], "note": point["note"]}
    closed = closed_by_beam(point, section)
    if len(closed) > 0:
        return closed
    told = told_of(point, BEARERS)
    if point["condition"] == "out of service":
        template = OUT_OF_SERVICE if point["note"] == "" else OUT_OF_SERVICE_WHY
        reason = with_words(fill(template, parts), told)
        return [issue(SHORT, reason, remedy=WHEN_BACK, item=point)]
    if point["terms"] == "not for visitors":
        reason = with_words(fill(NOT_FOR_VISITORS, parts), told)
        return [issue(SHORT, reason, remedy=TAKE_ANOTHER, item=point)]
    limit = value_of(point, "limit")
    if least_of(limit) is None and most_of(limit) is None:
        question = fill(WHAT_MAY_IT_CARRY, parts)
        reason, rule = fill(RATING_UNKNOWN, parts), rule_lacking(point)
        about = point["key"] if rule == "" else rule
        words = "" if rule == "" else fill(LIMIT_BY_RULE, {"rule": rule})
        return [issue(ASK, reason, question=question, about=about, words=words, item=point)]
    return []


def with_words(reason: str, told: str) -> str:
    """A reason with what is told of that which bears a point."""
    return reason if told == "" else f"{reason} {told}"


def closed_by_beam(point: Item, section: Section) -> list[Issue]:
    """That the beam of a point is out of service, or not for visitors."""
    beam = beam_of(point, section)
    if beam is None:
        return []
    parts = {"point": point["name"], "beam": beam["name"]}
    if beam["condition"] == "out of service":
        reason = fill(BEAM_OUT_OF_SERVICE, parts)
        return [issue(SHORT, reason, remedy=TAKE_OTHER_BEAM, item=beam)]
    if beam["terms"] == "not for visitors":
        reason = fill(BEAM_NOT_FOR_VISITORS, parts)
        return [issue(SHORT, reason, remedy=TAKE_OTHER_BEAM, item=beam)]
    return []
