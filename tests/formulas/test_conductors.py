"""Conductor tables against what the codes print."""

import math

import pytest

from builder.formulas.conductors import (
    BS_7671_FLEXIBLE_MV_PER_A_M,
    IEC_ALUMINIUM_20C_OHM_PER_KM,
    NEC_ALUMINIUM_OHM_PER_KFT,
    awg_aluminium,
    awg_conductor,
    flexible_conductor,
    metric_aluminium,
    metric_conductor,
)

KM_PER_KFT = 0.3048


@pytest.mark.source("NFPA 70, chapter 9, table 8, stranded uncoated copper at 75 °C: ohm/kft")
@pytest.mark.parametrize(
    ("size", "ohm_per_kft"), [("6 AWG", 0.491), ("2 AWG", 0.194), ("1/0", 0.122)]
)
def test_resistance_by_table_8(size: str, ohm_per_kft: float) -> None:
    assert awg_conductor(size).r_ohm_per_km * KM_PER_KFT == pytest.approx(ohm_per_kft, abs=5e-4)


@pytest.mark.source(
    "NFPA 70, chapter 9, table 9, PVC conduit: R and X in ohm/kft; alternating current adds to R"
    " above 1/0"
)
@pytest.mark.parametrize(
    ("size", "r", "x"), [("2/0", 0.10, 0.043), ("4/0", 0.062, 0.041), ("1/0", 0.12, 0.044)]
)
def test_large_conductors_by_table_9(size: str, r: float, x: float) -> None:
    conductor = awg_conductor(size)
    assert conductor.r_ohm_per_km * KM_PER_KFT == pytest.approx(r, abs=0.005)
    assert conductor.x_ohm_per_km * KM_PER_KFT == pytest.approx(x, abs=5e-4)


@pytest.mark.source(
    "NFPA 70, chapter 9, table 9: its own column of effective Z at 0.85 power factor, ohm/kft"
)
@pytest.mark.parametrize(
    ("size", "effective"), [("8 AWG", 0.69), ("6 AWG", 0.44), ("4 AWG", 0.29), ("2 AWG", 0.19)]
)
def test_effective_impedance_is_the_tables_own_column(size: str, effective: float) -> None:
    conductor = awg_conductor(size)
    ours = conductor.r_ohm_per_km * 0.85 + conductor.x_ohm_per_km * math.sqrt(1 - 0.85**2)
    assert ours * KM_PER_KFT == pytest.approx(effective, abs=0.005)


@pytest.mark.source(
    "BS 7671, Table 4D2B: two-core 2.5 mm² loses 18 mV/A/m, which is twice 22.5/2.5"
)
def test_annex_g_gives_the_table_value_of_small_cable() -> None:
    assert 2 * metric_conductor(2.5).r_ohm_per_km == pytest.approx(18, abs=0.5)


@pytest.mark.source(
    "BS 7671, Table 4F2B: 35 mm² flexible 1.22 mV/A/m, 0.704 ohm/km; Annex G alone gives 0.643,"
    " about 10 % low"
)
def test_hot_flexible_cable_has_more_resistance_than_annex_g() -> None:
    assert flexible_conductor(35).r_ohm_per_km == pytest.approx(0.704, abs=5e-4)
    assert metric_conductor(35).r_ohm_per_km == pytest.approx(0.643, abs=5e-4)


@pytest.mark.source("BS 7671, Table 4F2B: z of 50, 70 and 120 mm² is 0.93, 0.64 and 0.39 mV/A/m")
@pytest.mark.parametrize(("area_mm2", "z"), [(50, 0.93), (70, 0.64), (120, 0.39)])
def test_flexible_impedance_is_the_tables_z(area_mm2: int, z: float) -> None:
    conductor = flexible_conductor(area_mm2)
    assert math.sqrt(3) * math.hypot(
        conductor.r_ohm_per_km, conductor.x_ohm_per_km
    ) == pytest.approx(z, abs=0.0105)


@pytest.mark.source(
    "NFPA 70, chapter 9, tables 8 and 9 (PVC conduit), ohm/kft, in table copies; 14 AWG's 3.14 and"
    " 8 AWG's 0.778 from memory. R is the larger one"
)
@pytest.mark.parametrize(
    ("size", "table_8", "table_9", "reactance"),
    [
        ("14 AWG", 3.14, 3.1, 0.058),
        ("12 AWG", 1.98, 2.0, 0.054),
        ("10 AWG", 1.24, 1.2, 0.050),
        ("8 AWG", 0.778, 0.78, 0.052),
        ("6 AWG", 0.491, 0.49, 0.051),
        ("4 AWG", 0.308, 0.31, 0.048),
        ("3 AWG", 0.245, 0.25, 0.047),
        ("2 AWG", 0.194, 0.19, 0.045),
        ("1 AWG", 0.154, 0.15, 0.046),
        ("1/0", 0.122, 0.12, 0.044),
        ("2/0", 0.0967, 0.10, 0.043),
        ("3/0", 0.0766, 0.077, 0.042),
        ("4/0", 0.0608, 0.062, 0.041),
        ("250 kcmil", 0.0515, 0.052, 0.041),
        ("350 kcmil", 0.0367, 0.038, 0.040),
        ("500 kcmil", 0.0258, 0.027, 0.039),
    ],
)
def test_every_size_of_the_american_tables(
    size: str, table_8: float, table_9: float, reactance: float
) -> None:
    conductor = awg_conductor(size)
    assert conductor.r_ohm_per_km * KM_PER_KFT == pytest.approx(max(table_8, table_9), rel=1e-9)
    assert conductor.x_ohm_per_km * KM_PER_KFT == pytest.approx(reactance, rel=1e-9)
    assert conductor.citation.clause.endswith("from memory") == (size == "14 AWG")


@pytest.mark.source(
    "BS 7671:2018, Table 4F2B, three-phase flexible cable at 90 °C, in a table copy: mV/A/m (r from"
    " 25 mm²)"
)
@pytest.mark.parametrize(
    ("area_mm2", "millivolt"),
    [
        (4, 11.1),
        (6, 7.4),
        (10, 4.4),
        (16, 2.7),
        (25, 1.73),
        (35, 1.22),
        (50, 0.91),
        (70, 0.62),
        (95, 0.47),
        (120, 0.37),
    ],
)
def test_every_size_of_the_flexible_table(area_mm2: int, millivolt: float) -> None:
    assert math.sqrt(3) * flexible_conductor(area_mm2).r_ohm_per_km == pytest.approx(
        millivolt, rel=1e-9
    )


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


@pytest.mark.source(
    "NFPA 70, chapter 9, table 8: aluminium at 75 °C, ohm/km: 6 AWG 2.651, 2 AWG 1.047, 1/0 0.659,"
    " 4/0 0.328, 250 kcmil 0.278 (table 9 rounds up)"
)
@pytest.mark.parametrize(
    ("size", "ohm_per_km"),
    [("6 AWG", 2.651), ("2 AWG", 1.047), ("1/0", 0.659), ("4/0", 0.328), ("250 kcmil", 0.278)],
)
def test_american_aluminium(size: str, ohm_per_km: float) -> None:
    conductor = awg_aluminium(size)
    assert conductor.r_ohm_per_km == pytest.approx(ohm_per_km, rel=0.006)
    assert conductor.x_ohm_per_km == awg_conductor(size).x_ohm_per_km


@pytest.mark.source(
    "IEC 60228:2004, aluminium of class 2 at 20 °C: 16 mm² 1.91, 50 mm² 0.641, 240 mm² 0.125"
    " ohm/km; times 1.25 by hand"
)
@pytest.mark.parametrize(("area_mm2", "ohm_per_km"), [(16, 2.3875), (50, 0.80125), (240, 0.15625)])
def test_metric_aluminium(area_mm2: float, ohm_per_km: float) -> None:
    assert metric_aluminium(area_mm2).r_ohm_per_km == pytest.approx(ohm_per_km)


@pytest.mark.source(
    "resistivities at 20 °C, handbook: copper 0.017241, aluminium 0.028264 ohm mm²/m (IEC 60028,"
    " IEC 60889), a ratio of 1.64"
)
def test_aluminium_resists_as_much_more_as_its_metal_does() -> None:
    for size in NEC_ALUMINIUM_OHM_PER_KFT:
        assert awg_aluminium(size).r_ohm_per_km / awg_conductor(size).r_ohm_per_km == pytest.approx(
            1.64, rel=0.06
        )
    for area_mm2 in IEC_ALUMINIUM_20C_OHM_PER_KM:
        # Annex G gives copper one resistivity for all sizes; the table of conductors allows for
        # their lay, so it lies up to an eighth above.
        assert (
            1.55
            < metric_aluminium(area_mm2).r_ohm_per_km / metric_conductor(area_mm2).r_ohm_per_km
            < 1.85
        )


@pytest.mark.law
def test_aluminium_of_other_sizes_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^size must be one of 12 AWG, .* in aluminium, got '14 AWG'"
    ):
        awg_aluminium("14 AWG")
    with pytest.raises(ValueError, match=r"^area_mm2 must be one of 10, .* in aluminium, got 6$"):
        metric_aluminium(6)


@pytest.mark.source(
    "IEC 60228:2004, Table 1 and 2, nominal cross-sections of aluminium conductors from 10 mm²,"
    " from memory"
)
def test_the_aluminium_table_holds_the_nominal_sizes() -> None:
    assert list(IEC_ALUMINIUM_20C_OHM_PER_KM) == [
        *(10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300, 400, 500, 630)
    ]
