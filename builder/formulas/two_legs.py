"""
Two legs of a bridle in one plane with their load: lengths, the angle between them, and what each
pulls.

Pure arithmetic in + - * / and square roots, so that the check in a browser finds the same to the
last digit. Planning figures: a competent person decides whether an anchor may be pulled sideways.
"""

from math import sqrt
from typing import TypedDict

from builder.formulas.cite import cites
from builder.formulas.sources import CRC_TABLES, HALL


class LegSpan(TypedDict):
    """A leg from the apex: how far aside and above its anchor is, and its length. [m]"""

    run_m: float
    rise_m: float
    length_m: float


class LegForces(TypedDict):
    """What a leg takes of a load of 1: its share straight down, and its pull. [-]"""

    share: float
    pull: float


@cites(HALL, "Lesson 3, bridle lengths", equation="L = sqrt(V^2 + H^2)")
def leg_span(run_m: float, rise_m: float) -> LegSpan:
    """
    A leg with its length.

    Parameters
    ----------
    run_m, rise_m
        Horizontal and vertical distance from the apex to the leg's anchor. [m]

    Returns
    -------
    LegSpan
        The leg. [m]
    """
    length_m = sqrt(run_m * run_m + rise_m * rise_m)
    return {"run_m": run_m, "rise_m": rise_m, "length_m": length_m}


@cites(
    CRC_TABLES,
    "plane analytic geometry, angle between two lines",
    equation="cos a = (V1 V2 - H1 H2) / (L1 L2)",
)
def included_cosine(first: LegSpan, second: LegSpan) -> float:
    """
    The cosine of the angle between two legs whose anchors are on both sides of the apex.

    Parameters
    ----------
    first, second
        The legs. [m]

    Returns
    -------
    float
        The cosine; -0.5 at 120 degrees. [-]
    """
    rises_m2 = first["rise_m"] * second["rise_m"]
    runs_m2 = first["run_m"] * second["run_m"]
    return (rises_m2 - runs_m2) / (first["length_m"] * second["length_m"])


@cites(
    HALL,
    "Lesson 4, bridle tensions",
    equation="T1 = W L1 H2 / (V1 H2 + V2 H1); V1 share = W V1 H2 / (V1 H2 + V2 H1)",
)
def two_leg_forces(first: LegSpan, second: LegSpan) -> tuple[LegForces, LegForces]:
    """
    What two legs take of a load of 1 at their apex.

    Parameters
    ----------
    first, second
        The legs, with their anchors on both sides of the apex. [m]

    Returns
    -------
    pair of LegForces
        Share and pull of each. [-]

    Raises
    ------
    ValueError
        If neither leg runs aside: then nothing tells how they share.
    """
    turn_m2 = first["rise_m"] * second["run_m"] + second["rise_m"] * first["run_m"]
    if turn_m2 == 0:
        raise ValueError(
            f"run_m and other_run_m must not both be 0, got {first['run_m']} and {second['run_m']}"
        )
    return (
        _forces(first, second["run_m"] / turn_m2),
        _forces(second, first["run_m"] / turn_m2),
    )


def _forces(leg: LegSpan, per_m: float) -> LegForces:
    """A leg's share and pull, by the load that each metre of it takes."""
    return {"share": leg["rise_m"] * per_m, "pull": leg["length_m"] * per_m}
