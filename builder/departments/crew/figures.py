"""
How many of a role a show can have, how many the least crew is, and what the shortest call costs.
"""

from collections.abc import Iterator, Sequence

from builder.departments.crew.description import LeastCrew, Pay, Role
from builder.exchange import CallRules
from builder.pack import Figure, Input, Value, Working, one_or_both
from builder.reading.absent import Absent
from builder.reading.in_part import ends_of, told_as
from builder.reading.money import Money
from builder.reading.quantities import Duration
from builder.working import by_hand, figure, missing

COUNTING, COSTING = "counting", "what a call costs"
HOUR_S = 3_600.0
QUOTE = "A planning figure at the rates written here. The house's quote decides."
Ends = tuple[float | None, float | None]
"""Something at least and at most; None where nobody knows."""
NOTHING: Ends = (0.0, 0.0)
UNKNOWN: Ends = (None, None)


def ends(value: object) -> Ends:
    """A number at least and at most, a duration in seconds; none is nothing."""
    if value is Absent.NONE:
        return NOTHING
    least, most = ends_of(value)
    return si(least), si(most)


def si(value: object) -> float | None:
    """A number as it is, a duration in seconds; None for anything else. [s]"""
    if isinstance(value, Duration):
        return value.s
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    return float(value) if is_number else None  # type: ignore[arg-type]


def added(parts: Sequence[Ends]) -> Ends:
    """A sum at least and at most: what nobody knows is left out below, and leaves the top open."""
    least = sum(low for low, _ in parts if low is not None)
    mosts = [high for _, high in parts]
    most = None if None in mosts else sum(high for high in mosts if high is not None)
    return (least if least or most == 0 else None, most)


def times(one: Ends, other: Ends) -> Ends:
    """A product at least and at most, of what is not below nothing."""
    if NOTHING in (one, other):
        return NOTHING
    low = None if one[0] is None or other[0] is None else one[0] * other[0]
    high = None if one[1] is None or other[1] is None else one[1] * other[1]
    return low, high


def counted(key: str, label: str, number: Ends, work: Working, lacks: Sequence[str]) -> Figure:
    """A number of people, at least and at most; missing where neither end is known."""
    least, most = (None if end is None else Value(f"{end:,.0f}", number=end) for end in number)
    return between(key, label, (least, most), work, lacks)


def between(
    key: str,
    label: str,
    values: tuple[Value | None, Value | None],
    work: Working,
    lacks: Sequence[str],
    caution: str = "",
) -> Figure:
    """A figure from its two ends, with what would make it exact."""
    value = one_or_both(*values)
    if value is None:
        return missing(key, label, work, lacks, caution=caution)
    is_open = value.number is None and lacks
    note = f"not known: {', '.join(lacks)}" if is_open else ""
    return figure(key, label, value, work, caution=caution, note=note)


def in_hours(seconds: float) -> Value:
    """A length of time as a value of the pack, in hours to the hundredth. [s]"""
    words = f"{seconds / HOUR_S:,.2f}".rstrip("0").rstrip(".")
    return Value(f"{words} h", number=seconds, unit="s")


def priced(amount: Money, number: float) -> Value:
    """An amount of money as a value of the pack, as the rate is written."""
    return Value(amount.like(number), number=round(number, 2), unit=amount.currency)


def rate_figures(role: Role, pay: Pay, rules: CallRules, key: str) -> Iterator[Figure]:
    """What one of a role costs for the shortest call."""
    if pay.amount is not Absent.NONE:
        yield shortest_call(role, pay, rules, key)


def at_call(role: Role, key: str) -> Figure:
    """Those who come with the house and those who can be called."""
    inputs = [
        Input("With the house", told_as(role.there)),
        Input("Can be called", told_as(role.to_call)),
    ]
    work = by_hand("with the house + can be called", COUNTING, inputs=inputs)
    parts = (
        (f"how many of {role.name} come with the house", ends(role.there)),
        (f"how many of {role.name} can be called", ends(role.to_call)),
    )
    lacks = [words for words, number in parts if None in number]
    return counted(f"{key}.at-call", "In all", added([number for _, number in parts]), work, lacks)


def shortest_call(role: Role, pay: Pay, rules: CallRules, key: str) -> Figure:
    """What one person costs for the shortest call that is charged. [s], [h]"""
    least = charged_at_least(pay, rules)
    inputs = [
        Input("Rate", told_as(pay.amount)),
        Input("Per", told_as(pay.per)),
        Input("Shortest call", told_as(least)),
    ]
    by_hour = pay.per == "hour"
    work = by_hand(
        "rate × shortest call" if by_hour else "the rate, once",
        COSTING,
        inputs=inputs,
        lines=[role] if rules.check is None else [role, rules.check],
    )
    label, key = "Shortest call, one person", f"{key}.shortest-call"
    amount = pay.amount
    lacks = [
        words
        for words, is_lacking in (
            (f"the rate of {role.name}", not isinstance(amount, Money)),
            (f"the unit of the rate of {role.name}", not isinstance(pay.per, str)),
            ("the shortest call", by_hour and None in ends(least)),
        )
        if is_lacking
    ]
    if not isinstance(amount, Money) or not isinstance(pay.per, str):
        return missing(key, label, work, lacks, caution=QUOTE)
    number = ends(least) if by_hour else (HOUR_S, HOUR_S)
    low, high = (
        None if end is None else priced(amount, amount.number * end / HOUR_S) for end in number
    )
    return between(key, label, (low, high), work, lacks, QUOTE)


def charged_at_least(pay: Pay | None, rules: CallRules, own: object = None) -> object:
    """
    The shortest time that is charged: of the kind of call, else of the role, else of the house.
    Of a role that does not say what it costs nobody knows.
    """
    if own is not None and own is not Absent.NOT_STATED:
        return own
    if pay is None:
        return Absent.UNKNOWN
    return rules.shortest if pay.least is Absent.NOT_STATED else pay.least


def least_figures(least: LeastCrew, key: str) -> Iterator[Figure]:
    """How many the least crew is, where it is counted in all and not for each of something."""
    people = least.people
    if isinstance(people, Absent) or any(each.for_each for each in people):
        return
    work = by_hand(
        "sum over the roles",
        COUNTING,
        inputs=[Input(each.who, told_as(each.count)) for each in people],
    )
    lacks = [f"how many of {each.who}" for each in people if None in ends(each.count)]
    number = added([ends(each.count) for each in people])
    yield counted(f"{key}.persons", "Persons in all", number, work, lacks)
