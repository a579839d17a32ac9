"""
What ``sound.yml`` says of working positions and lines: processor, drive lines, mix position,
monitors, consoles, splits, drop boxes, tails.
"""

from typing import Annotated, ClassVar, Literal

from pydantic import model_validator
from pydantic_core import PydanticCustomError

from builder.reading.absent import Absent, listed
from builder.reading.in_service import checked_working
from builder.reading.lists import AtLeastOne
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.quantities import Duration, Length, Level
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import (
    Decisive,
    InConfigurations,
    Line,
    Loose,
    Movable,
    NamesSome,
    Numbered,
    OfModel,
    Plausible,
    RefersTo,
)


class HousePolicy(Line):
    """Whether visitors play through the house system, and how."""

    public_because: ClassVar[str] = "a show has to keep to it"
    use: Annotated[
        Maybe[Literal["must be used", "may be used", "by arrangement", "not available"]], Decisive()
    ] = Absent.NOT_STATED
    """Must be used, may be used, by arrangement, or not available."""
    own_system: Maybe[Text] = Absent.NOT_STATED
    """Whether a visitor may hang another system, and what happens to the house's own then."""
    engineer: Maybe[Text] = Absent.NOT_STATED
    """Which house engineer is there, and when."""


class Processor(Line):
    """The processor between the drive lines and the amplifiers."""

    name: Name
    """What it is."""
    inputs: Annotated[Maybe[Count], Plausible(1, 256)] = Absent.NOT_STATED
    """How many inputs it has."""
    changed_by: Annotated[
        Maybe[
            Literal[
                "nobody",
                "house engineer only",
                "visiting engineer with the house's",
                "visiting engineer",
            ]
        ],
        Decisive(),
    ] = Absent.NOT_STATED
    """
    Who may change it: nobody, house engineer only, visiting engineer with the house's, or visiting
    engineer.
    """
    presets: Maybe[Text] = Absent.NOT_STATED
    """The presets there are, and which one is on when you arrive."""
    visitor_layer: Maybe[Text] = Absent.NOT_STATED
    """What a visitor may change without touching the house's own setting."""
    limiter: Maybe[Text] = Absent.NOT_STATED
    """Whether a limiter acts, at what level, and who set it."""
    signal_delay: Annotated[Maybe[Duration], Possible(0.0, 10.0), Plausible(0.0, 0.05)] = (
        Absent.NOT_STATED
    )
    """The time a signal takes through it."""


class DriveLine(Line):
    """One input to the house system, as it stands at the mix position."""

    defines: ClassVar[str] = "drive line"
    name: Name
    """The label on the connector, such as Left."""
    feeds: Annotated[tuple[Name, ...], NamesSome(("loudspeaker hang", "sub line", "fill"))]
    """The hangs, sub lines and fills that it drives, by their names above."""
    signals: Maybe[tuple[Literal["analogue", "AES3", "AES67", "AES50", "other network"], ...]]
    """The kinds of signal it takes: analogue, AES3, AES67, AES50 or other network."""
    connector: Maybe[Name] = Absent.NOT_STATED
    """The connector, such as XLR."""
    at: Annotated[Maybe[Name], RefersTo("place")] = Absent.NOT_STATED
    """The place where it is."""
    nominal: Maybe[Text] = Absent.NOT_STATED
    """
    The signal level at this input, and the sound level it gives at the mix position, such as +4 dBu
    for 94 dB(A).
    """


class ClaimedLevel(Line):
    """The level that the house says its system reaches, with everything that makes it a claim."""

    level: Annotated[Maybe[Level], Possible(0.0, 194.0), Plausible(80.0, 140.0)]
    """The level, with its weighting, such as 104 dB(A)."""
    metric: Annotated[
        Maybe[Literal["equivalent level", "peak level", "maximum fast", "maximum slow"]], Decisive()
    ] = Absent.NOT_STATED
    """Equivalent level, peak level, maximum fast or maximum slow."""
    over: Annotated[Duration | None, Possible.above(0.0, 604_800.0), Plausible(1.0, 86_400.0)] = (
        None
    )
    """The time an equivalent level is taken over."""
    at: Annotated[Maybe[Name], RefersTo("place"), Decisive()] = Absent.NOT_STATED
    """Where it was measured."""
    signal: Maybe[Text] = Absent.NOT_STATED
    """With which signal."""


class Room(Line):
    """How the room itself sounds."""

    reverberation_empty: Annotated[
        Maybe[Duration], Possible.above(0.0, 120.0), Plausible(0.1, 12.0)
    ] = Absent.NOT_STATED
    """Reverberation time of the empty room at 500 Hz to 1 kHz."""
    reverberation_full: Annotated[
        Maybe[Duration], Possible.above(0.0, 120.0), Plausible(0.1, 12.0)
    ] = Absent.NOT_STATED
    """Reverberation time with the audience in."""
    reflections: Maybe[Text] = Absent.NOT_STATED
    """Walls and fronts that come back, and what the house does about it."""
    dead_spots: Maybe[Text] = Absent.NOT_STATED
    """Where it is weak, as the house hears it."""
    background: Annotated[Maybe[Level], Plausible(5.0, 65.0)] = Absent.NOT_STATED
    """The level of ventilation and the like with nobody in."""


class MixPosition(InConfigurations):
    """Where the visiting engineer mixes."""

    public_because: ClassVar[str] = "shows mix there"
    place: Annotated[Name, RefersTo("place")]
    """The place, from stage.yml."""
    width: Annotated[
        Maybe[Length], Possible.above(0.0, 100.0), Plausible(1.0, 20.0), Decisive()
    ] = Absent.NOT_STATED
    """Clear width for desks."""
    depth: Annotated[
        Maybe[Length], Possible.above(0.0, 100.0), Plausible(1.0, 12.0), Decisive()
    ] = Absent.NOT_STATED
    """Clear depth, the engineer included."""
    ears: Annotated[Maybe[Length], Possible.above(0.0, 5.0), Plausible(1.0, 1.9)] = (
        Absent.NOT_STATED
    )
    """
    Height of the engineer's ears above the position's floor. Levels and maps there need it.
    """
    under_balcony: Annotated[Maybe[YesNo], Decisive()] = Absent.NOT_STATED
    """Whether a balcony is above it."""
    enclosed: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it is in a booth or behind glass, and not in the room of the audience."""
    cover: Maybe[Text] = Absent.NOT_STATED
    """What keeps rain and drinks off."""
    cover_sides: Annotated[Maybe[Count], Possible(0, 4), Plausible(0, 4)] = Absent.NOT_STATED
    """On how many of its sides that reaches down."""
    riser: Maybe[Text] = Absent.NOT_STATED
    """What it stands on, and whether that can go."""
    riser_height: Annotated[Maybe[Length], Possible(0.0, 10.0), Plausible(0.0, 2.0)] = (
        Absent.NOT_STATED
    )
    """How high that is above the audience floor, or none."""
    tiers: Annotated[Maybe[Count], Possible(1, 10), Plausible(1, 3)] = Absent.NOT_STATED
    """On how many tiers it is."""
    tiers_for: Maybe[Text] = Absent.NOT_STATED
    """Who is on which tier."""
    places_lost: Annotated[Maybe[Count], Plausible(0, 500)] = Absent.NOT_STATED
    """How many audience places it takes."""
    cable_path: Annotated[Maybe[Length], Plausible(5.0, 400.0), Decisive()] = Absent.NOT_STATED
    """
    The length of cable from the monitor position to here along the way it must go. It is not the
    distance.
    """
    power: Annotated[Maybe[Text], Decisive()] = Absent.NOT_STATED
    """The power there, and whether it is on the same service as the sound on stage."""
    lines: Annotated[Maybe[Text], Decisive()] = Absent.NOT_STATED
    """The permanent lines that end there."""
    house_desk_can_move: Maybe[Text] = Absent.NOT_STATED
    """Whether the house desk can go, who does it, and how long it takes."""
    way_in: Maybe[Text] = Absent.NOT_STATED
    """How cases get there once the audience is in, and before."""


InsteadIn = Annotated[
    tuple[Name, ...],
    RefersTo("configuration"),
    AtLeastOne("configuration-none", "name the configurations in which it is there"),
]
"""The configurations in which a line takes the place of the usual one."""


class OtherMixPosition(MixPosition, Movable):
    """Where the visiting engineer mixes in other configurations of the house."""

    instead_of: ClassVar[str] = "mix_position"
    configurations: InsteadIn
    """The configurations in which it is there, by their names in house.yml."""


class MonitorPosition(InConfigurations):
    """Where monitors are mixed."""

    public_because: ClassVar[str] = "shows work there"
    place: Annotated[Name, RefersTo("place")]
    """The place, from stage.yml."""
    width: Annotated[Maybe[Length], Plausible(0.8, 12.0), Decisive()] = Absent.NOT_STATED
    """Clear width."""
    depth: Annotated[Maybe[Length], Plausible(0.8, 12.0), Decisive()] = Absent.NOT_STATED
    """Clear depth."""
    power: Maybe[Text] = Absent.NOT_STATED
    """The power there."""
    mixes: Annotated[Maybe[Count], Plausible(1, 64)] = Absent.NOT_STATED
    """How many separate wedge mixes the amplifiers give."""
    note_on_sight: Maybe[Text] = Absent.NOT_STATED
    """What the monitor engineer sees of the stage."""


class OtherMonitorPosition(MonitorPosition, Movable):
    """Where monitors are mixed in other configurations of the house."""

    instead_of: ClassVar[str] = "monitor_position"
    configurations: InsteadIn
    """The configurations in which it is there, by their names in house.yml."""


class MonitorStock(Loose):
    """Monitor loudspeakers in stock."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"working"})
    defines: ClassVar[str] = "monitor"
    name: Name
    """The model."""
    kind: Maybe[Literal["wedge", "side fill", "drum fill", "cue wedge"]] = Absent.NOT_STATED
    """Wedge, side fill, drum fill or cue wedge."""
    count: Annotated[Maybe[Count], Plausible(0, 200)] = Absent.NOT_STATED
    """How many there are."""
    working: Maybe[Count] = Absent.NOT_STATED
    """How many of them work. Left out, all do."""
    mixes: Maybe[Count] = Absent.NOT_STATED
    """How many separate mixes they can be driven on."""
    size: Annotated[Maybe[Text], OfModel()] = Absent.NOT_STATED
    """Driver size, in words."""

    @model_validator(mode="after")
    def _working_of_count(self) -> "MonitorStock":
        checked_working(self.count, self.working)
        return self


class Console(Line):
    """A desk of the house."""

    defines: ClassVar[str] = "desk"
    name: Name
    """The model."""
    place: Annotated[Maybe[Name], RefersTo("place")] = Absent.NOT_STATED
    """Where it stands."""
    inputs: Annotated[Maybe[Count], Plausible(2, 512), OfModel()] = Absent.NOT_STATED
    """Inputs it can mix at once."""
    mono_mixes: Annotated[Maybe[Count], Plausible(0, 256), OfModel()] = Absent.NOT_STATED
    """Mixes it makes, counted in mono: a stereo mix takes two."""
    matrices: Annotated[Maybe[Count], Plausible(0, 128), OfModel()] = Absent.NOT_STATED
    """Matrices on top of the mixes, counted in mono."""
    outputs: Annotated[Maybe[Count], Plausible(2, 512), OfModel()] = Absent.NOT_STATED
    """Outputs on connectors, at the desk and on stage."""
    stage_box: Annotated[Maybe[Text], OfModel()] = Absent.NOT_STATED
    """Its stage box: inputs, outputs, where it stands."""
    sample_rate: Annotated[Maybe[Text], OfModel()] = Absent.NOT_STATED
    """Sample rate and clock, in words."""
    can_move: Maybe[Text] = Absent.NOT_STATED
    """Whether it can move, and at what cost."""


class Split(Line):
    """Where stage inputs divide."""

    defines: ClassVar[str] = "split"
    name: Name
    """What it is called."""
    kind: Maybe[Literal["transformer", "passive", "digital, shared gain", "digital, gain each"]]
    """Transformer, passive, digital with shared gain, or digital with a gain each."""
    ways: Annotated[Maybe[Count], Possible(1, 10_000), Plausible(4, 256)]
    """How many inputs it takes."""
    legs: Annotated[Maybe[Count], Possible(1, 100), Plausible(1, 6)]
    """How many ways each input goes on, the direct one included."""
    connector: Maybe[Text] = Absent.NOT_STATED
    """The connectors of its legs."""
    place: Annotated[Maybe[Name], RefersTo("place")] = Absent.NOT_STATED
    """Where it stands."""
    ground_lift: Maybe[Text] = Absent.NOT_STATED
    """Which leg is isolated, and whether grounds can be lifted."""


class DropBox(Line):
    """A box on stage that inputs are plugged into."""

    defines: ClassVar[str] = "drop box"
    name: Name
    """The label on it."""
    place: Annotated[Maybe[Name], RefersTo("place")] = Absent.NOT_STATED
    """Where it lies."""
    ways: Annotated[Maybe[Count], Possible(1, 10_000), Plausible(1, 96)]
    """How many inputs it has."""
    dead: Annotated[Maybe[tuple[Count, ...]], Numbered()] = ()
    """The numbers of the ways that do not work, as printed on the box."""
    first_channel: Annotated[Maybe[Count], Plausible(1, 512)] = Absent.NOT_STATED
    """The channel of the split that its first way arrives on."""
    returns: Annotated[Maybe[Count], Plausible(0, 96)] = Absent.NOT_STATED
    """How many lines back to the stage it has."""
    length: Annotated[Maybe[Length], Plausible(1.0, 150.0)] = Absent.NOT_STATED
    """The length of its cable, from the split."""

    @model_validator(mode="after")
    def _dead_ways_exist(self) -> "DropBox":
        if isinstance(self.ways, Absent):
            return self
        wrong = [way for way in listed(self.dead) if not 1 <= way <= self.ways]
        if wrong:
            words = {
                "way": wrong[0],
                "ways": self.ways,
                "advice": f"number them 1 to {self.ways}, as on the box",
            }
            raise PydanticCustomError(
                "way-unknown", "names way {way} as dead, and the box has {ways}", words
            )
        return self


class Tail(Loose):
    """Cables that end in single connectors."""

    defines: ClassVar[str] = "tail"
    name: Name
    """What it is."""
    count: Annotated[Maybe[Count], Plausible(0, 200)] = Absent.NOT_STATED
    """How many there are."""
    ways: Annotated[Maybe[Count], Plausible(1, 96), OfModel()] = Absent.NOT_STATED
    """Ways of each."""
    length: Annotated[Maybe[Length], Plausible(0.3, 150.0), OfModel()] = Absent.NOT_STATED
    """Length of each."""
    ends: Annotated[Maybe[Text], OfModel()] = Absent.NOT_STATED
    """The connectors at both ends, and how they are labelled."""
