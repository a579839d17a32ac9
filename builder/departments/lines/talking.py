"""What ``lines.yml`` says of talkback and of networks."""

from typing import Annotated, ClassVar, Literal

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.quantities import DataRate
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import Decisive, Line, Plausible, RefersTo


class TalkbackChannel(Line):
    """A channel that people talk on."""

    defines: ClassVar[str] = "talkback channel"
    name: Name
    """Its name, as on the stations."""
    used_by: Maybe[Text] = Absent.NOT_STATED
    """Who is on it."""


class TalkbackStation(Line):
    """Stations or sockets of talkback at one place."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"working"})
    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"channels"})
    place: Annotated[Maybe[Name], RefersTo("place")] = Absent.NOT_STATED
    """Where they are. Left out where they go with people."""
    kind: Maybe[
        Literal[
            "belt pack", "desk station", "wall station", "handset", "socket", "loudspeaker station"
        ]
    ]
    """Belt pack, desk station, wall station, handset, socket or loudspeaker station."""
    count: Annotated[Maybe[Count], Plausible(0, 100)]
    """How many there are."""
    working: Maybe[Count] = Absent.NOT_STATED
    """How many of them work. Left out, all do."""
    channels: Annotated[tuple[Name, ...], RefersTo("talkback channel")] = ()
    """The channels they have."""
    connector: Maybe[Name] = Absent.NOT_STATED
    """The connector, such as XLR 3-pin."""
    wired: Maybe[YesNo] = Absent.NOT_STATED
    """Whether they are wired, and not by radio."""

    @property
    def spot(self) -> str:
        """Where they are, in words."""
        return self.place if isinstance(self.place, str) else "no fixed place"


class Network(Line):
    """A network of the house. Never write a password here: everything in this file is published."""

    defines: ClassVar[str] = "network"
    name: Name
    """What it is called."""
    used_for: Maybe[Text] = Absent.NOT_STATED
    """What runs on it."""
    owner: Annotated[Maybe[Name], Decisive()] = Absent.NOT_STATED
    """Who owns it and says what may be plugged in, by role."""
    wired_rate: Annotated[Maybe[DataRate], Plausible(1e6, 4e11)] = Absent.NOT_STATED
    """The rate of its sockets, such as 1 Gbit/s."""
    internet_down: Annotated[Maybe[DataRate], Plausible(1e6, 1e11)] = Absent.NOT_STATED
    """The rate from the internet by cable. None where it does not reach the internet."""
    internet_up: Annotated[Maybe[DataRate], Plausible(5e5, 1e11)] = Absent.NOT_STATED
    """The rate to the internet by cable."""
    at: Annotated[tuple[Name, ...], RefersTo("place")] = ()
    """The places that have sockets of it."""
    connector: Maybe[Name] = Absent.NOT_STATED
    """The connector of its sockets."""
    wireless: Maybe[Text] = Absent.NOT_STATED
    """Whether there is a wireless side, and where to ask for the password."""
    asks: Maybe[Text] = Absent.NOT_STATED
    """What a visitor asks for, of whom and how long before, such as an address range."""
