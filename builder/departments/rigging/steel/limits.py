"""
Which limit holds where: a point's own line first, then an exception that names it, then one for its
beam, then the general rule.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from builder.departments.rigging.description import Rigging
from builder.departments.rigging.description.steel import Beam, LimitException, Limits, Point, Zone
from builder.reading.absent import Absent, is_unknown
from builder.reading.in_part import ends_of
from builder.reading.quantities import Angle, Mass
from builder.reading.written import Written

ROOF = "the whole roof"
STRAIGHT = "straight down only"


@dataclass(frozen=True, slots=True)
class Ruled:
    """
    A limit, the rule in words, and the record that states it. ``limit`` is an absence where nobody
    says, or where the house does not know yet.
    """

    limit: Mass | Absent
    rule: str
    line: Written

    @property
    def kg(self) -> float | None:
        """The limit as a mass, None where there is none. [kg]"""
        return self.limit.kg if isinstance(self.limit, Mass) else None


@dataclass(frozen=True, slots=True)
class Pulled:
    """
    How a point may be pulled and which rule says so. ``widest_deg`` is 0 for straight down only,
    None where nobody says. [deg]
    """

    directions: str | Absent
    widest_deg: float | None
    rule: str


def same(first: str, second: str) -> bool:
    """Names are the same whatever their capitals."""
    return first.casefold() == second.casefold()


def among(name: str, names: tuple[str, ...]) -> bool:
    """True where a name is in a list."""
    return any(same(name, other) for other in names)


def rating_of(point: Point, rigging: Rigging) -> Ruled:
    """What a point may carry, and which rule says so."""
    if point.rating is not Absent.NOT_STATED:
        return Ruled(point.rating, "its own line", point)
    if is_unknown(rigging.exceptions):
        return unknown_exceptions(rigging)
    told = [each for each in rigging.told_exceptions if each.each_point is not Absent.NOT_STATED]
    by_point = [
        Ruled(each.each_point, f"the exception for {', '.join(each.points)}", each)
        for each in told
        if among(point.name, each.points)
    ]
    return lowest(by_point) if by_point else rule_for_beam(point.beam, rigging)


def rule_for_beam(beam: str, rigging: Rigging) -> Ruled:
    """What each point on a beam may carry that has no rule of its own, and which rule says so."""
    if is_unknown(rigging.exceptions):
        return unknown_exceptions(rigging)
    by_beam = [
        Ruled(each.each_point, f"the exception for {', '.join(each.beams)}", each)
        for each in rigging.told_exceptions
        if each.each_point is not Absent.NOT_STATED and among(beam, each.beams)
    ]
    if by_beam:
        return lowest(by_beam)
    return Ruled(rigging.general.each_point, "the rule for each point", rigging.general)


def unknown_exceptions(rigging: Rigging) -> Ruled:
    """The limit of what may have an exception, for nobody knows which there are."""
    return Ruled(Absent.UNKNOWN, "the exceptions, which nobody knows", rigging.general)


def pulled(point: Point, rigging: Rigging) -> Pulled:
    """How a point may be pulled: its own line first, then the exceptions, then the general rule."""
    if point.directions is not Absent.NOT_STATED:
        return pulled_by(point, "its own line")
    if is_unknown(rigging.exceptions):
        return Pulled(Absent.UNKNOWN, None, "the exceptions, which nobody knows")
    told = [
        exception
        for exception in rigging.told_exceptions
        if exception.directions is not Absent.NOT_STATED
    ]
    for exception in told:
        if among(point.name, exception.points):
            return pulled_by(exception, f"the exception for {', '.join(exception.points)}")
    for exception in told:
        if among(point.beam, exception.beams):
            return pulled_by(exception, f"the exception for {', '.join(exception.beams)}")
    return pulled_by(rigging.general, "the rule for all points")


def pulled_by(record: Point | LimitException | Limits, rule: str) -> Pulled:
    """The rule of directions that a record tells."""
    if record.directions == STRAIGHT:
        return Pulled(STRAIGHT, 0.0, rule)
    lean = None if isinstance(record.directions, Absent) else record.widest_lean
    return Pulled(record.directions, lean.deg if isinstance(lean, Angle) else None, rule)


def beam_limit(beam: Beam, rigging: Rigging) -> Ruled:
    """What a beam may carry, and which rule says so."""
    if is_unknown(rigging.exceptions):
        return unknown_exceptions(rigging)
    if rules := beam_rules(beam, rigging):
        return lowest(rules)
    return Ruled(rigging.general.each_beam, "the rule for each beam", rigging.general)


def beam_rules(beam: Beam, rigging: Rigging) -> list[Ruled]:
    """Every limit that exceptions state for a beam."""
    return [
        Ruled(each.each_beam, f"the exception for {', '.join(each.beams)}", each)
        for each in rigging.told_exceptions
        if each.each_beam is not Absent.NOT_STATED and among(beam.name, each.beams)
    ]


def lowest(rules: Sequence[Ruled]) -> Ruled:
    """
    The limit that counts of several for one thing: one that nobody knows, else the lowest; one that
    says there is none only where no other does.
    """

    def rank(ruled: Ruled) -> tuple[int, float]:
        least, _ = ends_of(ruled.limit)
        if ruled.limit is Absent.NONE:
            return (2, 0.0)
        return (0, 0.0) if least is None else (1, least.kg)

    return min(rules, key=rank)


def in_zone(point: Point, zone: Zone) -> bool:
    """
    True where a point lies in a zone: by its own name, or with its beam unless its name is in no
    zone that lists it.
    """
    return among(point.name, zone.points) or among(point.beam, zone.beams)


def spacing_m(limits: Limits) -> float:
    """The smallest distance between loaded points on a beam, 0 where the house has no such rule."""
    rule = limits.spacing_at_least
    return 0.0 if isinstance(rule, Absent) else rule.m
