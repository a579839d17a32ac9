"""Trims, low steel and maker's tables: by hand, and never beyond what was stated."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.trim import allowable_load_kg, highest_trim_m, low_steel_m

BEAM = ((0.0, 8.2), (6.0, 8.8), (12.0, 8.5))
TABLE = ((4.0, 1200.0), (6.0, 800.0), (8.0, 400.0), (12.0, 100.0))


@pytest.mark.source(
    "by hand: 22 ft 6 in of steel less a 4 ft pick and a 14 ft array leaves 4 ft 6 in"
)
def test_the_lowest_box_of_an_array() -> None:
    assert highest_trim_m(low_steel_m=22.5, parts_m=(4, 14)) == pytest.approx(4.5)
    assert highest_trim_m(low_steel_m=5, parts_m=()) == 5
    assert highest_trim_m(low_steel_m=5, parts_m=(2, 4)) == pytest.approx(-1)


@pytest.mark.source(
    "by hand: halfway between 8.2 and 8.8 m is 8.5 m; a third of the way from 8.8 to 8.5 m is 8.7 m"
)
@pytest.mark.parametrize(("at", "height"), [(0, 8.2), (3, 8.5), (6, 8.8), (8, 8.7), (12, 8.5)])
def test_low_steel_along_a_beam(at: float, height: float) -> None:
    assert low_steel_m(at_m=at, stations=BEAM) == pytest.approx(height)


@pytest.mark.source("by hand: nothing is known beyond the stations")
@pytest.mark.parametrize("at", [-0.1, 12.1])
def test_low_steel_outside_the_survey_is_refused(at: float) -> None:
    with pytest.raises(ValueError, match=r"at_m must be within stations, 0\.0 to 12\.0 m, got"):
        low_steel_m(at_m=at, stations=BEAM)


@pytest.mark.source(
    "by hand: rows as printed; 1200 and 800 kg at 4 and 6 m are 4800/l, 960 kg at 5 m; a straight"
    " line would say 1000"
)
@pytest.mark.parametrize(("span", "load"), [(4, 1200), (5, 960), (6, 800), (12, 100), (10, 160)])
def test_allowable_load_by_span(span: float, load: float) -> None:
    assert allowable_load_kg(span_m=span, table=TABLE) == pytest.approx(load)


@pytest.mark.source("by hand: a table is read inwards only, and its loads fall")
def test_a_table_refuses_what_it_does_not_hold() -> None:
    with pytest.raises(ValueError, match=r"span_m must be within table, 4\.0 to 12\.0 m, got 3\.9"):
        allowable_load_kg(span_m=3.9, table=TABLE)
    with pytest.raises(ValueError, match="table must not allow more at a longer span"):
        allowable_load_kg(span_m=5, table=((4, 100), (6, 200)))
    with pytest.raises(ValueError, match="table must hold rising places, got"):
        allowable_load_kg(span_m=5, table=((6, 200), (6, 100)))
    with pytest.raises(ValueError, match="stations must hold rising places, got"):
        low_steel_m(at_m=0, stations=())
    with pytest.raises(ValueError, match="parts_m must be a number of at least 0, got -1"):
        highest_trim_m(low_steel_m=5, parts_m=(1, -1))
    assert low_steel_m(at_m=2, stations=((2, 7),)) == 7
    assert allowable_load_kg(span_m=8, table=((6, 200), (8, 0))) == 0
    assert allowable_load_kg(span_m=7, table=((6, 200), (8, 0))) == 0
    assert allowable_load_kg(span_m=9, table=((6, 200), (8, 0), (10, 0))) == 0


@pytest.mark.law
@given(st.floats(3, 18), st.floats(0.5, 6), st.floats(0, 1), st.sampled_from((1, 2, 3)))
def test_between_two_rows_no_more_is_promised_than_a_curve_that_falls_as_a_power(
    start: float, gap: float, share: float, power: int
) -> None:
    span = start + share * gap
    table = tuple((at, 5000 / at**power) for at in (start, start + gap))
    if span > start + gap:
        return
    found = allowable_load_kg(span_m=span, table=table)
    assert table[1][1] - 1e-9 <= found <= 5000 / span**power * (1 + 1e-12)


@pytest.mark.law
@given(st.floats(0, 12), st.floats(0, 5))
def test_a_longer_part_never_raises_the_trim(at: float, part: float) -> None:
    steel = low_steel_m(at_m=at, stations=BEAM)
    assert highest_trim_m(low_steel_m=steel, parts_m=(part, 1)) <= highest_trim_m(
        low_steel_m=steel, parts_m=(1,)
    )
