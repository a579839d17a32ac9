"""Standing bridles: legs, pulls and whether they are allowed where they hang."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import hypot

from builder.departments.rigging.description import Rigging
from builder.departments.rigging.geometry import Overhead
from builder.departments.rigging.hanging import Bridle
from builder.departments.rigging.ratings import among
from builder.formulas.bridles import TwoLegs, two_leg_bridle
from builder.reading.absent import Absent

IN_LINE_M = 0.05
"""An apex this near to the line between the two points, seen from above, is on it."""


@dataclass(frozen=True, slots=True)
class Bridled:
    """A bridle with its two points and what its legs carry; ``legs`` is None where ``why`` says what stands against it."""

    bridle: Bridle
    anchors: tuple[Overhead, Overhead]
    runs_m: tuple[float, float]
    rises_m: tuple[float, float]
    legs: TwoLegs | None
    why: str = ""


def bridled(rigging: Rigging, places: Iterable[Overhead]) -> Iterator[Bridled]:
    """Every standing bridle, worked out."""
    by_name = {place.point.name.casefold(): place for place in places}
    for bridle in rigging.bridles:
        yield of_two(bridle, (by_name[bridle.legs[0].casefold()], by_name[bridle.legs[1].casefold()]))


def of_two(bridle: Bridle, anchors: tuple[Overhead, Overhead]) -> Bridled:
    """A bridle between two points whose heights are known."""
    apex = (bridle.apex.across.m, bridle.apex.depth.m)
    first_m, second_m = (hypot(anchor.at[0] - apex[0], anchor.at[1] - apex[1]) for anchor in anchors)
    apart_m = hypot(anchors[0].at[0] - anchors[1].at[0], anchors[0].at[1] - anchors[1].at[1])
    heights = [anchor.steel_m for anchor in anchors]
    if heights[0] is None or heights[1] is None:
        return Bridled(bridle, anchors, (first_m, second_m), (0.0, 0.0), None, "the low steel at both points")
    rises = (heights[0] - bridle.apex.height.m, heights[1] - bridle.apex.height.m)
    why = ""
    if first_m + second_m - apart_m > IN_LINE_M or apart_m == 0:
        why = "an apex between its two points, seen from above"
    elif min(rises) <= 0:
        why = "an apex below both points"
    if why:
        return Bridled(bridle, anchors, (first_m, second_m), rises, None, why)
    legs = two_leg_bridle(bridle.load.kg, run_m=first_m, rise_m=rises[0], other_run_m=second_m, other_rise_m=rises[1])
    return Bridled(bridle, anchors, (first_m, second_m), rises, legs)


def forbidden(each: Bridled, rigging: Rigging) -> str:
    """Why a bridle is not allowed where it hangs, or an empty text. A rule that nobody states forbids nothing."""
    rule = rigging.bridles_allowed
    if isinstance(rule, Absent):
        return "the house has no bridles" if rule is Absent.NONE else ""
    if rule.allowed == "no":
        return "the house does not allow bridles"
    outside = [anchor.beam.name for anchor in each.anchors if rule.allowed != "yes" and not among(anchor.beam.name, rule.beams)]
    return f"the house allows bridles between {', '.join(rule.beams)} only, and {outside[0]} is not among them" if outside else ""
