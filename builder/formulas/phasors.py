"""
Line currents as phasors, their sum, and what is left for the neutral.

All phasors share one reference: the voltage of L1 to neutral has angle 0.
Planning figures: the local code and a licensed electrician decide.
"""

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass

from builder.formulas.cite import cites
from builder.formulas.phase_room import PHASES as PHASES
from builder.formulas.ranges import checked_power_factor, not_negative
from builder.formulas.sources import NEMA_MG_1, NILSSON_RIEDEL

THREE_PHASE_ANGLES_DEG = (0.0, -120.0, 120.0)
"""Angle of each line-to-neutral voltage in a three-phase system, in the order L1, L2, L3."""
SPLIT_PHASE_ANGLES_DEG = (0.0, 180.0, 0.0)
"""The same for a centre-tapped single-phase system; it has no L3."""

Phasors = tuple[complex, complex, complex]
"""Line currents of L1, L2, L3 in ampere."""


@dataclass(frozen=True, slots=True)
class Neutral:
    """
    Current in a neutral: its fundamental part, its third harmonic part, and both together. [A]
    """

    fundamental_a: float
    third_harmonic_a: float
    total_a: float


@cites(
    NILSSON_RIEDEL,
    "ch. 9 and 11, phasors",
    equation="I_k = I at angle(U_k) - phi; two lines: I at angle(U_j - U_k) - phi and its negative",
)
def line_currents(
    *,
    phases: Sequence[str],
    current_a: float,
    power_factor: float,
    leading: bool = False,
    angles_deg: tuple[float, float, float] = THREE_PHASE_ANGLES_DEG,
) -> Phasors:
    """
    Line current phasors of one load.

    Parameters
    ----------
    phases
        Where it is connected: one line (to neutral), two (between them), or three (evenly).
    current_a
        Current in each of those lines. [A]
    power_factor
        Displacement power factor, above 0 and at most 1. [-]
    leading
        True where the current leads the voltage; most loads lag.
    angles_deg
        Angles of the line-to-neutral voltages of L1, L2, L3. [deg]

    Returns
    -------
    tuple of three complex
        Line currents of L1, L2, L3. [A]

    Raises
    ------
    ValueError
        If a phase is unknown or written twice, none is given, the current is negative, or the power
        factor is outside its range.

    Notes
    -----
    Voltages are taken as even and at their nominal angles; the shift of the neutral under uneven
    load is left out.
    """
    wired = _checked_phases(phases)
    lag = math.acos(checked_power_factor(power_factor)) * (-1 if leading else 1)
    size = not_negative("current_a", current_a)
    volts = [cmath.rect(1.0, math.radians(angle)) for angle in angles_deg]
    currents = [0j, 0j, 0j]
    if len(wired) == 2:
        first, second = wired
        through = cmath.rect(size, cmath.phase(volts[first] - volts[second]) - lag)
        currents[first], currents[second] = through, -through
    else:
        for index in wired:
            currents[index] = cmath.rect(size, cmath.phase(volts[index]) - lag)
    return (currents[0], currents[1], currents[2])


@cites(
    NILSSON_RIEDEL, "ch. 2, Kirchhoff's current law", equation="I_k = sum over loads of I_k,load"
)
def summed_currents(loads: Sequence[Phasors]) -> Phasors:
    """
    Line currents that several loads draw together.

    Parameters
    ----------
    loads
        Line current phasors of each load, on one reference. [A]

    Returns
    -------
    tuple of three complex
        Line currents of L1, L2, L3. [A]
    """
    first, second, third = (sum((load[k] for load in loads), 0j) for k in range(3))
    return (first, second, third)


@cites(
    NILSSON_RIEDEL,
    "ch. 2 and 11, current law at the star point; rms sum of harmonics",
    equation="I_N = sqrt(|I1 + I2 + I3|^2 + (sum of I3h)^2)",
)
def neutral_current(currents: Phasors, *, third_harmonic_a: Sequence[float] = ()) -> Neutral:
    """
    Current in the neutral of a three-phase or split-phase system.

    Parameters
    ----------
    currents
        Line current phasors at the fundamental. [A]
    third_harmonic_a
        Third harmonic current of each line. It is in phase in all three, so it adds in the neutral
        instead of cancelling. [A]

    Returns
    -------
    Neutral
        Fundamental, third harmonic and total. [A]

    Raises
    ------
    ValueError
        If a third harmonic current is negative.

    Notes
    -----
    Third harmonics are added as if all were in step, the worst case. Higher triplens are left out.
    """
    fundamental_a = abs(sum(currents))
    third_a = float(
        math.fsum(not_negative("third_harmonic_a", value) for value in third_harmonic_a)
    )
    return Neutral(fundamental_a, third_a, math.hypot(fundamental_a, third_a))


@cites(
    NEMA_MG_1,
    "12.45 and 14.36, unbalance, from memory",
    equation="unbalance = 100 max|x - mean| / mean",
)
def imbalance_percent(values: Sequence[float]) -> float:
    """
    Imbalance of the phases: the greatest distance from the mean, in percent of the mean.

    Parameters
    ----------
    values
        Phase currents or voltages, all in one unit. [A or V]

    Returns
    -------
    float
        Imbalance; 0 where all values are 0. [%]

    Raises
    ------
    ValueError
        If there are no values or one is negative.

    Notes
    -----
    The source has this form for voltages; here it is used for currents in the same form. Not the
    ratio of negative to positive sequence, and not the spread over the mean; those give other
    numbers.
    """
    if not values:
        raise ValueError("values must hold at least one phase, got none")
    mean = math.fsum(not_negative("values", value) for value in values) / len(values)
    return 100 * max(abs(value - mean) for value in values) / mean if mean > 0 else 0.0


def _checked_phases(phases: Sequence[str]) -> list[int]:
    """Indexes of named phases, in the order written."""
    if not phases or len(set(phases)) != len(phases) or not set(phases) <= set(PHASES):
        raise ValueError(
            f"phases must be one, two or three of L1, L2, L3, each once, got {tuple(phases)}"
        )
    return [PHASES.index(phase) for phase in phases]
