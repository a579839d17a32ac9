"""What points, beams, zones and the roof carry, what is left on each, and which limit binds."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from math import fsum

from builder.departments.rigging.bridles.standing import Bridled, bridled
from builder.departments.rigging.description import Rigging
from builder.departments.rigging.description.steel import Beam, DynamicFactor, Standing
from builder.departments.rigging.hangs.bodies import Body, Shares, bodies, hoist_weight_kg, shares
from builder.departments.rigging.hangs.leaning import checks_of_hangs
from builder.departments.rigging.steel.brought import (
    Brought,
    Counted,
    by_standing,
    counted,
    on_group,
    together,
)
from builder.departments.rigging.steel.brought import on_point as brought_on_point
from builder.departments.rigging.steel.geometry import Overhead, overhead
from builder.departments.rigging.steel.limits import (
    ROOF,
    Ruled,
    among,
    beam_limit,
    in_zone,
    rating_of,
    spacing_m,
)
from builder.departments.rigging.steel.readings import (
    READINGS,
    hangs_are_told,
    is_factor_open,
    is_inexact,
    loads_at,
    rigging_at,
)
from builder.exchange import HungLoad
from builder.formulas.full_at_once import FullPoints, full_points
from builder.formulas.limits import GroupLimit, Left, RatedPoint, left_on_points
from builder.pack import Check
from builder.reading.absent import Absent, is_unknown
from builder.reading.in_part import ends_of
from builder.reading.quantities import Mass
from builder.reading.written import Written

OUT = "out of service"
FOR_GOOD = "what hangs for good on beam"
Hung = tuple[tuple[Body, Shares], ...]
"""Every hang with what its supports carry."""


@dataclass(frozen=True, slots=True)
class OnPoint:
    """
    What one point carries. ``hangs`` says which; ``kg`` is None where a reaction could not be
    worked out; the factor is in it. ``down_kg`` is the part straight down. ``counted`` is what
    counts against its rating, as planned and with each hang at its own worst. [kg]
    """

    place: Overhead
    rating: Ruled
    hangs: tuple[str, ...]
    kg: float | None
    down_kg: float | None
    counted: Counted
    steps: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """The name of the point."""
        return self.place.point.name

    @property
    def worst_why(self) -> str:
        """What makes its worst in words; empty where nothing on it can be uneven."""
        return self.counted.worst_why

    @property
    def worst_kg(self) -> float | None:
        """
        The most of all that hangs there; None where no hang can be uneven, or a part of it is not
        known. [kg]
        """
        found = self.counted
        return found.worst_kg if found.worst_why and found.is_known else None

    @property
    def usable(self) -> bool:
        """In service with a known rating, and on its beam: it can be counted on."""
        return self.rating.kg is not None and not self.is_out and self.place.on_beam

    @property
    def is_out(self) -> bool:
        """Whether it is out of service, or the beam that it is on."""
        return OUT in (self.place.point.condition, self.place.beam.condition)


@dataclass(frozen=True, slots=True)
class StandingLoad:
    """What hangs on a beam for good; ``kg`` with the house's factor, None where unknown. [kg]"""

    what: str
    kg: float | None


@dataclass(frozen=True, slots=True)
class Group:
    """
    A beam, a zone or the roof: its limit, its points, and what they carry, straight down, with what
    hangs on its beams for good. ``unknown`` names what nobody knows the load of. [kg]
    """

    kind: str
    name: str
    ruled: Ruled
    points: tuple[OnPoint, ...]
    counted: Counted
    standing: tuple[StandingLoad, ...] = ()

    @property
    def key(self) -> str:
        """The name it has among all limits."""
        return ROOF if self.kind == "roof" else f"{self.kind} {self.name}"

    @property
    def kg(self) -> float:
        """What its points and beams carry together, as far as known."""
        every = (*(point.down_kg for point in self.points), *(each.kg for each in self.standing))
        return fsum(kg or 0.0 for kg in every)

    @property
    def is_sure(self) -> bool:
        """Whether its limit is known, or there is none, and all that it carries."""
        limit = self.ruled.limit
        return (isinstance(limit, Mass) or limit is Absent.NONE) and not self.unknown

    def bears(self, point: OnPoint) -> bool:
        """Whether a point is one of its own. A name is given to one point only."""
        return any(own.name == point.name for own in self.points)

    @property
    def lacking(self) -> tuple[str, ...]:
        """What must be known to tell all that it carries."""
        points = (f"what {point.name} carries" for point in self.points if point.kg is None)
        standing = (
            each.what if each.what.startswith(FOR_GOOD) else f"the weight of {each.what}"
            for each in self.standing
            if each.kg is None
        )
        return (*points, *standing)

    @property
    def unknown(self) -> tuple[str, ...]:
        """Points that carry something nobody can work out, and what nobody weighed."""
        standing = (each.what for each in self.standing if each.kg is None)
        return (*(point.name for point in self.points if point.kg is None), *standing)


@dataclass(frozen=True, slots=True)
class Whole:
    """
    The whole of the rigging, worked out once and read by figures, findings and drawings. ``checks``
    tell by the name of a hang or a bridle how sure it is.

    ``light`` and ``heavy`` are the same at the ends of what is known (``readings.py``); None where
    every weight and limit is exact, or this is one of them. The heavy one leaves what hoists that
    are not as planned leave (``at_worst``).
    """

    rigging: Rigging
    places: tuple[Overhead, ...]
    bodies: tuple[Body, ...]
    shares: tuple[Shares, ...]
    bridles: tuple[Bridled, ...]
    points: tuple[OnPoint, ...]
    groups: tuple[Group, ...]
    left: dict[str, Left]
    full: FullPoints | None
    strangers: tuple[HungLoad, ...]
    checks: dict[str, Check]
    at_worst: bool = False
    light: "Whole | None" = None
    heavy: "Whole | None" = None

    @property
    def lightest(self) -> "Whole":
        """The reading that leaves the most."""
        return self.light or self

    @property
    def heaviest(self) -> "Whole":
        """The reading that leaves the least."""
        return self.heavy or self

    @property
    def adrift(self) -> bool:
        """Whether something hangs here and nobody says on what, or nobody says what hangs here."""
        if not hangs_are_told(self.rigging):
            return True
        return any(load.hang == "" for load in self.strangers)

    @property
    def unweighed(self) -> tuple[str, ...]:
        """What must be known before anything is said to be left at least, of what hangs here."""
        heavy = self.heaviest
        loads = (what for body in heavy.bodies for _, what in body.unweighed)
        bridles = (
            f"the load of {each.bridle.name}"
            for each in heavy.bridles
            if not isinstance(each.bridle.load, Mass)
        )
        held = (
            f"which points carry {hang.name}"
            for hang in self.rigging.hung
            if is_unknown(hang.supports)
        )
        return tuple(dict.fromkeys((*loads, *bridles, *held)))

    @property
    def is_loose(self) -> bool:
        """Whether any point may carry more than is told: nobody says which carry something here."""
        hangs = (hang.supports for hang in self.rigging.hung)
        return self.adrift or any(map(is_unknown, (self.rigging.bridles, *hangs)))

    def point(self, name: str) -> OnPoint:
        """A point by its name."""
        return next(point for point in self.points if point.name == name)

    def body(self, name: str) -> Body:
        """A hang as a body, by its name."""
        return next(body for body in self.bodies if body.hang.name == name)

    def group(self, key: str) -> Group:
        """A beam, a zone or the roof by its key."""
        return next(group for group in self.groups if group.key == key)

    def is_sure(self, point: OnPoint) -> bool:
        """
        Whether what a point has left is left at least: each limit above it is known, or there is
        none, and so is all that hangs beneath them, and on which points.
        """
        if is_unknown(self.rigging.zones):
            return False
        if self.is_loose or point.place.beam.may_carry_for_good or self.may_be_near(point):
            return False
        return all(group.is_sure for group in self.groups if group.bears(point))

    def may_be_near(self, point: OnPoint) -> bool:
        """
        Whether nobody knows where a point is along its beam, or where a loaded one there is that
        may be nearer than the house allows.
        """
        if point.place.along_m is None:
            return True
        return spacing_m(self.rigging.general) > 0 and any(
            other.hangs and other.place.along_m is None and other.place.beam is point.place.beam
            for other in self.points
        )

    def surely_left_kg(self, name: str) -> float | None:
        """What a point has left at least; None where nobody knows. [kg]"""
        heavy = self.heaviest
        left = heavy.left.get(name)
        return left.left_kg if left and heavy.is_sure(heavy.point(name)) else None

    def lines_on(self, point: OnPoint) -> Iterator[Written | Check]:
        """What a point carries is as sure as these: its hangs and bridles, the house's factor."""
        yield from (self.checks[name] for name in point.hangs)
        if point.hangs and isinstance(self.rigging.dynamic_factor, DynamicFactor):
            yield self.rigging.dynamic_factor

    def lines_under(self, group: Group) -> Iterator[Written | Check]:
        """What a beam, a zone or the roof carries is as sure as all that its points do."""
        for point in group.points:
            yield from self.lines_on(point)

    def lines_over(self, point: OnPoint) -> Iterator[Written | Check]:
        """What a point has left is as sure as every limit above it, with what that carries."""
        yield point.rating.line
        for group in self.groups:
            if group.bears(point):
                yield group.ruled.line
                yield from self.lines_under(group)


def whole_of(rigging: Rigging, offered: Iterable[HungLoad]) -> Whole:
    """
    Work everything out; where weights or limits are known in part, at both ends too, and what is
    left where hoists are not as planned.
    """
    every = tuple(offered)
    whole = one_reading(rigging, every)
    if not is_inexact(rigging, every):
        return replace(whole, heavy=worst_of(whole)) if is_uneven(whole) else whole
    light, heavy = (
        one_reading(rigging_at(rigging, reading), loads_at(every, reading)) for reading in READINGS
    )
    return replace(whole, light=light, heavy=worst_of(heavy))


def is_uneven(whole: Whole) -> bool:
    """Whether hoists that are not as planned bring more anywhere."""
    every: tuple[OnPoint | Group, ...] = (*whole.points, *whole.groups)
    return any(each.counted.worst_why for each in every)


def worst_of(whole: Whole) -> Whole:
    """The same house with what its hangs leave when their hoists are not as planned."""
    spacing = spacing_m(whole.rigging.general)
    left, full = left_and_full(whole.points, whole.groups, spacing, at_worst=True)
    return replace(whole, left=left, full=full, at_worst=True)


def one_reading(rigging: Rigging, every: tuple[HungLoad, ...]) -> Whole:
    """Work everything out for one reading of what is known."""
    places = tuple(overhead(rigging.points, rigging.beams))
    hung = bodies(rigging, places, every)
    tolerance = rigging.general.level_within
    parts = tuple(shares(body, tolerance) for body in hung)
    legs = tuple(bridled(rigging, places))
    shared = tuple(zip(hung, parts, strict=True))
    points = tuple(on_point(place, rigging, shared, legs) for place in places)
    groups = tuple(groups_of(rigging, points, shared, legs))
    left, full = left_and_full(points, groups, spacing_m(rigging.general))
    known = {hang.name.casefold() for hang in rigging.hung}
    strangers = tuple(load for load in every if load.hang.casefold() not in known)
    checks = checks_of_hangs(hung, legs, places)
    return Whole(rigging, places, hung, parts, legs, points, groups, left, full, strangers, checks)


def factor_of(rigging: Rigging) -> float:
    """
    The house's factor for starting and stopping at least, 1 where it asks for none or nobody knows.
    """
    told = rigging.dynamic_factor
    least = ends_of(told.factor)[0] if isinstance(told, DynamicFactor) else None
    return 1.0 if least is None else least


def with_known_factor(brought: Iterable[Brought], rigging: Rigging) -> tuple[Brought, ...]:
    """What is brought, of which nothing is known where nobody knows the house's factor."""
    if not is_factor_open(rigging):
        return tuple(brought)
    return tuple(
        replace(each, kg=None, down_kg=None, counted_kg=None, worst_kg=None) for each in brought
    )


def on_point(place: Overhead, rigging: Rigging, hung: Hung, legs: tuple[Bridled, ...]) -> OnPoint:
    """Everything that hangs on one point."""
    brought = with_known_factor(brought_on_point(place.point.name, rigging, hung, legs), rigging)
    factor = factor_of(rigging)
    kg, steps = together([(each.kg, each.steps) for each in brought], factor)
    down_kg, _ = together([(each.down_kg, ()) for each in brought], factor)
    return OnPoint(
        place,
        rating_of(place.point, rigging),
        tuple(each.name for each in brought),
        kg,
        down_kg,
        counted(brought, factor),
        steps,
    )


def groups_of(
    rigging: Rigging, points: tuple[OnPoint, ...], hung: Hung, legs: tuple[Bridled, ...]
) -> Iterator[Group]:
    """Beams, zones and the roof, from the nearest to the widest, with what counts against each."""
    factor = factor_of(rigging)
    for kind, name, ruled, within, beams in members(rigging, points):
        names = tuple(point.name for point in within)
        known: list[tuple[str, float | None]]
        known = [(each.what, known_kg(each)) for beam in beams for each in beam.for_good]
        untold = [beam.name for beam in beams if is_unknown(beam.standing)]
        known += [(f"{FOR_GOOD} {beam}", None) for beam in untold]
        if is_factor_open(rigging):
            known = [(what, None) for what, _ in known]
        brought = with_known_factor(
            (
                *on_group(names, rigging, hung, legs),
                *(by_standing(what, kg) for what, kg in known),
            ),
            rigging,
        )
        standing = tuple(
            StandingLoad(what, None if kg is None else kg * factor) for what, kg in known
        )
        yield Group(kind, name, ruled, within, counted(brought, factor), standing)


def known_kg(standing: Standing) -> float | None:
    """What something that hangs for good weighs; None where nobody knows. [kg]"""
    return standing.weight.kg if isinstance(standing.weight, Mass) else None


def members(
    rigging: Rigging, points: tuple[OnPoint, ...]
) -> Iterator[tuple[str, str, Ruled, tuple[OnPoint, ...], tuple[Beam, ...]]]:
    """Beams, zones and the roof with their limits, points and beams."""
    for beam in rigging.beams:
        under = tuple(point for point in points if point.place.beam is beam)
        yield "beam", beam.name, beam_limit(beam, rigging), under, (beam,)
    for zone in rigging.told_zones:
        ruled = Ruled(zone.limit, "the zone's own line", zone)
        within = tuple(point for point in points if in_zone(point.place.point, zone))
        inside = tuple(beam for beam in rigging.beams if among(beam.name, zone.beams))
        yield "zone", zone.name, ruled, within, inside
    yield "roof", ROOF, roof_limit(rigging), points, rigging.beams


def roof_limit(rigging: Rigging) -> Ruled:
    """What the whole roof may carry, and which rule says so."""
    return Ruled(rigging.general.whole_roof, "the limit of the whole roof", rigging.general)


def left_and_full(
    points: tuple[OnPoint, ...],
    groups: tuple[Group, ...],
    spacing: float,
    *,
    at_worst: bool = False,
) -> tuple[dict[str, Left], FullPoints | None]:
    """
    What is left on each usable point, and how many can be full at once, as planned or at the worst.

    Loads of the other points count in their groups; so does what a group counts beyond the sum of
    what its points carry.
    """
    usable = [point for point in points if point.usable and point.kg is not None]
    counting = [
        group
        for group in groups
        if group.ruled.kg is not None or (group.kind == "beam" and spacing > 0)
    ]
    rated = [
        RatedPoint(
            point.name,
            point.rating.kg or 0.0,
            point.down_kg or 0.0,
            tuple(group.key for group in counting if group.bears(point)),
            FAR_M * number if point.place.along_m is None else point.place.along_m,
            max(counts_kg(point, at_worst=at_worst) - (point.down_kg or 0.0), 0.0),
        )
        for number, point in enumerate(usable, 1)
    ]
    limits = [
        GroupLimit(
            group.key,
            limit_kg(group.ruled),
            beside_kg(group, usable, at_worst=at_worst),
            spacing if group.kind == "beam" else 0.0,
        )
        for group in counting
    ]
    if not rated:
        return {}, None
    return {left.name: left for left in left_on_points(rated, limits)}, full_points(rated, limits)


def counts_kg(each: OnPoint | Group, *, at_worst: bool) -> float:
    """What counts against a limit, as planned or at the worst, as far as it is known. [kg]"""
    return each.counted.worst_kg if at_worst else each.counted.kg


def beside_kg(group: Group, usable: list[OnPoint], *, at_worst: bool) -> float:
    """What a group counts beyond what its usable points carry. [kg]"""
    carried_kg = fsum(point.down_kg or 0.0 for point in group.points if point in usable)
    return max(counts_kg(group, at_worst=at_worst) - carried_kg, 0.0)


FAR_M = 1e6
"""
A point whose place nobody knows is taken as so far from all others, which leaves the most: what it
has left is only told at most.
"""
NO_LIMIT_KG = 1e9
"""Stands for no limit where only the spacing rule of a beam is known."""


def limit_kg(ruled: Ruled) -> float:
    """A limit for the formulas."""
    return NO_LIMIT_KG if ruled.kg is None else ruled.kg


def hoists_kg(whole: Whole) -> float | None:
    """All hoists in standing hangs with their chain; None where nobody knows one's weight. [kg]"""
    weights = [
        hoist_weight_kg(body, index) for body in whole.bodies for index in range(len(body.supports))
    ]
    known = [kg for kg in weights if kg is not None]
    if any(is_unknown(body.hang.supports) for body in whole.bodies):
        return None
    return fsum(known) if len(known) == len(weights) else None
