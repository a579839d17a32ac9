"""Bridles against a rigging primer, a published sling chart and the laws of statics."""

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from builder.formulas.bridles import three_leg_apex, three_leg_bridle, two_leg_apex, two_leg_bridle


@pytest.mark.source(
    "D. L. Hall, Rigging Math (Made Simple), Lesson 3: V 10 ft, H 4 ft: 10.77 ft; V 6, H 3: 6.71 ft"
)
@pytest.mark.parametrize(("rise", "run", "length"), [(10, 4, 10.77), (6, 3, 6.71)])
def test_leg_length(rise: float, run: float, length: float) -> None:
    found = two_leg_bridle(1, run_m=run, rise_m=rise, other_run_m=1, other_rise_m=1)
    assert found.lengths_m[0] == pytest.approx(length, abs=0.005)


@pytest.mark.source(
    "D. L. Hall, Rigging Math (Made Simple), Lesson 4: W 500 lb, (V 4, H 3), (V 3, H 6): 454.5 and"
    " 304.5 lb; L2 there rounded to 6.7"
)
def test_unequal_legs() -> None:
    found = two_leg_bridle(500, run_m=3, rise_m=4, other_run_m=6, other_rise_m=3)
    assert found.tensions_kg[0] == pytest.approx(454.5, abs=0.05)
    assert found.tensions_kg[1] == pytest.approx(304.5, rel=0.002)
    assert found.horizontal_kg == pytest.approx(272.7, abs=0.05)
    assert sum(found.verticals_kg) == pytest.approx(500)
    assert found.headroom_m == 3


@pytest.mark.source(
    "D. L. Hall, Rigging Math (Made Simple), Lesson 4: above 120 degrees a leg carries more than"
    " the load; at 120 exactly the load"
)
@pytest.mark.parametrize(("included_deg", "sign"), [(119, -1), (120, 0), (121, 1)])
def test_equal_legs_at_120_degrees_each_carry_the_whole_load(
    included_deg: float, sign: int
) -> None:
    half = math.radians(included_deg / 2)
    found = two_leg_bridle(
        100,
        run_m=math.sin(half),
        rise_m=math.cos(half),
        other_run_m=math.sin(half),
        other_rise_m=math.cos(half),
    )
    assert found.included_angle_deg == pytest.approx(included_deg)
    assert (
        (found.tensions_kg[0] - 100) * sign > 0
        if sign
        else found.tensions_kg[0] == pytest.approx(100, abs=1e-6)
    )


@pytest.mark.source(
    "sling chart that cites 29 CFR 1910.184: 1000 lb upright lifts 966 to 87 lb at 75 to 5 deg from"
    " horizontal (cut, not rounded)"
)
@pytest.mark.parametrize(
    ("angle_deg", "vertical"), [(75, 966), (60, 866), (45, 707), (30, 500), (15, 258), (5, 87)]
)
def test_what_a_leg_of_a_thousand_lifts(angle_deg: float, vertical: float) -> None:
    run, rise = math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg))
    found = two_leg_bridle(2000, run_m=run, rise_m=rise, other_run_m=run, other_rise_m=rise)
    assert 1000 * found.verticals_kg[0] / found.tensions_kg[0] == pytest.approx(vertical, abs=1)


@pytest.mark.source(
    "D. L. Hall, Rigging Math (Made Simple), Lesson 6: 400 lb on one leg pulled off plumb, V 10 ft,"
    " H 4 ft: 430.8 lb"
)
def test_a_leg_pulled_off_plumb_by_a_level_line() -> None:
    found = two_leg_bridle(400, run_m=4, rise_m=10, other_run_m=1, other_rise_m=1e-9)
    assert found.tensions_kg[0] == pytest.approx(430.8, abs=0.05)
    assert found.tensions_kg[1] == pytest.approx(400 * 4 / 10)


@pytest.mark.source(
    "by hand, 1 / sin(angle from horizontal), as lists of sling angle factors have it: 60, 45, 30"
    " degrees: 1.155, 1.414, 2.000"
)
@pytest.mark.parametrize(("angle_deg", "factor"), [(60, 1.155), (45, 1.414), (30, 2.000)])
def test_load_angle_factor(angle_deg: float, factor: float) -> None:
    run, rise = math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg))
    found = two_leg_bridle(2, run_m=run, rise_m=rise, other_run_m=run, other_rise_m=rise)
    assert found.tensions_kg[0] == pytest.approx(factor, abs=0.0005)


@pytest.mark.source(
    "by hand: 3-4-5 and 4-3-5 triangles stand 7 m apart at heights that differ by 1 m"
)
def test_the_apex_of_two_stock_lengths() -> None:
    apex = two_leg_apex(span_m=7, second_above_m=-1, first_leg_m=5, second_leg_m=5)
    assert (apex.from_first_m, apex.below_first_m) == pytest.approx((3, 4))


@pytest.mark.source(
    "by hand: three legs of 5 m, anchors on a circle of 3 m, 4 m up: each vertical a third, pull"
    " 3/4 of it"
)
def test_three_even_legs() -> None:
    anchors = tuple(
        (3 * math.cos(t), 3 * math.sin(t), 4.0)
        for t in (0.3, 0.3 + 2 * math.pi / 3, 0.3 + 4 * math.pi / 3)
    )
    found = three_leg_bridle(600, apex_m=(0, 0, 0), anchors_m=(anchors[0], anchors[1], anchors[2]))
    assert found.lengths_m == pytest.approx((5, 5, 5))
    assert found.verticals_kg == pytest.approx((200, 200, 200))
    assert found.tensions_kg == pytest.approx((250, 250, 250))
    assert found.horizontals_kg == pytest.approx((150, 150, 150))
    assert found.included_angles_deg == pytest.approx(
        (2 * math.degrees(math.asin(3 * math.sqrt(3) / 2 / 5)),) * 3
    )
    assert found.headroom_m == 4
    assert three_leg_apex(
        anchors_m=(anchors[0], anchors[1], anchors[2]), legs_m=(5, 5, 5)
    ) == pytest.approx((0, 0, 0), abs=1e-9)


@pytest.mark.source("by hand: an apex in the plane of two legs leaves the third slack")
def test_three_legs_with_the_apex_on_a_side_are_two_legs() -> None:
    found = three_leg_bridle(500, apex_m=(0, 0, 0), anchors_m=((-3, 0, 4), (6, 0, 3), (0, 5, 4)))
    flat = two_leg_bridle(500, run_m=3, rise_m=4, other_run_m=6, other_rise_m=3)
    assert found.tensions_kg == pytest.approx((*flat.tensions_kg, 0), abs=1e-6)


@pytest.mark.source("by hand: legs that do not reach, or could not hold the load there")
@pytest.mark.parametrize(
    ("span", "above", "legs", "message"),
    [
        (10, 0, (4, 5), "cannot reach over 10 m between anchors, got 4 and 5"),
        (10, 0, (5, 5), "cannot reach over 10 m between anchors, got 5 and 5"),
        (2, 0, (3, 9), "differ by more than the 2 m between anchors, got 3 and 9"),
        (4, 0, (3, 5.5), "not between and below both, got 3 and 5.5"),
        (0, 0, (3, 5), "span_m must be a number above 0, got 0"),
        (4, 0, (0, 5), "first_leg_m must be a number above 0, got 0"),
    ],
)
def test_two_legs_that_cannot_hold(
    span: float, above: float, legs: tuple[float, float], message: str
) -> None:
    with pytest.raises(ValueError, match=message.replace(".", r"\.")):
        two_leg_apex(span_m=span, second_above_m=above, first_leg_m=legs[0], second_leg_m=legs[1])


CORNERS = ((0.0, 0.0, 8.0), (6.0, 0.0, 8.0), (0.0, 6.0, 8.0))


@pytest.mark.source(
    "by hand: legs too short to meet, one so long that it would hang slack, anchors in a line"
)
def test_three_legs_that_cannot_hold() -> None:
    with pytest.raises(ValueError, match="legs_m cannot meet at one place below these anchors"):
        three_leg_apex(anchors_m=CORNERS, legs_m=(2, 2, 2))
    with pytest.raises(
        ValueError, match=r"legs_m would not all be taut, got \(5, 5, 9\): apex_m must be inside"
    ):
        three_leg_apex(anchors_m=CORNERS, legs_m=(5, 5, 9))
    with pytest.raises(ValueError, match="anchors_m must not be in one line"):
        three_leg_apex(anchors_m=((0, 0, 8), (3, 0, 8), (6, 0, 8)), legs_m=(5, 5, 5))
    with pytest.raises(ValueError, match="legs_m must be a number above 0, got -5"):
        three_leg_apex(anchors_m=CORNERS, legs_m=(5, 5, -5))


@pytest.mark.source("by hand: what no bridle can be")
def test_bridles_refuse_what_is_no_bridle() -> None:
    with pytest.raises(ValueError, match="rise_m must be a number above 0, got 0"):
        two_leg_bridle(1, run_m=1, rise_m=0, other_run_m=1, other_rise_m=1)
    with pytest.raises(ValueError, match="run_m and other_run_m must not both be 0, got 0 and 0"):
        two_leg_bridle(1, run_m=0, rise_m=1, other_run_m=0, other_rise_m=1)
    with pytest.raises(ValueError, match="load_kg must be a number of at least 0, got -1"):
        two_leg_bridle(-1, run_m=1, rise_m=1, other_run_m=1, other_rise_m=1)
    with pytest.raises(ValueError, match="anchors_m must all be above the apex at 9 m"):
        three_leg_bridle(1, apex_m=(1, 1, 9), anchors_m=CORNERS)
    with pytest.raises(ValueError, match="apex_m must be inside the triangle of the anchors"):
        three_leg_bridle(1, apex_m=(5, 5, 0), anchors_m=CORNERS)
    with pytest.raises(ValueError, match="anchors_m must not be in one plane with the apex"):
        three_leg_bridle(1, apex_m=(1, 0, 0), anchors_m=((0, 0, 8), (3, 0, 8), (6, 0, 8)))


runs = st.floats(0.05, 15)
rises = st.floats(0.05, 15)


@pytest.mark.law
@given(st.floats(0, 5000), runs, rises, runs, rises)
def test_two_legs_are_in_equilibrium_and_mirror(
    load: float, run: float, rise: float, other_run: float, other_rise: float
) -> None:
    found = two_leg_bridle(
        load, run_m=run, rise_m=rise, other_run_m=other_run, other_rise_m=other_rise
    )
    swapped = two_leg_bridle(
        load, run_m=other_run, rise_m=other_rise, other_run_m=run, other_rise_m=rise
    )
    assert sum(found.verticals_kg) == pytest.approx(load, abs=1e-9)
    assert found.tensions_kg == pytest.approx(
        (math.hypot(found.horizontal_kg, found.verticals_kg[0]), swapped.tensions_kg[0]), abs=1e-9
    )
    assert found.horizontal_kg == pytest.approx(swapped.horizontal_kg, abs=1e-9)


@pytest.mark.law
@given(runs, rises, runs, rises)
def test_stock_lengths_find_the_apex_again(
    run: float, rise: float, other_run: float, other_rise: float
) -> None:
    found = two_leg_bridle(
        1, run_m=run, rise_m=rise, other_run_m=other_run, other_rise_m=other_rise
    )
    assume(found.included_angle_deg < 175)
    first, second = found.lengths_m
    apex = two_leg_apex(
        span_m=run + other_run,
        second_above_m=other_rise - rise,
        first_leg_m=first,
        second_leg_m=second,
    )
    assert (apex.from_first_m, apex.below_first_m) == pytest.approx((run, rise), abs=1e-5)


coordinates = st.floats(-8, 8)
spots = st.tuples(coordinates, coordinates, st.floats(0.5, 12))


@pytest.mark.law
@given(
    spots,
    spots,
    spots,
    st.tuples(st.floats(0.05, 1), st.floats(0.05, 1), st.floats(0.05, 1)),
    st.floats(0, 3000),
)
def test_three_legs_are_in_equilibrium_and_found_again(
    first: tuple[float, float, float],
    second: tuple[float, float, float],
    third: tuple[float, float, float],
    weights: tuple[float, float, float],
    load: float,
) -> None:
    anchors = np.array((first, second, third))
    assume(abs(float(np.linalg.det(np.column_stack((anchors[:, :2], np.ones(3)))))) > 2)
    inside = (np.array(weights) / sum(weights)) @ anchors[:, :2]
    apex = (float(inside[0]), float(inside[1]), 0.0)
    found = three_leg_bridle(load, apex_m=apex, anchors_m=(first, second, third))
    units = (anchors - np.array(apex)) / np.array(found.lengths_m)[:, None]
    assert np.array(found.tensions_kg) @ units == pytest.approx([0, 0, load], abs=1e-7 * (load + 1))
    plane = (
        np.linalg.norm(np.linalg.solve(anchors, np.ones(3)))
        if abs(np.linalg.det(anchors)) > 5
        else 10.0
    )
    assume(plane < 5)
    assert three_leg_apex(
        anchors_m=(first, second, third), legs_m=found.lengths_m
    ) == pytest.approx(apex, abs=1e-3)


@pytest.mark.law
def test_an_apex_moves_with_its_anchors_however_far_the_house_is_from_the_origin() -> None:
    anchors = ((0.0, 0.0, 0.0), (3.0, 0.0, 0.0), (0.0, 0.02, 0.0))
    here = three_leg_apex(anchors_m=anchors, legs_m=(5, 5, 5))
    one, two, three = ((x - 9000.0, y + 8000.0, z) for x, y, z in anchors)
    there = three_leg_apex(anchors_m=(one, two, three), legs_m=(5, 5, 5))
    assert there == pytest.approx((here[0] - 9000, here[1] + 8000, here[2]), abs=1e-6)
