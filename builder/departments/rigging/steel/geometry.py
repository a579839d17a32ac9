"""Where beams, points and hangs are, in metres from the datum."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

from builder.departments.rigging.description.hangs import Hang
from builder.departments.rigging.description.steel import Beam, Point
from builder.formulas.trim import low_steel_m
from builder.reading.quantities import Height

BEYOND_M = 0.3 + 1e-9
"""A point may hang this far beyond the last stated height: heights are taken near the ends."""
At = tuple[float, float]
"""Across and depth. [m], [m]"""


@dataclass(frozen=True, slots=True)
class Overhead:
    """
    A point with its place: across, depth, along its beam, and the low steel there (None beyond the
    heights stated). [m]
    """

    point: Point
    beam: Beam
    at: At
    along_m: float
    steel_m: float | None

    @property
    def on_beam(self) -> bool:
        """Whether the beam is there at all, as far as its heights tell."""
        return beyond_m(self.beam, self.along_m) <= BEYOND_M


def stations_of(beam: Beam) -> tuple[tuple[float, float], ...]:
    """The heights of a beam's underside by place along it, in rising order."""
    along = "across" if beam.runs == "across" else "depth"
    return tuple(
        sorted((getattr(station, along).m, station.height.m) for station in beam.low_steel)
    )


def length_along_m(beam: Beam) -> float | None:
    """How long a beam is as far as its heights are stated; None where they tell no two ends. [m]"""
    places = [place for place, _ in stations_of(beam)]
    return places[-1] - places[0] if len(set(places)) > 1 else None


def at_along(beam: Beam, along_m: float) -> At:
    """The place on a beam that is so far along it."""
    if beam.runs == "across":
        return (along_m, beam.depth.m if beam.depth else 0.0)
    return (beam.across.m if beam.across else 0.0, along_m)


def overhead(points: tuple[Point, ...], beams: tuple[Beam, ...]) -> Iterator[Overhead]:
    """Every point with its place."""
    by_name = {beam.name.casefold(): beam for beam in beams}
    for point in points:
        beam = by_name[point.beam.casefold()]
        written = point.across if beam.runs == "across" else point.depth
        along_m = written.m if written else 0.0
        yield Overhead(point, beam, at_along(beam, along_m), along_m, steel_at(beam, along_m))


def steel_at(beam: Beam, along_m: float) -> float | None:
    """The low steel at a place along a beam, None beyond the heights stated."""
    stations = stations_of(beam)
    if not stations:
        return beam.underside.m if isinstance(beam.underside, Height) else None
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


def length_of(hang: Hang) -> float:
    """The length of a hang, seen from above. [m]"""
    return hypot(
        hang.last_end.across.m - hang.first_end.across.m,
        hang.last_end.depth.m - hang.first_end.depth.m,
    )


def runs_across(hang: Hang) -> bool:
    """Whether how deep a load hangs says nothing of its place along a hang."""
    return hang.first_end.depth.m == hang.last_end.depth.m


def along_hang(hang: Hang, at: At) -> tuple[float, float]:
    """
    How far along a hang a place is, counted from its first end, and how far off its line. [m], [m]
    """
    first, last = ends_of_hang(hang)
    length_m = length_of(hang)
    dx, dy = at[0] - first[0], at[1] - first[1]
    if length_m == 0:
        return 0.0, hypot(dx, dy)
    ux, uy = (last[0] - first[0]) / length_m, (last[1] - first[1]) / length_m
    return dx * ux + dy * uy, abs(dx * uy - dy * ux)


def ends_of_hang(hang: Hang) -> tuple[At, At]:
    """The two ends of a hang."""
    return (hang.first_end.across.m, hang.first_end.depth.m), (
        hang.last_end.across.m,
        hang.last_end.depth.m,
    )
