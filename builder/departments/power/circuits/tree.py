"""The house's circuits as a tree with its loads: what stands where, and what is free."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from builder.departments.power.circuits.sources import Formula, Source, line_current_a, sources_of
from builder.departments.power.description import Power, StandingLoad
from builder.formulas.circuits import (
    Load,
    Node,
    PhaseAmperes,
    Standing,
    Tree,
    loads_by_node,
    standing,
    tree_of,
)
from builder.formulas.electricity import apparent_kva
from builder.formulas.phasors import (
    PHASES,
    SPLIT_PHASE_ANGLES_DEG,
    THREE_PHASE_ANGLES_DEG,
    Phasors,
    line_currents,
)
from builder.formulas.windings import free_behind
from builder.pack import Check
from builder.reading.absent import Absent, is_unknown
from builder.reading.in_part import Between, as_written, ends_of
from builder.reading.problems import Where
from builder.reading.quantities import ApparentPower, Current, Percent
from builder.reading.quantities import Power as ActivePower
from builder.reading.written import Written
from builder.working import check_of

Draw = ActivePower | ApparentPower | Current
"""What a load draws, in one of the ways of saying it."""


@dataclass(frozen=True, slots=True)
class Asked:
    """
    A standing load. One of ``kw``, ``kva`` and ``current_a`` is given; None for
    all where nobody knows. ``check`` tells how sure it is, ``in_part`` what is known of its size
    where that is no one value, and ``at_most`` it is the load at the upper ends of all that is.
    ``beyond`` is the least it draws, where that counts by itself and this is the rest of it.
    """

    what: str
    on: str
    said: str
    power_factor: float | None
    phases: tuple[str, ...] = ()
    kw: float | None = None
    kva: float | None = None
    current_a: float | None = None
    third_harmonic: float = 0.0
    third_open: bool = False
    where: Where | None = None
    check: Check | None = None
    in_part: Between[Draw] | None = None
    at_most: "Asked | None" = None
    beyond: str = ""


@dataclass(frozen=True, slots=True)
class Carried:
    """A load on the tree, with its powers and the step of its working in words."""

    asked: Asked
    load: Load
    kw: float
    kva: float
    step: str
    formulas: tuple[Formula, ...]


@dataclass(frozen=True, slots=True)
class LeftOut:
    """
    A load that no figure counts, and why. ``has_ends`` where nothing is lacking but one size, so
    that figures count it at both ends of what it draws.
    """

    asked: Asked
    why: str
    has_ends: bool = False


@dataclass(frozen=True, slots=True)
class Network:
    """
    The tree, its loads, and what stands on each node.

    ``at_most`` is what stands there with each load that is left out at the most its feed lets
    through (``fullest``), and ``seen`` the loads as each node sees them.
    """

    sources: dict[str, Source]
    tree: Tree
    carried: tuple[Carried, ...]
    left_out: tuple[LeftOut, ...]
    standing: dict[str, Standing]
    at_most: dict[str, Standing]
    fullest: tuple[Load, ...]
    seen: dict[str, list[Load]]

    @property
    def nodes(self) -> tuple[Node, ...]:
        """The nodes, parents first."""
        return tuple(self.tree.nodes.values())

    @property
    def loads(self) -> tuple[Load, ...]:
        """The loads that are counted."""
        return tuple(each.load for each in self.carried)

    def below(self, name: str) -> tuple[Carried, ...]:
        """The loads on a node or under it."""
        return tuple(each for each in self.carried if name in self.tree.path[each.load.node])

    def lines_above(self, name: str) -> Iterator[Written | Check]:
        """What is free on a node is as sure as these: all that feeds it, and every load on that."""
        way = self.tree.path[name]
        yield from (self.sources[up].record for up in way)
        asked = [*(each.asked for each in self.carried), *(left.asked for left in self.left_out)]
        for each in asked:
            if each.check and any(up in self.tree.path.get(each.on, ()) for up in way):
                yield each.check

    def unrated_above(self, name: str) -> tuple[str, ...]:
        """Nodes from here up of which nobody has said what they may carry."""
        return tuple(up for up in self.tree.path[name] if self.sources[up].binding is None)

    def closed_above(self, name: str) -> tuple[str, ...]:
        """Nodes from here up that are out of service."""
        return tuple(
            up
            for up in self.tree.path[name]
            if self.sources[up].record.condition == "out of service"
        )

    def lacking_above(self, name: str) -> tuple[str, ...]:
        """
        What keeps anything from being said to be free here: nodes up the tree that are out of
        service, or of unknown rating.
        """
        closed = [f"{up} back in service" for up in self.closed_above(name)]
        return (*closed, *(f"the rating of {up}" for up in self.unrated_above(name)))

    def unmeasured_below(self, name: str) -> tuple[str, ...]:
        """Loads on a node or anywhere below it whose size nobody knows."""
        return tuple(
            dict.fromkeys(
                left.asked.what
                for left in self.left_out
                if name in self.tree.path.get(left.asked.on, ())
            )
        )

    def unknown_thirds_below(self, name: str) -> tuple[str, ...]:
        """Loads on a node or below it whose third harmonic nobody knows."""
        return tuple(
            dict.fromkeys(each.asked.what for each in self.below(name) if each.asked.third_open)
        )

    def seen_at(self, name: str) -> tuple[tuple[Carried, Load], ...]:
        """The loads on a node or under it, each with what that node sees of it."""
        return tuple(zip(self.below(name), self.seen[name], strict=True))

    def is_same_frame(self, name: str, up: str) -> bool:
        """Whether no transformer stands between a node and one that feeds it."""
        return all(
            self.tree.nodes[one].winding == "line" and self.tree.nodes[one].parent_a_per_a == 1
            for one in self.way_down(name, up)
        )

    def way_down(self, name: str, up: str) -> tuple[str, ...]:
        """The nodes below ``up`` on the way down to a node, that node last."""
        way = self.tree.path[name]
        return tuple(reversed(way[: way.index(up)]))

    def left_at(self, name: str, up: str, index: int, left_a: PhaseAmperes) -> tuple[float, int]:
        """What ``up`` leaves to one line of a node below it, and the line of ``up``. [A]"""
        here, lines = left_a, (0, 1, 2)
        for below in self.way_down(name, up):
            node = self.tree.nodes[below]
            seen = [
                free_behind(
                    here, k, winding=node.winding, ratio=node.parent_a_per_a, phases=node.phases
                )
                for k in range(3)
            ]
            here = (seen[0][0], seen[1][0], seen[2][0])
            lines = (lines[seen[0][1]], lines[seen[1][1]], lines[seen[2][1]])
        return here[index], lines[index]

    def ratio(self, name: str, up: str) -> float:
        """Ampere at the node ``up`` for each ampere at ``name``."""
        return self.tree.scale[name] / self.tree.scale[up]


def network_of(power: Power) -> Network:
    """The circuits with the standing loads."""
    sources = sources_of(power)
    nodes = [source.node for source in sources.values()]
    carried: list[Carried] = []
    left_out: list[LeftOut] = []
    for asked in (*own_loads(power), *untold(power, sources)):
        found = placed(asked, sources)
        if isinstance(found, Carried):
            carried.append(found)
        else:
            left_out.append(found)
    tree, loads = tree_of(nodes), [each.load for each in carried]
    fullest = [
        load
        for left in left_out
        if left.asked.on in sources
        for load in at_its_limit(left.asked, sources, tree)
    ]
    return Network(
        sources,
        tree,
        tuple(carried),
        tuple(left_out),
        standing(nodes, loads),
        standing(nodes, [*loads, *fullest]),
        tuple(fullest),
        loads_by_node(tree, loads),
    )


def at_its_limit(asked: Asked, sources: dict[str, Source], tree: Tree) -> Iterator[Load]:
    """
    A load of unknown size as large as it can be: the whole limit of the first thing up the tree
    that has one, on every line.
    """
    for up in tree.path[asked.on]:
        if limit := sources[up].binding:
            current_a = limit.current_a * tree.scale[up] / tree.scale[asked.on]
            first, second, third = (
                current_a if phase in sources[asked.on].phases else 0.0 for phase in PHASES
            )
            currents = (complex(first), complex(second), complex(third))
            # It may be single-phase, so the neutral is held to it as each line is.
            yield Load(asked.what, asked.on, currents, returns_a=(first, second, third))
            return


def own_loads(power: Power) -> Iterator[Asked]:
    """The standing loads of this file that are in service."""
    for load in power.house_loads:
        if load.condition != "out of service":
            yield from in_two(asked_by(load, power), load)


def in_two(asked: Asked, load: StandingLoad) -> Iterator[Asked]:
    """
    A load of which only the least is known: that counts, and what it draws beyond is of any size.
    """
    least, most = ends_of(load.draws)
    if most is not None or not isinstance(least, Draw) or asked.power_factor is None:
        yield asked
        return
    yield drawing(replace(asked, in_part=None), least)
    yield replace(asked, what=f"{asked.what} (beyond {least.text})", beyond=least.text)


WHAT_IT_DRAWS = "what the house draws anyway"


def untold(power: Power, sources: Iterable[str]) -> Iterator[Asked]:
    """Where nobody knows the standing loads: there may be one of any size on everything."""
    if is_unknown(power.standing_loads):
        where = power.where("standing_loads")
        for name in sources:
            yield Asked(WHAT_IT_DRAWS, name, "not known", None, where=where)


def usual_power_factor(power: Power) -> float | None:
    """The house's power factor, where it says one."""
    return power.usual_power_factor if isinstance(power.usual_power_factor, float) else None


def asked_by(load: StandingLoad, power: Power) -> Asked:
    """A standing load in the terms of the tree."""
    own = load.power_factor if isinstance(load.power_factor, float) else None
    if own is None and not is_unknown(load.power_factor):
        own = usual_power_factor(power)
    draws = load.draws
    asked = Asked(
        load.what,
        load.on,
        "?",
        own,
        () if isinstance(load.phases, Absent) else load.phases.names,
        third_harmonic=(
            load.third_harmonic.share if isinstance(load.third_harmonic, Percent) else 0.0
        ),
        third_open=is_unknown(load.third_harmonic),
        where=load.where("draws"),
        check=check_of(load),
        in_part=draws if isinstance(draws, Between) else None,
    )
    if not isinstance(draws, Absent):
        asked = drawing(asked, draws)
    return replace(asked, at_most=at_most_of(asked, load, power))


def at_most_of(asked: Asked, load: StandingLoad, power: Power) -> Asked | None:
    """A load with what it draws and its power factor at their upper ends; None without these."""
    stated = load.power_factor
    if stated is Absent.NOT_STATED:
        stated = power.usual_power_factor
    most, (least_factor, factor) = ends_of(load.draws)[1], ends_of(stated)
    if not isinstance(most, Draw) or least_factor is None or factor is None:
        return None
    return drawing(replace(asked, power_factor=factor), most)


def drawing(asked: Asked, draws: Draw) -> Asked:
    """A load that draws so much."""
    return replace(
        asked,
        said=draws.text,
        kw=draws.kw if isinstance(draws, ActivePower) else None,
        kva=draws.kva if isinstance(draws, ApparentPower) else None,
        current_a=draws.a if isinstance(draws, Current) else None,
    )


def placed(asked: Asked, sources: dict[str, Source]) -> Carried | LeftOut:
    """A load on its node, or why it cannot be counted as it is, and whether at its ends."""
    found = counted(asked, sources)
    if isinstance(found, Carried) or asked.at_most is None:
        return found
    at_most = counted(asked.at_most, sources)
    if isinstance(at_most, LeftOut):
        return LeftOut(asked, at_most.why)
    return replace(found, has_ends=True)


def counted(asked: Asked, sources: dict[str, Source]) -> Carried | LeftOut:
    """A load of one size on its node, or why it cannot be counted."""
    source = sources.get(asked.on)
    if source is None:
        return LeftOut(asked, f"there is no power source named {asked.on}")
    if asked.kw is None and asked.kva is None and asked.current_a is None:
        return LeftOut(asked, size_open(asked))
    if asked.power_factor is None:
        return LeftOut(asked, "its power factor is not known: write one with the load")
    if lacking := [name for name in asked.phases if name not in source.phases]:
        return LeftOut(asked, f"{asked.on} has no {', '.join(lacking)}")
    return on_lines(asked, source, asked.power_factor)


def size_open(asked: Asked) -> str:
    """Why a load of no one size is left out."""
    if asked.in_part is None:
        return "nobody knows yet how much it draws"
    return f"what it draws is known in part alone ({as_written(asked.in_part)})"


def on_lines(asked: Asked, source: Source, power_factor: float) -> Carried | LeftOut:
    """
    A load as currents on its lines.

    Where the one phase of a service is not said, it is counted on each phase it may be on.
    """
    lines = asked.phases or source.phases
    counted = lines[:1] if source.system and source.system.lines == 1 else lines
    sized = size(asked, source, counted, power_factor)
    if sized is None:
        return LeftOut(asked, f"{asked.on} does not say its voltages")
    kw, kva, current_a, step, formulas = sized
    currents = phasors(lines, current_a, power_factor, source)
    names = " and ".join(lines) if source.phases_said else f"{' or '.join(lines)}, counted on each"
    third_a = [
        current_a * asked.third_harmonic if name in lines else 0.0 for name in ("L1", "L2", "L3")
    ]
    load = Load(
        asked.what,
        asked.on,
        currents,
        (third_a[0], third_a[1], third_a[2]),
        power_factor,
        returns_a=None if source.phases_said else returns_of(currents, lines, source),
    )
    return Carried(asked, load, kw, kva, f"{asked.what}: {step} on {names}", formulas)


def returns_of(currents: Phasors, lines: Sequence[str], source: Source) -> PhaseAmperes | None:
    """
    What a load may send back in the neutral, where it is counted on each phase that it may be on.
    """
    if source.system is None or source.system.lines > 1 or len(lines) < 2:
        return None
    first, second, third = (abs(current) for current in currents)
    return (first, second, third)


def size(
    asked: Asked, source: Source, lines: Sequence[str], power_factor: float
) -> tuple[float, float, float, str, tuple[Formula, ...]] | None:
    """
    Active and apparent power, current on each line, the working in words, and the formulas used;
    None where the voltage is open.
    """
    voltages = source.voltages
    if voltages is None:
        return None
    if asked.current_a is not None:
        kva = asked.current_a * kva_per_ampere(source, lines)
        return kva * power_factor, kva, asked.current_a, f"{asked.said} stated", ()
    kva = (
        asked.kva
        if asked.kva is not None
        else apparent_kva(active_kw=asked.kw or 0.0, power_factor=power_factor)
    )
    found = line_current_a(kva=kva, lines=lines, voltages=voltages)
    if found is None:
        return None
    current_a, formula, step = found
    if asked.kva is not None:
        return kva * power_factor, kva, current_a, step, (formula,)
    return (
        asked.kw or 0.0,
        kva,
        current_a,
        f"{asked.said} / {power_factor:g} = {kva:.4g} kVA; {step}",
        (apparent_kva, formula),
    )


def kva_per_ampere(source: Source, lines: Sequence[str]) -> float:
    """Apparent power of one ampere on each of so many lines. [kVA/A]"""
    found = (
        line_current_a(kva=1.0, lines=lines, voltages=source.voltages) if source.voltages else None
    )
    return 1 / found[0] if found else 0.0


def phasors(lines: Sequence[str], current_a: float, power_factor: float, source: Source) -> Phasors:
    """Line currents of a load at the angles of its system."""
    split = source.system is not None and source.system.lines == 2
    return line_currents(
        phases=lines,
        current_a=current_a,
        power_factor=power_factor,
        angles_deg=SPLIT_PHASE_ANGLES_DEG if split else THREE_PHASE_ANGLES_DEG,
    )
