"""
Whether a row of the audience sees over the one in front.

Planning figures: the licensing authority decides.
"""

from builder.formulas.cite import cites
from builder.formulas.ranges import above_zero
from builder.formulas.sources import PLUS_SIGHTLINES, STADIA


@cites(STADIA, "ch. 11, C-value, from memory", equation="C = D (N + R) / (D + T) - R")
def sightline_c_m(
    *, eye_to_focus_m: float, eye_above_focus_m: float, row_depth_m: float, riser_m: float
) -> float:
    """
    How far the view of a row passes above the eyes of the row in front.

    Parameters
    ----------
    eye_to_focus_m
        From the eyes of the row in front to the point of focus, on plan. [m]
    eye_above_focus_m
        Those eyes above the point of focus; below 0 on a flat floor under a stage. [m]
    row_depth_m
        From row to row. [m]
    riser_m
        Rise from the row in front to this one. [m]

    Returns
    -------
    float
        C-value; below 0 where the row in front is in the way. [m]

    Raises
    ------
    ValueError
        If a distance is not above 0.

    Notes
    -----
    60 mm is between heads, 90 mm with the head tilted back, 120 mm good, 150 mm excellent
    (Shepherd). All eyes are taken as equally high.
    """
    distance = above_zero("eye_to_focus_m", eye_to_focus_m)
    return (
        distance
        * (riser_m + eye_above_focus_m)
        / (distance + above_zero("row_depth_m", row_depth_m))
        - eye_above_focus_m
    )


@cites(PLUS_SIGHTLINES, "riser height", equation="N = (R + C) (D + T) / D - R")
def riser_for_c_m(
    *, eye_to_focus_m: float, eye_above_focus_m: float, row_depth_m: float, c_m: float
) -> float:
    """
    Rise a row needs for a wanted C-value.

    Parameters
    ----------
    eye_to_focus_m, eye_above_focus_m
        Of the eyes of the row in front: on plan and above the point of focus. [m]
    row_depth_m
        From row to row. [m]
    c_m
        Wanted C-value. [m]

    Returns
    -------
    float
        Rise from the row in front. [m]

    Raises
    ------
    ValueError
        If a distance is not above 0.
    """
    distance = above_zero("eye_to_focus_m", eye_to_focus_m)
    return (eye_above_focus_m + c_m) * (
        distance + above_zero("row_depth_m", row_depth_m)
    ) / distance - eye_above_focus_m
