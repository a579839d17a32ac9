"""
What ``lines.yml`` says of the way from each console to the house system: positions, switchers, and
the order of hand-over.
"""

from typing import Annotated, ClassVar, Literal

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import Decisive, InConfigurations, Line, Plausible, RefersTo

Format = Literal["analogue", "AES3", "AES50", "AES67", "MADI", "other network"]


class Switcher(Line):
    """What chooses which console is heard."""

    defines: ClassVar[str] = "switcher"
    name: Name
    """What it is called."""
    place: Annotated[Name, RefersTo("place")]
    """Where it stands."""
    inputs: Annotated[Maybe[Count], Possible(1, 10_000), Plausible(1, 32)]
    """How many consoles it takes, each on an input of its own."""
    ways: Annotated[Maybe[Count], Plausible(1, 64)] = Absent.NOT_STATED
    """How many ways each input has, such as 8 for left, right, subs and five more."""
    formats: Annotated[tuple[Format, ...], Decisive()] = ()
    """What it takes: analogue, AES3, AES50, AES67, MADI or other network."""
    converts: YesNo | None = None
    """
    Whether it changes one format into another, such as AES3 in and analogue out. Left out, nobody
    has said.
    """
    goes_on_by: Annotated[Maybe[Name], RefersTo("line")] = Absent.NOT_STATED
    """The line by which it goes on to the house system."""
    switched_by: Maybe[Text] = Absent.NOT_STATED
    """Who switches, and from where."""
    change: Maybe[Text] = Absent.NOT_STATED
    """What is heard when it switches: a fade, a mute, a click."""
    if_it_fails: Maybe[Text] = Absent.NOT_STATED
    """What it does without power, and what to do then."""


class ConsolePosition(InConfigurations):
    """A place where a console stands, and how it drives the house system."""

    defines: ClassVar[str] = "console position"
    name: Name
    """What the position is called, such as visitor's console."""
    place: Annotated[Name, RefersTo("place")]
    """Where it is."""
    sends: Annotated[tuple[Format, ...], Decisive()] = ()
    """The formats it can send from here, best first."""
    ways: Annotated[Maybe[Count], Plausible(1, 64)] = Absent.NOT_STATED
    """How many ways are there to plug into; none where its plugs are those of its lines."""
    by: Annotated[Maybe[tuple[Name, ...]], RefersTo("line"), Decisive()] = Absent.NOT_STATED
    """The lines it sends by. None where there is none."""
    switcher: Annotated[Maybe[Name], RefersTo("switcher")] = Absent.NOT_STATED
    """The switcher it comes in on, or none."""
    input: Maybe[Count] = Absent.NOT_STATED
    """The input of the switcher."""
    reaches: Annotated[tuple[Name, ...], RefersTo("drive line")] = ()
    """Which drive lines of sound.yml it reaches. Left out, all of them."""


class HandOver(Line):
    """One turn on a show with several consoles. Write them in order."""

    console: Annotated[Name, RefersTo("console position")]
    """The position that is heard."""
    when: Text
    """From when, such as from doors."""
    before: Maybe[Text] = Absent.NOT_STATED
    """What is done before it is heard, and by whom."""
