"""The figures of one call of a usual day: how long, meal breaks, paid hours, cost."""

from collections.abc import Iterator

from builder.departments.crew.costs import cost_figure
from builder.departments.crew.description import DayCall, Overtime, WorkDay
from builder.departments.crew.figures import HOUR_S, QUOTE, between, in_hours
from builder.departments.crew.laying_out import (
    Laid,
    Terms,
    breaks_due,
    lacks_of_meals,
    laid_out,
    times_of,
)
from builder.exchange import CallRules
from builder.formulas.working_time import meal_breaks, paid_hours
from builder.pack import Figure, Input, Value
from builder.reading.absent import Absent
from builder.reading.in_part import told_as
from builder.working import by_hand, figure, missing, worked

LEFT_OUT = (
    "Fees, tax that is added, missed meals, travel, and clocks that change in the night. Each call"
    " is counted as people of its own. Breaks are taken when they are due. What the shortest call"
    " adds to the work is paid at the plain rate."
)
CLOCK = "the clock"


def call_figures(call: DayCall, day: WorkDay, terms: Terms, key: str) -> Iterator[Figure]:
    """What is worked out of one call."""
    found = times_of(call)
    clock = [Input("From", told_as(call.from_)), Input("Until", told_as(call.until))]
    if found is None:
        work = by_hand("until - from", CLOCK, inputs=clock)
        yield missing(f"{key}.long", "Long", work, [f"the times of {call.who}"])
        return
    start_s, end_s = found
    yield figure(
        f"{key}.long",
        "Long",
        in_hours(end_s - start_s),
        by_hand("until - from", CLOCK, inputs=clock),
    )
    yield breaks_figure(end_s - start_s, terms.rules, key)
    laid = laid_out(call, day, terms, start_s, end_s)
    yield paid_figure(laid, call, terms, key)
    yield cost_figure(laid, call, day, terms, key)


def breaks_figure(span_s: float, rules: CallRules, key: str) -> Figure:
    """How many meal breaks are due in a call. [s]"""
    inputs = [
        Input("Long", in_hours(span_s).text),
        Input("A meal is due after", told_as(rules.meal_after)),
        Input("A meal break", told_as(rules.meal_break)),
    ]
    work = worked(meal_breaks, inputs=inputs, lines=[rules.check] if rules.check else [])
    key, label = f"{key}.meals", "Meal breaks due"
    number = breaks_due(span_s, rules)
    lacks = lacks_of_meals(rules)
    values = tuple(None if end is None else Value(f"{end:.0f}", number=end) for end in number)
    return between(key, label, (values[0], values[1]), work, lacks)


def paid_figure(laid: Laid, call: DayCall, terms: Terms, key: str) -> Figure:
    """The hours that are paid for each person."""
    inputs = [
        Input("From", told_as(call.from_)),
        Input("Until", told_as(call.until)),
        Input("Meal breaks are paid", paid_words(terms.rules.meal_paid)),
        *overtime_inputs(terms.overtime),
    ]
    checks = [terms.rules.check] if terms.rules.check else []
    work = worked(paid_hours, inputs=inputs, leaves_out=LEFT_OUT, lines=checks)
    low, high = (None if end is None else in_hours(end * HOUR_S) for end in laid.paid_h)
    label = "Paid hours, each"
    return between(f"{key}.paid", label, (low, high), work, laid.lacks, QUOTE)


def paid_words(paid: bool | Absent) -> str:
    """Whether meals are paid, in words."""
    return told_as(paid) if isinstance(paid, Absent) else "yes" if paid else "no"


def overtime_inputs(overtime: Absent | tuple[Overtime, ...]) -> list[Input]:
    """The steps of overtime as inputs of a working."""
    if isinstance(overtime, Absent):
        return [Input("Overtime", told_as(overtime))]
    return [Input("Overtime", overtime_words(each)) for each in overtime]


def overtime_words(each: Overtime) -> str:
    """A step of overtime in words."""
    parts = [f"times {told_as(each.times)}"]
    if each.after is not Absent.NOT_STATED:
        parts.append(f"after {told_as(each.after)}")
    if each.from_ is not Absent.NOT_STATED:
        parts.append(f"from {told_as(each.from_)}")
    if each.until is not Absent.NOT_STATED:
        parts.append(f"until {told_as(each.until)}")
    if each.days:
        parts.append(f"on {', '.join(each.days)}")
    return " ".join(parts)
