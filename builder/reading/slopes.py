"""Slopes: a ratio of rise to run, a percentage or an angle."""

import math
import re
from fractions import Fraction
from types import MappingProxyType

from builder.reading import units
from builder.reading.amounts import Amount
from builder.reading.numerals import Unreadable, leading_numeral
from builder.reading.quantity import Quantity

_RATIO = re.compile(r"(?P<rise>-?[0-9.,]+) ?(?::| in ) ?(?P<run>[0-9.,]+)")
_PERCENT_OR_ANGLE = MappingProxyType({**units.SHARE, **units.ANGLE})


class Slope(Quantity):
    """A slope, rise over run."""

    __slots__ = ()
    kind, examples, si_unit, units, may_be_negative = (
        "a slope",
        ("1:12", "8 %", "4.8 deg"),
        "1",
        _PERCENT_OR_ANGLE,
        True,
    )

    @property
    def rise_per_run(self) -> float:
        """Rise over run, without a unit: 1:12 is 0.0833."""
        return self.si

    @classmethod
    def read(cls, text: str) -> Amount:
        """Read one wording."""
        if ratio := _RATIO.fullmatch(text):
            return _ratio(_alone(ratio["rise"]), _alone(ratio["run"]))
        amount = super().read(text)
        return _of_angle(amount) if amount.unit is _DEGREE else amount


_DEGREE = units.ANGLE["deg"]


def _alone(text: str) -> Fraction:
    number, rest = leading_numeral(text)
    if rest:
        raise Unreadable(f"has '{text}', which is not a number", "number-unreadable")
    return number.value


def _ratio(rise: Fraction, run: Fraction) -> Amount:
    # A ratio is a statement of design, not a rounded reading, so its step is 0 and a second wording
    # is held against it closely.
    if run == 0:
        raise Unreadable("has no run", "number-out-of-range", "write rise:run, like 1:12")
    return Amount(float(rise / run))


def _of_angle(amount: Amount) -> Amount:
    if abs(amount.si) >= 90:
        raise Unreadable(
            "is as steep as a wall", "number-out-of-range", "a slope is less than 90 deg"
        )
    slope = math.tan(math.radians(amount.si))
    return Amount(slope, math.radians(amount.step_si) * (1 + slope * slope), amount.unit)
