"""
Ratings that the kind of load asks for: loads that run for hours, third harmonics, dimmers.

Planning figures: the local code and a licensed electrician decide.
"""

from builder.formulas.cite import cites
from builder.formulas.ranges import not_negative
from builder.formulas.sources import IEC_60364_5_52


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
