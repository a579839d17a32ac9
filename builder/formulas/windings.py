"""
A load as what feeds its transformer sees it, and what is free behind one.

How the windings are joined is seldom written. A load that stands evenly on three lines looks the
same before every usual transformer: its turns ratio times as much on each line. A load on one line
does not: before a star winding it stays on its line; before a delta one it stands on two lines,
each with 1/√3 of that, and which two the vector group says. So the size on each line is the
largest of all these, and nothing is told smaller than it can be.

Planning figures: the maker's data and a licensed electrician decide.
"""

import cmath
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from builder.formulas.cite import cites
from builder.formulas.phasors import PHASES, Phasors
from builder.formulas.ranges import above_zero
from builder.formulas.sources import NILSSON_RIEDEL

PhaseAmperes = tuple[float, float, float]
"""Amperes of L1, L2, L3."""
Winding = Literal["line", "two lines", "three lines"]
"""
How lines stand on those of the source: each on its own, without a transformer or with one on each
line; two with a neutral between them on a winding between two lines; or three by an unknown group.
"""
EVEN = 1e-9
"""How far currents may differ, in parts of the largest, and still be an even load."""
DELTA = 1 / math.sqrt(3)
APART = 2 / math.sqrt(3)
"""
What two lines may ask of one line of a delta winding, over what an even load asks: their currents
may be of any angle to each other.
"""


@dataclass(frozen=True, slots=True)
class Load:
    """
    A load that stands on a node: its line current phasors and its third harmonic current in each
    line. [A]

    ``ways`` is what each line carries of it by each way that the transformer ``via`` may be joined,
    empty where that is the size of its currents; ``returns_a`` what comes back in the neutral of
    each line, None where that follows from the lines it is on. [A]
    """

    name: str
    node: str
    currents: Phasors
    third_harmonic_a: PhaseAmperes = (0.0, 0.0, 0.0)
    power_factor: float = 1.0
    ways: tuple[PhaseAmperes, ...] = ()
    via: str = ""
    returns_a: PhaseAmperes | None = None

    @property
    def sizes(self) -> PhaseAmperes:
        """The most on each line, whichever way it is joined. [A]"""
        first, second, third = self.currents
        return most_by_line(self.ways or ((abs(first), abs(second), abs(third)),))

    @property
    def returns(self) -> PhaseAmperes:
        """What a load between one line and neutral sends back; a load between lines nothing. [A]"""
        alone = sum(size_a > 0 for size_a in self.sizes) == 1
        return self.returns_a or (self.sizes if alone else (0.0, 0.0, 0.0))


def most_by_line(ways: Iterable[PhaseAmperes]) -> PhaseAmperes:
    """The largest of several sizes on each line. [A]"""
    first, second, third = (max(sizes) for sizes in zip(*ways, strict=True))
    return (first, second, third)


@cites(
    NILSSON_RIEDEL,
    "ch. 9, ideal transformer; ch. 11, lines and windings of a delta",
    equation=(
        "one line each: r I; between two lines: r (I1 - I2) / 2; unknown group: max of r |I_k| and"
        " r |I_k - I_j| / sqrt(3)"
    ),
)
def seen_before(
    load: Load, *, winding: Winding, ratio: float, phases: Sequence[str], via: str = ""
) -> Load:
    """
    A load behind a transformer as the source in front of it sees it.

    Parameters
    ----------
    load
        The load on its own side. [A]
    winding
        How the lines here stand on those of the source.
    ratio
        Ampere at the source for each ampere of an even load here. [-]
    phases
        The lines here.
    via
        The name of the node behind the transformer: its loads are all joined in one way.

    Returns
    -------
    Load
        On the lines of the source. [A]

    Raises
    ------
    ValueError
        If the ratio is not above 0.

    Notes
    -----
    The transformer is ideal: no magnetising current and no loss. Its turn of the angles is left
    out; sizes do not depend on it.
    """
    above_zero("ratio", ratio)
    if winding == "line" and ratio == 1:
        return load
    if winding == "two lines":
        return _between_two_lines(load, ratio, phases)
    same = _scaled(load, ratio)
    if winding == "line" or _is_even(load):
        return same
    return replace(same, ways=_by_group(same), via=via, returns_a=same.returns)


def _scaled(load: Load, ratio: float) -> Load:
    """The same on the same lines, in the ampere of the source."""
    one, two, three = load.currents
    return replace(
        load,
        currents=(one * ratio, two * ratio, three * ratio),
        third_harmonic_a=_times(load.third_harmonic_a, ratio),
        ways=tuple(_times(way, ratio) for way in load.ways),
        returns_a=None if load.returns_a is None else _times(load.returns_a, ratio),
    )


def _times(values: PhaseAmperes, ratio: float) -> PhaseAmperes:
    first, second, third = values
    return (first * ratio, second * ratio, third * ratio)


def _is_even(load: Load) -> bool:
    """Whether a load draws the same on three lines, each a third of a turn after the last."""
    largest = max(abs(current) for current in load.currents)
    first, second, third = load.currents
    turned = cmath.rect(1.0, 2 * math.pi / 3)
    return load.ways == () and all(
        abs(one - other) <= EVEN * largest
        for one, other in ((second * turned, first), (third, first * turned))
    )


def _by_group(load: Load) -> tuple[PhaseAmperes, PhaseAmperes, PhaseAmperes]:
    """Each line before a star winding, and before a delta one joined one way round or the other."""
    return load.sizes, _before_delta(load, 1), _before_delta(load, 2)


def _before_delta(load: Load, turn: int) -> PhaseAmperes:
    first, second, third = (_apart(load, k, (k + turn) % 3) * DELTA for k in range(3))
    return (first, second, third)


def _apart(load: Load, one: int, other: int) -> float:
    """The difference of two line currents; their sum of sizes where angles are not known."""
    if load.ways:
        return load.sizes[one] + load.sizes[other]
    return abs(load.currents[one] - load.currents[other])


def _between_two_lines(load: Load, ratio: float, phases: Sequence[str]) -> Load:
    """
    A load behind a winding between two lines: the same current in both, and none in a neutral.

    Where nobody says which two lines, it is counted on each.
    """
    lines = [k for k, phase in enumerate(PHASES) if phase in phases]
    sizes = sorted((load.sizes[k] for k in lines), reverse=True)
    ways: tuple[PhaseAmperes, ...] = ()
    if len(lines) != 2 or load.ways:
        most_a = sum(sizes[:2]) / 2 * ratio
        first, second, third = (most_a if k in lines else 0.0 for k in range(3))
        ways = ((first, second, third),)
        currents = [complex(first), complex(second), complex(third)]
    else:
        through = (load.currents[lines[0]] - load.currents[lines[1]]) / 2 * ratio
        currents = [0j, 0j, 0j]
        currents[lines[0]], currents[lines[1]] = through, -through
    return Load(
        load.name,
        load.node,
        (currents[0], currents[1], currents[2]),
        power_factor=load.power_factor,
        ways=ways,
        returns_a=(0.0, 0.0, 0.0),
    )


@cites(
    NILSSON_RIEDEL,
    "ch. 9, ideal transformer; ch. 11, lines and windings of a delta",
    equation=(
        "one line each: free / r; between two lines: min free / r; unknown group: min free / (2 r /"
        " sqrt(3))"
    ),
)
def free_behind(
    free_a: PhaseAmperes, line: int, *, winding: Winding, ratio: float, phases: Sequence[str]
) -> tuple[float, int]:
    """
    What a source leaves to one line behind a transformer, so that all lines there may be used.

    Parameters
    ----------
    free_a
        What is free at the source on each of its lines. [A]
    line
        The line here by its place: 0 for L1.
    winding, ratio, phases
        As in :func:`seen_before`.

    Returns
    -------
    tuple of float and int
        What is free, and the line of the source that leaves it. [A]

    Raises
    ------
    ValueError
        If the ratio is not above 0.

    Notes
    -----
    Before a delta two lines may add up at any angle, so an even load could draw up to 15 % more.
    """
    above_zero("ratio", ratio)
    if winding == "line":
        return free_a[line] / ratio, line
    lines = [k for k, phase in enumerate(PHASES) if phase in phases]
    least = min(lines, key=lambda k: free_a[k])
    share = ratio * (APART if winding == "three lines" else 1.0)
    return free_a[least] / share, least
