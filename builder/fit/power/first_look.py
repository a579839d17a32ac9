"""What is known of a load by itself, before all loads are placed together."""

from typing import TypedDict

from builder.fit.records import Fact, Item, PowerAsked, Verdict
from builder.formulas.circuit_rows import Row
from builder.formulas.phase_room import Way


class Service(TypedDict):
    """A service that could take a three-phase load, with the way up from it and what to know."""

    item: Item
    way: Way
    fact: Fact | None
    notes: list[str]


class Outlets(TypedDict):
    """A row of the house's outlets that could take circuits, and the line of outlets it is of."""

    item: Item
    row: Row


class FirstLook(TypedDict):
    """
    A load by itself: the services or outlets that could take it, or the verdict where none can.

    ``fact`` and ``notes`` are of the outlets.
    """

    requirement: PowerAsked
    alone: Verdict | None
    services: list[Service]
    outlets: list[Outlets]
    fact: Fact | None
    notes: list[str]


def first_look(requirement: PowerAsked) -> FirstLook:
    """A load of which nothing is known yet."""
    return {
        "requirement": requirement,
        "alone": None,
        "services": [],
        "outlets": [],
        "fact": None,
        "notes": [],
    }
