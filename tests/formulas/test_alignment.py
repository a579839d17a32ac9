"""Alignment, drift, meeting levels and aim against worked numbers and laws."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import alignment

DISTANCES = st.floats(1, 200)


@pytest.mark.source(
    "by hand: (60 - 12) m / 343.2 m/s = 139.86 ms; a reference manual of sound system design adds"
    " 20 ms under a balcony"
)
def test_delay_of_a_fill_under_a_balcony() -> None:
    plain = alignment.alignment_delay_ms(
        reference_distance_m=60, fill_distance_m=12, speed_m_s=343.2
    )
    late = alignment.alignment_delay_ms(
        reference_distance_m=60,
        fill_distance_m=12,
        speed_m_s=343.2,
        offset_ms=20,
        reference_delay_ms=5,
    )
    assert plain == pytest.approx(139.86, abs=0.005)
    assert late - plain == pytest.approx(25)


@pytest.mark.source(
    "by hand: a front fill 3 m from a seat, arrays at 2 m: -1 m / 343.2 m/s = -2.91 ms, so the"
    " arrays are the ones to delay"
)
def test_a_fill_that_would_have_to_speak_first() -> None:
    assert alignment.alignment_delay_ms(
        reference_distance_m=2, fill_distance_m=3, speed_m_s=343.2
    ) == pytest.approx(-2.91, abs=0.005)


@pytest.mark.source(
    "by hand with c = 20.05 sqrt(T): 334.3 m/s at 5 °C and 351.9 at 35 °C; 40 m: 119.65 and 113.68"
    " ms against 116.55 at 20 °C"
)
def test_drift_from_a_cold_evening_to_a_hot_noon() -> None:
    drift = alignment.alignment_drift(reference_distance_m=50, fill_distance_m=10, set_at_c=20)
    assert [row.temperature_c for row in drift] == [5, 10, 15, 20, 25, 30, 35]
    assert drift[0].reference_late_ms == pytest.approx(119.65 - 116.55, abs=0.01)
    assert drift[3].reference_late_ms == 0
    assert drift[-1].reference_late_ms == pytest.approx(113.68 - 116.55, abs=0.01)


@pytest.mark.source(
    "by hand: 6.02 dB weaker and 30 m in front: at 30 m beyond, 60 m against 30 m is 6.02 dB; 20 dB"
    " weaker: 30/9 = 3.33 m"
)
def test_where_the_main_loudspeaker_is_as_loud_again() -> None:
    assert alignment.equal_level_distance_m(
        main_level_db=106.0206, fill_level_db=100, separation_m=30
    ) == pytest.approx(30, abs=0.001)
    assert alignment.equal_level_distance_m(
        main_level_db=120, fill_level_db=100, separation_m=30
    ) == pytest.approx(3.33, abs=0.005)
    assert (
        alignment.equal_level_distance_m(main_level_db=100, fill_level_db=100, separation_m=30)
        is None
    )


@pytest.mark.source("by hand: 2 d tan 45 = 2 d for 90 degrees; 2 * 20 * tan 30 = 23.09 m for 60")
def test_coverage_edge() -> None:
    assert alignment.coverage_edge_m(10, coverage_deg=90) == pytest.approx(20)
    assert alignment.coverage_edge_m(20, coverage_deg=60) == pytest.approx(23.09, abs=0.005)


@pytest.mark.source(
    "by hand: from 10 m down to ears at 1.2 m, 8.8 m away, is -45 degrees; up to a balcony at 14 m,"
    " 40 m away, is atan 0.1 = 5.71"
)
def test_aim_to_first_and_last_row() -> None:
    aim = alignment.vertical_aim(
        source_height_m=10, first_row_m=8.8, first_ear_m=1.2, last_row_m=40, last_ear_m=14
    )
    assert (aim.first_row_deg, aim.last_row_deg, aim.spread_deg) == pytest.approx(
        (-45, 5.71, 50.71), abs=0.005
    )


@pytest.mark.source(
    "by hand: a seat at 45 degrees is 35 degrees off an aim of 10; across the seam of 180 degrees"
    " it stays small"
)
def test_a_seat_off_the_aim() -> None:
    assert alignment.off_axis_deg(azimuth_deg=10, ahead_m=5, aside_m=5) == pytest.approx(35)
    assert alignment.off_axis_deg(
        azimuth_deg=170, ahead_m=-1, aside_m=-math.tan(math.radians(10))
    ) == pytest.approx(20)


@pytest.mark.law
@given(DISTANCES, DISTANCES, st.floats(300, 360), st.floats(0, 30))
def test_delay_and_travel_meet(
    reference_m: float, fill_m: float, speed_m_s: float, offset_ms: float
) -> None:
    delay_ms = alignment.alignment_delay_ms(
        reference_distance_m=reference_m,
        fill_distance_m=fill_m,
        speed_m_s=speed_m_s,
        offset_ms=offset_ms,
    )
    assert delay_ms + 1000 * fill_m / speed_m_s - 1000 * reference_m / speed_m_s == pytest.approx(
        offset_ms, abs=1e-9
    )


@pytest.mark.law
@given(DISTANCES, st.floats(0.1, 30), st.floats(60, 120))
def test_levels_are_equal_where_they_meet(
    separation_m: float, stronger_db: float, fill_db: float
) -> None:
    found = alignment.equal_level_distance_m(
        main_level_db=fill_db + stronger_db, fill_level_db=fill_db, separation_m=separation_m
    )
    assert found is not None
    assert stronger_db - 20 * math.log10(separation_m + found) == pytest.approx(
        -20 * math.log10(found), abs=1e-6
    )


@pytest.mark.law
def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="coverage_deg must be above 0 and below 180, got 180"):
        alignment.coverage_edge_m(10, coverage_deg=180)
    with pytest.raises(ValueError, match="last_row_m must be above first_row_m 10, got 9"):
        alignment.vertical_aim(
            source_height_m=8, first_row_m=10, first_ear_m=1, last_row_m=9, last_ear_m=1
        )
    with pytest.raises(ValueError, match="ahead_m and aside_m must not both be 0"):
        alignment.off_axis_deg(azimuth_deg=0, ahead_m=0, aside_m=0)
