"""
``distances`` of ``stage.yml``: how far it is from one line of the stage to another, and which of
them do not add up.
"""

from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from builder.pack import Finding, Level
from builder.reading.absent import Absent
from builder.reading.in_part import as_written, ends_of
from builder.reading.maybe import Maybe
from builder.reading.measures import System, shown
from builder.reading.possible import Possible
from builder.reading.problems import Problem
from builder.reading.quantities import Length
from builder.reading.written import Line, Plausible
from builder.stating import place

StageLine = Literal[
    "mix position",
    "first row",
    "barrier",
    "pit wall",
    "edge of stage",
    "upstage edge",
    "house face of the arch",
    "stage face of the arch",
    "plaster line",
    "curtain line",
    "setting line",
    "first line set",
    "last line set",
    "cyclorama",
    "back wall",
    "centre line",
    "stage right wall",
    "stage left wall",
]
UPSTAGE: tuple[StageLine, ...] = (
    "mix position",
    "first row",
    "edge of stage",
    "curtain line",
    "first line set",
    "last line set",
    "back wall",
)
"""Lines that lie in this order in every house with an arch, from the audience to the back wall."""
ROUNDING_M = 0.0127
"""Half an inch for each distance (common practice, no source)."""


class Distance(Line):
    """How far it is from one line of the stage to another."""

    from_: Annotated[StageLine, Field(alias="from")]
    """The line that it is measured from."""
    to: StageLine
    """The line that it is measured to."""
    length: Annotated[Maybe[Length], Possible(0.0, 1_000.0), Plausible(0.1, 100.0)] = (
        Absent.NOT_STATED
    )
    """How far it is."""
    at: Maybe[Literal["centre", "stage left", "stage right", "at its widest"]] = Absent.NOT_STATED
    """Where it is measured, where that matters: along a curved edge it differs."""

    public_because: ClassVar[str] = "shows are planned by it"

    @property
    def name(self) -> str:
        """What is measured, in words."""
        return f"{self.from_} to {self.to}"

    def contradictions(self) -> Iterator[Problem]:
        """A line is nowhere from itself."""
        if self.from_ == self.to:
            yield Problem(
                self.where("to"),
                self.name,
                self.to,
                "is the line that it is measured from",
                "distance-from-itself",
                "name the other line",
            )


def open_distances(distances: Sequence[Distance], system: System) -> Iterator[Finding]:
    """
    Three distances between three lines in a row of which two do not make up the third.

    Known in part, they are held against each other by their ends.
    """
    told = {
        (UPSTAGE.index(low), UPSTAGE.index(high)): distance
        for distance in distances
        for low, high in [sorted_ends(distance)]
        if low in UPSTAGE and high in UPSTAGE
    }
    for first, middle, last in combinations(range(len(UPSTAGE)), 3):
        near, far, whole = (
            told.get(pair) for pair in ((first, middle), (middle, last), (first, last))
        )
        if near and far and whole:
            yield from does_not_close((near, far), whole, system)


def sorted_ends(distance: Distance) -> tuple[StageLine, StageLine]:
    """The two lines of a distance, the one nearer to the audience first where that is known."""
    ends = (distance.from_, distance.to)
    if all(end in UPSTAGE for end in ends) and UPSTAGE.index(ends[0]) > UPSTAGE.index(ends[1]):
        return ends[1], ends[0]
    return ends


def does_not_close(parts: Sequence[Distance], whole: Distance, system: System) -> Iterator[Finding]:
    """The finding where two distances in a row can not make up the whole."""
    ends = [ends_of(each.length) for each in (*parts, whole)]
    if any(low is None or high is None for low, high in ends):
        return
    lows = [low.m for low, _ in ends if low is not None]
    highs = [high.m for _, high in ends if high is not None]
    slack_m = 3 * ROUNDING_M
    if lows[0] + lows[1] <= highs[2] + slack_m and lows[2] <= highs[0] + highs[1] + slack_m:
        return
    added = " + ".join(as_written(each.length) for each in parts)
    found = shown(Length, (lows[0] + lows[1] + highs[0] + highs[1]) / 2, 2, system)[0]
    sentence = (
        f"{whole.name}: {parts[0].name} and {parts[1].name}, {added}, make {found}, but"
        f" {as_written(whole.length)} is stated. Which one is right?"
    )
    yield Finding(Level.CAUTION, "chain-open", sentence, place=place(whole.where("length")))
