"""
What each node of a power tree leaves, where loads of any angle and phase are still to be counted.

Such counts hold each line to the limits up the tree. Behind a transformer whose windings mix lines
the way up ends: it gets what its source leaves, that is taken off the source for all others, and
it is the root of its own count. So no choice that is counted overloads the source, though with
others on that source a better sharing may exist.

Planning figures: the local code and a licensed electrician decide.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from builder.formulas.circuits import PhaseAmperes, Standing, Tree
from builder.formulas.cite import cites
from builder.formulas.sources import NILSSON_RIEDEL
from builder.formulas.windings import APART, free_behind


@dataclass(frozen=True, slots=True)
class Rooms:
    """
    For each node the way up to the root of its count and ampere there for each ampere here; and
    what each leaves on each phase up to that root, never below 0. [A]

    ``shared_out`` is true where something was taken off a source for a transformer that it feeds
    beside others.
    """

    path: dict[str, tuple[str, ...]]
    scale: dict[str, float]
    left_a: dict[str, PhaseAmperes]
    shared_out: bool


@cites(
    NILSSON_RIEDEL,
    "ch. 2, Kirchhoff's current law; ch. 9, ideal transformer",
    equation="room_T = min(left_T, what the source leaves it); left_source less what room_T asks",
)
def rooms_for(
    tree: Tree, found: dict[str, Standing], used: Iterable[str], *, shared: bool = True
) -> Rooms:
    """
    What each node leaves to loads on some of the nodes.

    Parameters
    ----------
    tree, found
        The nodes and what stands on each.
    used
        The nodes that further loads may stand on.
    shared
        False leaves the sources of transformers as they are: what is counted then is no less than
        the most, and may be more.

    Returns
    -------
    Rooms
        Ways up and room. [A]
    """
    ways = {way for name in used for way in tree.path[name]}
    path = {name: _to_root(name, tree) for name in tree.nodes}
    left = {name: [max(0.0, here) for here in found[name].left_a] for name in tree.nodes}
    roots = [name for name in tree.nodes if name in ways and _is_cut(name, tree)]
    for name in roots:
        _give(name, left, path, tree, shared=shared)
    scale = {name: tree.scale[name] / tree.scale[path[name][-1]] for name in tree.nodes}
    room = {name: _least(name, left, path, tree) for name in tree.nodes}
    return Rooms(path, scale, room, shared_out=len(roots) > 0)


def _least(
    name: str, left: dict[str, list[float]], path: dict[str, tuple[str, ...]], tree: Tree
) -> PhaseAmperes:
    """The least that is left on each line from a node up to the root of its count, as seen here."""
    first, second, third = (
        min(left[up][k] * tree.scale[up] / tree.scale[name] for up in path[name]) for k in range(3)
    )
    return (first, second, third)


def _is_cut(name: str, tree: Tree) -> bool:
    return tree.nodes[name].winding != "line"


def _to_root(name: str, tree: Tree) -> tuple[str, ...]:
    way = []
    for up in tree.path[name]:
        way.append(up)
        if _is_cut(up, tree):
            break
    return tuple(way)


def _give(
    name: str,
    left: dict[str, list[float]],
    path: dict[str, tuple[str, ...]],
    tree: Tree,
    *,
    shared: bool,
) -> None:
    """Cap a root by what its source leaves, and take that off the source and what feeds it."""
    node = tree.nodes[name]
    source = str(node.fed_from)
    free = _least(source, left, path, tree)
    left[name] = [
        min(
            left[name][k],
            free_behind(
                free, k, winding=node.winding, ratio=node.parent_a_per_a, phases=node.phases
            )[0],
        )
        for k in range(3)
    ]
    if not shared:
        return
    apart = APART if node.winding == "three lines" else 1.0
    asks_a = max(left[name]) * node.parent_a_per_a * apart
    for up in path[source]:
        there_a = asks_a * tree.scale[source] / tree.scale[up]
        left[up] = [max(0.0, here - there_a) for here in left[up]]
