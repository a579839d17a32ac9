"""How things are borne: which kinds of item stand on which, by which fact."""

from collections.abc import Mapping
from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True)
class Relation:
    """
    How one kind of item is borne: the kinds of its bearers, the fact that names them, and the words
    for it after a bearer's name, with ``{it}`` for the item.

    ``named_by_it`` where the bearer's fact names what it bears. ``some_of`` where only some of a
    line's things are on each bearer. ``may_speak`` where terms of its own count before those of
    what bears it: a visitor meets the outlet, never the board behind it. ``traced`` where the check
    follows outages along it by itself. ``told`` is false where the line tells of the bearer
    already.
    """

    kinds: tuple[str, ...]
    fact: str
    words: str
    named_by_it: bool = False
    some_of: bool = False
    may_speak: bool = False
    traced: bool = False
    told: bool = True


FEEDERS = ("supply", "generator", "service", "board")
FED = Relation(FEEDERS, "fed_from", "which feeds {it}", may_speak=True, traced=True)
RELATIONS: Mapping[tuple[str, str], tuple[Relation, ...]] = {
    ("rigging", "beam"): (Relation(("zone",), "beams", "which {it} is in", named_by_it=True),),
    ("rigging", "point"): (
        Relation(("beam",), "beam", "which {it} is on"),
        Relation(("zone",), "points", "which {it} is in", named_by_it=True),
    ),
    ("rigging", "point-group"): (
        Relation(("beam",), "beams", "which points of {it} are on", some_of=True),
    ),
    ("flying", "lineset"): (Relation(("lineset",), "moves_with", "which moves with {it}"),),
    ("access", "dock"): (Relation(("approach",), "approach", "by which trucks come to {it}"),),
    ("access", "route"): (Relation(("dock",), "from_dock", "where {it} begins", told=False),),
    **{("power", kind): (FED,) for kind in ("service", "board", "outlet")},
    ("power", "shore"): (replace(FED, traced=False),),
}
"""How items are borne, by section and kind."""
