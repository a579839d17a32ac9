"""Amounts of money: a number with its currency where the author tells it, in their words."""

import re
from typing import Annotated

from builder.reading.numerals import Unreadable, folded
from builder.reading.words import ReadBy

SIGNS = "£€$¥₹"
CODE = "[A-Z]{3}"
NUMBER = r"[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]{1,2})?|[0-9]{1,12}(?:\.[0-9]{1,2})?"
AMOUNT = re.compile(rf"(?:(?:[{SIGNS}]|{CODE}) ?)?(?:{NUMBER})|(?:{NUMBER}) ?(?:[{SIGNS}]|{CODE})")
BARE = re.compile(NUMBER)
NO_CURRENCY = "no currency told"
EXAMPLE = "£500"
ADVICE = "write the number and the currency, like £500, 1,500 EUR or 80.50 USD, or the number alone"


class Money(str):
    """
    An amount in the author's words. Currencies differ and change, so amounts of two currencies are
    never added up or compared, and none is changed into another.
    """

    @property
    def currency(self) -> str:
        """The sign or the three capitals that it is written with; empty where there are none."""
        if NO_CURRENCY in self:
            return ""
        return "".join(letter for letter in self if letter in SIGNS or letter.isalpha())

    @property
    def number(self) -> float:
        """How much it is, in its currency."""
        return float("".join(letter for letter in self if letter in "0123456789."))

    def like(self, number: float) -> str:
        """Another number in words, with the currency where this amount has it."""
        digits = f"{number:,.2f}".removesuffix(".00")
        first = next(place for place, letter in enumerate(self) if letter.isdigit())
        if first:
            return f"{self[:first]}{digits}"
        last = max(place for place, letter in enumerate(self) if letter.isdigit())
        return f"{digits}{self[last + 1 :]}"


def read_money(text: str) -> Money:
    """
    An amount with its currency: one of the usual signs, or three capitals as of ISO 4217. A number
    alone is told as one of no currency, for a house may leave it to the reader.

    Raises
    ------
    Unreadable
        ``money-unreadable``.
    """
    words = folded(text)
    if AMOUNT.fullmatch(words) is None:
        raise Unreadable("is no amount of money", "money-unreadable", ADVICE)
    return Money(f"{words} ({NO_CURRENCY})" if BARE.fullmatch(words) else words)


Amount = Annotated[Money, ReadBy(read_money, Money, "an amount of money", EXAMPLE)]
