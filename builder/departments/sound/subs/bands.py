"""
The sub line by frequency: what it covers and costs, on the floor at the mix position's depth, and
what two stacks would do instead.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import atan, degrees

import numpy as np
from numpy.typing import NDArray

from builder.cautions import NOISE
from builder.departments.sound.areas.coverage import Listening
from builder.departments.sound.areas.geometry import Box, boxes_of_subs, corners_of
from builder.departments.sound.areas.sources import loudspeaker
from builder.departments.sound.description.placed import DrawnArea, KnownModel, PlacedSubs
from builder.departments.sound.figures import by_hand
from builder.departments.sound.subs.line import (
    coverage_figure,
    delays_ms,
    loss_figure,
    playing,
    straight_figure,
)
from builder.exchange import Spot
from builder.formulas.band_lines import third_octaves
from builder.formulas.field import field
from builder.formulas.stack_nulls import null_off_centre_m
from builder.formulas.sub_pairs import stereo_null_angles_deg
from builder.formulas.subs import COVERAGE_DROP_DB
from builder.pack import Figure, Input, Item, Value
from builder.reading.measures import System, shown
from builder.reading.quantities import Length
from builder.working import figure, missing, worked

Array = NDArray[np.float64]
THIRDS_HZ = (31.5, 40.0, 50.0, 63.0, 80.0, 100.0)
WALK_STEP_M, WALK_M = 0.25, 80.0
"""The floor is walked in such steps, so far to each side."""
ALLEY = "Two stacks: alley between the first nulls there"
STACKS_LEAVE_OUT = (
    "Walls, which fill nulls in a room. Nearby, the nearer stack is louder and a null is not full."
)


@dataclass(frozen=True, slots=True)
class Floor:
    """
    Where the line is judged on the floor: the mix position's depth, and how wide the audience is
    there.
    """

    depth_m: float
    distance_m: float
    left_m: float
    right_m: float

    @property
    def width_m(self) -> float:
        """From the audience's edge on stage right to that on stage left."""
        return self.right_m - self.left_m


def played_hz(model: KnownModel) -> tuple[float, ...]:
    """The third octaves that a sub plays."""
    return tuple(
        hertz
        for hertz in THIRDS_HZ
        if model.lowest.hz <= third_octaves(hertz, hertz)[0].midband_hz <= model.highest.hz
    )


def floor_at(line: PlacedSubs, spot: Spot | None, areas: Sequence[DrawnArea]) -> Floor | None:
    """The audience's width at the mix position's depth, where that lies in front of the line."""
    if spot is None or spot.depth_m >= line.at.depth.m:
        return None
    crossings = [x for area in areas for x in crossings_m(corners_of(area), spot.depth_m)]
    return (
        Floor(spot.depth_m, line.at.depth.m - spot.depth_m, min(crossings), max(crossings))
        if crossings
        else None
    )


def crossings_m(corners: Sequence[tuple[float, float]], depth_m: float) -> Iterator[float]:
    """Where an outline's sides cross a depth."""
    for (ax, ay), (bx, by) in pairwise((*corners, corners[0])):
        if (ay - depth_m) * (by - depth_m) <= 0 and ay != by:
            yield ax + (depth_m - ay) * (bx - ax) / (by - ay)


def untold_audience(key: str, lacks: Sequence[str]) -> Figure:
    """What stands for the audience's width where an area's corners are not known."""
    return missing(f"{key}.audience_angle", "Audience there", worked(field, inputs=()), lacks)


def audience_figure(line: PlacedSubs, floor: Floor, key: str, system: System) -> Figure:
    """
    How wide the audience is at the mix position's depth, and under what angle the line sees it.
    """
    middle = line.at.across.m
    angle = degrees(
        atan((floor.right_m - middle) / floor.distance_m)
        + atan((middle - floor.left_m) / floor.distance_m)
    )
    text, _ = shown(Length, floor.width_m, 1, system)
    inputs = (
        Input("Audience there", f"{floor.left_m:+.2f} m to {floor.right_m:+.2f} m across"),
        Input("From the line", f"{floor.distance_m:.2f} m"),
    )
    steps = (
        (
            f"atan({floor.right_m - middle:.2f}/{floor.distance_m:.2f}) +"
            f" atan({middle - floor.left_m:.2f}/{floor.distance_m:.2f}) = {angle:.0f} deg"
        ),
    )
    work = by_hand(
        "angle = atan(right / distance) + atan(left / distance)",
        "angle between two sight lines",
        inputs=inputs,
        steps=steps,
    )
    value = Value(f"{angle:.0f} deg", text + " wide", angle, "deg")
    return figure(
        f"{key}.audience_angle",
        "The audience at the mix position's depth, seen from the line",
        value,
        work,
    )


def band_items(
    line: PlacedSubs,
    key: str,
    *,
    model: KnownModel,
    floor: Floor | None,
    heard: Listening | None,
    lacks: Sequence[str],
    speed_m_s: float,
    system: System,
) -> Iterator[Item]:
    """One item for each third octave that the line plays."""
    for hertz in played_hz(model) if len(playing(line, speed_m_s)[0]) > 1 else ():
        name = f"{key}.{hertz:g}hz".replace("31.5", "31-5")
        figures = [
            coverage_figure(line, name, hertz, speed_m_s),
            straight_figure(line, name, hertz, speed_m_s),
            loss_figure(line, name, hertz, speed_m_s),
            *floor_figures(line, name, hertz, floor=floor, heard=heard, lacks=lacks, system=system),
            *stack_figures(line, name, hertz, floor=floor, speed_m_s=speed_m_s, system=system),
        ]
        yield Item(key=name, kind="subband", name=f"{hertz:g} Hz", figures=tuple(figures))


def floor_figures(
    line: PlacedSubs,
    key: str,
    hertz: float,
    *,
    floor: Floor | None,
    heard: Listening | None,
    lacks: Sequence[str],
    system: System,
) -> Iterator[Figure]:
    """How wide the line is within 6 dB of its middle on the floor, with its delays and without."""
    for name, label, with_delays in (
        ("floor", "Within −6 dB there, as set", True),
        ("floor_straight", "Within −6 dB there, no delays", False),
    ):
        work_inputs = (
            Input("Third octave", f"{hertz:g} Hz"),
            Input("Delays", "as set" if with_delays else "none"),
        )
        if floor is None or heard is None:
            lacking = (floor and lacks) or (
                "the mix position in front of the line, an audience area there and the house's air",
            )
            yield missing(
                f"{key}.{name}", label, worked(field, inputs=work_inputs), lacking, caution=NOISE
            )
            continue
        delays = [delay / 1000 for delay in delays_ms(line, speed_m_s=heard.air.speed_m_s)]
        boxes = boxes_of_subs(line, delays if with_delays else [0.0] * line.count)
        yield walked_figure(
            f"{key}.{name}",
            label,
            walk(boxes, hertz, line.at.across.m, floor, heard),
            work_inputs,
            floor,
            system,
        )


def walk(
    boxes: Sequence[Box], hertz: float, middle_m: float, floor: Floor, heard: Listening
) -> tuple[float | None, float | None]:
    """
    How far to stage right and to stage left one walks from the line's middle before the level is 6
    dB down; None where it never is.
    """
    aside = np.arange(0, WALK_M + WALK_STEP_M / 2, WALK_STEP_M)
    speakers = [loudspeaker(box, heard.system.models[box.model]) for box in boxes]
    across = np.concatenate([middle_m - aside, middle_m + aside])
    places = np.column_stack(
        [across, np.full(across.shape, floor.depth_m), np.full(across.shape, heard.mix[0][2])]
    )
    levels = field(speakers, places, bands=third_octaves(hertz, hertz), air=heard.air).levels_db()[
        :, 0
    ]
    right, left = (
        first_drop_m(aside, side) for side in (levels[: len(aside)], levels[len(aside) :])
    )
    return right, left


def first_drop_m(aside_m: Array, levels_db: Array) -> float | None:
    """The first distance at which the level is 6 dB below that at the start."""
    down = np.flatnonzero(levels_db < levels_db[0] - COVERAGE_DROP_DB)
    return float(aside_m[down[0]]) if len(down) else None


def walked_figure(
    key: str,
    label: str,
    sides: tuple[float | None, float | None],
    inputs: tuple[Input, ...],
    floor: Floor,
    system: System,
) -> Figure:
    """What was walked, as a width, and whether the audience is inside it."""
    steps = (
        (
            f"At the mix position's depth, {floor.distance_m:.1f} m from the line, in steps of"
            f" {WALK_STEP_M:g} m away from its middle."
        ),
        f"The audience is {floor.width_m:.1f} m wide there.",
    )
    work = worked(
        field,
        inputs=inputs,
        steps=steps,
        leaves_out=(
            "Walls and all loudspeakers but these subs. Beyond the first drop nothing is looked at."
        ),
    )
    right, left = sides
    if right is None or left is None:
        return figure(key, label, Value("all of it"), work, caution=NOISE)
    text, also = shown(Length, right + left, 1, system)
    share = min(1.0, (right + left) / floor.width_m)
    return figure(
        key,
        label,
        Value(f"{text}, {share * 100:.0f} %", also, right + left, "m"),
        work,
        caution=NOISE,
    )


def stack_figures(
    line: PlacedSubs,
    key: str,
    hertz: float,
    *,
    floor: Floor | None,
    speed_m_s: float,
    system: System,
) -> Iterator[Figure]:
    """
    Two stacks of the same subs, one at each end of the line: the angles of their nulls, and the
    alley between the first of them.
    """
    places, _ = playing(line, speed_m_s)
    spacing_m, wave_m = places[-1] - places[0], speed_m_s / hertz
    angles = stereo_null_angles_deg(spacing_m=spacing_m, frequency_hz=hertz, speed_m_s=speed_m_s)
    inputs = (
        Input("Stack to stack", f"{spacing_m:.2f} m"),
        Input("Frequency", f"{hertz:g} Hz"),
        Input("Wavelength", f"{wave_m:.2f} m"),
    )
    steps = tuple(
        f"asin({number + 0.5:g} × {wave_m:.2f} m / {spacing_m:.2f} m) = {angle:.1f} deg"
        for number, angle in enumerate(angles)
    )
    text = ", ".join(f"{angle:.0f}" for angle in angles)
    value = Value(f"±{text} deg", number=angles[0], unit="deg") if angles else Value("none")
    work = worked(stereo_null_angles_deg, inputs=inputs, steps=steps, leaves_out=STACKS_LEAVE_OUT)
    yield figure(f"{key}.stack_nulls", "Two stacks: nulls at", value, work, caution=NOISE)
    if floor is None:
        needs = ("the mix position in front of the line",)
        yield missing(
            f"{key}.alley", ALLEY, worked(null_off_centre_m, inputs=inputs), needs, caution=NOISE
        )
        return
    middle_m = line.at.across.m + (places[0] + places[-1]) / 2
    yield alley_figure(
        f"{key}.alley",
        floor,
        inputs=inputs,
        spacing_m=spacing_m,
        wave_m=wave_m,
        middle_m=middle_m,
        system=system,
    )


def alley_figure(
    key: str,
    floor: Floor,
    *,
    inputs: tuple[Input, ...],
    spacing_m: float,
    wave_m: float,
    middle_m: float,
    system: System,
) -> Figure:
    """
    How wide the alley between the first nulls is on the floor, and whether those nulls lie in the
    audience.
    """
    inputs = (*inputs, Input("From the line", f"{floor.distance_m:.2f} m"))
    # The wavelength is all that counts: 1 Hz at so many metres a second has it.
    aside_m = null_off_centre_m(
        spacing_m=spacing_m, distance_m=floor.distance_m, frequency_hz=1.0, speed_m_s=wave_m
    )
    if aside_m is None:
        work = worked(null_off_centre_m, inputs=inputs, leaves_out=STACKS_LEAVE_OUT)
        return figure(key, ALLEY, Value("no null"), work, caution=NOISE)
    quarter_m = wave_m / 4
    root = f"√(1 + {floor.distance_m:.2f}² / ({spacing_m / 2:.2f}² − {quarter_m:.2f}²))"
    steps = (
        f"a = {wave_m:.2f} m / 4 = {quarter_m:.2f} m",
        f"x = {quarter_m:.2f} m × {root} = {aside_m:.2f} m to either side",
    )
    work = worked(null_off_centre_m, inputs=inputs, steps=steps, leaves_out=STACKS_LEAVE_OUT)
    text, also = shown(Length, 2 * aside_m, 1, system)
    return figure(
        key,
        ALLEY,
        Value(f"{text}, {where_nulls_lie(floor, middle_m, aside_m)}", also, 2 * aside_m, "m"),
        work,
        caution=NOISE,
    )


def where_nulls_lie(floor: Floor, middle_m: float, aside_m: float) -> str:
    """Whether the first nulls lie among people."""
    sides = (("stage right", middle_m - aside_m), ("stage left", middle_m + aside_m))
    inside = [side for side, across_m in sides if floor.left_m < across_m < floor.right_m]
    if len(inside) == 2:
        return "nulls among the audience"
    return f"null among the audience on {inside[0]}" if inside else "nulls outside it"
