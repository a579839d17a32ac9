"""
Rules of the house that nobody knows: limits, exceptions, zones, the factor for starting and
stopping, bridles. What is known of the rest is told, and nothing is promised.

Shares are by hand statics: a load of 400 kg over a hang with supports at its ends puts 200 kg on
each.
"""

import pytest

from builder.departments.rigging.page.summary import bridle_answer
from builder.pack import Value
from tests.departments.rigged import (
    BEAM,
    LIMITS,
    described,
    figure,
    found,
    hang,
    item,
    points,
    problems,
    published,
)

LIGHTS = "{what: Lights, by: lighting, weight: 400 kg}"
HUNG = hang(1, 2, loads=LIGHTS)
TWO = BEAM + points(0, 20)
FACTOR = "dynamic_factor: {{factor: {}, source: letter}}\n"


def value(text: str, kind: str, name: str, key: str) -> Value:
    """The value of a figure."""
    told = figure(text, kind, name, key).value
    assert told is not None
    return told


def test_limits_that_nobody_knows_leave_loads_told_and_nothing_left() -> None:
    text = "limits: unknown\n" + TWO + HUNG
    assert problems(text) == []
    assert value(text, "point", "P1", "carried").number == pytest.approx(200.0)
    assert value(text, "roof", "", "carried").number == pytest.approx(400.0)
    assert figure(text, "roof", "", "limit").value is None
    assert figure(text, "point", "P1", "left").missing == ("a limit of the point",)
    assert described(text).general.where("whole_roof").line == 1
    own = text.replace("across: 0 m}", "across: 0 m, rating: 250 kg}")
    assert value(own, "point", "P1", "limit").number == 250.0
    assert value(own, "point", "P1", "left").ends == (None, pytest.approx(50.0))


def test_exceptions_that_nobody_knows_leave_only_what_a_point_says_itself() -> None:
    text = LIMITS + "exceptions: unknown\n" + BEAM
    text += points(0, 20, more=", rating: 250 kg") + HUNG
    assert value(text, "point", "P1", "limit").number == 250.0
    assert figure(text, "point", "P2", "limit").value is None
    assert figure(text, "beam", "B1", "limit").value is None
    assert value(text, "point", "P1", "left").ends == (None, pytest.approx(50.0))
    assert value(text, "roof", "", "left").number == pytest.approx(8600.0)


def test_zones_that_nobody_knows_leave_at_most_on_every_point() -> None:
    text = LIMITS + "zones: unknown\n" + TWO + HUNG
    assert value(text, "point", "P1", "carried").number == pytest.approx(200.0)
    assert value(text, "point", "P1", "left").ends == (None, pytest.approx(800.0))
    assert value(text, "beam", "B1", "left").number == pytest.approx(2600.0)


@pytest.mark.source("by hand: 200 kg on each of two points, times 1.2 and 1.5")
def test_a_factor_between_two_ends_multiplies_what_points_carry_by_both() -> None:
    text = LIMITS + FACTOR.format("1.2 to 1.5") + TWO + HUNG
    assert value(text, "point", "P1", "carried").ends == pytest.approx((240.0, 300.0))
    assert value(text, "point", "P1", "left").ends == pytest.approx((700.0, 760.0))
    assert value(text, "roof", "", "left").ends == pytest.approx((8400.0, 8520.0))


@pytest.mark.parametrize("told", ["dynamic_factor: unknown\n", FACTOR.format("unknown")])
def test_a_factor_that_nobody_knows_makes_every_load_at_least_that_at_rest(told: str) -> None:
    text = LIMITS + told + BEAM + points(0, 20, 10) + HUNG
    assert value(text, "point", "P1", "carried").ends == (pytest.approx(200.0), None)
    assert value(text, "point", "P1", "left").ends == (None, pytest.approx(800.0))
    assert value(text, "roof", "", "left").ends == (None, pytest.approx(8600.0))
    assert value(text, "point", "P3", "carried").number == 0.0


SPOT = """wanted_spots: [{name: Centre, load: 100 kg,
  apex: {across: 2 m SL, depth: 0 m, height: 6 m up}}]
"""


@pytest.mark.parametrize(
    ("rule", "lacks"),
    [
        ("allowed: unknown", "whether bridles are allowed"),
        ('allowed: "yes", widest_angle: unknown', "the widest angle between two legs"),
    ],
)
def test_a_bridle_rule_that_nobody_knows_is_what_a_wanted_spot_lacks(rule: str, lacks: str) -> None:
    text = LIMITS + BEAM + points(0, 4) + SPOT + f"bridles_allowed: {{{rule}}}\n"
    assert figure(text, "wanted-spot", "Centre", "points").missing == (lacks,)
    assert found(text, "spot-without-bridle") == []
    known = LIMITS + BEAM + points(0, 4) + SPOT + 'bridles_allowed: {allowed: "yes"}\n'
    assert figure(known, "wanted-spot", "Centre", "points").value is not None


def test_the_page_says_that_nobody_knows_whether_bridles_are_allowed() -> None:
    text = LIMITS + BEAM + points(0, 4) + "bridles_allowed: {allowed: unknown}\n"
    assert "not known yet" in str(bridle_answer(published(text).section).words)


def test_how_level_hoists_stand_may_be_unknown_and_is_named() -> None:
    limits = LIMITS.replace("each_point:", "level_within: unknown, each_point:")
    text = limits + BEAM + points(0, 20, 10) + hang(1, 2, 3, loads=LIGHTS)
    uneven = item(text, "support", "P1").figure("uneven")
    assert uneven is not None
    assert uneven.missing == ("how far out of level the hoists may stand",)
