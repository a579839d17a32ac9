"""
The pack: what a venue publishes, as plain frozen records.

Everything after this point (pages, drawings, fit, comparison) reads the pack alone. A *fact* is
stated by the house; a *figure* is computed and carries its working. Facts and figures belong to
*items* (a rigging point, a service), items to *sections* (a department).
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, fields, replace
from enum import StrEnum

from builder.reading.how_many import out_words
from builder.rules import Rule

FORMAT = 2
"""
Raised when a reader of the previous format would misread this one; ``docs/pack/pack-format.md``
tells what changed.
"""


class Standing(StrEnum):
    """
    Whether a value is there. Unknown, none and not stated are three different answers; assumed is
    what the program counts with where the house wrote nothing.
    """

    STATED = "stated"
    UNKNOWN = "unknown"
    NONE = "none"
    NOT_STATED = "not stated"
    ASSUMED = "assumed"


class Level(StrEnum):
    """How much a finding matters: someone can be hurt, someone should act, someone should know."""

    DANGER = "danger"
    CAUTION = "caution"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Place:
    """Where in the venue's files something was written."""

    file: str
    line: int = 0
    column: int = 0


@dataclass(frozen=True, slots=True)
class Value:
    """
    A value as people read it and as programs do.

    ``text`` is shown first (the author's own wording for facts), ``also`` is the same in the other
    unit system, ``number`` is in ``unit`` (SI), where it is exact. Where it is not, ``least`` and
    ``most`` are its ends in the same unit, as far as anybody knows: nobody reads an end out of the
    text. ``parts`` are the entries of a list, each by itself: a name may hold a comma, so whoever
    looks for one looks here, never within the text. Where somebody can choose the value, it
    ``can_be_set``: to one of the ``settings``, or anywhere between its ends where none are named.
    """

    text: str
    also: str = ""
    number: float | None = None
    unit: str = ""
    parts: tuple[str, ...] = ()
    least: float | None = None
    most: float | None = None
    can_be_set: bool = False
    settings: tuple[float, ...] = ()

    @property
    def ends(self) -> tuple[float | None, float | None]:
        """What it is at least and at most; twice the number where it is exact. [SI]"""
        return (self.least, self.most) if self.number is None else (self.number, self.number)

    @property
    def far_end(self) -> float | None:
        """
        The number to sort, draw and compare by: the exact one, else what it is at most, else at
        least. [SI]
        """
        least, most = self.ends
        return least if most is None else most


def not_more(value: Value, least: float | None = None) -> Value:
    """A number that something unknown still comes off, as a value of at most so much. [SI]"""
    also = f"at most {value.also}" if value.also else ""
    text = f"at most {value.text}"
    return replace(value, text=text, also=also, number=None, least=least, most=value.number)


def tells_the_most(value: Value) -> bool:
    """Whether the words of a value that is not exact tell the most that it is, and no more."""
    return value.most is not None and value.text.startswith("at most ")


def not_less(value: Value) -> Value:
    """A number that something unknown still adds to, as a value of at least so much. [SI]"""
    also = f"at least {value.also}" if value.also else ""
    return replace(value, text=f"at least {value.text}", also=also, number=None, least=value.number)


def one_or_both(least: Value | None, most: Value | None) -> Value | None:
    """
    A value from its two ends: the one number where both are the same, else both, else the one that
    is known; None where neither is. [SI]
    """
    if least is None or most is None:
        return not_more(most) if most else not_less(least) if least else None
    if least.number == most.number:
        return least
    return replace(
        least,
        text=from_to(least.text, most.text),
        also=from_to(least.also, most.also) if least.also and most.also else "",
        number=None,
        least=least.number,
        most=most.number,
    )


def in_a_row(parts: Sequence[str]) -> str:
    """Names one after the other; parted by semicolons where one of them has a comma within."""
    return ("; " if any("," in part for part in parts) else ", ").join(parts)


def from_to(least: str, most: str) -> str:
    """Two ends in words, once where they read the same."""
    return least if least == most else f"{least} to {most}"


MEMORY = "memory"
"""The way of checking that is none: the language names it so."""


@dataclass(frozen=True, slots=True)
class Check:
    """When, by whom and how something was checked; empty where nobody says."""

    on: str
    by: str
    how: str


@dataclass(frozen=True, slots=True)
class Verified:
    """
    When, by whom and how a value was checked. ``on`` is a day, or the month or the year alone.
    ``age_days`` counts to the day of the pack's revision, from the last day that ``on`` may mean;
    ``stale`` counts from the first. All are empty where nobody says.
    """

    on: str
    by: str
    how: str
    age_days: int
    stale: bool = False

    @property
    def age(self) -> str:
        """
        How long before this revision it was, or after it, in the coarsest words that still tell.
        """
        if self.age_days == 0 and not is_day(self.on):
            return "about when this revision was made"
        span = span_of_days(abs(self.age_days))
        told = span if is_day(self.on) else f"at least {span}"
        return f"{told} {'after' if self.age_days < 0 else 'before'} this revision"


DAY_LONG = len("2026-03-02")


def is_day(on: str) -> bool:
    """Whether a date names a day; else it is a month or a year, as far as anybody knows."""
    return len(on) == DAY_LONG


def sureness(check: Check | Verified) -> tuple[int, str]:
    """How sure a check is: what is remembered least, then what nobody checked, then the oldest."""
    if check.how == MEMORY:
        return (0, check.on)
    return (1 if check.on == "" else 2, check.on)


def span_of_days(days: int) -> str:
    """A span in the coarsest words that still tell: days, weeks, months."""
    for limit, size, unit in ((14, 1, "day"), (70, 7, "week"), (731, 30, "month")):
        if days < limit:
            count = days // size
            return f"{count} {unit}" if count == 1 else f"{count} {unit}s"
    return f"{days // 365} years"


@dataclass(frozen=True, slots=True)
class Fact:
    """
    One stated value with everything a reader needs to trust it. ``confirmed`` tells who confirmed
    an odd one, and when.
    """

    key: str
    label: str
    standing: Standing
    value: Value | None = None
    datum: str = ""
    terms: str = ""
    condition: str = ""
    note: str = ""
    verified: Verified | None = None
    place: Place | None = None
    confirmed: str = ""


@dataclass(frozen=True, slots=True)
class Reference:
    """Where a formula comes from: the source with its edition, and the clause."""

    source: str
    clause: str
    title: str = ""


@dataclass(frozen=True, slots=True)
class Input:
    """
    One value that went into a figure, named as the equation names it. ``key`` is the fact or figure
    it came from, where there is one.
    """

    label: str
    text: str
    key: str = ""


@dataclass(frozen=True, slots=True)
class Working:
    """
    How a figure came about, so that a reader can redo it by hand. ``leaves_out`` says what the
    model does not contain. ``check`` is the weakest check of the lines that went in beside the
    figure's own; None where no other went in.
    """

    equation: str
    inputs: tuple[Input, ...]
    references: tuple[Reference, ...]
    steps: tuple[str, ...] = ()
    leaves_out: str = ""
    check: Check | None = None


@dataclass(frozen=True, slots=True)
class Figure:
    """
    One computed value. Where inputs are missing there is no value, and ``missing`` names them.

    It is as sure as the least sure of what went in: ``verified`` is that check where it is another
    than the section's.
    """

    key: str
    label: str
    value: Value | None
    working: Working
    caution: str = ""
    note: str = ""
    missing: tuple[str, ...] = ()
    verified: Verified | None = None


class Turning:
    """
    What a figure is made of that a value can turn, so that its ends do not follow from those of the
    value alone.
    """

    __slots__ = ()

    def between(self, others: Sequence["Turning"]) -> Value | None:
        """
        The figure between what it is made of at every end, itself among them; None where that
        cannot be told.
        """
        raise NotImplementedError


@dataclass(frozen=True, slots=True)
class TurnedFigure(Figure):
    """A figure that a value can turn, with what it is made of: while it is worked out only."""

    turning: Turning = field(default_factory=Turning, compare=False, repr=False)


def turned_by(figure: Figure, turning: Turning) -> TurnedFigure:
    """A figure with what it is made of."""
    own = {part.name: getattr(figure, part.name) for part in fields(Figure)}
    return TurnedFigure(**own, turning=turning)


def as_published(figure: Figure) -> Figure:
    """A figure without what it is made of."""
    if not isinstance(figure, TurnedFigure):
        return figure
    return Figure(**{part.name: getattr(figure, part.name) for part in fields(Figure)})


@dataclass(frozen=True, slots=True)
class Item:
    """
    A thing the house has, such as a rigging point. ``key`` is unique in the pack, ``kind`` groups
    items into tables.

    Where the line tells how many of its number do not work, ``out`` of ``of`` do not, and ``units``
    are the numbers of those, where they are numbered. ``counted`` is what is counted, such as ways;
    empty where it is the things themselves. ``unit_of`` is the key of the line that this is a
    single unit of. ``verified`` is the line's own check, where it has one beside the department's.
    ``house_only`` marks a line for the house only that the check of a show counts with: no name of
    its own, the few values that count, and no place on any page.
    """

    key: str
    kind: str
    name: str
    facts: tuple[Fact, ...] = ()
    figures: tuple[Figure, ...] = ()
    condition: str = ""
    note: str = ""
    photo: str = ""
    place: Place | None = None
    out: int = 0
    of: int = 0
    units: tuple[int, ...] = ()
    counted: str = ""
    unit_of: str = ""
    terms: str = ""
    verified: Verified | None = None
    house_only: bool = False

    def fact(self, name: str) -> Fact | None:
        """The fact whose key ends in ``name``, or None."""
        return next((fact for fact in self.facts if fact.key == f"{self.key}.{name}"), None)

    def figure(self, name: str) -> Figure | None:
        """The figure whose key ends in ``name``, or None."""
        return next((figure for figure in self.figures if figure.key == f"{self.key}.{name}"), None)

    def number(self, name: str) -> float | None:
        """The SI number of the fact or figure ``name``, or None where there is no such value."""
        found = self.fact(name) or self.figure(name)
        return found.value.number if found and found.value else None

    def far_end(self, name: str) -> float | None:
        """
        The number to sort and draw the fact or figure ``name`` by, exact or not; None where there
        is none. [SI]
        """
        found = self.fact(name) or self.figure(name)
        return found.value.far_end if found and found.value else None

    @property
    def out_words(self) -> str:
        """How many of how many do not work, in words; empty where all do or nobody says."""
        return out_words(self.out, self.of, self.units, self.counted)

    @property
    def position(self) -> tuple[float, float] | None:
        """Where it stands, across and upstage of the datum, as it states itself. [m]"""
        x, y = self.number("at.across"), self.number("at.depth")
        return (x, y) if x is not None and y is not None else None

    def text(self, name: str) -> str:
        """The shown text of the fact or figure ``name``, or an empty text."""
        found = self.fact(name) or self.figure(name)
        return found.value.text if found and found.value else ""


@dataclass(frozen=True, slots=True)
class Outline:
    """A flat shape on the plan: corners as (across, depth) pairs in metres from the datum."""

    key: str
    kind: str
    name: str
    corners: tuple[tuple[float, float], ...]

    @property
    def across_m(self) -> float:
        """Its extent across the stage. [m]"""
        return max(x for x, _ in self.corners) - min(x for x, _ in self.corners)


@dataclass(frozen=True, slots=True)
class Field:
    """
    A computed map: levels on a grid of points, one row of numbers a band, in tenths of a dB
    relative to the reference named.

    ``points`` are (across, depth, height) in metres. Rows of ``levels`` follow ``bands``; columns
    follow ``points``. ``hidden`` counts from 0 the points that no box of a hang reaches in a
    straight line: levels there are not lowered for it.
    """

    key: str
    name: str
    reference: str
    step_m: float
    bands: tuple[str, ...]
    points: tuple[tuple[float, float, float], ...]
    levels: tuple[tuple[int, ...], ...]
    working: Working
    caution: str = ""
    hidden: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Finding:
    """
    Something the house should know. ``code`` is stable; ``subject`` is the key of the item, fact or
    figure concerned. ``asks_about`` is the value in question, as its author wrote it, where whoever
    may can confirm it, and ``confirm_on`` the line of the file to do so; both are empty where
    nothing can be confirmed. ``question`` is the end of the sentence that asks what else it could
    be. ``space`` is the key of the space that it is of, empty for what all share and in a house of
    one stage.
    """

    level: Level
    code: str
    sentence: str
    subject: str = ""
    place: Place | None = None
    asks_about: str = ""
    confirm_on: str = ""
    question: str = ""
    space: str = ""


@dataclass(frozen=True, slots=True)
class Confirmed:
    """A finding that whoever may has looked at and confirmed, by role and day."""

    finding: Finding
    by: str
    on: str


@dataclass(frozen=True, slots=True)
class Space:
    """One stage of a house that has several, by the key that its sections bear."""

    key: str
    name: str


@dataclass(frozen=True, slots=True)
class InConfiguration:
    """
    What differs of a section in other configurations of the house than the usual one: items with
    the figures that they have there, maps and outlines; ``without`` and ``without_maps`` are the
    keys of items and maps of the section that there are none of there. What only others have is
    told so of the usual one too.
    """

    configurations: tuple[str, ...]
    items: tuple[Item, ...] = ()
    fields: tuple[Field, ...] = ()
    outlines: tuple[Outline, ...] = ()
    without: tuple[str, ...] = ()
    without_maps: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Section:
    """
    One department's part of the pack. ``note`` is what its file says of the whole department.
    ``space`` is the key of the space that it describes; empty for what all spaces share, and in a
    house of one stage. Figures and maps are those of the usual configuration of the house, the
    first that it names; ``elsewhere`` tells what differs in others.
    """

    key: str
    title: str
    items: tuple[Item, ...]
    outlines: tuple[Outline, ...] = ()
    fields: tuple[Field, ...] = ()
    cautions: tuple[str, ...] = ()
    verified: Verified | None = None
    note: str = ""
    space: str = ""
    elsewhere: tuple[InConfiguration, ...] = ()

    def of_kind(self, kind: str) -> tuple[Item, ...]:
        """The items of one kind, in the author's order."""
        return tuple(item for item in self.items if item.kind == kind)

    def item(self, kind: str, name: str = "") -> Item | None:
        """The first item of a kind, or the one with that name."""
        return next((item for item in self.of_kind(kind) if not name or item.name == name), None)


@dataclass(frozen=True, slots=True)
class Revision:
    """
    Which state of the house this is. ``fingerprint`` is a hash of the description's text, so two
    packs can be told apart.
    """

    number: str
    on: str
    by: str
    fingerprint: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Altered:
    """One key of a line, before and after a change; empty where it was not written."""

    key: str
    was: str = ""
    now: str = ""


@dataclass(frozen=True, slots=True)
class Change:
    """
    One dated entry of the house's log. ``moved`` tells in words which figures moved with it.

    Since a change of what works, ``out`` of ``of`` of the line do not.
    """

    on: str
    by: str
    why: str
    did: str = ""
    file: str = ""
    within: str = ""
    line: str = ""
    out: int | None = None
    of: int | None = None
    altered: tuple[Altered, ...] = ()
    moved: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Pack:
    """
    Everything that is published of one revision of one venue. ``spaces`` are its stages where it
    has several.
    """

    venue: str
    revision: Revision
    sections: tuple[Section, ...]
    findings: tuple[Finding, ...]
    system: str = "metric"
    stale_after_days: int = 365
    log: tuple[Change, ...] = ()
    rules: tuple[Rule, ...] = ()
    confirmed: tuple[Confirmed, ...] = ()
    spaces: tuple[Space, ...] = ()
    format: int = field(default=FORMAT)

    def section(self, key: str) -> Section | None:
        """The section of a department, or None where the venue does not describe it."""
        return next((section for section in self.sections if section.key == key), None)

    def items(self) -> Iterator[Item]:
        """Every item of every section."""
        return (item for section in self.sections for item in section.items)
