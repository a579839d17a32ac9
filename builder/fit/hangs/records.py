"""The inner records of hang plans."""

from typing import Literal, TypedDict

from builder.fit.records import Fact, Item, Value
from builder.formulas.two_legs import LegSpan
from builder.formulas.unrelieved import Ways

IssueWord = Literal["short", "ask"]
LimitKind = Literal["point", "beam", "zone", "roof"]
Share = tuple[int, float]
"""The number of a support and how much of it: a leg of a bridle carries a part."""
Cases = list[Ways]
"""What each load brings to each support, case by case. [kg]"""


class Issue(TypedDict):
    """
    Something that stands against a fit: in words, with a question or a remedy, and the house's
    fact.

    ``slack`` is how far a limit is passed, below zero where one is. ``house`` is true where the
    house hangs something there, ``hangs`` is what, as far as the pack names it. ``about`` is the
    key of what the question is about, so that questions of several hangs are one; ``words`` are the
    same in words, where one of the questions cannot stand for all. [kg]
    """

    word: IssueWord
    reason: str
    question: str
    about: str
    words: str
    remedy: str
    slack: float
    fact: Fact | None
    house: bool
    hangs: list[str]


class Leg(TypedDict):
    """A leg of a bridle: its share of the load straight down and its pull, for a load of 1."""

    item: Item
    share: float
    pull: float


class LegEnd(LegSpan):
    """A point as the end of a leg, seen from where the bridle meets. [m]"""

    item: Item


class NearPoint(TypedDict):
    """A point and how far it is from a spot, seen from above. [m]"""

    item: Item
    away_m: float


class Place(TypedDict):
    """
    What carries a support: a point and how far that is from the spot, the two legs of a bridle that
    meets at ``apex_m``, or nothing; and what stands against it. [m]
    """

    item: Item | None
    away_m: float
    issues: list[Issue]
    legs: list[Leg]
    apex_m: float | None


class Brought(TypedDict):
    """
    What a hang brings to its supports at the least and at the most, the house's factor counted,
    hoists apart. [kg]
    """

    low: Cases
    high: Cases
    factor: float
    hoist_low: float
    hoist_high: float
    issues: list[Issue]
    notes: list[str]


class HoistWeights(TypedDict):
    """What a hoist adds to each support at the least and at the most. [kg]"""

    low: float
    high: float
    issues: list[Issue]
    notes: list[str]


class Limit(TypedDict):
    """
    A limit: what it is called, the value and the fact that show it, what is left of it at least and
    at most (None where nobody says), whether the house hangs something there, and what. ``uneven``
    where the house's own hangs may bring more when their hoists are not as planned: what is left
    at least counts that. [kg]
    """

    key: str
    kind: LimitKind
    words: str
    item: Item | None
    value: Value | None
    fact: Fact | None
    left_kg: float | None
    most_left_kg: float | None
    uneven: bool
    house: bool
    hangs: list[str]


class LimitOver(TypedDict):
    """A limit with the supports under it; ``bridled`` where a bridle leads there."""

    limit: Limit
    shares: list[Share]
    bridled: bool


class Sum(TypedDict):
    """What the show brings under a limit so far, at the least and at the most. [kg]"""

    low_kg: float
    high_kg: float
    bridled: bool


class SoFar(TypedDict):
    """
    What the hangs before this one took: sums by the key of their limit, the points that they load
    by key, and how many of the house's hoists they ask for; and the titles of those whose rider
    does not say what they weigh.
    """

    sums: dict[str, Sum]
    loaded: list[str]
    hoists: int
    open: list[str]


class Look(TypedDict):
    """A limit with what stands against a hang there, or with what is to spare. [kg]"""

    limit: Limit
    slack: float | None
    issue: Issue | None
