"""
Shows in houses where the place of a point, a beam or a hang is not known: what is there for certain
counts, and what may be there is asked.
"""

import pytest

from tests.departments.rigged import BEAM, points
from tests.fit.hangs.test_by_rule import house, need, spot, verdicts, words
from tests.fit.hangs.test_plan import hang, support
from tests.fit.sample import Record, asks

OPEN = points(0, 20, 10).replace("across: 10 m SL", "across: unknown")
"""P1 at the centre, P2 at 20 m SL, and P3 somewhere along the beam."""
FORBIDDEN = 'bridles_allowed: {allowed: "no"}\n'


def good(count: float, each_kg: float) -> Record:
    """So many points that have as much left, each."""
    classes = [{"count": count, "each": each_kg, "words": f"{count:g} of {each_kg:g} kg"}]
    return {**asks("points"), "sort": "classes", "what": "points", "classes": classes}


@pytest.mark.parametrize(("count", "word"), [(2.0, "fits"), (3.0, "ask"), (4.0, "short")])
def test_points_that_have_so_much_left_are_asked_beyond_those_with_a_place(
    count: float, word: str
) -> None:
    assert words(house(more=OPEN), good(count, 500.0)) == [word]


@pytest.mark.parametrize(
    ("key", "low", "word"),
    [
        # Three points of 1 t are there; what is left on P3 depends on where it is.
        ("points", 3.0, "fits"),
        ("points", 4.0, "short"),
        ("point rating", 1000.0, "fits"),
        ("point left", 1000.0, "fits"),
        ("point left", 1001.0, "short"),
    ],
)
def test_a_point_without_a_place_counts_as_one_that_may_do(key: str, low: float, word: str) -> None:
    assert words(house(more=OPEN), need(key, low)) == [word]


def test_a_spot_where_no_point_is_told_may_have_the_one_without_a_place() -> None:
    placed = house(more=points(0, 20) + FORBIDDEN)
    assert words(placed, spot(10.0)) == ["short"]
    (asked,) = verdicts(house(more=OPEN + FORBIDDEN), spot(10.0))
    assert asked["verdict"] == "ask"
    assert "the house does not know where these are: P3" in asked["reason"]
    assert words(house(more=OPEN + FORBIDDEN), spot(0.0)) == ["fits"]


def test_a_spot_on_a_beam_that_lies_nobody_knows_where_is_asked() -> None:
    beam = BEAM.replace("depth: 0 m", "depth: unknown")
    (asked,) = verdicts(house(beam=beam, more=FORBIDDEN), spot(10.0))
    assert asked["verdict"] == "ask"
    assert "the house does not know where these are: B1" in asked["reason"]


def test_a_hang_on_a_named_point_without_a_place_is_asked() -> None:
    both = hang(support("P1", 400.0), support("P3", 400.0, at_m=10.0))
    assert words(house(more=OPEN), both) == ["ask"]
    placed = house(more=points(0, 20, 10))
    assert words(placed, both) == ["fits"]


def test_a_hang_of_the_house_on_unknown_points_leaves_every_point_asked() -> None:
    ends = "first_end: {across: 0 m, depth: 0 m}, last_end: {across: 20 m SL, depth: 0 m}"
    hung = f"hangs: [{{name: Truss, {ends}, supports: unknown, weight_in_all: 300 kg}}]\n"
    there = house(more=points(0, 20) + hung)
    assert words(there, good(2.0, 500.0)) == ["ask"]
    assert words(there, need("flown total", 9000.0)) == ["ask"]


@pytest.mark.parametrize(
    ("rule", "question"),
    [
        ("zones: unknown", "Which parts of your roof"),
        ("exceptions: unknown", "Which beams and points"),
        ("dynamic_factor: unknown", "Which factor"),
        ("dynamic_factor: {factor: unknown, source: letter}", "Which factor"),
    ],
)
def test_a_hang_is_asked_by_a_rule_that_the_house_does_not_know(rule: str, question: str) -> None:
    both = hang(support("P1", 400.0), support("P2", 400.0, at_m=20.0))
    own = points(0, 20).replace("}", ", rating: 1 t}")
    assert words(house(more=own), both) == ["fits"]
    (asked,) = verdicts(house(more=f"{own}{rule}\n"), both)
    assert asked["verdict"] == "ask"
    assert question in asked["question"]
