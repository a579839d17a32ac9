"""Conductor tables against what the codes print."""

import math

import pytest

from builder.formulas.conductors import BS_7671_FLEXIBLE_MV_PER_A_M, awg_conductor, flexible_conductor, metric_conductor

KM_PER_KFT = 0.3048


@pytest.mark.source("NFPA 70, chapter 9, table 8, stranded uncoated copper at 75 °C: ohm/kft")
@pytest.mark.parametrize(("size", "ohm_per_kft"), [("6 AWG", 0.491), ("2 AWG", 0.194), ("1/0", 0.122)])
def test_resistance_by_table_8(size: str, ohm_per_kft: float) -> None:
    assert awg_conductor(size).r_ohm_per_km * KM_PER_KFT == pytest.approx(ohm_per_kft, abs=5e-4)


@pytest.mark.source("NFPA 70, chapter 9, table 9, PVC conduit: R and X in ohm/kft; alternating current adds to R above 1/0")
@pytest.mark.parametrize(("size", "r", "x"), [("2/0", 0.10, 0.043), ("4/0", 0.062, 0.041), ("1/0", 0.12, 0.044)])
def test_large_conductors_by_table_9(size: str, r: float, x: float) -> None:
    conductor = awg_conductor(size)
    assert conductor.r_ohm_per_km * KM_PER_KFT == pytest.approx(r, abs=0.005)
    assert conductor.x_ohm_per_km * KM_PER_KFT == pytest.approx(x, abs=5e-4)


@pytest.mark.source("NFPA 70, chapter 9, table 9: its own column of effective Z at 0.85 power factor, ohm/kft")
@pytest.mark.parametrize(("size", "effective"), [("8 AWG", 0.69), ("6 AWG", 0.44), ("4 AWG", 0.29), ("2 AWG", 0.19)])
def test_effective_impedance_is_the_tables_own_column(size: str, effective: float) -> None:
    conductor = awg_conductor(size)
    ours = conductor.r_ohm_per_km * 0.85 + conductor.x_ohm_per_km * math.sqrt(1 - 0.85**2)
    assert ours * KM_PER_KFT == pytest.approx(effective, abs=0.005)


@pytest.mark.source("BS 7671, Table 4D2B: two-core 2.5 mm² loses 18 mV/A/m, which is twice 22.5/2.5")
def test_annex_g_gives_the_table_value_of_small_cable() -> None:
    assert 2 * metric_conductor(2.5).r_ohm_per_km == pytest.approx(18, abs=0.5)


@pytest.mark.source("BS 7671, Table 4F2B: 35 mm² flexible 1.22 mV/A/m, 0.704 ohm/km; Annex G alone gives 0.643, about 10 % low")
def test_hot_flexible_cable_has_more_resistance_than_annex_g() -> None:
    assert flexible_conductor(35).r_ohm_per_km == pytest.approx(0.704, abs=5e-4)
    assert metric_conductor(35).r_ohm_per_km == pytest.approx(0.643, abs=5e-4)


@pytest.mark.source("BS 7671, Table 4F2B: z of 50, 70 and 120 mm² is 0.93, 0.64 and 0.39 mV/A/m")
@pytest.mark.parametrize(("area_mm2", "z"), [(50, 0.93), (70, 0.64), (120, 0.39)])
def test_flexible_impedance_is_the_tables_z(area_mm2: int, z: float) -> None:
    conductor = flexible_conductor(area_mm2)
    assert math.sqrt(3) * math.hypot(conductor.r_ohm_per_km, conductor.x_ohm_per_km) == pytest.approx(z, abs=0.0105)


@pytest.mark.law
def test_larger_conductors_have_less_resistance() -> None:
    flexible = [flexible_conductor(area).r_ohm_per_km for area in BS_7671_FLEXIBLE_MV_PER_A_M]
    assert flexible == sorted(flexible, reverse=True)


@pytest.mark.law
def test_sizes_that_no_table_has_are_refused() -> None:
    with pytest.raises(ValueError, match=r"size must be one of 14 AWG, .*, got '5 AWG'"):
        awg_conductor("5 AWG")
    with pytest.raises(ValueError, match=r"area_mm2 must be one of 4, .*, got 30"):
        flexible_conductor(30)
    with pytest.raises(ValueError, match=r"area_mm2 must be a number above 0, got 0"):
        metric_conductor(0)
