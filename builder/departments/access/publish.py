"""From ``access.yml`` to the access section: docks, routes passage by passage, machines, and what does not add up."""

from collections.abc import Iterator

from builder.cautions import TRAFFIC
from builder.department import Published, Surroundings
from builder.departments.access.description import Access, Route
from builder.pack import Item, Section
from builder.reading.absent import Absent
from builder.stating import Stater


def publish(access: Access, around: Surroundings) -> Published:
    """The facts of the way in, each route's tightest opening, and findings."""
    stater = around.stater(access)
    section = Section(key="access", title="Access", items=tuple(items(access, stater)), cautions=(TRAFFIC,), verified=stater.inherited)
    return Published(section)


def items(access: Access, stater: Stater) -> Iterator[Item]:
    """Everything on the way in, from road to deck."""
    yield stater.item(access, "access.whole", "whole", "Access", leave_out=("note",))
    yield from stater.named(access.approaches, "access", "approach")
    if not isinstance(access.docks, Absent):
        yield from stater.named(access.docks, "access", "dock")
    for route, item in zip(access.routes, stater.named(access.routes, "access", "route"), strict=True):
        yield item
        yield from passages(route, item, stater)
    if not isinstance(access.vehicles, Absent):
        yield from stater.named(access.vehicles, "access", "vehicle")
    yield from stater.counted(access.parking, "access", "parking", name_key="what")
    yield from stater.named(access.storage, "access", "storage")


def passages(route: Route, item: Item, stater: Stater) -> tuple[Item, ...]:
    """The passages of a route as items under its key."""
    return tuple(stater.item(passage, f"{item.key}.{count}", "passage", passage.name) for count, passage in enumerate(route.passages, 1))
