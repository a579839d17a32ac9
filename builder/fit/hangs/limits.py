"""
The limits above a point: its own, its beam's, its zones', the whole roof's, each with what the
house's own hangs leave.
"""

from builder.fit.hangs.points import beam_of, points_beside
from builder.fit.hangs.records import Limit, LimitKind
from builder.fit.hangs.sentences import BEAM_LIMIT, POINT_LIMIT, ROOF_LIMIT, ZONE_LIMIT
from builder.fit.notes import once
from builder.fit.records import Item, Section
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import (
    counted_least,
    counted_most,
    least_of,
    less,
    listed,
    most_of,
    parts_of,
    text_of,
)
from builder.fit.verdicts import fact_of


def limits_over(point: Item | None, section: Section) -> list[Limit]:
    """
    The limits that a support on a point hangs under, the nearest first.

    Without a point only the roof's is known.
    """
    limits = [] if point is None else limits_over_point(point, section)
    limits.append(shown_limit("roof", ROOF_LIMIT, roof_of(section)))
    return [one for one in limits if one["left_kg"] is not None or not is_without_limit(one)]


def limits_over_point(point: Item, section: Section) -> list[Limit]:
    """A point's own limit, its beam's and its zones'."""
    limits: list[Limit] = []
    own = point["values"].get("limit")
    if least_of(own) is not None or most_of(own) is not None:
        words = fill(POINT_LIMIT, {"name": point["name"]})
        found = limit("point", words, point, "limit", left_on_point(point))
        limits.append({**found, "hangs": hangs_on([point])})
    beam = beam_of(point, section)
    words = fill(BEAM_LIMIT, {"name": text_of(point, "beam")})
    under_beam = shown_limit("beam", words, beam)
    limits.append({**under_beam, "hangs": hangs_on(points_beside(point, section))})
    for zone in zones_over(point, section):
        limits.append(shown_limit("zone", fill(ZONE_LIMIT, {"name": zone["name"]}), zone))
    return limits


def left_on_point(point: Item) -> tuple[float | None, float | None]:
    """
    What a point's own limit leaves at least and at most, None where nobody knows. The house tells
    it where more counts against the limit than what the point carries as planned. [kg]
    """
    least_kg, most_kg = counted_least(point, "alone"), counted_most(point, "alone")
    if least_kg is not None or most_kg is not None:
        return (least_kg, most_kg)
    own = point["values"].get("limit")
    left_kg = less(least_of(own), counted_most(point, "carried"))
    return (left_kg, less(most_of(own), counted_least(point, "carried")))


def shown_limit(kind: LimitKind, words: str, item: Item | None) -> Limit:
    """The limit of a beam, a zone or the roof, of which the house shows what is left."""
    left = None if item is None else item["values"].get("left")
    return limit(kind, words, item, "left", (least_of(left), most_of(left)))


def zones_over(point: Item, section: Section) -> list[Item]:
    """The zones that a point is in, by itself or by its beam."""
    beam = text_of(point, "beam")
    return [
        zone
        for zone in items_of(section, "zone")
        if listed(point["name"], parts_of(zone, "points")) or listed(beam, parts_of(zone, "beams"))
    ]


def roof_of(section: Section) -> Item | None:
    """The item of the whole roof, or None."""
    roofs = items_of(section, "roof")
    return roofs[0] if len(roofs) > 0 else None


def limit(
    kind: LimitKind,
    words: str,
    item: Item | None,
    shown: str,
    left_kg: tuple[float | None, float | None],
) -> Limit:
    """
    A limit: what it is called, the fact that shows it, what is left at least and at most (None
    where nobody says), and whether the house hangs something there. [kg]
    """
    carried_kg = None if item is None else counted_least(item, "carried")
    value = None if item is None else item["values"].get(shown)
    key = words if item is None else item["key"]
    return {
        "key": f"{kind} {key}",
        "kind": kind,
        "words": words,
        "item": item,
        "value": value,
        "fact": None if value is None or item is None else fact_of(value, item),
        "left_kg": left_kg[0],
        "most_left_kg": left_kg[1],
        "uneven": item is not None and counted_least(item, "worst") is not None,
        "house": carried_kg is not None and carried_kg > 0,
        "hangs": [],
    }


def hangs_on(points: list[Item]) -> list[str]:
    """What the house hangs on some points, by name, each once."""
    return once([item["words"]["carried"] for item in points if "carried" in item["words"]])


def is_without_limit(found: Limit) -> bool:
    """Whether the house says that a beam, a zone or the roof has no limit of its own."""
    item = found["item"]
    if found["kind"] == "point" or item is None or "limit" not in item["values"]:
        return False
    return item["values"]["limit"]["standing"] == "none"
