"""
What the house should know about bridles: where they are forbidden, too flat, pull too hard or where
a point may not be pulled.
"""

from collections.abc import Iterator

from builder.departments.rigging.bridles.legs import Legs
from builder.departments.rigging.bridles.spots import TOO_FLAT_DEG, spotted
from builder.departments.rigging.bridles.standing import Bridled, forbidden, widest_deg
from builder.departments.rigging.steel.figures import in_words
from builder.departments.rigging.steel.limits import pulled
from builder.departments.rigging.steel.totals import OnPoint, Whole, factor_of
from builder.formulas.loads import dynamic_load_kg
from builder.pack import Finding, Level
from builder.reading.measures import System
from builder.reading.references import spelling
from builder.stating import place

ROUNDING_KG, ROUNDING_DEG = 1e-6, 1e-9


def bridle_findings(whole: Whole, system: System) -> Iterator[Finding]:
    """
    The findings of standing bridles, of points that they share, and of wanted spots that nothing
    makes.
    """
    for each in whole.bridles:
        yield from of_bridle(each, whole, system)
    yield from shared(whole)
    for spot in spotted(whole):
        if not spot.choices and not spot.unplaced:
            sentence = f"No allowed points make the wanted spot {spot.spot.name}: {spot.why}."
            subject = f"rigging.wanted-spot.{spelling(spot.spot.name)}"
            yield Finding(
                Level.CAUTION,
                "spot-without-bridle",
                sentence,
                subject,
                place(spot.spot.where("apex")),
            )


def told(level: Level, code: str, sentence: str, each: Bridled, key: str) -> Finding:
    """A finding on a bridle."""
    return Finding(
        level,
        code,
        sentence,
        f"rigging.bridle.{spelling(each.bridle.name)}",
        place(each.bridle.where(key)),
    )


def apex_key(each: Bridled) -> str:
    """The key that says where the apex is."""
    return "apex" if each.bridle.apex else "leg_lengths"


def of_bridle(each: Bridled, whole: Whole, system: System) -> Iterator[Finding]:
    """A bridle where the house has none, one that cannot be worked out, and what its legs do."""
    name = each.bridle.name
    if why := forbidden(each.anchors, whole.rigging):
        yield told(
            Level.DANGER, "bridle-forbidden", f"{name} is a bridle, and {why}.", each, "legs"
        )
    if each.legs is None:
        yield told(
            Level.CAUTION,
            "bridle-not-worked-out",
            f"{name} needs {each.why}. Its pulls are in no figure.",
            each,
            apex_key(each),
        )
        return
    yield from flat(each, each.legs, whole)
    points = {point.name: point for point in whole.points}
    for index, anchor in enumerate(each.anchors):
        yield from of_leg(each, each.legs, index, points[anchor.point.name], whole, system)


def flat(each: Bridled, legs: Legs, whole: Whole) -> Iterator[Finding]:
    """
    Legs that stand too far apart.

    Three legs meet at less than 120 degrees even when flat, so there the lean of one leg tells.
    """
    name, angle, lean, widest = (
        each.bridle.name,
        legs.widest_deg,
        max(legs.leans_deg),
        widest_deg(whole.rigging),
    )
    if angle > TOO_FLAT_DEG + ROUNDING_DEG:
        sentence = (
            f"The legs of {name} stand {angle:.0f} deg apart. Beyond 120 deg each of two equal legs"
            " pulls more than the load."
        )
        yield told(Level.DANGER, "bridle-too-flat", sentence, each, apex_key(each))
    elif len(each.anchors) == 3 and lean > TOO_FLAT_DEG / 2 + ROUNDING_DEG:
        sentence = (
            f"A leg of {name} leans {lean:.0f} deg from straight down. Beyond 60 deg a leg pulls"
            " more than twice what it carries."
        )
        yield told(Level.DANGER, "bridle-too-flat", sentence, each, apex_key(each))
    elif widest is not None and angle > widest + ROUNDING_DEG:
        sentence = (
            f"The legs of {name} stand {angle:.0f} deg apart. The house allows {widest:g} deg."
        )
        yield told(Level.CAUTION, "bridle-angle-wide", sentence, each, apex_key(each))


def of_leg(
    each: Bridled, legs: Legs, index: int, point: OnPoint, whole: Whole, system: System
) -> Iterator[Finding]:
    """
    A leg that pulls more than its point may carry, or in a direction in which the point may not be
    pulled.
    """
    factor, rating_kg = factor_of(whole.rigging), point.rating.kg
    pull_kg = dynamic_load_kg(load_kg=legs.tensions_kg[index], dynamic_factor=factor)
    leg = f"The leg of {each.bridle.name} to {point.name}"
    if rating_kg is not None and pull_kg > rating_kg + ROUNDING_KG:
        with_factor = f", with the house's factor {factor:g}" if factor > 1 else ""
        sentence = (
            f"{leg} pulls {in_words(pull_kg, system)}{with_factor}, and the point may carry"
            f" {in_words(rating_kg, system)}."
        )
        yield told(Level.DANGER, "bridle-leg-over-point", sentence, each, "load")
    rule, lean = pulled(point.place.point, whole.rigging), legs.leans_deg[index]
    if (
        rule.widest_deg is not None
        and lean > rule.widest_deg + ROUNDING_DEG
        and legs.tensions_kg[index] > ROUNDING_KG
    ):
        may = (
            "be pulled straight down only"
            if rule.widest_deg == 0
            else f"lean {rule.widest_deg:g} deg at most"
        )
        yield told(
            Level.DANGER,
            "direction-forbidden",
            f"{leg} leans {lean:.0f} deg from straight down. By {rule.rule} it may {may}.",
            each,
            "legs",
        )


def shared(whole: Whole) -> Iterator[Finding]:
    """
    A point that carries a leg and something else: their pulls add up, and in different directions.
    """
    for point in whole.points:
        legs = [
            each
            for each in whole.bridles
            if point.name in {anchor.point.name for anchor in each.anchors}
        ]
        if legs and len(point.hangs) > 1:
            sentence = (
                f"{point.name} carries {' and '.join(point.hangs)}. What pulls down is added up;"
                " the sideways pull comes on top."
            )
            yield told(Level.CAUTION, "point-shared", sentence, legs[-1], "legs")
