"""
What is counted of rooms: of several that are alike, and of all that shows may have. What is out of
service, or not for visitors, is in no sum.
"""

from collections.abc import Iterator, Sequence

from builder.departments.rooms.description import DressingRoom, Room, Rooms, Washroom
from builder.pack import Figure, Input, Value, Working, one_or_both
from builder.reading.absent import Absent, listed
from builder.reading.in_part import as_written, ends_of, told_as
from builder.reading.written import Line
from builder.working import by_hand, figure, missing

CLAUSE = "counting"
OUT, KEPT = "out of service", "not for visitors"
IN_ONE = {
    "persons": "Persons in all of them",
    "showers": "Showers in all of them",
    "toilets": "Toilets in all of them",
    "mirrors": "Places with a lit mirror in all of them",
}
Ends = tuple[int | None, int | None]
"""A count at least and at most; None where nobody knows."""


def room_figures(room: Room, key: str) -> Iterator[Figure]:
    """How many rooms a line is, and what these hold together."""
    work = by_hand("rooms alike", CLAUSE, inputs=[Input("Rooms", as_written(room.count))])
    lacks = [f"how many rooms {room.name} is"]
    yield counted(f"{key}.rooms", "Rooms", count_ends(room.count), work, lacks)
    for name, label in IN_ONE.items():
        if name in type(room).model_fields:
            yield in_all(room, name, label, getattr(room, name), key)


def in_all(room: Room, name: str, label: str, each: object, key: str) -> Figure:
    """What all rooms of a line hold together of something."""
    inputs = [Input("Rooms", as_written(room.count)), Input(name.capitalize(), told_as(each))]
    work = by_hand(f"rooms × {name} in one", CLAUSE, inputs=inputs)
    open_ones = (
        (f"how many rooms {room.name} is", count_ends(room.count)),
        (f"the {name} of {room.name}", count_ends(each)),
    )
    lacks = [words for words, ends in open_ones if None in ends]
    return counted(f"{key}.{name}-in-all", label, product_of(room, name), work, lacks)


def whole_figures(rooms: Rooms, key: str) -> Iterator[Figure]:
    """Dressing rooms, the persons that they hold, and showers, of those that shows may have."""
    dressing = [room for room in listed(rooms.dressing_rooms) if may_be_had(room)]
    if rooms.dressing_rooms in (Absent.NOT_STATED, Absent.UNKNOWN):
        return
    yield whole(f"{key}.dressing-rooms", "Dressing rooms", dressing, "")
    yield whole(f"{key}.persons", "Persons in dressing rooms", dressing, "persons")
    if isinstance(rooms.washrooms, tuple) or rooms.washrooms is Absent.NONE:
        shared = [each for each in listed(rooms.washrooms) if may_be_had(each)]
        yield whole(f"{key}.showers", "Showers", [*dressing, *shared], "showers")


def whole(key: str, label: str, lines: Sequence[DressingRoom | Washroom], name: str) -> Figure:
    """A sum over rooms: of a count in each, or of the rooms themselves where none is named."""
    parts = [product_of(each, name) for each in lines]
    least = sum(low for low, _ in parts if low is not None)
    mosts = [high for _, high in parts]
    most = None if None in mosts else sum(high for high in mosts if high is not None)
    work = by_hand(
        "sum over the rooms that shows may have",
        CLAUSE,
        inputs=[Input(each.name, in_words(each, name)) for each in lines]
        or [Input("Rooms", "none")],
        lines=lines,
    )
    lacks = [
        f"the {name} of {each.name}" if name else f"how many rooms {each.name} is"
        for each, (_, high) in zip(lines, parts, strict=True)
        if high is None
    ]
    return counted(key, label, (least if least or most == 0 else None, most), work, lacks)


def may_be_had(line: Line) -> bool:
    """Whether a show may have a room, as far as anybody knows."""
    return line.condition != OUT and line.terms != KEPT


def product_of(line: DressingRoom | Washroom | Room, name: str) -> Ends:
    """A count in all rooms of a line; how many rooms it is where nothing is named."""
    rooms = count_ends(line.count) if isinstance(line, Room) else (1, 1)
    each = count_ends(getattr(line, name)) if name else (1, 1)
    return (times(rooms[0], each[0]), times(rooms[1], each[1]))


def count_ends(value: object) -> Ends:
    """A count at least and at most; none is nothing."""
    if value is Absent.NONE:
        return (0, 0)
    least, most = ends_of(value)
    return (
        least if isinstance(least, int) else None,
        most if isinstance(most, int) else None,
    )


def times(one: int | None, other: int | None) -> int | None:
    """Two counts multiplied; None where one is not known, unless the other is nothing."""
    if one == 0 or other == 0:
        return 0
    return None if one is None or other is None else one * other


def in_words(line: DressingRoom | Washroom, name: str) -> str:
    """What a line brings to a sum, in words."""
    told = [as_written(line.count)] if isinstance(line, Room) else []
    told += [told_as(getattr(line, name))] if name else []
    return " × ".join(told)


def counted(key: str, label: str, ends: Ends, work: Working, lacks: Sequence[str]) -> Figure:
    """A number of something, at least and at most; missing where neither end is known."""
    least, most = (None if end is None else Value(f"{end:,}", number=float(end)) for end in ends)
    value = one_or_both(least, most)
    if value is None:
        return missing(key, label, work, lacks)
    is_open = None in ends and lacks
    return figure(key, label, value, work, note=f"not known: {', '.join(lacks)}" if is_open else "")
