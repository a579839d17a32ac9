"""What stands on the stage or hangs above it, against a rectangle of a stage plot."""

from builder.fit.margins import LENGTH_TOLERANCE_M
from builder.fit.plots.floors import may_be_stepped, says_unknown
from builder.fit.plots.hits import asked_hit, noted_hit, set_hits, short_hit
from builder.fit.plots.records import Floor, Hit
from builder.fit.plots.sentences import (
    ASK_OBSTRUCTIONS,
    ASK_STEP,
    ASK_UNDERSIDE,
    ASK_WHERE_IS,
    HANGS,
    HANGS_LOWER,
    HANGS_UNKNOWN,
    NO_HEIGHT,
    OBSTRUCTIONS_UNKNOWN,
    STANDS_INSIDE,
    STEP_UNKNOWN,
    WHERE_UNKNOWN,
)
from builder.fit.records import Fact, Item, Outline, RectangleAsked, Section, Value
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import least_of, most_of, value_of
from builder.fit.wording import both, metres
from builder.formulas.polygons import Box, box_around
from builder.formulas.rectangles import ROUNDING_M, Rectangle, into_m, meets


def obstructions_of(section: Section) -> list[Outline]:
    """The outlines of what stands on the stage or hangs above it."""
    return [
        outline
        for outline in section["outlines"]
        if outline["kind"] == "obstruction" and len(outline["corners"]) > 2
    ]


def obstruction_hits(
    wish: RectangleAsked, rect: Rectangle, floor: Floor, section: Section
) -> list[Hit]:
    """
    The obstructions that a rectangle meets: what stands there, and what hangs lower than it is
    high.
    """
    hits: list[Hit] = []
    for outline in obstructions_of(section):
        if meets(rect, outline["corners"], LENGTH_TOLERANCE_M):
            item = item_named(section, outline["name"])
            hits.extend(one_obstruction(wish, rect, floor, outline, item))
    hits.extend(undrawn_hits(section))
    return hits


def undrawn_hits(section: Section) -> list[Hit]:
    """What is in the way somewhere, of which nobody drew where."""
    drawn = {outline["name"] for outline in obstructions_of(section)}
    hits: list[Hit] = []
    for item in items_of(section, "obstruction"):
        if item["name"] not in drawn:
            name = {"name": item["name"]}
            words, question = fill(WHERE_UNKNOWN, name), fill(ASK_WHERE_IS, name)
            hits.append(asked_hit("obstruction", words, question))
    if says_unknown(section, "obstructions"):
        hits.append(asked_hit("obstruction", OBSTRUCTIONS_UNKNOWN, ASK_OBSTRUCTIONS))
    return hits


def item_named(section: Section, name: str) -> Item | None:
    """The obstruction of a name; None where the pack only draws it."""
    for item in items_of(section, "obstruction"):
        if item["name"] == name:
            return item
    return None


def one_obstruction(
    wish: RectangleAsked, rect: Rectangle, floor: Floor, outline: Outline, item: Item | None
) -> list[Hit]:
    """One obstruction that a rectangle meets on the plan."""
    under = value_of(item, "from_height") if item is not None else None
    corners = outline["corners"]
    fact = obstruction_fact(item)
    if item is None or under is None:
        by = into_m(rect, corners)
        parts = {"name": outline["name"], "amount": both("length", by)[0]}
        words = fill(STANDS_INSIDE, parts)
        return [short_hit("obstruction", words, by, fact, box=box_around(corners))]
    return under_obstruction(wish, floor, under, item, box_around(corners))


def under_obstruction(
    wish: RectangleAsked, floor: Floor, under: Value, item: Item, box: Box
) -> list[Hit]:
    """Something that hangs above a rectangle, from some height up."""
    fact, name = obstruction_fact(item), {"name": item["name"]}
    least_m, most_m = least_of(under), most_of(under)
    low_m = most_m if least_m is None else least_m
    unknown = [asked_hit("height", fill(HANGS_UNKNOWN, name), fill(ASK_UNDERSIDE, name), fact)]
    if low_m is None:
        return unknown
    hangs = fill(HANGS, {"name": item["name"], "height": metres(low_m)})
    if wish["height_m"] is None:
        return [noted_hit("height", fill(NO_HEIGHT, {"hangs": hangs}))]
    if may_be_stepped(floor):
        return [asked_hit("height", fill(STEP_UNKNOWN, {"hangs": hangs}), ASK_STEP, fact)]
    if least_m is not None and wish["height_m"] <= least_m + ROUNDING_M:
        return set_hits(under, item, "length")
    over_m = 0.0 if most_m is None else wish["height_m"] - most_m
    if over_m <= ROUNDING_M:
        return unknown
    words = fill(HANGS_LOWER, {"hangs": hangs, "amount": both("length", over_m)[0]})
    return [short_hit("height", words, over_m, fact, box=box)]


def obstruction_fact(item: Item | None) -> Fact | None:
    """An obstruction as the house's fact, or None where the pack only draws it."""
    if item is None:
        return None
    return {
        "key": item["key"],
        "item": item["name"],
        "label": "where it is",
        "text": "on the stage plan",
        "standing": "stated",
        "also": "",
        "page": item["page"],
        "checked": item["checked"],
    }
