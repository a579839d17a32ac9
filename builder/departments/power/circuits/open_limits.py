"""
What may take something off a limit and is not said, so that what is free is told as at most.
"""

from collections.abc import Iterator

from builder.departments.power.circuits.sources import said_of_neutral
from builder.departments.power.circuits.tree import Network
from builder.departments.power.description import Generator
from builder.formulas.generators import REFERENCE_AIR_C, REFERENCE_ALTITUDE_M
from builder.reading.absent import Absent

OPEN = (Absent.NOT_STATED, Absent.UNKNOWN)


def open_limits(name: str, network: Network) -> tuple[str, ...]:
    """What may leave less than a figure says of a node: its own and of all that feeds it."""
    way = [network.sources[up] for up in network.tree.path[name]]
    shares = [source.name for source in way if not source.share_said]
    found = [f"what the continuous share of {' and '.join(shares)} leaves off"] if shares else []
    for source in way:
        if len(source.phases) > 1 and said_of_neutral(source) is Absent.UNKNOWN:
            found.append(f"what the neutral of {source.name} cannot carry, whose rating is unknown")
        if isinstance(source.record, Generator):
            found += engine_open(source.record)
    return tuple(found)


def engine_open(generator: Generator) -> Iterator[str]:
    """What a generator's sheet and its site leave open."""
    if not isinstance(generator.prime, Absent) and not isinstance(
        generator.rated_power_factor, float
    ):
        yield f"what the engine of {generator.name} turns less, whose power factor is not stated"
    if conditions := [*not_taken_off(generator)]:
        yield f"what {' and '.join(conditions)} take off {generator.name}"


def not_taken_off(generator: Generator) -> Iterator[str]:
    """Height and heat, where they may take something off and no sheet says how much."""
    height, air = generator.works_at_altitude, generator.works_in_air_of
    if generator.altitude_derating in OPEN and (
        isinstance(height, Absent) or height.m > REFERENCE_ALTITUDE_M
    ):
        yield "height"
    if generator.temperature_derating in OPEN and (
        isinstance(air, Absent) or air.c > REFERENCE_AIR_C
    ):
        yield "heat"


def harsh_conditions(generator: Generator) -> list[str]:
    """The height and the air that are written, beyond a rating's own, with no sheet for them."""
    open_now = [*not_taken_off(generator)]
    stated = (("height", generator.works_at_altitude), ("heat", generator.works_in_air_of))
    return [
        f"at {value.text}" if name == "height" else f"in air of {value.text}"
        for name, value in stated
        if name in open_now and not isinstance(value, Absent)
    ]
