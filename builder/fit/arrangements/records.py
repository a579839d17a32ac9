"""The records of arrangements: where each act of a day plays, and what a day comes to there."""

from typing import TypedDict

from builder.fit.records import DayRow, FitPack, Setting, Value, Verdict


class View(FitPack):
    """
    A pack as it stands in one arrangement. ``standing`` tells for each section by its key which of
    its lines stand: where it says the same of two views, the section is the same in both.
    """

    standing: dict[str, str]


class Place(TypedDict):
    """
    Where an act plays: a configuration of the house, empty where the house names none.

    ``is_open`` where that is not known: the rider's name is none of the house's, or it names none
    and the house has too many to compare.
    """

    configuration: str
    is_open: bool


class Evening(TypedDict):
    """
    The places in which the acts of one day play. ``own`` tells for each rider which of them is its
    own, ``free`` where those play that name none.
    """

    free: Place
    places: list[Place]
    own: list[int]


class Reading(TypedDict):
    """
    A value that the house chooses, of an item by name, as something of a show reads it: the amounts
    at which that turns, the way in which it asks for them, and whether the ends of the value leave
    it open. [SI]
    """

    item: str
    value: Value
    kind: str
    amounts: list[float]
    way: str
    is_open: bool


class Judged(TypedDict):
    """What a day comes to on one evening, with what the house sets for it."""

    evening: Evening
    settings: list[Setting]
    verdicts: list[Verdict]
    rows: list[DayRow]
