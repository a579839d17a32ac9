"""Sound in air: absorption, speed, exact band centres and the A and C weightings."""

import math
from typing import Literal

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero
from builder.formulas.sources import IEC_61260_1, IEC_61672_1, ISO_9613_1

LEAST_TEMPERATURE_C, GREATEST_TEMPERATURE_C = -20.0, 50.0
"""Where ISO 9613-1 states its accuracy of ±10 %."""

GREATEST_PRESSURE_KPA = 200.0
REFERENCE_PRESSURE_KPA = 101.325
REFERENCE_TEMPERATURE_K = 293.15
TRIPLE_POINT_K = 273.16
ZERO_CELSIUS_K = 273.15

Bands = Literal["octave", "third octave"]
Weighting = Literal["A", "C", "Z"]
BANDS_PER_DECADE: dict[Bands, float] = {"octave": 10 / 3, "third octave": 10}
NOMINAL_SHARE = 0.03
"""A nominal midband is rounded: it may lie this far from the exact one."""


@cites(
    ISO_9613_1,
    "equations (3) to (5), and annex B for the molar concentration of water vapour",
    equation=(
        "alpha = 8.686 f^2 [1.84e-11 (pr/pa) (T/T0)^0.5 + (T/T0)^-2.5 (0.01275 e^(-2239.1/T) / (frO"
        " + f^2/frO) + 0.1068 e^(-3352/T) / (frN + f^2/frN))]"
    ),
)
def air_absorption_db_per_m(
    frequency_hz: float,
    *,
    temperature_c: float = 20.0,
    humidity_percent: float = 50.0,
    pressure_kpa: float = REFERENCE_PRESSURE_KPA,
) -> float:
    """
    Loss of a pure tone for each metre of still air.

    Parameters
    ----------
    frequency_hz
        Frequency; for a band, its exact midband and not the nominal one. [Hz]
    temperature_c
        Air temperature. [°C]
    humidity_percent
        Relative humidity. [%]
    pressure_kpa
        Ambient pressure. [kPa]

    Returns
    -------
    float
        Attenuation coefficient. [dB/m]

    Raises
    ------
    ValueError
        If the frequency is not above 0, the temperature outside -20 to 50 °C, the humidity outside
        0 to 100 % or the pressure outside 0 to 200 kPa.

    Notes
    -----
    The standard states ±10 % where the air holds 0.05 % to 5 % of water vapour (molar) and f/pa is
    0.0004 to 10 Hz/Pa. No wind, fog or turbulence.
    """
    above_zero("frequency_hz", frequency_hz)
    kelvin = _kelvin(temperature_c)
    pressure = _checked_pressure(pressure_kpa) / REFERENCE_PRESSURE_KPA
    warmth = kelvin / REFERENCE_TEMPERATURE_K
    oxygen, nitrogen = relaxation_frequencies_hz(
        temperature_c=temperature_c, humidity_percent=humidity_percent, pressure_kpa=pressure_kpa
    )
    squared = frequency_hz**2
    classical = 1.84e-11 / pressure * math.sqrt(warmth)
    by_oxygen = 0.01275 * math.exp(-2239.1 / kelvin) / (oxygen + squared / oxygen)
    by_nitrogen = 0.1068 * math.exp(-3352.0 / kelvin) / (nitrogen + squared / nitrogen)
    return 8.686 * squared * (classical + math.pow(warmth, -2.5) * (by_oxygen + by_nitrogen))


@cites(
    ISO_9613_1,
    "equations (3) and (4)",
    equation=(
        "frO = (pa/pr)(24 + 40400 h (0.02 + h)/(0.391 + h)); frN = (pa/pr)(T/T0)^-0.5 (9 + 280 h"
        " exp(-4.170 ((T/T0)^(-1/3) - 1)))"
    ),
)
def relaxation_frequencies_hz(
    *, temperature_c: float, humidity_percent: float, pressure_kpa: float = REFERENCE_PRESSURE_KPA
) -> tuple[float, float]:
    """
    Relaxation frequencies of oxygen and nitrogen.

    Parameters
    ----------
    temperature_c, humidity_percent, pressure_kpa
        State of the air. [°C], [%], [kPa]

    Returns
    -------
    tuple of float
        Oxygen, nitrogen. [Hz]

    Raises
    ------
    ValueError
        If the air is outside the limits of `air_absorption_db_per_m`.
    """
    pressure = _checked_pressure(pressure_kpa) / REFERENCE_PRESSURE_KPA
    warmth = _kelvin(temperature_c) / REFERENCE_TEMPERATURE_K
    h = water_vapour_percent(
        temperature_c=temperature_c, humidity_percent=humidity_percent, pressure_kpa=pressure_kpa
    )
    oxygen = pressure * (24 + 4.04e4 * h * (0.02 + h) / (0.391 + h))
    nitrogen = (
        pressure
        / math.sqrt(warmth)
        * (9 + 280 * h * math.exp(-4.170 * (math.pow(warmth, -1 / 3) - 1)))
    )
    return oxygen, nitrogen


@cites(
    ISO_9613_1,
    "annex B, equations (B.1) to (B.3)",
    equation="h = hr (psat/pr)/(pa/pr); psat/pr = 10^(-6.8346 (273.16/T)^1.261 + 4.6151)",
)
def water_vapour_percent(
    *, temperature_c: float, humidity_percent: float, pressure_kpa: float = REFERENCE_PRESSURE_KPA
) -> float:
    """
    Molar concentration of water vapour.

    Parameters
    ----------
    temperature_c, humidity_percent, pressure_kpa
        State of the air. [°C], [%], [kPa]

    Returns
    -------
    float
        Share of molecules that are water. [%]

    Raises
    ------
    ValueError
        If the air is outside the limits of `air_absorption_db_per_m`.
    """
    if not 0 <= humidity_percent <= 100:
        raise ValueError(f"humidity_percent must be 0 to 100, got {humidity_percent}")
    pressure = _checked_pressure(pressure_kpa) / REFERENCE_PRESSURE_KPA
    saturation = math.pow(
        10, -6.8346 * math.pow(TRIPLE_POINT_K / _kelvin(temperature_c), 1.261) + 4.6151
    )
    return humidity_percent * saturation / pressure


@cites(
    ISO_9613_1,
    "annex A, equation (A.5), dry reference air",
    equation="c = 343.2 sqrt(T/293.15), T in kelvin",
)
def speed_of_sound_m_s(temperature_c: float = 20.0) -> float:
    """
    Speed of sound at a temperature.

    Parameters
    ----------
    temperature_c
        Air temperature. [°C]

    Returns
    -------
    float
        Speed. [m/s]

    Raises
    ------
    ValueError
        If the temperature is outside -20 to 50 °C.

    Notes
    -----
    Leaves humidity out: at 20 °C and 50 % the air is 0.2 % faster, 0.3 ms in 50 m.
    """
    return 343.2 * math.sqrt(_kelvin(temperature_c) / REFERENCE_TEMPERATURE_K)


@cites(
    IEC_61260_1,
    "equations (1) and (2), base ten",
    equation="f = 1000 * 10^(3k/10) for octaves, 1000 * 10^(k/10) for third octaves",
)
def exact_midband_hz(nominal_hz: float, bands: Bands = "third octave") -> float:
    """
    Exact midband frequency of a band that is called by its nominal one.

    Parameters
    ----------
    nominal_hz
        Nominal midband, such as 63 or 31.5. [Hz]
    bands
        Octaves or third octaves.

    Returns
    -------
    float
        Exact midband. [Hz]

    Raises
    ------
    ValueError
        If no band has that nominal frequency.
    """
    above_zero("nominal_hz", nominal_hz)
    per_decade = BANDS_PER_DECADE[bands]
    exact = 1000 * math.pow(10, round(per_decade * math.log10(nominal_hz / 1000)) / per_decade)
    if abs(nominal_hz / exact - 1) > NOMINAL_SHARE:
        raise ValueError(
            f"nominal_hz must be a nominal {bands} midband, got {nominal_hz}; the nearest exact one"
            f" is {exact:.4g}"
        )
    return exact


@cites(
    IEC_61672_1,
    "annex E, equations (E.1) and (E.6)",
    equation=(
        "A(f) = 20 lg(12194^2 f^4 / ((f^2 + 20.6^2)(f^2 + 12194^2) sqrt(f^2 + 107.7^2) sqrt(f^2 +"
        " 737.9^2))) + 2.000; C(f) = 20 lg(12194^2 f^2 / ((f^2 + 20.6^2)(f^2 + 12194^2))) + 0.062"
    ),
)
def weighting_db(frequency_hz: float, weighting: Weighting) -> float:
    """
    Frequency weighting of a sound level meter.

    Parameters
    ----------
    frequency_hz
        Frequency; for a band, its exact midband. [Hz]
    weighting
        A, C, or Z for none.

    Returns
    -------
    float
        What is added to the level. [dB]

    Raises
    ------
    ValueError
        If the frequency is not above 0 or the weighting is none of A, C and Z.
    """
    squared = above_zero("frequency_hz", frequency_hz) ** 2
    if weighting == "Z":
        return 0.0
    c_ratio = 12194.0**2 * squared / ((squared + 20.60**2) * (squared + 12194.0**2))
    if weighting == "C":
        return 20 * math.log10(c_ratio) + 0.062
    if weighting == "A":
        return (
            20
            * math.log10(c_ratio * squared / math.sqrt((squared + 107.7**2) * (squared + 737.9**2)))
            + 2.000
        )
    raise ValueError(f"weighting must be A, C or Z, got {weighting!r}")


def _kelvin(temperature_c: float) -> float:
    if not LEAST_TEMPERATURE_C <= temperature_c <= GREATEST_TEMPERATURE_C:
        raise ValueError(
            f"temperature_c must be {LEAST_TEMPERATURE_C:g} to {GREATEST_TEMPERATURE_C:g}, got"
            f" {temperature_c}"
        )
    return temperature_c + ZERO_CELSIUS_K


def _checked_pressure(pressure_kpa: float) -> float:
    if not 0 < pressure_kpa <= GREATEST_PRESSURE_KPA:
        raise ValueError(
            f"pressure_kpa must be above 0 and at most {GREATEST_PRESSURE_KPA:g}, got"
            f" {pressure_kpa}"
        )
    return pressure_kpa
