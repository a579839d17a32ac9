"""Cross-sections of conductors, in mm2 or by American wire gauge."""

import math
import re
from fractions import Fraction

from builder.reading import units
from builder.reading.amounts import Amount, rescaled
from builder.reading.numerals import Unreadable
from builder.reading.quantity import NUMBER_AND_UNIT, Quantity
from builder.reading.units import IMPERIAL, Unit

_GAUGE = re.compile(
    r"(?:#?(?P<size>[0-9]/0|[0-9]{1,2}) ?AWG|AWG ?#?(?P<after>[0-9]/0|[0-9]{1,2}))", re.IGNORECASE
)
GAUGE = Unit("AWG", Fraction(1), IMPERIAL)
_LARGEST_ZEROS, _SMALLEST_GAUGE = 4, 40


class CrossSection(Quantity):
    """The cross-section of a conductor; ``si`` is in m2."""

    __slots__ = ()
    kind, examples, si_unit, units = (
        "a cross-section",
        ("35 mm2", "4/0 AWG"),
        "m2",
        units.CROSS_SECTION,
    )
    pattern = rf"{NUMBER_AND_UNIT}|^\s*#?\s*[0-9]|^\s*[Aa][Ww][Gg]"

    @property
    def mm2(self) -> float:
        """Square millimetres."""
        return rescaled(self.si, Fraction("0.000001"))

    @classmethod
    def read(cls, text: str) -> Amount:
        """Read one wording."""
        if gauge := _GAUGE.fullmatch(text):
            return Amount(awg_mm2(gauge["size"] or gauge["after"]) * 1e-6, unit=GAUGE)
        return super().read(text)


def awg_mm2(size: str) -> float:
    """
    The area of a solid round wire of this American gauge, in mm2, such as `12` or `4/0`.

    36 AWG is 0.005 in across and 4/0 is 0.46 in, with 39 equal ratios between them (ASTM B258).

    Raises
    ------
    Unreadable
        `number-out-of-range` outside 4/0 to 40.
    """
    has_zeros = size.endswith("/0")
    zeros = int(size[0]) if has_zeros else 0
    gauge = 1 - zeros if has_zeros else int(size)
    if (has_zeros and not 1 <= zeros <= _LARGEST_ZEROS) or gauge > _SMALLEST_GAUGE:
        raise Unreadable(
            "is not a gauge between 4/0 and 40",
            "number-out-of-range",
            "write the cross-section in mm2 or kcmil",
        )
    diameter_mm = 0.127 * math.pow(92, (36 - gauge) / 39)
    return math.pi / 4 * diameter_mm**2
