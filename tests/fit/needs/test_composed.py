"""Needs that are made of others: bundles, and what a condition opens."""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.reading.problems import Refused
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import Record, item, pack, value

DECK = item("deck", "Deck", usable_width=value("12 m", 12.0), usable_depth=value("8 m", 8.0))
INSIDE = item("identity", "Hall", setting=value("indoors"))
OUTSIDE = item("identity", "Field", setting=value("outdoors"))
UNSAID = item("identity", "Hall", setting=value(standing="unknown"))
WIDE, DEEP = "{what: stage width, at least: 11 m}", "{what: stage depth, at least: 10 m}"
NARROW, FLAT = "{what: stage width, at least: 10 m}", "{what: stage depth, at least: 7 m}"


def answer(need: str, *house: Record, deck: Record = DECK) -> Any:
    """The verdict on one need of a house."""
    rider = rider_of(f"act: A\nneeds:\n  - {need}\n", file="a.yml", rules=RULES)
    (found,) = fit(pack(house=list(house), stage=[deck]), [rider])["verdicts"]
    return found


@pytest.mark.parametrize(
    ("need", "word"),
    [
        (f"all of: [{WIDE}, {FLAT}]", "fits"),
        (f"all of: [{WIDE}, {DEEP}]", "short"),
        (f"all of: [{WIDE}, {{what: rake, at most: 3 %}}]", "ask"),
        (f"any of: [{{all of: [{WIDE}, {DEEP}]}}, {{all of: [{NARROW}, {FLAT}]}}]", "fits"),
        (f"any of: [{{all of: [{WIDE}, {DEEP}]}}, {{what: stage depth, at least: 9 m}}]", "short"),
    ],
)
def test_of_several_together_the_gravest_decides_and_of_bundles_the_best(
    need: str, word: str
) -> None:
    assert answer(need)["verdict"] == word


def test_a_bundle_tells_each_part_and_asks_for_each_that_is_not_said() -> None:
    found = answer("all of: [{what: rake, at most: 3 %}, {what: deck height, at least: 1 m}]")
    assert [part["verdict"] for part in found["parts"]] == ["ask", "ask"]
    assert all(part["question"] for part in found["parts"])
    assert found["reason"].startswith("Slope of the deck, at most 3 %:")


@pytest.mark.parametrize(
    ("word", "house", "need", "expected"),
    [
        ("if", OUTSIDE, FLAT, "fits"),
        ("if", OUTSIDE, DEEP, "short"),
        ("if", INSIDE, DEEP, "not needed"),
        ("if", UNSAID, DEEP, "ask"),
        ("if", UNSAID, FLAT, "fits"),
        ("unless", OUTSIDE, DEEP, "not needed"),
        ("unless", INSIDE, DEEP, "short"),
        ("unless", UNSAID, DEEP, "ask"),
    ],
)
def test_a_need_counts_where_its_condition_holds(
    word: str, house: Record, need: str, expected: str
) -> None:
    asked = f"{{{need[1:-1]}, {word}: {{what: outdoors, is: yes}}}}"
    assert answer(asked, house)["verdict"] == expected


def test_an_open_condition_is_the_question() -> None:
    found = answer(f"{{{DEEP[1:-1]}, if: {{what: outdoors, is: yes}}}}", UNSAID)
    assert found["question"].startswith("Is the stage outdoors")
    assert "By itself: Short by 2.00 m." in found["reason"]


def test_what_a_show_only_wants_to_know_is_told_or_asked() -> None:
    told, unsaid = (answer(f"{{what: {what}, tell: yes}}") for what in ("stage depth", "rake"))
    assert (told["verdict"], told["fact"]["text"]) == ("fits", "8 m")
    assert unsaid["verdict"] == "ask"


def test_what_is_said_less_of_the_condition_promises_no_more() -> None:
    for need in (DEEP, FLAT):
        asked = f"{{{need[1:-1]}, if: {{what: outdoors, is: yes}}}}"
        order = ("not needed", "fits", "ask", "short")
        least = min(order.index(answer(asked, one)["verdict"]) for one in (INSIDE, OUTSIDE))
        assert order.index(answer(asked, UNSAID)["verdict"]) >= least


def point(name: str, limit: str, left: float | None, **more: Any) -> Record:
    """A point of rigging with what is left on it."""
    known = value(f"{left} kg", left) if left is not None else value(standing="unknown")
    return item("point", name, limit=value(limit, 1000.0), left=known, **more)


POINTS = [point(name, "1 t", left) for name, left in zip("ABCD", (100, 300, 300, 600), strict=True)]


@pytest.mark.parametrize(
    ("classes", "more", "word"),
    [
        ("{count: 1, each: 500 kg}, {count: 2, each: 250 kg}, {each: 100 kg}", (), "fits"),
        ("{count: 2, each: 500 kg}", (), "short"),
        # What is good for 500 kg serves once: it is not one of four of 250 kg as well.
        ("{count: 1, each: 500 kg}, {count: 3, each: 250 kg}", (), "short"),
        ("{count: 2, each: 500 kg}", (point("E", "1 t", None),), "ask"),
        ("{count: 3, each: 500 kg}", (point("E", "1 t", None),), "short"),
        (
            "{count: 2, each: 500 kg}",
            (point("E", "1 t", 900.0, terms="not for visitors"),),
            "short",
        ),
    ],
)
def test_amounts_by_class_count_what_is_as_good_or_better_once(
    classes: str, more: tuple[Record, ...], word: str
) -> None:
    rider = rider_of(
        f"act: A\nneeds: [{{what: points, by class: [{classes}]}}]\n", file="a.yml", rules=RULES
    )
    (found,) = fit(pack(rigging=[*POINTS, *more]), [rider])["verdicts"]
    assert found["verdict"] == word


def test_a_house_that_lists_no_points_is_asked_for_each_class() -> None:
    rider = rider_of(
        "act: A\nneeds: [{what: points, by class: [{each: 100 kg}]}]\n", file="a.yml", rules=RULES
    )
    for house in (pack(), pack(rigging=[])):
        (found,) = fit(house, [rider])["verdicts"]
        assert found["verdict"] == "ask"


@pytest.mark.parametrize(
    ("need", "said"),
    [
        ("what: haze, by class: [{each: 1 kg}]", "cannot be counted by class"),
        ("what: points, at least: 3, by class: [{each: 1 kg}]", "stands beside at least"),
        ("what: points, by class: [{each: unknown}]", "is no class"),
        ("what: points, by class: [{each: 3 m}]", "each"),
    ],
)
def test_a_class_that_cannot_be_counted_is_refused(need: str, said: str) -> None:
    with pytest.raises(Refused) as refused:
        rider_of(f"act: A\nneeds: [{{{need}}}]\n", file="a.yml", rules=RULES)
    assert said in str(refused.value.problems[0])
