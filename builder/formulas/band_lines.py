"""Frequency lines that stand for third-octave bands of pink noise."""

import math
from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import NDArray

from builder.formulas.air import exact_midband_hz
from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero
from builder.formulas.sources import COMMON_PRACTICE, IEC_61260_1

Array = NDArray[np.float64]

BANDS_PER_OCTAVE = 3
INTERVALS_BELOW_HZ = ((55.0, 2), (140.0, 4), (450.0, 8), (math.inf, 16))
"""
Intervals between lines in a band, by its midband: with fewer, bands heard by several sources at
once are up to 2 dB off above 1 kHz.
"""


@dataclass(frozen=True, slots=True)
class Band:
    """
    A third octave as lines at even steps, both edges included.

    ``index`` counts third octaves from 1 kHz. Frequencies in Hz; ``intervals`` is one less than the
    number of lines.
    """

    index: int
    intervals: int

    @property
    def midband_hz(self) -> float:
        """
        Middle of the band on the scale of twos, at most 1.2 % from the exact midband of the
        standard.
        """
        return 1000 * math.pow(2, self.index / BANDS_PER_OCTAVE)

    @property
    def lower_hz(self) -> float:
        """Lower edge, and first line."""
        return self.midband_hz / math.pow(2, 0.5 / BANDS_PER_OCTAVE)

    @property
    def step_hz(self) -> float:
        """From line to line."""
        return (
            self.midband_hz
            * (math.pow(2, 0.5 / BANDS_PER_OCTAVE) - math.pow(2, -0.5 / BANDS_PER_OCTAVE))
            / self.intervals
        )

    @property
    def exact_midband_hz(self) -> float:
        """Exact midband of the standard; weightings are taken there."""
        return 1000 * math.pow(10, self.index / 10)

    @property
    def lines_hz(self) -> Array:
        """Every line."""
        return self.lower_hz + self.step_hz * np.arange(self.intervals + 1, dtype=np.float64)

    @property
    def shares(self) -> Array:
        """
        Share of the band's energy that each line stands for: pink noise by the trapezium rule; they
        sum to 1.
        """
        ends = np.ones(self.intervals + 1)
        ends[[0, -1]] = 0.5
        energy = ends / self.lines_hz
        return np.asarray(energy / energy.sum(), dtype=np.float64)


@cites(
    IEC_61260_1,
    "third octaves; on a scale of twos, so that an octave up is exactly double",
    equation="f_m = 1000 * 2^(k/3); lines from f_m 2^(-1/6) to f_m 2^(1/6)",
)
def third_octaves(
    lowest_hz: float = 25.0, highest_hz: float = 20_000.0, *, intervals: int | None = None
) -> tuple[Band, ...]:
    """
    Third octaves from one nominal midband to another.

    Parameters
    ----------
    lowest_hz, highest_hz
        Nominal midbands, both included. [Hz]
    intervals
        Intervals between lines in every band; if None, 2 below 55 Hz, 4 to 140, 8 to 450, 16 above
        (366 lines from 25 Hz to 20 kHz).

    Returns
    -------
    tuple of Band
        Bands in rising order.

    Raises
    ------
    ValueError
        If a frequency is not above 0, they do not rise, or ``intervals`` is below 1.
    """
    first, last = (
        round(BANDS_PER_OCTAVE * math.log2(above_zero("frequency_hz", f) / 1000))
        for f in (lowest_hz, highest_hz)
    )
    if last < first:
        raise ValueError(f"highest_hz must be at least lowest_hz {lowest_hz}, got {highest_hz}")
    if intervals is not None and intervals < 1:
        raise ValueError(f"intervals must be at least 1, got {intervals}")
    return _bands(first, last, intervals)


@cache
def _bands(first: int, last: int, intervals: int | None) -> tuple[Band, ...]:
    return tuple(
        Band(k, intervals or _intervals(Band(k, 1).midband_hz)) for k in range(first, last + 1)
    )


@cites(
    COMMON_PRACTICE,
    "an octave band is its three third octaves",
    equation="E_octave = E_lower + E_middle + E_upper",
)
def octave_members(bands: tuple[Band, ...], *, octave_hz: float) -> tuple[int, ...]:
    """
    Places of an octave's third octaves among bands.

    Parameters
    ----------
    bands
        Third octaves.
    octave_hz
        Nominal midband of the octave. [Hz]

    Returns
    -------
    tuple of int
        Three places.

    Raises
    ------
    ValueError
        If that is no octave, or a third of it is missing.
    """
    middle = BANDS_PER_OCTAVE * round(math.log2(exact_midband_hz(octave_hz, "octave") / 1000))
    found = tuple(place for place, band in enumerate(bands) if abs(band.index - middle) <= 1)
    if len(found) != BANDS_PER_OCTAVE:
        raise ValueError(f"octave_hz must be an octave that all bands cover, got {octave_hz}")
    return found


def _intervals(midband_hz: float) -> int:
    return next(count for below_hz, count in INTERVALS_BELOW_HZ if midband_hz < below_hz)
