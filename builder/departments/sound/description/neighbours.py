"""What ``sound.yml`` says of those who hear the show from outside."""

from typing import Annotated, ClassVar, Literal

from builder.departments.sound.description.loudspeakers import At
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.quantities import Across, Depth, Height, Length, Level
from builder.reading.words import Name
from builder.reading.written import Line, Plausible, Written


class Between(Written):
    """What the ground is made of on the way."""

    stage: Literal["hard", "mixed", "porous"]
    """
    Around the stage: hard (asphalt, rock, water, trodden earth), porous (grass, fields, woods) or
    mixed.
    """
    middle: Literal["hard", "mixed", "porous"]
    """On most of the way."""
    receiver: Literal["hard", "mixed", "porous"]
    """Around the receiver."""


class Outside(At):
    """A position outside, which may be far from the stage."""

    across: Annotated[Across, Plausible(-5_000.0, 5_000.0)]
    """Distance from the centre line, such as 120 m SL."""
    depth: Annotated[Depth, Plausible(-5_000.0, 5_000.0)]
    """Distance from the reference line, such as 240 m DS."""
    height: Annotated[Height, Plausible(-200.0, 200.0)]
    """Height above the deck, such as 1.5 m up, or 4 m down."""


class Neighbour(Line):
    """A place outside where the level matters, in sight of the stage."""

    defines: ClassVar[str] = "neighbour"
    name: Name
    """What the place is called."""
    at: Maybe[Outside]
    """Where the ears or the microphone are."""
    above_ground: Annotated[Maybe[Length], Possible(0.0, 1_000.0), Plausible(0.5, 60.0)]
    """How high that is above the ground there."""
    ground: Maybe[Between]
    """What the ground is made of on the way."""
    mix_level: Annotated[Maybe[Level], Possible(0.0, 194.0), Plausible(70.0, 120.0)]
    """The A-weighted equivalent level at the mix position that the level there is wanted for."""
    limit: Name | None = None
    """The limit that holds there, by its name in house.yml."""
