"""What feeders may carry, by the tables of two codes."""

import pytest

from builder.formulas.ampacity import (
    B_52_A,
    INSULATIONS,
    METALS,
    SIZES_MM2,
    WAYS_LAID,
    american_feeder_a,
    largest_breaker_a,
    metric_feeder_a,
)


@pytest.mark.source(
    "IEC 60364-5-52:2009, tables B.52.4, B.52.5, B.52.10 to B.52.13, as several open copies"
    " print them"
)
@pytest.mark.parametrize(
    ("area_mm2", "metal", "insulation", "laid", "ampere"),
    [
        (16, "copper", "PVC", "in a wall", 52),
        (16, "copper", "PVC", "in conduit", 62),
        (16, "copper", "PVC", "on a wall", 76),
        (16, "copper", "PVC", "in free air", 80),
        (50, "copper", "XLPE", "in conduit", 154),
        (50, "copper", "XLPE", "in free air", 192),
        (240, "copper", "XLPE", "on a wall", 500),
        (95, "aluminium", "PVC", "on a wall", 170),
        (95, "aluminium", "XLPE", "in free air", 227),
    ],
)
def test_a_cable_of_several_cores(
    area_mm2: float, metal: str, insulation: str, laid: str, ampere: float
) -> None:
    assert metric_feeder_a(area_mm2, metal=metal, insulation=insulation, laid=laid) == ampere


@pytest.mark.law
def test_more_metal_better_insulation_and_more_air_carry_more_and_aluminium_less() -> None:
    assert len(B_52_A) == len(METALS) * len(INSULATIONS) * len(WAYS_LAID)
    for (metal, insulation, laid), row in B_52_A.items():
        assert len(row) == len(SIZES_MM2)
        assert list(row) == sorted(row)
        if insulation == "PVC":
            assert all(a < b for a, b in zip(row, B_52_A[metal, "XLPE", laid], strict=True))
        if metal == "copper":
            other = B_52_A["aluminium", insulation, laid]
            assert all(0.72 < b / a < 0.85 for a, b in zip(row, other, strict=True))
        if laid != WAYS_LAID[-1]:
            freer = B_52_A[metal, insulation, WAYS_LAID[WAYS_LAID.index(laid) + 1]]
            assert all(a <= b for a, b in zip(row, freer, strict=True))


@pytest.mark.source(
    "NFPA 70, tables 310.16 (75 °C) and 400.5(A)(2), in several copies: 4/0 of type W in three"
    " 316 A, held to 230 A by 75 °C lugs; aluminium 4/0 180 A"
)
def test_american_sizes_are_held_by_their_lugs() -> None:
    assert american_feeder_a("4/0", metal="copper", flexible=True) == 230
    assert american_feeder_a("2 AWG", metal="copper", flexible=True) == 115
    assert american_feeder_a("4/0", metal="aluminium", flexible=False) == 180
    assert american_feeder_a("500 kcmil", metal="copper", flexible=False) == 380


@pytest.mark.source(
    "NFPA 70, 240.4(B), from memory: 180 A may stand behind 200 A, 380 A behind 400 A"
)
def test_the_next_usual_breaker_may_protect_a_feeder() -> None:
    assert [largest_breaker_a(a) for a in (180, 200, 380, 860)] == [200, 200, 400, 860]


@pytest.mark.law
def test_what_is_in_no_table_is_refused() -> None:
    with pytest.raises(ValueError, match=r"area_mm2 must be one of 2.5, .*, got 17"):
        metric_feeder_a(17, metal="copper", insulation="PVC", laid="in conduit")
    with pytest.raises(ValueError, match="must be of the table, got steel, PVC, in conduit"):
        metric_feeder_a(16, metal="steel", insulation="PVC", laid="in conduit")
    with pytest.raises(ValueError, match="size must be one of the tables for steel, got '4/0'"):
        american_feeder_a("4/0", metal="steel", flexible=False)
    with pytest.raises(ValueError, match="size must be one of the tables for aluminium, got '4/0'"):
        american_feeder_a("4/0", metal="aluminium", flexible=True)
