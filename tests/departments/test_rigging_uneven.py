"""
What a point carries at the worst: every hang on it at its own worst case, and the legs of bridles
beside them.

The truss hangs on P1, P2 and P3, 10 m apart, with 1,000 kg spread evenly. The bridle's apex is 1 m
from P1 and 3 m from P4, both anchors at one height.
"""

import pytest

from tests.departments.rigged import BEAM, figure, found, hang, number, points, published

LEVEL_BEAM = BEAM.replace("height: 10 m up", "height: 8 m up")
EVEN = "{what: Lights, by: lighting, weight: 1000 kg}"
TRUSS = hang(1, 2, 3, loads=EVEN)
HAND = (
    "by hand. Truss: with P2 slack P1 and P3 carry half each, 500 kg; level they carry 3/16 of it,"
    " 187.5 kg (Hicks Table 2.1, two spans). Bridle: moments about P4, V1 × 4 m = 400 kg × 3 m, so"
    " 300 kg on P1 and 100 kg on P4; the leg to P1 goes 1 m aside in 2 m and pulls 300 × √5 / 2 ="
    " 335.4 kg (Hibbeler, equilibrium of a rigid body)"
)


def house(
    hangs: str = TRUSS, *, each_point: str = "1000 kg", apex_up: str = "6 m", more: str = ""
) -> str:
    """A house whose truss and bridle share P1."""
    limits = f"limits: {{whole_roof: 9 t, each_beam: 5 t, each_point: {each_point}}}\n"
    spot = f"{{across: 1 m SL, depth: 0 m, height: {apex_up} up}}"
    bridle = f"bridles: [{{name: Spot, legs: [P1, P4], apex: {spot}, load: 400 kg}}]\n"
    return limits + LEVEL_BEAM + points(0, 10, 20, 4) + hangs + bridle + more


@pytest.mark.source(HAND)
def test_the_worst_of_a_point_counts_the_leg_of_a_bridle_beside_the_truss() -> None:
    assert number(house(), "point", "P1", "carried") == pytest.approx(522.9, abs=0.05)
    assert number(house(), "point", "P1", "worst") == pytest.approx(835.4, abs=0.05)
    worst = figure(house(), "point", "P1", "worst")
    assert worst.note == "one hoist slack"
    assert worst.working.steps == (
        "Truss: 500.0 kg with one hoist slack",
        "Spot: 335.4 kg, the pull in this leg, 300.0 kg of it straight down",
    )


@pytest.mark.source(HAND)
def test_the_house_s_factor_and_the_hoist_are_on_the_worst_too() -> None:
    factor = "dynamic_factor: {factor: 1.2, source: the engineer}\n"
    hoists = "hoists: [{name: Hollin 1t, count: 3, rating: 1 t, weight: 50 kg, headroom: 500 mm}]\n"
    text = house(hang(1, 2, 3, loads=EVEN, hoist="Hollin 1t"), more=factor + hoists)
    # (500 + 50 + 335.4) × 1.2 = 1062.5
    assert number(text, "point", "P1", "worst") == pytest.approx(1062.5, abs=0.05)
    assert figure(text, "point", "P1", "worst").working.steps == (
        "Truss: 500.0 kg with one hoist slack, and 50 kg of hoist",
        "Spot: 335.4 kg, the pull in this leg, 300.0 kg of it straight down",
        "885.4 kg × 1.2 = 1062.5 kg",
    )


@pytest.mark.source(HAND)
def test_a_point_that_the_leg_puts_over_its_limit_when_uneven_is_told() -> None:
    told = [finding.sentence for finding in found(house(each_point="835 kg"), "over-if-uneven")]
    assert told == [
        "Truss keeps these points within their limit only while its hoists share as planned: P1"
        " (835 kg with one hoist slack), P2 (1,000 kg with one hoist slack)."
    ]
    at_limit = [finding.sentence for finding in found(house(each_point="836 kg"), "over-if-uneven")]
    assert at_limit == [
        "Truss keeps these points within their limit only while its hoists share as planned: P2"
        " (1,000 kg with one hoist slack)."
    ]


@pytest.mark.source(HAND)
def test_several_legs_on_one_point_all_count() -> None:
    again = house().replace(
        "bridles: [",
        "bridles: [{name: Other, legs: [P1, P4], apex: {across:"
        " 1 m SL, depth: 0 m, height: 6 m up}, load: 40 kg}, ",
    )
    assert number(again, "point", "P1", "worst") == pytest.approx(869.0, abs=0.05)


def test_a_leg_whose_pull_is_not_known_leaves_no_worst_and_says_what_it_lacks() -> None:
    worst = figure(house(apex_up="9 m"), "point", "P1", "worst")
    assert (worst.value, worst.missing) == (None, ("an apex below both points",))
    assert worst.working.steps == ("Truss: 500.0 kg with one hoist slack", "Spot: not known")
    assert number(house(apex_up="9 m"), "point", "P3", "worst") == pytest.approx(500.0, abs=0.05)


def test_a_point_with_legs_alone_has_no_worst_for_nothing_on_it_can_be_uneven() -> None:
    (point,) = [item for item in published(house()).section.of_kind("point") if item.name == "P4"]
    assert point.figure("worst") is None
