"""
Voltage lost along a feeder. Lengths are one way; each result says between which wires it is.

Planning figures: the local code and a licensed electrician decide.
"""

import math

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, checked_power_factor, not_negative
from builder.formulas.sources import IEEE_141


@cites(
    IEEE_141,
    "3.11, approximate voltage drop, from memory",
    equation="dU_line = I L (R cos(phi) + X sin(phi))",
)
def one_conductor_drop_v(
    *,
    current_a: float,
    length_m: float,
    r_ohm_per_km: float,
    x_ohm_per_km: float,
    power_factor: float,
) -> float:
    """
    Voltage lost along one conductor: of a balanced three-phase feeder, the loss from line to
    neutral.

    Parameters
    ----------
    current_a
        Current in the conductor. [A]
    length_m
        Length one way. [m]
    r_ohm_per_km, x_ohm_per_km
        Resistance and reactance of one conductor. [ohm/km]
    power_factor
        Of the load, lagging, above 0 and at most 1. [-]

    Returns
    -------
    float
        Voltage lost. [V]

    Raises
    ------
    ValueError
        If a number is negative or the power factor is outside its range.

    Notes
    -----
    Leaves out the small turn of the voltage's angle; :func:`exact_drop_v` has it.
    """
    cosine = checked_power_factor(power_factor)
    resistive = not_negative("r_ohm_per_km", r_ohm_per_km) * cosine
    reactive = not_negative("x_ohm_per_km", x_ohm_per_km) * math.sqrt(1 - cosine * cosine)
    return (
        not_negative("current_a", current_a)
        * not_negative("length_m", length_m)
        / 1000
        * (resistive + reactive)
    )


@cites(
    IEEE_141,
    "3.11, approximate voltage drop, single phase, from memory",
    equation="dU = 2 I L (R cos(phi) + X sin(phi))",
)
def single_phase_drop_v(
    *,
    current_a: float,
    length_m: float,
    r_ohm_per_km: float,
    x_ohm_per_km: float,
    power_factor: float,
) -> float:
    """
    Voltage lost between the two wires of a single-phase circuit, out and back through equal
    conductors.

    Parameters
    ----------
    current_a
        Current in the circuit. [A]
    length_m
        Length one way. [m]
    r_ohm_per_km, x_ohm_per_km
        Resistance and reactance of one conductor. [ohm/km]
    power_factor
        Of the load, lagging, above 0 and at most 1. [-]

    Returns
    -------
    float
        Voltage lost between the two wires. [V]

    Raises
    ------
    ValueError
        If a number is negative or the power factor is outside its range.
    """
    return 2 * one_conductor_drop_v(
        current_a=current_a,
        length_m=length_m,
        r_ohm_per_km=r_ohm_per_km,
        x_ohm_per_km=x_ohm_per_km,
        power_factor=power_factor,
    )


@cites(
    IEEE_141,
    "3.11, approximate voltage drop, three phase, from memory",
    equation="dU_LL = sqrt(3) I L (R cos(phi) + X sin(phi))",
)
def three_phase_drop_v(
    *,
    current_a: float,
    length_m: float,
    r_ohm_per_km: float,
    x_ohm_per_km: float,
    power_factor: float,
) -> float:
    """
    Voltage lost between two lines of a balanced three-phase feeder.

    Parameters
    ----------
    current_a
        Current in each line. [A]
    length_m
        Length one way. [m]
    r_ohm_per_km, x_ohm_per_km
        Resistance and reactance of one conductor. [ohm/km]
    power_factor
        Of the load, lagging, above 0 and at most 1. [-]

    Returns
    -------
    float
        Voltage lost from line to line. [V]

    Raises
    ------
    ValueError
        If a number is negative or the power factor is outside its range.
    """
    return math.sqrt(3) * one_conductor_drop_v(
        current_a=current_a,
        length_m=length_m,
        r_ohm_per_km=r_ohm_per_km,
        x_ohm_per_km=x_ohm_per_km,
        power_factor=power_factor,
    )


@cites(IEEE_141, "3.11, percent voltage drop, from memory", equation="dU% = 100 dU / U")
def drop_percent(*, drop_v: float, base_v: float) -> float:
    """
    Voltage lost in percent of the nominal voltage between the same wires.

    Parameters
    ----------
    drop_v
        Voltage lost. [V]
    base_v
        Nominal voltage between the wires that the loss is between. [V]

    Returns
    -------
    float
        Loss. [%]

    Raises
    ------
    ValueError
        If the loss is negative or the base is not above 0.
    """
    return 100 * not_negative("drop_v", drop_v) / above_zero("base_v", base_v)
