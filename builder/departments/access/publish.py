"""
From ``access.yml`` to the access section: docks, routes passage by passage, machines, and what does
not add up.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.cautions import TRAFFIC
from builder.department import Published, Surroundings
from builder.departments.access.description import Access, Approach, Dock, Passage, Route
from builder.departments.access.figures import dock_figures, forklift_figures, route_figures
from builder.pack import Fact, Finding, Item, Level, Section
from builder.reading.absent import Absent, listed
from builder.reading.measures import System, shown
from builder.reading.quantities import Slope
from builder.reading.standing_on import CONDITIONS, TERMS, hard_words, hardest
from builder.stating import Stater, place


def publish(access: Access, around: Surroundings) -> Published:
    """The facts of the way in, each route's tightest opening, and findings."""
    stater = around.stater(access)
    section = Section(
        key="access",
        title="Access",
        items=tuple(items(access, stater, around.system)),
        cautions=(TRAFFIC,),
        verified=stater.inherited,
    )
    return Published(section, tuple(findings(access)))


def items(access: Access, stater: Stater, system: System) -> Iterator[Item]:
    """Everything on the way in, from road to deck."""
    yield stater.item(access, "access.whole", "whole", "Access", leave_out=("note",))
    for approach, item in zip(
        access.approaches, stater.named(access.approaches, "access", "approach"), strict=True
    ):
        yield replace(item, facts=(*item.facts, *parts_of(approach, item.key, stater)))
    yield from stater.named(listed(access.shuttles), "access", "shuttle")
    if not isinstance(access.docks, Absent):
        for dock, item in zip(
            access.docks, stater.named(access.docks, "access", "dock"), strict=True
        ):
            yield replace(item, figures=tuple(dock_figures(item.key, dock)))
    for route, item in zip(
        access.routes, stater.named(access.routes, "access", "route"), strict=True
    ):
        begins = dock_of(access, route)
        item = replace(item, figures=tuple(route_figures(item.key, route, begins, system)))
        yield as_what_it_passes(item, route, begins)
        yield from passages(route, item, stater)
    if not isinstance(access.vehicles, Absent):
        for vehicle, item in zip(
            access.vehicles, stater.named(access.vehicles, "access", "vehicle"), strict=True
        ):
            yield replace(item, figures=tuple(forklift_figures(item.key, vehicle, system)))
    yield from stater.counted(access.parking, "access", "parking", name_key="what")
    yield from stater.named(access.storage, "access", "storage")


def parts_of(approach: Approach, key: str, stater: Stater) -> Iterator[Fact]:
    """When a way is shut, and what it is made of, part by part."""
    yield from stater.of_parts(approach.shut, f"{key}.shut", "Shut")
    yield from stater.of_parts(approach.ground, f"{key}.ground", "Ground")


def dock_of(access: Access, route: Route) -> Dock | None:
    """The dock that a route begins at; None where it is not described."""
    docks = () if isinstance(access.docks, Absent) else access.docks
    return next((dock for dock in docks if dock.name == route.from_dock), None)


def as_what_it_passes(item: Item, route: Route, dock: Dock | None) -> Item:
    """A route in the state of the worst that it passes, and on the hardest terms, saying where."""
    lines: list[Dock | Passage] = [*([] if dock is None else [dock]), *listed(route.passages)]
    condition = hardest([item.condition, *(line.condition for line in lines)], CONDITIONS)
    terms = hardest([item.terms, *(line.terms or "" for line in lines)], TERMS)
    where = [
        f"{line.name}: {word}."
        for line in lines
        for word in hard_words(line.condition, line.terms or "")
    ]
    note = " ".join(part for part in (item.note, *where) if part)
    return replace(item, condition=condition, terms=terms, note=note)


def passages(route: Route, item: Item, stater: Stater) -> tuple[Item, ...]:
    """The passages of a route as items under its key."""
    return tuple(
        stater.item(passage, f"{item.key}.{count}", "passage", passage.name)
        for count, passage in enumerate(listed(route.passages), 1)
    )


def findings(access: Access) -> Iterator[Finding]:
    """Slopes stated twice and different, and what a truck cannot use."""
    for route in access.routes:
        for passage in listed(route.passages):
            yield from slope_differs(route, passage)


def slope_differs(route: Route, passage: Passage) -> Iterator[Finding]:
    """
    A slope stated in two ways that are not the same.

    A twentieth of the slope is allowed for rounding.
    """
    if isinstance(passage.slope, Absent) or passage.slope_also is None:
        return
    first, second = passage.slope.rise_per_run, passage.slope_also.rise_per_run
    if abs(first - second) <= 0.05 * max(first, second):
        return
    words = (
        f"{passage.slope.text} is {shown(Slope, first)[0]}, {passage.slope_also.text} is"
        f" {shown(Slope, second)[0]}"
    )
    sentence = f"{route.name}, {passage.name}: the slope is stated twice and differs: {words}."
    yield Finding(
        Level.CAUTION, "slope-differs", sentence, place=place(passage.where("slope_also"))
    )
