"""
Rectangles on a plan against outlines and each other, turned or not.

A rectangle is its centre, its sizes and its turn; lengths in metres.
"""

from math import floor, sqrt

from builder.fit.verdicts import Record

TOLERANCE_M = 0.025
"""What rounding may cost at an edge."""
ROUNDING_M = 0.000000001
DEGREE = 0.017453292519943295
SIDES = ("stage left", "stage right", "upstage", "downstage")

Numbers = list[float]


def rectangle(
    across_m: float, upstage_m: float, *, width_m: float, depth_m: float, turned_deg: float = 0.0
) -> Record:
    """A rectangle about its centre, turned anticlockwise as seen from above."""
    cosine, sine = turn(turned_deg)
    return {
        "x": across_m,
        "y": upstage_m,
        "width": width_m,
        "depth": depth_m,
        "cos": cosine,
        "sin": sine,
    }


def turn(turned_deg: float) -> Numbers:
    """
    Cosine and sine by whole quarters and a series, so that two languages find the same to the last
    digit; a quarter is exact.
    """
    quarter = floor(turned_deg / 90 + 0.5)
    angle = (turned_deg - 90 * quarter) * DEGREE
    cosine, sine, term = 0.0, 0.0, 1.0
    for power in range(0, 20, 2):
        cosine += term
        sine += term * angle / (power + 1)
        term = -term * angle * angle / ((power + 1) * (power + 2))
    return [[cosine, sine], [-sine, cosine], [-cosine, -sine], [sine, -cosine]][
        quarter - 4 * floor(quarter / 4)
    ]


def moved(rect: Record, across_m: float, upstage_m: float) -> Record:
    """The same rectangle somewhere else."""
    return {**rect, "x": rect["x"] + across_m, "y": rect["y"] + upstage_m}


def quarter_turned(rect: Record) -> Record:
    """The same rectangle, turned by a quarter about its centre."""
    return {**rect, "cos": -rect["sin"], "sin": rect["cos"]}


def corners_of(rect: Record) -> list[Numbers]:
    """The four corners, in order around it."""
    found = []
    for across, upstage in ((-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5)):
        u, v = across * rect["width"], upstage * rect["depth"]
        found.append(
            [
                rect["x"] + u * rect["cos"] - v * rect["sin"],
                rect["y"] + u * rect["sin"] + v * rect["cos"],
            ]
        )
    return found


def framed(rect: Record, corners: list[Numbers]) -> list[Numbers]:
    """An outline as the rectangle sees it: from its centre, along its own width and depth."""
    found = []
    for corner in corners:
        across, upstage = corner[0] - rect["x"], corner[1] - rect["y"]
        found.append(
            [
                across * rect["cos"] + upstage * rect["sin"],
                upstage * rect["cos"] - across * rect["sin"],
            ]
        )
    return found


def whole(rect: Record) -> Numbers:
    """Left, right, front and back in the rectangle's own frame."""
    return [-rect["width"] / 2, rect["width"] / 2, -rect["depth"] / 2, rect["depth"] / 2]


def core(rect: Record) -> Numbers:
    """The same less the tolerance; what is hardly larger than that keeps its middle half."""
    across = rect["width"] / 2 - min(TOLERANCE_M + ROUNDING_M, rect["width"] / 4)
    depth = rect["depth"] / 2 - min(TOLERANCE_M + ROUNDING_M, rect["depth"] / 4)
    return [-across, across, -depth, depth]


def extent(corners: list[Numbers]) -> Numbers:
    """The least and the most across, then in depth."""
    across, depth = [corner[0] for corner in corners], [corner[1] for corner in corners]
    return [min(across), max(across), min(depth), max(depth)]


def edges(corners: list[Numbers]) -> list[list[Numbers]]:
    """The sides of an outline, each from one corner to the next."""
    return [[corner, corners[(index + 1) % len(corners)]] for index, corner in enumerate(corners)]


def crosses(box: Numbers, edge: list[Numbers]) -> bool:
    """Whether a side passes through the inside of a box. A corner written twice makes no side."""
    first, last = 0.0, 1.0
    still = True
    for axis in range(2):
        start, step = edge[0][axis], edge[1][axis] - edge[0][axis]
        low, high = box[axis * 2], box[axis * 2 + 1]
        if step == 0:
            if start <= low or start >= high:
                return False
        else:
            still = False
            one, two = (low - start) / step, (high - start) / step
            first, last = max(first, min(one, two)), min(last, max(one, two))
    return first < last and not still


def holds(corners: list[Numbers], across_m: float, upstage_m: float) -> bool:
    """Whether a spot lies within an outline."""
    within = False
    for one, two in edges(corners):
        if (one[1] > upstage_m) != (two[1] > upstage_m) and across_m < one[0] + (
            upstage_m - one[1]
        ) / (two[1] - one[1]) * (two[0] - one[0]):
            within = not within
    return within


def lies_within(rect: Record, corners: list[Numbers]) -> bool:
    """
    Whether all of a rectangle lies within an outline, but for the tolerance: no side passes through
    it, and its middle is in.
    """
    seen, box = framed(rect, corners), core(rect)
    return holds(seen, 0.0, 0.0) and not any(crosses(box, edge) for edge in edges(seen))


def meets(rect: Record, corners: list[Numbers]) -> bool:
    """Whether a rectangle and an outline share more floor than the tolerance."""
    seen, box = framed(rect, corners), core(rect)
    return holds(seen, 0.0, 0.0) or any(crosses(box, edge) for edge in edges(seen))


def twice_area(corners: list[Numbers]) -> float:
    """Twice the area of an outline, below zero where its corners go clockwise."""
    total = 0.0
    for one, two in edges(corners):
        total += one[0] * two[1] - two[0] * one[1]
    return total


def beyond(rect: Record, corners: list[Numbers], *, exact: bool = False) -> list[Record]:
    """
    How far a rectangle reaches over each edge that passes through it, by the edge's side of the
    stage; ``exact`` leaves no tolerance.
    """
    way = 1.0 if twice_area(corners) >= 0 else -1.0
    over = dict.fromkeys(SIDES, 0.0)
    seen, box = edges(framed(rect, corners)), whole(rect) if exact else core(rect)
    for index, (one, two) in enumerate(edges(corners)):
        if crosses(box, seen[index]):
            across, upstage = (two[1] - one[1]) * way, (one[0] - two[0]) * way
            length = sqrt(across * across + upstage * upstage)
            side = toward(across, upstage)
            for corner in corners_of(rect):
                over[side] = max(
                    over[side],
                    ((corner[0] - one[0]) * across + (corner[1] - one[1]) * upstage) / length,
                )
    return [
        {"side": side, "over_m": over_m} for side, over_m in over.items() if over_m > ROUNDING_M
    ]


def toward(across: float, upstage: float) -> str:
    """The side of the stage that a direction points to."""
    if abs(across) >= abs(upstage):
        return "stage left" if across > 0 else "stage right"
    return "upstage" if upstage > 0 else "downstage"


def gap_m(rect: Record, corners: list[Numbers]) -> float:
    """From a rectangle within an outline to its nearest edge; 0 where it eats the tolerance."""
    seen, box = edges(framed(rect, corners)), whole(rect)
    if any(crosses(box, edge) for edge in seen):
        return 0.0
    least = 1000000.0
    for edge in seen:
        least = min(least, to_box_m(box, edge[0]))
        for across in (box[0], box[1]):
            for depth in (box[2], box[3]):
                least = min(least, to_edge_m(across, depth, edge))
    return least


def to_box_m(box: Numbers, spot: Numbers) -> float:
    """From a spot to a box."""
    across = max(box[0] - spot[0], 0.0, spot[0] - box[1])
    upstage = max(box[2] - spot[1], 0.0, spot[1] - box[3])
    return sqrt(across * across + upstage * upstage)


def to_edge_m(across_m: float, upstage_m: float, edge: list[Numbers]) -> float:
    """From a spot to a side."""
    across, upstage = edge[1][0] - edge[0][0], edge[1][1] - edge[0][1]
    square = across * across + upstage * upstage
    part = (
        ((across_m - edge[0][0]) * across + (upstage_m - edge[0][1]) * upstage) / square
        if square > 0
        else 0.0
    )
    part = max(0.0, min(1.0, part))
    off_across, off_upstage = (
        edge[0][0] + part * across - across_m,
        edge[0][1] + part * upstage - upstage_m,
    )
    return sqrt(off_across * off_across + off_upstage * off_upstage)


def overlap_m(one: Record, other: Record) -> float:
    """
    The shortest move that takes two rectangles apart, along a side of either; below zero where they
    stand apart.
    """
    across, upstage = other["x"] - one["x"], other["y"] - one["y"]
    along = abs(one["cos"] * other["cos"] + one["sin"] * other["sin"])
    athwart = abs(one["cos"] * other["sin"] - one["sin"] * other["cos"])
    least = 1000000000000000.0
    for first, second in ((one, other), (other, one)):
        wide = (first["width"] + second["width"] * along + second["depth"] * athwart) / 2
        deep = (first["depth"] + second["width"] * athwart + second["depth"] * along) / 2
        off_across = abs(across * first["cos"] + upstage * first["sin"])
        off_upstage = abs(upstage * first["cos"] - across * first["sin"])
        least = min(least, wide - off_across, deep - off_upstage)
    return least


def apart(one: Record, other: Record) -> bool:
    """
    Whether two centres lie so far apart that the circles about the rectangles cannot meet; the
    cheap look before the exact one.
    """
    across, upstage = other["x"] - one["x"], other["y"] - one["y"]
    sides = (
        one["width"] * one["width"]
        + one["depth"] * one["depth"]
        + other["width"] * other["width"]
        + other["depth"] * other["depth"]
    )
    # Two half diagonals p and q: (p + q)² is never more than 2 (p² + q²), which is half the sum of
    # the squares of all four sides.
    return bool(across * across + upstage * upstage > sides / 2)


def overlap(one: Record, other: Record) -> bool:
    """Whether two rectangles overlap by more than the tolerance."""
    return not apart(one, other) and overlap_m(one, other) > TOLERANCE_M + ROUNDING_M


def touches(rect: Record, corners: list[Numbers]) -> bool:
    """Whether a rectangle and an outline share any floor, the tolerance counted too."""
    seen = framed(rect, corners)
    return holds(seen, 0.0, 0.0) or any(crosses(whole(rect), edge) for edge in edges(seen))


def into_m(rect: Record, corners: list[Numbers]) -> float:
    """The shortest move along the rectangle's own sides that takes it clear of an outline."""
    box, seen = whole(rect), extent(framed(rect, corners))
    return min(box[1] - seen[0], seen[1] - box[0], box[3] - seen[2], seen[3] - box[2])


def shared_m2(rect: Record, corners: list[Numbers]) -> float:
    """
    The floor that a rectangle and an outline share: the outline cut along the rectangle's four
    sides, one after the other.
    """
    left = framed(rect, corners)
    box = whole(rect)
    for axis, limit, way in (
        (0, box[0], 1.0),
        (0, box[1], -1.0),
        (1, box[2], 1.0),
        (1, box[3], -1.0),
    ):
        left = cut(left, axis, limit, way)
    return abs(twice_area(left)) / 2


def cut(corners: list[Numbers], axis: int, limit: float, way: float) -> list[Numbers]:
    """The part of an outline on one side of a line."""
    kept: list[Numbers] = []
    for one, two in edges(corners):
        first, second = (one[axis] - limit) * way, (two[axis] - limit) * way
        if first >= 0:
            kept.append(one)
        if (first >= 0) != (second >= 0):
            part = first / (first - second)
            kept.append([one[0] + part * (two[0] - one[0]), one[1] + part * (two[1] - one[1])])
    return kept
