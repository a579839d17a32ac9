"""Occupants and exits by published factors."""

import pytest

from builder.formulas.audience import (
    GREEN_GUIDE_PER_M_MIN,
    IBC_M2_PER_PERSON,
    exit_capacity,
    occupants,
)

FT2 = 0.3048**2


@pytest.mark.source(
    "IBC 2015, table 1004.1.2: 10 000 ft² standing at 5 ft² is 2000 people; chairs 7, tables 15,"
    " stages 15 ft²"
)
@pytest.mark.parametrize(
    ("kind", "people"),
    [("standing", 2000), ("chairs", 1428), ("tables and chairs", 666), ("stage", 666)],
)
def test_people_on_ten_thousand_square_feet(kind: str, people: int) -> None:
    assert occupants(net_area_m2=10_000 * FT2, m2_per_person=IBC_M2_PER_PERSON[kind]) == people


@pytest.mark.source("HSG195, paragraph 87: 0.5 m² a person outdoors; by hand 100 m² is 200 people")
def test_outdoor_floor() -> None:
    assert occupants(net_area_m2=100, m2_per_person=0.5) == 200


@pytest.mark.source(
    "Guide to Safety at Sports Grounds as restated by Buckinghamshire Council: 16 m, 82 a metre and"
    " minute, 8 min: 10 496"
)
def test_exits_of_sixteen_metres() -> None:
    assert (
        exit_capacity(
            exit_width_m=16, people_per_m_min=GREEN_GUIDE_PER_M_MIN["level"], egress_min=8
        )
        == 10496
    )


@pytest.mark.source(
    "Guide to Safety at Sports Grounds as restated by Buckinghamshire Council: 66 a metre and"
    " minute on stairs; by hand 2.4 m, 8 min: 1267.2"
)
def test_stairs_take_fewer_and_nobody_by_halves() -> None:
    assert (
        exit_capacity(
            exit_width_m=2.4, people_per_m_min=GREEN_GUIDE_PER_M_MIN["stair"], egress_min=8
        )
        == 1267
    )


@pytest.mark.law
def test_numbers_out_of_range_are_refused() -> None:
    with pytest.raises(ValueError, match="m2_per_person must be a number above 0, got 0"):
        occupants(net_area_m2=1, m2_per_person=0)
    with pytest.raises(ValueError, match="exit_width_m must be a number of at least 0, got -1"):
        exit_capacity(exit_width_m=-1, people_per_m_min=82, egress_min=8)
