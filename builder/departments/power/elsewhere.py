"""
Circuits of other spaces under the same roof: what of them hangs on a supply that all share, and the
circuits of one space with those of the others under it.
"""

from collections.abc import Iterator, Sequence

from builder.departments.power.description import Power, StandingLoad
from builder.reading.absent import Absent, listed
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
    own = power.standing_loads
    told = own if own is Absent.UNKNOWN else (*listed(own), *loads)
    return power.model_copy(update={**lists, "standing_loads": told})


def with_factors(power: Power) -> Iterator[StandingLoad]:
    """The standing loads of a file, each with the power factor that the file says of all."""
    for load in listed(power.standing_loads):
        is_open = load.power_factor is Absent.NOT_STATED
        update = {"power_factor": power.usual_power_factor} if is_open else {}
        yield load.model_copy(update=update)


def on_shared(power: Power) -> Power:
    """
    The circuits of a space that hang on what is not its own, with their loads. Where nobody knows
    what stands there, each of them carries a load of unknown size.
    """
    fed_from = {each.name: each.fed_from for each in power.fed}
    own = {root.name for root in power.roots} | set(fed_from)
    reaching = {name for name in fed_from if reaches_out(name, fed_from, own)}
    loads = [
        load for load in listed(power.standing_loads) if load.on in reaching or load.on not in own
    ]
    if power.standing_loads is Absent.UNKNOWN:
        loads = [unlisted(name) for name in fed_from if fed_from[name] not in own]
    return power.model_copy(
        update={
            "supplies": (),
            "generators": (),
            "services": tuple(each for each in power.services if each.name in reaching),
            "boards": tuple(each for each in power.boards if each.name in reaching),
            "outlets": (),
            "untraced_outlets": (),
            "shore_power": Absent.NOT_STATED,
            "standing_loads": tuple(loads),
        }
    )


def unlisted(on: str) -> StandingLoad:
    """What draws on a board of which nobody knows what stands on it."""
    return StandingLoad.model_construct(what=f"what stands on {on}", on=on, draws=Absent.UNKNOWN)


def reaches_out(name: str, fed_from: dict[str, str], own: set[str]) -> bool:
    """Whether what feeds a service or board in the end is not of its space."""
    while name in fed_from:
        name = fed_from[name]
    return name not in own
