"""
Trims and spans: what the steel leaves for a hang, and what a maker's table allows for a span.

Nothing is read beyond what was stated.
"""

import math
from collections.abc import Sequence
from itertools import pairwise

from builder.formulas.cite import cites
from builder.formulas.polyline import along_polyline
from builder.formulas.ranges import not_negative
from builder.formulas.sources import COMMON_PRACTICE, CRC_TABLES


@cites(
    COMMON_PRACTICE,
    "trim from low steel",
    equation="trim = low steel - sum(heights of hoist, bag, bridle, frame, body)",
)
def highest_trim_m(*, low_steel_m: float, parts_m: Sequence[float]) -> float:
    """
    Highest trim of what hangs below a beam.

    Parameters
    ----------
    low_steel_m
        Underside of the beam there, above the deck. [m]
    parts_m
        Heights of all that hangs between steel and the place asked for: hoist at its closest, chain
        bag, bridle, frame, array, truss. [m]

    Returns
    -------
    float
        Height above the deck; negative where the parts are longer than the height. [m]

    Raises
    ------
    ValueError
        If a height is negative.
    """
    return not_negative("low_steel_m", low_steel_m) - math.fsum(
        not_negative("parts_m", part) for part in parts_m
    )


@cites(
    CRC_TABLES,
    "linear interpolation",
    equation="z = z_k + (z_(k+1) - z_k) (s - s_k) / (s_(k+1) - s_k)",
)
def low_steel_m(*, at_m: float, stations: Sequence[tuple[float, float]]) -> float:
    """
    Low steel at a place along a beam whose height varies.

    Parameters
    ----------
    at_m
        Place along the beam. [m]
    stations
        Surveyed places and the low steel there, in rising order of place. [m], [m]

    Returns
    -------
    float
        Low steel there. [m]

    Raises
    ------
    ValueError
        If there is no station, places do not rise, or the place is outside the stations.

    Notes
    -----
    Straight between stations. Nothing is read beyond the first and last.
    """
    return _between("at_m", at_m, "stations", stations)


@cites(
    CRC_TABLES,
    "linear interpolation of 1/P, inwards only",
    equation="1/P = 1/P_k + (1/P_(k+1) - 1/P_k) (l - l_k) / (l_(k+1) - l_k)",
)
def allowable_load_kg(*, span_m: float, table: Sequence[tuple[float, float]]) -> float:
    """
    Allowable load of a truss for a span, from the maker's table.

    Parameters
    ----------
    span_m
        Distance between supports. [m]
    table
        Spans and the load allowed at each, of one kind of loading, in rising order of span. [m],
        [kg]

    Returns
    -------
    float
        Load allowed at that span, of the kind the table is for. [kg]

    Raises
    ------
    ValueError
        If the table is empty, spans do not rise, a load is negative or rises with the span, or the
        span is outside the table.

    Notes
    -----
    A load limited by bending falls as 1/l, one limited by deflection or per metre faster; a
    straight line between two rows lies above such a curve. The reciprocal is exact for 1/l and too
    low for the faster ones, so it does not promise more than the maker's own curve of these kinds.
    For one span: a truss over three or more supports has its own limits at the supports.
    """
    loads_kg = [not_negative("table", load_kg) for _, load_kg in table]
    if loads_kg != sorted(loads_kg, reverse=True):
        raise ValueError(f"table must not allow more at a longer span, got {tuple(table)}")
    return 1 / _between(
        "span_m",
        span_m,
        "table",
        [(span, 1 / load_kg if load_kg else math.inf) for span, load_kg in table],
    )


def _between(name: str, at: float, rows_name: str, rows: Sequence[tuple[float, float]]) -> float:
    """Value on the polyline through rows, refused outside it."""
    places = [place for place, _ in rows]
    if not places or any(second <= first for first, second in pairwise(places)):
        raise ValueError(f"{rows_name} must hold rising places, got {tuple(places)}")
    if not places[0] <= at <= places[-1]:
        raise ValueError(
            f"{name} must be within {rows_name}, {places[0]} to {places[-1]} m, got {at}"
        )
    return along_polyline(at, rows)
