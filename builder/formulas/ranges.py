"""Refusals that formulas share: a number outside its range is named with its value."""

import math


def not_negative(name: str, value: float) -> float:
    """The value, or ``ValueError`` where it is below 0 or no finite number."""
    if not 0 <= value < math.inf:
        raise ValueError(f"{name} must be a number of at least 0, got {value}")
    return value


def above_zero(name: str, value: float) -> float:
    """The value, or ``ValueError`` where it is not above 0 or no finite number."""
    if not 0 < value < math.inf:
        raise ValueError(f"{name} must be a number above 0, got {value}")
    return value


def checked_power_factor(power_factor: float) -> float:
    """The power factor, or ``ValueError`` where it is not above 0 and at most 1."""
    if not 0 < power_factor <= 1:
        raise ValueError(f"power_factor must be above 0 and at most 1, got {power_factor}")
    return power_factor
