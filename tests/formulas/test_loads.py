"""Loads on a body: sums, centres, the dynamic factor and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import loads as hung
from builder.formulas.loads import PointLoad, UniformLoad


@pytest.mark.source(
    "by hand: 100 kg at 1 m and 50 kg/m over 3 to 5 m are 200 kg, as far from 1 m as from 4 m"
)
def test_the_whole_load_and_its_centre() -> None:
    loads = [PointLoad(1, 100), UniformLoad(3, 5, 50)]
    assert hung.total_load_kg(loads) == pytest.approx(200)
    assert hung.centre_of_mass_m(loads) == pytest.approx(2.5)
    assert hung.total_load_kg([]) == 0


@pytest.mark.source("by hand: 500 kg at 1.2 is 600 kg")
def test_a_dynamic_factor_is_an_input_of_at_least_one() -> None:
    assert hung.dynamic_load_kg(load_kg=500, dynamic_factor=1.2) == pytest.approx(600)
    assert hung.dynamic_load_kg(load_kg=500, dynamic_factor=1) == 500
    with pytest.raises(ValueError, match=r"dynamic_factor must be at least 1, got 0\.9"):
        hung.dynamic_load_kg(load_kg=500, dynamic_factor=0.9)


@pytest.mark.source("by hand: a load is a weight at a place on a stretch that has length")
def test_loads_refuse_what_is_no_load() -> None:
    with pytest.raises(ValueError, match="load_kg must be a number of at least 0, got -1"):
        PointLoad(0, -1)
    with pytest.raises(ValueError, match="to_m must be above from_m 2, got 2"):
        UniformLoad(2, 2, 5)
    with pytest.raises(ValueError, match="loads must weigh more than 0 kg together"):
        hung.centre_of_mass_m([])


places = st.floats(-10, 50)
weights = st.floats(0, 2000)


@pytest.mark.law
@given(st.lists(st.builds(PointLoad, places, weights), min_size=1, max_size=6), st.floats(1, 3))
def test_the_centre_is_among_the_loads_and_a_factor_does_not_move_it(
    loads: list[PointLoad], factor: float
) -> None:
    if hung.total_load_kg(loads) < 1:
        return
    centre_m = hung.centre_of_mass_m(loads)
    assert (
        min(load.at_m for load in loads) - 1e-9
        <= centre_m
        <= max(load.at_m for load in loads) + 1e-9
    )
    lifted = [
        PointLoad(load.at_m, hung.dynamic_load_kg(load_kg=load.load_kg, dynamic_factor=factor))
        for load in loads
    ]
    assert hung.centre_of_mass_m(lifted) == pytest.approx(centre_m, abs=1e-9)
