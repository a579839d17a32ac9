"""
Numbers as people write them: `2,000`, `10 1/2`, `-0.3`, `½`. Exact, in linear time, and never
guessed at.

They are read in ``values/numerals.py``, as the page reads them; here they become fractions, and
what is wrong becomes an exception.
"""

from dataclasses import dataclass
from fractions import Fraction

from builder.formulas.primitives import Ratio
from builder.reading.values import numerals
from builder.reading.values.faults import Fault
from builder.reading.values.spelling import folded, plain

__all__ = ["Numeral", "Unreadable", "folded", "leading_numeral", "plain", "refuse"]


class Unreadable(ValueError):
    """
    A value that cannot be read: the reason follows the value in a sentence, the advice says how to
    go on.
    """

    def __init__(self, reason: str, code: str, advice: str = "") -> None:
        super().__init__(f"{reason}; {advice}" if advice else reason)
        self.reason, self.code, self.advice = reason, code, advice


def refuse(fault: Fault | None) -> None:
    """
    Nothing, where nothing is wrong.

    Raises
    ------
    Unreadable
        With the fault's reason, code and advice.
    """
    if fault is not None:
        raise Unreadable(fault["reason"], fault["code"], fault["advice"])


@dataclass(frozen=True, slots=True)
class Numeral:
    """
    A number exactly as written, and the step of its last digit (`18.30` has a step of 0.01; a
    fraction that of its denominator).
    """

    value: Fraction
    step: Fraction


def leading_numeral(text: str) -> tuple[Numeral, str]:
    """
    The number at the front of plain text, and the rest without leading space. The sign is read as
    well.

    Raises
    ------
    Unreadable
        `number-unreadable` or `number-out-of-range`.
    """
    found = numerals.leading_numeral(text)
    refuse(found["fault"])
    return Numeral(exact(found["value"]), exact(found["step"])), found["rest"]


def exact(ratio: Ratio) -> Fraction:
    """An exact fraction from its digits."""
    return Fraction(int(ratio["top"]), int(ratio["bottom"]))
