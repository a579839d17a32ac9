"""Stacks and pairs of subwoofers against closed forms, printed practice and laws."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import sub_pairs

C = 343.0


@pytest.mark.source(
    "by hand: asin((n + 1/2) 343 / 63 / 16) = 9.80, 30.69, 58.29 deg; stacks closer than half a"
    " wavelength have no null"
)
def test_nulls_of_left_and_right_stacks() -> None:
    assert sub_pairs.stereo_null_angles_deg(
        spacing_m=16, frequency_hz=63, speed_m_s=C
    ) == pytest.approx([9.80, 30.69, 58.29], abs=0.005)
    assert sub_pairs.stereo_null_angles_deg(spacing_m=2, frequency_hz=63, speed_m_s=C) == ()


@pytest.mark.source(
    "by hand: 12 m and 4 m aside at 20 m: 23.324 - 20.396 = 2.928 m, 58.6 Hz; J. Brusi prints 71.4"
    " Hz for 7 ms"
)
def test_path_difference_and_its_first_null() -> None:
    difference_m = sub_pairs.path_difference_m(spacing_m=16, off_centre_m=4, distance_m=20)
    assert difference_m == pytest.approx(2.928, abs=0.0005)


@pytest.mark.source(
    "a trade magazine's end-fire article: multiples of 2.9 ms at 1 m, the front element latest"
)
def test_the_front_of_an_end_fire_row_waits_longest() -> None:
    assert sub_pairs.end_fire_delays_ms([3, 2, 1, 0], speed_m_s=C) == pytest.approx(
        [8.7, 5.8, 2.9, 0], abs=0.06
    )


@pytest.mark.source(
    "by hand: |1 - e^(-j 2 k d)| = 2 at f = c/4d: 6.02 dB; at 30 Hz and 1 m 2 sin(0.5496) = 1.0445:"
    " 0.38 dB"
)
def test_front_gain_of_a_gradient_pair() -> None:
    assert sub_pairs.gradient_delay_ms(depth_m=1, speed_m_s=C) == pytest.approx(2.915, abs=0.0005)
    assert sub_pairs.gradient_front_gain_db(
        depth_m=1, frequency_hz=C / 4, speed_m_s=C
    ) == pytest.approx(6.02, abs=0.005)
    assert sub_pairs.gradient_front_gain_db(
        depth_m=1, frequency_hz=30, speed_m_s=C
    ) == pytest.approx(0.38, abs=0.005)


@pytest.mark.source(
    "by hand: a quarter of a wavelength at 63 Hz is 343 / 252 = 1.361 m, a quarter of a period 1 /"
    " 252 s = 3.968 ms; then the front gains most"
)
def test_a_quarter_wave_apart() -> None:
    depth_m = C / (4 * 63)
    assert depth_m == pytest.approx(1.361, abs=0.0005)
    assert sub_pairs.gradient_delay_ms(depth_m=depth_m, speed_m_s=C) == pytest.approx(
        3.968, abs=0.0005
    )
    assert sub_pairs.gradient_front_gain_db(
        depth_m=depth_m, frequency_hz=63, speed_m_s=C
    ) == pytest.approx(6.02, abs=0.005)


@pytest.mark.law
@given(st.floats(0.2, 3), st.floats(20, 150))
def test_a_gradient_pair_cancels_behind(depth_m: float, frequency_hz: float) -> None:
    omega_ms = math.tau * frequency_hz / 1000
    front_arrives_ms = 1000 * depth_m / C
    rear_arrives_ms = sub_pairs.gradient_delay_ms(depth_m=depth_m, speed_m_s=C)
    assert math.cos(omega_ms * front_arrives_ms) - math.cos(
        omega_ms * rear_arrives_ms
    ) == pytest.approx(0, abs=1e-9)


@pytest.mark.law
def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="frequency_hz must be a number above 0, got 0"):
        sub_pairs.gradient_front_gain_db(depth_m=1, frequency_hz=0, speed_m_s=C)
    with pytest.raises(ValueError, match="positions_m must hold at least one place, got none"):
        sub_pairs.end_fire_delays_ms([], speed_m_s=C)
    with pytest.raises(ValueError, match="spacing_m must be a number of at least 0, got -1"):
        sub_pairs.path_difference_m(spacing_m=-1, off_centre_m=0, distance_m=1)
