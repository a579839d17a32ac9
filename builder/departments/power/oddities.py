"""
What is odd about power: a rating beside a breaker of another size, two things on one spot, a feeder
shorter than the straight line.
"""

from collections.abc import Iterator

from builder.confirming import odd
from builder.departments.power.description import Fed, Power
from builder.departments.power.description.supplies import Generator, Spot, Supply
from builder.departments.power.subjects import subject_of
from builder.formulas.tie_lines import straight_m
from builder.oddities import Named, Standing, on_one_spot, path_under_straight, read_between
from builder.pack import Finding
from builder.reading.absent import listed
from builder.reading.measures import System
from builder.reading.quantities import Current, Length

FAR_APART = 4.0
"""
A rating and the breaker beside it are seldom so many times apart: a cable is sized above its
breaker, not ten times above.
"""
Node = Supply | Generator | Fed


def oddities(power: Power, system: System) -> Iterator[Finding]:
    """Everything that is odd about the nodes. Outlets beside their breakers are told elsewhere."""
    nodes: list[Node] = [*power.supplies, *listed(power.generators), *power.services, *power.boards]
    for node in nodes:
        if not isinstance(node, Generator):
            yield from far_from_breaker(node)
    yield from on_one_spot(
        standing(node, node.at) for node in nodes if node.at and node.condition != "out of service"
    )
    for fed in power.fed:
        yield from short_feeder(fed, nodes, system)


def far_from_breaker(record: Supply | Fed) -> Iterator[Finding]:
    """A rating many times its own breaker, or many times less."""
    rating, breaker = record.rating, record.breaker
    if not isinstance(rating, Current) or not isinstance(breaker, Current):
        return
    if breaker.a / FAR_APART < rating.a < breaker.a * FAR_APART:
        return
    yield odd(
        "rating-beside-breaker",
        f"{record.name} is rated {rating.text}, and its breaker is set to {breaker.text}.",
        record.where("rating"),
        question=read_beside(rating, breaker) or " Which one is right?",
        asks_about=f"{rating.text} beside {breaker.text}",
        subject=subject_of(record),
    )


def read_beside(rating: Current, breaker: Current) -> str:
    """What a rating may have been meant as, beside its breaker."""
    return read_between(rating, breaker.a / 2, breaker.a * 2)


def standing(node: Node, at: Spot) -> Standing:
    """A node with its spot."""
    words = ", ".join(part.text for part in (at.across, at.depth, at.height) if part is not None)
    return Standing(
        "power source",
        node.name,
        at.across.m,
        at.depth.m,
        at.height.m if at.height else None,
        at.where(),
        words,
        subject_of(node),
    )


def short_feeder(fed: Fed, nodes: list[Node], system: System) -> Iterator[Finding]:
    """A feeder shorter than the straight line from what feeds it."""
    above = next((node for node in nodes if node.name == fed.fed_from), None)
    if above is None or above.at is None or fed.at is None or fed.feeder is None:
        return
    if isinstance(fed.feeder.length, Length):
        path = Named(
            f"The feeder of {fed.name}",
            fed.feeder.length,
            fed.feeder.where("length"),
            subject_of(fed),
        )
        yield from path_under_straight(
            path, (above.name, fed.name), straight_m(spot_of(above.at), spot_of(fed.at)), system
        )


def spot_of(at: Spot) -> tuple[float, float, float]:
    """A position as the formula takes it; at the deck's height where nobody says."""
    return at.across.m, at.depth.m, at.height.m if at.height else 0.0
