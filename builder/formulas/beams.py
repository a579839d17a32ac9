"""
A continuous beam seen from its supports: influence lines and stiffness, found once and used for
every load case.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from builder.formulas.cite import cites
from builder.formulas.loads import Load, PointLoad, UniformLoad, _finite
from builder.formulas.sources import KASSIMALI

STANDARD_GRAVITY_M_S2 = 9.80665
LEAST_SPACING_M = 0.01
"""Supports closer than this are one place: their shares would be a matter of rounding."""

Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class CondensedBeam:
    """
    A beam seen from its supports alone, in rising order of place.

    ``pieces[k, p, i]`` is the coefficient of ``t**p`` in the influence line of support i, in the
    first overhang (k = 0), the spans and the last overhang; t is measured from ``origins_m[k]``.
    ``areas_m[k, i]`` is that line's integral from the first support to the origin.
    ``stiffness_per_m3[i, j]`` times EI is the force at support i for unit movement of support j.
    """

    supports_m: Array
    origins_m: Array
    pieces: Array
    areas_m: Array
    stiffness_per_m3: Array


@cites(
    KASSIMALI,
    "App. D, three-moment equation, solved for unit movements of the supports",
    equation=(
        "L_j m_(j-1) + 2 (L_j + L_(j+1)) m_j + L_(j+1) m_(j+1) = 6 ((d_(j+1) - d_j)/L_(j+1) - (d_j"
        " - d_(j-1))/L_j)"
    ),
)
def condensed_beam(supports_m: Sequence[float] | Array) -> CondensedBeam:
    """
    Influence lines and support stiffness of a continuous beam: all that later load cases need.

    Parameters
    ----------
    supports_m
        Places of two or more supports, in any order. [m]

    Returns
    -------
    CondensedBeam
        The beam as its supports see it, in rising order of place. [m], [-], [1/m³]

    Raises
    ------
    ValueError
        If there are fewer than two supports or two at one place.
    """
    x = np.sort(np.array(_checked_supports(supports_m, at_least=2), dtype=np.float64))
    curvature_per_m2, stiffness = _curvatures_per_unit_movement(x)
    origins = np.concatenate((x[:1], x))
    pieces = _influence_pieces(np.diff(x), curvature_per_m2)
    return CondensedBeam(x, origins, pieces, _areas_to_origins(pieces, np.diff(x)), stiffness)


@cites(
    KASSIMALI,
    "ch. 8, influence lines: response to concentrated and distributed loads, from memory",
    equation="R_i = sum(P n_i(x)) + sum(w integral of n_i)",
)
def level_reactions_kg(beam: CondensedBeam, loads: Sequence[Load]) -> Array:
    """
    Reactions of a condensed beam on level supports.

    Parameters
    ----------
    beam
        Two or more supports, condensed. [m]
    loads
        Point and uniform loads. [m], [kg]

    Returns
    -------
    array of shape (N,)
        Reactions in rising order of place. [kg]
    """
    points = [(load.at_m, load.load_kg) for load in loads if isinstance(load, PointLoad)]
    spread = [
        (load.from_m, load.to_m, load.load_kg_per_m)
        for load in loads
        if isinstance(load, UniformLoad)
    ]
    found = np.zeros(len(beam.supports_m))
    if points:
        at, kg = np.array(points).T
        found += kg @ _influence(beam, at, integrated=False)
    if spread:
        start, end, per_m = np.array(spread).T
        found += per_m @ (
            _influence(beam, end, integrated=True) - _influence(beam, start, integrated=True)
        )
    return found


@cites(KASSIMALI, "ch. 13, support settlements", equation="k_ij EI 1000 / g, in kg per m")
def stiffness_kg_per_m(beam: CondensedBeam, ei_kn_m2: float | None) -> Array:
    """
    Change of each reaction for movement of each support.

    Parameters
    ----------
    beam
        Two or more supports, condensed. [m]
    ei_kn_m2
        Bending stiffness of the body. [kN·m²]

    Returns
    -------
    array of shape (N, N)
        Loss of reaction i where support j stands lower. [kg/m]

    Raises
    ------
    ValueError
        If the stiffness is missing or not above 0.
    """
    if ei_kn_m2 is None or not 0 < ei_kn_m2 < math.inf:
        raise ValueError(
            f"ei_kn_m2 must be a number above 0 where supports are out of level, got {ei_kn_m2}"
        )
    return beam.stiffness_per_m3 * (ei_kn_m2 * 1000 / STANDARD_GRAVITY_M_S2)


def _curvatures_per_unit_movement(x: Array) -> tuple[Array, Array]:
    """
    Curvature at every support for unit movement of each, and the force that movement takes (times
    EI).
    """
    count, span = len(x), np.diff(x)
    kink = np.zeros((count - 2, count))
    bend = np.zeros((count - 2, count - 2))
    for j in range(count - 2):
        left, right = span[j], span[j + 1]
        kink[j, j : j + 3] = 1 / left, -1 / left - 1 / right, 1 / right
        bend[j, j] = (left + right) / 3
        if j:
            bend[j, j - 1] = bend[j - 1, j] = left / 6
    curvature = np.zeros((count, count))
    curvature[1:-1] = np.linalg.solve(bend, kink)
    stiffness = kink.T @ curvature[1:-1]
    return curvature, (stiffness + stiffness.T) / 2


def _influence_pieces(span: Array, curvature: Array) -> Array:
    """Cubic of each span, straight lines beyond the outer supports; axes: piece, power, support."""
    unit, length = np.eye(len(span) + 1), span[:, None]
    first, last = curvature[:-1], curvature[1:]
    pieces = np.zeros((len(span) + 2, 4, len(span) + 1))
    pieces[1:-1, 0] = unit[:-1]
    pieces[1:-1, 1] = (unit[1:] - unit[:-1]) / length - length * (2 * first + last) / 6
    pieces[1:-1, 2] = first / 2
    pieces[1:-1, 3] = (last - first) / (6 * length)
    pieces[0, :2] = pieces[1, :2]
    pieces[-1, 0] = unit[-1]
    pieces[-1, 1] = (unit[-1] - unit[-2]) / span[-1] + span[-1] * (
        curvature[-2] + 2 * curvature[-1]
    ) / 6
    return pieces


def _areas_to_origins(pieces: Array, span: Array) -> Array:
    """Integral of every influence line from the first support to the origin of each piece."""
    powers = np.stack([span ** (p + 1) / (p + 1) for p in range(4)], axis=1)
    over_spans = _sums(pieces[1:-1], powers)
    start = np.zeros((2, pieces.shape[2]))
    return np.concatenate((start, np.cumsum(over_spans, axis=0)))


def _influence(beam: CondensedBeam, at_m: Array, *, integrated: bool) -> Array:
    """
    Influence lines of all supports (or their integrals from the first support) at places; shape
    (places, supports).
    """
    piece = np.searchsorted(beam.supports_m, at_m, side="right")
    t = at_m - beam.origins_m[piece]
    exponents = np.arange(4)
    if not integrated:
        return _sums(beam.pieces[piece], t[:, None] ** exponents)
    powers = t[:, None] ** (exponents + 1) / (exponents + 1)
    return beam.areas_m[piece] + _sums(beam.pieces[piece], powers)


def _sums(pieces: Array, powers: Array) -> Array:
    return np.asarray((pieces * powers[:, :, None]).sum(axis=1), dtype=np.float64)


def _checked_supports(
    supports_m: Sequence[float] | Array, *, at_least: int = 1, exactly: int | None = None
) -> tuple[float, ...]:
    """The places as floats, in the order given. Refuses too few, and two at one place."""
    places = tuple(float(place) for place in supports_m)
    if exactly is not None and len(places) != exactly:
        raise ValueError(f"supports_m must hold {exactly} supports, got {len(places)}")
    if len(places) < at_least:
        raise ValueError(
            f"supports_m must hold at least {at_least} support{'s' if at_least > 1 else ''}, got"
            f" {len(places)}"
        )
    for place in places:
        _finite("supports_m", place)
    ordered = sorted(places)
    for first, second in pairwise(ordered):
        if second - first < LEAST_SPACING_M - 1e-9:
            raise ValueError(
                f"supports_m must be at least {LEAST_SPACING_M} m apart, got {first} and {second}"
            )
    return places


def _checked_settlements(settlements_m: Sequence[float], count: int) -> Array:
    if len(settlements_m) != count:
        raise ValueError(
            f"settlements_m must hold one value for each of {count} supports, got"
            f" {len(settlements_m)}"
        )
    for value in settlements_m:
        _finite("settlements_m", value)
    return np.array(settlements_m, dtype=np.float64)
