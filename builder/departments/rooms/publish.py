"""From ``rooms.yml`` to the section of rooms."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.department import Published, Surroundings
from builder.departments.rooms.description import Room, Rooms
from builder.departments.rooms.figures import room_figures, whole_figures
from builder.pack import Fact, Item, Section, Standing
from builder.reading.absent import Absent, listed
from builder.stating import Stater


def publish(rooms: Rooms, around: Surroundings) -> Published:
    """The facts of all rooms, and what they hold together."""
    stater = around.stater(rooms)
    section = Section(
        key="rooms",
        title="Rooms",
        items=tuple(items(rooms, stater)),
        verified=stater.inherited,
    )
    return Published(section)


def undescribed(said: Absent) -> Item:
    """Washrooms of which the house says nothing: there may be any number of showers in them."""
    key = "rooms.washrooms"
    standing = Standing.UNKNOWN if said is Absent.UNKNOWN else Standing.NOT_STATED
    facts = tuple(
        Fact(f"{key}.{name}", name.capitalize(), standing) for name in ("showers", "toilets")
    )
    return Item(key, "washroom", "Others along the corridors", facts)


def items(rooms: Rooms, stater: Stater) -> Iterator[Item]:
    """Everything about rooms, in the order of the page."""
    whole = stater.item(rooms, "rooms.whole", "whole", "Rooms", leave_out=("note",))
    yield replace(whole, figures=tuple(whole_figures(rooms, whole.key)))
    lists: tuple[tuple[str, Sequence[Room]], ...] = (
        ("dressing-room", listed(rooms.dressing_rooms)),
        ("room", listed(rooms.rooms)),
    )
    for kind, told in lists:
        for item, room in zip(stater.named(told, "rooms", kind), told, strict=True):
            yield replace(item, figures=tuple(room_figures(room, item.key)))
    if rooms.washrooms in (Absent.NOT_STATED, Absent.UNKNOWN) and rooms.dressing_rooms:
        yield undescribed(rooms.washrooms)
    yield from stater.named(listed(rooms.washrooms), "rooms", "washroom")
    yield from stater.counted(listed(rooms.equipment), "rooms", "equipment", name_key="what")
