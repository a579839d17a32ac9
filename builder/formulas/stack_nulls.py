"""Where on the floor two equal stacks of subwoofers cancel: hyperbolas around the power alley."""

import math

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import CRC_TABLES


@cites(
    CRC_TABLES,
    "hyperbola: places whose distances from two foci differ by 2 a",
    equation="x = a sqrt(1 + y^2 / ((S/2)^2 - a^2)), a = (n + 1/2) c / (2 f)",
)
def null_off_centre_m(
    *, spacing_m: float, distance_m: float, frequency_hz: float, speed_m_s: float, order: int = 0
) -> float | None:
    """
    How far off the centre line a null of two equal stacks lies, at a distance in front of them.

    Parameters
    ----------
    spacing_m, distance_m
        Between the stacks' centres; in front of the line through them. [m]
    frequency_hz, speed_m_s
        Frequency; speed of sound. [Hz], [m/s]
    order
        0 for the null next to the alley, 1 for the one beyond it, and so on.

    Returns
    -------
    float or None
        Distance from the centre line, on either side; None where the stacks are too close for this
        null. [m]

    Raises
    ------
    ValueError
        If spacing, frequency or speed is not above 0, or distance or order is negative.

    Notes
    -----
    Equal levels cancel fully only far away, where both paths are about as long; nearer by, the
    nearer stack leaves something. Walls are left out.
    """
    half_m = above_zero("spacing_m", spacing_m) / 2
    wavelength_m = above_zero("speed_m_s", speed_m_s) / above_zero("frequency_hz", frequency_hz)
    a_m = (not_negative("order", order) + 0.5) * wavelength_m / 2
    if a_m >= half_m:
        return None
    return a_m * math.sqrt(1 + not_negative("distance_m", distance_m) ** 2 / (half_m**2 - a_m**2))
