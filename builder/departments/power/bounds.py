"""Quantities of power that must lie in a range, or no figure makes sense."""

from typing import Annotated, TypeVar

from pydantic import AfterValidator

from builder.reading.quantities import (
    ApparentPower,
    CrossSection,
    Current,
    Length,
    Percent,
    Temperature,
    Volume,
)
from builder.reading.quantity import Quantity
from builder.reading.refusing import error
from builder.reading.words import Count, Ratio

Q = TypeVar("Q", bound=Quantity)


def above_zero(quantity: Q) -> Q:
    """Refuse zero and less."""
    if quantity.si <= 0:
        raise error(
            "number-out-of-range",
            "is not above zero",
            "write none where there is none, or leave the key out",
        )
    return quantity


def some_share(share: Percent) -> Percent:
    """Refuse a share that is not above 0 and at most all."""
    if not 0 < share.si <= 1:
        raise error(
            "number-out-of-range",
            "is not above 0 % and at most 100 %",
            "write the share that may be used, such as 80 %",
        )
    return share


def not_below_zero(percent: Percent) -> Percent:
    """Refuse a negative percentage."""
    if percent.si < 0:
        raise error("number-out-of-range", "is below zero", "write what is lost, such as 3 %")
    return percent


def power_factor(ratio: float) -> float:
    """Refuse what no load has."""
    if not 0 < ratio <= 1:
        advice = (
            "active power is never more than apparent power; write a number above 0 and at most 1,"
            " such as 0.9"
        )
        raise error("power-factor-range", "is no power factor", advice)
    return ratio


def at_least_one(count: int) -> int:
    """Refuse none of what must be there."""
    if count < 1:
        raise error(
            "number-out-of-range",
            "is not at least 1",
            "write how many share each line, or leave the key out",
        )
    return count


Amperes = Annotated[Current, AfterValidator(above_zero)]
KilovoltAmperes = Annotated[ApparentPower, AfterValidator(above_zero)]
Section = Annotated[CrossSection, AfterValidator(above_zero)]
Step = Annotated[Length, AfterValidator(above_zero)]
Litres = Annotated[Volume, AfterValidator(above_zero)]
Share = Annotated[Percent, AfterValidator(some_share)]
Loss = Annotated[Percent, AfterValidator(not_below_zero)]
PowerFactor = Annotated[Ratio, AfterValidator(power_factor)]
InParallel = Annotated[Count, AfterValidator(at_least_one)]


def warmer(step: Temperature) -> Temperature:
    """Refuse a step in temperature that is none."""
    if step.c <= (-17.7 if step.text.rstrip().upper().endswith("F") else 0):
        raise error(
            "number-out-of-range", "is not above zero", "write the step in degrees, such as 5 C"
        )
    return step


Degrees = Annotated[Temperature, AfterValidator(warmer)]
