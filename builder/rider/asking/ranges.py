"""What an amount in a rider can be at all. Beyond it a figure would make no sense."""

from typing import TypedDict

from builder.reading.values.faults import Fault, fault
from builder.reading.values.sentences import fill

CANNOT_BE = "cannot be: {range} is possible here"
CHECK = "check the number and its unit"
CHECK_COUNT = "write how many"
BELOW_ZERO = "write it without the minus"
SIGNED = ("level", "across", "depth", "angle")
"""The kinds of quantity that can be below zero in a rider."""


class Range(TypedDict):
    """What is possible, in SI; ``low`` itself only where ``low_too``. ``words`` say it."""

    low: float
    high: float
    low_too: bool
    words: str


def range_fault(number: float, possible: Range | None, advice: str) -> Fault | None:
    """What is wrong with a number outside its range, and how to go on."""
    if possible is None:
        return None
    enough = number >= possible["low"] if possible["low_too"] else number > possible["low"]
    if enough and number <= possible["high"]:
        return None
    return fault(fill(CANNOT_BE, {"range": possible["words"]}), "impossible", advice)


def below_zero_fault(si: float, kind: str) -> Fault | None:
    """
    What is wrong with an amount below zero. Lengths and heights are read by the rule of positions,
    which can be.
    """
    if si >= 0 or kind in SIGNED:
        return None
    return fault("is below zero", "number-out-of-range", BELOW_ZERO)
