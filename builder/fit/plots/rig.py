"""What the house has hung, against a rectangle of a stage plot that stands under it."""

from builder.fit.plots.floors import may_be_stepped
from builder.fit.plots.hits import asked_hit, noted_hit, set_hits, short_hit
from builder.fit.plots.records import Floor, Hit
from builder.fit.plots.sentences import (
    ASK_COMES_DOWN,
    ASK_ENDS,
    ASK_RIG,
    ASK_STEP,
    ASK_UNDERSIDE,
    COMES_DOWN,
    HANGS,
    HANGS_LOWER,
    HANGS_SOMEWHERE,
    HANGS_UNKNOWN,
    NO_HEIGHT,
    RIG_NOT_SAID,
    STEP_UNKNOWN,
)
from builder.fit.records import Item, RectangleAsked, Section
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import counted_least, is_said, least_of, most_of, text_of, value_of
from builder.fit.verdicts import fact_of
from builder.fit.wording import both, metres
from builder.formulas.polygons import Point, box_around, strip_around
from builder.formulas.rectangles import ROUNDING_M, Rectangle, meets

HALF_HANG_M = 0.5
"""As the exchange of departments has it, for the deck's own figure."""


def rig_hits(
    wish: RectangleAsked, rect: Rectangle, floor: Floor, rigging: Section | None
) -> list[Hit]:
    """What hangs over a rectangle and is lower than it is high."""
    if rigging is None or wish["lane"]:
        return []
    hits: list[Hit] = []
    for hang in hangs_over(rect, rigging):
        hits.extend(under_hang(wish, floor, hang, strip_of(hang)))
    for hang in items_of(rigging, "hang"):
        if len(strip_of(hang)) == 0:
            hits.extend(perhaps_under(wish, hang))
    if len(items_of(rigging, "hang")) == 0 and wish["height_m"] is not None:
        hits.extend(untold(rigging))
    return hits


def hangs_over(rect: Rectangle, rigging: Section) -> list[Item]:
    """What of the house hangs over a rectangle."""
    hangs: list[Item] = []
    for hang in items_of(rigging, "hang"):
        corners = strip_of(hang)
        if len(corners) > 0 and meets(rect, corners, 0.0):
            hangs.append(hang)
    return hangs


def perhaps_under(wish: RectangleAsked, hang: Item) -> list[Hit]:
    """A hang of which nobody knows where it is: asked, unless a rectangle is lower wherever."""
    value = value_of(hang, "underside")
    least_m, high_m = least_of(value), wish["height_m"]
    if high_m is None or (least_m is not None and high_m - ROUNDING_M <= least_m):
        return []
    name = {"name": hang["name"]}
    fact = None if value is None else fact_of(value, hang)
    return [asked_hit("height", fill(HANGS_SOMEWHERE, name), fill(ASK_ENDS, name), fact)]


def untold(rigging: Section) -> list[Hit]:
    """Where nobody has said whether anything hangs, that is asked."""
    if any(is_said(item, "hangs") for item in items_of(rigging, "house")):
        return []
    return [asked_hit("height", RIG_NOT_SAID, ASK_RIG)]


def strip_of(hang: Item) -> list[Point]:
    """The floor under a hang; none where the pack does not place it."""
    ends = [
        counted_least(hang, name)
        for name in (
            "first_end.across",
            "first_end.depth",
            "last_end.across",
            "last_end.depth",
        )
    ]
    known = [end for end in ends if end is not None]
    if len(known) < len(ends):
        return []
    return strip_around((known[0], known[1]), (known[2], known[3]), HALF_HANG_M)


def under_hang(wish: RectangleAsked, floor: Floor, hang: Item, corners: list[Point]) -> list[Hit]:
    """One hang over a rectangle."""
    value = value_of(hang, "underside")
    fact = None if value is None else fact_of(value, hang)
    least_m, most_m = least_of(value), most_of(value)
    name = {"name": hang["name"]}
    if least_m is None and most_m is None:
        return [asked_hit("height", fill(HANGS_UNKNOWN, name), fill(ASK_UNDERSIDE, name), fact)]
    low_m = most_m if least_m is None else least_m
    height = "" if low_m is None else metres(low_m)
    hangs = fill(HANGS, {"name": hang["name"], "height": height})
    if wish["height_m"] is None:
        return [noted_hit("height", fill(NO_HEIGHT, {"hangs": hangs}))]
    if may_be_stepped(floor):
        return [asked_hit("height", fill(STEP_UNKNOWN, {"hangs": hangs}), ASK_STEP, fact)]
    high_m = wish["height_m"] - ROUNDING_M
    if least_m is not None and high_m <= least_m:
        return set_hits(value, hang, "length")
    over_m = 0.0 if most_m is None else wish["height_m"] - most_m
    lower = fill(HANGS_LOWER, {"hangs": hangs, "amount": both("length", over_m)[0]})
    if most_m is None or high_m <= most_m:
        return [asked_hit("height", fill(HANGS_UNKNOWN, name), fill(ASK_UNDERSIDE, name), fact)]
    if is_said(hang, "comes_down") and text_of(hang, "comes_down") == "no":
        return [short_hit("height", lower, over_m, fact, box=box_around(corners))]
    words = fill(COMES_DOWN, {"words": lower})
    return [asked_hit("height", words, fill(ASK_COMES_DOWN, name), fact)]
