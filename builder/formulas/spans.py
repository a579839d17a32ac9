"""
What loads on one span come to as a uniform load, by bending and by shear, so that a maker's table
of uniform loads can be held against them.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import fsum, inf

from builder.formulas.cite import cites
from builder.formulas.loads import Load, PointLoad
from builder.formulas.sources import HIBBELER


@dataclass(frozen=True, slots=True)
class AsUniform:
    """
    The greatest bending moment on a span and where it is, the greatest shear, and the uniform load
    in all that has as much of the worse of the two. [kg·m], [m], [kg]
    """

    moment_kgm: float
    at_m: float
    shear_kg: float
    by_moment_kg: float
    by_shear_kg: float

    @property
    def uniform_kg(self) -> float:
        """The larger of the two. [kg]"""
        return max(self.by_moment_kg, self.by_shear_kg)


@dataclass(frozen=True, slots=True)
class Part:
    """The part of a load that is on the span, by place from its first support. [m], [kg]"""

    from_m: float
    to_m: float
    kg: float

    @property
    def centre_m(self) -> float:
        """Where it acts. [m]"""
        return (self.from_m + self.to_m) / 2

    def beyond_kgm(self, at_m: float) -> float:
        """The moment about a place of what stands before it. [kg·m]"""
        if self.from_m >= at_m:
            return 0.0
        if self.to_m <= at_m:
            return self.kg * (at_m - self.centre_m)
        per_m = self.kg / (self.to_m - self.from_m)
        return per_m * (at_m - self.from_m) ** 2 / 2

    def before_kg(self, at_m: float) -> float:
        """How much of it stands before a place. [kg]"""
        if self.from_m >= at_m:
            return 0.0
        if self.to_m <= at_m:
            return self.kg
        return self.kg * (at_m - self.from_m) / (self.to_m - self.from_m)


@cites(
    HIBBELER,
    "ch. 7, shear and moment diagrams of a beam on two supports, from memory",
    equation="M(x) = R_1 x - sum(P_i (x - x_i)); W = max(8 M / L, 2 V)",
)
def as_uniform(loads: Sequence[Load], *, from_m: float, to_m: float) -> AsUniform:
    """
    The uniform load on a span that bends or shears it as much as some loads do.

    Parameters
    ----------
    loads
        Point and uniform loads along a body; only what is between the two supports counts. [m],
        [kg]
    from_m, to_m
        Places of the two supports. [m]

    Returns
    -------
    AsUniform
        Moment, shear and the uniform load of each. [kg·m], [kg]

    Raises
    ------
    ValueError
        If the span has no length.

    Notes
    -----
    A beam on two supports of one section. What stands beyond them would only take bending off the
    span and is left out, as is what a continuous beam passes on to its neighbours. Where the load
    acts between the nodes of a truss, its chord bends besides: the maker's to say.
    """
    span_m = to_m - from_m
    if not 0 < span_m < inf:
        raise ValueError(f"to_m must be beyond from_m, got {from_m} and {to_m}")
    parts = [part for load in loads if (part := on_span(load, from_m, to_m)) is not None]
    first_kg = fsum(part.kg * (span_m - part.centre_m) for part in parts) / span_m
    last_kg = fsum(part.kg * part.centre_m for part in parts) / span_m
    moment_kgm, at_m = max(
        (moment_at_kgm(parts, first_kg, at_m), at_m) for at_m in places(parts, first_kg, span_m)
    )
    shear_kg = max(first_kg, last_kg)
    return AsUniform(moment_kgm, at_m, shear_kg, 8 * moment_kgm / span_m, 2 * shear_kg)


def on_span(load: Load, from_m: float, to_m: float) -> Part | None:
    """The part of a load between two supports; a load right over one bends nothing."""
    if isinstance(load, PointLoad):
        at_m = load.at_m - from_m
        return Part(at_m, at_m, load.load_kg) if from_m < load.at_m < to_m else None
    begin_m, end_m = max(load.from_m, from_m), min(load.to_m, to_m)
    if end_m <= begin_m:
        return None
    return Part(begin_m - from_m, end_m - from_m, load.load_kg_per_m * (end_m - begin_m))


def moment_at_kgm(parts: Sequence[Part], first_kg: float, at_m: float) -> float:
    """The bending moment at a place. [kg·m]"""
    return first_kg * at_m - fsum(part.beyond_kgm(at_m) for part in parts)


def places(parts: Sequence[Part], first_kg: float, span_m: float) -> list[float]:
    """
    Where the moment can be greatest: at the ends of loads, and where the shear passes through
    nothing between two of them. [m]
    """
    ends = sorted({0.0, span_m, *(at for part in parts for at in (part.from_m, part.to_m))})
    found = list(ends)
    for begin_m, end_m in pairwise(ends):
        shear_kg = first_kg - before_kg(parts, (begin_m + end_m) / 2)
        per_m = fsum(
            part.kg / (part.to_m - part.from_m)
            for part in parts
            if part.from_m <= begin_m and part.to_m >= end_m
        )
        if per_m > 0:
            at_m = (begin_m + end_m) / 2 + shear_kg / per_m
            found += [at_m] if begin_m < at_m < end_m else []
    return found


def before_kg(parts: Sequence[Part], at_m: float) -> float:
    """What stands before a place. [kg]"""
    return fsum(part.before_kg(at_m) for part in parts)
