"""
The figures of standing bridles: where the apex is, leg lengths, pulls, sideways pulls, angles,
headroom lost.
"""

from collections.abc import Iterator, Sequence

from builder.cautions import LOADS
from builder.departments.rigging.bridles.legs import Legs
from builder.departments.rigging.bridles.standing import Bridled
from builder.departments.rigging.steel.figures import mass
from builder.departments.rigging.steel.geometry import Overhead
from builder.formulas.bridles import (
    Place,
    three_leg_apex,
    three_leg_bridle,
    two_leg_apex,
    two_leg_bridle,
)
from builder.pack import Figure, Input, Value, Working
from builder.reading.absent import Absent
from builder.reading.in_part import as_written
from builder.reading.measures import System, shown
from builder.reading.quantities import Across, Depth, Height
from builder.reading.references import spelling
from builder.working import figure, length_value, missing, worked

LEFT_OUT = (
    "Weight and stretch of the legs; wraps round the beam. What the sideways pull does to the beams"
    " is the engineer's to say."
)


def bridle_figures(each: Bridled, key: str, system: System) -> Iterator[Figure]:
    """The figures of a standing bridle, or what it needs."""
    load = each.bridle.load
    inputs = [Input("Load", as_written(load))]
    if each.legs is None or each.apex is None or isinstance(load, Absent):
        work = worked(
            two_leg_bridle if len(each.anchors) == 2 else three_leg_bridle,
            inputs=inputs,
            leaves_out=LEFT_OUT,
        )
        yield missing(f"{key}.tension", "Pull in the legs", work, (each.why,), caution=LOADS)
        return
    if each.bridle.leg_lengths:
        yield from landing_figures(each, each.apex, key, system)
    work = legs_working(load.kg, each.apex, each.anchors, each.legs, inputs)
    yield from pull_figures(
        [anchor.point.name for anchor in each.anchors], each.legs, work, key, system
    )


def landing_figures(each: Bridled, apex: Place, key: str, system: System) -> Iterator[Figure]:
    """Where legs of the written lengths let the apex land."""
    formula = two_leg_apex if len(each.anchors) == 2 else three_leg_apex
    lengths = [length.text for length in each.bridle.leg_lengths]
    inputs = [
        Input(f"Leg to {anchor.point.name}", text)
        for anchor, text in zip(each.anchors, lengths, strict=True)
    ]
    checks = (
        check_of(anchor, apex, length.m)
        for anchor, length in zip(each.anchors, each.bridle.leg_lengths, strict=True)
    )
    steps = (
        (
            f"Apex at {place_words(apex)}, counted from the datum: across to stage left, depth"
            " upstage."
        ),
        *checks,
    )
    work = worked(
        formula,
        inputs=[*inputs, *(anchor_input(anchor) for anchor in each.anchors)],
        steps=steps,
        leaves_out=LEFT_OUT,
    )
    yield figure(f"{key}.lands", "Apex lands", landing_value(apex, system), work, caution=LOADS)


def landing_value(apex: Place, system: System) -> Value:
    """A place in three coordinates, in both systems."""
    every = [
        shown(kind, at_m, 2, system)
        for kind, at_m in zip((Across, Depth, Height), apex, strict=True)
    ]
    return Value(", ".join(text for text, _ in every), ", ".join(also for _, also in every if also))


def check_of(anchor: Overhead, apex: Place, length_m: float) -> str:
    """The check by hand that a leg of this length reaches from its point to the apex."""
    across_m, depth_m = anchor.known_at
    dx, dy, dz = across_m - apex[0], depth_m - apex[1], (anchor.steel_m or 0.0) - apex[2]
    return f"Check {anchor.point.name}: √({dx:.3f}² + {dy:.3f}² + {dz:.3f}²) = {length_m:.3f} m."


def place_words(place: Place) -> str:
    """A place as numbers that a working counts with."""
    return f"across {place[0]:.3f} m, depth {place[1]:.3f} m, height {place[2]:.3f} m"


def anchor_input(anchor: Overhead) -> Input:
    """Where a leg begins."""
    return Input(
        f"{anchor.point.name}, low steel", place_words((*anchor.known_at, anchor.steel_m or 0.0))
    )


def legs_working(
    load_kg: float, apex: Place, anchors: Sequence[Overhead], legs: Legs, inputs: Sequence[Input]
) -> Working:
    """How lengths and pulls of a bridle come about, with the numbers filled in."""
    names = [anchor.point.name for anchor in anchors]
    every = [
        *inputs,
        Input("Apex", place_words(apex)),
        *(anchor_input(anchor) for anchor in anchors),
    ]
    steps = [leg_step(name, index, legs) for index, name in enumerate(names)]
    if len(names) == 2:
        steps += list(two_steps(load_kg, names, legs))
        return worked(two_leg_bridle, inputs=every, steps=steps, leaves_out=LEFT_OUT)
    steps += list(three_steps(load_kg, names, apex, anchors, legs))
    return worked(three_leg_bridle, inputs=every, steps=steps, leaves_out=LEFT_OUT)


def leg_step(name: str, index: int, legs: Legs) -> str:
    """Run, rise and length of a leg."""
    run, rise, length = legs.runs_m[index], legs.rises_m[index], legs.lengths_m[index]
    return (
        f"{name}: run H = {run:.3f} m seen from above, rise V = {rise:.3f} m, L = √({rise:.3f}² +"
        f" {run:.3f}²) = {length:.3f} m."
    )


def two_steps(load_kg: float, names: Sequence[str], legs: Legs) -> Iterator[str]:
    """The pulls of two legs."""
    (h1, h2), (v1, v2) = legs.runs_m, legs.rises_m
    turn = v1 * h2 + v2 * h1
    yield f"V1 H2 + V2 H1 = {v1:.3f} × {h2:.3f} + {v2:.3f} × {h1:.3f} = {turn:.4f} m²."
    for index, other in ((0, h2), (1, h1)):
        length, pull, down = (
            legs.lengths_m[index],
            legs.tensions_kg[index],
            legs.verticals_kg[index],
        )
        yield (
            f"{names[index]}: T = {load_kg:.1f} × {length:.3f} × {other:.3f} / {turn:.4f} ="
            f" {pull:.1f} kg, of it straight down {down:.1f} kg."
        )
    yield (
        f"Sideways: {load_kg:.1f} × {h1:.3f} × {h2:.3f} / {turn:.4f} = {legs.sideways_kg[0]:.1f}"
        " kg, the same at both points."
    )
    yield (
        f"Angle: atan({h1:.3f} / {v1:.3f}) + atan({h2:.3f} / {v2:.3f}) = {legs.widest_deg:.1f} deg."
    )


def three_steps(
    load_kg: float, names: Sequence[str], apex: Place, anchors: Sequence[Overhead], legs: Legs
) -> Iterator[str]:
    """
    The pulls of three legs, checked by hand: what pulls down adds up to the load, what pulls
    sideways cancels.
    """
    for name, pull, down, sideways in zip(
        names, legs.tensions_kg, legs.verticals_kg, legs.sideways_kg, strict=True
    ):
        yield (
            f"{name}: T = {pull:.1f} kg, straight down T V / L = {down:.1f} kg, sideways T H / L ="
            f" {sideways:.1f} kg."
        )
    yield f"Check, down: {' + '.join(f'{kg:.1f}' for kg in legs.verticals_kg)} = {load_kg:.1f} kg."
    for axis, word in ((0, "across"), (1, "depth")):
        shares = [
            pull * (anchor.known_at[axis] - apex[axis]) / length
            for pull, anchor, length in zip(legs.tensions_kg, anchors, legs.lengths_m, strict=True)
        ]
        yield (
            f"Check, {word}: T Δ / L of each leg, {' '.join(f'{kg:+.1f}' for kg in shares)} = 0 but"
            " for rounding."
        )
    yield f"Angles between legs: {', '.join(f'{angle:.1f} deg' for angle in legs.angles_deg)}."


def pull_figures(
    names: Sequence[str], legs: Legs, work: Working, key: str, system: System
) -> Iterator[Figure]:
    """Leg lengths, pulls along them, the sideways pulls, the angle and the headroom lost."""
    yield from leg_figures(names, legs, work, key, system)
    yield from sideways_figures(names, legs, work, key, system)
    label = "Angle between the legs" if len(names) == 2 else "Widest angle between two legs"
    angle = Value(f"{legs.widest_deg:.0f} deg", number=legs.widest_deg, unit="deg")
    yield figure(f"{key}.angle", label, angle, work, caution=LOADS)
    yield figure(
        f"{key}.headroom",
        "Headroom lost",
        length_value(legs.headroom_m, system),
        work,
        caution=LOADS,
    )


def leg_figures(
    names: Sequence[str], legs: Legs, work: Working, key: str, system: System
) -> Iterator[Figure]:
    """The length of each leg and the pull in it."""
    for name, length_m, tension_kg in zip(names, legs.lengths_m, legs.tensions_kg, strict=True):
        length, tension = length_value(length_m, system), mass(tension_kg, system)
        leg, pull = f"{key}.leg-{spelling(name)}", f"{key}.tension-{spelling(name)}"
        yield figure(leg, f"Leg to {name}", length, work, caution=LOADS)
        yield figure(pull, f"Pull in the leg to {name}", tension, work, caution=LOADS)


def sideways_figures(
    names: Sequence[str], legs: Legs, work: Working, key: str, system: System
) -> Iterator[Figure]:
    """The sideways pull of two legs, which is one, or of each of three."""
    if len(names) == 2:
        label, value = "Sideways pull on each beam", mass(legs.sideways_kg[0], system)
        yield figure(f"{key}.sideways", label, value, work, caution=LOADS)
        return
    for name, sideways_kg in zip(names, legs.sideways_kg, strict=True):
        pull, label = f"{key}.sideways-{spelling(name)}", f"Sideways pull at {name}"
        yield figure(pull, label, mass(sideways_kg, system), work, caution=LOADS)
