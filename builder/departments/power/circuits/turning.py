"""
Figures that a value can turn, between what they are at its ends: the current of a neutral, how
uneven phases are, and the drop along feeders at a power factor that is known in part.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from builder.departments.power.amounts import ampere, percent, rounded
from builder.departments.power.circuits.tree import Network
from builder.formulas.neutral_limits import third_harmonic_that_fills_neutral
from builder.formulas.phasor_regions import (
    around_arc,
    largest_part_ends,
    least_size,
    most_size,
    sum_region,
)
from builder.formulas.phasors import PHASES, Phasors, imbalance_percent
from builder.pack import Turning, Value, one_or_both

ROUNDING = 1e-9
"""What cancels leaves last digits: this share of a current is nothing."""


@dataclass(frozen=True, slots=True)
class Part:
    """
    What one load puts on a node. [A]

    At a power factor between two it lies on the line between, or on an arc where its current is
    stated and not its power (``bends``).
    """

    name: str
    currents: Phasors
    third_a: float
    bends: bool


def parts_on(name: str, network: Network) -> tuple[Part, ...]:
    """What each load puts on a node."""
    return tuple(
        Part(
            each.asked.what, load.currents, math.fsum(load.third_harmonic_a), each.asked.kw is None
        )
        for each, load in network.seen_at(name)
    )


@dataclass(frozen=True, slots=True)
class NeutralTurning(Turning):
    """The current of a neutral: the sum of what all lines carry, and third harmonics."""

    parts: tuple[Part, ...]

    def between(self, others: Sequence[Turning]) -> Value | None:
        """From the least to the most that any loads between may put on the neutral."""
        rows = alike([each.parts for each in others if isinstance(each, NeutralTurning)])
        if rows is None or len(rows[0]) < len(others):
            return None
        region = sum_region([region_of(row, (0, 1, 2)) for row in rows])
        thirds = [[part.third_a for part in row] for row in rows]
        least = math.hypot(least_size(region), math.fsum(min(row) for row in thirds))
        most = math.hypot(most_size(region), math.fsum(max(row) for row in thirds))
        return one_or_both(told_current(least), told_current(most))


@dataclass(frozen=True, slots=True)
class UnevenTurning(Turning):
    """How uneven the phases of a node are."""

    parts: tuple[Part, ...]
    phases: tuple[str, ...]

    def between(self, others: Sequence[Turning]) -> Value | None:
        """From the least to the most that phases may be uneven, each between its own two sizes."""
        rows = alike([each.parts for each in others if isinstance(each, UnevenTurning)])
        if rows is None or len(rows[0]) < len(others):
            return None
        lines = [PHASES.index(phase) for phase in self.phases]
        if all(is_even(part, lines) for row in rows for part in row):
            return percent(0.0)
        sizes = []
        for phase in self.phases:
            region = sum_region([region_of(row, (PHASES.index(phase),)) for row in rows])
            sizes.append((least_size(region), most_size(region)))
        least, most = uneven_ends(sizes)
        return one_or_both(percent(least), percent(most))


def is_even(part: Part, lines: Sequence[int]) -> bool:
    """
    Whether a load puts as much on every line, so that these cancel: loads of this kind alone are
    even together, whatever each draws and at whatever angle.
    """
    currents = [part.currents[line] for line in lines]
    sizes = [abs(current) for current in currents]
    hair_a = max(sizes) * ROUNDING
    return max(sizes) - min(sizes) <= hair_a and abs(sum(currents)) <= hair_a


@dataclass(frozen=True, slots=True)
class LeftInNeutralTurning(Turning):
    """What a neutral may still carry beside any part of its loads. [A]"""

    parts: tuple[Part, ...]
    hours_a: float

    def between(self, others: Sequence[Turning]) -> Value | None:
        """From what the largest of all parts leaves to what the least largest one does."""
        found = left_ends([each for each in others if isinstance(each, LeftInNeutralTurning)])
        return one_or_both(told_current(found[0]), told_current(found[1])) if found else None


@dataclass(frozen=True, slots=True)
class BindsTurning(Turning):
    """From which third harmonic a neutral binds: what is left in it beside what is free."""

    left: LeftInNeutralTurning
    free_a: float

    def between(self, others: Sequence[Turning]) -> Value | None:
        """From the least left on the most free to the most left on the least free."""
        rows = [each for each in others if isinstance(each, BindsTurning)]
        found = left_ends([row.left for row in rows])
        free_a = [row.free_a for row in rows]
        if found is None or min(free_a) <= 0:
            return None
        least = third_harmonic_that_fills_neutral(neutral_left_a=found[0], line_a=max(free_a))
        most = third_harmonic_that_fills_neutral(neutral_left_a=found[1], line_a=min(free_a))
        return one_or_both(percent(least * 100), percent(most * 100)) if most <= 1 else None


def left_ends(corners: Sequence[LeftInNeutralTurning]) -> tuple[float, float] | None:
    """The least and the most that a neutral may still carry; None where that is not told. [A]"""
    rows = alike([corner.parts for corner in corners])
    if rows is None:
        return None
    regions = [region_of(row, (0, 1, 2)) for row in rows]
    found = largest_part_ends(regions)
    if found is None:
        return None
    thirds = [[part.third_a for part in row] for row in rows]
    least_a = math.hypot(found[0], math.fsum(min(row) for row in thirds))
    most_a = math.hypot(found[1], math.fsum(max(row) for row in thirds))
    hours_a = [corner.hours_a for corner in corners]
    return max(0.0, min(hours_a) - most_a), max(0.0, max(hours_a) - least_a)


def told_current(current_a: float) -> Value:
    """A current as a value, without the last digits that adding phasors leaves."""
    return ampere(rounded(current_a))


@dataclass(frozen=True, slots=True)
class Along:
    """
    What is lost along feeders, as shares of the voltage at a power factor of 1 and of 0 lagging.
    """

    resistive: float
    reactive: float
    power_factor: float


@dataclass(frozen=True, slots=True)
class DropTurning(Turning):
    """A drop along feeders that carry one load: R·cos φ + X·sin φ has its top within."""

    along: Along
    told: Callable[[float], Value]

    def between(self, others: Sequence[Turning]) -> Value | None:
        """From the least to the most that is lost at any power factor between."""
        rows = [each.along for each in others if isinstance(each, DropTurning)]
        if len(rows) < len(others):
            return None
        least, most = drop_ends(rows)
        return one_or_both(self.told(least), self.told(most))


@dataclass(frozen=True, slots=True)
class LeftTurning(Turning):
    """What a limit leaves of a drop. [limit in %]"""

    along: Along
    limit_percent: float

    def between(self, others: Sequence[Turning]) -> Value | None:
        """From what the most lost leaves to what the least does, of the limit at each end."""
        rows = [each for each in others if isinstance(each, LeftTurning)]
        if len(rows) < len(others) or len({row.limit_percent for row in rows}) > 1:
            return None
        least, most = drop_ends([row.along for row in rows])
        left = [percent(max(0.0, self.limit_percent - lost * 100)) for lost in (most, least)]
        return one_or_both(left[0], left[1])


def drop_ends(rows: Sequence[Along]) -> tuple[float, float]:
    """
    The least and the most lost of several, at any of their power factors and between them: the sum
    of a cosine and a sine is least at an end of the angle, and most where its tangent is X / R.
    """
    angles = [math.acos(row.power_factor) for row in rows]
    low, high = min(angles), max(angles)
    least = math.inf
    most = 0.0
    for row in rows:
        top = math.atan2(row.reactive, row.resistive)
        at = [lost_at(row, angle) for angle in (low, high, min(high, max(low, top)))]
        least, most = min(least, *at), max(most, *at)
    return least, most


def lost_at(row: Along, angle: float) -> float:
    """What is lost at one angle of the load. [share]"""
    return row.resistive * math.cos(angle) + row.reactive * math.sin(angle)


def alike(corners: Sequence[tuple[Part, ...]]) -> list[list[Part]] | None:
    """
    What each load is at every end, load by load; None where the ends do not have the same loads.
    """
    names = {tuple(part.name for part in corner) for corner in corners}
    if len(names) != 1 or not corners[0]:
        return None
    return [list(row) for row in zip(*corners, strict=True)]


def region_of(row: Sequence[Part], lines: Sequence[int]) -> list[complex]:
    """Points around all that a load may put on some lines together, or on one. [A]"""
    points = [complex(sum(part.currents[line] for line in lines)) for part in row]
    # What cancels on three lines leaves last digits, which have no angle.
    largest_a = max(abs(current) for part in row for current in part.currents)
    points = [0j if abs(point) <= largest_a * ROUNDING else point for point in points]
    return around_arc(points) if any(part.bends for part in row) else points


def uneven_ends(sizes: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """
    The least and the most that phases are uneven, each between two sizes. [%]

    The distance from the mean over the mean is a largest of ratios, so it is most at ends. It is
    least where the phase that must be largest and the one that must be smallest are as near as they
    can be, and the third is midway between them or as near to that as it can.
    """
    most = 0.0
    for corner in corners_of(sizes):
        most = max(most, imbalance_percent(corner))
    largest = max(sizes, key=lambda ends: ends[0])
    smallest = min(sizes, key=lambda ends: ends[1])
    high, low = largest[0], smallest[1]
    if high <= low:
        return 0.0, most
    rest = [ends for ends in sizes if ends is not largest and ends is not smallest]
    middle = [min(top, max(bottom, (high + low) / 2)) for bottom, top in rest]
    return imbalance_percent([high, low, *middle]), most


def corners_of(sizes: Sequence[tuple[float, float]]) -> list[list[float]]:
    """Every choice of one end of each."""
    found: list[list[float]] = [[]]
    for ends in sizes:
        found = [[*before, end] for before in found for end in ends]
    return found
