"""
Nulls of two stacks on the floor, against a right-angled triangle, the far field and the paths
themselves.
"""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from builder.formulas.stack_nulls import null_off_centre_m
from builder.formulas.sub_pairs import path_difference_m, stereo_null_angles_deg

C = 343.0


@pytest.mark.source(
    "by hand: S = 10 m, c/f = 12 m, a = 3 m, so x = 3 sqrt(1 + 4^2/(5^2 - 3^2)) = 3 sqrt 2 = 4.243"
    " m at 4 m"
)
def test_the_first_null_lies_on_its_hyperbola() -> None:
    assert null_off_centre_m(
        spacing_m=10, distance_m=4, frequency_hz=C / 12, speed_m_s=C
    ) == pytest.approx(4.243, abs=0.0005)
    assert null_off_centre_m(spacing_m=6, distance_m=4, frequency_hz=C / 12, speed_m_s=C) is None


@pytest.mark.source(
    "far away the hyperbola meets its asymptote, the angle of the two-source null: S = 16 m, 63 Hz:"
    " 9.80, 30.69, 58.29 deg by hand"
)
@pytest.mark.parametrize(("order", "angle_deg"), [(0, 9.80), (1, 30.69), (2, 58.29)])
def test_far_away_a_null_lies_at_its_angle(order: int, angle_deg: float) -> None:
    aside_m = null_off_centre_m(
        spacing_m=16, distance_m=10_000, frequency_hz=63, speed_m_s=C, order=order
    )
    assert aside_m is not None
    assert math.degrees(math.atan2(aside_m, 10_000)) == pytest.approx(angle_deg, abs=0.01)


@pytest.mark.law
@given(st.floats(4, 40), st.floats(0, 100), st.floats(25, 125), st.integers(0, 3))
def test_at_a_null_the_paths_differ_by_half_wavelengths(
    spacing_m: float, distance_m: float, frequency_hz: float, order: int
) -> None:
    assume(
        abs((order + 0.5) * C / frequency_hz - spacing_m) > 1e-6
    )  # just then the null lies on the line through the stacks
    aside_m = null_off_centre_m(
        spacing_m=spacing_m,
        distance_m=distance_m,
        frequency_hz=frequency_hz,
        speed_m_s=C,
        order=order,
    )
    assert (aside_m is None) == (
        order
        >= len(stereo_null_angles_deg(spacing_m=spacing_m, frequency_hz=frequency_hz, speed_m_s=C))
    )
    if aside_m is not None:
        longer_m = path_difference_m(
            spacing_m=spacing_m, off_centre_m=aside_m, distance_m=distance_m
        )
        assert longer_m == pytest.approx((order + 0.5) * C / frequency_hz, rel=1e-6)


NAMES = ("spacing_m", "frequency_hz", "speed_m_s")


@pytest.mark.law
@pytest.mark.parametrize("name", NAMES)
def test_what_is_not_above_zero_is_refused_by_name(name: str) -> None:
    given_values = {
        "spacing_m": 10.0,
        "distance_m": 4.0,
        "frequency_hz": 63.0,
        "speed_m_s": C,
        name: 0.0,
    }
    with pytest.raises(ValueError, match=f"{name} must be a number above 0"):
        null_off_centre_m(**given_values)
