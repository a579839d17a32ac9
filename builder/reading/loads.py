"""Quantities of load and of what carries it."""

from fractions import Fraction

from builder.reading import units
from builder.reading.amounts import rescaled
from builder.reading.quantity import Quantity


class Mass(Quantity):
    """A mass; a load that hangs or stands is written as one."""

    __slots__ = ()
    kind, examples, si_unit, units = "a mass", ("900 kg", "2000 lb"), "kg", units.MASS

    @property
    def kg(self) -> float:
        """Kilograms."""
        return self.si


class LoadPerArea(Quantity):
    """A load spread over an area."""

    __slots__ = ()
    kind, examples, si_unit, units = (
        "a load per area",
        ("7.4 kPa", "155 psf"),
        "Pa",
        units.LOAD_PER_AREA,
    )

    @property
    def kpa(self) -> float:
        """Kilopascals."""
        return rescaled(self.si, Fraction(1000))


class LoadPerLength(Quantity):
    """A load spread along a length."""

    __slots__ = ()
    kind, examples, si_unit, units = (
        "a load per length",
        ("45 kg/m", "30 lb/ft"),
        "kg/m",
        units.LOAD_PER_LENGTH,
    )

    @property
    def kg_per_m(self) -> float:
        """Kilograms per metre."""
        return self.si


class Stiffness(Quantity):
    """A bending stiffness, EI."""

    __slots__ = ()
    kind, examples, si_unit, units = "a stiffness", ("2,000 kN m2",), "N m2", units.STIFFNESS

    @property
    def kn_m2(self) -> float:
        """Kilonewton square metres."""
        return rescaled(self.si, Fraction(1000))
