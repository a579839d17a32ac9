"""
Spots on beams whose points the house tells by a rule: each becomes a point of its own, under what
holds there wherever a point is.
"""

from math import sqrt
from typing import TypedDict

from builder.fit.hangs.issues import issue
from builder.fit.hangs.limits import roof_of
from builder.fit.hangs.points import NEAR_M
from builder.fit.hangs.records import Issue
from builder.fit.hangs.sentences import (
    CENTRE,
    DOWNSTAGE,
    GROUP_EACH,
    GROUP_TOLD,
    HOW_MANY_OF_GROUP,
    NO_LIMIT_TOLD,
    ON_BEAM,
    PERHAPS_TOO_MANY,
    SPOT,
    STAGE_LEFT,
    STAGE_RIGHT,
    TAKE_ANOTHER,
    TOO_MANY_OF_GROUP,
    UPSTAGE,
)
from builder.fit.notes import state_notes
from builder.fit.records import HangAsked, Item, Section, SupportAsked, Value
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import (
    BEARERS,
    TOLD,
    counted_most,
    least_of,
    listed,
    most_of,
    number_of,
    parts_of,
    text_of,
    told_of,
)
from builder.fit.verdicts import ASK, SHORT, fact_of
from builder.fit.wording import both, digits
from builder.formulas.polyline import along_polyline

ACROSS = "across"
BY_RULE = "by_rule"
"""Tells of a point that a rule makes it: where it may be anywhere, or where nobody says so."""
GROUP = "group"
"""The group by whose rule a point is there, by its key."""
ANYWHERE = "anywhere"
ALONG_UNKNOWN = "along unknown"
ROUNDING_M = 0.000001


class OnBeam(TypedDict):
    """A spot seen from a beam: how far along it, and how far beside or beyond it. [m]"""

    beam: Item
    along_m: float
    away_m: float


def with_spots(hangs: list[HangAsked], section: Section) -> Section:
    """The section with a point at every spot of some hangs that lies on a beam told by a rule."""
    made: list[Item] = []
    for hang in hangs:
        for support in hang["supports"]:
            near = nearest_beam(support, section)
            if near is not None and near["away_m"] <= NEAR_M + ROUNDING_M:
                made.append(point_at(near, section, len(made)))
    return {**section, "items": [*section["items"], *made]}


def nearest_beam(support: SupportAsked, section: Section) -> OnBeam | None:
    """The beam told by a rule that is nearest to a spot; of equally near ones the first."""
    best: OnBeam | None = None
    for beam in items_of(section, "beam"):
        found = seen_from(beam, support)
        if found is not None and (best is None or found["away_m"] < best["away_m"]):
            best = found
    return best


def seen_from(beam: Item, support: SupportAsked) -> OnBeam | None:
    """A spot seen from a beam, None where its points are told one by one or no spot is told."""
    rows = steel_of(beam)
    across_m, depth_m = support["across_m"], support["depth_m"]
    if len(rows) == 0 or across_m is None or depth_m is None or text_of(beam, "runs") == "":
        return None
    is_across = text_of(beam, "runs") == ACROSS
    lies_m = number_of(beam, "depth" if is_across else ACROSS)
    if lies_m is None:
        return None
    along_m = across_m if is_across else depth_m
    aside_m = (depth_m if is_across else across_m) - lies_m
    beyond_m = 0.0
    if len(rows) > 1:
        beyond_m = max(rows[0][0] - along_m, along_m - rows[-1][0], 0.0)
    away_m = sqrt(aside_m * aside_m + beyond_m * beyond_m)
    return {"beam": beam, "along_m": along_m, "away_m": away_m}


def steel_of(beam: Item) -> list[tuple[float, float]]:
    """The places along a beam and the heights of its steel there, as far as told. [m]"""
    rows: list[tuple[float, float]] = []
    place_m = number_of(beam, "steel.0.at")
    while place_m is not None:
        height_m = number_of(beam, f"steel.{len(rows)}.height")
        rows.append((place_m, 0.0 if height_m is None else height_m))
        place_m = number_of(beam, f"steel.{len(rows)}.at")
    return rows


def point_at(near: OnBeam, section: Section, number: int) -> Item:
    """
    A point at a spot on a beam: the limit and the distance that the house's rule tells, the steel
    there, and nothing hung where all that hangs on the beam is known, for that hangs from points
    with a place, but for what hangs on the beam for good.
    """
    beam, along_m = near["beam"], near["along_m"]
    group = anywhere_on(beam, section)
    told = beam if group is None else group
    is_across = text_of(beam, "runs") == ACROSS
    lies_m = number_of(beam, "depth" if is_across else ACROSS)
    other_m = 0.0 if lies_m is None else lies_m
    numbers = {
        "at.across": along_m if is_across else other_m,
        "at.depth": other_m if is_across else along_m,
    }
    if counted_most(beam, "carried") is not None and number_of(beam, "standing") is None:
        numbers["carried"] = 0.0
    rows = steel_of(beam)
    is_within = len(rows) > 0 and rows[0][0] <= along_m <= rows[-1][0]
    underside_m = number_of(beam, "underside")
    if is_within:
        numbers["low-steel"] = along_polyline(along_m, rows)
    elif underside_m is not None:
        numbers["low-steel"] = underside_m
    is_sure = group is not None and len(rows) > 1
    place = across_words(along_m) if is_across else depth_words(along_m)
    values = {"spacing_at_least": spacing_on(beam, group, section)}
    if "each-point" in beam["values"]:
        values["limit"] = beam["values"]["each-point"]
    unsure = told if told["remembered"] or told["stale"] else beam
    return {
        **beam,
        "key": f"{beam['key']}.spot-{number}",
        "kind": "point",
        "name": fill(ON_BEAM, {"beam": beam["name"], "place": place}),
        "condition": told["condition"],
        "terms": told["terms"],
        "note": told["note"],
        "checked": unsure["checked"],
        "stale": unsure["stale"],
        "remembered": unsure["remembered"],
        "values": values,
        "numbers": numbers,
        "words": {
            "beam": beam["name"],
            BY_RULE: ANYWHERE if is_sure else ALONG_UNKNOWN,
            GROUP: "" if group is None else group["key"],
            f"{BEARERS}.{TOLD}": of_beam(beam, group),
        },
    }


def of_beam(beam: Item, group: Item | None) -> str:
    """What to know of a beam under a point on it, beside what its group tells."""
    if group is None:
        return told_of(beam, BEARERS)
    return " ".join(state_notes(beam))


def anywhere_on(beam: Item, section: Section) -> Item | None:
    """The group in service whose points may be anywhere along a beam, or None."""
    for group in items_of(section, "point-group"):
        is_on = listed(beam["name"], parts_of(group, "beams"))
        if is_on and text_of(group, ANYWHERE) == "yes" and group["condition"] != "out of service":
            return group
    return None


def spacing_on(beam: Item, group: Item | None, section: Section) -> Value:
    """
    The smallest distance between two loaded points on a beam: the group's own, else the house's
    rule. Where neither says anything it is not known: points that stand somewhere were placed so
    that they keep it, spots were not.
    """
    for item in (group, roof_of(section)):
        value = None if item is None else item["values"].get("spacing_at_least")
        if value is not None and value["standing"] != "not stated":
            return value
    return {
        "key": f"{beam['key']}.spacing",
        "label": "Spacing at least",
        "text": "",
        "also": "",
        "number": None,
        "parts": [],
        "least": None,
        "most": None,
        "can_be_set": False,
        "settings": [],
        "page": beam["page"],
        "standing": "unknown",
        "checked": "",
        "stale": False,
        "remembered": False,
    }


def is_by_rule(point: Item) -> bool:
    """Whether a rule makes a point at a spot of the show."""
    return BY_RULE in point["words"]


def is_unplaced(point: Item) -> bool:
    """Whether nobody says that a point may be where a rule would make it."""
    return text_of(point, BY_RULE) == ALONG_UNKNOWN


def too_many(point: Item, loaded: list[str], section: Section) -> list[Issue]:
    """More points of a group than it says that it has, those of earlier hangs counted."""
    name = text_of(point, GROUP)
    if name == "":
        return []
    wanted = 0
    for other in items_of(section, "point"):
        is_same = text_of(other, GROUP) == name and other["key"] in loaded
        wanted += 1 if is_same else 0
    for group in items_of(section, "point-group"):
        count = group["values"].get("count")
        if group["key"] == name and count is not None:
            return count_issues(group, count, wanted)
    return []


def count_issues(group: Item, count: Value, wanted: int) -> list[Issue]:
    """How many points are wanted of a group against how many it says that it has."""
    if count["standing"] == "not stated":
        return []
    least, most = least_of(count), most_of(count)
    parts = {
        "group": group["name"],
        "count": "" if most is None else digits(most, 0),
        "wanted": digits(wanted, 0),
    }
    fact = fact_of(count, group)
    if most is not None and wanted > most:
        reason = fill(TOO_MANY_OF_GROUP, parts)
        return [{**issue(SHORT, reason, remedy=TAKE_ANOTHER), "fact": fact}]
    if least is None or wanted > least:
        question = fill(HOW_MANY_OF_GROUP, parts)
        return [{**issue(ASK, fill(PERHAPS_TOO_MANY, parts), question=question), "fact": fact}]
    return []


def groups_without_place(section: Section) -> list[Item]:
    """The groups in service of which nobody says on which beams they are."""
    return [
        group
        for group in items_of(section, "point-group")
        if group["condition"] != "out of service" and len(parts_of(group, "beams")) == 0
    ]


def without_place(section: Section) -> list[Item]:
    """
    The points in service, and the beams told by a rule, of which nobody says where they are.
    """
    points = [point for point in items_of(section, "point") if not has_place(point)]
    beams = [beam for beam in items_of(section, "beam") if is_nowhere(beam)]
    return [item for item in [*points, *beams] if item["condition"] != "out of service"]


def has_place(point: Item) -> bool:
    """Whether the house says where a point is, seen from above."""
    across_m, depth_m = number_of(point, "at.across"), number_of(point, "at.depth")
    return across_m is not None and depth_m is not None


def is_nowhere(beam: Item) -> bool:
    """Whether a beam is told by a rule, and nobody says where it lies or how long it is."""
    if "each-point" not in beam["values"]:
        return False
    runs = text_of(beam, "runs")
    lies_m = number_of(beam, "depth" if runs == ACROSS else ACROSS)
    return runs == "" or lies_m is None or len(steel_of(beam)) == 0


def group_words(group: Item) -> str:
    """A group with what the house tells of it."""
    return fill(GROUP_TOLD, {"group": group["name"], "words": told_words(group)})


def told_words(group: Item) -> str:
    """How many a group has, where, and what each may carry."""
    words = [text_of(group, "points"), text_of(group, "place")]
    limit = text_of(group, "limit")
    words.append(NO_LIMIT_TOLD if limit == "" else fill(GROUP_EACH, {"limit": limit}))
    return ", ".join([word for word in words if word != ""])


def spot_words(support: SupportAsked) -> str:
    """A spot from the datum in words."""
    across_m = 0.0 if support["across_m"] is None else support["across_m"]
    depth_m = 0.0 if support["depth_m"] is None else support["depth_m"]
    return fill(SPOT, {"across": across_words(across_m), "depth": depth_words(depth_m)})


def across_words(across_m: float) -> str:
    """A place across the stage in words."""
    if across_m == 0:
        return CENTRE
    template = STAGE_LEFT if across_m > 0 else STAGE_RIGHT
    return fill(template, {"length": both("length", abs(across_m))[0]})


def depth_words(depth_m: float) -> str:
    """A place in depth in words."""
    length = both("length", abs(depth_m))[0]
    if depth_m == 0:
        return length
    return fill(UPSTAGE if depth_m > 0 else DOWNSTAGE, {"length": length})
