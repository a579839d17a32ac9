"""
Currents in whole milliampere, so that sums are exact: loads rounded up, what is free rounded down.
"""

from math import ceil, floor

HAIR_MA = 1e-6
"""What arithmetic in ampere may be off by; without it 0.3 A less 0.2 A would lose a milliampere."""


def floor_ma(current_a: float) -> int:
    """What is free, rounded down. [mA]"""
    return floor(current_a * 1000 + HAIR_MA)


def ceil_ma(current_a: float) -> int:
    """What is asked, rounded up. [mA]"""
    return ceil(current_a * 1000 - HAIR_MA)
