"""
When the neutral is full before the lines are.

Planning figures: the local code, the maker's data and a licensed electrician decide.
"""

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import IEC_60364_5_52


@cites(
    IEC_60364_5_52,
    "Annex E, third harmonics of three even lines add up in the neutral",
    equation="h = I_N,left / (3 I_line)",
)
def third_harmonic_that_fills_neutral(*, neutral_left_a: float, line_a: float) -> float:
    """
    Third harmonic share of an even three-phase load at which the neutral is full when the lines
    are.

    Parameters
    ----------
    neutral_left_a
        What the neutral may still carry. [A]
    line_a
        What the load draws on each line. [A]

    Returns
    -------
    float
        Third harmonic over line current; above 1 no load of that size fills the neutral with third
        harmonics. [-]

    Raises
    ------
    ValueError
        If the neutral has less than nothing left or the line current is not above 0.

    Notes
    -----
    Third harmonics of what stands already and of the new load are counted in step, the worst case.
    Higher triplens are left out.
    """
    return not_negative("neutral_left_a", neutral_left_a) / (3 * above_zero("line_a", line_a))
