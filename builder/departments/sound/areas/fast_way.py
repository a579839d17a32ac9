"""
How far the fast way of adding up lies from the definition, measured on this system at some of its
own listeners.
"""

from collections.abc import Iterator, Sequence

import numpy as np

from builder.cautions import NOISE
from builder.departments.sound.areas.coverage import THIRDS, Covered, Listening
from builder.formulas.field import field, field_direct
from builder.pack import Figure, Input, Item, Value
from builder.working import figure, missing, worked

CHECKED_POINTS, FINE_POINTS = 12, 4
"""
At so many listeners the fast sum is held against the direct one, and at so many against patterns
taken anew at every line, which is slow.
"""
FINE_BANDS = tuple(band for band in THIRDS if band.index % 9 == 0)
"""125 Hz, 1 kHz and 8 kHz: all bands would take longer than the maps."""
WITHIN_DB = 40.0
FAST = "Fast sum against the direct sum, third octaves"
LEFT_OUT = (
    "This is the error of the arithmetic. How far the model lies from the room is told beside it,"
    " where a source tells it."
)


def check_items(
    found: Sequence[Covered], heard: Listening | None, lacks: Sequence[str] = ()
) -> Iterator[Item]:
    """The measured error of the maps, and how finely they add up; or what the maps lack."""
    if lacks:
        work = worked(field_direct, inputs=(), leaves_out=LEFT_OUT)
        untold = missing("sound.check.fast", FAST, work, lacks, caution=NOISE)
        yield check_item((untold,))
    if found and heard:
        yield check_item(tuple(check_figures(found, heard)))


def check_item(figures: tuple[Figure, ...]) -> Item:
    """What is told of the maps' arithmetic."""
    return Item(key="sound.check", kind="check", name="The maps' arithmetic", figures=figures)


def check_figures(found: Sequence[Covered], heard: Listening) -> Iterator[Figure]:
    """Differences in third octaves, and the number of lines."""
    points = np.concatenate([each.points for each in found])
    some = points[:: max(1, len(points) // CHECKED_POINTS)][:CHECKED_POINTS]
    speakers = heard.system.speakers(fills=True)
    fast, direct = (
        field(speakers, some, bands=THIRDS, air=heard.air),
        field_direct(speakers, some, bands=THIRDS, air=heard.air),
    )
    few = some[:: max(1, len(some) // FINE_POINTS)][:FINE_POINTS]
    plain, fine = (
        field_direct(speakers, few, bands=FINE_BANDS, air=heard.air, each_line=each)
        for each in (False, True)
    )
    worst = greatest_db(fast.levels_db(), direct.levels_db())
    if worst is not None:
        yield difference(
            "fast",
            FAST,
            worst,
            f"{len(some)} listeners, levels within {WITHIN_DB:g} dB of the highest",
        )
    worst = greatest_db(plain.levels_db(), fine.levels_db())
    if worst is not None:
        yield difference(
            "patterns",
            "Box patterns once a third octave, not at every line",
            worst,
            f"{len(few)} listeners, third octaves at 125 Hz, 1 kHz and 8 kHz",
        )
    yield lines_figure()


def greatest_db(levels: np.ndarray, measure: np.ndarray) -> float | None:
    """The greatest difference where the level counts; None where nothing plays in these bands."""
    near = np.isfinite(levels) & np.isfinite(measure) & (measure > measure.max() - WITHIN_DB)
    return float(np.abs(levels[near] - measure[near]).max()) if near.any() else None


def difference(name: str, label: str, greatest: float, where: str) -> Figure:
    """One measured difference."""
    work = worked(
        field_direct,
        inputs=(Input("Where", where),),
        steps=(f"At most {greatest:.3f} dB apart.",),
        leaves_out=LEFT_OUT,
    )
    text = f"at most {greatest:.2f} dB" if greatest >= 0.005 else "below 0.01 dB"
    return figure(
        f"sound.check.{name}", label, Value(text, number=greatest, unit="dB"), work, caution=NOISE
    )


def lines_figure() -> Figure:
    """How many frequencies stand for the bands."""
    counts = [len(band.lines_hz) for band in THIRDS]
    text = f"{sum(counts)} in {len(counts)} third octaves, {min(counts)} to {max(counts)} in each"
    work = worked(
        field,
        inputs=(Input("Bands", "third octaves from 25 Hz to 20 kHz"),),
        steps=("More in high bands, where many arrivals interfere.",),
    )
    return figure(
        "sound.check.lines",
        "Frequencies added up",
        Value(text, number=float(sum(counts))),
        work,
        caution=NOISE,
    )
