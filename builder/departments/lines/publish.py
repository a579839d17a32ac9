"""
From ``lines.yml`` to the section of lines: lines with their reach, pairs of places, the drive plan,
talkback, networks, findings.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.department import Published, Surroundings
from builder.departments.lines.cables import Kind, PermanentLine
from builder.departments.lines.description import Lines
from builder.departments.lines.drive import drive_items
from builder.departments.lines.driving import ConsolePosition
from builder.departments.lines.findings import findings
from builder.departments.lines.oddities import oddities, statements
from builder.departments.lines.reach import reach_figures, straight_figure
from builder.departments.lines.reaching import reaching_item
from builder.departments.lines.ways import (
    fed_by,
    pair_item,
    pairs_of,
    shared_names,
    stage_to_mix,
    working_figure,
)
from builder.exchange import Offers
from builder.pack import Fact, Item, Section, Standing, Value
from builder.reading.absent import listed
from builder.stating import Stater, place

TO_MIX = "lines.stage-to-mix"


def publish(described: Lines, around: Surroundings) -> Published:
    """The facts of all lines, what is left of their limits, and what does not add up."""
    stater = around.stater(described)
    section = Section(
        key="lines",
        title="Lines",
        items=tuple(items(described, stater, around)),
        verified=stater.inherited,
    )
    found = findings(described, around.exchange, around.system)
    return Published(section, (*found, *oddities(described)))


def offer(described: Lines) -> Offers:
    """The ways of the cables, which the sound file tells too."""
    return Offers(statements=tuple(statements(described)))


def items(described: Lines, stater: Stater, around: Surroundings) -> Iterator[Item]:
    """Everything about lines, in the order of the page."""
    yield stater.item(described, "lines.whole", "whole", "Lines", leave_out=("note",))
    lines = listed(described.lines)
    yield from (pair_item(pair, lines) for pair in pairs_of(lines))
    without = tuple(none_of(described.has_no))
    if consoles := listed(described.consoles):
        mix = consoles[0]
        there = tuple(belonging(mix, TO_MIX))
        for item in stage_to_mix(lines, mix.place, around.exchange, fed_by(described, mix.place)):
            yield replace(item, facts=(*there, *without_told(without, item)))
    elif without:
        yield Item(TO_MIX, "stage-to-mix", "Stage to mix position", without, ())
    for line, item in zip(
        lines, stater.named(lines, "lines", "line", leave_out=("shared_with",)), strict=True
    ):
        figures = (
            *working_figure(item.key, line),
            *reach_figures(item.key, line, around.system),
            *straight_figure(item.key, line, around.exchange, around.system),
        )
        yield replace(item, figures=figures, facts=(*item.facts, *shared(item, line, lines)))
    yield from drive_items(described, stater)
    yield from stater.named(listed(described.talkback_channels), "lines", "channel")
    yield from stater.counted(described.talkback_stations, "lines", "station", name_key="spot")
    yield from stater.named(listed(described.cue_lights), "lines", "cue-lights")
    yield from stater.named(listed(described.relays), "lines", "relay")
    yield from stater.named(listed(described.networks), "lines", "network")
    yield from stater.named(listed(described.cable_ramps), "lines", "ramp")
    yield from reaching_item(described)


def none_of(kinds: Sequence[Kind]) -> Iterator[Fact]:
    """That there are no lines of some kinds from the stage to the mix position."""
    for kind in kinds:
        key = f"{TO_MIX}.{kind.lower().replace(' ', '-')}.free"
        yield Fact(key, f"{kind.capitalize() if kind != 'DMX' else kind}, free", Standing.NONE)


def without_told(facts: Sequence[Fact], item: Item) -> Iterator[Fact]:
    """Those of some facts that no figure of an item tells, for a line that is there counts."""
    told = {figure.key for figure in item.figures}
    return (fact for fact in facts if fact.key not in told)


def belonging(console: ConsolePosition, key: str) -> Iterator[Fact]:
    """The configurations that a console stands in, for what is told of its lines."""
    if names := console.configurations:
        where = place(console.where("configurations"))
        value = Value(", ".join(names), parts=names)
        yield Fact(f"{key}.configurations", "Configurations", Standing.STATED, value, place=where)


def shared(item: Item, line: PermanentLine, lines: Sequence[PermanentLine]) -> Iterator[Fact]:
    """The lines on the same cores, as a fact."""
    if names := shared_names(line, lines):
        where = place(line.where("shared_with")) if line.shared_with else None
        yield Fact(
            f"{item.key}.shared_with",
            "Same cores as",
            Standing.STATED,
            Value(", ".join(names)),
            place=where,
        )
