"""``lines.yml``: permanent lines from place to place, the drive plan, talkback and networks."""

from collections.abc import Iterator
from typing import Annotated

from builder.departments.lines.cables import CableRamp, Kind, PermanentLine
from builder.departments.lines.driving import ConsolePosition, HandOver, Switcher
from builder.departments.lines.relays import CueLights, Relay
from builder.departments.lines.talking import Network, TalkbackChannel, TalkbackStation
from builder.reading.absent import Absent, listed
from builder.reading.maybe import Maybe
from builder.reading.problems import Problem
from builder.reading.words import Count, Text
from builder.reading.written import Decisive, DepartmentFile, Plausible


class Lines(DepartmentFile):
    """Permanent lines, the drive plan, talkback and networks."""

    labels: Maybe[Text] = Absent.NOT_STATED
    """How panels and ways are numbered and labelled here."""
    patching: Maybe[Text] = Absent.NOT_STATED
    """Who may patch, and whom to ask."""
    lines: Annotated[Maybe[tuple[PermanentLine, ...]], Decisive()] = Absent.NOT_STATED
    """The permanent lines, or none."""
    has_no: tuple[Kind, ...] = ()
    """Kinds of line that there are nowhere in the house, such as fibre."""
    cable_ramps: Maybe[tuple[CableRamp, ...]] = Absent.NOT_STATED
    """Ramps in stock that protect cables where they cross a way, or none."""
    ramps_needed: Maybe[Text] = Absent.NOT_STATED
    """Where a show's lines need ramps."""
    crossings: Annotated[Maybe[Count], Plausible(1, 200)] = Absent.NOT_STATED
    """How many ways a show's lines cross, so that one can count the ramps."""
    switchers: tuple[Switcher, ...] = ()
    """What chooses which console is heard."""
    consoles: Annotated[Maybe[tuple[ConsolePosition, ...]], Decisive()] = Absent.NOT_STATED
    """
    The console positions, and how each drives the house system. The mix position first: the home
    page counts the lines from the stage to it.
    """
    hand_over: tuple[HandOver, ...] = ()
    """The order in which consoles are heard on a show with several."""
    talkback_system: Maybe[Text] = Absent.NOT_STATED
    """What the talkback is: wired or not, two or four wires, who hands out belt packs."""
    talkback_channels: Annotated[Maybe[tuple[TalkbackChannel, ...]], Decisive()] = Absent.NOT_STATED
    """The channels people talk on, or none."""
    talkback_stations: tuple[TalkbackStation, ...] = ()
    """Stations and sockets by place."""
    cue_lights: Maybe[tuple[CueLights, ...]] = Absent.NOT_STATED
    """Cue lights, or none."""
    relays: Maybe[tuple[Relay, ...]] = Absent.NOT_STATED
    """What is heard or seen of the stage in other rooms, or none."""
    networks: Annotated[Maybe[tuple[Network, ...]], Decisive()] = Absent.NOT_STATED
    """The house's networks, or none."""

    def contradictions(self) -> Iterator[Problem]:
        """An input that the switcher does not have."""
        inputs = {switcher.name: switcher.inputs for switcher in self.switchers}
        for console in listed(self.consoles):
            most = inputs.get(console.switcher) if isinstance(console.switcher, str) else None
            if (
                isinstance(most, int)
                and isinstance(console.input, int)
                and not 1 <= console.input <= most
            ):
                reason = f"is not an input of {console.switcher}, which has {most}"
                advice = f"number them 1 to {most}"
                yield Problem(
                    console.where("input"),
                    f"consoles.{console.name}.input",
                    str(console.input),
                    reason,
                    "input-unknown",
                    advice,
                )
        for station in self.talkback_stations:
            there = station.count
            if (
                isinstance(station.working, int)
                and isinstance(there, int)
                and station.working > there
            ):
                reason, advice = (
                    f"is more than the {there} at {station.spot}",
                    "count those that work among all there are",
                )
                yield Problem(
                    station.where("working"),
                    "working",
                    str(station.working),
                    reason,
                    "working-exceeds-count",
                    advice,
                )
