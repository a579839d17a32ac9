"""``lifts`` of ``stage.yml``: parts of the floor that go up and down."""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.problems import Problem
from builder.reading.quantities import Length, LoadPerArea, Speed
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import Decisive, Line, Plausible, Rated

Stop = Literal["below the pit", "pit", "audience floor", "stage", "above the stage", "other"]
Load = Annotated[Maybe[LoadPerArea], Rated(), Possible(0.0, 1e7), Plausible(500.0, 50_000.0)]


class StageLift(Line):
    """A part of the floor that moves: a pit lift, a lift in the stage, a rising extension."""

    public_because: ClassVar[str] = "shows stand on it"
    defines: ClassVar[str] = "stage lift"
    name: Name
    """What it is called here."""
    kind: Maybe[Literal["pit", "stage", "extension", "other"]] = Absent.NOT_STATED
    """Of the pit, in the stage, an extension of it, or other."""
    width: Annotated[Maybe[Length], Plausible(0.5, 40.0)] = Absent.NOT_STATED
    """The width of its platform."""
    depth: Annotated[Maybe[Length], Plausible(0.5, 30.0)] = Absent.NOT_STATED
    """The depth of its platform."""
    curved: Maybe[YesNo] = Absent.NOT_STATED
    """Whether an edge of it is curved, so that width and depth are its largest."""
    load_moving: Annotated[Load, Decisive()] = Absent.NOT_STATED
    """The uniform load it carries while it moves."""
    load_locked: Annotated[Load, Decisive()] = Absent.NOT_STATED
    """The uniform load it carries standing, locked."""
    speed: Annotated[Maybe[Speed], Plausible(0.005, 0.5)] = Absent.NOT_STATED
    """How fast it moves."""
    persons: Annotated[Maybe[Count], Plausible(1, 6)] = Absent.NOT_STATED
    """How many persons it takes to move it."""
    keys_needed: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it moves with keys only, which somebody of the house holds."""
    stops: tuple[Stop, ...] = ()
    """The levels it stops at, from the lowest up."""
    lowest: Annotated[Maybe[Length], Possible(0.0, 50.0), Plausible(0.3, 15.0)] = Absent.NOT_STATED
    """How far below the stage it lies at its lowest."""
    worked_by: Maybe[Text] = Absent.NOT_STATED
    """Who may work it."""
    rail: Annotated[Maybe[Length], Plausible(0.03, 1.5)] = Absent.NOT_STATED
    """
    The height of the rail or kerb that stands along its edge when it is down; none where none does.
    """
    rail_comes_off: Maybe[YesNo] = Absent.NOT_STATED
    """Whether that rail can be taken away."""
    never_on_it: tuple[Name, ...] = ()
    """What must not ride on it while it moves, such as a piano."""

    def contradictions(self) -> Iterator[Problem]:
        """A lift that moves has more than one level, each told once."""
        twice = len(set(self.stops)) < len(self.stops)
        if self.stops and (twice or len(self.stops) < 2):
            yield Problem(
                self.where("stops"),
                f"{self.name}.stops",
                ", ".join(self.stops),
                "tells a level twice" if twice else "is one level, and a lift has two at least",
                "lift-levels",
                "write each level that it stops at once",
            )
