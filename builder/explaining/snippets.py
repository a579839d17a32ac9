"""An example of a key as it stands in its file, the keys above it included."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cache
from typing import Any, Literal, TypeVar, get_args, get_origin

import yaml

from builder.explaining.addresses import Address, address_of
from builder.explaining.examples import NOT_SHOWN, Examples, PlainDumper, kinds_of, written
from builder.explaining.places import Place, places
from builder.keys import Key, keys_of, types_within, within
from builder.reading.fields import mark_of
from builder.reading.words import ReadBy

WIDTH = 88
Ident = TypeVar("Ident")


def snippet_of(place: Place, examples: Examples) -> str:
    """A key with a value that a file writes, under the keys that it stands in."""
    return yaml_text(in_place(place, example_value(place, examples)))


def example_value(place: Place, examples: Examples) -> object:
    """
    What a file writes under a key, of groups the shortest; else what one writes under the same key
    of another record, else what its kind of value gives.
    """
    here = by_address()[address_of(place)]
    elsewhere = by_base()[base_of(place.key)]
    for alike in (here, elsewhere):
        found = [value for value in written(alike, examples) if value not in NOT_SHOWN]
        if found and is_group(found[0]):
            return shortest([*groups(found, place.key)] or found)
        if found:
            return found[0]
    return typical(place.key)


@cache
def by_address() -> Mapping[Address, Sequence[Place]]:
    """All places of keys by the address where each is explained."""
    return grouped(address_of)


@cache
def by_base() -> Mapping[tuple[str, str], Sequence[Place]]:
    """All places of keys, those together that records have from the same base."""
    return grouped(lambda place: base_of(place.key))


def base_of(key: Key) -> tuple[str, str]:
    """A key's name and meaning: two records that have it from the same base have both alike."""
    return key.name, key.meaning


def grouped(by: Callable[[Place], Ident]) -> Mapping[Ident, Sequence[Place]]:
    """All places of keys in groups, in their order."""
    found: dict[Ident, list[Place]] = {}
    for place in places():
        found.setdefault(by(place), []).append(place)
    return found


def groups(found: list[object], key: Key) -> Iterator[object]:
    """The groups among some values that hold all keys that must be there, each by itself."""
    needed = {
        inner.name
        for kind in within(key.field.annotation)
        for inner in keys_of(kind)
        if inner.is_needed
    }
    for value in found:
        for entry in value if isinstance(value, list) else [value]:
            if isinstance(entry, dict) and needed <= set(entry):
                yield [entry] if isinstance(value, list) else entry


def shortest(found: list[object]) -> object:
    """The shortest of some groups."""
    return min(found, key=lambda value: len(yaml_text(value)))


def is_group(value: object) -> bool:
    """Whether a value is a group of keys, or a list of them."""
    first = value[0] if isinstance(value, list) and value else value
    return isinstance(first, dict)


def typical(key: Key) -> object:
    """A value of the kind that a key takes; of a group the keys that must be there."""
    annotation = key.field.annotation
    if record := next(within(annotation), None):
        keys = [inner for inner in keys_of(record) if inner.is_needed] or keys_of(record)[:1]
        group = {inner.name: typical(inner) for inner in keys}
        return [group] if holds_list(key) else group
    choices = literals(annotation)
    kind = next(kinds_of(key), None)
    by = mark_of(key.field, ReadBy)
    value = choices[0] if choices else kind.examples[0] if kind else by.example if by else ""
    if bool in types_within(annotation):
        value = "yes"
    return [value] if holds_list(key) else value


def literals(annotation: Any) -> tuple[str, ...]:
    """The choices of a type, however deep they stand."""
    if get_origin(annotation) is Literal:
        return get_args(annotation)
    found = (literals(part) for part in get_args(annotation))
    return next((choices for choices in found if choices), ())


def holds_list(key: Key) -> bool:
    """Whether a key holds a list."""
    return any(get_origin(part) is tuple for part in parts_of(key.field.annotation))


def parts_of(annotation: Any) -> Iterator[Any]:
    """A type and all that it is made of, but for what lists hold."""
    yield annotation
    if get_origin(annotation) is not tuple:
        for part in get_args(annotation):
            yield from parts_of(part)


def in_place(place: Place, value: object) -> object:
    """A value under its key and the keys above, each of which holds a group or a list of groups."""
    value = {place.key.name: value}
    for depth in range(len(place.under), 0, -1):
        holder = key_at(place.file, place.under[:depth])
        value = {holder.name: [value] if holds_list(holder) else value}
    return value


def key_at(file: str, keys: tuple[str, ...]) -> Key:
    """The key at which some keys of a file end."""
    return next(
        place.key
        for place in places()
        if place.file == file and (*place.under, place.key.name) == keys
    )


class BlockDumper(PlainDumper):
    """Writes groups and lists in lines, lists set in under their keys."""

    def increase_indent(self, flow: bool = False, indentless: bool = False) -> None:
        """Set lists in, which PyYAML does not."""
        del indentless
        super().increase_indent(flow, False)


def yaml_text(data: object) -> str:
    """Data as an author writes it, in lines."""
    text: str = yaml.dump(
        data, Dumper=BlockDumper, width=WIDTH, allow_unicode=True, sort_keys=False
    )
    return text.strip()
