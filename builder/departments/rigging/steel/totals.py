"""What points, beams, zones and the roof carry, what is left on each, and which limit binds."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from math import fsum

from builder.departments.rigging.bridles.standing import Bridled, bridled
from builder.departments.rigging.description import Rigging
from builder.departments.rigging.hangs.bodies import Body, Shares, bodies, hoist_weight_kg, shares
from builder.departments.rigging.hangs.leaning import checks_of_hangs
from builder.departments.rigging.steel.geometry import Overhead, overhead
from builder.departments.rigging.steel.limits import (
    ROOF,
    Ruled,
    beam_limit,
    in_zone,
    rating_of,
    same,
    spacing_m,
)
from builder.departments.rigging.steel.readings import (
    READINGS,
    hangs_are_told,
    is_inexact,
    loads_at,
    rigging_at,
)
from builder.exchange import HungLoad
from builder.formulas.full_at_once import FullPoints, full_points
from builder.formulas.limits import GroupLimit, Left, RatedPoint, left_on_points
from builder.formulas.loads import dynamic_load_kg
from builder.pack import Check
from builder.reading.absent import Absent
from builder.reading.quantities import Mass
from builder.reading.written import Written


@dataclass(frozen=True, slots=True)
class Brought:
    """
    What one hang or one leg of a bridle brings on a point, without the house's factor. [kg]

    ``worst_kg`` is the most it brings, and ``uneven`` what makes that in words; empty for what
    brings the same whatever the hoists do. Both masses are None where they cannot be worked out.
    """

    name: str
    kg: float | None
    steps: tuple[str, ...]
    worst_kg: float | None
    worst_step: str
    uneven: str = ""


@dataclass(frozen=True, slots=True)
class OnPoint:
    """
    What one point carries. ``hangs`` says which; ``kg`` is None where a reaction could not be
    worked out; the factor is in it. [kg]

    ``worst_kg`` is the most of all that hangs there, each hang at its own worst and the legs of
    bridles beside them; None where no hang can be uneven or a part of it is not known.
    """

    place: Overhead
    rating: Ruled
    hangs: tuple[str, ...]
    kg: float | None
    steps: tuple[str, ...] = ()
    worst_kg: float | None = None
    worst_why: str = ""
    worst_steps: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """The name of the point."""
        return self.place.point.name

    @property
    def usable(self) -> bool:
        """In service with a known rating, and on its beam: it can be counted on."""
        in_service = self.place.point.condition != "out of service"
        return self.rating.kg is not None and in_service and self.place.on_beam


@dataclass(frozen=True, slots=True)
class Group:
    """
    A beam, a zone or the roof: its limit, its points, and what they carry. ``unknown`` names points
    whose load is not known. [kg]
    """

    kind: str
    name: str
    ruled: Ruled
    points: tuple[OnPoint, ...]

    @property
    def key(self) -> str:
        """The name it has among all limits."""
        return ROOF if self.kind == "roof" else f"{self.kind} {self.name}"

    @property
    def kg(self) -> float:
        """What its points carry together, as far as known."""
        return fsum(point.kg or 0.0 for point in self.points)

    @property
    def is_sure(self) -> bool:
        """Whether its limit is known, or there is none, and all that it carries."""
        limit = self.ruled.limit
        return (isinstance(limit, Mass) or limit is Absent.NONE) and not self.unknown

    @property
    def unknown(self) -> tuple[str, ...]:
        """Points that carry something nobody can work out."""
        return tuple(point.name for point in self.points if point.kg is None)


@dataclass(frozen=True, slots=True)
class Whole:
    """
    The whole of the rigging, worked out once and read by figures, findings and drawings. ``checks``
    tell by the name of a hang or a bridle how sure it is.

    ``light`` and ``heavy`` are the same at the ends of what is known (``readings.py``); None where
    every weight and limit is exact, or this is one of them.
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
        none, and so is all that hangs beneath them.
        """
        return not self.adrift and all(
            group.is_sure for group in self.groups if point in group.points
        )

    def surely_left_kg(self, name: str) -> float | None:
        """What a point has left at least; None where nobody knows. [kg]"""
        heavy = self.heaviest
        left = heavy.left.get(name)
        return left.left_kg if left and heavy.is_sure(heavy.point(name)) else None

    def lines_on(self, point: OnPoint) -> Iterator[Written | Check]:
        """What a point carries is as sure as these: its hangs and bridles, the house's factor."""
        yield from (self.checks[name] for name in point.hangs)
        if point.hangs and self.rigging.dynamic_factor:
            yield self.rigging.dynamic_factor

    def lines_under(self, group: Group) -> Iterator[Written | Check]:
        """What a beam, a zone or the roof carries is as sure as all that its points do."""
        for point in group.points:
            yield from self.lines_on(point)

    def lines_over(self, point: OnPoint) -> Iterator[Written | Check]:
        """What a point has left is as sure as every limit above it, with what that carries."""
        yield point.rating.line
        for group in self.groups:
            if point in group.points:
                yield group.ruled.line
                yield from self.lines_under(group)


def whole_of(rigging: Rigging, offered: Iterable[HungLoad]) -> Whole:
    """Work everything out; where weights or limits are known in part, at both ends too."""
    every = tuple(offered)
    whole = one_reading(rigging, every)
    if not is_inexact(rigging, every):
        return whole
    light, heavy = (
        one_reading(rigging_at(rigging, reading), loads_at(every, reading)) for reading in READINGS
    )
    return replace(whole, light=light, heavy=heavy)


def one_reading(rigging: Rigging, every: tuple[HungLoad, ...]) -> Whole:
    """Work everything out for one reading of what is known."""
    places = tuple(overhead(rigging.points, rigging.beams))
    hung = bodies(rigging, places, every)
    tolerance = rigging.limits.level_within
    parts = tuple(shares(body, tolerance.m if tolerance else None) for body in hung)
    legs = tuple(bridled(rigging, places))
    points = tuple(on_point(place, rigging, hung, parts, legs) for place in places)
    groups = tuple(groups_of(rigging, points))
    left, full = left_and_full(points, groups, spacing_m(rigging.limits))
    known = {hang.name.casefold() for hang in rigging.hung}
    strangers = tuple(load for load in every if load.hang.casefold() not in known)
    checks = checks_of_hangs(hung, legs, places)
    return Whole(rigging, places, hung, parts, legs, points, groups, left, full, strangers, checks)


def factor_of(rigging: Rigging) -> float:
    """The house's factor for starting and stopping, 1 where it asks for none."""
    return rigging.dynamic_factor.factor if rigging.dynamic_factor else 1.0


def on_point(
    place: Overhead,
    rigging: Rigging,
    hung: tuple[Body, ...],
    parts: tuple[Shares, ...],
    legs: tuple[Bridled, ...],
) -> OnPoint:
    """Everything that hangs on one point."""
    brought = [*by_hangs(place, rigging, hung, parts), *by_legs(place, legs)]
    factor = factor_of(rigging)
    level = [(each.kg, each.steps) for each in brought]
    kg, steps = together(level, factor)
    worst_kg: float | None = None
    worst_steps: tuple[str, ...] = ()
    if any(each.uneven for each in brought):
        worst_kg, worst_steps = together(
            [(each.worst_kg, (each.worst_step,)) for each in brought], factor
        )
    return OnPoint(
        place,
        rating_of(place.point, rigging),
        tuple(each.name for each in brought),
        kg,
        steps,
        worst_kg,
        worst_why(brought),
        worst_steps,
    )


def together(
    brought: Iterable[tuple[float | None, tuple[str, ...]]], factor: float
) -> tuple[float | None, tuple[str, ...]]:
    """
    The sum of what comes on a point, with the house's factor, and its steps; no sum where a part of
    it is not known. [kg]
    """
    every = tuple(brought)
    steps = [step for _, lines in every for step in lines]
    known = [kg for kg, _ in every if kg is not None]
    if len(known) < len(every):
        return (None, tuple(steps))
    total_kg = fsum(known)
    with_factor_kg = dynamic_load_kg(load_kg=total_kg, dynamic_factor=factor)
    if factor > 1:
        steps.append(f"{total_kg:.1f} kg × {factor:g} = {with_factor_kg:.1f} kg")
    return (with_factor_kg, tuple(steps))


def by_hangs(
    place: Overhead, rigging: Rigging, hung: tuple[Body, ...], parts: tuple[Shares, ...]
) -> Iterator[Brought]:
    """What each hang brings on a point: its share there with the hoist, level and at the worst."""
    for body, part in zip(hung, parts, strict=True):
        for index, support in enumerate(body.hang.supports):
            if same(support.point, place.point.name):
                yield by_hang(body, part, index, rigging)


def by_hang(body: Body, part: Shares, index: int, rigging: Rigging) -> Brought:
    """What one support of a hang brings."""
    name, hoist_kg, share_kg = body.hang.name, hoist_weight_kg(body, index), part.kg[index]
    if share_kg is None:
        unknown = f"{name}: not known"
        return Brought(name, None, (unknown,), None, unknown)
    steps = [f"{name}: {share_kg:.1f} kg on this support"]
    if hoist_kg:
        steps.append(f"Hoist: {hoist_kg:g} kg")
    worst_kg, uneven = max([(share_kg, ""), *worst_of(part, index, rigging)])
    words = f"{name}: {worst_kg:.1f} kg {f'with {uneven}' if uneven else 'on this support'}"
    return Brought(
        name,
        share_kg + hoist_kg,
        tuple(steps),
        worst_kg + hoist_kg,
        f"{words}, and {hoist_kg:g} kg of hoist" if hoist_kg else words,
        uneven,
    )


def by_legs(place: Overhead, legs: tuple[Bridled, ...]) -> Iterator[Brought]:
    """
    What the legs of bridles bring on a point: what they pull straight down.

    A leg pulls the same whether hoists are level or not, so it counts in full in either case.
    """
    for each in legs:
        for index, anchor in enumerate(each.anchors):
            if same(anchor.point.name, place.point.name):
                down_kg = each.legs.verticals_kg[index] if each.legs else None
                step = f"{each.bridle.name}: not known"
                if down_kg is not None:
                    share = f"{down_kg:.1f} kg, the vertical share of this leg"
                    step = f"{each.bridle.name}: {share}"
                yield Brought(each.bridle.name, down_kg, (step,), down_kg, step)


def worst_why(brought: Iterable[Brought]) -> str:
    """What makes the worst case of a point in words; empty where nothing on it can be uneven."""
    return "; ".join(dict.fromkeys(each.uneven for each in brought if each.uneven))


def worst_of(part: Shares, index: int, rigging: Rigging) -> list[tuple[float, str]]:
    """The worst cases of one support, with what makes them."""
    found = []
    if (slack := part.worst_slack_kg(index)) is not None:
        found.append((slack, "one hoist slack"))
    if part.level and rigging.limits.level_within:
        found.append(
            (
                part.level[index].most_kg,
                f"hoists up to {rigging.limits.level_within.text} out of level",
            )
        )
    return found


def groups_of(rigging: Rigging, points: tuple[OnPoint, ...]) -> list[Group]:
    """Beams, zones and the roof, from the nearest to the widest."""
    beams = [
        Group(
            "beam",
            beam.name,
            beam_limit(beam, rigging),
            tuple(point for point in points if point.place.beam is beam),
        )
        for beam in rigging.beams
    ]
    zones = [
        Group(
            "zone",
            zone.name,
            Ruled(zone.limit, "the zone's own line", zone),
            tuple(point for point in points if in_zone(point.place.point, zone)),
        )
        for zone in rigging.zones
    ]
    return [
        *beams,
        *zones,
        Group("roof", ROOF, roof_limit(rigging), points),
    ]


def roof_limit(rigging: Rigging) -> Ruled:
    """What the whole roof may carry, and which rule says so."""
    return Ruled(rigging.limits.whole_roof, "the limit of the whole roof", rigging.limits)


def left_and_full(
    points: tuple[OnPoint, ...], groups: tuple[Group, ...], spacing: float
) -> tuple[dict[str, Left], FullPoints | None]:
    """
    What is left on each usable point, and how many can be full at once.

    Loads of the other points count in their groups.
    """
    usable = [point for point in points if point.usable and point.kg is not None]
    counted = [
        group
        for group in groups
        if group.ruled.kg is not None or (group.kind == "beam" and spacing > 0)
    ]
    rated = [
        RatedPoint(
            point.name,
            point.rating.kg or 0.0,
            point.kg or 0.0,
            tuple(group.key for group in counted if point in group.points),
            point.place.along_m,
        )
        for point in usable
    ]
    limits = [
        GroupLimit(
            group.key,
            limit_kg(group.ruled),
            fsum(point.kg or 0.0 for point in group.points if point not in usable),
            spacing if group.kind == "beam" else 0.0,
        )
        for group in counted
    ]
    if not rated:
        return {}, None
    return {left.name: left for left in left_on_points(rated, limits)}, full_points(rated, limits)


NO_LIMIT_KG = 1e9
"""Stands for no limit where only the spacing rule of a beam is known."""


def limit_kg(ruled: Ruled) -> float:
    """A limit for the formulas."""
    return NO_LIMIT_KG if ruled.kg is None else ruled.kg


def hoists_kg(whole: Whole) -> float:
    """All hoists in standing hangs with their chain. [kg]"""
    return fsum(
        hoist_weight_kg(body, index)
        for body in whole.bodies
        for index in range(len(body.supports_m))
    )
