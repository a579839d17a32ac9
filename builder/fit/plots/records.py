"""The records of a stage plot: floors, rectangles that stand, and what is found about them."""

from typing import TypedDict

from builder.fit.records import Fact, Item, PlotAsked, RectangleAsked, Section, Word
from builder.formulas.polygons import Box, Point
from builder.formulas.rectangles import Rectangle


class Floor(TypedDict):
    """The deck or a wing, by the name that a rider gives it, with its outline."""

    on: str
    item: Item
    corners: list[Point]


class Zone(TypedDict):
    """A part of the floor with limits of its own."""

    item: Item
    corners: list[Point]


class Ground(TypedDict):
    """
    What a plot stands on and under: the stage of the pack and its floors, the deck first, and what
    hangs over it.
    """

    section: Section
    rigging: Section | None
    floors: list[Floor]


class Stand(TypedDict):
    """A rectangle that has its place, with its extent, worked out once."""

    wish: RectangleAsked
    rect: Rectangle
    box: Box


class Hit(TypedDict):
    """
    One thing found about a rectangle: its word, what sort it is, by how much in which measure, and
    the extent of what is in the way.
    """

    word: Word
    sort: str
    words: str
    by: float
    measure: str
    question: str
    fact: Fact | None
    box: Box | None
    limit: float


class ActPlot(TypedDict):
    """The stage plot of one act."""

    act: str
    plot: PlotAsked


class Spot(TypedDict):
    """A rectangle of an act, with its place where the rider gives one."""

    act: str
    wish: RectangleAsked
    rect: Rectangle | None
