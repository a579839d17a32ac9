"""Where beams, points and hangs are, in metres from the datum."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

from builder.departments.rigging.description.hangs import Hang
from builder.departments.rigging.description.steel import Beam, LowSteel, Point
from builder.formulas.trim import low_steel_m
from builder.reading.absent import Absent
from builder.reading.in_part import ends_of
from builder.reading.quantities import Height

BEYOND_M = 0.3 + 1e-9
"""A point may hang this far beyond the last stated height: heights are taken near the ends."""
At = tuple[float, float]
"""Across and depth. [m], [m]"""


@dataclass(frozen=True, slots=True)
class Overhead:
    """
    A point with its place: across, depth, along its beam, and the low steel there (None beyond the
    heights stated). What nobody knows of its place is None. [m]
    """

    point: Point
    beam: Beam
    across_m: float | None
    depth_m: float | None
    along_m: float | None
    steel_m: float | None

    @property
    def at(self) -> At | None:
        """Across and depth; None where nobody knows both. [m]"""
        if self.across_m is None or self.depth_m is None:
            return None
        return self.across_m, self.depth_m

    @property
    def known_at(self) -> At:
        """The same, for who has looked before that it is known. [m]"""
        if self.at is None:
            raise ValueError(f"place of point {self.point.name!r} must be known, got none")
        return self.at

    @property
    def on_beam(self) -> bool:
        """
        Whether the beam is there at all, as far as its heights tell. A point whose place nobody
        knows counts as on its beam, and nothing is then promised of it.
        """
        return self.along_m is None or beyond_m(self.beam, self.along_m) <= BEYOND_M

    @property
    def lacks_along(self) -> str:
        """What must be known to say where it is along its beam; empty where that is known."""
        if self.along_m is not None:
            return ""
        if self.beam.along is None:
            return f"which way beam {self.beam.name} runs"
        return f"where {self.point.name} is along beam {self.beam.name}"

    @property
    def lacks_place(self) -> str:
        """What must be known to say where it is, seen from above; empty where that is known."""
        if self.at is not None:
            return ""
        return self.lacks_along or f"where beam {self.beam.name} lies"


def stations_of(beam: Beam) -> tuple[tuple[float, float], ...]:
    """
    The heights of a beam's underside by place along it, in rising order. None where nobody knows
    the place of one: it may be between any two others.
    """
    found = [(place_along_m(station, beam), station.height.m) for station in beam.low_steel]
    known = [(at_m, height_m) for at_m, height_m in found if at_m is not None]
    return tuple(sorted(known)) if len(known) == len(found) else ()


def place_along_m(record: Point | LowSteel, beam: Beam) -> float | None:
    """Where something is along a beam; None where nobody knows. [m]"""
    if beam.along is None:
        return None
    written = record.across if beam.along == "across" else record.depth
    return None if written is None else written.m


def heights_of(beam: Beam) -> tuple[float, float] | None:
    """The lowest and the highest of a beam's underside; None where nobody tells its height. [m]"""
    heights = [station.height.m for station in beam.low_steel]
    low, high = ends_of(beam.underside)
    if low is not None and high is not None:
        heights += [low.m, high.m]
    return (min(heights), max(heights)) if heights else None


def length_along_m(beam: Beam) -> float | None:
    """How long a beam is as far as its heights are stated; None where they tell no two ends. [m]"""
    places = [place for place, _ in stations_of(beam)]
    return places[-1] - places[0] if len(set(places)) > 1 else None


def at_along(beam: Beam, along_m: float | None) -> tuple[float | None, float | None]:
    """The place on a beam that is so far along it; None for what nobody knows of it. [m]"""
    if beam.along is None:
        return None, None
    if beam.along == "across":
        return along_m, beam.depth.m if beam.depth else None
    return beam.across.m if beam.across else None, along_m


def overhead(points: tuple[Point, ...], beams: tuple[Beam, ...]) -> Iterator[Overhead]:
    """Every point with its place."""
    by_name = {beam.name.casefold(): beam for beam in beams}
    for point in points:
        beam = by_name[point.beam.casefold()]
        along_m = place_along_m(point, beam)
        across_m, depth_m = at_along(beam, along_m)
        yield Overhead(point, beam, across_m, depth_m, along_m, steel_at(beam, along_m))


def steel_at(beam: Beam, along_m: float | None) -> float | None:
    """
    The low steel at a place along a beam; None beyond the heights stated, and where nobody knows
    the place and the height is not the same all along.
    """
    if not beam.low_steel:
        return beam.underside.m if isinstance(beam.underside, Height) else None
    stations = stations_of(beam)
    if along_m is None or not stations:
        return None
    places = [place for place, _ in stations]
    if not places[0] <= along_m <= places[-1] or len(set(places)) < len(places):
        return None
    return low_steel_m(at_m=along_m, stations=stations)


def beyond_m(beam: Beam, along_m: float) -> float:
    """How far a place is beyond the ends of a beam, 0 where one height alone tells no end. [m]"""
    stations = stations_of(beam)
    if len(stations) < 2:
        return 0.0
    return max(stations[0][0] - along_m, along_m - stations[-1][0], 0.0)


def length_of(hang: Hang) -> float | None:
    """The length of a hang, seen from above; None where nobody knows where its ends are. [m]"""
    ends = ends_of_hang(hang)
    return None if ends is None else between_m(*ends)


def between_m(first: At, last: At) -> float:
    """How far two places are apart, seen from above. [m]"""
    return hypot(last[0] - first[0], last[1] - first[1])


def runs_across(hang: Hang) -> bool:
    """Whether how deep a load hangs says nothing of its place along a hang."""
    ends = ends_of_hang(hang)
    return ends is not None and ends[0][1] == ends[1][1]


def along_hang(ends: tuple[At, At], at: At) -> tuple[float, float]:
    """
    How far along a hang a place is, counted from its first end, and how far off its line. [m], [m]
    """
    first, last = ends
    length_m = between_m(first, last)
    dx, dy = at[0] - first[0], at[1] - first[1]
    if length_m == 0:
        return 0.0, hypot(dx, dy)
    ux, uy = (last[0] - first[0]) / length_m, (last[1] - first[1]) / length_m
    return dx * ux + dy * uy, abs(dx * uy - dy * ux)


def ends_of_hang(hang: Hang) -> tuple[At, At] | None:
    """The two ends of a hang; None where nobody knows where one is."""
    first, last = hang.first_end, hang.last_end
    if isinstance(first, Absent) or isinstance(last, Absent):
        return None
    return (first.across.m, first.depth.m), (last.across.m, last.depth.m)
