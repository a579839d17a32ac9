"""Pistons, lines and coverage angles against scipy, closed forms and laws."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import directivity


@pytest.mark.source(
    "scipy 1.17.1, 2 J1(x)/x: first null at 3.8317, first side lobe -17.57 dB; -3 dB at 1.6163, -6"
    " dB at 2.2151"
)
def test_landmarks_of_the_piston() -> None:
    marks = directivity.piston_response(np.array([0.0, 1.6163, 2.2151, 3.8317]))
    assert marks == pytest.approx([1, math.sqrt(0.5), 0.5, 0], abs=5e-5)
    lobe = np.min(directivity.piston_response(np.linspace(3.9, 7, 1000)))
    assert 20 * math.log10(-lobe) == pytest.approx(-17.57, abs=0.005)


@pytest.mark.source(
    "scipy root of sin(x)/x = 1/2: 1.8955, so sin(theta) = 0.6034 lambda/L; the 1992 paper rounds"
    " to 0.6"
)
def test_width_of_the_line() -> None:
    assert directivity.line_response(np.array([0.0, 1.8955, math.pi])) == pytest.approx(
        [1, 0.5, 0], abs=5e-5
    )


@pytest.mark.source(
    "by hand: on logarithmic scales the middle of 100 deg at 500 Hz and 25 deg at 8 kHz is 50 deg"
    " at 2 kHz"
)
def test_coverage_between_stated_bands() -> None:
    stated = [(500.0, 100.0), (8000.0, 25.0)]
    found = [
        directivity.coverage_at_deg(stated, frequency_hz=f) for f in (100, 500, 2000, 8000, 16_000)
    ]
    assert found == pytest.approx([100, 100, 50, 25, 25])


@pytest.mark.law
@given(st.floats(1, 359))
def test_coverage_is_6_db_down_at_half_its_angle(coverage_deg: float) -> None:
    angles = np.radians([0, coverage_deg / 2, -coverage_deg / 2])
    found = directivity.coverage_response(angles, coverage_deg=coverage_deg)
    assert found == pytest.approx([1, 0.5, 0.5])


@pytest.mark.law
@given(st.floats(1, 360), st.floats(0, math.pi), st.floats(0, math.pi))
def test_coverage_falls_with_the_angle(
    coverage_deg: float, one_rad: float, other_rad: float
) -> None:
    near, far = directivity.coverage_response(
        np.array(sorted((one_rad, other_rad))), coverage_deg=coverage_deg
    )
    assert near >= far >= 0


@pytest.mark.law
def test_all_round_is_the_same_everywhere() -> None:
    assert directivity.coverage_response(
        np.array([0.0, 1.0, math.pi]), coverage_deg=360
    ) == pytest.approx([1, 1, 1])


@pytest.mark.law
def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="coverage_deg must be above 0 and at most 360, got 361"):
        directivity.coverage_exponent(361)
    with pytest.raises(ValueError, match="stated must hold coverage at rising frequencies"):
        directivity.coverage_at_deg([(2000, 50), (1000, 60)], frequency_hz=1000)
    with pytest.raises(ValueError, match="stated must hold coverage at rising frequencies, got"):
        directivity.coverage_at_deg([], frequency_hz=1000)


@pytest.mark.source(
    "by hand: a box that is stated to cover 360 degrees in every band covers 360 degrees between"
    " them, and radiates alike all round"
)
@pytest.mark.parametrize("frequency_hz", [125.0, 700.0, 16_000.0])
def test_all_round_stays_all_round_between_bands(frequency_hz: float) -> None:
    stated = ((250.0, 360.0), (1000.0, 360.0))
    assert directivity.coverage_at_deg(stated, frequency_hz=frequency_hz) == 360.0
