"""Generators against makers' sheets, and laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.generators import (
    Consumption,
    DeratingStep,
    derating_factor,
    fuel_l,
    generator_loading,
    site_rating_kva,
)

HEIGHT = DeratingStep(starts_at=1000, per=500, loss_percent=3)
HEAT = DeratingStep(starts_at=40, per=5, loss_percent=3)
FUEL = [Consumption(0.25, 10.0), Consumption(0.5, 17.0), Consumption(1.0, 33.0)]


@pytest.mark.source("alternator sizing sheet and generator manual: 3 % per 500 m above 1000 m")
@pytest.mark.parametrize(
    ("height_m", "factor"), [(800, 1), (1000, 1), (1500, 0.97), (2000, 0.94), (2500, 0.91)]
)
def test_height(height_m: float, factor: float) -> None:
    assert derating_factor(height_m, HEIGHT) == pytest.approx(factor, abs=0.001)


@pytest.mark.source("alternator sizing sheet: 3 % per 5 °C above 40 °C")
@pytest.mark.parametrize(("air_c", "factor"), [(30, 1), (45, 0.97), (55, 0.91)])
def test_heat(air_c: float, factor: float) -> None:
    assert derating_factor(air_c, HEAT) == pytest.approx(factor, abs=0.001)


@pytest.mark.source(
    "alternator sizing sheet, note 4: multipliers are cumulative; 2500 m and 50 °C leave 0.855"
)
def test_height_and_heat_multiply() -> None:
    factors = [derating_factor(2500, HEIGHT), derating_factor(50, HEAT)]
    assert site_rating_kva(prime_kva=1000, factors=factors) == pytest.approx(855, abs=0.5)


@pytest.mark.source(
    "another maker's sheet: 3.5 % per 300 m above 1500 m; by hand 0.965 at 1800 m, so steps belong"
    " to the machine"
)
def test_another_machine_has_other_steps() -> None:
    assert derating_factor(1800, DeratingStep(1500, 300, 3.5)) == pytest.approx(0.965, abs=0.0005)


@pytest.mark.source(
    "by hand: 90 kW at unity on 100 kVA rated at 0.8 is 90 % of the alternator and 112.5 % of the"
    " engine"
)
def test_the_engine_can_bind_before_the_alternator() -> None:
    loading = generator_loading(load_kva=90, load_kw=90, site_kva=100)
    assert (loading.apparent_share, loading.active_share, loading.share) == pytest.approx(
        (0.9, 1.125, 1.125)
    )


@pytest.mark.source("by hand: halfway between 17 and 33 L/h is 25 L/h; four hours are 100 L")
def test_fuel_between_stated_figures() -> None:
    assert fuel_l(stated=FUEL, load_share=0.75, hours=4) == pytest.approx(100)
    assert fuel_l(stated=FUEL, load_share=0.25, hours=1) == pytest.approx(10)


@pytest.mark.law
@given(st.floats(-100, 5000), st.floats(0, 3000))
def test_higher_never_gives_more(height_m: float, more_m: float) -> None:
    assert derating_factor(height_m + more_m, HEIGHT) <= derating_factor(height_m, HEIGHT)


@pytest.mark.law
@given(st.floats(0.25, 1), st.floats(0, 0.7))
def test_more_load_never_burns_less_where_the_maker_says_so(share: float, more: float) -> None:
    assert (
        fuel_l(stated=FUEL, load_share=min(1, share + more), hours=1)
        >= fuel_l(stated=FUEL, load_share=share, hours=1) - 1e-9
    )
