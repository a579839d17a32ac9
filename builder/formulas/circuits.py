"""
A tree of supplies, services and distros as plain numbers: what stands on each node, what is free,
and which node up the tree binds.

Planning figures: the local code, the maker's data and a licensed electrician decide.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import fsum

from builder.formulas.cite import cites
from builder.formulas.phasors import PHASES, Neutral, Phasors, neutral_current, summed_currents
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import NILSSON_RIEDEL

PhaseAmperes = tuple[float, float, float]
"""Amperes of L1, L2, L3."""


@dataclass(frozen=True, slots=True)
class Node:
    """
    A supply, service or distro.

    ``rating_a`` and ``breaker_a`` are per phase [A]; the smaller counts, times ``continuous_share``
    [-]. ``fed_from`` is None for a supply. ``parent_a_per_a`` is the turns ratio of a transformer
    in front of this node: ampere at the parent for each ampere here. [-]
    """

    name: str
    fed_from: str | None
    rating_a: float
    breaker_a: float | None = None
    phases: tuple[str, ...] = PHASES
    continuous_share: float = 1.0
    parent_a_per_a: float = 1.0


@dataclass(frozen=True, slots=True)
class Load:
    """
    A load that stands on a node: its line current phasors and its third harmonic current in each
    line. [A]
    """

    name: str
    node: str
    currents: Phasors
    third_harmonic_a: PhaseAmperes = (0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Standing:
    """
    What stands on a node and what is left, per phase. [A]

    ``carried`` is the phasor sum; ``booked_a`` the sum of the sizes. ``free_a`` is the least left
    up the tree, below 0 where something is overloaded, and ``binding`` names the node that leaves
    it. A phase that the node does not have has limit and free 0.
    """

    name: str
    carried: Phasors
    booked_a: PhaseAmperes
    limit_a: PhaseAmperes
    free_a: PhaseAmperes
    binding: tuple[str, str, str]
    neutral: Neutral


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
    equation="I_node = own loads + sum of children; free = min up the tree of (limit - sum |I|)",
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
    Free is the limit less the sum of the sizes of the currents. That sum is never below the phasor
    sum of any part of the loads, so switching a load off cannot raise a phase above what was
    counted. Left out: a transformer that shifts phases (delta to star) mixes lines; here a line
    stays a line.
    """
    tree = tree_of(nodes)
    below = {name: _loads_below(name, tree, loads) for name in tree.nodes}
    found: dict[str, Standing] = {}
    for name, node in tree.nodes.items():
        booked = booked_a(below[name])
        limit = limit_a(node)
        free, binding = _free(node, limit, booked, found)
        carried = summed_currents([load.currents for load in below[name]])
        neutral = neutral_current(
            carried, third_harmonic_a=[a for load in below[name] for a in load.third_harmonic_a]
        )
        found[name] = Standing(name, carried, booked, limit, free, binding, neutral)
    return found


@cites(NILSSON_RIEDEL, "ch. 9, triangle inequality of phasors", equation="booked = sum |I|")
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
    first, second, third = (fsum(abs(load.currents[k]) for load in loads) for k in range(3))
    return (first, second, third)


def _loads_below(name: str, tree: Tree, loads: Sequence[Load]) -> list[Load]:
    """Loads on this node or under it, in this node's ampere."""
    below = []
    for load in loads:
        if load.node not in tree.nodes:
            raise ValueError(
                f"node of load {load.name!r} must be a node, got {load.node!r}, which does not"
                " exist"
            )
        if name in tree.path[load.node]:
            _refuse_missing_phases(load, tree.nodes[load.node])
            below.append(_scaled(load, tree.scale[load.node] / tree.scale[name]))
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


def _scaled(load: Load, ratio: float) -> Load:
    one, two, three = load.currents
    first, second, third = load.third_harmonic_a
    return Load(
        load.name,
        load.node,
        (one * ratio, two * ratio, three * ratio),
        (first * ratio, second * ratio, third * ratio),
    )


def _free(
    node: Node, limit: PhaseAmperes, booked: PhaseAmperes, above: dict[str, Standing]
) -> tuple[PhaseAmperes, tuple[str, str, str]]:
    """
    Least left from this node up, with the node that leaves it; on a tie the node nearest to the
    load.
    """
    free, binding = [], []
    for k, phase in enumerate(PHASES):
        left, name = limit[k] - booked[k], node.name
        if node.fed_from is not None and phase in node.phases:
            parent_left = above[node.fed_from].free_a[k] / node.parent_a_per_a
            if parent_left < left:
                left, name = parent_left, above[node.fed_from].binding[k]
        free.append(left)
        binding.append(name)
    return (free[0], free[1], free[2]), (binding[0], binding[1], binding[2])
