"""Filled contours of levels on a grid, as SVG paths in tenths of a drawing unit."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf
from typing import Any

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
TENTHS = 10.0
ABOVE_ALL = 1e9


@dataclass(frozen=True, slots=True)
class Frame:
    """
    Where metres on the plan lie in the drawing: the left edge and the far edge, and drawing units a
    metre.
    """

    left_m: float
    far_m: float
    scale: float
    across: float = 0.0
    down: float = 0.0

    def at(self, x_m: float, y_m: float) -> tuple[float, float]:
        """A place in drawing units. Depth grows to the top."""
        return (
            self.across + (x_m - self.left_m) * self.scale,
            self.down + (self.far_m - y_m) * self.scale,
        )

    def tenths(self, places: Array) -> NDArray[np.int64]:
        """Places, shape (points, 2), in whole tenths of a drawing unit."""
        across = self.across + (places[:, 0] - self.left_m) * self.scale
        down = self.down + (self.far_m - places[:, 1]) * self.scale
        return np.rint(TENTHS * np.column_stack([across, down])).astype(np.int64)


@dataclass(frozen=True, slots=True)
class Levels:
    """Levels on a grid, shape (ys, xs); not a number where there is none. [m], [dB]"""

    xs_m: Array
    ys_m: Array
    db: Array

    def contours(self) -> Any:
        """Who finds contours."""
        from contourpy import (
            FillType,
            LineType,
            contour_generator,
        )  # a tenth of a second that only those who draw should pay

        masked = np.ma.masked_invalid(self.db)
        return contour_generator(
            self.xs_m,
            self.ys_m,
            masked,
            corner_mask=True,
            line_type=LineType.Separate,
            fill_type=FillType.ChunkCombinedOffset,
        )


def filled_paths(contours: Any, steps_db: Sequence[int], frame: Frame) -> Iterator[tuple[int, str]]:
    """
    For each step, the shape of all that is at least as loud, lowest first: painted in this order,
    the louder covers the quieter.
    """
    for step in steps_db:
        (points,), (offsets,) = contours.filled(step, ABOVE_ALL)
        if points is not None:
            loops = (points[start:end] for start, end in pairwise(offsets))
            yield step, "".join(loop_path(frame.tenths(loop)) for loop in loops)


def loop_path(places: NDArray[np.int64]) -> str:
    """A closed loop, written as steps from place to place: shorter than places."""
    moves = np.diff(places[:-1], axis=0)
    moves = moves[moves.any(axis=1)]
    if len(moves) < 2:
        return ""
    return f"M{places[0, 0]} {places[0, 1]}l{' '.join(map(str, moves.ravel().tolist()))}z".replace(
        " -", "-"
    )


def lines_of(contours: Any, step_db: int) -> list[Array]:
    """The contour lines of one level, each shape (points, 2). [m]"""
    return [np.asarray(line, dtype=np.float64) for line in contours.lines(step_db)]


def within(corners: Sequence[tuple[float, float]], places: Array) -> NDArray[np.bool_]:
    """
    For each place, shape (points, 2), whether it lies inside an outline: a ray to the right crosses
    an odd number of its sides.
    """
    inside = np.zeros(len(places), dtype=bool)
    x, y = places[:, 0], places[:, 1]
    for (ax, ay), (bx, by) in zip(corners, (*corners[1:], corners[0]), strict=True):
        crosses = (ay > y) != (by > y)
        at = ax + (y - ay) * ((bx - ax) / (by - ay if by != ay else inf))
        inside ^= crosses & (x < at)
    return inside
