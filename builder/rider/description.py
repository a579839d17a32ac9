"""A rider file: what a visiting show needs, in the tone of a crew."""

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from builder.reading.possible import Possible
from builder.reading.quantities import (
    Across,
    Angle,
    Current,
    Depth,
    Duration,
    Length,
    Level,
    Mass,
    TimeOfDay,
)
from builder.reading.weekdays import DayOfWeek
from builder.reading.words import Count, Day, Name, Text, YesNo
from builder.reading.written import Written
from builder.rider.hanging import Along, Hang, Several
from builder.rider.lasting import Lasting
from builder.rider.one_need import OneNeed
from builder.rider.working import Call, Task

Strictness = Literal["must", "should"]
CarriedBy = Literal["show", "house", "hire"]
Booking = Literal["confirmed", "first hold", "second hold", "third hold"]


class Issue(Written):
    """Which rider this is. Old riders travel for years."""

    number: Name
    """The number or name of this rider."""
    on: Day
    """The day it was issued, such as 2026-08-20."""
    by: Name
    """Who issued it, by role."""


class OfClass(Written):
    """So many of a thing, each as good as this or better."""

    count: Several = 1
    """How many."""
    each: Name
    """What each of them must be at least, with its unit."""


class Alternative(Written):
    """One of several ways to meet a need: one thing, or several together."""

    what: Name | None = None
    """What is needed, by a name from the list below. Left out where all of is written."""
    at_least: Name | None = Field(default=None, alias="at least")
    """The least that does, with its unit; unknown where the show does not know yet."""
    at_most: Name | None = Field(default=None, alias="at most")
    """The most that does, with its unit."""
    between: tuple[Name, Name] | None = None
    """The least and the most that do, as a list of two."""
    is_: Name | None = Field(default=None, alias="is")
    """Yes or no, for what is allowed, there, or so."""
    all_of: tuple[OneNeed, ...] = Field(default=(), alias="all of")
    """Several things that this alternative needs together."""
    if_: OneNeed | None = Field(default=None, alias="if")
    """The alternative will do only where the house meets this."""
    unless: OneNeed | None = None
    """The alternative will do only where the house does not meet this."""
    note: Text | None = None
    """What the house should know of this alternative, in a sentence."""


class Need(Written):
    """One thing that the show needs, or one of several."""

    what: Name | None = None
    """What is needed, by a name from the list below. Left out where any of or all of is written."""
    at_least: Name | None = Field(default=None, alias="at least")
    """The least that does, with its unit; unknown where the show does not know yet."""
    at_most: Name | None = Field(default=None, alias="at most")
    """The most that does, with its unit."""
    between: tuple[Name, Name] | None = None
    """The least and the most that do, as a list of two."""
    is_: Name | None = Field(default=None, alias="is")
    """Yes or no, for what is allowed, there, or so."""
    tell: YesNo = False
    """Whether you only want to know what the house has: told where it says so, asked otherwise."""
    any_of: tuple[Alternative, ...] = Field(default=(), alias="any of")
    """Alternatives: one of them is enough. Each is one thing, or a bundle under all of."""
    all_of: tuple[OneNeed, ...] = Field(default=(), alias="all of")
    """Several things that are needed together, such as under one condition."""
    order_open: YesNo = Field(default=False, alias="order open")
    """
    Of two amounts under all of: whether you do not know which is which, such as 24 by 16 ft. Then
    both readings must fit.
    """
    by_class: tuple[OfClass, ...] = Field(default=(), alias="by class")
    """
    How many of which class, in place of at least: such as four points of 250 kg and two of 500.
    """
    if_: OneNeed | None = Field(default=None, alias="if")
    """The need counts only where the house meets this, such as a stage outdoors."""
    unless: OneNeed | None = None
    """The need counts only where the house does not meet this."""
    strictness: Strictness = "must"
    """Must, or should where the show can live without."""
    carried_by: CarriedBy = Field(default="house", alias="carried by")
    """Who brings it: house, hire, or show. What the show brings is not asked of the house."""
    not_shared: YesNo = Field(default=False, alias="not shared")
    """
    Whether other acts of the day may not use it too. Of microphones, stands, wedges and boxes, that
    acts share otherwise.
    """
    note: Text | None = None
    """What the house should know, in a sentence."""


Part = Literal[
    "downstage",
    "upstage",
    "downstage right",
    "downstage centre",
    "downstage left",
    "stage right",
    "centre stage",
    "stage left",
    "upstage right",
    "upstage centre",
    "upstage left",
    "wing stage right",
    "wing stage left",
]
"""A part of the stage, as a crew would point."""


class OneLoad(Written):
    """One load by itself: one of several that are asked together."""

    for_: Name | None = Field(default=None, alias="for")
    """What it is for, where that is another thing than the whole line is for."""
    current: Current | None = None
    """
    How much on each phase, or on each single-phase circuit. Single-phase circuits may be counted
    without it.
    """
    count: Several = 1
    """How many single-phase circuits. A load on three phases is one feed: write a line for each."""
    phases: Literal["three", "single"] = "three"
    """Three phases, or single-phase circuits."""
    system: Name | None = None
    """The voltages, such as 230/400 V three phase, or 120 V single phase."""
    connector: Name | None = None
    """What the show's cable ends in."""
    within: Length | None = None
    """The longest way from the service, by the straight line."""
    of: Name | None = None
    """
    The place that within counts from, or where single-phase outlets should be, by the house's name
    for it.
    """
    at: Part | None = None
    """The part of the stage where it is wanted, whatever the house calls its places."""
    apart_from_dimmers: YesNo = Field(default=False, alias="apart from dimmers")
    """Whether dimmers may not hang on the same service."""
    own_breaker: YesNo = Field(default=False, alias="own breaker")
    """Whether nothing else may hang on its breaker, of the house or of the show."""
    other_transformer: YesNo = Field(default=False, alias="other transformer")
    """Whether no dimmers may hang on the transformer that feeds it."""
    isolated: YesNo = False
    """Whether a transformer of its own must isolate it."""
    wires: Annotated[Count | None, Possible(2, 5)] = None
    """How many wires it needs, neutral and earth included, such as 5."""
    trips_at_most: Current | None = Field(default=None, alias="trips at most")
    """The most that its residual current device may trip at, such as 30 mA."""


class LoadWay(OneLoad):
    """One of several ways to be fed: one load, or several together."""

    all_of: tuple[OneLoad, ...] = Field(default=(), alias="all of")
    """Several loads that this way needs together."""


class Load(OneLoad):
    """Power for one department of the show."""

    for_: Name = Field(alias="for")
    """What it is for, such as lighting, sound, video, rigging, backline."""
    tail: Length | None = None
    """How long a tail with a connector the house is to leave at the end of the feed."""
    any_of: tuple[LoadWay, ...] = Field(default=(), alias="any of")
    """Ways to be fed, the one that you like best first: one of them is enough."""
    if_: OneNeed | None = Field(default=None, alias="if")
    """It counts only where the house meets this."""
    unless: OneNeed | None = None
    """It counts only where the house does not meet this."""
    strictness: Strictness = "must"
    """Must, or should where the show can live without."""
    carried_by: CarriedBy = Field(default="house", alias="carried by")
    """Who brings it: house, hire, or show, such as a generator of its own."""
    note: Text | None = None
    """What the house should know, in a sentence."""


class ChangeoverParts(Written):
    """
    What a changeover to this act is made of, for a day with several acts. The strike of the act
    before comes on top.
    """

    roll_on: Lasting | None = Field(default=None, alias="roll on")
    """Rolling on and setting what waits in the wing."""
    patch: Lasting | None = None
    """Plugging lines and power; 0 min where all of it is patched before."""
    lines: Count | None = None
    """How many lines are checked."""
    lines_a_minute: Count | None = Field(default=None, alias="lines a minute")
    """How many lines your crew checks in a minute."""
    lines_checked_before: YesNo = Field(default=False, alias="lines checked before")
    """
    Yes where your lines are checked during the set before, on tails of their own; then they cost
    nothing in the gap.
    """
    monitors: Lasting | None = None
    """Wedges, in-ears and vocal positions."""
    spare: Lasting | None = None
    """What you keep for what goes wrong; 0 min for none."""


class Clock(Written):
    """
    The show's day. Write as much as you know: what a verdict hangs on and nobody has said becomes a
    question, never a guess.
    """

    day: DayOfWeek | None = None
    """The day of the week. Curfews differ by day."""
    load_in: TimeOfDay | None = Field(default=None, alias="load in")
    """When the first truck is opened."""
    set_up: Lasting | None = Field(default=None, alias="set up")
    """
    How long from load-in until your check can begin: rigging, system, backline. For who checks
    after another act: from a free deck.
    """
    line_check: Lasting | None = Field(default=None, alias="line check")
    """How long your line check before doors takes, where it is not part of the check."""
    check: Lasting | None = None
    """
    How long your check on stage takes, its line check included unless that is written by itself; 0
    min for none.
    """
    check_from: TimeOfDay | None = Field(default=None, alias="check from")
    """When your check begins, where that is agreed. Left out, it begins as early as it can."""
    clear_after_check: Lasting | None = Field(default=None, alias="clear after check")
    """
    How long after your check until the next act can set up in front of you; 0 min where nothing
    moves. The last act on checks first.
    """
    doors: TimeOfDay | None = None
    """When the audience is let in."""
    on_stage: TimeOfDay | None = Field(default=None, alias="on stage")
    """When your first note is played. A time before 06:00 belongs to the evening before."""
    set_: Lasting | None = Field(default=None, alias="set")
    """How long you play."""
    ends: TimeOfDay | None = None
    """When the last note ends. A time before 06:00 belongs to the evening before."""
    changeover: Lasting | None = None
    """How long from the last note of the act before to your first, all in. Or write its parts."""
    changeover_parts: ChangeoverParts | None = Field(default=None, alias="changeover parts")
    """The parts of the changeover to you."""
    strike: Lasting | None = None
    """How long you take to clear the deck after your last note, before the next act rolls on."""
    load_out: Lasting | None = Field(default=None, alias="load out")
    """How long from your last note until your last truck is closed."""


class Loudness(Written):
    """The level that the show expects to play at. What it leaves out is asked, never guessed."""

    at: Level
    """The level with its weighting, such as 102 dB(A)."""
    metric: Literal["equivalent level", "peak level", "maximum fast", "maximum slow"] | None = None
    """How it is measured."""
    over: Duration | None = None
    """The time an equivalent level is taken over."""
    place: Name | None = None
    """Where it is measured, such as mix position."""
    strictness: Strictness = "must"
    """Must, or should where the show can live without."""


class LargestCase(Written):
    """The largest case or set piece, on its wheels as it is pushed."""

    width: Length | None = None
    """Its smaller side on the floor."""
    height: Length | None = None
    """Its height on its wheels."""
    weight: Mass | None = None
    """Its weight."""


class Trucks(Written):
    """The trucks, and the largest thing in them. Without any size the way in is asked about."""

    count: Several
    """How many."""
    length: Length | None = None
    """The longest. Say with `length of` what is measured."""
    length_of: Literal["whole truck", "trailer"] | None = Field(default=None, alias="length of")
    """
    What the length is of: whole truck (tractor and trailer, or a rigid truck), or trailer where it
    is the trailer's alone. Left out, it is asked, for a house's limit is for the whole.
    """
    height: Length | None = None
    """The highest."""
    weight: Mass | None = None
    """The heaviest, gross."""
    largest_case: LargestCase | None = Field(default=None, alias="largest case")
    """The largest case or set piece."""
    strictness: Strictness = "must"
    """Must, or should where the show can live without."""


class Spot(Written):
    """A spot on the plan, from the house's datum."""

    across: Across
    """From the centre line."""
    depth: Depth
    """From the house's reference line."""


class PlotRectangle(Written):
    """
    Something that takes floor on the stage, as a rectangle: a riser, a desk, a tower, a set piece,
    or a lane to keep clear.
    """

    name: Name
    """What it is."""
    width: Along
    """How wide it is, across the stage."""
    depth: Along
    """How deep it is, up and down the stage."""
    at: Spot | None = None
    """Where its centre stands. Without a place only its size is looked at."""
    turned: Angle | None = None
    """
    How far it is turned about its centre, anticlockwise as seen from above; with a minus clockwise.
    """
    on: Literal["deck", "stage left", "stage right", "upstage"] | None = None
    """The deck, or the wing it stands in; left out where its place tells."""
    height: Length | None = None
    """How high it reaches with all that stands on it. Then what hangs lower is in its way."""
    weight: Mass | None = None
    """
    What it weighs with all that stands on it. Then the floor is checked, with the weight spread
    evenly.
    """
    point_load: Mass | None = Field(default=None, alias="point load")
    """
    The most that one foot or castor presses with. Then the floor's largest single load is checked.
    """
    keep_clear: YesNo = Field(default=False, alias="keep clear")
    """Whether it is a lane in which nothing may stand. Lanes may cross."""
    around: Name | None = None
    """
    What a lane is kept clear around, by its name in this plot, such as a ring around a tower. Only
    that stands in it rightly.
    """
    stays: YesNo | None = None
    """Whether it stays there while other acts of the day play."""
    if_: OneNeed | None = Field(default=None, alias="if")
    """It stands there only where the house meets this."""
    unless: OneNeed | None = None
    """It stands there only where the house does not meet this."""
    strictness: Strictness = "must"
    """Must, or should where the show can live without."""


class RiserWanted(Written):
    """Risers of one size that the house is to build."""

    for_: Name = Field(alias="for")
    """What stands on it, such as drums."""
    count: Several = 1
    """How many of this size."""
    width: Length | None = None
    """How wide it is, across the stage. Left out, you are asked."""
    depth: Length | None = None
    """How deep it is, up and down the stage. Left out, you are asked."""
    height: Length | None = None
    """How high its top is above the deck."""
    rolling: YesNo = False
    """Whether it must roll."""
    strictness: Strictness = "must"
    """Must, or should where the show can live without."""
    note: Text | None = None
    """What the house should know, such as carpeted, in a sentence."""


class Rider(Written):
    """
    A rider: what a visiting show needs. Only the act's name must be there; nothing is judged that
    was not asked.
    """

    # The page reads riders too, so their bounds stand where both read them.
    bounded: ClassVar[bool] = False

    act: Name
    """The name of the act."""
    revision: Issue | None = None
    """Which rider this is."""
    plays: Day | None = None
    """
    The date it plays, such as 2026-12-05. Needed where a house keeps the rider with its shows;
    tells the day of the week too, and whether the house is closed then.
    """
    booking: Booking = "confirmed"
    """
    How firm the date is, for the house: confirmed, or which hold. Holds of one date stand against
    each other, not together.
    """
    space: Name | None = None
    """
    The stage of a house with several that the show plays in, by the house's name for it. Left out,
    the one that suits the show best is told.
    """
    configuration: Name | None = None
    """
    The configuration of the house that the show plays in, by the house's name for it. Left out, the
    one that suits the show best is told.
    """
    needs: tuple[Need, ...] = ()
    """What is needed, line by line."""
    power: tuple[Load, ...] = ()
    """Power by department. All loads are placed at the same time."""
    hangs: tuple[Hang, ...] = ()
    """What the show flies. All hangs are judged at the same time, in the order written."""
    risers: tuple[RiserWanted, ...] = ()
    """Risers that the house is to build, by size. All of them are built at the same time."""
    plot: tuple[PlotRectangle, ...] = ()
    """The stage plot. All rectangles are laid on the stage together; at most 100."""
    trucks: Trucks | None = None
    """Trucks and the largest case."""
    clock: Clock | None = None
    """The day's times."""
    crew: tuple[Call, ...] = ()
    """Whom the house is to call, by what they can do, and when."""
    tasks: tuple[Task, ...] = ()
    """What the house is to do, to keep or to keep away, and by when."""
    level: Loudness | None = None
    """The level that the show expects."""
    other_levels: tuple[Loudness, ...] = Field(default=(), alias="other levels")
    """Further levels, such as a peak beside an average."""
    stays_on_deck: Along | None = Field(default=None, alias="stays on deck")
    """
    How deep what stays on the deck is while another act plays; 0 m where all of it rolls off. For
    days with several acts.
    """
    questions: tuple[Text, ...] = ()
    """What else to ask the house, in your own words."""
    note: Text | None = None
    """Anything else, for people."""
