"""
What ``lines.yml`` says of permanent lines: kind and grade, both ends, ways that work and ways that
are free, and the path of the cable.
"""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from builder.reading.absent import Absent, listed
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.problems import Problem
from builder.reading.quantities import Length, Mass
from builder.reading.words import Count, Name, Text
from builder.reading.written import (
    Decisive,
    Line,
    Loose,
    Numbered,
    OfModel,
    Plausible,
    Rated,
    RefersTo,
    Written,
)

Kind = Literal["analogue", "copper data", "fibre", "coax", "DMX", "talkback", "loudspeaker"]
Signal = Literal[
    "analogue audio",
    "AES3",
    "AES50",
    "MADI",
    "1G ethernet",
    "10G ethernet",
    "HD-SDI",
    "3G-SDI",
    "word clock",
    "antenna",
    "DMX512",
    "talkback",
]
COPPER = ("category 5", "category 5e", "category 6", "category 6A", "category 7")
FIBRE = ("OM1", "OM2", "OM3", "OM4", "OM5", "OS1", "OS2")
COAX = ("RG-6 class", "RG-59 class", "50 ohm")
Grade = Literal[
    "category 5", "category 5e", "category 6", "category 6A", "category 7", "OM1", "OM2", "OM3", "OM4", "OM5", "OS1", "OS2", "RG-6 class",  # noqa: E501
    "RG-59 class", "50 ohm",
]  # fmt: skip
GRADES: dict[str, tuple[str, ...]] = {"copper data": COPPER, "fibre": FIBRE, "coax": COAX}
"""The grades that each kind can have; the other kinds have none."""


class End(Written):
    """One end of a line."""

    place: Annotated[Name, RefersTo("place")]
    """The place where it ends, from stage.yml."""
    panel: Maybe[Name] = Absent.NOT_STATED
    """The panel there and its label, as printed on it, such as P3."""
    connector: Maybe[Name] = Absent.NOT_STATED
    """The connector there, such as XLR female."""


BOTH_ENDS = 2
"""So many places has a line both of whose ends are known."""


class CableRamp(Loose):
    """Ramps that protect cables where they cross a way."""

    defines: ClassVar[str] = "cable ramp"
    name: Name
    """The model, or what they are called."""
    count: Annotated[Maybe[Count], Plausible(1, 500)] = Absent.NOT_STATED
    """How many there are."""
    channels: Annotated[Maybe[Count], Plausible(1, 8), OfModel()] = Absent.NOT_STATED
    """How many channels one has."""
    length: Annotated[Maybe[Length], Plausible(0.3, 3.0), OfModel()] = Absent.NOT_STATED
    """The length of one."""
    wheel_load: Annotated[Maybe[Mass], Rated(), Plausible(100.0, 20_000.0), OfModel()] = (
        Absent.NOT_STATED
    )
    """What one wheel on it may weigh."""


class PermanentLine(Line):
    """A permanent line, or a bundle of lines of one kind, between two places."""

    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"shared_with"})
    defines: ClassVar[str] = "line"
    name: Name
    """What the line is called, as on its label."""
    kind: Maybe[Kind]
    """Analogue, copper data, fibre, coax, DMX, talkback or loudspeaker."""
    grade: Maybe[Grade] = Absent.NOT_STATED
    """The category of copper data, the class of fibre, or the class of coax."""
    carries: tuple[Signal, ...] = ()
    """What the house sends over it or has tried. The length is held against the limit of each."""
    from_: Annotated[Maybe[End], Field(alias="from")]
    """The end that signals usually come from."""
    to: Maybe[End]
    """The other end."""
    ways: Annotated[Maybe[Count], Possible(1, 10_000), Plausible(1, 288)]
    """
    How many ways it has: pairs of a multicore, sockets of copper data, fibres or coax cables. Count
    a fibre pair as two fibres.
    """
    working: Annotated[Maybe[Count], Decisive()] = Absent.NOT_STATED
    """How many of them work. Left out, it is all ways but those named as dead, if any are named."""
    free: Annotated[Maybe[Count], Decisive()] = Absent.NOT_STATED
    """How many of the working ways a visitor finds free, the house's own use taken off."""
    dead: Annotated[Maybe[tuple[Count, ...]], Numbered()] = ()
    """The numbers of the ways that do not work, as printed on the panel."""
    path: Annotated[Maybe[Length], Plausible(1.0, 1_000.0), Decisive()] = Absent.NOT_STATED
    """The length of the cable along the way it goes. It is not the distance."""
    shared_with: Annotated[tuple[Name, ...], RefersTo("line")] = ()
    """Other lines on the same cores: plug one of them, never both."""
    used_for: Maybe[Text] = Absent.NOT_STATED
    """What the house itself uses of it."""

    @property
    def from_place(self) -> str | None:
        """Where signals usually come from; None where nobody knows."""
        return None if isinstance(self.from_, Absent) else self.from_.place

    @property
    def to_place(self) -> str | None:
        """Where it ends; None where nobody knows."""
        return None if isinstance(self.to, Absent) else self.to.place

    @property
    def places(self) -> tuple[str, ...]:
        """The places of its ends that are known."""
        return tuple(place for place in (self.from_place, self.to_place) if place is not None)

    @property
    def dead_ways(self) -> tuple[int, ...]:
        """The ways that are named as dead."""
        return listed(self.dead)

    def contradictions(self) -> Iterator[Problem]:
        """Counts, ends and grade that cannot all be true."""
        yield from self._miscounted()
        yield from self._misplaced()

    def _miscounted(self) -> Iterator[Problem]:
        if isinstance(self.ways, Absent):
            return
        beyond = [way for way in self.dead_ways if not 1 <= way <= self.ways]
        for way in beyond:
            reason = f"is not a way of {self.name}, which has {self.ways}"
            yield Problem(
                self.where("dead"),
                "dead",
                str(way),
                reason,
                "way-unknown",
                f"number them 1 to {self.ways}, as on the panel",
            )
        if not isinstance(self.working, int):
            return
        if self.working > self.ways:
            reason, advice = (
                f"is more than the {self.ways} ways of {self.name}",
                "count those that work among all there are",
            )
            yield Problem(
                self.where("working"),
                "working",
                str(self.working),
                reason,
                "working-exceeds-count",
                advice,
            )
        elif not beyond and self.working > self.ways - len(set(self.dead_ways)):
            dead = len(set(self.dead_ways))
            reason = (
                f"is too many for {self.name}: {dead} of its {self.ways} ways are named as dead"
            )
            yield Problem(
                self.where("working"),
                "working",
                str(self.working),
                reason,
                "dead-way-counted",
                "leave the dead ways out of the count",
            )

    def _misplaced(self) -> Iterator[Problem]:
        if not isinstance(self.to, Absent) and self.from_place == self.to.place:
            reason = f"is both ends of {self.name}"
            yield Problem(
                self.to.where("place"),
                "to.place",
                self.to.place,
                reason,
                "line-to-itself",
                "a line runs between two places",
            )
        if isinstance(self.kind, Absent):
            return
        known = GRADES.get(self.kind, ())
        if isinstance(self.grade, str) and self.grade not in known:
            advice = f"write one of: {', '.join(known)}" if known else "leave the grade out"
            yield Problem(
                self.where("grade"),
                "grade",
                self.grade,
                f"is not a grade of {self.kind}",
                "grade-of-other-kind",
                advice,
            )
