"""``plot``: the stage plot, as one requirement."""

from builder.fit.records import PlotAsked, RectangleAsked, Requirement
from builder.reading.values.faults import fault
from builder.reading.values.sentences import fill
from builder.rider.asking.asked import asked_base, parts_joined, sized, strictness_of
from builder.rider.asking.asking import Asking, note_fault
from builder.rider.asking.composed import conditioned
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
WITH = "{words} with {name}"
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


def plots_asked(plot: ReadValue, asking: Asking) -> list[Requirement]:
    """
    A stage plot: what always stands there, and for each condition the plot with what stands there
    then too. What makes it none that can be laid is noted.
    """
    if len(plot["items"]) == 0:
        return []
    note_plot(plot, asking)
    always = [each for each in plot["items"] if not has_condition(each)]
    found: list[Requirement] = []
    if len(always) > 0:
        found.append(plot_of(always, "", plot, asking))
    for rectangle in plot["items"]:
        if has_condition(rectangle):
            whole = plot_of([*always, rectangle], words_of(rectangle, "name"), plot, asking)
            asked = conditioned(rectangle, whole, asking)
            if asked is not None:
                found.append(asked)
    return found


def has_condition(rectangle: ReadValue) -> bool:
    """Whether a rectangle stands there on a condition alone."""
    return "if" in rectangle["keys"] or "unless" in rectangle["keys"]


def plot_of(rectangles: list[ReadValue], named: str, plot: ReadValue, asking: Asking) -> PlotAsked:
    """A plot of some rectangles; the one that is ``named`` stands there on a condition."""
    count = len(rectangles)
    words = ONE if count == 1 else fill(SEVERAL, {"count": str(count)})
    if named != "":
        words = fill(WITH, {"words": words, "name": named})
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
