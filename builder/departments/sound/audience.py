"""Where the ears are: points on a grid over each audience area, at ear height above its floor."""

from math import ceil, floor

import numpy as np
from numpy.typing import NDArray

from builder.departments.sound.geometry import corners_of, heights_of
from builder.departments.sound.loudspeakers import AudienceArea
from builder.formulas.polygons import contains

Array = NDArray[np.float64]
Plane = tuple[float, float, float]
UNEVEN_M = 0.15
"""How far a corner may lie off the area's slope before the house is asked to split the area."""


def plane_of(area: AudienceArea) -> Plane:
    """The slope through an area's corners, least squares: height = a + b × across + c × depth."""
    corners = np.array(corners_of(area))
    columns = np.column_stack([np.ones(len(corners)), corners])
    a, b, c = np.linalg.lstsq(columns, np.array(heights_of(area)), rcond=None)[0]
    return float(a), float(b), float(c)


def height_m(plane: Plane, across_m: float, depth_m: float) -> float:
    """The height of the slope at a place."""
    return plane[0] + plane[1] * across_m + plane[2] * depth_m


def unevenness_m(area: AudienceArea) -> float:
    """How far the furthest corner lies off the slope."""
    plane = plane_of(area)
    return max(abs(height_m(plane, x, y) - z) for (x, y), z in zip(corners_of(area), heights_of(area), strict=True))


def ear_points(area: AudienceArea, step_m: float) -> Array:
    """Ears in the middle of each square of a grid whose middle lies within the area, shape (points, 3)."""
    corners, plane = corners_of(area), plane_of(area)
    xs, ys = zip(*corners, strict=True)
    middles = [
        ((column + 0.5) * step_m, (row + 0.5) * step_m)
        for row in range(floor(min(ys) / step_m), ceil(max(ys) / step_m))
        for column in range(floor(min(xs) / step_m), ceil(max(xs) / step_m))
    ]
    inside = [(x, y, height_m(plane, x, y) + area.ears.m) for x, y in middles if contains(corners, (x, y))]
    return np.array(inside).reshape(-1, 3)
