"""An amount: a number and its unit, read together, in SI, with how finely it was written."""

from dataclasses import dataclass
from fractions import Fraction

from builder.reading.units import Unit


@dataclass(frozen=True, slots=True)
class Amount:
    """
    A value in SI, the step of its last written digit in SI (0 where it is exact), and the unit it
    was written in.
    """

    si: float
    step_si: float = 0.0
    unit: Unit | None = None


def rescaled(value: float, factor: Fraction) -> float:
    """
    The value divided by a factor, as if its shortest decimal form were exact: 3.5e-05 m² in mm² is
    35, not 34.99…
    """
    return float(Fraction(repr(value)) / factor)
