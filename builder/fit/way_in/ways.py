"""The whole ways in that a house has: approach, dock and route."""

from typing import TypedDict

from builder.fit.records import Item, Section
from builder.fit.sections import items_of
from builder.fit.values import is_said, text_of

LEADS_TO, DECK = "leads_to", "deck"


class Way(TypedDict):
    """One whole way in. The approach or the route may not be described."""

    dock: Item
    approach: Item | None
    route: Item | None


def ways_in(access: Section) -> list[Way]:
    """Each whole way in: through each dock, by each of its routes to the deck."""
    return [way for dock in items_of(access, "dock") for way in ways_through(access, dock)]


def ways_through(access: Section, dock: Item) -> list[Way]:
    """
    Each whole way through a dock: its approach, or None, and each of its routes that leads to the
    deck, or may, or None.
    """
    approach = approach_to(access, dock)
    routes = [
        route
        for route in items_of(access, "route")
        if text_of(route, "from_dock") == dock["name"]
        and (leads_to_deck(route) or not is_said(route, LEADS_TO))
    ]
    if len(routes) == 0:
        return [{"dock": dock, "approach": approach, "route": None}]
    return [{"dock": dock, "approach": approach, "route": route} for route in routes]


def leads_to_deck(route: Item) -> bool:
    """Whether the house says that a route leads to the deck."""
    return is_said(route, LEADS_TO) and text_of(route, LEADS_TO) == DECK


def approach_to(access: Section, dock: Item) -> Item | None:
    """The approach that a dock names, or None."""
    name = text_of(dock, "approach")
    for approach in items_of(access, "approach"):
        if approach["name"] == name:
            return approach
    return None


def described_parts(way: Way) -> list[Item]:
    """What is described of a way, from the road on."""
    parts: list[Item] = []
    if way["approach"] is not None:
        parts.append(way["approach"])
    parts.append(way["dock"])
    if way["route"] is not None:
        parts.append(way["route"])
    return parts


def is_usable(way: Way) -> bool:
    """Whether no part of the way is out of service or not for visitors."""
    return all(
        part["condition"] != "out of service" and part["terms"] != "not for visitors"
        for part in described_parts(way)
    )
