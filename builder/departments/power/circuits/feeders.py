"""What the cable that feeds something may carry, against the breaker in front of it."""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.cautions import ELECTRICITY
from builder.departments.power.amounts import ampere
from builder.departments.power.circuits.drops import american_size, in_parallel, lacks_of_cable
from builder.departments.power.circuits.sources import Source
from builder.departments.power.circuits.tree import Network
from builder.departments.power.description import Fed
from builder.departments.power.description.nodes import Feeder
from builder.departments.power.subjects import told
from builder.formulas.ampacity import (
    INSULATIONS,
    WAYS_LAID,
    american_feeder_a,
    largest_breaker_a,
    metric_feeder_a,
)
from builder.formulas.phasors import PHASES
from builder.pack import Figure, Finding, Input, Item, Level, Value
from builder.reading.absent import Absent
from builder.reading.quantities import Current
from builder.working import Formula as Cited
from builder.working import figure, missing, worked

LEAVES_OUT = (
    "Air warmer than 30 °C, cables that lie together, third harmonics, and what the maker allows"
    " more. Conductors in parallel are taken to share evenly."
)
ROUNDING = 1e-6


@dataclass(frozen=True, slots=True)
class Carries:
    """
    What a feeder carries on each line by its table, from the least to the most of the ways that
    nobody ruled out, and the largest breaker that may stand before the most. [A]
    """

    least_a: float
    most_a: float
    breaker_a: float
    steps: tuple[str, ...]
    formulas: tuple[Cited, ...]


def carries(source: Source) -> Carries | str:
    """What the feeder of a node carries, or what is missing for it."""
    feeder = source.record.feeder if isinstance(source.record, Fed) else None
    if feeder is None or isinstance(feeder.conductor, Absent):
        return "the feeder's conductor"
    if lacks := lacks_of_cable(feeder):
        return lacks
    if (size := american_size(feeder.conductor.text)) is not None:
        return by_american_table(size, feeder)
    if feeder.cable == "flexible":
        return "a table for flexible cable by mm²"
    if len(source.phases) < len(PHASES):
        return "a table for two loaded conductors"
    return by_metric_table(feeder.conductor.mm2, feeder)


def by_american_table(size: str, feeder: Feeder) -> Carries | str:
    """A feeder of an American size."""
    try:
        one_a = american_feeder_a(
            size, metal=str(feeder.metal), flexible=feeder.cable == "flexible"
        )
    except ValueError:
        return f"a table for {size} in {feeder.metal}"
    whole_a = one_a * in_parallel(feeder)
    step = f"{size} {feeder.metal}: {one_a:.4g} A{times(feeder, whole_a)}"
    breaker_a = largest_breaker_a(whole_a)
    return Carries(whole_a, whole_a, breaker_a, (step,), (american_feeder_a, largest_breaker_a))


def by_metric_table(area_mm2: float, feeder: Feeder) -> Carries | str:
    """A feeder by its area, for every insulation and way of laying that is not ruled out."""
    found: list[tuple[float, str]] = []
    for insulation in [feeder.insulation] if feeder.insulation else INSULATIONS:
        for laid in [feeder.laid] if feeder.laid else WAYS_LAID:
            try:
                one_a = metric_feeder_a(
                    area_mm2, metal=str(feeder.metal), insulation=insulation, laid=laid
                )
            except ValueError:
                return f"a table for {area_mm2:g} mm²"
            words = f"{area_mm2:g} mm² {feeder.metal}, {insulation}, {laid}"
            found.append((one_a, words))
    ends = dict.fromkeys((min(found), max(found)))
    whole = [one_a * in_parallel(feeder) for one_a, _ in ends]
    steps = tuple(
        f"{words}: {one_a:.4g} A{times(feeder, one_a * in_parallel(feeder))}"
        for one_a, words in ends
    )
    return Carries(min(whole), max(whole), max(whole), steps, (metric_feeder_a,))


def times(feeder: Feeder, whole_a: float) -> str:
    """How many conductors share a line, as the end of a step."""
    return f" × {in_parallel(feeder)} = {whole_a:.4g} A" if in_parallel(feeder) > 1 else ""


def feeder_figure(item: Item, name: str, network: Network) -> Iterator[Figure]:
    """What its feeder carries, where it has one."""
    source = network.sources[name]
    if not isinstance(source.record, Fed) or source.record.feeder is None:
        return
    key, label = f"{item.key}.feeder-carries", "Its feeder carries"
    found = carries(source)
    if isinstance(found, str):
        working = worked(metric_feeder_a, inputs=())
        yield missing(key, label, working, [found], caution=ELECTRICITY)
        return
    least, most = ampere(found.least_a), ampere(found.most_a)
    between = Value(f"{least.text} to {most.text}", "", None, "A", (), found.least_a, found.most_a)
    feeder = source.record.feeder
    inputs = [
        Input("Insulation", feeder.insulation or "not stated"),
        Input("Laid", feeder.laid or "not stated"),
    ]
    working = worked(*found.formulas, inputs=inputs, steps=list(found.steps), leaves_out=LEAVES_OUT)
    exact = found.least_a == found.most_a
    note = "" if exact else "by insulation and how it is laid, which are not all stated"
    yield figure(key, label, most if exact else between, working, caution=ELECTRICITY, note=note)


def feeder_findings(source: Source) -> Iterator[Finding]:
    """A feeder that carries less than the breaker in front of it lets through, or may."""
    limit = protection(source)
    found = carries(source)
    if limit is None or isinstance(found, str):
        return
    what, limit_a = limit
    if limit_a > found.breaker_a + ROUNDING:
        sentence = (
            f"The feeder of {source.name} carries {found.most_a:.4g} A at most by its table"
            f" ({found.steps[-1].split(':')[0]}), and its {what} is {limit_a:.4g} A. The cable"
            " overheats before that trips."
        )
        yield told(Level.CAUTION, "feeder-under-breaker", sentence, source.record, "feeder")
    elif limit_a > found.least_a + ROUNDING and found.least_a < found.most_a:
        sentence = (
            f"The feeder of {source.name} carries {found.least_a:.4g} A to {found.most_a:.4g} A by"
            f" its insulation and how it is laid, which are not all stated, and its {what} is"
            f" {limit_a:.4g} A. Write insulation and laid under feeder."
        )
        yield told(Level.NOTE, "feeder-under-breaker", sentence, source.record, "feeder")


def protection(source: Source) -> tuple[str, float] | None:
    """The breaker in front of a feeder, or the rating where no breaker is stated. [A]"""
    record = source.record
    if not isinstance(record, Fed):
        return None
    if isinstance(record.breaker, Current):
        return "breaker", record.breaker.a
    return ("rating", record.rating.a) if isinstance(record.rating, Current) else None
