"""
The times and lengths of a show's day, from its rider to plain seconds.

What is left out stays None.
"""

from typing import Any, cast

from builder.fit.clock.acts import LENGTHS, TIMES
from builder.fit.records import ClockAsked
from builder.reading.quantities import Quantity
from builder.rider.description import Clock

Record = dict[str, Any]
PARTS = ("roll on", "patch", "monitors", "spare")


def timing_of(clock: Clock, weekday: str) -> ClockAsked:
    """
    A rider's clock in seconds after midnight and seconds, on a day of the week that may be empty.
    """
    written = dict(clock.written())
    parts = clock.changeover_parts
    timing = {
        "line": clock.where().line,
        "day": weekday.lower(),
        **{name: seconds(written.get(name)) for name in (*TIMES, *LENGTHS)},
        "parts": parts_of(dict(parts.written()), parts.where().line) if parts else None,
    }
    return cast(ClockAsked, timing)


def parts_of(written: dict[str, Any], line: int) -> Record:
    """The parts of a changeover in seconds; lines and their rate as counts."""
    return {
        "line": line,
        **{name: seconds(written.get(name)) for name in PARTS},
        "lines": number(written.get("lines")),
        "lines a minute": number(written.get("lines a minute")),
        "before": bool(written.get("lines checked before")),
    }


def seconds(value: object) -> float | None:
    """A time or a length in seconds."""
    return value.si if isinstance(value, Quantity) else None


def number(value: object) -> float | None:
    """A count as the check counts."""
    return float(value) if isinstance(value, int) else None
