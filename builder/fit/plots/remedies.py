"""
What would mend a rectangle of a stage plot that is short.

A move is only told where the rectangle then stands without anything short.
"""

from builder.fit.margins import LENGTH_TOLERANCE_M
from builder.fit.plots.floors import (
    ON_DECK,
    floor_called,
    floor_words,
    may_be_stepped,
    wanted_floor,
)
from builder.fit.plots.hits import of_word
from builder.fit.plots.in_the_way import hits_of, larger_m
from builder.fit.plots.records import Ground, Hit, Stand
from builder.fit.plots.sentences import (
    ACROSS,
    AND_LIGHTER,
    BUILD_LOWER,
    BY_ITS_SIZE,
    DOWNSTAGE,
    IN_BOTH,
    IN_DEPTH,
    LEAVE_OFF,
    MOVE,
    ON_PLATES,
    SMALLER,
    SMALLER_BY,
    SPREAD_OVER,
    TO_STAGE_LEFT,
    TO_STAGE_RIGHT,
    TURN,
    UPSTAGE,
)
from builder.fit.records import Mender, RectangleAsked
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK, SHORT
from builder.fit.wording import both
from builder.formulas.gravity import STANDARD_GRAVITY_M_S2
from builder.formulas.polygons import Box, Point, box_around
from builder.formulas.rectangles import (
    Over,
    Rectangle,
    beyond,
    corners_of,
    moved,
    overlaps,
    quarter_turned,
)

MOST_TRIED = 8
FIXED = ("load", "mass", "height")
"""What a lighter or lower piece mends, wherever it stands."""
ENGINEER = "the house's engineer"
SHOW = "the show"


def remedy_of(
    wish: RectangleAsked, rect: Rectangle, others: list[Stand], ground: Ground, hits: list[Hit]
) -> Mender:
    """
    What would mend it, and who could.

    Where no move helps against loads and heights, one that mends the rest is told beside.
    """
    fixed = [hit for hit in of_word(hits, SHORT) if hit["sort"] in FIXED]
    placed = by_placing(wish, rect, others, ground, hits, allowed=())
    if placed != "":
        return by_show(fill(placed, {"lighter": ""}))
    if len(fixed) > 0:
        lighter = " ".join(lessened(wish, hit) for hit in fixed)
        if is_mended(wish, rect, others, ground, FIXED):
            needs_engineer = any(hit["sort"] != "height" for hit in fixed)
            return {"remedy": lighter, "who": ENGINEER if needs_engineer else SHOW}
        placed = by_placing(wish, rect, others, ground, hits, allowed=FIXED)
        if placed != "":
            return by_show(fill(placed, {"lighter": fill(AND_LIGHTER, {"lighter": lighter})}))
    smaller = smaller_words(rect, wish, ground)
    return by_show(elsewhere_words(rect, wish, ground, smaller))


def by_show(remedy: str) -> Mender:
    """A remedy that the show can do."""
    return {"remedy": remedy, "who": SHOW}


def by_placing(
    wish: RectangleAsked,
    rect: Rectangle,
    others: list[Stand],
    ground: Ground,
    hits: list[Hit],
    *,
    allowed: tuple[str, ...],
) -> str:
    """
    The shortest move that mends all but what is allowed to stay, or a quarter turn; else nothing.

    A template: what would lighten the piece may be told beside.
    """
    tries = sorted(
        moves_to_try(wish, rect, ground, hits), key=lambda move: abs(move[0]) + abs(move[1])
    )
    for move in tries:
        if is_mended(wish, moved(rect, move[0], move[1]), others, ground, allowed):
            return fill(MOVE, {"move": move_words(move), "lighter": "{lighter}"})
    if is_mended(wish, quarter_turned(rect), others, ground, allowed) and not is_mended(
        wish, rect, others, ground, allowed
    ):
        return TURN
    return ""


def is_mended(
    wish: RectangleAsked,
    rect: Rectangle,
    others: list[Stand],
    ground: Ground,
    allowed: tuple[str, ...],
) -> bool:
    """
    Whether nothing is short at a place, but for what no place mends, and no edge is crossed that
    would have to be asked.
    """
    if any(overlaps(rect, other["rect"], LENGTH_TOLERANCE_M) for other in others):
        return False
    hits = hits_of(wish, rect, others, ground)
    if any(hit["sort"] not in allowed for hit in of_word(hits, SHORT)):
        return False
    return all(hit["sort"] != "edge" for hit in of_word(hits, ASK))


def moves_to_try(
    wish: RectangleAsked, rect: Rectangle, ground: Ground, hits: list[Hit]
) -> list[Point]:
    """Moves worth a try: back within the floor, and to each side of what is in the way."""
    one = box_around(corners_of(rect))
    moves: list[Point] = []
    for floor in ground["floors"]:
        if floor["on"] == wanted_floor(wish["on"]):
            moves.extend(moves_back_within(rect, one, floor["corners"]))
    for hit in of_word(hits, SHORT)[:MOST_TRIED]:
        box = hit["box"]
        if box is not None:
            moves.append((box[1] - one[0], 0.0))
            moves.append((box[0] - one[1], 0.0))
            moves.append((0.0, box[3] - one[2]))
            moves.append((0.0, box[2] - one[3]))
    return [move for move in moves if move[0] != 0 or move[1] != 0]


def moves_back_within(rect: Rectangle, one: Box, corners: list[Point]) -> list[Point]:
    """Away from each edge that is crossed, and straight into the floor's extent."""
    moves = [move_away(edge) for edge in beyond(rect, corners, LENGTH_TOLERANCE_M)]
    box = box_around(corners)
    across_m = move_within(one[0], one[1], box[0], box[1])
    moves.append((across_m, move_within(one[2], one[3], box[2], box[3])))
    return moves


def move_away(edge: Over) -> Point:
    """The move away from an edge that is crossed."""
    over_m = edge["over_m"]
    if edge["side"] == "stage left":
        return (-over_m, 0.0)
    if edge["side"] == "stage right":
        return (over_m, 0.0)
    if edge["side"] == "upstage":
        return (0.0, -over_m)
    return (0.0, over_m)


def move_within(low: float, high: float, least: float, most: float) -> float:
    """The move that takes a stretch into another."""
    if low < least:
        return least - low
    return most - high if high > most else 0.0


def move_words(move: Point) -> str:
    """A move in words, in both unit systems."""
    parts: list[str] = []
    if move[0] != 0:
        template = TO_STAGE_LEFT if move[0] > 0 else TO_STAGE_RIGHT
        parts.append(fill(template, {"length": length_words(move[0])}))
    if move[1] != 0:
        template = UPSTAGE if move[1] > 0 else DOWNSTAGE
        parts.append(fill(template, {"length": length_words(move[1])}))
    return " and ".join(parts)


def length_words(length_m: float) -> str:
    """A length without its sign in both systems."""
    return in_both("length", abs(length_m))


def in_both(kind: str, value: float) -> str:
    """A value in both systems."""
    words = both(kind, value)
    return fill(IN_BOTH, {"metric": words[0], "imperial": words[1]})


def lessened(wish: RectangleAsked, hit: Hit) -> str:
    """How a load could be carried, or a height be passed, after all."""
    if hit["sort"] == "height":
        return fill(BUILD_LOWER, {"length": in_both("length", hit["by"])})
    if hit["limit"] <= 0:
        return LEAVE_OFF
    if hit["sort"] == "mass":
        return fill(ON_PLATES, {"limit": in_both("mass", hit["limit"])})
    weight_kg = wish["weight_kg"] if wish["weight_kg"] is not None else 0.0
    area_m2 = weight_kg * STANDARD_GRAVITY_M_S2 / hit["limit"]
    return fill(SPREAD_OVER, {"area": in_both("area", area_m2)})


def elsewhere_words(rect: Rectangle, wish: RectangleAsked, ground: Ground, smaller: str) -> str:
    """A level wing that is large enough by its extent, where there is one; else only smaller."""
    one = box_around(corners_of(rect))
    for floor in ground["floors"]:
        over = larger_m(one, box_around(floor["corners"]))
        is_other = floor["on"] not in (ON_DECK, wish["on"])
        if is_other and over[0] <= 0 and over[1] <= 0 and not may_be_stepped(floor):
            return fill(BY_ITS_SIZE, {"floor": floor_words(floor), "smaller": smaller})
    return smaller


def smaller_words(rect: Rectangle, wish: RectangleAsked, ground: Ground) -> str:
    """How much smaller it would have to be, where it is larger than its floor."""
    floor = floor_called(ground["floors"], wish["on"])
    parts: list[str] = []
    if floor is not None:
        over = larger_m(box_around(corners_of(rect)), box_around(floor["corners"]))
        for over_m, template in zip(over, (ACROSS, IN_DEPTH), strict=True):
            if over_m > LENGTH_TOLERANCE_M:
                parts.append(fill(template, {"length": length_words(over_m)}))
    if len(parts) == 0:
        return SMALLER
    return fill(SMALLER_BY, {"amounts": " and ".join(parts)})
