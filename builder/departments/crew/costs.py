"""What the calls of a usual day cost at the house's own rates, and when the next call may be."""

from collections.abc import Iterator, Sequence

from builder.departments.crew.description import DayCall, Role, WorkDay
from builder.departments.crew.figures import (
    COSTING,
    QUOTE,
    UNKNOWN,
    Ends,
    added,
    between,
    ends,
    priced,
)
from builder.departments.crew.laying_out import Laid, Terms, laid_out, times_of
from builder.exchange import CallRules
from builder.formulas.working_time import next_call_s
from builder.pack import Figure, Input, Value
from builder.reading.absent import Absent
from builder.reading.in_part import told_as
from builder.reading.money import Money
from builder.working import by_hand, missing, worked


def charged_persons(call: DayCall, role: Role | None, *, is_alone: bool) -> Ends:
    """
    How many of a call are charged: without those in the rent, who are counted once where another
    call of their role is at the same time.
    """
    low, high = ends(call.count)
    if role is None or role.there is Absent.NONE or role.there_terms == "extra charge":
        return low, high
    least, most = ends(role.there)
    fewest = None if low is None else 0.0 if most is None else max(0.0, low - most)
    if role.there_terms != "included" or not is_alone or high is None:
        return fewest, high
    return fewest, max(0.0, high - (least or 0.0))


def is_alone(call: DayCall, day: WorkDay) -> bool:
    """Whether no other call of the day may be of the same role at the same time."""
    own = times_of(call)
    others = [
        times_of(other)
        for other in day.calls
        if other is not call and other.who.casefold() == call.who.casefold()
    ]
    if not others:
        return True
    if own is None:
        return False
    return all(at is not None and (at[1] <= own[0] or own[1] <= at[0]) for at in others)


def cost_ends(laid: Laid, call: DayCall, day: WorkDay, terms: Terms) -> Ends:
    """What a call costs at least and at most, in the currency of its rate."""
    role = terms.roles.get(call.who.casefold())
    pay = role.pay if role else None
    if pay is None or not isinstance(pay.amount, Money) or pay.per in ("week", None):
        return UNKNOWN
    if not isinstance(pay.per, str):
        return UNKNOWN
    count, rate = charged_persons(call, role, is_alone=is_alone(call, day)), pay.amount.number
    # Whoever is paid by the call or the day may still have overtime, unless the house knows none.
    more = terms.overtime is not Absent.NONE
    units: Ends = laid.paid_h if pay.per == "hour" else (1.0, None if more else 1.0)
    low, high = (
        None if people is None or unit is None else people * unit * rate
        for people, unit in zip(count, units, strict=True)
    )
    return low, high


def rent_lacks(role: Role | None) -> list[str]:
    """What is not known of those who come with the house."""
    if role is None or role.there is Absent.NONE or isinstance(role.there_terms, str):
        return []
    return [f"whether {role.name} who come with the house are charged"]


def in_the_rent(role: Role | None) -> list[Input]:
    """What those who come with the house cost, as an input of a working."""
    if role is None or role.there in (Absent.NONE, Absent.NOT_STATED):
        return []
    return [Input("With the house", f"{told_as(role.there)}, {told_as(role.there_terms)}")]


def cost_figure(laid: Laid, call: DayCall, day: WorkDay, terms: Terms, key: str) -> Figure:
    """What a call costs at the rate of its role."""
    role = terms.roles.get(call.who.casefold())
    pay = role.pay if role else None
    amount, per = (pay.amount, pay.per) if pay else (Absent.NOT_STATED, Absent.NOT_STATED)
    inputs = [
        Input("Persons", told_as(call.count)),
        Input("Rate", f"{told_as(amount)}, per {told_as(per)}"),
        *in_the_rent(role),
    ]
    work = by_hand(
        "persons × rate × paid hours" if per == "hour" else "persons × rate",
        COSTING,
        inputs=inputs,
        lines=[role] if role else [],
    )
    number = cost_ends(laid, call, day, terms)
    lacks = [
        *(
            []
            if isinstance(amount, Money) and isinstance(per, str)
            else [f"the rate of {call.who}"]
        ),
        *([f"how many of {call.who}"] if None in ends(call.count) else []),
        *rent_lacks(role),
        *laid.lacks,
    ]
    key, label = f"{key}.cost", "Cost"
    if not isinstance(amount, Money):
        return missing(key, label, work, lacks, caution=QUOTE)
    low, high = (None if end is None else priced(amount, end) for end in number)
    return between(key, label, (low, high), work, lacks, QUOTE)


def day_figures(day: WorkDay, terms: Terms, key: str) -> Iterator[Figure]:
    """What the calls of a day come to together, and when the next may be."""
    if not day.calls:
        return
    found = [(call, times_of(call)) for call in day.calls]
    costs = []
    currencies = set()
    lacks: list[str] = []
    amounts: list[Money] = []
    for call, at in found:
        role = terms.roles.get(call.who.casefold())
        amount = role.pay.amount if role and role.pay else None
        if isinstance(amount, Money):
            amounts.append(amount)
            currencies.add(amount.currency)
        number = cost_ends(laid_out(call, day, terms, *at), call, day, terms) if at else UNKNOWN
        costs.append(number)
        if None in number:
            lacks.append(f"the cost of {call.who}")
    yield whole_cost(costs, amounts, currencies, list(dict.fromkeys(lacks)), day, key)
    if all(at is not None for _, at in found):
        yield next_figure(max(at[1] for _, at in found if at), terms.rules, key)


def whole_cost(
    costs: Sequence[Ends],
    amounts: Sequence[Money],
    currencies: set[str],
    lacks: Sequence[str],
    day: WorkDay,
    key: str,
) -> Figure:
    """The calls of a day together; two currencies are not added up."""
    inputs = [Input("Calls", f"{len(day.calls)}")]
    work = by_hand("sum over the calls", COSTING, inputs=inputs, lines=[day])
    key, label = f"{key}.cost", "Cost of the day"
    if len(currencies) != 1:
        why = ["one currency for all rates"] if currencies else lacks
        return missing(key, label, work, why, caution=QUOTE)
    low, high = (None if end is None else priced(amounts[0], end) for end in added(costs))
    return between(key, label, (low, high), work, lacks, QUOTE)


def next_figure(end_s: float, rules: CallRules, key: str) -> Figure:
    """The earliest call after the end of a day. [s]"""
    inputs = [
        Input("The last call ends", clock_words(end_s)),
        Input("Turnaround", told_as(rules.turnaround)),
    ]
    work = worked(next_call_s, inputs=inputs, lines=[rules.check] if rules.check else [])
    key, label = f"{key}.next", "Next call at the earliest"
    values = tuple(
        None if rest is None else moment(next_call_s(end_s=end_s, rest_s=rest))
        for rest in ends(rules.turnaround)
    )
    return between(key, label, (values[0], values[1]), work, ["the turnaround"])


def moment(at_s: float) -> Value:
    """A time of day as a value of the pack, seconds from the midnight before the day. [s]"""
    return Value(clock_words(at_s), number=at_s, unit="s")


def clock_words(at_s: float) -> str:
    """A time on the clock, with the day after where it is past midnight. [s]"""
    minutes = round(at_s / 60)
    days, minute = divmod(minutes, 1440)
    words = f"{minute // 60:02d}:{minute % 60:02d}"
    return f"{words} the day after" if days == 1 else f"{words}, {days} days on" if days else words
