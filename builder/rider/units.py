"""
The units that quantities are read in, as plain data, so that the browser reads the same ones with
the same exact factors.
"""

from collections.abc import Mapping
from typing import Any

from builder.reading.quantities import Quantity


def units_of(kinds: Mapping[str, type[Quantity]]) -> dict[str, dict[str, dict[str, Any]]]:
    """
    Units by kind and spelling.

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
