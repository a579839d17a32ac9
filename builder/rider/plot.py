"""
A stage plot from a rider, as the plain numbers that the check takes, with what it says in words.
"""

from collections.abc import Iterator
from typing import Any

from builder.reading.quantities import Quantity
from builder.rider.description import PlotRectangle, Rider, Spot

Record = dict[str, Any]
Complaint = tuple[Any, str, str, str, str]
"""A record, its key, the value, what is wrong, how to go on."""
MOST = 100


def plot_complaints(rider: Rider) -> Iterator[Complaint]:
    """What makes a plot none that can be laid on a stage."""
    if len(rider.plot) > MOST:
        yield (
            rider,
            "plot",
            "",
            f"has {len(rider.plot)} rectangles, and at most {MOST} are looked at",
            "join what stands together into one rectangle",
        )
    for rectangle in rider.plot:
        for key, size in (("width", rectangle.width), ("depth", rectangle.depth)):
            if size.si == 0:
                yield rectangle, key, size.text, "is nothing", "write how large it is"


def plot_need(rider: Rider) -> str:
    """How many rectangles."""
    return f"{len(rider.plot)} rectangle{'' if len(rider.plot) == 1 else 's'}"


def plot_record(rider: Rider) -> list[Record]:
    """Every rectangle in metres, kilograms and degrees, in the rider's order."""
    return [rectangle_record(rectangle) for rectangle in rider.plot]


def rectangle_record(rectangle: PlotRectangle) -> Record:
    """One rectangle."""
    return {
        "name": rectangle.name,
        "line": rectangle.where().line,
        "need": rectangle_words(rectangle),
        "strictness": rectangle.strictness,
        "width_m": rectangle.width.si,
        "depth_m": rectangle.depth.si,
        "across_m": rectangle.at.across.si if rectangle.at else None,
        "upstage_m": rectangle.at.depth.si if rectangle.at else None,
        "turned_deg": number(rectangle.turned) or 0.0,
        "on": rectangle.on or "",
        "height_m": number(rectangle.height),
        "weight_kg": number(rectangle.weight),
        "foot_kg": number(rectangle.point_load),
        "lane": rectangle.keep_clear,
        "stays": "" if rectangle.stays is None else "yes" if rectangle.stays else "no",
    }


def number(quantity: Quantity | None) -> float | None:
    """A quantity in SI, or None where the rider does not say."""
    return quantity.si if quantity else None


def rectangle_words(rectangle: PlotRectangle) -> str:
    """A rectangle's sizes and place as the rider wrote them."""
    parts = ["a lane to keep clear"] if rectangle.keep_clear else []
    parts += [f"{rectangle.width.text} wide", f"{rectangle.depth.text} deep"]
    parts += [f"{rectangle.height.text} high"] if rectangle.height else []
    parts += [f"{rectangle.weight.text} in all"] if rectangle.weight else []
    parts += [f"{rectangle.point_load.text} on one foot"] if rectangle.point_load else []
    parts += [f"turned {rectangle.turned.text}"] if rectangle.turned else []
    parts += [f"on {rectangle.on}"] if rectangle.on else []
    return ", ".join(
        [*parts, f"centre at {spot_words(rectangle.at)}" if rectangle.at else "no place given"]
    )


def spot_words(spot: Spot) -> str:
    """A spot as the rider wrote it."""
    return f"{spot.across.text}, {spot.depth.text}"
