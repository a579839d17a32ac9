"""
A call of crew on the clock: breaks, the hours that are paid, overtime, and the rest after it.

The house's own agreement gives the numbers; none is assumed here. Every hour is paid once, at the
highest of the steps that hold for it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import fsum

from builder.formulas.cite import cites
from builder.formulas.meal_breaks import meal_breaks_due
from builder.formulas.ranges import above_zero, not_negative
from builder.formulas.sources import COMMON_PRACTICE, DIRECTIVE_2003_88

DAY_S = 86_400.0
HOUR_S = 3_600.0
Stretch = tuple[float, float]
"""Work without a break, from when until when. [s] from midnight"""


@dataclass(frozen=True, slots=True)
class Step:
    """
    When an hour is paid ``times`` the rate: once ``after_s`` of work are done, or within a part of
    the day that may go past midnight. [s]
    """

    times: float
    after_s: float | None = None
    from_s: float | None = None
    until_s: float | None = None

    def __post_init__(self) -> None:
        """Refuse a factor or a time below nothing."""
        not_negative("times", self.times)
        not_negative("after_s", self.after_s or 0.0)


@cites(
    COMMON_PRACTICE,
    "meal breaks as the house's agreement has them",
    equation="breaks = ceil((span - after) / (after + break)), at least 0",
)
def meal_breaks(*, span_s: float, after_s: float, break_s: float) -> int:
    """
    Meal breaks in a call.

    Parameters
    ----------
    span_s
        From the beginning of the call to its end, breaks included. [s]
    after_s
        The longest that anybody works without a meal break. [s]
    break_s
        How long work stops for one. [s]

    Returns
    -------
    int
        The least number with which no stretch of work is longer than ``after_s``.

    Raises
    ------
    ValueError
        If ``span_s`` or ``break_s`` is negative, or ``after_s`` is not above 0.
    """
    not_negative("span_s", span_s)
    not_negative("break_s", break_s)
    above_zero("after_s", after_s)
    return meal_breaks_due(span_s, after_s, break_s)


@cites(
    COMMON_PRACTICE,
    "breaks when they are due",
    equation="work for 'after', then a break, until the end of the call",
)
def stretches(
    *, start_s: float, span_s: float, after_s: float, break_s: float
) -> tuple[Stretch, ...]:
    """
    The work of a call between its breaks, each break as late as it may be.

    Parameters
    ----------
    start_s
        When the call begins, from midnight. [s]
    span_s, after_s, break_s
        As for :func:`meal_breaks`. [s]

    Returns
    -------
    tuple of pairs
        Each stretch of work, from when until when. [s]

    Raises
    ------
    ValueError
        As :func:`meal_breaks`.
    """
    found: list[Stretch] = []
    now_s, end_s = start_s, start_s + span_s
    for _ in range(meal_breaks(span_s=span_s, after_s=after_s, break_s=break_s)):
        found.append((now_s, min(now_s + after_s, end_s)))
        now_s = min(now_s + after_s + break_s, end_s)
    return (*found, (now_s, end_s))


@cites(
    COMMON_PRACTICE,
    "overtime as the house's agreement has it",
    equation="paid hours = sum over the hours worked of the highest factor that holds",
)
def paid_hours(*, worked: Sequence[Stretch], steps: Sequence[Step]) -> float:
    """
    The hours that are paid for a call, overtime counted by its factor.

    Parameters
    ----------
    worked
        The stretches of work, one after the other. [s]
    steps
        The overtime steps. Where several hold for an hour the highest counts; they are not
        multiplied.

    Returns
    -------
    float
        Paid hours: an hour at double counts as two. [h]

    Raises
    ------
    ValueError
        If a stretch ends before it begins.
    """
    paid: list[float] = []
    done_s = 0.0
    for from_s, to_s in worked:
        not_negative("a stretch", to_s - from_s)
        ends = sorted({from_s, to_s, *cuts(from_s, to_s, done_s, steps)})
        for begins_s, ends_s in pairwise(ends):
            middle_s = (begins_s + ends_s) / 2
            times = max(
                (step.times for step in steps if holds(step, middle_s, done_s + middle_s - from_s)),
                default=1.0,
            )
            paid.append(times * (ends_s - begins_s) / HOUR_S)
        done_s += to_s - from_s
    return fsum(paid)


def cuts(from_s: float, to_s: float, done_s: float, steps: Sequence[Step]) -> list[float]:
    """The moments of a stretch at which another step may begin to hold. [s]"""
    moments = [from_s + step.after_s - done_s for step in steps if step.after_s is not None]
    for step in steps:
        for of_day_s in (step.from_s, step.until_s):
            if of_day_s is not None:
                first = int(from_s // DAY_S)
                days = range(first, int(to_s // DAY_S) + 1)
                moments += [day * DAY_S + of_day_s for day in days]
    return [moment for moment in moments if from_s < moment < to_s]


def holds(step: Step, at_s: float, done_s: float) -> bool:
    """Whether a step holds at a moment at which so much work is done. [s]"""
    if step.after_s is not None and done_s < step.after_s:
        return False
    if step.from_s is None:
        return True
    of_day_s = at_s % DAY_S
    if step.until_s is None:
        return is_from_on(of_day_s, step.from_s)
    if step.from_s <= step.until_s:
        return step.from_s <= of_day_s < step.until_s
    return of_day_s >= step.from_s or of_day_s < step.until_s


NIGHT_ENDS_S = 6 * HOUR_S
"""A step that names no end holds for the rest of the night, as other hours of the night do here."""


def is_from_on(of_day_s: float, from_s: float) -> bool:
    """Whether a time of day is past the begin of a step without an end, up to the morning. [s]"""
    if from_s < NIGHT_ENDS_S:
        return from_s <= of_day_s < NIGHT_ENDS_S
    return of_day_s >= from_s or of_day_s < NIGHT_ENDS_S


@cites(DIRECTIVE_2003_88, "3", equation="next call = end of work + rest")
def next_call_s(*, end_s: float, rest_s: float) -> float:
    """
    The earliest next call after a rest.

    Parameters
    ----------
    end_s
        When work ends, from midnight. [s]
    rest_s
        The rest that is kept. [s]

    Returns
    -------
    float
        From the same midnight. Clocks that change in the night are left out. [s]

    Raises
    ------
    ValueError
        If the rest is negative.
    """
    return end_s + not_negative("rest_s", rest_s)
