"""
Stage decks: how many cover a riser, and what stands on the floor.

Planning figures: the maker's data, the structure's own limits and a competent person decide.
"""

import math
from dataclasses import dataclass

from builder.formulas.cite import cites
from builder.formulas.gravity import STANDARD_GRAVITY_M_S2
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import COMMON_PRACTICE, EN_1991_1_1


@dataclass(frozen=True, slots=True)
class Decking:
    """
    Decks in a grid: how many across and deep, whether turned by a quarter, and what they cover
    beyond what was asked. [m²]
    """

    decks: int
    across: int
    deep: int
    turned: bool
    beyond_m2: float


@cites(
    COMMON_PRACTICE,
    "whole decks in a grid, all one way",
    equation="decks = ceil(W / w) * ceil(D / d), or with w and d swapped",
)
def decks_needed(
    *, width_m: float, depth_m: float, deck_width_m: float, deck_depth_m: float
) -> Decking:
    """
    Fewest decks of one size, all laid one way, that cover a rectangle.

    Parameters
    ----------
    width_m, depth_m
        Size to cover. [m]
    deck_width_m, deck_depth_m
        Size of one deck. [m]

    Returns
    -------
    Decking
        Count and grid; not turned where both ways take as many.

    Raises
    ------
    ValueError
        If a size is not above 0.

    Notes
    -----
    A mix of turned and unturned decks may need fewer. A hundredth of a millimetre over a whole
    number of decks is forgiven.
    """
    wide, deep = above_zero("width_m", width_m), above_zero("depth_m", depth_m)
    one, other = above_zero("deck_width_m", deck_width_m), above_zero("deck_depth_m", deck_depth_m)
    grids = [
        (_whole(wide / one), _whole(deep / other), False),
        (_whole(wide / other), _whole(deep / one), True),
    ]
    across, rows, turned = min(grids, key=lambda grid: grid[0] * grid[1])
    return Decking(
        across * rows, across, rows, turned, max(0.0, across * rows * one * other - wide * deep)
    )


def _whole(ratio: float) -> int:
    return math.ceil(ratio - 1e-5)


@cites(
    EN_1991_1_1,
    "6.1, imposed loads; weight spread over its area, from memory",
    equation="q = m g / A / 1000",
)
def floor_load_kpa(*, mass_kg: float, area_m2: float) -> float:
    """
    Load on a floor under something that stands evenly on an area.

    Parameters
    ----------
    mass_kg
        What stands there. [kg]
    area_m2
        Area it stands on: the contact area for feet and wheels, not the outline. [m²]

    Returns
    -------
    float
        Load. [kPa, which is kN/m²]

    Raises
    ------
    ValueError
        If the mass is negative or the area is not above 0.

    Notes
    -----
    A rolling or dropped load weighs more. A point load is a limit of its own and is not added to
    the spread one.
    """
    return (
        not_negative("mass_kg", mass_kg)
        * STANDARD_GRAVITY_M_S2
        / above_zero("area_m2", area_m2)
        / 1000
    )


@cites(
    EN_1991_1_1,
    "6.1, imposed loads, from memory",
    equation="m = (q_limit - q_standing) * A * 1000 / g",
)
def floor_mass_left_kg(*, limit_kpa: float, standing_kg: float, area_m2: float) -> float:
    """
    Mass that an area of floor may still take, spread evenly.

    Parameters
    ----------
    limit_kpa
        Stated limit of the floor. [kPa]
    standing_kg
        What stands there already. [kg]
    area_m2
        The area. [m²]

    Returns
    -------
    float
        Mass left; below 0 where the limit is passed. [kg]

    Raises
    ------
    ValueError
        If a number is out of range.
    """
    most_kg = (
        not_negative("limit_kpa", limit_kpa)
        * 1000
        * above_zero("area_m2", area_m2)
        / STANDARD_GRAVITY_M_S2
    )
    return most_kg - not_negative("standing_kg", standing_kg)
