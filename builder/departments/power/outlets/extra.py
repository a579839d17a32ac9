"""
Extra single-phase loads on a service or board: a phase for each, and what is left then.

For the crew's own question, on no page.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from builder.departments.power.circuits.altitude import at_altitude
from builder.departments.power.circuits.tree import network_of
from builder.departments.power.description import Power
from builder.exchange import Offers
from builder.formulas.circuits import Load, standing
from builder.formulas.phases import ExtraLoad, Placing, place_on_phases
from builder.formulas.phasors import PHASES, line_currents


@dataclass(frozen=True, slots=True)
class Extra:
    """
    The answer: the placing, what was free and is left by phase with what binds it, and loads of
    unknown size that still come off. [A]
    """

    placing: Placing
    phases: tuple[str, ...]
    free_a: tuple[float, ...]
    left_a: tuple[float, ...]
    bound_by: tuple[str, ...]
    unmeasured: tuple[str, ...]


def extra_loads(
    power: Power, offers: Offers, *, on: str, loads: Sequence[tuple[str, float]]
) -> Extra:
    """
    A phase for each extra load, so that every limit up the tree holds and the phases are even.

    Raises
    ------
    ValueError
        If nothing bears that name, or what may be drawn there is not known.
    """
    network = network_of(at_altitude(power, offers.altitude))
    if on not in network.sources:
        raise ValueError(f"on must be one of {', '.join(network.sources)}, got {on!r}")
    if lacking := network.lacking_above(on):
        raise ValueError(
            f"on must be where it is known what may be drawn; {on} needs {' and '.join(lacking)}"
        )
    phases = network.sources[on].phases
    placing = place_on_phases(
        network.nodes, network.loads, [ExtraLoad(name, on, current_a) for name, current_a in loads]
    )
    added = [
        load_on(phase, on, current_a)
        for (_, phase), (_, current_a) in zip(placing.phase_of, loads, strict=False)
    ]
    before, after = network.standing[on], standing(network.nodes, [*network.loads, *added])[on]
    index = [PHASES.index(phase) for phase in phases]
    way = network.tree.path[on]
    return Extra(
        placing,
        phases,
        tuple(before.free_a[k] for k in index),
        tuple(after.free_a[k] for k in index),
        tuple(after.binding[k] for k in index),
        tuple(
            dict.fromkeys(
                left.asked.what
                for left in network.left_out
                if set(way) & set(network.tree.path.get(left.asked.on, ()))
            )
        ),
    )


def load_on(phase: str, node: str, current_a: float) -> Load:
    """An extra load on its phase. Only its size counts in what is left."""
    return Load(
        "extra", node, line_currents(phases=(phase,), current_a=current_a, power_factor=1.0)
    )
