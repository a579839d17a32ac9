"""
Where each box is and where it looks, from what the house wrote of hangs, sub lines and fills.

Metres and degrees from the datum.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, fsum, radians, sin

from builder.departments.sound.description.loudspeakers import Fill, FillBox, Hang, Turn
from builder.departments.sound.description.placed import (
    DrawnArea,
    PlacedHang,
    PlacedSubs,
    is_placed_box,
    is_placed_fill,
    is_placed_hang,
)
from builder.reading.absent import Absent

Point = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Box:
    """
    One loudspeaker: the middle of its front, where it looks, and which part of the system it
    belongs to.
    """

    part: str
    model: str
    at: Point
    turned_deg: float
    down_deg: float
    delay_s: float = 0.0
    turned_down_db: float = 0.0
    inverted: bool = False


def turned_deg(turn: Turn | None) -> float:
    """The angle from straight downstage, positive to stage left."""
    if turn is None:
        return 0.0
    return turn.by.deg if turn.to == "stage left" else -turn.by.deg


def aim(box: Box) -> Point:
    """The direction a box looks in, as a unit vector."""
    turn, down = radians(box.turned_deg), radians(box.down_deg)
    return sin(turn) * cos(down), -cos(turn) * cos(down), -sin(down)


def down_angles_deg(hang: PlacedHang) -> tuple[float, ...] | None:
    """
    How far each box looks down, from the top; None where the splay is not known or does not fit the
    boxes.
    """
    splay = () if isinstance(hang.splay, Absent) else hang.splay
    if len(splay) != max(hang.boxes - 1, 0):
        return None
    angles = [hang.down.deg]
    for angle in splay:
        angles.append(angles[-1] + angle.deg)
    return tuple(angles[: hang.boxes])


def boxes_of_hang(hang: Hang, *, box_height_m: float) -> tuple[Box, ...]:
    """
    The boxes of a hang from the top: fronts follow each other, hinged at their front edges.

    Empty where the splay, or anything else of its geometry, is not known.
    """
    if not is_placed_hang(hang):
        return ()
    turn = turned_deg(hang.turned)
    forward = (sin(radians(turn)), -cos(radians(turn)))
    edge = (hang.at.across.m, hang.at.depth.m, hang.top.m)
    boxes = []
    for down in down_angles_deg(hang) or ():
        middle, edge = (
            along_front(edge, forward, down_deg=down, length_m=length_m)
            for length_m in (box_height_m / 2, box_height_m)
        )
        level = hang.turned_down.db if hang.turned_down else 0.0
        boxes.append(
            Box(
                hang.name,
                hang.model,
                middle,
                turn,
                down,
                hang.delay.s if hang.delay else 0.0,
                level,
            )
        )
    return tuple(boxes)


def along_front(
    edge: Point, forward: tuple[float, float], *, down_deg: float, length_m: float
) -> Point:
    """
    The place that far down the front of a box from its upper edge.

    A box that looks down leans back as its front goes down.
    """
    back, drop = sin(radians(down_deg)) * length_m, cos(radians(down_deg)) * length_m
    return edge[0] - forward[0] * back, edge[1] - forward[1] * back, edge[2] - drop


def centre_of_weight(boxes: Sequence[Box], *, box_depth_m: float) -> Point:
    """
    The middle of the weight of a column of equal boxes, each taken to weigh alike throughout: half
    its depth behind its front.
    """
    middles = [
        tuple(front - part * box_depth_m / 2 for front, part in zip(box.at, aim(box), strict=True))
        for box in boxes
    ]
    across, deep, high = (
        fsum(middle[axis] for middle in middles) / len(middles) for axis in range(3)
    )
    return across, deep, high


def places_in_line_m(subs: PlacedSubs) -> tuple[float, ...]:
    """The middle of each sub along the line, from its middle, stage right first."""
    return tuple((index - (subs.count - 1) / 2) * subs.spacing.m for index in range(subs.count))


def boxes_of_subs(subs: PlacedSubs, delays_s: Sequence[float]) -> tuple[Box, ...]:
    """The subs of a line that play, with their delays."""
    start = subs.delay.s if subs.delay else 0.0
    level = subs.turned_down.db if subs.turned_down else 0.0
    return tuple(
        Box(
            subs.name,
            subs.model,
            (subs.at.across.m + along_m, subs.at.depth.m, subs.at.height.m),
            0.0,
            0.0,
            start + delay_s,
            level,
        )
        for number, along_m, delay_s in zip(
            range(1, subs.count + 1), places_in_line_m(subs), delays_s, strict=True
        )
        if number not in subs.out_of_service
    )


def boxes_of_fill(fill: Fill) -> tuple[Box, ...]:
    """The boxes of a fill that are in service, without their delays."""
    return tuple(box for record, box in each_of_fill(fill) if record.condition != "out of service")


def each_of_fill(fill: Fill) -> Iterator[tuple[FillBox, Box]]:
    """Each box of a fill as written, and as a box; none where its geometry is not known."""
    if not is_placed_fill(fill):
        return
    level = fill.turned_down.db if fill.turned_down else 0.0
    for record in (box for box in fill.boxes if is_placed_box(box)):
        at = (record.at.across.m, record.at.depth.m, record.at.height.m)
        yield (
            record,
            Box(
                fill.name,
                fill.model,
                at,
                turned_deg(record.turned),
                record.down.deg if record.down else 0.0,
                0.0,
                level,
            ),
        )


def corners_of(area: DrawnArea) -> tuple[tuple[float, float], ...]:
    """The corners of an area on the plan."""
    return tuple((corner.across.m, corner.depth.m) for corner in area.corners)


def floor_corners(area: DrawnArea) -> tuple[Point, ...]:
    """The corners of an area with the height of the floor there."""
    return tuple((corner.across.m, corner.depth.m, corner.height.m) for corner in area.corners)


def heights_of(area: DrawnArea) -> tuple[float, ...]:
    """The height of the floor at each corner."""
    return tuple(corner.height.m for corner in area.corners)
