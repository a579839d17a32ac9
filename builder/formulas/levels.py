"""
Sums of levels, level over distance and time, what is left of a limit, and noise dose.

Planning figures: the local code decides.
"""

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


def _energy(level_db: float) -> float:
    return math.pow(10, level_db / 10)


def _checked_levels(levels_db: Sequence[float]) -> Sequence[float]:
    if not levels_db:
        raise ValueError("levels_db must hold at least one level, got none")
    for level in levels_db:
        if not math.isfinite(level):
            raise ValueError(f"levels_db must be finite, got {level}")
    return levels_db
