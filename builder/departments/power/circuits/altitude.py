"""Generators run at the altitude of the house, unless they say their own."""

from builder.departments.power.description import Generator, Power
from builder.exchange import Altitude
from builder.reading.absent import Absent, listed
from builder.reading.quantities import Length


def at_altitude(power: Power, altitude: Altitude | None) -> Power:
    """
    The description with the house's altitude filled in at each generator that says none.

    A stated unknown stays unknown.
    """
    if altitude is None:
        return power
    there = Length(altitude.altitude_m, altitude.said)
    return power.model_copy(
        update={
            "generators": tuple(
                standing_there(generator, there) for generator in listed(power.generators)
            )
        }
    )


def standing_there(generator: Generator, there: Length) -> Generator:
    """A generator at the house's altitude, unless it says its own."""
    return (
        generator.model_copy(update={"works_at_altitude": there})
        if generator.works_at_altitude is Absent.NOT_STATED
        else generator
    )
