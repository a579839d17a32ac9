"""
Points that are told by a rule: how many there are, what each may carry and has left, how high the
steel over them is.

A beam without points is told so too, for the house's limits hold on it wherever its points are.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.cautions import LOADS
from builder.departments.rigging.description import Rigging
from builder.departments.rigging.description.steel import Beam, PointGroup
from builder.departments.rigging.steel.figures import (
    between,
    group_left_kg,
    limit_figure,
)
from builder.departments.rigging.steel.geometry import length_along_m
from builder.departments.rigging.steel.limits import Ruled, among, lowest, rule_for_beam, same
from builder.departments.rigging.steel.totals import OUT, Group, Whole
from builder.formulas.limits import left_on_points
from builder.formulas.points_along import least_at_centres, most_along
from builder.pack import Figure, Finding, Input, Level, Value, one_or_both
from builder.reading.absent import Absent, is_unknown
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System
from builder.reading.quantities import Length
from builder.reading.references import spelling
from builder.stating import place
from builder.working import figure, missing, worked

HowMany = tuple[int | None, int | None]
"""How many there are at least and at most, None where nobody knows."""
NONE_KNOWN: HowMany = (0, None)
NOT_STATED = Absent.NOT_STATED


@dataclass(frozen=True, slots=True)
class ByRule:
    """Points told by a rule: the beams they are on, and what each may carry by which rule."""

    beams: tuple[Beam, ...]
    ruled: Ruled
    group: PointGroup | None = None


def groups_by_rule(rigging: Rigging) -> tuple[ByRule, ...]:
    """Every group of points that the house tells, in its order."""
    return tuple(by_rule(group, rigging) for group in rigging.point_groups)


def by_rule(group: PointGroup, rigging: Rigging) -> ByRule:
    """
    One group. Where nobody says on which beams it is, the lowest rule of any beam counts, unless it
    has its own.
    """
    beams = tuple(beam for beam in rigging.beams if among(beam.name, group.beams))
    if group.each_point is not Absent.NOT_STATED:
        return ByRule(beams, Ruled(group.each_point, "its own line", group), group)
    rules = [rule_for_beam(beam.name, rigging) for beam in beams or rigging.beams]
    general = Ruled(rigging.general.each_point, "the rule for each point", rigging.general)
    return ByRule(beams, lowest(rules or [general]), group)


def rules_on(beam: Beam, rigging: Rigging) -> list[PointGroup]:
    """The groups that are on a beam."""
    return [group for group in rigging.point_groups if among(beam.name, group.beams)]


def has_points(beam: Beam, rigging: Rigging) -> bool:
    """Whether points of a beam are told one by one."""
    return any(same(point.beam, beam.name) for point in rigging.points)


def on_beam(beam: Beam, rigging: Rigging) -> ByRule | None:
    """
    What holds for a point wherever it is on a beam: of groups that may be anywhere along it the
    lowest limit, else of any group on it, else the house's rule. None where its points are told one
    by one and nothing may be anywhere.
    """
    groups = rules_on(beam, rigging)
    anywhere = [group for group in groups if group.anywhere]
    if has_points(beam, rigging) and not anywhere:
        return None
    rules = [by_rule(group, rigging).ruled for group in anywhere or groups]
    return ByRule((beam,), lowest(rules or [rule_for_beam(beam.name, rigging)]))


def how_many(group: PointGroup, rigging: Rigging) -> HowMany:
    """How many points a group has: as it says, but no more than find room on its beams."""
    if group.count is Absent.NONE:
        return (0, 0)
    least, most = ends_of(group.count)
    roomed = [room(beam, group, rigging) for beam in by_rule(group, rigging).beams]
    room_most = total([most for _, most in roomed])
    told = group.anywhere or group.centres is not NOT_STATED
    if group.count is NOT_STATED and told:
        least = sum(least or 0 for least, _ in roomed)
    if most is None or room_most is not None:
        most = room_most if most is None or room_most is None else min(most, room_most)
    return (least or 0 if most is None else min(least or 0, most), most)


def without_room(rigging: Rigging) -> Iterator[Finding]:
    """A group that is told with more points than find room on its beams."""
    for group in rigging.point_groups:
        least, _ = ends_of(group.count)
        _, most = how_many(group, rigging)
        if least is not None and most is not None and least > most:
            sentence = (
                f"{group.name} is told with {as_written(group.count)} points, and {most} find room"
                f" on its beams at the distance that is told. {most} are counted."
            )
            subject = f"rigging.point-group.{spelling(group.name)}"
            where = place(group.where("count"))
            yield Finding(Level.CAUTION, "points-no-room", sentence, subject, where)


def total(numbers: Sequence[int | None]) -> int | None:
    """The sum of some numbers, None where there are none or one is not known."""
    known = [number for number in numbers if number is not None]
    return sum(known) if known and len(known) == len(numbers) else None


def room(beam: Beam, group: PointGroup | None, rigging: Rigging) -> HowMany:
    """
    How many points find room on a beam at once, at least and at most; none while the beam is out of
    service.

    At least is told only where no other points share the beam, for what they leave is not known.
    """
    if beam.condition == OUT:
        return (0, 0)
    length_m = length_along_m(beam)
    if length_m is None:
        return NONE_KNOWN
    shared = has_points(beam, rigging) or len(rules_on(beam, rigging)) > 1
    if group is not None and group.centres is not NOT_STATED:
        near, far = ends_of(group.centres)
        least = least_at_centres(length_m=length_m, centres_m=far.m) if far else 0
        return (0 if shared else least, most_at(length_m, near))
    near, far = ends_of(spacing_of(group, rigging))
    least = most_at(length_m, far) or 0
    return (0 if shared else least, most_at(length_m, near))


def most_at(length_m: float, spacing: Length | None) -> int | None:
    """How many find room at a distance, None where it is not known or nothing."""
    if spacing is None or spacing.m <= 0:
        return None
    return most_along(length_m=length_m, spacing_m=spacing.m)


def spacing_of(group: PointGroup | None, rigging: Rigging) -> Length | Absent:
    """The smallest distance between two loaded points: the group's own, else the house's rule."""
    if group is not None and group.spacing_at_least is not Absent.NOT_STATED:
        return group.spacing_at_least
    return rigging.general.spacing_at_least


def group_rule_figures(each: ByRule, whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """How many points a group has, what each may carry, and what one has left."""
    group = each.group
    if group is None:
        return
    yield count_figure(f"{key}.points", how_many(group, whole.rigging), each, whole)
    yield limit_figure(f"{key}.limit", "Each may carry", each.ruled, system)
    yield left_figure(f"{key}.left", each, whole, system)


def beam_rule_figures(beam: Beam, whole: Whole, key: str, system: System) -> Iterator[Figure]:
    """The same of a point wherever it is on a beam."""
    each = on_beam(beam, whole.rigging)
    if each is None:
        return
    if not rules_on(beam, whole.rigging):
        _, most = room(beam, None, whole.rigging)
        if most is not None:
            yield count_figure(f"{key}.room", (None, most), each, whole)
    yield limit_figure(f"{key}.each-point", "Each point may carry", each.ruled, system)
    yield left_figure(f"{key}.point-left", each, whole, system)


def count_figure(key: str, found: HowMany, each: ByRule, whole: Whole) -> Figure:
    """How many points there are by a rule."""
    spacing = spacing_of(each.group, whole.rigging)
    inputs = [
        *([Input("Stated", as_written(each.group.count))] if each.group else []),
        *([Input("Centres", as_written(each.group.centres))] if each.group else []),
        Input("Smallest distance", as_written(spacing)),
        *(Input(f"Length of {beam.name}", length_words(beam)) for beam in each.beams),
    ]
    work = worked(
        most_along,
        inputs=inputs,
        lines=(*each.beams, each.group or whole.rigging.general),
        leaves_out="What may be in the way on the beam, and what its limit allows together.",
    )
    least, most = found
    value = one_or_both(
        None if least is None or (least == 0 and most != 0) else in_number(least),
        None if most is None else in_number(most),
    )
    label = "Points" if each.group else "Room for points"
    if value is None:
        lacking = ("how many there are, or the lengths of beams and a distance",)
        return missing(key, label, work, lacking, caution=LOADS)
    return figure(key, label, value, work, caution=LOADS)


def in_number(count: int) -> Value:
    """A count as a value."""
    return Value(str(count), number=float(count))


def length_words(beam: Beam) -> str:
    """The length of a beam in words, as far as its heights tell."""
    length_m = length_along_m(beam)
    return "not told: it needs the height at each end" if length_m is None else f"{length_m:.2f} m"


def left_figure(key: str, each: ByRule, whole: Whole, system: System) -> Figure:
    """
    What one point of a rule has left: the least of its own limit and what is left above it, over
    the beams that it may be on.
    """
    least = [left_kg(each, beam, whole.heaviest) for beam in each.beams]
    most = [most_left_kg(each, beam, whole.lightest) for beam in each.beams or (None,)]
    known = [kg for kg in most if kg is not None]
    sure = [kg for kg in least if kg is not None]
    least_kg = min(sure) if sure and len(sure) == len(least) else None
    most_kg = max(known) if known and len(known) == len(most) else None
    work = worked(
        left_on_points,
        equation="left = the least of the point's limit and what is left above it",
        inputs=[Input("Each may carry", as_written(each.ruled.limit))],
        lines=(each.ruled.line, *each.beams),
    )
    value = between(least_kg, most_kg, system)
    if value is None:
        lacking = ("a limit of each point",)
        return missing(key, "Left on one of them", work, lacking, caution=LOADS)
    return figure(key, "Left on one of them", value, work, caution=LOADS, note=LEFT_NOTE)


LEFT_NOTE = "for one alone, nothing else hung"


def above(beam: Beam | None, whole: Whole) -> list[Group]:
    """The beam, the zones that hold it, and the roof."""
    if beam is None:
        return [whole.groups[-1]]
    zones = [zone.name for zone in whole.rigging.told_zones if among(beam.name, zone.beams)]
    return [
        group
        for group in whole.groups
        if group.kind == "roof"
        or (group.kind == "beam" and same(group.name, beam.name))
        or (group.kind == "zone" and group.name in zones)
    ]


def left_kg(each: ByRule, beam: Beam, whole: Whole) -> float | None:
    """What a point on a beam has left at least, None where a part of it is not known. [kg]"""
    if beam.condition == OUT:
        return 0.0
    limit, _ = ends_of(each.ruled.limit)
    groups = above(beam, whole)
    # Which of the beam's points carry what hangs there for good, nobody says.
    if is_unknown(whole.rigging.zones):
        return None
    if limit is None or whole.is_loose or beam.may_carry_for_good:
        return None
    if not all(group.is_sure for group in groups):
        return None
    return min([limit.kg, *known_left(groups, whole)])


def most_left_kg(each: ByRule, beam: Beam | None, whole: Whole) -> float | None:
    """What a point on a beam has left at most; nothing while the beam is out of service. [kg]"""
    _, limit = ends_of(each.ruled.limit)
    if beam is not None and beam.condition == OUT:
        return 0.0
    found = [*([limit.kg] if limit else []), *known_left(above(beam, whole), whole)]
    return min(found, default=None)


def known_left(groups: Sequence[Group], whole: Whole) -> list[float]:
    """What some limits leave, as far as they are known. [kg]"""
    found = [group_left_kg(group, whole) for group in groups]
    return [kg for kg in found if kg is not None]
