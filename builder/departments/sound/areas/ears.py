"""Where the ears are: which areas can be sampled, how finely, and the ears over each."""

from collections.abc import Sequence
from math import ceil, fsum, sqrt

import numpy as np
from numpy.typing import NDArray

from builder.departments.sound.areas.geometry import corners_of, floor_corners
from builder.departments.sound.description.loudspeakers import AudienceArea
from builder.departments.sound.description.placed import DrawnArea, is_drawn_area
from builder.formulas.areas import ears_m, floor_of, plan_area_m2

Array = NDArray[np.float64]
STEP_M = 1.0
MOST_POINTS = 2000
"""
A lawn of a hectare at one metre would make a pack nobody downloads on a phone; larger audiences
take a coarser grid.
"""
MOST_A_SIDE = 300
HALVINGS = 5


def uneven(area: DrawnArea) -> bool:
    """Whether the corners of an area do not lie on one slope."""
    try:
        floor_of(floor_corners(area))
    except ValueError:
        return True
    return False


def sampled(areas: Sequence[AudienceArea]) -> list[DrawnArea]:
    """The areas that can be sampled: in use, with known corners on one slope."""
    drawn = [area for area in areas if is_drawn_area(area)]
    return [area for area in drawn if area.condition != "out of service" and not uneven(area)]


def step_for_m(areas: Sequence[DrawnArea]) -> float:
    """
    The step of the grid: a metre, or in half metres as much more as keeps the number of points.
    """
    total_m2 = fsum(max(plan_area_m2(floor_corners(area)), box_m2(area) / 4) for area in areas)
    longest_m = max((side for area in areas for side in sides_m(area)), default=0.0)
    return max(STEP_M, ceil(2 * max(sqrt(total_m2 / MOST_POINTS), longest_m / MOST_A_SIDE)) / 2)


def sides_m(area: DrawnArea) -> tuple[float, float]:
    """The extent of an area across and deep."""
    xs, ys = zip(*corners_of(area), strict=True)
    return float(max(xs) - min(xs)), float(max(ys) - min(ys))


def box_m2(area: DrawnArea) -> float:
    """
    The rectangle around an area: every place in it is looked at, so a long thin area must not make
    it endless.
    """
    across_m, deep_m = sides_m(area)
    return across_m * deep_m


def ears_of(area: DrawnArea, step_m: float) -> tuple[Array, float]:
    """
    The ears of an area, shape (points, 3), and the step taken: a small area needs a finer one.

    No ears where it is too thin for any grid.
    """
    for _ in range(HALVINGS):
        try:
            return ears_m(floor_corners(area), step_m=step_m, ear_height_m=area.ears.m), step_m
        except ValueError:
            step_m /= 2
    return np.zeros((0, 3)), step_m
