"""
What the acts of a day ask together: what adds up and what they share.

After a reference of the trade on openers and headliners: rooms, lines, points and room at the mix
position add up, wedges, microphones and stands are shared (common practice, no source).
"""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import Record, asks, item, pack, rider, value

STOCK = [
    item("stock", "Vocal", kind=value("microphone"), working=value("20", 20.0)),
    item("stock", "Tall", kind=value("stand"), working=value("20", 20.0)),
    item("monitor", "W", kind=value("wedge"), working=value("8", 8.0)),
]
YARD = [item("parking", "trucks", what=value("trucks"), count=value("8", 8.0))]


def day(*needs: Record, turned: bool = False) -> dict[str, str]:
    """The verdicts on the day of acts with one need each, by strictness."""
    house: Any = pack(sound=STOCK, access=YARD)
    riders: Any = [
        rider({**need, "act": f"A{index}"}, act=f"A{index}") for index, need in enumerate(needs)
    ]
    found = fit(house, list(reversed(riders)) if turned else riders)["verdicts"]
    return {one["strictness"]: one["verdict"] for one in found if one["act"] == "The day"}


def trucks(low: float, strictness: str = "must") -> Record:
    """Parking for trucks."""
    return asks("truck parking", low=low, strictness=strictness)


def test_a_should_of_one_act_never_makes_the_must_of_another_short() -> None:
    assert day(trucks(4.0), trucks(4.0)) == {"must": "fits"}
    assert day(trucks(5.0), trucks(4.0)) == {"must": "short"}
    assert day(trucks(4.0), trucks(5.0, "should")) == {"should": "short"}
    assert day(trucks(4.0), trucks(5.0, "should"), trucks(4.0)) == {
        "must": "fits",
        "should": "short",
    }


@pytest.mark.parametrize("turned", [False, True])
def test_of_one_act_the_most_that_it_asks_of_one_thing_counts(turned: bool) -> None:
    house: Any = pack(access=YARD)
    lines = [trucks(4.0), trucks(2.0)]
    mine = rider(*(reversed(lines) if turned else lines))
    other = rider({**trucks(4.0), "act": "B"}, act="B")
    riders: Any = [mine, other]
    (found,) = [one for one in fit(house, riders)["verdicts"] if one["act"] == "The day"]
    assert (found["verdict"], found["need"]) == ("fits", "at least 8 together (4 + 4)")


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(
    ("what", "most"), [("microphones", 20.0), ("microphone stands", 20.0), ("wedges", 8.0)]
)
def test_stock_is_shared_between_acts_unless_one_says_not(
    what: str, most: float, turned: bool
) -> None:
    one, other = asks(what, low=most), asks(what, low=1.0)
    assert day(one, other, turned=turned) == {}
    assert day({**one, "own": True}, other, turned=turned) == {"must": "short"}
    assert day(one, {**other, "own": True}, turned=turned) == {"must": "short"}
    half = asks(what, low=most / 2, own=True)
    assert day(half, half, turned=turned) == {"must": "fits"}
    assert day(half, {**half, "own": False}, other, turned=turned) == {"must": "fits"}
    assert day(half, half, other, turned=turned) == {"must": "short"}


def test_a_rider_says_that_it_does_not_share() -> None:
    read = [
        rider_of(
            f"act: A\nneeds: [{{what: wedges, at least: 4{more}}}]\n", file="a.yml", rules=RULES
        )
        for more in ("", ", not shared: yes", ", not shared: no")
    ]
    found: list[Any] = [each["requirements"][0] for each in read]
    assert [need["own"] for need in found] == [False, True, False]
