"""
What each supply, service and board can carry, what stands on it, and what is free, with the
workings.
"""

from collections.abc import Iterator, Sequence
from math import fsum

from builder.cautions import ELECTRICITY
from builder.departments.power.amounts import (
    PER_PHASE_LEAVES_OUT,
    UNSURE_LINES,
    ampere,
    kilovolt_ampere,
    percent,
)
from builder.departments.power.circuits.open_limits import not_taken_off
from builder.departments.power.circuits.sources import Source, capacity, limits_open
from builder.departments.power.circuits.tree import Carried, Network
from builder.departments.power.circuits.turning import UnevenTurning, parts_on
from builder.departments.power.description import Generator
from builder.departments.power.free import free_figures, lacking, total_free_figure
from builder.formulas.circuits import Load, Standing, limit_a
from builder.formulas.phasors import PHASES, imbalance_percent, line_currents, summed_currents
from builder.formulas.windings import seen_before
from builder.pack import Figure, Input, Item, Working, not_less, not_more, turned_by
from builder.reading.measures import shown
from builder.reading.quantities import Current
from builder.working import figure, missing, worked


def node_figures(item: Item, name: str, network: Network) -> tuple[Figure, ...]:
    """All figures of a supply, generator, service or board."""
    source, stands = network.sources[name], network.standing[name]
    found = [
        capacity_figure(item, source),
        continuous_figure(item, source),
        *free_figures(item, source, network),
    ]
    if network.below(name) or network.unmeasured_below(name):
        found += [
            *current_figures(item, source, network),
            *imbalance_figure(item, source, stands, network),
        ]
    if source.fed_from is None:
        found.append(total_free_figure(item, source, network))
    return tuple(found)


def limit_inputs(source: Source) -> list[Input]:
    """What limits a node, as inputs."""
    return [Input(limit.what, shown(Current, limit.current_a)[0]) for limit in source.limits]


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
        not_more(kilovolt_ampere(kva)) if open_note(source) else kilovolt_ampere(kva),
        worked(formula, inputs=inputs, steps=[step]),
        caution=ELECTRICITY,
        note="; ".join([f"by its {limit.what}", *open_note(source)]),
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
    notes = [] if source.share_said else ["no continuous share is stated for it"]
    notes += open_note(source)
    return figure(
        key,
        label,
        not_more(ampere(limit)) if notes else ampere(limit),
        worked(limit_a, inputs=inputs, steps=[step]),
        caution=ELECTRICITY,
        note="; ".join(notes),
    )


def open_note(source: Source) -> list[str]:
    """
    That something which limits a node is not known, or may take off a generator's rating and is not
    stated, as notes; empty where all is.
    """
    lacking = limits_open(source)
    notes = [f"its {' and '.join(lacking)} is not known"] if lacking else []
    taken_off = (
        " or ".join(not_taken_off(source.record)) if isinstance(source.record, Generator) else ""
    )
    return [*notes, f"no derating by {taken_off} is stated"] if taken_off else notes


def unmeasured_words(name: str, network: Network) -> list[str]:
    """What is missing where loads of unknown size hang below a node."""
    return [f"what {what} draws" for what in network.unmeasured_below(name)]


def unmeasured_inputs(name: str, network: Network) -> list[Input]:
    """The loads of unknown size below a node, as inputs."""
    return [Input(what, "not known") for what in network.unmeasured_below(name)]


def current_figures(item: Item, source: Source, network: Network) -> Iterator[Figure]:
    """What the house's standing loads draw on each phase."""
    for phase in source.phases:
        yield current_figure(item, source, network, phase)


def current_figure(item: Item, source: Source, network: Network, phase: str) -> Figure:
    """
    What the house's standing loads draw on one phase; at most so much where a transformer below may
    put it on another, and at least so much where nobody has measured one of them.
    """
    key, label = f"{item.key}.current.{phase}", f"Standing current {phase}"
    unmeasured = unmeasured_words(source.name, network)
    stands, index = network.standing[source.name], PHASES.index(phase)
    seen = [
        (each, load)
        for each, load in network.seen_at(source.name)
        if load.currents[index] != 0 or load.sizes[index] > 0
    ]
    working = current_working(seen, stands, phase)
    if unmeasured and not (stands.sure and seen):
        nothing = worked(line_currents, inputs=unmeasured_inputs(source.name, network))
        return missing(key, label, nothing, unmeasured, caution=ELECTRICITY)
    carried = ampere(abs(stands.carried[index]))
    if unmeasured:
        note = f"and {', '.join(unmeasured)}, which is not known"
        return figure(key, label, not_less(carried), working, caution=ELECTRICITY, note=note)
    return figure(
        key,
        label,
        carried if stands.sure else not_more(ampere(stands.booked_a[index])),
        working,
        caution=ELECTRICITY,
        note="" if stands.sure else UNSURE_LINES,
    )


def current_working(seen: Sequence[tuple[Carried, Load]], stands: Standing, phase: str) -> Working:
    """How the current on a phase is added up from what a node sees of each load."""
    index = PHASES.index(phase)
    together = (
        f"together on {phase}, by their angles: {abs(stands.carried[index]):.4g} A; sum of sizes"
        f" {stands.booked_a[index]:.4g} A"
    )
    crossed = any(load is not each.load for each, load in seen)
    return worked(
        *dict.fromkeys(formula for each, _ in seen for formula in each.formulas),
        line_currents,
        *([seen_before] if crossed else []),
        summed_currents,
        inputs=[
            load_input(each.asked.what, each.asked.said, each.asked.power_factor)
            for each, _ in seen
        ],
        steps=[*(load_step(each, load, index) for each, load in seen), together],
        leaves_out=PER_PHASE_LEAVES_OUT,
        lines=[each.asked.check for each, _ in seen if each.asked.check],
    )


def load_input(what: str, said: str, power_factor: float | None) -> Input:
    """A load as an input."""
    return Input(
        what, f"{said}, power factor {power_factor:g}" if power_factor is not None else said
    )


def load_step(each: Carried, load: Load, index: int) -> str:
    """The step of a load, with what is seen of it here where a transformer lies between."""
    return each.step if load is each.load else f"{each.step}; seen here {load.sizes[index]:.4g} A"


def imbalance_figure(
    item: Item, source: Source, stands: Standing, network: Network
) -> Iterator[Figure]:
    """How uneven the phases are, where it is known what each carries."""
    if len(source.phases) < 2 or not stands.sure:
        return
    key, label = f"{item.key}.imbalance", "Imbalance"
    if unmeasured := unmeasured_words(source.name, network):
        working = worked(imbalance_percent, inputs=unmeasured_inputs(source.name, network))
        yield missing(key, label, working, unmeasured, caution=ELECTRICITY)
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
    working = worked(imbalance_percent, inputs=names, steps=steps)
    turning = UnevenTurning(parts_on(source.name, network), source.phases)
    found = figure(key, label, percent(uneven), working, caution=ELECTRICITY)
    yield turned_by(found, turning)
