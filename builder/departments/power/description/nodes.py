"""What ``power.yml`` says line by line: services, boards, outlets, and what stands on them."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from pydantic import model_validator

from builder.departments.power.description.bounds import InParallel, PowerFactor, Share
from builder.departments.power.description.supplies import FEED, Spot
from builder.departments.power.description.systems import Draw, WrittenPhases, WrittenSystem
from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.possible import Possible
from builder.reading.quantities import (
    ApparentPower,
    CrossSection,
    Current,
    Duration,
    Length,
    Percent,
)
from builder.reading.refusing import error
from builder.reading.words import Count, Name, Text, YesNo
from builder.reading.written import (
    Assumed,
    Decisive,
    Line,
    Loose,
    Movable,
    Plausible,
    Rated,
    RefersTo,
    Written,
)


class Feeder(Written):
    """The cable that feeds something: its path length one way, and one of its line conductors."""

    length: Annotated[Maybe[Length], Possible(0.0, 100_000.0), Plausible(0.5, 500.0)] = (
        Absent.NOT_STATED
    )
    """Path length one way, along the cable, not across the room."""
    conductor: Annotated[Maybe[CrossSection], Plausible(1.0e-6, 630.0e-6)] = Absent.NOT_STATED
    """Cross-section of one line conductor, such as 35 mm2, 2 AWG or 500 kcmil."""
    in_parallel: Annotated[Maybe[InParallel], Plausible(1, 8), Assumed("the usual")] = 1
    """How many such conductors share each line."""
    cable: Annotated[Maybe[Literal["fixed", "flexible"]], Assumed("the usual")] = "fixed"
    """Fixed wiring, or flexible cable, which has a higher resistance when hot."""
    metal: Annotated[Maybe[Literal["copper", "aluminium"]], Assumed("the usual")] = "copper"
    """Copper or aluminium."""
    insulation: Literal["PVC", "XLPE"] | None = None
    """Its insulation: PVC for 70 °C, or XLPE or rubber for 90 °C."""
    laid: Literal["in a wall", "in conduit", "on a wall", "in free air"] | None = None
    """
    How it is laid: in an insulating wall, in conduit or trunking, clipped to a wall, or in free air
    such as on an open tray.
    """


class TieIn(Written):
    """Who connects a visitor, and how long before they must know."""

    who: Maybe[Name] = Absent.NOT_STATED
    """Who connects, by role."""
    notice: Annotated[Maybe[Duration], Plausible(3600.0, 60 * 86_400.0)] = Absent.NOT_STATED
    """How long before the day to ask."""
    working_days: YesNo | None = None
    """Whether that counts working days only."""
    takes: Annotated[Maybe[Duration], Plausible(60.0, 6 * 3600.0)] = Absent.NOT_STATED
    """How long a tie-in takes."""
    cost: Maybe[Text] = Absent.NOT_STATED
    """What it costs."""


class Fed(Line):
    """What services and boards have in common."""

    stands_in: ClassVar[Mapping[str, tuple[str, ...]]] = {"continuous_share": ("continuous_share",)}
    defines: ClassVar[str] = FEED
    name: Name
    """Its name. Loads, outlets and boards refer to it."""
    fed_from: Annotated[Name, RefersTo(FEED)]
    """The supply, generator, service or board that feeds it."""
    phases: Maybe[WrittenPhases] = Absent.NOT_STATED
    """The phases it has: all, or some of L1, L2, L3."""
    wires: Annotated[Maybe[Count], Plausible(2, 5)] = Absent.NOT_STATED
    """How many wires it has, neutral and earth included."""
    rating: Annotated[Maybe[Current], Rated(), Plausible(5.0, 2000.0), Decisive()] = (
        Absent.NOT_STATED
    )
    """What it may carry on each phase."""
    breaker: Annotated[Maybe[Current], Rated(), Plausible(5.0, 2000.0)] = Absent.NOT_STATED
    """The setting of the breaker or fuse in front of it, on each phase."""
    neutral_rating: Annotated[Maybe[Current], Rated(), Plausible(5.0, 4000.0)] = Absent.NOT_STATED
    """
    What its neutral may carry; none where it has no neutral. Left out, it is counted like one of
    the lines.
    """
    breaker_type: Maybe[Name] = Absent.NOT_STATED
    """Kind and curve of the breaker or fuse."""
    transformer: Annotated[Maybe[ApparentPower], Plausible(1.0e3, 5.0e6)] = Absent.NOT_STATED
    """
    Rating of a transformer of its own, such as one that isolates sound; none where there is none.
    """
    continuous_share: Annotated[Maybe[Share], Plausible(0.5, 1.0)] = Absent.NOT_STATED
    """Share of the rating that may be used for hours, where it differs from the house's."""
    feeder: Feeder | None = None
    """The cable that feeds it."""
    residual_current_device: Annotated[Maybe[Current], Plausible(0.005, 1.0)] = Absent.NOT_STATED
    """Tripping current of the residual current device (earth fault breaker), or none."""
    residual_current_device_fitted: YesNo | None = None
    """Whether there is one, where nobody knows its tripping current."""
    dimmers: Maybe[YesNo] = Absent.NOT_STATED
    """Whether phase-control dimmers hang on it."""
    place: Annotated[Maybe[Name], RefersTo("place")] = Absent.NOT_STATED
    """The place in stage.yml where it is."""
    at: Spot | None = None
    """Where it is, more precisely."""


class Service(Fed):
    """Where power is handed over: a switch or panel that a visitor connects to."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"dimmers"})
    system: Annotated[Maybe[WrittenSystem], Decisive()] = Absent.NOT_STATED
    """
    The system with its voltages, such as 230/400 V three phase, so that nobody guesses line to
    what.
    """
    connectors: Annotated[Maybe[tuple[Name, ...]], Decisive()] = Absent.NOT_STATED
    """
    The connectors or terminals a visitor meets, such as IEC 60309 125 A 5-pin red, or lugs for bare
    tails.
    """
    gender: Maybe[Name] = Absent.NOT_STATED
    """
    Which half the house has: outlets, or inlets, and for single-pole sets line and neutral apart.
    """
    earth: Maybe[Text] = Absent.NOT_STATED
    """How it is earthed, and whether the earth is isolated."""
    isolated_earth: Maybe[YesNo] = Absent.NOT_STATED
    """Whether its earth is isolated from that of the house."""
    neutral: Maybe[Text] = Absent.NOT_STATED
    """Size of the neutral against the lines, in words. For the figures write neutral_rating."""
    dedicated_to: Annotated[Maybe[Name], Decisive()] = Absent.NOT_STATED
    """The department it is kept for."""
    shared_with: Maybe[tuple[Name, ...]] = Absent.NOT_STATED
    """What else hangs on it."""
    distances: tuple[Text, ...] = ()
    """Cable path from it to the stage, the mix position, the amplifiers."""
    tie_in: Annotated[TieIn | None, Decisive()] = None
    """Who connects, and how long before to ask."""
    meter: Maybe[Text] = Absent.NOT_STATED
    """Whether use is metered, and what it costs."""


class Board(Fed):
    """A distribution board that feeds outlets or house loads."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"dimmers"})
    system: Maybe[WrittenSystem] = Absent.NOT_STATED
    """The system, where it differs from what feeds the board."""


class Outlet(Movable):
    """Outlets of one kind at one place."""

    place: Annotated[Name, RefersTo("place")]
    """The place in stage.yml where they are."""
    connector: Name
    """What a plug goes into, such as IEC 60309 32 A 5-pin red."""
    count: Annotated[Maybe[Count], Plausible(0, 500)]
    """How many there are."""
    rating: Annotated[Maybe[Current], Rated(), Plausible(1.0, 1000.0), Decisive()] = (
        Absent.NOT_STATED
    )
    """What one of them may carry on each of its phases."""
    breaker: Annotated[Maybe[Current], Rated(), Plausible(1.0, 1000.0)] = Absent.NOT_STATED
    """The breaker of each one's own way."""
    phases: Maybe[WrittenPhases] = Absent.NOT_STATED
    """
    The phases of each: all, one of them, or in turn for single-phase outlets spread over the
    phases.
    """
    fed_from: Annotated[Name, RefersTo(FEED)]
    """The service or board that feeds them."""
    residual_current_device: Annotated[Maybe[Current], Plausible(0.005, 1.0)] = Absent.NOT_STATED
    """Tripping current of their residual current device, or none."""
    meant_for: Maybe[Name] = Absent.NOT_STATED
    """What they are meant for."""


class UntracedOutlet(Line):
    """
    Outlets that are there, and that nobody has counted, or nobody knows what feeds. A show that
    could use them is asked, and nothing is promised of them.
    """

    name: Name
    """What they are, such as 16 A single-phase."""
    kind: Maybe[Literal["shows", "buses", "trucks", "other"]] = Absent.NOT_STATED
    """For shows, or for buses, trucks or other vehicles that stay."""
    lies: Text | None = None
    """Where they are, in words."""
    count: Annotated[Maybe[Count], Plausible(0, 500)] = Absent.NOT_STATED
    """How many there are."""
    rating: Annotated[Maybe[Current], Rated(), Plausible(1.0, 1000.0)] = Absent.NOT_STATED
    """What one of them may carry on each of its phases."""
    phases: Maybe[WrittenPhases] = Absent.NOT_STATED
    """
    The phases of each: all, one of them, or in turn for single-phase outlets spread over the
    phases.
    """
    connector: Maybe[Name] = Absent.NOT_STATED
    """What a plug goes into."""
    shared_with: tuple[Name, ...] = ()
    """What else is on the breaker of some of them."""
    fed_from: Annotated[Maybe[Name], RefersTo(FEED)] = Absent.NOT_STATED
    """The service or board that feeds them."""


class Adaptor(Loose):
    """Adaptors in stock, from one connector to another."""

    defines: ClassVar[str] = "adaptor"
    name: Name
    """From what to what."""
    count: Annotated[Maybe[Count], Plausible(1, 500)] = Absent.NOT_STATED
    """How many there are."""


class ShoreOutlet(Outlet):
    """Outlets for buses and trucks that stay."""

    kind: Maybe[Literal["buses", "trucks", "other"]] = Absent.NOT_STATED
    """
    For buses, trucks or other vehicles. A show that asks for outlets for its buses is answered by
    those of that kind; `meant_for` tells people more.
    """
    distance: Annotated[Maybe[Length], Possible(0.0, 10_000.0), Plausible(0.5, 300.0)] = (
        Absent.NOT_STATED
    )
    """Cable path to where the bus stands."""
    hours: Maybe[Text] = Absent.NOT_STATED
    """When they are switched on."""


class StandingLoad(Movable):
    """What the house itself draws, show or no show. A visitor cannot have that power."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset(
        {"phases", "third_harmonic", "dimmers"}
    )
    stands_in: ClassVar[Mapping[str, tuple[str, ...]]] = {"power_factor": ("usual_power_factor",)}
    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"configurations"})
    what: Name
    """What draws."""
    on: Annotated[Name, RefersTo(FEED)]
    """The service or board it hangs on."""
    draws: Annotated[Maybe[Draw], Possible(0.0, 1e8)] = Absent.NOT_STATED
    """How much it draws in all, in kW or kVA, or how many ampere on each of its phases."""
    power_factor: Maybe[PowerFactor] = Absent.NOT_STATED
    """Its power factor, above 0 and at most 1."""
    phases: Maybe[WrittenPhases] = Absent.NOT_STATED
    """
    The phases it hangs on; two of them mean between the two. Left out: spread over all that its
    service has.
    """
    third_harmonic: Annotated[Maybe[Percent], Plausible(0.0, 1.0)] = Absent.NOT_STATED
    """
    Third harmonic current as a share of its line current. It adds up in the neutral. Left out, none
    is counted.
    """
    dimmers: Maybe[YesNo] = Absent.NOT_STATED
    """Whether it is phase-control dimmers."""

    @model_validator(mode="after")
    def _has_a_size(self) -> "StandingLoad":
        if self.draws in (Absent.NOT_STATED, Absent.NONE):
            advice = "write draws: with kW, kVA or A, or 'unknown' where nobody has measured it yet"
            raise error("load-without-size", "says neither ampere nor watt", advice)
        return self
