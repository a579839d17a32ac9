"""
``rigging.yml``: the steel overhead, its limits, the points, what hangs, the stock, and how to
submit a plan.
"""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal

from builder.departments.rigging.description.bridles import Bridle, Steel, WantedSpot
from builder.departments.rigging.description.hangs import Hang
from builder.departments.rigging.description.steel import (
    Beam,
    BridleRule,
    DynamicFactor,
    Hoist,
    Letter,
    LimitException,
    Limits,
    Point,
    PointGroup,
    Truss,
    Zone,
)
from builder.reading.absent import Absent, listed
from builder.reading.lists import AtMost
from builder.reading.maybe import Maybe, Perhaps
from builder.reading.possible import Possible
from builder.reading.problems import Problem
from builder.reading.quantities import (
    Area,
    Duration,
    Length,
    LoadPerArea,
    LoadPerLength,
    Mass,
    Percent,
    Speed,
)
from builder.reading.references import stand_together
from builder.reading.words import Count, Name, Ratio, Text
from builder.reading.written import Decisive, DepartmentFile, Line, Plausible, Rated


class Submission(Line):
    """How a visiting show submits its hang plan."""

    public_because: ClassVar[str] = "a show has to keep to it"
    lead_time: Annotated[Maybe[Duration], Plausible(86_400.0, 90 * 86_400.0), Decisive()] = (
        Absent.NOT_STATED
    )
    """How long before the show the plan must be there."""
    form: Text | None = None
    """In which form: drawing file, table."""
    approved_by: Text | None = None
    """Who approves it."""
    riggers: Maybe[Text] = Absent.NOT_STATED
    """Who rigs: house riggers, the show's own with which papers."""
    refused_by: Name | None = None
    """Who may refuse an item on the day, by role."""
    refusals: Text | None = None
    """What was refused before, so that shows know."""
    hardware: Literal["the house's", "the show's", "either"] | None = None
    """
    Whose shackles and slings are used, and who answers for them: the house's, the show's or either.
    """
    costs: Text | None = None
    """What it costs."""
    ask_above: Annotated[Percent | None, Possible.above(0.0, 1.0), Plausible(0.3, 1.0)] = None
    """The share of any limit above which a hang plan is asked about, though it stays within."""
    ask_whom: Text | None = None
    """Who is asked then, such as the house's engineer."""


class Ballast(Line):
    """What holds a roof or a stage down: ballast and guys."""

    public_because: ClassVar[str] = "nobody may move it, and shows plan around it"
    what: Name
    """What it is, such as water tank, or block with a guy wire."""
    count: Annotated[Maybe[Count], Plausible(1, 200)] = Absent.NOT_STATED
    """How many there are."""
    weight: Annotated[Maybe[Mass], Plausible(10.0, 50_000.0)] = Absent.NOT_STATED
    """The weight of one."""
    lies: Text | None = None
    """Where they are."""
    keep_clear: Annotated[Maybe[Length], Possible(0.0, 100.0), Plausible(0.3, 20.0)] = (
        Absent.NOT_STATED
    )
    """How far one keeps away from them."""
    crosses: Text | None = None
    """Which ways a guy crosses, and at what height."""


class BasePads(Line):
    """What a roof or a stage stands on, and what that asks of the ground."""

    public_because: ClassVar[str] = "nobody may put anything on them or dig beside them"
    width: Annotated[Maybe[Length], Plausible(0.1, 5.0)] = Absent.NOT_STATED
    """Width of one pad."""
    depth: Annotated[Maybe[Length], Plausible(0.1, 5.0)] = Absent.NOT_STATED
    """Depth of one pad."""
    made_of: Name | None = None
    """What they are made of."""
    pressure: Annotated[Maybe[LoadPerArea], Plausible(5_000.0, 1_000_000.0)] = Absent.NOT_STATED
    """The largest pressure on the ground under them, by the maker."""
    ground_tested: Annotated[Maybe[LoadPerArea], Rated(), Plausible(5_000.0, 1_000_000.0)] = (
        Absent.NOT_STATED
    )
    """The pressure that a test found the ground to bear."""
    tested: Text | None = None
    """Where, when and how often the ground was tested."""


class WindStep(Line):
    """One step of the site's own wind plan."""

    public_because: ClassVar[str] = "a show has to keep to it"
    defines: ClassVar[str] = "wind step"
    name: Literal["alert", "lower", "clear", "roof down"]
    """Alert, lower, clear or roof down."""
    at: Annotated[Maybe[Speed], Plausible(2.0, 40.0)]
    """The wind speed it begins at."""
    measured: Text | None = None
    """As gust or mean over which time, and where the meter stands."""
    do: Text
    """What is done, and by whom."""
    comes_off: tuple[Name, ...] = ()
    """What must be off or down by then, such as sheets, screen, banners."""
    takes: Annotated[Maybe[Duration], Plausible(30.0, 14_400.0)] = Absent.NOT_STATED
    """How long that takes, so that it is decided before."""
    sheet_says: Annotated[Maybe[Speed], Plausible(2.0, 40.0)] = Absent.NOT_STATED
    """The speed that the maker's sheet gives for it, where the house goes by another."""


class WindArea(Line):
    """Something that the wind blows on."""

    public_because: ClassVar[str] = "the wind acts on it beside what a show brings"
    defines: ClassVar[str] = "wind area"
    name: Name
    """What it is."""
    area: Annotated[Maybe[Area], Plausible(0.1, 2_000.0)]
    """The area that faces the wind."""
    coefficient: Annotated[Maybe[Ratio], Possible.above(0.0, 10.0), Plausible(0.3, 2.5)]
    """The force coefficient, from the structure's engineer."""


class Rail(Line):
    """A rail, balcony front or ledge that something light may hang from."""

    public_because: ClassVar[str] = "a show has to keep to it"
    defines: ClassVar[str] = "rail"
    name: Name
    """What it is, such as the balcony front rail."""
    load: Annotated[Maybe[LoadPerLength], Rated(), Plausible(1.0, 500.0)] = Absent.NOT_STATED
    """What each length of it may carry, such as 30 kg/m."""
    never_on_it: tuple[Name, ...] = ()
    """What may not hang from it, such as loudspeakers."""


class Rigging(DepartmentFile):
    """The steel overhead, what hangs from it, and the rules."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"dynamic_factor"})
    letter: Maybe[Letter] = Absent.NOT_STATED
    """The structural engineer's letter that the limits come from."""
    limits: Maybe[Limits]
    """The general limits."""
    exceptions: Maybe[tuple[LimitException, ...]] = ()
    """
    Beams and points whose limits differ. Where they are unknown, only what a point's own line says
    holds for certain.
    """
    zones: Maybe[tuple[Zone, ...]] = ()
    """Parts of the roof with limits of their own."""
    bridles_allowed: Maybe[BridleRule] = Absent.NOT_STATED
    """Whether loads may be hung between beams."""
    dynamic_factor: Perhaps[DynamicFactor] = None
    """A factor for starting and stopping that the house asks for. Left out, loads are at rest."""
    beams: tuple[Beam, ...] = ()
    """The beams."""
    points: tuple[Point, ...] = ()
    """The points."""
    point_groups: Annotated[tuple[PointGroup, ...], AtMost(100)] = ()
    """Points told by a rule: so many of them, at equal centres, or anywhere along a beam."""
    trusses: Maybe[tuple[Truss, ...]] = ()
    """Truss in stock, or none."""
    hoists: Maybe[tuple[Hoist, ...]] = ()
    """Hoists in stock, or none."""
    hangs: Maybe[tuple[Hang, ...]] = Absent.NOT_STATED
    """
    What hangs in the house when a show arrives. `none` where the steel is bare; where it is left
    out or unknown, nothing is said to be left for certain.
    """
    bridles: Annotated[Maybe[tuple[Bridle, ...]], AtMost(200)] = ()
    """
    Standing spots between two or three points. Where they are unknown, no point is said to have
    anything left for certain.
    """
    wanted_spots: Annotated[tuple[WantedSpot, ...], AtMost(30)] = ()
    """Spots that shows often ask for: the points, legs and pulls that make them are worked out."""
    steels: Annotated[tuple[Steel, ...], AtMost(40)] = ()
    """Steels in stock, to make bridle legs of."""
    rails: tuple[Rail, ...] = ()
    """Rails and balcony fronts that something light may hang from."""
    submission: Submission | None = None
    """How to submit a hang plan."""
    wind: tuple[WindStep, ...] = ()
    """The site's own wind plan, outdoors."""
    ballast: Maybe[tuple[Ballast, ...]] = Absent.NOT_STATED
    """What holds the roof down: ballast and guys, or none."""
    base_pads: BasePads | None = None
    """What it stands on, and what that asks of the ground."""
    wind_areas: tuple[WindArea, ...] = ()
    """What the wind blows on, for planning forces at the steps of the plan."""

    @property
    def general(self) -> Limits:
        """The general limits; each of them unknown where nobody knows any."""
        if not isinstance(self.limits, Absent):
            return self.limits
        every = dict.fromkeys(Limits.unknown_in_whole, self.limits)
        return Limits(**every).placed(self.places_in_file, ("limits",))

    @property
    def told_exceptions(self) -> tuple[LimitException, ...]:
        """The exceptions that are described."""
        return listed(self.exceptions)

    @property
    def told_zones(self) -> tuple[Zone, ...]:
        """The zones that are described."""
        return listed(self.zones)

    @property
    def standing_bridles(self) -> tuple[Bridle, ...]:
        """The standing bridles that are described."""
        return listed(self.bridles)

    @property
    def hung(self) -> tuple[Hang, ...]:
        """The hangs that are described."""
        return listed(self.hangs)

    def contradictions(self) -> Iterator[Problem]:
        """A point says where it is along its beam, and carries one hang in each configuration."""
        beams = {beam.name: beam for beam in self.beams}
        for point in self.points:
            beam = beams.get(point.beam)
            along = beam.along if beam else None
            told = along is None or getattr(point, along) is not None or along in point.unknown
            if beam and not told:
                reason = (
                    f"needs '{along}' to say where it is along beam {beam.name}, which runs"
                    f" {beam.runs}"
                )
                yield Problem(point.where(), point.name, "", reason, "point-place-missing")
        yield from self._points_used_twice()

    def _points_used_twice(self) -> Iterator[Problem]:
        used: dict[str, list[Hang]] = {}
        for hang in self.hung:
            for index, support in enumerate(hang.hangs_from):
                others = used.setdefault(support.point, [])
                if first := next((each for each in others if stand_together(each, hang)), None):
                    yield on_used_point(hang, index, first)
                others.append(hang)


def on_used_point(hang: Hang, index: int, first: Hang) -> Problem:
    """A support of a hang at a point that carries another in the same configuration."""
    return Problem(
        hang.where("supports", index, "point"),
        f"{hang.name}.supports[{index + 1}].point",
        hang.hangs_from[index].point,
        f"already carries {first.name}",
        "point-used-twice",
        "a point carries one hang in each configuration",
    )
