"""
Supplies, generators, services and boards with what each leaves to its source filled in, ready for
the tree.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from builder.departments.power.circuits.derating import site_kva
from builder.departments.power.circuits.steps import step_between
from builder.departments.power.description import Fed, Generator, Power, Service, Supply
from builder.departments.power.description.systems import System, Voltages
from builder.formulas.circuits import Node
from builder.formulas.electricity import (
    current_between_two_phases_a,
    current_on_one_phase_a,
    current_on_three_phases_a,
    single_phase_kva,
    split_phase_kva,
    three_phase_kva,
)
from builder.formulas.phasors import PHASES
from builder.formulas.windings import Winding
from builder.reading.absent import Absent, is_unknown
from builder.reading.quantities import ApparentPower, Current, Percent

UNBOUNDED_A = 1.0e9
"""
Stands for a rating that nobody has said. What lies below such a node is never published as free.
"""


ON_SITE = "rating on site"
"""What limits a generator: its rating less what height and heat take off."""


@dataclass(frozen=True, slots=True)
class Limit:
    """One thing that limits a node: what it is, and how much it lets through on each phase. [A]"""

    what: str
    current_a: float


@dataclass(frozen=True, slots=True)
class Source:
    """
    A node of the tree. ``system`` and ``phases`` are its own or its source's; ``limits`` may be
    empty. Where nobody says the continuous share, ``share`` is all of it and ``share_said`` false:
    what is free is then no more than that.
    """

    name: str
    record: Supply | Generator | Fed
    fed_from: str | None
    system: System | None
    phases: tuple[str, ...]
    phases_said: bool
    limits: tuple[Limit, ...]
    share: float
    share_said: bool = True
    parent_a_per_a: float = 1.0
    winding: Winding = "line"

    @property
    def binding(self) -> Limit | None:
        """The least of its limits."""
        return min(self.limits, key=lambda limit: limit.current_a, default=None)

    @property
    def voltages(self) -> Voltages | None:
        """Its voltages, where both are known."""
        found = self.system.voltages if self.system else None
        return found if found and found.line_to_neutral_v is not None else None

    @property
    def node(self) -> Node:
        """It as the formulas take it."""
        rating_a = self.binding.current_a if self.binding else UNBOUNDED_A
        neutral = neutral_of(self)
        return Node(
            self.name,
            self.fed_from,
            rating_a,
            None,
            self.phases,
            self.share,
            self.parent_a_per_a,
            self.winding,
            neutral.current_a if neutral else None,
            active_a(self),
        )


def neutral_of(source: Source) -> Limit | None:
    """
    What the neutral may carry at all, and whose figure that is; like one of the lines where nobody
    says.

    None where no rating is known.
    """
    stated = said_of_neutral(source)
    if isinstance(stated, Current):
        return Limit("neutral rating", stated.a)
    if stated is not Absent.NOT_STATED:
        return None
    return (
        Limit(f"{source.binding.what}, as for its lines", source.binding.current_a)
        if source.binding
        else None
    )


def said_of_neutral(source: Source) -> Current | Absent:
    """What is written of the neutral's rating; a generator says nothing of its own."""
    stated = getattr(source.record, "neutral_rating", Absent.NOT_STATED)
    return stated if isinstance(stated, Current | Absent) else Absent.NOT_STATED


def active_a(source: Source) -> float | None:
    """
    What a generator's engine turns on its site, as current on each phase at power factor 1; None
    where it is not known, or there is no engine. [A]
    """
    record = source.record
    if not isinstance(record, Generator) or not isinstance(record.rated_power_factor, float):
        return None
    kva = site_kva(record)
    return None if kva is None else amperes(kva * record.rated_power_factor, source.system)


def sources_of(power: Power) -> dict[str, Source]:
    """Every node by name, each after its source."""
    found: dict[str, Source] = {root.name: root_source(root, power) for root in power.roots}
    waiting = list(power.fed)
    while ready := [fed for fed in waiting if fed.fed_from in found]:
        for fed in ready:
            found[fed.name] = fed_source(fed, found[fed.fed_from], power)
            waiting.remove(fed)
    return found


def root_source(root: Supply | Generator, power: Power) -> Source:
    """A supply or a generator as a node."""
    system = None if isinstance(root.system, Absent) else root.system
    phases = PHASES[: system.lines] if system else PHASES
    return Source(
        root.name,
        root,
        None,
        system,
        phases,
        True,
        limits_of(root, system),
        share_of(root, power),
        is_share_said(root, power),
    )


def fed_source(fed: Fed, above: Source, power: Power) -> Source:
    """
    A service or board as a node, with its source's system and phases where it does not say its own.
    """
    own: Absent | System = (
        fed.system if isinstance(fed, Service) else getattr(fed, "system", Absent.NOT_STATED)
    )
    system = above.system if isinstance(own, Absent) else own
    named = () if isinstance(fed.phases, Absent) else fed.phases.names
    said = bool(named) or system is None or system.lines >= len(above.phases)
    ratio, winding = step_between(
        fed, system, above.system, named or above.phases, three_above=len(above.phases) == 3
    )
    return Source(
        fed.name,
        fed,
        above.name,
        system,
        named or above.phases,
        said,
        limits_of(fed, system),
        share_of(fed, power),
        is_share_said(fed, power),
        ratio,
        winding,
    )


def share_of(record: Supply | Generator | Fed, power: Power) -> float:
    """The share of its rating that a node may use for hours; all of it where nobody says less."""
    stated = stated_share(record, power)
    return stated.share if isinstance(stated, Percent) else 1.0


def is_share_said(record: Supply | Generator | Fed, power: Power) -> bool:
    """
    Whether the house says which share of a node's rating may be used for hours. None is an answer:
    all of it may.
    """
    stated = stated_share(record, power)
    return isinstance(stated, Percent) or stated is Absent.NONE


def stated_share(record: Supply | Generator | Fed, power: Power) -> Percent | Absent:
    """What is written of a node's continuous share: its own where it says any, else the house's."""
    own = record.continuous_share
    return power.continuous_share if own is Absent.NOT_STATED else own


def limits_of(record: Supply | Generator | Fed, system: System | None) -> tuple[Limit, ...]:
    """Rating, breaker and transformer of a node, as far as they are said."""
    found = []
    if isinstance(record, Generator):
        if (kva := site_kva(record)) is not None and (
            current_a := amperes(kva, system)
        ) is not None:
            found.append(Limit(ON_SITE, current_a))
    elif isinstance(record.rating, Current):
        found.append(Limit("rating", record.rating.a))
    if isinstance(record.breaker, Current):
        found.append(Limit("breaker", record.breaker.a))
    if not isinstance(record, Generator) and isinstance(record.transformer, ApparentPower):
        current_a = amperes(record.transformer.kva, system)
        found += [] if current_a is None else [Limit("transformer", current_a)]
    return tuple(found)


def limits_open(source: Source) -> tuple[str, ...]:
    """
    What limits a node and nobody knows, or knows in part only: the least of the others is then no
    more than an upper end.
    """
    record = source.record
    keys = ("breaker",) if isinstance(record, Generator) else ("rating", "breaker", "transformer")
    found = [key for key in keys if is_unknown(getattr(record, key))]
    if isinstance(record, Generator) and all(limit.what != ON_SITE for limit in source.limits):
        found.insert(0, ON_SITE)
    return tuple(found)


def amperes(kva: float, system: System | None) -> float | None:
    """Line current of an even load on all lines of a system; None where its voltage is open."""
    voltages = system.voltages if system else None
    if voltages is None or voltages.line_to_neutral_v is None or voltages.line_to_line_v is None:
        return None
    if voltages.lines == 3:
        return current_on_three_phases_a(apparent_kva=kva, line_to_line_v=voltages.line_to_line_v)
    if voltages.lines == 2:
        return current_between_two_phases_a(
            apparent_kva=kva, line_to_line_v=voltages.line_to_line_v
        )
    return current_on_one_phase_a(apparent_kva=kva, line_to_neutral_v=voltages.line_to_neutral_v)


Formula = Callable[..., float]


def capacity(current_a: float, voltages: Voltages, lines: int) -> tuple[float, Formula, str] | None:
    """
    Apparent power of an even current on so many lines, with its formula and its step in words; None
    where the voltage is open.
    """
    neutral_v, line_v = voltages.line_to_neutral_v, voltages.line_to_line_v
    if neutral_v is None or line_v is None:
        return None
    if voltages.lines == 3 and lines == 3:
        kva = three_phase_kva(current_a=current_a, line_to_line_v=line_v)
        return (
            kva,
            three_phase_kva,
            f"√3 × {line_v:.4g} V × {current_a:.4g} A / 1000 = {kva:.4g} kVA",
        )
    if voltages.lines == 2 and lines == 2:
        kva = split_phase_kva(current_a=current_a, line_to_neutral_v=neutral_v)
        return (
            kva,
            split_phase_kva,
            f"2 × {neutral_v:.4g} V × {current_a:.4g} A / 1000 = {kva:.4g} kVA",
        )
    wire_v = line_v if lines == 2 else neutral_v
    kva = single_phase_kva(current_a=current_a, wire_to_wire_v=wire_v)
    return kva, single_phase_kva, f"{wire_v:.4g} V × {current_a:.4g} A / 1000 = {kva:.4g} kVA"


def line_current_a(
    *, kva: float, lines: Sequence[str], voltages: Voltages
) -> tuple[float, Formula, str] | None:
    """
    Line current of a load on so many lines, with its formula and its step in words; None where the
    voltage is open.
    """
    neutral_v, line_v = voltages.line_to_neutral_v, voltages.line_to_line_v
    if neutral_v is None or line_v is None:
        return None
    if len(lines) == 3:
        current_a = current_on_three_phases_a(apparent_kva=kva, line_to_line_v=line_v)
        return (
            current_a,
            current_on_three_phases_a,
            f"1000 × {kva:.4g} kVA / (√3 × {line_v:.4g} V) = {current_a:.4g} A",
        )
    if len(lines) == 2:
        current_a = current_between_two_phases_a(apparent_kva=kva, line_to_line_v=line_v)
        return (
            current_a,
            current_between_two_phases_a,
            f"1000 × {kva:.4g} kVA / {line_v:.4g} V = {current_a:.4g} A",
        )
    current_a = current_on_one_phase_a(apparent_kva=kva, line_to_neutral_v=neutral_v)
    return (
        current_a,
        current_on_one_phase_a,
        f"1000 × {kva:.4g} kVA / {neutral_v:.4g} V = {current_a:.4g} A",
    )
