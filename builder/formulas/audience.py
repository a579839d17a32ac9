"""
How many people an area and its exits take, by published factors.

Planning figures: the licensing authority and the local code decide.
"""

import math

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import GREEN_GUIDE, IBC_2015

SQUARE_METRE_PER_SQUARE_FOOT = 0.3048**2
IBC_M2_PER_PERSON = {
    "standing": 5 * SQUARE_METRE_PER_SQUARE_FOOT,
    "chairs": 7 * SQUARE_METRE_PER_SQUARE_FOOT,
    "tables and chairs": 15 * SQUARE_METRE_PER_SQUARE_FOOT,
    "stage": 15 * SQUARE_METRE_PER_SQUARE_FOOT,
}
"""Net area a person of table 1004.1.2. [m²]"""
GREEN_GUIDE_PER_M_MIN = {"level": 82.0, "stair": 66.0}
"""
People for each metre of width and each minute. A published study saw fewer than 60 on the level: a
ceiling, not a forecast.
"""


@cites(IBC_2015, "table 1004.1.2", equation="people = floor(A / area a person)")
def occupants(*, net_area_m2: float, m2_per_person: float) -> int:
    """
    People that a net area counts for.

    Parameters
    ----------
    net_area_m2
        Area people can use, without walls, stage, mixer and fixed things. [m²]
    m2_per_person
        Factor. [m²]

    Returns
    -------
    int
        People. [-]

    Raises
    ------
    ValueError
        If the area is negative or the factor is not above 0.

    Notes
    -----
    The exits may allow fewer; the lower number counts.
    """
    return math.floor(
        not_negative("net_area_m2", net_area_m2) / above_zero("m2_per_person", m2_per_person) + 1e-9
    )


@cites(GREEN_GUIDE, "ch. 10, exit systems, from memory", equation="people = floor(W * rate * t)")
def exit_capacity(*, exit_width_m: float, people_per_m_min: float, egress_min: float) -> int:
    """
    People that can leave in a given time.

    Parameters
    ----------
    exit_width_m
        Width of all exits together; leave out the widest one if the code takes it as blocked. [m]
    people_per_m_min
        Rate of passage. [1/(m min)]
    egress_min
        Time allowed. [min]

    Returns
    -------
    int
        People. [-]

    Raises
    ------
    ValueError
        If a number is negative.
    """
    rate = not_negative("exit_width_m", exit_width_m) * not_negative(
        "people_per_m_min", people_per_m_min
    )
    return math.floor(rate * not_negative("egress_min", egress_min) + 1e-9)
