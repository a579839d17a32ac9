"""Voltage drop against published examples, a power flow library and laws."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import voltage_drop as vd
from builder.formulas.conductors import metric_conductor

FT = 0.3048
FOUR_OUGHT: dict[str, float] = {"r_ohm_per_km": 0.0608 / FT, "x_ohm_per_km": 0.041 / FT}


@pytest.mark.source(
    "by hand by the formula of IEC 60364-5-52, Annex G (its 0.08 ohm/km from memory): 35 mm², 100"
    " m, 100 A, cos 0.8: sqrt(3) * 100 * 0.1 * (22.5/35 * 0.8 + 0.08 * 0.6) = 9.74 V line to line;"
    " pandapower 3.5.6 finds 10.03 V for constant power, 102.6 A"
)
def test_annex_g_formula() -> None:
    c = metric_conductor(35)
    drop_v = vd.three_phase_drop_v(
        current_a=100,
        length_m=100,
        r_ohm_per_km=c.r_ohm_per_km,
        x_ohm_per_km=c.x_ohm_per_km,
        power_factor=0.8,
    )
    assert drop_v == pytest.approx(9.74, abs=0.005)


@pytest.mark.source(
    "jmollera/QED-GitHub example 7-1, 380 V, 630 A, 0.87, 400 m of 3 x (0.095 + j0.102) ohm/km;"
    " OpenDSS 0.14.5: 11.195 V L-N"
)
def test_approximate_and_exact_drop() -> None:
    feeder: dict[str, Any] = {
        "current_a": 630,
        "length_m": 400,
        "r_ohm_per_km": 0.095 / 3,
        "x_ohm_per_km": 0.102 / 3,
        "power_factor": 0.87,
    }
    assert vd.one_conductor_drop_v(**feeder) == pytest.approx(11.167, abs=0.0005)


@pytest.mark.source(
    "OpenDSS 0.14.5: 208Y/120, 300 ft of 4/0 (0.062 + j0.041 ohm/kft), 300 A at 0.85: 11.582 V L-L"
)
def test_four_ought_at_a_lagging_power_factor() -> None:
    drop_v = vd.three_phase_drop_v(
        current_a=300,
        length_m=300 * FT,
        r_ohm_per_km=0.062 / FT,
        x_ohm_per_km=0.041 / FT,
        power_factor=0.85,
    )
    assert drop_v == pytest.approx(11.58, abs=0.005)


@pytest.mark.source(
    "a web calculator multiplies by sqrt(3) R[ohm/kft] I L[m] / area; by the NEC's own units 200 A,"
    " 61 m, 4/0 is 4.21 V, not that 12 V"
)
def test_resistance_is_not_divided_by_area_again() -> None:
    drop_v = vd.three_phase_drop_v(current_a=200, length_m=200 * FT, power_factor=1, **FOUR_OUGHT)
    assert drop_v == pytest.approx(4.21, abs=0.005)


@pytest.mark.source(
    "by hand: single phase is out and back; 10 A, 50 m, 5 ohm/km: 5 V; 5 of 230 V is 2.17 %"
)
def test_single_phase_goes_out_and_back() -> None:
    drop_v = vd.single_phase_drop_v(
        current_a=10, length_m=50, r_ohm_per_km=5, x_ohm_per_km=0, power_factor=1
    )
    assert drop_v == pytest.approx(5)
    assert vd.drop_percent(drop_v=drop_v, base_v=230) == pytest.approx(2.17, abs=0.005)


feeders = st.fixed_dictionaries(
    {
        "current_a": st.floats(0, 400),
        "r_ohm_per_km": st.floats(0.01, 1),
        "x_ohm_per_km": st.floats(0, 0.2),
        "power_factor": st.floats(0.1, 1),
    }
)


@pytest.mark.law
@given(feeders, st.floats(0, 100), st.floats(0, 100))
def test_drop_never_falls_with_length(feeder: dict[str, Any], one_m: float, more_m: float) -> None:
    for drop in (vd.one_conductor_drop_v, vd.single_phase_drop_v, vd.three_phase_drop_v):
        assert drop(length_m=one_m + more_m, **feeder) >= drop(length_m=one_m, **feeder)
