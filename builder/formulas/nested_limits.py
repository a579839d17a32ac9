"""
The most items that fit under nested limits: whole numbers, no venue, no unit but the milliampere.

Start at :func:`most_items`. Limits hang in a tree and hold for each phase apart; an item weighs on one phase or several, all the way up.
"""

from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

from builder.formulas.cite import cites
from builder.formulas.sources import LAND_DOIG

Room = Mapping[tuple[str, str], int]
"""What a limit leaves, by node and phase. [mA]"""


@dataclass(frozen=True, slots=True)
class Item:
    """``count`` equal items that weigh ``weight_ma`` on each of ``phases``, at every node of ``path`` (own node first, root last)."""

    name: str
    path: tuple[str, ...]
    phases: tuple[str, ...]
    weight_ma: int
    count: int


@dataclass(frozen=True, slots=True)
class Choice:
    """How many of each item; the least upper bound known; relaxations solved. Proven where the bound equals the number taken."""

    taken: Counter[str]
    at_most: int
    steps: int


@cites(LAND_DOIG, "branch and bound", equation="max sum n_j, subject to sum n_j w_j <= room for every node and phase")
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
        Relaxations to solve before giving up on proof.

    Returns
    -------
    Choice
        The most items found, with an upper bound.

    Notes
    -----
    Limits that could never be reached are dropped, which splits the problem. Items on one set of phases: smallest first is exact, for where a
    best choice leaves the smallest out, it can replace one in the lowest limit it breaks, and frees at least as much in every limit above.
    Mixed sets: branch on items with several phases; the same rule on sums of phases gives the upper bound.
    """
    choice = Choice(Counter(), 0, 0)
    for part in _parts(items, room):
        found = _most_in_part(part, room, max(step_bound - choice.steps, 1))
        choice = Choice(choice.taken + found.taken, choice.at_most + found.at_most, choice.steps + found.steps)
    return choice


def _most_in_part(items: Sequence[Item], room: Room, step_bound: int) -> Choice:
    if len({frozenset(item.phases) for item in items}) == 1:
        taken = _on_one_set(items, room)
        return Choice(taken, taken.total(), 1)
    search = _Search(items, room, step_bound)
    search.branch(0, dict(room), Counter())
    return Choice(search.best, search.at_most if search.gave_up else search.best.total(), search.steps)


def _parts(items: Sequence[Item], room: Room) -> list[list[Item]]:
    """Items grouped so that no limit that can be reached is shared between groups."""
    reachable = _reachable(items, room)
    parts: list[tuple[set[tuple[str, str]], list[Item]]] = []
    for item in items:
        keys, joined, apart = {(node, phase) for node in item.path for phase in item.phases} & reachable, [item], []
        for part in parts:
            if part[0] & keys:
                keys, joined = keys | part[0], [*part[1], *joined]
            else:
                apart.append(part)
        parts = [*apart, (keys, joined)]
    return [part for _, part in parts]


def _reachable(items: Sequence[Item], room: Room) -> set[tuple[str, str]]:
    """Limits that the items below, held back by the limits below, could exceed."""
    demand = _demand(items, room)
    return {key for key, wanted in demand.items() if wanted > room[key]}


def _demand(items: Sequence[Item], room: Room) -> dict[tuple[str, str], int]:
    """What could arrive at each node and phase: its own items and what its children let through."""
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


def _smallest_first(items: Iterable[Item], weigh: Callable[[Item], int], capacity: Mapping[str, int]) -> Counter[str]:
    """Take items in order of weight, as many as every node on the way up still holds; one capacity a node."""
    left, taken = dict(capacity), Counter[str]()
    for item in sorted(items, key=lambda one: (weigh(one), one.name)):
        weight = weigh(item)
        number = min([item.count, *(left[node] // weight for node in item.path)]) if weight else item.count
        taken[item.name] = number
        for node in item.path:
            left[node] -= number * weight
    return taken


def _on_one_set(items: Sequence[Item], room: Room) -> Counter[str]:
    """Exact choice among items that all have the same set of phases: they fill those phases in step, so the fullest one decides."""
    nodes = {node for item in items for node in item.path}
    return _smallest_first(items, lambda item: item.weight_ma, {n: min(room[n, p] for p in items[0].phases) for n in nodes})


def _singles(items: Sequence[Item], room: Room) -> Counter[str]:
    """Exact choice among items with one phase each: the phases do not touch."""
    taken = Counter[str]()
    for phase in sorted({item.phases[0] for item in items}):
        taken += _on_one_set([item for item in items if item.phases[0] == phase], room)
    return taken


def _upper_bound(items: Sequence[Item], room: Room) -> int:
    """Least of several relaxations, each of which adds up some phases and forgets how they are shared."""
    if not items:
        return 0
    demand = _demand(items, room)
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


class _Search:
    """Branch and bound over how many of each item with several phases; the rest follows exactly."""

    def __init__(self, items: Sequence[Item], room: Room, step_bound: int) -> None:
        self.several = sorted((i for i in items if len(i.phases) > 1), key=lambda i: (i.weight_ma * len(i.phases), i.name))
        self.single = [item for item in items if len(item.phases) == 1]
        self.step_bound, self.steps, self.gave_up = step_bound, 0, False
        self.best = self._light_first(items, room)
        self.at_most = _upper_bound(items, room)

    def _light_first(self, items: Sequence[Item], room: Room) -> Counter[str]:
        """A first answer: lightest over all phases first."""
        left, taken = dict(room), Counter[str]()
        for item in sorted(items, key=lambda i: (i.weight_ma * len(i.phases), i.name)):
            taken[item.name] = min(item.count, _fit(item, left))
            _fill(item, taken[item.name], left)
        return taken

    def branch(self, depth: int, left: dict[tuple[str, str], int], taken: Counter[str]) -> None:
        """Try every number of the item at this depth, most first, unless the bound says that none can be better."""
        if self.best.total() == self.at_most or self.gave_up:
            return
        if self.steps >= self.step_bound:
            self.gave_up = True
            return
        self.steps += 1
        if depth == len(self.several):
            self.best = max(self.best, taken + _singles(self.single, left), key=lambda choice: choice.total())
            return
        if taken.total() + _upper_bound([*self.several[depth:], *self.single], left) <= self.best.total():
            return
        item = self.several[depth]
        for number in range(min(item.count, _fit(item, left)), -1, -1):
            after = dict(left)
            _fill(item, number, after)
            self.branch(depth + 1, after, taken + Counter({item.name: number}))


def _fit(item: Item, left: Room) -> int:
    return min(left[node, phase] for node in item.path for phase in item.phases) // item.weight_ma


def _fill(item: Item, number: int, left: dict[tuple[str, str], int]) -> None:
    for node in item.path:
        for phase in item.phases:
            left[node, phase] -= number * item.weight_ma
