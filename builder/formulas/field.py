"""
The sound field over an audience: every source at every point, as complex sums line by line and
energies band by band, without reflections.

Planning figures: real rooms reflect, real boxes differ from their stated coverage.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from builder.formulas.air import (
    Weighting,
    air_absorption_db_per_m,
    speed_of_sound_m_s,
    weighting_db,
)
from builder.formulas.band_lines import Band, octave_members, third_octaves
from builder.formulas.cite import cites
from builder.formulas.field_blocks import in_blocks
from builder.formulas.field_tables import Plan, Precision, Propagation
from builder.formulas.loudspeakers import (
    Bearings,
    Loudspeaker,
    Speakers,
    across_response,
    bearings,
    upward_response,
)
from builder.formulas.sources import IEC_61672_1, KINSLER

Array = NDArray[np.float64]
NEPERS_PER_DB = math.log(10) / 20
DIRECT_BLOCK = 2048
KEPT_PROPAGATIONS = 512
"""Bands in airs whose absorption is kept: an arrangement asks for the same again and again."""


@dataclass(frozen=True, slots=True)
class Air:
    """Still air: temperature [°C], relative humidity [%], pressure [kPa]."""

    temperature_c: float = 20.0
    humidity_percent: float = 50.0
    pressure_kpa: float = 101.325

    @property
    def speed_m_s(self) -> float:
        """Speed of sound."""
        return speed_of_sound_m_s(self.temperature_c)

    def loss_np_per_m(self, frequencies_hz: Array) -> Array:
        """Absorption at each frequency, as nepers for each metre."""
        air = {
            "temperature_c": self.temperature_c,
            "humidity_percent": self.humidity_percent,
            "pressure_kpa": self.pressure_kpa,
        }
        return NEPERS_PER_DB * np.array(
            [air_absorption_db_per_m(float(f), **air) for f in frequencies_hz]
        )


ROOM_AIR = Air()


@dataclass(frozen=True, slots=True)
class Field:
    """
    Energy at each point in each third octave, shape (points, bands), against that of level 0 dB.
    Every band is fed alike: pink noise.
    """

    bands: tuple[Band, ...]
    energy: Array

    def levels_db(self) -> Array:
        """
        Level of every third octave, shape (points, bands); minus infinity where nothing plays. [dB]
        """
        return _level_db(self.energy)

    def octave_db(self, octave_hz: float) -> Array:
        """Level of an octave by its nominal midband, shape (points,). [dB]"""
        return _level_db(
            self.energy[:, list(octave_members(self.bands, octave_hz=octave_hz))].sum(axis=1)
        )

    def programme_db(self, weighting: Weighting = "A") -> Array:
        """Weighted level of pink noise over all bands, shape (points,). [dB]"""
        return programme_level_db(self, weighting)


@cites(
    IEC_61672_1,
    "annex E weighting at each exact midband, on pink noise",
    equation="L_A = 10 lg(sum 10^((L_b + A_b)/10))",
)
def programme_level_db(field: Field, weighting: Weighting = "A") -> Array:
    """
    Weighted level of a programme with equal energy in every third octave.

    Parameters
    ----------
    field
        Energies of N points.
    weighting
        A, C or Z.

    Returns
    -------
    array of shape (N,)
        Level against the reference of the sources' levels. [dB]

    Raises
    ------
    ValueError
        If the weighting is unknown.
    """
    factors = [10 ** (weighting_db(band.exact_midband_hz, weighting) / 10) for band in field.bands]
    return _level_db((field.energy * np.array(factors)).sum(axis=1))


@cites(
    KINSLER,
    "ch. 5 and 7, spherical waves with losses, added as phasors, from memory",
    equation=(
        "p(f) = sum_s g_s D_s e^(-a r) e^(-j 2 pi f (r/c + t_s)) / r; E_band = sum_i w_i |p(f_i)|^2"
    ),
)
def field_direct(
    speakers: Speakers,
    points_m: Array,
    *,
    bands: tuple[Band, ...] | None = None,
    air: Air = ROOM_AIR,
    each_line: bool = False,
) -> Field:
    """
    The field as its definition says it, line after line; slow, and the measure of `field`.

    Parameters
    ----------
    speakers
        One or more boxes.
    points_m
        Points, shape (N, 3). [m]
    bands
        Third octaves; if None, 25 Hz to 20 kHz.
    air
        State of the air.
    each_line
        True takes each box's pattern anew at every line; False once for each third octave, at its
        midband, as `field` does.

    Returns
    -------
    Field
        Energies of N points.

    Raises
    ------
    ValueError
        If there is no box, points_m does not have three columns, or the air is outside ISO 9613-1.
    """
    bands = _checked(speakers, points_m, bands)
    blocks = [
        points_m[start : start + DIRECT_BLOCK] for start in range(0, len(points_m), DIRECT_BLOCK)
    ]
    energies = [
        _direct_energy(speakers, block, bands, air, each_line=each_line) for block in blocks
    ]
    return Field(bands, np.concatenate(energies) if energies else np.zeros((0, len(bands))))


@cites(
    KINSLER,
    "ch. 5 and 7, as for the direct sum, with phasors at 2 f as squares of those at f, from memory",
    equation=(
        "p(f) = sum_s g_s D_s e^(-a r) e^(-j 2 pi f (r/c + t_s)) / r; E_band = sum_i w_i |p(f_i)|^2"
    ),
)
def field(
    speakers: Speakers,
    points_m: Array,
    *,
    bands: tuple[Band, ...] | None = None,
    air: Air = ROOM_AIR,
    workers: int = 2,
    precision: Precision = "double",
) -> Field:
    """
    The field at audience points.

    Parameters
    ----------
    speakers
        One or more boxes.
    points_m
        Points, shape (N, 3). [m]
    bands
        Third octaves; if None, 25 Hz to 20 kHz.
    air
        State of the air.
    workers
        Threads; the result does not depend on it.

    Returns
    -------
    Field
        Energies of N points.

    Raises
    ------
    ValueError
        If there is no box, points_m does not have three columns, the air is outside ISO 9613-1 or
        ``workers`` is below 1.

    Notes
    -----
    No reflections, no bodies in the way, no wind. A box's pattern is taken once for each third
    octave, at its midband; taking it at every line moves an array's third octaves above 1 kHz by
    about 0.4 dB rms. Within 0.1 dB of `field_direct` where the level is within 40 dB of the
    greatest.
    """
    if workers < 1:
        raise ValueError(f"workers must be at least 1, got {workers}")
    bands = _checked(speakers, points_m, bands)
    plan = Plan.of(
        speakers,
        bands,
        [_propagation(band, air) for band in bands],
        speed_m_s=air.speed_m_s,
        precision=precision,
    )
    return Field(bands, in_blocks(plan, points_m, workers=workers))


@lru_cache(maxsize=KEPT_PROPAGATIONS)
def _propagation(band: Band, air: Air) -> Propagation:
    """
    Absorption over a band as a straight line from line to line, by least squares: the midband alone
    is up to 2 dB off at 12.5 kHz.
    """
    losses = air.loss_np_per_m(band.lines_hz)
    lines = np.arange(len(losses)) - (len(losses) - 1) / 2
    slope = float((lines * losses).sum() / (lines * lines).sum())
    return Propagation(float(losses.mean()), slope)


def _direct_energy(
    speakers: Speakers, points_m: Array, bands: tuple[Band, ...], air: Air, *, each_line: bool
) -> Array:
    seen = bearings(speakers, points_m)
    energy = np.zeros((len(points_m), len(bands)))
    for place, band in enumerate(bands):
        losses = air.loss_np_per_m(band.lines_hz)
        pattern = _patterns(speakers, seen, band.midband_hz, air)
        for frequency_hz, share, loss in zip(band.lines_hz, band.shares, losses, strict=True):
            if each_line:
                pattern = _patterns(speakers, seen, float(frequency_hz), air)
            pressure = _pressures(_playing(speakers, band), seen, frequency_hz, air)
            total = (pattern * np.exp(-loss * seen.distance_m) * pressure).sum(axis=0)
            energy[:, place] += share * np.abs(total) ** 2
    return energy


def _pressures(
    gains: list[tuple[float, float]], seen: Bearings, frequency_hz: float, air: Air
) -> NDArray[np.complex128]:
    """Phasors of boxes that radiate alike, at 1/r, before absorption."""
    gain, delay_s = (np.array(column)[:, None] for column in zip(*gains, strict=True))
    travel_s = seen.distance_m / air.speed_m_s + delay_s
    return np.asarray(gain / seen.distance_m * np.exp(-2j * np.pi * frequency_hz * travel_s))


def _playing(speakers: Speakers, band: Band) -> list[tuple[float, float]]:
    """Pressure and delay of each box, in a band."""
    return [(s.pressure if s.plays(band.midband_hz) else 0.0, s.delay_ms / 1000) for s in speakers]


def _patterns(speakers: Speakers, seen: Bearings, frequency_hz: float, air: Air) -> Array:
    across = np.empty_like(seen.aside_rad)
    for one, rows in _alike(speakers, lambda s: (s.coverage_deg, s.width_m)):
        across[rows] = across_response(
            one, seen.aside_rad[rows], frequency_hz=frequency_hz, speed_m_s=air.speed_m_s
        )
    upward = np.empty_like(seen.up_rad)
    for one, rows in _alike(speakers, lambda s: (s.vertical_coverage_deg, s.height_m)):
        upward[rows] = upward_response(
            one, seen.up_rad[rows], frequency_hz=frequency_hz, speed_m_s=air.speed_m_s
        )
    return across * upward


def _alike(
    speakers: Speakers, pattern: Callable[[Loudspeaker], object]
) -> Iterator[tuple[Loudspeaker, list[int]]]:
    """One box of each pattern, with the rows of all that have it."""
    found: dict[object, list[int]] = {}
    for row, speaker in enumerate(speakers):
        found.setdefault(pattern(speaker), []).append(row)
    for rows in found.values():
        yield speakers[rows[0]], rows


def _level_db(energy: Array) -> Array:
    with np.errstate(divide="ignore"):
        return np.asarray(10 * np.log10(energy), dtype=np.float64)


def _checked(
    speakers: Speakers, points_m: Array, bands: tuple[Band, ...] | None
) -> tuple[Band, ...]:
    if not speakers:
        raise ValueError("speakers must hold at least one box, got none")
    if points_m.ndim != 2 or points_m.shape[1] != 3:
        raise ValueError(f"points_m must have three columns, got shape {points_m.shape}")
    return third_octaves() if bands is None else bands
