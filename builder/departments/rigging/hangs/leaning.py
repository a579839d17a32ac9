"""How sure what hangs is: as sure as the least sure of the lines that say what hangs and where."""

from collections.abc import Iterable, Iterator, Sequence

from builder.departments.rigging.bridles.standing import Bridled
from builder.departments.rigging.hangs.bodies import Body
from builder.departments.rigging.steel.geometry import Overhead
from builder.departments.rigging.steel.limits import same
from builder.pack import Check
from builder.reading.written import Written
from builder.working import weakest_of

Lines = Iterator[Written | Check]


def checks_of_hangs(
    bodies: Iterable[Body], bridles: Iterable[Bridled], places: Sequence[Overhead]
) -> dict[str, Check]:
    """The weakest check of each hang and each bridle, by its name."""
    lines: dict[str, list[Written | Check]] = {}
    for body in bodies:
        lines.setdefault(body.hang.name, []).extend(lines_of_hang(body, places))
    for each in bridles:
        lines.setdefault(each.bridle.name, []).extend(lines_of_bridle(each))
    return {name: check for name in lines if (check := weakest_of(lines[name]))}


def lines_of_place(place: Overhead) -> Lines:
    """Where a point is: its own line, its beam, and the heights of that."""
    yield from (place.point, place.beam, *place.beam.low_steel)


def lines_of_hang(body: Body, places: Iterable[Overhead]) -> Lines:
    """What a hang brings to its supports: what hangs there, and where its points are."""
    hang = body.hang
    yield from (hang, *hang.hangs_from, *hang.things)
    yield from (hoist for hoist in body.hoists if hoist)
    yield from (each.check for each in body.hung if each.check)
    for place in places:
        if any(same(place.point.name, support.point) for support in hang.hangs_from):
            yield from lines_of_place(place)


def lines_of_bridle(each: Bridled) -> Lines:
    """What a bridle brings to its points."""
    yield each.bridle
    for anchor in each.anchors:
        yield from lines_of_place(anchor)
