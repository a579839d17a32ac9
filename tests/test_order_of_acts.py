"""
The order in which acts are handed to the check changes no verdict where they tell when they play:
steel and power that they share go to the headliner first.
"""

from collections import Counter
from functools import cache
from itertools import combinations, permutations
from pathlib import Path

import pytest

from builder.fit.clock.acts import blank_clock
from builder.fit.interpreter import fit
from builder.fit.records import RiderAsked
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.laws import share
from tests.sweep import houses, riders

SHOWS = sorted((Path(__file__).parents[1] / "venue" / "shows").glob("*.yml"))


@cache
def every_act() -> list[RiderAsked]:
    """Shows of many sizes, each with a first note of its own."""
    own = [rider_of(path.read_text("utf-8"), file=path.name, rules=RULES) for path in SHOWS]
    acts = [*riders(), *own]
    return [plays_at(act, 18 * 3600.0 + 600.0 * number) for number, act in enumerate(acts)]


def plays_at(act: RiderAsked, first_note_s: float | None) -> RiderAsked:
    """An act that says of its day only when its first note is. [s]"""
    return {**act, "clock": {**blank_clock(), "on stage": first_note_s}}


def groups() -> list[tuple[int, ...]]:
    """Two and three acts on one day, by their number."""
    numbers = range(len(every_act()))
    return [*combinations(numbers, 2), *combinations(numbers, 3)]


def verdicts_on(house: int, acts: tuple[int, ...]) -> Counter[tuple[str, ...]]:
    """What is said of each need of each act and of the day, whichever comes first."""
    every = every_act()
    found = fit(houses()[house], [every[number] for number in acts])["verdicts"]
    return Counter(
        (each["act"], str(each["line"]), each["title"], each["verdict"], *each["margin"])
        for each in found
    )


@pytest.mark.laws
@pytest.mark.parametrize("acts", share(groups(), law="order of acts", usually=6), ids=str)
@pytest.mark.parametrize("house", [0, 1])
def test_the_order_of_acts_changes_no_verdict(house: int, acts: tuple[int, ...]) -> None:
    first, *others = (verdicts_on(house, order) for order in permutations(acts))
    for other in others:
        assert other == first


SPOT = "{across: 0 m, depth: 4.9 m US, load: 300 kg}"
HANG = f"hangs: [{{name: Bar, hoists: counted, supports: [{SPOT}]}}]"


def told(*acts: tuple[str, float | None]) -> dict[str, str]:
    """What acts are told, each with its first note, that want the same point."""
    given = [
        plays_at(rider_of(f"act: {act}\n{HANG}\n", file="a.yml", rules=RULES), first_note_s)
        for act, first_note_s in acts
    ]
    found = fit(houses()[0], given)["verdicts"]
    return {each["act"]: each["verdict"] for each in found if each["title"] == "Hang: Bar"}


def test_the_headliner_has_its_place_first_whatever_the_order_of_the_files() -> None:
    early, late = ("Opener", 19 * 3600.0), ("Headliner", 21 * 3600.0)
    assert told(early, late) == told(late, early)
    assert told(early, late)["Headliner"].startswith("fits")
    assert not told(early, late)["Opener"].startswith("fits")


@pytest.mark.parametrize("second_s", [None, 19 * 3600.0])
def test_where_nobody_tells_who_plays_last_the_order_of_the_files_counts(
    second_s: float | None,
) -> None:
    first, second = ("A", 19 * 3600.0), ("B", second_s)
    assert told(first, second)["A"].startswith("fits")
    assert told(second, first)["B"].startswith("fits")
