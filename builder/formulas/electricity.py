"""
Apparent power and line current of single-phase, split-phase and three-phase circuits.

Every voltage says which one it is: line to neutral, line to line, or wire to wire.
Planning figures: the local code and a licensed electrician decide.
"""

import math

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, checked_power_factor, not_negative
from builder.formulas.sources import NILSSON_RIEDEL


@cites(NILSSON_RIEDEL, "ch. 10, apparent power", equation="S = U I / 1000")
def single_phase_kva(*, current_a: float, wire_to_wire_v: float) -> float:
    """
    Apparent power of a two-wire circuit.

    Parameters
    ----------
    current_a
        Current in the line. [A]
    wire_to_wire_v
        Voltage between the circuit's two wires: line to neutral, or line to line where both are
        lines. [V]

    Returns
    -------
    float
        Apparent power. [kVA]

    Raises
    ------
    ValueError
        If the current is negative or the voltage is not above 0.
    """
    return (
        not_negative("current_a", current_a) * above_zero("wire_to_wire_v", wire_to_wire_v) / 1000
    )


@cites(
    NILSSON_RIEDEL,
    "ch. 10, apparent power; two halves of a centre-tapped winding",
    equation="S = 2 U_LN I / 1000",
)
def split_phase_kva(*, current_a: float, line_to_neutral_v: float) -> float:
    """
    Apparent power of a centre-tapped single-phase system (such as 120/240 V) with the same current
    in both lines.

    Parameters
    ----------
    current_a
        Current in each of the two lines. [A]
    line_to_neutral_v
        Voltage from either line to the neutral, half of that between the lines. [V]

    Returns
    -------
    float
        Apparent power of both halves. [kVA]

    Raises
    ------
    ValueError
        If the current is negative or the voltage is not above 0.
    """
    return (
        2
        * not_negative("current_a", current_a)
        * above_zero("line_to_neutral_v", line_to_neutral_v)
        / 1000
    )


@cites(
    NILSSON_RIEDEL,
    "ch. 11, power in balanced three-phase circuits",
    equation="S = sqrt(3) U_LL I / 1000",
)
def three_phase_kva(*, current_a: float, line_to_line_v: float) -> float:
    """
    Apparent power of a three-phase system with the same current in all lines.

    Parameters
    ----------
    current_a
        Current in each line. [A]
    line_to_line_v
        Voltage between two lines (400 V of 230/400 V, 208 V of 120/208 V). [V]

    Returns
    -------
    float
        Apparent power of the three phases. [kVA]

    Raises
    ------
    ValueError
        If the current is negative or the voltage is not above 0.
    """
    return (
        math.sqrt(3)
        * not_negative("current_a", current_a)
        * above_zero("line_to_line_v", line_to_line_v)
        / 1000
    )


@cites(NILSSON_RIEDEL, "ch. 11, balanced three-phase voltages", equation="U_LL = sqrt(3) U_LN")
def line_to_line_from_neutral_v(*, line_to_neutral_v: float) -> float:
    """
    Voltage between two lines of a three-phase system, from that of a line to neutral.

    Parameters
    ----------
    line_to_neutral_v
        Voltage from a line to the neutral. [V]

    Returns
    -------
    float
        Voltage between two lines. [V]

    Raises
    ------
    ValueError
        If the voltage is not above 0.
    """
    return math.sqrt(3) * above_zero("line_to_neutral_v", line_to_neutral_v)


@cites(NILSSON_RIEDEL, "ch. 10, power factor", equation="S = P / pf")
def apparent_kva(*, active_kw: float, power_factor: float) -> float:
    """
    Apparent power of a load from its active power.

    Parameters
    ----------
    active_kw
        Active power drawn. [kW]
    power_factor
        Active over apparent power, above 0 and at most 1. [-]

    Returns
    -------
    float
        Apparent power. [kVA]

    Raises
    ------
    ValueError
        If the power is negative or the power factor is outside its range.
    """
    return not_negative("active_kw", active_kw) / checked_power_factor(power_factor)


@cites(NILSSON_RIEDEL, "ch. 10, apparent power", equation="I = 1000 S / U_LN")
def current_on_one_phase_a(*, apparent_kva: float, line_to_neutral_v: float) -> float:
    """
    Line current of a load between one line and neutral.

    Parameters
    ----------
    apparent_kva
        Apparent power of the load. [kVA]
    line_to_neutral_v
        Voltage from the line to neutral. [V]

    Returns
    -------
    float
        Current in that line. [A]

    Raises
    ------
    ValueError
        If the power is negative or the voltage is not above 0.
    """
    return (
        1000
        * not_negative("apparent_kva", apparent_kva)
        / above_zero("line_to_neutral_v", line_to_neutral_v)
    )


@cites(NILSSON_RIEDEL, "ch. 10, apparent power", equation="I = 1000 S / U_LL")
def current_between_two_phases_a(*, apparent_kva: float, line_to_line_v: float) -> float:
    """
    Line current of a load between two lines; the same in both.

    Parameters
    ----------
    apparent_kva
        Apparent power of the load. [kVA]
    line_to_line_v
        Voltage between the two lines. [V]

    Returns
    -------
    float
        Current in each of the two lines. [A]

    Raises
    ------
    ValueError
        If the power is negative or the voltage is not above 0.
    """
    return (
        1000
        * not_negative("apparent_kva", apparent_kva)
        / above_zero("line_to_line_v", line_to_line_v)
    )


@cites(
    NILSSON_RIEDEL,
    "ch. 11, power in balanced three-phase circuits",
    equation="I = 1000 S / (sqrt(3) U_LL)",
)
def current_on_three_phases_a(*, apparent_kva: float, line_to_line_v: float) -> float:
    """
    Line current of a load spread evenly over three phases.

    Parameters
    ----------
    apparent_kva
        Apparent power of the whole load. [kVA]
    line_to_line_v
        Voltage between two lines. [V]

    Returns
    -------
    float
        Current in each line. [A]

    Raises
    ------
    ValueError
        If the power is negative or the voltage is not above 0.
    """
    return current_between_two_phases_a(
        apparent_kva=apparent_kva, line_to_line_v=line_to_line_v
    ) / math.sqrt(3)
