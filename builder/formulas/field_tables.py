"""
What is the same for every block of the field: which boxes play a band, and the patterns of the
boxes as tables over angle.
"""

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from builder.formulas.band_lines import Band
from builder.formulas.loudspeakers import Loudspeaker, Speakers, across_response, upward_response

Array = NDArray[np.float64]
Places = NDArray[np.intp]
Rows = Places | slice
Precision = Literal["double", "single"]
Reals = NDArray[np.float64] | NDArray[np.float32]

PATTERN_STEPS = 8192
KEPT_TABLES = 256
"""Tables that are kept for the next field with the same models: 16 MB at most, each way."""
STILL = Loudspeaker(x_m=0, y_m=0, z_m=0)
REALS: dict[Precision, type[np.floating]] = {"double": np.float64, "single": np.float32}
PHASORS: dict[Precision, type[np.complexfloating]] = {
    "double": np.complex128,
    "single": np.complex64,
}


@dataclass(frozen=True, slots=True)
class Propagation:
    """Absorption in a band: the mean over its lines, and the rise from line to line. [Np/m]"""

    mean_np_per_m: float
    rise_np_per_m: float


@dataclass(frozen=True, slots=True)
class Plan:
    """
    What is the same for all blocks.

    ``across`` and ``upward`` hold the response of each distinct model by band and angle, shape
    (bands, models * PATTERN_STEPS); the ``..._from`` columns say where each box's model begins.
    ``playing`` names the boxes that play in each band.
    """

    speakers: Speakers
    bands: tuple[Band, ...]
    propagations: list[Propagation]
    speed_m_s: float
    precision: Precision
    across: Reals
    upward: Reals
    across_from: Places
    upward_from: Places
    playing: list[Rows]

    @classmethod
    def of(
        cls,
        speakers: Speakers,
        bands: tuple[Band, ...],
        propagations: list[Propagation],
        *,
        speed_m_s: float,
        precision: Precision = "double",
    ) -> "Plan":
        """Tables for boxes in bands."""
        sideways, across_from = _distinct(
            [replace(STILL, coverage_deg=s.coverage_deg, width_m=s.width_m) for s in speakers]
        )
        vertical, upward_from = _distinct(
            [
                replace(STILL, vertical_coverage_deg=s.vertical_coverage_deg, height_m=s.height_m)
                for s in speakers
            ]
        )
        across, upward = (
            [
                np.concatenate([table(s, band.midband_hz, speed_m_s) for s in models])
                for band in bands
            ]
            for table, models in ((across_table, sideways), (upward_table, vertical))
        )
        real = REALS[precision]
        return cls(
            speakers,
            bands,
            propagations,
            speed_m_s,
            precision,
            np.array(across, dtype=real),
            np.array(upward, dtype=real),
            across_from,
            upward_from,
            [_playing(speakers, band) for band in bands],
        )


@lru_cache(maxsize=KEPT_TABLES)
def across_table(model: Loudspeaker, frequency_hz: float, speed_m_s: float) -> Array:
    """Response of a model at angles aside from 0 to half a turn."""
    return _kept(
        across_response(
            model,
            np.linspace(0, math.pi, PATTERN_STEPS),
            frequency_hz=frequency_hz,
            speed_m_s=speed_m_s,
        )
    )


@lru_cache(maxsize=KEPT_TABLES)
def upward_table(model: Loudspeaker, frequency_hz: float, speed_m_s: float) -> Array:
    """Response of a model at angles up or down from 0 to a quarter of a turn."""
    return _kept(
        upward_response(
            model,
            np.linspace(0, math.pi / 2, PATTERN_STEPS),
            frequency_hz=frequency_hz,
            speed_m_s=speed_m_s,
        )
    )


def _kept(table: Array) -> Array:
    table.setflags(write=False)
    return table


def _playing(speakers: Speakers, band: Band) -> Rows:
    """Boxes that play a band; as a slice where they stand together, which spares a copy."""
    playing = [place for place, speaker in enumerate(speakers) if speaker.plays(band.midband_hz)]
    together = bool(playing) and playing[-1] - playing[0] == len(playing) - 1
    return slice(playing[0], playing[-1] + 1) if together else np.array(playing, dtype=np.intp)


def _distinct(models: list[Loudspeaker]) -> tuple[list[Loudspeaker], Places]:
    """Each distinct model once, and where each box's model begins in a table of them."""
    places = {model: place for place, model in enumerate(dict.fromkeys(models))}
    return list(places), np.array(
        [[places[model] * PATTERN_STEPS] for model in models], dtype=np.intp
    )
