"""
The figures of hangs: weight, reactions, worst cases, trim, and the maker's table of the truss.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from builder.cautions import LOADS
from builder.departments.rigging.description.steel import Truss
from builder.departments.rigging.hangs.bodies import (
    WHAT_IS_ON_IT,
    Body,
    Hung,
    Shares,
    hoist_weight_kg,
)
from builder.departments.rigging.hangs.hand_check import moment_steps
from builder.departments.rigging.steel.figures import between, by_hand, in_words, mass
from builder.departments.rigging.steel.geometry import ends_of_hang
from builder.departments.rigging.steel.limits import same
from builder.departments.rigging.steel.totals import Whole
from builder.formulas.beams import LEAST_SPACING_M
from builder.formulas.loads import Load, PointLoad, total_load_kg
from builder.formulas.out_of_level import out_of_level
from builder.formulas.slack import each_slack, held
from builder.formulas.spans import AsUniform, as_uniform
from builder.formulas.statics import reactions, two_support_reactions
from builder.formulas.trim import allowable_load_kg
from builder.pack import Figure, Input, Value, Working, not_less
from builder.reading.absent import Absent, is_unknown, listed
from builder.reading.measures import System, shown
from builder.reading.quantities import Length, Mass
from builder.working import figure, missing, worked

BEAM_LEAVES_OUT = (
    "Straight beam of one section on level, unyielding supports. Shear in the truss, play at its"
    " joints and stretch of chain are left out; they even the shares out, so that the outer"
    " supports can carry more than shown and the inner ones less."
)


def load_words(load: Load, system: System) -> str:
    """A load with its place."""
    if isinstance(load, PointLoad):
        return f"{exact(load.load_kg, system)} at {metres(load.at_m, system)}"
    return (
        f"{exact(load.total_kg, system)} from {metres(load.from_m, system)} to"
        f" {metres(load.to_m, system)}"
    )


NOBODY = "nobody knows who"
"""Who hung something, in words, where that is not known."""


def hung_words(each: Hung, system: System) -> str:
    """What hangs on a hang with its place, as far as that is known."""
    if each.placed:
        return load_words(each.load, system)
    return f"{exact(each.load.total_kg, system)}, nobody knows where along it"


def exact(kg: float, system: System) -> str:
    """A load to a tenth, so that sums can be redone."""
    return shown(Mass, kg, 1, system)[0]


def metres(length_m: float, system: System) -> str:
    """A place along a hang."""
    return shown(Length, length_m, 2, system)[0] if length_m else "0"


def weight_figure(body: Body, whole: Whole, key: str, system: System) -> Figure:
    """All that hangs on the supports, hoists not counted."""
    light, heavy = whole.lightest.body(body.hang.name), whole.heaviest.body(body.hang.name)
    steps = tuple(
        f"{each.what} ({each.by or NOBODY}): {hung_words(each, system)}" for each in body.hung
    )
    work = worked(
        total_load_kg,
        inputs=[Input("Loads", str(len(body.hung)))],
        steps=(*steps, f"Sum: {body.total_kg:,.1f} kg"),
        leaves_out="Hoists and chains: they are counted on the points.",
    )
    if light.total_kg <= 0:
        lacking = body.lacking or "a weight of what hangs"
        return missing(f"{key}.total", "All on its points", work, (lacking,), caution=LOADS)
    most_kg = None if heavy.unweighed or whole.adrift else heavy.total_kg
    value = between(light.total_kg, most_kg, system) or mass(light.total_kg, system)
    return figure(f"{key}.total", "All on its points", value, work, caution=LOADS)


def by_whom(body: Body) -> dict[str, float]:
    """The weight on a hang by who hung it, in the order of the loads. [kg]"""
    found: dict[str, float] = {}
    for each in body.hung:
        found[each.by] = found.get(each.by, 0.0) + each.load.total_kg
    return found


def perhaps_more(value: Value, whole: Whole) -> Value:
    """A load; at least so much where something hangs here and nobody says on what."""
    return not_less(value) if whole.adrift else value


def support_figures(
    body: Body, part: Shares, index: int, key: str, whole: Whole, system: System
) -> Iterator[Figure]:
    """
    One support: place along the hang, its share, the worst cases, and what the point above gets.
    """
    yield along_figure(body, index, key, system)
    work = share_working(body, part, system)
    share = part.kg[index]
    if share is None:
        yield missing(f"{key}.share", "Share", work, (part.why,), caution=LOADS)
        return
    slack = "slack: it carries nothing" if index in part.slack else ""
    carried = perhaps_more(mass(share, system), whole)
    yield figure(f"{key}.share", "Share", carried, work, caution=LOADS, note=slack)
    hoist = hoist_weight_kg(body, index)
    if hoist is None:
        lacking = (f"the weight of {name_of_hoist(body, index)}",)
        unknown = worked(total_load_kg, inputs=[], equation="share + hoist with chain")
        yield missing(f"{key}.with-hoist", "With hoist", unknown, lacking, caution=LOADS)
        yield from worst_figures(body, part, index, key, system)
        return
    total = worked(
        total_load_kg,
        inputs=[Input("Hoist with chain", f"{hoist:g} kg")],
        steps=(f"{share:.1f} kg + {hoist:g} kg = {share + hoist:.1f} kg",),
        equation="share + hoist with chain",
    )
    together = perhaps_more(mass(share + hoist, system), whole)
    yield figure(f"{key}.with-hoist", "With hoist", together, total, caution=LOADS)
    yield from worst_figures(body, part, index, key, system)


def along_figure(body: Body, index: int, key: str, system: System) -> Figure:
    """How far along a hang a support is, or what must be known for that."""
    name, label = f"{key}.along", "Along the hang"
    if body.places_lack:
        work = by_hand(ALONG, "plane geometry", inputs=[])
        return missing(name, label, work, (body.places_lack,), caution=LOADS)
    text, also = shown(Length, max(body.supports_m[index], 0.0), 2, system)
    along = Value(text, also, body.supports_m[index], "m")
    return figure(name, label, along, along_working(body, index), caution=LOADS)


ALONG = "a = (Δacross × hang's across + Δdepth × hang's depth) / length"


def name_of_hoist(body: Body, index: int) -> str:
    """What the hoist of a support is called."""
    hoist = body.hoists[index]
    return f"hoist {hoist.name}" if hoist else "the hoist"


def along_working(body: Body, index: int) -> Working:
    """How far along a hang a point is."""
    ends, at = ends_of_hang(body.hang), body.points_at[index]
    if ends is None or at is None or body.length_m is None:
        raise ValueError(f"places of hang {body.hang.name!r} must be known, got none")
    (x1, y1), (x2, y2) = ends
    x, y = at
    inputs = [
        Input("First end, across and depth", f"{x1:.2f} m and {y1:.2f} m"),
        Input("Last end", f"{x2:.2f} m and {y2:.2f} m"),
    ]
    inputs.append(Input(f"Point {body.supports[index].point}", f"{x:.2f} m and {y:.2f} m"))
    if body.length_m == 0:
        return by_hand("one place", "plane geometry", inputs=inputs)
    dx, dy, length_m = x2 - x1, y2 - y1, body.length_m
    step = (
        f"a = (({x - x1:.2f}) × ({dx:.2f}) + ({y - y1:.2f}) × ({dy:.2f})) / {length_m:.2f} ="
        f" {body.supports_m[index]:.2f} m"
    )
    return by_hand(ALONG, "plane geometry", inputs=inputs, steps=(step,))


def share_working(body: Body, part: Shares, system: System) -> Working:
    """How the shares of a hang come about."""
    loads = [Input(each.what, hung_words(each, system)) for each in body.hung]
    at = [f" at {metres(at_m, system)}" for at_m in body.supports_m] or [""] * len(body.supports)
    places = Input(
        "Supports",
        ", ".join(
            f"{support.point}{where}" for support, where in zip(body.supports, at, strict=True)
        ),
    )
    steps = []
    if all(share is not None for share in part.kg):
        listed = " + ".join(f"{share:.1f}" for share in part.kg if share is not None)
        steps = [
            "Places count from the hang's first end.",
            f"Shares: {listed} = {body.total_kg:.1f} kg, the whole load.",
        ]
    if len(body.supports) == 1:
        return worked(
            total_load_kg, inputs=[*loads, places], steps=steps, equation="one support carries all"
        )
    if len(body.supports) == 2:
        return worked(two_support_reactions, inputs=[*loads, places], steps=steps)
    if part.slack:
        pushed = ", ".join(
            f"{body.supports[j].point} {part.as_beam_kg[j]:.1f} kg" for j in part.slack
        )
        steps.append(
            f"If supports could push: {pushed}. A hoist cannot push, so it was let go and the beam"
            " solved again."
        )
        return worked(
            reactions, held, inputs=[*loads, places], steps=steps, leaves_out=BEAM_LEAVES_OUT
        )
    known = [share for share in part.kg if share is not None]
    steps += list(moment_steps(body, known)) if len(known) == len(part.kg) else []
    even = (
        f"A plain division by {len(part.kg)} would say {body.total_kg / len(part.kg):.1f} kg each,"
        " which hides what the middle carries."
    )
    return worked(
        reactions, inputs=[*loads, places], steps=[*steps, even], leaves_out=BEAM_LEAVES_OUT
    )


def worst_figures(
    body: Body, part: Shares, index: int, key: str, system: System
) -> Iterator[Figure]:
    """The most a support carries with another slack, and the range out of level."""
    if (slack_kg := part.worst_slack_kg(index)) is not None:
        steps = tuple(slack_steps(body, part, index))
        work = worked(
            each_slack,
            inputs=[Input("Weight in all", f"{body.total_kg:.1f} kg")],
            steps=steps,
            leaves_out=BEAM_LEAVES_OUT,
        )
        yield figure(
            f"{key}.one-slack", "One hoist slack", mass(slack_kg, system), work, caution=LOADS
        )
    if part.level_lacks:
        work = worked(out_of_level, inputs=[], leaves_out=BEAM_LEAVES_OUT)
        lacking = (part.level_lacks,)
        yield missing(f"{key}.uneven", "Out of level", work, lacking, caution=LOADS)
    if part.level:
        found = part.level[index]
        levels = ", ".join(f"{at_m * 1000:+.0f} mm" for at_m in found.settlements_m)
        stated = body.hang.stiffness
        stiffness = "" if isinstance(stated, Absent) else stated.text
        steps = (
            f"Most with the supports this much low, in order: {levels}.",
            "Proven: no other heights give more." if found.proven else "Encloses the true range.",
        )
        work = worked(
            out_of_level,
            inputs=[Input("Bending stiffness EI", stiffness)],
            steps=steps,
            leaves_out=BEAM_LEAVES_OUT,
        )
        text = f"{in_words(found.least_kg, system)} to {in_words(found.most_kg, system)}"
        yield figure(
            f"{key}.uneven",
            "Out of level",
            Value(text, number=found.most_kg, unit="kg"),
            work,
            caution=LOADS,
        )


def slack_steps(body: Body, part: Shares, index: int) -> Iterator[str]:
    """What a support carries with each other one slack in turn."""
    for j, case in enumerate(part.without):
        if j != index:
            name = body.supports[j].point
            yield (
                f"Without {name}: the hang tips"
                if case.stability == "tips"
                else f"Without {name}: {case.reactions_kg[index]:.1f} kg"
            )


def truss_of(body: Body, whole: Whole) -> Truss | None:
    """The truss model of a hang."""
    return next(
        (
            truss
            for truss in listed(whole.rigging.trusses)
            if body.hang.truss and same(truss.name, body.hang.truss)
        ),
        None,
    )


def spans_of(body: Body) -> list[tuple[float, float]]:
    """The stretches between neighbouring supports; two supports at one place have none."""
    ordered = pairwise(sorted(body.supports_m))
    return [(first_m, last_m) for first_m, last_m in ordered if last_m - first_m >= LEAST_SPACING_M]


def on_span(body: Body, from_m: float, to_m: float) -> AsUniform:
    """
    What hangs on a span as a uniform load, by its bending and its shear.

    The truss itself not counted: the maker's table has that taken off.
    """
    loads = [each.load for each in body.hung if not each.own_weight]
    return as_uniform(loads, from_m=from_m, to_m=to_m)


def table_of(truss: Truss) -> tuple[tuple[float, float], ...]:
    """The maker's table as numbers."""
    return tuple((row.span.m, row.uniform.kg) for row in truss.rows)


def in_table(span_m: float, table: Sequence[tuple[float, float]]) -> bool:
    """True where a table is in order and has rows on both sides of a span."""
    spans, loads = [span for span, _ in table], [load for _, load in table]
    rising = all(first < second for first, second in pairwise(spans)) and all(
        first >= second for first, second in pairwise(loads)
    )
    return bool(table) and rising and spans[0] - 1e-9 <= span_m <= spans[-1] + 1e-9


def unknown_on(body: Body) -> list[str]:
    """What must be known of the loads on a body before a span can be told."""
    untold = [WHAT_IS_ON_IT] if is_unknown(body.hang.loads) else []
    weights = [f"the weight of {each.what}" for each in body.hung if each.open]
    places = [f"where along it {each.what} hangs" for each in body.hung if not each.placed]
    return [*untold, *weights, *places]


def span_steps(
    found: AsUniform,
    from_m: float,
    to_m: float,
    table: Sequence[tuple[float, float]],
    *,
    allowed_kg: float,
) -> Iterator[str]:
    """What a span bends and shears, and what the table allows between its rows."""
    yield (
        f"From {from_m:.2f} m to {to_m:.2f} m, as a beam on two supports; the truss itself is in"
        " the table."
    )
    span_m, at_m = to_m - from_m, from_m + found.at_m
    yield (
        f"Bending: most {found.moment_kgm:,.1f} kg·m at {at_m:.2f} m, as much as 8 ×"
        f" {found.moment_kgm:,.1f} / {span_m:.2f} = {found.by_moment_kg:,.1f} kg spread evenly."
    )
    yield (
        f"Shear: most {found.shear_kg:,.1f} kg at a support, as much as 2 × {found.shear_kg:,.1f} ="
        f" {found.by_shear_kg:,.1f} kg spread evenly."
    )
    yield f"The larger counts: {found.uniform_kg:,.1f} kg."
    for (below_m, more_kg), (above_m, less_kg) in pairwise(table):
        if below_m <= span_m <= above_m:
            share = (span_m - below_m) / (above_m - below_m)
            yield (
                f"Table: 1/P = 1/{more_kg:,.0f} + (1/{less_kg:,.0f} − 1/{more_kg:,.0f}) ×"
                f" {share:.3f}, P = {allowed_kg:,.0f} kg"
            )
            return


def span_figures(body: Body, truss: Truss, key: str, system: System) -> Iterator[Figure]:
    """What each span carries against the maker's table."""
    if body.places_lack:
        work = worked(allowable_load_kg, inputs=[])
        for number in range(1, len(body.supports)):
            name, lacking = f"{key}.span-{number}", (body.places_lack,)
            yield missing(name, f"Span {number}", work, lacking, caution=LOADS)
    for number, (from_m, to_m) in enumerate(spans_of(body), 1):
        yield span_figure(f"{key}.span-{number}", body, truss, (number, from_m, to_m), system)


SPAN_LEAVES_OUT = (
    "The table is for one span. Bending over the inner supports, overhangs and shear at joints are"
    " the maker's to check, and so is a load between the nodes of the truss."
)


def span_figure(
    key: str, body: Body, truss: Truss, span: tuple[int, float, float], system: System
) -> Figure:
    """What one span, by its number and its two ends, carries against the maker's table."""
    number, from_m, to_m = span
    table, span_m = table_of(truss), to_m - from_m
    label = f"Span {number}, {shown(Length, span_m, 2, system)[0]}"
    inputs = [Input(f"{truss.name}, span {row.span.text}", row.uniform.text) for row in truss.rows]
    if unknown := unknown_on(body):
        return missing(key, label, worked(allowable_load_kg, inputs=inputs), unknown, caution=LOADS)
    if not in_table(span_m, table):
        work = worked(allowable_load_kg, inputs=inputs, leaves_out=SPAN_LEAVES_OUT)
        lacking = ("rows of the maker's table on both sides of this span",)
        return missing(key, label, work, lacking, caution=LOADS)
    found = on_span(body, from_m, to_m)
    allowed_kg = allowable_load_kg(span_m=min(max(span_m, table[0][0]), table[-1][0]), table=table)
    work = worked(
        as_uniform,
        allowable_load_kg,
        inputs=inputs,
        steps=tuple(span_steps(found, from_m, to_m, table, allowed_kg=allowed_kg)),
        leaves_out=SPAN_LEAVES_OUT,
    )
    load_kg = found.uniform_kg
    text = f"{in_words(load_kg, system)} of {in_words(allowed_kg, system)}"
    value, note = Value(text, number=load_kg, unit="kg"), f"{load_kg / allowed_kg * 100:.0f} %"
    return figure(key, label, value, work, caution=LOADS, note=note)
