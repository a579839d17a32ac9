"""``plot``: the stage plot, as one requirement."""

from builder.fit.records import PlotAsked, RectangleAsked
from builder.reading.values.faults import fault
from builder.reading.values.sentences import fill
from builder.rider.asking.asked import asked_base, parts_joined, sized, strictness_of
from builder.rider.asking.asking import Asking, note_fault
from builder.rider.asking.hangs import or_nothing
from builder.rider.asking.values import (
    ReadValue,
    group_of,
    has,
    place_of,
    si_of,
    words_of,
    yes_of,
)

MOST = 100
ONE = "1 rectangle"
SEVERAL = "{count} rectangles"
TOO_MANY = "has {count} rectangles, and at most {most} are looked at"
NO_LANE = "is said of what is no lane to keep clear"
NOT_ONE = "is not the name of one other rectangle of the plot"
LANE = "a lane to keep clear"
AROUND = "around {words}"
WIDE = "{words} wide"
DEEP = "{words} deep"
HIGH = "{words} high"
IN_ALL = "{words} in all"
ON_ONE_FOOT = "{words} on one foot"
TURNED = "turned {words}"
ON = "on {words}"
CENTRE = "centre at {across}, {depth}"
NO_PLACE = "no place given"


def plot_asked(plot: ReadValue, asking: Asking) -> PlotAsked | None:
    """A stage plot; None where there is none. What makes it none that can be laid is noted."""
    rectangles = plot["items"]
    if len(rectangles) == 0:
        return None
    note_plot(plot, asking)
    count = len(rectangles)
    words = ONE if count == 1 else fill(SEVERAL, {"count": str(count)})
    base = asked_base(asking, plot["line"], "stage", "Stage plot", words, "must")
    return {
        **base,
        "sort": "plot",
        "rectangles": [rectangle_asked(rectangle) for rectangle in rectangles],
    }


def note_plot(plot: ReadValue, asking: Asking) -> None:
    """Note too many rectangles, and sizes that are nothing."""
    count = len(plot["items"])
    if count > MOST:
        reason = fill(TOO_MANY, {"count": str(count), "most": str(MOST)})
        advice = "join what stands together into one rectangle"
        note_fault(asking, plot, "plot", "", fault(reason, "need-unclear", advice))
    for rectangle in plot["items"]:
        for key in ("width", "depth"):
            if or_nothing(si_of(rectangle, key)) == 0:
                wrong = fault("is nothing", "need-unclear", "write how large it is")
                words = words_of(rectangle, key)
                note_fault(asking, place_of(rectangle, key), key, words, wrong)
        note_around(plot, rectangle, asking)


def note_around(plot: ReadValue, rectangle: ReadValue, asking: Asking) -> None:
    """Note what is around something and is no lane, or around nothing that the plot has once."""
    if not has(rectangle, "around"):
        return
    name = words_of(rectangle, "around")
    named = [other for other in plot["items"] if words_of(other, "name") == name]
    if not yes_of(rectangle, "keep clear"):
        wrong = fault(NO_LANE, "need-unclear", "write keep clear: yes, or take around out")
    elif len(named) != 1 or named[0]["path"] == rectangle["path"]:
        wrong = fault(NOT_ONE, "need-unclear", "write the name of the one that it is around")
    else:
        return
    note_fault(asking, place_of(rectangle, "around"), "around", name, wrong)


def rectangle_asked(rectangle: ReadValue) -> RectangleAsked:
    """One rectangle in metres, kilograms and degrees."""
    spot = group_of(rectangle, "at")
    stays = ""
    if has(rectangle, "stays"):
        stays = "yes" if yes_of(rectangle, "stays") else "no"
    return {
        "name": words_of(rectangle, "name"),
        "line": rectangle["line"],
        "need": rectangle_words(rectangle, spot),
        "strictness": strictness_of(rectangle),
        "width_m": or_nothing(si_of(rectangle, "width")),
        "depth_m": or_nothing(si_of(rectangle, "depth")),
        "across_m": si_of(spot, "across") if spot is not None else None,
        "upstage_m": si_of(spot, "depth") if spot is not None else None,
        "turned_deg": or_nothing(si_of(rectangle, "turned")),
        "on": words_of(rectangle, "on"),
        "height_m": si_of(rectangle, "height"),
        "weight_kg": si_of(rectangle, "weight"),
        "foot_kg": si_of(rectangle, "point load"),
        "lane": yes_of(rectangle, "keep clear"),
        "around": words_of(rectangle, "around"),
        "stays": stays,
    }


def rectangle_words(rectangle: ReadValue, spot: ReadValue | None) -> str:
    """A rectangle's sizes and place as the rider wrote them."""
    place = NO_PLACE
    if spot is not None:
        parts = {"across": words_of(spot, "across"), "depth": words_of(spot, "depth")}
        place = fill(CENTRE, parts)
    return parts_joined(
        [
            LANE if yes_of(rectangle, "keep clear") else "",
            sized(AROUND, rectangle, "around"),
            sized(WIDE, rectangle, "width"),
            sized(DEEP, rectangle, "depth"),
            sized(HIGH, rectangle, "height"),
            sized(IN_ALL, rectangle, "weight"),
            sized(ON_ONE_FOOT, rectangle, "point load"),
            sized(TURNED, rectangle, "turned"),
            sized(ON, rectangle, "on"),
            place,
        ]
    )
