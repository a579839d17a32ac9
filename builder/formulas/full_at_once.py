"""
How many points can be at their rating at once under nested limits.

Start at :func:`full_points`.

The idea: all that a group's limit needs to know of the points within it is, for each number of
them, the least load they add. Two groups that are apart are joined by adding numbers and loads, so
one pass over the tree gives the most points, exactly (``_choices``). A spacing rule on a line is
the same with one more look back: a point is taken after the last that stands far enough before it.
Groups that cross (a beam and a zone) do not nest. They are left out at first, which can only allow
too much, and looked at after: where one is passed, one of its points is taken in one case and left
out in the other. A case that cannot beat the best is dropped, so what remains at the end is the
most. After ``MOST_CASES`` it stops, and tells the best set and the number that none can pass.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import fsum

from builder.formulas.cite import cites
from builder.formulas.limits import (
    GroupLimit,
    RatedPoint,
    _carried_kg,
    _check,
    _crowded_by,
    _too_near,
    sum_of_ratings_kg,
)
from builder.formulas.sources import BELLMAN

MOST_CASES = 2_000
"""Bound of the search, in cases looked at, so that the answer is the same on every machine."""
ROUNDING_KG = 1e-6


@dataclass(frozen=True, slots=True)
class FullPoints:
    """
    The most points that can be at their rating at once.

    ``at_most`` equals the number of ``names`` where the answer is proven; else the search met its
    bound and the true number is between the two. ``load_kg`` is what those points then carry;
    ``sum_of_ratings_kg`` is the number that misleads. [kg]
    """

    names: tuple[str, ...]
    load_kg: float
    at_most: int
    proven: bool
    sum_of_ratings_kg: float


@cites(
    BELLMAN,
    "dynamic programming over nested groups; branching where groups cross",
    equation=(
        "max |S|: for every group, carried + sum over S of (rating - carried) <= limit; spacing"
        " between points of S"
    ),
)
def full_points(points: Sequence[RatedPoint], limits: Sequence[GroupLimit]) -> FullPoints:
    """
    How many points can be at their full rating at once, and which.

    Parameters
    ----------
    points
        Points with their ratings, loads and groups. [kg], [m]
    limits
        Limits of the groups. [kg], [m]

    Returns
    -------
    FullPoints
        The largest set; of equal ones, the one that adds least load among nested groups. [kg]

    Raises
    ------
    ValueError
        If names are not unique, a point names an unknown group, or a spacing rule meets a point
        without a place.

    Notes
    -----
    Other points keep what they carry. Groups that nest are solved exactly in one pass: for every
    number of full points, the least load that it takes. Groups that cross others are checked after,
    and the case is split where one is passed, up to a fixed number of cases.
    """
    _check(points, limits)
    names, bound = _most_full(_Roof.of(points, limits))
    chosen = set(names)
    load_kg = fsum(point.rating_kg for point in points if point.name in chosen)
    ordered = tuple(point.name for point in points if point.name in chosen)
    return FullPoints(ordered, load_kg, bound, bound == len(ordered), sum_of_ratings_kg(points))


@dataclass(frozen=True, slots=True)
class _Branch:
    """A group whose parts nest: points of its own, and narrower groups within it."""

    limit: GroupLimit | None
    room_kg: float
    own: tuple[RatedPoint, ...]
    within: tuple["_Branch", ...]


@dataclass(frozen=True, slots=True)
class _Roof:
    """
    Points that could be filled at all, the groups that nest as a tree, and those that cross others.
    """

    tree: _Branch
    crossing: tuple[tuple[GroupLimit, float, frozenset[str]], ...]
    by_name: dict[str, RatedPoint] = field(hash=False)

    @staticmethod
    def of(points: Sequence[RatedPoint], limits: Sequence[GroupLimit]) -> "_Roof":
        able = [
            point
            for point in points
            if point.own_left_kg >= -ROUNDING_KG and not _crowded_by(point, points, limits)
        ]
        members = {
            limit.name: frozenset(point.name for point in able if limit.name in point.groups)
            for limit in limits
        }
        room_kg = {limit.name: limit.limit_kg - _carried_kg(points, limit) for limit in limits}
        nested: list[GroupLimit] = []
        for limit in sorted(limits, key=lambda limit: limit.least_spacing_m <= 0):
            if all(_nest(limit, other, members) for other in nested):
                nested.append(limit)
        crossing = tuple(
            (limit, room_kg[limit.name], members[limit.name])
            for limit in limits
            if limit not in nested
        )
        tree = _tree(
            None,
            tuple(able),
            sorted(
                nested, key=lambda limit: (-len(members[limit.name]), limit.least_spacing_m > 0)
            ),
            members,
            room_kg,
        )
        return _Roof(tree, crossing, {point.name: point for point in able})


def _nest(
    limit: GroupLimit, spaced_or_wider: GroupLimit, members: dict[str, frozenset[str]]
) -> bool:
    """
    True where the two are apart or one holds the other, and no spacing rule would have to look
    across another group's points.
    """
    mine, theirs = members[limit.name], members[spaced_or_wider.name]
    if not mine & theirs:
        return True
    if spaced_or_wider.least_spacing_m > 0 or limit.least_spacing_m > 0:
        return limit.least_spacing_m <= 0 and mine >= theirs
    return mine >= theirs or theirs >= mine


def _tree(
    limit: GroupLimit | None,
    own: tuple[RatedPoint, ...],
    narrower: list[GroupLimit],
    members: dict[str, frozenset[str]],
    room_kg: dict[str, float],
) -> _Branch:
    """Hang groups, widest first, under the group that holds them."""
    within: list[_Branch] = []
    rest = list(narrower)
    free = {point.name for point in own}
    while rest:
        wide = rest.pop(0)
        inside = [other for other in rest if members[other.name] <= members[wide.name]]
        rest = [other for other in rest if other not in inside]
        points = tuple(point for point in own if point.name in members[wide.name])
        free -= members[wide.name]
        within.append(_tree(wide, points, inside, members, room_kg))
    loose = tuple(point for point in own if point.name in free)
    return _Branch(limit, room_kg[limit.name] if limit else float("inf"), loose, tuple(within))


Choice = tuple[float, tuple[str, ...]]
"""Least load that a number of full points adds, and which points they are."""
Forced = dict[str, bool]


def _most_full(roof: _Roof) -> tuple[tuple[str, ...], int]:
    """The largest set found, and a number that no set can pass."""
    best: tuple[str, ...] = ()
    cases: list[tuple[Forced, int]] = [({}, len(roof.by_name))]
    for _ in range(MOST_CASES):
        if not cases:
            return best, len(best)
        forced, bound = cases.pop()
        names = _relaxed(roof.tree, forced) if bound > len(best) else None
        if names is None or len(names) <= len(best):
            continue
        split = _passed(roof, names, forced)
        if split is None:
            best = names
        elif split:
            cases += [({**forced, split: True}, len(names)), ({**forced, split: False}, len(names))]
        best = max(best, _thinned(roof, names), key=len)
    return best, max([bound for _, bound in cases] + [len(best)])


def _relaxed(tree: _Branch, forced: Forced) -> tuple[str, ...] | None:
    """
    The largest set that nested groups allow, crossing ones left out; None where the forced points
    do not fit.
    """
    choices = _choices(tree, forced)
    return choices[max(choices)][1] if choices else None


def _choices(branch: _Branch, forced: Forced) -> dict[int, Choice]:
    """For every number of full points in a group, the set that adds least."""
    spacing_m = branch.limit.least_spacing_m if branch.limit else 0.0
    found = _choices_in_line(branch.own, spacing_m, forced)
    for part in branch.within:
        found = _joined(found, _choices(part, forced))
    return {
        count: choice
        for count, choice in found.items()
        if count == 0 or choice[0] <= branch.room_kg + ROUNDING_KG
    }


def _joined(first: dict[int, Choice], second: dict[int, Choice]) -> dict[int, Choice]:
    both: dict[int, Choice] = {}
    for count, (kg, names) in first.items():
        for more, (more_kg, more_names) in second.items():
            known = both.get(count + more)
            if known is None or kg + more_kg < known[0] - ROUNDING_KG:
                both[count + more] = (kg + more_kg, names + more_names)
    return both


def _choices_in_line(
    own: Sequence[RatedPoint], spacing_m: float, forced: Forced
) -> dict[int, Choice]:
    """
    Points one after another: each is left out, or taken after the last that stands far enough
    before it.
    """
    line = sorted(own, key=lambda point: point.at_m or 0.0) if spacing_m > 0 else list(own)
    upto: list[dict[int, Choice]] = [{0: (0.0, ())}]
    for j, point in enumerate(line):
        before = j
        while (
            spacing_m > 0
            and before
            and (point.at_m or 0.0) - (line[before - 1].at_m or 0.0) < spacing_m - 1e-9
        ):
            before -= 1
        here: dict[int, Choice] = {} if forced.get(point.name) else dict(upto[j])
        if forced.get(point.name, True) and not any(
            forced.get(other.name) for other in line[before:j]
        ):
            for count, (kg, names) in upto[before].items():
                added = kg + max(point.rating_kg - point.carried_kg, 0.0)
                if count + 1 not in here or added < here[count + 1][0] - ROUNDING_KG:
                    here[count + 1] = (added, (*names, point.name))
        upto.append(here)
    return upto[-1]


def _passed(roof: _Roof, names: tuple[str, ...], forced: Forced) -> str | None:
    """
    A free point to split on where a crossing group is passed; an empty string where all are forced;
    None where none is passed.
    """
    for limit, room_kg, members in roof.crossing:
        inside = [roof.by_name[name] for name in names if name in members]
        offending = (
            inside
            if _added_kg(inside) > max(room_kg, 0.0) + ROUNDING_KG
            or (inside and room_kg < -ROUNDING_KG)
            else _near_pair(inside, limit)
        )
        if offending:
            free = [point for point in offending if point.name not in forced]
            return (
                max(free, key=lambda point: point.rating_kg - point.carried_kg).name if free else ""
            )
    return None


def _added_kg(points: Sequence[RatedPoint]) -> float:
    return fsum(max(point.rating_kg - point.carried_kg, 0.0) for point in points)


def _near_pair(points: Sequence[RatedPoint], limit: GroupLimit) -> list[RatedPoint]:
    for i, first in enumerate(points):
        for second in points[i + 1 :]:
            if _too_near(first, second, limit):
                return [first, second]
    return []


def _thinned(roof: _Roof, names: tuple[str, ...]) -> tuple[str, ...]:
    """A set that keeps every limit: points of a passed group are dropped, the heaviest first."""
    kept = names
    while (drop := _passed(roof, kept, {})) is not None:
        kept = tuple(name for name in kept if name != drop)
    return kept
