"""
In which order single-phase circuits go on the phases, and how many of them hold.

Planning figures: the local code and a licensed electrician decide.
"""

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from builder.formulas.circuits import Load, Node, Tree, standing, tree_of
from builder.formulas.cite import cites
from builder.formulas.free_circuits import Outlet
from builder.formulas.phasors import PHASES
from builder.formulas.sources import EDMONDS


@dataclass(frozen=True, slots=True)
class NextCircuit:
    """
    One circuit in its turn: the entry of outlets it goes on, the phase, and what was left there
    before it. [A]
    """

    outlet: str
    phase: str
    left_a: float


@cites(
    EDMONDS,
    "the greedy algorithm for matroids; for loads of one size, limits that lie one in another"
    " make one",
    equation=(
        "next = the outlet left with most: max over outlets of min up the tree (limit - booked -"
        " taken), while it is >= I"
    ),
)
def circuits_in_order(
    nodes: Sequence[Node], loads: Sequence[Load], outlets: Sequence[Outlet]
) -> tuple[NextCircuit, ...]:
    """
    The next single-phase circuits, each on the phase with most left, until none more holds.

    Parameters
    ----------
    nodes
        Supplies, services and boards.
    loads
        Standing loads with the node they stand on.
    outlets
        Entries of outlets with one phase each, all for the same current. On a tie the earlier entry
        goes first.

    Returns
    -------
    tuple of NextCircuit
        In order. Their number is the most that hold at the same time, where no two boards with
        different transformers are mixed. [A]

    Raises
    ------
    ValueError
        If the nodes are no tree, an outlet is on no node or has more than one phase, or the
        currents differ.

    Notes
    -----
    Currents add up as sizes. An entry whose own breaker is smaller than its current is left out.
    """
    tree, found = tree_of(nodes), standing(nodes, loads)
    current_a = _checked(outlets, tree)
    room = {
        (name, phase): max(0, _floor_ma(found[name].free_a[k] * tree.scale[name]))
        for name in tree.nodes
        for k, phase in enumerate(PHASES)
    }
    left = Counter(
        {
            one.name: one.count
            for one in outlets
            if one.breaker_a is None or one.breaker_a >= one.ampere_a
        }
    )
    order: list[NextCircuit] = []
    while True:
        fitting = [(_least_ma(one, room, tree), one) for one in outlets if left[one.name] > 0]
        most_ma, best = max(
            fitting, key=lambda pair: pair[0] / tree.scale[pair[1].node], default=(0, None)
        )
        if best is None or most_ma < _ceil_ma(current_a * tree.scale[best.node]):
            return tuple(order)
        order.append(NextCircuit(best.name, best.phases[0], most_ma / tree.scale[best.node] / 1000))
        left[best.name] -= 1
        for node in tree.path[best.node]:
            room[node, best.phases[0]] -= _ceil_ma(current_a * tree.scale[best.node])


def _checked(outlets: Sequence[Outlet], tree: Tree) -> float:
    """The current that all outlets are for; 0 where there are none."""
    for outlet in outlets:
        if outlet.node not in tree.nodes:
            raise ValueError(
                f"node of outlet {outlet.name!r} must be a node, got {outlet.node!r}, which does"
                " not exist"
            )
        if len(outlet.phases) != 1 or outlet.phases[0] not in tree.nodes[outlet.node].phases:
            raise ValueError(
                f"outlet {outlet.name!r} must have one phase of {outlet.node!r}, got"
                f" {outlet.phases}"
            )
    currents = {outlet.ampere_a for outlet in outlets}
    if len(currents) > 1:
        raise ValueError(
            "outlets must be for one current, got"
            f" {', '.join(f'{current_a:g} A' for current_a in sorted(currents))}"
        )
    return max(currents, default=0.0)


def _least_ma(outlet: Outlet, room: dict[tuple[str, str], int], tree: Tree) -> int:
    return min(room[node, outlet.phases[0]] for node in tree.path[outlet.node])


def _floor_ma(current_a: float) -> int:
    return math.floor(current_a * 1000 + 1e-6)


def _ceil_ma(current_a: float) -> int:
    return math.ceil(current_a * 1000 - 1e-6)
