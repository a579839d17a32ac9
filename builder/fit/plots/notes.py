# mypy: disable-error-code="typeddict-item"
"""
What to know about a rectangle of a stage plot that stands: what rounding let pass, what the house
calls clear, and the state of a wing.
"""

from builder.fit.comparing import LENGTH_TOLERANCE_M, item_notes
from builder.fit.plots.floors import named
from builder.fit.plots.hits import hit
from builder.fit.verdicts import NOTED, Record
from builder.fit.wording import both, metres
from builder.formulas.polygons import box_around
from builder.formulas.rectangles import (
    ROUNDING_M,
    beyond_at_all,
    corners_of,
    far_apart,
    into_m,
    meets,
    overlap_m,
    touches,
)

ROUNDED = ", within the tolerance for rounding"


def by_rounding(rect: Record, floor: Record, others: list[Record], section: Record) -> list[Record]:
    """Edges, neighbours and columns that a rectangle passes by no more than the tolerance."""
    words = [
        both("length", each["over_m"])[0] + " over the edge " + each["side"]
        for each in beyond_at_all(rect, floor["corners"])
    ]
    for other in others:
        by = 0.0 if far_apart(rect, other["rect"]) else overlap_m(rect, other["rect"])
        if ROUNDING_M < by <= LENGTH_TOLERANCE_M + ROUNDING_M:
            words.append(both("length", by)[0] + " into " + other["wish"]["name"])
    hanging = [
        item["name"]
        for item in section["items"]
        if item["kind"] == "obstruction" and "from_height" in item["values"]
    ]
    for outline in section["outlines"]:
        stands = (
            outline["kind"] == "obstruction"
            and len(outline["corners"]) > 2
            and outline["name"] not in hanging
        )
        if (
            stands
            and touches(rect, outline["corners"])
            and not meets(rect, outline["corners"], LENGTH_TOLERANCE_M)
        ):
            by = into_m(rect, outline["corners"])
            words = (
                [*words, both("length", by)[0] + " into " + outline["name"]]
                if by > ROUNDING_M
                else words
            )
    return [hit(NOTED, "rounding", each + ROUNDED) for each in words]


def beside(rect: Record, floor: Record) -> list[Record]:
    """What lies past what the house calls clear; in a wing, its state."""
    if floor["on"] != "deck":
        return in_a_wing(floor)
    values, box = floor["item"]["values"], box_around(corners_of(rect))
    width, depth = values.get("usable_width"), values.get("usable_depth")
    notes = []
    if (
        width is not None
        and width["number"] is not None
        and max(-box[0], box[1]) > width["number"] / 2 + LENGTH_TOLERANCE_M
    ):
        words = (
            "it reaches past the clear width of "
            + metres(width["number"])
            + ", if that lies evenly about the centre line"
        )
        notes.append(hit(NOTED, "clear", words))
    if (
        depth is not None
        and depth["number"] is not None
        and box[3] > box_around(floor["corners"])[2] + depth["number"] + LENGTH_TOLERANCE_M
    ):
        words = (
            "it reaches past the clear depth of "
            + metres(depth["number"])
            + ", if that counts from the front edge"
        )
        notes.append(hit(NOTED, "clear", words))
    return notes


def in_a_wing(floor: Record) -> list[Record]:
    """Notes on a wing: its level, and its state."""
    level = floor["item"]["values"].get("level_with_deck")
    notes = [
        hit(NOTED, "state", words)
        for words in item_notes({**floor["item"], "name": "the " + named(floor)})
    ]
    if level is None or level["text"] not in ("yes", "no"):
        return [
            *notes,
            hit(
                NOTED,
                "level",
                "nobody says whether the " + named(floor) + " is level with the deck",
            ),
        ]
    return (
        [*notes, hit(NOTED, "level", "the " + named(floor) + " is not level with the deck")]
        if level["text"] == "no"
        else notes
    )
