"""
Ratings that the kind of load asks for: loads that run for hours, third harmonics, dimmers.

Planning figures: the local code and a licensed electrician decide.
"""

from builder.formulas.cite import cites
from builder.formulas.ranges import not_negative
from builder.formulas.sources import IEC_60364_5_52, NFPA_70


@cites(NFPA_70, "210.20(A) and 215.3", equation="breaker >= 1.25 I_continuous + I_other")
def breaker_needed_a(*, continuous_a: float, other_a: float = 0.0) -> float:
    """
    Least breaker rating for a load that runs three hours or more, together with loads that do not.

    Parameters
    ----------
    continuous_a
        Current expected to last three hours or more. [A]
    other_a
        Current of other loads. [A]

    Returns
    -------
    float
        Least rating of the breaker, before the next stock size. [A]

    Raises
    ------
    ValueError
        If a current is negative.

    Notes
    -----
    An assembly listed for 100 % is exempt. Codes outside the NEC do not have this rule.
    """
    return 1.25 * not_negative("continuous_a", continuous_a) + not_negative("other_a", other_a)


@cites(NFPA_70, "210.20(A) and 215.3, read backwards", equation="I_continuous <= share * breaker")
def continuous_limit_a(*, breaker_a: float, continuous_share: float = 0.8) -> float:
    """
    Current a breaker may carry for three hours or more.

    Parameters
    ----------
    breaker_a
        Rating of the breaker. [A]
    continuous_share
        Share allowed: 0.8 by the NEC, 1 where the assembly or the local code allows it. [-]

    Returns
    -------
    float
        Limit of the continuous current. [A]

    Raises
    ------
    ValueError
        If the rating is negative or the share is not above 0 and at most 1.
    """
    if not 0 < continuous_share <= 1:
        raise ValueError(f"continuous_share must be above 0 and at most 1, got {continuous_share}")
    return not_negative("breaker_a", breaker_a) * continuous_share


@cites(
    IEC_60364_5_52,
    "Annex E, Table E.52.1",
    equation="h <= 15 %: I; to 33 %: I / 0.86; to 45 %: 3 h I / 0.86; above: 3 h I",
)
def cable_rating_with_third_harmonic_a(*, line_a: float, third_harmonic_share: float) -> float:
    """
    Rating a four- or five-core cable needs when its neutral carries third harmonic current.

    Parameters
    ----------
    line_a
        Line current, the same in each phase. [A]
    third_harmonic_share
        Third harmonic over line current. [-]

    Returns
    -------
    float
        Rating to look up in the table for three loaded conductors. [A]

    Raises
    ------
    ValueError
        If the current or the share is negative.

    Notes
    -----
    Above 33 % the neutral current decides, not the line current. Balanced phases only.
    """
    size, share = (
        not_negative("line_a", line_a),
        not_negative("third_harmonic_share", third_harmonic_share),
    )
    neutral_a = 3 * share * size
    if share <= 0.15:
        return size
    if share <= 0.33:
        return size / 0.86
    return neutral_a / 0.86 if share <= 0.45 else max(neutral_a, size)


@cites(
    NFPA_70,
    "520.53, neutral of single-conductor feeders to phase-control dimmers",
    equation="I_N,rating >= 1.3 I_line,rating",
)
def dimmer_neutral_rating_a(*, line_rating_a: float) -> float:
    """
    Least ampacity of a separate neutral conductor that feeds phase-control dimmers.

    Parameters
    ----------
    line_rating_a
        Ampacity of the line conductors. [A]

    Returns
    -------
    float
        Least ampacity of the neutral. [A]

    Raises
    ------
    ValueError
        If the rating is negative.
    """
    return 1.3 * not_negative("line_rating_a", line_rating_a)
