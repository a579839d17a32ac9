"""Quantities of power whose range is narrower than that of their kind."""

from typing import Annotated

from pydantic import AfterValidator

from builder.reading.possible import Possible
from builder.reading.quantities import Percent, Temperature
from builder.reading.refusing import error
from builder.reading.words import Count, Ratio

Share = Annotated[Percent, Possible.above(0.0, 1.0)]
"""A share that may be used: above 0 % and at most all."""
PowerFactor = Annotated[Ratio, Possible.above(0.0, 1.0)]
"""Active power is never more than apparent power."""
InParallel = Annotated[Count, Possible(1, 100)]


def warmer(step: Temperature) -> Temperature:
    """Refuse a step in temperature that is none."""
    if step.c <= (-17.7 if step.text.rstrip().upper().endswith("F") else 0):
        raise error(
            "number-out-of-range", "is not above zero", "write the step in degrees, such as 5 C"
        )
    return step


Degrees = Annotated[Temperature, AfterValidator(warmer)]
