"""
The records of the check: what it reads of a pack and of a rider, and what it answers.

A record is a plain dictionary whose keys and types are written here once, so that Python, JSON and
the browser have the same shape. Lengths are in metres, masses in kilograms, times in seconds,
currents in ampere, as the ends of the keys say; ``None`` is what nobody has said.
"""

from typing import Literal, NotRequired, TypedDict

from builder.formulas.polygons import Point

Standing = Literal["stated", "unknown", "none", "not stated", "assumed"]
Word = Literal["fits", "fits, with a note", "short", "ask", "not needed"]
Strictness = Literal["must", "should"]
CarriedBy = Literal["show", "house", "hire"]


# What the check reads of a pack.


class Age(TypedDict):
    """
    Whether something is known, when it was checked in words, whether that is too old, and whether
    it was only remembered.
    """

    standing: Standing
    checked: str
    stale: bool
    remembered: bool


class Value(Age):
    """
    A fact or a figure of an item.

    ``number`` is in SI, and is there where it is exact; else ``least`` and ``most`` are its ends as
    far as anybody knows. Where the house chooses it, it ``can_be_set``: to one of the ``settings``,
    or anywhere between its ends where none are named; with a number, it stands at one of its
    choices in the arrangement that is judged. ``parts`` are the entries of a list, each by itself:
    whoever looks for a name looks there, never within ``text``.
    """

    key: str
    label: str
    text: str
    also: str
    number: float | None
    parts: list[str]
    least: float | None
    most: float | None
    can_be_set: bool
    settings: list[float]
    page: str


class Item(TypedDict):
    """
    A thing of the house with the values that the check reads, by name.

    ``numbers`` and ``words`` hold what is only counted with and that no verdict shows by itself: a
    place on the plan, what hangs on a point, the cosine of the widest angle. ``state`` tells how
    many of how many do not work, empty where all do or the house does not say.
    """

    key: str
    kind: str
    name: str
    condition: str
    state: str
    terms: str
    note: str
    page: str
    checked: str
    stale: bool
    remembered: bool
    values: dict[str, Value]
    numbers: dict[str, float]
    words: dict[str, str]


class Outline(TypedDict):
    """A shape on the plan; each corner is across and depth. [m]"""

    kind: str
    name: str
    corners: list[Point]


class Instead(TypedDict):
    """
    Items as they are in some configurations of the house, by their keys, with all values, the keys
    of those that are not there, and the outlines that are read there.
    """

    configurations: list[str]
    items: list[Item]
    without: list[str]
    outlines: list[Outline]


class Section(TypedDict):
    """
    What a department says. `space` is the key of the space that it describes; left out for what all
    spaces share, and in a house of one stage; `shared` are then the kinds of things that it has
    with the others alone. `instead` tells what other configurations than the
    usual one have otherwise; left out where nothing differs.
    """

    key: str
    title: str
    cautions: list[str]
    outlines: list[Outline]
    items: list[Item]
    space: NotRequired[str]
    shared: NotRequired[list[str]]
    instead: NotRequired[list[Instead]]


class Asker(TypedDict):
    """Something that has a question to ask where the house has not said."""

    question: str


class Mender(TypedDict):
    """Something that knows what would mend a shortage, and who could."""

    remedy: str
    who: str


class Advice(Asker, Mender):
    """The question, the remedy and who could, for what no rule of the pack answers."""


class Rule(Advice):
    """
    One thing that can be asked, as the pack publishes it, where the guide to the pack's format
    tells what each key means. ``where`` holds pairs of a name and a text, ``also`` pairs of a kind
    of item and a value; ``elsewhere`` a section, an item and a value, or nothing.
    """

    key: str
    title: str
    department: str
    kind: str
    ways: list[str]
    section: str
    item: str
    value: str
    otherwise: list[str]
    beside: str
    also: list[list[str]]
    elsewhere: list[str]
    where: list[list[str]]
    combine: str
    whole: str
    none_means: str
    means_yes: list[str]
    each: str
    day: str
    legal: bool


class PackRevision(TypedDict):
    """Which state of the pack this is."""

    number: str
    on: str


class FitSpace(TypedDict):
    """One stage of a house that has several, by the key that its sections bear as `space`."""

    key: str
    name: str


class FitPack(TypedDict):
    """
    Everything that the check reads of a pack. ``spaces`` are the stages of a house that has
    several; ``shared`` names the departments of which these share something. Both are empty for a
    house of one stage.
    """

    venue: str
    revision: PackRevision
    rules: list[Rule]
    sections: list[Section]
    spaces: list[FitSpace]
    shared: list[str]


# What a rider asks.


class Line(TypedDict):
    """
    What every requirement has: whose it is, the line of the rider (0 where it has none), what it is
    called, and what is wanted in words.
    """

    act: str
    line: int
    department: str
    title: str
    need: str
    strictness: Strictness


class Asked(Line):
    """A requirement of a rider, with who brings it."""

    carried: CarriedBy


class NeedAmount(Asked):
    """
    A need with its amount: ``what`` is the key of a rule, ``way`` is how it is asked or ``unknown``
    where the rider does not know yet, ``words`` is yes or no; ``own`` where the act does not share
    it with others.
    """

    what: str
    own: bool
    way: str
    low: float
    high: float
    words: str


class NeedAsked(NeedAmount):
    """A need that one rule of the pack answers."""

    sort: Literal["rule"]


class AllAsked(Asked):
    """
    Several needs that are asked together; ``turned`` has the same with their amounts changed over,
    where the rider does not know which is which, else nothing.
    """

    sort: Literal["all"]
    all: list[NeedAsked]
    turned: list[NeedAsked]


class WayAsked(Asked):
    """An alternative that will do on a condition alone; ``unless`` where that must not hold."""

    sort: Literal["way"]
    condition: NeedAsked
    unless: bool
    then: NeedAsked | AllAsked


class AnyAsked(Asked):
    """A need that one of several alternatives meets."""

    sort: Literal["any"]
    any: list[NeedAsked | AllAsked | WayAsked]


class ClassAsked(TypedDict):
    """So many of a thing, each as good as this or better; ``words`` say it. [SI]"""

    count: float
    each: float
    words: str


class ClassesAsked(Asked):
    """Amounts of one thing by class; ``what`` is the key of its rule."""

    sort: Literal["classes"]
    what: str
    classes: list[ClassAsked]


class PowerMore(TypedDict):
    """
    What a load asks of its feed beyond current and place: the part of the stage, a breaker of its
    own, a transformer ``apart`` from dimmers or one that isolates it, how many wires (0 where it
    does not say), the most that its residual current device may trip at. [A]
    """

    at: str
    own: bool
    apart: bool
    isolated: bool
    wires: float
    trips_a: float | None


class PowerAsked(Asked):
    """
    Power for one department of the show: a feed on three phases, or a number of single-phase
    circuits. ``use`` is what it is for, ``of`` the place that ``within_m`` counts from.
    """

    sort: Literal["power"]
    use: str
    current_a: float
    count: float
    phases: Literal["three", "single"]
    system: str
    connector: str
    within_m: float | None
    of: str
    apart: bool
    more: PowerMore | None


class LoadsAsked(Asked):
    """A load that one of several ways feeds, each of one load or several; the best liked first."""

    sort: Literal["loads"]
    ways: list[list[PowerAsked]]


class SupportAsked(TypedDict):
    """
    Where a hang is picked up: a point by its name, or a spot on the plan with the height at which a
    bridle may meet, at a place along the hang. ``load_kg`` is what the show's plot states.
    """

    point: str
    across_m: float | None
    depth_m: float | None
    apex_m: float | None
    at_m: float
    load_kg: float | None


class WeightAsked(TypedDict):
    """A load of a hang between two places along it, or at one."""

    from_m: float
    to_m: float
    kg: float


class HangAsked(Asked):
    """
    Something that the show flies. ``hoists`` is show, house, counted, none, or empty; ``held`` is
    by which share of its level load a support may go beyond that, where load cells are watched.
    """

    sort: Literal["hang"]
    supports: list[SupportAsked]
    loads: list[WeightAsked]
    hoists: str
    hoist_kg: float
    held: float | None


class TrimAsked(Asked):
    """How high the underside of the hang before it goes, and what is between steel and there."""

    sort: Literal["trim"]
    trim_m: float
    below_m: float | None


class RectangleAsked(TypedDict):
    """
    A rectangle of a stage plot: its size, its centre where it has a place, and the angle that it is
    turned by, anticlockwise. ``on`` is the deck or a wing, or empty; ``lane`` is one to keep clear,
    ``around`` the name of what it is around, or empty; ``stays`` is yes, no, or empty.
    """

    name: str
    line: int
    need: str
    strictness: Strictness
    width_m: float
    depth_m: float
    across_m: float | None
    upstage_m: float | None
    turned_deg: float
    on: str
    height_m: float | None
    weight_kg: float | None
    foot_kg: float | None
    lane: bool
    around: str
    stays: str


class PlotAsked(Asked):
    """A stage plot."""

    sort: Literal["plot"]
    rectangles: list[RectangleAsked]


class RiserAsked(TypedDict):
    """Risers of one size: how many, what for, their height if it is told, whether they roll. [m]"""

    line: int
    use: str
    need: str
    strictness: Strictness
    count: float
    width_m: float
    depth_m: float
    height_m: float | None
    rolling: bool


class RisersAsked(Asked):
    """All risers that an act asks of the house."""

    sort: Literal["risers"]
    risers: list[RiserAsked]


class TrucksAsked(Asked):
    """
    Trucks and the largest case in them. Weights are masses in kilograms, sizes in metres. The
    length is ``length_of`` the whole truck or its trailer; empty where nobody says.
    """

    sort: Literal["trucks"]
    count: float
    length: float | None
    length_of: str
    height: float | None
    weight: float | None
    case_width: float | None
    case_height: float | None
    case_weight: float | None


class LoadInAsked(Asked):
    """When the first truck is opened, on a day of the week that may be empty."""

    sort: Literal["load in"]
    time_s: float
    day: str


class EndAsked(Asked):
    """When the last note ends, on a day of the week that may be empty."""

    sort: Literal["ends"]
    time_s: float
    day: str


class LevelAsked(Asked):
    """The level that the show expects; what it leaves out is empty or ``None``."""

    sort: Literal["level"]
    level_db: float
    weighting: str
    metric: str
    over_s: float | None
    place: str


class CallAsked(Asked):
    """
    People whom the house is to call, by skill; ``meals`` is how many breaks fall in it. ``beside``
    are as many of the same skill as the rider calls for the same time, ``perhaps`` as many more as
    it may, for it does not tell when. ``able`` is what else they must be able to do, or empty.
    """

    sort: Literal["call"]
    who: str
    able: str
    count: float
    long_s: float | None
    meals: float
    beside: float
    perhaps: float


class TaskAsked(Asked):
    """Something that the house is to do or to keep."""

    sort: Literal["task"]


class QuestionAsked(Asked):
    """A question in the rider's own words."""

    sort: Literal["question"]
    words: str


Then = (
    NeedAsked
    | AnyAsked
    | AllAsked
    | ClassesAsked
    | PowerAsked
    | LoadsAsked
    | HangAsked
    | TrimAsked
    | PlotAsked
    | CallAsked
    | TaskAsked
)
"""What may be asked on a condition."""


class IfAsked(Asked):
    """A need that counts where a condition holds; ``unless`` where it does not hold."""

    sort: Literal["if"]
    condition: NeedAsked
    unless: bool
    then: Then


Requirement = (
    NeedAsked
    | AnyAsked
    | AllAsked
    | ClassesAsked
    | IfAsked
    | PowerAsked
    | LoadsAsked
    | HangAsked
    | TrimAsked
    | PlotAsked
    | RisersAsked
    | TrucksAsked
    | LoadInAsked
    | EndAsked
    | LevelAsked
    | CallAsked
    | TaskAsked
    | QuestionAsked
)

ChangeoverAsked = TypedDict(
    "ChangeoverAsked",
    {
        "line": int,
        "roll on": float | None,
        "patch": float | None,
        "monitors": float | None,
        "spare": float | None,
        "lines": float | None,
        "lines a minute": float | None,
        "before": bool,
    },
)
"""The parts of a changeover in seconds; lines are counts, checked before the show or in the gap."""

ClockAsked = TypedDict(
    "ClockAsked",
    {
        "line": int,
        "day": str,
        "load in": float | None,
        "check from": float | None,
        "doors": float | None,
        "on stage": float | None,
        "ends": float | None,
        "set up": float | None,
        "line check": float | None,
        "check": float | None,
        "clear after check": float | None,
        "set": float | None,
        "changeover": float | None,
        "strike": float | None,
        "load out": float | None,
        "parts": ChangeoverAsked | None,
    },
)
"""A show's day in seconds, times counted from midnight; the day of the week may be empty."""


class RiderAsked(TypedDict):
    """
    A rider as the check takes it. ``plays`` is its date, year first, or empty; ``space`` and
    ``configuration`` are the house's that the show plays in, or empty; ``stays_m`` is how deep what
    stays on deck is while others play; ``not_read`` tells each thing in it that cannot be read,
    and that the check therefore goes without.
    """

    act: str
    revision: str
    plays: str
    space: str
    configuration: str
    stays_m: float | None
    clock: ClockAsked | None
    requirements: list[Requirement]
    not_read: list[str]


# What the check answers.


class Fact(TypedDict):
    """The house's fact as a verdict shows it."""

    key: str
    item: str
    label: str
    text: str
    standing: Standing
    also: str
    page: str
    checked: str


class Lack(TypedDict):
    """
    One thing that the house has not said and an ask hangs on: its key, what it is in words, and how
    the ask alone would ask for it. ``words`` are empty where only the question tells it.
    """

    key: str
    words: str
    question: str


class Verdict(Line):
    """
    The answer to one requirement. ``margin`` is in metric and in imperial words, both empty where
    there is none; ``question`` is to the house, ``act_question`` to the act; ``parts`` are the
    answers that this one sums up. ``leans_on`` holds the keys of values that the house sets for it,
    beside its fact's. ``lacks`` tells what of the house would decide an ask, as far as
    that is known one by one.
    """

    verdict: Word
    reason: str
    fact: Fact | None
    margin: list[str]
    notes: list[str]
    remedy: str
    who: str
    question: str
    act_question: str
    lacks: list[Lack]
    parts: list["Verdict"]
    leans_on: list[str]


class DayRow(TypedDict):
    """One row of the day's table, in words."""

    start: str
    end: str
    long: str
    what: str
    whose: str


class Setting(TypedDict):
    """
    A value that the house chooses, by its key, at one of its choices. [SI]

    ``words`` are the same in metric and in imperial words.
    """

    key: str
    item: str
    label: str
    number: float
    words: list[str]


class Arrangement(TypedDict):
    """
    In what one show plays: a space, empty in a house of one stage; a configuration of the house,
    empty where the house has none or it is not known in which; and what the house sets for it, as
    far as a verdict leans on that.
    """

    space: str
    configuration: str
    settings: list[Setting]


class OtherArrangement(TypedDict):
    """
    How a show would fare in another arrangement, and the first need that is worse and better there;
    empty where none is.
    """

    arrangement: Arrangement
    verdict: Word
    short: int
    ask: int
    worse: str
    better: str


class ActAnswer(TypedDict):
    """The worst verdict of one act, in the arrangement that it is judged in."""

    act: str
    revision: str
    arrangement: Arrangement
    verdict: Word


class DepartmentQuestions(TypedDict):
    """What to ask one department."""

    department: str
    questions: list[str]


class ActQuestions(TypedDict):
    """What to ask one act, or all acts of the day."""

    act: str
    questions: list[str]


class Result(TypedDict):
    """
    All that the check answers. ``judged_in`` tells the arrangement and how ``others`` fare, in
    words; both are empty where the house has one arrangement only. What the house sets for the show
    is told there too. ``not_read`` tells what cannot be read of the riders, and was not judged.
    """

    venue: str
    revision: PackRevision
    acts: list[ActAnswer]
    verdict: Word
    verdicts: list[Verdict]
    not_read: list[str]
    judged_in: list[str]
    others: list[OtherArrangement]
    day: list[DayRow]
    questions: list[DepartmentQuestions]
    act_questions: list[ActQuestions]
    cautions: list[str]
