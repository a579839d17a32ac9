"""What is free on each supply, service and board, with what binds it and the workings."""

from collections.abc import Iterator
from dataclasses import replace
from math import fsum

from builder.cautions import ELECTRICITY
from builder.departments.power.amounts import PER_PHASE_LEAVES_OUT, ampere, kilovolt_ampere
from builder.departments.power.circuits.open_limits import lacking_limits, open_limits
from builder.departments.power.circuits.sources import Source, capacity, limits_open
from builder.departments.power.circuits.tree import Network
from builder.formulas.circuits import Standing, booked_a, limit_a, standing
from builder.formulas.phasors import PHASES
from builder.pack import Figure, Input, Item, Value, Working, not_more
from builder.reading.absent import Absent
from builder.reading.measures import shown
from builder.reading.quantities import Current
from builder.working import figure, missing, worked


def free_figures(item: Item, source: Source, network: Network) -> Iterator[Figure]:
    """
    What is free on each phase, and which limit up the tree binds; nothing is said below a node of
    unknown rating.
    """
    lacking_above = network.lacking_above(source.name)
    stands = network.standing[source.name]
    for index, phase in enumerate(PHASES):
        if phase not in source.phases:
            continue
        key, label = f"{item.key}.free.{phase}", f"Free {phase}"
        working = free_working(source.name, index, network)
        if lacking_above:
            yield missing(key, label, working, lacking_above, caution=ELECTRICITY)
            continue
        binding = stands.binding[index]
        less = uncounted(source.name, binding, network)
        unsaid = open_words(source.name, network)
        what = bound_words(source.name, binding, stands.bound_by[index])
        note = f"bound by {what}{less}{unsaid}"
        free = ampere(stands.free_a[index])
        yield figure(
            key,
            label,
            at_most(free, source.name, index, network) if less or unsaid else free,
            working,
            caution=ELECTRICITY,
            note=note,
        )
        if less:
            yield least_figure(item, source.name, index, network)
    if not lacking_above:
        yield binding_figure(item, source, network)


def binding_figure(item: Item, source: Source, network: Network) -> Figure:
    """What binds a source on each of its phases; missing where a limit above may bind sooner."""
    stands = network.standing[source.name]
    least = min(
        (PHASES.index(phase) for phase in source.phases), key=lambda index: stands.free_a[index]
    )
    key, label = f"{item.key}.binding", "Bound by"
    working = free_working(source.name, least, network)
    if any(is_least_open(network.sources[up]) for up in network.tree.path[source.name]):
        unsaid_here = lacking_limits(source.name, network)
        return missing(key, label, working, unsaid_here, caution=ELECTRICITY)
    names = [bound_by_one(source.name, PHASES.index(phase), stands) for phase in source.phases]
    less = uncounted(source.name, stands.binding[least], network).removeprefix("; ")
    return figure(
        key,
        label,
        Value(" and ".join(dict.fromkeys(names))),
        working,
        caution=ELECTRICITY,
        note=least_words(less, source.name, least, network),
    )


def is_least_open(source: Source) -> bool:
    """Whether another limit than the least known one may bind: nobody says or knows it."""
    engine = getattr(source.record, "rated_power_factor", None)
    is_engine_open = isinstance(engine, Absent) and engine is not Absent.NONE
    return bool(limits_open(source)) or is_engine_open


def bound_by_one(name: str, index: int, stands: Standing) -> str:
    """What binds one phase of a node, as an answer of its own."""
    binding, what = stands.binding[index], stands.bound_by[index]
    return "itself" if binding == name and what == "" else bound_words(name, binding, what)


def least_figure(item: Item, name: str, index: int, network: Network) -> Figure:
    """
    What is free on one phase even with every load of unknown size at the limit of what feeds it.
    """
    key, label = f"{item.key}.free-least.{PHASES[index]}", f"Free {PHASES[index]} at least"
    working = free_working(name, index, network, at_most=True)
    if unsaid := lacking_limits(name, network):
        return missing(key, label, working, unsaid, caution=ELECTRICITY)
    least_a = least_free_a(name, index, network)
    note = "with what nobody has measured at the limit of what feeds it"
    return figure(
        key,
        label,
        replace(ampere(least_a), number=None, least=least_a),
        working,
        caution=ELECTRICITY,
        note=note,
    )


def bound_words(name: str, binding: str, what: str) -> str:
    """What binds a node, in words: its own limit, another node, a neutral or an engine."""
    if what == "":
        return "its own limit" if binding == name else binding
    return f"its {what}" if binding == name else f"the {what} of {binding}"


def open_words(name: str, network: Network) -> str:
    """Words for what may leave less than the figure says, and that nobody has stated."""
    return "".join(f"; less {words}" for words in open_limits(name, network))


def at_most(free: Value, name: str, index: int, network: Network) -> Value:
    """What is free as its ends: at least nobody knows how much where a continuous share is open."""
    least_a = None if open_limits(name, network) else least_free_a(name, index, network)
    return not_more(free, least_a)


def least_free_a(name: str, index: int, network: Network) -> float:
    """What is free with every load of unknown size at the limit of what feeds it. [A]"""
    return max(0.0, network.at_most[name].free_a[index])


def least_words(less: str, name: str, index: int, network: Network) -> str:
    """What is left out, with what is free all the same."""
    least_a = network.at_most[name].free_a[index]
    is_known = least_a > 0 and not open_limits(name, network)
    return f"{less}; at least {shown(Current, least_a)[0]} free" if less and is_known else less


def uncounted(name: str, binding: str, network: Network) -> str:
    """
    Words for loads under this node, or under the one that binds it, whose size nobody knows: what
    is free is less by what they draw.
    """
    ways = [
        (left.asked.what, network.tree.path.get(left.asked.on, ())) for left in network.left_out
    ]
    loads = dict.fromkeys(what for what, way in ways if name in way or binding in way)
    return f"; less what {', '.join(loads)} draws, which is not known" if loads else ""


def free_working(name: str, index: int, network: Network, *, at_most: bool = False) -> Working:
    """
    The working of what is free on one phase: every node up the tree with its limit, what is booked
    and what is left.
    """
    steps, inputs = [], []
    standing_on = network.at_most if at_most else network.standing
    for up in network.tree.path[name]:
        stands, source = standing_on[up], network.sources[up]
        if source.binding is None:
            steps.append(f"{up}: nobody has said what it may carry")
            continue
        here_a, line = network.left_at(name, up, index, stands.left_a)
        seen = (
            ""
            if network.is_same_frame(name, up)
            else f"; {PHASES[line]} leaves {here_a:.4g} A to each line of {name}"
        )
        left_a = stands.limit_a[line] - stands.booked_a[line]
        other = (
            f", and its {stands.left_by[line]} leaves {stands.left_a[line]:.4g} A"
            if stands.left_by[line]
            else ""
        )
        steps.append(
            f"{up}: {stands.limit_a[line]:.4g} A − {stands.booked_a[line]:.4g} A = {left_a:.4g}"
            f" A{other}{seen}".replace("= -", "= −").replace("leaves -", "leaves −")
        )
        inputs.append(Input(f"Limit of {up} on {PHASES[line]}", f"{stands.limit_a[line]:.4g} A"))
        inputs += other_limits(up, stands.left_by[line], network)
    last = standing_on[name]
    steps.append(f"the least: {bound_words('', last.binding[index], last.bound_by[index])}")
    return worked(
        limit_a,
        booked_a,
        standing,
        inputs=inputs,
        steps=steps,
        leaves_out=PER_PHASE_LEAVES_OUT,
        lines=network.lines_above(name),
    )


def other_limits(name: str, what: str, network: Network) -> list[Input]:
    """The limit of a neutral or an engine, where that is what leaves least."""
    node = network.tree.nodes[name]
    if what == "neutral" and node.neutral_a is not None:
        return [Input(f"Neutral of {name}", f"{node.neutral_a:.4g} A")]
    if what == "engine" and node.active_a is not None:
        return [Input(f"Engine of {name}, at power factor 1", f"{node.active_a:.4g} A a phase")]
    return []


def total_free_figure(item: Item, source: Source, network: Network) -> Figure:
    """Apparent power that is free at a supply, phase by phase."""
    key, label = f"{item.key}.free-kva", "Free in all"
    stands, voltages = network.standing[source.name], source.voltages
    base = free_working(source.name, 0, network)
    if (
        (lacking_above := network.lacking_above(source.name))
        or voltages is None
        or voltages.line_to_neutral_v is None
    ):
        return missing(key, label, base, lacking_above or lacking(source), caution=ELECTRICITY)
    free = [max(0.0, stands.free_a[PHASES.index(phase)]) for phase in source.phases]
    kva = fsum(free) * voltages.line_to_neutral_v / 1000
    steps = [
        f"({' + '.join(f'{current_a:.4g}' for current_a in free)}) A ×"
        f" {voltages.line_to_neutral_v:.4g} V / 1000 = {kva:.4g} kVA"
    ]
    inputs = [
        Input(f"Free {phase}", f"{current_a:.4g} A")
        for phase, current_a in zip(source.phases, free, strict=True)
    ]
    formula = capacity(1.0, voltages, 1)
    working = worked(
        *([formula[1]] if formula else []),
        inputs=[*inputs, Input("System", str(source.system))],
        steps=steps,
        lines=network.lines_above(source.name),
    )
    less = uncounted(source.name, source.name, network) + open_words(source.name, network)
    return figure(
        key,
        label,
        not_more(kilovolt_ampere(kva)) if less else kilovolt_ampere(kva),
        working,
        caution=ELECTRICITY,
        note=less.removeprefix("; "),
    )


def lacking(source: Source) -> list[str]:
    """What a node does not say that its own figures need."""
    missing_here = [] if source.binding else ["its rating"]
    if source.voltages is None:
        missing_here.append("its voltages, line to line and line to neutral")
    return missing_here
