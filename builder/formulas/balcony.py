"""
The shadow of a balcony: which ears have a straight line to a loudspeaker past its front edge, and
the way over the edge to the others.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from builder.formulas.areas import Corners, floor_of, inside
from builder.formulas.cite import cites
from builder.formulas.ranges import not_negative
from builder.formulas.sources import CRC_TABLES

Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class OverEdge:
    """
    For each ear, shape (N,): whether the straight line is blocked; from the source to the edge and
    from there to the ear, where it is. [m]
    """

    blocked: NDArray[np.bool_]
    source_to_edge_m: Array
    edge_to_ear_m: Array


@cites(
    CRC_TABLES,
    "a line and a plane; distances between points",
    equation=(
        "blocked where the line is above the underside when it comes over the balcony, and below it"
        " at the ear"
    ),
)
def over_edge(
    source_m: tuple[float, float, float],
    points_m: Array,
    *,
    corners_m: Corners,
    thickness_m: float = 0.0,
) -> OverEdge:
    """
    Straight lines from a source to ears, past a balcony.

    Parameters
    ----------
    source_m
        Place of the source. [m]
    points_m
        Ears, shape (N, 3). [m]
    corners_m
        Corners of the balcony's floor, with their heights. [m]
    thickness_m
        From its floor to its underside. [m]

    Returns
    -------
    OverEdge
        Who is blocked, and the way over the edge where the line first meets the balcony's plan.

    Raises
    ------
    ValueError
        If the corners do not lie on one slope, or the thickness is negative.

    Notes
    -----
    Ears on top of the balcony are not in its shadow. The plan is taken as solid from where the line
    enters it to where it leaves it last. Ways round the sides, and what is reflected below, are
    left out.
    """
    plane, thick = floor_of(corners_m), not_negative("thickness_m", thickness_m)
    source = np.array(source_m)
    run = points_m - source
    enters = np.where(inside(source[None, :], corners_m)[0], 0.0, np.inf) * np.ones(len(points_m))
    for share in _crossings(source, run, corners_m):
        enters = np.minimum(enters, share)
    there = np.isfinite(enters)
    meets = source + np.where(there, enters, 0.0)[:, None] * run
    edge = np.column_stack([meets[:, :2], plane.z_m(meets[:, 0], meets[:, 1]) - thick])
    below = points_m[:, 2] < plane.z_m(points_m[:, 0], points_m[:, 1]) - thick
    blocked = there & (meets[:, 2] > edge[:, 2]) & below
    return OverEdge(
        blocked, np.linalg.norm(edge - source, axis=1), np.linalg.norm(points_m - edge, axis=1)
    )


def _crossings(source: Array, run: Array, corners_m: Corners) -> list[Array]:
    """
    Where along each line it crosses each side on the plan, as a share of its length; infinite where
    it does not.
    """
    found = []
    for (ax, ay, *_), (bx, by, *_) in zip(corners_m, (*corners_m[1:], corners_m[0]), strict=True):
        dx, dy = bx - ax, by - ay
        across = run[:, 0] * dy - run[:, 1] * dx
        with np.errstate(divide="ignore", invalid="ignore"):
            along = ((ax - source[0]) * dy - (ay - source[1]) * dx) / across
            beside = ((ax - source[0]) * run[:, 1] - (ay - source[1]) * run[:, 0]) / across
        found.append(
            np.where(
                (across != 0) & (along >= 0) & (along <= 1) & (beside >= 0) & (beside <= 1),
                along,
                np.inf,
            )
        )
    return found
