"""
The kinds of quantity that riders use, by name, as plain data with exact factors: the terminal and
the page read with the same.
"""

from collections.abc import Mapping
from types import MappingProxyType

from builder.reading.quantities import (
    Across,
    Angle,
    Area,
    Current,
    DataRate,
    Depth,
    Duration,
    Height,
    Length,
    Level,
    LoadPerArea,
    LoadPerLength,
    Mass,
    Percent,
    Quantity,
    Temperature,
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
        "share": Percent,
        "temperature": Temperature,
        "data rate": DataRate,
        "angle": Angle,
        "across": Across,
        "depth": Depth,
        "height": Height,
        "time of day": TimeOfDay,
        "lasting": Lasting,
    }
)
"""The kinds that departments ask for have the names that their rules use."""
NAMES: Mapping[type[Quantity], str] = MappingProxyType({kind: name for name, kind in KINDS.items()})
UNITS: KindBook = {
    **unit_book(),
    "kinds": {name: data_of(kind) for name, kind in KINDS.items()},  # type: ignore[arg-type] # mypy takes a class for its instance
}
