"""Arcs of subwoofers against closed forms, printed practice and laws."""

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


@pytest.mark.source(
    "by hand: r = 4.2 / sin 45 = 5.940 m; depth of ±0.6, 1.8, 3.0, 4.2 m behind the chord over 343"
    " m/s, inner first"
)
def test_delay_table_of_eight_subs() -> None:
    assert subs.arc_radius_m(ROW, arc_deg=90) == pytest.approx(5.940, abs=0.0005)
    assert arc(90) == pytest.approx([4.983, 2.283, 0.726, 0, 0, 0.726, 2.283, 4.983], abs=0.0006)


@pytest.mark.source(
    "omnidirectional sum evaluated outside the project (numpy), 8 subs at 1.2 m, 63 Hz, c = 343"
    " m/s; tapered rows are said to lose 3 to 9 dB"
)
@pytest.mark.parametrize(
    ("arc_deg", "width_deg", "loss_db"),
    [(0, 40.2, 0), (60, 44.9, 1.1), (90, 108.7, 2.6), (120, 144.3, 5.3)],
)
def test_width_and_loss_of_arcs(arc_deg: float, width_deg: float, loss_db: float) -> None:
    found = subs.coverage_width_deg(ROW, arc(arc_deg), frequency_hz=63, speed_m_s=C)
    assert found == pytest.approx(width_deg, abs=0.06)
    assert subs.on_axis_loss_db(ROW, arc(arc_deg), frequency_hz=63, speed_m_s=C) == pytest.approx(
        loss_db, abs=0.05
    )


@pytest.mark.source(
    "from memory: sin(theta) = lambda/(N d): four in phase, half a wavelength apart: first null at"
    " 30 deg; scipy 1.17.1: eight: -3.01 dB at 12.80 deg full width"
)
def test_array_factor_of_sources_in_phase() -> None:
    half_wave_m = 0.5
    four, eight = ([half_wave_m * i for i in range(n)] for n in (4, 8))
    assert subs.far_field_db(four, [0.0] * 4, frequency_hz=C, angle_deg=30, speed_m_s=C) < -200
    edge_db = subs.far_field_db(eight, [0.0] * 8, frequency_hz=C, angle_deg=6.40, speed_m_s=C)
    assert edge_db == pytest.approx(-3.01, abs=0.01)


@pytest.mark.source(
    "from memory: Balanis 2005, (6-10): |sin(N psi/2) / (N sin(psi/2))|, psi = k d sin(theta)"
)
@given(st.integers(2, 12), st.floats(-89, 89), st.floats(20, 200), st.floats(0.3, 4))
def test_array_factor_closed_form(
    count: int, angle_deg: float, frequency_hz: float, spacing_m: float
) -> None:
    half_psi = math.pi * frequency_hz * spacing_m * math.sin(math.radians(angle_deg)) / C
    if abs(math.sin(half_psi)) < 1e-6:
        return
    closed = abs(math.sin(count * half_psi) / (count * math.sin(half_psi)))
    places = [i * spacing_m for i in range(count)]
    found_db = subs.far_field_db(
        places, [0.0] * count, frequency_hz=frequency_hz, angle_deg=angle_deg, speed_m_s=C
    )
    assert 10 ** (found_db / 20) == pytest.approx(closed, abs=1e-9)


@pytest.mark.law
@given(st.floats(1, 180), st.floats(20, 120), st.floats(0, 90), st.floats(-20, 20))
def test_a_symmetric_row_has_a_symmetric_pattern(
    arc_deg: float, frequency_hz: float, angle_deg: float, later_ms: float
) -> None:
    left, right, shifted = (
        subs.far_field_db(
            ROW,
            [delay + shift for delay in arc(arc_deg)],
            frequency_hz=frequency_hz,
            angle_deg=angle,
            speed_m_s=C,
        )
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
def test_a_single_sub_covers_all_round() -> None:
    assert subs.coverage_width_deg([0.0], [0.0], frequency_hz=63, speed_m_s=C) is None


@pytest.mark.law
def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="arc_deg must be above 0 and at most 180, got 181"):
        subs.arc_radius_m(ROW, arc_deg=181)
    with pytest.raises(ValueError, match=r"radius_m must be at least half the row, 4\.2, got 4"):
        subs.arc_delays_ms(ROW, radius_m=4, speed_m_s=C)
    with pytest.raises(
        ValueError, match="delays_ms must hold one delay for each of 8 places, got 1"
    ):
        subs.far_field_db(ROW, [0], frequency_hz=63, angle_deg=0, speed_m_s=C)
