"""
Rows of subwoofers: delays that bend a straight row into an arc, and the pattern far away.

Stacks and pairs are in ``sub_pairs``.
"""

import cmath
import math
from collections.abc import Callable, Sequence
from itertools import pairwise

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero
from builder.formulas.sources import BALANIS, CRC_TABLES

COVERAGE_DROP_DB = 6.0
GREATEST_ARC_DEG = 180.0
SEARCH_STEP_DEG = 0.25


@cites(CRC_TABLES, "chord and radius of a circle", equation="r = (L/2) / sin(A/2)")
def arc_radius_m(positions_m: Sequence[float], *, arc_deg: float) -> float:
    """
    Radius of the arc that a straight row is bent into.

    Parameters
    ----------
    positions_m
        Centres of two or more subs along the row, from its middle. [m]
    arc_deg
        Angle of the arc from the first to the last centre. This is not the coverage angle. [deg]

    Returns
    -------
    float
        Radius. [m]

    Raises
    ------
    ValueError
        If there are fewer than two places or the angle is not above 0 and at most 180.
    """
    if not 0 < arc_deg <= GREATEST_ARC_DEG:
        raise ValueError(f"arc_deg must be above 0 and at most {GREATEST_ARC_DEG:g}, got {arc_deg}")
    return _half_length_m(positions_m) / math.sin(math.radians(arc_deg) / 2)


@cites(
    CRC_TABLES,
    "depth of an arc behind its chord; here over the speed of sound",
    equation="t_i = (r - sqrt(r^2 - x_i^2)) / c, less the least",
)
def arc_delays_ms(
    positions_m: Sequence[float], *, radius_m: float, speed_m_s: float
) -> tuple[float, ...]:
    """
    Delays that make a straight row sound as if it stood on an arc; the innermost sub is first.

    Parameters
    ----------
    positions_m
        Centres along the row, from its middle. [m]
    radius_m
        Radius of the arc. [m]
    speed_m_s
        Speed of sound. [m/s]

    Returns
    -------
    tuple of float
        One delay for each place, in the order given. [ms]

    Raises
    ------
    ValueError
        If the radius is shorter than half the row or the speed is not above 0.
    """
    above_zero("speed_m_s", speed_m_s)
    if not _half_length_m(positions_m) <= radius_m < math.inf:
        raise ValueError(
            f"radius_m must be at least half the row, {_half_length_m(positions_m):g}, got"
            f" {radius_m}"
        )
    depths = [radius_m - math.sqrt(radius_m**2 - place**2) for place in positions_m]
    return tuple(1000 * (depth - min(depths)) / speed_m_s for depth in depths)


@cites(
    BALANIS,
    "6.3, array factor of N elements, from memory",
    equation="p(theta) = (1/N) sum e^(j (k x_i sin(theta) - 2 pi f t_i))",
)
def far_field_db(
    positions_m: Sequence[float],
    delays_ms: Sequence[float],
    *,
    frequency_hz: float,
    angle_deg: float,
    speed_m_s: float,
) -> float:
    """
    Level of a row of equal point sources far away, against all of them in phase.

    Parameters
    ----------
    positions_m, delays_ms
        Places along the row and their delays. [m], [ms]
    frequency_hz
        Frequency. [Hz]
    angle_deg
        Direction from straight ahead, positive towards positive places. [deg]
    speed_m_s
        Speed of sound. [m/s]

    Returns
    -------
    float
        Level; 0 is the in-phase sum, minus infinity a full null. [dB]

    Raises
    ------
    ValueError
        If there is no source, the counts differ, or frequency or speed is not above 0.
    """
    if not positions_m or len(positions_m) != len(delays_ms):
        raise ValueError(
            f"delays_ms must hold one delay for each of {len(positions_m)} places, got"
            f" {len(delays_ms)}"
        )
    omega = math.tau * above_zero("frequency_hz", frequency_hz)
    sine = math.sin(math.radians(angle_deg)) / above_zero("speed_m_s", speed_m_s)
    total = sum(
        cmath.exp(1j * omega * (place * sine - delay / 1000))
        for place, delay in zip(positions_m, delays_ms, strict=True)
    )
    return 20 * math.log10(abs(total) / len(positions_m)) if abs(total) > 0 else -math.inf


@cites(
    BALANIS,
    "6.3, array factor at broadside, from memory",
    equation="loss = -20 lg |(1/N) sum e^(-j 2 pi f t_i)|",
)
def on_axis_loss_db(
    positions_m: Sequence[float],
    delays_ms: Sequence[float],
    *,
    frequency_hz: float,
    speed_m_s: float,
) -> float:
    """
    What delays cost straight ahead, far away.

    Parameters
    ----------
    positions_m, delays_ms, frequency_hz, speed_m_s
        As in `far_field_db`. [m], [ms], [Hz], [m/s]

    Returns
    -------
    float
        Loss against all in phase, at least 0. [dB]

    Raises
    ------
    ValueError
        As in `far_field_db`.
    """
    return 0.0 - far_field_db(
        positions_m, delays_ms, frequency_hz=frequency_hz, angle_deg=0, speed_m_s=speed_m_s
    )


@cites(
    BALANIS,
    "6.3, beamwidth of an array, taken at -6 dB, from memory",
    equation="p(theta) = p(0) / 2, the first angle on each side",
)
def coverage_width_deg(
    positions_m: Sequence[float],
    delays_ms: Sequence[float],
    *,
    frequency_hz: float,
    speed_m_s: float,
) -> float | None:
    """
    Full angle between the first directions on each side that are 6 dB below straight ahead, far
    away.

    Parameters
    ----------
    positions_m, delays_ms, frequency_hz, speed_m_s
        As in `far_field_db`. [m], [ms], [Hz], [m/s]

    Returns
    -------
    float or None
        Width; None where a side stays above -6 dB up to 90 degrees. [deg]

    Raises
    ------
    ValueError
        As in `far_field_db`.

    Notes
    -----
    A row a few wavelengths long is not steered by its arc: the width is not the angle of the arc.
    Side lobes beyond the first drop are not looked at.
    """

    def excess_db(angle_deg: float) -> float:
        there = far_field_db(
            positions_m,
            delays_ms,
            frequency_hz=frequency_hz,
            angle_deg=angle_deg,
            speed_m_s=speed_m_s,
        )
        return there + COVERAGE_DROP_DB + loss_db

    loss_db = on_axis_loss_db(
        positions_m, delays_ms, frequency_hz=frequency_hz, speed_m_s=speed_m_s
    )
    right, left = (
        _first_drop_deg(excess_db),
        _first_drop_deg(lambda angle_deg: excess_db(-angle_deg)),
    )
    return None if right is None or left is None else right + left


def _half_length_m(positions_m: Sequence[float]) -> float:
    """Half the row, or the place furthest from its stated middle where that is further."""
    if len(positions_m) < 2 or not all(math.isfinite(place) for place in positions_m):
        raise ValueError(
            f"positions_m must hold two or more finite places, got {list(positions_m)}"
        )
    half = max(abs(place) for place in positions_m)
    return above_zero("half the row", half)


def _first_drop_deg(excess_db: Callable[[float], float]) -> float | None:
    """First angle up to 90 degrees where the excess goes below 0, by steps and then by halving."""
    steps = [step * SEARCH_STEP_DEG for step in range(round(90 / SEARCH_STEP_DEG) + 1)]
    for above, below in pairwise(steps):
        if excess_db(below) < 0:
            return _halved(excess_db, above, below)
    return None


def _halved(excess_db: Callable[[float], float], above: float, below: float) -> float:
    for _ in range(40):
        middle = (above + below) / 2
        above, below = (middle, below) if excess_db(middle) >= 0 else (above, middle)
    return (above + below) / 2
