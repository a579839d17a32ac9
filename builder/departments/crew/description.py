"""
``crew.yml``: who works here by role and skill, the least crew, who may operate what, rates and
overtime, and the calls of a usual day.
"""

from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.money import Amount
from builder.reading.possible import Possible
from builder.reading.problems import Problem
from builder.reading.quantities import Duration, TimeOfDay
from builder.reading.skills import Skill
from builder.reading.weekdays import DayOfWeek
from builder.reading.words import Count, DayOrSo, Name, Ratio, Text, YesNo
from builder.reading.written import (
    Decisive,
    DepartmentFile,
    Line,
    Plausible,
    RefersTo,
    Written,
)

Per = Literal["hour", "call", "show", "day", "week"]
LeastWhen = Literal[
    "always",
    "deck in use",
    "load-in or load-out",
    "truck unloading",
    "forklift moving",
    "platform lift in use",
    "flown load moving",
    "work at height",
    "power tie-in",
    "check",
    "audience in",
    "show",
    "other",
]
Machine = Literal[
    "fly system",
    "hoists",
    "house sound",
    "lighting desk",
    "house lights",
    "follow spots",
    "projection",
    "power tie-in",
    "deck lift",
    "platform lift",
    "forklift",
    "dock leveller",
    "smoke detectors",
    "other",
]
CallFor = Literal[
    "load-in", "load-out", "show", "rehearsal", "check", "focus", "changeover", "recall", "other"
]


class Pay(Written):
    """What one person of a role costs."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"least"})
    amount: Maybe[Amount] = Absent.NOT_STATED
    """How much one person costs, with its currency, such as £17."""
    per: Maybe[Per] = Absent.NOT_STATED
    """The unit it is for: hour, call, show, day or week."""
    least: Annotated[Maybe[Duration], Possible.above(0.0, 604_800.0), Plausible(1_800, 86_400)] = (
        Absent.NOT_STATED
    )
    """
    The shortest time that is charged for this role. Left out, it is the shortest call of the house.
    """
    since: Maybe[DayOrSo] = Absent.NOT_STATED
    """From which day, month or year on it holds."""
    until: Maybe[DayOrSo] = Absent.NOT_STATED
    """Until when it holds; none where no end is set."""
    tax: Maybe[Literal["included", "added"]] = Absent.NOT_STATED
    """Whether tax is included or added; none where none is due."""


class Role(Line):
    """People of one kind: how many come with the house, how many can be called, what they cost."""

    defines: ClassVar[str] = "crew role"
    name: Name
    """What they are called here, such as Deck crew. Other lines refer to it."""
    skill: Maybe[Skill | Literal["other"]] = Absent.NOT_STATED
    """
    What they can do, in the words in which shows ask: stagehands, loaders, riggers, flymen,
    electricians, light desk, sound engineers, video engineers, followspots, wardrobe, carpenters,
    props, forklift drivers, stage managers, technicians, runners, security, first aiders, fire
    watchers, cleaners or other.
    """
    there: Annotated[Maybe[Count], Plausible(0, 100), Decisive()] = Absent.NOT_STATED
    """How many of them come with the house on a show day; none where all are hired."""
    there_terms: Maybe[Literal["included", "extra charge"]] = Absent.NOT_STATED
    """Whether those who come with the house are in the rent, or are charged at the rate."""
    to_call: Annotated[Maybe[Count], Plausible(0, 400), Decisive()] = Absent.NOT_STATED
    """How many more can be called in for a show; none where nobody can."""
    from_whom: Maybe[Name] = Absent.NOT_STATED
    """Who sends those that are called in: the house itself, a local, a firm."""
    ordered_by: Annotated[Maybe[Duration], Plausible(3_600.0, 60 * 86_400.0)] = Absent.NOT_STATED
    """
    How long before the show they must be ordered, where it differs from the rest of the crew.
    """
    works: Maybe[Name] = Absent.NOT_STATED
    """When they are there, such as from the first call to the last truck."""
    holds: tuple[Name, ...] = ()
    """Certificates and licences that they hold, such as forklift licence."""
    volunteers: Maybe[YesNo] = Absent.NOT_STATED
    """Whether they are volunteers."""
    apart: Maybe[YesNo] = Absent.NOT_STATED
    """
    Whether they do this work only, such as loaders who stay on the dock. No where they also do the
    work of other roles, and so are counted once for all of it.
    """
    pay: Pay | None = None
    """What one of them costs."""


class Needed(Written):
    """So many of a role."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset({"for_each"})
    who: Annotated[Name, RefersTo("crew role")]
    """The role, by its name among the people."""
    count: Annotated[Maybe[Count], Plausible(1, 200)] = Absent.NOT_STATED
    """How many of them."""
    for_each: Name | None = None
    """What they are counted for, such as each truck. Left out, they are so many in all."""


class LeastCrew(Line):
    """The least crew that the house insists on while something is done."""

    public_because: ClassVar[str] = "a show has to keep to it"
    when: Name
    """When it holds, in the house's words, such as while anything flown moves."""
    kind: Maybe[LeastWhen] = Absent.NOT_STATED
    """
    The same by its kind: always, deck in use, load-in or load-out, truck unloading, forklift
    moving, platform lift in use, flown load moving, work at height, power tie-in, check, audience
    in, show, or other.
    """
    people: Maybe[tuple[Needed, ...]] = Absent.NOT_STATED
    """Who, and how many; none where nobody is asked for."""
    paid_by: Maybe[Literal["the show", "the house"]] = Absent.NOT_STATED
    """Who pays them: the show, or the house."""


class Operating(Line):
    """Who may operate something of the house."""

    public_because: ClassVar[str] = "a show has to keep to it"
    what: Name
    """What it is, such as the fly rail or the forklift."""
    kind: Maybe[Machine] = Absent.NOT_STATED
    """
    The same by its kind: fly system, hoists, house sound, lighting desk, house lights, follow
    spots, projection, power tie-in, deck lift, platform lift, forklift, dock leveller, smoke
    detectors, or other.
    """
    by: Annotated[tuple[Name, ...], RefersTo("crew role")] = ()
    """The roles that operate it, by their names among the people."""
    visitors: Maybe[Literal["yes", "with the house beside", "no"]] = Absent.NOT_STATED
    """Whether a show's own people may: yes, with the house beside, or no."""
    asks: Maybe[Text] = Absent.NOT_STATED
    """What the house asks of them, such as a licence; none where it asks nothing."""


class Overtime(Line):
    """When an hour costs more, and how much. Where several hold for an hour, the highest counts."""

    times: Annotated[Maybe[Ratio], Possible(1.0, 10.0), Plausible(1.0, 3.0)] = Absent.NOT_STATED
    """By how much the rate is multiplied, such as 1.5, or 2 for double."""
    after: Annotated[Maybe[Duration], Possible.above(0.0, 172_800.0), Plausible(3_600, 86_400)] = (
        Absent.NOT_STATED
    )
    """After how much work on one day, such as 8 h."""
    from_: Annotated[Maybe[TimeOfDay], Field(alias="from")] = Absent.NOT_STATED
    """From which time of day on."""
    until: Maybe[TimeOfDay] = Absent.NOT_STATED
    """Until which time of day. Left out, until 06:00, the end of the night."""
    days: tuple[DayOfWeek, ...] = ()
    """The days on which it holds, where it is not every day."""

    counts_when_left_out: ClassVar[frozenset[str]] = frozenset(
        {"terms", "house_only", "after", "from", "until"}
    )

    def contradictions(self) -> Iterable[Problem]:
        """A step that names no time at all would make every hour dearer."""
        if self.after is Absent.NOT_STATED and self.from_ is Absent.NOT_STATED and not self.days:
            yield Problem(
                self.where(),
                "overtime",
                "",
                "does not say when it holds",
                "overtime-without-time",
                "write after with how much work, from with a time of day, or days",
            )


class MealMissed(Written):
    """What it costs where a meal that is due is not given."""

    times: Annotated[Maybe[Ratio], Possible(1.0, 10.0), Plausible(1.0, 3.0)] = Absent.NOT_STATED
    """By how much the rate is multiplied until the meal is given."""
    amount: Maybe[Amount] = Absent.NOT_STATED
    """How much is due for each person, where it is a sum."""


class CallKind(Line):
    """A kind of call that has a shortest length of its own."""

    defines: ClassVar[str] = "kind of call"
    name: Name
    """What it is called here, such as performance call."""
    kind: Maybe[CallFor] = Absent.NOT_STATED
    """
    What it is for: load-in, load-out, show, rehearsal, check, focus, changeover, recall or other.
    """
    shortest: Annotated[
        Maybe[Duration], Possible.above(0.0, 86_400.0), Plausible(3_600, 43_200)
    ] = Absent.NOT_STATED
    """The shortest that is charged for such a call."""


class DayCall(Written):
    """One call of a working day."""

    who: Annotated[Name, RefersTo("crew role")]
    """The role, by its name among the people."""
    count: Annotated[Maybe[Count], Plausible(1, 400)] = Absent.NOT_STATED
    """How many of them."""
    from_: Annotated[Maybe[TimeOfDay], Field(alias="from")] = Absent.NOT_STATED
    """When they begin."""
    until: Maybe[TimeOfDay] = Absent.NOT_STATED
    """When they end, meal breaks included. A time that is not after the begin is the day after."""
    call: Annotated[Name | None, RefersTo("kind of call")] = None
    """The kind of call, where its shortest length is another than the usual."""
    what_for: Name | None = None
    """What they are called for, such as load-in."""


class WorkDay(Line):
    """The calls of a usual day, so that a show sees what one costs here."""

    defines: ClassVar[str] = "working day"
    name: Name
    """What kind of day it is, such as One show, in and out."""
    day: Maybe[DayOfWeek] = Absent.NOT_STATED
    """The day of the week, where overtime hangs on it."""
    calls: tuple[DayCall, ...] = ()
    """Who is called, from when until when."""


class Crew(DepartmentFile):
    """Crew: who works here, the least crew, who operates what, rates, overtime, a usual day."""

    people: Annotated[Maybe[tuple[Role, ...]], Decisive()] = Absent.NOT_STATED
    """Who comes with the house, and who can be called; none where there is nobody."""
    least: Annotated[Maybe[tuple[LeastCrew, ...]], Decisive()] = Absent.NOT_STATED
    """The least crew that the house insists on, by what is done; none where it insists on none."""
    operating: Maybe[tuple[Operating, ...]] = Absent.NOT_STATED
    """Who may operate what, or none where anybody may."""
    overtime: Maybe[tuple[Overtime, ...]] = Absent.NOT_STATED
    """When an hour costs more, or none where every hour costs the same."""
    meal_missed: MealMissed | None = None
    """What it costs where a meal that is due is not given."""
    calls: Maybe[tuple[CallKind, ...]] = Absent.NOT_STATED
    """Kinds of calls that have a shortest length of their own, or none."""
    days: Maybe[tuple[WorkDay, ...]] = Absent.NOT_STATED
    """The calls of usual days, worked out at the house's rates; or none."""
    ordered_from: Maybe[Name] = Absent.NOT_STATED
    """Whom one orders crew from, by role."""
    cancelled_by: Annotated[Maybe[Duration], Plausible(3_600.0, 60 * 86_400.0)] = Absent.NOT_STATED
    """How long before a call it can be cancelled without cost; none where it never can."""
