"""
A call on the clock: its meal breaks, and the hours that are paid with overtime, at least and at
most. What nobody knows leaves an end open.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from builder.departments.crew.description import CallKind, Crew, DayCall, Overtime, Role, WorkDay
from builder.departments.crew.figures import HOUR_S, NOTHING, Ends, charged_at_least, ends
from builder.exchange import CallRules
from builder.formulas.working_time import (
    DAY_S,
    Step,
    Stretch,
    meal_breaks,
    paid_hours,
    stretches,
)
from builder.reading.absent import Absent, listed
from builder.reading.quantities import Duration, TimeOfDay


@dataclass(frozen=True, slots=True)
class Terms:
    """On what terms calls of a house are paid."""

    rules: CallRules
    overtime: Absent | tuple[Overtime, ...]
    roles: Mapping[str, Role]
    kinds: Mapping[str, CallKind]


@dataclass(frozen=True, slots=True)
class Laid:
    """
    A call on the clock. ``paid_h`` are the hours paid, overtime counted by its factor; ``lacks``
    what would make them exact. [s], [h]
    """

    start_s: float
    end_s: float
    paid_h: Ends
    lacks: tuple[str, ...]


def terms_of(crew: Crew, rules: CallRules | None) -> Terms:
    """The terms that a description states, by what their lines are called."""
    return Terms(
        rules or CallRules(),
        crew.overtime,
        {role.name.casefold(): role for role in listed(crew.people)},
        {kind.name.casefold(): kind for kind in listed(crew.calls)},
    )


def times_of(call: DayCall) -> tuple[float, float] | None:
    """From when until when a call is, an end that is not after its begin a day later. [s]"""
    if not isinstance(call.from_, TimeOfDay) or not isinstance(call.until, TimeOfDay):
        return None
    start_s, end_s = call.from_.si, call.until.si
    return start_s, end_s if end_s > start_s else end_s + DAY_S


def laid_out(call: DayCall, day: WorkDay, terms: Terms, start_s: float, end_s: float) -> Laid:
    """One call with the hours that are paid, at least and at most. [s]"""
    role = terms.roles.get(call.who.casefold())
    kind = terms.kinds.get(call.call.casefold()) if call.call else None
    least = charged_at_least(
        role.pay if role else None, terms.rules, kind.shortest if kind else None
    )
    shortest = ends(least)
    sure, perhaps, is_open = steps_of(terms.overtime, day)
    whole: tuple[Stretch, ...] = ((start_s, end_s),)
    lacks = []
    exact = worked_for_sure(start_s, end_s, terms.rules)
    if exact is None:
        lacks += lacks_of_meals(terms.rules) or ["whether a meal break is paid"]
    if is_open:
        lacks.append("when overtime is paid, and how much")
    elif perhaps != sure:
        lacks.append(f"which day of the week {day.name} is")
    if None in shortest:
        lacks.append("the shortest call")
    fewest = exact or fewest_worked(start_s, end_s, terms.rules)
    low = charged(fewest, sure, shortest[0] or 0.0)
    high = None
    if not is_open and shortest[1] is not None:
        high = charged(exact or whole, perhaps, shortest[1])
    return Laid(start_s, end_s, (low or None, high), tuple(lacks))


def breaks_due(span_s: float, rules: CallRules) -> Ends:
    """Meal breaks at least and at most: fewer where a meal is due later and lasts longer. [s]"""
    if Absent.NONE in (rules.meal_after, rules.meal_break):
        return NOTHING
    (soon_s, late_s), (brief_s, lengthy_s) = ends(rules.meal_after), ends(rules.meal_break)
    most = None
    if soon_s is not None and soon_s > 0:
        most = float(meal_breaks(span_s=span_s, after_s=soon_s, break_s=brief_s or 0.0))
    least: float | None = None
    if late_s is not None and late_s > 0 and lengthy_s is not None:
        least = float(meal_breaks(span_s=span_s, after_s=late_s, break_s=lengthy_s))
    if most == 0:
        least = 0.0
    return least, most


def lacks_of_meals(rules: CallRules) -> list[str]:
    """What is not known of meals."""
    parts = (
        ("after how long a meal is due", rules.meal_after),
        ("how long a meal break is", rules.meal_break),
    )
    return [words for words, value in parts if None in ends(value)]


def worked_for_sure(start_s: float, end_s: float, rules: CallRules) -> tuple[Stretch, ...] | None:
    """The stretches that are paid where that is known; None where it hangs on meals. [s]"""
    if rules.meal_paid is True or breaks_due(end_s - start_s, rules) == NOTHING:
        return ((start_s, end_s),)
    return between_meals(start_s, end_s, rules) if rules.meal_paid is False else None


def between_meals(start_s: float, end_s: float, rules: CallRules) -> tuple[Stretch, ...] | None:
    """The work between its meal breaks, where these are known exactly. [s]"""
    after, length = rules.meal_after, rules.meal_break
    if not isinstance(after, Duration) or not isinstance(length, Duration) or after.s <= 0:
        return None
    return stretches(start_s=start_s, span_s=end_s - start_s, after_s=after.s, break_s=length.s)


def fewest_worked(start_s: float, end_s: float, rules: CallRules) -> tuple[Stretch, ...]:
    """The least that is paid where it is not known exactly: nothing of which nobody knows. [s]"""
    return between_meals(start_s, end_s, rules) or ()


def charged(work: Sequence[Stretch], steps: Sequence[Step], shortest_s: float) -> float:
    """The hours that are paid: of the work, and what the shortest call adds at the rate. [h]"""
    done_s = sum(to_s - from_s for from_s, to_s in work)
    return paid_hours(worked=work, steps=steps) + max(0.0, shortest_s - done_s) / HOUR_S


def steps_of(
    overtime: Absent | tuple[Overtime, ...], day: WorkDay
) -> tuple[tuple[Step, ...], tuple[Step, ...], bool]:
    """
    The steps that hold for certain, all that may, and whether more may hold that nobody knows.
    """
    if isinstance(overtime, Absent):
        return (), (), overtime is not Absent.NONE
    sure: list[Step] = []
    perhaps: list[Step] = []
    is_open = False
    for each in overtime:
        step = step_of(each)
        if step is None:
            is_open = True
            continue
        if each.days and isinstance(day.day, str) and day.day not in each.days:
            continue
        perhaps.append(step)
        if not each.days or isinstance(day.day, str):
            sure.append(step)
    return tuple(sure), tuple(perhaps), is_open


def step_of(each: Overtime) -> Step | None:
    """A step of which everything that it says is known exactly."""
    values = (each.after, each.from_, each.until)
    if not isinstance(each.times, float | int):
        return None
    if any(isinstance(value, Absent) and value is not Absent.NOT_STATED for value in values):
        return None
    after, from_, until = values
    return Step(
        float(each.times),
        after.s if isinstance(after, Duration) else None,
        from_.si if isinstance(from_, TimeOfDay) else None,
        until.si if isinstance(until, TimeOfDay) else None,
    )
