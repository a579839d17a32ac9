"""
An upper bound on items under nested limits, by tables of what each limit lets through: exact where
the tables are small.

Currents of one house are multiples of few sizes (16, 24, 40 A), so rooms count in their greatest
common divisor. Start at :func:`bound_by_grid`.

The idea: to whatever hangs above it, a limit is nothing but a table: so many units on L1, L2 and L3
let through so many items at most. A node's table is made of those below it, each share given to a
branch once, so the root's last cell is the answer; every choice is in some cell, and no cell holds
a choice that is not there. It is exact while the three-phase tables fit the bounds below. A wider
limit keeps one row for each sum of phases instead, which forgets how the sum is shared: still an
upper bound, no longer exact. Currents without a common measure make rows too long; then nothing is
said.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from builder.formulas.cite import cites
from builder.formulas.nested_bounds import Item, Room, demand_of
from builder.formulas.sources import BELLMAN

Counts = NDArray[np.int32]
MOST_CELLS = 200_000
"""Cells of one table of three phases."""
MOST_UNITS = 6_000
"""
Units on all phases of the root together: currents without a common measure make too many, and then
nothing is said.
"""
MOST_WORK = 30_000_000
"""Cells looked at while one table is filled."""


@dataclass(frozen=True, slots=True)
class _Node:
    """
    What hangs on a limit: its own items and the limits below, with its room on each phase, in
    units.
    """

    caps: tuple[int, ...]
    items: tuple[Item, ...]
    below: tuple["_Node", ...]


@dataclass(frozen=True, slots=True)
class _Table:
    """
    What a limit lets through.

    ``exact`` gives the most items for so many units on each phase, None where that table would be
    too large. ``sums`` gives, for each set of phases, no less than the most items for so many units
    on these phases together.
    """

    exact: Counts | None
    sums: dict[tuple[int, ...], Counts]


@cites(
    BELLMAN,
    "dynamic programming over the tree of limits",
    equation="F_v(y) = max over shares y_c of sum F_c(y_c), y <= room_v",
)
def bound_by_grid(items: Sequence[Item], room: Room) -> int:
    """
    No choice has more items; equal to the most there are where all tables are small.

    Parameters
    ----------
    items
        Items under one root, at least one. [mA]
    room
        What each node leaves on each phase. [mA]

    Returns
    -------
    int
        An upper bound.

    Notes
    -----
    Where a limit is too wide for a table of three phases, it is kept for each sum of phases apart,
    which forgets how they are shared. Where the currents have no common measure, the bound is the
    number of all items.
    """
    phases = sorted({phase for item in items for phase in item.phases})
    unit_ma = math.gcd(*(item.weight_ma for item in items))
    demand = demand_of(items, room)
    root = _node(
        items, 1, phases, {key: min(room[key], wanted) // unit_ma for key, wanted in demand.items()}
    )
    if sum(root.caps) > MOST_UNITS:
        return sum(item.count for item in items)
    table = _table(root, phases, unit_ma)
    return min(int(table.sums[some][-1]) for some in table.sums)


def _node(
    items: Sequence[Item], depth: int, phases: Sequence[str], caps: dict[tuple[str, str], int]
) -> _Node:
    """The tree below the node that all paths share at this depth from the root."""
    name = items[0].path[-depth]
    branches: dict[str, list[Item]] = {}
    for item in items:
        branches.setdefault(item.path[-depth - 1] if len(item.path) > depth else "", []).append(
            item
        )
    own = tuple(branches.pop("", []))
    below = tuple(_node(branch, depth + 1, phases, caps) for branch in branches.values())
    return _Node(tuple(caps.get((name, phase), 0) for phase in phases), own, below)


def _table(node: _Node, phases: Sequence[str], unit_ma: int) -> _Table:
    """What a node lets through, from what those below it do."""
    below = [_table(child, phases, unit_ma) for child in node.below]
    exact = _exact(node, below, phases, unit_ma)
    if exact is not None:
        return _Table(exact, {some: _sum_of(exact, some) for some in _sets(len(phases))})
    sums = {
        some: _wide(node, [each.sums[some] for each in below], some, phases, unit_ma)
        for some in _sets(len(phases))
    }
    least = min(int(each[-1]) for each in sums.values())
    return _Table(None, {some: np.minimum(each, least) for some, each in sums.items()})


def _sets(count: int) -> Iterator[tuple[int, ...]]:
    """Every set of phases, by index, but the empty one."""
    for size in range(1, count + 1):
        yield from combinations(range(count), size)


def _exact(
    node: _Node, below: Sequence[_Table], phases: Sequence[str], unit_ma: int
) -> Counts | None:
    """The table of a node, or None where it would be too large or would take too long."""
    shape = tuple(cap + 1 for cap in node.caps)
    if math.prod(shape) > MOST_CELLS or any(each.exact is None for each in below):
        return None
    steps = [_steps(each.exact) for each in below if each.exact is not None]
    if math.prod(shape) * sum(len(each) for each in steps) > MOST_WORK:
        return None
    table = np.zeros(shape, dtype=np.int32)
    for item in node.items:
        shift = tuple(item.weight_ma // unit_ma if phase in item.phases else 0 for phase in phases)
        for _ in range(item.count):
            before = table.copy()
            _raise(table, before, shift, 1)
            if np.array_equal(table, before):
                break
    for each in steps:
        before = table.copy()
        for shift, count in each:
            _raise(table, before, shift, count)
    return table


def _raise(table: Counts, before: Counts, shift: Sequence[int], count: int) -> None:
    """Allow a step of so many units for so many items more."""
    if any(step >= size for step, size in zip(shift, table.shape, strict=True)):
        return
    here = tuple(slice(step, None) for step in shift)
    there = tuple(slice(None, size - step) for step, size in zip(shift, table.shape, strict=True))
    np.maximum(table[here], before[there] + count, out=table[here])


def _steps(table: Counts) -> list[tuple[tuple[int, ...], int]]:
    """
    The cells of a table that no smaller cell equals: the only shares worth giving to what it stands
    for.
    """
    worth = table > 0
    for axis in range(table.ndim):
        lower = np.zeros_like(table)
        lower[(slice(None),) * axis + (slice(1, None),)] = table[
            (slice(None),) * axis + (slice(None, -1),)
        ]
        first = np.zeros_like(worth)
        first[(slice(None),) * axis + (0,)] = True
        worth &= first | (table > lower)
    return [(tuple(int(k) for k in cell), int(table[tuple(cell)])) for cell in np.argwhere(worth)]


def _sum_of(exact: Counts, some: Sequence[int]) -> Counts:
    """The most items for so many units on some phases together, the others as wide as they are."""
    others = tuple(axis for axis in range(exact.ndim) if axis not in some)
    kept = exact.max(axis=others) if others else exact
    found = np.zeros(sum(size - 1 for size in kept.shape) + 1, dtype=np.int32)
    np.maximum.at(found, np.indices(kept.shape).sum(axis=0).ravel(), kept.ravel())
    return np.maximum.accumulate(found).astype(np.int32)


def _wide(
    node: _Node, below: Sequence[Counts], some: Sequence[int], phases: Sequence[str], unit_ma: int
) -> Counts:
    """
    A node's bound for one set of phases: its own items and what those below let through, under its
    rooms together.
    """
    table = np.zeros(sum(node.caps[k] for k in some) + 1, dtype=np.int32)
    for item in node.items:
        units = item.weight_ma // unit_ma * sum(phases[k] in item.phases for k in some)
        for _ in range(item.count):
            before = table.copy()
            _raise(table, before, (units,), 1)
    for each in below:
        before = table.copy()
        for shift, count in _steps(each):
            _raise(table, before, shift, count)
    return table
