"""Amounts of money: a number with its currency, in the author's words."""

import re
from typing import Annotated

from builder.reading.numerals import Unreadable, folded
from builder.reading.words import ReadBy

SIGNS = "£€$¥₹"
CODE = "[A-Z]{3}"
NUMBER = r"[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]{1,2})?|[0-9]{1,12}(?:\.[0-9]{1,2})?"
AMOUNT = re.compile(rf"(?:(?:[{SIGNS}]|{CODE}) ?(?:{NUMBER})|(?:{NUMBER}) ?(?:[{SIGNS}]|{CODE}))")
EXAMPLE = "£500"
ADVICE = "write the number and the currency, like £500, 1,500 EUR or 80.50 USD"


class Money(str):
    """
    An amount in the author's words. Currencies differ and change, so amounts are told and never
    added up or compared.
    """


def read_money(text: str) -> Money:
    """
    An amount with its currency: one of the usual signs, or three capitals as of ISO 4217.

    Raises
    ------
    Unreadable
        ``money-unreadable``.
    """
    words = folded(text)
    if AMOUNT.fullmatch(words) is None:
        raise Unreadable("is no amount of money", "money-unreadable", ADVICE)
    return Money(words)


Amount = Annotated[Money, ReadBy(read_money, Money, "an amount of money", EXAMPLE)]
