"""Loudspeakers in space: where a point lies from each box, and how the box radiates there."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from builder.formulas.cite import cites
from builder.formulas.directivity import (
    coverage_at_deg,
    coverage_response,
    line_response,
    piston_response,
)
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import COMMON_PRACTICE

Array = NDArray[np.float64]
LEAST_DISTANCE_M = 0.1
"""
Points nearer to a box than this are taken to be this far, so that no level grows without bound.
"""


@dataclass(frozen=True, slots=True)
class Loudspeaker:
    """
    One box.

    Place [m]. Aim: ``azimuth_deg`` from +x towards +y, ``elevation_deg`` upwards [deg].
    ``level_db`` at 1 m on axis in each third octave that the box plays, against any reference [dB].
    ``delay_ms`` [ms], ``inverted`` polarity, size of the front [m].

    Model across: the stated ``coverage_deg``, pairs of frequency and full angle [Hz, deg]; else a
    piston as wide as the box. Model up and down: ``vertical_coverage_deg``; else a short straight
    line as high as the box, which makes a column of boxes an array. A size of 0 radiates alike.
    Behind, the piston keeps its value at the side. Bands whose midband is outside ``lowest_hz`` to
    ``highest_hz`` are not played at all.
    """

    x_m: float
    y_m: float
    z_m: float
    azimuth_deg: float = 0.0
    elevation_deg: float = 0.0
    level_db: float = 0.0
    delay_ms: float = 0.0
    inverted: bool = False
    width_m: float = 0.0
    height_m: float = 0.0
    coverage_deg: tuple[tuple[float, float], ...] = ()
    vertical_coverage_deg: tuple[tuple[float, float], ...] = ()
    lowest_hz: float = 0.0
    highest_hz: float = math.inf

    def __post_init__(self) -> None:
        """Refuse what is no number or no size."""
        for name in ("x_m", "y_m", "z_m", "azimuth_deg", "elevation_deg", "level_db", "delay_ms"):
            if not math.isfinite(getattr(self, name)):
                raise ValueError(f"{name} must be a finite number, got {getattr(self, name)}")
        not_negative("width_m", self.width_m)
        not_negative("height_m", self.height_m)
        if not 0 <= self.lowest_hz < self.highest_hz:
            raise ValueError(
                f"highest_hz must be above lowest_hz {self.lowest_hz}, got {self.highest_hz}"
            )
        for stated in filter(None, (self.coverage_deg, self.vertical_coverage_deg)):
            coverage_at_deg(stated, frequency_hz=1000.0)

    @property
    def pressure(self) -> float:
        """
        Pressure at 1 m on axis against that of level 0 dB, below 0 where the polarity is inverted.
        """
        return math.copysign(math.pow(10, self.level_db / 20), -1.0 if self.inverted else 1.0)

    def plays(self, midband_hz: float) -> bool:
        """True where the box plays a band."""
        return self.lowest_hz <= midband_hz <= self.highest_hz


Speakers = Sequence[Loudspeaker]


@dataclass(frozen=True, slots=True)
class Bearings:
    """
    Points as boxes see them, shape (boxes, points): distance [m], angle aside from the aim, 0 to
    pi, and upwards from it [rad].
    """

    distance_m: Array
    aside_rad: Array
    up_rad: Array


@cites(
    COMMON_PRACTICE,
    "spherical co-ordinates about the aim, no roll",
    equation="r = |p - s|; aside = atan2(|right|, forward); up = asin(up / r)",
)
def bearings(speakers: Speakers, points_m: Array) -> Bearings:
    """
    Distance and direction of points from boxes.

    Parameters
    ----------
    speakers
        Boxes.
    points_m
        Points, shape (N, 3). [m]

    Returns
    -------
    Bearings
        Three arrays of shape (boxes, N). [m], [rad]

    Raises
    ------
    ValueError
        If points_m does not have three columns.
    """
    if points_m.ndim != 2 or points_m.shape[1] != 3:
        raise ValueError(f"points_m must have three columns, got shape {points_m.shape}")
    dx, dy, dz = (
        points_m[None, :, axis] - np.array(place)[:, None]
        for axis, place in enumerate(_places(speakers))
    )
    ca, sa, ce, se = (np.array(column)[:, None] for column in _aims(speakers))
    ahead = ca * dx + sa * dy
    forward, up, right = ce * ahead + se * dz, ce * dz - se * ahead, sa * dx - ca * dy
    distance = np.maximum(np.sqrt(dx * dx + dy * dy + dz * dz), LEAST_DISTANCE_M)
    return Bearings(
        distance, np.arctan2(np.abs(right), forward), np.arcsin(np.clip(up / distance, -1, 1))
    )


@cites(
    COMMON_PRACTICE,
    "a box's pattern as the product of one across and one up and down",
    equation="D = D_across(aside) D_up(up)",
)
def across_response(
    speaker: Loudspeaker, aside_rad: Array, *, frequency_hz: float, speed_m_s: float
) -> Array:
    """
    Response of a box to the side.

    Parameters
    ----------
    speaker
        The box.
    aside_rad
        Angles from the aim in the box's own horizontal plane, any shape. [rad]
    frequency_hz, speed_m_s
        Frequency; speed of sound. [Hz], [m/s]

    Returns
    -------
    array of the same shape
        Response against straight ahead. [-]

    Raises
    ------
    ValueError
        If frequency or speed is not above 0.
    """
    if speaker.coverage_deg:
        return coverage_response(
            aside_rad, coverage_deg=coverage_at_deg(speaker.coverage_deg, frequency_hz=frequency_hz)
        )
    sine = np.sin(np.minimum(np.abs(aside_rad), math.pi / 2))
    return piston_response(_wavenumber_per_m(frequency_hz, speed_m_s) * speaker.width_m / 2 * sine)


@cites(
    COMMON_PRACTICE,
    "a box's pattern as the product of one across and one up and down",
    equation="D = D_across(aside) D_up(up)",
)
def upward_response(
    speaker: Loudspeaker, up_rad: Array, *, frequency_hz: float, speed_m_s: float
) -> Array:
    """
    Response of a box above and below its aim.

    Parameters
    ----------
    speaker
        The box.
    up_rad
        Angles from the plane of its aim, any shape. [rad]
    frequency_hz, speed_m_s
        Frequency; speed of sound. [Hz], [m/s]

    Returns
    -------
    array of the same shape
        Response against straight ahead. [-]

    Raises
    ------
    ValueError
        If frequency or speed is not above 0.
    """
    if speaker.vertical_coverage_deg:
        return coverage_response(
            up_rad,
            coverage_deg=coverage_at_deg(speaker.vertical_coverage_deg, frequency_hz=frequency_hz),
        )
    return line_response(
        _wavenumber_per_m(frequency_hz, speed_m_s) * speaker.height_m / 2 * np.sin(up_rad)
    )


def _wavenumber_per_m(frequency_hz: float, speed_m_s: float) -> float:
    return math.tau * above_zero("frequency_hz", frequency_hz) / above_zero("speed_m_s", speed_m_s)


def _places(speakers: Speakers) -> tuple[list[float], list[float], list[float]]:
    return [s.x_m for s in speakers], [s.y_m for s in speakers], [s.z_m for s in speakers]


def _aims(speakers: Speakers) -> tuple[list[float], list[float], list[float], list[float]]:
    """Cosine and sine of azimuth and of elevation."""
    turn, lift = (
        [math.radians(s.azimuth_deg) for s in speakers],
        [math.radians(s.elevation_deg) for s in speakers],
    )
    return (
        [math.cos(a) for a in turn],
        [math.sin(a) for a in turn],
        [math.cos(e) for e in lift],
        [math.sin(e) for e in lift],
    )
