"""Ampacity of flexible feeders by the tables of the American code."""

import pytest

from builder.formulas.ampacity import flexible_feeder_a, loaded_conductors_factor


@pytest.mark.source("NFPA 70, table 400.5(A)(2), type W, 90 °C, one conductor, as transcribed by cable makers")
@pytest.mark.parametrize(("size", "ampere"), [("4 AWG", 140), ("2 AWG", 190), ("1 AWG", 220), ("1/0", 260), ("2/0", 300), ("4/0", 405)])
def test_single_flexible_conductors(size: str, ampere: float) -> None:
    assert flexible_feeder_a(size, loaded=3, terminals_75c=False) == ampere


@pytest.mark.source("NFPA 70, table 400.5(A)(3): 4 conductors 0.8, 10 conductors 0.5; 1 to 3 at full, 7 to 9 at 0.7")
@pytest.mark.parametrize(("loaded", "factor"), [(1, 1), (3, 1), (4, 0.8), (7, 0.7), (10, 0.5), (20, 0.5)])
def test_conductors_together(loaded: int, factor: float) -> None:
    assert loaded_conductors_factor(loaded) == factor


@pytest.mark.source("NFPA 70, table 310.16 and 110.14(C): a 405 A cable on 75 °C lugs is held to 230 A")
def test_the_lug_binds_before_the_cable() -> None:
    assert flexible_feeder_a("4/0", loaded=3, terminals_75c=True) == 230


@pytest.mark.source("NFPA 70, table 310.16, copper at 75 °C: 8 AWG 50 A, 4 AWG 85 A, 2 AWG 115 A, less than the cable's own 80, 140 and 190 A")
@pytest.mark.parametrize(("size", "ampere"), [("8 AWG", 50), ("4 AWG", 85), ("2 AWG", 115)])
def test_lugs_of_smaller_feeders(size: str, ampere: float) -> None:
    assert flexible_feeder_a(size, loaded=3, terminals_75c=True) == ampere


@pytest.mark.source("by hand from tables 400.5(A)(2) and (3): 0.8 * 405 = 324 A; 0.5 * 140 = 70 A, then less than the lug's 85 A")
def test_many_loaded_conductors_lower_the_cable_before_the_lug() -> None:
    assert flexible_feeder_a("4/0", loaded=4, terminals_75c=False) == pytest.approx(324)
    assert flexible_feeder_a("4 AWG", loaded=10, terminals_75c=True) == pytest.approx(70)


@pytest.mark.source("from memory: NFPA 70, table 400.5(A)(2), type W, 90 °C: 8 AWG 80 A, 6 AWG 105 A")
@pytest.mark.parametrize(("size", "ampere"), [("8 AWG", 80), ("6 AWG", 105)])
def test_small_flexible_conductors(size: str, ampere: float) -> None:
    assert flexible_feeder_a(size, loaded=1, terminals_75c=False) == ampere


@pytest.mark.law
def test_sizes_and_numbers_out_of_the_tables_are_refused() -> None:
    with pytest.raises(ValueError, match="loaded must be 1 to 20, got 21"):
        loaded_conductors_factor(21)
    with pytest.raises(ValueError, match=r"size must be one of 8 AWG, .*, got '3 AWG'"):
        flexible_feeder_a("3 AWG", loaded=3, terminals_75c=False)
    with pytest.raises(ValueError, match=r"where lugs are marked 75 °C, got '1 AWG'"):
        flexible_feeder_a("1 AWG", loaded=3, terminals_75c=True)
