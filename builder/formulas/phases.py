"""
A phase for each extra single-phase load, so that every breaker up the tree holds and the phases are
even.

Planning figures: the local code and a licensed electrician decide.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from builder.formulas.circuits import Load, Node, Standing, Tree, standing, tree_of
from builder.formulas.cite import cites
from builder.formulas.milliampere import ceil_ma, floor_ma
from builder.formulas.phase_proof import TooManySteps, every_placing
from builder.formulas.phase_search import Found, Task, Triple, largest_first
from builder.formulas.phasors import PHASES
from builder.formulas.ranges import above_zero
from builder.formulas.rooms import Rooms, rooms_for
from builder.formulas.sources import GRAHAM

STEP_BOUND = 100_000
"""
Moves, swaps, trades or states looked at before giving up: counted, not timed, so that the answer is
the same on every machine.
"""


@dataclass(frozen=True, slots=True)
class ExtraLoad:
    """A single-phase load that may go on any phase its node has. [A]"""

    name: str
    node: str
    current_a: float


@dataclass(frozen=True, slots=True)
class Placing:
    """
    Where the extra loads go.

    ``verdict`` is 'impossible' only with a proof, which ``why`` tells; 'not found within the bound'
    means that nobody knows. ``phase_of`` is empty unless placed. ``booked_a`` is what every node
    carries then, by node. [A] ``evenest`` is True where no placing that holds has a smaller sum of
    squares.
    """

    verdict: Literal["placed", "impossible", "not found within the bound"]
    why: str
    phase_of: tuple[tuple[str, str], ...]
    booked_a: tuple[tuple[str, tuple[float, float, float]], ...]
    evenest: bool
    steps: int


@cites(
    GRAHAM,
    "largest processing time first, then moves, swaps and trades; exact where small",
    equation="min sum of I^2 over nodes and phases, I <= limit everywhere",
)
def place_on_phases(
    nodes: Sequence[Node],
    loads: Sequence[Load],
    extra: Sequence[ExtraLoad],
    *,
    step_bound: int = STEP_BOUND,
) -> Placing:
    """
    Choose a phase for every extra load.

    Parameters
    ----------
    nodes
        Supplies, services and distros.
    loads
        Standing loads; they stay where they are.
    extra
        Single-phase loads to place.
    step_bound
        Steps for the quick search, and again for the exact one.

    Returns
    -------
    Placing
        The phases, or the proof that there are none, or that none was found within the bound.

    Raises
    ------
    ValueError
        If the nodes are no tree, a load stands on no node, a name is written twice or a current is
        not above 0.

    Notes
    -----
    Currents add up as sizes, which is never below their phasor sum. Loads are not split and
    standing loads are not moved.
    """
    tree, found = tree_of(nodes), standing(nodes, loads)
    _check(extra, tree)
    rooms = rooms_for(tree, found, [load.node for load in extra])
    task = _task(extra, tree, found, rooms)
    proof = _too_much(extra, task, rooms)
    if proof is not None:
        return Placing("impossible", proof, (), (), evenest=False, steps=0)
    quick = largest_first(task, step_bound=step_bound)
    try:
        exact = every_placing(task, step_bound=step_bound)
    except TooManySteps:
        return _answer(quick, extra, task, rooms, exact=False, steps=quick.steps + step_bound)
    if exact.phases is None:
        why = "every placing was looked at and each one is above a limit"
        return Placing("impossible", why, (), (), evenest=False, steps=quick.steps + exact.steps)
    # An equal answer of the quick search is kept, so that a larger bound does not reshuffle what
    # was already best.
    best = quick if quick.over_ma == 0 and quick.squares == exact.squares else exact
    return _answer(best, extra, task, rooms, exact=True, steps=quick.steps + exact.steps)


def _answer(
    found: Found, extra: Sequence[ExtraLoad], task: Task, rooms: Rooms, *, exact: bool, steps: int
) -> Placing:
    if found.phases is None or found.over_ma > 0:
        why = (
            f"the best placing found is {found.over_ma / 1000:.3g} A above its limits in sum; a"
            " longer search might find one that holds"
        )
        return Placing("not found within the bound", why, (), (), evenest=False, steps=steps)
    phase_of = tuple(
        (load.name, PHASES[phase]) for load, phase in zip(extra, found.phases, strict=True)
    )
    why = "every placing was looked at" if exact else "largest first, then moves, swaps and trades"
    return Placing(
        "placed", why, phase_of, _booked(found.phases, task, rooms), evenest=exact, steps=steps
    )


def _booked(
    phases: Sequence[int], task: Task, rooms: Rooms
) -> tuple[tuple[str, tuple[float, float, float]], ...]:
    carried = {node: list(booked) for node, booked in task.booked.items()}
    for load, phase in enumerate(phases):
        for node in task.paths[load]:
            carried[node][phase] += task.weights[load]
    return tuple((node, _amperes(row, rooms.scale[node])) for node, row in carried.items())


def _amperes(row: Sequence[int], scale: float) -> tuple[float, float, float]:
    return (row[0] / scale / 1000, row[1] / scale / 1000, row[2] / scale / 1000)


def _check(extra: Sequence[ExtraLoad], tree: Tree) -> None:
    seen: set[str] = set()
    for load in extra:
        if load.name in seen:
            raise ValueError(f"extra loads must have names of their own, got {load.name!r} twice")
        if load.node not in tree.nodes:
            raise ValueError(
                f"node of load {load.name!r} must be a node, got {load.node!r}, which does not"
                " exist"
            )
        above_zero(f"current_a of load {load.name!r}", load.current_a)
        seen.add(load.name)


def _task(extra: Sequence[ExtraLoad], tree: Tree, found: dict[str, Standing], rooms: Rooms) -> Task:
    return Task(
        weights=tuple(ceil_ma(load.current_a * rooms.scale[load.node]) for load in extra),
        paths=tuple(rooms.path[load.node] for load in extra),
        choices=tuple(
            tuple(k for k, phase in enumerate(PHASES) if phase in tree.nodes[load.node].phases)
            for load in extra
        ),
        room={
            name: _milliampere(left_a, rooms.scale[name]) for name, left_a in rooms.left_a.items()
        },
        booked={
            name: _milliampere(here.booked_a, rooms.scale[name]) for name, here in found.items()
        },
    )


def _milliampere(row: Sequence[float], scale: float) -> Triple:
    first, second, third = (floor_ma(a * scale) for a in row)
    return (first, second, third)


def _too_much(extra: Sequence[ExtraLoad], task: Task, rooms: Rooms) -> str | None:
    """
    A short proof that nothing can hold: one load too large, or a sum above all phases together.
    """
    below = dict.fromkeys(task.room, 0)
    for load, weight, path, choices in zip(
        extra, task.weights, task.paths, task.choices, strict=True
    ):
        most = max(task.room[path[0]][k] for k in choices)
        if weight > most:
            return (
                f"{load.name} draws {load.current_a:g} A and no phase of {load.node} has more than"
                f" {most / rooms.scale[load.node] / 1000:g} A left"
            )
        for node in path:
            below[node] += weight
    for node, wanted in below.items():
        if wanted > sum(task.room[node]):
            scale = rooms.scale[node] * 1000
            return (
                f"{wanted / scale:g} A are to go on {node}, which has"
                f" {sum(task.room[node]) / scale:g} A left on its phases together"
            )
    return None
