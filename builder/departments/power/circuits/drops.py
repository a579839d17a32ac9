"""
Voltage lost along each feeder at the full continuous load of what it feeds, and from the supply to
there.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import fsum

from builder.cautions import ELECTRICITY
from builder.departments.power.amounts import percent
from builder.departments.power.circuits.sources import Source, limits_open, said_of_neutral
from builder.departments.power.circuits.tree import Network, usual_power_factor
from builder.departments.power.circuits.turning import Along, DropTurning, LeftTurning
from builder.departments.power.description import DropLimits, Fed, Power
from builder.departments.power.description.nodes import Feeder
from builder.formulas.circuits import limit_a
from builder.formulas.conductors import (
    BS_7671_FLEXIBLE_MV_PER_A_M,
    Conductor,
    awg_aluminium,
    awg_conductor,
    flexible_conductor,
    metric_aluminium,
    metric_conductor,
)
from builder.formulas.voltage_drop import drop_percent, single_phase_drop_v, three_phase_drop_v
from builder.pack import (
    Figure,
    Input,
    Item,
    TurnedFigure,
    Value,
    not_less,
    not_more,
    one_or_both,
    turned_by,
)
from builder.reading.absent import Absent, is_unknown
from builder.reading.in_part import ends_of
from builder.reading.measures import shown
from builder.reading.quantities import Percent, Voltage
from builder.working import Formula as Cited
from builder.working import figure, missing, worked

LEAVES_OUT = (
    "Other loads on the same feeders, inrush, harmonics, joints and connectors, and the angle"
    " between both ends. The length is one way; the conductor is hot."
)


@dataclass(frozen=True, slots=True)
class Drop:
    """
    Voltage lost along one feeder: the loss, in percent of its base, with what it was computed from.
    """

    drop_v: float
    base_v: float
    base: str
    current_a: float
    step: str
    inputs: tuple[Input, ...]
    formulas: tuple[Cited, ...]
    along: Along

    @property
    def percent(self) -> float:
        """Loss in percent of the base."""
        return drop_percent(drop_v=self.drop_v, base_v=self.base_v)


def conductor_of(fed: Fed) -> tuple[Conductor, Cited] | str:
    """The conductor of a feeder by its table, or which input is missing."""
    feeder = fed.feeder
    if feeder is None or isinstance(feeder.conductor, Absent):
        return "the feeder's conductor"
    if lacks := lacks_of_cable(feeder):
        return lacks
    aluminium = feeder.metal == "aluminium"
    if aluminium and feeder.cable == "flexible":
        return "a table for flexible aluminium, which no code here has"
    if (size := american_size(feeder.conductor.text)) is not None:
        return american(size, awg_aluminium if aluminium else awg_conductor)
    area_mm2 = feeder.conductor.mm2
    if aluminium:
        return metric_aluminium_or_why(area_mm2)
    if feeder.cable == "flexible" and area_mm2 in BS_7671_FLEXIBLE_MV_PER_A_M:
        return flexible_conductor(int(area_mm2)), flexible_conductor
    return metric_conductor(area_mm2), metric_conductor


def lacks_of_cable(feeder: Feeder) -> str:
    """What must be known of a feeder's cable before a table tells of it; empty where it is."""
    told = (
        (feeder.metal, "whether the feeder is of copper or aluminium"),
        (feeder.cable, "whether the feeder is fixed or flexible"),
        (feeder.in_parallel, "how many conductors share a line of the feeder"),
    )
    return next((words for value, words in told if isinstance(value, Absent)), "")


def in_parallel(feeder: Feeder) -> int:
    """How many conductors share a line, for who has looked before that it is known."""
    if isinstance(feeder.in_parallel, Absent):
        raise ValueError("in_parallel of a feeder must be known, got none")
    return feeder.in_parallel


def metric_aluminium_or_why(area_mm2: float) -> tuple[Conductor, Cited] | str:
    """An aluminium conductor by its area, or that the table has no such size."""
    try:
        return metric_aluminium(area_mm2), metric_aluminium
    except ValueError:
        return f"a table for aluminium of {area_mm2:g} mm²"


def american_size(text: str) -> str | None:
    """An American size as the tables write it; None where it is written otherwise."""
    written = " ".join(text.split()).upper()
    if not ("AWG" in written or "KCMIL" in written or "MCM" in written):
        return None
    size = written.replace("MCM", "kcmil").replace("KCMIL", "kcmil").replace("#", "")
    return size.replace("AWG", "").strip() if "/0" in size else size


def american(size: str, table: Callable[[str], Conductor]) -> tuple[Conductor, Cited] | str:
    """A conductor by its American size in one table."""
    try:
        return table(size), table
    except ValueError:
        return f"a table for {size}{' in aluminium' if table is awg_aluminium else ''}"


def drop_at(
    name: str, current_a: float, network: Network, power: Power, *, alone: bool = False
) -> Drop | list[str]:
    """
    The loss along the feeder of one node at a current, on all its lines or on one alone, or what is
    missing for it.
    """
    source = network.sources[name]
    fed = source.record
    if not isinstance(fed, Fed):
        return ["a feeder"]
    conductor, feeder = conductor_of(fed), fed.feeder
    lacking = [conductor] if isinstance(conductor, str) else []
    lacking += (
        ["the feeder's length"] if feeder is None or isinstance(feeder.length, Absent) else []
    )
    lacking += [] if source.voltages else ["its voltages, line to line and line to neutral"]
    if isinstance(conductor, str) or feeder is None or isinstance(feeder.length, Absent) or lacking:
        return lacking
    found = computed(
        source,
        conductor,
        current_a / in_parallel(feeder),
        length_m=feeder.length.m,
        power=power,
        alone=alone,
    )
    return found if isinstance(found, list) else with_assumed(found, feeder)


def with_assumed(drop: Drop, feeder: Feeder) -> Drop:
    """A loss that tells beside its inputs what nobody wrote of the feeder and is assumed."""
    says = {
        "metal": str(feeder.metal),
        "cable": str(feeder.cable),
        "in_parallel": f"{in_parallel(feeder)} conductor a line",
    }
    unwritten = [words for key, words in says.items() if key not in feeder.model_fields_set]
    told = [Input("Assumed, for it is not written", ", ".join(unwritten))] if unwritten else []
    return replace(drop, inputs=(*drop.inputs, *told))


def computed(
    source: Source,
    found: tuple[Conductor, Cited],
    current_a: float,
    *,
    length_m: float,
    power: Power,
    alone: bool = False,
) -> Drop | list[str]:
    """The loss by the formula for the lines that the node has."""
    conductor, table = found
    voltages = source.voltages
    if voltages is None or voltages.line_to_line_v is None or voltages.line_to_neutral_v is None:
        return ["its voltages, line to line and line to neutral"]
    three = len(source.phases) == 3 and voltages.lines == 3 and not alone
    formula = three_phase_drop_v if three else single_phase_drop_v
    between = len(source.phases) > 1 and not alone
    base_v = voltages.line_to_line_v if between else voltages.line_to_neutral_v
    base = "line to line" if between else "line to neutral"
    power_factor, said = power_factor_for(conductor, power)
    r, x = conductor.r_ohm_per_km, conductor.x_ohm_per_km
    drop_v = formula(
        current_a=current_a,
        length_m=length_m,
        r_ohm_per_km=r,
        x_ohm_per_km=x,
        power_factor=power_factor,
    )
    sine = (1 - power_factor**2) ** 0.5
    step = (
        f"{'√3' if three else '2'} × {current_a:.4g} A × {length_m / 1000:.4g} km × ({r:.4g} ×"
        f" {power_factor:.3g} + {x:.3g} × {sine:.3g}) Ω/km = {drop_v:.3g} V {base}"
    )
    inputs = drop_inputs(conductor, current_a, length_m, said)
    by_r_v, by_x_v = (
        formula(
            current_a=current_a,
            length_m=length_m,
            r_ohm_per_km=one,
            x_ohm_per_km=other,
            power_factor=1.0,
        )
        for one, other in ((r, x), (x, r))
    )
    along = Along(by_r_v / base_v, by_x_v / base_v, power_factor)
    return Drop(drop_v, base_v, base, current_a, step, inputs, (formula, table), along)


def drop_inputs(
    conductor: Conductor, current_a: float, length_m: float, power_factor: str
) -> tuple[Input, ...]:
    """What a loss is worked out from; the power factor as it is said."""
    r, x = conductor.r_ohm_per_km, conductor.x_ohm_per_km
    size = f"{conductor.size}: {r:.4g} Ω/km, {x:.3g} Ω/km reactance; {conductor.condition}"
    return (
        Input("Current in one conductor", f"{current_a:.4g} A"),
        Input("Length one way", f"{length_m:.4g} m"),
        Input("Conductor", size),
        Input("Power factor", power_factor),
    )


def power_factor_for(conductor: Conductor, power: Power) -> tuple[float, str]:
    """The house's power factor, or the one that loses most along this conductor."""
    stated = usual_power_factor(power)
    if stated is not None:
        return stated, f"{stated:g}, the house's"
    worst = conductor.r_ohm_per_km / (conductor.r_ohm_per_km**2 + conductor.x_ohm_per_km**2) ** 0.5
    return (
        worst,
        f"{worst:.3g}, the one that loses most along this conductor, since the house says none",
    )


def drop_figures(item: Item, name: str, network: Network, power: Power) -> tuple[Figure, ...]:
    """Loss along its own feeder and from the supply to here, where it has a feeder at all."""
    source = network.sources[name]
    if not isinstance(source.record, Fed) or source.record.feeder is None:
        return ()
    key, label = f"{item.key}.drop", "Voltage drop of its feeder"
    if source.binding is None:
        return (
            missing(
                key,
                label,
                worked(three_phase_drop_v, inputs=()),
                ["its rating"],
                caution=ELECTRICITY,
            ),
        )
    current_a = max(limit_a(source.node))
    found = drop_at(name, current_a, network, power)
    if isinstance(found, list):
        return (
            missing(key, label, worked(three_phase_drop_v, inputs=()), found, caution=ELECTRICITY),
        )
    share = f"100 × {found.drop_v:.3g} V / {found.base_v:.4g} V = {found.percent:.3g} %"
    working = worked(
        *found.formulas,
        drop_percent,
        inputs=found.inputs,
        steps=[found.step, share],
        leaves_out=LEAVES_OUT,
    )
    value = share_and_volts(found.percent / 100, found.base_v)
    own = figure(
        key,
        label,
        held(value, source, power),
        working,
        caution=ELECTRICITY,
        note=f"{found.base}, at {current_a:.4g} A",
    )
    own = turned(own, [found], lambda share: share_and_volts(share, found.base_v))
    total = total_figure(item, name, network, power)
    alone = alone_figure(item, name, network, power)
    return (own, total, *left_figure(item, total, power), *alone)


def share_and_volts(share: float, base_v: float) -> Value:
    """A loss as a value, in percent and in volts."""
    volts = shown(Voltage, share * base_v)[0]
    return Value(f"{shown(Percent, share, 1)[0]}, {volts}", "", share, "1")


def turned(found: Figure, drops: Sequence[Drop], told: Callable[[float], Value]) -> Figure:
    """A loss along some feeders with what it is made of, where it is exact."""
    if found.value is None or found.value.number is None or not drops:
        return found
    along = Along(
        fsum(drop.along.resistive for drop in drops),
        fsum(drop.along.reactive for drop in drops),
        drops[0].along.power_factor,
    )
    return turned_by(found, DropTurning(along, told))


def told_share(share: float) -> Value:
    """A loss as a value, in percent."""
    return percent(share * 100)


def held(value: Value, source: Source, power: Power) -> Value:
    """
    A loss as a value: at most so much where the current it is counted at, or the power factor, is
    the upper end of what nobody knows better.
    """
    factor_open = usual_power_factor(power) is None
    is_open = not source.share_said or limits_open(source) or factor_open
    return not_more(value) if is_open else value


def total_figure(item: Item, name: str, network: Network, power: Power) -> Figure:
    """
    Loss from the supply to here with this node alone fully loaded: the same current through every
    feeder above it.
    """
    key, label = f"{item.key}.drop-total", "Voltage drop from the supply"
    current_a = max(limit_a(network.sources[name].node))
    steps, total = [], 0.0
    formulas: list[Cited] = []
    without = []
    drops = []
    for up in network.tree.path[name]:
        if network.sources[up].fed_from is None:
            continue
        found = drop_at(up, current_a * network.ratio(name, up), network, power)
        if isinstance(found, list):
            without.append(up)
            continue
        total += found.percent
        drops.append(found)
        formulas += found.formulas
        steps.append(f"{up}: {found.step}, {found.percent:.3g} %")
    steps.append(f"together {total:.3g} %")
    working = worked(
        *dict.fromkeys(formulas),
        drop_percent,
        inputs=[Input("Current", f"{current_a:.4g} A")],
        steps=steps,
        leaves_out=LEAVES_OUT,
    )
    if without:
        return missing(
            key, label, working, [f"the feeder of {up}" for up in without], caution=ELECTRICITY
        )
    lost = figure(
        key,
        label,
        held(percent(total), network.sources[name], power),
        working,
        caution=ELECTRICITY,
        note="with nothing else on the feeders above it",
    )
    return turned(lost, drops, told_share)


def alone_figure(item: Item, name: str, network: Network, power: Power) -> Iterator[Figure]:
    """
    Loss from the supply to here with one line loaded fully and nothing on the others: out and back
    through the neutral, which is taken to be like a line.
    """
    found = alone_drops(name, network, power)
    if found is None:
        return
    total = fsum(drop.percent for _, drop in found)
    steps = [f"{up}: {drop.step}, {drop.percent:.3g} %" for up, drop in found]
    working = worked(
        *dict.fromkeys(formula for _, drop in found for formula in drop.formulas),
        drop_percent,
        inputs=found[0][1].inputs,
        steps=[*steps, f"together {total:.3g} %"],
        leaves_out=f"{LEAVES_OUT} A neutral smaller than the lines.",
    )
    alone = figure(
        f"{item.key}.drop-alone",
        "Voltage drop with one line loaded alone",
        held(percent(total), network.sources[name], power),
        working,
        caution=ELECTRICITY,
        note="line to neutral, from the supply",
    )
    yield turned(alone, [drop for _, drop in found], told_share)


def alone_drops(name: str, network: Network, power: Power) -> list[tuple[str, Drop]] | None:
    """
    The loss along each feeder from the supply to a node with one line loaded; None where the node
    has but one line or no neutral, or something is missing or a transformer stands between.
    """
    source = network.sources[name]
    if len(source.phases) < 2 or said_of_neutral(source) is Absent.NONE:
        return None
    current_a = max(limit_a(source.node))
    found: list[tuple[str, Drop]] = []
    for up in network.tree.path[name]:
        if network.sources[up].fed_from is None:
            continue
        drop = drop_at(up, current_a, network, power, alone=True)
        if isinstance(drop, list) or not network.is_same_frame(name, up):
            return None
        found.append((up, drop))
    return found


def left_figure(item: Item, total: Figure, power: Power) -> Iterator[Figure]:
    """
    What the house's limit to the load leaves for a visitor's tails, where the house states one. A
    limit that is known in part leaves from its lower end to its upper; a loss that is at most so
    much leaves at least that.
    """
    limits = limit_ends_percent(power, "to_the_load")
    if limits is None or total.value is None or total.value.far_end is None:
        return
    key, label = f"{item.key}.drop-left", "Voltage drop left for tails"
    lost = total.value.far_end * 100
    told = [limit for limit in dict.fromkeys(limits) if limit is not None]
    steps = [f"{limit:.3g} % − {lost:.3g} % = {limit - lost:.3g} %" for limit in told]
    inputs = [
        *(Input("House's limit to the load", f"{limit:.3g} %") for limit in told),
        Input("Lost from the supply", f"{lost:.3g} %"),
    ]
    working = worked(drop_percent, inputs=inputs, steps=steps, leaves_out=LEAVES_OUT)
    value = left_value(limits, lost, is_most=total.value.number is None)
    if value is None:
        yield missing(key, label, working, ["the house's limit to the load"], caution=ELECTRICITY)
        return
    note = "of the limit to the load"
    left = figure(key, label, value, working, caution=ELECTRICITY, note=note)
    yield left_turning(left, total, limits)


def left_turning(left: Figure, total: Figure, limits: tuple[float | None, float | None]) -> Figure:
    """What is left for tails with what it is made of, where the loss is exact and the limit too."""
    lost = total.turning if isinstance(total, TurnedFigure) else None
    limit = limits[0]
    if not isinstance(lost, DropTurning) or limit is None or limits[1] != limit:
        return left
    return turned_by(left, LeftTurning(lost.along, limit))


def left_value(
    limits: tuple[float | None, float | None], lost: float, *, is_most: bool
) -> Value | None:
    """What both ends of a limit leave of a loss, the loss at most so much or exact. [%]"""
    least, most = (None if limit is None else percent(max(0.0, limit - lost)) for limit in limits)
    if not is_most:
        return one_or_both(least, most)
    return not_less(least) if least else None


def limit_ends_percent(power: Power, which: str) -> tuple[float | None, float | None] | None:
    """
    The ends of one of the house's limits on voltage drop, in percent; None where it states none.
    """
    limits = power.voltage_drop_limits
    stated = getattr(limits, which) if isinstance(limits, DropLimits) else limits
    if isinstance(stated, Absent) and not is_unknown(stated):
        return None
    least, most = ends_of(stated)
    return (
        None if least is None else least.share * 100,
        None if most is None else most.share * 100,
    )


def limit_percent(power: Power, which: str) -> float | None:
    """One of the house's limits on voltage drop, in percent; None where it states none."""
    limits = power.voltage_drop_limits
    stated = getattr(limits, which) if isinstance(limits, DropLimits) else Absent.NOT_STATED
    return stated.share * 100 if isinstance(stated, Percent) else None
