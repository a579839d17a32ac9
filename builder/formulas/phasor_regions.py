"""
Regions of phasors on the complex plane: what a current may be where not all of it is known, and how
large and small the sum of several such currents may be.
"""

import cmath
import math
from collections.abc import Sequence
from itertools import product

from builder.formulas.neutral_limits import largest_part_a

PIECES = 8
"""Into how many pieces an arc is cut; the points outside them hold all of it."""
HAIR = 1e-12
MOST_TRIED = 512
"""More choices of corners than these take too long."""
DIRECTIONS = 720


def around_arc(points: Sequence[complex]) -> list[complex]:
    """
    Points whose hull holds every phasor between some: of any size up to the largest of them, at any
    angle between theirs.

    Parameters
    ----------
    points
        Phasors of one current, all within half a turn. [A]

    Returns
    -------
    list of complex
        The points, and those just outside the arc at the largest size. [A]
    """
    first = next((point for point in points if point != 0), 0j)
    if first == 0:
        return list(points)
    angles = [cmath.phase(point / first) for point in points if point != 0]
    least, most = min(angles), max(angles)
    if most - least < HAIR:
        return list(points)
    half = (most - least) / (2 * PIECES)
    outside_a = max(abs(point) for point in points) / math.cos(half)
    unit = first / abs(first)
    middles = (least + (2 * piece + 1) * half for piece in range(PIECES))
    return [*points, *(unit * cmath.rect(outside_a, middle) for middle in middles)]


def convex_hull(points: Sequence[complex]) -> list[complex]:
    """
    The corners of the least convex region that holds some points, anticlockwise.

    Parameters
    ----------
    points
        At least one. [A]

    Returns
    -------
    list of complex
        One for a point, two for a line. [A]
    """
    ordered = sorted(set(points), key=lambda point: (point.real, point.imag))
    if len(ordered) < 3:
        return ordered
    return [*_half_hull(ordered)[:-1], *_half_hull(ordered[::-1])[:-1]]


def _half_hull(ordered: Sequence[complex]) -> list[complex]:
    kept: list[complex] = []
    for point in ordered:
        while len(kept) > 1 and _turn(kept[-2], kept[-1], point) <= 0:
            kept.pop()
        kept.append(point)
    return kept


def _turn(one: complex, other: complex, point: complex) -> float:
    return ((other - one).conjugate() * (point - one)).imag


def sum_region(regions: Sequence[Sequence[complex]]) -> list[complex]:
    """
    The corners of the region that a sum lies in, each part of which lies in a convex region of its
    own.

    Parameters
    ----------
    regions
        Points of each part. [A]

    Returns
    -------
    list of complex
        Corners, as :func:`convex_hull` gives them. [A]
    """
    found = [0j]
    for region in regions:
        corners = convex_hull(region)
        found = convex_hull([one + other for one in found for other in corners])
    return found


def least_size(corners: Sequence[complex]) -> float:
    """
    The least size of a phasor in a convex region.

    Parameters
    ----------
    corners
        As :func:`convex_hull` gives them. [A]

    Returns
    -------
    float
        0 where the region holds 0. [A]
    """
    pairs = list(zip(corners, [*corners[1:], corners[0]], strict=True))
    if len(corners) > 2 and all(_turn(one, other, 0j) >= 0 for one, other in pairs):
        return 0.0
    return min(_size_on_line(one, other) for one, other in pairs)


def _size_on_line(one: complex, other: complex) -> float:
    along = other - one
    if along == 0:
        return abs(one)
    share = -(one * along.conjugate()).real / abs(along) ** 2
    return abs(one + along * min(1.0, max(0.0, share)))


def most_size(corners: Sequence[complex]) -> float:
    """
    The largest size of a phasor in a convex region: at one of its corners.

    Parameters
    ----------
    corners
        At least one. [A]

    Returns
    -------
    float
        The size. [A]
    """
    return max(abs(corner) for corner in corners)


def largest_part_ends(regions: Sequence[Sequence[complex]]) -> tuple[float, float] | None:
    """
    The least and the most that the largest part of some currents may be, each in a convex region.

    Parameters
    ----------
    regions
        Points of each current. [A]

    Returns
    -------
    tuple of two float
        Ends that hold it; None where there are too many corners to try. [A]

    Notes
    -----
    The largest part is the most, over all directions, of what the currents have along one, those
    against it left out. So it is convex, and most at corners; and any one direction, with each
    current where it has least along it, tells what it is at least.
    """
    hulls = [convex_hull(region) for region in regions]
    if math.prod(len(hull) for hull in hulls) > MOST_TRIED:
        return None
    largest = [largest_part_a(currents) for currents in product(*hulls)]
    units = (cmath.rect(1.0, 2 * math.pi * step / DIRECTIONS) for step in range(DIRECTIONS))
    least = max(
        math.fsum(max(0.0, min((unit.conjugate() * one).real for one in hull)) for hull in hulls)
        for unit in units
    )
    return min(least, *largest), max(largest)
