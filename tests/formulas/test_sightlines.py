"""Sightlines against published examples."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.sightlines import riser_for_c_m, sightline_c_m


@pytest.mark.source("Plus Maths, P. Shepherd: C 0.15, D 30, R 10, T 1 m: riser 0.488 m")
def test_riser_of_a_stadium_row() -> None:
    assert riser_for_c_m(
        eye_to_focus_m=30, eye_above_focus_m=10, row_depth_m=1, c_m=0.15
    ) == pytest.approx(0.488, abs=0.0005)
    assert sightline_c_m(
        eye_to_focus_m=30, eye_above_focus_m=10, row_depth_m=1, riser_m=0.48833
    ) == pytest.approx(0.15, abs=0.0005)


@pytest.mark.source(
    "from memory: John, Sheard & Vickery, Stadia: R 6.5, C 0.12, D 18, T 0.8 m: riser 0.414 m"
)
def test_riser_of_the_handbook() -> None:
    assert riser_for_c_m(
        eye_to_focus_m=18, eye_above_focus_m=6.5, row_depth_m=0.8, c_m=0.12
    ) == pytest.approx(0.414, abs=0.0005)


@pytest.mark.law
@given(st.floats(1, 100), st.floats(0.1, 30), st.floats(0.5, 2), st.floats(0, 1))
def test_riser_and_c_are_each_others_inverse(
    distance_m: float, eye_m: float, row_m: float, riser_m: float
) -> None:
    c_m = sightline_c_m(
        eye_to_focus_m=distance_m, eye_above_focus_m=eye_m, row_depth_m=row_m, riser_m=riser_m
    )
    assert riser_for_c_m(
        eye_to_focus_m=distance_m, eye_above_focus_m=eye_m, row_depth_m=row_m, c_m=c_m
    ) == pytest.approx(riser_m, abs=1e-9)


@pytest.mark.law
@given(st.floats(1, 100), st.floats(0.01, 30), st.floats(0.5, 2))
def test_looking_down_from_a_flat_floor_the_row_in_front_is_in_the_way(
    distance_m: float, eye_m: float, row_m: float
) -> None:
    assert (
        sightline_c_m(
            eye_to_focus_m=distance_m, eye_above_focus_m=eye_m, row_depth_m=row_m, riser_m=0
        )
        < 0
    )
