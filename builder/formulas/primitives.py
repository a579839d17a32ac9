"""
What both Python and JavaScript can do and write differently: the compiler leaves these functions
out and calls those of the same name in the page's script.

Keep it a handful. Each has a body in both languages and a test that holds for both.
"""

from collections.abc import Callable
from fractions import Fraction
from logging import getLogger
from typing import TypedDict


class Ratio(TypedDict):
    """An exact fraction: two whole numbers of any size, written in decimal digits."""

    top: str
    bottom: str


def is_failing(action: Callable[[], None]) -> bool:
    """
    Whether an action fails: a net below what could be at fault, so that one part stops no other.

    What it did before it failed stays done. The failure goes to the log.
    """
    try:
        action()
    except Exception as failure:
        getLogger("housepack").debug("A part could not be worked out", exc_info=failure)
        return True
    return False


def code_of(char: str) -> int:
    """The number of a character."""
    return ord(char)


def char_of(code: int) -> str:
    """The character of a number."""
    return chr(code)


def ratio_sum(one: Ratio, other: Ratio) -> Ratio:
    """The exact sum of two fractions, in lowest terms."""
    first = Fraction(int(one["top"]), int(one["bottom"]))
    total = first + Fraction(int(other["top"]), int(other["bottom"]))
    return {"top": str(total.numerator), "bottom": str(total.denominator)}


def ratio_product(one: Ratio, other: Ratio) -> Ratio:
    """The exact product of two fractions, in lowest terms."""
    first = Fraction(int(one["top"]), int(one["bottom"]))
    product = first * Fraction(int(other["top"]), int(other["bottom"]))
    return {"top": str(product.numerator), "bottom": str(product.denominator)}


def ratio_float(ratio: Ratio) -> float:
    """The float nearest to a fraction; of two equally near, the even one."""
    return float(Fraction(int(ratio["top"]), int(ratio["bottom"])))
