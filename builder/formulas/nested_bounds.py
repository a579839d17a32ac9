"""
What nested limits hold: exact choices where items load phases in step, and upper bounds where they
do not.

Whole milliampere. Limits hang in a tree and hold for each phase apart; an item weighs on one phase
or several, all the way up.

The idea: where all items weigh on the same set of phases, taking the smallest first is exact. If a
best choice leaves the smallest out, that item can replace one in the lowest limit that it breaks,
and every limit above is then loaded no more than before. Where sets are mixed, forget something and
the same rule gives a number that no choice can pass: forget how a sum of phases is shared
(``upper_bound``), or where below the shared node the single ones stand (``bound_by_kinds``), or
that branches share a root (``bound_by_branches``). The least of these is the bound. It stops being
exact where two sets of phases compete on one limit and none of the three sees it; the search in
``nested_limits.py`` then splits the case.
"""

import math
from bisect import bisect_right
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate, combinations, pairwise, product

from builder.formulas.cite import cites
from builder.formulas.sources import LAND_DOIG

COMBINATIONS = 200_000
"""Numbers of items by kind to go through for one bound."""

Room = Mapping[tuple[str, str], int]
"""What a limit leaves, by node and phase. [mA]"""


@dataclass(frozen=True, slots=True)
class Item:
    """
    ``count`` equal items that weigh ``weight_ma`` on each of ``phases``, at every node of ``path``
    (own node first, root last).
    """

    name: str
    path: tuple[str, ...]
    phases: tuple[str, ...]
    weight_ma: int
    count: int


@cites(LAND_DOIG, "relaxation", equation="D_v = own items + sum over children of min(D_c, room_c)")
def demand_of(items: Sequence[Item], room: Room) -> dict[tuple[str, str], int]:
    """
    What could arrive at each node and phase: its own items and what its children let through.

    Parameters
    ----------
    items
        Items. [mA]
    room
        What each node leaves on each phase. [mA]

    Returns
    -------
    dict of int
        By node and phase. [mA]
    """
    parents = {child: parent for item in items for child, parent in pairwise(item.path)}
    depth = {node: len(item.path) - k for item in items for k, node in enumerate(item.path)}
    demand: dict[tuple[str, str], int] = defaultdict(int)
    for item in items:
        for phase in item.phases:
            demand[item.path[0], phase] += item.weight_ma * item.count
    for node in sorted(depth, key=lambda name: (-depth[name], name)):
        if node in parents:
            for phase in {p for item in items for p in item.phases}:
                demand[parents[node], phase] += min(demand[node, phase], room[node, phase])
    return demand


def _smallest_first(
    items: Iterable[Item], weigh: Callable[[Item], int], capacity: Mapping[str, int]
) -> Counter[str]:
    """
    Take items in order of weight, as many as every node on the way up still holds; one capacity a
    node.
    """
    left, taken = dict(capacity), Counter[str]()
    for item in sorted(items, key=lambda one: (weigh(one), one.name)):
        weight = weigh(item)
        number = (
            min([item.count, *(left[node] // weight for node in item.path)])
            if weight
            else item.count
        )
        taken[item.name] = number
        for node in item.path:
            left[node] -= number * weight
    return taken


@cites(LAND_DOIG, "relaxation", equation="smallest first, under min over phases of the room")
def on_one_set(items: Sequence[Item], room: Room) -> Counter[str]:
    """
    Exact choice among items that all have the same set of phases: they fill those phases in step,
    so the fullest one decides.

    Parameters
    ----------
    items
        Items with one set of phases. [mA]
    room
        What each node leaves on each phase. [mA]

    Returns
    -------
    Counter
        Number of each item.
    """
    nodes = {node for item in items for node in item.path}
    return _smallest_first(
        items,
        lambda item: item.weight_ma,
        {n: min(room[n, p] for p in items[0].phases) for n in nodes},
    )


@cites(LAND_DOIG, "relaxation", equation="smallest first on each phase apart")
def singles(items: Sequence[Item], room: Room) -> Counter[str]:
    """
    Exact choice among items with one phase each: the phases do not touch.

    Parameters
    ----------
    items
        Items with one phase each. [mA]
    room
        What each node leaves on each phase. [mA]

    Returns
    -------
    Counter
        Number of each item.
    """
    taken = Counter[str]()
    for phase in sorted({item.phases[0] for item in items}):
        taken += on_one_set([item for item in items if item.phases[0] == phase], room)
    return taken


@cites(LAND_DOIG, "relaxation", equation="max count under sums of rooms over some phases")
def upper_bound(items: Sequence[Item], room: Room) -> int:
    """
    Least of several relaxations, each of which adds up some phases and forgets how they are shared.

    Parameters
    ----------
    items
        Items. [mA]
    room
        What each node leaves on each phase. [mA]

    Returns
    -------
    int
        No choice has more items.
    """
    if not items:
        return 0
    demand = demand_of(items, room)
    tight = {key: min(room[key], wanted) for key, wanted in demand.items()}
    nodes = {node for item in items for node in item.path}
    phases = sorted({phase for item in items for phase in item.phases})
    least = sum(item.count for item in items)
    for size in range(1, len(phases) + 1):
        for some in combinations(phases, size):
            capacity = {node: sum(tight.get((node, phase), 0) for phase in some) for node in nodes}
            least = min(least, _smallest_first(items, _weigher(some), capacity).total())
    return least


def _weigher(some: Sequence[str]) -> Callable[[Item], int]:
    return lambda item: item.weight_ma * len(set(item.phases).intersection(some))


@cites(
    LAND_DOIG,
    "relaxation",
    equation="max over k of k + sum over phases of the most single ones in room - lightest k",
)
def bound_by_kinds(items: Sequence[Item], room: Room) -> int:
    """
    Upper bound for items that share a node: for every number of items of each set of phases, what
    the single ones can still add there.

    Parameters
    ----------
    items
        Items, at least one. [mA]
    room
        What each node leaves on each phase. [mA]

    Returns
    -------
    int
        No choice has more items.

    Notes
    -----
    Whole items on each phase apart, so that leftovers of three phases are not added up to one more
    item. Without a shared node, or with too many numbers to go through, it is the count of all
    items.
    """
    shared = set(items[0].path).intersection(*(item.path for item in items))
    kinds = sorted({tuple(sorted(item.phases)) for item in items})
    if not shared:
        return sum(item.count for item in items)
    top = next(node for node in items[0].path if node in shared)
    lightest = {kind: _lightest(items, kind, top, room) for kind in kinds}
    several = [kind for kind in kinds if len(kind) > 1]
    if math.prod(len(lightest[kind]) for kind in several) > COMBINATIONS:
        return sum(item.count for item in items)
    left = {phase: room[top, phase] for kind in kinds for phase in kind}
    return max(
        _with_singles(dict(zip(several, numbers, strict=True)), lightest, left)
        for numbers in product(*(range(len(lightest[k])) for k in several))
    )


@cites(
    LAND_DOIG,
    "relaxation",
    equation="B(v) = min(bound with v's own room, own items + sum over children of B(c))",
)
def bound_by_branches(items: Sequence[Item], room: Room, *, depth: int = 1) -> int:
    """
    Upper bound where the limits that bind hang lower than the root: the least of the whole and of
    its branches added up.

    Parameters
    ----------
    items
        Items under one root, at least one. [mA]
    room
        What each node leaves on each phase. [mA]
    depth
        Nodes that all paths share from the root.

    Returns
    -------
    int
        No choice has more items.
    """
    branches: dict[str, list[Item]] = defaultdict(list)
    for item in items:
        branches[item.path[-depth - 1] if len(item.path) > depth else ""].append(item)
    own = sum(item.count for item in branches.pop("", []))
    apart = own + sum(
        bound_by_branches(branch, room, depth=depth + 1) for branch in branches.values()
    )
    return min(apart, upper_bound(items, room), bound_by_kinds(items, room))


def _with_singles(
    numbers: Mapping[tuple[str, ...], int],
    lightest: Mapping[tuple[str, ...], list[int]],
    left: Mapping[str, int],
) -> int:
    """
    So many items with several phases, and the most single ones beside them; -1 where even the
    lightest do not fit.
    """
    total = sum(numbers.values())
    for phase, room in left.items():
        rest = room - sum(
            lightest[kind][number] for kind, number in numbers.items() if phase in kind
        )
        if rest < 0:
            return -1
        total += bisect_right(lightest.get((phase,), [0]), rest) - 1
    return total


def _lightest(items: Sequence[Item], kind: tuple[str, ...], top: str, room: Room) -> list[int]:
    """
    Least weight of 0, 1, 2 … items of one set of phases, under the limits below the shared node
    and, alone, its own.
    """
    below = [
        Item(i.name, i.path[: i.path.index(top)], kind, i.weight_ma, i.count)
        for i in items
        if tuple(sorted(i.phases)) == kind
    ]
    taken = on_one_set(below, room)
    weights = sorted(item.weight_ma for item in below for _ in range(taken[item.name]))
    sums = [0, *accumulate(weights)]
    return sums[: bisect_right(sums, min(room[top, phase] for phase in kind))]
