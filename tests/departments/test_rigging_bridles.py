"""Bridles: legs and pulls by a published example, and what the house allows."""

import pytest

from builder.pack import Level
from tests.departments.rigged import figure, found, number, problems

FEET = "limits: {whole_roof: 20000 lb, each_beam: 6000 lb, each_point: 2000 lb}\n"


def text(
    *,
    apex_up: str = "20 ft",
    load: str = "500 lb",
    rule: str = "bridles_allowed: {allowed: yes}\n",
    legs: str = "[P1, P2]",
    apex: str = "0 ft",
) -> str:
    """
    One bridle between two beams: its apex is 4 ft below and 4 ft upstage of P1, 6 ft below and 3 ft
    downstage of P2.
    """
    beams = (
        "beams:\n  - {name: B1, runs: across, depth: 0 ft, low_steel: [{across: 20 ft SR, height:"
        " 24 ft up}, {across: 20 ft SL, height: 24 ft up}]}\n  - {name: B2, runs: across, depth: 7"
        " ft US, low_steel: [{across: 20 ft SR, height: 26 ft up}, {across: 20 ft SL, height: 26 ft"
        " up}]}\n"
    )
    points = "points: [{name: P1, beam: B1, across: 0 ft}, {name: P2, beam: B2, across: 0 ft}]\n"
    bridle = (
        f"bridles: [{{name: Spot, legs: {legs}, apex: {{across: {apex}, depth: 4 ft US, height:"
        f" {apex_up} up}}, load: {load}}}]\n"
    )
    return FEET + rule + beams + points + bridle


@pytest.mark.source(
    "Hall, Rigging Math, Lesson 4, formula with V1 4, H1 4, V2 6, H2 3 ft and 500 lb: T = W L1 H2 /"
    " (V1 H2 + V2 H1), by hand"
)
def test_leg_lengths_tensions_and_the_sideways_pull_follow_the_handbook() -> None:
    pound = 0.45359237
    turn = 4 * 3 + 6 * 4
    assert number(text(), "bridle", "Spot", "leg-p1") == pytest.approx(32**0.5 * 0.3048, abs=1e-4)
    assert number(text(), "bridle", "Spot", "tension-p1") == pytest.approx(
        500 * 32**0.5 * 3 / turn * pound, abs=0.05
    )
    assert number(text(), "bridle", "Spot", "tension-p2") == pytest.approx(
        500 * 45**0.5 * 4 / turn * pound, abs=0.05
    )
    assert number(text(), "bridle", "Spot", "sideways") == pytest.approx(
        500 * 4 * 3 / turn * pound, abs=0.05
    )


def test_the_pulls_are_on_the_points_and_the_vertical_shares_on_the_roof() -> None:
    for name in ("p1", "p2"):
        pull_kg = number(text(), "bridle", "Spot", f"tension-{name}")
        assert number(text(), "point", name.upper(), "carried") == pytest.approx(pull_kg)
    assert number(text(), "roof", "", "carried") == pytest.approx(500 * 0.45359237)


@pytest.mark.parametrize(
    ("rule", "count"),
    [
        ("bridles_allowed: {allowed: yes}\n", 0),
        ("bridles_allowed: {allowed: no}\n", 1),
        ("bridles_allowed: none\n", 1),
        ("bridles_allowed: ?\n", 0),
        ("", 0),
        ("bridles_allowed: {allowed: between some beams, beams: [B1, B2]}\n", 0),
        ("bridles_allowed: {allowed: between some beams, beams: [B1]}\n", 1),
    ],
)
def test_a_bridle_is_told_only_where_the_house_says_no(rule: str, count: int) -> None:
    assert [told.level for told in found(text(rule=rule), "bridle-forbidden")] == [
        Level.DANGER
    ] * count


@pytest.mark.source("by hand: atan(4/4) + atan(3/6) = 45 + 26.57 = 71.57 deg")
@pytest.mark.parametrize(("widest", "count"), [("72 deg", 0), ("71 deg", 1)])
def test_legs_wider_than_the_house_allows_are_a_caution(widest: str, count: int) -> None:
    rule = f"bridles_allowed: {{allowed: yes, widest_angle: {widest}}}\n"
    assert [told.level for told in found(text(rule=rule), "bridle-angle-wide")] == [
        Level.CAUTION
    ] * count
    assert number(text(), "bridle", "Spot", "angle") == pytest.approx(71.565, abs=0.005)


def test_legs_beyond_120_degrees_are_a_danger() -> None:
    assert found(text(apex_up="21 ft"), "bridle-too-flat") == []
    assert [told.level for told in found(text(apex_up="23.5 ft"), "bridle-too-flat")] == [
        Level.DANGER
    ]


@pytest.mark.source(
    "by hand, as above: the longer leg pulls 0.7454 of the load, so 2000 lb at 2683 lb"
)
def test_a_leg_that_pulls_more_than_its_point_may_carry_is_a_danger() -> None:
    assert found(text(load="2682 lb"), "bridle-leg-over-point") == []
    assert len(found(text(load="2684 lb"), "bridle-leg-over-point")) == 1


def test_an_apex_beside_its_points_or_above_them_is_not_worked_out() -> None:
    for wrong, why in (
        ({"apex": "2 ft SL"}, "between its two points"),
        ({"apex_up": "25 ft"}, "below both points"),
    ):
        (told,) = found(text(**wrong), "bridle-not-worked-out")
        assert why in told.sentence
        assert figure(text(**wrong), "point", "P1", "carried").value is None


def test_a_bridle_has_two_legs_to_two_points() -> None:
    (problem,) = problems(text(legs="[P1, P1]"))
    assert "must name two or three different points" in problem
