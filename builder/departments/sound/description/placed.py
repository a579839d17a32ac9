"""
Loudspeakers whose geometry is known: what can be drawn and added up. Of all others it is told what
is missing; they are counted, used and weighed all the same.
"""

from collections.abc import Iterable, Iterator
from typing import TypeGuard

from builder.departments.sound.description.loudspeakers import (
    At,
    Fill,
    FillBox,
    Hang,
    Spot,
    SubLine,
    Turn,
)
from builder.reading.absent import Absent
from builder.reading.quantities import Angle, Duration, Height, Length, Level
from builder.reading.written import Line

HANG_NEEDS = (
    ("boxes", "how many boxes {} has"),
    ("at", "where {} hangs"),
    ("top", "how high {} hangs"),
    ("down", "how far the top box of {} looks down"),
    ("turned", "how far {} is turned"),
    ("turned_down", "how far {} is turned down"),
    ("delay", "the delay of {}"),
)
SUBS_NEED = (
    ("count", "how many subs {} has"),
    ("spacing", "the spacing of {}"),
    ("at", "where {} stands"),
    ("out_of_service", "which subs of {} play"),
    ("arc", "the arc of {}"),
    ("arc_radius", "the radius of the arc of {}"),
    ("turned_down", "how far {} is turned down"),
    ("delay", "the delay of {}"),
)
FILL_NEEDS = (
    ("aligned_at", "where {} is brought together in time"),
    ("after", "how long after the hang {} comes"),
    ("turned_down", "how far {} is turned down"),
)
BOX_NEEDS = (
    ("at", "where each box of {} is"),
    ("turned", "how far each box of {} is turned"),
    ("down", "how far each box of {} looks down"),
)


class PlacedHang(Hang):
    """A hang whose geometry is known. Only types are told by it: none is ever made."""

    boxes: int
    at: Spot
    top: Height
    down: Angle
    turned: Turn | None
    turned_down: Level | None
    delay: Duration | None


class PlacedSubs(SubLine):
    """A line of subs whose geometry is known. Only types are told by it: none is ever made."""

    count: int
    spacing: Length
    at: At
    out_of_service: tuple[int, ...]
    arc: Angle | None
    arc_radius: Length | None
    turned_down: Level | None
    delay: Duration | None


class PlacedBox(FillBox):
    """A box of a fill whose geometry is known. Only types are told by it: none is ever made."""

    at: At
    turned: Turn | None
    down: Angle | None


class PlacedFill(Fill):
    """A fill whose geometry is known. Only types are told by it: none is ever made."""

    aligned_at: Length | None
    after: Duration | None
    turned_down: Level | None


def is_placed_hang(hang: Hang) -> TypeGuard[PlacedHang]:
    """Whether all of a hang's geometry is known, its splay aside."""
    return not lacking_of_hang(hang)


def is_placed_line(subs: SubLine) -> TypeGuard[PlacedSubs]:
    """Whether all of the geometry of a line of subs is known."""
    return not lacking_of_subs(subs)


def is_placed_fill(fill: Fill) -> TypeGuard[PlacedFill]:
    """Whether all of a fill's geometry is known, that of its boxes too."""
    return not lacking_of_fill(fill)


def is_placed_box(box: FillBox) -> TypeGuard[PlacedBox]:
    """Whether all of the geometry of a box of a fill is known."""
    return not any(lacking(box, BOX_NEEDS, ""))


def lacking_of_hang(hang: Hang) -> tuple[str, ...]:
    """What must be known before a hang can be drawn, its splay aside."""
    return tuple(lacking(hang, HANG_NEEDS, hang.name))


def lacking_of_subs(subs: SubLine) -> tuple[str, ...]:
    """What must be known before a line of subs can be drawn."""
    return tuple(lacking(subs, SUBS_NEED, subs.name))


def lacking_of_fill(fill: Fill) -> tuple[str, ...]:
    """What must be known before a fill can be drawn, each thing once."""
    boxes = (words for box in fill.boxes for words in lacking(box, BOX_NEEDS, fill.name))
    return tuple(dict.fromkeys((*lacking(fill, FILL_NEEDS, fill.name), *boxes)))


def lacking(line: Line, needs: Iterable[tuple[str, str]], name: str) -> Iterator[str]:
    """What is missing of some needs, in words."""
    for key, words in needs:
        if isinstance(getattr(line, key), Absent):
            yield words.format(name)
