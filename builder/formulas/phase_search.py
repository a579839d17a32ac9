"""
A phase for each single-phase load, the quick way: it may miss a placing that holds, and proves
nothing.

Whole milliampere at the supply, so that sums are exact. Start at :func:`largest_first`; the exact
way is in ``phase_proof.py``.

The idea: the sum of the squares of all currents is least when phases are even, and it splits into
parts, one for each node and phase, so the change that one move makes is known from two numbers a
node. Loads go largest first to where that sum grows least; then loads move, change places, or one
changes places with two, while less stands above the room or, with as much above it, the sum falls.
Each step makes that pair smaller, so it ends. It may end where no single step helps although a
placing exists: then it says nothing, and the exact way is asked.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations

from builder.formulas.cite import cites
from builder.formulas.sources import GRAHAM

Triple = tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class Task:
    """
    Loads to place. All in milliampere at the supply.

    ``weights[i]`` goes on one of ``choices[i]`` (0, 1, 2 for L1, L2, L3) at every node of
    ``paths[i]``, own node first. ``room`` is what each node leaves, ``booked`` what it carries
    already.
    """

    weights: tuple[int, ...]
    paths: tuple[tuple[str, ...], ...]
    choices: tuple[tuple[int, ...], ...]
    room: Mapping[str, Triple]
    booked: Mapping[str, Triple]


@dataclass(frozen=True, slots=True)
class Found:
    """
    A phase for each load, or None; how much it puts above the room; the sum of squares it leaves;
    steps taken.
    """

    phases: tuple[int, ...] | None
    over_ma: int
    squares: int
    steps: int


@cites(
    GRAHAM,
    "largest processing time first",
    equation=(
        "largest load first, each on the phase that keeps sum I^2 least; then moves, swaps and"
        " trades of one for two"
    ),
)
def largest_first(task: Task, *, step_bound: int) -> Found:
    """
    Place loads largest first, then move, swap and trade one for two while that helps.

    Parameters
    ----------
    task
        Loads, room and what is booked. [mA]
    step_bound
        Moves, swaps and trades to look at.

    Returns
    -------
    Found
        A placing; ``over_ma`` above 0 where it does not hold.

    Notes
    -----
    What helps: first less above the room, then a smaller sum of squares over all nodes and phases,
    which is what makes phases even.
    """
    board = _Board(task)
    for load in sorted(range(len(task.weights)), key=lambda i: (-task.weights[i], i)):
        board.put(load, min(task.choices[load], key=lambda phase: board.change_of_put(load, phase)))
    board.improve(step_bound)
    return Found(tuple(board.phase), board.over(), board.squares(), board.steps)


class _Board:
    """Where each load is now, and what that puts on every node."""

    def __init__(self, task: Task) -> None:
        self.task, self.steps = task, 0
        self.phase = [-1] * len(task.weights)
        self.placed = {node: [0, 0, 0] for node in task.room}

    def _step(self, node: str, phase: int, change: int) -> tuple[int, int]:
        """Change of overload and of squares when a phase of a node gains or loses."""
        placed, room = self.placed[node][phase], self.task.room[node][phase]
        total = placed + self.task.booked[node][phase]
        return max(0, placed + change - room) - max(0, placed - room), change * (2 * total + change)

    def change_of_put(self, load: int, phase: int) -> tuple[int, int]:
        parts = [self._step(node, phase, self.task.weights[load]) for node in self.task.paths[load]]
        return sum(part[0] for part in parts), sum(part[1] for part in parts)

    def put(self, load: int, phase: int) -> None:
        for node in self.task.paths[load]:
            if self.phase[load] >= 0:
                self.placed[node][self.phase[load]] -= self.task.weights[load]
            self.placed[node][phase] += self.task.weights[load]
        self.phase[load] = phase

    def _change_of_shift(
        self, shifts: Mapping[str, int], source: int, target: int
    ) -> tuple[int, int]:
        over = squares = 0
        for node, weight in shifts.items():
            for phase, change in ((source, -weight), (target, weight)):
                part = self._step(node, phase, change)
                over, squares = over + part[0], squares + part[1]
        return over, squares

    def _helps(self, shifts: Mapping[str, int], source: int, target: int) -> bool:
        self.steps += 1
        return self._change_of_shift(shifts, source, target) < (0, 0)

    def improve(self, step_bound: int) -> None:
        while self.steps < step_bound and (
            self._move_once(step_bound)
            or self._swap_once(step_bound)
            or self._trade_once(step_bound)
        ):
            pass

    def _move_once(self, step_bound: int) -> bool:
        """One pass of moves; true where any helped."""
        helped = False
        for load, weight in enumerate(self.task.weights):
            for phase in self.task.choices[load]:
                if self.steps >= step_bound:
                    return helped
                if phase != self.phase[load] and self._helps(
                    dict.fromkeys(self.task.paths[load], weight), self.phase[load], phase
                ):
                    self.put(load, phase)
                    helped = True
        return helped

    def _swap_once(self, step_bound: int) -> bool:
        """One pass of swaps; true where any helped."""
        helped = False
        for one, other in self._pairs():
            if self.steps >= step_bound:
                return helped
            here, there = self.phase[one], self.phase[other]
            if here != there and self._helps(self._exchange(one, other), here, there):
                self.put(one, there)
                self.put(other, here)
                helped = True
        return helped

    def _pairs(self) -> Iterator[tuple[int, int]]:
        task = self.task
        for one, other in combinations(range(len(task.weights)), 2):
            same_ways = set(task.choices[one]) == set(task.choices[other])
            same = task.weights[one] == task.weights[other] and task.paths[one] == task.paths[other]
            if same_ways and not same and task.paths[one][-1] == task.paths[other][-1]:
                yield one, other

    def _trade_once(self, step_bound: int) -> bool:
        """
        The first trade of one load for two on another phase that helps; true where there was one.
        """
        for one, other, third in self._triples():
            if self.steps >= step_bound:
                return False
            here, there = self.phase[one], self.phase[other]
            if self._helps(self._exchange(one, other, third), here, there):
                self.put(one, there)
                self.put(other, here)
                self.put(third, here)
                return True
        return False

    def _triples(self) -> Iterator[tuple[int, int, int]]:
        """
        One load, and two that share another phase with each other and could change places with it.
        """
        choices, paths = self.task.choices, self.task.paths
        for one in range(len(choices)):
            partners = [
                load
                for load in range(len(choices))
                if self.phase[load] != self.phase[one]
                and set(choices[load]) == set(choices[one])
                and paths[load][-1] == paths[one][-1]
            ]
            for other, third in combinations(partners, 2):
                if self.phase[other] == self.phase[third]:
                    yield one, other, third

    def _exchange(self, one: int, *others: int) -> dict[str, int]:
        """Net current that changes phase at each node when a load changes places with others."""
        shifts = dict.fromkeys(self.task.paths[one], self.task.weights[one])
        for other in others:
            for node in self.task.paths[other]:
                shifts[node] = shifts.get(node, 0) - self.task.weights[other]
        return shifts

    def over(self) -> int:
        room = self.task.room
        return sum(
            max(0, placed[k] - room[node][k])
            for node, placed in self.placed.items()
            for k in range(3)
        )

    def squares(self) -> int:
        booked = self.task.booked
        return sum(
            (placed[k] + booked[node][k]) ** 2
            for node, placed in self.placed.items()
            for k in range(3)
        )
