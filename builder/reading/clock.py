"""A time of day, on the 24-hour clock or with am and pm."""

import re

from builder.reading.amounts import Amount
from builder.reading.numerals import Unreadable
from builder.reading.quantity import Quantity

_CLOCK = re.compile(r"(?P<hour>[0-9]{1,2})(?::(?P<minute>[0-9]{2}))? ?(?P<half>[aApP]\.?[mM]\.?)?")
_DAY_MIN = 24 * 60


class TimeOfDay(Quantity):
    """A time of day; ``si`` is seconds after midnight. 24:00 is the end of the day."""

    __slots__ = ()
    kind, examples, si_unit = "a time of day", ("22:30", "10:30 pm"), "s"

    @property
    def minutes(self) -> float:
        """Minutes after midnight."""
        return self.si / 60

    @classmethod
    def read(cls, text: str) -> Amount:
        """Read one wording."""
        match = _CLOCK.fullmatch(text)
        if match is None or not (match["minute"] or match["half"]):
            raise Unreadable("is not a time of day", "number-unreadable")
        hour, minute = int(match["hour"]), int(match["minute"] or 0)
        after_midnight_min = 60 * (_twelve(hour, match["half"]) if match["half"] else hour) + minute
        if minute > 59 or after_midnight_min > _DAY_MIN:
            raise Unreadable("is not on the clock", "number-out-of-range")
        return Amount(60.0 * after_midnight_min)


def _twelve(hour: int, half: str) -> int:
    if not 1 <= hour <= 12:
        raise Unreadable(f"has hour {hour} with am or pm", "number-out-of-range")
    return hour % 12 + (12 if half[0] in "pP" else 0)
