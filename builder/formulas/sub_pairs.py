"""
Subwoofers in stacks and pairs: power alleys and nulls, end-fire and gradient arrangements, and
spacing.
"""

import math
from collections.abc import Sequence

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import BALANIS, CRC_TABLES, KINSLER, OLSON


@cites(
    KINSLER,
    "ch. 7, the simple line of two sources, from memory",
    equation="sin(theta) = (n + 1/2) c / (f S)",
)
def stereo_null_angles_deg(
    *, spacing_m: float, frequency_hz: float, speed_m_s: float
) -> tuple[float, ...]:
    """
    Directions in which two equal stacks cancel, far away.

    Parameters
    ----------
    spacing_m, frequency_hz, speed_m_s
        Between the stacks' centres; frequency; speed of sound. [m], [Hz], [m/s]

    Returns
    -------
    tuple of float
        Angles from straight ahead, rising, for one side. Empty where the stacks are closer than
        half a wavelength. [deg]

    Raises
    ------
    ValueError
        If an input is not above 0.
    """
    in_wavelengths = (
        above_zero("spacing_m", spacing_m)
        * above_zero("frequency_hz", frequency_hz)
        / above_zero("speed_m_s", speed_m_s)
    )
    count = math.floor(in_wavelengths + 0.5)
    return tuple(
        math.degrees(math.asin(min(1.0, (n + 0.5) / in_wavelengths))) for n in range(count)
    )


@cites(
    CRC_TABLES,
    "two right-angled triangles",
    equation="d = sqrt(y^2 + (S/2 + x)^2) - sqrt(y^2 + (S/2 - x)^2)",
)
def path_difference_m(*, spacing_m: float, off_centre_m: float, distance_m: float) -> float:
    """
    How much further the far stack is than the near one.

    Parameters
    ----------
    spacing_m, off_centre_m, distance_m
        Between the stacks; the listener from the centre line, and from the line through the stacks.
        [m]

    Returns
    -------
    float
        Difference. [m]

    Raises
    ------
    ValueError
        If an input is negative.
    """
    half = not_negative("spacing_m", spacing_m) / 2
    aside, ahead = (
        not_negative("off_centre_m", off_centre_m),
        not_negative("distance_m", distance_m),
    )
    return math.hypot(ahead, half + aside) - math.hypot(ahead, half - aside)


@cites(BALANIS, "6.3, end-fire array, from memory", equation="t_i = (x_i - x_rear) / c, x forwards")
def end_fire_delays_ms(positions_m: Sequence[float], *, speed_m_s: float) -> tuple[float, ...]:
    """
    Delays for subs one behind the other, so that they add in front; the front one waits longest.

    Parameters
    ----------
    positions_m
        Places along the firing direction, forwards. [m]
    speed_m_s
        Speed of sound. [m/s]

    Returns
    -------
    tuple of float
        One delay for each place, in the order given. [ms]

    Raises
    ------
    ValueError
        If there is no place or the speed is not above 0.
    """
    if not positions_m:
        raise ValueError("positions_m must hold at least one place, got none")
    rear = min(positions_m)
    return tuple(
        1000 * (place - rear) / above_zero("speed_m_s", speed_m_s) for place in positions_m
    )


@cites(OLSON, "gradient of the first order with delay", equation="t = d / c, rear unit inverted")
def gradient_delay_ms(*, depth_m: float, speed_m_s: float) -> float:
    """
    Delay of the rear unit, inverted, so that a pair cancels behind.

    Parameters
    ----------
    depth_m, speed_m_s
        Between front and rear unit; speed of sound. [m], [m/s]

    Returns
    -------
    float
        Delay. [ms]

    Raises
    ------
    ValueError
        If an input is not above 0.
    """
    return 1000 * above_zero("depth_m", depth_m) / above_zero("speed_m_s", speed_m_s)


@cites(
    OLSON,
    "gradient of the first order with delay",
    equation="gain = 20 lg |1 - e^(-j 2 k d)| = 20 lg (2 |sin(2 pi f d / c)|)",
)
def gradient_front_gain_db(*, depth_m: float, frequency_hz: float, speed_m_s: float) -> float:
    """
    Level in front of a gradient pair against one unit; the rear unit arrives 2 d/c late and
    inverted.

    Parameters
    ----------
    depth_m, frequency_hz, speed_m_s
        Between front and rear unit; frequency; speed of sound. [m], [Hz], [m/s]

    Returns
    -------
    float
        Gain; minus infinity where the pair cancels in front too. [dB]

    Raises
    ------
    ValueError
        If an input is not above 0.
    """
    phase = (
        math.tau
        * above_zero("frequency_hz", frequency_hz)
        * above_zero("depth_m", depth_m)
        / above_zero("speed_m_s", speed_m_s)
    )
    magnitude = abs(2 * math.sin(phase))
    return 20 * math.log10(magnitude) if magnitude > 0 else -math.inf
