"""
Outlines as they are written: corners in order around something. What makes none is a problem.

A field that holds an outline is ``Annotated[tuple[Corner, ...], Encloses()]``.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Annotated

from builder.formulas.outlines import Fault, fault_of
from builder.formulas.polygons import Point
from builder.reading.lists import too_many
from builder.reading.nodes import spoken
from builder.reading.problems import Problem
from builder.reading.quantities import Across, Depth
from builder.reading.references import records_within
from builder.reading.written import NotInWords, Plausible, Written

MOST_CORNERS = 200
"""Every side is held against every other. A circle drawn to two degrees has 180 corners."""


@dataclass(frozen=True, slots=True)
class Encloses:
    """Marks a list of corners that must make an outline."""


DRAWN = NotInWords("the plan draws the outline to scale")


class Corner(Written):
    """A corner of an outline."""

    across: Annotated[Across, Plausible(-45.0, 45.0), DRAWN]
    """Distance from the centre line, such as 8.4 m SL."""
    depth: Annotated[Depth, Plausible(-80.0, 60.0), DRAWN]
    """Distance from the reference line, such as 10.8 m US."""


def no_outlines(description: Written) -> Iterator[Problem]:
    """What keeps the outlines of a description from being any, in the author's order."""
    for record in records_within(description):
        for name, field in type(record).model_fields.items():
            written = getattr(record, name)
            if any(isinstance(mark, Encloses) for mark in field.metadata) and isinstance(
                written, tuple
            ):
                yield from no_outline(record, field.alias or name, corners_of(written))


def corners_of(written: Sequence[Corner]) -> list[Point]:
    """Corners as places on the plan. [m]"""
    return [(corner.across.m, corner.depth.m) for corner in written]


def no_outline(record: Written, key: str, corners: Sequence[Point]) -> Iterator[Problem]:
    """What keeps the corners under a key from being an outline."""
    if len(corners) > MOST_CORNERS:
        advice = "draw it with fewer, 25 mm on a plan are rounding"
        yield too_many(record, (key,), f"{len(corners):,} corners", MOST_CORNERS, advice)
    elif (fault := fault_of(corners)) is not None:
        yield TOLD[fault.kind](record, key, fault)


def few_corners(record: Written, key: str, fault: Fault) -> Problem:
    """Too few corners for any outline."""
    corners = "1 corner" if fault.first == 1 else f"{fault.first} corners"
    reason = f"has {corners}, and an outline needs at least three"
    return problem(record, (key,), reason, "outline-open", "write the corners in order around it")


def corner_twice(record: Written, key: str, fault: Fault) -> Problem:
    """Two corners at one spot: mostly a side is written wrong, or the outline is closed by hand."""
    reason = f"is the same spot as corner {fault.first} of the outline"
    advice = (
        "is a side, SL or SR, US or DS, written wrong? The outline closes by itself, so leave the"
        " first corner out at its end"
    )
    return problem(record, (key, fault.second - 1), reason, "corner-twice", advice)


def sides_meet(record: Written, key: str, fault: Fault) -> Problem:
    """Two sides that cross, touch or lie on each other."""
    reason = (
        f"crosses itself: the side that begins at corner {fault.second} meets the side that begins"
        f" at corner {fault.first}"
    )
    advice = "write the corners in order around it"
    return problem(record, (key, fault.second - 1), reason, "outline-crosses", advice)


def no_area(record: Written, key: str, fault: Fault) -> Problem:
    """Corners so near to each other that nothing lies between them."""
    del fault
    advice = "write the corners in order around it, each as measured"
    return problem(record, (key,), "encloses nothing", "outline-flat", advice)


TOLD = {
    "few corners": few_corners,
    "corner twice": corner_twice,
    "sides meet": sides_meet,
    "no area": no_area,
}


def problem(
    record: Written, keys: tuple[str | int, ...], reason: str, code: str, advice: str
) -> Problem:
    """A problem with an outline or with one of its corners."""
    return Problem(
        record.where(*keys), spoken((*record.path_in_file, *keys)), "", reason, code, advice
    )
