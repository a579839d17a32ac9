"""From ``flying.yml`` to the section of flying: line sets with what they leave, and findings."""

from collections.abc import Iterator
from dataclasses import replace

from builder.cautions import LOADS
from builder.department import Published, Surroundings
from builder.departments.flying.description import Flying, LineSet
from builder.departments.flying.figures import set_figures, whole_figures
from builder.departments.flying.findings import findings
from builder.departments.flying.sets import SHARED, sets_of
from builder.pack import Fact, Item, Section, Standing
from builder.reading.absent import listed
from builder.reading.measures import System
from builder.stating import Stater


def publish(flying: Flying, around: Surroundings) -> Published:
    """The facts of all line sets, what each leaves, and what does not add up."""
    stater = around.stater(flying)
    section = Section(
        key="flying",
        title="Flying",
        items=tuple(items(flying, stater, around.system)),
        cautions=(LOADS,),
        verified=stater.inherited,
    )
    return Published(section, tuple(findings(flying, around.system)))


def items(flying: Flying, stater: Stater, system: System) -> Iterator[Item]:
    """Everything about flying, in the order of the page."""
    whole = stater.item(flying, "flying.whole", "whole", "Flying", leave_out=("note", "usual"))
    yield replace(whole, figures=tuple(whole_figures(flying, whole.key, system)))
    usual: tuple[Fact, ...] = ()
    if flying.usual is not None:
        item = stater.item(flying.usual, "flying.usual", "usual", "Usual")
        usual = item.facts
        yield item
    sets = sets_of(flying)
    for line_set, item in zip(sets, stater.named(sets, "flying", "lineset"), strict=True):
        yield replace(
            item,
            facts=with_usual(item, line_set, usual),
            figures=tuple(set_figures(line_set, flying, item.key, system)),
        )
    yield from stater.named(listed(flying.sets_alike), "flying", "alike")
    yield from stater.named(flying.floors, "flying", "floor")
    yield from stater.named(listed(flying.weights), "flying", "weights")
    yield from stater.named(listed(flying.spot_lines), "flying", "spotline")


def with_usual(item: Item, line_set: LineSet, usual: tuple[Fact, ...]) -> tuple[Fact, ...]:
    """The facts of a set, and the usual ones that shows are judged by where it does not tell."""
    own = [fact for fact in item.facts if fact.standing is not Standing.NOT_STATED]
    told = {fact.key for fact in own}
    others = []
    for fact in usual:
        name = fact.key.rsplit(".", 1)[-1]
        key = f"{item.key}.{name}"
        if name in SHARED and key not in told and fact.standing is not Standing.NOT_STATED:
            others.append(replace(fact, key=key, condition=line_set.condition))
    told |= {fact.key for fact in others}
    unsaid = [fact for fact in item.facts if fact.key not in told]
    return (*own, *others, *unsaid)
