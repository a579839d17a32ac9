"""How far a service is from where it is wanted, by the straight line; a cable is always longer."""

from math import sqrt
from typing import TypedDict

from builder.fit.notes import check_notes
from builder.fit.power.sentences import (
    DISTANCE,
    DISTANCE_UNKNOWN,
    PLACE_UNKNOWN,
    PLACE_UNNAMED,
    TOO_FAR,
)
from builder.fit.records import Item, PowerAsked, Section, Word
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import number_of, text_of
from builder.fit.verdicts import ASK, FITS, SHORT
from builder.fit.wording import both


class Distance(TypedDict):
    """What a distance makes of a wish, in words; empty where nothing is wanted of it."""

    word: Word
    words: str


def distance_to(requirement: PowerAsked, item: Item, stage: Section | None) -> Distance:
    """Whether a service is near enough."""
    if requirement["within_m"] is None and requirement["of"] == "":
        return {"word": FITS, "words": ""}
    place = {"place": requirement["of"]}
    there = spot_named(stage, requirement["of"])
    if there is None:
        return {"word": ASK, "words": fill(PLACE_UNNAMED, place)}
    here = spot_of(item)
    if here is None and "place" in item["values"]:
        here = spot_named(stage, text_of(item, "place"))
    if here is None and requirement["within_m"] is None:
        return {"word": FITS, "words": fill(DISTANCE_UNKNOWN, place)}
    if here is None:
        return {"word": ASK, "words": PLACE_UNKNOWN}
    return by_distance(requirement, here, there)


def place_notes(requirement: PowerAsked, stage: Section | None) -> list[str]:
    """What to know of the check of the place that a distance counts from."""
    named = [place for place in items_of(stage, "place") if is_called(place, requirement["of"])]
    return [note for place in named for note in check_notes(place)]


def is_called(place: Item, name: str) -> bool:
    """Whether a place has a name, whatever the capitals."""
    return place["name"].lower() == name.lower()


def by_distance(
    requirement: PowerAsked, here: tuple[float, float], there: tuple[float, float]
) -> Distance:
    """Two spots that are known against how far they may be apart."""
    across_m, depth_m = here[0] - there[0], here[1] - there[1]
    distance_m = sqrt(across_m * across_m + depth_m * depth_m)
    parts = {"distance": both("length", distance_m)[0], "place": requirement["of"]}
    within_m = requirement["within_m"]
    if within_m is not None and distance_m > within_m:
        return {"word": SHORT, "words": fill(TOO_FAR, parts)}
    return {"word": FITS, "words": fill(DISTANCE, parts)}


def spot_of(item: Item) -> tuple[float, float] | None:
    """Across and depth of an item, or None. [m]"""
    across_m, depth_m = number_of(item, "at.across"), number_of(item, "at.depth")
    if across_m is None or depth_m is None:
        return None
    return (across_m, depth_m)


def spot_named(stage: Section | None, name: str) -> tuple[float, float] | None:
    """The spot of a place of the stage, by its name; None where there is none or it is not said."""
    for place in items_of(stage, "place"):
        if is_called(place, name):
            return spot_of(place)
    return None
