"""
Which ears a balcony hides from the hangs, and what sound loses that has to bend round its edge.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from builder.cautions import NOISE
from builder.departments.sound.areas.coverage import Covered, Listening
from builder.departments.sound.areas.ears import sampled
from builder.departments.sound.areas.geometry import Box, floor_corners
from builder.departments.sound.description import Sound
from builder.departments.sound.description.placed import DrawnArea
from builder.departments.sound.hanging import hangs_of
from builder.formulas.balcony import OverEdge, over_edge
from builder.formulas.outdoor import Barrier, barrier_db
from builder.pack import Figure, Finding, Input, Level, Value
from builder.stating import place
from builder.working import figure, worked

JUDGED_HZ = 4000.0
LEAVES_OUT = (
    "What is reflected below the balcony, ways round its sides, and fills. The map's levels are"
    " those of a straight line, so they are too high there."
)


@dataclass(frozen=True, slots=True)
class Sight:
    """
    For the ears of one area, shape (points,): boxes of hangs that they see, of how many; the least
    that an edge takes where none.
    """

    seen: NDArray[np.intp]
    boxes: int
    edge_db: NDArray[np.float64]

    @property
    def hidden(self) -> NDArray[np.intp]:
        """The places of those that see none."""
        return np.flatnonzero(self.seen == 0)


def sights(sound: Sound, heard: Listening, areas: Sequence[Covered]) -> dict[str, Sight]:
    """The sight of each area, by its name; empty where there is no balcony or no hang."""
    balconies = [area for area in sampled(sound.audience) if area.kind in ("balcony", "tier")]
    names = {hang.name for hang in hangs_of(sound)}
    boxes = [box for box in heard.system.mains if box.part in names]
    return (
        {each.area.name: sight(each, boxes, balconies) for each in areas}
        if balconies and boxes
        else {}
    )


def sight(found: Covered, boxes: Sequence[Box], balconies: Sequence[DrawnArea]) -> Sight:
    """What one area's ears see."""
    seen, least = np.zeros(len(found.points), dtype=np.intp), np.full(len(found.points), np.inf)
    for box in boxes:
        hidden = np.zeros(len(found.points), dtype=bool)
        for balcony in balconies:
            thick_m = balcony.underside.m if balcony.underside else 0.0
            way = over_edge(
                box.at, found.points, corners_m=floor_corners(balcony), thickness_m=thick_m
            )
            hidden |= way.blocked
            lower(least, way, found.points, box)
        seen += ~hidden
    return Sight(seen, len(boxes), least)


def lower(
    least_db: NDArray[np.float64], way: OverEdge, points: NDArray[np.float64], box: Box
) -> None:
    """The least that the edge takes on the way from any box so far."""
    for index in np.flatnonzero(way.blocked):
        distance_m = float(np.linalg.norm(points[index] - np.array(box.at)))
        barrier = Barrier(
            float(way.source_to_edge_m[index]), max(float(way.edge_to_ear_m[index]), 0.01)
        )
        least_db[index] = min(least_db[index], barrier_db(JUDGED_HZ, distance_m, barrier))


def sight_figures(seen: Sight, key: str) -> Iterator[Figure]:
    """
    The share of an area that a straight line joins to a hang, and what the edge takes where none
    does.
    """
    share = 1 - len(seen.hidden) / len(seen.seen)
    partly = float((seen.seen < seen.boxes).mean())
    inputs = (
        Input("Ears", f"{len(seen.seen):,}"),
        Input("Boxes in hangs", str(seen.boxes)),
        Input("See none", f"{len(seen.hidden):,}"),
    )
    steps = (
        f"1 − {len(seen.hidden)} / {len(seen.seen)} = {share * 100:.0f} %",
        f"{partly * 100:.0f} % see fewer than all {seen.boxes} boxes.",
    )
    work = worked(over_edge, inputs=inputs, steps=steps, leaves_out=LEAVES_OUT)
    every = (
        f", to every box {(1 - partly) * 100:.0f} %"
        if partly > len(seen.hidden) / len(seen.seen)
        else ""
    )
    yield figure(
        f"{key}.sees",
        "Straight line to a hang",
        Value(f"{share * 100:.0f} %{every}", number=share, unit="1"),
        work,
        caution=NOISE,
    )
    if len(seen.hidden):
        taken = seen.edge_db[seen.hidden]
        work = worked(
            over_edge,
            barrier_db,
            inputs=(*inputs, Input("Octave", "4 kHz")),
            steps=("For each ear the box that loses least.",),
            leaves_out=LEAVES_OUT,
        )
        text = f"{taken.min():.0f} to {taken.max():.0f} dB"
        yield figure(
            f"{key}.edge_takes",
            "The edge takes, 4 kHz",
            Value(text, number=float(np.median(taken)), unit="dB"),
            work,
            caution=NOISE,
        )


def hidden_ears(found: Covered, seen: Sight) -> Iterator[Finding]:
    """An area of which a part is in the shadow of a balcony."""
    if not len(seen.hidden):
        return
    taken = seen.edge_db[seen.hidden]
    sentence = (
        f"{len(seen.hidden) / len(seen.seen) * 100:.0f} % of {found.area.name} has no straight line"
        f" to any box of a hang: a balcony is in the way. The edge takes {taken.min():.0f} to"
        f" {taken.max():.0f} dB at 4 kHz there, and the maps do not contain that. Fills below it do"
        " reach them."
    )
    yield Finding(Level.NOTE, "balcony-shadow", sentence, place=place(found.area.where("name")))
