"""Values along a line that is straight between places, in + - * / for the check in a browser."""

from collections.abc import Sequence

from builder.formulas.cite import cites
from builder.formulas.sources import CRC_TABLES


@cites(
    CRC_TABLES,
    "linear interpolation",
    equation="z = z_k + (z_(k+1) - z_k) (s - s_k) / (s_(k+1) - s_k)",
)
def along_polyline(at: float, rows: Sequence[tuple[float, float]]) -> float:
    """
    The value at a place between rows of places and values.

    Parameters
    ----------
    at
        The place, between the first and the last.
    rows
        Places and values, one or more, in rising order of place.

    Returns
    -------
    float
        The value there, straight between the two rows beside it.
    """
    if len(rows) == 1:
        return rows[0][1]
    k = 0
    while k < len(rows) - 2 and at >= rows[k + 1][0]:
        k += 1
    first, low = rows[k]
    second, high = rows[k + 1]
    share = (at - first) / (second - first)
    if share == 0 or low == high:
        return low
    return high if share == 1 else low + (high - low) * share
