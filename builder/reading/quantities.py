"""The kinds of quantity a description may state, each with a property that names its unit."""

from fractions import Fraction

from builder.reading import units
from builder.reading.amounts import Amount, rescaled
from builder.reading.clock import TimeOfDay
from builder.reading.conductors import CrossSection
from builder.reading.electrical import (
    ApparentPower,
    Current,
    DataRate,
    Frequency,
    Level,
    Power,
    Voltage,
)
from builder.reading.loads import LoadPerArea, LoadPerLength, Mass, Stiffness
from builder.reading.numerals import Unreadable, leading_numeral
from builder.reading.positions import Across, Depth, Height, Length
from builder.reading.quantity import Quantity
from builder.reading.slopes import Slope

__all__ = [
    "Across", "Angle", "ApparentPower", "Area", "CrossSection", "Current", "DataRate", "Depth", "Duration", "Frequency", "Height", "Length",  # noqa: E501
    "Level", "LoadPerArea", "LoadPerLength", "Mass", "Percent", "Power", "Quantity", "Slope", "Speed", "Stiffness", "Temperature", "TimeOfDay",  # noqa: E501
    "Unreadable", "Voltage", "Volume", "disagreement",
]  # fmt: skip


class Area(Quantity):
    """An area."""

    __slots__ = ()
    kind, examples, si_unit, units = "an area", ("260 m2", "2,800 sq ft"), "m2", units.AREA

    @property
    def m2(self) -> float:
        """Square metres."""
        return self.si


class Volume(Quantity):
    """A volume."""

    __slots__ = ()
    kind, examples, si_unit, units = "a volume", ("120 l", "5,200 m3"), "m3", units.VOLUME

    @property
    def l(self) -> float:  # noqa: E743
        """Litres."""
        return rescaled(self.si, Fraction("0.001"))

    @property
    def m3(self) -> float:
        """Cubic metres."""
        return self.si


class Duration(Quantity):
    """A length of time. A day is 24 hours."""

    __slots__ = ()
    kind, examples, si_unit, units = (
        "a duration",
        ("60 min", "5 days", "35 ms"),
        "s",
        units.DURATION,
    )

    @property
    def s(self) -> float:
        """Seconds."""
        return self.si

    @property
    def days(self) -> float:
        """Days of 24 hours."""
        return self.si / 86400


class Percent(Quantity):
    """A share of a whole, written in per cent."""

    __slots__ = ()
    kind, examples, si_unit, units, may_be_negative = (
        "a percentage",
        ("8 %",),
        "1",
        units.SHARE,
        True,
    )

    @property
    def share(self) -> float:
        """The share of one: 8 % is 0.08."""
        return self.si

    @classmethod
    def read(cls, text: str) -> Amount:
        """Read one wording; 0.8 is mostly a share of one, and who reads this knows."""
        try:
            return super().read(text)
        except Unreadable as wrong:
            if wrong.code != "unit-missing":
                raise
            raise Unreadable(wrong.reason, wrong.code, missing_sign(text)) from wrong


def missing_sign(text: str) -> str:
    """What to write for a bare number where a percentage belongs."""
    number, _ = leading_numeral(text)
    if 0 < number.value < 1:
        return f"write '{float(number.value * 100):g} %', or '{text} %' if that is meant"
    return f"write '{text} %' if that is meant"


class Angle(Quantity):
    """
    An angle. Kept in degrees, which are accepted for use with the SI, so that what was written
    stays exact.
    """

    __slots__ = ()
    kind, examples, si_unit, units, may_be_negative = (
        "an angle",
        ("30 deg",),
        "deg",
        units.ANGLE,
        True,
    )

    @property
    def deg(self) -> float:
        """Degrees."""
        return self.si


class Temperature(Quantity):
    """A temperature."""

    __slots__ = ()
    kind, examples, si_unit, units, may_be_negative = (
        "a temperature",
        ("20 °C", "68 °F"),
        "K",
        units.TEMPERATURE,
        True,
    )

    @property
    def c(self) -> float:
        """Degrees Celsius."""
        return float(Fraction(repr(self.si)) - Fraction("273.15"))


class Speed(Quantity):
    """A speed."""

    __slots__ = ()
    kind, examples, si_unit, units = "a speed", ("12 m/s", "28 mph"), "m/s", units.SPEED

    @property
    def m_per_s(self) -> float:
        """Metres per second."""
        return self.si


def disagreement(quantity: Quantity) -> float | None:
    """
    How far two wordings of one quantity differ, as a share of the larger, or None where they agree.

    They agree within half the last digit of the coarser wording, or within 0.5 %, whichever is
    more. A ratio is exact as written.
    """
    first, second = quantity.amounts(quantity.text)
    return None if second is None else apart(first, second)


def apart(first: Amount, second: Amount, within: float = 0.005) -> float | None:
    """
    How far two readings differ, as a share of the larger, or None where they agree: within half the
    last digit of the coarser, or within a share, whichever is more.
    """
    difference, size = abs(first.si - second.si), max(abs(first.si), abs(second.si))
    allowed = max(max(first.step_si, second.step_si) / 2, within * size)
    # A hair more, so that a difference of exactly half a digit is not reported because of binary
    # fractions.
    return difference / size if difference > allowed * (1 + 1e-9) else None
