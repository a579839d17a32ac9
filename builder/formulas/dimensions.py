"""Numbers that must agree with each other: chains of dimensions, and sums of parts."""

from collections.abc import Sequence
from math import fsum

from builder.formulas.cite import cites
from builder.formulas.ranges import not_negative
from builder.formulas.sources import COMMON_PRACTICE


@cites(COMMON_PRACTICE, "a chain of dimensions closes", equation="gap = total - sum of parts")
def chain_gap_m(*, parts_m: Sequence[float], total_m: float) -> float:
    """
    What a chain of dimensions lacks to its stated total.

    Parameters
    ----------
    parts_m
        Dimensions in a row. [m]
    total_m
        Stated length of the whole. [m]

    Returns
    -------
    float
        Total less the sum: 0 where the chain closes, below 0 where the parts are too long. [m]

    Raises
    ------
    ValueError
        If there are no parts or a length is negative.
    """
    if not parts_m:
        raise ValueError("parts_m must hold at least one length, got none")
    return not_negative("total_m", total_m) - fsum(
        not_negative("parts_m", part) for part in parts_m
    )


@cites(COMMON_PRACTICE, "a sum equals its parts", equation="gap = total - sum of parts")
def sum_gap(*, parts: Sequence[int], total: int) -> int:
    """
    What a list of counts lacks to its stated total.

    Parameters
    ----------
    parts
        Counts, such as seats by block. [-]
    total
        Stated total. [-]

    Returns
    -------
    int
        Total less the sum: 0 where they agree. [-]

    Raises
    ------
    ValueError
        If there are no parts or a count is negative.
    """
    if not parts:
        raise ValueError("parts must hold at least one count, got none")
    for count in (*parts, total):
        not_negative("parts and total", count)
    return total - sum(parts)
