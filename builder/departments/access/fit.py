"""What a show may ask of the way in: docks, machines, openings, parking."""

from functools import partial

from builder.rules import NUMBERS, Rule

TO_THE_DECK = (("leads_to", "deck"),)
"""A way to the hall floor may be wider than every way to the deck."""
access = partial(Rule, department="access", section="access")
dock = partial(access, item="dock", whole="docks")
vehicle = partial(
    access, item="vehicle", whole="vehicles", kind="count", value="count", combine="sum"
)
parking = partial(
    access, item="parking", kind="count", value="count", combine="sum", day="sum", who="the house"
)

RULES = (
    dock(
        key="dock height",
        title="Dock height above the road",
        kind="length",
        ways=NUMBERS,
        value="height",
        none_means="zero",
        question="How high is the dock above the road, and is there a leveller?",
        remedy="A forklift, a ramp or a tail lift instead of a dock.",
        who="the house, or hire",
    ),
    dock(
        key="dock spaces",
        title="Trucks unloading at once",
        kind="count",
        value="trucks_at_once",
        combine="sum",
        day="sum",
        question="How many trucks can unload at once?",
        remedy="Call the trucks one after the other; ask where the others wait.",
        who="the show",
    ),
    dock(
        key="dock door width",
        title="Clear width of the dock door",
        kind="length",
        value="door_width",
        legal=True,
        none_means="no limit",
        question="How wide is the dock door, clear?",
        remedy="Split the widest case or set piece.",
        who="the show",
    ),
    dock(
        key="dock door height",
        title="Clear height of the dock door",
        kind="length",
        value="door_height",
        legal=True,
        none_means="no limit",
        question="How high is the dock door, clear?",
        remedy="Lay the highest case or set piece down.",
        who="the show",
    ),
    access(
        key="opening width",
        title="Tightest width from a dock to the deck",
        kind="length",
        item="route",
        value="tightest_width",
        where=TO_THE_DECK,
        legal=True,
        question="What is the tightest width from the dock to the deck?",
        remedy="Split the widest case or set piece.",
        who="the show",
    ),
    access(
        key="opening height",
        title="Tightest height from a dock to the deck",
        kind="length",
        item="route",
        value="tightest_height",
        where=TO_THE_DECK,
        legal=True,
        question="What is the tightest height from the dock to the deck?",
        remedy="Lay the highest case or set piece down.",
        who="the show",
    ),
    vehicle(
        key="forklifts",
        title="Forklifts",
        where=(("kind", "forklift"),),
        question="How many forklifts are there, of what rating, and who drives them?",
        remedy="Hire a forklift with a driver.",
        who="the house, at the show's cost",
    ),
    access(
        key="forklift capacity",
        title="Rated capacity of a forklift",
        kind="mass",
        item="vehicle",
        value="capacity",
        legal=True,
        whole="vehicles",
        where=(("kind", "forklift"),),
        question="What is the rated capacity of your forklift, and at which load centre?",
        remedy="Hire a larger forklift, or split the load.",
        who="the house, at the show's cost",
    ),
    vehicle(
        key="pallet trucks",
        title="Pallet trucks",
        where=(("kind", "pallet truck"),),
        question="How many pallet trucks are there?",
        remedy="Bring or hire pallet trucks.",
        who="hire",
    ),
    vehicle(
        key="access platforms",
        title="Access platforms",
        where=(("kind", "access platform"),),
        question="Is there an access platform, how high does it reach, and who may use it?",
        remedy="Hire an access platform, or focus from the truss before it flies.",
        who="hire",
    ),
    parking(
        key="truck parking",
        title="Parking for trucks",
        where=(("what", "trucks"),),
        question="How many trucks can stay, and of what length?",
        remedy="Send trucks that are empty to another yard.",
    ),
    parking(
        key="bus parking",
        title="Parking for buses",
        where=(("what", "buses"),),
        question="How many buses can stay near the stage door, and of what length?",
        remedy="Ask for a permit in the street, or send buses to another yard.",
    ),
    parking(
        key="van parking",
        title="Parking for vans",
        where=(("what", "vans"),),
        question="How many vans can stay, and how near to the stage door?",
        remedy="Unload at the dock, and park in the town.",
    ),
    parking(
        key="car parking",
        title="Parking for cars",
        where=(("what", "cars"),),
        question="How many cars can stay, and how near to the stage door?",
        remedy="Park in the town.",
    ),
    access(
        key="storage area",
        title="Room for empty cases",
        kind="area",
        item="storage",
        value="area",
        combine="sum",
        day="sum",
        question="How much floor is there for empty cases?",
        remedy="Keep empty cases in the trucks.",
        who="the show",
    ),
)
