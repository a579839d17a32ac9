"""
Sums of levels, level over distance and time, what is left of a limit, and noise dose.

Planning figures: the local code decides.
"""

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import ISO_1996_1, KINSLER, OSHA_1910_95


@dataclass(frozen=True, slots=True)
class NoiseCriterion:
    """
    A noise limit for workers: the level that fills a shift, the shift, and the rise that halves the
    time. [dB(A)], [h], [dB]
    """

    name: str
    level_dba: float
    exchange_db: float
    shift_h: float = 8.0


OSHA = NoiseCriterion("OSHA permissible exposure", 90.0, 5.0)
NIOSH = NoiseCriterion("NIOSH recommended exposure", 85.0, 3.0)
CANADA = NoiseCriterion("Canada, federal", 87.0, 3.0)
"""
Canada Labour Code, by the table of the National Joint Council's directive: 87 dB(A) over eight
hours.
"""


@cites(
    KINSLER,
    "ch. 5, incoherent sources: energies add, from memory",
    equation="L = 10 lg(sum 10^(L_i/10))",
)
def incoherent_sum_db(levels_db: Sequence[float]) -> float:
    """
    Sum of sounds without a fixed phase between them.

    Parameters
    ----------
    levels_db
        One or more levels. [dB]

    Returns
    -------
    float
        Level of the sum. [dB]

    Raises
    ------
    ValueError
        If there is no level or one is not finite.
    """
    loudest = max(_checked_levels(levels_db))
    return loudest + 10 * math.log10(math.fsum(_energy(level - loudest) for level in levels_db))


@cites(
    KINSLER,
    "ch. 5, coherent sources: pressures add as phasors, from memory",
    equation="L = 20 lg |sum 10^(L_i/20) e^(j phi_i)|",
)
def coherent_sum_db(levels_db: Sequence[float], phases_deg: Sequence[float]) -> float:
    """
    Sum of sounds of one frequency with fixed phases.

    Parameters
    ----------
    levels_db, phases_deg
        One or more levels and as many phases. [dB], [deg]

    Returns
    -------
    float
        Level of the sum; minus infinity where they cancel to the last digit. [dB]

    Raises
    ------
    ValueError
        If there is no level, one is not finite, or the counts differ.
    """
    loudest = max(_checked_levels(levels_db))
    if len(phases_deg) != len(levels_db):
        raise ValueError(
            f"phases_deg must hold one phase for each of {len(levels_db)} levels, got"
            f" {len(phases_deg)}"
        )
    total = sum(
        10 ** ((level - loudest) / 20) * cmath.exp(1j * math.radians(phase))
        for level, phase in zip(levels_db, phases_deg, strict=True)
    )
    return loudest + 20 * math.log10(abs(total)) if abs(total) > 0 else -math.inf


@cites(KINSLER, "ch. 5, spherical waves, from memory", equation="L(r) = L(1 m) - 20 lg(r / 1 m)")
def level_at_distance_db(level_at_1m_db: float, *, distance_m: float) -> float:
    """
    Level of a point source in the open; air absorption is not counted.

    Parameters
    ----------
    level_at_1m_db
        Level at 1 m. [dB]
    distance_m
        Distance. [m]

    Returns
    -------
    float
        Level there. [dB]

    Raises
    ------
    ValueError
        If the distance is not above 0.
    """
    return level_at_1m_db - 20 * math.log10(above_zero("distance_m", distance_m))


@cites(
    KINSLER, "ch. 14, loudspeaker sensitivity, from memory", equation="L(1 m) = S + 10 lg(P / 1 W)"
)
def level_from_power_db(sensitivity_db: float, *, power_w: float) -> float:
    """
    Level at 1 m from the sensitivity for 1 W at 1 m; power compression is not counted.

    Parameters
    ----------
    sensitivity_db, power_w
        Level for 1 W at 1 m; electrical power. [dB], [W]

    Returns
    -------
    float
        Level at 1 m. [dB]

    Raises
    ------
    ValueError
        If the power is not above 0.
    """
    return sensitivity_db + 10 * math.log10(above_zero("power_w", power_w))


@cites(
    ISO_1996_1,
    "clause 3, definition of the equivalent continuous level, from memory",
    equation="L_eq = 10 lg(sum(t_i 10^(L_i/10)) / sum t_i)",
)
def equivalent_level_db(periods: Sequence[tuple[float, float]]) -> float:
    """
    Level of a steady sound with the same energy.

    Parameters
    ----------
    periods
        Pairs of level and duration. [dB], [min]

    Returns
    -------
    float
        Equivalent level over all periods together. [dB]

    Raises
    ------
    ValueError
        If there is no period or a duration is not above 0.
    """
    levels = _checked_levels([level for level, _ in periods])
    total_min = math.fsum(above_zero("duration", minutes) for _, minutes in periods)
    loudest = max(levels)
    return loudest + 10 * math.log10(
        math.fsum(minutes * _energy(level - loudest) for level, minutes in periods) / total_min
    )


@cites(
    ISO_1996_1,
    "clause 3, definition of the equivalent continuous level, solved for the rest of the period,"
    " from memory",
    equation="L_rem = 10 lg((T 10^(L_lim/10) - t 10^(L_eq/10)) / (T - t))",
)
def remaining_level_db(
    *, limit_db: float, period_min: float, level_so_far_db: float, elapsed_min: float
) -> float | None:
    """
    Steady level that the rest of a period may hold so that its equivalent level meets a limit
    exactly.

    Parameters
    ----------
    limit_db, period_min
        Limit as an equivalent level, and the period it is taken over. [dB], [min]
    level_so_far_db, elapsed_min
        Equivalent level until now, and the time gone. [dB], [min]

    Returns
    -------
    float or None
        Level left for the rest; None where the budget is spent. [dB]

    Raises
    ------
    ValueError
        If the period is not above 0 or the time gone is not within it.
    """
    if not 0 <= elapsed_min < above_zero("period_min", period_min):
        raise ValueError(
            f"elapsed_min must be at least 0 and below period_min {period_min}, got {elapsed_min}"
        )
    used_share = (
        elapsed_min / period_min * _energy(level_so_far_db - limit_db) if elapsed_min else 0.0
    )
    left = (1 - used_share) * period_min / (period_min - elapsed_min)
    return limit_db + 10 * math.log10(left) if left > 0 else None


@cites(
    OSHA_1910_95,
    "appendix A, table G-16a; the same form with 85 dB and 3 dB in NIOSH 98-126",
    equation="T = 8 h / 2^((L - L_c)/q)",
)
def allowed_hours(level_dba: float, criterion: NoiseCriterion) -> float:
    """
    Time after which a steady level fills the day's dose.

    Parameters
    ----------
    level_dba
        A-weighted level at the ear. [dB(A)]
    criterion
        The rule that counts: `OSHA`, `NIOSH`, `CANADA` or a house's own.

    Returns
    -------
    float
        Hours. [h]

    Raises
    ------
    ValueError
        If the level is not finite.

    Notes
    -----
    Ceilings (115 dB(A) in 29 CFR 1910.95, table G-16) and thresholds below which a rule does not
    count a level are left out.
    """
    (level_dba,) = _checked_levels([level_dba])
    return criterion.shift_h / math.pow(
        2, (level_dba - criterion.level_dba) / criterion.exchange_db
    )


@cites(
    OSHA_1910_95,
    "appendix A, noise dose; the same form in NIOSH 98-126",
    equation="D = 100 sum(C_i / T_i)",
)
def noise_dose_percent(periods: Sequence[tuple[float, float]], criterion: NoiseCriterion) -> float:
    """
    Share of the day's noise dose that a crew member's periods fill.

    Parameters
    ----------
    periods
        Pairs of level and time. [dB(A)], [h]
    criterion
        The rule that counts.

    Returns
    -------
    float
        Dose; 100 fills the day. [%]

    Raises
    ------
    ValueError
        If a level is not finite or a time is negative.
    """
    return 100 * math.fsum(
        not_negative("hours", hours) / allowed_hours(level, criterion) for level, hours in periods
    )


@cites(
    OSHA_1910_95,
    "appendix A; the same form with 10 lg(D/100) + 85 in NIOSH 98-126",
    equation=(
        "TWA = q/lg 2 lg(D/100) + L_c: 16.61 lg(D/100) + 90 for 5 dB, 10 lg(D/100) + 85 for 3 dB"
    ),
)
def time_weighted_level_dba(dose_percent: float, criterion: NoiseCriterion) -> float:
    """
    Steady level over the whole shift with the same dose.

    Parameters
    ----------
    dose_percent
        Dose; 100 fills the day. [%]
    criterion
        The rule that counts.

    Returns
    -------
    float
        Time-weighted average. [dB(A)]

    Raises
    ------
    ValueError
        If the dose is not above 0.
    """
    return criterion.level_dba + criterion.exchange_db * math.log2(
        above_zero("dose_percent", dose_percent) / 100
    )


def _energy(level_db: float) -> float:
    return math.pow(10, level_db / 10)


def _checked_levels(levels_db: Sequence[float]) -> Sequence[float]:
    if not levels_db:
        raise ValueError("levels_db must hold at least one level, got none")
    for level in levels_db:
        if not math.isfinite(level):
            raise ValueError(f"levels_db must be finite, got {level}")
    return levels_db
