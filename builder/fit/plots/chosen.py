"""Heights over a stage plot that the house chooses: each rectangle under one turns at its own."""

from builder.fit.arrangements.records import Reading
from builder.fit.margins import LENGTH_TOLERANCE_M
from builder.fit.plots.floors import floor_called, floor_under, floors_of, may_be_stepped
from builder.fit.plots.obstructions import item_named, obstructions_of
from builder.fit.plots.pieces import rect_of
from builder.fit.plots.records import Floor
from builder.fit.plots.rig import hangs_over
from builder.fit.plots.together import plot_in
from builder.fit.records import FitPack, Item, RectangleAsked, RiderAsked, Section
from builder.fit.sections import items_of, section_of
from builder.fit.values import is_choice
from builder.formulas.rectangles import ROUNDING_M, Rectangle, meets


def plot_readings(riders: list[RiderAsked], pack: FitPack) -> list[Reading]:
    """Every height that the house chooses, as the rectangles read it that stand under it."""
    readings: list[Reading] = []
    stage = section_of(pack, "stage")
    for deck in items_of(stage, "deck"):
        for wish in placed_wishes(riders):
            if stage is not None and wish["height_m"] is not None:
                over = heights_over(wish, floors_of(stage, deck), stage, pack)
                readings.extend(readings_at(wish["height_m"], over))
    return readings


def placed_wishes(riders: list[RiderAsked]) -> list[RectangleAsked]:
    """The rectangles of all plots that have a place."""
    wishes: list[RectangleAsked] = []
    for rider in riders:
        for requirement in rider["requirements"]:
            plot = plot_in(requirement)
            if plot is not None:
                wishes.extend(wish for wish in plot["rectangles"] if wish["across_m"] is not None)
    return wishes


def heights_over(
    wish: RectangleAsked, floors: list[Floor], stage: Section, pack: FitPack
) -> list[tuple[Item, str]]:
    """What a rectangle has above it, each with the name of the value that tells how high."""
    rect = rect_of(wish)
    called, holding = floor_called(floors, wish["on"]), floor_under(wish, rect, floors)
    floor = called if holding is None else holding
    if floor is None or may_be_stepped(floor):
        return []
    over = [(floor["item"], "clear_height"), *obstructions_over(rect, stage)]
    rigging = section_of(pack, "rigging")
    if rigging is None or wish["lane"]:
        return over
    return [*over, *[(hang, "underside") for hang in hangs_over(rect, rigging)]]


def obstructions_over(rect: Rectangle, stage: Section) -> list[tuple[Item, str]]:
    """The obstructions that a rectangle meets on the plan."""
    found: list[tuple[Item, str]] = []
    for outline in obstructions_of(stage):
        item = item_named(stage, outline["name"])
        if item is not None and meets(rect, outline["corners"], LENGTH_TOLERANCE_M):
            found.append((item, "from_height"))
    return found


def readings_at(height_m: float, over: list[tuple[Item, str]]) -> list[Reading]:
    """The heights of these that the house chooses, as something of a height reads them."""
    readings: list[Reading] = []
    for item, name in over:
        value = item["values"].get(name)
        if value is not None and is_choice(value):
            least, most = value["least"], value["most"]
            is_above = least is not None and height_m > least + ROUNDING_M
            readings.append(
                {
                    "item": item["name"],
                    "value": value,
                    "kind": "length",
                    "amounts": [height_m],
                    "way": "at least",
                    "is_open": is_above and most is not None and height_m <= most + ROUNDING_M,
                }
            )
    return readings
