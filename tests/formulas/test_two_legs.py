"""Two legs of a bridle against a rigging primer."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.two_legs import included_cosine, leg_span, two_leg_forces


@pytest.mark.source(
    "D. L. Hall, Rigging Math (Made Simple), Lesson 4: W 500 lb, (V 4, H 3), (V 3, H 6): 454.5 and"
    " 304.5 lb; L2 there rounded to 6.7"
)
def test_what_two_unequal_legs_pull() -> None:
    first, second = two_leg_forces(leg_span(3.0, 4.0), leg_span(6.0, 3.0))
    assert 500 * first["pull"] == pytest.approx(454.5, abs=0.05)
    assert 500 * second["pull"] == pytest.approx(304.5, rel=0.002)
    assert first["share"] + second["share"] == pytest.approx(1.0)


@pytest.mark.source(
    "D. L. Hall, Rigging Math (Made Simple), Lesson 4: at 120 degrees each of two equal legs"
    " carries the load"
)
def test_equal_legs_at_120_degrees_each_carry_the_whole_load() -> None:
    leg = leg_span(math.sin(math.radians(60)), math.cos(math.radians(60)))
    first, second = two_leg_forces(leg, leg)
    assert first["pull"] == pytest.approx(1.0)
    assert first == second
    assert included_cosine(leg, leg) == pytest.approx(-0.5)


@pytest.mark.source("by hand: legs straight up share a load in no way that statics tells")
def test_two_legs_straight_up_are_refused() -> None:
    with pytest.raises(ValueError, match=r"must not both be 0, got 0\.0 and 0\.0"):
        two_leg_forces(leg_span(0.0, 2.0), leg_span(0.0, 3.0))


@pytest.mark.law
@given(st.floats(0, 80), st.floats(0.5, 80), st.floats(0.3, 9), st.floats(0.3, 9))
def test_forces_hold_the_load_and_the_angle_is_the_sum_of_both_leans(
    lean_deg: float, other_deg: float, rise_m: float, other_rise_m: float
) -> None:
    leans = math.radians(lean_deg), math.radians(other_deg)
    first = leg_span(rise_m * math.tan(leans[0]), rise_m)
    second = leg_span(other_rise_m * math.tan(leans[1]), other_rise_m)
    one, other = two_leg_forces(first, second)
    sideways = [
        forces["pull"] * leg["run_m"] / leg["length_m"]
        for forces, leg in ((one, first), (other, second))
    ]
    assert sideways[0] == pytest.approx(sideways[1])
    assert one["share"] + other["share"] == pytest.approx(1.0)
    assert included_cosine(first, second) == pytest.approx(math.cos(sum(leans)), abs=1e-9)
