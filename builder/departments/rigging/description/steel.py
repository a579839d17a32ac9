"""The steel overhead as the house describes it: limits, zones, beams, points."""

from collections.abc import Iterator, Mapping
from typing import Annotated, ClassVar, Literal

from pydantic import model_validator

from builder.reading.absent import Absent, is_unknown, listed
from builder.reading.in_service import checked_working
from builder.reading.maybe import Maybe, Perhaps
from builder.reading.possible import Possible
from builder.reading.problems import Problem
from builder.reading.quantities import Across, Angle, Depth, Height, Length, Mass
from builder.reading.words import Count, Name, Ratio, Text, YesNo
from builder.reading.written import (
    Decisive,
    Line,
    Loose,
    OfModel,
    Plausible,
    Rated,
    RefersTo,
    Written,
)

Directions = Literal["straight down only", "at an angle"]
Way = Literal["across", "depth"]
"""The key of a place seen from above: along a beam, or where a beam lies."""


class Letter(Line):
    """The structural engineer's letter that the limits come from."""

    public_because: ClassVar[str] = "the limits rest on it"
    from_whom: Name
    """Who wrote it, by role or firm."""
    dated: Name
    """Its date and revision."""
    valid_for: Text | None = None
    """What it holds for, and what it leaves out."""


class BridleRule(Line):
    """Whether loads may be hung between beams."""

    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"beams"})
    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"widest_angle"})
    public_because: ClassVar[str] = "a show has to keep to it"
    allowed: Maybe[Literal["yes", "between some beams", "no"]]
    """Yes, between some beams, or no."""
    beams: Annotated[tuple[Name, ...], RefersTo("beam")] = ()
    """The beams between which bridles are allowed, where it is only some."""
    widest_angle: Annotated[Perhaps[Angle], Possible.above(0.0, 178.0), Plausible(30.0, 120.0)] = (
        None
    )
    """The widest angle between two legs."""


class DynamicFactor(Line):
    """A factor for starting and stopping, that the house asks for, with its source."""

    public_because: ClassVar[str] = "a show has to keep to it"
    factor: Annotated[Maybe[Ratio], Possible(1.0, 10.0), Plausible(1.0, 2.0)]
    """The factor on every load, 1 or more."""
    source: Text
    """Who asks for it: the engineer's letter, a code with its clause."""


class Limits(Line):
    """The general limits. Exceptions stand on their own lines."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"widest_lean", "level_within"})
    public_because: ClassVar[str] = "a show has to keep to it"
    unknown_in_whole: ClassVar[tuple[str, ...]] = (
        "whole_roof",
        "each_beam",
        "each_point",
        "spacing_at_least",
        "directions",
        "widest_lean",
        "level_within",
    )
    """What nobody knows where nobody knows the limits."""
    whole_roof: Annotated[Maybe[Mass], Rated(), Plausible(100.0, 200_000.0), Decisive()] = (
        Absent.NOT_STATED
    )
    """What the whole roof may carry, all hung loads together."""
    each_beam: Annotated[Maybe[Mass], Rated(), Plausible(50.0, 50_000.0)] = Absent.NOT_STATED
    """What each beam may carry."""
    each_point: Annotated[Maybe[Mass], Rated(), Plausible(25.0, 10_000.0), Decisive()] = (
        Absent.NOT_STATED
    )
    """What each point may carry."""
    spacing_at_least: Annotated[Maybe[Length], Possible(0.0, 100.0), Plausible(0.2, 6.0)] = (
        Absent.NOT_STATED
    )
    """The smallest distance between two loaded points on one beam."""
    directions: Maybe[Directions] = Absent.NOT_STATED
    """
    How points may be pulled: straight down only, or at an angle too. Legs of bridles are checked
    against it.
    """
    widest_lean: Annotated[Perhaps[Angle], Possible(0.0, 89.0), Plausible(1.0, 80.0)] = None
    """How far from straight down a pull may lean, where it may be at an angle."""
    level_within: Annotated[Perhaps[Length], Possible(0.0, 1.0), Plausible(0.0, 0.1)] = None
    """
    How far the hoists of one truss may stand out of level on this house's control. Worst cases are
    worked out for it.
    """


class LimitException(Line):
    """A beam or point whose limits differ."""

    stands_in: ClassVar[Mapping[str, tuple[str, ...]]] = {
        "each_beam": ("limits.each_beam",),
        "each_point": ("limits.each_point",),
        "directions": ("limits.directions",),
    }
    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"beams", "points"})
    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"widest_lean"})
    public_because: ClassVar[str] = "a show has to keep to it"
    beams: Annotated[tuple[Name, ...], RefersTo("beam")] = ()
    """The beams it is about."""
    points: Annotated[tuple[Name, ...], RefersTo("point")] = ()
    """The points it is about."""
    each_beam: Annotated[Maybe[Mass], Rated(), Possible(0.0, 1e7), Plausible(50.0, 50_000.0)] = (
        Absent.NOT_STATED
    )
    """What each of these beams may carry."""
    each_point: Annotated[Maybe[Mass], Rated(), Possible(0.0, 1e7), Plausible(25.0, 10_000.0)] = (
        Absent.NOT_STATED
    )
    """What each of these points, or each point on these beams, may carry."""
    directions: Maybe[Directions] = Absent.NOT_STATED
    """How these points, or the points on these beams, may be pulled."""
    widest_lean: Annotated[Perhaps[Angle], Possible(0.0, 89.0), Plausible(1.0, 80.0)] = None
    """How far from straight down a pull on them may lean."""


class Zone(Line):
    """A part of the roof with a limit of its own."""

    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"beams", "points"})
    public_because: ClassVar[str] = "a show has to keep to it"
    defines: ClassVar[str] = "roof zone"
    name: Name
    """The name of the zone."""
    beams: Annotated[tuple[Name, ...], RefersTo("beam")] = ()
    """The beams that lie in it."""
    points: Annotated[tuple[Name, ...], RefersTo("point")] = ()
    """Single points that lie in it, where their beam runs through two zones."""
    limit: Annotated[Maybe[Mass], Rated(), Possible(0.0, 1e7), Plausible(100.0, 200_000.0)] = (
        Absent.NOT_STATED
    )
    """What may hang in the zone in all."""


class LowSteel(Written):
    """The height of the steel at one place along a beam."""

    across: Annotated[Across | None, Plausible(-60.0, 60.0)] = None
    """Where, on a beam that runs across."""
    depth: Annotated[Depth | None, Plausible(-120.0, 60.0)] = None
    """Where, on a beam that runs up and down stage."""
    height: Annotated[Height, Plausible(2.0, 32.0)]
    """The underside of the steel there, above the deck."""


class Standing(Written):
    """What hangs on a beam for good, where nobody says on which of its points."""

    what: Name
    """What it is, such as a video screen."""
    by: Maybe[Literal["sound", "lighting", "video", "drape", "scenery", "house"]]
    """Who hung it: sound, lighting, video, drape, scenery or house."""
    weight: Annotated[Maybe[Mass], Plausible(0.5, 5_000.0)] = Absent.NOT_STATED
    """
    What it weighs in all. Where nobody knows, nothing on that beam or roof is said to be left for
    certain.
    """


class Beam(Line):
    """A beam that points hang from."""

    defines: ClassVar[str] = "beam"
    name: Name
    """The name of the beam, as painted on it or on the drawing."""
    runs: Maybe[Literal["across", "up and down stage"]]
    """Across, or up and down stage."""
    across: Annotated[Across | None, Plausible(-60.0, 60.0)] = None
    """Where it lies, if it runs up and down stage."""
    depth: Annotated[Depth | None, Plausible(-120.0, 60.0)] = None
    """Where it lies, if it runs across."""
    low_steel: tuple[LowSteel, ...] = ()
    """The height of its underside, at each end and wherever it bends."""
    underside: Annotated[Maybe[Height], Plausible(2.0, 32.0)] = Absent.NOT_STATED
    """The height of its underside, where it is the same all along and nobody tells its ends."""
    top_above_ground: Annotated[Maybe[Length], Plausible(2.0, 60.0)] = Absent.NOT_STATED
    """How high its top is above the ground, where the deck's height may change."""
    standing: Maybe[tuple[Standing, ...]] = ()
    """What hangs on it for good, where nobody says on which points. It counts on beam and roof."""
    use: Text | None = None
    """What it is for, or what always hangs there, such as the backdrop."""
    access: Text | None = None
    """How one gets to it."""

    @property
    def for_good(self) -> tuple[Standing, ...]:
        """What is told to hang on it for good."""
        return listed(self.standing)

    @property
    def may_carry_for_good(self) -> bool:
        """Whether something hangs on it for good, or nobody knows whether."""
        return bool(self.for_good) or is_unknown(self.standing)

    @property
    def along(self) -> Way | None:
        """The key of a place along it; None where nobody knows which way it runs."""
        if isinstance(self.runs, Absent):
            return None
        return "across" if self.runs == "across" else "depth"

    @property
    def lies(self) -> Way | None:
        """The key of where it lies; None where nobody knows which way it runs."""
        if self.along is None:
            return None
        return "depth" if self.along == "across" else "across"

    def contradictions(self) -> Iterator[Problem]:
        """
        A beam says where it lies with the one key that fits the way it runs, and its heights with
        the other.
        """
        lies, along = self.lies, self.along
        if lies and getattr(self, lies) is None and lies not in self.unknown:
            yield Problem(
                self.where(),
                self.name,
                "",
                f"runs {self.runs} and needs '{lies}' to say where it lies",
                "beam-place-missing",
            )
        for index, station in enumerate(self.low_steel):
            if along and getattr(station, along) is None and along not in station.unknown:
                reason = f"needs '{along}' to say where along the beam this height is"
                yield Problem(
                    self.where("low_steel", index),
                    f"{self.name}.low_steel[{index + 1}]",
                    "",
                    reason,
                    "beam-place-missing",
                )
        is_open = "low_steel" in self.unknown or "underside" in self.unknown
        if not self.low_steel and self.underside is Absent.NOT_STATED and not is_open:
            yield Problem(
                self.where("low_steel"),
                self.name,
                "",
                "has no height of low steel",
                "beam-place-missing",
                "write one at each end, or 'underside' where it is the same all along",
            )
        if self.low_steel and self.underside is not Absent.NOT_STATED:
            yield Problem(
                self.where("underside"),
                f"{self.name}.underside",
                self.underside.text if isinstance(self.underside, Height) else "",
                "cannot stand beside 'low_steel': the height would be told twice",
                "beam-place-missing",
                "keep one of them",
            )


class Point(Line):
    """A place on a beam where something may hang."""

    stands_in: ClassVar[Mapping[str, tuple[str, ...]]] = {
        "rating": ("limits.each_point", "exceptions.each_point"),
        "directions": ("limits.directions", "exceptions.directions"),
    }
    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"widest_lean"})
    defines: ClassVar[str] = "point"
    name: Name
    """The name of the point, as tagged."""
    beam: Annotated[Name, RefersTo("beam")]
    """The beam it is on."""
    across: Annotated[Across | None, Plausible(-60.0, 60.0)] = None
    """Where it is along a beam that runs across."""
    depth: Annotated[Depth | None, Plausible(-120.0, 60.0)] = None
    """Where it is along a beam that runs up and down stage."""
    rating: Annotated[Maybe[Mass], Rated(), Possible(0.0, 1e7), Plausible(25.0, 10_000.0)] = (
        Absent.NOT_STATED
    )
    """What it may carry, where that differs from the rule."""
    directions: Maybe[Directions] = Absent.NOT_STATED
    """How it may be pulled, where that differs from the rule."""
    widest_lean: Annotated[Perhaps[Angle], Possible(0.0, 89.0), Plausible(1.0, 80.0)] = None
    """How far from straight down a pull on it may lean."""
    hardware: Text | None = None
    """What is up there: beam clamp, eye, pick."""


class PointGroup(Line):
    """
    Points that are told by a rule, where nobody tells each with its place: so many of them, at
    equal centres, or anywhere along a beam.
    """

    stands_in: ClassVar[Mapping[str, tuple[str, ...]]] = {
        "each_point": ("limits.each_point", "exceptions.each_point"),
        "spacing_at_least": ("limits.spacing_at_least",),
    }
    public_because: ClassVar[str] = "a show has to keep to it"
    defines: ClassVar[str] = "point group"
    name: Name
    """What the crew calls them."""
    beams: Annotated[tuple[Name, ...], RefersTo("beam")] = ()
    """The beams they are on. Left out where nobody says."""
    place: Text | None = None
    """Where they are, in words, where no beam says it."""
    count: Annotated[Maybe[Count], Possible(0, 10_000), Plausible(1, 500)] = Absent.NOT_STATED
    """How many there are. Left out where the lengths of the beams tell it."""
    anywhere: YesNo | None = None
    """Whether a point may be anywhere along these beams. Left out, where they are is asked."""
    centres: Annotated[Maybe[Length], Possible.above(0.0, 100.0), Plausible(0.2, 15.0)] = (
        Absent.NOT_STATED
    )
    """How far apart they are from each to the next, where that is the same all along."""
    each_point: Annotated[Maybe[Mass], Rated(), Possible(0.0, 1e7), Plausible(25.0, 10_000.0)] = (
        Absent.NOT_STATED
    )
    """What each of them may carry, where that differs from the rule."""
    spacing_at_least: Annotated[Maybe[Length], Possible(0.0, 100.0), Plausible(0.2, 6.0)] = (
        Absent.NOT_STATED
    )
    """The smallest distance between two loaded ones, where that differs from the rule."""
    low_steel: Annotated[Maybe[Height], Plausible(2.0, 32.0)] = Absent.NOT_STATED
    """The lowest height of the steel over them, where no beam tells it."""

    def contradictions(self) -> Iterator[Problem]:
        """What may be anywhere stands at no centres."""
        if self.anywhere and not isinstance(self.centres, Absent):
            yield Problem(
                self.where("centres"),
                f"{self.name}.centres",
                self.centres.text,
                "cannot stand beside 'anywhere: yes': the one says where each is, the other that"
                " each may be anywhere",
                "point-group-unclear",
                "keep one of them, or write 'spacing_at_least' for how near two may be",
            )


class TableRow(Written):
    """One row of the maker's table of allowable loads."""

    span: Annotated[Length, Plausible(0.5, 40.0)]
    """The span between two supports."""
    uniform: Annotated[Mass, Plausible(10.0, 20_000.0)]
    """The uniform load in all that the span may carry."""


class Truss(Loose):
    """Truss in stock, with its weight and the maker's table."""

    defines: ClassVar[str] = "truss"
    name: Name
    """The model."""
    in_all: Annotated[Maybe[Length], Plausible(1.0, 500.0)] = Absent.NOT_STATED
    """How much of it there is."""
    sections: Annotated[Maybe[Text], OfModel()] = Absent.NOT_STATED
    """In which lengths it comes."""
    height: Annotated[Maybe[Length], Plausible(0.1, 1.5), OfModel()] = Absent.NOT_STATED
    """The height of the truss, for trim."""
    table: Annotated[Maybe[tuple[TableRow, ...]], OfModel()] = Absent.NOT_STATED
    """The maker's allowable loads by span, shortest first."""

    @property
    def rows(self) -> tuple[TableRow, ...]:
        """The rows of the maker's table, none where nobody has it."""
        return () if isinstance(self.table, Absent) else self.table


class Hoist(Loose):
    """Hoists in stock."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"working"})
    defines: ClassVar[str] = "hoist"
    name: Name
    """The model."""
    count: Annotated[Maybe[Count], Plausible(0, 200)] = Absent.NOT_STATED
    """How many there are."""
    working: Maybe[Count] = Absent.NOT_STATED
    """
    How many of them work and are there. The others are away, such as at the inspector's. Left out,
    all do.
    """
    rating: Annotated[Maybe[Mass], Plausible(50.0, 5_000.0), OfModel()]
    """The rated capacity."""
    weight: Annotated[Maybe[Mass], Plausible(5.0, 300.0), OfModel()]
    """The weight of one with its hook and chain bag, chain included. The point carries it too."""
    headroom: Annotated[Maybe[Length], Plausible(0.2, 2.0), OfModel()]
    """From the point to the load hook with the hoist run up: hoist, shackles and sling."""
    chain: Annotated[Maybe[Length], Plausible(3.0, 60.0), OfModel()] = Absent.NOT_STATED
    """The length of its chain."""
    control: Annotated[Maybe[Text], OfModel()] = Absent.NOT_STATED
    """What it is controlled with."""

    @model_validator(mode="after")
    def _working_of_count(self) -> "Hoist":
        checked_working(self.count, self.working)
        return self
