"""
How many outlets can be loaded fully at the same time, under every breaker up the tree.

Ratings of outlets add up to more than the services behind them; this says what is left when all are
counted together. Planning figures: the local code and a licensed electrician decide.

The idea: what will be plugged in is not known, so neither is the angle of its current. Added up as
sizes, currents are never below the true sum, so what is free is never told too large. In whole
milliampere at the supply, loads rounded up and room rounded down, the question is how many items
fit under a tree of limits; ``nested_limits.py`` answers it and says whether that is proven.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from builder.formulas.circuits import Load, Node, Tree, limit_a, standing, tree_of
from builder.formulas.cite import cites
from builder.formulas.milliampere import ceil_ma, floor_ma
from builder.formulas.nested_bounds import Item
from builder.formulas.nested_limits import most_items
from builder.formulas.phasors import PHASES
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.rooms import Rooms, rooms_for
from builder.formulas.sources import LAND_DOIG

STEP_BOUND = 20_000
"""
Items looked at in relaxations before the search gives up: counted, not timed, so that the answer is
the same on every machine.
"""


@dataclass(frozen=True, slots=True)
class Outlet:
    """
    ``count`` equal outlets on a node, each for ``ampere_a`` on each of its phases. [A]

    ``breaker_a`` is the breaker of one outlet's own way, None where it is not stated. [A]
    """

    name: str
    node: str
    phases: tuple[str, ...]
    ampere_a: float
    count: int = 1
    connector: str = ""
    breaker_a: float | None = None


@dataclass(frozen=True, slots=True)
class FreeAtOnce:
    """
    Outlets that can be loaded fully at the same time.

    ``taken`` gives how many of each outlet entry (one choice of several that may be as good),
    ``by_connector`` the same by connector. ``proven`` is False where the step bound ended the
    search; ``at_most`` is then the least upper bound known, else it equals ``outlets``.
    ``above_breaker`` names entries that a breaker up the tree, or their own, could never feed
    fully: they are not counted.
    """

    outlets: int
    at_most: int
    proven: bool
    taken: tuple[tuple[str, int], ...]
    by_connector: tuple[tuple[str, int], ...]
    above_breaker: tuple[str, ...]
    steps: int


@cites(
    LAND_DOIG,
    "branch and bound",
    equation=(
        "max sum n_j, sum over outlets below v on phase p of n_j I_j <= limit_v - booked_v,p, for"
        " all v, p"
    ),
)
def free_at_once(
    nodes: Sequence[Node],
    loads: Sequence[Load],
    outlets: Sequence[Outlet],
    *,
    step_bound: int = STEP_BOUND,
) -> FreeAtOnce:
    """
    The most outlets that can be loaded fully at the same time.

    Parameters
    ----------
    nodes
        Supplies, services and distros.
    loads
        Standing loads with the node they stand on.
    outlets
        Outlet entries; their ampere is what full load means (write 80 % here where the code asks it
        of the outlet).
    step_bound
        Items to look at in relaxations before giving up on proof.

    Returns
    -------
    FreeAtOnce
        Count, choice, and whether it is proven to be the most.

    Raises
    ------
    ValueError
        If the nodes are no tree, an outlet is on no node or on a phase its node lacks, a name is
        written twice, or a number is out of range.

    Notes
    -----
    Outlet currents add up as sizes: what will be plugged in is not known, so neither is its angle;
    the sum is never below the true one. Outlets with one set of phases under nested limits: taking
    the smallest first is exact, for if the smallest is left out of a best choice, it can replace
    one in the lowest limit it breaks, which frees at least as much in every limit above. Mixed
    sets: branch on outlets with several phases, with that rule on sums of phases as the upper
    bound.
    """
    tree, found = tree_of(nodes), standing(nodes, loads)
    _check(outlets, tree)
    used = [outlet.node for outlet in outlets if outlet.count > 0]
    rooms = rooms_for(tree, found, used)
    above = tuple(outlet.name for outlet in outlets if _is_above_breaker(outlet, tree, rooms))
    items = [
        _item(outlet, rooms) for outlet in outlets if outlet.name not in above and outlet.count > 0
    ]
    choice = most_items(items, _milliampere(rooms), step_bound=step_bound)
    total, at_most = choice.taken.total(), choice.at_most
    if rooms.shared_out:
        apart = rooms_for(tree, found, used, shared=False)
        at_most = most_items(items, _milliampere(apart), step_bound=step_bound).at_most
    return FreeAtOnce(
        outlets=total,
        at_most=at_most,
        proven=total == at_most,
        taken=tuple((outlet.name, choice.taken[outlet.name]) for outlet in outlets),
        by_connector=_by_connector(outlets, choice.taken),
        above_breaker=above,
        steps=choice.steps,
    )


def _by_connector(outlets: Sequence[Outlet], taken: Counter[str]) -> tuple[tuple[str, int], ...]:
    numbers: dict[str, int] = {}
    for outlet in outlets:
        numbers[outlet.connector] = numbers.get(outlet.connector, 0) + taken[outlet.name]
    return tuple(sorted(numbers.items()))


def _check(outlets: Sequence[Outlet], tree: Tree) -> None:
    for name, times in Counter(o.name for o in outlets).items():
        if times > 1:
            raise ValueError(f"outlets must have names of their own, got {name!r} twice")
    for outlet in outlets:
        if outlet.node not in tree.nodes:
            raise ValueError(
                f"node of outlet {outlet.name!r} must be a node, got {outlet.node!r}, which does"
                " not exist"
            )
        wired = tree.nodes[outlet.node].phases
        if (
            not outlet.phases
            or len(set(outlet.phases)) != len(outlet.phases)
            or not set(outlet.phases) <= set(wired)
        ):
            raise ValueError(
                f"phases of outlet {outlet.name!r} must be among those of {outlet.node!r}, got"
                f" {outlet.phases} on {wired}"
            )
        above_zero(f"ampere_a of outlet {outlet.name!r}", outlet.ampere_a)
        not_negative(f"count of outlet {outlet.name!r}", outlet.count)


def _is_above_breaker(outlet: Outlet, tree: Tree, rooms: Rooms) -> bool:
    """
    True where a breaker, its own or one up the tree, is smaller than the outlet, even with nothing
    else on it.
    """
    own = outlet.breaker_a is not None and outlet.ampere_a > outlet.breaker_a
    weight_ma = _item(outlet, rooms).weight_ma
    return own or any(
        weight_ma > floor_ma(max(limit_a(tree.nodes[up])) * rooms.scale[up])
        for up in rooms.path[outlet.node]
    )


def _item(outlet: Outlet, rooms: Rooms) -> Item:
    """The outlet's current at the root of its count, rounded up to the milliampere."""
    weight_ma = ceil_ma(outlet.ampere_a * rooms.scale[outlet.node])
    return Item(outlet.name, rooms.path[outlet.node], outlet.phases, weight_ma, outlet.count)


def _milliampere(rooms: Rooms) -> dict[tuple[str, str], int]:
    """
    What each node leaves on each phase, in the ampere of its root; 0 where it is overloaded.
    """
    return {
        (name, phase): floor_ma(left_a[k] * rooms.scale[name])
        for name, left_a in rooms.left_a.items()
        for k, phase in enumerate(PHASES)
    }
