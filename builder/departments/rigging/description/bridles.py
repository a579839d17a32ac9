"""
Bridles as the house describes them: standing ones, spots that are asked for, and the steels in
stock to make them of.
"""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal, TypeGuard

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe, Perhaps
from builder.reading.possible import Possible
from builder.reading.problems import Problem
from builder.reading.quantities import Across, Depth, Height, Length, Mass
from builder.reading.words import Count, Name
from builder.reading.written import Assumed, Line, Loose, OfModel, Plausible, RefersTo, Written

LEG_COUNTS = (2, 3)


class Apex(Written):
    """The place where the legs of a bridle meet."""

    across: Annotated[Across, Plausible(-60.0, 60.0)]
    """Distance from the centre line."""
    depth: Annotated[Depth, Plausible(-120.0, 60.0)]
    """Distance from the reference line."""
    height: Annotated[Height, Plausible(1.0, 30.0)]
    """Height above the deck."""


class Bridle(Line):
    """A spot between two or three points that carries something now."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"apex"})
    defines: ClassVar[str] = "bridle"
    name: Name
    """The name of the spot."""
    legs: Annotated[tuple[Name, ...], RefersTo("point")]
    """The two or three points that the legs go to."""
    apex: Perhaps[Apex] = None
    """
    Where the legs meet. Left out where the legs' lengths are told: then the apex is worked out.
    """
    leg_lengths: tuple[Length, ...] = ()
    """
    How long each leg is from low steel to the apex, shackles counted, in the order of the points.
    """
    load: Annotated[Maybe[Mass], Plausible(1.0, 5_000.0)]
    """What hangs from it."""
    by: Annotated[
        Maybe[Literal["sound", "lighting", "video", "drape", "scenery", "house"]],
        Assumed("nobody else is named"),
    ] = "house"
    """Who hung it."""

    def contradictions(self) -> Iterator[Problem]:
        """
        A bridle has two or three legs to different points, and tells either its apex or the length
        of each leg.
        """
        path, named = f"{self.name}.legs", ", ".join(self.legs)
        if len(self.legs) not in LEG_COUNTS or len({name.casefold() for name in self.legs}) != len(
            self.legs
        ):
            yield Problem(
                self.where("legs"),
                path,
                named,
                "must name two or three different points",
                "bridle-legs",
            )
        if (self.apex is None) == (not self.leg_lengths):
            reason = "needs either 'apex', or 'leg_lengths' with the length of each leg"
            yield Problem(
                self.where(),
                self.name,
                "",
                reason,
                "bridle-apex-unclear",
                "the one that is left out is worked out from the other",
            )
        elif self.leg_lengths and len(self.leg_lengths) != len(self.legs):
            reason = f"needs one length for each of its {len(self.legs)} legs"
            found = ", ".join(length.text for length in self.leg_lengths)
            yield Problem(
                self.where("leg_lengths"),
                f"{self.name}.leg_lengths",
                found,
                reason,
                "bridle-apex-unclear",
                "write one for each point in 'legs'",
            )


class WantedSpot(Line):
    """
    A spot between points that shows often ask for. Nothing hangs there yet: the points that make it
    are looked for.
    """

    defines: ClassVar[str] = "wanted spot"
    name: Name
    """The name of the spot."""
    apex: Maybe[Apex]
    """Where the load is wanted: where the legs meet."""
    load: Annotated[Maybe[Mass], Plausible(1.0, 5_000.0)]
    """What shall hang from it."""
    legs: Annotated[Maybe[Count], Possible(2, 3), Plausible(2, 3), Assumed("the least")] = 2
    """Of how many legs it is made, two or three."""


class KnownSpot(WantedSpot):
    """A wanted spot of which all is known. Only types are told by it: none is ever made."""

    apex: Apex
    load: Mass
    legs: int


def is_known_spot(spot: WantedSpot) -> TypeGuard[KnownSpot]:
    """Whether all is known of a wanted spot that points are looked for by."""
    return not lacking_of_spot(spot)


def lacking_of_spot(spot: WantedSpot) -> tuple[str, ...]:
    """What must be known of a wanted spot before points are looked for."""
    told = (
        (spot.apex, "where its legs meet"),
        (spot.load, "its load"),
        (spot.legs, "how many legs it has"),
    )
    return tuple(words for value, words in told if isinstance(value, Absent))


class Steel(Loose):
    """Steels in stock that bridle legs and dead hangs are made of."""

    defines: ClassVar[str] = "steel"
    name: Name
    """What the crew calls it."""
    count: Annotated[Maybe[Count], Plausible(0, 500)] = Absent.NOT_STATED
    """How many there are."""
    length: Annotated[Maybe[Length], Plausible(0.1, 20.0), OfModel()]
    """Its length from eye to eye."""
    rating: Annotated[Maybe[Mass], Plausible(50.0, 10_000.0), OfModel()]
    """What it may carry in a straight pull, as marked."""
