"""
The ground that laws stand on: a law is kept over many cases, `make laws` takes all of them, and
every other run takes a share drawn by a seed.

A law is a test marked ``laws`` that takes its cases from ``share``::

    @pytest.mark.laws
    @pytest.mark.parametrize("pair", share(range(5000), law="both engines agree", usually=40))
    def test_both_engines_agree(pair: int) -> None: ...

`HOUSEPACK_LAWS` says how much: nothing for the small share of `make test`, `all`, or a part of the
whole such as `0.05`. `HOUSEPACK_SEED` gives the seed, so that what failed is drawn again.
"""

import math
import os
import random
from collections.abc import Iterable
from typing import TypeVar

T = TypeVar("T")

HOW_MUCH = "HOUSEPACK_LAWS"
SEED = "HOUSEPACK_SEED"
LARGEST_SEED = 2**31 - 1


def share(cases: Iterable[T], *, law: str, usually: int) -> list[T]:
    """
    The cases of a law that this run takes, in their own order.

    Parameters
    ----------
    cases
        Every case, in an order that is the same in every process.
    law
        The law in a few words. Each law has a draw of its own, so that one more law leaves the
        cases of the others as they were.
    usually
        How many cases `make test` takes.

    Raises
    ------
    ValueError
        Where `HOUSEPACK_LAWS` is neither `all` nor a part of one, or the seed no whole number.
    """
    every = list(cases)
    wanted = cases_wanted(len(every), os.environ.get(HOW_MUCH, ""), usually)
    drawn = random.Random(f"{seed()} {law}").sample(range(len(every)), wanted)
    return [every[index] for index in sorted(drawn)]


def cases_wanted(there: int, how_much: str, usually: int) -> int:
    """How many of the cases that are there a run takes; never none of some."""
    if how_much == "":
        return min(usually, there)
    if how_much == "all":
        return there
    return min(there, math.ceil(there * part_of_one(how_much)))


def part_of_one(how_much: str) -> float:
    """A part of the whole, above 0 and at most 1."""
    try:
        part = float(how_much)
    except ValueError:
        part = math.nan
    if not 0 < part <= 1:
        raise ValueError(f"{HOW_MUCH} must be 'all' or a part such as 0.05, got {how_much!r}")
    return part


def seed() -> int:
    """The seed of this run. The first process draws it, and those it starts inherit it."""
    written = os.environ.setdefault(SEED, str(random.SystemRandom().randint(0, LARGEST_SEED)))
    if not (written.isascii() and written.isdigit()):
        raise ValueError(f"{SEED} must be a whole number, 0 or more, got {written!r}")
    return int(written)


def repeating() -> str:
    """How to draw the same cases again, as a line for the terminal."""
    how_much = os.environ.get(HOW_MUCH, "")
    if how_much == "all":
        return "laws: every case"
    again = f"{SEED}={seed()}" if how_much == "" else f"{HOW_MUCH}={how_much} {SEED}={seed()}"
    taken = "a small share" if how_much == "" else f"{part_of_one(how_much):.2%} of the cases"
    return f"laws: {taken}, drawn again with {again}"
