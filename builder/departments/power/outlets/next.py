"""
Where the next single-phase loads go: for each board with such sockets, the phase of each in its
turn, and how many hold.
"""

from collections.abc import Iterator, Sequence
from itertools import groupby

from builder.cautions import ELECTRICITY
from builder.departments.power.circuits.open_limits import lacking_limits
from builder.departments.power.circuits.tree import Network
from builder.departments.power.description import Outlet, Power
from builder.departments.power.outlets.at_once import (
    breaker_open,
    count_of,
    counted_there,
    phases_of,
    rows_of,
    usable,
    why_not_counted,
)
from builder.formulas.circuit_order import NextCircuit, circuits_in_order
from builder.formulas.free_circuits import Outlet as Row
from builder.formulas.phasors import PHASES
from builder.pack import Fact, Figure, Input, Item, Value, not_more
from builder.pack import Standing as Said
from builder.reading.addresses import distinct
from builder.reading.measures import shown
from builder.reading.quantities import Current
from builder.working import figure, missing, worked

LEAVES_OUT = (
    "Loads on other boards of the same service, inrush, and sockets that share a breaker. Currents"
    " are added as sizes, whatever their angles."
)
MOST_STEPS = 12
"""Turns that a working tells one by one."""


def next_items(power: Power, network: Network) -> Iterator[Item]:
    """An item for each board and rating of single-phase sockets."""
    found: dict[tuple[str, str, str], list[Outlet]] = {}
    for outlet in usable(power):
        if is_single(outlet, network) and isinstance(outlet.rating, Current):
            found.setdefault((outlet.fed_from, outlet.connector, outlet.rating.text), []).append(
                outlet
            )
    names = [f"{board}: {connector}, {rating}" for board, connector, rating in found]
    for kind, name, last in zip(found, names, distinct(names), strict=True):
        yield next_item(f"power.next.{last}", kind[0], name, found[kind], network)


def is_single(outlet: Outlet, network: Network) -> bool:
    """
    True where each outlet is between one phase of several and neutral, so that there is a phase to
    choose.
    """
    turns = isinstance(outlet.phases, str) and outlet.phases.in_turn
    return len(network.sources[outlet.fed_from].phases) > 1 and (
        turns or len(phases_of(outlet, network)) == 1
    )


def next_item(key: str, board: str, name: str, outlets: Sequence[Outlet], network: Network) -> Item:
    """The sockets of one board and kind."""
    there = counted_there(count_of(outlets))
    rows = [
        row
        for number, outlet in enumerate(outlets, 1)
        for row in rows_of(outlet, f"{outlet.place}, line {number}", network)
    ]
    each = shown(Current, rows[0].ampere_a)[0] if rows else "–"
    said = (
        ("board", "Board", Value(board)),
        ("connector", "Connector", Value(outlets[0].connector)),
        ("places", "Places", Value(", ".join(dict.fromkeys(each.place for each in outlets)))),
        ("there", "There", there),
        ("each", "Full load for hours", Value(each, number=rows[0].ampere_a if rows else None)),
    )
    facts = tuple(
        Fact(f"{key}.{what}", label, Said.STATED if value else Said.UNKNOWN, value)
        for what, label, value in said
    )
    lacking = dict.fromkeys(
        reason for outlet in outlets for reason in why_not_counted(outlet, network)
    )
    figures = (
        nothing(key, list(lacking))
        if lacking
        else order_figures(key, board, rows, network, is_open=breaker_open(outlets))
    )
    return Item(key, "next", name, facts, tuple(figures))


def nothing(key: str, lacking: Sequence[str]) -> Iterator[Figure]:
    """The figures of a board that nobody has described well enough."""
    for name, label in (("holds", "Holds"), ("order", "In this order")):
        yield missing(
            f"{key}.{name}",
            label,
            worked(circuits_in_order, inputs=()),
            lacking,
            caution=ELECTRICITY,
        )


def order_figures(
    key: str, board: str, rows: Sequence[Row], network: Network, *, is_open: bool
) -> Iterator[Figure]:
    """How many hold, how many on each phase, and the order; ``is_open`` where it may be fewer."""
    order = circuits_in_order(network.nodes, network.loads, rows)
    inputs = [
        Input(f"Free on {phase} of {board}", f"{free_a:.4g} A")
        for phase, free_a in free_of(board, network)
    ]
    inputs += [
        Input(row.name, f"{row.count} on {row.phases[0]}, {row.ampere_a:.4g} A each at full load")
        for row in rows
    ]
    working = worked(
        circuits_in_order, inputs=inputs, steps=steps(order, rows), leaves_out=LEAVES_OUT
    )
    is_open = is_open or bool(lacking_limits(board, network)) or bool(takes_from(board, network))
    holds = Value(f"{len(order):,}", number=float(len(order)))
    yield figure(
        f"{key}.holds",
        "Holds",
        not_more(holds) if order and is_open else holds,
        working,
        caution=ELECTRICITY,
    )
    for phase in network.sources[board].phases:
        count = sum(each.phase == phase for each in order)
        here = Value(f"{count:,}", number=float(count))
        yield figure(
            f"{key}.{phase}",
            phase,
            not_more(here) if count and is_open else here,
            working,
            caution=ELECTRICITY,
        )
    order_key, label = f"{key}.order", "In this order"
    if is_open and order:
        lacking = (*lacking_limits(board, network), *takes_from(board, network))
        lacking = lacking or ("the breaker of each",)
        nothing_yet = worked(circuits_in_order, inputs=())
        yield missing(order_key, label, nothing_yet, lacking, caution=ELECTRICITY)
        return
    value = Value(in_words(order) or "none holds")
    yield figure(order_key, label, value, working, caution=ELECTRICITY)


def takes_from(board: str, network: Network) -> tuple[str, ...]:
    """Loads of unknown size that may leave less on a board than its figures say."""
    if network.at_most[board].free_a == network.standing[board].free_a:
        return ()
    way = set(network.tree.path[board])
    asked = [left.asked for left in network.left_out]
    what = [each.what for each in asked if way & set(network.tree.path.get(each.on, ()))]
    return tuple(f"what {name} draws" for name in dict.fromkeys(what))


def free_of(board: str, network: Network) -> list[tuple[str, float]]:
    """What is free on each phase of a board. [A]"""
    free = network.standing[board].free_a
    return [(phase, max(0.0, free[PHASES.index(phase)])) for phase in network.sources[board].phases]


def steps(order: Sequence[NextCircuit], rows: Sequence[Row]) -> list[str]:
    """The first turns: what was left on the phase, and what is left after."""
    current_a = rows[0].ampere_a if rows else 0.0
    told = [
        f"{turn}. {each.phase}: {each.left_a:.4g} A − {current_a:.4g} A ="
        f" {each.left_a - current_a:.4g} A"
        for turn, each in enumerate(order, 1)
    ]
    rest = [f"and so on, to {len(told)}"] if len(told) > MOST_STEPS else []
    return [
        *told[:MOST_STEPS],
        *rest,
        f"{len(order)} hold; on every phase a further one is above what is left, or has no socket",
    ]


def in_words(order: Sequence[NextCircuit]) -> str:
    """The order as phases; a run that comes again is told by how often."""
    phases = [each.phase for each in order]
    length = next(
        (
            size
            for size in range(1, len(phases))
            if phases == (phases[:size] * len(phases))[: len(phases)]
        ),
        len(phases),
    )
    times, rest = divmod(len(phases), length) if phases else (0, 0)
    if times > 1:
        tail = f", then {' '.join(phases[:rest])}" if rest else ""
        return f"{' '.join(phases[:length])}, {times} times{tail}"
    return " ".join(
        f"{phase} × {count}" if (count := len(list(run))) > 1 else phase
        for phase, run in groupby(phases)
    )
