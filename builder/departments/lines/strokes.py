"""
Strokes between spots of a drawing: bent so that they pass other spots and each other at a distance,
and where a number on one can be read.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

At = tuple[float, float]

BENDS = (0.0, 16.0, -16.0, 30.0, -30.0, 46.0, -46.0, 62.0, -62.0)
"""How far the middle of a stroke may be drawn aside, the least first. [drawing units]"""
CLEAR_OF_SPOTS, CLEAR_OF_STROKES = 20.0, 12.0
"""Distances at which nothing more is gained. [drawing units]"""
SHARES = tuple(share / 20 for share in range(4, 17))
"""How far along a stroke its number may stand."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A curve from start to end, drawn towards its control point."""

    start: At
    control: At
    end: At

    def at(self, share: float) -> At:
        """The point at a share of the way."""
        first, middle, last = (1 - share) ** 2, 2 * share * (1 - share), share**2
        x, y = (
            first * a + middle * b + last * c
            for a, b, c in zip(self.start, self.control, self.end, strict=True)
        )
        return x, y

    @property
    def middle_part(self) -> list[At]:
        """Points along it, without the ends where strokes meet."""
        return [self.at(share) for share in SHARES]


def bent(start: At, end: At, spots: Sequence[At], others: Sequence[Stroke]) -> Stroke:
    """
    The stroke with the least bend that keeps clear; where none does, the one that keeps clearest.
    """
    return max(
        (stroke_bent(start, end, bend) for bend in BENDS),
        key=lambda stroke: round(clearance(stroke, spots, others), 3),
    )


def stroke_bent(start: At, end: At, bend: float) -> Stroke:
    """A stroke whose middle is drawn aside."""
    along_x, along_y = end[0] - start[0], end[1] - start[1]
    length = hypot(along_x, along_y) or 1.0
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    return Stroke(
        start,
        (middle[0] - 2 * bend * along_y / length, middle[1] + 2 * bend * along_x / length),
        end,
    )


def clearance(stroke: Stroke, spots: Sequence[At], others: Sequence[Stroke]) -> float:
    """
    How well a stroke keeps clear of spots and of the middle of other strokes, up to what is enough.
    """
    from_spots = min(
        (apart(point, spot) for point in stroke.middle_part for spot in spots),
        default=CLEAR_OF_SPOTS,
    )
    middle = stroke.at(0.5)
    from_strokes = min(
        (apart(middle, point) for other in others for point in other.middle_part),
        default=CLEAR_OF_STROKES,
    )
    return min(from_spots, CLEAR_OF_SPOTS) + min(from_strokes, CLEAR_OF_STROKES)


def label_at(stroke: Stroke, taken: Sequence[At], others: Sequence[Stroke]) -> At:
    """
    Where on a stroke a number stands furthest from what is taken, and then from other strokes.
    """
    return max(stroke.middle_part, key=lambda point: round(freedom(point, taken, others), 3))


def freedom(point: At, taken: Sequence[At], others: Sequence[Stroke]) -> float:
    """How much room a number has. Names and numbers count up to 26 units, strokes up to 12."""
    from_taken = min((apart(point, each) for each in taken), default=26.0)
    from_strokes = min(
        (apart(point, each) for other in others for each in other.middle_part), default=12.0
    )
    return min(from_taken, 26.0) + min(from_strokes, 12.0)


def apart(one: At, other: At) -> float:
    """The distance between two points."""
    return hypot(one[0] - other[0], one[1] - other[1])
