"""
What is possible: the range outside which a value cannot be, by kind of quantity or by field.

A field that says nothing has the range of its kind (``ranges.py``); where a field's range differs,
it is marked ``Possible(low, high)`` or ``Possible.above(low, high)`` beside ``Plausible``. What is
impossible is a problem and nothing is built; what is only odd is a finding (``review.py``).
"""

from collections.abc import Iterator
from typing import get_args

from pydantic.fields import FieldInfo

from builder.reading import quantities as q
from builder.reading.absent import Absent
from builder.reading.fields import Reviewed, mark_of, values_of
from builder.reading.measures import System, shown, system_of
from builder.reading.nodes import spoken
from builder.reading.otherwise import otherwise, otherwise_counted
from builder.reading.problems import Problem
from builder.reading.ranges import COUNTED, POSSIBLE, Possible, range_of_kind
from builder.reading.references import records_within
from builder.reading.written import Plausible, Written

__all__ = ["COUNTED", "POSSIBLE", "Possible", "impossible", "range_of_kind", "range_words"]

Number = q.Quantity | int | float


def impossible(description: Written) -> Iterator[Problem]:
    """Every value of a description that cannot be, in the author's order."""
    for record in records_within(description):
        for reviewed in values_of(record):
            number = as_number(reviewed.value)
            if number is None:
                continue
            possible = range_of(reviewed.field, number)
            if not possible.holds(si_of(number)):
                yield problem(reviewed, number, possible)


def as_number(value: object) -> Number | None:
    """A quantity, a count or a ratio; None for anything else."""
    if isinstance(value, bool) or not isinstance(value, q.Quantity | int | float):
        return None
    return value


def si_of(number: Number) -> float:
    """A quantity's value in SI, a count or a ratio as it is."""
    return number.si if isinstance(number, q.Quantity) else number


def range_of(field: FieldInfo, number: Number) -> Possible:
    """The range of a field: its own, or that of its kind."""
    own = mark_of(field, Possible)
    if own is not None:
        return own
    if isinstance(number, q.Quantity):
        return range_of_kind(type(number))
    return COUNTED


def problem(reviewed: Reviewed, number: Number, possible: Possible) -> Problem:
    """A value that cannot be, with what can."""
    return Problem(
        reviewed.where,
        spoken((*reviewed.record.path_in_file, *reviewed.keys)),
        number.text if isinstance(number, q.Quantity) else f"{number:.12g}",
        f"cannot be: {in_words(possible, number)} is possible here",
        "impossible",
        advice(reviewed.field, number),
    )


def advice(field: FieldInfo, number: Number) -> str:
    """How to go on: what to write, and what else the value may have been meant as."""
    write = "write how many there are" if isinstance(number, int) else "write what was measured"
    if Absent in get_args(field.annotation):
        write += f", or `{Absent.UNKNOWN.value}` if nobody knows it yet"
    elif not field.is_required():
        write += ", or leave the key out"
    usual = mark_of(field, Plausible)
    if usual is None:
        return write
    if isinstance(number, q.Quantity):
        question = otherwise(number, usual.holds)
    else:
        question = otherwise_counted(number, usual.holds)
    return f"{write}.{question.removesuffix('.')}" if question else write


def in_words(possible: Possible, number: Number) -> str:
    """A range in the unit system that the author wrote in."""
    if not isinstance(number, q.Quantity):
        return range_words(possible, None)
    return range_words(possible, type(number), system_of(number))


def range_words(
    possible: Possible, kind: type[q.Quantity] | None, system: System = "metric"
) -> str:
    """A range of a kind, or of bare numbers: `above zero and at most 40 m`."""
    low, high = (end_words(end, kind, system) for end in (possible.low, possible.high))
    return f"from {low} to {high}" if possible.low_too else f"above {low} and at most {high}"


def end_words(value: float, kind: type[q.Quantity] | None, system: System) -> str:
    """One end of a range, without digits that say nothing."""
    if kind is None:
        return f"{value:,.12g}"
    if value == 0 and not issubclass(kind, q.Across | q.Depth | q.TimeOfDay):
        return "zero"
    words, whole = (shown(kind, value, digits, system)[0] for digits in (None, 0))
    return whole if kind.parse(whole).si == value else words
