"""What ``house.yml`` says of seats: blocks, where wheelchairs go, which rows come out."""

from typing import Annotated, ClassVar, Literal

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.money import Amount
from builder.reading.possible import Possible
from builder.reading.quantities import Duration
from builder.reading.words import Count, Name, YesNo
from builder.reading.written import Line, Plausible, Written


class Block(Written):
    """A part of the audience that is counted by itself."""

    name: Name
    """The name of the block, such as balcony."""
    places: Annotated[Maybe[Count], Plausible(1, 60_000)] = Absent.NOT_STATED
    """How many persons it holds."""
    numbered: YesNo | None = None
    """Whether its seats have numbers."""
    boxes: Name | None = None
    """Its boxes, where it has any, such as A to H."""


class Seats(Written):
    """Seats of one row, from one number to another."""

    row: Name
    """The row."""
    first: Name
    """The number of the first seat."""
    last: Name
    """The number of the last."""


class SeatsOut(Line):
    """Seats that can be taken out, or that something of a show takes."""

    public_because: ClassVar[str] = "shows are sold by it"
    name: Name
    """Which they are, such as the rows on the pit lift."""
    rows: tuple[Name, ...] = ()
    """The rows."""
    rows_in_all: Annotated[Maybe[Count], Plausible(1, 200)] = Absent.NOT_STATED
    """How many rows there are, where they are not named one by one."""
    places: Annotated[Maybe[Count], Plausible(1, 5_000)] = Absent.NOT_STATED
    """How many places are lost without them."""
    together: Maybe[YesNo] = Absent.NOT_STATED
    """Whether they come out all together or not at all."""
    makes_room_for: Maybe[
        Literal[
            "pit",
            "stage extension",
            "flat floor",
            "mix position",
            "cameras",
            "wheelchairs",
            "other",
        ]
    ] = Absent.NOT_STATED
    """What they make room for: the pit, an extension of the stage, a mix position and so on."""
    persons: Annotated[Maybe[Count], Plausible(1, 100)] = Absent.NOT_STATED
    """How many persons it takes to take them out or put them back."""
    takes: Annotated[
        Maybe[Duration], Possible.above(0.0, 604_800.0), Plausible(60.0, 172_800.0)
    ] = Absent.NOT_STATED
    """How long those take."""
    costs: Maybe[Amount] = Absent.NOT_STATED
    """What one change costs a show, with its currency, such as £180."""
