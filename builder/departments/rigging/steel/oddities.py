"""
What is odd about the steel: points beyond their beam or on one spot, heights and ratings that would
be usual in another unit, a letter that is old.
"""

from collections.abc import Iterable, Iterator

from builder.confirming import odd
from builder.departments.rigging.description import BasePads, Rigging, WindStep
from builder.departments.rigging.description.steel import Beam, Letter, Point
from builder.departments.rigging.steel.geometry import (
    BEYOND_M,
    at_along,
    beyond_m,
    place_along_m,
    stations_of,
)
from builder.exchange import SteelHeight
from builder.oddities import Named, Standing, on_one_spot, unlike_neighbours
from builder.pack import Finding, Level
from builder.reading.absent import listed
from builder.reading.dates import latest_day
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System, shown
from builder.reading.otherwise import otherwise
from builder.reading.problems import Where, shortened
from builder.reading.quantities import Across, Depth, Length, Mass, Quantity
from builder.reading.references import spelling
from builder.stating import Ageing, place

MUCH_OVER_HOISTS = 1.5
LIKE_A_HOIST = 0.05
"""A rating that is a hoist's within this share, read in another unit, is asked about."""
DAYS_A_YEAR = 365.25


def oddities(rigging: Rigging, ageing: Ageing, system: System) -> Iterator[Finding]:
    """Everything that is odd about the steel and what hangs."""
    beams = {beam.name.casefold(): beam for beam in rigging.beams}
    for point in rigging.points:
        yield from beyond_beam(point, beams[point.beam.casefold()], system)
    yield from on_one_spot(points_standing(rigging.points, beams))
    yield from unlike_neighbours(low_steels(rigging.beams), "the other heights of low steel")
    yield from unlike_neighbours(trims(rigging), "the other trims")
    yield from points_over_hoists(rigging)
    if isinstance(rigging.letter, Letter):
        yield from old_letter(rigging.letter, ageing)
    if rigging.base_pads:
        yield from ground_too_weak(rigging.base_pads)
    for step in rigging.wind:
        yield from later_than_sheet(step)


def ground_too_weak(pads: BasePads) -> Iterator[Finding]:
    """Ground that was tested at less than what the base pads may press on it."""
    _, pressure = ends_of(pads.pressure)
    borne, _ = ends_of(pads.ground_tested)
    if pressure is None or borne is None or borne.si >= pressure.si:
        return
    sentence = (
        f"The ground was tested at {as_written(pads.ground_tested)}, and the base pads may press"
        f" {as_written(pads.pressure)} on it. Ask who set the roof up: larger pads, or another"
        " place."
    )
    where = place(pads.where("ground_tested"))
    yield Finding(Level.CAUTION, "ground-too-weak", sentence, "rigging.base_pads", where)


def later_than_sheet(step: WindStep) -> Iterator[Finding]:
    """A step of wind that the house takes at more wind than the maker's sheet gives for it."""
    by_sheet, _ = ends_of(step.sheet_says)
    acts_at, _ = ends_of(step.at)
    if by_sheet is None or acts_at is None or acts_at.si <= by_sheet.si:
        return
    sentence = (
        f"Wind, {step.name}: the house acts at {as_written(step.at)}, and the maker's sheet says"
        f" {as_written(step.sheet_says)}. Act by the lower, or ask the maker."
    )
    where = place(step.where("at"))
    yield Finding(Level.DANGER, "wind-later-than-sheet", sentence, "rigging.wind", where)


def steel_heights(rigging: Rigging) -> Iterator[SteelHeight]:
    """The heights of all beams, for departments that must stay below them."""
    for beam in rigging.beams:
        for station in beam.low_steel:
            across_m, depth_m = at_along(beam, place_along_m(station, beam))
            if across_m is not None and depth_m is not None:
                yield SteelHeight(beam.name, across_m, depth_m, station.height)


def subject_of(point: Point) -> str:
    """The key of a point's item."""
    return f"rigging.point.{spelling(point.name)}"


def written_place(point: Point, beam: Beam) -> tuple[str, Across | Depth] | None:
    """The key and the value that say where a point is along its beam."""
    key = beam.along
    place = getattr(point, key) if key else None
    return None if key is None or place is None else (key, place)


def beyond_beam(point: Point, beam: Beam, system: System) -> Iterator[Finding]:
    """
    A point where its beam has no steel, as far as its heights tell. One height alone tells of no
    end.
    """
    written, stations = written_place(point, beam), stations_of(beam)
    off_m = 0.0 if written is None else beyond_m(beam, written[1].m)
    if written is None or off_m <= BEYOND_M:
        return
    key, place = written
    first_m, last_m = stations[0][0], stations[-1][0]
    first, last = (shown(type(place), end_m, 2, system)[0] for end_m in (first_m, last_m))
    yield odd(
        "point-beyond-beam",
        f"{point.name} is at {place.text}, and beam {beam.name} is told from {first} to {last}:"
        f" that is {shown(Length, off_m, 2, system)[0]} beyond its end.",
        point.where(key),
        question=otherwise(place, lambda along_m: first_m <= along_m <= last_m),
        asks_about=f"{place.text} on {beam.name}, {first} to {last}",
        subject=subject_of(point),
    )


def points_standing(points: Iterable[Point], beams: dict[str, Beam]) -> Iterator[Standing]:
    """The points with their spots; two beams that cross may each have one there."""
    for point in points:
        beam = beams[point.beam.casefold()]
        written = written_place(point, beam)
        if written is not None and point.condition != "out of service":
            key, place = written
            across_m, depth_m = at_along(beam, place.m)
            if across_m is None or depth_m is None:
                continue
            words = f"{place.text} on beam {beam.name}"
            yield Standing(
                f"point on {beam.name}",
                point.name,
                across_m,
                depth_m,
                None,
                point.where(key),
                words,
                subject_of(point),
            )


def low_steels(beams: Iterable[Beam]) -> list[Named]:
    """Every stated height of low steel."""
    return [
        Named(
            f"The low steel of {beam.name}",
            station.height,
            station.where("height"),
            f"rigging.beam.{spelling(beam.name)}",
        )
        for beam in beams
        for station in beam.low_steel
    ]


def trims(rigging: Rigging) -> list[Named]:
    """Every stated trim."""
    return [
        Named(
            f"The trim of {hang.name}",
            hang.trim,
            hang.where("trim"),
            f"rigging.hang.{spelling(hang.name)}",
        )
        for hang in rigging.hung
        if isinstance(hang.trim, Quantity)
    ]


def point_ratings(rigging: Rigging) -> Iterator[tuple[str, Mass, Where]]:
    """What points may carry, by the general rule, by exceptions and by their own lines."""
    if isinstance(rigging.general.each_point, Mass):
        yield "Each point", rigging.general.each_point, rigging.general.where("each_point")
    for exception in rigging.told_exceptions:
        if isinstance(exception.each_point, Mass):
            names = ", ".join((*exception.beams, *exception.points))
            yield f"Each point of {names}", exception.each_point, exception.where("each_point")
    for point in rigging.points:
        if isinstance(point.rating, Mass):
            yield point.name, point.rating, point.where("rating")


def points_over_hoists(rigging: Rigging) -> Iterator[Finding]:
    """
    A rating of points far above the house's largest hoist that would be a hoist's rating in another
    unit: 2,200 kg beside a hoist of 1 t is mostly 2,200 lb.
    """
    known = [hoist.rating for hoist in listed(rigging.hoists) if isinstance(hoist.rating, Mass)]
    hoists = sorted(known, key=lambda rating: rating.kg)
    if not hoists or len(hoists) < len(listed(rigging.hoists)):
        return
    largest = hoists[-1]
    for name, rating, where in point_ratings(rigging):
        question = otherwise(rating, lambda kg: like_a_hoist(kg, hoists))
        if rating.kg > MUCH_OVER_HOISTS * largest.kg and question:
            yield odd(
                "points-over-hoists",
                f"{name} may carry {rating.text}, and the largest hoist here is rated for"
                f" {largest.text}.",
                where,
                question=question,
                asks_about=f"{rating.text} beside {largest.text}",
                subject="rigging.roof",
            )


def like_a_hoist(kg: float, ratings: Iterable[Mass]) -> bool:
    """Whether a mass is the rating of one of some hoists, nearly."""
    return any(abs(kg - rating.kg) <= LIKE_A_HOIST * rating.kg for rating in ratings)


def old_letter(letter: Letter, ageing: Ageing) -> Iterator[Finding]:
    """
    The engineer's letter, where it is older than the house's own limit for a check. Once confirmed
    it is asked about again when a year has passed.
    """
    dated = latest_day(letter.dated)
    if dated is None:
        yield odd(
            "letter-undated",
            f"The engineer's letter is dated {shortened(letter.dated)}, which names no year, so"
            " nobody can tell how old it is.",
            letter.where("dated"),
            asks_about=letter.dated,
            subject="rigging.letter",
        )
        return
    age_days = (ageing.on - dated).days
    if age_days > ageing.stale_after_days:
        years = int(age_days / DAYS_A_YEAR)
        yield odd(
            "letter-old",
            f"The engineer's letter is dated {shortened(letter.dated)}, {age_days} days before this"
            f" revision. The house's own limit for a check is {ageing.stale_after_days} days.",
            letter.where("dated"),
            question=" Does the engineer still stand by it, with everything that was hung or cut"
            " since?",
            asks_about=f"{letter.dated}, {years} year{'' if years == 1 else 's'} old",
            subject="rigging.letter",
        )
