"""
What a rectangle of a stage plot stands on: the deck or a wing, how high it may be there, and what
the floor carries.
"""

from typing import Any

from builder.fit.comparing import LENGTH_TOLERANCE_M, item_notes
from builder.fit.plots.hits import hit
from builder.fit.verdicts import ASK, FITS, NOTED, SHORT, Record, fact_of
from builder.fit.wording import both
from builder.formulas.polygons import Point, box_around
from builder.formulas.rectangles import ROUNDING_M, lies_within, meets

GRAVITY_M_S2 = 9.80665
STEP = "How high is the floor of this wing against the deck?"
FLOAT_SHARE = 0.000000001
"""What the arithmetic itself may cost. A limit on loads has no tolerance."""


def outline_of(section: Record, kind: str, name: str) -> list[Point]:
    """The corners of an outline; none where it is not drawn."""
    for outline in section["outlines"]:
        if outline["kind"] == kind and outline["name"] == name and len(outline["corners"]) > 2:
            return list(outline["corners"])
    return []


def floors_of(section: Record, deck: Record) -> list[Record]:
    """The deck, then the wings that are drawn."""
    found = [{"on": "deck", "item": deck, "corners": outline_of(section, "deck", deck["name"])}]
    for item in section["items"]:
        corners = outline_of(section, "wing", item["name"]) if item["kind"] == "wing" else []
        if len(corners) > 0:
            found.append({"on": item["name"], "item": item, "corners": corners})
    return found


def floor_called(floors: list[Record], on: str) -> Any:
    """
    The floor that a rider names; the deck where it names none; None where the pack has no such
    wing.
    """
    for floor in floors:
        if floor["on"] == (on if on != "" else "deck"):
            return floor
    return None


def floor_under(wish: Record, rect: Record, floors: list[Record]) -> Any:
    """The floor that holds all of a rectangle, or None."""
    for floor in floors:
        if wish["on"] in ("", floor["on"]) and lies_within(
            rect, floor["corners"], LENGTH_TOLERANCE_M
        ):
            return floor
    return None


def named(floor: Record) -> str:
    """A floor in words."""
    return "deck" if floor["on"] == "deck" else "wing " + str(floor["item"]["name"])


def outline_fact(floor: Record) -> Record:
    """A floor's outline as the house's fact."""
    box, item = box_around(floor["corners"]), floor["item"]
    across, depth = both("length", box[1] - box[0]), both("length", box[3] - box[2])
    fact = {
        "key": item["key"],
        "item": item["name"],
        "label": "outline, across and in depth",
        "text": across[0] + " × " + depth[0],
    }
    return {
        **fact,
        "standing": "stated",
        "also": across[1] + " × " + depth[1],
        "page": item["page"],
        "checked": item["checked"],
    }


def not_in_use(floor: Record) -> list[Record]:
    """What a visitor may not use."""
    item = floor["item"]
    if item["condition"] == "out of service" or item["terms"] == "not for visitors":
        words = (
            "the "
            + named(floor)
            + " is "
            + ("out of service" if item["condition"] == "out of service" else "not for visitors")
        )
        return [hit(SHORT, "use", words, fact=outline_fact(floor))]
    return []


def stepped(floor: Record) -> bool:
    """
    Whether a floor is a wing that is not said to be level with the deck.

    Heights are published from the deck.
    """
    level = floor["item"]["values"].get("level_with_deck")
    return floor["on"] != "deck" and (level is None or level["text"] != "yes")


def too_high(wish: Record, floor: Record) -> list[Record]:
    """What a rectangle's height makes of the clear height above its floor."""
    if wish["height_m"] is None:
        return []
    item = floor["item"]
    value = item["values"].get("clear_height")
    if value is not None and (value["standing"] == "none" or value["text"] == "no limit"):
        return []
    if stepped(floor):
        return [
            hit(
                ASK,
                "height",
                "what is clear above the "
                + named(floor)
                + " counts from the deck, not from its own floor",
                question=STEP,
            )
        ]
    over_m = (
        wish["height_m"] - value["number"]
        if value is not None and value["number"] is not None
        else 0.0
    )
    if over_m > LENGTH_TOLERANCE_M + ROUNDING_M:
        return [
            hit(
                SHORT,
                "height",
                both("length", over_m)[0] + " higher than what is clear above it",
                by=over_m,
                fact=fact_of(value, item),
            )
        ]
    if known(value):
        words = (
            both("length", over_m)[0]
            + " higher than what is clear above it, within the tolerance for rounding"
        )
        return [hit(NOTED, "height", words)] if over_m > ROUNDING_M else []
    question = "How high is the lowest fixed thing above the " + named(floor) + "?"
    return [
        hit(
            ASK,
            "height",
            "nobody says how high the lowest thing above the " + named(floor) + " is",
            question=question,
        )
    ]


def known(value: Any) -> bool:
    """Whether a value has a number that can prove a fit: one that can only be less proves none."""
    return value is not None and value["number"] is not None and not value["bound"]


def carried(wish: Record, rect: Record, floor: Record, section: Record) -> list[Record]:
    """
    What weight and feet make of every floor under a rectangle.

    The floor's own limit does not bind where a zone lies under all of it.
    """
    under = []
    covered = False
    for item in section["items"]:
        corners = outline_of(section, "zone", item["name"]) if item["kind"] == "zone" else []
        if len(corners) > 0 and meets(rect, corners, LENGTH_TOLERANCE_M):
            under.append({"item": item, "corners": corners})
            covered = covered or lies_within(rect, corners, LENGTH_TOLERANCE_M)
    found = []
    for zone in under:
        found += zone_state(zone["item"], zone["corners"])
    for each in under if covered else [floor, *under]:
        found += loads_on(wish, each["item"], each["corners"])
    return found


def zone_state(item: Record, corners: list[Point]) -> list[Record]:
    """A zone that is out of service takes nothing; one that is limited is told."""
    if item["condition"] == "out of service":
        return [hit(SHORT, "use", item["name"] + " is out of service", box=box_around(corners))]
    return [hit(NOTED, "state", words) for words in item_notes(item)]


def loads_on(wish: Record, item: Record, corners: list[Point]) -> list[Record]:
    """A rectangle's loads against what one floor carries."""
    found = []
    if wish["weight_kg"] is not None:
        pressure_pa = wish["weight_kg"] * GRAVITY_M_S2 / (wish["width_m"] * wish["depth_m"])
        found.append(loaded(pressure_pa, "load", item, corners))
    if wish["foot_kg"] is not None:
        found.append(loaded(wish["foot_kg"], "mass", item, corners))
    return found


def loaded(load: float, kind: str, item: Record, corners: list[Point]) -> Record:
    """One load against one limit, without a tolerance."""
    value = item["values"].get("load" if kind == "load" else "point_load")
    words = (
        both(kind, load)[0]
        + (" spread evenly on " if kind == "load" else " on one foot on ")
        + item["name"]
    )
    fact = fact_of(value, item) if value is not None else None
    if value is not None and value["number"] is not None:
        over = load - value["number"]
        carries = words + ", which carries " + both(kind, value["number"])[0]
        if over > abs(value["number"]) * FLOAT_SHARE:
            zone = box_around(corners) if item["kind"] == "zone" else None
            return hit(
                SHORT,
                kind,
                carries,
                by=over,
                measure=kind,
                fact=fact,
                box=zone,
                limit=value["number"],
            )
        if known(value):
            return hit(FITS, kind, carries, fact=fact)
    what = "uniform load" if kind == "load" else "largest single load, on what footprint,"
    question = "What " + what + " does " + item["name"] + " carry, by whose letter?"
    return hit(ASK, kind, words + ", and nobody says what it carries", question=question, fact=fact)
