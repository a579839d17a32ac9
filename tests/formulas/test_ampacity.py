"""Ampacity of flexible feeders by the tables of the American code."""

import pytest

from builder.formulas.ampacity import flexible_feeder_a, loaded_conductors_factor


@pytest.mark.source(
    "NFPA 70, table 400.5(A)(2), type W, 90 °C, one, two and three conductors, as cable makers'"
    " sheets print it"
)
@pytest.mark.parametrize(
    ("size", "amperes"),
    [
        ("8 AWG", (80, 74, 65)),
        ("6 AWG", (105, 99, 87)),
        ("4 AWG", (140, 130, 114)),
        ("2 AWG", (190, 174, 152)),
        ("1 AWG", (220, 202, 177)),
        ("1/0", (260, 234, 205)),
        ("2/0", (300, 271, 237)),
        ("4/0", (405, 361, 316)),
    ],
)
def test_flexible_conductors_apart_and_together(size: str, amperes: tuple[int, int, int]) -> None:
    assert (
        tuple(flexible_feeder_a(size, loaded=loaded, terminals_75c=False) for loaded in (1, 2, 3))
        == amperes
    )


@pytest.mark.source(
    "NFPA 70, table 400.5(A)(3): 4 conductors 0.8, 10 conductors 0.5; 1 to 3 at full, 7 to 9 at 0.7"
)
@pytest.mark.parametrize(
    ("loaded", "factor"), [(1, 1), (3, 1), (4, 0.8), (7, 0.7), (10, 0.5), (20, 0.5)]
)
def test_conductors_together(loaded: int, factor: float) -> None:
    assert loaded_conductors_factor(loaded) == factor


@pytest.mark.source(
    "NFPA 70, table 310.16 and 110.14(C): a cable of 405 A apart, 316 A together, is held to 230 A"
    " by 75 °C lugs"
)
def test_the_lug_binds_before_the_cable() -> None:
    assert [flexible_feeder_a("4/0", loaded=loaded, terminals_75c=True) for loaded in (1, 3)] == [
        230,
        230,
    ]


@pytest.mark.source(
    "NFPA 70, table 310.16, copper at 75 °C, in several copies; each is less than the cable's own"
)
@pytest.mark.parametrize(
    ("size", "ampere"),
    [
        ("8 AWG", 50),
        ("6 AWG", 65),
        ("4 AWG", 85),
        ("2 AWG", 115),
        ("1 AWG", 130),
        ("1/0", 150),
        ("2/0", 175),
    ],
)
def test_lugs_of_smaller_feeders(size: str, ampere: float) -> None:
    assert flexible_feeder_a(size, loaded=1, terminals_75c=True) == ampere


@pytest.mark.source(
    "by hand from tables 400.5(A)(2) and (3), of the ampacity of three: 0.8 * 316 = 252.8 A; 0.5 *"
    " 114 = 57 A, less than the lug's 85 A"
)
def test_many_loaded_conductors_lower_the_cable_before_the_lug() -> None:
    assert flexible_feeder_a("4/0", loaded=4, terminals_75c=False) == pytest.approx(252.8)
    assert flexible_feeder_a("4 AWG", loaded=10, terminals_75c=True) == pytest.approx(57)


@pytest.mark.law
def test_sizes_and_numbers_out_of_the_tables_are_refused() -> None:
    with pytest.raises(ValueError, match="loaded must be 1 to 20, got 21"):
        loaded_conductors_factor(21)
    with pytest.raises(ValueError, match=r"size must be one of 8 AWG, .*, got '3 AWG'"):
        flexible_feeder_a("3 AWG", loaded=3, terminals_75c=False)
