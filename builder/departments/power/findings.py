"""What the house should know about its circuits."""

from collections.abc import Iterator
from math import fsum

from builder.departments.power.amounts import phase_sizes
from builder.departments.power.circuits.drops import alone_drops, drop_at, limit_percent
from builder.departments.power.circuits.feeders import feeder_findings
from builder.departments.power.circuits.generators import loading
from builder.departments.power.circuits.neutrals import neutral_findings
from builder.departments.power.circuits.open_limits import harsh_conditions
from builder.departments.power.circuits.sources import Source
from builder.departments.power.circuits.tree import WHAT_IT_DRAWS, Asked, Network
from builder.departments.power.description import Fed, Generator, Power, Service
from builder.departments.power.description.wiring import USUAL_IMBALANCE
from builder.departments.power.dimmers import dimmer_findings
from builder.departments.power.outlets.findings import (
    connectors_under_breaker,
    outlet_findings,
    service_connectors,
)
from builder.departments.power.subjects import told
from builder.formulas.circuits import limit_a
from builder.formulas.phasors import PHASES, imbalance_percent
from builder.pack import Finding, Level
from builder.reading.absent import Absent, is_unknown
from builder.reading.in_part import ends_of
from builder.stating import place

NOTABLE_SHARE = 0.1
"""
Imbalance is told where the heaviest phase carries at least this share of the limit: one lamp on an
empty service is no imbalance.
"""
ROUNDING = 1e-6


def findings(power: Power, network: Network) -> Iterator[Finding]:
    """All findings, node by node, then outlets, then loads."""
    for source in network.sources.values():
        yield from overloads(source, network)
        yield from unevenness(source, network, power)
        yield from neutral_findings(source, network)
        yield from voltages_open(source)
        yield from larger_than_its_source(source, network)
        if isinstance(source.record, Fed):
            yield from long_feeder(source, network, power)
            yield from feeder_findings(source)
        if isinstance(source.record, Service):
            yield from incomplete(source.record, source)
            yield from service_connectors(source.record)
            yield from connectors_under_breaker(source.record, power)
        if isinstance(source.record, Generator):
            yield from generator_load(source.record, network)
        yield from more_below_than_it_carries(source, network)
    yield from dimmer_findings(power, network)
    yield from outlet_findings((*power.outlets, *power.shore_outlets), network)
    if is_unknown(power.standing_loads):
        where = place(power.where("standing_loads"))
        yield Finding(Level.NOTE, "load-left-out", LOADS_UNKNOWN, "power.rules", where)
    for left in network.left_out:
        if left.has_ends or left.asked.what == WHAT_IT_DRAWS:
            continue
        if left.asked.beyond:
            yield counted_in_part(left.asked)
            continue
        sentence = (
            f"{left.asked.what} on {left.asked.on} is in no figure: {left.why}. What is free"
            " is less by what it draws."
        )
        yield Finding(
            Level.NOTE,
            "load-left-out",
            sentence,
            "power.load",
            place(left.asked.where) if left.asked.where else None,
        )


def counted_in_part(asked: Asked) -> Finding:
    """What a load of which only the least is known may draw beyond it."""
    what = asked.what.removesuffix(f" (beyond {asked.beyond})")
    sentence = (
        f"{what} on {asked.on} counts with {asked.beyond}, the least it draws. What it draws beyond"
        " that is in no figure, and what is free is less by it."
    )
    where = place(asked.where) if asked.where else None
    return Finding(Level.NOTE, "load-left-out", sentence, "power.load", where)


LOADS_UNKNOWN = (
    "Nobody knows what the house draws anyway. What is free is less by that, on everything."
)


def overloads(source: Source, network: Network) -> Iterator[Finding]:
    """Standing loads above what a node may carry at all, or for hours."""
    if source.binding is None:
        return
    booked = network.standing[source.name].booked_a
    phase, worst_a = max(zip(PHASES, booked, strict=True), key=lambda pair: pair[1])
    limit, share = source.binding, max(limit_a(source.node))
    if worst_a > limit.current_a + ROUNDING:
        sentence = (
            f"{source.name} carries {worst_a:.1f} A of standing loads on {phase}, and its"
            f" {limit.what} is {limit.current_a:.4g} A."
        )
        yield told(Level.DANGER, "standing-load-over-rating", sentence, source.record)
    elif worst_a > share + ROUNDING:
        sentence = (
            f"{source.name} carries {worst_a:.1f} A of standing loads on {phase}. For hours on end"
            f" it may carry {share:.4g} A, {source.share * 100:.3g} % of its {limit.what}."
        )
        yield told(Level.CAUTION, "standing-load-over-continuous", sentence, source.record)


def unevenness(source: Source, network: Network, power: Power) -> Iterator[Finding]:
    """
    Phases loaded more unevenly than the house wants, told once, at the lowest node that all these
    loads hang on: there they can be moved.
    """
    if not is_uneven(source, network, power):
        return
    fed = [other for other in network.sources.values() if other.fed_from == source.name]
    if any(
        network.below(other.name) == network.below(source.name) and is_uneven(other, network, power)
        for other in fed
    ):
        return
    sizes = phase_sizes(network.standing[source.name], source.phases)
    words = ", ".join(
        f"{phase} {size_a:.1f} A" for phase, size_a in zip(source.phases, sizes, strict=True)
    )
    uneven, limit = imbalance_percent(sizes), uneven_from_percent(power) or 0.0
    wanted = (
        f"the house wants {limit:.3g} % at most"
        if "imbalance_limit" in power.model_fields_set and ends_of(power.imbalance_limit)[0]
        else f"{limit:.3g} % is assumed as the limit (common practice, no source), for the house"
        " writes none"
    )
    sentence = (
        f"{source.name} is loaded unevenly, {words}: {uneven:.0f} % off the mean, and {wanted}."
    )
    yield told(Level.CAUTION, "phases-uneven", sentence, source.record)


def is_uneven(source: Source, network: Network, power: Power) -> bool:
    """
    True where phases are loaded more unevenly than the house wants, and the load is worth the talk.
    """
    sizes = phase_sizes(network.standing[source.name], source.phases)
    if len(sizes) < 2 or not any(sizes) or max(sizes) < NOTABLE_SHARE * max(limit_a(source.node)):
        return False
    limit = uneven_from_percent(power)
    return limit is not None and imbalance_percent(sizes) > limit + ROUNDING


def uneven_from_percent(power: Power) -> float | None:
    """
    From which imbalance on the house wants to know, at least; the usual where nobody knows, None
    where it wants none told. [%]
    """
    stated = power.imbalance_limit
    if stated is Absent.NONE:
        return None
    return (ends_of(stated)[0] or USUAL_IMBALANCE).share * 100


def voltages_open(source: Source) -> Iterator[Finding]:
    """
    A system of several lines with one voltage that may be to neutral or between lines; or two that
    do not go together.
    """
    own = getattr(source.record, "system", Absent.NOT_STATED)
    if isinstance(own, Absent):
        return
    found = own.voltages
    if found.line_to_neutral_v is None or found.line_to_line_v is None:
        factor = "1.7" if found.lines == 3 else "2"
        sentence = (
            f"{source.name} says {own}: line to line, or line to neutral? Its power differs by a"
            f" factor of {factor} between the two."
        )
        yield told(Level.CAUTION, "voltage-basis-missing", sentence, source.record, "system")
        return
    expected = found.line_to_neutral_v * (
        3**0.5 if found.lines == 3 else 2 if found.lines == 2 else 1
    )
    if abs(found.line_to_line_v / expected - 1) > 0.02:
        sentence = (
            f"{source.name} says {own}, but {found.line_to_neutral_v:.4g} V to neutral makes"
            f" {expected:.0f} V between lines."
        )
        yield told(Level.CAUTION, "voltages-disagree", sentence, source.record, "system")


def larger_than_its_source(source: Source, network: Network) -> Iterator[Finding]:
    """A rating that what feeds it cannot carry, with nothing else on."""
    if source.fed_from is None or source.binding is None:
        return
    above = network.sources[source.fed_from]
    asked_a = source.binding.current_a * network.ratio(source.name, above.name)
    if above.binding and asked_a > above.binding.current_a + ROUNDING:
        sentence = (
            f"{source.name} is rated {source.binding.current_a:.4g} A, but {above.name}, which"
            f" feeds it, stops at {above.binding.current_a:.4g} A ({above.binding.what})."
        )
        yield told(Level.CAUTION, "rating-over-source", sentence, source.record, "rating")


def more_below_than_it_carries(source: Source, network: Network) -> Iterator[Finding]:
    """
    Services and boards that together are rated for more than what feeds them.

    Usual, and a reader must know.
    """
    fed = [
        other
        for other in network.sources.values()
        if other.fed_from == source.name and other.binding
    ]
    total_a = fsum(
        other.binding.current_a * network.ratio(other.name, source.name)
        for other in fed
        if other.binding
    )
    if len(fed) > 1 and source.binding and total_a > source.binding.current_a + ROUNDING:
        sentence = (
            f"The {len(fed)} ways fed from {source.name} are rated {total_a:,.4g} A together, and"
            f" it carries {source.binding.current_a:.4g} A. They cannot all be used fully at the"
            " same time."
        )
        yield told(Level.NOTE, "services-over-supply", sentence, source.record)


def long_feeder(source: Source, network: Network, power: Power) -> Iterator[Finding]:
    """A feeder that loses more than the house allows at full continuous load."""
    limit = limit_percent(power, "feeder")
    if (
        limit is None
        or source.binding is None
        or not isinstance(source.record, Fed)
        or source.record.feeder is None
    ):
        return
    found = drop_at(source.name, max(limit_a(source.node)), network, power)
    if isinstance(found, list):
        return
    if found.percent <= limit + ROUNDING:
        yield from long_for_one_line(source, network, power, limit)
        return
    lost = f"{found.percent:.1f} % ({found.drop_v:.1f} V {found.base})"
    sentence = (
        f"The feeder of {source.name} loses {lost} at full load; the house's limit is"
        f" {limit:.3g} %."
    )
    yield told(Level.CAUTION, "voltage-drop-over-limit", sentence, source.record, "feeder")


def long_for_one_line(
    source: Source, network: Network, power: Power, limit: float
) -> Iterator[Finding]:
    """A feeder that holds the house's limit with an even load, and not with one line alone."""
    drops = alone_drops(source.name, network, power)
    if drops is None or drops[0][1].percent <= limit + ROUNDING:
        return
    sentence = (
        f"The feeder of {source.name} loses {drops[0][1].percent:.1f} % where one line alone is"
        f" loaded fully; the house's limit is {limit:.3g} %. An even load holds it."
    )
    yield told(Level.NOTE, "voltage-drop-over-limit", sentence, source.record, "feeder")


def incomplete(service: Service, source: Source) -> Iterator[Finding]:
    """A service that a visitor cannot plan with: no connector, no phases, nobody who ties in."""
    lacking = []
    if service.connectors is Absent.NOT_STATED:
        lacking.append("which connector it has")
    if isinstance(service.system, Absent) or not source.phases_said:
        lacking.append("which phases and voltages it has")
    tie_in = service.tie_in
    if service.terms != "not for visitors" and (
        tie_in is None or tie_in.who is Absent.NOT_STATED or tie_in.notice is Absent.NOT_STATED
    ):
        lacking.append("who ties in and with what notice")
    if lacking:
        words = " or ".join([", ".join(lacking[:-1]), lacking[-1]] if len(lacking) > 1 else lacking)
        yield told(
            Level.NOTE,
            "service-incomplete",
            f"{service.name} does not say {words}. Every visitor will ask.",
            service,
        )


def generator_load(generator: Generator, network: Network) -> Iterator[Finding]:
    """A generator whose rating may not hold where it runs, or that the house's loads overload."""
    if conditions := harsh_conditions(generator):
        sentence = (
            f"{generator.name} runs {' and '.join(conditions)}, and nothing says what its maker"
            " takes off for that. What it gives is less than its plate says."
        )
        yield told(Level.CAUTION, "derating-missing", sentence, generator)
    found = loading(generator, network)
    if not isinstance(found, list) and found.share > 1 + ROUNDING:
        sentence = (
            f"{generator.name} is loaded to {found.share * 100:.0f} % of its rating on site by the"
            " house's own loads alone."
        )
        yield told(Level.DANGER, "generator-overloaded", sentence, generator)
