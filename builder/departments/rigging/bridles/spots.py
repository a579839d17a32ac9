"""
Spots that shows ask for: which free points make them by two or three legs, the gentlest pull first.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import comb, hypot

from builder.departments.rigging.bridles.legs import Legs, legs_to
from builder.departments.rigging.bridles.standing import anchor_places, forbidden, widest_deg
from builder.departments.rigging.bridles.stock_legs import Made, from_stock
from builder.departments.rigging.description import Rigging
from builder.departments.rigging.description.bridles import KnownSpot, is_known_spot
from builder.departments.rigging.description.steel import LimitException, Limits, Point
from builder.departments.rigging.steel.figures import FACTOR
from builder.departments.rigging.steel.geometry import heights_of
from builder.departments.rigging.steel.limits import Pulled, pulled
from builder.departments.rigging.steel.readings import is_factor_open
from builder.departments.rigging.steel.totals import OnPoint, Whole, factor_of
from builder.formulas.bridles import Place
from builder.formulas.loads import dynamic_load_kg
from builder.reading.absent import Absent, is_unknown

TOO_FLAT_DEG = 120.0
"""
Beyond this angle between two equal legs, each carries more than the load; half of it is the lean of
each.
"""
REACH_M = 12.0
"""
Points farther than this from a spot, seen from above, are not looked at: no leg in the trade's
stock reaches.
"""
ROUNDING = 1e-6
MOST_GROUPS = 30_000
"""
So many pairs or threes of points are looked at for all spots together. Where there would be more,
the points nearest to each spot are taken, for they pull least, and the page says so.
"""


@dataclass(frozen=True, slots=True)
class Choice:
    """Points that make a spot, and what their legs pull."""

    points: tuple[OnPoint, ...]
    legs: Legs

    @property
    def names(self) -> tuple[str, ...]:
        """The names of the points."""
        return tuple(point.name for point in self.points)


@dataclass(frozen=True, slots=True)
class Spotted:
    """
    A wanted spot with the choices that make it, the gentlest first, and the first one made of
    steels in stock. ``why``: why there is none. ``left_out``: how many points within reach were too
    many to look at. ``unplaced``: what must be known of where points are that might make it more
    gently; there is then no choice.
    """

    spot: KnownSpot
    choices: tuple[Choice, ...]
    tried: int
    made: Made | None = None
    why: str = ""
    left_out: int = 0
    unplaced: tuple[str, ...] = ()


def spotted(whole: Whole) -> Iterator[Spotted]:
    """Every wanted spot of which all is known, with what makes it."""
    for spot in whole.rigging.wanted_spots:
        if is_known_spot(spot):
            yield search(spot, whole)


def search(spot: KnownSpot, whole: Whole) -> Spotted:
    """All pairs, or threes, of free points that may make a spot."""
    if why := forbidden((), whole.rigging):
        return Spotted(spot, (), 0, why=why)
    apex = apex_of(spot)
    lacking = (*lacking_rules(whole.rigging), *lacking_places(apex, whole))
    if unplaced := tuple(dict.fromkeys(lacking)):
        return Spotted(spot, (), 0, unplaced=unplaced)
    there = list(candidates(apex, whole))
    near = nearest(there, apex, most_points(spot.legs, len(whole.rigging.wanted_spots)))
    left_out = len(there) - len(near)
    geometric = [
        choice
        for group in combinations(near, spot.legs)
        if (choice := choice_of(spot, apex, group))
    ]
    factor = factor_of(whole.rigging)
    left_kg = {point.name: whole.surely_left_kg(point.name) for point in near}
    allowed = sorted(
        (choice for choice in geometric if may(choice, whole.rigging, left_kg, factor=factor)),
        key=lambda choice: (round(max(choice.legs.tensions_kg), 6), choice.names),
    )
    if not allowed:
        why = no_choice(spot, len(near), len(geometric))
        if None in left_kg.values():
            why += NOT_SURE
        return Spotted(spot, (), len(geometric), why=why, left_out=left_out)
    places = anchor_places(point.place for point in allowed[0].points) or ()
    made = from_stock(
        spot.load.kg * factor,
        apex,
        places,
        whole.rigging.steels,
        lambda legs: may(Choice(allowed[0].points, legs), whole.rigging, left_kg, factor=1.0),
    )
    return Spotted(spot, tuple(allowed), len(geometric), made, left_out=left_out)


def most_points(legs: int, spots: int) -> int:
    """How many points may be looked at for one spot, so that all spots stay within the bound."""
    points = legs
    while comb(points + 1, legs) * spots <= MOST_GROUPS:
        points += 1
    return points


def nearest(points: Sequence[OnPoint], apex: Place, most: int) -> list[OnPoint]:
    """The points nearest to a spot, seen from above, in the order of the venue."""
    by_reach = sorted(points, key=lambda point: (reach_m(point, apex), point.name))
    kept = {point.name for point in by_reach[:most]}
    return [point for point in points if point.name in kept]


def reach_m(point: OnPoint, apex: Place) -> float:
    """How far a point is from a spot, seen from above. [m]"""
    return hypot(point.place.known_at[0] - apex[0], point.place.known_at[1] - apex[1])


def apex_of(spot: KnownSpot) -> Place:
    """Where the load is wanted."""
    return (spot.apex.across.m, spot.apex.depth.m, spot.apex.height.m)


def candidates(apex: Place, whole: Whole) -> Iterator[OnPoint]:
    """
    Points that a leg may go to: in service, free, with a rating and a known low steel above the
    spot, where bridles are allowed.
    """
    for point in whole.points:
        place = point.place
        is_above = place.at is not None and place.steel_m is not None and place.steel_m > apex[2]
        if is_above and may_carry(point, whole) and reach_m(point, apex) <= REACH_M:
            yield point


def may_carry(point: OnPoint, whole: Whole) -> bool:
    """Whether a leg may go to a point, wherever that is."""
    return point.usable and not point.hangs and not forbidden((point.place,), whole.rigging)


def lacking_rules(rigging: Rigging) -> Iterator[str]:
    """What must be known of the house's rules before points may be told to make a spot."""
    rule = rigging.bridles_allowed
    if not isinstance(rule, Absent):
        if is_unknown(rule.allowed):
            yield "whether bridles are allowed"
        if is_unknown(rule.widest_angle):
            yield "the widest angle between two legs"
    if is_factor_open(rigging):
        yield FACTOR
    if is_unknown(rigging.exceptions):
        yield "the exceptions to the limits"
    rules: list[Limits | LimitException | Point] = [rigging.general]
    rules += [*rigging.told_exceptions, *rigging.points]
    if any(is_unknown(rule.directions) for rule in rules):
        yield "which way points may be pulled"
    if any(is_unknown(rule.widest_lean) for rule in rules):
        yield "how far a pull may lean"


def lacking_places(apex: Place, whole: Whole) -> Iterator[str]:
    """What must be known of where points are that may be above a spot and within reach."""
    for point in whole.points:
        place = point.place
        known = ((place.across_m, apex[0]), (place.depth_m, apex[1]))
        is_far = any(at_m is not None and abs(at_m - spot_m) > REACH_M for at_m, spot_m in known)
        heights = heights_of(place.beam)
        is_low = heights is not None and heights[1] <= apex[2]
        if place.at is None and may_carry(point, whole) and not is_far and not is_low:
            yield place.lacks_place


def choice_of(spot: KnownSpot, apex: Place, points: Sequence[OnPoint]) -> Choice | None:
    """The bridle to some points, None where they cannot hold the spot."""
    places = anchor_places(point.place for point in points)
    legs = legs_to(spot.load.kg, apex, places) if places else ""
    return None if isinstance(legs, str) else Choice(tuple(points), legs)


def may(
    choice: Choice, rigging: Rigging, left_kg: Mapping[str, float | None], *, factor: float
) -> bool:
    """
    True where angles, directions, ratings and what is surely left on each point allow a bridle;
    ``factor`` is what its pulls do not hold yet of the house's own. [kg by the point's name]
    """
    widest = widest_deg(rigging) or TOO_FLAT_DEG
    legs = choice.legs
    if (
        legs.widest_deg > min(widest, TOO_FLAT_DEG) + ROUNDING
        or max(legs.leans_deg) > TOO_FLAT_DEG / 2 + ROUNDING
    ):
        return False
    rows = zip(choice.points, legs.tensions_kg, legs.verticals_kg, legs.leans_deg, strict=True)
    return all(
        leg_may(
            point,
            pulled(point.place.point, rigging),
            left_kg[point.name],
            dynamic_load_kg(load_kg=pull, dynamic_factor=factor),
            down * factor,
            lean,
        )
        for point, pull, down, lean in rows
    )


def leg_may(
    point: OnPoint,
    rule: Pulled,
    left_kg: float | None,
    pull_kg: float,
    down_kg: float,
    lean_deg: float,
) -> bool:
    """True where one point, of which so much is surely left, may take one leg."""
    straight = rule.widest_deg is not None and lean_deg > rule.widest_deg + ROUNDING
    return (
        not straight
        and pull_kg <= (point.rating.kg or 0.0) + ROUNDING
        and left_kg is not None
        and down_kg <= left_kg + ROUNDING
    )


NOT_SURE = "; what is left on some of these points is not known"


def no_choice(spot: KnownSpot, near: int, geometric: int) -> str:
    """Why no points make a spot."""
    words = "pair" if spot.legs == 2 else "three"
    if near < spot.legs:
        return f"only {near} free points on beams that allow bridles are above it and within reach"
    if not geometric:
        return f"of {near} free points no {words} has the spot between and below"
    return (
        f"{geometric} {words}s of points reach it, and each breaks an angle, a direction or a limit"
    )
