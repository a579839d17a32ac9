"""What both languages have and write differently."""

import random
from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest
from playwright.sync_api import Browser

from builder.formulas.primitives import (
    Ratio,
    char_of,
    code_of,
    ratio_float,
    ratio_product,
    ratio_sum,
)
from tests.rider.compiled import in_the_browser


def ratio(top: int, bottom: int) -> Ratio:
    """A fraction as digits."""
    return {"top": str(top), "bottom": str(bottom)}


@pytest.mark.source("Unicode: U+00E9 is é, U+1F600 is 😀")
def test_characters_have_numbers() -> None:
    assert (code_of("é"), code_of("😀"), char_of(0xE9), char_of(0x1F600)) == (
        0xE9,
        0x1F600,
        "é",
        "😀",
    )


@pytest.mark.source("by hand: 1/2 + 1/3 = 5/6, 1/2 × 2/3 = 1/3; -3/4 is -0.75")
def test_fractions_are_exact() -> None:
    assert ratio_sum(ratio(1, 2), ratio(1, 3)) == ratio(5, 6)
    assert ratio_product(ratio(1, 2), ratio(2, 3)) == ratio(1, 3)
    assert ratio_float(ratio(-3, 4)) == -0.75
    assert ratio_float(ratio(0, 7)) == 0.0


@pytest.mark.law
@pytest.mark.browser
def test_both_languages_give_the_same_fractions_to_the_last_bit(browser: Browser) -> None:
    draw = random.Random(20261130)
    numbers = [
        (draw.randrange(-(10**size), 10**size), draw.randrange(1, 10 ** draw.randrange(1, 40)))
        for size in range(1, 41)
        for _ in range(25)
    ]
    # Halfway between two floats, and a hair to either side.
    halves = [(2**54 + 2 * odd + 1) for odd in range(20)]
    numbers += [(half, 2) for half in halves]
    numbers += [(half * 10**30 + hair, 2 * 10**30) for half in halves for hair in (-1, 1)]
    calls: list[Any] = [[ratio(*one), ratio(*other)] for one, other in pairwise(numbers)]
    found = in_the_browser(browser, "tests.formulas.primitive_calls.worked", calls)
    for (one, other), theirs in zip(calls, found, strict=True):
        first, second = (Fraction(int(each["top"]), int(each["bottom"])) for each in (one, other))
        assert theirs == [float(first), float(first + second), float(first * second)]
