"""
What the house should know about its steel: limits passed or nearly, rules broken, ratings that
mislead.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations
from math import fsum

from builder.departments.rigging.bridles.findings import bridle_findings
from builder.departments.rigging.hangs.findings import hang_findings
from builder.departments.rigging.steel.figures import in_words
from builder.departments.rigging.steel.limits import beam_rules, lowest, spacing_m
from builder.departments.rigging.steel.totals import OUT, Group, OnPoint, Whole
from builder.departments.rigging.stock_and_wind import hoists_used, truss_used_m
from builder.pack import Finding, Level, Place
from builder.reading.absent import listed
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System, shown
from builder.reading.quantities import Length
from builder.reading.references import spelling
from builder.stating import place

NEAR = 0.9
"""From this share of a limit on, a load is told as near it."""
ROUNDING_KG = 1e-6


LIMITS_PASSED = ("limit-passed", "limit-near")


def findings(whole: Whole, system: System) -> Iterator[Finding]:
    """
    All findings, at the heaviest that weights may be and the lowest that limits may be. What is
    over a limit only then says so.
    """
    if whole.heavy is None:
        yield from findings_of(whole, system)
        return
    light = {
        (finding.code, finding.subject): finding
        for finding in of_limits(whole.lightest, system)
        if finding.code in LIMITS_PASSED
    }
    for finding in findings_of(whole.heaviest, system):
        key = (finding.code, finding.subject)
        is_sure = finding.code not in LIMITS_PASSED or light.pop(key, None) is not None
        sentence = finding.sentence if is_sure else f"At the heaviest: {finding.sentence}"
        yield replace(finding, sentence=sentence)
    for finding in light.values():
        yield replace(finding, sentence=f"At the lightest: {finding.sentence}")


def findings_of(whole: Whole, system: System) -> Iterator[Finding]:
    """The findings on one reading: points first, then beams, zones, roof, hangs and the rest."""
    yield from of_limits(whole, system)
    yield from too_near(whole, system)
    yield from hang_findings(whole, system)
    yield from bridle_findings(whole, system)
    yield from ratings_over_roof(whole, system)
    yield from limits_twice(whole)
    yield from stock_short(whole, system)
    for load in whole.strangers:
        sentence = (
            f"{load.what}, told by {load.department}, hangs on {load.hang}, which is no hang here."
            " Its weight is in no figure."
        )
        yield Finding(Level.CAUTION, "load-without-hang", sentence, "rigging.roof")


def of_limits(whole: Whole, system: System) -> Iterator[Finding]:
    """What points, beams, zones and the roof carry beside their limits."""
    for point in whole.points:
        yield from of_point(point, system)
    for group in whole.groups:
        yield from of_group(group, whole, system)


def of_point(point: OnPoint, system: System) -> Iterator[Finding]:
    """A point over its limit or near it, and a point that should carry nothing."""
    subject, record = f"rigging.point.{spelling(point.name)}", point.place.point
    where = place(record.where("name"))
    if point.hangs and point.is_out:
        beam = point.place.beam.name
        out = "" if record.condition == OUT else f"on {beam}, which is "
        sentence = f"{point.name} is {out}out of service, and {', '.join(point.hangs)} hangs on it."
        yield Finding(Level.DANGER, "point-out-of-service", sentence, subject, where)
    if point.hangs and point.rating.kg is None:
        sentence = (
            f"{', '.join(point.hangs)} hangs on {point.name}, and what {point.name} may carry is"
            " not known."
        )
        yield Finding(Level.CAUTION, "point-rating-unknown", sentence, subject, where)
    yield from against(
        point.kg,
        point.rating.kg,
        f"{point.name} carries",
        f" ({', '.join(point.hangs)}, hoist counted)",
        subject,
        where,
        system,
    )


def against(
    kg: float | None,
    limit_kg: float | None,
    carries: str,
    what: str,
    subject: str,
    where: Place | None,
    system: System,
) -> Iterator[Finding]:
    """
    A load over its limit is a danger, one near it a caution, one at nine tenths or below nothing.
    """
    if kg is None or limit_kg is None:
        return
    said = f"{carries} {in_words(kg, system)} of {in_words(limit_kg, system)}{what}"
    if kg > limit_kg + ROUNDING_KG:
        yield Finding(
            Level.DANGER,
            "limit-passed",
            f"{said}: {in_words(kg - limit_kg, system)} too much.",
            subject,
            where,
        )
    elif kg > NEAR * limit_kg + ROUNDING_KG:
        yield Finding(
            Level.CAUTION,
            "limit-near",
            f"{said}: {in_words(limit_kg - kg, system)} left.",
            subject,
            where,
        )


def of_group(group: Group, whole: Whole, system: System) -> Iterator[Finding]:
    """A beam, a zone or the roof over its limit or near it."""
    rigging = whole.rigging
    if group.kind == "roof":
        subject, where, name = "rigging.roof", rigging.general.where("whole_roof"), "The whole roof"
    else:
        records = rigging.beams if group.kind == "beam" else rigging.told_zones
        record = next(record for record in records if record.name == group.name)
        subject, where, name = (
            f"rigging.{group.kind}.{spelling(group.name)}",
            record.where("name"),
            f"{group.kind.capitalize()} {group.name}",
        )
        name = group.name if group.kind == "zone" else name
    yield from against(
        group.kg, group.ruled.kg, f"{name} carries", "", subject, place(where), system
    )


def too_near(whole: Whole, system: System) -> Iterator[Finding]:
    """Two loaded points on one beam nearer than the house's spacing."""
    least_m = spacing_m(whole.rigging.general)
    loaded = [point for point in whole.points if point.hangs]
    for first, second in combinations(loaded, 2):
        apart_m = apart_along_m(first, second)
        if apart_m is not None and apart_m < least_m - 1e-9:
            apart, least = (
                shown(Length, apart_m, 2, system)[0],
                shown(Length, least_m, 2, system)[0],
            )
            sentence = (
                f"{first.name} and {second.name} both carry a load, {apart} apart on beam"
                f" {first.place.beam.name}. The house wants {least}."
            )
            yield Finding(
                Level.CAUTION,
                "spacing-too-small",
                sentence,
                f"rigging.point.{spelling(second.name)}",
                place(second.place.point.where("name")),
            )


def apart_along_m(first: OnPoint, second: OnPoint) -> float | None:
    """How far two points of one beam are apart along it; None where nobody knows, or on two. [m]"""
    one_m, other_m = first.place.along_m, second.place.along_m
    if first.place.beam is not second.place.beam or one_m is None or other_m is None:
        return None
    return abs(one_m - other_m)


def limits_twice(whole: Whole) -> Iterator[Finding]:
    """A beam for which two exceptions write limits that differ: both are told, the lower counts."""
    for beam in whole.rigging.beams:
        rules = beam_rules(beam, whole.rigging)
        said = list(dict.fromkeys(as_written(ruled.limit) for ruled in rules))
        if len(said) > 1:
            sentence = (
                f"Beam {beam.name} has {len(said)} limits: {' and '.join(said)}."
                f" {as_written(lowest(rules).limit)} is counted, the one that promises least."
            )
            subject = f"rigging.beam.{spelling(beam.name)}"
            where = place(rules[-1].line.where("each_beam"))
            yield Finding(Level.CAUTION, "limits-differ", sentence, subject, where)


def ratings_over_roof(whole: Whole, system: System) -> Iterator[Finding]:
    """
    Ratings of points or beams that add up to more than the roof: a sum of them is no capacity.
    """
    roof, beams = (
        whole.groups[-1],
        [
            group.ruled.kg
            for group in whole.groups
            if group.kind == "beam" and group.ruled.kg is not None
        ],
    )
    if roof.ruled.kg is not None and fsum(beams) > roof.ruled.kg + ROUNDING_KG:
        sentence = (
            f"The beams' limits add up to {in_words(fsum(beams), system)}, and the whole roof"
            f" carries {in_words(roof.ruled.kg, system)}. Do not add limits up: the roof's own"
            " binds first."
        )
        yield Finding(
            Level.NOTE,
            "ratings-exceed-roof",
            sentence,
            "rigging.roof",
            place(whole.rigging.general.where("whole_roof")),
        )


def stock_short(whole: Whole, system: System) -> Iterator[Finding]:
    """Standing hangs that use more hoists or truss than the house says it has."""
    for hoist in listed(whole.rigging.hoists):
        used, (_, most) = hoists_used(hoist, whole.rigging), ends_of(hoist.count)
        if most is not None and used > most:
            there = as_written(hoist.count)
            sentence = f"Standing hangs use {used} {hoist.name}, and there are {there}."
            yield Finding(
                Level.CAUTION,
                "hoists-short",
                sentence,
                f"rigging.hoist.{spelling(hoist.name)}",
                place(hoist.where("count")),
            )
    for truss in listed(whole.rigging.trusses):
        used_m = truss_used_m(truss, whole)
        if isinstance(truss.in_all, Length) and used_m > truss.in_all.m + 0.01:
            sentence = (
                f"Standing hangs use {shown(Length, used_m, 1, system)[0]} of {truss.name}, and"
                f" there are {truss.in_all.text}."
            )
            yield Finding(
                Level.CAUTION,
                "truss-short",
                sentence,
                f"rigging.truss.{spelling(truss.name)}",
                place(truss.where("in_all")),
            )
