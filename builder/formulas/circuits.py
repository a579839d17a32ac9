"""
A tree of supplies, services and distros as plain numbers: what stands on each node, what is free,
and which node up the tree binds.

Planning figures: the local code, the maker's data and a licensed electrician decide.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import fsum

from builder.formulas.cite import cites
from builder.formulas.neutral_limits import left_in_neutral_a
from builder.formulas.phasors import PHASES, Neutral, Phasors, neutral_current, summed_currents
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import NILSSON_RIEDEL
from builder.formulas.windings import Load as Load
from builder.formulas.windings import PhaseAmperes as PhaseAmperes
from builder.formulas.windings import Winding, free_behind, most_by_line, seen_before


@dataclass(frozen=True, slots=True)
class Node:
    """
    A supply, service or distro.

    ``rating_a`` and ``breaker_a`` are per phase [A]; the smaller counts, times ``continuous_share``
    [-]. ``fed_from`` is None for a supply. ``parent_a_per_a`` is the turns ratio of a transformer
    in front of this node: ampere at the parent for each ampere of an even load here [-], and
    ``winding`` tells how its lines stand on the parent's. ``neutral_a`` is the rating of the
    neutral, None where there is none or nobody knows; ``active_a`` what an engine turns, as current
    on each phase at power factor 1. [A]
    """

    name: str
    fed_from: str | None
    rating_a: float
    breaker_a: float | None = None
    phases: tuple[str, ...] = PHASES
    continuous_share: float = 1.0
    parent_a_per_a: float = 1.0
    winding: Winding = "line"
    neutral_a: float | None = None
    active_a: float | None = None


@dataclass(frozen=True, slots=True)
class Standing:
    """
    What stands on a node and what is left, per phase. [A]

    ``carried`` is the phasor sum; ``booked_a`` the sum of the sizes. ``left_a`` is what the node
    itself leaves and ``left_by`` what of it does: empty for its lines, else its neutral or its
    engine. ``free_a`` is the least left up the tree, below 0 where something is overloaded;
    ``binding`` names the node that leaves it, and ``bound_by`` what of that one. A phase that the
    node does not have has limit and free 0. ``sure`` is false where a transformer below may put
    what it carries on other lines.
    """

    name: str
    carried: Phasors
    booked_a: PhaseAmperes
    limit_a: PhaseAmperes
    left_a: PhaseAmperes
    left_by: tuple[str, str, str]
    free_a: PhaseAmperes
    binding: tuple[str, str, str]
    bound_by: tuple[str, str, str]
    neutral: Neutral
    sure: bool


@dataclass(frozen=True, slots=True)
class Tree:
    """
    Nodes by name, parents first; ``path`` runs from each node up to its supply; ``scale`` is ampere
    at the supply per ampere here.
    """

    nodes: dict[str, Node]
    path: dict[str, tuple[str, ...]]
    scale: dict[str, float]


@cites(
    NILSSON_RIEDEL,
    "ch. 2, Kirchhoff's current law; ch. 9, ideal transformer",
    equation="I_supply = I_node * product of turns ratios",
)
def tree_of(nodes: Iterable[Node]) -> Tree:
    """
    Order nodes into a tree.

    Parameters
    ----------
    nodes
        Supplies, services and distros, in any order; several supplies make several trees.

    Returns
    -------
    Tree
        Nodes with parents first, the way up from each, and the turns ratio to the supply.

    Raises
    ------
    ValueError
        If a name is written twice, a node is fed from itself, from nothing or in a loop, has a
        phase its parent lacks, or has a number out of range.
    """
    named: dict[str, Node] = {}
    for node in nodes:
        if node.name in named:
            raise ValueError(f"nodes must have names of their own, got {node.name!r} twice")
        named[node.name] = _checked(node)
    path = {name: _way_up(name, named) for name in named}
    order = sorted(named, key=lambda name: len(path[name]))
    scale: dict[str, float] = {}
    for name in order:
        parent = named[name].fed_from
        scale[name] = named[name].parent_a_per_a * scale[parent] if parent is not None else 1.0
        if parent is not None and not set(named[name].phases) <= set(named[parent].phases):
            raise ValueError(
                f"phases of {name!r} must be among those of {parent!r}, got {named[name].phases}"
                f" from {named[parent].phases}"
            )
    return Tree({name: named[name] for name in order}, path, scale)


def _way_up(name: str, named: dict[str, Node]) -> tuple[str, ...]:
    way = [name]
    while (parent := named[way[-1]].fed_from) is not None:
        if parent == way[-1]:
            raise ValueError(f"fed_from of {parent!r} must be another node, got itself")
        if parent not in named:
            raise ValueError(
                f"fed_from of {way[-1]!r} must be a node, got {parent!r}, which does not exist"
            )
        if parent in way:
            raise ValueError(
                f"fed_from must lead to a supply, got a loop: {' from '.join([*way, parent])}"
            )
        way.append(parent)
    return tuple(way)


def _checked(node: Node) -> Node:
    not_negative(f"rating_a of {node.name!r}", node.rating_a)
    if node.breaker_a is not None:
        not_negative(f"breaker_a of {node.name!r}", node.breaker_a)
    above_zero(f"parent_a_per_a of {node.name!r}", node.parent_a_per_a)
    if not 0 < node.continuous_share <= 1:
        raise ValueError(
            f"continuous_share of {node.name!r} must be above 0 and at most 1, got"
            f" {node.continuous_share}"
        )
    if (
        not node.phases
        or len(set(node.phases)) != len(node.phases)
        or not set(node.phases) <= set(PHASES)
    ):
        raise ValueError(
            f"phases of {node.name!r} must be some of L1, L2, L3, each once, got {node.phases}"
        )
    return node


@cites(
    NILSSON_RIEDEL,
    "ch. 2, series elements carry one current",
    equation="limit = min(rating, breaker) * share",
)
def limit_a(node: Node) -> PhaseAmperes:
    """
    What a node may carry on each phase.

    Parameters
    ----------
    node
        The node; its rating and breaker are in series, so the smaller counts.

    Returns
    -------
    tuple of three float
        Limit on L1, L2, L3; 0 on a phase it does not have. [A]
    """
    least = (
        min(node.rating_a, node.breaker_a if node.breaker_a is not None else node.rating_a)
        * node.continuous_share
    )
    first, second, third = (least if phase in node.phases else 0.0 for phase in PHASES)
    return (first, second, third)


@cites(
    NILSSON_RIEDEL,
    "ch. 2, Kirchhoff's current law; triangle inequality",
    equation="I_node = own loads + sum of children; free = min up the tree of what each leaves",
)
def standing(nodes: Sequence[Node], loads: Sequence[Load]) -> dict[str, Standing]:
    """
    What stands on every node of a tree, what is free per phase, and which node up the tree binds.

    Parameters
    ----------
    nodes
        Supplies, services and distros.
    loads
        Loads with the node they stand on.

    Returns
    -------
    dict of Standing
        By node name, parents first. [A]

    Raises
    ------
    ValueError
        If the nodes are no tree, or a load stands on no node or on a phase its node lacks.

    Notes
    -----
    A node leaves the limit less the sum of the sizes of the currents, or what its neutral or its
    engine leaves where that is less. The sum of sizes is never below the phasor sum of any part of
    the loads, so switching a load off cannot raise a phase above what was counted.
    """
    tree = tree_of(nodes)
    below = loads_by_node(tree, loads)
    found: dict[str, Standing] = {}
    for name, node in tree.nodes.items():
        booked, limit = booked_a(below[name]), limit_a(node)
        left, reasons = _own_left(node, limit, booked, below[name])
        free, binding, bound_by = _free(node, left, reasons, found)
        carried = summed_currents([load.currents for load in below[name]])
        neutral = neutral_current(
            carried, third_harmonic_a=[a for load in below[name] for a in load.third_harmonic_a]
        )
        sure = all(load.ways == () for load in below[name])
        found[name] = Standing(
            name, carried, booked, limit, left, reasons, free, binding, bound_by, neutral, sure
        )
    return found


@cites(
    NILSSON_RIEDEL,
    "ch. 9, triangle inequality of phasors",
    equation="booked = sum |I|",
)
def booked_a(loads: Sequence[Load]) -> PhaseAmperes:
    """
    Sum of the sizes of load currents on each phase, whatever their angles.

    Parameters
    ----------
    loads
        Loads, already in the ampere of one node.

    Returns
    -------
    tuple of three float
        Booked on L1, L2, L3. [A]
    """
    by_way: dict[tuple[str, int], list[tuple[PhaseAmperes, ...]]] = {}
    for load in loads:
        ways = load.ways or (load.sizes,)
        by_way.setdefault((load.via, len(ways)), []).append(ways)
    # Loads behind one transformer are joined alike, so the worst way is that of their sum.
    worst = [
        most_by_line(_added(one_way) for one_way in zip(*alike, strict=True))
        for alike in by_way.values()
    ]
    return _added(worst)


def _added(rows: Sequence[PhaseAmperes]) -> PhaseAmperes:
    first, second, third = (fsum(row[k] for row in rows) for k in range(3))
    return (first, second, third)


def loads_by_node(tree: Tree, loads: Sequence[Load]) -> dict[str, list[Load]]:
    """
    The loads on each node or under it, as that node sees them.

    Parameters
    ----------
    tree
        The nodes.
    loads
        Loads with the node they stand on.

    Returns
    -------
    dict of list of Load
        By node. [A]

    Raises
    ------
    ValueError
        If a load stands on no node or on a phase its node lacks.
    """
    below: dict[str, list[Load]] = {name: [] for name in tree.nodes}
    for load in loads:
        if load.node not in tree.nodes:
            raise ValueError(
                f"node of load {load.name!r} must be a node, got {load.node!r}, which does not"
                " exist"
            )
        _refuse_missing_phases(load, tree.nodes[load.node])
        here = load
        for name in tree.path[load.node]:
            below[name].append(here)
            node = tree.nodes[name]
            here = seen_before(
                here,
                winding=node.winding,
                ratio=node.parent_a_per_a,
                phases=node.phases,
                via=name,
            )
    return below


def _refuse_missing_phases(load: Load, node: Node) -> None:
    used = tuple(
        phase for phase, current in zip(PHASES, load.currents, strict=True) if current != 0
    )
    if not set(used) <= set(node.phases):
        raise ValueError(
            f"phases of load {load.name!r} must be among those of {node.name!r}, got {used} on"
            f" {node.phases}"
        )


def _own_left(
    node: Node, limit: PhaseAmperes, booked: PhaseAmperes, below: Sequence[Load]
) -> tuple[PhaseAmperes, tuple[str, str, str]]:
    """What a node leaves on each phase, and by what: its lines (empty), its neutral, its engine."""
    third_a = fsum(a for load in below for a in load.third_harmonic_a)
    left, reasons = [], []
    for k, phase in enumerate(PHASES):
        here, reason = limit[k] - booked[k], ""
        if phase in node.phases and node.neutral_a is not None and len(node.phases) > 1:
            there = left_in_neutral_a(
                limit_a=node.neutral_a * node.continuous_share,
                third_harmonic_a=third_a,
                line_returns_a=fsum(load.returns[k] for load in below),
            )
            here, reason = (there, "neutral") if there < here else (here, reason)
        if phase in node.phases and node.active_a is not None:
            active_a = fsum(load.sizes[k] * load.power_factor for load in below)
            there = node.active_a * node.continuous_share - active_a
            here, reason = (there, "engine") if there < here else (here, reason)
        left.append(here)
        reasons.append(reason)
    return (left[0], left[1], left[2]), (reasons[0], reasons[1], reasons[2])


def _free(
    node: Node, left: PhaseAmperes, reasons: tuple[str, str, str], above: dict[str, Standing]
) -> tuple[PhaseAmperes, tuple[str, str, str], tuple[str, str, str]]:
    """
    Least left from this node up, with the node that leaves it and by what; on a tie the node
    nearest to the load.
    """
    free, binding, bound_by = [*left], [node.name] * 3, [*reasons]
    if node.fed_from is not None:
        parent = above[node.fed_from]
        for k, phase in enumerate(PHASES):
            if phase not in node.phases:
                continue
            behind, line = free_behind(
                parent.free_a,
                k,
                winding=node.winding,
                ratio=node.parent_a_per_a,
                phases=node.phases,
            )
            if behind < free[k]:
                free[k], binding[k] = behind, parent.binding[line]
                bound_by[k] = parent.bound_by[line]
    return (
        (free[0], free[1], free[2]),
        (binding[0], binding[1], binding[2]),
        (bound_by[0], bound_by[1], bound_by[2]),
    )
