"""
Where the acts of a day may play: all in one configuration, unless riders name their own.
"""

from builder.fit.arrangements.records import Evening, Place
from builder.fit.records import RiderAsked

MOST = 64
"""How many configurations are compared; of a house with more, the show has to name one."""


def evenings_of(riders: list[RiderAsked], names: list[str]) -> list[Evening]:
    """The evenings to compare, in the house's order of configurations; at least one."""
    return [evening_in(place, riders, names) for place in free_places(riders, names)]


def free_places(riders: list[RiderAsked], names: list[str]) -> list[Place]:
    """
    Where acts may play that name no configuration: where other acts of the day do, else in any.
    """
    if len(names) == 0:
        return [{"configuration": "", "is_open": False}]
    named = [name for name in names if any(rider["configuration"] == name for rider in riders)]
    choices = named if len(named) > 0 else names
    if all(rider["configuration"] != "" for rider in riders):
        choices = choices[:1]
    if len(choices) > MOST:
        return [{"configuration": "", "is_open": True}]
    return [{"configuration": name, "is_open": False} for name in choices]


def evening_in(free: Place, riders: list[RiderAsked], names: list[str]) -> Evening:
    """The evening on which acts that name no configuration play in one place."""
    evening: Evening = {"free": free, "places": [], "own": []}
    for rider in riders:
        place = place_of(rider, free, names)
        if place not in evening["places"]:
            evening["places"].append(place)
        evening["own"].append(evening["places"].index(place))
    if len(riders) == 0:
        evening["places"].append(free)
    return evening


def place_of(rider: RiderAsked, free: Place, names: list[str]) -> Place:
    """Where an act plays. To a house that names no configuration a rider's name says nothing."""
    written = rider["configuration"]
    if written == "" or len(names) == 0:
        return free
    return {"configuration": written, "is_open": written not in names}
