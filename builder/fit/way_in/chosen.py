"""Limits on a way in that the house chooses: each size of a truck or a case turns at its own."""

from builder.fit.arrangements.records import Reading
from builder.fit.records import Item, RiderAsked, Section, TrucksAsked
from builder.fit.values import is_choice
from builder.fit.way_in.sizes import Size, case_sizes, truck_sizes
from builder.fit.way_in.ways import Way, is_usable, ways_in


def truck_readings(riders: list[RiderAsked], access: Section | None) -> list[Reading]:
    """Every limit on a usable way in that the house chooses, as trucks and cases read it."""
    readings: list[Reading] = []
    for rider in riders:
        for requirement in rider["requirements"]:
            if access is not None and requirement["sort"] == "trucks":
                for way in ways_in(access):
                    readings.extend(readings_on(way, requirement))
    return readings


def readings_on(way: Way, requirement: TrucksAsked) -> list[Reading]:
    """The same on one way."""
    if not is_usable(way):
        return []
    return [
        *limits_read(truck_sizes(requirement), way["approach"]),
        *limits_read(case_sizes(requirement), way["route"]),
    ]


def limits_read(sizes: list[Size], holder: Item | None) -> list[Reading]:
    """The limits of one part of a way that the house chooses."""
    readings: list[Reading] = []
    for size in sizes:
        value = None if holder is None else holder["values"].get(size["limit"])
        if holder is not None and value is not None and is_choice(value):
            least, most = value["least"], value["most"]
            readings.append(
                {
                    "item": holder["name"],
                    "value": value,
                    "kind": size["kind"],
                    "amounts": [size["wanted"]],
                    "way": "at least",
                    "is_open": least is not None
                    and most is not None
                    and least < size["wanted"] <= most,
                }
            )
    return readings
