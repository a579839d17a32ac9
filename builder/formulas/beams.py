"""
A continuous beam seen from its supports: influence lines and stiffness, found once and used for
every load case.

Pure arithmetic in + - * /, so that the check in a browser finds the same to the last digit.
"""

from collections.abc import Sequence
from math import fsum, inf, isfinite
from typing import TypedDict

from builder.formulas.cite import cites
from builder.formulas.gravity import STANDARD_GRAVITY_M_S2
from builder.formulas.sources import KASSIMALI

LEAST_SPACING_M = 0.01
"""Supports closer than this are one place: their shares would be a matter of rounding."""
SPACING_ROUNDING_M = 0.000000001

Matrix = list[list[float]]
Cubic = tuple[float, float, float, float]
"""Coefficients of 1, t, t² and t³."""


class BodyLoad(TypedDict):
    """A load spread evenly between two places along a body, or at one place. [m], [kg]"""

    from_m: float
    to_m: float
    kg: float


class LoadPart(TypedDict):
    """
    The part of a load that lies on one piece of a beam, from the piece's origin. [m]

    ``kg`` is all of it, spread with ``kg_per_m`` or standing at ``from_m``. [kg], [kg/m]
    """

    piece: int
    is_spread: bool
    from_m: float
    to_m: float
    kg_per_m: float
    kg: float


class CondensedBeam(TypedDict):
    """
    A beam seen from its supports alone, in rising order of place.

    ``curvature_per_m2[i][j]`` is the curvature at support i for unit movement of support j;
    ``stiffness_per_m3[i][j]`` times EI is the force at support i for that movement.
    """

    supports_m: list[float]
    curvature_per_m2: Matrix
    stiffness_per_m3: Matrix


@cites(
    KASSIMALI,
    "App. D, three-moment equation, solved for unit movements of the supports",
    equation=(
        "L_j m_(j-1) + 2 (L_j + L_(j+1)) m_j + L_(j+1) m_(j+1) = 6 ((d_(j+1) - d_j)/L_(j+1) - (d_j"
        " - d_(j-1))/L_j)"
    ),
)
def condensed_beam(supports_m: Sequence[float]) -> CondensedBeam:
    """
    Influence lines and support stiffness of a continuous beam: all that later load cases need.

    Parameters
    ----------
    supports_m
        Places of two or more supports, in any order. [m]

    Returns
    -------
    CondensedBeam
        The beam as its supports see it, in rising order of place. [m], [1/m²], [1/m³]

    Raises
    ------
    ValueError
        If there are fewer than two supports or two at one place.
    """
    check_supports(supports_m, at_least=2)
    ordered_m = sorted(supports_m)
    span_m = [ordered_m[index + 1] - ordered_m[index] for index in range(len(ordered_m) - 1)]
    kink = _kinks_per_unit_movement(span_m)
    curvature = _curvatures_per_unit_movement(span_m, kink)
    return {
        "supports_m": ordered_m,
        "curvature_per_m2": curvature,
        "stiffness_per_m3": _stiffness(kink, curvature),
    }


@cites(
    KASSIMALI,
    "ch. 8, influence lines: response to concentrated and distributed loads, from memory",
    equation="R_i = sum(P n_i(x)) + sum(w integral of n_i)",
)
def level_reactions_kg(beam: CondensedBeam, loads: Sequence[BodyLoad]) -> list[float]:
    """
    Reactions of a condensed beam on level supports.

    Parameters
    ----------
    beam
        Two or more supports, condensed. [m]
    loads
        Loads along the body. [m], [kg]

    Returns
    -------
    list of float
        Reactions in rising order of place; below zero where a support would have to push. [kg]
    """
    count = len(beam["supports_m"])
    parts = _parts_of(loads, beam["supports_m"])
    reactions_kg: list[float] = []
    for support in range(count):
        lines = [_influence(beam, support, piece) for piece in range(count + 1)]
        reactions_kg.append(fsum([_carried_kg(part, lines[part["piece"]]) for part in parts]))
    return reactions_kg


@cites(KASSIMALI, "ch. 13, support settlements", equation="k_ij EI 1000 / g, in kg per m")
def stiffness_kg_per_m(beam: CondensedBeam, ei_kn_m2: float | None) -> Matrix:
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
    list of lists of shape (N, N)
        Loss of reaction i where support j stands lower. [kg/m]

    Raises
    ------
    ValueError
        If the stiffness is missing or not above 0.
    """
    if ei_kn_m2 is None or not 0 < ei_kn_m2 < inf:
        raise ValueError(
            f"ei_kn_m2 must be a number above 0 where supports are out of level, got {ei_kn_m2}"
        )
    in_kg = ei_kn_m2 * 1000 / STANDARD_GRAVITY_M_S2
    return [[value * in_kg for value in row] for row in beam["stiffness_per_m3"]]


def _kinks_per_unit_movement(span_m: list[float]) -> Matrix:
    """The kink at each inner support for unit movement of each; nothing at the outer two."""
    count = len(span_m) + 1
    kink = zeros(count, count)
    for inner in range(1, count - 1):
        before_m = span_m[inner - 1]
        after_m = span_m[inner]
        kink[inner][inner - 1] = 1 / before_m
        kink[inner][inner] = -1 / before_m - 1 / after_m
        kink[inner][inner + 1] = 1 / after_m
    return kink


def _curvatures_per_unit_movement(span_m: list[float], kink: Matrix) -> Matrix:
    """The curvature at every support for unit movement of each."""
    count = len(span_m) + 1
    curvature = zeros(count, count)
    for moved in range(count):
        column = _three_moments(span_m, [kink[inner][moved] for inner in range(count)])
        for inner in range(count):
            curvature[inner][moved] = column[inner]
    return curvature


def _stiffness(kink: Matrix, curvature: Matrix) -> Matrix:
    """The force that unit movements take, times EI; evened out, for it is symmetric."""
    count = len(kink)
    stiffness = zeros(count, count)
    for row in range(count):
        for moved in range(count):
            for inner in range(count):
                one = kink[inner][row] * curvature[inner][moved]
                other = kink[inner][moved] * curvature[inner][row]
                stiffness[row][moved] += (one + other) / 2
    return stiffness


def _three_moments(span_m: list[float], kinks: list[float]) -> list[float]:
    """The curvature at each support for these kinks: the equations swept forwards and back."""
    count = len(kinks)
    across = [0.0] * count
    curvature = [0.0] * count
    for inner in range(1, count - 1):
        before = span_m[inner - 1] / 6
        diagonal = (span_m[inner - 1] + span_m[inner]) / 3 - before * across[inner - 1]
        across[inner] = span_m[inner] / 6 / diagonal
        curvature[inner] = (kinks[inner] - before * curvature[inner - 1]) / diagonal
    for inner in range(count - 3, 0, -1):
        curvature[inner] = curvature[inner] - across[inner] * curvature[inner + 1]
    return curvature


def _influence(beam: CondensedBeam, support: int, piece: int) -> Cubic:
    """
    One piece of a support's influence line, counted from the piece's own origin.

    Pieces are the overhang before the first support, the spans, and the overhang after the last.
    """
    places_m = beam["supports_m"]
    last = len(places_m) - 1
    left = min(max(piece - 1, 0), last - 1)
    span_m = places_m[left + 1] - places_m[left]
    first = beam["curvature_per_m2"][left][support]
    second = beam["curvature_per_m2"][left + 1][support]
    here = 1.0 if left == support else 0.0
    there = 1.0 if left + 1 == support else 0.0
    rise = (there - here) / span_m
    if piece == last + 1:
        return (there, rise + span_m * (first + 2 * second) / 6, 0.0, 0.0)
    slope = rise - span_m * (2 * first + second) / 6
    if piece == 0:
        return (here, slope, 0.0, 0.0)
    return (here, slope, first / 2, (second - first) / (6 * span_m))


def _parts_of(loads: Sequence[BodyLoad], places_m: list[float]) -> list[LoadPart]:
    """Every load cut at the supports."""
    parts: list[LoadPart] = []
    for load in loads:
        if load["from_m"] == load["to_m"]:
            parts.append(_point_part(load, places_m))
        else:
            parts.extend(_spread_parts(load, places_m))
    return parts


def _point_part(load: BodyLoad, places_m: list[float]) -> LoadPart:
    """A load at one place, on its piece."""
    piece = len([place_m for place_m in places_m if place_m <= load["from_m"]])
    at_m = load["from_m"] - places_m[max(piece - 1, 0)]
    return {
        "piece": piece,
        "is_spread": False,
        "from_m": at_m,
        "to_m": at_m,
        "kg_per_m": 0.0,
        "kg": load["kg"],
    }


def _spread_parts(load: BodyLoad, places_m: list[float]) -> list[LoadPart]:
    """A spread load, on each piece that it reaches."""
    last = len(places_m)
    kg_per_m = load["kg"] / (load["to_m"] - load["from_m"])
    parts: list[LoadPart] = []
    for piece in range(last + 1):
        begin_m = load["from_m"] if piece == 0 else max(load["from_m"], places_m[piece - 1])
        end_m = load["to_m"] if piece == last else min(load["to_m"], places_m[piece])
        if end_m > begin_m:
            origin_m = places_m[max(piece - 1, 0)]
            parts.append(
                {
                    "piece": piece,
                    "is_spread": True,
                    "from_m": begin_m - origin_m,
                    "to_m": end_m - origin_m,
                    "kg_per_m": kg_per_m,
                    "kg": kg_per_m * (end_m - begin_m),
                }
            )
    return parts


def _carried_kg(part: LoadPart, line: Cubic) -> float:
    """What a support carries of a part, by its influence line there. [kg]"""
    if part["is_spread"]:
        return part["kg_per_m"] * (_area(line, part["to_m"]) - _area(line, part["from_m"]))
    return part["kg"] * _height(line, part["from_m"])


def _height(line: Cubic, t_m: float) -> float:
    """A cubic at a place."""
    return ((line[3] * t_m + line[2]) * t_m + line[1]) * t_m + line[0]


def _area(line: Cubic, t_m: float) -> float:
    """The integral of a cubic from its origin to a place."""
    return (((line[3] / 4 * t_m + line[2] / 3) * t_m + line[1] / 2) * t_m + line[0]) * t_m


def changes_kg(stiffness_kg_per_m: Matrix, moved_m: Sequence[float]) -> list[float]:
    """What each reaction loses where supports stand so much lower. [kg]"""
    return [
        fsum([value * each for value, each in zip(row, moved_m, strict=True)])
        for row in stiffness_kg_per_m
    ]


def zeros(rows: int, columns: int) -> Matrix:
    """A matrix of nothing."""
    return [[0.0] * columns for _ in range(rows)]


def check_supports(supports_m: Sequence[float], *, at_least: int = 1) -> None:
    """
    Refuse too few supports, and two at one place.

    Raises
    ------
    ValueError
        If there are too few, one is no number, or two are closer than 10 mm.
    """
    if len(supports_m) < at_least:
        plural = "s" if at_least > 1 else ""
        raise ValueError(
            f"supports_m must hold at least {at_least} support{plural}, got {len(supports_m)}"
        )
    for place_m in supports_m:
        if not isfinite(place_m):
            raise ValueError(f"supports_m must be a finite number, got {place_m}")
    ordered_m = sorted(supports_m)
    for index in range(len(ordered_m) - 1):
        if ordered_m[index + 1] - ordered_m[index] < LEAST_SPACING_M - SPACING_ROUNDING_M:
            raise ValueError(
                f"supports_m must be at least {LEAST_SPACING_M} m apart, got {ordered_m[index]}"
                f" and {ordered_m[index + 1]}"
            )


def checked_settlements_m(settlements_m: Sequence[float] | None, count: int) -> Sequence[float]:
    """
    How far each support stands below the common level, nothing where none is told. [m]

    Raises
    ------
    ValueError
        If there is not one for each support, or one is no number.
    """
    if settlements_m is None:
        return [0.0] * count
    if len(settlements_m) != count:
        raise ValueError(
            f"settlements_m must hold one value for each of {count} supports, got"
            f" {len(settlements_m)}"
        )
    for value_m in settlements_m:
        if not isfinite(value_m):
            raise ValueError(f"settlements_m must be a finite number, got {value_m}")
    return settlements_m
