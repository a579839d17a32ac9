"""
What to know about a rectangle of a stage plot that stands: what rounding let pass, what the house
calls clear, and the state of a wing.
"""

from builder.fit.margins import LENGTH_TOLERANCE_M
from builder.fit.notes import item_notes
from builder.fit.plots.floors import ON_DECK, floor_words
from builder.fit.plots.hits import noted_hit
from builder.fit.plots.obstructions import obstructions_of
from builder.fit.plots.records import Floor, Hit, Stand
from builder.fit.plots.sentences import (
    LEVEL_NOT_SAID,
    PAST_DEPTH,
    PAST_WIDTH,
    ROUNDED_EDGE,
    ROUNDED_INTO,
    THE_FLOOR,
    WING_NOT_LEVEL,
)
from builder.fit.records import Section
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import least_of, value_of
from builder.fit.wording import both, metres
from builder.formulas.polygons import box_around
from builder.formulas.rectangles import (
    ROUNDING_M,
    Rectangle,
    beyond_at_all,
    corners_of,
    far_apart,
    into_m,
    meets,
    overlap_m,
    touches,
)


def passed_by_rounding(
    rect: Rectangle, floor: Floor, others: list[Stand], section: Section
) -> list[Hit]:
    """Edges, neighbours and columns that a rectangle passes by no more than the tolerance."""
    words: list[str] = []
    for edge in beyond_at_all(rect, floor["corners"]):
        parts = {"amount": both("length", edge["over_m"])[0], "side": edge["side"]}
        words.append(fill(ROUNDED_EDGE, parts))
    for other in others:
        by = 0.0 if far_apart(rect, other["rect"]) else overlap_m(rect, other["rect"])
        if ROUNDING_M < by <= LENGTH_TOLERANCE_M + ROUNDING_M:
            words.append(into_words(by, other["wish"]["name"]))
    words.extend(columns_by_rounding(rect, section))
    return [noted_hit("rounding", each) for each in words]


def columns_by_rounding(rect: Rectangle, section: Section) -> list[str]:
    """What stands on the stage and is passed by no more than the tolerance."""
    hanging = [
        item["name"]
        for item in items_of(section, "obstruction")
        if value_of(item, "from_height") is not None
    ]
    words: list[str] = []
    for outline in obstructions_of(section):
        corners = outline["corners"]
        stands = outline["name"] not in hanging
        if stands and touches(rect, corners) and not meets(rect, corners, LENGTH_TOLERANCE_M):
            by = into_m(rect, corners)
            if by > ROUNDING_M:
                words.append(into_words(by, outline["name"]))
    return words


def into_words(by: float, name: str) -> str:
    """How far a rectangle is in something, within the tolerance."""
    return fill(ROUNDED_INTO, {"amount": both("length", by)[0], "name": name})


def beside_clear(rect: Rectangle, floor: Floor) -> list[Hit]:
    """What lies past what the house calls clear; in a wing, its state."""
    if floor["on"] != ON_DECK:
        return wing_notes(floor)
    box = box_around(corners_of(rect))
    width = value_of(floor["item"], "usable_width")
    depth = value_of(floor["item"], "usable_depth")
    hits: list[Hit] = []
    width_m = least_of(width)
    if width_m is not None and max(-box[0], box[1]) > width_m / 2 + LENGTH_TOLERANCE_M:
        hits.append(noted_hit("clear", fill(PAST_WIDTH, {"limit": metres(width_m)})))
    depth_m, front_m = least_of(depth), box_around(floor["corners"])[2]
    if depth_m is not None and box[3] > front_m + depth_m + LENGTH_TOLERANCE_M:
        hits.append(noted_hit("clear", fill(PAST_DEPTH, {"limit": metres(depth_m)})))
    return hits


def wing_notes(floor: Floor) -> list[Hit]:
    """Notes on a wing: its level, and its state."""
    name = {"floor": floor_words(floor)}
    called = fill(THE_FLOOR, name)
    hits = [noted_hit("state", words) for words in item_notes({**floor["item"], "name": called})]
    level = value_of(floor["item"], "level_with_deck")
    if level is None or level["text"] not in ("yes", "no"):
        hits.append(noted_hit("level", fill(LEVEL_NOT_SAID, name)))
    elif level["text"] == "no":
        hits.append(noted_hit("level", fill(WING_NOT_LEVEL, name)))
    return hits
