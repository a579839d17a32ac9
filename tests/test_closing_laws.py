"""
The law of a house that is closed: on the date of a show it makes no verdict better, on any other
date it changes none; and knowing less of its ends never makes a verdict better, nor short.
"""

import random
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import RiderAsked, Verdict
from builder.fit.verdicts import ASK, SHORT
from builder.pack import Pack
from tests.house_laws import HOUSES, Change, better, other, pack_with, unchanged_pack
from tests.laws import share
from tests.sweep import riders

DAYS = (date(2026, 6, 1), date(2027, 3, 31))
DEPARTMENTS = ("access", "stage", "rigging", "flying", "power", "sound", "lines")
Told = dict[tuple[str, int, str], str]


@dataclass(frozen=True, slots=True)
class Closing:
    """A house closed for a time, in full or in part, and a day near it on which shows play."""

    house: str
    first: date
    last: date
    plays: date
    departments: tuple[str, ...]

    def __str__(self) -> str:
        return f"{self.house} {self.first}..{self.last} {self.plays} {'+'.join(self.departments)}"

    def pack(self, first: str = "", last: str = "") -> Pack:
        """The pack of the closed house, its ends written in full or as they are given."""
        ends = {"from": first or self.first.isoformat(), "until": last or self.last.isoformat()}
        closure: dict[str, Any] = {**ends, "why": "New boards."}
        if self.departments:
            closure["departments"] = list(self.departments)

        def make(data: Any) -> None:
            data["closed"] = [closure]

        pack = pack_with(Change(self.house, "house.yml", "closed", make))
        assert pack is not None
        return pack


def a_closing(seed: int) -> Closing:
    """A closure of up to 90 days, and a day within it, at its edge or beside it."""
    dice = random.Random(f"closing {seed}")
    first = DAYS[0] + timedelta(dice.randint(0, (DAYS[1] - DAYS[0]).days))
    last = first + timedelta(dice.randint(0, 90))
    near = [first, last, first - timedelta(1), last + timedelta(1)]
    within = first + timedelta(dice.randint(0, (last - first).days))
    plays = dice.choice([*near, within, within, first - timedelta(40), last + timedelta(40)])
    departments = tuple(dice.sample(DEPARTMENTS, dice.choice((0, 0, 1, 2))))
    return Closing(HOUSES[seed % len(HOUSES)], first, last, plays, departments)


def shows(plays: str) -> tuple[RiderAsked, ...]:
    """The shows, on a date."""
    return tuple({**rider, "plays": plays} for rider in riders())


def told(pack: Pack, plays: str) -> Told:
    """What every need of every show, each show's date and each as a whole are told."""
    record = fit_record(pack)
    found: Told = {}
    for show in shows(plays):
        result = fit(record, [show])
        found[show["act"], -1, "as a whole"] = result["verdict"]
        for number, answer in enumerate(result["verdicts"]):
            found[show["act"], number, named(answer)] = answer["verdict"]
    return found


def named(answer: Verdict) -> str:
    """What a verdict is on."""
    return f"{answer['title']}, {answer['need']}"


@cache
def usual(house: str) -> Mapping[tuple[str, int, str], str]:
    """What shows are told of a house as it is, which is closed on no day."""
    return told(unchanged_pack(house), "")


def of_usual(house: str, found: Told) -> Told:
    """The same verdicts as a house that is closed on no day gives."""
    return {key: found[key] for key in usual(house)}


CLOSINGS = tuple(map(a_closing, range(160)))


@pytest.mark.laws
@pytest.mark.parametrize("closing", share(CLOSINGS, law="closing", usually=4), ids=str)
def test_closing_makes_no_verdict_better_and_changes_none_on_another_date(closing: Closing) -> None:
    found = told(closing.pack(), closing.plays.isoformat())
    own = of_usual(closing.house, found)
    if closing.first <= closing.plays <= closing.last:
        assert better(usual(closing.house), own) == []
        if not closing.departments:
            assert set(found.values()) <= {SHORT, "not needed"}
    else:
        assert other(usual(closing.house), own) == []
        assert len(own) == len(found)


def less_known(day: date) -> tuple[str, ...]:
    """A day by its month, by its year, and not at all."""
    return (f"{day:%Y-%m}", f"{day:%Y}", "unknown")


@pytest.mark.laws
@pytest.mark.parametrize("closing", share(CLOSINGS, law="closing, less known", usually=2), ids=str)
def test_knowing_less_of_an_end_leaves_a_verdict_or_asks(closing: Closing) -> None:
    plays = closing.plays.isoformat()
    exact = worst_of(told(closing.pack(), plays))
    ends = [(first, "") for first in less_known(closing.first)]
    ends += [("", last) for last in less_known(closing.last)]
    for first, last in ends:
        for show, words in worst_of(told(closing.pack(first, last), plays)).items():
            assert words in (exact[show], ASK), (show, first, last)


def worst_of(found: Told) -> dict[str, str]:
    """How each show is told as a whole, where the house alone is not what makes it short."""
    return {
        act: "fits" if word.startswith("fits") else word
        for (act, number, _), word in found.items()
        if number == -1
    }


def test_the_cases_lie_within_and_beside() -> None:
    within = [each for each in CLOSINGS if each.first <= each.plays <= each.last]
    assert 50 < len(within) < 110
    assert any(each.departments for each in within)
    assert any(not each.departments for each in within)


def test_a_date_alone_changes_nothing_in_a_house_that_is_closed_on_no_day() -> None:
    for house in HOUSES:
        assert told(unchanged_pack(house), "2026-07-20") == usual(house)
