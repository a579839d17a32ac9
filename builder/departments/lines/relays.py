"""What ``lines.yml`` says of signs to people: cue lights, and what is relayed backstage."""

from typing import Annotated, ClassVar, Literal

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.words import Count, Name, YesNo
from builder.reading.written import Line, Plausible, RefersTo


class CueLights(Line):
    """Lights that tell somebody when to go, worked from one place."""

    name: Name
    """What they are called here."""
    count: Annotated[Maybe[Count], Plausible(1, 60)] = Absent.NOT_STATED
    """How many lights, or lines for them, there are."""
    worked_from: Maybe[Name] = Absent.NOT_STATED
    """What they are worked from, such as the stage manager's desk."""
    place: Annotated[Maybe[Name], RefersTo("place")] = Absent.NOT_STATED
    """The place where that stands."""


class Relay(Line):
    """What is heard or seen of the stage in other rooms."""

    defines: ClassVar[str] = "relay"
    name: Name
    """What it is called here."""
    kind: Maybe[Literal["audio", "video"]] = Absent.NOT_STATED
    """Audio or video."""
    everywhere: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it reaches all rooms backstage."""
    rooms: tuple[Name, ...] = ()
    """The rooms it reaches, where it is not all of them."""
