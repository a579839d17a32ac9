"""By how much a number moved, in the unit that its own value is shown in."""

import re

from builder.pack import Value
from builder.reading import quantities as q
from builder.reading.measures import System, shown

NOT_ZERO = re.compile("[1-9]")
LEADING = re.compile(r"[+−-]?\d[\d,]*(?:\.\d+)?")
KINDS: tuple[type[q.Quantity], ...] = (
    q.Length,
    q.Area,
    q.Volume,
    q.Mass,
    q.LoadPerArea,
    q.LoadPerLength,
    q.Speed,
    q.Stiffness,
    q.CrossSection,
    q.Current,
    q.Voltage,
    q.ApparentPower,
    q.Power,
    q.Frequency,
    q.DataRate,
    q.Level,
    q.Duration,
    q.Angle,
)
"""
The kinds whose differences are said in their unit. Lengths stand for all positions: what moved is a
distance whichever way it points.
"""


def how_much(before: Value, after: Value) -> str:
    """
    The difference with its sign, such as ``−0.5 dB``; empty where the values are no numbers in one
    unit, or differ by less than is shown. Of two that are not exact it is that of the same end.
    """
    was, now = before.far_end, after.far_end
    if was is None or now is None or not alike(before, after):
        return ""
    difference = now - was
    digits = decimals(after.text)
    text = next(
        (
            text
            for more in (0, 1)
            if (text := distance(abs(difference), after, digits + more)) and NOT_ZERO.search(text)
        ),
        "",
    )
    if not text:
        return ""
    signed = f"{'+' if difference > 0 else '−'}{text}"
    return f"{signed} before rounding" if rounded_away(before.text, after.text, signed) else signed


def alike(before: Value, after: Value) -> bool:
    """Whether two values can be taken from each other: one unit, and the same ends known."""
    known = [[end is None for end in (value.number, *value.ends)] for value in (before, after)]
    return before.unit == after.unit and known[0] == known[1]


def how_far(before: Value | None, after: Value | None) -> float:
    """
    How much of itself a number moved by, from 0 to 1: 1 where it came or went, 0 where neither is a
    number. Used to put large moves first.
    """
    was, now = (value.far_end if value else None for value in (before, after))
    if before is None or after is None or was is None or now is None or before.unit != after.unit:
        return float(was is not None or now is not None)
    if before.unit == q.Level.si_unit:
        return of_level(abs(now - was))
    size = max(abs(was), abs(now))
    return min(1.0, round(abs(now - was) / size, 4)) if size else 0.0


def of_level(moved_db: float) -> float:
    """
    The share of a level's pressure that a move of so many decibels is: a decibel more or less says
    as much whatever the level.
    """
    return float(round(1 - 10 ** (-moved_db / 20), 4))


def rounded_away(before: str, after: str, signed: str) -> bool:
    """
    True where the two values as shown differ by something else than the difference as shown: a
    reader would take that for a slip.
    """
    was, now, by = (leading(text) for text in (before, after, signed))
    if (
        was is None
        or now is None
        or by is None
        or unit_of(after) != unit_of(signed)
        or unit_of(before) != unit_of(after)
    ):
        return False
    return bool(abs((now - was) - by) > 0.6 * 10 ** -decimals(after))


def leading(text: str) -> float | None:
    """The number that a text begins with."""
    found = LEADING.match(text)
    return float(found[0].replace(",", "").replace("−", "-")) if found else None


def unit_of(text: str) -> str:
    """What follows the number, where nothing but a unit does."""
    return LEADING.sub("", text, count=1).strip().replace("points", "%")


def distance(size: float, like: Value, digits: int) -> str:
    """
    A difference without its sign, with so many digits and in the unit of the value it belongs to,
    where that unit fits its size.
    """
    system: System = "imperial" if is_imperial(like.text) else "metric"
    kind = kind_of(like, system)
    if kind is None:
        share = like.text.endswith("%")
        number = f"{size * 100 if share else size:,.{digits}f}"
        return (
            f"{number} points"
            if share
            else number
            if like.unit in ("", "1")
            else f"{number} {like.unit}"
        )
    text = shown(kind, size, system=system)[0]
    return (
        shown(kind, size, digits, system)[0] if text.split()[-1] == like.text.split()[-1] else text
    )


def kind_of(like: Value, system: System) -> type[q.Quantity] | None:
    """The kind of a value: of those with its unit, the one that is written as it is."""
    fitting = [kind for kind in KINDS if kind.si_unit == like.unit]
    written = [
        kind
        for kind in fitting
        if shown(kind, abs(like.number or 0), system=system)[0].split()[-1] == like.text.split()[-1]
    ]
    return next(iter(written or fitting), None)


def decimals(text: str) -> int:
    """How many digits stand after the point of the first number of a text."""
    found = re.search(r"\d(?:\.(\d+))?(?![\d,])", text)
    return len(found[1] or "") if found else 0


def is_imperial(text: str) -> bool:
    """True where a value is shown in feet, inches or pounds."""
    words = text.replace("'", " ft ").replace('"', " in ").split()
    return any(word in ("ft", "in", "lb", "psf", "mph", "sq", "cu", "lb/ft") for word in words)
