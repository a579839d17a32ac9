"""What the house should know about its outlets: what protects them, and what they ask together."""

from collections.abc import Iterator, Sequence
from difflib import get_close_matches
from math import fsum

from builder.departments.power.circuits.tree import Network
from builder.departments.power.description import Outlet, Power, Service
from builder.departments.power.outlets.at_once import rows_of
from builder.departments.power.subjects import told
from builder.formulas.circuits import limit_a
from builder.formulas.connectors import CONNECTORS, connectors_named
from builder.formulas.phasors import PHASES
from builder.pack import Finding, Level
from builder.reading.absent import Absent
from builder.reading.quantities import Current
from builder.reading.references import spelling
from builder.stating import place

ROUNDING = 1e-6
NEAR = 0.86
"""How alike two names must be before one is taken for a slip of the other, from 0 to 1."""


def outlet_findings(outlets: Sequence[Outlet], network: Network) -> Iterator[Finding]:
    """Each line of outlets that works, then all that hang on one service or board."""
    working = [outlet for outlet in outlets if outlet.condition != "out of service"]
    for outlet in outlets:
        if near := near_name(outlet.connector):
            yield outlet_told(
                Level.NOTE,
                "connector-unknown",
                unknown_words(outlet.connector, near),
                outlet,
                "connector",
            )
    for outlet in working:
        yield from ill_protected(outlet, network)
    yield from outlets_together(working, network)


def near_name(connector: str) -> str:
    """
    The standard's name that an unknown one is probably meant for; empty where it is known, or
    nothing is near.
    """
    if connectors_named(connector):
        return ""
    spelled = {known.name.lower(): known.name for known in CONNECTORS}
    near = get_close_matches(" ".join(connector.lower().split()), spelled, n=1, cutoff=NEAR)
    return spelled[near[0]] if near else ""


def unknown_words(connector: str, near: str) -> str:
    """The sentence on an unknown name."""
    return (
        f"'{connector}' is no connector that we know; did you mean '{near}'? Until then nothing is"
        " said of what mates with it."
    )


def service_connectors(service: Service) -> Iterator[Finding]:
    """Names among a service's connectors that are probably meant for others."""
    for connector in service.connectors if not isinstance(service.connectors, Absent) else ():
        if near := near_name(connector):
            yield told(
                Level.NOTE,
                "connector-unknown",
                unknown_words(connector, near),
                service,
                "connectors",
            )


def connectors_under_breaker(service: Service, power: Power) -> Iterator[Finding]:
    """
    Connectors of a service that the standard makes for less than its breaker, or its rating, lets
    through, and that no listed outlets behind a smaller breaker are.
    """
    limits = [("breaker", service.breaker), ("rating", service.rating)]
    what, limit = next(
        ((name, each) for name, each in limits if isinstance(each, Current)), ("", None)
    )
    if limit is None or isinstance(service.connectors, Absent):
        return
    for connector in service.connectors:
        known = connectors_named(connector)
        made_a = max((each.ampere_a for each in known), default=limit.a)
        if made_a < limit.a - ROUNDING and not has_own_breaker(service, connector, made_a, power):
            sentence = (
                f"{service.name} has {connector}, which the standard makes for {made_a:g} A, and"
                f" its {what} is {limit.text}. What protects the connector?"
            )
            yield told(Level.CAUTION, "connector-under-breaker", sentence, service, "connectors")


def has_own_breaker(service: Service, connector: str, made_a: float, power: Power) -> bool:
    """Whether outlets of that connector on the service are listed behind a breaker small enough."""
    return any(
        outlet.fed_from == service.name
        and spelling(outlet.connector) == spelling(connector)
        and isinstance(outlet.breaker, Current)
        and outlet.breaker.a <= made_a + ROUNDING
        for outlet in (*power.outlets, *power.shore_outlets)
    )


def outlet_told(level: Level, code: str, sentence: str, outlet: Outlet, key: str) -> Finding:
    """A finding on a line of outlets."""
    return Finding(level, code, sentence, "power.outlet", place(outlet.where(key)))


def ill_protected(outlet: Outlet, network: Network) -> Iterator[Finding]:
    """
    An outlet that a breaker cannot feed fully, that its breaker does not protect, or that is rated
    above its connector.
    """
    if isinstance(outlet.rating, Absent):
        return
    what = f"The {outlet.rating.text} outlets {outlet.connector} at {outlet.place}"
    yield from behind_smaller(outlet, what, outlet.rating, network)
    if isinstance(outlet.breaker, Current) and outlet.breaker.a > outlet.rating.a + ROUNDING:
        sentence = (
            f"{what} stand behind a breaker of {outlet.breaker.text}, larger than the outlet. Does"
            " the local code allow it here?"
        )
        yield outlet_told(Level.CAUTION, "breaker-over-outlet", sentence, outlet, "breaker")
    known = connectors_named(outlet.connector)
    if known and outlet.rating.a > max(connector.ampere_a for connector in known) + ROUNDING:
        sentence = (
            f"{what} are rated above the connector, which the standard makes for"
            f" {max(connector.ampere_a for connector in known)} A."
        )
        yield outlet_told(Level.CAUTION, "rating-over-connector", sentence, outlet, "rating")


def behind_smaller(
    outlet: Outlet, what: str, rating: Current, network: Network
) -> Iterator[Finding]:
    """A breaker, the outlet's own or one up the tree, that is smaller than the outlet."""
    if isinstance(outlet.breaker, Current) and outlet.breaker.a < rating.a - ROUNDING:
        sentence = (
            f"{what} stand behind a breaker of {outlet.breaker.text}, so none gives its full"
            " rating."
        )
        yield outlet_told(Level.CAUTION, "outlet-over-breaker", sentence, outlet, "rating")
        return
    for up in network.tree.path[outlet.fed_from]:
        limit = network.sources[up].binding
        if limit and rating.a * network.ratio(outlet.fed_from, up) > limit.current_a + ROUNDING:
            sentence = (
                f"{what} are fed from {up}, which stops at {limit.current_a:.4g} A ({limit.what}),"
                " so none gives its full rating."
            )
            yield outlet_told(Level.CAUTION, "outlet-over-breaker", sentence, outlet, "rating")
            return


def outlets_together(outlets: Sequence[Outlet], network: Network) -> Iterator[Finding]:
    """Outlets that together are rated for more than the service or board behind them, by phase."""
    for source in network.sources.values():
        rows = [
            row
            for outlet in outlets
            if outlet.fed_from == source.name
            for row in rows_of(outlet, "row", network)
        ]
        if not rows or source.binding is None:
            continue
        phase, total_a = max(
            (
                (phase, fsum(r.count * r.ampere_a for r in rows if phase in r.phases))
                for phase in PHASES
            ),
            key=lambda pair: pair[1],
        )
        limit = max(limit_a(source.node))
        if total_a > limit + ROUNDING:
            count = sum(row.count for row in rows)
            sentence = (
                f"The {count} outlets on {source.name} ask {total_a:,.4g} A on {phase} when all are"
                f" loaded fully, and it may carry {limit:.4g} A. The page tells how many can be"
                " used at the same time."
            )
            yield told(Level.NOTE, "outlets-over-service", sentence, source.record)
