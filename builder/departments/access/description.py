"""
``access.yml``: the way in, from the road to the deck: approach, docks, routes, forklifts, parking,
storage.
"""

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe, Perhaps
from builder.reading.money import Amount
from builder.reading.possible import Possible
from builder.reading.quantities import (
    Area,
    Duration,
    Length,
    LoadPerArea,
    Mass,
    Slope,
    TimeOfDay,
)
from builder.reading.weekdays import Weekday
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import (
    Decisive,
    DepartmentFile,
    InConfigurations,
    Line,
    Loose,
    OfModel,
    Plausible,
    Rated,
    RefersTo,
    Terms,
    Written,
)


class Shut(Written):
    """Hours in which a way is shut to the show's vehicles."""

    days: tuple[Weekday, ...] = ()
    """The days on which it is shut, where it is not every day."""
    from_: Annotated[TimeOfDay | None, Field(alias="from")] = None
    """From when."""
    until: TimeOfDay | None = None
    """Until when."""
    why: Text | None = None
    """Why, such as a market."""


class Permit(Written):
    """A permit that vehicles need on a way, and how long before to ask for it."""

    from_whom: Name | None = None
    """Who gives it, such as the council."""
    notice: Annotated[Duration | None, Plausible(3_600.0, 180 * 86_400.0)] = None
    """How long before to ask for it."""
    working_days: YesNo | None = None
    """Whether that counts working days only."""
    asked_by: Name | None = None
    """Who asks for it, by role, such as the show's promoter."""
    costs: Amount | None = None
    """What it costs, with its currency, such as £60."""


class Ground(Written):
    """A part of a way, by what it is made of."""

    surface: Literal["asphalt", "concrete", "panels", "gravel", "earth", "grass", "sand"]
    """Asphalt, concrete, panels laid for the purpose, gravel, earth, grass or sand."""
    length: Annotated[Maybe[Length], Plausible(1.0, 2_000.0)] = Absent.NOT_STATED
    """How long that part is."""
    slope: Annotated[Maybe[Slope], Plausible(0.0, 0.2)] = Absent.NOT_STATED
    """Its slope."""


class Approach(Line):
    """A way that trucks come, and what limits them on it."""

    defines: ClassVar[str] = "approach"
    name: Name
    """The name of the way, such as from the ring road by Rope Street."""
    lowest_clearance: Annotated[Maybe[Length], Plausible(1.8, 8.0), Decisive()] = Absent.NOT_STATED
    """The lowest bridge, arch or branch on the way."""
    weight_limit: Annotated[Maybe[Mass], Rated(), Plausible(1_000.0, 60_000.0)] = Absent.NOT_STATED
    """The largest gross weight allowed."""
    longest_truck: Annotated[Maybe[Length], Plausible(4.0, 30.0), Decisive()] = Absent.NOT_STATED
    """The longest truck that can use it, tractor and trailer."""
    longest_trailer: Annotated[Maybe[Length], Plausible(4.0, 20.0)] = Absent.NOT_STATED
    """The longest trailer that can use it, where the house tells that by itself."""
    slope: Annotated[Maybe[Slope], Plausible(0.0, 0.15)] = Absent.NOT_STATED
    """The steepest part."""
    hours: Maybe[Text] = Absent.NOT_STATED
    """When it may be used."""
    shut: tuple[Shut, ...] = ()
    """When it is shut, by day and hour."""
    permit: Permit | None = None
    """The permit that vehicles need there, where they need one."""
    opens: Text | None = None
    """From which day of the event vehicles may come, such as Wednesday morning."""
    narrowest: Annotated[Maybe[Length], Plausible(2.0, 15.0)] = Absent.NOT_STATED
    """Clear width of its narrowest gate or turn."""
    ground: tuple[Ground, ...] = ()
    """What it is made of, part by part, in order."""
    backing: Maybe[Text] = Absent.NOT_STATED
    """On which side and how far trucks back up."""


class Shuttle(Line):
    """Loads that come from a distant yard on the house's own trucks."""

    public_because: ClassVar[str] = "a show's trucks do not reach the stage"
    name: Name
    """The yard where the show's trucks stay."""
    for_whom: Text | None = None
    """Which trucks stay there."""
    distance: Annotated[
        Maybe[Length], Possible.above(0.0, 200_000.0), Plausible(100.0, 50_000.0)
    ] = Absent.NOT_STATED
    """How far it is from the stage, by road."""
    count: Annotated[Maybe[Count], Plausible(1, 30)] = Absent.NOT_STATED
    """How many trucks go to and fro."""
    gross_weight: Annotated[Maybe[Mass], Plausible(1_000.0, 40_000.0)] = Absent.NOT_STATED
    """The gross weight of one."""
    trip: Annotated[Maybe[Duration], Possible.above(0.0, 86_400.0), Plausible(300.0, 14_400.0)] = (
        Absent.NOT_STATED
    )
    """How long one takes there and back, loading included."""
    truck_length: Annotated[Maybe[Length], Plausible(3.0, 20.0)] = Absent.NOT_STATED
    """The length of one."""
    order: tuple[Name, ...] = ()
    """What they bring, in which order."""


class Dock(Line):
    """A place where trucks unload."""

    defines: ClassVar[str] = "dock"
    name: Name
    """The name of the dock."""
    place: Annotated[Maybe[Name], RefersTo("place")] = Absent.NOT_STATED
    """The place in stage.yml where it is."""
    approach: Annotated[Maybe[Name], RefersTo("approach")] = Absent.NOT_STATED
    """The approach that leads to it."""
    trucks_at_once: Annotated[Maybe[Count], Plausible(0, 30), Decisive()] = Absent.NOT_STATED
    """How many trucks unload at once."""
    height: Annotated[Maybe[Length], Possible(-10.0, 10.0), Plausible(0.0, 1.6), Decisive()] = (
        Absent.NOT_STATED
    )
    """Height of the dock above the road. Ground level is none."""
    leveller: Maybe[Text] = Absent.NOT_STATED
    """Whether there is a leveller, and its range."""
    plate: YesNo | None = None
    """Whether a loose plate bridges the gap to the truck."""
    plate_rating: Annotated[Maybe[Mass], Rated(), Plausible(100.0, 10_000.0)] = Absent.NOT_STATED
    """What that plate may carry."""
    door_width: Annotated[Maybe[Length], Plausible(0.8, 8.0), Decisive()] = Absent.NOT_STATED
    """Clear width of the door."""
    door_height: Annotated[Maybe[Length], Plausible(1.8, 8.0), Decisive()] = Absent.NOT_STATED
    """Clear height of the door."""
    covered: YesNo | None = None
    """Whether one unloads under a roof."""
    platform_width: Annotated[Maybe[Length], Plausible(0.8, 30.0)] = Absent.NOT_STATED
    """Width of the platform that one unloads onto."""
    platform_depth: Annotated[Maybe[Length], Plausible(0.8, 30.0)] = Absent.NOT_STATED
    """Depth of that platform."""
    truck_takes: Annotated[
        Maybe[Duration], Possible.above(0.0, 86_400.0), Plausible(300.0, 14_400.0)
    ] = Absent.NOT_STATED
    """How long the house's own crew usually takes for a full truck here."""


class Passage(Line):
    """One opening, corridor, ramp or lift on a route."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"steps", "lift"})
    public_because: ClassVar[str] = "all that a show brings has to pass it"
    name: Name
    """What it is, such as fire door."""
    width: Annotated[Maybe[Length], Plausible(0.7, 12.0)] = Absent.NOT_STATED
    """Clear width."""
    height: Annotated[Maybe[Length], Plausible(1.8, 12.0)] = Absent.NOT_STATED
    """Clear height."""
    length: Annotated[Maybe[Length], Plausible(0.1, 200.0)] = Absent.NOT_STATED
    """How long it is to push through."""
    slope: Annotated[Maybe[Slope], Plausible(0.0, 0.2)] = Absent.NOT_STATED
    """Its slope, as rise to run, per cent or degrees."""
    slope_at_start: Annotated[Maybe[Slope], Plausible(0.0, 0.2)] = Absent.NOT_STATED
    """Its slope where it begins, where that changes on the way and `slope` is the steepest."""
    slope_also: Annotated[Slope | None, Plausible(0.0, 0.6)] = None
    """The same slope stated another way, where a drawing gives both. The two are compared."""
    weight_limit: Annotated[Maybe[Mass], Rated(), Plausible(100.0, 40_000.0)] = Absent.NOT_STATED
    """The largest single weight, such as a lift's rating."""
    floor_load: Annotated[Maybe[LoadPerArea], Rated(), Plausible(1_000.0, 60_000.0)] = (
        Absent.NOT_STATED
    )
    """The uniform load its floor carries."""
    steps: Annotated[Perhaps[Count], Plausible(0, 60)] = None
    """How many steps, where there are any."""
    lift: Perhaps[YesNo] = None
    """Whether it is a lift that all has to go by."""
    turn: Text | None = None
    """A turn that long things must make here."""


class Route(InConfigurations):
    """The way from a dock to a place, as its passages in order."""

    defines: ClassVar[str] = "route"
    name: Name
    """The name of the route, such as dock to deck."""
    from_dock: Annotated[Name, RefersTo("dock")]
    """The dock it begins at."""
    to_place: Annotated[Name, RefersTo("place")]
    """The place it leads to."""
    leads_to: Annotated[Maybe[Literal["deck", "audience floor", "elsewhere"]], Decisive()] = (
        Absent.NOT_STATED
    )
    """
    What it leads to: deck (or a wing level with it), audience floor, or elsewhere. Shows go by
    those to the deck; where nobody says, they are asked about.
    """
    passages: Maybe[tuple[Passage, ...]]
    """What one passes, in order."""


class Vehicle(Loose):
    """A forklift, lift or other machine in stock."""

    defines: ClassVar[str] = "vehicle"
    name: Name
    """What it is called here."""
    kind: Annotated[
        Maybe[
            Literal[
                "forklift",
                "telehandler",
                "tractor",
                "pallet truck",
                "hand cart",
                "access platform",
                "stair climber",
            ]
        ],
        OfModel(),
    ] = Absent.NOT_STATED
    """
    Forklift, telehandler, tractor, pallet truck, hand cart, access platform or stair climber.
    """
    count: Annotated[Maybe[Count], Plausible(0, 20)] = Absent.NOT_STATED
    """How many there are."""
    capacity: Annotated[Maybe[Mass], Rated(), Plausible(100.0, 20_000.0), OfModel(), Decisive()] = (
        Absent.NOT_STATED
    )
    """The rated capacity on its plate."""
    load_centre: Annotated[Maybe[Length], Plausible(0.3, 1.2), OfModel()] = Absent.NOT_STATED
    """The load centre that the rating is for."""
    lift_height: Annotated[Maybe[Length], Plausible(0.1, 40.0), OfModel()] = Absent.NOT_STATED
    """How high it lifts."""
    fork_length: Annotated[Maybe[Length], Plausible(0.8, 3.0), OfModel()] = Absent.NOT_STATED
    """The length of its forks."""
    fuel: Annotated[Maybe[Literal["diesel", "petrol", "gas", "electric", "by hand"]], OfModel()] = (
        Absent.NOT_STATED
    )
    """Diesel, petrol, gas, electric, or moved by hand."""
    tyres: Annotated[Maybe[Text], OfModel()] = Absent.NOT_STATED
    """What it rolls on, and where it can go on that."""
    bed_width: Annotated[Maybe[Length], Plausible(0.3, 3.0), OfModel()] = Absent.NOT_STATED
    """The width of what one loads it on, such as of a cart."""
    bed_length: Annotated[Maybe[Length], Plausible(0.5, 6.0), OfModel()] = Absent.NOT_STATED
    """The length of that."""
    driver: Maybe[Text] = Absent.NOT_STATED
    """Who may drive it."""
    driver_until: TimeOfDay | None = None
    """Until when its driver is there."""
    on_deck: YesNo | None = None
    """Whether it may drive on the deck."""
    not_on: tuple[Name, ...] = ()
    """Where else it may not go, such as the loading platform."""


class Parking(Line):
    """Parking for trucks, buses and cars."""

    what: Literal["trucks", "buses", "vans", "cars", "audience cars"]
    """Trucks, buses, vans or cars of shows; or audience cars, which shows cannot count on."""
    lies: Name | None = None
    """Where it is, such as behind the cabins."""
    pass_needed: YesNo | None = None
    """Whether one needs a pass."""
    pass_from: Name | None = None
    """Who gives it, by role."""
    full_on: tuple[Weekday, ...] = ()
    """The days on which it fills."""
    count: Annotated[Maybe[Count], Plausible(0, 500), Decisive()] = Absent.NOT_STATED
    """How many."""
    length: Annotated[Maybe[Length], Plausible(3.0, 40.0)] = Absent.NOT_STATED
    """The longest that fits."""
    distance: Annotated[Maybe[Length], Possible(0.0, 100_000.0), Plausible(0.0, 5_000.0)] = (
        Absent.NOT_STATED
    )
    """Distance to the stage door or dock."""
    overnight: YesNo | None = None
    """Whether one may stay overnight."""
    not_while: Name | None = None
    """When it cannot be had though it is free, such as while a truck is on the platform."""


class Storage(Line):
    """Room for empty cases."""

    defines: ClassVar[str] = "storage"
    name: Name
    """Where it is."""
    area: Annotated[Maybe[Area], Plausible(2.0, 5_000.0)] = Absent.NOT_STATED
    """How much floor there is."""
    distance: Annotated[Maybe[Length], Possible(0.0, 100_000.0), Plausible(0.0, 2_000.0)] = (
        Absent.NOT_STATED
    )
    """Distance from the deck."""
    until: TimeOfDay | None = None
    """Until what time of a show day cases may stand there, such as the foyer until 17:00."""


class Access(DepartmentFile):
    """The way in, from the road to the deck."""

    approaches: tuple[Approach, ...] = ()
    """The ways that trucks come."""
    docks: Annotated[Maybe[tuple[Dock, ...]], Decisive()] = Absent.NOT_STATED
    """Where trucks unload, or none."""
    routes: tuple[Route, ...] = ()
    """The ways from dock to deck and elsewhere."""
    vehicles: Annotated[Maybe[tuple[Vehicle, ...]], Decisive()] = Absent.NOT_STATED
    """Forklifts and other machines, or none."""
    parking: tuple[Parking, ...] = ()
    """Parking by kind of vehicle."""
    storage: tuple[Storage, ...] = ()
    """Room for empty cases."""
    shuttles: Maybe[tuple[Shuttle, ...]] = Absent.NOT_STATED
    """Loads that come from a distant yard on the house's own trucks, or none."""
    loaders_count: Annotated[Maybe[Count], Plausible(1, 60)] = Absent.NOT_STATED
    """How many persons of the house's own help to unload, or none."""
    loaders_for: Annotated[Maybe[Duration], Plausible(1_800.0, 43_200.0)] = Absent.NOT_STATED
    """For how long they do."""
    loaders_terms: Terms | None = None
    """On what terms they help: included, extra charge, by arrangement or not for visitors."""
    loaders: Maybe[Text] = Absent.NOT_STATED
    """Who unloads, and how many are usual a truck."""
    largest_case: Maybe[Text] = Absent.NOT_STATED
    """The largest case that the house knows to have passed, in words."""
