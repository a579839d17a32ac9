"""Hangs as bodies with loads at places, and what each of their supports carries."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from math import fsum

from builder.departments.rigging.description import Rigging
from builder.departments.rigging.description.hangs import Hang, HungThing, Support
from builder.departments.rigging.description.steel import Hoist
from builder.departments.rigging.steel.geometry import (
    At,
    Overhead,
    along_hang,
    ends_of_hang,
    length_of,
    runs_across,
)
from builder.departments.rigging.steel.limits import same
from builder.departments.rigging.steel.readings import by_unknown_length, thing_open, weight_open
from builder.exchange import HungLoad
from builder.formulas.beams import LEAST_SPACING_M
from builder.formulas.loads import Load, PointLoad, UniformLoad, centre_of_mass_m
from builder.formulas.out_of_level import Extremes, out_of_level
from builder.formulas.slack import Held, each_slack, held
from builder.formulas.statics import reactions, two_support_reactions
from builder.formulas.unrelieved import EVERY, Ways, part_kg, unrelieved_kg, ways_held
from builder.pack import Check
from builder.reading.absent import Absent, is_unknown, listed
from builder.reading.in_part import ends_of
from builder.reading.quantities import Length, Mass

OWN_WEIGHT = "its own weight"
"""What a hang needs whose weight nobody knows."""
WHICH_POINTS = "which points carry it"
WHAT_IS_ON_IT = "what hangs on it"
WHO_UNKNOWN = ""
"""Stands for who hung something where nobody knows."""
OFF_END_M = 0.005
"""A load this far beyond an end is off the hang; less is rounding."""
ASIDE_M = 0.3
"""
A load farther than this from the line of its hang does not hang on it: more than a truss is wide.
At a single place, what hangs finds its own plumb, so this is not asked there.
"""
GRAM_KG = 0.001
"""What a sum of masses may lose in arithmetic; no tolerance on a limit."""
ONE_SLACK = "one hoist slack"
OUT_OF_LEVEL = "hoists out of level"
PLUMB_M = 0.05
"""A lone point this near to the centre of mass is over it: half a truss tube."""


@dataclass(frozen=True, slots=True)
class Hung:
    """
    One load on a hang. ``off_m`` is how far off the hang it was written; it is then counted at the
    nearest place on it. ``top_m`` and ``bottom_m`` are the heights above the deck that it fills,
    where another department tells them, and ``check`` how sure that is. [m] ``thing`` is the
    rigging file's line, where it is one. Where the load may be more than this, it is ``open``, and
    where nobody knows its place along the hang, it is not ``placed``.
    """

    what: str
    by: str
    load: Load
    off_m: float = 0.0
    own_weight: bool = False
    top_m: float | None = None
    bottom_m: float | None = None
    thing: HungThing | None = None
    check: Check | None = None
    open: bool = False
    placed: bool = True


@dataclass(frozen=True, slots=True)
class Body:
    """
    A hang with all its loads; its supports by place along it, how far each is off its line, and
    where its point is from the datum. [m]

    Where nobody knows one of these places, ``supports_m`` and ``off_line_m`` are empty, and
    ``places_lack`` says what must be known.
    """

    hang: Hang
    length_m: float | None
    hung: tuple[Hung, ...]
    supports_m: tuple[float, ...]
    off_line_m: tuple[float, ...]
    hoists: tuple[Hoist | None, ...]
    points_at: tuple[At | None, ...]
    places_lack: str = ""

    @property
    def supports(self) -> tuple[Support, ...]:
        """The supports that are told."""
        return self.hang.hangs_from

    @property
    def loads(self) -> tuple[Load, ...]:
        """The loads alone."""
        return tuple(each.load for each in self.hung)

    @property
    def unweighed(self) -> tuple[tuple[str, str], ...]:
        """What on it weighs more than is known, and who hung that."""
        own = (("house", f"the weight of {self.hang.name} itself"),)
        loads = tuple((each.by, f"the weight of {each.what}") for each in self.hung if each.open)
        if is_unknown(self.hang.loads):
            loads += ((WHO_UNKNOWN, f"what hangs on {self.hang.name}"),)
        return (*own, *loads) if weight_open(self.hang) else loads

    @property
    def lacking(self) -> str:
        """What must be known before its supports can be told; empty where all is."""
        if is_unknown(self.hang.supports):
            return WHICH_POINTS
        if weight_open(self.hang):
            return where_ends_are(self.hang) if by_unknown_length(self.hang) else OWN_WEIGHT
        if is_unknown(self.hang.loads):
            return WHAT_IS_ON_IT
        weights = [f"the weight of {each.what}" for each in self.hung if each.open]
        if weights or len(self.supports) < 2:
            return weights[0] if weights else ""
        places = [f"where along it {each.what} hangs" for each in self.hung if not each.placed]
        return self.places_lack or (places[0] if places else "")

    @property
    def total_kg(self) -> float:
        """All loads and the hang's own weight as far as known, hoists not counted. [kg]"""
        return fsum(load.total_kg for load in self.loads)


@dataclass(frozen=True, slots=True)
class Shares:
    """
    What each support of a body carries, in the order written. [kg]

    ``kg`` are None where nothing can be worked out, and ``why`` says why. ``as_beam_kg`` is the
    same if supports could push. ``without`` are the cases with each hoist in turn slack; ``level``
    is the envelope out of level, where the stiffness and the house's tolerance are known, and
    ``level_lacks`` what it needs where the house states a tolerance. ``ways`` are the parts of each
    load with all hoists as planned, ``slack_ways`` with each in turn slack.
    """

    kg: tuple[float | None, ...]
    as_beam_kg: tuple[float, ...] = ()
    slack: tuple[int, ...] = ()
    why: str = ""
    without: tuple[Held, ...] = ()
    level: tuple[Extremes, ...] = ()
    level_lacks: str = ""
    ways: Ways = field(default_factory=list)
    slack_ways: Ways = field(default_factory=list)

    def unrelieved_kg(self, supports: Sequence[int]) -> float:
        """
        What some supports carry together with all hoists as planned, a load that lifts them counted
        as nothing. [kg]
        """
        return unrelieved_kg(self.ways, [(index, 1.0) for index in supports])

    def uneven_kg(self, supports: Sequence[int]) -> tuple[float, str]:
        """
        The most that some supports carry together when the hoists are not as planned, and what
        makes that; no words where nothing makes it more. [kg]
        """
        shares = [(index, 1.0) for index in supports]
        found = [(self.unrelieved_kg(supports), "")]
        if self.slack_ways:
            found.append((unrelieved_kg(self.slack_ways, shares), ONE_SLACK))
        if self.level:
            found.append((self._out_of_level_kg(shares), OUT_OF_LEVEL))
        worst_kg, why = max(found)
        return (worst_kg, why if worst_kg > found[0][0] + GRAM_KG else "")

    def _out_of_level_kg(self, shares: list[tuple[int, float]]) -> float:
        """
        No more than each support's most, nor than the whole weight less the least of all others;
        what lifts them is added again. [kg]
        """
        named = {index for index, _ in shares}
        total_kg = fsum(kg or 0.0 for kg in self.kg)
        most_kg = fsum(self.level[index].most_kg for index in named)
        others_kg = fsum(
            each.least_kg for index, each in enumerate(self.level) if index not in named
        )
        lifted_kg = fsum(max(-part_kg(parts, shares), 0.0) for parts in self.ways[0])
        return min(most_kg + lifted_kg, total_kg - others_kg + lifted_kg, total_kg)

    def worst_slack_kg(self, index: int) -> float | None:
        """The most a support carries while another is slack, of the cases that hold the body."""
        cases = [
            case.reactions_kg[index]
            for j, case in enumerate(self.without)
            if j != index and case.stability != "tips"
        ]
        return max(cases) if len(self.kg) > 2 and cases else None


def bodies(
    rigging: Rigging, places: Iterable[Overhead], offered: Iterable[HungLoad]
) -> tuple[Body, ...]:
    """Every hang with what rigging and the other departments say hangs on it."""
    by_name = {place.point.name.casefold(): place for place in places}
    every = tuple(offered)
    return tuple(
        body_of(
            hang,
            by_name,
            listed(rigging.hoists),
            [load for load in every if same(load.hang, hang.name)],
        )
        for hang in rigging.hung
    )


def body_of(
    hang: Hang, places: dict[str, Overhead], hoists: tuple[Hoist, ...], offered: list[HungLoad]
) -> Body:
    """One hang as a body."""
    length_m, ends = length_of(hang), ends_of_hang(hang)
    above = tuple(places[support.point.casefold()] for support in hang.hangs_from)
    lacks = [place.lacks_place for place in above if place.lacks_place]
    places_lack = where_ends_are(hang) or (lacks[0] if lacks else "")
    along = [] if ends is None else [along_hang(ends, place.at) for place in above if place.at]
    along = [] if places_lack else along
    hung = (
        *own_weight(hang, length_m),
        *(thing_of(thing, length_m) for thing in hang.things),
        *(offered_on(hang, load) for load in offered),
    )
    carriers = tuple(
        next((hoist for hoist in hoists if support.hoist and same(hoist.name, support.hoist)), None)
        for support in hang.hangs_from
    )
    return Body(
        hang,
        length_m,
        hung,
        tuple(m for m, _ in along),
        tuple(off for _, off in along),
        carriers,
        tuple(place.at for place in above),
        places_lack,
    )


def where_ends_are(hang: Hang) -> str:
    """What must be known of the ends of a hang; empty where they are."""
    return "" if ends_of_hang(hang) else f"where the ends of {hang.name} are"


def own_weight(hang: Hang, length_m: float | None) -> Iterator[Hung]:
    """The weight of the hang itself, spread over its length."""
    kg = 0.0
    if not isinstance(hang.weight_in_all, Absent):
        kg = hang.weight_in_all.kg
    elif not isinstance(hang.weight, Absent):
        kg = hang.weight.kg_per_m * (length_m or 0.0)
    if kg > 0:
        load = over_all(kg, length_m)
        yield Hung(hang.truss or "Own weight", "house", load, own_weight=True)


def over_all(kg: float, length_m: float | None) -> Load:
    """A load over the whole length; at the first end where nobody knows how long that is."""
    return PointLoad(0.0, kg) if length_m is None else spread(kg, 0.0, length_m)


def spread(kg: float, from_m: float, to_m: float) -> Load:
    """A load spread between two places, or a point load where they are one."""
    return (
        UniformLoad(from_m, to_m, kg / (to_m - from_m)) if to_m > from_m else PointLoad(from_m, kg)
    )


def who(by: str | Absent) -> str:
    """Who hung something, by the word for nobody known where that is not known."""
    return WHO_UNKNOWN if isinstance(by, Absent) else by


def thing_of(thing: HungThing, length_m: float | None) -> Hung:
    """A load that the rigging file tells."""
    kg, is_open, by = thing_kg(thing), thing_open(thing), who(thing.by)
    what = thing.what
    if isinstance(thing.count, int) and thing.count > 1:
        what = f"{thing.count} × {thing.what}"
    if any(isinstance(place, Absent) for place in (thing.at, thing.from_, thing.to)):
        load = over_all(kg, length_m)
        return Hung(what, by, load, thing=thing, open=is_open, placed=False)
    if isinstance(thing.at, Length):
        place_m, off_m = on_body(thing.at.m, length_m)
        load = PointLoad(place_m, kg)
        return Hung(what, by, load, off_m, thing=thing, open=is_open)
    if isinstance(thing.from_, Length) and isinstance(thing.to, Length):
        (from_m, before_m), (to_m, beyond_m) = (
            on_body(thing.from_.m, length_m),
            on_body(thing.to.m, length_m),
        )
        off_m = max(before_m, beyond_m)
        load_between = spread(kg, from_m, to_m)
        return Hung(what, by, load_between, off_m, thing=thing, open=is_open)
    return Hung(
        what,
        by,
        over_all(kg, length_m),
        thing=thing,
        open=is_open,
        placed=length_m is not None,
    )


def thing_kg(thing: HungThing) -> float:
    """What a load weighs in all as far as it is known. [kg]"""
    count, weight = ends_of(thing.count)[0], ends_of(thing.weight)[0]
    return (count or 0) * (weight.kg if weight else 0.0)


def on_body(at_m: float, length_m: float | None) -> tuple[float, float]:
    """A place held to the body, and how far off it was; as told where nobody knows its length."""
    held_m = max(at_m, 0.0) if length_m is None else min(max(at_m, 0.0), length_m)
    off_m = abs(at_m - held_m)
    return held_m, off_m if off_m > OFF_END_M else 0.0


def offered_on(hang: Hang, load: HungLoad) -> Hung:
    """
    A load that another department tells, by place along the hang, by place from the datum, or at
    its middle.
    """
    length_m, ends = length_of(hang), ends_of_hang(hang)
    along_m, aside_m = load.at_m, 0.0
    if along_m is None and ends and load.across_m is not None and load.depth_m is not None:
        along_m, aside_m = along_hang(ends, (load.across_m, load.depth_m))
    middle_m = (length_m or 0.0) / 2
    place_m, off_m = on_body(middle_m if along_m is None else along_m, length_m)
    off_m = max(off_m, aside_m if length_m and aside_m > ASIDE_M else 0.0)
    return Hung(
        load.what,
        load.department,
        PointLoad(place_m, load.load_kg),
        off_m,
        top_m=load.top_m,
        bottom_m=load.bottom_m,
        check=load.check,
        open=load.more_kg != 0,
        placed=(load.placed and (load.at_m is not None or ends is not None)) or runs_across(hang),
    )


def shares(body: Body, level_within: Length | Absent | None) -> Shares:
    """
    What each support carries: statics for one and two, a continuous beam for more, supports that
    would push let go.
    """
    nothing = (None,) * len(body.supports)
    level_within_m = level_within.m if isinstance(level_within, Length) else None
    if body.lacking:
        return Shares(nothing, why=body.lacking)
    if body.total_kg <= 0:
        return Shares(nothing, why="a weight of what hangs")
    if len(body.supports) == 1:
        alone = planned_ways(body, (body.total_kg,))
        return Shares((body.total_kg,), (body.total_kg,), ways=alone)
    ordered = sorted(body.supports_m)
    if any(second - first < LEAST_SPACING_M for first, second in pairwise(ordered)):
        return Shares(nothing, why="supports at different places along the hang")
    found = held(body.loads, body.supports_m)
    beam_kg = as_beam(body)
    if found.stability == "tips":
        return Shares(nothing, beam_kg, why="supports on both sides of the centre of mass")
    without = each_slack(body.loads, body.supports_m)
    return Shares(
        found.reactions_kg,
        beam_kg,
        found.slack,
        "",
        without,
        envelope(body, level_within_m),
        lacks_for_level(body, level_within),
        planned_ways(body, found.reactions_kg),
        ways_with_one_slack(body, without) if len(body.supports_m) > 2 else [],
    )


def planned_ways(body: Body, carried_kg: Sequence[float]) -> Ways:
    """The parts of each load with all hoists as planned."""
    loads, supports_m = [load.as_body_load for load in body.loads], body.supports_m or (0.0,)
    return ways_held(loads, supports_m, carried_kg, EVERY)


def ways_with_one_slack(body: Body, without: Sequence[Held]) -> Ways:
    """
    The parts of each load with each hoist in turn slack.

    Where the body would then tip, loads that are not always there may yet let it hang so: what no
    support carries more than, the whole weight, ends it.
    """
    loads, nothing = [load.as_body_load for load in body.loads], (0.0,) * len(body.supports_m)
    return [
        way
        for gone, case in enumerate(without)
        for way in ways_held(loads, body.supports_m, case.reactions_kg or nothing, gone)
    ]


def as_beam(body: Body) -> tuple[float, ...]:
    """
    Reactions as if supports could push, so that a negative one tells where the hang would lift.
    """
    if len(body.supports_m) == 2:
        return two_support_reactions(body.loads, (body.supports_m[0], body.supports_m[1]))
    return reactions(body.loads, body.supports_m)


def lacks_for_level(body: Body, level_within: Length | Absent | None) -> str:
    """What alone is missing to tell what hoists out of level do; empty where nothing is."""
    if len(body.supports_m) < 3:
        return ""
    if isinstance(level_within, Absent):
        return "how far out of level the hoists may stand"
    lacks = level_within is not None and level_within.m > 0
    return "its bending stiffness" if lacks and isinstance(body.hang.stiffness, Absent) else ""


def envelope(body: Body, level_within_m: float | None) -> tuple[Extremes, ...]:
    """
    Least and most of each support out of level, for three supports or more whose stiffness is
    known.
    """
    stiffness = body.hang.stiffness
    if len(body.supports_m) < 3 or not level_within_m or isinstance(stiffness, Absent):
        return ()
    return out_of_level(
        body.loads, body.supports_m, tolerance_m=level_within_m, ei_kn_m2=stiffness.kn_m2
    )


def off_centre_m(body: Body) -> float:
    """How far a lone support is from the centre of mass; 0 for more than one. [m]"""
    if len(body.supports_m) != 1 or body.total_kg <= 0 or body.lacking:
        return 0.0
    off_m = max(abs(centre_of_mass_m(body.loads) - body.supports_m[0]), body.off_line_m[0])
    return off_m if off_m > PLUMB_M else 0.0


def hoist_weight_kg(body: Body, index: int) -> float | None:
    """
    What the hoist of a support weighs with its chain; 0 for a dead hang, None where nobody knows.
    [kg]
    """
    hoist = body.hoists[index]
    if hoist is None:
        return 0.0
    return hoist.weight.kg if isinstance(hoist.weight, Mass) else None
