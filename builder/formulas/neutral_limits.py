"""
What a neutral may still carry, the most that it may have to, and when it is full before the lines.

Planning figures: the local code, the maker's data and a licensed electrician decide.
"""

import math
from collections.abc import Sequence

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import IEC_60364_5_52, NILSSON_RIEDEL


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


@cites(
    NILSSON_RIEDEL,
    "ch. 11, current law at the star point; rms sum of harmonics",
    equation="left = sqrt(I_N^2 - (sum of I3h)^2) - I_k",
)
def left_in_neutral_a(*, limit_a: float, third_harmonic_a: float, line_returns_a: float) -> float:
    """
    What further loads between one line and neutral may draw before the neutral is full.

    Parameters
    ----------
    limit_a
        What the neutral may carry. [A]
    third_harmonic_a
        Third harmonics of all lines, which add up in it. [A]
    line_returns_a
        What loads between this line and neutral draw already. [A]

    Returns
    -------
    float
        Left; below 0 where it is overloaded. [A]

    Raises
    ------
    ValueError
        If a number is negative.

    Notes
    -----
    The neutral carries no more than the line with most of such loads, for those of the other lines
    only take from it. So each line is held to the neutral by itself, and a load on another line,
    which may be off, makes no room. Loads whose power factors differ much can pass that: left out.
    """
    limit, third = (
        not_negative("limit_a", limit_a),
        not_negative("third_harmonic_a", third_harmonic_a),
    )
    here = not_negative("line_returns_a", line_returns_a)
    if third > limit:
        return limit - third - here
    return math.sqrt(limit * limit - third * third) - here


@cites(
    NILSSON_RIEDEL,
    "ch. 9, sums of phasors; any of the loads may be off",
    equation="max over all parts of the loads of |sum I|",
)
def largest_part_a(currents: Sequence[complex]) -> float:
    """
    The most that any part of some currents adds up to.

    Parameters
    ----------
    currents
        What each load sends into the neutral, as phasors on one reference. [A]

    Returns
    -------
    float
        The size of the largest sum of some of them. [A]

    Notes
    -----
    The largest sum takes all currents on its own side of a line through 0. Turning that line once
    round takes one current up or drops one at a time, and passes all such parts.
    """
    turning = []
    here = 0j
    for current in currents:
        if current != 0:
            up = math.atan2(current.imag, current.real) - math.pi / 2
            if up < -math.pi:
                up += 2 * math.pi
            down = up + math.pi
            if down >= math.pi:
                down -= 2 * math.pi
                here += current
            turning += [(up, 1, current), (down, 0, current)]
    most = abs(here)
    for _, enters, current in sorted(turning, key=lambda turn: turn[:2]):
        here += current if enters else -current
        most = max(most, abs(here))
    return most
