"""
What ``house.yml`` says of money and rules: fines, house rules with whom they bind, rates, and the
documents that the house has or asks for.
"""

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from builder.departments.house.closure import Closable
from builder.reading.absent import Absent
from builder.reading.maybe import Maybe
from builder.reading.money import Amount
from builder.reading.possible import Possible
from builder.reading.quantities import Duration, Length, TimeOfDay
from builder.reading.weekdays import Weekday
from builder.reading.words import Count, DayOrSo, Name, Ratio, Text, YesNo
from builder.reading.written import InSpaces, Line, Plausible, RefersTo, Written


class Fine(Written):
    """What it costs to pass a limit or to break a rule."""

    amount: Maybe[Amount] = Absent.NOT_STATED
    """How much, with its currency, such as £500."""
    each_further: Maybe[Amount] = Absent.NOT_STATED
    """How much each one after the first, where that differs."""
    grace: Annotated[Maybe[Duration], Plausible(0.0, 3_600.0)] = Absent.NOT_STATED
    """How long past the limit nothing is charged, or none."""
    step: Annotated[Maybe[Duration], Possible.above(0.0, 86_400.0), Plausible(60.0, 14_400.0)] = (
        Absent.NOT_STATED
    )
    """The time for which it is charged once, where it goes by time. A step that is begun counts."""
    for_each: Name | None = None
    """What it is charged for, where it does not go by time, such as each peak."""
    taken_by: Name | None = None
    """Who takes it, such as the council."""


class Counted(Written):
    """How many times a limit may be passed within a time before it counts as broken."""

    more_than: Annotated[Maybe[Count], Plausible(0, 100)] = Absent.NOT_STATED
    """How many are let pass."""
    within: Annotated[Maybe[Duration], Possible.above(0.0, 86_400.0), Plausible(1.0, 14_400.0)] = (
        Absent.NOT_STATED
    )
    """The time in which they are counted."""


class HouseRule(InSpaces):
    """Something that a show must or must not do here, and whom it binds."""

    public_because: ClassVar[str] = "a show has to keep to it"
    rule: Text
    """The rule, in a sentence."""
    kind: Maybe[
        Literal[
            "animals",
            "electricity",
            "fixings",
            "food and drink",
            "hanging",
            "loading",
            "merchandise",
            "parking",
            "photographs and recording",
            "smoking",
            "vehicles",
            "work at height",
            "other",
        ]
    ] = Absent.NOT_STATED
    """
    What it is about: animals, electricity, fixings, food and drink, hanging, loading, merchandise,
    parking, photographs and recording, smoking, vehicles, work at height, or other.
    """
    binds: Name | None = None
    """Whom it binds, such as caterers. Left out, everybody."""
    place: Name | None = None
    """Where it holds, such as the deck."""
    days: tuple[Weekday, ...] = ()
    """The days on which it holds, where it is not every day."""
    decided_by: Name | None = None
    """Who decides where it is not clear, by role."""
    fine: Fine | None = None
    """What a breach costs."""


class Surcharge(Written):
    """When a rate is higher, and how much."""

    from_: Annotated[TimeOfDay | None, Field(alias="from")] = None
    """From which time of day on."""
    after: Annotated[Duration | None, Plausible(3_600.0, 86_400.0)] = None
    """After how long a call, where it goes by that."""
    times: Annotated[Ratio | None, Possible(1.0, 10.0), Plausible(1.0, 3.0)] = None
    """By how much the rate is multiplied, such as 2 for double."""


class Rate(Line):
    """What something costs that a show may order or must pay."""

    what: Name
    """What is paid for, such as local hands."""
    amount: Maybe[Amount] = Absent.NOT_STATED
    """How much, with its currency, such as £17."""
    per: Maybe[
        Literal["hour", "call", "evening", "day", "week", "show", "piece", "square metre"]
    ] = Absent.NOT_STATED
    """The unit it is for: hour, call, evening, day, week, show, piece or square metre."""
    each_person: YesNo | None = None
    """Whether it is for each person."""
    persons: Annotated[Maybe[Count], Plausible(1, 500)] = Absent.NOT_STATED
    """How many persons are sent, where the house says that."""
    least: Annotated[Maybe[Duration], Possible.above(0.0, 604_800.0), Plausible(1_800, 86_400)] = (
        Absent.NOT_STATED
    )
    """The shortest time that is charged."""
    surcharge: Surcharge | None = None
    """When it is higher."""
    since: DayOrSo | None = None
    """From which day, month or year on it holds."""


DocumentKind = Literal[
    "calculation",
    "certificate",
    "drawing",
    "insurance",
    "licence",
    "maker's sheet",
    "plan",
    "risk assessment",
    "other",
]


class Document(Line):
    """A document that the house has, and how one gets it."""

    defines: ClassVar[str] = "document"
    name: Name
    """What it is called. What rests on it refers to this name."""
    kind: Maybe[DocumentKind] = Absent.NOT_STATED
    """
    Calculation, certificate, drawing, insurance, licence, maker's sheet, plan, risk assessment or
    other.
    """
    about: Text | None = None
    """What it is about, and for what state of it."""
    dated: Maybe[DayOrSo] = Absent.NOT_STATED
    """Its day, month or year."""
    from_whom: Name | None = None
    """Who wrote or issued it, by role or firm."""
    valid_until: Maybe[DayOrSo] = Absent.NOT_STATED
    """Until when it holds, or none where it does not end."""
    form: Name | None = None
    """In which form, such as PDF, drawing file or model."""
    had: Maybe[
        Literal[
            "on request", "sent with the contract", "published", "seen on site", "there is none"
        ]
    ] = Absent.NOT_STATED
    """
    How one gets it: on request, sent with the contract, published, or seen on site; or that there
    is none.
    """


class Asked(Line):
    """A document that the house asks of a show."""

    public_because: ClassVar[str] = "a show has to bring it"
    name: Name
    """What is asked for, such as test certificate."""
    kind: Maybe[DocumentKind] = Absent.NOT_STATED
    """
    Calculation, certificate, drawing, insurance, licence, maker's sheet, plan, risk assessment or
    other.
    """
    about: Text | None = None
    """For what, such as all electrical kit."""
    not_older: Annotated[Maybe[Duration], Possible.above(0.0, 6.4e8), Plausible(86_400, 2e8)] = (
        Absent.NOT_STATED
    )
    """How old it may be at most, such as 365 days."""
    due: Annotated[Maybe[Duration], Plausible(0.0, 90 * 86_400.0)] = Absent.NOT_STATED
    """How long before the show, or before its load-in, it must be there."""
    due_before: Maybe[Literal["the load-in", "the show"]] = Absent.NOT_STATED
    """What that counts back from."""


class Hired(InSpaces):
    """Something of the house that is hired in, for a season or for one show."""

    public_because: ClassVar[str] = "shows count on its figures"
    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"may_differ"})
    name: Name
    """What is hired, such as stage and roof."""
    departments: tuple[Closable, ...] = ()
    """
    The departments whose figures are of it. Left out, all of them, where what comes may differ.
    """
    from_whom: Name | None = None
    """Whom it is hired from, by role or firm."""
    asked_for: Text | None = None
    """What was ordered."""
    may_differ: Text | None = None
    """
    How what comes may differ from what was ordered, and so from these pages. A show whose answer
    rests on a figure of it is asked.
    """
    differs_to: Maybe[Literal["better", "worse", "either"]] = Absent.NOT_STATED
    """
    Whether what comes can only be better than these pages tell, only worse, or either. Left out, it
    is either: then a show is asked whether its need is met or not.
    """
    make: Maybe[Name] = Absent.NOT_STATED
    """Its make and type."""
    make_told: Text | None = None
    """When make and type are known, where they are not known yet, such as the Monday before."""
    sheet: Annotated[Maybe[Name], RefersTo("document")] = Absent.NOT_STATED
    """The maker's or hirer's sheet, by its name among the documents."""
    length: Annotated[Maybe[Length], Plausible(2.0, 60.0)] = Absent.NOT_STATED
    """How long it is as it comes, such as a trailer."""
    room_width: Annotated[Maybe[Length], Plausible(2.0, 100.0)] = Absent.NOT_STATED
    """The ground it needs to be set up: its longer side."""
    room_depth: Annotated[Maybe[Length], Plausible(2.0, 100.0)] = Absent.NOT_STATED
    """The other side of that ground."""
    set_up_by: Annotated[Maybe[Count], Plausible(1, 100)] = Absent.NOT_STATED
    """How many of its own crew set it up."""
    set_up_takes: Annotated[Maybe[Duration], Plausible(900.0, 1_000_000.0)] = Absent.NOT_STATED
    """How long they take."""
