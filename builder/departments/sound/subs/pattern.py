"""
How the sub line spreads over the whole plan: with its delays, without them, and as two stacks.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from math import ceil, sqrt

import numpy as np
from numpy.typing import NDArray

from builder.cautions import NOISE
from builder.departments.sound.areas.coverage import Listening, against, mean_level_db
from builder.departments.sound.areas.geometry import Box, boxes_of_subs, corners_of
from builder.departments.sound.areas.sources import loudspeaker
from builder.departments.sound.description import Sound
from builder.departments.sound.description.placed import PlacedSubs, is_drawn_area
from builder.departments.sound.subs.bands import played_hz
from builder.departments.sound.subs.line import delays_ms
from builder.departments.sound.subs.other_ways import LEAVES_OUT as PAIRS_LEAVE_OUT
from builder.departments.sound.subs.other_ways import WAYS, Pairs, pairs_of
from builder.formulas.band_lines import third_octaves
from builder.formulas.field import field
from builder.pack import Field, Input, Working
from builder.working import worked

Array = NDArray[np.float64]
Driven = tuple[Sequence[Box], Mapping[float, str]]
"""Boxes, and the title of each third octave that is shown of them."""
COMPARED_HZ = 63.0
MARGIN_M, BEHIND_M = 2.0, 8.0
"""What is shown beside the audience, and behind the line: what reaches the stage."""
MOST_POINTS, MOST_A_SIDE = 700, 100


def patterns(sound: Sound, subs: Sequence[PlacedSubs], heard: Listening) -> Iterator[Field]:
    """The pattern of each sub line that plays."""
    for line in subs:
        boxes = boxes_of_subs(
            line, [delay / 1000 for delay in delays_ms(line, speed_m_s=heard.air.speed_m_s)]
        )
        if len(boxes) > 1 and line.condition == "in service" and line.model in heard.system.models:
            yield pattern(
                sound, line, line.name, ways(line, boxes, heard), heard, working(line, boxes, heard)
            )
            yield from paired_patterns(sound, line, heard)


def paired_patterns(sound: Sound, line: PlacedSubs, heard: Listening) -> Iterator[Field]:
    """The same subs in pairs, where they can be."""
    model = heard.system.models[line.model]
    pairs = pairs_of(line, model, heard.air.speed_m_s)
    if pairs is None:
        return
    titles = {hertz: f"{hertz:g} Hz" for hertz in played_hz(model)}
    for way in WAYS:
        yield pattern(
            sound,
            line,
            f"{line.name}, {way} pairs",
            ((pairs.boxes(way), titles),),
            heard,
            paired_working(pairs, heard),
        )


def pattern(
    sound: Sound,
    line: PlacedSubs,
    name: str,
    driven: Iterable[Driven],
    heard: Listening,
    work: Working,
) -> Field:
    """Levels over the plan, each map relative to the mix position in that same map."""
    points, step_m = plan_points(sound, line, heard)
    rows = {
        title: row
        for boxes, titles in driven
        for title, row in levels(boxes, titles, points, heard)
    }
    return Field(
        key=f"sound.pattern.{name}",
        name=name,
        reference="the mix position",
        step_m=step_m,
        bands=tuple(rows),
        points=tuple(
            (round(float(x), 2), round(float(y), 2), round(float(z), 2)) for x, y, z in points
        ),
        levels=tuple(tuple(round(float(level) * 10) for level in row) for row in rows.values()),
        working=work,
        caution=NOISE,
    )


def ways(line: PlacedSubs, boxes: Sequence[Box], heard: Listening) -> Iterator[Driven]:
    """
    What is shown: each third octave with the delays as set, then one third octave without delays
    and as two stacks.
    """
    played = played_hz(heard.system.models[line.model])
    yield boxes, {hertz: f"{hertz:g} Hz" for hertz in played}
    if COMPARED_HZ in played:
        yield (
            [replace(box, delay_s=0.0) for box in boxes],
            {COMPARED_HZ: f"{COMPARED_HZ:g} Hz, no delays"},
        )
        yield stacked(boxes), {COMPARED_HZ: f"{COMPARED_HZ:g} Hz, two stacks"}


def stacked(boxes: Sequence[Box]) -> list[Box]:
    """
    The same subs as a stack at each end of the line, without delays.

    An odd one out goes to stage left.
    """
    half = len(boxes) // 2
    return [
        replace(box, at=(boxes[0] if place < half else boxes[-1]).at, delay_s=0.0)
        for place, box in enumerate(boxes)
    ]


def levels(
    boxes: Sequence[Box], titles: Mapping[float, str], points: Array, heard: Listening
) -> Iterator[tuple[str, Array]]:
    """The level of each third octave over the plan, relative to the mix position."""
    if not titles:
        return
    speakers = [loudspeaker(box, heard.system.models[box.model]) for box in boxes]
    bands = third_octaves(min(titles), max(titles))
    found = field(
        speakers, np.concatenate([points, heard.mix]), bands=bands, air=heard.air
    ).levels_db()
    for hertz, title in titles.items():
        level = found[:, bands.index(third_octaves(hertz, hertz)[0])]
        yield title, against(level, mean_level_db(level[len(points) :]))[: len(points)]


def plan_points(sound: Sound, line: PlacedSubs, heard: Listening) -> tuple[Array, float]:
    """
    A grid over the audience and the downstage part of the stage, at the height of the mix
    position's ears; and its step.
    """
    corners = [
        corner for area in sound.audience if is_drawn_area(area) for corner in corners_of(area)
    ]
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    left, right = min(xs) - MARGIN_M, max(xs) + MARGIN_M
    near, far = min(ys), max(line.at.depth.m + BEHIND_M, *ys)
    longest_m = max(right - left, far - near)
    step_m = max(
        1.0,
        ceil(2 * max(sqrt((right - left) * (far - near) / MOST_POINTS), longest_m / MOST_A_SIDE))
        / 2,
    )
    grid = np.meshgrid(
        np.arange(left, right + step_m / 2, step_m), np.arange(near, far + step_m / 2, step_m)
    )
    across, deep = (axis.ravel() for axis in grid)
    return np.column_stack([across, deep, np.full(across.shape, heard.mix[0][2])]), step_m


def working(line: PlacedSubs, boxes: Sequence[Box], heard: Listening) -> Working:
    """How a pattern came about."""
    inputs = (
        Input("Subs that play", f"{len(boxes)} of {line.count}, {line.spacing.text} apart"),
        Input(
            "Arc",
            line.arc.text if line.arc else line.arc_radius.text if line.arc_radius else "none",
        ),
        Input("Speed of sound", f"{heard.air.speed_m_s:.1f} m/s"),
    )
    steps = (
        "Each map is relative to the mix position in that same map.",
        "Two stacks: the same subs, half at each end of the line.",
    )
    return worked(
        field,
        inputs=inputs,
        steps=steps,
        leaves_out="Walls, the stage front, the balcony, and all loudspeakers but these subs.",
    )


def paired_working(pairs: Pairs, heard: Listening) -> Working:
    """How the pattern of pairs came about."""
    inputs = (
        Input(
            "Pairs",
            f"{len(pairs.across_m)} over the length of the line, rear subs {pairs.depth_m:.2f} m"
            " upstage",
        ),
        Input("Speed of sound", f"{heard.air.speed_m_s:.1f} m/s"),
    )
    return worked(
        field,
        inputs=inputs,
        steps=("Each map is relative to the mix position in that same map.",),
        leaves_out=PAIRS_LEAVE_OUT,
    )
