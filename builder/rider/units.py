"""
The kinds of quantity that riders use, by name, as plain data with exact factors: the terminal and
the page read with the same.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from builder.reading.quantities import (
    Across,
    Angle,
    Area,
    Current,
    Depth,
    Duration,
    Height,
    Length,
    Level,
    LoadPerArea,
    LoadPerLength,
    Mass,
    Quantity,
    TimeOfDay,
)
from builder.reading.quantity import data_of
from builder.reading.units import unit_book
from builder.reading.values.kinds import KindBook
from builder.rider.lasting import Lasting

KINDS: Mapping[str, type[Quantity]] = MappingProxyType(
    {
        "length": Length,
        "mass": Mass,
        "load": LoadPerArea,
        "mass per length": LoadPerLength,
        "area": Area,
        "current": Current,
        "level": Level,
        "duration": Duration,
        "angle": Angle,
        "across": Across,
        "depth": Depth,
        "height": Height,
        "time of day": TimeOfDay,
        "lasting": Lasting,
    }
)
"""Those of the rules of departments first, by the names that the rules use."""
QUANTITIES: Mapping[str, type[Quantity]] = MappingProxyType(
    {name: KINDS[name] for name in list(KINDS)[: list(KINDS).index("across")]}
)
"""Those that a rule may ask."""
NAMES: Mapping[type[Quantity], str] = MappingProxyType({kind: name for name, kind in KINDS.items()})
UNITS: KindBook = {
    **unit_book(),
    "kinds": {name: data_of(kind) for name, kind in KINDS.items()},  # type: ignore[arg-type] # mypy takes a class for its instance
}


def units_of(kinds: Mapping[str, type[Quantity]]) -> dict[str, dict[str, dict[str, Any]]]:
    """
    Units by kind and spelling, as the page's older reader takes them.

    Factors to SI are fractions of whole numbers, as text, for they may be larger than a float
    holds.
    """
    return {
        name: {
            spelling: {
                "symbol": unit.symbol,
                "top": str(unit.factor.numerator),
                "bottom": str(unit.factor.denominator),
                "smaller": unit.smaller,
                "count": unit.count,
            }
            for spelling, unit in kind.units.items()
        }
        for name, kind in kinds.items()
    }
