"""
Audience areas: a flat or sloped polygon sampled into ears, and the statistics of levels over them.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from builder.formulas.cite import cites
from builder.formulas.outlines import fault_of
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import COMMON_PRACTICE, CRC_TABLES

Array = NDArray[np.float64]
Corner = tuple[float, float, float]
Corners = Sequence[Corner]

FLATNESS_M = 0.05
"""A corner may lie this far above or below the plane of its area."""


@dataclass(frozen=True, slots=True)
class Plane:
    """Floor of an area: ``z = height_m + rise_x x + rise_y y``. [m], [-]"""

    height_m: float
    rise_x: float
    rise_y: float

    def z_m(self, x_m: Array, y_m: Array) -> Array:
        """Height of the floor. [m]"""
        return np.asarray(self.height_m + self.rise_x * x_m + self.rise_y * y_m, dtype=np.float64)


@dataclass(frozen=True, slots=True)
class LevelSpread:
    """
    Levels over an area against a reference: mean, and 5th and 95th percentile [dB]; shares of the
    area within ±3 and ±6 dB of the reference, 0 to 1.
    """

    mean_db: float
    low_db: float
    high_db: float
    within_3_db: float
    within_6_db: float

    @property
    def spread_db(self) -> float:
        """From the 5th to the 95th percentile. [dB]"""
        return self.high_db - self.low_db


@cites(
    CRC_TABLES,
    "plane through points, least squares",
    equation="minimise sum (z_i - h - a x_i - b y_i)^2",
)
def floor_of(corners_m: Corners) -> Plane:
    """
    Plane of an area's floor.

    Parameters
    ----------
    corners_m
        Three or more corners in order, x, y, z. [m]

    Returns
    -------
    Plane
        The floor. [m], [-]

    Raises
    ------
    ValueError
        If the outline crosses itself, encloses nothing on plan, or a corner is more than 50 mm off
        the plane.
    """
    return _floor_of(tuple((x, y, z) for x, y, z in corners_m))


@lru_cache(maxsize=256)
def _floor_of(corners_m: tuple[Corner, ...]) -> Plane:
    """A venue has few floors, and each is asked for at every ear and every box."""
    corners = _checked_outline(corners_m)
    centre = corners.mean(axis=0)
    design = np.column_stack([np.ones(len(corners)), corners[:, :2] - centre[:2]])
    offset, rise_x, rise_y = (
        float(v) for v in np.linalg.lstsq(design, corners[:, 2], rcond=None)[0]
    )
    plane = Plane(offset - rise_x * float(centre[0]) - rise_y * float(centre[1]), rise_x, rise_y)
    off_m = float(np.abs(corners[:, 2] - plane.z_m(corners[:, 0], corners[:, 1])).max())
    if off_m > FLATNESS_M:
        raise ValueError(
            f"corners_m must lie in one plane within {FLATNESS_M} m, got {off_m:.2f} m off; split"
            " the area"
        )
    return plane


@cites(CRC_TABLES, "area of a polygon", equation="A = |sum(x_i y_(i+1) - x_(i+1) y_i)| / 2")
def plan_area_m2(corners_m: Corners) -> float:
    """
    Area on plan.

    Parameters
    ----------
    corners_m
        Three or more corners in order. [m]

    Returns
    -------
    float
        Area. [m²]

    Raises
    ------
    ValueError
        If the outline crosses itself or encloses nothing on plan.
    """
    return _area_m2(_checked_outline(corners_m))


@cites(
    CRC_TABLES,
    "point in polygon by crossings",
    equation="inside where a ray from the point crosses the outline an odd number of times",
)
def inside(points_m: Array, corners_m: Corners) -> NDArray[np.bool_]:
    """
    Which points lie inside an outline on plan.

    Parameters
    ----------
    points_m
        Points, shape (N, 2) or (N, 3). [m]
    corners_m
        Three or more corners in order. [m]

    Returns
    -------
    array of shape (N,)
        True inside. Points on the outline itself may fall either way.

    Raises
    ------
    ValueError
        If the outline crosses itself or encloses nothing on plan.
    """
    return _inside(points_m[:, 0], points_m[:, 1], _checked_outline(corners_m))


@cites(
    COMMON_PRACTICE,
    "one ear in the middle of each square of a grid on plan, above the floor",
    equation="x = x_middle + (i - (n - 1)/2) step; z = floor + ear",
)
def ears_m(corners_m: Corners, *, step_m: float, ear_height_m: float) -> Array:
    """
    Sample an audience area.

    Parameters
    ----------
    corners_m
        Three or more corners of the floor in order, x, y, z; it may slope. [m]
    step_m
        Side of the grid's squares on plan. [m]
    ear_height_m
        Ears above the floor: about 1.2 m seated, 1.7 m standing (common practice). [m]

    Returns
    -------
    array of shape (N, 3)
        Ears, by rows of x, then y. [m]

    Raises
    ------
    ValueError
        If the outline is refused by `floor_of`, the step is not above 0 or a square larger than the
        area, or no square's middle is inside.
    """
    above_zero("step_m", step_m)
    not_negative("ear_height_m", ear_height_m)
    floor, corners = floor_of(corners_m), np.array(corners_m, dtype=np.float64)
    x, y = (
        grid.ravel()
        for grid in np.meshgrid(
            *(_middles(corners[:, axis], step_m) for axis in (0, 1)), indexing="ij"
        )
    )
    within = _inside(x, y, corners)
    if not within.any() or step_m**2 > _area_m2(corners):
        raise ValueError(
            f"step_m must be fine enough for an area of {_area_m2(corners):.3g} m², got {step_m}"
        )
    x, y = x[within], y[within]
    return np.column_stack([x, y, floor.z_m(x, y) + ear_height_m])


@cites(
    COMMON_PRACTICE,
    "spread of level over an area",
    equation="share = count(|L_i - L_ref| <= 3) / N; percentiles by straight lines between ranks",
)
def level_spread(levels_db: Array, *, reference_db: float) -> LevelSpread:
    """
    How even levels are.

    Parameters
    ----------
    levels_db
        Levels at N ears, each standing for the same area. [dB]
    reference_db
        Level they are held against, such as that at the mix position. [dB]

    Returns
    -------
    LevelSpread
        Mean of the levels, percentiles and shares. [dB], [-]

    Raises
    ------
    ValueError
        If there is no level or one is not finite.
    """
    if levels_db.size == 0 or not np.isfinite(levels_db).all() or not math.isfinite(reference_db):
        raise ValueError(
            f"levels_db must hold finite levels, got {levels_db.size} of which"
            f" {int(np.isfinite(levels_db).sum())} finite"
        )
    low, high = (float(v) for v in np.percentile(levels_db, (5, 95)))
    off = np.abs(levels_db - reference_db)
    return LevelSpread(
        float(levels_db.mean()), low, high, float((off <= 3).mean()), float((off <= 6).mean())
    )


def _middles(values_m: Array, step_m: float) -> Array:
    """Middles of squares, centred over the extent so that a symmetric area has symmetric ears."""
    low, high = float(values_m.min()), float(values_m.max())
    count = max(1, math.ceil((high - low) / step_m - 1e-9))
    return (low + high) / 2 + step_m * (np.arange(count, dtype=np.float64) - (count - 1) / 2)


def _inside(x_m: Array, y_m: Array, corners: Array) -> NDArray[np.bool_]:
    found = np.zeros(x_m.shape, dtype=np.bool_)
    for (ax, ay), (bx, by) in _edges(corners):
        if ay != by:
            straddles = (ay > y_m) != (by > y_m)
            found ^= straddles & (x_m < ax + (y_m - ay) * (bx - ax) / (by - ay))
    return found


def _area_m2(corners: Array) -> float:
    x, y = corners[:, 0], corners[:, 1]
    return abs(float((x * np.roll(y, -1) - np.roll(x, -1) * y).sum())) / 2


Place = tuple[float, float]
Edge = tuple[Place, Place]


def _edges(corners: Array) -> list[Edge]:
    places: list[Place] = [(float(x), float(y)) for x, y in corners[:, :2]]
    return list(zip(places, [*places[1:], places[0]], strict=True))


def _checked_outline(corners_m: Corners) -> Array:
    corners = np.array(corners_m, dtype=np.float64)
    if (
        corners.ndim != 2
        or corners.shape[0] < 3
        or corners.shape[1] != 3
        or not np.isfinite(corners).all()
    ):
        raise ValueError(
            f"corners_m must hold three or more corners of finite x, y, z, got {corners_m}"
        )
    fault = fault_of([(float(x), float(y)) for x, y in corners[:, :2]])
    if fault is not None:
        raise ValueError(f"corners_m must be an outline on plan, got {fault} of {corners_m}")
    return corners
