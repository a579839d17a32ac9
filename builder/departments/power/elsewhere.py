"""
Circuits of other spaces under the same roof: what of them hangs on a supply that all share, and the
circuits of one space with those of the others under it.
"""

from collections.abc import Iterator, Sequence

from builder.departments.power.description import Fed, Power, StandingLoad
from builder.reading.absent import Absent
from builder.reading.written import DepartmentFile

NODES = ("supplies", "generators", "services", "boards")


def with_elsewhere(power: Power, others: Sequence[DepartmentFile]) -> Power:
    """
    The circuits with those of other spaces that hang on them: what these draw is no more left here.
    """
    files = [other for other in others if isinstance(other, Power)]
    if not files:
        return power
    lists = {
        key: (*getattr(power, key), *(line for other in files for line in getattr(other, key)))
        for key in NODES
    }
    loads = [load for other in files for load in with_factors(other)]
    return power.model_copy(update={**lists, "standing_loads": (*power.standing_loads, *loads)})


def with_factors(power: Power) -> Iterator[StandingLoad]:
    """The standing loads of a file, each with the power factor that the file says of all."""
    for load in power.standing_loads:
        is_open = load.power_factor is Absent.NOT_STATED
        update = {"power_factor": power.usual_power_factor} if is_open else {}
        yield load.model_copy(update=update)


def on_shared(power: Power) -> Power:
    """The circuits of a space that hang on what is not its own, with their loads."""
    fed: list[Fed] = [*power.services, *power.boards]
    fed_from = {each.name: each.fed_from for each in fed}
    own = {root.name for root in power.roots} | set(fed_from)
    reaching = {name for name in fed_from if reaches_out(name, fed_from, own)}
    return power.model_copy(
        update={
            "supplies": (),
            "generators": (),
            "services": tuple(each for each in power.services if each.name in reaching),
            "boards": tuple(each for each in power.boards if each.name in reaching),
            "outlets": (),
            "untraced_outlets": (),
            "shore_power": Absent.NOT_STATED,
            "standing_loads": tuple(
                load for load in power.standing_loads if load.on in reaching or load.on not in own
            ),
        }
    )


def reaches_out(name: str, fed_from: dict[str, str], own: set[str]) -> bool:
    """Whether what feeds a service or board in the end is not of its space."""
    while name in fed_from:
        name = fed_from[name]
    return name not in own
