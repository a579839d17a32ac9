"""
What would mend a rectangle of a stage plot that is short.

A move is only told where the rectangle then stands without anything short.
"""

from builder.fit.comparing import LENGTH_TOLERANCE_M
from builder.fit.plots.floors import GRAVITY_M_S2, floor_called, named, stepped
from builder.fit.plots.hits import of_word
from builder.fit.plots.in_the_way import hits_of
from builder.fit.verdicts import ASK, SHORT, Record
from builder.fit.wording import both
from builder.formulas.polygons import Box, Point, box_around
from builder.formulas.rectangles import (
    beyond,
    corners_of,
    moved,
    overlaps,
    quarter_turned,
)

MOST_TRIED = 8
FIXED = ["load", "mass", "height"]
"""What a lighter or lower piece mends, wherever it stands."""
ENGINEER = "the house's engineer"
SHOW = "the show"


def remedy_of(
    wish: Record, rect: Record, others: list[Record], ground: Record, hits: list[Record]
) -> list[str]:
    """
    What would mend it, and who could.

    Where no move helps against loads and heights, one that mends the rest is told beside.
    """
    fixed = [each for each in of_word(hits, SHORT) if each["sort"] in FIXED]
    lighter = " ".join(lessened(wish, each) for each in fixed)
    who = ENGINEER if any(each["sort"] != "height" for each in fixed) else SHOW
    tries = sorted(moves(wish, rect, ground, hits), key=lambda each: abs(each[0]) + abs(each[1]))
    for allowed in ([], FIXED) if len(fixed) > 0 else ([],):
        for move in tries:
            if mends(wish, moved(rect, move[0], move[1]), others, ground, allowed):
                return [
                    "Move it "
                    + move_words(move)
                    + "."
                    + (" " + lighter if len(allowed) > 0 else ""),
                    SHOW,
                ]
        if mends(wish, quarter_turned(rect), others, ground, allowed) and not mends(
            wish, rect, others, ground, allowed
        ):
            return ["Turn it by a quarter." + (" " + lighter if len(allowed) > 0 else ""), SHOW]
        if len(fixed) > 0 and mends(wish, rect, others, ground, FIXED):
            return [lighter, who]
    return [elsewhere(rect, wish, ground) + smaller(rect, wish, ground), SHOW]


def mends(
    wish: Record, rect: Record, others: list[Record], ground: Record, allowed: list[str]
) -> bool:
    """
    Whether nothing is short at a place, but for what no place mends, and no edge is crossed that
    would have to be asked.
    """
    if any(overlaps(rect, other["rect"], LENGTH_TOLERANCE_M) for other in others):
        return False
    hits = hits_of(wish, rect, others, ground)
    return all(each["sort"] in allowed for each in of_word(hits, SHORT)) and all(
        each["sort"] != "edge" for each in of_word(hits, ASK)
    )


def moves(wish: Record, rect: Record, ground: Record, hits: list[Record]) -> list[list[float]]:
    """Moves worth a try: back within the floor, and to each side of what is in the way."""
    one = box_around(corners_of(rect))
    found: list[list[float]] = []
    for floor in ground["floors"]:
        if floor["on"] == (wish["on"] if wish["on"] != "" else "deck"):
            found += back_within(rect, one, floor["corners"])
    for each in of_word(hits, SHORT)[:MOST_TRIED]:
        if each["box"] is not None:
            box = each["box"]
            found += [
                [box[1] - one[0], 0.0],
                [box[0] - one[1], 0.0],
                [0.0, box[3] - one[2]],
                [0.0, box[2] - one[3]],
            ]
    return [each for each in found if each[0] != 0 or each[1] != 0]


def back_within(rect: Record, one: Box, corners: list[Point]) -> list[list[float]]:
    """Away from each edge that is crossed, and straight into the floor's extent."""
    found = []
    for each in beyond(rect, corners, LENGTH_TOLERANCE_M):
        over_m = each["over_m"]
        steps = {
            "stage left": [-over_m, 0.0],
            "stage right": [over_m, 0.0],
            "upstage": [0.0, -over_m],
            "downstage": [0.0, over_m],
        }
        found.append(steps[each["side"]])
    box = box_around(corners)
    return [
        *found,
        [within(one[0], one[1], box[0], box[1]), within(one[2], one[3], box[2], box[3])],
    ]


def within(low: float, high: float, least: float, most: float) -> float:
    """The move that takes a stretch into another."""
    return least - low if low < least else most - high if high > most else 0.0


def move_words(move: list[float]) -> str:
    """A move in words, in both unit systems."""
    parts = []
    if move[0] != 0:
        parts.append(
            length_words(move[0]) + (" to stage left" if move[0] > 0 else " to stage right")
        )
    if move[1] != 0:
        parts.append(length_words(move[1]) + (" upstage" if move[1] > 0 else " downstage"))
    return " and ".join(parts)


def length_words(length_m: float) -> str:
    """A length without its sign in both systems."""
    words = both("length", abs(length_m))
    return words[0] + " (" + words[1] + ")"


def lessened(wish: Record, each: Record) -> str:
    """How a load could be carried, or a height be passed, after all."""
    if each["sort"] == "height":
        words = both("length", each["by"])
        return "Build it lower by " + words[0] + " (" + words[1] + ")."
    if each["limit"] <= 0:
        return "Leave it off this floor; a structural engineer decides."
    if each["sort"] == "mass":
        words = both("mass", each["limit"])
        return (
            "Spread it on plates, so that no foot presses with more than "
            + words[0]
            + " ("
            + words[1]
            + "); a structural engineer decides."
        )
    words = both("area", wish["weight_kg"] * GRAVITY_M_S2 / each["limit"])
    return (
        "Spread it over " + words[0] + " (" + words[1] + ") or more; a structural engineer decides."
    )


def elsewhere(rect: Record, wish: Record, ground: Record) -> str:
    """A level wing that is large enough by its extent, where there is one."""
    one = box_around(corners_of(rect))
    for floor in ground["floors"]:
        box = box_around(floor["corners"])
        large = one[1] - one[0] <= box[1] - box[0] and one[3] - one[2] <= box[3] - box[2]
        if floor["on"] not in ("deck", wish["on"]) and large and not stepped(floor):
            return "By its size it goes in the " + named(floor) + ". "
    return ""


def smaller(rect: Record, wish: Record, ground: Record) -> str:
    """How much smaller it would have to be, where it is larger than its floor."""
    one, floor = box_around(corners_of(rect)), floor_called(ground["floors"], wish["on"])
    parts = []
    for axis, words in ((0, " across"), (2, " in depth")):
        over_m = (
            one[axis + 1]
            - one[axis]
            - (box_around(floor["corners"])[axis + 1] - box_around(floor["corners"])[axis])
        )
        if over_m > LENGTH_TOLERANCE_M:
            parts.append(length_words(over_m) + words)
    return (
        "Make it smaller"
        + (" by " + " and ".join(parts) if len(parts) > 0 else "")
        + ", or leave it off this stage."
    )
