"""Legs made of steels in stock: which lengths come nearest, and where the apex then lands."""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations_with_replacement, product
from math import dist, fsum

from builder.departments.rigging.bridles.legs import Legs, apex_of, legs_to
from builder.departments.rigging.description.bridles import Steel
from builder.formulas.bridles import Place
from builder.reading.in_part import ends_of
from builder.reading.quantities import Length, Mass

MOST_PIECES = 3
"""No leg is made of more steels than this."""
NEAR_M = 0.6
"""Legs that differ more than this from the wanted length are not tried."""
KEPT = 8
"""So many lengths of each leg are tried, the nearest first."""

Leg = tuple[Steel, ...]


@dataclass(frozen=True, slots=True)
class Made:
    """
    Legs of steels, where they let the apex land, what they then pull, and how far that is from
    where it was wanted. [m]
    """

    legs: tuple[Leg, ...]
    apex: Place
    pulls: Legs
    off_m: float


def from_stock(
    load_kg: float,
    wanted: Place,
    anchors: Sequence[Place],
    steels: Sequence[Steel],
    allowed: Callable[[Legs], bool],
) -> Made | None:
    """
    The legs from stock whose apex lands nearest to a wanted place, of those that are ``allowed``
    where they land; None where the stock makes none.
    """
    usable = [
        steel
        for steel in steels
        if steel.condition != "out of service" and there(steel) > 0 and is_measured(steel)
    ]
    each = [lengths_near(dist(wanted, anchor), usable) for anchor in anchors]
    found = [
        made
        for legs in product(*each)
        if (made := landed(load_kg, wanted, anchors, legs)) and allowed(made.pulls)
    ]
    return min(
        found,
        key=lambda made: (round(made.off_m, 6), sum(len(leg) for leg in made.legs)),
        default=None,
    )


def there(steel: Steel) -> int:
    """How many of a steel there are for certain."""
    return ends_of(steel.count)[0] or 0


def is_measured(steel: Steel) -> bool:
    """Whether a steel's length and rating are known, without which no leg is made of it."""
    return isinstance(steel.length, Length) and isinstance(steel.rating, Mass)


def unmeasured_steels(steels: Iterable[Steel]) -> tuple[str, ...]:
    """The names of steels that may be used, and whose length or rating nobody knows."""
    return tuple(
        steel.name
        for steel in steels
        if steel.condition != "out of service" and not is_measured(steel)
    )


def lengths_near(wanted_m: float, steels: Sequence[Steel]) -> list[Leg]:
    """Legs of one to three steels near a length, one for each length, of the fewest pieces."""
    by_length: dict[float, Leg] = {}
    for pieces in range(1, MOST_PIECES + 1):
        for leg in combinations_with_replacement(steels, pieces):
            if abs(length_m(leg) - wanted_m) <= NEAR_M:
                by_length.setdefault(round(length_m(leg), 6), leg)
    return [leg for _, leg in sorted(by_length.items(), key=lambda row: abs(row[0] - wanted_m))][
        :KEPT
    ]


def length_m(leg: Leg) -> float:
    """The length of a leg, shackles not counted. [m]"""
    return fsum(steel.length.m for steel in leg if isinstance(steel.length, Length))


def landed(
    load_kg: float, wanted: Place, anchors: Sequence[Place], legs: Sequence[Leg]
) -> Made | None:
    """
    Where some legs let the apex land; None where the stock has too few, they do not meet, or one is
    too weak.
    """
    if any(count > there(steel) for steel, count in counted(legs)):
        return None
    apex = apex_of([length_m(leg) for leg in legs], anchors)
    pulls = legs_to(load_kg, apex, anchors) if not isinstance(apex, str) else apex
    if isinstance(apex, str) or isinstance(pulls, str):
        return None
    strong = all(
        isinstance(steel.rating, Mass) and pull <= steel.rating.kg + 1e-6
        for leg, pull in zip(legs, pulls.tensions_kg, strict=True)
        for steel in leg
    )
    return Made(tuple(legs), apex, pulls, dist(wanted, apex)) if strong else None


def counted(legs: Sequence[Leg]) -> Iterator[tuple[Steel, int]]:
    """How many of each steel some legs take."""
    names = Counter(steel.name for leg in legs for steel in leg)
    first = {steel.name: steel for leg in legs for steel in leg}
    yield from ((first[name], count) for name, count in names.items())
