"""
A tree that cannot be: fed from itself, fed in a loop, or on a phase that its source does not have.
"""

from collections.abc import Iterator

from pydantic import ValidationError
from pydantic_core import InitErrorDetails

from builder.departments.power.description.nodes import Fed
from builder.departments.power.description.wiring import Wiring
from builder.reading.absent import Absent
from builder.reading.nodes import spoken
from builder.reading.problems import Problem
from builder.reading.refusing import error

Path = tuple[str | int, ...]


def refuse_impossible_tree(power: Wiring) -> None:
    """
    Refuse a description whose feeds make no tree.

    Names that nobody bears are refused for the whole venue, elsewhere.
    """
    errors = [*feeding_errors(power)]
    if not errors:
        errors = [*in_turn_errors(power), *phase_errors(power)]
    if errors:
        raise ValidationError.from_exception_data("Power", errors)


def refused(path: Path, value: str, code: str, reason: str, advice: str) -> InitErrorDetails:
    """One mistake at its place in the file."""
    return InitErrorDetails(type=error(code, reason, advice), loc=path, input=value)


def placed(power: Wiring) -> Iterator[tuple[Path, Fed]]:
    """Services and boards, each with its path in the file."""
    yield from ((("services", index), service) for index, service in enumerate(power.services))
    yield from ((("boards", index), board) for index, board in enumerate(power.boards))


def feeding_errors(power: Wiring) -> Iterator[InitErrorDetails]:
    """Nodes fed from themselves, and each loop once."""
    feeds = {fed.name: fed.fed_from for _, fed in placed(power)}
    told: set[str] = set()
    for path, fed in placed(power):
        if fed.fed_from == fed.name:
            yield refused(
                (*path, "fed_from"),
                fed.name,
                "fed-from-itself",
                "is the service itself",
                "name the supply, service or board that feeds it",
            )
            continue
        way = [fed.name]
        while (above := feeds.get(way[-1])) is not None and above not in way:
            way.append(above)
        if above == fed.name and fed.name not in told:
            told.update(way)
            reason = (
                f"makes a loop: {way[0]} is fed from"
                f" {', which is fed from '.join([*way[1:], above])}"
            )
            yield refused(
                (*path, "fed_from"),
                fed.fed_from,
                "feed-loop",
                reason,
                "one of them must be fed from a supply",
            )


IN_TURN = "write all, or the phases it hangs on; only a row of outlets takes turns"


def in_turn_errors(power: Wiring) -> Iterator[InitErrorDetails]:
    """Phases in turn on one thing, which cannot take turns."""
    single = [((*path, "phases"), fed.phases) for path, fed in placed(power)]
    single += [
        (("standing_loads", index, "phases"), load.phases)
        for index, load in enumerate(power.house_loads)
    ]
    for path, phases in single:
        if not isinstance(phases, Absent) and phases.in_turn:
            yield refused(path, str(phases), "phase-unknown", "is for outlets alone", IN_TURN)


def phase_errors(power: Wiring) -> Iterator[InitErrorDetails]:
    """Phases named on something that its source does not have."""
    for path, phases, reason in wrong_phases(power):
        yield refused(path, phases, "phase-not-there", reason, PHASE_ADVICE)


def phase_problems(power: Wiring) -> Iterator[Problem]:
    """The same of circuits that stand in several files."""
    for path, phases, reason in wrong_phases(power):
        line = getattr(power, LISTS.get(str(path[0]), str(path[0])))[path[1]]
        where = line.where("phases")
        yield Problem(where, spoken(path), phases, reason, "phase-not-there", PHASE_ADVICE)


PHASE_ADVICE = "name phases that it has, or say which phases the source has"
LISTS = {"shore_power": "shore_outlets"}


def wrong_phases(power: Wiring) -> Iterator[tuple[Path, str, str]]:
    """Phases named on something that its source does not have: where, which, and why."""
    has = wired(power)
    named = [((*path, "phases"), fed.fed_from, fed.phases) for path, fed in placed(power)]
    named += [
        (("outlets", index, "phases"), outlet.fed_from, outlet.phases)
        for index, outlet in enumerate(power.outlets)
    ]
    named += [
        (("shore_power", index, "phases"), outlet.fed_from, outlet.phases)
        for index, outlet in enumerate(power.shore_outlets)
    ]
    named += [
        (("standing_loads", index, "phases"), load.on, load.phases)
        for index, load in enumerate(power.house_loads)
    ]
    for path, source, phases in named:
        lacking = (
            []
            if isinstance(phases, Absent)
            else [name for name in phases.names if name not in has.get(source, phases.names)]
        )
        if lacking and not isinstance(phases, Absent):
            reason = (
                f"asks for {', '.join(lacking)}, and {source} has {' '.join(has[source])} alone"
            )
            yield path, str(phases), reason


def wired(power: Wiring) -> dict[str, tuple[str, ...]]:
    """
    The phases of each node as far as they are written; a node that does not say has those of its
    source.
    """
    has: dict[str, tuple[str, ...]] = {}
    for root in power.roots:
        lines = 3 if isinstance(root.system, Absent) else root.system.lines
        has[root.name] = ("L1", "L2", "L3")[:lines]
    waiting = [fed for _, fed in placed(power)]
    while ready := [fed for fed in waiting if fed.fed_from in has]:
        for fed in ready:
            above = has[fed.fed_from]
            has[fed.name] = (
                above
                if isinstance(fed.phases, Absent) or not fed.phases.names
                else fed.phases.names
            )
            waiting.remove(fed)
    return has
