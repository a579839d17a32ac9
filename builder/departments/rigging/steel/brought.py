"""
What one hang or one leg of a bridle brings on a point, a beam, a zone or the roof: as planned, and
at its worst.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import fsum

from builder.departments.rigging.bridles.standing import Bridled
from builder.departments.rigging.description import Rigging
from builder.departments.rigging.hangs.bodies import (
    GRAM_KG,
    OUT_OF_LEVEL,
    Body,
    Shares,
    hoist_weight_kg,
)
from builder.departments.rigging.steel.limits import among, same
from builder.formulas.loads import dynamic_load_kg
from builder.reading.quantities import Length

RELIEVED = "what relieves it counted as nothing"


@dataclass(frozen=True, slots=True)
class Brought:
    """
    What one hang or one leg of a bridle brings, without the house's factor. [kg]

    ``kg`` is what it does as planned: the share of a hang with its hoist, the pull of a leg.
    ``down_kg`` is the part straight down, which is all that beams and roof feel. ``counted_kg`` is
    what counts against a limit: a load that lifts there is nothing. ``worst_kg`` is the most when
    hoists are not as planned, and ``uneven`` what makes it; empty for what brings the same whatever
    hoists do. All are None where they cannot be worked out.
    """

    name: str
    kg: float | None
    steps: tuple[str, ...] = ()
    down_kg: float | None = None
    counted_kg: float | None = None
    counted_step: str = ""
    worst_kg: float | None = None
    worst_step: str = ""
    uneven: str = ""


@dataclass(frozen=True, slots=True)
class Counted:
    """
    What counts against a limit as planned and at the worst, as far as known, in kg with the house's
    factor, with the steps of each and what makes the worst.
    """

    kg: float
    worst_kg: float
    is_known: bool
    steps: tuple[str, ...]
    worst_steps: tuple[str, ...]
    worst_why: str


def on_point(
    name: str,
    rigging: Rigging,
    hung: Iterable[tuple[Body, Shares]],
    legs: Iterable[Bridled],
) -> Iterator[Brought]:
    """What each hang and each leg brings on a point."""
    for body, part in hung:
        for index, support in enumerate(body.supports):
            if same(support.point, name):
                yield by_hang(body, part, (index,), rigging)
    for each in legs:
        for index, anchor in enumerate(each.anchors):
            if same(anchor.point.name, name):
                yield by_leg(each, index)


def on_group(
    names: tuple[str, ...],
    rigging: Rigging,
    hung: Iterable[tuple[Body, Shares]],
    legs: Iterable[Bridled],
) -> Iterator[Brought]:
    """What each hang and each bridle brings on some points together, straight down."""
    for body, part in hung:
        supports = [support.point for support in body.supports]
        if within := tuple(index for index, on in enumerate(supports) if among(on, names)):
            yield by_hang(body, part, within, rigging)
    for each in legs:
        for index, anchor in enumerate(each.anchors):
            if among(anchor.point.name, names):
                leg = by_leg(each, index)
                step = f"{each.bridle.name}: {words(leg.down_kg)} straight down"
                yield Brought(
                    leg.name,
                    leg.down_kg,
                    (step,),
                    leg.down_kg,
                    leg.down_kg,
                    step,
                    leg.down_kg,
                    step,
                )


def by_standing(what: str, kg: float | None) -> Brought:
    """What hangs on a beam for good brings on it and on all that bears it, straight down."""
    step = f"{what}: {words(kg)}"
    return Brought(what, kg, (step,), kg, kg, step, kg, step)


def words(kg: float | None) -> str:
    """A load in a step."""
    return "not known" if kg is None else f"{kg:.1f} kg"


def by_hang(body: Body, part: Shares, supports: tuple[int, ...], rigging: Rigging) -> Brought:
    """What some supports of a hang bring together."""
    name = body.hang.name
    known = [kg for index in supports if (kg := part.kg[index]) is not None]
    hoists = [kg for index in supports if (kg := hoist_weight_kg(body, index)) is not None]
    if len(known) < len(supports) or len(hoists) < len(supports):
        unknown = f"{name}: not known"
        return Brought(name, None, (unknown,), counted_step=unknown, worst_step=unknown)
    hoist_kg = fsum(hoists)
    share_kg = fsum(known)
    on = "this support" if len(supports) == 1 else f"{len(supports)} supports"
    steps = [f"{name}: {share_kg:.1f} kg on {on}"]
    if hoist_kg:
        steps.append(f"Hoist: {hoist_kg:g} kg")
    counted_kg = part.unrelieved_kg(supports)
    worst_kg, uneven = part.uneven_kg(supports)
    tolerance = rigging.general.level_within
    if uneven == OUT_OF_LEVEL and isinstance(tolerance, Length):
        uneven = f"hoists up to {tolerance.text} out of level"
    counted = f"{counted_kg:.1f} kg on {on}"
    if counted_kg > share_kg + GRAM_KG:
        counted = f"{counted}, {RELIEVED}"
    worst = f"{worst_kg:.1f} kg with {uneven}" if uneven else counted
    hoist = f", and {hoist_kg:g} kg of hoist" if hoist_kg else ""
    return Brought(
        name,
        share_kg + hoist_kg,
        tuple(steps),
        share_kg + hoist_kg,
        counted_kg + hoist_kg,
        f"{name}: {counted}{hoist}",
        worst_kg + hoist_kg,
        f"{name}: {worst}{hoist}",
        uneven,
    )


def by_leg(each: Bridled, index: int) -> Brought:
    """
    What a leg of a bridle brings on its point: all that it pulls, and its part straight down.

    A leg pulls the same whether hoists are level or not, so it counts in full in either case. What
    pulls in another direction than straight down is added as if it did not: never too little.
    """
    name = each.bridle.name
    if each.legs is None:
        unknown = f"{name}: not known"
        return Brought(name, None, (unknown,), counted_step=unknown, worst_step=unknown)
    pull_kg, down_kg = each.legs.tensions_kg[index], each.legs.verticals_kg[index]
    step = f"{name}: {pull_kg:.1f} kg, the pull in this leg, {down_kg:.1f} kg of it straight down"
    return Brought(name, pull_kg, (step,), down_kg, pull_kg, step, pull_kg, step)


def counted(brought: Iterable[Brought], factor: float) -> Counted:
    """All that counts against one limit, the house's factor in it."""
    every = tuple(brought)
    known = [each for each in every if each.counted_kg is not None]
    kg, steps = together([(each.counted_kg or 0.0, (each.counted_step,)) for each in every], factor)
    worst = [(each.worst_kg or 0.0, (each.worst_step,)) for each in every]
    worst_kg, worst_steps = together(worst, factor)
    is_known = len(known) == len(every)
    return Counted(kg or 0.0, worst_kg or 0.0, is_known, steps, worst_steps, worst_why(known))


def together(
    brought: Iterable[tuple[float | None, tuple[str, ...]]], factor: float
) -> tuple[float | None, tuple[str, ...]]:
    """
    The sum of what comes on something, with the house's factor, and its steps; no sum where a part
    of it is not known. [kg]
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


def worst_why(brought: Iterable[Brought]) -> str:
    """What makes the worst case in words; empty where nothing there can be uneven."""
    return "; ".join(dict.fromkeys(each.uneven for each in brought if each.uneven))
