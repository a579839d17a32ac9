"""``hangs`` of a rider: what the show flies, where it is picked up, and what it weighs."""

from typing import Annotated, Literal

from pydantic import Field

from builder.reading.possible import Possible
from builder.reading.quantities import Across, Depth, Height, Length, LoadPerLength, Mass, Percent
from builder.reading.words import Count, Name, Text
from builder.reading.written import Written
from builder.rider.one_need import OneNeed

Along = Annotated[Length, Possible(0.0, 10_000.0)]
"""A length that may be nothing, such as a place along a hang, at its first end."""
Several = Annotated[Count, Possible(1, 1_000_000)]
"""How many there are of what is there at all."""


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
    at: Along | None = None
    """
    Where along the hang, counted from its first end. Needed for two supports or more whose loads
    are worked out.
    """
    load: Annotated[Mass, Possible(0.0, 1e7)] | None = None
    """The load that comes on it, where the show's plot states it. Then nothing is worked out."""


class Hanging(Written):
    """A load on a hang. Without a place it is spread over the whole length."""

    what: Name
    """What it is."""
    count: Several = 1
    """How many of them."""
    weight: Mass
    """The weight of one, with its clamp and cable."""
    at: Along | None = None
    """Where along the hang, counted from its first end, where it is one place."""
    from_: Along | None = Field(default=None, alias="from")
    """Where a spread load begins."""
    to: Along | None = None
    """Where a spread load ends."""


class Hang(Written):
    """Something that the show flies: a truss, a bar, a loudspeaker hang, a drape."""

    name: Name
    """The name of the hang, as on the show's plot."""
    supports: tuple[Support, ...]
    """Where it is picked up, at most 12."""
    length: Along | None = None
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
    held_within: Annotated[Percent, Possible(0.0, 1.0)] | None = Field(
        default=None, alias="held within"
    )
    """
    With a load cell on every support, read by somebody who stops the hoists: by how much one may go
    beyond its level load, such as 10 %. Then that counts in place of supports that hang slack.
    """
    trim: Height | None = None
    """How high above the deck its underside should go."""
    below_steel: Along | None = Field(default=None, alias="below steel")
    """From low steel to the underside with the hoists run up: hoist, slings and truss."""
    if_: OneNeed | None = Field(default=None, alias="if")
    """It counts only where the house meets this."""
    unless: OneNeed | None = None
    """It counts only where the house does not meet this."""
    strictness: Literal["must", "should"] = "must"
    """Must, or should where the show can live without."""
    note: Text | None = None
    """What the house should know, in a sentence."""
