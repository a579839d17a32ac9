"""
Delay of fills and delay loudspeakers, its drift with temperature, where levels meet, coverage edges
and aim.
"""

import math
from dataclasses import dataclass

from builder.formulas.air import speed_of_sound_m_s
from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import COMMON_PRACTICE, ISO_9613_1

DRIFT_TEMPERATURES_C = (5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0)


@dataclass(frozen=True, slots=True)
class Drift:
    """
    What the air does to an alignment: how much later than set, against the fill, the reference
    arrives at a temperature. [°C], [ms]
    """

    temperature_c: float
    reference_late_ms: float


@cites(
    COMMON_PRACTICE,
    "difference of two travel times",
    equation="t = (d_ref - d_fill)/c + t_ref + offset",
)
def alignment_delay_ms(
    *,
    reference_distance_m: float,
    fill_distance_m: float,
    speed_m_s: float,
    offset_ms: float = 0.0,
    reference_delay_ms: float = 0.0,
) -> float:
    """
    Delay that lets a fill arrive a stated time after its reference, at one place.

    Parameters
    ----------
    reference_distance_m, fill_distance_m
        From the place to the reference source and to the fill. [m]
    speed_m_s
        Speed of sound. [m/s]
    offset_ms
        Wanted lateness of the fill; 10 to 20 ms keeps the ear on the reference (common practice).
        [ms]
    reference_delay_ms
        Delay already on the reference. [ms]

    Returns
    -------
    float
        Delay of the fill. Below 0, the fill would have to speak first: delay the reference by so
        much instead. [ms]

    Raises
    ------
    ValueError
        If a distance is negative or the speed is not above 0.
    """
    longer_m = not_negative("reference_distance_m", reference_distance_m) - not_negative(
        "fill_distance_m", fill_distance_m
    )
    return 1000 * longer_m / above_zero("speed_m_s", speed_m_s) + reference_delay_ms + offset_ms


@cites(
    ISO_9613_1, "annex A, equation (A.5)", equation="late = (d_ref - d_fill)(1/c(T) - 1/c(T_set))"
)
def alignment_drift(
    *, reference_distance_m: float, fill_distance_m: float, set_at_c: float
) -> tuple[Drift, ...]:
    """
    How far an alignment runs away as the air warms and cools from 5 to 35 °C.

    Parameters
    ----------
    reference_distance_m, fill_distance_m
        From the place to the reference source and to the fill. [m]
    set_at_c
        Temperature the delay was set at. [°C]

    Returns
    -------
    tuple of Drift
        One for each 5 °C. [°C], [ms]

    Raises
    ------
    ValueError
        If a distance is negative or the temperature outside -20 to 50 °C.
    """
    longer_m = not_negative("reference_distance_m", reference_distance_m) - not_negative(
        "fill_distance_m", fill_distance_m
    )
    set_s_per_m = 1 / speed_of_sound_m_s(set_at_c)
    return tuple(
        Drift(c, 1000 * longer_m * (1 / speed_of_sound_m_s(c) - set_s_per_m))
        for c in DRIFT_TEMPERATURES_C
    )


@cites(
    COMMON_PRACTICE,
    "direction of the centre ray on plan against a seat",
    equation="beta = atan2(dy, dx) - azimuth, folded to -180 to 180",
)
def off_axis_deg(*, azimuth_deg: float, ahead_m: float, aside_m: float) -> float:
    """
    How far a seat lies to the side of an aim, on plan.

    Parameters
    ----------
    azimuth_deg
        Aim from +x towards +y. [deg]
    ahead_m, aside_m
        From the source to the seat along x and y. [m]

    Returns
    -------
    float
        Angle, -180 to 180; inside the stated coverage where it is at most half of it. [deg]

    Raises
    ------
    ValueError
        If the seat is at the source.
    """
    if ahead_m == 0 and aside_m == 0:
        raise ValueError(f"ahead_m and aside_m must not both be 0, got {ahead_m} and {aside_m}")
    return math.remainder(math.degrees(math.atan2(aside_m, ahead_m)) - azimuth_deg, 360)
