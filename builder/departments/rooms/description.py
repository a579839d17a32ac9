"""``rooms.yml``: rooms behind the stage for those who work here, washrooms, laundry, meals."""

from typing import Annotated, ClassVar, Literal

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.quantities import Area, Length
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import Assumed, Decisive, DepartmentFile, Line, Loose, Plausible

Use = Literal[
    "green room",
    "quick change",
    "office",
    "catering",
    "kitchen",
    "wardrobe",
    "crew room",
    "warm-up room",
    "quiet room",
    "first aid",
    "merchandise",
    "press",
    "store",
    "other",
]


class Room(Line):
    """A room behind the stage, or several that are alike."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"terms", "house_only", "count"})
    defines: ClassVar[str] = "room"
    name: Name
    """What the room is called here, as its door says."""
    count: Annotated[Maybe[Count], Plausible(1, 40), Assumed("a line is one room")] = 1
    """How many such rooms there are, where several are alike. Left out, it is one."""
    persons: Annotated[Maybe[Count], Plausible(1, 400), Decisive()] = Absent.NOT_STATED
    """How many persons one of them is set up for: places at a mirror, a desk or a table."""
    area: Annotated[Maybe[Area], Plausible(3.0, 800.0)] = Absent.NOT_STATED
    """How much floor one of them has."""
    level: Maybe[Name] = Absent.NOT_STATED
    """The level it is on, such as stage level or first floor."""
    distance: Annotated[Maybe[Length], Possible(0.0, 100_000.0), Plausible(1.0, 500.0)] = (
        Absent.NOT_STATED
    )
    """How far it is to the stage, by the way one walks."""
    steps: Annotated[Maybe[Count], Plausible(0, 120)] = Absent.NOT_STATED
    """How many steps there are on the way to the stage; none where one walks level."""
    step_free: Annotated[Maybe[YesNo], Decisive()] = Absent.NOT_STATED
    """Whether somebody in a wheelchair gets there from outside, and from there to the stage."""
    lock: Maybe[Name] = Absent.NOT_STATED
    """How it is locked, such as key, code or card; none where it cannot be."""
    window: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it has a window."""
    heating: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it can be heated."""
    cooling: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it can be cooled."""
    power: Maybe[Text] = Absent.NOT_STATED
    """Sockets and what they hold, such as six on one 16 A breaker."""
    cabled_network: Annotated[Maybe[Count], Plausible(0, 60)] = Absent.NOT_STATED
    """How many sockets for a cabled network."""
    wireless: Maybe[Name] = Absent.NOT_STATED
    """The wireless network that reaches it; none where there is none."""
    relay: Maybe[YesNo] = Absent.NOT_STATED
    """Whether the stage is heard or seen there, and calls are."""
    furniture: Maybe[Text] = Absent.NOT_STATED
    """What stands in it: tables, sofa, rails, fridge, piano."""


class DressingRoom(Room):
    """A dressing room, or several that are alike."""

    showers: Annotated[Maybe[Count], Plausible(0, 12)] = Absent.NOT_STATED
    """How many showers are in one of them; those along the corridor are in a washroom."""
    toilets: Annotated[Maybe[Count], Plausible(0, 12)] = Absent.NOT_STATED
    """How many toilets are in one of them."""
    basins: Annotated[Maybe[Count], Plausible(0, 20)] = Absent.NOT_STATED
    """How many wash basins are in one of them."""
    mirrors: Annotated[Maybe[Count], Plausible(0, 60)] = Absent.NOT_STATED
    """How many places have a mirror with light."""


class OtherRoom(Room):
    """Any other room behind the stage."""

    use: Maybe[Use]
    """
    What it is for: green room, quick change, office, catering, kitchen, wardrobe, crew room,
    warm-up room, quiet room, first aid, merchandise, press, store or other.
    """


class Washroom(Line):
    """Toilets and showers behind the stage that belong to no room."""

    defines: ClassVar[str] = "washroom"
    name: Name
    """What or where it is, such as Corridor behind the stage."""
    for_whom: Maybe[Literal["all", "women", "men"]] = Absent.NOT_STATED
    """All, women or men."""
    showers: Annotated[Maybe[Count], Plausible(0, 30), Decisive()] = Absent.NOT_STATED
    """How many showers."""
    toilets: Annotated[Maybe[Count], Plausible(0, 60)] = Absent.NOT_STATED
    """How many toilets."""
    basins: Annotated[Maybe[Count], Plausible(0, 60)] = Absent.NOT_STATED
    """How many wash basins."""
    level: Maybe[Name] = Absent.NOT_STATED
    """The level it is on."""
    step_free: Maybe[YesNo] = Absent.NOT_STATED
    """Whether somebody in a wheelchair can use it."""


class Equipment(Loose):
    """Something for clothes, or to wash: machines, irons, rails, towels."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"terms", "house_only", "working"})
    what: Literal[
        "washing machine",
        "dryer",
        "iron",
        "steamer",
        "clothes rail",
        "sewing machine",
        "towel",
        "fridge",
        "kettle",
        "other",
    ]
    """
    Washing machine, dryer, iron, steamer, clothes rail, sewing machine, towel, fridge, kettle or
    other.
    """
    count: Annotated[Maybe[Count], Plausible(1, 400)] = Absent.NOT_STATED
    """How many the house has."""
    coins: Maybe[YesNo] = Absent.NOT_STATED
    """Whether a machine takes coins or tokens."""
    working: Annotated[Maybe[Count], Plausible(0, 400)] = Absent.NOT_STATED
    """How many of them work. Left out, all do."""


class Rooms(DepartmentFile):
    """Rooms: dressing rooms, offices, catering, washrooms, laundry."""

    dressing_rooms: Annotated[Maybe[tuple[DressingRoom, ...]], Decisive()] = Absent.NOT_STATED
    """The dressing rooms, or none."""
    rooms: Maybe[tuple[OtherRoom, ...]] = Absent.NOT_STATED
    """Other rooms behind the stage: offices, catering, wardrobe; or none."""
    washrooms: Maybe[tuple[Washroom, ...]] = Absent.NOT_STATED
    """Toilets and showers that belong to no room, or none."""
    equipment: Maybe[tuple[Equipment, ...]] = Absent.NOT_STATED
    """Laundry machines, irons, rails, towels, or none."""
    given_by: Maybe[Name] = Absent.NOT_STATED
    """Who gives out the rooms, by role, and when."""
    meals: Maybe[Text] = Absent.NOT_STATED
    """Where and how one eats: who cooks, what can be ordered, by when."""
    smoking: Maybe[Text] = Absent.NOT_STATED
    """Where one may smoke."""
