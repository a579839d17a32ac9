"""
What departments tell each other.

Rigging does not know that sound exists: it receives loads that say who hung them. A department
offers; the pipeline joins all offers; every department then computes with the whole.
"""

from collections.abc import Iterable, Mapping, Sequence, Set
from dataclasses import dataclass, field, fields, replace
from itertools import chain
from typing import Any, TypeVar

from builder.pack import Check
from builder.reading.absent import Absent
from builder.reading.problems import Where
from builder.reading.quantities import Duration, Height, Quantity

Corners = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class HungLoad:
    """
    A load on a hang.

    ``at_m`` counts along the hang from its first end; where it is None, ``across_m`` and
    ``depth_m`` say where the load is from the datum; where they are None too, the load is at the
    hang's middle. ``top_m`` and ``bottom_m`` are the heights above the deck between which it hangs,
    where the department knows them. ``check`` is the weakest of the lines that it is made of.

    Where the weight is not known to the full, ``load_kg`` is the least that it is, and ``more_kg``
    how much more it may be, None where nobody knows. ``placed`` is False where nobody knows where
    along the hang it is. An empty ``hang`` is one that nobody names.
    """

    department: str
    what: str
    hang: str
    load_kg: float
    check: Check | None = None
    more_kg: float | None = 0.0
    placed: bool = True
    at_m: float | None = None
    across_m: float | None = None
    depth_m: float | None = None
    top_m: float | None = None
    bottom_m: float | None = None


@dataclass(frozen=True, slots=True)
class Spot:
    """
    A named position in metres from the datum: x to stage left, y upstage, z up from the deck.
    ``kind`` says what is there, ``check`` how the line that says it was checked.
    """

    department: str
    kind: str
    name: str
    across_m: float
    depth_m: float
    height_m: float = 0.0
    check: Check | None = None

    @property
    def at_m(self) -> tuple[float, float, float]:
        """The position as formulas take it. [m]"""
        return self.across_m, self.depth_m, self.height_m


@dataclass(frozen=True, slots=True)
class HalfSpot:
    """
    A named position of which one of two ways is known: across from the centre line, or deep from
    the reference line. [m]
    """

    name: str
    across_m: float | None
    depth_m: float | None
    check: Check | None = None


AnySpot = TypeVar("AnySpot", Spot, HalfSpot)


def spot_named(name: str, spots: Iterable[AnySpot]) -> AnySpot | None:
    """The spot with a name."""
    return next((spot for spot in spots if spot.name == name), None)


@dataclass(frozen=True, slots=True)
class Shape:
    """
    An outline on the plan. ``height_m`` is the level of each corner above the deck, for slopes and
    balconies.
    """

    department: str
    kind: str
    name: str
    corners: Corners
    height_m: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Air:
    """The air that sound travels through. [degrees Celsius], [%], [kPa]"""

    temperature_c: float
    humidity_percent: float
    pressure_kpa: float


@dataclass(frozen=True, slots=True)
class SoundLimit:
    """
    A limit on sound level as the house states it. ``weighting`` is A, C or empty; ``over_min`` is 0
    where no time is stated. [dB], [min]
    """

    name: str
    level_db: float
    weighting: str
    metric: str
    over_min: float
    measured_at: str


@dataclass(frozen=True, slots=True)
class Altitude:
    """How high the house lies above sea level, with the house's own words for it. [m]"""

    altitude_m: float
    said: str


@dataclass(frozen=True, slots=True)
class CallRules:
    """How crew is called, as the house says it: each as written, for its figures tell both ends."""

    shortest: Duration | Absent = Absent.NOT_STATED
    meal_after: Duration | Absent = Absent.NOT_STATED
    meal_break: Duration | Absent = Absent.NOT_STATED
    meal_paid: bool | Absent = Absent.NOT_STATED
    longest: Duration | Absent = Absent.NOT_STATED
    turnaround: Duration | Absent = Absent.NOT_STATED
    check: Check | None = None


@dataclass(frozen=True, slots=True)
class Drive:
    """A drive line of the house system, and the kinds of signal it takes, such as AES3."""

    name: str
    signals: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Datum:
    """What positions are measured from, in the house's words."""

    centre_line: str
    reference_line: str


@dataclass(frozen=True, slots=True)
class Statement:
    """
    A fact that more than one department may state: what it is of what (`width of`, `Mix
    position`), its value, and where it was written.

    ``within`` is the share by which two true statements of it may differ, beyond rounding. A
    department that states it several times, one for each configuration say, agrees with another
    where any two of theirs do.
    """

    fact: str
    thing: str
    value: Quantity | int
    where: Where
    within: float = 0.0

    @property
    def text(self) -> str:
        """The value as its author wrote it."""
        return self.value.text if isinstance(self.value, Quantity) else f"{self.value:,}"


@dataclass(frozen=True, slots=True)
class SteelHeight:
    """The underside of a beam at one place along it, as it was written."""

    beam: str
    across_m: float
    depth_m: float
    height: Height


Ends = tuple[float | None, float | None]


@dataclass(frozen=True, slots=True)
class Overhang:
    """
    Something that hangs when a show arrives: its ends on the plan, None where nobody knows them,
    its trim and the lowest edges of what hangs on it, each at least and at most, None where nobody
    knows, and whether it may come down, None where nobody says. [m]
    """

    name: str
    ends: tuple[tuple[float, float], tuple[float, float]] | None
    trim_m: Ends
    edges_m: tuple[Ends, ...]
    comes_down: bool | None
    check: Check | None = None

    @property
    def lowest_m(self) -> float | None:
        """
        How low it reaches at least. Where nobody knows its trim, what hangs on it hangs lower. [m]
        """
        known = [low for low, _ in self.edges_m if low is not None]
        if len(known) < len(self.edges_m):
            return None
        trim = [] if self.trim_m[0] is None else [self.trim_m[0]]
        return min((*known, *trim), default=None)

    @property
    def highest_m(self) -> float | None:
        """How low it reaches at most. [m]"""
        known = (high for _, high in (self.trim_m, *self.edges_m) if high is not None)
        return min(known, default=None)


HALF_HANG_M = 0.5
"""
How far what hangs is taken to reach to each side of the line of its hang: truss, lamps and boxes
(common practice, no source).
"""


@dataclass(frozen=True, slots=True)
class Offers:
    """All that one department, or all of them, tell the others."""

    loads: tuple[HungLoad, ...] = ()
    spots: tuple[Spot, ...] = ()
    half_spots: tuple[HalfSpot, ...] = ()
    shapes: tuple[Shape, ...] = ()
    limits: tuple[SoundLimit, ...] = ()
    drives: tuple[Drive, ...] = ()
    statements: tuple[Statement, ...] = ()
    steel: tuple[SteelHeight, ...] = ()
    overhead: tuple[Overhang, ...] = ()
    overhead_told: bool | None = None
    hang_states: Mapping[str, str] = field(default_factory=dict)
    """The states of the house's hangs, by the spelling of their names."""
    said_on_stage: Mapping[str, bool] = field(default_factory=dict)
    """Places that say themselves whether they are on the deck or in a wing, by name."""
    floors_drawn: bool = True
    """
    Whether wings are described, and every deck and wing has an outline, so that the plan tells what
    is off them.
    """
    air: Air | None = None
    datum: Datum | None = None
    altitude: Altitude | None = None
    calls: CallRules | None = None

    def spot(self, kind: str, name: str = "") -> Spot | None:
        """The first spot of a kind, or the one with that name."""
        return next(
            (spot for spot in self.spots if spot.kind == kind and name in ("", spot.name)), None
        )


class NotListened(Exception):
    """A department read an offer that it does not say it listens to."""


class Heard(Offers):
    """
    Of the offers of all, those that one department listens to. It is equal to another where these
    are, whatever else was offered; to read any other is a fault of the program.
    """

    __slots__ = ("names",)
    names: Set[str]

    def __getattribute__(self, name: str) -> Any:
        if name in OFFERED and name not in object.__getattribute__(self, "names"):
            raise NotListened(f"'{name}' of the offers is not among what this department hears")
        return object.__getattribute__(self, name)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Heard) or self.names != other.names:
            return False
        return all(getattr(self, name) == getattr(other, name) for name in self.names)

    __hash__ = None  # type: ignore[assignment] # what is heard may hold what has no hash


OFFERED = frozenset(each.name for each in fields(Offers))


def heard(offers: Offers, names: Set[str]) -> Heard:
    """
    The offers that a department listens to, by their names.

    Raises
    ------
    ValueError
        For a name that nothing offered has.
    """
    if unknown := names - OFFERED:
        raise ValueError(f"nothing offered is called {', '.join(sorted(unknown))}")
    found = object.__new__(Heard)
    object.__setattr__(found, "names", names)
    for name in names:
        object.__setattr__(found, name, getattr(offers, name))
    return found


def with_loads(hang: Overhang, loads: Iterable[HungLoad]) -> Overhang:
    """A hang with how low the loads of all departments on it reach."""
    on_it = [load for load in loads if load.hang.casefold() == hang.name.casefold()]
    return lowered(hang, [load.bottom_m for load in on_it if load.bottom_m is not None])


def lowered(hang: Overhang, bottoms_m: Sequence[float]) -> Overhang:
    """A hang with the lowest edges of more that hangs on it."""
    return replace(hang, edges_m=(*hang.edges_m, *((edge_m, edge_m) for edge_m in bottoms_m)))


def joined(offers: Iterable[Offers]) -> Offers:
    """
    All offers as one. What only one department may say (the air, the datum) is taken from the first
    that says it.
    """
    every = tuple(offers)
    return Offers(
        loads=tuple(chain.from_iterable(offer.loads for offer in every)),
        spots=tuple(chain.from_iterable(offer.spots for offer in every)),
        half_spots=tuple(chain.from_iterable(offer.half_spots for offer in every)),
        shapes=tuple(chain.from_iterable(offer.shapes for offer in every)),
        limits=tuple(chain.from_iterable(offer.limits for offer in every)),
        air=next((offer.air for offer in every if offer.air), None),
        datum=next((offer.datum for offer in every if offer.datum), None),
        drives=tuple(chain.from_iterable(offer.drives for offer in every)),
        statements=tuple(chain.from_iterable(offer.statements for offer in every)),
        steel=tuple(chain.from_iterable(offer.steel for offer in every)),
        overhead=tuple(chain.from_iterable(offer.overhead for offer in every)),
        overhead_told=next(
            (each.overhead_told for each in every if each.overhead_told is not None), None
        ),
        hang_states={name: state for offer in every for name, state in offer.hang_states.items()},
        altitude=next((offer.altitude for offer in every if offer.altitude), None),
        calls=next((offer.calls for offer in every if offer.calls), None),
        said_on_stage={
            name: there for offer in every for name, there in offer.said_on_stage.items()
        },
        floors_drawn=all(offer.floors_drawn for offer in every),
    )
