"""
What may take something off a limit and is not said, so that what is free is told as at most.
"""

from collections.abc import Iterator

from builder.departments.power.circuits.sources import said_of_neutral
from builder.departments.power.circuits.tree import Network
from builder.departments.power.description import Generator
from builder.formulas.generators import REFERENCE_AIR_C, REFERENCE_ALTITUDE_M
from builder.reading.absent import Absent

SAID = (Absent.NOT_STATED, Absent.NONE)
"""Of a neutral's rating: left out it is like a line's, and none is none. All else is open."""


def open_limits(name: str, network: Network) -> tuple[str, ...]:
    """What may leave less than a figure says of a node: its own and of all that feeds it."""
    way = [network.sources[up] for up in network.tree.path[name]]
    shares = [source.name for source in way if not source.share_said]
    found = [f"what the continuous share of {' and '.join(shares)} leaves off"] if shares else []
    for source in way:
        neutral = said_of_neutral(source)
        if len(source.phases) > 1 and isinstance(neutral, Absent) and neutral not in SAID:
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
    if is_open(generator.altitude_derating) and (
        isinstance(height, Absent) or height.m > REFERENCE_ALTITUDE_M
    ):
        yield "height"
    if is_open(generator.temperature_derating) and (
        isinstance(air, Absent) or air.c > REFERENCE_AIR_C
    ):
        yield "heat"


def is_open(derating: object) -> bool:
    """Whether nobody says what is taken off, nor that nothing is."""
    return isinstance(derating, Absent) and derating is not Absent.NONE


def harsh_conditions(generator: Generator) -> list[str]:
    """The height and the air that are written, beyond a rating's own, with no sheet for them."""
    open_now = [*not_taken_off(generator)]
    stated = (("height", generator.works_at_altitude), ("heat", generator.works_in_air_of))
    return [
        f"at {value.text}" if name == "height" else f"in air of {value.text}"
        for name, value in stated
        if name in open_now and not isinstance(value, Absent)
    ]
