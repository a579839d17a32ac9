"""The figures of hangs, fills, areas and the mix position, each with its working."""

from collections.abc import Iterator, Sequence
from math import cos, hypot, radians

from builder.cautions import LOADS, NOISE
from builder.departments.sound.areas.coverage import BARE, PROGRAMME, Covered, Listening, working
from builder.departments.sound.areas.geometry import (
    Box,
    aim,
    centre_of_weight,
    corners_of,
    floor_corners,
)
from builder.departments.sound.areas.sources import Aligned
from builder.departments.sound.description.placed import DrawnArea, PlacedFill, PlacedHang
from builder.departments.sound.levels.house_system import (
    average_figures,
    greatest_figure,
    untold_levels,
)
from builder.exchange import HalfSpot, Spot
from builder.formulas.air import speed_of_sound_m_s
from builder.formulas.alignment import alignment_delay_ms
from builder.formulas.areas import floor_of, level_spread
from builder.formulas.field import field, programme_level_db
from builder.formulas.polygons import contains
from builder.formulas.sources import COMMON_PRACTICE
from builder.pack import Check, Figure, Input, Reference, Value, Working, one_or_both
from builder.reading.absent import Absent
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System, shown
from builder.reading.quantities import Depth, Length
from builder.working import figure, missing, worked


def by_hand(
    equation: str,
    clause: str,
    *,
    inputs: Sequence[Input],
    steps: Sequence[str] = (),
    leaves_out: str = "",
    check: Check | None = None,
) -> Working:
    """A working whose formula is plain geometry or counting."""
    return Working(
        equation,
        tuple(inputs),
        (Reference(COMMON_PRACTICE.key, clause, COMMON_PRACTICE.title),),
        tuple(steps),
        leaves_out,
        check,
    )


def length_figure(
    key: str,
    label: str,
    length_m: float,
    system: System,
    work: Working,
    *,
    caution: str = "",
    note: str = "",
) -> Figure:
    """A length in both systems."""
    text, also = shown(Length, length_m, 2, system)
    return figure(key, label, Value(text, also, length_m, "m"), work, caution=caution, note=note)


def hang_figures(
    hang: PlacedHang,
    boxes: Sequence[Box],
    areas: Sequence[DrawnArea],
    key: str,
    system: System,
    box_height_m: float,
    box_depth: Length | Absent,
    undrawn: Sequence[str] = (),
) -> Iterator[Figure]:
    """
    The lowest edge of a hang, how far its last box looks down, and where its first and last box
    look.
    """
    first, last = boxes[0], boxes[-1]
    bottom_m = last.at[2] - box_height_m / 2 * cos(radians(last.down_deg))
    work = bottom_working(hang, boxes, box_height_m, bottom_m)
    yield length_figure(f"{key}.bottom", "Lowest front edge", bottom_m, system, work, caution=LOADS)
    yield figure(
        f"{key}.last_down",
        "Last box looks down",
        Value(f"{last.down_deg:g} deg", number=last.down_deg, unit="deg"),
        work,
    )
    if box_depth is not Absent.NOT_STATED:
        yield centre_figure(boxes, box_depth, key, system)
    for name, label, box in (
        ("first_aim", "First box meets", first),
        ("last_aim", "Last box meets", last),
    ):
        if undrawn:
            work = by_hand("run = drop to the ears / tan(angle)", "geometry", inputs=())
            yield missing(f"{key}.{name}", label, work, undrawn)
        else:
            yield aim_figure(f"{key}.{name}", label, box, areas, system)


def bottom_working(
    hang: PlacedHang, boxes: Sequence[Box], box_height_m: float, bottom_m: float
) -> Working:
    """How the lowest edge of a hang follows from its top and the angles of its boxes."""
    angles = ", ".join(f"{box.down_deg:g}" for box in boxes)
    return by_hand(
        "bottom = top − sum of h cos(angle of each box)",
        "geometry of fronts hinged at their edges",
        inputs=(
            Input("Top", hang.top.text),
            Input("Boxes", str(hang.boxes)),
            Input("Height of a box", f"{box_height_m * 1000:g} mm"),
            Input("First box looks down", hang.down.text),
        ),
        steps=(
            f"Angles from the top: {angles} deg.",
            f"The front ends at {bottom_m:.2f} m.",
        ),
        leaves_out="The boxes' depth: rear edges may hang lower.",
    )


def unplaced_hang_figure(key: str, lacks: Sequence[str]) -> Figure:
    """What stands for the geometry of a hang of which something is not known."""
    work = by_hand(
        "bottom = top − sum of h cos(angle of each box)",
        "geometry of fronts hinged at their edges",
        inputs=(),
    )
    return missing(f"{key}.bottom", "Lowest front edge", work, lacks, caution=LOADS)


def centre_figure(
    boxes: Sequence[Box], box_depth: Length | Absent, key: str, system: System
) -> Figure:
    """
    Where the weight of the boxes hangs, up and down stage: what front and back point share it by.
    """
    label = "Weight hangs at"
    inputs = (
        Input(
            "Boxes",
            f"{len(boxes)}, fronts from {boxes[0].at[1]:.2f} m to {boxes[-1].at[1]:.2f} m deep",
        ),
        Input("Depth of a box", size_of(box_depth)),
    )
    equation, clause = (
        "mean of (front − half a box along its aim)",
        "centre of gravity of equal boxes",
    )
    work = by_hand(
        equation,
        clause,
        inputs=inputs,
        leaves_out="The frame, and where within a box its weight lies: the maker's data decides.",
    )
    least, most = ends_of(box_depth)
    if least is None or most is None:
        lacking = ("the depth of a box",)
        return missing(f"{key}.centre_depth", label, work, lacking, caution=LOADS)
    ends_m = sorted(centre_of_weight(boxes, box_depth_m=depth.m)[1] for depth in (least, most))
    ends = [Value(*shown(Depth, end_m, 2, system), end_m, "m") for end_m in ends_m]
    value = one_or_both(*ends) or ends[0]
    return figure(f"{key}.centre_depth", label, value, work, caution=LOADS)


def size_of(size: Length | Absent) -> str:
    """A size of a box in millimetres, or as far as it is known."""
    return as_written(size) if isinstance(size, Absent) else f"{size.m * 1000:g} mm"


def aim_figure(
    key: str, label: str, box: Box, areas: Sequence[DrawnArea], system: System
) -> Figure:
    """How far from the box on the plan its aim meets the ears, and in which area."""
    inputs = (Input("Box", f"{box.at[2]:.2f} m high"), Input("Looks down", f"{box.down_deg:g} deg"))
    hits = sorted(
        (found, area.name) for area in areas if (found := aim_meets_m(box, area)) is not None
    )
    work = by_hand(
        "run = drop to the ears / tan(angle), on the area's slope",
        "geometry of the aim line",
        inputs=inputs,
    )
    if not hits:
        return figure(key, label, Value("no area"), work)
    run_m, name = hits[0]
    text, also = shown(Length, run_m, 1, system)
    return figure(key, label, Value(f"{name}, {text} out", also, run_m, "m"), work)


def aim_meets_m(box: Box, area: DrawnArea) -> float | None:
    """
    The distance on the plan at which a box's aim meets the ears of an area, or None where it does
    not.
    """
    direction, floor = aim(box), floor_of(floor_corners(area))
    closing = direction[2] - floor.rise_x * direction[0] - floor.rise_y * direction[1]
    under_m = floor.height_m + floor.rise_x * box.at[0] + floor.rise_y * box.at[1]
    above_m = box.at[2] - under_m - area.ears.m
    if closing >= 0 or above_m <= 0:
        return None
    along_m = -above_m / closing
    meets = (box.at[0] + along_m * direction[0], box.at[1] + along_m * direction[1])
    return (
        along_m * hypot(direction[0], direction[1]) if contains(corners_of(area), meets) else None
    )


def delay_figure(aligned: Aligned, fill: PlacedFill, key: str, speed_m_s: float | None) -> Figure:
    """The delay that brings one box of a fill behind the hang it follows."""
    inputs = delay_inputs(aligned, after_ms_of(fill))
    lacking = delay_lacks(aligned, fill, speed_m_s)
    if lacking or speed_m_s is None:
        work = by_hand(
            "t = (hang − box) / c + delay on the hang + after",
            "first arrivals brought together",
            inputs=inputs,
            leaves_out=DELAY_LEAVES_OUT,
        )
        return missing(f"{key}.delay", "Delay", work, lacking)
    work = worked(
        alignment_delay_ms,
        speed_of_sound_m_s,
        inputs=inputs,
        steps=delay_steps(aligned, after_ms_of(fill), speed_m_s),
        leaves_out=DELAY_LEAVES_OUT,
    )
    note = "" if aligned.delay_ms >= 0 else "Below zero: the hang would have to wait instead."
    value = Value(f"{aligned.delay_ms:.1f} ms", number=aligned.delay_ms / 1000, unit="s")
    return figure(f"{key}.delay", "Delay", value, work, note=note)


DELAY_LEAVES_OUT = "The processor's own delay, which is the same for all."


def after_ms_of(fill: PlacedFill) -> float:
    """By how much a fill is wanted after the hang that it follows."""
    return fill.after.s * 1000 if fill.after else 0.0


def delay_inputs(aligned: Aligned, after_ms: float) -> tuple[Input, ...]:
    """What a delay is found from."""
    return (
        Input("Hang", aligned.hang or "not stated"),
        Input("Hang to meeting place", f"{aligned.hang_m:.2f} m"),
        Input("Box to meeting place", f"{aligned.box_m:.2f} m"),
        Input("Delay on the hang", f"{aligned.hang_delay_ms:g} ms"),
        Input("After it by", f"{after_ms:g} ms"),
    )


def delay_lacks(aligned: Aligned, fill: PlacedFill, speed_m_s: float | None) -> list[str]:
    """What must be known before a delay is."""
    needed = (
        ("the hang it follows", aligned.hang),
        ("where they are brought together", fill.aligned_at),
        ("the house's air", speed_m_s),
    )
    return [name for name, there in needed if not there]


def delay_steps(aligned: Aligned, after_ms: float, speed_m_s: float) -> tuple[str, str]:
    """The difference of the runs as a time, and what is added to it."""
    run_ms = aligned.delay_ms - aligned.hang_delay_ms - after_ms
    runs_m = f"({aligned.hang_m:.2f} m − {aligned.box_m:.2f} m)"
    return (
        f"{runs_m} / {speed_m_s:.1f} m/s = {run_ms:.1f} ms",
        f"{run_ms:.1f} ms + {aligned.hang_delay_ms:g} ms + {after_ms:g} ms ="
        f" {aligned.delay_ms:.1f} ms",
    )


def unplaced_delay(key: str, lacks: Sequence[str]) -> Figure:
    """What stands for the delay of a box of a fill whose geometry is not known."""
    return missing(f"{key}.delay", "Delay", worked(alignment_delay_ms, inputs=()), lacks)


def area_figures(found: Covered, heard: Listening, key: str) -> Iterator[Figure]:
    """
    Mean, spread and shares of the A-weighted programme over an area, relative to the mix position.
    """
    levels, bare = found.levels[PROGRAMME], found.levels[BARE]
    whole = working(heard, found, level_spread)
    work = worked(
        level_spread,
        inputs=(Input("Levels", f"{len(levels):,}, found as for the mean", f"{key}.mean"),),
    )
    found_spread = level_spread(levels, reference_db=0.0)
    mean, low, high = found_spread.mean_db, found_spread.low_db, found_spread.high_db
    yield figure(
        f"{key}.mean", "Mean", Value(signed(mean), number=mean, unit="dB"), whole, caution=NOISE
    )
    spread = Value(f"{signed(low)} to {signed(high)}", number=found_spread.spread_db, unit="dB")
    yield figure(f"{key}.spread", "5 % to 95 %", spread, work, caution=NOISE)
    yield share_figure(f"{key}.within_3", "Within ±3 dB", found_spread.within_3_db, work)
    yield share_figure(f"{key}.within_6", "Within ±6 dB", found_spread.within_6_db, work)
    yield share_figure(
        f"{key}.bare_within_3",
        "Within ±3 dB, fills off",
        level_spread(bare, reference_db=0.0).within_3_db,
        work,
    )
    added = float((levels - bare).max())
    yield figure(
        f"{key}.fills_add",
        "Fills add at most",
        Value(signed(added), number=added, unit="dB"),
        work,
        caution=NOISE,
    )


def untold_area(lacks: Sequence[str], key: str) -> Figure:
    """What stands for the figures of an area where something that every map needs is not known."""
    work = worked(field, programme_level_db, level_spread, inputs=())
    return missing(f"{key}.mean", "Mean", work, lacks, caution=NOISE)


def share_figure(key: str, label: str, share: float, work: Working) -> Figure:
    """The share of an area within so many decibels of the mix position."""
    return figure(
        key, label, Value(f"{share * 100:.0f} %", number=share, unit="1"), work, caution=NOISE
    )


def signed(level_db: float) -> str:
    """
    A relative level with its sign, to half a decibel's worth of honesty: whole decibels would hide
    a spread of one.
    """
    rounded = round(level_db * 2) / 2
    return f"{rounded:+.1f} dB".replace("-", "−") if rounded else "0.0 dB"


def where_it_is(spot: Spot | HalfSpot, key: str, system: System) -> Iterator[Figure]:
    """How far the mix position is from the reference line and off centre, as far as it is known."""
    known = ((spot.across_m, "across"), (spot.depth_m, "deep"))
    told = ", ".join(f"{m:+.2f} m {way}" for m, way in known if m is not None)
    work = by_hand(
        "distance = depth of its middle",
        "along the centre line, from the reference line",
        inputs=(Input(spot.name, told),),
        leaves_out="It is no cable length.",
        check=spot.check,
    )
    if spot.depth_m is not None:
        yield length_figure(
            f"{key}.distance", "From the reference line", abs(spot.depth_m), system, work
        )
    if spot.across_m is not None:
        yield length_figure(
            f"{key}.off_centre",
            "Off the centre line",
            abs(spot.across_m),
            system,
            work,
            note=side_in_words(spot.across_m),
        )


def side_in_words(across_m: float) -> str:
    """To which side of the centre line something is; nothing on it."""
    if not across_m:
        return ""
    return "to stage left" if across_m > 0 else "to stage right"


def mix_figures(
    spot: Spot | HalfSpot | None,
    key: str,
    system: System,
    heard: Listening | None,
    lacks: Sequence[str] = (),
) -> Iterator[Figure]:
    """
    Distance from the reference line, off centre, and the level by the makers' figures, or what it
    ``lacks``.
    """
    if spot is not None:
        yield from where_it_is(spot, key, system)
    if heard is not None:
        yield greatest_figure(heard, f"{key}.greatest_level")
        yield from average_figures(heard, key)
    elif lacks:
        yield from untold_levels(lacks, key)
