"""Amounts of money keep their author's words and say where they have no currency."""

import pytest

from builder.reading.money import Money, read_money
from builder.reading.numerals import Unreadable


@pytest.mark.parametrize(
    "text", ["£500", "$1,500", "80.50 USD", "EUR 17", "1,500 EUR", "17 €", "¥12,000", "£ 5"]
)
def test_an_amount_with_its_currency_is_read_as_it_is_written(text: str) -> None:
    read = read_money(text)
    assert (read, type(read)) == (text, Money)


def test_a_number_alone_is_told_as_one_of_no_currency() -> None:
    assert read_money("1,500") == "1,500 (no currency told)"


@pytest.mark.parametrize("text", ["-£5", "£1,50", "5 quid", "£5.123", "eur 5", "£", "£5 €"])
def test_what_has_no_plain_number_is_refused_with_a_remedy(text: str) -> None:
    with pytest.raises(Unreadable) as refused:
        read_money(text)
    assert refused.value.code == "money-unreadable"
    assert "£500" in refused.value.advice
