"""
What each supply, service and board can carry, what stands on it, and what is free, with the
workings.
"""

from collections.abc import Iterator, Sequence
from math import fsum

from builder.cautions import ELECTRICITY
from builder.departments.power.circuits.open_limits import open_limits
from builder.departments.power.circuits.sources import Source, capacity
from builder.departments.power.circuits.tree import Carried, Network
from builder.formulas.circuits import Load, Standing, booked_a, limit_a, standing
from builder.formulas.phasors import PHASES, imbalance_percent, line_currents, summed_currents
from builder.formulas.windings import seen_before
from builder.pack import Figure, Input, Item, Value, Working, not_more
from builder.reading.measures import shown
from builder.reading.quantities import ApparentPower, Current, Percent
from builder.working import figure, missing, worked

PER_PHASE_LEAVES_OUT = (
    "Other shows' loads, inrush, the shift of the neutral under uneven load, and phase shifts"
    " inside transformers. Angles count in the phasor sum only; what is free counts sizes, which"
    " errs to the low side."
)


UNSURE_LINES = "which lines a transformer below puts its uneven load on is not stated"


def ampere(current_a: float) -> Value:
    """A current as a value."""
    return Value(shown(Current, current_a)[0], "", current_a, "A")


def kilovolt_ampere(kva: float) -> Value:
    """An apparent power as a value; its number is in VA, as facts have it."""
    return Value(shown(ApparentPower, kva * 1000)[0], "", kva * 1000, "VA")


def rounded(current_a: float) -> float:
    """A current without the last digits that adding phasors leaves where they cancel."""
    return round(current_a, 9)


def percent(value_percent: float) -> Value:
    """A percentage as a value; its number is a share."""
    return Value(shown(Percent, value_percent / 100, 1)[0], "", value_percent / 100, "1")


def node_figures(item: Item, name: str, network: Network) -> tuple[Figure, ...]:
    """All figures of a supply, generator, service or board."""
    source, stands = network.sources[name], network.standing[name]
    found = [
        capacity_figure(item, source),
        continuous_figure(item, source),
        *free_figures(item, source, network),
    ]
    if network.below(name):
        found += [*current_figures(item, source, network), *imbalance_figure(item, source, stands)]
    if source.fed_from is None:
        found.append(total_free_figure(item, source, network))
    return tuple(found)


def limit_inputs(source: Source) -> list[Input]:
    """What limits a node, as inputs."""
    return [Input(limit.what, shown(Current, limit.current_a)[0]) for limit in source.limits]


def lacking(source: Source) -> list[str]:
    """What a node does not say that its own figures need."""
    missing_here = [] if source.binding else ["its rating"]
    if source.voltages is None:
        missing_here.append("its voltages, line to line and line to neutral")
    return missing_here


def capacity_figure(item: Item, source: Source) -> Figure:
    """Apparent power at the least of rating, breaker and transformer."""
    key, label = f"{item.key}.capacity", "Capacity"
    limit = source.binding
    found = (
        capacity(limit.current_a, source.voltages, len(source.phases))
        if limit and source.voltages
        else None
    )
    if limit is None or found is None:
        return missing(
            key,
            label,
            worked(limit_a, inputs=limit_inputs(source)),
            lacking(source),
            caution=ELECTRICITY,
        )
    kva, formula, step = found
    inputs = [*limit_inputs(source), Input("System", str(source.system))]
    return figure(
        key,
        label,
        kilovolt_ampere(kva),
        worked(formula, inputs=inputs, steps=[step]),
        caution=ELECTRICITY,
        note=f"by its {limit.what}",
    )


def continuous_figure(item: Item, source: Source) -> Figure:
    """What it may carry on each phase for hours."""
    key, label = f"{item.key}.continuous", "Continuous limit"
    if source.binding is None:
        return missing(key, label, worked(limit_a, inputs=()), ["its rating"], caution=ELECTRICITY)
    limit = max(limit_a(source.node))
    step = (
        f"{source.binding.current_a:.4g} A × {source.share * 100:.4g} % = {limit:.4g} A on each"
        " phase"
    )
    inputs = [*limit_inputs(source), Input("Continuous share", f"{source.share * 100:.4g} %")]
    note = "" if source.share_said else "no continuous share is stated for it"
    return figure(
        key,
        label,
        ampere(limit) if source.share_said else not_more(ampere(limit)),
        worked(limit_a, inputs=inputs, steps=[step]),
        caution=ELECTRICITY,
        note=note,
    )


def current_figures(item: Item, source: Source, network: Network) -> Iterator[Figure]:
    """What the house's standing loads draw on each phase."""
    for phase in source.phases:
        yield current_figure(item, source, network, phase)


def current_figure(item: Item, source: Source, network: Network, phase: str) -> Figure:
    """
    What the house's standing loads draw on one phase; at most so much where a transformer below may
    put it on another.
    """
    stands, index = network.standing[source.name], PHASES.index(phase)
    seen = [
        (each, load)
        for each, load in network.seen_at(source.name)
        if load.currents[index] != 0 or load.sizes[index] > 0
    ]
    steps = [load_step(each, load, index) for each, load in seen]
    steps.append(
        f"together on {phase}, by their angles: {abs(stands.carried[index]):.4g} A; sum of sizes"
        f" {stands.booked_a[index]:.4g} A"
    )
    crossed = any(load is not each.load for each, load in seen)
    working = worked(
        *dict.fromkeys(formula for each, _ in seen for formula in each.formulas),
        line_currents,
        *([seen_before] if crossed else []),
        summed_currents,
        inputs=[
            load_input(each.asked.what, each.asked.said, each.asked.power_factor)
            for each, _ in seen
        ],
        steps=steps,
        leaves_out=PER_PHASE_LEAVES_OUT,
        lines=[each.asked.check for each, _ in seen if each.asked.check],
    )
    carried = ampere(abs(stands.carried[index]))
    return figure(
        f"{item.key}.current.{phase}",
        f"Standing current {phase}",
        carried if stands.sure else not_more(ampere(stands.booked_a[index])),
        working,
        caution=ELECTRICITY,
        note="" if stands.sure else UNSURE_LINES,
    )


def load_input(what: str, said: str, power_factor: float | None) -> Input:
    """A load as an input."""
    return Input(
        what, f"{said}, power factor {power_factor:g}" if power_factor is not None else said
    )


def load_step(each: Carried, load: Load, index: int) -> str:
    """The step of a load, with what is seen of it here where a transformer lies between."""
    return each.step if load is each.load else f"{each.step}; seen here {load.sizes[index]:.4g} A"


def imbalance_figure(item: Item, source: Source, stands: Standing) -> Iterator[Figure]:
    """How uneven the phases are, where it is known what each carries."""
    if len(source.phases) < 2 or not stands.sure:
        return
    sizes = [abs(stands.carried[PHASES.index(phase)]) for phase in source.phases]
    names = [
        Input(phase, f"{size_a:.4g} A") for phase, size_a in zip(source.phases, sizes, strict=True)
    ]
    mean_a = fsum(sizes) / len(sizes)
    uneven = imbalance_percent(sizes)
    far_a = max(sizes, key=lambda size_a: abs(size_a - mean_a))
    steps = [
        f"mean {mean_a:.4g} A; 100 × |{far_a:.4g} − {mean_a:.4g}| / {mean_a:.4g} = {uneven:.3g} %"
    ]
    yield figure(
        f"{item.key}.imbalance",
        "Imbalance",
        percent(uneven),
        worked(imbalance_percent, inputs=names, steps=steps),
        caution=ELECTRICITY,
    )


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
        if less and not unsaid:
            yield least_figure(item, source.name, index, network)
    if not lacking_above:
        least = min(
            (PHASES.index(phase) for phase in source.phases), key=lambda index: stands.free_a[index]
        )
        names = [bound_by_one(source.name, PHASES.index(phase), stands) for phase in source.phases]
        value = Value(" and ".join(dict.fromkeys(names)))
        note = least_words(
            uncounted(source.name, stands.binding[least], network).removeprefix("; "),
            source.name,
            least,
            network,
        )
        yield figure(
            f"{item.key}.binding",
            "Bound by",
            value,
            free_working(source.name, least, network),
            caution=ELECTRICITY,
            note=note,
        )


def bound_by_one(name: str, index: int, stands: Standing) -> str:
    """What binds one phase of a node, as an answer of its own."""
    binding, what = stands.binding[index], stands.bound_by[index]
    return "itself" if binding == name and what == "" else bound_words(name, binding, what)


def least_figure(item: Item, name: str, index: int, network: Network) -> Figure:
    """
    What is free on one phase even with every load of unknown size at the limit of what feeds it.
    """
    phase = PHASES[index]
    working = free_working(name, index, network, at_most=True)
    least_a = least_free_a(name, index, network)
    note = "with what nobody has measured at the limit of what feeds it"
    return figure(
        f"{item.key}.free-least.{phase}",
        f"Free {phase} at least",
        ampere(least_a),
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


def phase_sizes(stands: Standing, phases: Sequence[str]) -> list[float]:
    """Sizes of the standing currents on the phases that are there. [A]"""
    return [abs(stands.carried[PHASES.index(phase)]) for phase in phases]
