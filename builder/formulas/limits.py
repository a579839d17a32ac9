"""
Nested limits: point, beam, zone, roof. What is left on each point, and which limit binds.

A sum of ratings is no capacity: the limits above a point are met long before all points are full.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import fsum

from builder.formulas.cite import cites
from builder.formulas.ranges import not_negative
from builder.formulas.sources import COMMON_PRACTICE


@dataclass(frozen=True, slots=True)
class RatedPoint:
    """
    A point, what it may carry and what it carries. ``at_m`` is its place along the beam whose
    spacing rule it is under. ``aside_kg`` counts against its own rating alone: what its groups do
    not feel, such as the sideways part of a pull. [kg], [m]
    """

    name: str
    rating_kg: float
    carried_kg: float = 0.0
    groups: tuple[str, ...] = ()
    at_m: float | None = None
    aside_kg: float = 0.0

    def __post_init__(self) -> None:
        """Refuse negative loads."""
        not_negative("rating_kg", self.rating_kg)
        not_negative("carried_kg", self.carried_kg)
        not_negative("aside_kg", self.aside_kg)

    @property
    def own_left_kg(self) -> float:
        """What its own rating leaves; negative where that is passed. [kg]"""
        return self.rating_kg - self.carried_kg - self.aside_kg


@dataclass(frozen=True, slots=True)
class GroupLimit:
    """
    What the points of a beam, a zone or the whole roof may carry together.

    ``carried_kg`` is what hangs there besides the points. Loaded points of the group stand
    ``least_spacing_m`` or more apart. [kg], [m]
    """

    name: str
    limit_kg: float
    carried_kg: float = 0.0
    least_spacing_m: float = 0.0

    def __post_init__(self) -> None:
        """Refuse negative loads and spacings."""
        not_negative("limit_kg", self.limit_kg)
        not_negative("carried_kg", self.carried_kg)
        not_negative("least_spacing_m", self.least_spacing_m)


@dataclass(frozen=True, slots=True)
class Left:
    """
    What one point may still take; negative where a limit is already passed. ``binds`` names the
    point or group that sets it. [kg]
    """

    name: str
    left_kg: float
    binds: str
    by_spacing: bool = False


@cites(
    COMMON_PRACTICE,
    "nested limits of point, beam, zone and roof",
    equation=("left = min(rating - carried - aside, limit_g - sum of carried in g) over groups g"),
)
def left_on_points(points: Sequence[RatedPoint], limits: Sequence[GroupLimit]) -> tuple[Left, ...]:
    """
    What each point may still take while all others stay as they are, and which limit sets that.

    Parameters
    ----------
    points
        Points with their ratings, loads and groups. [kg], [m]
    limits
        Limits of the groups, from the nearest (beam) to the widest (roof). [kg], [m]

    Returns
    -------
    tuple of Left
        One for each point, in order. Where two limits are equal, the nearer one is named. [kg]

    Raises
    ------
    ValueError
        If names are not unique, a point names an unknown group, or a spacing rule meets a point
        without a place.

    Notes
    -----
    Not additive: what is left on one point is used up when a neighbour takes it. A point nearer to
    a loaded one than the spacing rule allows has nothing left.
    """
    _check(points, limits)
    free_kg = {limit.name: limit.limit_kg - _carried_kg(points, limit) for limit in limits}
    return tuple(_left(point, points, limits, free_kg) for point in points)


@cites(COMMON_PRACTICE, "a plain sum, for comparison only", equation="sum(rating_i)")
def sum_of_ratings_kg(points: Sequence[RatedPoint]) -> float:
    """
    Sum of all ratings, which no roof carries at once unless its limits say so.

    Parameters
    ----------
    points
        Points with their ratings. [kg]

    Returns
    -------
    float
        The sum. [kg]
    """
    return float(fsum(point.rating_kg for point in points))


def _check(points: Sequence[RatedPoint], limits: Sequence[GroupLimit]) -> None:
    names = [limit.name for limit in limits]
    for kind, listed in (("points", [point.name for point in points]), ("limits", names)):
        twice = sorted({name for name in listed if listed.count(name) > 1})
        if twice:
            raise ValueError(f"{kind} must have names of their own, got {twice[0]!r} twice")
    spaced = {limit.name for limit in limits if limit.least_spacing_m > 0}
    for point in points:
        for group in point.groups:
            if group not in names:
                raise ValueError(
                    f"groups of point {point.name!r} must be among the limits, got {group!r}"
                )
            if group in spaced and point.at_m is None:
                raise ValueError(
                    f"at_m of point {point.name!r} must be given for the spacing rule of {group!r},"
                    " got None"
                )


def _carried_kg(points: Sequence[RatedPoint], limit: GroupLimit) -> float:
    return limit.carried_kg + fsum(
        point.carried_kg for point in points if limit.name in point.groups
    )


def _left(
    point: RatedPoint,
    points: Sequence[RatedPoint],
    limits: Sequence[GroupLimit],
    free_kg: dict[str, float],
) -> Left:
    best = Left(point.name, point.own_left_kg, point.name)
    for limit in limits:
        if limit.name in point.groups and free_kg[limit.name] < best.left_kg:
            best = Left(point.name, free_kg[limit.name], limit.name)
    crowded = _crowded_by(point, points, limits)
    return Left(point.name, 0.0, crowded, by_spacing=True) if crowded and best.left_kg > 0 else best


def _crowded_by(
    point: RatedPoint, points: Sequence[RatedPoint], limits: Sequence[GroupLimit]
) -> str:
    """
    The first group whose spacing rule a loaded neighbour sets against this point, or an empty
    string.
    """
    for limit in limits:
        if limit.name in point.groups and any(
            other is not point
            and other.carried_kg > 0
            and limit.name in other.groups
            and _too_near(point, other, limit)
            for other in points
        ):
            return limit.name
    return ""


def _too_near(first: RatedPoint, second: RatedPoint, limit: GroupLimit) -> bool:
    if limit.least_spacing_m <= 0 or first.at_m is None or second.at_m is None:
        return False
    return abs(first.at_m - second.at_m) < limit.least_spacing_m - 1e-9
