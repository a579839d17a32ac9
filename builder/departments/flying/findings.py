"""What does not add up among line sets."""

from collections.abc import Iterator
from itertools import combinations

from builder.departments.flying.description import Flying, LineSet
from builder.departments.flying.sets import (
    FREE,
    carrying,
    is_kept,
    kg_of,
    moving_with,
    sets_of,
    told,
)
from builder.pack import Finding, Level
from builder.reading.addresses import distinct
from builder.reading.measures import System, shown
from builder.reading.quantities import Height, Length, Mass
from builder.stating import place

SAME_M = 0.02
"""Closer than this, two line sets hang at one distance."""


def findings(flying: Flying, system: System) -> Iterator[Finding]:
    """Sets that carry too much, trims that cannot be, two sets at one distance."""
    sets = sets_of(flying)
    keys = [f"flying.lineset.{last}" for last in distinct([one.name for one in sets])]
    for line_set, key in zip(sets, keys, strict=True):
        yield from overloaded(line_set, flying, key, system)
        yield from trims(line_set, flying, key)
        yield from load_over_arbor(line_set, flying, key, system)
        yield from tied(line_set, flying, key)
    for (one, key), (other, _) in combinations(zip(sets, keys, strict=True), 2):
        if at_one(one, other):
            sentence = (
                f"Line sets {one.name} and {other.name} hang at one distance. Which of them is"
                " right?"
            )
            where = place(other.where("distance"))
            yield Finding(Level.CAUTION, "line-sets-at-one", sentence, key, where)


def at_one(one: LineSet, other: LineSet) -> bool:
    """Whether two sets hang at one distance, as they are told."""
    first, second = one.distance, other.distance
    if not isinstance(first, Length) or not isinstance(second, Length):
        return False
    return abs(first.m - second.m) < SAME_M


def overloaded(line_set: LineSet, flying: Flying, key: str, system: System) -> Iterator[Finding]:
    """More hangs on a set than may: for certain, or perhaps."""
    least, most = carrying(line_set, flying).left
    if most is not None and most < 0:
        much = shown(Mass, -most, 0, system)[0]
        sentence = (
            f"On line set {line_set.name} hangs at least {much} more than it may carry. Take it"
            " off, or mend the figures."
        )
        yield Finding(Level.DANGER, "line-set-over", sentence, key, place(line_set.where()))
    elif least is not None and least < 0:
        sentence = (
            f"On line set {line_set.name} may hang more than it may carry: the figures are known in"
            " part, and their far ends go over."
        )
        yield Finding(Level.CAUTION, "line-set-over", sentence, key, place(line_set.where()))


def load_over_arbor(
    line_set: LineSet, flying: Flying, key: str, system: System
) -> Iterator[Finding]:
    """The house allows more on the pipe than the weights of the arbor balance."""
    load = kg_of(told(line_set, flying, "load").value)[0]
    may = carrying(line_set, flying).may[1]
    if load is not None and may is not None and load > may + 0.5:
        words = " and ".join(shown(Mass, kg, 0, system)[0] for kg in (load, may))
        sentence = (
            f"Line set {line_set.name} is told two limits, {words} beside its pipe; the lower one"
            " counts."
        )
        yield Finding(Level.CAUTION, "line-set-limits", sentence, key, place(line_set.where()))


def tied(line_set: LineSet, flying: Flying, key: str) -> Iterator[Finding]:
    """A set that is called free and moves with one that is not, or is out of service."""
    kept = [one.name for one in moving_with(line_set, flying) if is_kept(one)]
    if line_set.use == FREE and kept and not is_kept(line_set):
        sentence = (
            f"Line set {line_set.name} is called free, and moves with {', '.join(kept)}, which a"
            " show may not have. It is not counted as free."
        )
        where = place(line_set.where("use"))
        yield Finding(Level.CAUTION, "line-set-tied", sentence, key, where)


def trims(line_set: LineSet, flying: Flying, key: str) -> Iterator[Finding]:
    """A low trim above the high one, or a pipe that goes above the grid."""
    low, high = (told(line_set, flying, name) for name in ("low_trim", "high_trim"))
    if is_above(low.value, high.value):
        sentence = (
            f"The low trim of line set {line_set.name}, {low.value.text}, is above its high trim,"
            f" {high.value.text}. Are they the wrong way round?"
        )
        where = place(low.by.where("low_trim"))
        yield Finding(Level.CAUTION, "trims-swapped", sentence, key, where)
    grid = flying.grid
    if isinstance(grid, Height) and is_above(high.value, grid):
        sentence = (
            f"The high trim of line set {line_set.name}, {high.value.text}, is above the grid at"
            f" {grid.text}. Which one is right?"
        )
        where = place(high.by.where("high_trim"))
        yield Finding(Level.CAUTION, "trim-above-grid", sentence, key, where)


def is_above(one: object, other: object) -> bool:
    """Whether one height is above another, where both are exact."""
    return isinstance(one, Height) and isinstance(other, Height) and one.m > other.m
