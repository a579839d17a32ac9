"""
What ``sound.yml`` says of loose stock: radio with its bands, microphones, direct boxes and stands.
"""

from typing import Annotated, ClassVar, Literal

from pydantic import model_validator

from builder.reading.absent import Absent
from builder.reading.in_service import checked_working
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.quantities import Angle, Duration, Frequency, Length
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import (
    Decisive,
    Line,
    Loose,
    OfModel,
    Plausible,
    RefersTo,
    Written,
)


class Band(Written):
    """A stretch of spectrum."""

    low: Annotated[Frequency, Plausible(20e6, 6e9)]
    """Its lower end, such as 470 MHz."""
    high: Annotated[Frequency, Plausible(20e6, 6e9)]
    """Its upper end, such as 534 MHz."""


class Radio(Loose):
    """A radio system of the house: what it is, where it tunes and what it is on."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"working"})
    public_because: ClassVar[str] = "a show's own radio has to keep clear of it"
    defines: ClassVar[str] = "radio system"
    name: Name
    """The model, or what it is for."""
    kind: Maybe[
        Literal[
            "microphone",
            "in-ear",
            "intercom",
            "hearing assistance",
            "production radio",
            "video",
            "control",
        ]
    ]
    """Microphone, in-ear, intercom, hearing assistance, production radio, video or control."""
    channels: Annotated[Maybe[Count], Plausible(1, 64)]
    """How many channels."""
    working: Maybe[Count] = Absent.NOT_STATED
    """How many of them work. Left out, all do."""
    handhelds: Annotated[Maybe[Count], Plausible(0, 64), OfModel()] = Absent.NOT_STATED
    """How many hand-held transmitters there are."""
    belt_packs: Annotated[Maybe[Count], Plausible(0, 64), OfModel()] = Absent.NOT_STATED
    """How many belt packs there are."""
    tunes: Annotated[Band | None, OfModel()] = None
    """The stretch of spectrum it can be tuned over."""
    on: Annotated[tuple[Frequency, ...], Plausible(20e6, 6e9), OfModel()] = ()
    """The frequencies it is set to, each in MHz."""
    used: Maybe[Text] = Absent.NOT_STATED
    """When it is on: always, or on which days."""
    can_move: Maybe[Text] = Absent.NOT_STATED
    """Whether it can be retuned or switched off for a show."""

    @model_validator(mode="after")
    def _working_of_channels(self) -> "Radio":
        checked_working(self.channels, self.working)
        return self


class Spectrum(Line):
    """What a visiting radio coordinator must know."""

    public_because: ClassVar[str] = "a show has to keep to it"
    coordinator: Annotated[Maybe[Text], Decisive()] = Absent.NOT_STATED
    """Who coordinates frequencies here, by role."""
    list_due: Annotated[Maybe[Duration], Plausible(3600.0, 60 * 86_400.0)] = Absent.NOT_STATED
    """How long before the show the visitor's list must be there."""
    licence: Maybe[Text] = Absent.NOT_STATED
    """Who licenses, and how the house helps. The regulator decides, not this page."""
    channel_width: Annotated[Maybe[Frequency], Plausible(5e6, 9e6)] = Absent.NOT_STATED
    """The width of a television channel here: 6, 7 or 8 MHz."""
    television: tuple[Band, ...] = ()
    """Stretches taken by television, as the house finds them."""
    television_channels: tuple[Count, ...] = ()
    """The numbers of the channels that television takes, where nobody tells them in MHz."""
    neighbours: Maybe[Text] = Absent.NOT_STATED
    """Others near by who transmit."""
    antennas: Maybe[Text] = Absent.NOT_STATED
    """Where antennas may stand, and the lines there."""


class Boxes(Loose):
    """
    Loudspeakers of the house system, told without their places or figures, as stock. What can be
    drawn and counted on stands under hangs, subs and fills.
    """

    defines: ClassVar[str] = "boxes"
    name: Name
    """What they are, such as main boxes."""
    use: Maybe[Literal["main", "sub", "fill", "delay"]] = Absent.NOT_STATED
    """Main, sub, fill or delay."""
    count: Annotated[Maybe[Count], Plausible(1, 500)] = Absent.NOT_STATED
    """How many there are in all."""
    working: Maybe[Count] = Absent.NOT_STATED
    """How many of them work."""
    a_side: Annotated[Maybe[Count], Plausible(1, 60)] = Absent.NOT_STATED
    """How many stand on each side."""
    stand: Maybe[
        Literal[
            "on a stand",
            "on the deck",
            "on the stage edge",
            "on the proscenium",
            "on the floor",
            "in the pit",
            "under the mains",
            "under the balcony",
            "flown",
        ]
    ] = Absent.NOT_STATED
    """
    On a stand, on the deck, on the stage edge, on the proscenium, on the floor, in the pit, under
    the mains, under the balcony, or flown.
    """
    own_drive: Maybe[YesNo] = Absent.NOT_STATED
    """Whether they can be fed by themselves."""
    make: Annotated[Maybe[Name], OfModel()] = Absent.NOT_STATED
    """Make and type."""
    apart: Annotated[Maybe[Length], Plausible(2.0, 60.0)] = Absent.NOT_STATED
    """How far it is from the left to the right."""
    splay: Annotated[Maybe[Angle], Possible(0.0, 180.0), Plausible(0.0, 90.0)] = Absent.NOT_STATED
    """The angle between the boxes of a side."""
    splayed: Maybe[YesNo] = Absent.NOT_STATED
    """Whether the boxes of a side are turned apart, where nobody measured how far."""
    altered: Annotated[Maybe[Count], Plausible(0, 500)] = Absent.NOT_STATED
    """How many of them were repaired with other parts or sound otherwise: say how in the note."""
    away_when: Text | None = None
    """When they are taken away, such as while the pit is open."""
    driven: Annotated[
        Maybe[Literal["self-powered", "full range", "bi-amped", "tri-amped"]], OfModel()
    ] = Absent.NOT_STATED
    """Self-powered, full range, bi-amped or tri-amped."""

    @model_validator(mode="after")
    def _working_of_count(self) -> "Boxes":
        checked_working(self.count, self.working)
        return self


class Feed(Line):
    """Lines that leave a desk for others: recording, broadcast, the hearing loop."""

    defines: ClassVar[str] = "feed"
    name: Name
    """What it is for."""
    count: Annotated[Maybe[Count], Plausible(1, 64)] = Absent.NOT_STATED
    """How many lines."""
    level: Maybe[Literal["line", "microphone", "loudspeaker", "AES3", "network"]] = (
        Absent.NOT_STATED
    )
    """Line, microphone, loudspeaker, AES3 or network."""
    what: Text | None = None
    """What is on them, such as left and right."""
    place: Annotated[Maybe[Name], RefersTo("place")] = Absent.NOT_STATED
    """The place where they are."""


class Stock(Loose):
    """A line of microphones, direct boxes, stands or the like."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"working"})
    defines: ClassVar[str] = "sound stock"
    name: Name
    """The model, or what it is."""
    kind: Maybe[Literal["microphone", "direct box", "stand", "cable", "other"]] = Absent.NOT_STATED
    """Microphone, direct box, stand, cable or other."""
    use: Annotated[Maybe[Name], OfModel()] = Absent.NOT_STATED
    """The class it belongs to, such as vocal dynamic, drum, condenser, active, tall boom."""
    count: Annotated[Maybe[Count], Plausible(0, 2000)] = Absent.NOT_STATED
    """How many there are."""
    working: Maybe[Count] = Absent.NOT_STATED
    """How many of them work. Left out, all do."""

    @model_validator(mode="after")
    def _working_of_count(self) -> "Stock":
        checked_working(self.count, self.working)
        return self


class HearingHelp(Line):
    """What helps people who hear less: a loop, infrared or radio with receivers."""

    defines: ClassVar[str] = "hearing help"
    name: Name
    """What it is called here."""
    kind: Maybe[Literal["infrared", "radio", "loop", "network", "other"]] = Absent.NOT_STATED
    """Infrared, radio, an induction loop, by the network, or other."""
    receivers: Annotated[Maybe[Count], Plausible(1, 2_000)] = Absent.NOT_STATED
    """How many receivers there are, or none where people use their own."""
    covers: tuple[Name, ...] = ()
    """The parts of the audience that it reaches, such as the retractable seats."""
    not_covered: tuple[Name, ...] = ()
    """The parts that it does not reach, such as the balcony."""
    handed_out_at: Maybe[Name] = Absent.NOT_STATED
    """Where they are handed out."""
