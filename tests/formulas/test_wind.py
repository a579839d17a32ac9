"""Wind pressure and force against published examples."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.wind import wind_force_n, wind_pressure_pa


@pytest.mark.source(
    "EN 1991-1-4 4.5 (1) in Steel Buildings in Europe, Single-storey, Part 3, App. B worked"
    " example: 26 m/s, 1.25 kg/m3: 422.5 N/m2"
)
def test_basic_velocity_pressure() -> None:
    assert wind_pressure_pa(speed_m_s=26, air_density_kg_m3=1.25) == pytest.approx(422.5, abs=0.05)


@pytest.mark.source("ASCE 7 velocity pressure constant in SI, 0.613 V^2, for air of 1.225 kg/m3")
def test_standard_atmosphere() -> None:
    assert wind_pressure_pa(speed_m_s=1, air_density_kg_m3=1.225) == pytest.approx(
        0.613, abs=0.0005
    )


@pytest.mark.source("by hand: 250 N/m2 at 20 m/s on 12 m2 with a coefficient of 1.3 is 3900 N")
def test_force_on_an_area() -> None:
    pressure = wind_pressure_pa(speed_m_s=20, air_density_kg_m3=1.25)
    assert wind_force_n(pressure_pa=pressure, force_coefficient=1.3, area_m2=12) == pytest.approx(
        3900
    )


@pytest.mark.source("by hand: what is no wind")
def test_wind_refuses_negative_values() -> None:
    with pytest.raises(ValueError, match="speed_m_s must be a number of at least 0, got -1"):
        wind_pressure_pa(speed_m_s=-1, air_density_kg_m3=1.25)
    with pytest.raises(ValueError, match="air_density_kg_m3 must be a number above 0, got 0"):
        wind_pressure_pa(speed_m_s=1, air_density_kg_m3=0)
    with pytest.raises(ValueError, match="area_m2 must be a number of at least 0, got -2"):
        wind_force_n(pressure_pa=1, force_coefficient=1, area_m2=-2)


@pytest.mark.law
@given(st.floats(0, 60), st.floats(0.9, 1.4))
def test_twice_the_speed_is_four_times_the_pressure(speed: float, density: float) -> None:
    once = wind_pressure_pa(speed_m_s=speed, air_density_kg_m3=density)
    assert wind_pressure_pa(speed_m_s=2 * speed, air_density_kg_m3=density) == pytest.approx(
        4 * once
    )
