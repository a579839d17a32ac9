"""What height and heat leave of a generator's rating on its site."""

from builder.departments.power.description import Generator
from builder.formulas.generators import DeratingStep, derating_factor, site_rating_kva
from builder.reading.absent import Absent


def derating(generator: Generator) -> tuple[tuple[str, float], ...] | None:
    """
    What is left of the rating by each condition, in words and as a share; None where a condition is
    not said, or nothing is left.
    """
    found = []
    by_height, by_heat = generator.altitude_derating, generator.temperature_derating
    if not isinstance(by_height, Absent):
        if isinstance(generator.works_at_altitude, Absent):
            return None
        step = DeratingStep(by_height.above.m, by_height.per.m, by_height.loses.share * 100)
        found.append(
            (f"at {generator.works_at_altitude.text}", left_of(generator.works_at_altitude.m, step))
        )
    if not isinstance(by_heat, Absent):
        if isinstance(generator.works_in_air_of, Absent):
            return None
        step = DeratingStep(
            by_heat.above.c, degrees(by_heat.per.text, by_heat.per.c), by_heat.loses.share * 100
        )
        found.append(
            (
                f"in air of {generator.works_in_air_of.text}",
                left_of(generator.works_in_air_of.c, step),
            )
        )
    return (
        None
        if any(factor is None for _, factor in found)
        else tuple((name, factor) for name, factor in found if factor is not None)
    )


def left_of(value: float, step: DeratingStep) -> float | None:
    """The share left by one condition; None where the maker's steps leave nothing."""
    try:
        return derating_factor(value, step)
    except ValueError:
        return None


def degrees(text: str, celsius: float) -> float:
    """A step in temperature: written in Fahrenheit, its 32 degrees of offset do not count."""
    return celsius + 32 / 1.8 if text.rstrip().upper().endswith("F") else celsius


def site_kva(generator: Generator) -> float | None:
    """
    Rating of a generator on its site; None where the rating or a condition that counts is not said.
    """
    factors = derating(generator)
    if isinstance(generator.prime, Absent) or factors is None:
        return None
    return site_rating_kva(prime_kva=generator.prime.kva, factors=[factor for _, factor in factors])
