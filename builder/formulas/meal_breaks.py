"""How many meal breaks are due in a call. The check of shows counts them by the same rule."""

from math import ceil

HAIR = 1e-9


def meal_breaks_due(span_s: float, after_s: float, break_s: float) -> int:
    """
    The least meal breaks with which nobody works longer than ``after_s`` without one, in a call of
    ``span_s`` from its beginning to its end, breaks included. [s]

    A stretch that is as long as ``after_s`` needs no break after it.
    """
    if span_s <= after_s:
        return 0
    return ceil((span_s - after_s) / (after_s + break_s) - HAIR)
