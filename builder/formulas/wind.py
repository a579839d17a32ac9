"""
Wind on stated areas.

The levels at which a site alerts, lowers or clears are the site's own: none is assumed here.
Ballast against sliding and overturning is left out.
"""

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import EN_1991_1_4


@cites(EN_1991_1_4, "4.5 (1)", equation="q = rho v^2 / 2")
def wind_pressure_pa(*, speed_m_s: float, air_density_kg_m3: float) -> float:
    """
    Velocity pressure of a wind speed.

    Parameters
    ----------
    speed_m_s
        Wind speed; whether a gust or a mean is the plan's to say. [m/s]
    air_density_kg_m3
        Density of the air: 1.25 by EN 1991-1-4, 1.225 in a standard atmosphere at sea level.
        [kg/m³]

    Returns
    -------
    float
        Velocity pressure. [Pa]

    Raises
    ------
    ValueError
        If the speed is negative or the density is not above 0.

    Notes
    -----
    No gust, height, terrain or shelter factor: a mean speed over ten minutes understates what a
    gust does.
    """
    return (
        0.5
        * above_zero("air_density_kg_m3", air_density_kg_m3)
        * not_negative("speed_m_s", speed_m_s) ** 2
    )


@cites(
    EN_1991_1_4,
    "5.3, force by a force coefficient, structural factor left out",
    equation="F = q c A",
)
def wind_force_n(*, pressure_pa: float, force_coefficient: float, area_m2: float) -> float:
    """
    Force of the wind on one area.

    Parameters
    ----------
    pressure_pa
        Velocity pressure. [Pa]
    force_coefficient
        Force coefficient of the shape, from the maker or the standard. [-]
    area_m2
        Area the wind sees. [m²]

    Returns
    -------
    float
        Force along the wind. [N]

    Raises
    ------
    ValueError
        If a value is negative.

    Notes
    -----
    A still force: flutter, swing and the response of the structure are left out.
    """
    pressure_pa = not_negative("pressure_pa", pressure_pa)
    return (
        pressure_pa
        * not_negative("force_coefficient", force_coefficient)
        * not_negative("area_m2", area_m2)
    )
