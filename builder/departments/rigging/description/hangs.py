"""What hangs, as the house describes it: bodies on points, and the loads on them."""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from builder.reading.absent import Absent, is_unknown, listed
from builder.reading.maybe import Maybe, Perhaps
from builder.reading.possible import Possible
from builder.reading.problems import Problem
from builder.reading.quantities import Across, Depth, Height, Length, LoadPerLength, Mass, Stiffness
from builder.reading.words import Count, Name, YesNo
from builder.reading.written import Line, Movable, OfModel, Plausible, RefersTo, Written


class End(Written):
    """An end of a hung body, seen from above."""

    across: Annotated[Across, Plausible(-60.0, 60.0)]
    """Distance from the centre line."""
    depth: Annotated[Depth, Plausible(-120.0, 60.0)]
    """Distance from the reference line."""


class Support(Line):
    """One point that carries a hang, and what is between the two."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"hoist", "steel"})
    point: Annotated[Name, RefersTo("point")]
    """The point overhead."""
    hoist: Annotated[Name | None, RefersTo("hoist")] = None
    """The hoist model, or left out for a dead hang."""
    steel: Annotated[Perhaps[Length], Possible(0.0, 200.0), Plausible(0.05, 40.0)] = None
    """
    From low steel to what hangs: the length of a dead hang with its shackles. With a hoist, what is
    above or below it besides.
    """


class HungThing(Line):
    """A load on a hang."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"at", "from", "to"})
    what: Name
    """What it is."""
    by: Maybe[Literal["sound", "lighting", "video", "drape", "scenery", "house"]]
    """Who hung it: sound, lighting, video, drape, scenery or house."""
    count: Annotated[Maybe[Count], Possible(1, 10_000), Plausible(1, 500)] = 1
    """How many of them."""
    weight: Annotated[Maybe[Mass], Plausible(0.2, 5_000.0)]
    """The weight of one, with its clamp and cable."""
    at: Annotated[Perhaps[Length], Possible(0.0, 1_000.0), Plausible(0.0, 60.0)] = None
    """Where along the hang, counted from its first end, where it is one place."""
    from_: Annotated[Perhaps[Length], Possible(0.0, 1_000.0), Plausible(0.0, 60.0)] = Field(
        default=None, alias="from"
    )
    """Where a spread load begins, counted from the first end."""
    to: Annotated[Perhaps[Length], Plausible(0.0, 60.0)] = None
    """Where a spread load ends."""
    underside: Annotated[Maybe[Height], Plausible(-1.0, 32.0)] = Absent.NOT_STATED
    """
    The height of its lowest edge, such as of a screen or a border. Left out, it is no lower than
    the trim of the hang. A drape to the floor is an obstruction in stage.yml.
    """

    def contradictions(self) -> Iterator[Problem]:
        """A load is at one place, or spread between two; not both."""
        spread = (self.from_ is not None) + (self.to is not None)
        if (self.at is not None and spread) or spread == 1:
            reason = "needs either 'at', or both 'from' and 'to'"
            yield Problem(
                self.where(),
                self.what,
                "",
                reason,
                "load-place-unclear",
                "leave all three out for a load over the whole length",
            )
        if (
            isinstance(self.from_, Length)
            and isinstance(self.to, Length)
            and self.to.m <= self.from_.m
        ):
            yield Problem(
                self.where("to"),
                f"{self.what}.to",
                self.to.text,
                f"is not beyond its beginning, {self.from_.text}",
                "load-place-unclear",
            )


class Hang(Movable):
    """
    Anything flown that stands in the house: a truss, a bar, a loudspeaker hang, with the points
    that carry it.
    """

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"truss", "loads"})
    defines: ClassVar[str] = "hang"
    name: Name
    """The name of the hang. Other files refer to it."""
    truss: Annotated[Name | None, RefersTo("truss")] = None
    """The truss model, where it is one in stock."""
    first_end: Maybe[End]
    """One end of it, seen from above. Places along it count from here."""
    last_end: Maybe[End]
    """The other end. The same as the first for a single point."""
    weight: Annotated[Maybe[LoadPerLength], Plausible(0.5, 80.0), OfModel("truss")] = (
        Absent.NOT_STATED
    )
    """Its own weight by length."""
    weight_in_all: Annotated[Maybe[Mass], Plausible(0.5, 5_000.0), OfModel("truss")] = (
        Absent.NOT_STATED
    )
    """Its own weight in all, where it is not told by length."""
    supports: Maybe[tuple[Support, ...]]
    """The points that carry it."""
    loads: Maybe[tuple[HungThing, ...]] = ()
    """What hangs on it. Loudspeakers are told in sound.yml."""
    stiffness: Annotated[Maybe[Stiffness], Plausible(1e4, 1e8), OfModel("truss")] = (
        Absent.NOT_STATED
    )
    """Its bending stiffness EI, from the maker. Worst cases out of level need it."""
    trim: Annotated[Maybe[Height], Plausible(1.5, 32.0)] = Absent.NOT_STATED
    """The height of its underside as it hangs."""
    comes_down: YesNo | None = None
    """
    Whether it may be taken down, or flown out, for a show. Left out, shows that need the height are
    asked to ask.
    """

    @property
    def hangs_from(self) -> tuple[Support, ...]:
        """The supports that are described."""
        return listed(self.supports)

    @property
    def things(self) -> tuple[HungThing, ...]:
        """What is told to hang on it."""
        return listed(self.loads)

    def contradictions(self) -> Iterator[Problem]:
        """A hang has a support, and its own weight is told once."""
        if not self.hangs_from and not is_unknown(self.supports):
            yield Problem(
                self.where("supports"),
                self.name,
                "",
                "hangs from nothing",
                "hang-without-support",
                "write the points that carry it",
            )
        if not isinstance(self.weight, Absent) and not isinstance(self.weight_in_all, Absent):
            reason = "tells its own weight twice, by length and in all"
            yield Problem(
                self.where("weight_in_all"),
                self.name,
                self.weight_in_all.text,
                reason,
                "weight-twice",
                "keep one of them",
            )
