"""
The records of the day's clock: acts, what the house says, work before doors, rows of the table.
"""

from typing import Literal, TypedDict

from builder.fit.records import ClockAsked, DayRow, Item, Value, Verdict


class Act(TypedDict):
    """An act with its clock, and its first and last note where they are known. [s]"""

    act: str
    clock: ClockAsked
    starts_s: float | None
    ends_s: float | None


class Doors(TypedDict):
    """When doors are, or what to ask."""

    s: float | None
    asks: list[str]


class WorkedDoors(Doors):
    """The same, worked back from the first note where no rider says; ``notes`` tell that."""

    notes: list[str]


class HouseSays(TypedDict):
    """
    A length or a time that the house states, with the value and the item that say it; ``open``
    tells why it has to be asked.
    """

    standing: Literal["stated", "none", "ask"]
    s: float | None
    value: Value | None
    item: Item | None
    open: str


class Meals(TypedDict):
    """
    When a meal break is due, counted from the last one, and how long it stops work.

    ``after_s`` is None where no break is laid out; ``due_s`` tells when one would be due all the
    same. ``asks`` holds a question where both must be known and are not.
    """

    after_s: float | None
    break_s: float
    asks: list[str]
    notes: list[str]
    due_s: float | None


class Quiet(TypedDict):
    """
    The hours in which no check may be heard, as pairs of first and last second; ``perhaps`` those
    of days that the show may be on, where nobody says which day it is.
    """

    hours: list[list[float]]
    perhaps: list[list[float]]
    day_asks: list[str]
    asks: list[str]
    notes: list[str]


class Piece(TypedDict):
    """
    A piece of work before doors. Of unknown length where ``length_s`` is None; ``at_s`` is a time
    that was agreed for its beginning, ``until_s`` one for its end; a meal may break it where it
    ``splits``.
    """

    what: str
    whose: str
    length_s: float | None
    not_before_s: float | None
    until_s: float | None
    at_s: float | None
    splits: bool


class Row(TypedDict):
    """A row of the day in seconds; None where nobody knows."""

    from_s: float | None
    to_s: float | None
    length_s: float | None
    what: str
    whose: str


class Late(TypedDict):
    """By how much an agreed time is missed; less than nothing: kept, and that much to spare."""

    late_s: float
    at_s: float
    what: str
    whose: str


class Laid(TypedDict):
    """
    Work laid out so far.

    ``now_s`` is when the last piece ends, ``fresh_s`` when the last break ended; ``sure`` turns
    false once a length was not known. ``open`` are the pieces whose length must be known although
    their end is agreed.
    """

    now_s: float
    fresh_s: float
    sure: bool
    rows: list[Row]
    pins: list[Late]
    open: list[Piece]
    breaks: int


class Plan(TypedDict):
    """
    Everything that decides whether the checks are done by doors; ``lacks`` is what to ask the house
    and ``act_lacks`` the acts.
    """

    pieces: list[Piece]
    lacks: list[str]
    act_lacks: list[str]
    doors_s: float | None
    ready: HouseSays
    meals: Meals
    quiet: list[list[float]]
    quiet_perhaps: list[list[float]]
    day_asks: list[str]
    notes: list[str]
    load_in_from: HouseSays
    kept: HouseSays
    first_s: float | None
    start_s: float | None


class Run(TypedDict):
    """
    A plan laid out: its rows, by how much each agreed time is missed, and what is not known by the
    house and by the acts.
    """

    rows: list[Row]
    late: list[Late]
    lacks: list[str]
    act_lacks: list[str]


class Changeover(TypedDict):
    """
    How long a changeover takes; ``lines_s`` of it are lines that could be checked before, and
    ``sum_words`` tell how it adds up.
    """

    s: float
    asks: list[str]
    sum_words: str
    lines_s: float
    notes: list[str]


class LineCheck(TypedDict):
    """The line check within a changeover, in words too."""

    s: float
    words: list[str]
    asks: list[str]


class DayAnswer(TypedDict):
    """Verdicts on the day, and the day as a table."""

    verdicts: list[Verdict]
    rows: list[DayRow]
