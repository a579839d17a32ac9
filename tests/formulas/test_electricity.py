"""Apparent power and current against published values and laws."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import electricity as el

power_factors = st.floats(0.05, 1)


@pytest.mark.source(
    "from memory: S = sqrt(3) U I, textbook identity; 16 A 230 V = 3680 W is also printed in"
    " datasheets"
)
@pytest.mark.parametrize(
    ("current_a", "line_to_line_v", "kva", "tolerance"),
    [
        (400, 208, 144.1, 0.05),
        (200, 208, 72.05, 0.005),
        (400, 400, 277.1, 0.05),
        (125, 400, 86.6, 0.05),
        (63, 400, 43.6, 0.05),
        (32, 400, 22.2, 0.05),
        (16, 400, 11.1, 0.05),
    ],
)
def test_three_phase_apparent_power(
    current_a: float, line_to_line_v: float, kva: float, tolerance: float
) -> None:
    assert el.three_phase_kva(current_a=current_a, line_to_line_v=line_to_line_v) == pytest.approx(
        kva, abs=tolerance
    )


@pytest.mark.source(
    "from memory: S = U I, textbook identity; 16 A 230 V = 3680 W is also printed in datasheets"
)
@pytest.mark.parametrize(("current_a", "kva"), [(32, 7.36), (16, 3.68)])
def test_single_phase_apparent_power(current_a: float, kva: float) -> None:
    assert el.single_phase_kva(current_a=current_a, wire_to_wire_v=230) == pytest.approx(
        kva, abs=0.005
    )


@pytest.mark.source(
    "from memory: nominal 50 A 125/250 V shore power, 12.0 kVA at 120 V and 12.5 kVA at 125 V;"
    " arithmetic by hand"
)
@pytest.mark.parametrize(("line_to_neutral_v", "kva"), [(120, 12.0), (125, 12.5)])
def test_shore_power_is_two_halves(line_to_neutral_v: float, kva: float) -> None:
    assert el.split_phase_kva(current_a=50, line_to_neutral_v=line_to_neutral_v) == pytest.approx(
        kva, abs=0.005
    )


@pytest.mark.source(
    "by hand: 21.6 kW at 0.95 over three times 120 V is 63.2 A a line; 120 sqrt(3) is 207.8 V"
)
def test_a_rig_on_three_phases() -> None:
    kva = el.apparent_kva(active_kw=21.6, power_factor=0.95)
    assert el.current_on_three_phases_a(
        apparent_kva=kva, line_to_line_v=120 * math.sqrt(3)
    ) == pytest.approx(63.2, abs=0.05)
    assert el.line_to_line_from_neutral_v(line_to_neutral_v=120) == pytest.approx(207.8, abs=0.05)


@pytest.mark.source("by hand: 2.4 kVA is 20 A at 120 V and 11.54 A at 208 V")
def test_the_same_load_to_neutral_and_between_lines() -> None:
    assert el.current_on_one_phase_a(apparent_kva=2.4, line_to_neutral_v=120) == pytest.approx(20)
    assert el.current_between_two_phases_a(apparent_kva=2.4, line_to_line_v=208) == pytest.approx(
        11.54, abs=0.005
    )


@pytest.mark.law
@pytest.mark.parametrize("power_factor", [0, -0.1, 1.01, math.nan])
def test_a_power_factor_outside_its_range_is_refused(power_factor: float) -> None:
    with pytest.raises(ValueError, match=r"power_factor must be above 0 and at most 1, got"):
        el.apparent_kva(active_kw=1, power_factor=power_factor)


@pytest.mark.law
def test_currents_and_voltages_out_of_range_are_refused() -> None:
    with pytest.raises(ValueError, match=r"current_a must be a number of at least 0, got -1"):
        el.three_phase_kva(current_a=-1, line_to_line_v=400)
    with pytest.raises(ValueError, match=r"line_to_line_v must be a number above 0, got 0"):
        el.three_phase_kva(current_a=1, line_to_line_v=0)


@pytest.mark.law
@given(st.floats(0, 500), power_factors, st.floats(100, 700))
def test_kva_and_current_are_each_others_inverse(
    active_kw: float, power_factor: float, line_to_line_v: float
) -> None:
    kva = el.apparent_kva(active_kw=active_kw, power_factor=power_factor)
    back = el.three_phase_kva(
        current_a=el.current_on_three_phases_a(apparent_kva=kva, line_to_line_v=line_to_line_v),
        line_to_line_v=line_to_line_v,
    )
    assert back == pytest.approx(kva)
    assert kva * power_factor == pytest.approx(active_kw)
