"""
Fills in time and level: how far their alignment drifts with the air, and where the hangs are as
loud as they are.
"""

from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from builder.cautions import NOISE
from builder.departments.sound.areas.coverage import THIRDS, Listening
from builder.departments.sound.areas.geometry import Box, aim, corners_of, floor_corners
from builder.departments.sound.areas.sources import Aligned, loudspeaker
from builder.departments.sound.description.loudspeakers import Fill
from builder.departments.sound.description.placed import DrawnArea
from builder.formulas.alignment import alignment_drift
from builder.formulas.areas import floor_of
from builder.formulas.field import field, programme_level_db
from builder.formulas.polygons import contains
from builder.pack import Figure, Input, Item, Value
from builder.reading.measures import System, shown
from builder.reading.quantities import Length
from builder.working import figure, missing, worked

Array = NDArray[np.float64]
SHOWN_C = (5.0, 15.0, 25.0, 35.0)
WALK_STEP_M, WALK_M = 0.5, 30.0
MEETS = "Hangs are as loud"
LEFT_OUT = (
    "Reflections, and what stands in the way. Both are taken as set, with pink noise, A-weighted."
)


def drift_items(
    fill: Fill, aligned: Sequence[Aligned], fill_key: str, set_at_c: float
) -> Iterator[Item]:
    """How the delays of a fill drift, once for all boxes that wait equally long for their hang."""
    alike: dict[float, list[int]] = {}
    for number, each in enumerate(aligned, 1):
        if each.hang:
            alike.setdefault(round(each.hang_m - each.box_m, 2), []).append(number)
    for numbers in alike.values():
        key = f"{fill_key}.drift-{numbers[0]}"
        figures = tuple(drift_figures(aligned[numbers[0] - 1], key, set_at_c))
        yield Item(
            key=key,
            kind="drift",
            name=f"{fill.name} {', '.join(map(str, numbers))}",
            figures=figures,
        )


def drift_figures(aligned: Aligned, key: str, set_at_c: float) -> Iterator[Figure]:
    """How much later than set the hang comes against the fill, as the air cools and warms."""
    longer_m = aligned.hang_m - aligned.box_m
    found = alignment_drift(
        reference_distance_m=aligned.hang_m, fill_distance_m=aligned.box_m, set_at_c=set_at_c
    )
    for drift in (each for each in found if each.temperature_c in SHOWN_C):
        at_c, late_ms = drift.temperature_c, drift.reference_late_ms
        step = f"{longer_m:.2f} m × (1/c({at_c:g} °C) − 1/c({set_at_c:g} °C)) = {late_ms:+.2f} ms"
        text = f"{late_ms:+.1f} ms".replace("-", "−") if abs(late_ms) >= 0.05 else "0 ms"
        value = Value(text, number=late_ms / 1000, unit="s")
        inputs = (
            Input("To the hang", f"{aligned.hang_m:.2f} m"),
            Input("To the box", f"{aligned.box_m:.2f} m"),
            Input("Set at", f"{set_at_c:g} °C"),
        )
        yield figure(
            f"{key}.drift_{at_c:g}",
            f"At {at_c:g} °C",
            value,
            worked(alignment_drift, inputs=inputs, steps=(step,)),
        )


def meets_figures(
    fill: Fill,
    aligned: Sequence[Aligned],
    heard: Listening | None,
    areas: Sequence[DrawnArea],
    system: System,
    lacks: Sequence[str] = (),
) -> list[Figure | None]:
    """
    For each box of a fill: how far ahead of it on the plan the hangs become as loud as the fill, or
    what that ``lacks``.

    None for a box that does not play.
    """
    if not aligned:
        return []
    if heard is None:
        return [untold_meeting(fill, each, lacks) for each in aligned]
    walks = [walk(each.box, areas) for each in aligned]
    places, fills = (
        np.concatenate(walks),
        [box for box in heard.system.fills if box.part == fill.name],
    )
    if not len(places) or not fills:
        return [None] * len(aligned)
    own, hangs = (
        programme_level_db(
            field(
                [loudspeaker(box, heard.system.models[box.model]) for box in boxes],
                places,
                bands=THIRDS,
                air=heard.air,
            )
        )
        for boxes in (fills, heard.system.mains)
    )
    ends = np.cumsum([len(each) for each in walks])
    return [
        meeting_figure(
            fill,
            each,
            walks[number],
            own[end - len(walks[number]) : end],
            hangs[end - len(walks[number]) : end],
            system,
        )
        for number, (each, end) in enumerate(zip(aligned, ends, strict=True))
    ]


def untold_meeting(fill: Fill, aligned: Aligned, lacks: Sequence[str]) -> Figure | None:
    """What stands for one box of a fill where something that every map needs is not known."""
    if not lacks or "out of service" in (fill.condition, aligned.record.condition):
        return None
    return missing("meets", MEETS, worked(field, inputs=()), lacks, caution=NOISE)


def walk(box: Box, areas: Sequence[DrawnArea]) -> Array:
    """
    Ears along the way a box looks on the plan, as far as people are there; where areas lie above
    each other, those nearer to its aim.
    """
    ahead, found = aim(box), []
    length = float(np.hypot(ahead[0], ahead[1]))
    for along_m in (
        np.arange(WALK_STEP_M, WALK_M + WALK_STEP_M / 2, WALK_STEP_M) if length > 0 else ()
    ):
        x, y, aimed = (
            start + float(along_m) * part / length
            for start, part in zip(box.at, ahead, strict=True)
        )
        ears = [ear_m(area, x, y) for area in areas if contains(corners_of(area), (x, y))]
        if ears:
            found.append((x, y, min(ears, key=lambda ear: abs(ear - aimed))))
    return np.array(found).reshape(-1, 3)


def ear_m(area: DrawnArea, across_m: float, depth_m: float) -> float:
    """The height of ears in an area."""
    return (
        float(floor_of(floor_corners(area)).z_m(np.array([across_m]), np.array([depth_m]))[0])
        + area.ears.m
    )


def meeting_figure(
    fill: Fill, aligned: Aligned, places: Array, own: Array, hangs: Array, system: System
) -> Figure | None:
    """Where the hangs become as loud as a fill, walking away from one of its boxes."""
    if aligned.record.condition == "out of service" or not len(places):
        return None
    key, gaps = "meets", hangs - own
    louder = np.flatnonzero(gaps >= 0)
    inputs = (
        Input("Fill", f"{fill.name}, all its boxes that play"),
        Input("Against", "all hangs and subs"),
        Input("Steps", f"{WALK_STEP_M:g} m"),
    )
    if not len(louder):
        work = worked(
            field,
            programme_level_db,
            inputs=inputs,
            steps=(f"At the end of the walk the hangs are {-gaps[-1]:.1f} dB below.",),
            leaves_out=LEFT_OUT,
        )
        return figure(key, MEETS, Value("nowhere ahead of it"), work, caution=NOISE)
    at = int(louder[0])
    out_m = float(np.hypot(*(places[at, :2] - np.array(aligned.box.at[:2]))))
    first = f"{out_m:.1f} m out the hangs are {gaps[at]:+.1f} dB against the fill"
    before = f"; a step before {gaps[at - 1]:+.1f} dB" if at else ", and there nobody stands nearer"
    work = worked(
        field, programme_level_db, inputs=inputs, steps=(first + before + ".",), leaves_out=LEFT_OUT
    )
    text, also = shown(Length, out_m, 1, system)
    return figure(
        key,
        MEETS,
        Value(
            f"{text} out" if at else "from the first listener on", also if at else "", out_m, "m"
        ),
        work,
        caution=NOISE,
    )
