"""The figures of stock and wind."""

from collections.abc import Iterator
from math import fsum

from builder.cautions import LOADS, WIND
from builder.departments.rigging.description import Rigging, WindArea, WindStep
from builder.departments.rigging.description.steel import Hoist, Truss
from builder.departments.rigging.hangs.figures import truss_of
from builder.departments.rigging.steel.figures import WHAT_HANGS, by_hand, in_words
from builder.departments.rigging.steel.limits import same
from builder.departments.rigging.steel.readings import hangs_are_told
from builder.departments.rigging.steel.totals import Whole
from builder.formulas.gravity import STANDARD_GRAVITY_M_S2
from builder.formulas.wind import wind_force_n, wind_pressure_pa
from builder.pack import Figure, Input, Value, Working, not_less, one_or_both
from builder.reading.absent import Absent, is_unknown
from builder.reading.in_part import as_written, ends_of
from builder.reading.in_service import not_working
from builder.reading.measures import System, shown
from builder.reading.quantities import Length, Mass
from builder.working import figure, missing, worked

IN_SERVICE = "in service"
AIR_KG_M3 = 1.25
"""
The density that EN 1991-1-4 recommends. Thinner air at altitude pushes less, so this does not
understate.
"""


def hoists_used(hoist: Hoist, rigging: Rigging) -> int:
    """How many of a model the standing hangs use."""
    return sum(
        1
        for hang in rigging.hung
        for support in hang.hangs_from
        if support.hoist and same(support.hoist, hoist.name)
    )


def hoist_figures(hoist: Hoist, rigging: Rigging, key: str) -> Iterator[Figure]:
    """
    How many hoists hang already, and how many are left; at most, where some are away and the line
    does not say how many work.
    """
    used, lost = hoists_used(hoist, rigging), not_working(hoist)
    out = lost.out if lost else 0
    not_at_hand = f" − {out} not working" if out else ""
    counted = count_told(hoist)
    written = as_written(counted)
    least, most = (left_of(there, out, used) for there in ends_of(counted))
    may_be_away = hoist.condition != IN_SERVICE or is_unknown(hoist.working)
    may_be_more = any(is_unknown(hang.supports) for hang in rigging.hung)
    is_told = hangs_are_told(rigging) and not may_be_more
    is_sure = is_told and not (lost is None and may_be_away)
    value = one_or_both(least if is_sure else None, most)
    found = f" = {value.text}" if value else ""
    work = by_hand(
        "left = stock − not working − in standing hangs",
        "counting",
        inputs=[Input("In stock", written)],
        steps=(f"{written}{not_at_hand} − {used} in hangs{found}",),
        lines=rigging.hung,
    )
    counted_used = Value(str(used), number=float(used))
    yield used_figure(key, counted_used, work, rigging, may_be_more=may_be_more)
    name, label = f"{key}.free", "Left"
    if value is None:
        yield missing(name, label, work, ("how many there are",), caution=LOADS)
    else:
        note = "condition and note of the line apply"
        yield figure(name, label, value, work, caution=LOADS, note=note)


def count_told(hoist: Hoist) -> int | Absent:
    """How many of a model there are; how many work where nobody knows how many there are."""
    return hoist.working if ends_of(hoist.count) == (None, None) else hoist.count


def left_of(there: int | None, out: int, used: int) -> Value | None:
    """What so many leave; None where nobody knows how many there are."""
    if there is None:
        return None
    left = max(there - out - used, 0) if out else there - used
    return Value(str(left), number=float(left))


def truss_used_m(truss: Truss, whole: Whole) -> float:
    """How much of a truss the standing hangs use. [m]"""
    return fsum(body.length_m or 0.0 for body in whole.bodies if truss_of(body, whole) is truss)


def used_figure(
    key: str, used: Value, work: Working, rigging: Rigging, *, may_be_more: bool
) -> Figure:
    """
    How much of a line hangs already; not told where nobody says what hangs. At least so much where
    some of it ``may_be_more``.
    """
    if hangs_are_told(rigging):
        used = not_less(used) if may_be_more else used
        return figure(f"{key}.used", "In use", used, work, caution=LOADS)
    return missing(f"{key}.used", "In use", work, (WHAT_HANGS,), caution=LOADS)


def truss_figures(truss: Truss, whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """How much truss hangs already, and how much is left."""
    used_m = truss_used_m(truss, whole)
    inputs = [Input("In stock", as_written(truss.in_all))]
    work = by_hand(
        "left = stock − in standing hangs",
        "counting",
        inputs=inputs,
        steps=(f"In hangs: {used_m:.2f} m",),
    )
    text, also = shown(Length, used_m, 1, system)
    may_be_more = any(
        body.length_m is None for body in whole.bodies if truss_of(body, whole) is truss
    )
    used = Value(text, also, used_m, "m")
    yield used_figure(key, used, work, whole.rigging, may_be_more=may_be_more)
    ends = (
        Value(*shown(Length, end.m - used_m, 1, system), end.m - used_m, "m") if end else None
        for end in ends_of(truss.in_all)
    )
    least, most = ends
    is_sure = hangs_are_told(whole.rigging) and not may_be_more
    value = one_or_both(least if is_sure else None, most)
    if value:
        yield figure(f"{key}.free", "Left", value, work, caution=LOADS)
    else:
        yield missing(f"{key}.free", "Left", work, ("how much there is in all",), caution=LOADS)


def lacking_for_wind(area: WindArea, step: WindStep) -> tuple[str, ...]:
    """What must be known before the force on an area at a step can be told."""
    told = (
        (area.area, "the area that faces the wind"),
        (area.coefficient, "its force coefficient"),
        (step.at, f"the wind speed of {step.name}"),
    )
    return tuple(words for value, words in told if isinstance(value, Absent))


def wind_figures(area: WindArea, rigging: Rigging, key: str, system: System) -> Iterator[Figure]:
    """The force of the wind on one area at each step of the site's own plan."""
    for step in rigging.wind:
        lacking = lacking_for_wind(area, step)
        name = f"{key}.{step.name.replace(' ', '-')}"
        if lacking or isinstance(step.at, Absent):
            unknown = worked(wind_pressure_pa, wind_force_n, inputs=[])
            yield missing(name, f"Push at {step.name}", unknown, lacking, caution=WIND)
            continue
        if isinstance(area.area, Absent) or isinstance(area.coefficient, Absent):
            continue  # told as lacking above
        q = wind_pressure_pa(speed_m_s=step.at.m_per_s, air_density_kg_m3=AIR_KG_M3)
        force_n = wind_force_n(
            pressure_pa=q, force_coefficient=area.coefficient, area_m2=area.area.m2
        )
        steps = (
            f"q = 0.5 × {AIR_KG_M3} × {step.at.m_per_s:.2f}² = {q:.1f} Pa",
            (
                f"F = {q:.1f} × {area.coefficient:g} × {area.area.m2:.2f} = {force_n:,.0f} N ="
                f" {force_n / STANDARD_GRAVITY_M_S2:,.0f} kg of pull"
            ),
        )
        inputs = [
            Input("Speed", step.at.text),
            Input("Area", area.area.text),
            Input("Coefficient", f"{area.coefficient:g}"),
        ]
        work = worked(
            wind_pressure_pa,
            wind_force_n,
            inputs=inputs,
            steps=steps,
            leaves_out="Gusts above the speed told, flutter, and the structure's own response.",
        )
        text = in_words(force_n / STANDARD_GRAVITY_M_S2, system)
        also = shown(Mass, force_n / STANDARD_GRAVITY_M_S2, 0, system)[1]
        yield figure(
            name,
            f"Push at {step.name}",
            Value(f"{force_n / 1000:.2f} kN", f"{text}, {also}", force_n, "N"),
            work,
            caution=WIND,
        )
