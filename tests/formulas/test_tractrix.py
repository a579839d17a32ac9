"""Laws of the tractrix; its published values are with the turns."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas.tractrix import Piece, Vehicle, drive, rear_axles


@pytest.mark.law
@settings(max_examples=25)
@given(st.floats(2, 6), st.floats(0, 12), st.floats(0, 1), st.floats(8, 30))
def test_left_and_right_turns_mirror(
    wheelbase_m: float, trailer_m: float, ahead_m: float, radius_m: float
) -> None:
    vehicle = Vehicle("v", 2.5, wheelbase_m, 0, 0, trailer_m if trailer_m > 1 else 0.0, ahead_m)
    left, right = (
        drive(vehicle, [Piece(20, sign * radius_m)], start=(0, 0), heading_rad=0, step_m=0.2)
        for sign in (1, -1)
    )
    for one, other in zip(left, right, strict=True):
        for here, there in zip(rear_axles(vehicle, one), rear_axles(vehicle, other), strict=True):
            assert here == pytest.approx((there[0], -there[1]), abs=1e-9)


@pytest.mark.law
@settings(max_examples=25)
@given(st.floats(2, 6), st.floats(1, 12), st.floats(0, 1))
def test_driving_straight_moves_all_axles_by_the_same(
    wheelbase_m: float, trailer_m: float, ahead_m: float
) -> None:
    vehicle = Vehicle("v", 2.5, wheelbase_m, 0, 0, trailer_m, ahead_m)
    poses = drive(vehicle, [Piece(7)], start=(0, 0), heading_rad=0)
    for before, after in zip(
        rear_axles(vehicle, poses[0]), rear_axles(vehicle, poses[-1]), strict=True
    ):
        assert after == pytest.approx((before[0] + 7, before[1]))


@pytest.mark.law
def test_lengths_out_of_range_are_refused() -> None:
    with pytest.raises(ValueError, match="length_m must be a number above 0, got 0"):
        drive(Vehicle("v", 2.5, 6, 1, 1), [Piece(0)], start=(0, 0), heading_rad=0)
    with pytest.raises(ValueError, match="radius_m must not be 0"):
        drive(Vehicle("v", 2.5, 6, 1, 1), [Piece(1, 0)], start=(0, 0), heading_rad=0)
