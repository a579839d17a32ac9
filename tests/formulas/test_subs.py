"""Arcs, pairs and stacks of subwoofers against closed forms, printed practice and laws."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import subs

C = 343.0
ROW = tuple(1.2 * (i - 3.5) for i in range(8))


def arc(arc_deg: float) -> tuple[float, ...]:
    if arc_deg == 0:
        return (0.0,) * len(ROW)
    return subs.arc_delays_ms(ROW, radius_m=subs.arc_radius_m(ROW, arc_deg=arc_deg), speed_m_s=C)


@pytest.mark.source("by hand: r = 4.2 / sin 45 = 5.940 m; depth of ±0.6, 1.8, 3.0, 4.2 m behind the chord over 343 m/s, inner first")
def test_delay_table_of_eight_subs() -> None:
    assert subs.arc_radius_m(ROW, arc_deg=90) == pytest.approx(5.940, abs=0.0005)
    assert arc(90) == pytest.approx([4.983, 2.283, 0.726, 0, 0, 0.726, 2.283, 4.983], abs=0.0006)


@pytest.mark.source(
    "omnidirectional sum evaluated outside the project (numpy), 8 subs at 1.2 m, 63 Hz, c = 343 m/s; tapered rows are said to lose 3 to 9 dB"
)
@pytest.mark.parametrize(("arc_deg", "width_deg", "loss_db"), [(0, 40.2, 0), (60, 44.9, 1.1), (90, 108.7, 2.6), (120, 144.3, 5.3)])
def test_width_and_loss_of_arcs(arc_deg: float, width_deg: float, loss_db: float) -> None:
    found = subs.coverage_width_deg(ROW, arc(arc_deg), frequency_hz=63, speed_m_s=C)
    assert found == pytest.approx(width_deg, abs=0.06)
    assert subs.on_axis_loss_db(ROW, arc(arc_deg), frequency_hz=63, speed_m_s=C) == pytest.approx(loss_db, abs=0.05)


@pytest.mark.source(
    "Balanis 2005, 6.3: four in phase, half a wavelength apart: first null at asin(1/2) = 30 deg; eight: -3.01 dB at 12.80 deg full width"
)
def test_array_factor_of_sources_in_phase() -> None:
    half_wave_m = 0.5
    four, eight = ([half_wave_m * i for i in range(n)] for n in (4, 8))
    assert subs.far_field_db(four, [0.0] * 4, frequency_hz=C, angle_deg=30, speed_m_s=C) < -200
    edge_db = subs.far_field_db(eight, [0.0] * 8, frequency_hz=C, angle_deg=6.40, speed_m_s=C)
    assert edge_db == pytest.approx(-3.01, abs=0.01)


@pytest.mark.source("Balanis 2005, (6-10): |sin(N psi/2) / (N sin(psi/2))|, psi = k d sin(theta)")
@given(st.integers(2, 12), st.floats(-89, 89), st.floats(20, 200), st.floats(0.3, 4))
def test_array_factor_closed_form(count: int, angle_deg: float, frequency_hz: float, spacing_m: float) -> None:
    half_psi = math.pi * frequency_hz * spacing_m * math.sin(math.radians(angle_deg)) / C
    if abs(math.sin(half_psi)) < 1e-6:
        return
    closed = abs(math.sin(count * half_psi) / (count * math.sin(half_psi)))
    places = [i * spacing_m for i in range(count)]
    found_db = subs.far_field_db(places, [0.0] * count, frequency_hz=frequency_hz, angle_deg=angle_deg, speed_m_s=C)
    assert 10 ** (found_db / 20) == pytest.approx(closed, abs=1e-9)


@pytest.mark.source("by hand: asin((n + 1/2) 343 / 63 / 16) = 9.80, 30.69, 58.29 deg; stacks closer than half a wavelength have no null")
def test_nulls_of_left_and_right_stacks() -> None:
    assert subs.stereo_null_angles_deg(spacing_m=16, frequency_hz=63, speed_m_s=C) == pytest.approx([9.80, 30.69, 58.29], abs=0.005)
    assert subs.stereo_null_angles_deg(spacing_m=2, frequency_hz=63, speed_m_s=C) == ()


@pytest.mark.source("by hand: 12 m and 4 m aside at 20 m: 23.324 - 20.396 = 2.928 m, 58.6 Hz; J. Brusi prints 71.4 Hz for 7 ms")
def test_path_difference_and_its_first_null() -> None:
    difference_m = subs.path_difference_m(spacing_m=16, off_centre_m=4, distance_m=20)
    assert difference_m == pytest.approx(2.928, abs=0.0005)
    assert subs.first_null_hz(difference_ms=1000 * difference_m / C) == pytest.approx(58.6, abs=0.05)
    assert subs.first_null_hz(difference_ms=7) == pytest.approx(71.4, abs=0.05)


@pytest.mark.source("a trade magazine's end-fire article: multiples of 2.9 ms at 1 m, the front element latest")
def test_the_front_of_an_end_fire_row_waits_longest() -> None:
    assert subs.end_fire_delays_ms([3, 2, 1, 0], speed_m_s=C) == pytest.approx([8.7, 5.8, 2.9, 0], abs=0.06)


@pytest.mark.source("by hand: |1 - e^(-j 2 k d)| = 2 at f = c/4d: 6.02 dB; at 30 Hz and 1 m 2 sin(0.5496) = 1.0445: 0.38 dB")
def test_front_gain_of_a_gradient_pair() -> None:
    assert subs.gradient_delay_ms(depth_m=1, speed_m_s=C) == pytest.approx(2.915, abs=0.0005)
    assert subs.gradient_front_gain_db(depth_m=1, frequency_hz=C / 4, speed_m_s=C) == pytest.approx(6.02, abs=0.005)
    assert subs.gradient_front_gain_db(depth_m=1, frequency_hz=30, speed_m_s=C) == pytest.approx(0.38, abs=0.005)


@pytest.mark.source("a sound engineers' teaching article: two thirds of 12.5 ft at 90 Hz is 8.3 ft")
def test_greatest_spacing() -> None:
    assert subs.greatest_spacing_m(highest_hz=90, speed_m_s=C) / 0.3048 == pytest.approx(8.3, abs=0.05)


@pytest.mark.law
@given(st.floats(1, 180), st.floats(20, 120), st.floats(0, 90), st.floats(-20, 20))
def test_a_symmetric_row_has_a_symmetric_pattern(arc_deg: float, frequency_hz: float, angle_deg: float, later_ms: float) -> None:
    left, right, shifted = (
        subs.far_field_db(ROW, [delay + shift for delay in arc(arc_deg)], frequency_hz=frequency_hz, angle_deg=angle, speed_m_s=C)
        for angle, shift in ((angle_deg, 0), (-angle_deg, 0), (angle_deg, later_ms))
    )
    assert 10 ** (left / 20) == pytest.approx(10 ** (right / 20), abs=1e-9)
    assert 10 ** (left / 20) == pytest.approx(10 ** (shifted / 20), abs=1e-9)
    assert left <= 1e-9


@pytest.mark.law
@given(st.floats(1, 179), st.floats(0.5, 1))
def test_a_tighter_arc_delays_the_ends_more(arc_deg: float, share: float) -> None:
    wide, narrow = arc(arc_deg), arc(share * arc_deg)
    assert min(wide) == 0
    assert all(a >= b - 1e-12 for a, b in zip(wide, narrow, strict=True))


@pytest.mark.law
@given(st.floats(0.2, 3), st.floats(20, 150))
def test_a_gradient_pair_cancels_behind(depth_m: float, frequency_hz: float) -> None:
    omega_ms = math.tau * frequency_hz / 1000
    front_arrives_ms = 1000 * depth_m / C
    rear_arrives_ms = subs.gradient_delay_ms(depth_m=depth_m, speed_m_s=C)
    assert math.cos(omega_ms * front_arrives_ms) - math.cos(omega_ms * rear_arrives_ms) == pytest.approx(0, abs=1e-9)


@pytest.mark.law
def test_a_single_sub_covers_all_round() -> None:
    assert subs.coverage_width_deg([0.0], [0.0], frequency_hz=63, speed_m_s=C) is None


@pytest.mark.law
def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="arc_deg must be above 0 and at most 180, got 181"):
        subs.arc_radius_m(ROW, arc_deg=181)
    with pytest.raises(ValueError, match=r"radius_m must be at least half the row, 4\.2, got 4"):
        subs.arc_delays_ms(ROW, radius_m=4, speed_m_s=C)
    with pytest.raises(ValueError, match="delays_ms must hold one delay for each of 8 places, got 1"):
        subs.far_field_db(ROW, [0], frequency_hz=63, angle_deg=0, speed_m_s=C)
    with pytest.raises(ValueError, match="frequency_hz must be a number above 0, got 0"):
        subs.gradient_front_gain_db(depth_m=1, frequency_hz=0, speed_m_s=C)
