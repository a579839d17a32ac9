"""Which limit holds where: a point's own line first, then an exception that names it, then one for its beam, then the general rule."""

from dataclasses import dataclass

from builder.departments.rigging.description import Rigging
from builder.departments.rigging.steel import Beam, Limits, Point, Zone
from builder.reading.absent import Absent
from builder.reading.quantities import Mass

ROOF = "the whole roof"


@dataclass(frozen=True, slots=True)
class Ruled:
    """A limit and where it stands. ``limit`` is an absence where nobody says, or where the house does not know yet."""

    limit: Mass | Absent
    rule: str

    @property
    def kg(self) -> float | None:
        """The limit as a mass, None where there is none. [kg]"""
        return self.limit.kg if isinstance(self.limit, Mass) else None


def same(first: str, second: str) -> bool:
    """Names are the same whatever their capitals."""
    return first.casefold() == second.casefold()


def among(name: str, names: tuple[str, ...]) -> bool:
    """True where a name is in a list."""
    return any(same(name, other) for other in names)


def rating_of(point: Point, rigging: Rigging) -> Ruled:
    """What a point may carry, and which rule says so."""
    if point.rating is not Absent.NOT_STATED:
        return Ruled(point.rating, "its own line")
    for exception in rigging.exceptions:
        if exception.each_point is not Absent.NOT_STATED and among(point.name, exception.points):
            return Ruled(exception.each_point, f"the exception for {', '.join(exception.points)}")
    for exception in rigging.exceptions:
        if exception.each_point is not Absent.NOT_STATED and among(point.beam, exception.beams):
            return Ruled(exception.each_point, f"the exception for {', '.join(exception.beams)}")
    return Ruled(rigging.limits.each_point, "the rule for each point")


def beam_limit(beam: Beam, rigging: Rigging) -> Ruled:
    """What a beam may carry, and which rule says so."""
    for exception in rigging.exceptions:
        if exception.each_beam is not Absent.NOT_STATED and among(beam.name, exception.beams):
            return Ruled(exception.each_beam, f"the exception for {', '.join(exception.beams)}")
    return Ruled(rigging.limits.each_beam, "the rule for each beam")


def in_zone(point: Point, zone: Zone) -> bool:
    """True where a point lies in a zone: by its own name, or with its beam unless its name is in no zone that lists it."""
    return among(point.name, zone.points) or among(point.beam, zone.beams)


def spacing_m(limits: Limits) -> float:
    """The smallest distance between loaded points on a beam, 0 where the house has no such rule."""
    rule = limits.spacing_at_least
    return 0.0 if isinstance(rule, Absent) else rule.m
