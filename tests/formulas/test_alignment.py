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
def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="ahead_m and aside_m must not both be 0"):
        alignment.off_axis_deg(azimuth_deg=0, ahead_m=0, aside_m=0)
