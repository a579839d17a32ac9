"""
The field in blocks of points that stay in the processor's cache.

Sines and cosines are taken for the lowest octave only: the phasor at 2 f is the square of that at
f. From line to line of a band a phasor turns by a fixed complex step, which carries the slope of
the air's absorption; a band's last line is the next band's first. Sums run over rows in order,
without a matrix library, so that thread counts and block sizes cannot change a result by more than
the last digits.

Why this is right: exp(-j 2 pi f t) squared is that at 2 f, and a step of d in f turns it by
exp(-j 2 pi d t), so one sine and cosine for each box and point serve all octaves. Where it stops:
each squaring doubles the rounding; absorption within a band is taken as a slope, or at its mean
where that moves the band by less than 0.001 dB; patterns are read from tables. ``field.py`` is the
plain form by the definition, and the tests hold this one to it.
"""

import math
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from builder.formulas.band_lines import BANDS_PER_OCTAVE, Band
from builder.formulas.cite import cites
from builder.formulas.field_tables import (
    PATTERN_STEPS,
    PHASORS,
    REALS,
    Places,
    Plan,
    Precision,
    Reals,
)
from builder.formulas.loudspeakers import bearings
from builder.formulas.sources import ABRAMOWITZ_STEGUN

Array = NDArray[np.float64]
Phasors = NDArray[np.complex128] | NDArray[np.complex64]

PAIRS_IN_BLOCK: dict[Precision, int] = {"double": 16_384, "single": 32_768}
"""Points times boxes: what is turned together then fits the cache of a processor core."""
PHASE_STEPS = 4096
NEGLIGIBLE_TILT_NP = 0.01
"""
Absorption that rises by less than 0.09 dB over a band is taken at its mean: the band's energy moves
by less than 0.001 dB.
"""


@dataclass(frozen=True, slots=True)
class Paths:
    """
    From every box to every point of a block, shape (boxes, points): distance [m], time [s],
    pressure at 1/r [-], places in the pattern tables.
    """

    distance_m: Reals
    travel_s: Array
    pressure: Reals
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
    """
    Room that one thread uses for every band of every block: fresh memory costs more than the sums.
    """

    moving: Phasors
    step: Phasors
    amplitude: Reals
    factor: Reals

    @classmethod
    def of(cls, plan: Plan, points: int) -> "Scratch":
        """Room for a block."""
        shape, real, phasor = (
            (len(plan.speakers), points),
            REALS[plan.precision],
            PHASORS[plan.precision],
        )
        return cls(
            np.empty(shape, phasor),
            np.empty(shape, phasor),
            np.empty(shape, real),
            np.empty(shape, real),
        )

    def cut(self, boxes: int) -> "Scratch":
        """Room for fewer boxes."""
        return Scratch(
            self.moving[:boxes], self.step[:boxes], self.amplitude[:boxes], self.factor[:boxes]
        )


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
    count = max(1, PAIRS_IN_BLOCK[plan.precision] // len(plan.speakers))
    starts = range(0, len(points_m), count)
    if len(starts) < 2:
        _fill(energy, plan, points_m, starts, count)
        return energy
    with ThreadPoolExecutor(workers) as pool:
        list(
            pool.map(
                lambda worker: _fill(energy, plan, points_m, starts[worker::workers], count),
                range(workers),
            )
        )
    return energy


@cites(
    ABRAMOWITZ_STEGUN,
    "4.3.16 and 4.3.17, sums of angles, with the first terms of 4.3.65 and 4.3.66, from memory",
    equation="e^(j(a + b)) = e^(ja) (1 - b^2/2 + j (b - b^3/6))",
)
def unit_phasors(turns: Array) -> NDArray[np.complex128]:
    """
    Complex exponentials to about 1e-13, from a table and a short series: faster than sine and
    cosine, and by products only.

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
    np.multiply(square, -0.5, out=small.real)
    small.real += 1
    square *= -1 / 6
    square += 1
    np.multiply(rest, square, out=small.imag)
    small *= _PHASE_TABLE.take(places)
    return small


_PHASE_TABLE = np.array(
    [
        complex(math.cos(math.tau * k / PHASE_STEPS), math.sin(math.tau * k / PHASE_STEPS))
        for k in range(PHASE_STEPS)
    ]
)


def _fill(energy: Array, plan: Plan, points_m: Array, starts: range, count: int) -> None:
    """Energy of one worker's blocks."""
    room = Scratch.of(plan, min(count, len(points_m)))
    for start in starts:
        block = points_m[start : start + count]
        if len(block) < room.moving.shape[1]:
            room = Scratch.of(plan, len(block))
        energy[start : start + len(block)] = _block_energy(plan, block, room).T


def _block_energy(plan: Plan, points_m: Array, room: Scratch) -> Array:
    """
    Energy of a block, shape (bands, points).

    One family of octaves after the other, so that only one family's phasors are in the cache.
    """
    paths = _paths(plan, points_m)
    energy = np.zeros((len(plan.bands), len(points_m)))
    lowest = _lowest(plan, paths.travel_s)
    for family in range(BANDS_PER_OCTAVE):
        turning: Turning | None = None
        for place, band in enumerate(plan.bands):
            if band.index % BANDS_PER_OCTAVE == family:
                turning = (
                    lowest[place]
                    if place < len(lowest)
                    else _turning(turning, band, paths.travel_s, plan)
                )
                energy[place] = _band_energy(plan, place, paths, turning, room)
    return energy


def _paths(plan: Plan, points_m: Array) -> Paths:
    seen, real = bearings(plan.speakers, points_m), REALS[plan.precision]
    delays_s = np.array([s.delay_ms / 1000 for s in plan.speakers])[:, None]
    pressures = np.array([s.pressure for s in plan.speakers])[:, None]
    return Paths(
        seen.distance_m.astype(real, copy=False),
        seen.distance_m / plan.speed_m_s + delays_s,
        (pressures / seen.distance_m).astype(real, copy=False),
        _places(seen.aside_rad, math.pi) + plan.across_from,
        _places(np.abs(seen.up_rad), math.pi / 2) + plan.upward_from,
    )


def _lowest(plan: Plan, travel_s: Array) -> list[Turning]:
    """
    The bands of the lowest octave: the first line of each but the first is the last line of the
    band below.
    """
    found: list[Turning] = []
    first: NDArray[np.complex128] | None = None
    for band in plan.bands[:BANDS_PER_OCTAVE]:
        if first is None or band.index != found[-1].band.index + 1:
            first = unit_phasors(-band.lower_hz * travel_s)
        step = unit_phasors(-band.step_hz * travel_s)
        found.append(_as_turning(band, first, step, plan))
        first = first * _power(step, band.intervals)
    return found


def _power(phasors: NDArray[np.complex128], exponent: int) -> NDArray[np.complex128]:
    """A whole power by squares."""
    half = phasors if exponent < 2 else _power(phasors, exponent // 2)
    whole = half if exponent < 2 else half * half
    return whole * phasors if exponent > 1 and exponent % 2 else whole


def _as_turning(
    band: Band, first: NDArray[np.complex128], step: NDArray[np.complex128], plan: Plan
) -> Turning:
    kind = PHASORS[plan.precision]
    return Turning(band, first.astype(kind, copy=False), step.astype(kind, copy=False))


def _turning(octave_below: Turning | None, band: Band, travel_s: Array, plan: Plan) -> Turning:
    """
    Phasors of a band, by squaring those an octave below: its lines are at doubled frequencies, or
    halfway between these too.
    """
    finer = (
        band.intervals / octave_below.band.intervals
        if octave_below and octave_below.band.index == band.index - BANDS_PER_OCTAVE
        else 0
    )
    if octave_below is None or finer not in (1, 2):
        return _as_turning(
            band,
            unit_phasors(-band.lower_hz * travel_s),
            unit_phasors(-band.step_hz * travel_s),
            plan,
        )
    first, step = octave_below.first, octave_below.step
    np.multiply(first, first, out=first)
    if finer == 1:
        np.multiply(step, step, out=step)
    return Turning(band, first, step)


def _band_energy(plan: Plan, place: int, paths: Paths, turning: Turning, room: Scratch) -> Array:
    """Energy of a block in one band, shape (points,)."""
    rows, air = plan.playing[place], plan.propagations[place]
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
    return _summed_energy(
        np.multiply(turning.first[rows], amplitude, out=room.moving), step, turning.band.shares
    )


def _decay(distance_m: Reals, loss_np_per_m: float, out: Reals) -> Reals:
    np.multiply(distance_m, -loss_np_per_m, out=out)
    return np.exp(out, out=out)


def _summed_energy(moving: Phasors, step: Phasors, shares: Array) -> Array:
    """Energy over a band's lines. ``moving`` is turned in place."""
    totals = np.empty((len(shares), moving.shape[1]), dtype=moving.dtype)
    np.add.reduce(moving, axis=0, out=totals[0])
    for total in totals[1:]:
        np.multiply(moving, step, out=moving)
        np.add.reduce(moving, axis=0, out=total)
    powers = totals.real.astype(np.float64) ** 2 + totals.imag.astype(np.float64) ** 2
    return np.asarray((powers * shares[:, None]).sum(axis=0), dtype=np.float64)


def _places(angles_rad: Array, widest_rad: float) -> Places:
    return np.rint(angles_rad * ((PATTERN_STEPS - 1) / widest_rad)).astype(np.intp)
