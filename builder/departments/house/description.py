"""
``house.yml``: what the place is, how many it holds, whom to ask, and the limits a show must keep.
"""

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from builder.departments.house.closure import Closure, Works
from builder.departments.house.keeping import (
    Asked,
    Counted,
    Document,
    Fine,
    Hired,
    HouseRule,
    Rate,
)
from builder.departments.house.regular import Regular
from builder.departments.house.season import Season, Weather
from builder.departments.house.seating import Block, Seats, SeatsOut
from builder.reading.absent import Absent
from builder.reading.language import FIRST, Language
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.quantities import Duration, Length, Level, Percent, Temperature, TimeOfDay
from builder.reading.words import Count, Day, DayOrSo, Name, Text, YesNo
from builder.reading.written import (
    Assumed,
    Decisive,
    DepartmentFile,
    InSpaces,
    Line,
    NotInWords,
    Plausible,
    Written,
)


class Revised(Written):
    """Which state of the house this description is of."""

    number: Name
    """The number or name of this revision, such as 14."""
    on: Day
    """The day of this revision. Ages on the pages count to this day."""
    by: Name
    """Who issued it, by role."""
    note: Text | None = None
    """What changed, in a sentence."""


class Address(Line):
    """One of the house's addresses. They often differ, and drivers need the right one."""

    use: Literal["post", "deliveries", "trucks", "stage door", "audience"]
    """What the address is for: post, deliveries, trucks, stage door or audience."""
    lines: tuple[Name, ...]
    """The lines of the address."""
    position: Name | None = None
    """Latitude and longitude, as a navigator takes them."""


class Contact(Line):
    """Whom to ask, by role. Roles stay true longer than names."""

    role: Name
    """The role, such as head of sound."""
    about: Text | None = None
    """What this role answers for."""
    count: Annotated[Maybe[Count], Plausible(1, 100)] = Absent.NOT_STATED
    """How many there are of this role, where it is more than one."""
    phone: Name | None = None
    """A telephone number that reaches the role."""
    mail: Name | None = None
    """A mail address that reaches the role."""
    hours: Name | None = None
    """When somebody answers, or is on site."""
    radio: Name | None = None
    """The radio channel that the role listens to."""


class OtherFigure(Written):
    """A figure for the capacity that is in circulation and does not hold."""

    says: Count
    """How many persons it says."""
    by: Name
    """Who says so, such as the licence of 2019, or old posters."""


class Space(Line):
    """
    One stage of a house that has several. What it has for itself stands in files of its own, in its
    folder under ``spaces/``.
    """

    public_because: ClassVar[str] = "shows are sold and checked by it"
    defines: ClassVar[str] = "space"
    name: Name
    """The name of the space, such as Studio. Riders name it."""
    what: Text | None = None
    """What kind of room or place it is, in a sentence."""
    folder: Annotated[Name | None, NotInWords("it says where the files of the space stand")] = None
    """
    Its folder under spaces/, where that is not its name in small letters with hyphens: studio-b for
    Studio B.
    """


class Configuration(InSpaces):
    """One way of setting the room, with what it holds."""

    public_because: ClassVar[str] = "shows are sold and checked by it"
    defines: ClassVar[str] = "configuration"
    name: Name
    """The name of the configuration. Other files refer to it."""
    audience: Maybe[Literal["standing", "seated", "mixed"]]
    """Standing, seated or mixed."""
    capacity: Annotated[Maybe[Annotated[Count, Plausible(20, 120_000)]], Decisive()] = (
        Absent.NOT_STATED
    )
    """How many persons in all."""
    blocks: tuple[Block, ...] = ()
    """The parts that make up the capacity. Their sum is compared with it."""
    other_figures: tuple[OtherFigure, ...] = ()
    """Figures for the capacity that are in circulation and do not hold, each with who says it."""
    wheelchair_places: Annotated[Maybe[Count], Plausible(0, 1000), Decisive()] = Absent.NOT_STATED
    """How many wheelchair places, and say in the note whether they are within the capacity."""
    wheelchair_at: tuple[Seats, ...] = ()
    """Where these are, by row and seats."""
    companions_beside: Maybe[YesNo] = Absent.NOT_STATED
    """Whether companions sit beside them."""
    companions_at: Maybe[Literal["beside", "behind", "in front", "elsewhere"]] = Absent.NOT_STATED
    """Where companions sit: beside them, behind, in front, or elsewhere."""
    levels: tuple[Name, ...] = ()
    """The levels of the audience, from the lowest up."""
    lost_to_mix_position: Annotated[Maybe[Count], Plausible(0, 500)] = Absent.NOT_STATED
    """How many places the mix position takes, already left out of the capacity."""


class Curfew(InSpaces):
    """When sound must stop."""

    public_because: ClassVar[str] = "a show has to keep to it"
    days: Name
    """The days it holds for, such as Sunday to Thursday."""
    music_ends: Annotated[Maybe[TimeOfDay], Plausible(16 * 3600.0, 6 * 3600.0)]
    """The time the last note must have ended."""
    strictness: Maybe[Literal["hard", "soft"]] = Absent.NOT_STATED
    """Hard where nobody can extend it, soft where somebody may."""
    overrun: Text | None = None
    """What an overrun means, in words."""
    fine: Fine | None = None
    """What an overrun costs: grace, step and amount."""


class QuietHours(InSpaces):
    """Hours in which no check may be heard, such as lessons next door."""

    public_because: ClassVar[str] = "a show has to keep to it"
    days: Name
    """The days they hold for, such as Monday to Friday."""
    from_: Annotated[Maybe[TimeOfDay], Field(alias="from")]
    """From when no check and no line check may be heard."""
    until: Maybe[TimeOfDay]
    """Until when."""
    only: Name | None = None
    """
    What alone is to be quiet then, such as subs. Left out, nothing may be heard; with it, a show
    whose check would fall into these hours is asked whether it can do without.
    """
    why: Text | None = None
    """Whose quiet it is."""


class NoiseLimit(InSpaces):
    """A limit on sound level, with everything that makes it one: metric, time, place."""

    public_because: ClassVar[str] = "a show has to keep to it"
    defines: ClassVar[str] = "noise limit"
    name: Name
    """What the limit is called here."""
    level: Annotated[Maybe[Level], Possible(0.0, 194.0), Plausible(25.0, 145.0), Decisive()] = (
        Absent.NOT_STATED
    )
    """The limit, such as 100 dB(A). A rule that counts peaks may not say from which level on."""
    metric: Maybe[Literal["equivalent level", "peak level", "maximum fast", "maximum slow"]] = (
        Absent.NOT_STATED
    )
    """
    How it is measured: an equivalent level over a time, a peak, or a maximum with a time weighting.
    """
    over: Annotated[Duration | None, Possible.above(0.0, 604_800.0), Plausible(1.0, 86_400.0)] = (
        None
    )
    """The time an equivalent level is taken over."""
    measured_at: Maybe[Name] = Absent.NOT_STATED
    """Where it is measured."""
    distance: Annotated[Maybe[Length], Possible(0.0, 100_000.0), Plausible(0.0, 5_000.0)] = (
        Absent.NOT_STATED
    )
    """How far from the stage that is."""
    hours: Name | None = None
    """When it holds."""
    enforced_by: Text | None = None
    """Who complains, who measures, and what happens when it is passed."""
    counted: Counted | None = None
    """How many times it may be passed before it counts as broken."""
    fine: Fine | None = None
    """What it costs to pass it."""


class Air(Written):
    """The air during a show, for travel time and absorption of sound."""

    temperature: Annotated[Temperature, Plausible(258.15, 318.15)]
    """The usual temperature during a show."""
    humidity: Annotated[Percent, Plausible(0.1, 0.95)]
    """The usual relative humidity."""


class Effect(InSpaces):
    """A kind of effect and whether it may be used."""

    public_because: ClassVar[str] = "a show has to keep to it"
    defines: ClassVar[str] = "effect"
    name: Literal[
        "haze", "smoke", "flames", "pyrotechnics", "carbon dioxide", "confetti", "lasers", "drones"
    ]
    """Haze, smoke, flames, pyrotechnics, carbon dioxide, confetti, lasers or drones."""
    allowed: Maybe[Literal["yes", "by arrangement", "no"]]
    """Yes, by arrangement, or no."""
    notice: Annotated[Duration | None, Plausible(3600.0, 90 * 86_400.0)] = None
    """How long before the show to ask."""
    asks: Text | None = None
    """What the house then needs."""
    asked_of: Name | None = None
    """Who says whether it may be used, by role."""
    machines: Annotated[Maybe[Count], Plausible(0, 40)] = Absent.NOT_STATED
    """How many machines for it the house has."""
    fluid: Maybe[Literal["water", "oil", "dry ice", "other"]] = Absent.NOT_STATED
    """What those work with: water, oil, dry ice or other."""


class Crew(Line):
    """How local crew is called. Who there is, and what it costs, stands in crew.yml."""

    public_because: ClassVar[str] = "a show has to keep to it"
    shortest_call: Annotated[Maybe[Annotated[Duration, Plausible(3600, 12 * 3600)]], Decisive()] = (
        Absent.NOT_STATED
    )
    """The shortest call that is paid."""
    meal_after: Annotated[Maybe[Duration], Plausible(2 * 3600.0, 8 * 3600.0), Decisive()] = (
        Absent.NOT_STATED
    )
    """After how long a meal break is due."""
    meal_break: Maybe[Annotated[Duration, Plausible(900, 2 * 3600)]] = Absent.NOT_STATED
    """How long work stops for a meal. None where the crew eats by turns and work goes on."""
    longest_call: Maybe[
        Annotated[Duration, Possible.above(0.0, 172_800.0), Plausible(4 * 3600, 24 * 3600)]
    ] = Absent.NOT_STATED
    """The longest that one crew works on one day. Beyond it a second crew is called."""
    meal_paid: Maybe[YesNo] = Absent.NOT_STATED
    """Whether the time of a meal break is paid."""
    short_break: Annotated[Maybe[Duration], Possible.above(0.0, 7_200.0), Plausible(300, 1_800)] = (
        Absent.NOT_STATED
    )
    """How long a short break is, beside meals; none where there is none."""
    short_break_after: Annotated[Maybe[Duration], Plausible(3_600, 6 * 3_600)] = Absent.NOT_STATED
    """After how long a short break is due."""
    turnaround: Annotated[Maybe[Duration], Possible(0.0, 86_400.0), Plausible(21_600, 50_400)] = (
        Absent.NOT_STATED
    )
    """The rest between the end of one day's work and the next call; none where no rule is kept."""
    ordered_by: Annotated[Maybe[Duration], Plausible(3600.0, 60 * 86_400.0)] = Absent.NOT_STATED
    """How long before the show crew must be ordered."""
    agreement: Maybe[Name] = Absent.NOT_STATED
    """The agreement, union or local that labour is called by, or none."""
    least_crew: Maybe[Text] = Absent.NOT_STATED
    """The smallest crew the house insists on, in words. By role, it stands in crew.yml as least."""


class TroubleSpot(InSpaces):
    """Something that has caught visitors out. Said once, early."""

    what: Text
    """What catches people out, in a sentence."""
    do: Text | None = None
    """What to do about it."""


class House(DepartmentFile):
    """The house: identity, capacities, contacts, limits."""

    language: Annotated[Language, NotInWords("it says how to read the files")] = FIRST
    """
    The language that all files of this venue are written in. Left out, it is 1, as before;
    `housepack upgrade` brings a venue to the newest.
    """
    name: Name
    """The name of the venue."""
    also_known_as: tuple[Name, ...] = ()
    """Former and other names, so that old documents are recognised."""
    what: Text
    """What kind of place it is, in a sentence."""
    town: Name
    """Town and country."""
    setting: Maybe[Literal["indoors", "under a roof", "outdoors"]]
    """Indoors, under a roof, or outdoors."""
    altitude: Maybe[Annotated[Length, Possible(-500.0, 9000.0), Plausible(-430.0, 5000.0)]] = (
        Absent.NOT_STATED
    )
    """Height above sea level. Generators and haze depend on it."""
    time_zone: Maybe[Name] = Absent.NOT_STATED
    """The time zone that clock times are in."""
    units: Annotated[Literal["metric", "imperial"], Assumed("the usual")] = "metric"
    """Which unit system computed figures show first. Both are always shown."""
    revision: Revised
    """Which state of the house this is."""
    stale_after_days: Annotated[
        Count, Possible(1, 10_000), Plausible(30, 1100), Assumed("a year, common practice")
    ] = 365
    """After how many days a check counts as old."""
    addresses: tuple[Address, ...] = ()
    """Where to go, by purpose."""
    contacts: tuple[Contact, ...] = ()
    """Whom to ask, by role."""
    spaces: tuple[Space, ...] = ()
    """
    The stages of a house that has several, each with a folder of its own under spaces/. Left out,
    the house has one, and all files stand beside house.yml.
    """
    configurations: tuple[Configuration, ...] = ()
    """The ways of setting the room."""
    edition: Maybe[DayOrSo] = Absent.NOT_STATED
    """
    The day, month or year of the house's own sheet that this description was taken from. Ages count
    to the day of the revision all the same.
    """
    replaces: tuple[Name, ...] = ()
    """Earlier editions that are in circulation and do not hold."""
    removable_seats: Maybe[tuple[SeatsOut, ...]] = Absent.NOT_STATED
    """Seats that can be taken out, or none."""
    regularly: Maybe[tuple[Regular, ...]] = Absent.NOT_STATED
    """
    Days of the week, or parts of the year, that come back and in which the house is closed or
    taken; or none.
    """
    closed: Maybe[tuple[Closure, ...]] = Absent.NOT_STATED
    """
    When the house is closed to shows, or some departments are. Left out or none, it is closed on no
    day.
    """
    works: Maybe[tuple[Works, ...]] = Absent.NOT_STATED
    """What is being changed while shows go on, so that figures are not final; or none."""
    season: Season | None = None
    """When there are shows, where that is not all year."""
    hired: Maybe[tuple[Hired, ...]] = Absent.NOT_STATED
    """What of the house is hired in, or none."""
    trouble_spots: tuple[TroubleSpot, ...] = ()
    """What has caught visitors out. Shown on the first page."""
    curfews: Annotated[Maybe[tuple[Curfew, ...]], Decisive()] = Absent.NOT_STATED
    """When sound must stop."""
    load_in_from: Annotated[Maybe[TimeOfDay], Plausible(4 * 3600.0, 18 * 3600.0)] = (
        Absent.NOT_STATED
    )
    """From when work with noise outside is allowed."""
    load_out_until: Annotated[Maybe[TimeOfDay], Plausible(16 * 3600.0, 9 * 3600.0)] = (
        Absent.NOT_STATED
    )
    """
    Until when work with noise outside is allowed after a show. A time before 06:00 belongs to the
    evening before.
    """
    quiet_hours: Maybe[tuple[QuietHours, ...]] = Absent.NOT_STATED
    """Hours of the day in which no check may be heard."""
    checks_end_before_doors: Maybe[Annotated[Duration, Plausible(0, 2 * 3600)]] = Absent.NOT_STATED
    """
    How long before doors the last check must have ended, so that the hall can be made ready. None
    where they may run up to doors.
    """
    doors_before_show: Maybe[Annotated[Duration, Plausible(0, 3 * 3600)]] = Absent.NOT_STATED
    """The least time from doors to the first act. None where there is no such rule."""
    noise_limits: Annotated[Maybe[tuple[NoiseLimit, ...]], Decisive()] = Absent.NOT_STATED
    """The limits on sound level."""
    air: Air | None = None
    """The air during a show. Sound figures need it."""
    weather: Weather | None = None
    """What is done in what weather, and who says so."""
    rules: Maybe[tuple[HouseRule, ...]] = Absent.NOT_STATED
    """What a show must or must not do here, or none."""
    rates: Maybe[tuple[Rate, ...]] = Absent.NOT_STATED
    """
    What things cost that a show may order or must pay, or none. What people cost stands in
    crew.yml, by role.
    """
    documents: Maybe[tuple[Document, ...]] = Absent.NOT_STATED
    """The documents that the house has, or none."""
    documents_asked: Maybe[tuple[Asked, ...]] = Absent.NOT_STATED
    """The documents that the house asks of a show, or none."""
    effects: tuple[Effect, ...] = ()
    """Which effects may be used."""
    crew: Crew | None = None
    """How local crew is called."""
    house_rider_needed: YesNo | None = None
    """Whether the house asks every show for its technical rider."""
