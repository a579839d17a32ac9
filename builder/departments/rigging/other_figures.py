"""The figures of bridles, stock and wind."""

from collections.abc import Iterator

from builder.cautions import LOADS, WIND
from builder.departments.rigging.bridling import Bridled
from builder.departments.rigging.description import Rigging, WindArea
from builder.departments.rigging.figures import by_hand, in_words, mass
from builder.departments.rigging.hang_figures import truss_of
from builder.departments.rigging.ratings import same
from builder.departments.rigging.steel import Hoist, Truss
from builder.departments.rigging.totals import Whole
from builder.formulas.bridles import two_leg_bridle
from builder.formulas.wind import wind_force_n, wind_pressure_pa
from builder.pack import Figure, Input, Value
from builder.reading.measures import System, shown
from builder.reading.quantities import Length, Mass
from builder.reading.references import spelling
from builder.working import figure, missing, worked

AIR_KG_M3 = 1.25
"""The density that EN 1991-1-4 recommends. Thinner air at altitude pushes less, so this does not understate."""
NEWTONS_PER_KG = 9.80665


def bridle_figures(each: Bridled, key: str, system: System) -> Iterator[Figure]:
    """Leg lengths, tensions, the sideways pull on the beams, the angle, and the headroom lost."""
    names = [anchor.point.name for anchor in each.anchors]
    inputs = [Input("Load", each.bridle.load.text)]
    inputs += [
        Input(f"{name}: run and rise", f"{run:.2f} m and {rise:.2f} m") for name, run, rise in zip(names, each.runs_m, each.rises_m, strict=True)
    ]
    legs = each.legs
    left_out = "Weight and stretch of the legs. What the sideways pull does to the beams is the engineer's to say."
    if legs is None:
        yield missing(f"{key}.tension", "Pull in the legs", worked(two_leg_bridle, inputs=inputs, leaves_out=left_out), (each.why,), caution=LOADS)
        return
    steps = tuple(
        f"{name}: L = √({rise:.2f}² + {run:.2f}²) = {length:.2f} m, T = {tension:.1f} kg, vertical {vertical:.1f} kg"
        for name, run, rise, length, tension, vertical in zip(
            names, each.runs_m, each.rises_m, legs.lengths_m, legs.tensions_kg, legs.verticals_kg, strict=True
        )
    )
    work = worked(two_leg_bridle, inputs=inputs, steps=steps, leaves_out=left_out)
    for name, length_m, tension_kg in zip(names, legs.lengths_m, legs.tensions_kg, strict=True):
        text, also = shown(Length, length_m, 2, system)
        yield figure(f"{key}.leg-{spelling(name)}", f"Leg to {name}", Value(text, also, length_m, "m"), work, caution=LOADS)
        yield figure(f"{key}.tension-{spelling(name)}", f"Pull in the leg to {name}", mass(tension_kg, system), work, caution=LOADS)
    yield figure(f"{key}.sideways", "Sideways pull on each beam", mass(legs.horizontal_kg, system), work, caution=LOADS)
    angle = Value(f"{legs.included_angle_deg:.0f} deg", number=legs.included_angle_deg, unit="deg")
    yield figure(f"{key}.angle", "Angle between the legs", angle, work, caution=LOADS)
    text, also = shown(Length, legs.headroom_m, 2, system)
    yield figure(f"{key}.headroom", "Headroom lost", Value(text, also, legs.headroom_m, "m"), work, caution=LOADS)


def hoists_used(hoist: Hoist, rigging: Rigging) -> int:
    """How many of a model the standing hangs use."""
    return sum(1 for hang in rigging.hangs for support in hang.supports if support.hoist and same(support.hoist, hoist.name))


def hoist_figures(hoist: Hoist, rigging: Rigging, key: str) -> Iterator[Figure]:
    """How many hoists hang already, and how many are left."""
    used = hoists_used(hoist, rigging)
    steps = (f"{hoist.count} − {used} = {hoist.count - used}",)
    work = by_hand("left = stock − in standing hangs", "counting", inputs=[Input("In stock", str(hoist.count))], steps=steps)
    yield figure(f"{key}.used", "In use", Value(str(used), number=float(used)), work, caution=LOADS)
    left = hoist.count - used
    yield figure(f"{key}.free", "Left", Value(str(left), number=float(left)), work, caution=LOADS, note="condition and note of the line apply")


def truss_used_m(truss: Truss, whole: Whole) -> float:
    """How much of a truss the standing hangs use. [m]"""
    return sum(body.length_m for body in whole.bodies if truss_of(body, whole) is truss)


def truss_figures(truss: Truss, whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """How much truss hangs already, and how much is left."""
    used_m = truss_used_m(truss, whole)
    inputs = [Input("In stock", truss.in_all.text if isinstance(truss.in_all, Length) else "not stated")]
    work = by_hand("left = stock − in standing hangs", "counting", inputs=inputs, steps=(f"In hangs: {used_m:.2f} m",))
    text, also = shown(Length, used_m, 1, system)
    yield figure(f"{key}.used", "In use", Value(text, also, used_m, "m"), work, caution=LOADS)
    if isinstance(truss.in_all, Length):
        left_m = truss.in_all.m - used_m
        text, also = shown(Length, left_m, 1, system)
        yield figure(f"{key}.free", "Left", Value(text, also, left_m, "m"), work, caution=LOADS)


def wind_figures(area: WindArea, rigging: Rigging, key: str, system: System) -> Iterator[Figure]:
    """The force of the wind on one area at each step of the site's own plan."""
    for step in rigging.wind:
        q = wind_pressure_pa(speed_m_s=step.at.m_per_s, air_density_kg_m3=AIR_KG_M3)
        force_n = wind_force_n(pressure_pa=q, force_coefficient=area.coefficient, area_m2=area.area.m2)
        steps = (
            f"q = 0.5 × {AIR_KG_M3} × {step.at.m_per_s:.2f}² = {q:.1f} Pa",
            f"F = {q:.1f} × {area.coefficient:g} × {area.area.m2:.2f} = {force_n:,.0f} N = {force_n / NEWTONS_PER_KG:,.0f} kg of pull",
        )
        inputs = [Input("Speed", step.at.text), Input("Area", area.area.text), Input("Coefficient", f"{area.coefficient:g}")]
        work = worked(
            wind_pressure_pa,
            wind_force_n,
            inputs=inputs,
            steps=steps,
            leaves_out="Gusts above the speed told, flutter, and the structure's own response.",
        )
        text = in_words(force_n / NEWTONS_PER_KG, system)
        also = shown(Mass, force_n / NEWTONS_PER_KG, 0, system)[1]
        yield figure(
            f"{key}.{step.name}", f"Push at {step.name}", Value(f"{force_n / 1000:.2f} kN", f"{text}, {also}", force_n, "N"), work, caution=WIND
        )
