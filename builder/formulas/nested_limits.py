"""
The most items that fit under nested limits: whole numbers, no venue, no unit but the milliampere.

Start at :func:`most_items`. What the limits hold, exactly or at most, is in ``nested_bounds.py``.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from builder.formulas.cite import cites
from builder.formulas.nested_bounds import (
    Item,
    Room,
    bound_by_branches,
    demand_of,
    on_one_set,
    singles,
    upper_bound,
)
from builder.formulas.nested_grid import bound_by_grid
from builder.formulas.sources import LAND_DOIG


@dataclass(frozen=True, slots=True)
class Choice:
    """
    How many of each item; the least upper bound known; items looked at in relaxations. Proven where
    the bound equals the number taken.
    """

    taken: Counter[str]
    at_most: int
    steps: int


@cites(
    LAND_DOIG,
    "branch and bound",
    equation="max sum n_j, subject to sum n_j w_j <= room for every node and phase",
)
def most_items(items: Sequence[Item], room: Room, *, step_bound: int) -> Choice:
    """
    Choose as many items as fit.

    Parameters
    ----------
    items
        Items with positive weight and names of their own. [mA]
    room
        What each node leaves on each phase. [mA]
    step_bound
        Items looked at in relaxations before giving up on proof.

    Returns
    -------
    Choice
        The most items found, with an upper bound.

    Notes
    -----
    Limits that could never be reached are dropped, which splits the problem. Items on one set of
    phases: smallest first is exact, for where a best choice leaves the smallest out, it can replace
    one in the lowest limit it breaks, and frees at least as much in every limit above. Mixed sets:
    branch on items with several phases; the same rule on sums of phases gives the upper bound.
    """
    choice = Choice(Counter(), 0, 0)
    for part in _parts(items, room):
        found = _most_in_part(part, room, max(step_bound - choice.steps, 1))
        choice = Choice(
            choice.taken + found.taken, choice.at_most + found.at_most, choice.steps + found.steps
        )
    return choice


def _most_in_part(items: Sequence[Item], room: Room, step_bound: int) -> Choice:
    if len({frozenset(item.phases) for item in items}) == 1:
        taken = on_one_set(items, room)
        return Choice(taken, taken.total(), 1)
    search = _Search(items, room, step_bound)
    search.branch(0, dict(room), Counter())
    return Choice(
        search.best, search.at_most if search.gave_up else search.best.total(), search.steps
    )


def _parts(items: Sequence[Item], room: Room) -> list[list[Item]]:
    """Items grouped so that no limit that can be reached is shared between groups."""
    reachable = _reachable(items, room)
    parts: list[tuple[set[tuple[str, str]], list[Item]]] = []
    for item in items:
        keys, joined, apart = (
            {(node, phase) for node in item.path for phase in item.phases} & reachable,
            [item],
            [],
        )
        for part in parts:
            if part[0] & keys:
                keys, joined = keys | part[0], [*part[1], *joined]
            else:
                apart.append(part)
        parts = [*apart, (keys, joined)]
    return [part for _, part in parts]


def _reachable(items: Sequence[Item], room: Room) -> set[tuple[str, str]]:
    """Limits that the items below, held back by the limits below, could exceed."""
    demand = demand_of(items, room)
    return {key for key, wanted in demand.items() if wanted > room[key]}


class _Search:
    """Branch and bound over how many of each item with several phases; the rest follows exactly."""

    def __init__(self, items: Sequence[Item], room: Room, step_bound: int) -> None:
        self.several = sorted(
            (i for i in items if len(i.phases) > 1),
            key=lambda i: (i.weight_ma * len(i.phases), i.name),
        )
        self.single = [item for item in items if len(item.phases) == 1]
        self.step_bound, self.steps, self.gave_up = step_bound, 0, False
        self.at_most = bound_by_branches(items, room)
        self.best = max(
            (_light_first(items, room, some) for some in _subsets(items)),
            key=lambda choice: choice.total(),
        )
        if self.best.total() < self.at_most:
            self.best = _one_out_two_in(self.best, items, room)
        if self.best.total() < self.at_most:
            self.at_most = min(self.at_most, bound_by_grid(items, room))

    def branch(self, depth: int, left: dict[tuple[str, str], int], taken: Counter[str]) -> None:
        """
        Try every number of the item at this depth, most first, unless the bound says that none can
        be better.
        """
        if self.best.total() == self.at_most or self.gave_up:
            return
        if self.steps >= self.step_bound:
            self.gave_up = True
            return
        self.steps += len(self.several) - depth + len(self.single)
        if depth == len(self.several):
            self.best = max(
                self.best, taken + singles(self.single, left), key=lambda choice: choice.total()
            )
            return
        if (
            taken.total() + upper_bound([*self.several[depth:], *self.single], left)
            <= self.best.total()
        ):
            return
        item = self.several[depth]
        for number in range(min(item.count, _fit(item, left)), -1, -1):
            after = dict(left)
            _fill(item, number, after)
            self.branch(depth + 1, after, taken + Counter({item.name: number}))


def _subsets(items: Sequence[Item]) -> list[tuple[str, ...]]:
    phases = sorted({phase for item in items for phase in item.phases})
    return [some for size in range(len(phases), 0, -1) for some in combinations(phases, size)]


def _light_first(items: Sequence[Item], room: Room, some: Sequence[str]) -> Counter[str]:
    """A first answer: lightest first, weighed over some of the phases and then over all."""
    left, taken = dict(room), Counter[str]()
    for item in sorted(
        items,
        key=lambda i: (
            i.weight_ma * len(set(i.phases).intersection(some)),
            i.weight_ma * len(i.phases),
            i.name,
        ),
    ):
        taken[item.name] = min(item.count, _fit(item, left))
        _fill(item, taken[item.name], left)
    return taken


def _one_out_two_in(taken: Counter[str], items: Sequence[Item], room: Room) -> Counter[str]:
    """
    Take one item out wherever two or more others then fit; one pass over the items, heaviest first.
    """
    left, now = dict(room), Counter(taken)
    for item in items:
        _fill(item, now[item.name], left)
    heaviest = sorted(items, key=lambda i: (-i.weight_ma * len(i.phases), i.name))
    for out in heaviest:
        while now[out.name] > 0:
            after, gained = dict(left), Counter[str]()
            _fill(out, -1, after)
            for item in reversed(heaviest):
                if item is not out:
                    gained[item.name] = min(item.count - now[item.name], _fit(item, after))
                    _fill(item, gained[item.name], after)
            if gained.total() < 2:
                break
            now, left = now + gained - Counter({out.name: 1}), after
    return now


def _fit(item: Item, left: Room) -> int:
    return min(left[node, phase] for node in item.path for phase in item.phases) // item.weight_ma


def _fill(item: Item, number: int, left: dict[tuple[str, str], int]) -> None:
    for node in item.path:
        for phase in item.phases:
            left[node, phase] -= number * item.weight_ma
