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
from builder.fit.values import listed, number_of, parts_of, text_of
from builder.fit.verdicts import fact_of


def limits_over(point: Item | None, section: Section) -> list[Limit]:
    """
    The limits that a support on a point hangs under, the nearest first.

    Without a point only the roof's is known.
    """
    limits = [] if point is None else limits_over_point(point, section)
    roof = roof_of(section)
    limits.append(limit("roof", ROOF_LIMIT, roof, "left", number_of(roof, "left")))
    return [one for one in limits if one["left_kg"] is not None or not is_without_limit(one)]


def limits_over_point(point: Item, section: Section) -> list[Limit]:
    """A point's own limit, its beam's and its zones'."""
    limits: list[Limit] = []
    limit_kg = number_of(point, "limit")
    carried_kg = number_of(point, "carried")
    if limit_kg is not None:
        left_kg = None if carried_kg is None else limit_kg - carried_kg
        own = limit("point", fill(POINT_LIMIT, {"name": point["name"]}), point, "limit", left_kg)
        limits.append({**own, "hangs": hangs_on([point])})
    beam = beam_of(point, section)
    words = fill(BEAM_LIMIT, {"name": text_of(point, "beam")})
    under_beam = limit("beam", words, beam, "left", number_of(beam, "left"))
    limits.append({**under_beam, "hangs": hangs_on(points_beside(point, section))})
    for zone in zones_over(point, section):
        words = fill(ZONE_LIMIT, {"name": zone["name"]})
        limits.append(limit("zone", words, zone, "left", number_of(zone, "left")))
    return limits


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
    kind: LimitKind, words: str, item: Item | None, shown: str, left_kg: float | None
) -> Limit:
    """
    A limit: what it is called, the fact that shows it, what is left (None where nobody says), and
    whether the house hangs something there. [kg]
    """
    carried_kg = number_of(item, "carried")
    value = None if item is None else item["values"].get(shown)
    key = words if item is None else item["key"]
    return {
        "key": f"{kind} {key}",
        "kind": kind,
        "words": words,
        "item": item,
        "value": value,
        "fact": None if value is None or item is None else fact_of(value, item),
        "left_kg": left_kg,
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
