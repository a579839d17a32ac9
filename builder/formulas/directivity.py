"""
How a source radiates by direction: a piston in a baffle, a short line, a stated coverage angle; and
when rows of sources grow extra lobes.
"""

import math
from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero
from builder.formulas.sources import (
    COMMON_PRACTICE,
    KINSLER,
)

Array = NDArray[np.float64]

ALL_ROUND_DEG = 360.0
SMALL_ARGUMENT = (0.5, -0.56249985, 0.21093573, -0.03954289, 0.00443319, -0.00031761, 0.00001109)
LARGE_MODULUS = (
    0.79788456,
    0.00000156,
    0.01659667,
    0.00017105,
    -0.00249511,
    0.00113653,
    -0.00020033,
)
LARGEST_SMALL = 3.0
LARGE_PHASE = (
    -2.35619449,
    0.12499612,
    0.00005650,
    -0.00637879,
    0.00074348,
    0.00079824,
    -0.00029166,
)


@cites(
    KINSLER,
    "7.4, radiation from a plane circular piston, from memory",
    equation="D = 2 J1(x) / x, x = k a sin(theta)",
)
def piston_response(x: Array) -> Array:
    """
    Pressure of a circular piston in a large flat baffle against straight ahead, far away.

    Parameters
    ----------
    x
        Wavenumber times radius times sine of the angle from the axis, any shape. [-]

    Returns
    -------
    array of the same shape
        Response, negative in every second lobe. [-]
    """
    return 2 * _j1_over_x(x)


@cites(
    KINSLER,
    "7.3, the continuous line source, from memory",
    equation="D = sin(x) / x, x = (k L / 2) sin(theta)",
)
def line_response(x: Array) -> Array:
    """
    Pressure of a short straight line that moves as one against straight ahead, far away.

    Parameters
    ----------
    x
        Half of wavenumber times length times sine of the angle from the normal, any shape. [-]

    Returns
    -------
    array of the same shape
        Response, negative in every second lobe. [-]
    """
    return np.sinc(x / math.pi)


@cites(
    COMMON_PRACTICE,
    "a smooth stand-in for a stated nominal coverage: power of the half-angle cosine",
    equation="D = |cos(theta/2)|^m, D = 1/2 at C/2",
)
def coverage_exponent(coverage_deg: float) -> float:
    """
    Exponent m that makes the half-angle cosine 6 dB down at half the stated coverage.

    Parameters
    ----------
    coverage_deg
        Stated full coverage angle between -6 dB directions; 360 is all round. [deg]

    Returns
    -------
    float
        Exponent; 0 radiates alike all round. [-]

    Raises
    ------
    ValueError
        If the angle is not above 0 and at most 360.

    Notes
    -----
    One smooth lobe, no side lobes, nothing straight behind: real boxes are louder behind and less
    even inside.
    """
    if not 0 < coverage_deg <= ALL_ROUND_DEG:
        raise ValueError(
            f"coverage_deg must be above 0 and at most {ALL_ROUND_DEG:g}, got {coverage_deg}"
        )
    cosine = math.cos(math.radians(coverage_deg) / 4)
    return 0.0 if coverage_deg == ALL_ROUND_DEG else math.log(0.5) / math.log(cosine)


@cites(
    COMMON_PRACTICE,
    "power of the half-angle cosine",
    equation="D = |cos(theta/2)|^m, D = 1/2 at C/2",
)
def coverage_response(angle_rad: Array, *, coverage_deg: float) -> Array:
    """
    Pressure at an angle from the axis for a stated coverage, against straight ahead.

    Parameters
    ----------
    angle_rad
        Angles from the axis, any shape. [rad]
    coverage_deg
        Stated full coverage angle between -6 dB directions. [deg]

    Returns
    -------
    array of the same shape
        Response, 0 to 1. [-]

    Raises
    ------
    ValueError
        As in `coverage_exponent`.
    """
    return np.asarray(
        np.abs(np.cos(angle_rad / 2)) ** coverage_exponent(coverage_deg), dtype=np.float64
    )


@cites(
    COMMON_PRACTICE,
    "straight lines between stated values on logarithmic scales",
    equation="lg C is linear in lg f; the outer values hold beyond them",
)
def coverage_at_deg(stated: Sequence[tuple[float, float]], *, frequency_hz: float) -> float:
    """
    Coverage at a frequency, from a maker's values by band.

    Parameters
    ----------
    stated
        Pairs of frequency and full coverage angle, frequency rising. [Hz], [deg]
    frequency_hz
        Frequency asked for. [Hz]

    Returns
    -------
    float
        Full coverage angle. [deg]

    Raises
    ------
    ValueError
        If nothing is stated, a value is not above 0 or frequencies do not rise.
    """
    frequencies = [above_zero("stated frequency", frequency) for frequency, _ in stated]
    if not stated or any(b <= a for a, b in pairwise(frequencies)):
        raise ValueError(f"stated must hold coverage at rising frequencies, got {list(stated)}")
    angles = [above_zero("stated coverage", angle) for _, angle in stated]
    found = math.exp(
        float(
            np.interp(
                math.log(above_zero("frequency_hz", frequency_hz)),
                np.log(frequencies),
                np.log(angles),
            )
        )
    )
    # The logarithm of 360 and back is a hair above 360, and nothing covers more than all round.
    return min(max(found, min(angles)), max(angles))


def _j1_over_x(x: Array) -> Array:
    size = np.abs(np.asarray(x, dtype=np.float64))
    near = size <= LARGEST_SMALL
    found = np.empty_like(size)
    found[near] = _polynomial(SMALL_ARGUMENT, (size[near] / LARGEST_SMALL) ** 2)
    far = size[~near]
    modulus, phase = (
        _polynomial(LARGE_MODULUS, LARGEST_SMALL / far),
        _polynomial(LARGE_PHASE, LARGEST_SMALL / far),
    )
    found[~near] = modulus * np.cos(far + phase) / (far * np.sqrt(far))
    return found


def _polynomial(coefficients: Sequence[float], x: Array) -> Array:
    total = np.zeros_like(x)
    for coefficient in reversed(coefficients):
        total = total * x + coefficient
    return total
