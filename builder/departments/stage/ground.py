"""``ground`` of ``stage.yml``: the open ground that a stage stands on, and what is around it."""

from typing import Annotated, ClassVar, Literal

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.quantities import Duration, Length, TimeOfDay
from builder.reading.words import Count, Name, Text
from builder.reading.written import Line, Plausible, Rated, Written

Compass = Literal[
    "north",
    "north-east",
    "east",
    "south-east",
    "south",
    "south-west",
    "west",
    "north-west",
]


class Buried(Written):
    """Something under the ground that nobody may drive a stake into."""

    what: Name
    """What it is, such as old drains."""
    count: Annotated[Maybe[Count], Plausible(1, 100)] = Absent.NOT_STATED
    """How many there are."""
    located: Annotated[Maybe[Count], Plausible(0, 100)] = Absent.NOT_STATED
    """Of how many of them the house knows where they are."""


class OpenGround(Line):
    """The field, square or yard that a stage stands on."""

    public_because: ClassVar[str] = "shows plan loads, stakes and shade by it"
    length: Annotated[Maybe[Length], Plausible(10.0, 2_000.0)] = Absent.NOT_STATED
    """How long it is."""
    width: Annotated[Maybe[Length], Plausible(5.0, 2_000.0)] = Absent.NOT_STATED
    """How wide it is."""
    stage_at: Maybe[Compass] = Absent.NOT_STATED
    """At which end of it the stage stands."""
    stage_faces: Maybe[Compass] = Absent.NOT_STATED
    """Which way the stage looks into the audience."""
    far_end: Annotated[Maybe[Length], Possible(-200.0, 200.0), Plausible(-20.0, 20.0)] = (
        Absent.NOT_STATED
    )
    """How far the far end lies above the ground at the stage; with a minus, below it."""
    soil: Maybe[Text] = Absent.NOT_STATED
    """What it is made of."""
    soft_after_rain: Annotated[Maybe[Duration], Plausible(3_600.0, 2_592_000.0)] = Absent.NOT_STATED
    """How long it stays soft after rain."""
    stakes_up_to: Annotated[Maybe[Length], Rated(), Plausible(0.05, 3.0)] = Absent.NOT_STATED
    """How deep a stake may go; none where no stake may."""
    buried: tuple[Buried, ...] = ()
    """What lies under it."""
    shade_from: Text | None = None
    """What gives shade on the stage, such as trees on the east side."""
    shade_until: TimeOfDay | None = None
    """Until about what time of day the stage is in that shade."""
