"""
From ``power.yml`` to the power section: every node with its figures, outlets, loads, shore power,
findings.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.cautions import ELECTRICITY
from builder.department import Published, Surroundings
from builder.departments.power.circuits.altitude import at_altitude
from builder.departments.power.circuits.drops import drop_figures
from builder.departments.power.circuits.feeders import feeder_figure
from builder.departments.power.circuits.generators import generator_figures
from builder.departments.power.circuits.neutrals import neutral_figures
from builder.departments.power.circuits.sources import Source
from builder.departments.power.circuits.tree import Network, network_of
from builder.departments.power.description import Fed, Generator, Power, Supply
from builder.departments.power.elsewhere import with_elsewhere
from builder.departments.power.figures import node_figures
from builder.departments.power.findings import findings
from builder.departments.power.oddities import oddities
from builder.departments.power.outlets.at_once import available_items, hours_figure, shore_capacity
from builder.departments.power.outlets.mating import connector_items
from builder.departments.power.outlets.next import next_items
from builder.formulas.windings import Winding
from builder.pack import Fact, Item, Section, Standing, Value
from builder.reading.absent import Absent, listed
from builder.stating import Stater, place

STANDS_ON: dict[Winding, tuple[float, str]] = {
    "line": (1.0, "one line each"),
    "two lines": (2.0, "a winding between two lines"),
    "three lines": (3.0, "three lines, by a vector group that is not stated"),
}
"""How lines stand on those of their source, as a number that the check reads and in words."""
LISTS = (
    "supplies",
    "generators",
    "services",
    "boards",
    "outlets",
    "standing_loads",
    "shore_power",
    "note",
)


def publish(power: Power, around: Surroundings) -> Published:
    """The power section with its findings."""
    stater = around.stater(power)
    placed = at_altitude(power, around.exchange.altitude)
    network = network_of(with_elsewhere(placed, around.elsewhere))
    section = Section(
        key="power",
        title="Power",
        items=tuple(items(power, stater, network, listed(placed.generators))),
        cautions=(ELECTRICITY,),
        verified=stater.inherited,
    )
    return Published(section, (*findings(placed, network), *oddities(power, around.system)))


def items(
    power: Power, stater: Stater, network: Network, generators: Sequence[Generator]
) -> Iterator[Item]:
    """
    House rules, nodes, outlets, loads, shore power, and what is available.

    ``generators`` are those of the file, at their altitude.
    """
    none = {key for key in ("shore_power", "generators") if getattr(power, key) is Absent.NONE}
    if not power.shore_outlets:
        none.add("shore_power")
    leave_out = tuple(name for name in LISTS if name not in none)
    yield stater.item(power, "power.rules", "rules", "House rules on power", leave_out=leave_out)
    yield from nodes(power, stater, network)
    for item, generator in zip(
        stater.named(listed(power.generators), "power", "generator", leave_out=("burns",)),
        generators,
        strict=True,
    ):
        item = replace(
            item,
            facts=(*item.facts, *burn_facts(generator, item.key)),
            figures=(
                *node_figures(item, generator.name, network),
                *neutral_figures(item, generator.name, network),
                *generator_figures(item, generator, network),
            ),
        )
        yield wired(item, network)
    outlets = stater.counted(power.outlets, "power", "outlet", name_key="connector")
    for item, outlet in zip(outlets, power.outlets, strict=True):
        yield replace(item, figures=(hours_figure(item, outlet, network),))
    for number, untraced in enumerate(power.untraced_outlets, 1):
        kind = "outlet" if untraced.kind in ("shows", Absent.NOT_STATED) else "shore"
        yield stater.item(untraced, f"power.untraced.{number}", kind, untraced.name)
    yield from stater.named(listed(power.adaptors), "power", "adaptor")
    yield from stater.counted(power.house_loads, "power", "load", name_key="what")
    shore = stater.counted(power.shore_outlets, "power", "shore", name_key="connector")
    for item, outlet in zip(shore, power.shore_outlets, strict=True):
        figures = (*shore_capacity(item, outlet, network), hours_figure(item, outlet, network))
        yield replace(item, figures=figures)
    yield from available_items(power, network)
    yield from next_items(power, network)
    yield from connector_items(power)


def burn_facts(generator: Generator, key: str) -> Iterator[Fact]:
    """The fuel that a generator takes by its load, as one fact."""
    parts = tuple(f"{burn.in_one_hour.text} at {burn.load.text}" for burn in generator.burns)
    if parts:
        where = place(generator.where("burns"))
        value = Value(", ".join(parts), parts=parts)
        yield Fact(f"{key}.burns", "Fuel in one hour", Standing.STATED, value, place=where)


def nodes(power: Power, stater: Stater, network: Network) -> Iterator[Item]:
    """Supplies, services and boards with their figures."""
    lists: tuple[tuple[str, Sequence[Supply | Fed]], ...] = (
        ("supply", power.supplies),
        ("service", power.services),
        ("board", power.boards),
    )
    for kind, records in lists:
        for item, record in zip(stater.named(records, "power", kind), records, strict=True):
            figures = (
                *node_figures(item, record.name, network),
                *neutral_figures(item, record.name, network),
                *drop_figures(item, record.name, network, power),
                *feeder_figure(item, record.name, network),
            )
            yield wired(replace(item, figures=figures), network)


def wired(item: Item, network: Network) -> Item:
    """
    The item with the phases it has, its own or its source's, and with what stands between them, for
    the reader who cannot see the source.
    """
    source = network.sources[item.name]
    phases = Value(" ".join(source.phases))
    facts = [Fact(f"{item.key}.wired", "Phases it has", Standing.STATED, phases)]
    if source.parent_a_per_a != 1 or source.winding != "line":
        facts += transformer_facts(item.key, source)
    return replace(item, facts=(*item.facts, *facts))


def transformer_facts(key: str, source: Source) -> Iterator[Fact]:
    """How the lines of a node stand on those of its source, through a transformer."""
    lines, words = STANDS_ON[source.winding]
    ratio = source.parent_a_per_a
    text = f"{ratio:.4g} A in {source.fed_from} for each ampere of an even load"
    yield Fact(
        f"{key}.through", "Through its transformer", Standing.STATED, Value(text, number=ratio)
    )
    yield Fact(
        f"{key}.stands_on", "Its lines stand on", Standing.STATED, Value(words, number=lines)
    )
