"""
Standing bridles: where the apex is, what the legs pull, and whether they are allowed where they
hang.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from builder.departments.rigging.bridles.legs import Legs, apex_of, legs_to
from builder.departments.rigging.description import Rigging
from builder.departments.rigging.description.bridles import Bridle
from builder.departments.rigging.steel.geometry import Overhead
from builder.departments.rigging.steel.limits import among
from builder.formulas.bridles import Place
from builder.reading.absent import Absent
from builder.reading.quantities import Angle


@dataclass(frozen=True, slots=True)
class Bridled:
    """
    A bridle with its points and what its legs carry; ``legs`` is None where ``why`` says what
    stands against it.
    """

    bridle: Bridle
    anchors: tuple[Overhead, ...]
    apex: Place | None
    legs: Legs | None
    why: str = ""


def bridled(rigging: Rigging, places: Iterable[Overhead]) -> Iterator[Bridled]:
    """Every standing bridle, worked out."""
    by_name = {place.point.name.casefold(): place for place in places}
    for bridle in rigging.standing_bridles:
        yield worked_out(bridle, tuple(by_name[name.casefold()] for name in bridle.legs))


def worked_out(bridle: Bridle, anchors: tuple[Overhead, ...]) -> Bridled:
    """
    One bridle: its apex as written, or where its legs' lengths let it land, and the pulls there.
    """
    steel = anchor_places(anchors)
    if steel is None:
        lacks = [anchor.lacks_place for anchor in anchors if anchor.lacks_place]
        why = lacks[0] if lacks else "the low steel at its points"
        return Bridled(bridle, anchors, None, None, why)
    apex = (
        apex_of([length.m for length in bridle.leg_lengths], steel)
        if bridle.apex is None
        else written_apex(bridle)
    )
    if apex is None:
        return Bridled(bridle, anchors, None, None, "where its legs meet")
    if isinstance(apex, str):
        return Bridled(bridle, anchors, None, None, apex)
    if isinstance(bridle.load, Absent):
        return Bridled(bridle, anchors, apex, None, "its load")
    legs = legs_to(bridle.load.kg, apex, steel)
    return (
        Bridled(bridle, anchors, apex, None, legs)
        if isinstance(legs, str)
        else Bridled(bridle, anchors, apex, legs)
    )


def anchor_places(anchors: Iterable[Overhead]) -> tuple[Place, ...] | None:
    """Where the legs begin: the low steel at each point. None where one is not known."""
    every = tuple(anchors)
    known = tuple(
        (*anchor.at, anchor.steel_m)
        for anchor in every
        if anchor.at is not None and anchor.steel_m is not None
    )
    return known if len(known) == len(every) else None


def written_apex(bridle: Bridle) -> Place | None:
    """The apex as the house writes it; None where nobody knows it."""
    if bridle.apex is None:
        raise ValueError("bridle must tell its apex, got none")
    if isinstance(bridle.apex, Absent):
        return None
    return (bridle.apex.across.m, bridle.apex.depth.m, bridle.apex.height.m)


def forbidden(anchors: Iterable[Overhead], rigging: Rigging) -> str:
    """
    Why a bridle between some points is not allowed, or an empty text.

    A rule that nobody states forbids nothing.
    """
    rule = rigging.bridles_allowed
    if isinstance(rule, Absent):
        return "the house has no bridles" if rule is Absent.NONE else ""
    if isinstance(rule.allowed, Absent):
        return "the house has no bridles" if rule.allowed is Absent.NONE else ""
    if rule.allowed == "no":
        return "the house does not allow bridles"
    outside = [
        anchor.beam.name
        for anchor in anchors
        if rule.allowed != "yes" and not among(anchor.beam.name, rule.beams)
    ]
    return (
        f"the house allows bridles between {', '.join(rule.beams)} only, and {outside[0]} is not"
        " among them"
        if outside
        else ""
    )


def widest_deg(rigging: Rigging) -> float | None:
    """The widest angle between two legs that the house allows, None where it says none. [deg]"""
    rule = rigging.bridles_allowed
    if isinstance(rule, Absent) or not isinstance(rule.widest_angle, Angle):
        return None
    return rule.widest_angle.deg
