"""Quantities that a meter reads: current, voltage, power, frequency, data rate and level."""

from fractions import Fraction

from builder.reading import units
from builder.reading.amounts import rescaled
from builder.reading.quantity import Quantity


class Current(Quantity):
    """A current."""

    __slots__ = ()
    kind, examples, si_unit, units = "a current", ("400 A",), "A", units.CURRENT

    @property
    def a(self) -> float:
        """Amperes."""
        return self.si


class Voltage(Quantity):
    """A voltage."""

    __slots__ = ()
    kind, examples, si_unit, units = "a voltage", ("230 V",), "V", units.VOLTAGE

    @property
    def v(self) -> float:
        """Volts."""
        return self.si


class ApparentPower(Quantity):
    """An apparent power."""

    __slots__ = ()
    kind, examples, si_unit, units = "an apparent power", ("12 kVA",), "VA", units.APPARENT_POWER

    @property
    def kva(self) -> float:
        """Kilovolt-amperes."""
        return rescaled(self.si, Fraction(1000))


class Power(Quantity):
    """A power."""

    __slots__ = ()
    kind, examples, si_unit, units = "a power", ("3.2 kW",), "W", units.POWER

    @property
    def kw(self) -> float:
        """Kilowatts."""
        return rescaled(self.si, Fraction(1000))


class Frequency(Quantity):
    """A frequency."""

    __slots__ = ()
    kind, examples, si_unit, units = "a frequency", ("518.200 MHz", "63 Hz"), "Hz", units.FREQUENCY

    @property
    def hz(self) -> float:
        """Hertz."""
        return self.si

    @property
    def mhz(self) -> float:
        """Megahertz."""
        return rescaled(self.si, Fraction(10**6))


class DataRate(Quantity):
    """How fast data passes, in bits a second."""

    __slots__ = ()
    kind, examples, si_unit, units = (
        "a data rate",
        ("100 Mbit/s", "1 Gbit/s"),
        "bit/s",
        units.DATA_RATE,
    )

    @property
    def mbit_per_s(self) -> float:
        """Megabits a second."""
        return rescaled(self.si, Fraction(10**6))


class Level(Quantity):
    """A level in decibels, with the weighting its author gave."""

    __slots__ = ()
    kind, examples, si_unit, units, may_be_negative = (
        "a level",
        ("102 dB", "98 dB(A)"),
        "dB",
        units.LEVEL,
        True,
    )

    @property
    def db(self) -> float:
        """Decibels."""
        return self.si

    @property
    def weighting(self) -> str:
        """`A`, `C`, or empty where none is written."""
        unit = self.amounts(self.text)[0].unit
        return unit.symbol[3:4] if unit else ""
