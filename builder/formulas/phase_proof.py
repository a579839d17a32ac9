"""
A phase for each single-phase load, the exact way: the most even placing, or the proof that none
holds, unless it takes too many steps.

The idea: whatever hangs below a node matters above it only by its three currents. So for each node
and each triple of currents that it can have, one placing is kept, the most even; the rest is
forgotten. A node's triples are those of its children and its own loads joined one by one, and a
triple beyond the node's room is dropped, for currents only grow on the way up. All placings are
covered, so no triple at a root is the proof that none holds. The number of triples grows with the
number of different currents, not with the number of placings: twenty equal loads make some two
hundred triples out of 3^20 placings. Loads of all different sizes make too many; then it stops by
count and says so.
"""

from dataclasses import dataclass
from itertools import pairwise, product

from builder.formulas.cite import cites
from builder.formulas.phase_search import Found, Task, Triple
from builder.formulas.sources import BELLMAN


@dataclass(frozen=True, slots=True)
class _Chain:
    """How a state came about: two earlier states joined, or one with a load added."""

    first: "_Chain | None"
    second: "_Chain | None"
    load: int = -1
    phase: int = -1


States = dict[Triple, tuple[int, _Chain | None]]


class TooManySteps(Exception):
    """The bound was reached before every placing was looked at."""


@cites(
    BELLMAN,
    "principle of optimality",
    equation=(
        "least sum I^2 by (I1, I2, I3) of each node, from its loads and its children; drop what"
        " exceeds the room"
    ),
)
def every_placing(task: Task, *, step_bound: int) -> Found:
    """
    The most even placing that holds, or the proof that there is none.

    Parameters
    ----------
    task
        Loads, room and what is booked. [mA]
    step_bound
        States to make.

    Returns
    -------
    Found
        The best placing; ``phases`` is None where none holds.

    Raises
    ------
    TooManySteps
        If the bound is reached first: then nothing is known.
    """
    sweep = _Sweep(task, step_bound)
    phases = [-1] * len(task.weights)
    squares = 0
    for root in sweep.roots():
        states = sweep.reach(root)
        if not states:
            return Found(None, 0, 0, sweep.steps)
        cost, chain = min(states.values(), key=lambda state: state[0])
        squares += cost
        _read(chain, phases)
    return Found(tuple(phases), 0, squares, sweep.steps)


class _Sweep:
    """States of each node, children first."""

    def __init__(self, task: Task, step_bound: int) -> None:
        self.task, self.left, self.steps = task, step_bound, 0
        self.own: dict[str, list[int]] = {node: [] for node in task.room}
        self.children: dict[str, list[str]] = {node: [] for node in task.room}
        for load, path in enumerate(task.paths):
            self.own[path[0]].append(load)
            for child, parent in pairwise(path):
                if child not in self.children[parent]:
                    self.children[parent].append(child)

    def roots(self) -> list[str]:
        return sorted({path[-1] for path in self.task.paths})

    def reach(self, node: str) -> States:
        states: States = {(0, 0, 0): (0, None)}
        for child in self.children[node]:
            states = self._joined(node, states, self.reach(child))
        for load in self.own[node]:
            states = self._joined(node, states, self._alone(load))
        booked = self.task.booked[node]
        return {
            used: (cost + sum((used[k] + booked[k]) ** 2 for k in range(3)), chain)
            for used, (cost, chain) in states.items()
        }

    def _alone(self, load: int) -> States:
        weight = self.task.weights[load]
        return {
            (weight * (phase == 0), weight * (phase == 1), weight * (phase == 2)): (
                0,
                _Chain(None, None, load, phase),
            )
            for phase in self.task.choices[load]
        }

    def _joined(self, node: str, first: States, second: States) -> States:
        room, states = self.task.room[node], States()
        for (one, (cost, chain)), (other, (more, link)) in product(first.items(), second.items()):
            self.steps += 1
            if self.steps > self.left:
                raise TooManySteps
            used = (one[0] + other[0], one[1] + other[1], one[2] + other[2])
            if all(used[k] <= room[k] for k in range(3)) and (
                used not in states or cost + more < states[used][0]
            ):
                states[used] = (cost + more, _Chain(chain, link))
        return states


def _read(chain: _Chain | None, phases: list[int]) -> None:
    """Write the phases that a chain of choices stands for."""
    waiting: list[_Chain | None] = [chain]
    while waiting:
        link = waiting.pop()
        if link is not None:
            if link.load >= 0:
                phases[link.load] = link.phase
            waiting += [link.first, link.second]
