"""What is drawn of a stage plot that was judged: shapes of the house, rectangles of the show."""

from typing import TypedDict

from builder.fit.margins import LENGTH_TOLERANCE_M
from builder.fit.plots.pieces import rect_of
from builder.fit.plots.sentences import NO_PLACE_GIVEN
from builder.fit.records import Outline, PlotAsked, RectangleAsked, Section, Verdict, Word
from builder.fit.verdicts import FITS
from builder.formulas.polygons import Point, box_around
from builder.formulas.rectangles import corners_of, meets, rectangle

FLOORS = ("deck", "wing")
FROM_HEIGHT = "from_height"


class DrawnShape(TypedDict):
    """A shape of the house. ``hangs`` is true of what is in the way from some height only. [m]"""

    kind: str
    name: str
    corners: list[Point]
    hangs: bool


class DrawnPiece(TypedDict):
    """
    A rectangle of the show with its verdict, and how the list below the drawing tells it. Without a
    place it has no corners. [m]
    """

    name: str
    verdict: Word
    words: str
    corners: list[Point]
    lane: bool


class PlotDrawing(TypedDict):
    """The deck that a plot was judged on, what is drawn around it, and the plot."""

    deck: str
    shapes: list[DrawnShape]
    pieces: list[DrawnPiece]


def plot_drawing(section: Section, plot: PlotAsked, answer: Verdict) -> PlotDrawing:
    """What is drawn of a plot; no shapes where the deck of the answer is not described."""
    deck = deck_judged(section, answer)
    return {
        "deck": deck,
        "shapes": shapes_drawn(section, deck) if deck != "" else [],
        "pieces": [piece_drawn(wish, answer) for wish in plot["rectangles"]],
    }


def deck_judged(section: Section, answer: Verdict) -> str:
    """The name of the deck that an answer shows; empty where it shows none."""
    fact = answer["fact"]
    if fact is not None:
        for item in section["items"]:
            if item["key"] == fact["key"]:
                return item["name"]
    return ""


def shapes_drawn(section: Section, deck: str) -> list[DrawnShape]:
    """
    The deck, the wings, what is in the way, and the zones that belong to a floor that is drawn.
    """
    outlines = [
        outline
        for outline in section["outlines"]
        if len(outline["corners"]) > 2 and (outline["kind"] != "deck" or outline["name"] == deck)
    ]
    floors = [outline for outline in outlines if outline["kind"] in FLOORS]
    return [
        shape_drawn(outline, section)
        for outline in outlines
        if outline["kind"] != "zone" or lies_on_any(outline, floors)
    ]


def lies_on_any(zone: Outline, floors: list[Outline]) -> bool:
    """Whether the box around a zone shares more than an edge with a floor."""
    left, right, near, far = box_around(zone["corners"])
    box = rectangle((left + right) / 2, (near + far) / 2, width_m=right - left, depth_m=far - near)
    return any(meets(box, floor["corners"], LENGTH_TOLERANCE_M) for floor in floors)


def shape_drawn(outline: Outline, section: Section) -> DrawnShape:
    """A shape of the house, and whether it hangs."""
    hangs = any(
        item["kind"] == outline["kind"]
        and item["name"] == outline["name"]
        and FROM_HEIGHT in item["values"]
        for item in section["items"]
    )
    return {
        "kind": outline["kind"],
        "name": outline["name"],
        "corners": outline["corners"],
        "hangs": hangs and outline["kind"] == "obstruction",
    }


def piece_drawn(wish: RectangleAsked, answer: Verdict) -> DrawnPiece:
    """A rectangle with its part of the answer. One that no part speaks of stands as asked."""
    word: Word = FITS
    for part in answer["parts"]:
        if part["title"] == wish["name"] and part["line"] == wish["line"]:
            word = part["verdict"]
            break
    has_place = wish["across_m"] is not None
    return {
        "name": wish["name"],
        "verdict": word,
        "words": word if has_place or word != FITS else NO_PLACE_GIVEN,
        "corners": corners_of(rect_of(wish)) if has_place else [],
        "lane": wish["lane"],
    }
