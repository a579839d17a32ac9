"""
What is known of a value in part: two ends with the truth somewhere between, one end, settings to
choose from, or what different people say.

The forms are parted in ``values/in_part.py``; each value is read by its field's own reader, so a
form can stand wherever an exact value of the field can.
"""

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any, Generic, Literal, TypeVar, cast

from builder.reading.absent import Absent, why_absent
from builder.reading.measures import both, shown, system_of
from builder.reading.numerals import Unreadable, refuse
from builder.reading.quantities import Level, Quantity, Temperature, TimeOfDay
from builder.reading.ranges import COUNTED, Possible, range_of_kind
from builder.reading.refusing import error, refusing
from builder.reading.values.in_part import Manner, parted
from builder.reading.values.shapes import ABSENT

T = TypeVar("T")
Read = Callable[[Any], Any]
"""Reads one exact value of a field."""

ABOUT = Fraction(1, 10)
"""What `about` may be off by: a tenth of the value. Common practice, no source."""
SPREAD = ("about", "within")
"""Forms with ends that follow from a value in the middle."""
DISPUTED: Literal["disputed"] = "disputed"
UNCLEAR = "known-unclear"
SAYING_KEYS = frozenset({"says", "by", "on"})
ADVICE_DISPUTED = (
    "write what each one says and who says it:"
    " {disputed: [{says: 430 ft, by: drawing of 2009}, {says: 200 ft, by: web page}]}"
)
MOST_SETTINGS = 20


@dataclass(frozen=True, slots=True)
class Saying(Generic[T]):
    """One of several that do not agree: what it says, who or what says it, and as of when."""

    says: T
    by: str
    on: str = ""


@dataclass(frozen=True, slots=True)
class Between(Absent, Generic[T]):
    """
    A value that is known in part. ``value`` is the author's wording; ``least`` and ``most`` are its
    ends, each of the field's own type, or None where nobody knows that one.

    Where it can be chosen, ``settings`` are the choices, or it is set anywhere between the ends.
    """

    least: T | None = None
    most: T | None = None
    manner: Manner = "range"
    settings: tuple[T, ...] = ()
    sayings: tuple[Saying[T], ...] = ()

    def __reduce__(self) -> Any:
        return type(self), (
            self.value,
            self.least,
            self.most,
            self.manner,
            self.settings,
            self.sayings,
        )

    @property
    def can_be_set(self) -> bool:
        """Whether somebody chooses it, rather than not knowing it."""
        return self.manner in ("set from", "set to")


def ends_of(known: T | Absent) -> tuple[T | None, T | None]:
    """
    What a value is at least and at most: twice the same where it is exact, None for an end that
    nobody knows. Nothing at all has no ends.
    """
    if isinstance(known, Between):
        between = cast("Between[T]", known)
        return between.least, between.most
    return (None, None) if isinstance(known, Absent) else (known, known)


def values_within(known: "Between[T]") -> Iterator[T]:
    """Every value that somebody wrote within what is known in part, or that follows from it."""
    written = known.settings or tuple(saying.says for saying in known.sayings)
    ends = (known.least, known.most)
    yield from written or tuple(end for end in ends if end is not None)


def read_in_part(value: Any, read: Read) -> Between[Any] | None:
    """
    What is known in part, from a text or from a group with `disputed`; None where the author wrote
    one exact value.

    Raises
    ------
    PydanticCustomError
        `known-unclear`, or the field's own for one of the values.
    """
    if isinstance(value, Between):
        return value
    if isinstance(value, Mapping) and DISPUTED in value:
        return disputed(value, read)
    if not isinstance(value, str):
        return None
    form = parted(value)
    try:
        refuse(form["fault"])
    except Unreadable as wrong:
        raise error(wrong.code, wrong.reason, wrong.advice) from wrong
    manner = form["manner"]
    if manner == "exact":
        return None
    text = " ".join(value.split())
    if manner == "within":
        return within(text, form["values"], read)
    values = [read(part) for part in form["values"]]
    if any(isinstance(part, Absent) for part in values):
        raise error(UNCLEAR, "has an end that is no value", "write both ends, or `unknown`")
    return between(text, manner, values)


def between(text: str, manner: Manner, values: list[Any]) -> Between[Any]:
    """What is known in part, from a form and its values."""
    if manner == "about":
        return about(text, values[0])
    if manner == "at least":
        return Between(text, values[0], None, manner)
    if manner == "at most":
        return Between(text, None, values[0], manner)
    if manner == "set to":
        return settings(text, values)
    least, most = values
    if type(least) is not type(most):
        raise error(UNCLEAR, "has two ends of different kinds", "write both in one unit")
    if amount_of(least) == amount_of(most):
        raise error(UNCLEAR, "has twice the same end", "write it as one value")
    if isinstance(least, TimeOfDay) and amount_of(least) > amount_of(most):
        advice = "write `unknown`, and the two times in `note:`"
        raise error(UNCLEAR, "runs over midnight, which is not read between two times", advice)
    if not (of_position(least) or amount_of(least) < amount_of(most)):
        raise error(UNCLEAR, "has its ends the wrong way round", "write the lower end first")
    least, most = sorted(values, key=amount_of)
    return Between(text, least, most, manner)


def settings(text: str, values: list[Any]) -> Between[Any]:
    """A value that is set to one of several."""
    if len({type(value) for value in values}) > 1:
        raise error(UNCLEAR, "has settings of different kinds", "write all in one unit")
    ordered = sorted(values, key=amount_of)
    amounts = [amount_of(value) for value in ordered]
    if len(set(amounts)) < 2 or len(set(amounts)) < len(amounts):
        raise error(UNCLEAR, "does not name two or more different settings", "")
    if len(amounts) > MOST_SETTINGS:
        raise error(UNCLEAR, f"names more than {MOST_SETTINGS} settings", "write `set from ... to`")
    return Between(text, ordered[0], ordered[-1], "set to", tuple(ordered))


def about(text: str, value: Any) -> Between[Any]:
    """A value that may be off by a tenth."""
    if isinstance(value, Temperature | Level | TimeOfDay):
        reason = f"does not say how far {value.kind} may be off"
        raise error(UNCLEAR, reason, "write both ends, like '19:00 to 20:00' or '18 to 22 °C'")
    return spread(text, "about", value, Fraction(repr(float(amount_of(value)))) * ABOUT)


def within(text: str, parts: list[str], read: Read) -> Between[Any]:
    """A value and what it may be off by: `40 ft +- 1 ft`."""
    value = read(parts[0])
    if of_position(value) or isinstance(value, Temperature | TimeOfDay | Absent):
        raise error(UNCLEAR, "cannot be written with '+-'", "write both ends, like '12 to 15 m'")
    off = read(parts[1])
    if isinstance(off, Absent) or amount_of(off) <= 0:
        raise error(UNCLEAR, "does not say how far it may be off", "write it like '40 ft +- 1 ft'")
    return spread(text, "within", value, Fraction(repr(float(amount_of(off)))))


def spread(text: str, manner: Manner, value: Any, off: Fraction) -> Between[Any]:
    """A value that may be off so much to both sides, as its two ends. [SI]"""
    middle = Fraction(repr(float(amount_of(value))))
    if off == 0:
        raise error(UNCLEAR, "is about nothing", "write both ends, from nothing up")
    least, most = middle - abs(off), middle + abs(off)
    return Between(text, like(value, least, down=True), like(value, most, down=False), manner)


def within_possible(known: Between[Any], own: Possible | None) -> Between[Any]:
    """
    What is known in part without what cannot be: a power factor of about 0.95 is at most 1. Ends
    that the author wrote stay, and are refused where they cannot be.
    """
    if known.manner not in SPREAD or known.least is None or known.most is None:
        return known
    possible = own or range_of_value(known.most)
    least, most = known.least, known.most
    middle = (amount_of(least) + amount_of(most)) / 2
    if not possible.holds(middle) or possible.holds(amount_of(most)):
        return known
    return replace(known, most=like(most, Fraction(repr(possible.high)), down=False))


def range_of_value(value: Any) -> Possible:
    """What a value can be, going by its kind alone."""
    return range_of_kind(type(value)) if isinstance(value, Quantity) else COUNTED


def like(value: Any, amount: Fraction, *, down: bool) -> Any:
    """Another amount of the same type; counts are rounded away from the middle, never below 0."""
    if isinstance(value, int):
        return max(0, math.floor(amount) if down else math.ceil(amount))
    if not isinstance(value, Quantity):
        return float(amount)
    si = float(amount)
    words = shown(type(value), si, None, system_of(value))[0]
    refusing(value.amounts, words)  # an end of more digits than can be read, as if written
    return replace(value, si=si, text=words, second=None)


def disputed(value: Mapping[str, Any], read: Read) -> Between[Any]:
    """What several say who do not agree."""
    entries = value[DISPUTED]
    listed = isinstance(entries, list | tuple) and len(entries) > 1 and len(value) == 1
    if not listed or not all(is_saying(entry) for entry in entries):
        raise error(UNCLEAR, "does not tell who says what", ADVICE_DISPUTED)
    if any(parted(entry["says"])["manner"] != "exact" or is_absence(entry) for entry in entries):
        raise error(UNCLEAR, "has a saying that is no exact value", ADVICE_DISPUTED)
    sayings = tuple(
        Saying(read(entry["says"]), entry["by"].strip(), entry.get("on", "").strip())
        for entry in entries
    )
    ordered = sorted((saying.says for saying in sayings), key=comparable)
    if len({type(each) for each in ordered}) > 1:
        raise error(UNCLEAR, "has sayings of different kinds", "write all in one unit")
    if amount_of(ordered[0]) == amount_of(ordered[-1]):
        raise error(UNCLEAR, "is not disputed: all say the same", "write the value")
    return Between(disputed_words(sayings), ordered[0], ordered[-1], DISPUTED, (), sayings)


def is_saying(entry: Any) -> bool:
    """Whether an entry tells what is said and by whom, in texts."""
    if not isinstance(entry, Mapping) or not {"says", "by"} <= set(entry) <= SAYING_KEYS:
        return False
    return all(isinstance(part, str) and part.strip() for part in entry.values())


def is_absence(entry: Mapping[str, Any]) -> bool:
    """Whether what somebody says is that nobody knows, or that there is none."""
    return entry["says"].strip().lower() in ABSENT


def comparable(value: Any) -> float:
    """The amount to sort sayings by; what is known in part cannot be one of them."""
    if isinstance(value, Absent):
        raise error(UNCLEAR, "has a saying that is no exact value", ADVICE_DISPUTED)
    return amount_of(value)


def disputed_words(sayings: tuple[Saying[Any], ...]) -> str:
    """What several say, in one line."""
    told = [f"{words_of(saying.says)} ({source_of(saying)})" for saying in sayings]
    return f"disputed: {', '.join(told[:-1])} or {told[-1]}"


def source_of(saying: Saying[Any]) -> str:
    """Who says it, and as of when."""
    return f"{saying.by}, {saying.on}" if saying.on else saying.by


def as_written(value: object) -> str:
    """A value as its author wrote it, in part or exact, or why there is none."""
    if isinstance(value, Between):
        return value.value
    return why_absent(value) if isinstance(value, Absent) else words_of(value)


def told_as(value: object) -> str:
    """A value as its author wrote it, or that nobody has said, as workings tell it."""
    return "not stated" if value is None or value is Absent.NOT_STATED else as_written(value)


def in_other_system(known: Between[Any]) -> str:
    """
    The same in the other unit system; empty where the author wrote both or there is no other.
    """
    others = [both(value)[1] for value in values_within(known) if isinstance(value, Quantity)]
    if not others or not all(others):
        return ""
    if known.sayings or known.settings:
        return " or ".join(others)
    form = {"at least": "at least {}", "at most": "at most {}"}.get(known.manner, "{} to {}")
    return form.format(*others)


def words_of(value: Any) -> str:
    """One exact value as its author wrote it."""
    if isinstance(value, Quantity):
        return value.text
    return f"{value:,}" if isinstance(value, int | float) else str(value)


def amount_of(value: Any) -> float:
    """A quantity in SI, a count or a ratio as it is."""
    return value.si if isinstance(value, Quantity) else value


def of_position(value: Any) -> bool:
    """Whether a value has a side of its own, so that the order of two ends says nothing."""
    return isinstance(value, Quantity) and value.way == "position"
