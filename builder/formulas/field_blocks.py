"""
The field in blocks of points that stay in the processor's cache.

Sines and cosines are taken for the lowest octave only: the phasor at 2 f is the square of that at f. From line to line of a band a phasor turns by a
fixed complex step, which carries the slope of the air's absorption. Sums run over rows in order, without a matrix library, so that thread counts and
block sizes cannot change a result by more than the last digits.
"""

import math
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from builder.formulas.band_lines import BANDS_PER_OCTAVE, Band
from builder.formulas.cite import cites
from builder.formulas.loudspeakers import Loudspeaker, Speakers, across_response, bearings, upward_response
from builder.formulas.sources import ABRAMOWITZ_STEGUN

Array = NDArray[np.float64]
Phasors = NDArray[np.complex128]
Places = NDArray[np.intp]
Rows = Places | slice

POINTS_IN_BLOCK = 512
PATTERN_STEPS = 8192
PHASE_STEPS = 4096
NEGLIGIBLE_TILT_NP = 0.01
"""Absorption that rises by less than 0.09 dB over a band is taken at its mean: the band's energy moves by less than 0.001 dB."""


@dataclass(frozen=True, slots=True)
class Propagation:
    """Absorption in a band: the mean over its lines, and the rise from line to line. [Np/m]"""

    mean_np_per_m: float
    rise_np_per_m: float


@dataclass(frozen=True, slots=True)
class Plan:
    """
    What is the same for all blocks.

    ``across`` and ``upward`` hold the response of each distinct model by band and angle, shape (bands, models * PATTERN_STEPS);
    the ``..._from`` columns say where each box's model begins. ``rows`` names the boxes that play in each band.
    """

    speakers: Speakers
    bands: tuple[Band, ...]
    propagations: list[Propagation]
    speed_m_s: float
    across: Array
    upward: Array
    across_from: Places
    upward_from: Places
    rows: list[Rows]

    @classmethod
    def of(cls, speakers: Speakers, bands: tuple[Band, ...], propagations: list[Propagation], *, speed_m_s: float) -> "Plan":
        """Tables for boxes in bands."""
        aside, up = np.linspace(0, math.pi, PATTERN_STEPS), np.linspace(0, math.pi / 2, PATTERN_STEPS)
        sideways, across_from = _distinct(speakers, [(s.coverage_deg, s.width_m) for s in speakers])
        vertical, upward_from = _distinct(speakers, [(s.vertical_coverage_deg, s.height_m) for s in speakers])
        across = [np.concatenate([across_response(s, aside, frequency_hz=b.midband_hz, speed_m_s=speed_m_s) for s in sideways]) for b in bands]
        upward = [np.concatenate([upward_response(s, up, frequency_hz=b.midband_hz, speed_m_s=speed_m_s) for s in vertical]) for b in bands]
        rows = [_rows(speakers, band) for band in bands]
        return cls(speakers, bands, propagations, speed_m_s, np.array(across), np.array(upward), across_from, upward_from, rows)


@dataclass(frozen=True, slots=True)
class Paths:
    """From every box to every point of a block, shape (boxes, points): distance [m], time [s], pressure at 1/r [-], places in the pattern tables."""

    distance_m: Array
    travel_s: Array
    pressure: Array
    aside: Places
    up: Places


@dataclass(frozen=True, slots=True)
class Turning:
    """Phasors of a band's first line and the steps from line to line, shape (boxes, points)."""

    band: Band
    first: Phasors
    step: Phasors


@dataclass(frozen=True, slots=True)
class Scratch:
    """Room that one thread uses for every band of every block: fresh memory costs more than the sums."""

    moving: Phasors
    step: Phasors
    amplitude: Array
    factor: Array

    @classmethod
    def of(cls, boxes: int, points: int) -> "Scratch":
        """Room for a block."""
        shape = boxes, points
        return cls(np.empty(shape, np.complex128), np.empty(shape, np.complex128), np.empty(shape), np.empty(shape))

    def cut(self, boxes: int) -> "Scratch":
        """Room for fewer boxes."""
        return Scratch(self.moving[:boxes], self.step[:boxes], self.amplitude[:boxes], self.factor[:boxes])


def in_blocks(plan: Plan, points_m: Array, *, workers: int) -> Array:
    """
    Energy of all points. Blocks are the same for any number of workers.

    Parameters
    ----------
    plan
        Boxes, bands and tables.
    points_m
        Points, shape (N, 3). [m]
    workers
        Threads.

    Returns
    -------
    array of shape (N, bands)
        Energy against that of level 0 dB. [-]
    """
    energy = np.empty((len(points_m), len(plan.bands)))
    starts = range(0, len(points_m), POINTS_IN_BLOCK)
    with ThreadPoolExecutor(workers) as pool:
        list(pool.map(lambda worker: _fill(energy, plan, points_m, starts[worker::workers]), range(workers)))
    return energy


@cites(
    ABRAMOWITZ_STEGUN,
    "4.3.16 and 4.3.17, sums of angles, with the first terms of 4.3.65 and 4.3.66, from memory",
    equation="e^(j(a + b)) = e^(ja) (1 - b^2/2 + j (b - b^3/6))",
)
def unit_phasors(turns: Array) -> Phasors:
    """
    Complex exponentials to about 1e-13, from a table and a short series: faster than sine and cosine, and by products only.

    Parameters
    ----------
    turns
        Angles as whole turns, any shape. [turn]

    Returns
    -------
    array of the same shape
        ``exp(2j pi turns)``. [-]
    """
    rest = turns * PHASE_STEPS
    whole = np.rint(rest)
    places = whole.astype(np.int64)
    places &= PHASE_STEPS - 1
    rest -= whole
    rest *= math.tau / PHASE_STEPS
    small = np.empty(turns.shape, dtype=np.complex128)
    square = np.multiply(rest, rest, out=whole)
    np.subtract(1, square / 2, out=small.real)
    np.multiply(rest, 1 - square / 6, out=small.imag)
    small *= _PHASE_TABLE.take(places)
    return small


_PHASE_TABLE = np.array([complex(math.cos(math.tau * k / PHASE_STEPS), math.sin(math.tau * k / PHASE_STEPS)) for k in range(PHASE_STEPS)])


def _fill(energy: Array, plan: Plan, points_m: Array, starts: range) -> None:
    """Energy of one worker's blocks."""
    room = Scratch.of(len(plan.speakers), POINTS_IN_BLOCK) if starts else None
    for start in starts:
        block = points_m[start : start + POINTS_IN_BLOCK]
        if room is None or len(block) < POINTS_IN_BLOCK:
            room = Scratch.of(len(plan.speakers), len(block))
        energy[start : start + len(block)] = _block_energy(plan, block, room).T


def _block_energy(plan: Plan, points_m: Array, room: Scratch) -> Array:
    """Energy of a block, shape (bands, points). One family of octaves after the other, so that only one family's phasors are in the cache."""
    paths = _paths(plan, points_m)
    energy = np.zeros((len(plan.bands), len(points_m)))
    for family in range(BANDS_PER_OCTAVE):
        turning: Turning | None = None
        for place, band in enumerate(plan.bands):
            if band.index % BANDS_PER_OCTAVE == family:
                turning = _turning(turning, band, paths.travel_s)
                energy[place] = _band_energy(plan, place, paths, turning, room)
    return energy


def _paths(plan: Plan, points_m: Array) -> Paths:
    seen = bearings(plan.speakers, points_m)
    delays_s = np.array([s.delay_ms / 1000 for s in plan.speakers])[:, None]
    pressures = np.array([s.pressure for s in plan.speakers])[:, None]
    return Paths(
        seen.distance_m,
        seen.distance_m / plan.speed_m_s + delays_s,
        pressures / seen.distance_m,
        _places(seen.aside_rad, math.pi) + plan.across_from,
        _places(np.abs(seen.up_rad), math.pi / 2) + plan.upward_from,
    )


def _turning(octave_below: Turning | None, band: Band, travel_s: Array) -> Turning:
    """Phasors of a band, by squaring those an octave below: its lines are at doubled frequencies, or halfway between these too."""
    if octave_below is None or octave_below.band.index != band.index - BANDS_PER_OCTAVE:
        return _turning_afresh(band, travel_s)
    first, step, finer = octave_below.first, octave_below.step, band.intervals / octave_below.band.intervals
    if finer not in (1, 2):
        return _turning_afresh(band, travel_s)
    np.multiply(first, first, out=first)
    if finer == 1:
        np.multiply(step, step, out=step)
    return Turning(band, first, step)


def _turning_afresh(band: Band, travel_s: Array) -> Turning:
    return Turning(band, unit_phasors(-band.lower_hz * travel_s), unit_phasors(-band.step_hz * travel_s))


def _band_energy(plan: Plan, place: int, paths: Paths, turning: Turning, room: Scratch) -> Array:
    """Energy of a block in one band, shape (points,)."""
    rows, air = plan.rows[place], plan.propagations[place]
    distance_m = paths.distance_m[rows]
    if not len(distance_m):
        return np.zeros(distance_m.shape[1])
    room = room.cut(len(distance_m))
    first_np_per_m, step = air.mean_np_per_m, turning.step[rows]
    if air.rise_np_per_m * turning.band.intervals * float(distance_m.max()) > NEGLIGIBLE_TILT_NP:
        first_np_per_m -= air.rise_np_per_m * turning.band.intervals / 2
        step = np.multiply(step, _decay(distance_m, air.rise_np_per_m, room.factor), out=room.step)
    amplitude = _decay(distance_m, first_np_per_m, room.amplitude)
    amplitude *= plan.across[place].take(paths.aside[rows], out=room.factor, mode="clip")
    amplitude *= plan.upward[place].take(paths.up[rows], out=room.factor, mode="clip")
    amplitude *= paths.pressure[rows]
    return _summed_energy(np.multiply(turning.first[rows], amplitude, out=room.moving), step, turning.band.shares)


def _decay(distance_m: Array, loss_np_per_m: float, out: Array) -> Array:
    np.multiply(distance_m, -loss_np_per_m, out=out)
    return np.exp(out, out=out)


def _summed_energy(moving: Phasors, step: Phasors, shares: Array) -> Array:
    """Energy over a band's lines. ``moving`` is turned in place."""
    totals = np.empty((len(shares), moving.shape[1]), dtype=np.complex128)
    np.add.reduce(moving, axis=0, out=totals[0])
    for total in totals[1:]:
        np.multiply(moving, step, out=moving)
        np.add.reduce(moving, axis=0, out=total)
    powers = totals.real**2 + totals.imag**2
    return np.asarray((powers * shares[:, None]).sum(axis=0), dtype=np.float64)


def _places(angles_rad: Array, widest_rad: float) -> Places:
    return np.rint(angles_rad * ((PATTERN_STEPS - 1) / widest_rad)).astype(np.intp)


def _rows(speakers: Speakers, band: Band) -> Rows:
    """Boxes that play a band; as a slice where they stand together, which spares a copy."""
    playing = [row for row, speaker in enumerate(speakers) if speaker.plays(band.midband_hz)]
    together = bool(playing) and playing[-1] - playing[0] == len(playing) - 1
    return slice(playing[0], playing[-1] + 1) if together else np.array(playing, dtype=np.intp)


def _distinct(speakers: Speakers, models: list[tuple[object, float]]) -> tuple[list[Loudspeaker], Places]:
    """One box of each distinct model, and where each box's model begins in a table of them."""
    order = dict(reversed(list(zip(models, speakers, strict=True))))
    places = {model: place for place, model in enumerate(order)}
    return list(order.values()), np.array([[places[model] * PATTERN_STEPS] for model in models], dtype=np.intp)
