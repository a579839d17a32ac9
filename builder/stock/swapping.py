"""
Another thing in a line's place: another model, or another name.

What belongs to the old model (its rating, weight, size, table: fields marked ``OfModel``) never
stays under the new name. Each such key takes the new one's value, where the order gives it; is
restored to the letter, where the log knows that the line held this model before; else it is marked
unknown, or goes where nobody can say unknown of it. What no line can do without must be given.

Where the other model stands in the same list already, its line says what it is, and only the uses
move: every line that named the old one names the other.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, get_args

from pydantic.fields import FieldInfo

from builder.overview.log import LONGEST
from builder.pipeline import Venue
from builder.reading.absent import Absent
from builder.reading.nodes import Path, compose
from builder.reading.problems import Problem, Refused
from builder.reading.references import spelling
from builder.reading.written import Line, OfModel, RefersTo, Written
from builder.stock.changing import Stockroom
from builder.stock.edits import Edit, Set, Unset, reach
from builder.stock.lines import NAME_KEYS, Held, referring, uses_of, within_reach
from builder.stock.order import Order, data_of, entries_on, flat, order
from builder.stock.orders import settings
from builder.stock.wording import Data

UNKNOWN = (Absent.UNKNOWN.value, "?")
"""What is written where nobody knows; the second is read from older files."""
VOUCHING = ("verified", "confirmed", "photo")
"""Keys that vouch for the thing that was there, not for the one that comes."""
SWAP = "swap"


@dataclass(frozen=True, slots=True)
class House:
    """What a swap looks at: the venue, its lines, and the data of its files as written."""

    venue: Venue
    lines: Sequence[Held]
    data: Mapping[str, Any]

    def said(self, file: str, path: Path) -> dict[str, Any]:
        """What is written at a path of a file."""
        found: dict[str, Any] = reach(self.data[file], path)
        return found


def house_of(room: Stockroom) -> House:
    """What a swap looks at of a venue's stock."""
    data = {file: compose(text, file).data for file, text in room.texts.items()}
    return House(room.venue, room.lines, data)


@dataclass(frozen=True, slots=True)
class Place:
    """A record that names a model: its file, its path, and the key that names it."""

    file: str
    path: Path
    record: Written
    key: str


def swap(house: House, line: Held, other: str, also: Mapping[str, str]) -> list[Order]:
    """
    Put another thing in a line's place: another model where the line names one, else another name,
    which those who refer to it then use.

    Raises
    ------
    Refused
        `model-needs`, `swap-nothing` or `key-not-here`.
    """
    place = Place(line.file, line.path, line.record, model_key(house, line, other))
    if place.key not in NAME_KEYS:
        return [order(SWAP, line, exchanged(house, place, line.name, other, also))]
    twin = beside(house.lines, line, other)
    if twin is not None:
        return moved_to(house, line, twin, also)
    return renamed(house, line, place, other, also)


def model_key(house: House, line: Held, other: str) -> str:
    """
    The key that names what the line is made of: its model, or a truss in stock where the other is
    one too; else the line's own name.
    """
    if line.has("model"):
        return "model"
    for key, kind in references_of_model(line.record):
        names = [held.name for held in house.lines if held.record.defines == kind]
        if isinstance(getattr(line.record, key, None), str) and other in names:
            return key
    return next(key for key in NAME_KEYS if isinstance(getattr(line.record, key, None), str))


def references_of_model(record: Written) -> Iterator[tuple[str, str]]:
    """The keys of a record that name a model of something in stock, with what that is."""
    fields = type(record).model_fields
    named = {mark.key for field in fields.values() for mark in marks_of(field)}
    for key in sorted(named - set(NAME_KEYS)):
        for mark in fields[key].metadata:
            if isinstance(mark, RefersTo):
                yield key, mark.kind


def marks_of(field: FieldInfo) -> list[OfModel]:
    """What says that a field belongs to a model."""
    return [mark for mark in field.metadata if isinstance(mark, OfModel)]


def beside(lines: Sequence[Held], line: Held, other: str) -> Held | None:
    """The line of the same list that bears the other name already."""
    for held in lines:
        same_list = (held.file, held.within) == (line.file, line.within)
        if same_list and held.path != line.path and spelling(held.name) == spelling(other):
            return held
    return None


def renamed(
    house: House, line: Held, place: Place, other: str, also: Mapping[str, str]
) -> list[Order]:
    """Another name on the line, and in every line that refers to it."""
    uses = list(places_of(house, line))
    own, theirs = shared_out(line, uses, also)
    edits = exchanged(house, place, line.name, other, own)
    elsewhere: list[tuple[str, Edit]] = []
    orders: list[Order] = []
    for use in uses:
        found = exchanged(house, use, line.name, other, theirs)
        if len(found) == 1:
            elsewhere.append((use.file, found[0]))
        else:
            orders += [of_use(house, use, found)]
    # Lists that refer to it by name, an entry each, bear no value of the model.
    elsewhere += listed_uses(house, line, other)
    return [order(SWAP, line, edits, elsewhere), *orders]


def moved_to(house: House, line: Held, twin: Held, also: Mapping[str, str]) -> list[Order]:
    """Every use of a line handed to another line of its list, which stays as it is written."""
    uses = list(places_of(house, line))
    own, theirs = shared_out(twin, uses, also)
    orders = [
        of_use(house, use, exchanged(house, use, line.name, twin.name, theirs)) for use in uses
    ]
    elsewhere = listed_uses(house, line, twin.name)
    if not orders and not elsewhere:
        raise Refused([nothing_to_move(line, twin)])
    if own or elsewhere:
        orders.append(order(SWAP, twin, settings(twin, own), elsewhere))
    return joined(orders)


def joined(orders: Sequence[Order]) -> list[Order]:
    """Orders on one and the same line as one."""
    found: dict[tuple[str, Path], Order] = {}
    for each in orders:
        first = found.get((each.file, each.path))
        found[each.file, each.path] = (
            each if first is None else replace(first, edits=(*first.edits, *each.edits))
        )
    return list(found.values())


def places_of(house: House, line: Held) -> Iterator[Place]:
    """The records that name a line by a key of its own."""
    files = within_reach(house.venue.files, line)
    for file, path, record, key in uses_of(files, line.record.defines, line.name):
        if isinstance(getattr(record, key, None), str):
            yield Place(file, path, record, key)


def listed_uses(house: House, line: Held, other: str) -> list[tuple[str, Edit]]:
    """The entries of lists that name a line, each with the other name."""
    files = within_reach(house.venue.files, line)
    found = referring(files, line.record.defines, line.name)
    return [(file, Set(path, other)) for file, path in found if isinstance(path[-1], int)]


def shared_out(
    line: Held, uses: Sequence[Place], also: Mapping[str, str]
) -> tuple[dict[str, str], dict[str, str]]:
    """
    The keys that an order gives: those of the line itself, and those that the line has not and the
    records that use it have of its model.
    """
    known = {field.alias or name for name, field in type(line.record).model_fields.items()}
    of_uses = {key for use in uses for key, _ in of_model(use)} - known
    own = {key: value for key, value in also.items() if key not in of_uses}
    return own, {key: value for key, value in also.items() if key in of_uses}


def of_model(place: Place) -> Iterator[tuple[str, FieldInfo]]:
    """The keys of a record that belong to the model which one of its keys names."""
    for name, field in type(place.record).model_fields.items():
        if OfModel(place.key) in marks_of(field):
            yield field.alias or name, field


def exchanged(
    house: House,
    place: Place,
    was: str,
    other: str,
    also: Mapping[str, str],
) -> list[Edit]:
    """
    The edits that put another model on a record: its name, and what belongs to it.

    Raises
    ------
    Refused
        `model-needs` where a value is needed that the order does not give.
    """
    edits: list[Edit] = [Set((*place.path, place.key), other)]
    held = line_of(house, place)
    if letters(was) == letters(other):
        return edits + given(place, also)
    if not also:
        before = as_before(house, place, held, other)
        if before:
            return before
    said = house.said(place.file, place.path)
    needed = []
    for key, field in of_model(place):
        if key in also or key not in said or said[key] in UNKNOWN:
            continue
        if field.is_required():
            needed.append(key)
        elif takes_unknown(field):
            edits.append(Set((*place.path, key), UNKNOWN[0]))
        else:
            edits.append(Unset((*place.path, key)))
    if needed:
        raise Refused([needs(held, needed, was, other)])
    if place.key in NAME_KEYS and any(True for _ in of_model(place)):
        edits += [Unset((*place.path, key)) for key in VOUCHING if key in said]
    return edits + given(place, also)


def letters(name: str) -> str:
    """What a name is but for capitals, spaces and signs: two that agree in it are one thing."""
    return spelling(name).replace("-", "")


def given(place: Place, also: Mapping[str, str]) -> list[Edit]:
    """The keys that an order gives, on the record that has them."""
    if isinstance(place.record, Line):
        held = Held(place.file, place.path, place.record, "")
        return list(settings(held, also))
    return [Set((*place.path, key), data_of(value)) for key, value in also.items()]


def takes_unknown(field: FieldInfo) -> bool:
    """Whether a field may say that nobody knows."""
    return Absent in get_args(field.annotation)


def as_before(house: House, place: Place, held: Held, other: str) -> list[Edit]:
    """
    The edits that give a record what it said when it named the other model before, where the log
    knows that and agrees with what is written now; none otherwise.

    The log of the line is wound back, entry by entry, until the record named the other model.
    """
    if place.path != held.path:
        return []
    concerned = {place.key, *VOUCHING, *(key for key, _ in of_model(place))}
    now = flat(house.said(place.file, place.path))
    before: dict[str, str | None] = {}
    for entry in entries_on(held, house.venue.log):
        parts = [part for part in entry.changes if part.key.split(".")[0] in concerned]
        if any(before.get(part.key, now.get(part.key)) != part.now for part in parts):
            return []
        if any(len(part.was or "") >= LONGEST for part in parts):
            return []
        before |= {part.key: part.was for part in parts}
        if before.get(place.key) == other:
            changed = {key: was for key, was in before.items() if was != now.get(key)}
            return put_back(place, changed, house.said(place.file, place.path))
    return []


def put_back(place: Place, before: Mapping[str, str | None], said: Mapping[str, Any]) -> list[Edit]:
    """
    The edits that give keys what they said before.

    A group's own keys follow a point; a group that is no longer there comes back whole.
    """
    edits: list[Edit] = []
    groups: dict[str, Data] = {}
    for key, was in before.items():
        first, _, inner = key.partition(".")
        path = (*place.path, *key.split("."))
        if inner and not isinstance(said.get(first), dict):
            if was is not None:
                groups[first] = {**as_group(groups.get(first)), inner: data_of(was)}
        elif was is not None:
            edits.append(Set(path, data_of(was), by_lines=True))
        elif not any(other.startswith(f"{key}.") for other in before):
            edits.append(Unset(path))
    return [*edits, *(Set((*place.path, key), group) for key, group in groups.items())]


def as_group(value: Data | None) -> dict[str, Any]:
    """A group, or an empty one."""
    return value if isinstance(value, dict) else {}


def line_of(house: House, place: Place) -> Held:
    """The line with a name that a record is, or stands in."""
    for count in range(len(place.path), 0, -1):
        for held in house.lines:
            if (held.file, held.path) == (place.file, place.path[:count]):
                return held
    raise ValueError(f"place must stand on a line that bears a name, got {place.path}")


def of_use(house: House, use: Place, edits: Sequence[Edit]) -> Order:
    """The order on the line that a use stands in."""
    return order(SWAP, line_of(house, use), edits)


def needs(line: Held, keys: Sequence[str], was: str, other: str) -> Problem:
    """The problem with a model of which something must be told that the order does not tell."""
    listed = ", ".join(keys[:-1]) + " and " + keys[-1] if len(keys) > 1 else keys[0]
    example = " ".join(f"{key}=..." for key in keys)
    return Problem(
        line.where,
        "",
        line.name,
        f"tells {listed} of {was}, which say nothing of {other}",
        "model-needs",
        f"give those of {other} after its name: {example}",
    )


def nothing_to_move(line: Held, twin: Held) -> Problem:
    """The problem with two lines of stock of which the first is used nowhere."""
    return Problem(
        line.where,
        "",
        line.name,
        f"is named by no other line, and {twin.name} has a line of its own at {twin.where}",
        "swap-nothing",
        "nothing was changed",
    )
