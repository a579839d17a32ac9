"""Loads that one of several ways feeds, and loads, hangs and calls on a condition."""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.reading.problems import Refused
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import Record, item, pack, value
from tests.fit.test_power_reasons import switch

INSIDE = item("identity", "Hall", setting=value("indoors"))
OUTSIDE = item("identity", "Field", setting=value("outdoors"))
UNSAID = item("identity", "Hall", setting=value(standing="unknown"))


def answers(text: str, *power: Record, house: Record = INSIDE) -> list[Any]:
    """The verdicts of a house with some services on a rider."""
    rider = rider_of(f"act: A\n{text}\n", file="a.yml", rules=RULES)
    return fit(pack(power=list(power), house=[house]), [rider])["verdicts"]


def words(text: str, *power: Record, house: Record = INSIDE) -> list[str]:
    """The same, each by its word without a note."""
    return [each["verdict"].split(",")[0] for each in answers(text, *power, house=house)]


APART = "{all of: [{for: sound, current: 32 A}, {for: lights, current: 63 A}]}"
WAYS = f"  - {{for: all, any of: [{APART}, {{current: 125 A}}]}}"


def test_the_first_way_is_taken_where_it_does_and_else_the_next() -> None:
    two = (switch(40.0, "One"), switch(70.0, "Two"))
    (found,) = answers(f"power:\n{WAYS}", *two)
    assert (found["verdict"].split(",")[0], len(found["parts"])) == ("fits", 2)
    (found,) = answers(f"power:\n{WAYS}", switch(130.0, "One"))
    assert found["verdict"].split(",")[0] == "fits"
    assert found["parts"] != [] or "125 A" in found["reason"]
    (found,) = answers(f"power:\n{WAYS}", switch(90.0, "One"))
    assert found["verdict"] == "short"


def test_the_way_is_taken_that_leaves_the_other_loads_their_place() -> None:
    ways = "  - {for: all, any of: [{current: 60 A}, {current: 40 A, for: less}]}"
    other = "  - {for: video, current: 30 A}"
    found = answers(f"power:\n{ways}\n{other}", switch(75.0))
    assert [each["verdict"].split(",")[0] for each in found] == ["fits", "fits"]
    assert "40 A" in found[0]["reason"]


def test_a_line_with_several_ways_says_no_current_of_its_own() -> None:
    with pytest.raises(Refused, match="stands beside any of"):
        answers("power:\n  - {for: all, current: 10 A, any of: [{current: 125 A}]}")


@pytest.mark.parametrize(
    ("house", "free_a", "word"),
    [
        (OUTSIDE, 70.0, "fits"),
        (OUTSIDE, 50.0, "short"),
        (INSIDE, 50.0, "not needed"),
        (UNSAID, 70.0, "fits"),
        (UNSAID, 50.0, "ask"),
    ],
)
def test_a_load_on_a_condition(house: Record, free_a: float, word: str) -> None:
    text = "power:\n  - {for: heaters, current: 63 A, if: {what: outdoors, is: yes}}"
    assert words(text, switch(free_a), house=house) == [word]


def test_a_load_that_is_not_needed_takes_nothing_from_the_others() -> None:
    text = (
        "power:\n  - {for: heaters, current: 63 A, if: {what: outdoors, is: yes}}\n"
        "  - {for: sound, current: 63 A}"
    )
    assert words(text, switch(70.0)) == ["not needed", "fits"]
    assert words(text, switch(70.0), house=OUTSIDE) == ["fits", "short"]
    assert words(text, switch(70.0), house=UNSAID) == ["fits", "short"]


def test_hangs_calls_tasks_and_rectangles_count_on_a_condition_too() -> None:
    condition = "if: {what: outdoors, is: yes}"
    text = (
        f"hangs:\n  - {{name: Truss, supports: [{{}}], {condition}}}\n"
        f"plot:\n  - {{name: Tower, width: 1 m, depth: 1 m, {condition}}}\n"
        f"crew:\n  - {{who: riggers, {condition}}}\n"
        f"tasks:\n  - {{kind: cleaning, what: Floor, {condition}}}"
    )
    assert words(text) == ["not needed"] * 4
    assert words(text, house=OUTSIDE) == ["ask"] * 4


def test_the_tail_of_a_feed_is_for_the_house_to_agree_to() -> None:
    found = answers("power:\n  - {for: sound, current: 32 A, tail: 5 m}", switch(40.0))
    assert [each["verdict"].split(",")[0] for each in found] == ["fits", "ask"]
    assert found[1]["need"] == "5 m with a connector at the end"
