"""
How high a hang goes: the underside of a truss, the hook above anything else, and the lowest box
below it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.cautions import LOADS
from builder.departments.rigging.description.hangs import Support
from builder.departments.rigging.description.steel import Hoist
from builder.departments.rigging.hangs.bodies import WHICH_POINTS, Body
from builder.departments.rigging.hangs.figures import truss_of
from builder.departments.rigging.steel.figures import by_hand
from builder.departments.rigging.steel.totals import Whole
from builder.formulas.trim import highest_trim_m
from builder.pack import Figure, Input, Working
from builder.reading.absent import Absent
from builder.reading.measures import System
from builder.working import figure, length_value, missing, worked

LEFT_OUT = (
    "Bridles, and slings longer than the hoist's headroom or the steel told. Level: the lowest"
    " point decides."
)


@dataclass(frozen=True, slots=True)
class Highest:
    """How high a hang goes with its hoists run up, or what must be known for that. [m]"""

    height_m: float | None
    steps: tuple[str, ...]
    lacking: tuple[str, ...]


def highest_of(body: Body, whole: Whole) -> Highest:
    """The highest the underside of a truss, or the hook above anything else, goes."""
    places = {place.point.name.casefold(): place for place in whole.places}
    truss, steps, tops = truss_of(body, whole), [], []
    height = truss.height if truss else Absent.NONE
    lacking = ["the height of the truss"] if truss and isinstance(height, Absent) else []
    below = [] if isinstance(height, Absent) else [height.m]
    lacking += [] if body.supports else [WHICH_POINTS]
    for support, hoist in zip(body.supports, body.hoists, strict=True):
        above, parts = places[support.point.casefold()], parts_of_support(support, hoist)
        steel_m = above.steel_m
        lacking += [] if parts else [what_lacks(support, hoist)]
        lacking += [] if steel_m is not None else [above.lacks_along or "low steel at its points"]
        if parts and steel_m is not None:
            tops.append(highest_trim_m(low_steel_m=steel_m, parts_m=(*parts, *below)))
            steps.append(
                f"{support.point}:"
                f" {steel_m:.2f}{''.join(f' − {part:g}' for part in (*parts, *below))} ="
                f" {tops[-1]:.2f} m"
            )
    return Highest(
        min(tops) if tops and not lacking else None, tuple(steps), tuple(dict.fromkeys(lacking))
    )


def parts_of_support(support: Support, hoist: Hoist | None) -> tuple[float, ...]:
    """What hangs between low steel and the hang: the hoist run up, the steel, or both. [m]"""
    if isinstance(support.steel, Absent):
        return ()
    steel = (support.steel.m,) if support.steel else ()
    if hoist is None:
        return steel
    return () if isinstance(hoist.headroom, Absent) else (hoist.headroom.m, *steel)


def what_lacks(support: Support, hoist: Hoist | None) -> str:
    """What must be known of what hangs between low steel and a hang."""
    if hoist is None or isinstance(support.steel, Absent):
        return "the length of the steel"
    return f"the headroom of {hoist.name}"


def trim_figures(body: Body, whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """How high a hang goes, and what another department hangs below it."""
    found, truss = highest_of(body, whole), truss_of(body, whole)
    inputs = [Input("Points", ", ".join(support.point for support in body.supports))]
    order = (
        "low steel"
        + (", hoist run up" if any(body.hoists) else "")
        + (", steel" if any(support.steel for support in body.supports) else "")
    )
    inputs.append(Input("Taken off in this order", f"{order}{', truss' if truss else ''}"))
    work = worked(highest_trim_m, inputs=inputs, steps=found.steps, leaves_out=LEFT_OUT)
    dead = "dead hung: it hangs there" if not any(body.hoists) else "hoists run up"
    name, label, note = (
        ("highest-trim", "Highest trim", f"underside of the truss, {dead}")
        if truss
        else ("highest-hook", "Highest hook", dead)
    )
    if found.height_m is None:
        yield missing(f"{key}.{name}", label, work, found.lacking, caution=LOADS)
    else:
        yield figure(
            f"{key}.{name}",
            label,
            length_value(found.height_m, system),
            work,
            caution=LOADS,
            note=note,
        )
    yield from below_figures(body, found, key, system)


def below_figures(body: Body, found: Highest, key: str, system: System) -> Iterator[Figure]:
    """
    The lowest edge of what another department hangs here, as it tells it, and where that goes with
    the hook at its highest.
    """
    told = [each for each in body.hung if each.top_m is not None and each.bottom_m is not None]
    if not told:
        return
    lowest = min(told, key=lambda each: each.bottom_m or 0.0)
    top_m, bottom_m = lowest.top_m or 0.0, lowest.bottom_m or 0.0
    inputs = [
        Input("Told by", lowest.by),
        Input("Its top and its lowest edge", f"{top_m:.2f} m and {bottom_m:.2f} m above the deck"),
    ]
    yield figure(
        f"{key}.lowest-box",
        "Lowest box",
        length_value(bottom_m, system),
        by_hand("lowest edge as told", "trim from low steel", inputs=inputs),
        caution=LOADS,
        note=f"{lowest.what}, at the height {lowest.by} tells",
    )
    if found.height_m is not None and not truss_below(body):
        room_m = found.height_m - top_m
        yield figure(
            f"{key}.room-above",
            "Room between hook and top",
            length_value(room_m, system),
            room_working(found, top_m, room_m, inputs),
            caution=LOADS,
            note="bar, frame and slings go in it",
        )


def room_working(found: Highest, top_m: float, room_m: float, inputs: Sequence[Input]) -> Working:
    """How the room between a hook at its highest and what hangs below is found."""
    room = (
        f"Room above: {found.height_m:.2f} − {top_m:.2f} = {room_m:.2f} m, less the bar, frame"
        " and slings."
    )
    return worked(
        highest_trim_m,
        inputs=inputs,
        steps=(*found.steps, room),
        leaves_out="The heights of bar, frame and slings, which nobody tells here.",
    )


def truss_below(body: Body) -> bool:
    """True where a truss hangs between the hook and what is told."""
    return body.hang.truss is not None
