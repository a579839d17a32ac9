"""
Hangs on the plan: where the centre ray goes, and from where the audience's edge lies inside the
stated coverage.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import radians, tan

import numpy as np

from builder.departments.sound.areas.geometry import boxes_of_fill, corners_of, turned_deg
from builder.departments.sound.description import Sound
from builder.departments.sound.description.loudspeakers import Hang, Model
from builder.departments.sound.description.placed import DrawnArea, is_placed_hang
from builder.departments.sound.figures import by_hand
from builder.departments.sound.findings import fills_of
from builder.departments.sound.hanging import hangs_of, models_of
from builder.departments.sound.subs.bands import crossings_m
from builder.exchange import Spot
from builder.formulas.alignment import off_axis_deg
from builder.pack import Figure, Finding, Input, Level, Value
from builder.reading.measures import System, shown
from builder.reading.quantities import Across, Depth
from builder.stating import place
from builder.working import figure, worked

JUDGED_HZ = (1000.0, 4000.0)
"""Coverage is judged where speech is understood: the narrowest stated octave from 1 to 4 kHz."""
SIDE_FROM_M = 1.0
"""A hang nearer to the centre line than this is for both sides, and no edge is its own."""
MOST_SEATS = 500
SEAT_M, MISSED_M = 1.0, 2.0
"""
Seats along an edge stand so far apart, and so much of an edge must be missed before it is told.
"""


@dataclass(frozen=True, slots=True)
class Throw:
    """
    What a loudspeaker covers on the plan: from a place, around an aim from straight downstage
    (positive to stage left).
    """

    part: str
    across_m: float
    depth_m: float
    turned_deg: float
    coverage_deg: float

    def holds(self, across_m: float, depth_m: float) -> bool:
        """Whether a seat lies inside the stated coverage."""
        return abs(self.off_deg(across_m, depth_m)) <= self.coverage_deg / 2

    def off_deg(self, across_m: float, depth_m: float) -> float:
        """How far a seat lies beside the centre ray."""
        if (across_m, depth_m) == (self.across_m, self.depth_m):
            return 0.0
        return off_axis_deg(
            azimuth_deg=self.turned_deg,
            ahead_m=self.depth_m - depth_m,
            aside_m=across_m - self.across_m,
        )


def stated_deg(model: Model | None) -> float | None:
    """The narrowest stated coverage from side to side, from 1 to 4 kHz."""
    stated = (
        [
            entry.horizontal.deg
            for entry in model.coverage
            if JUDGED_HZ[0] <= entry.band.hz <= JUDGED_HZ[1]
        ]
        if model
        else []
    )
    return min(stated, default=None)


def throw_of(hang: Hang, sound: Sound) -> Throw | None:
    """What a hang covers on the plan; None where its maker states no coverage."""
    coverage = stated_deg(models_of(sound).get(hang.model))
    if not is_placed_hang(hang):
        return None
    if coverage is None or hang.condition == "out of service" or hang.boxes == 0:
        return None
    return Throw(hang.name, hang.at.across.m, hang.at.depth.m, turned_deg(hang.turned), coverage)


def all_throws(sound: Sound) -> Iterator[Throw]:
    """All hangs and out fills: those that are for the sides."""
    yield from (throw for hang in hangs_of(sound) if (throw := throw_of(hang, sound)))
    models = models_of(sound)
    for fill in fills_of(sound):
        coverage = stated_deg(models.get(fill.model))
        if fill.kind == "out fill" and fill.condition != "out of service" and coverage is not None:
            yield from (
                Throw(fill.name, box.at[0], box.at[1], box.turned_deg, coverage)
                for box in boxes_of_fill(fill)
            )


def edge_seats(area: DrawnArea, throw: Throw) -> list[tuple[float, float]]:
    """
    The outermost seats of an area on a hang's own side, from the stage on; those behind the hang
    are not its own.
    """
    corners, side = corners_of(area), 1 if throw.across_m > 0 else -1
    near, far = max(y for _, y in corners), min(y for _, y in corners)
    found = []
    for depth_m in np.arange(near - SEAT_M / 2, max(far, near - MOST_SEATS * SEAT_M), -SEAT_M):
        crossings = list(crossings_m(corners, float(depth_m)))
        if crossings and depth_m < throw.depth_m:
            found.append((side * max(side * x for x in crossings), float(depth_m)))
    return found


def pan_figures(
    hang: Hang,
    sound: Sound,
    areas: Sequence[DrawnArea],
    spot: Spot | None,
    key: str,
    system: System,
) -> Iterator[Figure]:
    """
    The coverage that is judged, the centre ray, and the first seat of the audience's edge inside
    the coverage.
    """
    throw = throw_of(hang, sound)
    if throw is None:
        return
    inputs = (
        Input("Hang", f"{throw.across_m:+.2f} m across, {throw.depth_m:+.2f} m deep"),
        Input("Turned", f"{throw.turned_deg:+g} deg from straight downstage, + to stage left"),
        Input(
            "Stated coverage", f"{throw.coverage_deg:g} deg, the narrowest octave from 1 to 4 kHz"
        ),
    )
    work = by_hand(
        "the least of the stated angles", "the maker's coverage from side to side", inputs=inputs
    )
    yield figure(
        f"{key}.judged",
        "Stated coverage",
        Value(f"{throw.coverage_deg:g} deg", number=throw.coverage_deg, unit="deg"),
        work,
    )
    if spot is not None and spot.depth_m < throw.depth_m and abs(throw.turned_deg) < 90:
        run_m = throw.depth_m - spot.depth_m
        across_m = throw.across_m + run_m * tan(radians(throw.turned_deg))
        step = (
            f"{throw.across_m:+.2f} m + {run_m:.2f} m × tan({throw.turned_deg:g} deg) ="
            f" {across_m:+.2f} m"
        )
        text, also = shown(Across, across_m, 1, system)
        work = by_hand(
            "across = hang + run × tan(turn)",
            "centre ray on the plan",
            inputs=inputs,
            steps=(step,),
        )
        yield figure(
            f"{key}.centre_ray",
            "Centre ray at the mix position's depth",
            Value(text, also, across_m, "m"),
            work,
        )
    if abs(throw.across_m) >= SIDE_FROM_M:
        yield from edge_figure(
            throw, [seat for area in areas for seat in edge_seats(area, throw)], inputs, key, system
        )


def edge_figure(
    throw: Throw,
    seats: Sequence[tuple[float, float]],
    inputs: tuple[Input, ...],
    key: str,
    system: System,
) -> Iterator[Figure]:
    """From which depth on the outermost seats are inside the coverage."""
    if not seats:
        return
    inside = [seat for seat in seats if throw.holds(*seat)]
    label, left_out = (
        "Holds the audience's edge from",
        "Up and down, and what other loudspeakers cover.",
    )
    if not inside:
        yield figure(
            f"{key}.edge",
            label,
            Value("nowhere"),
            worked(off_axis_deg, inputs=inputs, leaves_out=left_out),
        )
        return
    across_m, depth_m = max(inside, key=lambda seat: seat[1])
    off = throw.off_deg(across_m, depth_m)
    steps = (
        (
            f"The edge seat {across_m:+.1f} m across, {depth_m:+.1f} m deep is {abs(off):.0f} deg"
            f" beside it, within {throw.coverage_deg / 2:g}."
        ),
    )
    text, also = shown(Depth, depth_m, 1, system)
    yield figure(
        f"{key}.edge",
        label,
        Value(text, also, depth_m, "m"),
        worked(off_axis_deg, inputs=inputs, steps=steps, leaves_out=left_out),
    )


def missed_edges(sound: Sound, areas: Sequence[DrawnArea]) -> Iterator[Finding]:
    """Edges on a hang's own side that neither it nor any other hang or out fill covers."""
    throws = tuple(all_throws(sound))
    for hang in hangs_of(sound):
        throw = throw_of(hang, sound)
        if throw is None or abs(throw.across_m) < SIDE_FROM_M:
            continue
        for area in areas:
            missed = [
                seat
                for seat in edge_seats(area, throw)
                if not any(each.holds(*seat) for each in throws)
            ]
            if len(missed) * SEAT_M > MISSED_M:
                yield missed_edge(hang, throw, area, missed)


def missed_edge(
    hang: Hang, throw: Throw, area: DrawnArea, missed: Sequence[tuple[float, float]]
) -> Finding:
    """The finding on one hang and one area."""
    side = "stage left" if throw.across_m > 0 else "stage right"
    first, last = (
        max(depth for _, depth in missed) + SEAT_M / 2,
        min(depth for _, depth in missed) - SEAT_M / 2,
    )
    sentence = (
        f"The stated coverage of {hang.name}, {throw.coverage_deg:g} deg, leaves out the {side}"
        f" edge of {area.name} from {-first:.0f} m to {-last:.0f} m downstage, and no other hang or"
        " out fill covers it. Turn it, or add an out fill."
    )
    return Finding(
        Level.NOTE,
        "edge-outside-coverage",
        sentence,
        place=place(hang.where("turned" if hang.turned else "at")),
    )
