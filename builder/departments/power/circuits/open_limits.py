"""
What may take something off a limit and is not said, so that what is free is told as at most.
"""

from collections.abc import Iterator

from builder.departments.power.circuits.sources import Source, limits_open, said_of_neutral
from builder.departments.power.circuits.tree import Network
from builder.departments.power.description import Generator
from builder.formulas.generators import REFERENCE_AIR_C, REFERENCE_ALTITUDE_M
from builder.reading.absent import Absent

SAID = (Absent.NOT_STATED, Absent.NONE)
"""Of a neutral's rating: left out it is like a line's, and none is none. All else is open."""


def open_limits(name: str, network: Network) -> tuple[str, ...]:
    """What may leave less than a figure says of a node: its own and of all that feeds it."""
    return tuple(words for _, words in all_open(name, network))


def lacking_limits(name: str, network: Network) -> tuple[str, ...]:
    """The same as what is missing for an exact figure."""
    return tuple(lacking for lacking, _ in all_open(name, network))


Open = tuple[str, str]
"""What nobody knows, as what is missing, and in words after `less`."""


def all_open(name: str, network: Network) -> Iterator[Open]:
    """What is open of a node and of all that feeds it."""
    way = [network.sources[up] for up in network.tree.path[name]]
    if shares := " and ".join(source.name for source in way if not source.share_said):
        share = f"the continuous share of {shares}"
        yield share, f"what {share} leaves off"
    for source in way:
        if lacking := " and ".join(limits_open(source)):
            limit = f"the {lacking} of {source.name}"
            yield limit, f"what {limit} cannot carry, which is not known"
        if len(source.phases) > 1:
            yield from neutral_open(source, network)
        if isinstance(source.record, Generator):
            yield from engine_open(source.record)


def neutral_open(source: Source, network: Network) -> Iterator[Open]:
    """A neutral of unknown rating, and third harmonics of unknown size in one."""
    neutral = said_of_neutral(source)
    if isinstance(neutral, Absent) and neutral not in SAID:
        words = f"what the neutral of {source.name} cannot carry, whose rating is unknown"
        yield f"the rating of the neutral of {source.name}", words
    loads = network.unknown_thirds_below(source.name)
    if loads and neutral is not Absent.NONE:
        thirds = f"the third harmonic of {', '.join(loads)}"
        yield thirds, f"what {thirds} takes of the neutral"


def engine_open(generator: Generator) -> Iterator[Open]:
    """What a generator's sheet and its site leave open."""
    if not isinstance(generator.prime, Absent) and not isinstance(
        generator.rated_power_factor, float
    ):
        words = f"what the engine of {generator.name} turns less, whose power factor is not stated"
        yield f"the rated power factor of {generator.name}", words
    if conditions := " and ".join(not_taken_off(generator)):
        words = f"what {conditions} take off {generator.name}"
        yield f"the derating of {generator.name} by {conditions}", words


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
