"""
What is in the way of a rectangle of a stage plot: edges, obstructions, its neighbours, and what the
house calls clear.
"""

from typing import Any

from builder.fit.comparing import LENGTH_TOLERANCE_M
from builder.fit.plots.floors import (
    STEP,
    carried,
    floor_called,
    floor_under,
    named,
    not_in_use,
    outline_fact,
    stepped,
    too_high,
)
from builder.fit.plots.hits import hit
from builder.fit.plots.notes import beside, by_rounding
from builder.fit.verdicts import ASK, NOTED, SHORT, Record
from builder.fit.wording import both, metres
from builder.formulas.polygons import Box, box_around
from builder.formulas.rectangles import (
    ROUNDING_M,
    beyond,
    corners_of,
    into_m,
    meets,
    overlap_m,
    overlaps,
    shared_m2,
)

COVERED_SHARE = 0.995


def hits_of(wish: Record, rect: Record, others: list[Record], ground: Record) -> list[Record]:
    """
    Everything that is found about a rectangle at a place, what weighs most first.

    ``others`` are those that can be in its way.
    """
    floor = floor_called(ground["floors"], wish["on"])
    if floor is None:
        words = "the pack describes no wing " + wish["on"]
        return [
            hit(
                ASK,
                "floor",
                words,
                question="How large is the wing "
                + wish["on"]
                + ", is it level with the deck, and what does it carry?",
            )
        ]
    holding = floor_under(wish, rect, ground["floors"])
    floor = floor if holding is None else holding
    found = [
        *not_in_use(floor),
        *(over_edges(wish, rect, floor, ground) if holding is None else larger(rect, floor)),
    ]
    found = [*found, *too_high(wish, floor), *in_the_way(wish, rect, floor, ground["section"])]
    found = [
        *found,
        *(
            overlapping(wish, rect, other)
            for other in others
            if overlaps(rect, other["rect"], LENGTH_TOLERANCE_M)
        ),
    ]
    found = [*found, *carried(wish, rect, floor, ground["section"]), *beside(rect, floor)]
    return (
        found if holding is None else [*found, *by_rounding(rect, floor, others, ground["section"])]
    )


def counts(other: Record, wish: Record) -> bool:
    """
    Whether one rectangle can be in the way of another.

    Lanes may cross, and what only should be there gives way to what must.
    """
    if other["lane"] and wish["lane"]:
        return False
    return bool(other["strictness"] == "must" or wish["strictness"] == "should")


def over_edges(wish: Record, rect: Record, floor: Record, ground: Record) -> list[Record]:
    """
    How far a rectangle reaches over which edge; or into which wing, where that takes up the rest of
    it.
    """
    over = beyond(rect, floor["corners"], LENGTH_TOLERANCE_M)
    fact, box = outline_fact(floor), box_around(floor["corners"])
    wings = [
        each
        for each in ground["floors"]
        if each["on"] != "deck" and meets(rect, each["corners"], LENGTH_TOLERANCE_M)
    ]
    if wish["on"] == "" and len(wings) > 0 and covered(rect, [floor, *wings]):
        return [across(over, wing) for wing in wings]
    if len(over) == 0:
        return [
            hit(
                SHORT,
                "edge",
                "it stands off the " + named(floor),
                by=outside_m(box_around(corners_of(rect)), box),
                fact=fact,
            )
        ]
    found = []
    for each in over:
        words = both("length", each["over_m"])
        found.append(
            hit(
                SHORT,
                "edge",
                words[0] + " over the edge " + each["side"] + " of the " + named(floor),
                by=each["over_m"],
                fact=fact,
            )
        )
    return found


def covered(rect: Record, floors: list[Record]) -> bool:
    """
    Whether deck and wings together lie under all of a rectangle.

    Outlines that overlap may say so falsely; then it is asked all the same.
    """
    total = 0.0
    for floor in floors:
        total += shared_m2(rect, floor["corners"])
    return bool(total >= rect["width"] * rect["depth"] * COVERED_SHARE)


def across(over: list[Record], wing: Record) -> Record:
    """A rectangle that stands partly in a wing: short where there is a step, else a question."""
    by = max([each["over_m"] for each in over], default=0.0)
    level = wing["item"]["values"].get("level_with_deck")
    words = (
        "it reaches "
        + (both("length", by)[0] + " " if by > 0 else "")
        + "off the deck into the "
        + named(wing)
    )
    if level is not None and level["text"] == "no":
        return hit(
            SHORT,
            "edge",
            words + ", which is not level with the deck",
            by=by,
            fact=outline_fact(wing),
        )
    question = "May this stand across the edge of the deck, partly in the " + named(wing) + "?"
    return hit(ASK, "edge", words, question=question, fact=outline_fact(wing))


def outside_m(one: Box, other: Box) -> float:
    """How far a box must move, along the longer of two ways, to lie within another."""
    return max(other[0] - one[0], one[1] - other[1], other[2] - one[2], one[3] - other[3], 0.0)


def larger(rect: Record, floor: Record) -> list[Record]:
    """A rectangle that eats the tolerance on both sides is larger than its floor all the same."""
    one, other = box_around(corners_of(rect)), box_around(floor["corners"])
    found = []
    for axis, words in ((0, "wider"), (2, "deeper")):
        over_m = one[axis + 1] - one[axis] - (other[axis + 1] - other[axis])
        if over_m > LENGTH_TOLERANCE_M + ROUNDING_M:
            said = both("length", over_m)[0] + " " + words + " than the whole " + named(floor)
            found.append(hit(SHORT, "size", said, by=over_m, fact=outline_fact(floor)))
    return found


def in_the_way(wish: Record, rect: Record, floor: Record, section: Record) -> list[Record]:
    """
    The obstructions that a rectangle meets: what stands there, and what hangs lower than it is
    high.
    """
    found = []
    for outline in section["outlines"]:
        if (
            outline["kind"] == "obstruction"
            and len(outline["corners"]) > 2
            and meets(rect, outline["corners"], LENGTH_TOLERANCE_M)
        ):
            item = next(
                (
                    each
                    for each in section["items"]
                    if each["kind"] == "obstruction" and each["name"] == outline["name"]
                ),
                None,
            )
            found += blocked(wish, rect, {"outline": outline, "item": item, "floor": floor})
    return found


def blocked(wish: Record, rect: Record, met: Record) -> list[Record]:
    """One obstruction that a rectangle meets on the plan."""
    outline, item = met["outline"], met["item"]
    under = item["values"].get("from_height") if item is not None else None
    box, fact = box_around(outline["corners"]), obstruction_fact(item)
    if under is None:
        by = into_m(rect, outline["corners"])
        return [
            hit(
                SHORT,
                "obstruction",
                outline["name"] + " stands " + both("length", by)[0] + " inside it",
                by=by,
                fact=fact,
                box=box,
            )
        ]
    if under["number"] is None:
        question = "How high above the deck is the underside of " + outline["name"] + "?"
        return [
            hit(
                ASK,
                "height",
                outline["name"] + " hangs above it, and nobody says how high",
                question=question,
                fact=fact,
            )
        ]
    hangs = outline["name"] + " hangs above it, " + metres(under["number"]) + " up"
    if wish["height_m"] is None:
        return [hit(NOTED, "height", hangs + "; the rider does not say how high this is")]
    if stepped(met["floor"]):
        return [
            hit(
                ASK,
                "height",
                hangs + " from the deck, which is not known to be level here",
                question=STEP,
                fact=fact,
            )
        ]
    over_m = wish["height_m"] - under["number"]
    if over_m > LENGTH_TOLERANCE_M + ROUNDING_M:
        return [
            hit(
                SHORT,
                "height",
                hangs + ", lower than it is high by " + both("length", over_m)[0],
                by=over_m,
                fact=fact,
                box=box,
            )
        ]
    return (
        [
            hit(
                NOTED,
                "height",
                hangs + ", lower by " + metres(over_m) + ", within the tolerance for rounding",
            )
        ]
        if over_m > ROUNDING_M
        else []
    )


def obstruction_fact(item: Any) -> Any:
    """An obstruction as the house's fact, or None where the pack only draws it."""
    if item is None:
        return None
    fact = {
        "key": item["key"],
        "item": item["name"],
        "label": "where it is",
        "text": "on the stage plan",
        "standing": "stated",
        "also": "",
    }
    return {**fact, "page": item["page"], "checked": item["checked"]}


def overlapping(wish: Record, rect: Record, other: Record) -> Record:
    """Two rectangles on the same floor."""
    by = overlap_m(rect, other["rect"])
    name = other["wish"]["name"]
    lane = (
        "it stands in the lane " + name
        if other["wish"]["lane"]
        else name + " stands in this lane"
        if wish["lane"]
        else "it overlaps " + name
    )
    return hit(SHORT, "overlap", lane + " by " + both("length", by)[0], by=by, box=other["box"])
