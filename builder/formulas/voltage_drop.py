"""
Voltage lost along a feeder. Lengths are one way; each result says between which wires it is.

Planning figures: the local code and a licensed electrician decide.
"""

import math
from typing import Literal

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, checked_power_factor, not_negative
from builder.formulas.sources import BS_7671, IEEE_141


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


@cites(
    IEEE_141,
    "3.11, exact voltage drop, from memory",
    equation="dU = Us + I(R cos + X sin) - sqrt(Us^2 - I^2 (X cos - R sin)^2)",
)
def exact_drop_v(
    *,
    source_v: float,
    current_a: float,
    length_m: float,
    r_ohm_per_km: float,
    x_ohm_per_km: float,
    power_factor: float,
    wires_in_path: Literal[1, 2] = 1,
) -> float:
    """
    Voltage lost with the angle between both ends counted.

    Parameters
    ----------
    source_v
        Voltage at the sending end: line to neutral where one wire is in the path, wire to wire
        where two are. [V]
    current_a
        Current. [A]
    length_m
        Length one way. [m]
    r_ohm_per_km, x_ohm_per_km
        Resistance and reactance of one conductor. [ohm/km]
    power_factor
        Of the load at its own end, lagging, above 0 and at most 1. [-]
    wires_in_path
        1 for a balanced three-phase feeder (its neutral carries nothing), 2 for out and back. [-]

    Returns
    -------
    float
        Voltage lost, on the base of ``source_v``. [V]

    Raises
    ------
    ValueError
        If a number is out of range, or the feeder cannot deliver this current.
    """
    source = above_zero("source_v", source_v)
    ohms = not_negative("length_m", length_m) / 1000 * wires_in_path
    resistive = (
        not_negative("current_a", current_a) * not_negative("r_ohm_per_km", r_ohm_per_km) * ohms
    )
    reactive = current_a * not_negative("x_ohm_per_km", x_ohm_per_km) * ohms
    cosine = checked_power_factor(power_factor)
    sine = math.sqrt(1 - cosine * cosine)
    along, across = resistive * cosine + reactive * sine, reactive * cosine - resistive * sine
    if abs(across) > source or math.sqrt(source * source - across * across) < along:
        raise ValueError(
            f"current_a must be one that the feeder can deliver, got {current_a} over {length_m} m"
            f" from {source_v} V"
        )
    return source + along - math.sqrt(source * source - across * across)


@cites(BS_7671, "Appendix 4, tables of voltage drop, mV/A/m", equation="dU = (mV/A/m) I L / 1000")
def tabulated_drop_v(*, millivolt_per_a_m: float, current_a: float, length_m: float) -> float:
    """
    Voltage lost by a table's millivolt per ampere and metre; the base is the table's own (line to
    line for three phases).

    Parameters
    ----------
    millivolt_per_a_m
        The table's value. [mV/(A m)]
    current_a
        Current in each line. [A]
    length_m
        Length one way. [m]

    Returns
    -------
    float
        Voltage lost. [V]

    Raises
    ------
    ValueError
        If a number is negative.
    """
    value = not_negative("millivolt_per_a_m", millivolt_per_a_m)
    return value * not_negative("current_a", current_a) * not_negative("length_m", length_m) / 1000


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


@cites(
    BS_7671,
    "Appendix 4, Table 4Ab (IEC 60364-5-52, Table G.52.1)",
    equation=(
        "3 % lighting, 5 % other; 6 % and 8 % from a private supply; + 0.005 % per m above 100 m,"
        " at most 0.5 %"
    ),
)
def drop_limit_percent(*, lighting: bool, private_supply: bool, length_m: float) -> float:
    """
    Voltage drop a code allows from the origin of the installation to the load.

    Parameters
    ----------
    lighting
        True for lighting circuits.
    private_supply
        True where the installation has its own supply, such as a generator or transformer.
    length_m
        Length of the wiring from the origin. [m]

    Returns
    -------
    float
        Limit. [%]

    Raises
    ------
    ValueError
        If the length is negative.

    Notes
    -----
    Elsewhere the house's own limits hold; in the NEC 3 % and 5 % are advice.
    """
    public = 3.0 if lighting else 5.0
    longer_m = max(0.0, not_negative("length_m", length_m) - 100)
    return public + (3.0 if private_supply else 0.0) + min(0.5, 0.005 * longer_m)
