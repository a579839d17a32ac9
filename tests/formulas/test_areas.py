"""Audience areas and level statistics against hand-counted grids, textbook areas and laws."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import areas

SQUARE = [(0.0, 0.0, 0.0), (4.0, 0.0, 0.0), (4.0, 3.0, 0.0), (0.0, 3.0, 0.0)]
ELL = [
    (0.0, 0.0, 0.0),
    (4.0, 0.0, 0.0),
    (4.0, 2.0, 0.0),
    (2.0, 2.0, 0.0),
    (2.0, 4.0, 0.0),
    (0.0, 4.0, 0.0),
]
BOW = [(0.0, 0.0, 0.0), (4.0, 4.0, 0.0), (4.0, 0.0, 0.0), (0.0, 4.0, 0.0)]


@pytest.mark.source(
    "by hand: 4 m by 3 m at 1 m is 12 squares, middles from 0.5 to 3.5 and 2.5; 1.2 m ears on a"
    " flat floor"
)
def test_a_rectangle_in_squares() -> None:
    found = areas.ears_m(SQUARE, step_m=1, ear_height_m=1.2)
    assert found.shape == (12, 3)
    assert found.min(axis=0) == pytest.approx([0.5, 0.5, 1.2])
    assert found.max(axis=0) == pytest.approx([3.5, 2.5, 1.2])


@pytest.mark.source(
    "by hand: an L of 4 m by 4 m with a quarter missing is 12 m², 48 squares of half a metre"
)
def test_an_l_shape_leaves_its_corner_out() -> None:
    found = areas.ears_m(ELL, step_m=0.5, ear_height_m=0)
    assert areas.plan_area_m2(ELL) == pytest.approx(12)
    assert len(found) == 48
    assert not ((found[:, 0] > 2) & (found[:, 1] > 2)).any()


@pytest.mark.source(
    "by hand: a lawn that rises 1 in 10 along x: 0.25 m and 1.7 m above datum at x = 2.5 m"
)
def test_a_sloped_lawn() -> None:
    lawn = [(0.0, 0.0, 0.0), (10.0, 0.0, 1.0), (10.0, 5.0, 1.0), (0.0, 5.0, 0.0)]
    floor = areas.floor_of(lawn)
    assert (floor.height_m, floor.rise_x, floor.rise_y) == pytest.approx((0, 0.1, 0), abs=1e-12)
    found = areas.ears_m(lawn, step_m=1, ear_height_m=1.7)
    assert found[found[:, 0] == 2.5][:, 2] == pytest.approx(1.95)


@pytest.mark.source(
    "by hand: of 0, 1 ... 100 dB the 5th percentile is 5, the 95th 95, the mean 50; 7 of 101 within"
    " 3 dB of 50, 13 within 6"
)
def test_spread_of_levels() -> None:
    found = areas.level_spread(np.arange(101.0), reference_db=50)
    assert (found.mean_db, found.low_db, found.high_db, found.spread_db) == pytest.approx(
        (50, 5, 95, 90)
    )
    assert (found.within_3_db, found.within_6_db) == pytest.approx((7 / 101, 13 / 101))


@pytest.mark.source("by hand: points in and out of an L")
def test_points_in_an_outline() -> None:
    found = areas.inside(
        np.array([[1, 1], [3, 3], [1, 3], [3, 1], [-1, 1], [5, 1]], dtype=float), ELL
    )
    assert found.tolist() == [True, False, True, True, False, False]


@pytest.mark.law
@given(st.integers(3, 9), st.floats(2, 30), st.floats(0, math.tau))
def test_as_many_squares_as_area(count: int, radius_m: float, turn: float) -> None:
    """A regular polygon's squares fill it but for the rim."""
    angles = turn + math.tau * np.arange(count) / count
    outline = [(radius_m * math.cos(a), radius_m * math.sin(a), 0.0) for a in angles]
    area = areas.plan_area_m2(outline)
    assert area == pytest.approx(count / 2 * radius_m**2 * math.sin(math.tau / count))
    step_m = radius_m / 25
    sampled = len(areas.ears_m(outline, step_m=step_m, ear_height_m=0)) * step_m**2
    assert sampled == pytest.approx(area, abs=step_m * math.tau * radius_m)


@pytest.mark.law
@given(st.floats(1, 20), st.floats(1, 20), st.floats(0.2, 1))
def test_a_symmetric_area_has_symmetric_ears(width_m: float, depth_m: float, step_m: float) -> None:
    half = width_m / 2
    found = areas.ears_m(
        [(0, -half, 0), (depth_m, -half, 0), (depth_m, half, 0), (0, half, 0)],
        step_m=step_m,
        ear_height_m=1,
    )
    assert np.sort(found[:, 1]) == pytest.approx(np.sort(-found[:, 1]), abs=1e-9)


@pytest.mark.law
@given(
    st.lists(st.floats(60, 120), min_size=1, max_size=50), st.floats(60, 120), st.floats(-20, 20)
)
def test_louder_everywhere_is_no_less_even(
    levels: list[float], reference_db: float, shift_db: float
) -> None:
    plain = areas.level_spread(np.array(levels), reference_db=reference_db)
    shifted = areas.level_spread(np.array(levels) + shift_db, reference_db=reference_db + shift_db)
    assert shifted.spread_db == pytest.approx(plain.spread_db, abs=1e-9)
    assert shifted.mean_db - plain.mean_db == pytest.approx(shift_db, abs=1e-9)
    assert 0 <= plain.within_3_db <= plain.within_6_db <= 1


@pytest.mark.law
@pytest.mark.parametrize(("corners", "said"), [
    (BOW, "corners_m must be an outline on plan"),
    (SQUARE[:2], "corners_m must hold three or more corners"),
    ([*SQUARE[:3], (2.0, 0.0, 0.0)], "corners_m must be an outline on plan"),
    ([(0.0, 0.0, 0.0), (4.0, 0.0, 0.0), (2.0, 0.0, 0.0)], "corners_m must be an outline on plan"),
    ([(0.0, 0.0, 0.0), (4.0, 0.0, 0.0), (4.0, 0.0, 0.0), (0.0, 3.0, 0.0)], "corners_m must be an outline on plan"),  # noqa: E501
    ([*SQUARE[:3], (0.0, 3.0, 1.0)], "corners_m must lie in one plane within 0.05 m, got 0.25 m off; split the area"),  # noqa: E501
])  # fmt: skip
def test_an_outline_that_is_no_area_is_refused(
    corners: list[tuple[float, float, float]], said: str
) -> None:
    with pytest.raises(ValueError, match=said):
        areas.ears_m(corners, step_m=1, ear_height_m=1)


@pytest.mark.law
def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="step_m must be a number above 0, got 0"):
        areas.ears_m(SQUARE, step_m=0, ear_height_m=1)
    with pytest.raises(ValueError, match="step_m must be fine enough for an area of 12 m², got 10"):
        areas.ears_m(SQUARE, step_m=10, ear_height_m=1)
    with pytest.raises(
        ValueError, match="levels_db must hold finite levels, got 2 of which 1 finite"
    ):
        areas.level_spread(np.array([1, -np.inf]), reference_db=0)
