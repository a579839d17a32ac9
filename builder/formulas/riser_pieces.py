"""
Risers of a wanted size from like pieces laid side by side, and the stock that gives all of them.

Planning figures: the maker says which pieces join, and what they carry joined.
"""

from math import ceil
from typing import TypedDict

from builder.formulas.cite import cites
from builder.formulas.sources import COMMON_PRACTICE

TOLERANCE_M = 0.025
"""How much smaller than wanted a riser may be: what rounding of feet and metres costs."""


class Laid(TypedDict):
    """How many pieces make a riser, and the size that it then has. [m]"""

    pieces: int
    width_m: float
    depth_m: float


@cites(
    COMMON_PRACTICE,
    "like pieces in rows and columns, all turned alike",
    equation="n = ceil(w / W) × ceil(d / D), the lesser of both turns",
)
def laid(width_m: float, depth_m: float, piece_width_m: float, piece_depth_m: float) -> Laid:
    """
    The fewest like pieces that make a riser at least as large as wanted.

    Parameters
    ----------
    width_m, depth_m
        The size that is wanted. [m]
    piece_width_m, piece_depth_m
        The size of one piece, which may be turned by a quarter. [m]

    Returns
    -------
    Laid
        How many pieces, and how large they are together; of equal numbers the smaller riser.

    Raises
    ------
    ValueError
        If a size is not above 0.
    """
    for size_m in (width_m, depth_m, piece_width_m, piece_depth_m):
        if size_m <= 0:
            raise ValueError(f"size_m must be a number above 0, got {size_m}")
    straight = in_rows(width_m, depth_m, piece_width_m, piece_depth_m)
    turned = in_rows(width_m, depth_m, piece_depth_m, piece_width_m)
    if turned["pieces"] != straight["pieces"]:
        return turned if turned["pieces"] < straight["pieces"] else straight
    return turned if area_m2(turned) < area_m2(straight) else straight


def in_rows(width_m: float, depth_m: float, across_m: float, along_m: float) -> Laid:
    """Pieces of so much across and along, in rows and columns."""
    across = pieces_for(width_m, across_m)
    along = pieces_for(depth_m, along_m)
    return {
        "pieces": across * along,
        "width_m": across * across_m,
        "depth_m": along * along_m,
    }


def pieces_for(wanted_m: float, piece_m: float) -> int:
    """How many pieces one after the other are as long as wanted."""
    pieces = ceil((wanted_m - TOLERANCE_M) / piece_m)
    return pieces if pieces > 1 else 1


def area_m2(riser: Laid) -> float:
    """The area of a riser. [m²]"""
    return riser["width_m"] * riser["depth_m"]


@cites(
    COMMON_PRACTICE,
    "each riser of one kind of piece, no piece in two risers",
    equation="sum of pieces of the risers of a kind <= pieces in stock",
)
def shared_out(needed: list[list[int]], stock: list[int], steps: list[int]) -> list[int] | None:
    """
    A kind of piece for each riser so that the stock is enough for all.

    Parameters
    ----------
    needed
        For each riser how many pieces of each kind it takes; below 0 where a kind does not do.
    stock
        How many pieces there are of each kind.
    steps
        One number, the steps that the search may take; counted down.

    Returns
    -------
    list of int or None
        The kind of each riser; None where there is no such choice, or the steps ran out, which
        leaves the number below 0.
    """
    if len(needed) == 0:
        return []
    for kind in range(len(stock)):
        steps[0] -= 1
        if steps[0] < 0:
            return None
        pieces = needed[0][kind]
        if 0 <= pieces <= stock[kind]:
            left = [
                stock[other] - pieces if other == kind else stock[other]
                for other in range(len(stock))
            ]
            rest = shared_out(needed[1:], left, steps)
            if rest is not None:
                return [kind, *rest]
    return None
