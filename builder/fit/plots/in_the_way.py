"""
What is in the way of a rectangle of a stage plot: edges, obstructions, its neighbours, and what the
house calls clear.
"""

from builder.fit.margins import LENGTH_TOLERANCE_M
from builder.fit.plots.carrying import carrying_hits
from builder.fit.plots.floors import (
    ON_DECK,
    floor_called,
    floor_under,
    floor_words,
    height_hits,
    outline_fact,
    use_hits,
)
from builder.fit.plots.hits import asked_hit, short_hit
from builder.fit.plots.notes import beside_clear, passed_by_rounding
from builder.fit.plots.obstructions import obstruction_hits
from builder.fit.plots.records import Floor, Ground, Hit, Stand
from builder.fit.plots.rig import rig_hits
from builder.fit.plots.sentences import (
    ASK_ACROSS,
    ASK_WING,
    IN_LANE,
    INTO_WING,
    LANE_TAKEN,
    LARGER,
    NO_WING,
    NOT_LEVEL,
    OFF_THE_FLOOR,
    OVER_EDGE,
    OVERLAPS,
)
from builder.fit.records import RectangleAsked
from builder.fit.sentences import fill
from builder.fit.values import value_of
from builder.fit.wording import both
from builder.formulas.polygons import Box, box_around
from builder.formulas.rectangles import (
    ROUNDING_M,
    Over,
    Rectangle,
    beyond,
    corners_of,
    meets,
    overlap_m,
    overlaps,
    shared_m2,
)

COVERED_SHARE = 0.995


def hits_of(
    wish: RectangleAsked, rect: Rectangle, others: list[Stand], ground: Ground
) -> list[Hit]:
    """
    Everything that is found about a rectangle at a place, what weighs most first.

    ``others`` are those that can be in its way.
    """
    called = floor_called(ground["floors"], wish["on"])
    if called is None:
        name = {"name": wish["on"]}
        return [asked_hit("floor", fill(NO_WING, name), fill(ASK_WING, name))]
    holding = floor_under(wish, rect, ground["floors"])
    floor = called if holding is None else holding
    hits = use_hits(floor)
    if holding is None:
        hits.extend(edge_hits(wish, rect, floor, ground))
    else:
        hits.extend(size_hits(rect, floor))
    hits.extend(height_hits(wish, floor))
    hits.extend(obstruction_hits(wish, rect, floor, ground["section"]))
    hits.extend(rig_hits(wish, rect, floor, ground["rigging"]))
    for other in others:
        if overlaps(rect, other["rect"], LENGTH_TOLERANCE_M):
            hits.append(overlap_hit(wish, rect, other))
    hits.extend(carrying_hits(wish, rect, floor, ground["section"]))
    hits.extend(beside_clear(rect, floor))
    if holding is not None:
        hits.extend(passed_by_rounding(rect, floor, others, ground["section"]))
    return hits


def can_be_in_the_way(other: RectangleAsked, wish: RectangleAsked) -> bool:
    """
    Whether one rectangle can be in the way of another.

    Lanes may cross, what a lane is around stands in it rightly, and what only should be there gives
    way to what must.
    """
    if other["lane"] and wish["lane"]:
        return False
    if is_around(other, wish) or is_around(wish, other):
        return False
    return other["strictness"] == "must" or wish["strictness"] == "should"


def is_around(lane: RectangleAsked, thing: RectangleAsked) -> bool:
    """Whether a lane is kept clear around a thing."""
    return lane["lane"] and lane["around"] != "" and lane["around"] == thing["name"]


def edge_hits(wish: RectangleAsked, rect: Rectangle, floor: Floor, ground: Ground) -> list[Hit]:
    """
    How far a rectangle reaches over which edge; or into which wing, where that takes up the rest of
    it.
    """
    over = beyond(rect, floor["corners"], LENGTH_TOLERANCE_M)
    wings = [
        other
        for other in ground["floors"]
        if other["on"] != ON_DECK and meets(rect, other["corners"], LENGTH_TOLERANCE_M)
    ]
    if wish["on"] == "" and len(wings) > 0 and is_covered(rect, [floor, *wings]):
        return [into_wing_hit(over, wing) for wing in wings]
    fact = outline_fact(floor)
    name = floor_words(floor)
    if len(over) == 0:
        by = outside_m(box_around(corners_of(rect)), box_around(floor["corners"]))
        return [short_hit("edge", fill(OFF_THE_FLOOR, {"floor": name}), by, fact)]
    return [short_hit("edge", edge_words(edge, name), edge["over_m"], fact) for edge in over]


def edge_words(edge: Over, name: str) -> str:
    """How far a rectangle reaches over one edge, in words."""
    parts = {"amount": both("length", edge["over_m"])[0], "side": edge["side"], "floor": name}
    return fill(OVER_EDGE, parts)


def is_covered(rect: Rectangle, floors: list[Floor]) -> bool:
    """
    Whether deck and wings together lie under all of a rectangle.

    Outlines that overlap may say so falsely; then it is asked all the same.
    """
    total_m2 = 0.0
    for floor in floors:
        total_m2 += shared_m2(rect, floor["corners"])
    return total_m2 >= rect["width"] * rect["depth"] * COVERED_SHARE


def into_wing_hit(over: list[Over], wing: Floor) -> Hit:
    """A rectangle that stands partly in a wing: short where there is a step, else a question."""
    by = max((edge["over_m"] for edge in over), default=0.0)
    amount = f"{both('length', by)[0]} " if by > 0 else ""
    parts = {"amount": amount, "floor": floor_words(wing)}
    words = fill(INTO_WING, parts)
    level = value_of(wing["item"], "level_with_deck")
    if level is not None and level["text"] == "no":
        return short_hit("edge", fill(NOT_LEVEL, {"words": words}), by, outline_fact(wing))
    return asked_hit("edge", words, fill(ASK_ACROSS, parts), outline_fact(wing))


def outside_m(one: Box, other: Box) -> float:
    """How far a box must move, along the longer of two ways, to lie within another."""
    return max(other[0] - one[0], one[1] - other[1], other[2] - one[2], one[3] - other[3], 0.0)


def larger_m(one: Box, other: Box) -> list[float]:
    """How much wider and how much deeper a box is than another; less than nothing if it is not."""
    return [
        one[1] - one[0] - (other[1] - other[0]),
        one[3] - one[2] - (other[3] - other[2]),
    ]


def size_hits(rect: Rectangle, floor: Floor) -> list[Hit]:
    """A rectangle that eats the tolerance on both sides is larger than its floor all the same."""
    hits: list[Hit] = []
    over = larger_m(box_around(corners_of(rect)), box_around(floor["corners"]))
    for over_m, way in zip(over, ("wider", "deeper"), strict=True):
        if over_m > LENGTH_TOLERANCE_M + ROUNDING_M:
            amount = both("length", over_m)[0]
            words = fill(LARGER, {"amount": amount, "way": way, "floor": floor_words(floor)})
            hits.append(short_hit("size", words, over_m, outline_fact(floor)))
    return hits


def overlap_hit(wish: RectangleAsked, rect: Rectangle, other: Stand) -> Hit:
    """Two rectangles on the same floor."""
    by = overlap_m(rect, other["rect"])
    template = OVERLAPS
    if other["wish"]["lane"]:
        template = IN_LANE
    elif wish["lane"]:
        template = LANE_TAKEN
    words = fill(template, {"name": other["wish"]["name"], "amount": both("length", by)[0]})
    return short_hit("overlap", words, by, None, box=other["box"])
