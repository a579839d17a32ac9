"""The range of what a value can be, by kind of quantity; ``possible.py`` holds values to it."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Self

from builder.reading import quantities as q


@dataclass(frozen=True, slots=True)
class Possible:
    """
    The range of what a field can be, in SI. ``high`` is possible, and so is ``low`` where
    ``low_too``.
    """

    low: float
    high: float
    low_too: bool = True

    @classmethod
    def above(cls, low: float, high: float) -> Self:
        """A range without its lower end, such as above nothing."""
        return cls(low, high, low_too=False)

    def holds(self, value: float) -> bool:
        """Whether a value is possible."""
        return (self.low <= value if self.low_too else self.low < value) and value <= self.high


MOST = 1_000_000
"""More of one thing than any house counts."""
YEARS_S = 20 * 366 * 86_400.0
LOUDEST_DB = 194.0
"""
A tone whose troughs reach vacuum: its amplitude is the pressure of the air, 101 325 Pa, against
20 µPa. 20 lg(101 325 / 0.000 02) is 194.1 dB.
"""
POSSIBLE: Mapping[type[q.Quantity], Possible] = MappingProxyType(
    {
        q.Length: Possible.above(0.0, 10_000.0),
        q.Across: Possible(-10_000.0, 10_000.0),
        q.Depth: Possible(-10_000.0, 10_000.0),
        q.Height: Possible(-1_000.0, 1_000.0),
        q.Area: Possible.above(0.0, 1e7),
        q.Volume: Possible.above(0.0, 1e7),
        q.Mass: Possible.above(0.0, 1e7),
        q.LoadPerArea: Possible.above(0.0, 1e7),
        q.LoadPerLength: Possible.above(0.0, 1e5),
        q.Stiffness: Possible.above(0.0, 1e12),
        q.Speed: Possible.above(0.0, 150.0),
        q.Temperature: Possible(173.15, 373.15),
        q.CrossSection: Possible.above(0.0, 0.01),
        q.Current: Possible.above(0.0, 1e5),
        q.Voltage: Possible.above(0.0, 1e6),
        q.ApparentPower: Possible.above(0.0, 1e9),
        q.Power: Possible.above(0.0, 1e9),
        q.Frequency: Possible.above(0.0, 3e11),
        q.DataRate: Possible.above(0.0, 1e15),
        q.Level: Possible(-50.0, LOUDEST_DB),
        q.Duration: Possible(0.0, YEARS_S),
        q.TimeOfDay: Possible(0.0, 86_400.0),
        q.Slope: Possible(-1.0, 1.0),
        q.Percent: Possible(0.0, 1.0),
        q.Angle: Possible(-360.0, 360.0),
    }
)
"""The range of each kind in the unit that its ``si_unit`` names."""
COUNTED = Possible(0, MOST)


def range_of_kind(kind: type[q.Quantity]) -> Possible:
    """
    The range of a kind of quantity.

    Raises
    ------
    ValueError
        If the kind has none: every kind needs a row in ``POSSIBLE``.
    """
    for ancestor in kind.__mro__:
        if ancestor in POSSIBLE:
            return POSSIBLE[ancestor]
    raise ValueError(f"kind must have a range of what is possible, got {kind.__name__}")
