"""
What the house should know about what hangs: loads off the end, slack supports, spans beyond the
table, hoists over their rating.
"""

from collections.abc import Iterator
from dataclasses import replace
from math import hypot

from builder.departments.rigging.hangs.bodies import Body, Shares, off_centre_m
from builder.departments.rigging.hangs.figures import (
    in_table,
    on_span,
    spans_of,
    table_of,
    truss_of,
)
from builder.departments.rigging.hangs.trims import highest_of
from builder.departments.rigging.steel.figures import in_words
from builder.departments.rigging.steel.totals import Whole, factor_of
from builder.formulas.loads import dynamic_load_kg
from builder.formulas.trim import allowable_load_kg
from builder.pack import Finding, Level
from builder.reading.measures import System, shown
from builder.reading.otherwise import otherwise
from builder.reading.quantities import Height, Length, Mass
from builder.reading.references import spelling
from builder.stating import place

ROUNDING_KG = 1e-6
OFF_LINE_M = 0.3
"""
A point farther than this from the line of its hang pulls it sideways: more than a truss is wide.
"""


def hang_findings(whole: Whole, system: System) -> Iterator[Finding]:
    """The findings of every hang."""
    for body, part in zip(whole.bodies, whole.shares, strict=True):
        yield from loads_off(body, system)
        yield from supports_off(body, system)
        yield from standing(body, part, system)
        yield from hoists_over(body, part, whole, system)
        yield from against_table(body, whole, system)
        yield from trim_too_high(body, whole, system)
        yield from if_uneven(body, part, whole, system)


def told(level: Level, code: str, sentence: str, body: Body, key: str = "name") -> Finding:
    """A finding on a hang."""
    return Finding(
        level,
        code,
        sentence,
        f"rigging.hang.{spelling(body.hang.name)}",
        place(body.hang.where(key)),
    )


def metres(length_m: float, system: System) -> str:
    """A length as a sentence says it."""
    return shown(Length, length_m, 2, system)[0]


def loads_off(body: Body, system: System) -> Iterator[Finding]:
    """Loads beyond the end of what carries them, or beside it."""
    for each in body.hung:
        if each.off_m > 0:
            long = metres(body.length_m or 0.0, system)
            sentence = (
                f"{each.what} is {metres(each.off_m, system)} off {body.hang.name}, which is {long}"
                " long. It is counted at the nearest place on it: mend its place."
            )
            yield told(Level.DANGER, "load-off-hang", sentence, body, "loads")


def supports_off(body: Body, system: System) -> Iterator[Finding]:
    """Points that are not above the hang they carry."""
    is_one_place = len(body.supports_m) == 1 and body.length_m == 0
    if is_one_place or body.places_lack:
        return
    for support, along_m, off_m in zip(
        body.supports, body.supports_m, body.off_line_m, strict=True
    ):
        beyond_m = max(-along_m, along_m - (body.length_m or 0.0), 0.0)
        away_m = hypot(beyond_m, off_m)
        if away_m > OFF_LINE_M:
            sentence = (
                f"{support.point} is {metres(away_m, system)} off {body.hang.name} seen from above,"
                " so it would pull at an angle."
            )
            yield told(Level.CAUTION, "support-off-hang", sentence, body, "supports")


def standing(body: Body, part: Shares, system: System) -> Iterator[Finding]:
    """Supports that carry nothing, hangs that tip, and a lone point beside the centre of mass."""
    if part.why and (body.total_kg > 0 or body.unweighed):
        level = Level.DANGER if "centre of mass" in part.why else Level.CAUTION
        sentence = (
            f"What the points of {body.hang.name} carry cannot be worked out: it needs {part.why}."
        )
        yield told(level, "hang-not-held", sentence, body, "supports")
    if not part.why and body.total_kg > 0:
        for index in part.slack:
            push = (
                f"It would have to push with {in_words(-part.as_beam_kg[index], system)}, and "
                if part.as_beam_kg[index] < 0
                else ""
            )
            name = body.supports[index].point
            end = "a hoist cannot push; the others carry all." if push else "the others carry all."
            sentence = f"{name} carries nothing of {body.hang.name}. {push}{end}"
            yield told(Level.CAUTION, "support-slack", sentence, body, "supports")
    if (off_m := off_centre_m(body)) > 0:
        sentence = (
            f"{body.hang.name} hangs from one point, {metres(off_m, system)} beside its centre of"
            " mass: it will swing or tilt."
        )
        yield told(Level.CAUTION, "support-off-centre", sentence, body, "supports")


def hoists_over(body: Body, part: Shares, whole: Whole, system: System) -> Iterator[Finding]:
    """
    A hoist that carries more than it is rated for, the house's factor for starting and stopping
    included.

    Its own weight hangs above its hook or moves with the load; it is not counted here.
    """
    factor = factor_of(whole.rigging)
    for support, hoist, share in zip(body.supports, body.hoists, part.kg, strict=True):
        if not hoist or share is None:
            continue
        load_kg = dynamic_load_kg(load_kg=max(share, 0.0), dynamic_factor=factor)
        if isinstance(hoist.rating, Mass) and load_kg > hoist.rating.kg + ROUNDING_KG:
            carried = f"{in_words(load_kg, system)} of {body.hang.name}{factor_words(factor)}"
            sentence = (
                f"The {hoist.name} at {support.point} carries {carried}, and is rated for"
                f" {hoist.rating.text}."
            )
            yield told(Level.DANGER, "hoist-over-rating", sentence, body, "supports")


def factor_words(factor: float) -> str:
    """Says that a load holds the house's factor, where it does."""
    return f", with the house's factor {factor:g}" if factor > 1 else ""


def against_table(body: Body, whole: Whole, system: System) -> Iterator[Finding]:
    """Spans beyond the maker's table, and loads beyond what it allows."""
    truss = truss_of(body, whole)
    if truss is None:
        return
    for from_m, to_m in spans_of(body):
        span_m, table = to_m - from_m, table_of(truss)
        if not in_table(span_m, table):
            beyond = (
                f"its table ends at {truss.rows[-1].span.text}"
                if table and span_m > table[-1][0]
                else "its table has no rows on both sides of that"
            )
            sentence = (
                f"{body.hang.name} spans {metres(span_m, system)} between supports; {truss.name}:"
                f" {beyond}."
            )
            level = Level.CAUTION if table and span_m > table[-1][0] else Level.NOTE
            yield told(level, "span-outside-table", sentence, body, "truss")
            continue
        if any(not each.placed for each in body.hung):
            continue
        factor = factor_of(whole.rigging)
        load_kg = dynamic_load_kg(
            load_kg=on_span(body, from_m, to_m).uniform_kg, dynamic_factor=factor
        )
        allowed_kg = allowable_load_kg(
            span_m=min(max(span_m, table[0][0]), table[-1][0]), table=table
        )
        if load_kg > allowed_kg + ROUNDING_KG:
            counted = f"counted as a uniform load by bending and shear{factor_words(factor)}"
            sentence = (
                f"{body.hang.name} carries {in_words(load_kg, system)} on a span of"
                f" {metres(span_m, system)}, {counted}; the table of {truss.name} allows"
                f" {in_words(allowed_kg, system)}."
            )
            yield told(Level.DANGER, "truss-over-table", sentence, body, "loads")


def trim_too_high(body: Body, whole: Whole, system: System) -> Iterator[Finding]:
    """A stated trim that steel, hoist and truss leave no room for."""
    highest_m, trim = highest_of(body, whole).height_m, body.hang.trim
    if highest_m is None:
        return
    if isinstance(trim, Height) and trim.m > highest_m + 1e-9:
        question = lower_reading(trim, highest_m)
        sentence = (
            f"{body.hang.name} is said to hang at {trim.text}, and steel, hoist and truss leave"
            f" {metres(highest_m, system)} at most.{question}"
        )
        finding = told(Level.CAUTION, "trim-too-high", sentence, body, "trim")
        yield replace(finding, question=question)
    for each in body.hung:
        if each.top_m is not None and each.top_m > highest_m + 1e-9:
            top, most = metres(each.top_m, system), metres(highest_m, system)
            sentence = (
                f"{each.what} is told to hang with its top at {top}, and {body.hang.name} goes to"
                f" {most} at most."
            )
            yield told(Level.CAUTION, "trim-too-high", sentence, body, "supports")


def lower_reading(trim: Height, highest_m: float) -> str:
    """What a trim above all that hangs it may have been meant as."""
    return otherwise(trim, lambda trim_m: highest_m / 2 <= trim_m <= highest_m)


def if_uneven(body: Body, part: Shares, whole: Whole, system: System) -> Iterator[Finding]:
    """
    Points that are within their limit as long as all hoists pull as planned, and over it when they
    do not.
    """
    at_risk = [
        f"{point.name} ({in_words(point.worst_kg, system)} with {point.worst_why})"
        for support in body.supports
        for point in whole.points
        if point.name.casefold() == support.point.casefold()
        and point.rating.kg is not None
        and point.kg is not None
        and point.worst_kg is not None
        and point.kg <= point.rating.kg + ROUNDING_KG < point.worst_kg
    ]
    if at_risk and part.kg:
        sentence = (
            f"{body.hang.name} keeps these points within their limit only while its hoists share as"
            f" planned: {', '.join(at_risk)}."
        )
        yield told(Level.NOTE, "over-if-uneven", sentence, body, "supports")
