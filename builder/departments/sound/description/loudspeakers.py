"""
What ``sound.yml`` says of loudspeakers: models with their makers' figures, hangs, subs, fills, and
the audience areas they are for.
"""

from typing import Annotated, ClassVar, Literal

from pydantic import model_validator
from pydantic_core import PydanticCustomError

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe, Perhaps
from builder.reading.outlines import DRAWN, Encloses
from builder.reading.outlines import Corner as OnPlan
from builder.reading.possible import Possible
from builder.reading.quantities import (
    Across,
    Angle,
    Depth,
    Duration,
    Frequency,
    Height,
    Length,
    Level,
    Mass,
    Power,
)
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import (
    Assumed,
    Decisive,
    Line,
    Loose,
    Movable,
    NotInWords,
    Numbered,
    OfModel,
    Plausible,
    RefersTo,
    Written,
)
from builder.stating import Measured

DECK = Measured("deck")


class At(Written):
    """A position."""

    across: Annotated[Across, Plausible(-60.0, 60.0)]
    """Distance from the centre line, such as 8.7 m SL."""
    depth: Annotated[Depth, Plausible(-120.0, 60.0)]
    """Distance from the reference line, such as 1.6 m DS."""
    height: Annotated[Height, Plausible(-10.0, 40.0)]
    """Height above the deck, such as 0.3 m up, or 1.35 m down for the hall floor."""


class Spot(Written):
    """A position on the plan; its height is said by another key."""

    across: Annotated[Across, Plausible(-60.0, 60.0)]
    """Distance from the centre line, such as 8.7 m SL."""
    depth: Annotated[Depth, Plausible(-120.0, 60.0)]
    """Distance from the reference line, such as 1.6 m DS."""


class Turn(Written):
    """How far a loudspeaker is turned from straight downstage, and to which side."""

    by: Annotated[Angle, Possible(0.0, 180.0), Plausible(0.0, 120.0)]
    """The angle from straight downstage."""
    to: Literal["stage left", "stage right"]
    """The side it is turned to: stage left or stage right."""


class Coverage(Written):
    """
    The nominal coverage of a model in one octave band, between the directions where its level is 6
    dB down.
    """

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"vertical"})
    band: Annotated[Frequency, Possible(1.0, 100_000.0)]
    """The octave band, by its nominal middle: 63 Hz, 125 Hz, and so on to 8 kHz."""
    horizontal: Annotated[Angle, Possible(1.0, 360.0), Plausible(5.0, 360.0)]
    """Coverage from side to side."""
    vertical: Annotated[Maybe[Angle], Possible(1.0, 360.0), Plausible(2.0, 360.0)] = (
        Absent.NOT_STATED
    )
    """
    Coverage up and down. Line boxes leave it out: theirs follows from the boxes above and below.
    """


class Model(Line):
    """A loudspeaker model, with its maker's figures."""

    defines: ClassVar[str] = "loudspeaker"
    name: Name
    """The model's name."""
    kind: Annotated[Maybe[Literal["line box", "full range", "sub"]], OfModel()]
    """Line box (one of a flown column that acts as a whole), full range, or sub."""
    level: Annotated[Maybe[Level], Possible(0.0, 194.0), Plausible(90.0, 155.0), OfModel()] = (
        Absent.NOT_STATED
    )
    """The maker's highest level at 1 m, one box in the open."""
    level_means: Annotated[Maybe[Text], OfModel()] = Absent.NOT_STATED
    """What the maker's level is for: peak or average, which signal, which weighting."""
    level_crest: Annotated[Maybe[Level], Possible(0.0, 60.0), Plausible(0.0, 20.0), OfModel()] = (
        Absent.NOT_STATED
    )
    """
    How far that level is above the average of the maker's signal: 12 dB for a peak with noise of 12
    dB crest, 0 dB where it is an average.
    """
    lowest: Annotated[Maybe[Frequency], Possible(1.0, 100_000.0), Plausible(15.0, 400.0), OfModel()]
    """The lowest frequency it is used for."""
    highest: Annotated[
        Maybe[Frequency], Possible(1.0, 100_000.0), Plausible(50.0, 22_000.0), OfModel()
    ]
    """The highest frequency it is used for."""
    coverage: Annotated[tuple[Coverage, ...], OfModel()] = ()
    """
    The maker's nominal coverage by octave band. Bands that are left out take a piston of the box's
    width, and the page says so.
    """
    width: Annotated[Maybe[Length], Possible.above(0.0, 20.0), Plausible(0.08, 2.5), OfModel()]
    """Width of the front."""
    height: Annotated[Maybe[Length], Possible.above(0.0, 20.0), Plausible(0.08, 2.5), OfModel()]
    """Height of the front. In a hang the boxes follow each other at this distance."""
    depth: Annotated[Maybe[Length], Possible.above(0.0, 20.0), Plausible(0.08, 2.5), OfModel()] = (
        Absent.NOT_STATED
    )
    """Depth of the box."""
    weight: Annotated[Maybe[Mass], Plausible(1.0, 250.0), OfModel()] = Absent.NOT_STATED
    """Weight of one box, with its rigging parts."""
    drivers: Annotated[Maybe[Text], OfModel()] = Absent.NOT_STATED
    """What is in it, such as two 18 in cones."""

    @model_validator(mode="after")
    def _makes_sense(self) -> "Model":
        low, high = self.lowest, self.highest
        if isinstance(low, Frequency) and isinstance(high, Frequency) and low.hz >= high.hz:
            words = {"advice": "write the lower frequency as lowest"}
            raise PydanticCustomError(
                "band-backwards", "has its lowest frequency at or above its highest", words
            )
        bands = [entry.band.hz for entry in self.coverage]
        if sorted(set(bands)) != bands:
            raise PydanticCustomError(
                "bands-not-rising",
                "gives coverage in bands that do not rise",
                {"advice": "write each band once, lowest first"},
            )
        return self


class Hang(Movable):
    """A column of boxes in the air."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"turned", "turned_down", "delay"})
    defines: ClassVar[str] = "loudspeaker hang"
    name: Name
    """The name of the hang."""
    model: Annotated[Name, RefersTo("loudspeaker")]
    """The model of its boxes, from the models above."""
    boxes: Annotated[Maybe[Count], Possible(0, 100), Plausible(1, 30)]
    """How many boxes."""
    splay: Annotated[Maybe[tuple[Angle, ...]], Possible(-45.0, 90.0), Plausible(0.0, 20.0)] = (
        Absent.NOT_STATED
    )
    """
    The angle between each box and the next, from the top down: one fewer than there are boxes.
    """
    at: Maybe[Spot]
    """Where it hangs on the plan: the front of the top box."""
    top: Annotated[Maybe[Height], DECK, Plausible(2.0, 30.0)]
    """The top of the top box."""
    down: Annotated[Maybe[Angle], Possible(-90.0, 90.0), Plausible(-15.0, 60.0)]
    """How far the top box looks down; with a minus, up."""
    turned: Perhaps[Turn] = None
    """
    How far the whole hang is turned from straight downstage. Left out, it looks straight into the
    house.
    """
    pulled_back: Maybe[Text] = Absent.NOT_STATED
    """
    What holds its turn and tilt: lines to which points on the deck or a tower, and whether they can
    move.
    """
    carried_by: Annotated[Maybe[Name], RefersTo("hang"), Decisive()] = Absent.NOT_STATED
    """The hang in rigging.yml that carries it. Its weight is counted there."""
    frame: Annotated[Maybe[Mass], Plausible(2.0, 400.0), OfModel("model")] = Absent.NOT_STATED
    """The weight of the frame, bar and cable above the top box."""
    adjustable: Maybe[Text] = Absent.NOT_STATED
    """Whether height, splay and turn can be changed for a show, and what that needs."""
    own_drive: Annotated[YesNo, Assumed("the usual")] = True
    """Whether it has a drive line of its own."""
    turned_down: Annotated[Perhaps[Level], Possible(0.0, 120.0), Plausible(0.0, 40.0)] = None
    """How far below its full level the house runs it, so that the system is even."""
    delay: Annotated[Perhaps[Duration], Possible(0.0, 10.0), Plausible(0.0, 0.5)] = None
    """The delay that the processor gives it."""
    prediction_file: Annotated[Maybe[Text], OfModel("model")] = Absent.NOT_STATED
    """Whether the house has the maker's prediction file, and how to get it."""


class SubLine(Movable):
    """Subs in a straight line across the stage front."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset(
        {"out_of_service", "arc", "arc_radius", "turned_down", "delay"}
    )
    defines: ClassVar[str] = "sub line"
    name: Name
    """What it is called."""
    model: Annotated[Name, RefersTo("loudspeaker")]
    """The model of the subs."""
    count: Annotated[Maybe[Count], Possible(1, 200), Plausible(1, 60)]
    """How many subs stand in the line, those out of service included."""
    out_of_service: Annotated[Maybe[tuple[Count, ...]], Numbered()] = ()
    """The numbers of those that do not play, counted from stage right."""
    spacing: Annotated[Maybe[Length], Possible.above(0.0, 100.0), Plausible(0.4, 8.0)]
    """From the middle of one sub to the middle of the next."""
    at: Maybe[At]
    """The middle of the line."""
    sits: Annotated[
        Maybe[Literal["on the floor", "under the stage", "on the deck", "flown"]],
        Assumed("the usual"),
    ] = "on the floor"
    """On the floor, under the stage, on the deck, or flown."""
    arc: Annotated[Perhaps[Angle], Possible(0.0, 180.0), Plausible(0.0, 180.0)] = None
    """The angle of the arc that delays bend the line into. Write this or the radius."""
    arc_radius: Annotated[Perhaps[Length], Plausible(1.0, 200.0)] = None
    """The radius of the arc that delays bend the line into. Write this or the arc."""
    fed: Annotated[Maybe[Literal["own feed", "with left and right"]], Decisive()] = (
        Absent.NOT_STATED
    )
    """Whether the subs have a feed of their own or play with left and right."""
    turned_down: Annotated[Perhaps[Level], Possible(0.0, 120.0), Plausible(0.0, 40.0)] = None
    """How far below their full level the house runs them, so that the system is even."""
    delay: Annotated[Perhaps[Duration], Possible(0.0, 10.0), Plausible(0.0, 0.5)] = None
    """The delay of the whole line, to which the arc's own delays are added."""

    @model_validator(mode="after")
    def _one_arc(self) -> "SubLine":
        if self.arc is not None and self.arc_radius is not None:
            raise PydanticCustomError(
                "arc-twice",
                "has both an arc and an arc radius",
                {"advice": "keep one; the other follows from the length"},
            )
        checked_arc(self)
        if isinstance(self.count, Absent) or isinstance(self.out_of_service, Absent):
            return self
        absent = [number for number in self.out_of_service if not 1 <= number <= self.count]
        if absent:
            words = {
                "number": absent[0],
                "count": self.count,
                "advice": f"count from 1 at stage right to {self.count}",
            }
            raise PydanticCustomError(
                "sub-unknown",
                "names sub {number} as out of service, and the line has {count}",
                words,
            )
        return self


def checked_arc(subs: SubLine) -> None:
    """Refuse an arc that no straight line can be bent into."""
    if isinstance(subs.count, Absent) or isinstance(subs.spacing, Absent):
        return
    half_m = (subs.count - 1) * subs.spacing.m / 2
    if isinstance(subs.arc_radius, Length) and subs.arc_radius.m < max(half_m, 0.01):
        words = {
            "text": subs.arc_radius.text,
            "half": f"{half_m:.2f} m",
            "advice": "a longer radius bends the line less",
        }
        raise PydanticCustomError(
            "arc-out-of-range",
            "has an arc radius of {text}, shorter than half the line, {half}",
            words,
        )


class FillBox(Line):
    """One loudspeaker of a fill."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"turned", "down"})
    at: Maybe[At]
    """Where it is: the middle of its front."""
    turned: Perhaps[Turn] = None
    """How far it is turned from straight downstage. Left out, it looks straight into the house."""
    down: Annotated[Perhaps[Angle], Possible(-90.0, 90.0), Plausible(-45.0, 90.0)] = None
    """How far it looks down; with a minus, up."""


class Fill(Movable):
    """Loudspeakers that fill in where the hangs do not reach."""

    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"configurations", "follows"})
    counts_when_left_out: ClassVar[frozenset[str]] = frozenset(
        {"aligned_at", "after", "turned_down"}
    )
    defines: ClassVar[str] = "fill"
    name: Name
    """What they are called."""
    kind: Maybe[
        Literal["front fill", "out fill", "in fill", "under balcony", "balcony", "delay", "lawn"]
    ]
    """Front fill, out fill, in fill, under balcony, balcony, delay or lawn."""
    model: Annotated[Name, RefersTo("loudspeaker")]
    """The model of the boxes."""
    boxes: tuple[FillBox, ...] = ()
    """Each box, from stage right to stage left."""
    own_drive: Annotated[Maybe[YesNo], Decisive()] = Absent.NOT_STATED
    """Whether they can be fed by themselves. It decides how many outputs the desk needs."""
    follows: Annotated[tuple[Name, ...], RefersTo("loudspeaker hang")] = ()
    """The hangs whose sound they must not come before. Each box follows the nearest of them."""
    aligned_at: Annotated[Perhaps[Length], Possible.above(0.0, 1_000.0), Plausible(0.5, 60.0)] = (
        None
    )
    """How far in front of each box its sound is brought together in time with the hang's."""
    after: Annotated[Perhaps[Duration], Possible(0.0, 10.0), Plausible(0.0, 0.04)] = None
    """How long after that hang's sound theirs should come."""
    turned_down: Annotated[Perhaps[Level], Possible(0.0, 120.0), Plausible(0.0, 50.0)] = None
    """How far below their full level the house runs them, so that the system is even."""


class Corner(OnPlan):
    """A corner of an audience area, with the height of its floor."""

    across: Annotated[Across, DRAWN]
    """Distance from the centre line, such as 12 m SL."""
    depth: Annotated[Depth, DRAWN]
    """Distance from the reference line, such as 30 m DS."""
    height: Annotated[Height, NotInWords("the section draws the floors to scale")]
    """The floor there, from the deck: 1.35 m down for a floor below it."""


class AudienceArea(Movable):
    """
    A flat or evenly sloped part of the audience. Stepped balconies are drawn as the slope through
    their steps.
    """

    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"configurations"})
    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"underside"})
    public_because: ClassVar[str] = "levels are told over it"
    defines: ClassVar[str] = "audience area"
    name: Name
    """The name of the area."""
    kind: Maybe[Literal["floor", "balcony", "tier", "lawn", "boxes"]]
    """Floor, balcony, tier, lawn or boxes."""
    ears: Annotated[Maybe[Length], Possible.above(0.0, 5.0), Plausible(0.9, 1.9)]
    """Height of the listeners' ears above the floor: about 1.2 m seated, 1.65 m standing."""
    corners: Annotated[Maybe[tuple[Corner, ...]], Encloses()]
    """The corners in order around it."""
    underside: Annotated[Perhaps[Length], Possible(0.0, 20.0), Plausible(0.05, 3.0)] = None
    """
    For a balcony or tier: how far its underside is below its floor at the front edge, which hides
    hangs from ears below. Left out: thin.
    """


class Amplifier(Loose):
    """Amplifiers of the house system."""

    defines: ClassVar[str] = "amplifier"
    name: Name
    """The model, or what they drive."""
    count: Annotated[Maybe[Count], Plausible(1, 200)] = Absent.NOT_STATED
    """How many."""
    channels: Annotated[Maybe[Count], Plausible(1, 16), OfModel()] = Absent.NOT_STATED
    """Channels of one."""
    channels_in_all: Annotated[Maybe[Count], Plausible(1, 400)] = Absent.NOT_STATED
    """How many channels there are in all, where nobody tells of which amplifiers."""
    drives: Maybe[Text] = Absent.NOT_STATED
    """What they drive."""
    as_listed: Maybe[YesNo] = Absent.NOT_STATED
    """Whether they are those that the maker of the loudspeakers lists for them."""
    lies: Text | None = None
    """Where they stand."""
    power: Annotated[Maybe[Power], Plausible(50.0, 40_000.0), OfModel()] = Absent.NOT_STATED
    """Output of one channel, and into what load in the note."""
