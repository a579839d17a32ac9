"""``hangs`` of a rider: what the show flies, where it is picked up, and what it weighs."""

from collections.abc import Iterator
from itertools import pairwise
from typing import Literal

from pydantic import Field

from builder.reading.problems import Problem
from builder.reading.quantities import Across, Depth, Height, Length, LoadPerLength, Mass
from builder.reading.words import Count, Name, Text
from builder.reading.written import Written

LEAST_APART_M = 0.01
"""Supports closer than this are one place."""
OFF_END_M = 0.005
"""A place this far beyond an end is rounding."""
MOST_SUPPORTS = 12
CODE = "need-unclear"


class Support(Written):
    """
    Where a hang is picked up: a point of the house by its name, or a spot from the house's datum.
    Without either, it is asked.
    """

    point: Name | None = None
    """The point, by the house's name for it."""
    across: Across | None = None
    """Where no point is named: distance from the centre line."""
    depth: Depth | None = None
    """Where no point is named: distance from the house's reference line."""
    apex: Height | None = None
    """
    For a spot that no point is near to: how high above the deck the two legs of a bridle may meet.
    """
    at: Length | None = None
    """
    Where along the hang, counted from its first end. Needed for two supports or more whose loads
    are worked out.
    """
    load: Mass | None = None
    """The load that comes on it, where the show's plot states it. Then nothing is worked out."""

    def contradictions(self) -> Iterator[Problem]:
        """A support names a point, or tells both coordinates of a spot."""
        if (self.across is None) != (self.depth is None):
            yield unclear(
                self,
                "across",
                "needs both across and depth, or a point",
                "write the one that is missing",
            )
        elif self.point is not None and self.across is not None:
            yield unclear(
                self, "point", "stands beside a spot", "write either point, or across and depth"
            )
        elif self.apex is not None and self.across is None:
            yield unclear(self, "apex", "stands without a spot", "write across and depth too")


class Hanging(Written):
    """A load on a hang. Without a place it is spread over the whole length."""

    what: Name
    """What it is."""
    count: Count = 1
    """How many of them."""
    weight: Mass
    """The weight of one, with its clamp and cable."""
    at: Length | None = None
    """Where along the hang, counted from its first end, where it is one place."""
    from_: Length | None = Field(default=None, alias="from")
    """Where a spread load begins."""
    to: Length | None = None
    """Where a spread load ends."""

    def contradictions(self) -> Iterator[Problem]:
        """A load is at one place, or spread between two; not both."""
        spread = (self.from_ is not None) + (self.to is not None)
        if (self.at is not None and spread) or spread == 1:
            yield unclear(
                self,
                "at",
                "needs either at, or both from and to",
                "leave all three out for a load over the whole length",
            )
        elif self.from_ is not None and self.to is not None and self.to.m <= self.from_.m:
            yield unclear(
                self,
                "to",
                "is not beyond its beginning",
                "write the place nearer to the first end as from",
            )


class Hang(Written):
    """Something that the show flies: a truss, a bar, a loudspeaker hang, a drape."""

    name: Name
    """The name of the hang, as on the show's plot."""
    supports: tuple[Support, ...]
    """Where it is picked up, at most 12."""
    length: Length | None = None
    """Its length, where weights are spread over it."""
    weight: LoadPerLength | None = None
    """Its own weight by length, truss and bars."""
    weight_in_all: Mass | None = Field(default=None, alias="weight in all")
    """Its own weight in all, where it is not told by length."""
    loads: tuple[Hanging, ...] = ()
    """What hangs on it."""
    hoists: Literal["show", "house", "counted", "none"] | None = None
    """
    Who brings the hoists: show, or house. Counted where the loads hold them already, none for a
    dead hang.
    """
    hoist_weight: Mass | None = Field(default=None, alias="hoist weight")
    """What one of the show's hoists weighs with its hook and chain."""
    trim: Height | None = None
    """How high above the deck its underside should go."""
    below_steel: Length | None = Field(default=None, alias="below steel")
    """From low steel to the underside with the hoists run up: hoist, slings and truss."""
    strictness: Literal["must", "should"] = "must"
    """Must, or should where the show can live without."""
    note: Text | None = None
    """What the house should know, in a sentence."""

    @property
    def stated(self) -> bool:
        """Whether the loads on the supports are stated, so that nothing is worked out."""
        return any(support.load is not None for support in self.supports)

    def contradictions(self) -> Iterator[Problem]:
        """A hang says where it hangs and what it weighs, once, and all of it lies on it."""
        if not 0 < len(self.supports) <= MOST_SUPPORTS:
            yield unclear(
                self,
                "supports",
                f"has {len(self.supports)} supports",
                f"write 1 to {MOST_SUPPORTS}; split a longer hang",
            )
        points = [support.point.lower() for support in self.supports if support.point]
        if len(set(points)) < len(points):
            yield unclear(self, "supports", "names a point twice", "write each point once")
        if (self.hoists == "show") != (self.hoist_weight is not None):
            yield unclear(
                self,
                "hoists",
                "needs the weight of the show's hoists",
                "write hoists: show together with hoist weight, or neither",
            )
        if self.below_steel is not None and self.trim is None:
            yield unclear(self, "below steel", "stands without a trim", "write trim too")
        yield from self._stated_problems() if self.stated else self._weighed_problems()

    def _stated_problems(self) -> Iterator[Problem]:
        """
        Loads that are stated are stated for all supports, and weights beside them would count
        twice.
        """
        if any(support.load is None for support in self.supports):
            yield unclear(
                self,
                "supports",
                "states the load of some supports only",
                "write load at every support, or at none",
            )
        if self.loads or self.weight or self.weight_in_all:
            yield unclear(
                self, "supports", "states loads at its supports beside weights", "keep one of them"
            )

    def _weighed_problems(self) -> Iterator[Problem]:
        """Weights are told once, and places where something must be worked out."""
        if not (self.loads or self.weight or self.weight_in_all):
            yield unclear(
                self,
                "name",
                "does not say what it weighs",
                "write load at each support, or weight and loads",
            )
        if self.weight and self.weight_in_all:
            yield unclear(self, "weight in all", "tells its own weight twice", "keep one of them")
        several = len(self.supports) > 1
        spread = self.weight_in_all is not None or any(
            load.at is None and load.from_ is None for load in self.loads
        )
        if self.length is None and (self.weight is not None or (several and spread)):
            yield unclear(
                self,
                "length",
                "needs a length, for a weight is spread over it",
                "write the length of the hang",
            )
        places = [support.at.m for support in self.supports if support.at is not None]
        if several and len(places) < len(self.supports):
            yield unclear(
                self,
                "supports",
                "does not say where along it each support is",
                "write at for every support",
            )
        elif any(second - first < LEAST_APART_M for first, second in pairwise(sorted(places))):
            yield unclear(
                self,
                "supports",
                "has two supports at one place",
                "write where along it each one is",
            )
        ends = [
            *places,
            *(
                end.m
                for load in self.loads
                for end in (load.at, load.from_, load.to)
                if end is not None
            ),
        ]
        if self.length is not None and any(end > self.length.m + OFF_END_M for end in ends):
            yield unclear(
                self, "length", "is shorter than a place on it", "count places from the first end"
            )
        if self.length is not None and self.length.m <= 0:
            yield unclear(self, "length", "is nothing", "leave it out for a hang at one place")


def unclear(record: Written, key: str, reason: str, advice: str) -> Problem:
    """A problem of a hang, at its key."""
    named = (
        getattr(record, "name", None)
        or getattr(record, "what", None)
        or getattr(record, "point", None)
        or "support"
    )
    return Problem(record.where(key), str(named), "", reason, CODE, advice)
