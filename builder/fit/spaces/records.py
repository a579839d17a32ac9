"""The records of spaces: where the acts of a day play, and what the day comes to there."""

from typing import TypedDict

from builder.fit.records import FitSpace, Result, RiderAsked


class Group(TypedDict):
    """The acts of a day that play in one space, in the riders' order."""

    space: FitSpace
    riders: list[RiderAsked]


class Evening(TypedDict):
    """One way of giving the acts of a day to spaces: `free` is where those play that name none."""

    free: FitSpace
    groups: list[Group]
    results: list[Result]
