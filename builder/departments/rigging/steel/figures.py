"""The figures of points, beams, zones and the roof, each with its working."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import fsum

from builder.cautions import LOADS
from builder.departments.rigging.description.steel import DynamicFactor, LimitException, Limits
from builder.departments.rigging.steel.geometry import Overhead, heights_of, stations_of
from builder.departments.rigging.steel.limits import ROOF, Ruled
from builder.departments.rigging.steel.readings import is_factor_open
from builder.departments.rigging.steel.totals import (
    Group,
    OnPoint,
    Whole,
    counts_kg,
    is_uneven,
)
from builder.formulas.full_at_once import FullPoints, full_points
from builder.formulas.limits import Left, left_on_points
from builder.formulas.loads import total_load_kg
from builder.formulas.sources import COMMON_PRACTICE
from builder.formulas.trim import low_steel_m
from builder.pack import Figure, Input, Reference, Value, Working, one_or_both
from builder.reading.absent import Absent
from builder.reading.in_part import Between, as_written, ends_of
from builder.reading.measures import System, shown
from builder.reading.quantities import Length, Mass
from builder.reading.values.sentences import sentence_start
from builder.reading.written import Written
from builder.working import figure, missing, weakest_of, worked

WHAT_HANGS = "what hangs in the house"
FACTOR = "the factor for starting and stopping"
NOTHING_KG = 0.005
GRAM_KG = 0.001
LEFT_OUT = (
    "Snow, wind and anything hung that this file does not tell. Loads are at rest unless the house"
    " asks for a factor."
)


def by_hand(
    equation: str,
    clause: str,
    *,
    inputs: Sequence[Input],
    steps: Sequence[str] = (),
    lines: Sequence[Written] = (),
) -> Working:
    """A working whose formula is plain geometry or counting."""
    return Working(
        equation,
        tuple(inputs),
        (Reference(COMMON_PRACTICE.key, clause, COMMON_PRACTICE.title),),
        tuple(steps),
        check=weakest_of(lines),
    )


def mass(kg: float, system: System) -> Value:
    """
    A mass in both systems, to the kilogram.

    Nothing is nothing in both, and what rounding leaves of it too.
    """
    text, also = shown(Mass, kg if abs(kg) > NOTHING_KG else 0.0, 0, system)
    return Value(text, also if abs(kg) > NOTHING_KG else "", kg, "kg")


def between(least_kg: float | None, most_kg: float | None, system: System) -> Value | None:
    """A mass from its two ends, None where nobody knows either. [kg]"""
    known = [kg for kg in (least_kg, most_kg) if kg is not None]
    if len(known) > 1:
        least_kg, most_kg = min(known), max(known)
    return one_or_both(
        None if least_kg is None else mass(least_kg, system),
        None if most_kg is None else mass(most_kg, system),
    )


def both_readings(light: Sequence[str], heavy: Sequence[str], whole: Whole) -> tuple[str, ...]:
    """The steps of one reading, or of both where they differ."""
    if tuple(light) == tuple(heavy):
        return tuple(light)
    at_worst = whole.heaviest.at_worst and is_uneven(whole)
    if whole.light is None:
        return (AS_PLANNED, *light, AT_WORST, *heavy)
    return ("At the lightest:", *light, HEAVY_AT_WORST if at_worst else "At the heaviest:", *heavy)


AS_PLANNED = "Hoists as planned:"
AT_WORST = "Hoists at their worst:"
HEAVY_AT_WORST = "At the heaviest, hoists at their worst:"


def in_words(kg: float, system: System) -> str:
    """A mass as a sentence says it."""
    return shown(Mass, kg, 0, system)[0]


def point_figures(point: OnPoint, whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """
    What a point may carry, carries, has left, and which limit binds. Of a point that is not on its
    beam nobody can count on anything.
    """
    limit = limit_figure(f"{key}.limit", "May carry", point.rating, system)
    if point.place.on_beam:
        yield limit
    else:
        yield missing(
            limit.key, limit.label, limit.working, ("a place on its beam",), caution=LOADS
        )
    yield carried_figure(point, whole, key, system)
    yield from left_figures(point, whole, key, system)
    yield steel_figure(point, key, system)
    light = whole.lightest.point(point.name)
    if light.worst_why:
        yield worst_figure(point, whole, key, system)
    if light.worst_why or counts_more(light):
        yield alone_figure(point, whole, key, system)


def counts_more(each: OnPoint | Group) -> bool:
    """Whether more counts against a limit than is carried, for a load there relieves."""
    return each.counted.kg > (each.kg or 0.0) + GRAM_KG


def alone_figure(point: OnPoint, whole: Whole, key: str, system: System) -> Figure:
    """
    What the point's own limit leaves, whatever its beam, zone and roof do; told where what counts
    there is not what it carries.
    """
    light, heavy = whole.lightest.point(point.name), whole.heaviest.point(point.name)
    steps = both_readings(
        tuple(own_steps(light, whole.lightest)), tuple(own_steps(heavy, whole.heaviest)), whole
    )
    work = worked(
        left_on_points,
        inputs=[Input("May carry", as_written(point.rating.limit))],
        steps=steps,
        equation="left = limit − what counts against it",
        leaves_out=LEFT_OUT,
        lines=(point.rating.line, *whole.lines_on(point)),
    )
    value = between(own_left_kg(heavy, whole.heaviest), own_left_kg(light, whole.lightest), system)
    label = "Left on the point itself"
    if value is None:
        lacking = reasons(point, whole) or ("a limit of the point",)
        return missing(f"{key}.alone", label, work, lacking, caution=LOADS)
    return figure(f"{key}.alone", label, value, work, caution=LOADS, note=uneven_note(whole, light))


def own_left_kg(point: OnPoint, whole: Whole) -> float | None:
    """What the point's own limit leaves in a reading, None where that is not known. [kg]"""
    if point.rating.kg is None or not point.counted.is_known:
        return None
    return point.rating.kg - counts_kg(point, at_worst=whole.at_worst)


def own_steps(point: OnPoint, whole: Whole) -> Iterator[str]:
    """What counts against a point's own limit, part by part, and what is left."""
    yield from point.counted.worst_steps if whole.at_worst else point.counted.steps
    if point.rating.kg is not None and point.counted.is_known:
        yield less_step("Point", point.rating.kg, counts_kg(point, at_worst=whole.at_worst))


def uneven_note(whole: Whole, each: OnPoint | Group) -> str:
    """What makes the lower end of what is left, where hoists do."""
    why = each.counted.worst_why
    return f"the lower with {why}" if why and whole.heaviest.at_worst else ""


def limit_figure(key: str, label: str, ruled: Ruled, system: System) -> Figure:
    """The limit that holds for a thing, and which line of the description says so."""
    limit = ruled.limit
    least, most = ends_of(limit)
    work = worked(
        left_on_points,
        inputs=[Input("Stated", as_written(limit))],
        equation="the nearest rule that is stated",
        steps=(f"From {ruled.rule}.",),
        lines=(ruled.line,),
    )
    value = between(least.kg if least else None, most.kg if most else None, system)
    if value:
        return figure(key, label, value, work, caution=LOADS)
    lacking = missing(key, label, work, (f"a limit: {as_written(limit)}",), caution=LOADS)
    is_rule = isinstance(ruled.line, Limits | LimitException) and limit is not Absent.NONE
    return replace(lacking, note=f"by {ruled.rule}") if is_rule else lacking


def carried_figure(point: OnPoint, whole: Whole, key: str, system: System) -> Figure:
    """What hangs on a point when a show arrives."""
    inputs = [Input("Hung there", ", ".join(point.hangs) or "nothing")]
    told = whole.rigging.dynamic_factor
    if isinstance(told, DynamicFactor):
        words = f"{as_written(told.factor)}, from {told.source}"
        inputs.append(Input("Factor for starting and stopping", words))
    light, heavy = whole.lightest.point(point.name), whole.heaviest.point(point.name)
    steps = both_readings(light.steps, heavy.steps, whole) or ("Nothing hangs there.",)
    work = worked(
        total_load_kg,
        inputs=inputs,
        steps=steps,
        leaves_out=LEFT_OUT,
        equation="carried = (share of each hang + hoist) × factor",
        lines=whole.lines_on(point),
    )
    value = between(light.kg, heavy.kg, system)
    if whole.is_loose:
        value = between(light.kg or None, None, system)
    if value is None:
        lacking = reasons(point, whole) or (WHAT_HANGS,)
        return missing(f"{key}.carried", "Carried", work, lacking, caution=LOADS)
    return figure(
        f"{key}.carried",
        "Carried",
        value,
        work,
        caution=LOADS,
        note=", ".join(point.hangs),
    )


def reasons(point: OnPoint, whole: Whole) -> tuple[str, ...]:
    """Why what a point carries cannot be worked out."""
    hangs = (
        part.why
        for body, part in zip(whole.bodies, whole.shares, strict=True)
        if body.hang.name in point.hangs
    )
    bridles = (each.why for each in whole.bridles if each.bridle.name in point.hangs)
    factor = [FACTOR] if is_factor_open(whole.rigging) and point.hangs else []
    return tuple(dict.fromkeys(why for why in (*hangs, *bridles, *factor) if why))


def left_figures(point: OnPoint, whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """What a point has left while all others stay as they are, and which limit sets that."""
    work = left_working(point, whole)
    left = whole.lightest.left.get(point.name)
    if left is None:
        lacking = left_lacks(point, whole)
        yield missing(f"{key}.left", "Left", work, (lacking,), caution=LOADS)
        return
    most = mass(left.left_kg, system)
    value = between(whole.surely_left_kg(point.name), left.left_kg, system) or most
    least = whole.heaviest.left.get(point.name)
    is_told = value.number is not None or value.least is not None
    binding = binds(least if least and value.number is None else left)
    yield figure(f"{key}.left", "Left", value, work, caution=LOADS, note=binding)
    if is_told:
        yield figure(f"{key}.binds", "Bound by", Value(binding), work, caution=LOADS)
    else:
        lacking = "every limit above it, and all that hangs there"
        yield missing(f"{key}.binds", "Bound by", work, (lacking,), caution=LOADS)


def left_working(point: OnPoint, whole: Whole) -> Working:
    """How what a point has left is found, at the lightest and the heaviest."""
    light, heavy = whole.lightest, whole.heaviest
    return worked(
        left_on_points,
        inputs=[
            Input("May carry", as_written(point.rating.limit)),
            Input("Carried", "not known" if point.kg is None else f"{point.kg:.1f} kg"),
        ],
        steps=both_readings(
            tuple(left_steps(light.point(point.name), light)),
            tuple(left_steps(heavy.point(point.name), heavy)),
            whole,
        ),
        leaves_out=(
            "Not additive: what one point takes, its neighbours lose. A spacing rule may close a"
            " point."
        ),
        lines=whole.lines_over(point),
    )


def left_lacks(point: OnPoint, whole: Whole) -> str:
    """What must be known, or mended, before a point has anything left."""
    if point.is_out:
        return "a point in service"
    if whole.lightest.point(point.name).rating.kg is None:
        return "a limit of the point"
    return "what it carries" if point.place.on_beam else "a place on its beam"


def left_steps(point: OnPoint, whole: Whole) -> Iterator[str]:
    """The room under each limit that a point hangs below."""
    if point.rating.kg is not None and point.kg is not None:
        yield less_step("Point", point.rating.kg, counts_kg(point, at_worst=whole.at_worst))
    for group in whole.groups:
        if group.bears(point) and group.ruled.kg is not None:
            kg = counts_kg(group, at_worst=whole.at_worst)
            yield less_step(sentence_start(group.key), group.ruled.kg, kg)


def less_step(name: str, limit_kg: float, kg: float) -> str:
    """A limit less what counts against it, as a step."""
    return f"{name}: {limit_kg:,.0f} kg − {kg:,.1f} kg = {limit_kg - kg:,.1f} kg"


def binds(left: Left) -> str:
    """The binding limit in words."""
    if left.by_spacing:
        return "spacing to a loaded neighbour"
    return "the point" if left.binds == left.name else left.binds


def steel_figure(point: OnPoint, key: str, system: System) -> Figure:
    """The low steel at a point."""
    beam = point.place.beam
    heights = "; ".join(
        f"{at.text}: {station.height.text}"
        for station in beam.low_steel
        if (at := station.across or station.depth)
    ) or as_written(beam.underside)
    along = beam.along
    at = getattr(point.place.point, along) if along else None
    inputs = [
        Input("At", at.text if at else "not known"),
        Input(f"Heights of {beam.name}", heights),
    ]
    lines = (beam, *beam.low_steel)
    if point.place.steel_m is None:
        return missing(
            f"{key}.low-steel",
            "Low steel",
            worked(low_steel_m, inputs=inputs, lines=lines),
            (lacks_steel(point.place),),
            caution=LOADS,
        )
    text, also = shown(Length, point.place.steel_m, 2, system)
    between = "Straight between the heights stated."
    work = worked(low_steel_m, inputs=inputs, leaves_out=between, lines=lines)
    return figure(
        f"{key}.low-steel",
        "Low steel",
        Value(text, also, point.place.steel_m, "m"),
        work,
        caution=LOADS,
    )


def lacks_steel(place: Overhead) -> str:
    """What must be known to tell the low steel at a point."""
    if heights_of(place.beam) is None:
        return f"the height of beam {place.beam.name}"
    if place.lacks_along:
        return place.lacks_along
    if not stations_of(place.beam):
        return f"where the heights of beam {place.beam.name} are along it"
    return "heights of the beam that reach this far"


def worst_figure(point: OnPoint, whole: Whole, key: str, system: System) -> Figure:
    """
    The most a point carries when hoists are not as level as wanted, with its hoist and all else
    that hangs there, what relieves it counted as nothing.
    """
    light, heavy = whole.lightest.point(point.name), whole.heaviest.point(point.name)
    work = worked(
        total_load_kg,
        inputs=[
            Input(
                "Worst of",
                "each other hoist slack in turn; all hoists out of level within the house's"
                " tolerance",
            )
        ],
        steps=both_readings(light.counted.worst_steps, heavy.counted.worst_steps, whole),
        equation="worst = (most of each hang over its cases + hoist + legs of bridles) × factor",
        leaves_out="Shear in the truss and play at its joints. See the hang's own workings.",
        lines=whole.lines_on(point),
    )
    value = between(light.worst_kg, heavy.worst_kg, system)
    if value is None or heavy.worst_kg is None:
        lacking = reasons(point, whole)
        return missing(f"{key}.worst", "Worst if uneven", work, lacking, caution=LOADS)
    return figure(
        f"{key}.worst",
        "Worst if uneven",
        value,
        work,
        caution=LOADS,
        note=light.worst_why,
    )


def group_figures(group: Group, whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """What a beam, a zone or the roof may carry, carries, and has left."""
    light, heavy = whole.lightest.group(group.key), whole.heaviest.group(group.key)
    lacking = heavy.lacking
    is_sure = not (lacking or whole.is_loose)
    yield limit_figure(f"{key}.limit", "May carry", group.ruled, system)
    work = worked(
        total_load_kg,
        inputs=[Input("Points", str(len(group.points)))],
        steps=both_readings(sum_steps(light), sum_steps(heavy), whole),
        leaves_out=LEFT_OUT,
        lines=whole.lines_under(group),
    )
    value = between(
        light.kg if light.kg or is_sure else None, heavy.kg if is_sure else None, system
    )
    if value:
        yield figure(f"{key}.carried", "Carried", value, work, caution=LOADS)
    else:
        lacking = lacking or (WHAT_HANGS,)
        yield missing(f"{key}.carried", "Carried", work, lacking, caution=LOADS)
    if light.counted.worst_why:
        yield group_worst_figure(group, whole, key, system, is_sure=is_sure)
    yield group_left_figure(group, whole, key, system, is_sure=is_sure)


def group_worst_figure(
    group: Group, whole: Whole, key: str, system: System, *, is_sure: bool
) -> Figure:
    """The most that a beam, a zone or the roof carries when hoists are not as planned."""
    light, heavy = whole.lightest.group(group.key), whole.heaviest.group(group.key)
    work = worked(
        total_load_kg,
        inputs=[Input("Points", str(len(group.points)))],
        steps=both_readings(light.counted.worst_steps, heavy.counted.worst_steps, whole),
        equation="worst = (most of each hang on its points here together + hoists) × factor",
        leaves_out="Shear in the truss and play at its joints. See the hang's own workings.",
        lines=whole.lines_under(group),
    )
    value = between(light.counted.worst_kg, heavy.counted.worst_kg if is_sure else None, system)
    if value is None or not is_sure:
        lacking = heavy.lacking or (WHAT_HANGS,)
        return missing(f"{key}.worst", "Worst if uneven", work, lacking, caution=LOADS)
    note = light.counted.worst_why
    return figure(f"{key}.worst", "Worst if uneven", value, work, caution=LOADS, note=note)


def group_left_figure(
    group: Group, whole: Whole, key: str, system: System, *, is_sure: bool
) -> Figure:
    """What a beam, a zone or the roof has left; at most, where something on it is not known."""
    light, heavy = whole.lightest.group(group.key), whole.heaviest.group(group.key)
    work = worked(
        left_on_points,
        inputs=[Input("May carry", as_written(group.ruled.limit))],
        steps=both_readings(
            left_sums(light, whole.lightest), left_sums(heavy, whole.heaviest), whole
        ),
        equation="left = limit − carried",
        lines=(group.ruled.line, *whole.lines_under(group)),
    )
    most_kg = group_left_kg(light, whole.lightest)
    least_kg = group_left_kg(heavy, whole.heaviest) if is_sure else None
    value = between(least_kg, most_kg, system)
    if value is None:
        return missing(f"{key}.left", "Left", work, ("a limit",), caution=LOADS)
    note = uneven_note(whole, light)
    return figure(f"{key}.left", "Left", value, work, caution=LOADS, note=note)


def group_left_kg(group: Group, whole: Whole) -> float | None:
    """What a limit of several points leaves in a reading, None where there is none. [kg]"""
    limit_kg = group.ruled.kg
    return None if limit_kg is None else limit_kg - counts_kg(group, at_worst=whole.at_worst)


def sum_steps(group: Group) -> tuple[str, ...]:
    """The sum of what the points of a beam, a zone or the roof carry."""
    loaded = [(point.name, point.down_kg) for point in group.points if point.down_kg]
    loaded += [(each.what, each.kg) for each in group.standing if each.kg]
    if not loaded:
        return ("Nothing hangs there.",)
    terms = " + ".join(f"{name} {kg:.1f}" for name, kg in loaded)
    return (f"{terms} = {group.kg:.1f} kg",)


def left_sums(group: Group, whole: Whole) -> tuple[str, ...]:
    """The limit of a beam, a zone or the roof less what counts against it."""
    left_kg = group_left_kg(group, whole)
    if left_kg is None or group.ruled.kg is None:
        return ()
    kg = counts_kg(group, at_worst=whole.at_worst)
    parts = group.counted.worst_steps if whole.at_worst else group.counted.steps
    is_plain = not counts_more(group) and not whole.at_worst
    last = f"{group.ruled.kg:,.0f} kg − {kg:,.1f} kg = {left_kg:,.1f} kg"
    return (last,) if is_plain else (*parts, last)


def full_figures(whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """How many points can be at their full rating at once, and the sum of ratings that misleads."""
    full = whole.lightest.full
    usable = [point for point in whole.points if point.usable]
    inputs = [Input("Points in service with a rating", str(len(usable)))]
    if full is None:
        work = worked(full_points, inputs=inputs)
        lacking = ("points with a rating",)
        yield missing(f"{key}.full-at-once", "Full at once", work, lacking, caution=LOADS)
        return
    steps = (
        f"One such choice: {', '.join(full.names) or 'none'}.",
        f"They carry {full.load_kg:,.0f} kg together; all others keep what they carry.",
        (
            f"The sum of all ratings is {full.sum_of_ratings_kg:,.0f} kg; the roof is not made for"
            " that."
        ),
    )
    proof = "Proven: no larger choice exists." if full.proven else "The search met its bound."
    work = worked(full_points, inputs=inputs, steps=steps, leaves_out=proof)
    yield figure(
        f"{key}.full-at-once",
        "Full at once",
        full_value(whole, full),
        work,
        caution=LOADS,
        note="the house's own hangs staying up",
    )
    note = f"not the limit of {ROOF}"
    value = sum_value(whole, system)
    yield figure(f"{key}.sum", "Sum of all ratings", value, work, caution=LOADS, note=note)


def full_value(whole: Whole, full: FullPoints) -> Value:
    """
    How many points can be full at once, least and most. A point without a known rating may be one
    of them; at least is told only where all limits and loads are known.
    """
    heavy, of = whole.heaviest, f"of {len(whole.points)} points"
    if any(isinstance(point.rating.limit, Between) for point in whole.points):
        most = sum(not point.is_out for point in whole.points)
        return Value(f"at most {most} {of}", most=float(most))
    unrated = sum(point.rating.kg is None and not point.is_out for point in heavy.points)
    unweighed = sum(point.usable and point.kg is None for point in whole.lightest.points)
    most = full.at_most + unrated + unweighed
    if heavy.full is None or not all(heavy.is_sure(point) for point in heavy.points):
        return Value(f"at most {most} {of}", most=float(most))
    least = len(heavy.full.names)
    if least == most:
        return Value(f"{least} {of}", number=float(least))
    return Value(f"{least} to {most} {of}", least=float(least), most=float(most))


def sum_value(whole: Whole, system: System) -> Value:
    """The sum of all ratings; at least, where one is not known."""
    light, heavy = rated_kg(whole.lightest), rated_kg(whole.heaviest)
    unrated = any(point.rating.kg is None for point in whole.heaviest.points if not point.is_out)
    value = between(heavy, None if unrated else light, system)
    return mass(heavy, system) if value is None else value


def rated_kg(whole: Whole) -> float:
    """The ratings of all points that are in service, together. [kg]"""
    return fsum(point.rating.kg or 0.0 for point in whole.points if point.usable)
