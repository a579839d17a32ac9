"""
The check by hand of a hang on three supports or more: sums, moments, and the three-moment equation
at each inner support.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import fsum

from builder.departments.rigging.hangs.bodies import Body
from builder.formulas.loads import Load, PointLoad


def moment_steps(body: Body, shares_kg: Sequence[float]) -> Iterator[str]:
    """
    Lines that a reader can redo with pencil and paper. They hold where no support is slack.

    Shares that keep the sum, the moments about the first end and the three-moment equation at every
    inner support are the only ones that do.
    """
    order = sorted(range(len(shares_kg)), key=lambda index: body.supports_m[index])
    places, shares = (
        [body.supports_m[index] for index in order],
        [shares_kg[index] for index in order],
    )
    names = [body.supports[index].point for index in order]
    turned = fsum(load.total_kg * middle_m(load) for load in body.loads)
    yield (
        f"Check, shares × places: {sum_words(shares, places)} = {turned:,.0f} kg m, as each load ×"
        " its middle gives."
    )
    at = [moment_kg_m(place, places, shares, body.loads) for place in places]
    listed = ", ".join(f"{name} {value:+.1f}" for name, value in zip(names, at, strict=True))
    yield (
        "Moments in the hang over its supports, shares up and loads down to the left of each:"
        f" {listed} kg m."
    )
    yield (
        "Check, three moments: M1 L1 + 2 M2 (L1 + L2) + M3 L2 = −(Y1 + Y2). Y = P x (L² − x²) / L"
        " for a load at x from the far support; w (L² (b² − a²) / 2 − (b⁴ − a⁴) / 4) / L for w a"
        " metre from a to b, which is w L³ / 4 for all of the span."
    )
    for index, ((a, b), (_, c)) in enumerate(pairwise(pairwise(places)), 1):
        first, second = b - a, c - b
        left = fsum(term_kg_m2(load, a, b, from_left=True) for load in body.loads)
        right = fsum(term_kg_m2(load, b, c, from_left=False) for load in body.loads)
        sides = at[index - 1] * first + 2 * at[index] * (first + second) + at[index + 1] * second
        written = (
            f"({at[index - 1]:.1f}) × {first:.2f} + 2 × ({at[index]:.1f}) × {first + second:.2f} +"
            f" ({at[index + 1]:.1f}) × {second:.2f}"
        )
        yield (
            f"{names[index]}: {written} = {sides:,.0f}; −({left:,.0f} + {right:,.0f}) ="
            f" {-(left + right):,.0f} kg m²."
        )


def sum_words(shares: Sequence[float], places: Sequence[float]) -> str:
    """Shares times places."""
    return " + ".join(
        f"{share:.1f} × {place:.2f}" for share, place in zip(shares, places, strict=True)
    )


def middle_m(load: Load) -> float:
    """Where a load acts. [m]"""
    return load.at_m if isinstance(load, PointLoad) else (load.from_m + load.to_m) / 2


def moment_kg_m(
    at_m: float, places: Sequence[float], shares: Sequence[float], loads: Sequence[Load]
) -> float:
    """The moment in the hang at a place, from what is left of it; positive sags. [kg m]"""
    up = fsum(
        share * (at_m - place) for share, place in zip(shares, places, strict=True) if place < at_m
    )
    return up - fsum(turn_left_kg_m(load, at_m) for load in loads)


def turn_left_kg_m(load: Load, at_m: float) -> float:
    """The moment of the part of a load left of a place. [kg m]"""
    if isinstance(load, PointLoad):
        return load.load_kg * max(at_m - load.at_m, 0.0)
    end_m = min(load.to_m, at_m)
    return (
        load.load_kg_per_m * (end_m - load.from_m) * (at_m - (load.from_m + end_m) / 2)
        if end_m > load.from_m
        else 0.0
    )


def term_kg_m2(load: Load, from_m: float, to_m: float, *, from_left: bool) -> float:
    """
    The load term of a span in the three-moment equation: P x (L² − x²) / L, with x from the support
    that is not the one asked about.
    """
    span_m = to_m - from_m
    if isinstance(load, PointLoad):
        x = load.at_m - from_m if from_left else to_m - load.at_m
        return load.load_kg * x * (span_m**2 - x**2) / span_m if 0 < x < span_m else 0.0
    start, end = max(load.from_m, from_m), min(load.to_m, to_m)
    if end <= start:
        return 0.0
    low, high = (start - from_m, end - from_m) if from_left else (to_m - end, to_m - start)
    return (
        load.load_kg_per_m / span_m * (span_m**2 * (high**2 - low**2) / 2 - (high**4 - low**4) / 4)
    )
