"""What a rider asks of people: who is called when, and what is done or kept by when."""

from typing import Literal

from pydantic import Field

from builder.reading.quantities import TimeOfDay
from builder.reading.skills import Skill
from builder.reading.words import Count, Day, Name, Text
from builder.reading.written import Written
from builder.rider.hanging import Several
from builder.rider.lasting import Lasting
from builder.rider.one_need import OneNeed

Happening = Literal[
    "load in",
    "first call",
    "check",
    "doors",
    "show",
    "sunset",
    "end",
    "load out",
    "this rider",
    "contract",
]
TaskKind = Literal[
    "cleaning",
    "floor kept clean",
    "laying",
    "hanging",
    "patching",
    "focus",
    "tuning",
    "heating",
    "stage free",
    "way kept clear",
    "rehearsal",
    "quiet",
    "no photographs",
    "doors kept shut",
    "meals",
    "telling us",
    "papers",
    "places kept",
    "setting up",
    "equipping",
    "feeds laid",
    "seats taken out",
    "no other event",
    "meal breaks",
    "other",
]


class Moment(Written):
    """A time: of the day, or told from something that happens."""

    at: TimeOfDay | None = None
    """The time of day, where it is one."""
    on: Day | None = None
    """The date, such as 2027-03-01; with a time of day or without."""
    before: Happening | None = None
    """What it is before: load in, the show's first call, check, doors, show, its end, and so on."""
    after: Happening | None = None
    """What it is after."""
    by: Lasting | None = None
    """How long before or after that. Left out, it is right then."""


class Call(Written):
    """People whom the house is to call, by what they can do."""

    who: Skill
    """What they can do."""
    count: Several = 1
    """How many of them."""
    able_to: Name | None = Field(default=None, alias="able to")
    """What else they must be able to do, such as run the desk."""
    what_for: Name | None = Field(default=None, alias="what for")
    """What they are called for, such as focus or strike."""
    from_: Moment | None = Field(default=None, alias="from")
    """From when."""
    until: Moment | None = None
    """Until when."""
    long: Lasting | None = None
    """How long, meals included."""
    meals: Count | None = None
    """How many meal breaks fall in it."""
    strictness: Literal["must", "should"] = "must"
    """Must, or should where the show can live without."""
    carried_by: Literal["show", "house", "hire"] = Field(default="house", alias="carried by")
    """Who brings them: house, hire, or show."""
    if_: OneNeed | None = Field(default=None, alias="if")
    """It counts only where the house meets this."""
    unless: OneNeed | None = None
    """It counts only where the house does not meet this."""
    note: Text | None = None
    """What the house should know, in a sentence."""


class Task(Written):
    """Something that the house is to do, to keep or to keep away, and when."""

    kind: TaskKind
    """What sort of thing it is."""
    what: Name
    """What is to be done or kept, in words."""
    from_: Moment | None = Field(default=None, alias="from")
    """From when, or when it is done."""
    until: Moment | None = None
    """Until when, or by when it has to be done."""
    long: Lasting | None = None
    """How long."""
    persons: Count | None = None
    """For how many persons, such as meals."""
    strictness: Literal["must", "should"] = "must"
    """Must, or should where the show can live without."""
    carried_by: Literal["show", "house", "hire"] = Field(default="house", alias="carried by")
    """Who sees to it: house, hire, or show."""
    if_: OneNeed | None = Field(default=None, alias="if")
    """It counts only where the house meets this."""
    unless: OneNeed | None = None
    """It counts only where the house does not meet this."""
    note: Text | None = None
    """What the house should know, in a sentence."""
