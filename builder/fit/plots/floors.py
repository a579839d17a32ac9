"""
What a rectangle of a stage plot stands on: the deck or a wing, and how high it may be there.
"""

from builder.fit.margins import LENGTH_TOLERANCE_M
from builder.fit.plots.hits import asked_hit, set_hits, short_hit
from builder.fit.plots.records import Floor, Hit
from builder.fit.plots.sentences import (
    ASK_HEIGHT,
    ASK_STEP,
    COUNTS_FROM_DECK,
    DECK,
    HEIGHT_NOT_SAID,
    NOT_FOR_VISITORS,
    OUT_OF_SERVICE,
    OUTLINE,
    SIZE,
    THE_FLOOR,
    TOO_HIGH,
    WING,
)
from builder.fit.records import Fact, Item, RectangleAsked, Section
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import least_of, most_of, value_of
from builder.fit.verdicts import fact_of
from builder.fit.wording import both
from builder.formulas.polygons import Point, box_around
from builder.formulas.rectangles import ROUNDING_M, Rectangle, lies_within

ON_DECK = "deck"


def outline_of(section: Section, kind: str, name: str) -> list[Point]:
    """The corners of an outline; none where it is not drawn."""
    for outline in section["outlines"]:
        if outline["kind"] == kind and outline["name"] == name and len(outline["corners"]) > 2:
            return outline["corners"]
    return []


def says_unknown(section: Section, name: str) -> bool:
    """Whether the house says of a list of its stage that it does not know what stands in it."""
    for whole in items_of(section, "whole"):
        if name in whole["values"] and whole["values"][name]["standing"] == "unknown":
            return True
    return False


def floors_of(section: Section, deck: Item) -> list[Floor]:
    """The deck, then the wings that are drawn."""
    floors: list[Floor] = [
        {"on": ON_DECK, "item": deck, "corners": outline_of(section, "deck", deck["name"])}
    ]
    for item in items_of(section, "wing"):
        corners = outline_of(section, "wing", item["name"])
        if len(corners) > 0:
            floors.append({"on": item["name"], "item": item, "corners": corners})
    return floors


def floor_called(floors: list[Floor], on: str) -> Floor | None:
    """
    The floor that a rider names; the deck where it names none; None where the pack has no such
    wing.
    """
    for floor in floors:
        if floor["on"] == wanted_floor(on):
            return floor
    return None


def wanted_floor(on: str) -> str:
    """The floor that a rider names, or the deck."""
    return on if on != "" else ON_DECK


def floor_under(wish: RectangleAsked, rect: Rectangle, floors: list[Floor]) -> Floor | None:
    """The floor that holds all of a rectangle, or None."""
    for floor in floors:
        may_stand = wish["on"] in ("", floor["on"])
        if may_stand and lies_within(rect, floor["corners"], LENGTH_TOLERANCE_M):
            return floor
    return None


def floor_words(floor: Floor) -> str:
    """A floor in words."""
    if floor["on"] == ON_DECK:
        return DECK
    return fill(WING, {"name": floor["item"]["name"]})


def outline_fact(floor: Floor) -> Fact:
    """A floor's outline as the house's fact."""
    box, item = box_around(floor["corners"]), floor["item"]
    across, depth = both("length", box[1] - box[0]), both("length", box[3] - box[2])
    return {
        "key": item["key"],
        "item": item["name"],
        "label": OUTLINE,
        "text": fill(SIZE, {"across": across[0], "depth": depth[0]}),
        "standing": "stated",
        "also": fill(SIZE, {"across": across[1], "depth": depth[1]}),
        "page": item["page"],
        "checked": item["checked"],
    }


def use_hits(floor: Floor) -> list[Hit]:
    """What a visitor may not use."""
    item = floor["item"]
    name = {"name": fill(THE_FLOOR, {"floor": floor_words(floor)})}
    if item["condition"] == "out of service":
        return [short_hit("use", fill(OUT_OF_SERVICE, name), 0.0, outline_fact(floor))]
    if item["terms"] == "not for visitors":
        return [short_hit("use", fill(NOT_FOR_VISITORS, name), 0.0, outline_fact(floor))]
    return []


def may_be_stepped(floor: Floor) -> bool:
    """
    Whether a floor is a wing that is not said to be level with the deck.

    Heights are published from the deck.
    """
    level = value_of(floor["item"], "level_with_deck")
    return floor["on"] != ON_DECK and (level is None or level["text"] != "yes")


def height_hits(wish: RectangleAsked, floor: Floor) -> list[Hit]:
    """What a rectangle's height makes of the clear height above its floor."""
    if wish["height_m"] is None:
        return []
    value = value_of(floor["item"], "clear_height")
    if value is not None and (value["standing"] == "none" or value["text"] == "no limit"):
        return []
    name = {"floor": floor_words(floor)}
    if may_be_stepped(floor):
        return [asked_hit("height", fill(COUNTS_FROM_DECK, name), ASK_STEP)]
    most_m, least_m = most_of(value), least_of(value)
    over_m = 0.0 if most_m is None else wish["height_m"] - most_m
    words = fill(TOO_HIGH, {"amount": both("length", over_m)[0]})
    if value is not None and over_m > ROUNDING_M:
        return [short_hit("height", words, over_m, fact_of(value, floor["item"]))]
    if least_m is None or wish["height_m"] > least_m + ROUNDING_M:
        return [asked_hit("height", fill(HEIGHT_NOT_SAID, name), fill(ASK_HEIGHT, name))]
    return set_hits(value, floor["item"], "length")
