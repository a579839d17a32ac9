"""The figures of points, beams, zones and the roof, each with its working."""

from collections.abc import Iterator, Sequence

from builder.cautions import LOADS
from builder.departments.rigging.steel.limits import ROOF, Ruled
from builder.departments.rigging.steel.totals import Group, OnPoint, Whole, factor_of
from builder.formulas.full_at_once import full_points
from builder.formulas.limits import Left, left_on_points
from builder.formulas.loads import total_load_kg
from builder.formulas.sources import COMMON_PRACTICE
from builder.formulas.trim import low_steel_m
from builder.pack import Figure, Input, Reference, Value, Working
from builder.reading.in_part import as_written
from builder.reading.measures import System, shown
from builder.reading.quantities import Length, Mass
from builder.reading.written import Written
from builder.working import figure, missing, weakest_of, worked

NOTHING_KG = 0.005
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
    if point.worst_why:
        yield worst_figure(point, whole, key, system)


def limit_figure(key: str, label: str, ruled: Ruled, system: System) -> Figure:
    """The limit that holds for a thing, and which line of the description says so."""
    limit = ruled.limit
    work = worked(
        left_on_points,
        inputs=[Input("Stated", as_written(limit))],
        equation="the nearest rule that is stated",
        steps=(f"From {ruled.rule}.",),
        lines=(ruled.line,),
    )
    if isinstance(limit, Mass):
        return figure(key, label, mass(limit.kg, system), work, caution=LOADS)
    return missing(key, label, work, (f"a limit: {as_written(limit)}",), caution=LOADS)


def carried_figure(point: OnPoint, whole: Whole, key: str, system: System) -> Figure:
    """What hangs on a point when a show arrives."""
    factor = factor_of(whole.rigging)
    inputs = [Input("Hung there", ", ".join(point.hangs) or "nothing")]
    if whole.rigging.dynamic_factor:
        inputs.append(
            Input(
                "Factor for starting and stopping",
                f"{factor:g}, from {whole.rigging.dynamic_factor.source}",
            )
        )
    steps = point.steps or ("Nothing hangs there.",)
    work = worked(
        total_load_kg,
        inputs=inputs,
        steps=steps,
        leaves_out=LEFT_OUT,
        equation="carried = (share of each hang + hoist) × factor",
        lines=whole.lines_on(point),
    )
    if point.kg is None:
        return missing(f"{key}.carried", "Carried", work, reasons(point, whole), caution=LOADS)
    return figure(
        f"{key}.carried",
        "Carried",
        mass(point.kg, system),
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
    return tuple(dict.fromkeys(why for why in (*hangs, *bridles) if why))


def left_figures(point: OnPoint, whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """What a point has left while all others stay as they are, and which limit sets that."""
    left = whole.left.get(point.name)
    steps = tuple(left_steps(point, whole))
    work = worked(
        left_on_points,
        inputs=[
            Input("May carry", as_written(point.rating.limit)),
            Input("Carried", "not known" if point.kg is None else f"{point.kg:.1f} kg"),
        ],
        steps=steps,
        leaves_out=(
            "Not additive: what one point takes, its neighbours lose. A spacing rule may close a"
            " point."
        ),
        lines=whole.lines_over(point),
    )
    if left is None:
        out = point.place.point.condition == "out of service"
        lacking = (
            "a point in service"
            if out
            else "a limit of the point"
            if point.rating.kg is None
            else "what it carries"
            if point.place.on_beam
            else "a place on its beam"
        )
        yield missing(f"{key}.left", "Left", work, (lacking,), caution=LOADS)
        return
    binding = binds(left)
    yield figure(
        f"{key}.left", "Left", mass(left.left_kg, system), work, caution=LOADS, note=binding
    )
    yield figure(f"{key}.binds", "Bound by", Value(binding), work, caution=LOADS)


def left_steps(point: OnPoint, whole: Whole) -> Iterator[str]:
    """The room under each limit that a point hangs below."""
    if point.rating.kg is not None and point.kg is not None:
        yield (
            f"Point: {point.rating.kg:,.0f} kg − {point.kg:,.1f} kg ="
            f" {point.rating.kg - point.kg:,.1f} kg"
        )
    for group in whole.groups:
        if point in group.points and group.ruled.kg is not None:
            yield (
                f"{group.key.capitalize()}: {group.ruled.kg:,.0f} kg − {group.kg:,.1f} kg ="
                f" {group.ruled.kg - group.kg:,.1f} kg"
            )


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
    )
    at = point.place.point.across or point.place.point.depth
    inputs = [Input("At", at.text if at else "?"), Input(f"Heights of {beam.name}", heights)]
    lines = (beam, *beam.low_steel)
    if point.place.steel_m is None:
        return missing(
            f"{key}.low-steel",
            "Low steel",
            worked(low_steel_m, inputs=inputs, lines=lines),
            ("heights of the beam that reach this far",),
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


def worst_figure(point: OnPoint, whole: Whole, key: str, system: System) -> Figure:
    """
    The most a point carries when hoists are not as level as wanted, with its hoist and all else
    that hangs there.
    """
    work = worked(
        total_load_kg,
        inputs=[
            Input(
                "Worst of",
                "each other hoist slack in turn; all hoists out of level within the house's"
                " tolerance",
            )
        ],
        steps=point.worst_steps,
        equation="worst = (most of each hang over its cases + hoist + legs of bridles) × factor",
        leaves_out="Shear in the truss and play at its joints. See the hang's own workings.",
        lines=whole.lines_on(point),
    )
    if point.worst_kg is None:
        lacking = reasons(point, whole)
        return missing(f"{key}.worst", "Worst if uneven", work, lacking, caution=LOADS)
    return figure(
        f"{key}.worst",
        "Worst if uneven",
        mass(point.worst_kg, system),
        work,
        caution=LOADS,
        note=point.worst_why,
    )


def group_figures(group: Group, whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """What a beam, a zone or the roof may carry, carries, and has left."""
    yield limit_figure(f"{key}.limit", "May carry", group.ruled, system)
    loaded = [point for point in group.points if point.kg]
    steps = (
        (" + ".join(f"{point.name} {point.kg:.1f}" for point in loaded) + f" = {group.kg:.1f} kg",)
        if loaded
        else ("Nothing hangs there.",)
    )
    work = worked(
        total_load_kg,
        inputs=[Input("Points", str(len(group.points)))],
        steps=steps,
        leaves_out=LEFT_OUT,
        lines=whole.lines_under(group),
    )
    lacking = tuple(f"what {name} carries" for name in group.unknown)
    if lacking:
        yield missing(f"{key}.carried", "Carried", work, lacking, caution=LOADS)
        return
    yield figure(f"{key}.carried", "Carried", mass(group.kg, system), work, caution=LOADS)
    if group.ruled.kg is None:
        yield missing(f"{key}.left", "Left", work, ("a limit",), caution=LOADS)
        return
    left = group.ruled.kg - group.kg
    sums = (f"{group.ruled.kg:,.0f} kg − {group.kg:,.1f} kg = {left:,.1f} kg",)
    work = worked(
        left_on_points,
        inputs=[Input("May carry", as_written(group.ruled.limit))],
        steps=sums,
        equation="left = limit − carried",
        lines=(group.ruled.line, *whole.lines_under(group)),
    )
    yield figure(f"{key}.left", "Left", mass(left, system), work, caution=LOADS)


def full_figures(whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """How many points can be at their full rating at once, and the sum of ratings that misleads."""
    full, inputs = (
        whole.full,
        [
            Input(
                "Points in service with a rating",
                str(len([point for point in whole.points if point.usable])),
            )
        ],
    )
    if full is None:
        yield missing(
            f"{key}.full-at-once",
            "Full at once",
            worked(full_points, inputs=inputs),
            ("points with a rating",),
            caution=LOADS,
        )
        return
    count = len(full.names)
    text = (
        f"{count} of {len(whole.points)} points"
        if full.proven
        else f"{count} to {full.at_most} of {len(whole.points)} points"
    )
    steps = (
        f"One such choice: {', '.join(full.names) or 'none'}.",
        f"They carry {full.load_kg:,.0f} kg together; all others keep what they carry.",
        (
            f"The sum of all ratings is {full.sum_of_ratings_kg:,.0f} kg; the roof is not made for"
            " that."
        ),
    )
    work = worked(
        full_points,
        inputs=inputs,
        steps=steps,
        leaves_out=(
            "Proven: no larger choice exists." if full.proven else "The search met its bound."
        ),
    )
    yield figure(
        f"{key}.full-at-once",
        "Full at once",
        Value(text, number=float(count)),
        work,
        caution=LOADS,
        note="the house's own hangs staying up",
    )
    yield figure(
        f"{key}.sum",
        "Sum of all ratings",
        mass(full.sum_of_ratings_kg, system),
        work,
        caution=LOADS,
        note=f"not the limit of {ROOF}",
    )
