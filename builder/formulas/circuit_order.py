"""
In which order single-phase circuits go on the phases, and how many of them hold.

Planning figures: the local code and a licensed electrician decide.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from builder.formulas.circuit_rows import Row, Taken, next_row, with_one
from builder.formulas.circuits import Load, Node, Tree, standing, tree_of
from builder.formulas.cite import cites
from builder.formulas.free_circuits import Outlet
from builder.formulas.milliampere import ceil_ma, floor_ma
from builder.formulas.phase_room import PHASES, Room, least_left, way_along
from builder.formulas.rooms import Rooms, rooms_for
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
    tree = tree_of(nodes)
    current_a = _checked(outlets, tree)
    rooms = rooms_for(tree, standing(nodes, loads), [outlet.node for outlet in outlets])
    rows = [_row(outlet, current_a, rooms) for outlet in outlets]
    taken: Taken = {"room": _room(rooms), "used": {}}
    order: list[NextCircuit] = []
    while (index := next_row(rows, taken)) is not None:
        row, outlet = rows[index], outlets[index]
        left_ma = least_left(taken["room"], row["way"]) or 0.0
        left_a = left_ma / row["per_ampere"] / 1000
        order.append(NextCircuit(outlet.name, outlet.phases[0], left_a))
        taken = with_one(row, taken)
    return tuple(order)


def _room(rooms: Rooms) -> Room:
    """What each node leaves on each phase, in milliampere at its root; 0 where overloaded."""
    return {
        name: {
            phase: float(floor_ma(left_a[k] * rooms.scale[name])) for k, phase in enumerate(PHASES)
        }
        for name, left_a in rooms.left_a.items()
    }


def _row(outlet: Outlet, current_a: float, rooms: Rooms) -> Row:
    """An entry of outlets as a row; without a slot where its own breaker is too small."""
    scale = rooms.scale[outlet.node]
    too_small = outlet.breaker_a is not None and outlet.breaker_a < outlet.ampere_a
    return {
        "key": outlet.name,
        "way": way_along(list(rooms.path[outlet.node]), list(outlet.phases)),
        "phases": list(outlet.phases),
        "slots": 0 if too_small else outlet.count,
        "amount": float(ceil_ma(current_a * scale)),
        "per_ampere": scale,
        "preferred": True,
    }


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
