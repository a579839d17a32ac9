"""How far a service is from where it is wanted, by the straight line; a cable is always longer."""

from math import sqrt
from typing import TypedDict

from builder.fit.notes import check_notes
from builder.fit.power.sentences import (
    DISTANCE,
    DISTANCE_UNKNOWN,
    PLACE_ALONE,
    PLACE_UNKNOWN,
    PLACE_UNNAMED,
    SPOT_UNKNOWN,
    TOO_FAR,
)
from builder.fit.records import Item, PowerAsked, Section, Word
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import listed, number_of, text_of
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
        return {"word": ASK, "words": unnamed_words(requirement["of"], stage)}
    here = spot_of(item)
    if here is None and "place" in item["values"]:
        here = spot_named(stage, text_of(item, "place"))
    if here is None and requirement["within_m"] is None:
        return {"word": FITS, "words": fill(DISTANCE_UNKNOWN, place)}
    if here is None:
        return {"word": ASK, "words": PLACE_UNKNOWN}
    return by_distance(requirement, here, there)


def unnamed_words(name: str, stage: Section | None) -> str:
    """That a place is none of the house's, with those that it names."""
    names = [place["name"] for place in items_of(stage, "place")]
    if len(names) == 0 or listed(name, names):
        return fill(PLACE_ALONE if len(names) == 0 else SPOT_UNKNOWN, {"place": name})
    return fill(PLACE_UNNAMED, {"place": name, "names": ", ".join(names)})


def apart_m(one: tuple[float, float], other: tuple[float, float]) -> float:
    """The straight line between two spots. [m]"""
    across_m, depth_m = one[0] - other[0], one[1] - other[1]
    return sqrt(across_m * across_m + depth_m * depth_m)


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
    distance_m = apart_m(here, there)
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
