"""
What the house system reaches at the mix position by the makers' figures: an estimate with its
error, never a promise.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import isfinite, log10

from builder.cautions import NOISE
from builder.departments.sound.areas.coverage import THIRDS, Listening, mean_level_db
from builder.formulas.field import field, programme_level_db
from builder.formulas.sources import COMMON_PRACTICE
from builder.pack import Figure, Input, Reference, Value, Working
from builder.reading.quantities import Level
from builder.working import figure, missing, worked

GREATEST = "Highest level by the makers' figures"
AVERAGE = "Highest average level by the makers' figures"
EXPECTED_ERROR_DB = 5
"""
How far a real room and real boxes may lie from a level by the makers' figures: from experience, no
source.
"""
LEFT_OUT = (
    "Reflections, compression, limiters and the room: a measured level can differ by 5 dB or more."
)


def greatest_figure(heard: Listening, key: str) -> Figure:
    """
    The level at the mix position when every box is at its maker's level, less what the house turns
    it down.
    """
    label, used = GREATEST, heard.system.used
    means = tuple(
        Input(
            model.name,
            f"{model.level.text} at 1 m" if isinstance(model.level, Level) else "not stated",
        )
        for model in used
    )
    work = level_working(heard, means)
    if any(not isinstance(model.level, Level) for model in used):
        return missing(
            key,
            label,
            work,
            [
                f"the maker's level of {model.name}"
                for model in used
                if not isinstance(model.level, Level)
            ],
            caution=NOISE,
        )
    energies = field(heard.system.speakers(fills=True), heard.mix, bands=THIRDS, air=heard.air)
    total = float(energies.energy.sum(axis=1).mean())
    level_db = 10 * log10(total) if total > 0 else float("-inf")
    note = (
        f"As the makers mean their levels, 25 Hz to 20 kHz, unweighted; ±{EXPECTED_ERROR_DB} dB. It"
        " is no measurement and no promise."
    )
    return figure(
        key,
        label,
        (
            Value(f"{level_db:.0f} dB", number=level_db, unit="dB")
            if isfinite(level_db)
            else Value("no sound")
        ),
        work,
        caution=NOISE,
        note=note,
    )


def untold_levels(lacks: Sequence[str], key: str) -> Iterator[Figure]:
    """Both levels where something that every map needs is not known."""
    work = worked(field, programme_level_db, inputs=(), leaves_out=LEFT_OUT)
    yield missing(f"{key}.greatest_level", GREATEST, work, lacks, caution=NOISE)
    yield missing(f"{key}.average_level", AVERAGE, work, lacks, caution=NOISE)


def level_working(heard: Listening, inputs: Sequence[Input]) -> Working:
    """How a level at the mix position comes about: it is as sure as the least sure of the boxes."""
    check = heard.system.check
    lines = [check] if check else []
    return worked(field, programme_level_db, inputs=inputs, leaves_out=LEFT_OUT, lines=lines)


def average_figures(heard: Listening, key: str) -> Iterator[Figure]:
    """
    The average A-weighted level at the mix position by the makers' figures less their crest, and
    its error: what a wish is held to.
    """
    label, used = AVERAGE, heard.system.used
    lacking = [
        f"the maker's level of {model.name}" for model in used if not isinstance(model.level, Level)
    ]
    lacking += [
        f"the crest that the level of {model.name} is stated with"
        for model in used
        if not isinstance(model.level_crest, Level)
    ]
    crest_db = {
        model.name: model.level_crest.db for model in used if isinstance(model.level_crest, Level)
    }
    inputs = tuple(Input(name, f"less {crest:g} dB of crest") for name, crest in crest_db.items())
    work = level_working(heard, inputs)
    if lacking:
        yield missing(f"{key}.average_level", label, work, lacking, caution=NOISE)
        return
    boxes = (*heard.system.mains, *heard.system.fills)
    speakers = [
        replace(each, level_db=each.level_db - crest_db[box.model])
        for each, box in zip(heard.system.speakers(fills=True), boxes, strict=True)
    ]
    level_db = mean_level_db(
        programme_level_db(field(speakers, heard.mix, bands=THIRDS, air=heard.air))
    )
    if not isfinite(level_db):
        return
    note = (
        "A-weighted, pink noise from 25 Hz to 20 kHz at the makers' highest level. It is no"
        " measurement and no promise."
    )
    value = Value(f"{level_db:.0f} dB(A)", number=float(round(level_db)), unit="dB")
    yield figure(f"{key}.average_level", label, value, work, caution=NOISE, note=note)
    error = Working(
        f"±{EXPECTED_ERROR_DB} dB",
        (Input(label, value.text),),
        (Reference(COMMON_PRACTICE.key, "experience", COMMON_PRACTICE.title),),
        leaves_out="A hall can differ by more.",
    )
    value = Value(f"±{EXPECTED_ERROR_DB} dB", number=float(EXPECTED_ERROR_DB), unit="dB")
    yield figure(f"{key}.average_level_error", "Expected error of that", value, error)
