"""
Where the documentation explains a key: a page for what stands at the left margin of a file and one
for each group there, an anchor for each key, one address for each.

What every line may say is explained once. So is a record that stands under several keys: where it
is met first.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from builder.explaining.places import RIDER, Place, places
from builder.keys import SHARED
from builder.reading.written import Line, Loose, Written

FOLDER = "keys"
EVERY_LINE = "every-line"
INDEX = "index"


@dataclass(frozen=True, slots=True)
class Address:
    """A key's place in the documentation: the name of its page, and its anchor there."""

    page: str
    anchor: str

    def __str__(self) -> str:
        return f"{FOLDER}/{self.page}.html#{self.anchor}"


def address_of(place: Place) -> Address:
    """The one address of a key, wherever it stands."""
    return addresses()[place.key.record, place.key.name]


@cache
def addresses() -> Mapping[tuple[type[Written], str], Address]:
    """The address of each key of each record."""
    return {ident: address_at(first) for ident, first in homes().items()}


@cache
def homes() -> Mapping[tuple[type[Written], str], Place]:
    """The place at which each key of each record is explained: the first at which it may stand."""
    found: dict[tuple[type[Written], str], Place] = {}
    for place in places():
        found.setdefault((place.key.record, place.key.name), place)
    return found


def address_at(place: Place) -> Address:
    """The address of a key that is explained where it stands, or with what every line may say."""
    if is_shared(place):
        return Address(INDEX, anchor(EVERY_LINE, *keys_on_page(place)))
    name = name_of(place.file)
    return Address(page_of(place.file, place.under), anchor(name, *keys_on_page(place)))


def keys_on_page(place: Place) -> tuple[str, ...]:
    """A key with those that it stands under, as its page tells it."""
    record = place.key.record
    if not is_shared(place):
        return (*place.under, place.key.name)
    return (*place.under[-1:], place.key.name) if record in SHARED else (place.key.name,)


def is_shared(place: Place) -> bool:
    """Whether a key is one that every line may have, or stands in such a group."""
    record = place.key.record
    shared = Loose if issubclass(record, Loose) else Line
    return record in SHARED or (
        issubclass(record, Line) and place.key.name in {*shared.model_fields, "kept"}
    )


def page_of(file: str, under: tuple[str, ...] = ()) -> str:
    """The page of what stands under some keys of a file: ``rigging/index``, ``rigging/points``."""
    return f"{name_of(file)}/{anchor(under[0]) if under else INDEX}"


def name_of(file: str) -> str:
    """A file's name without an ending: ``rigging``, ``rider``."""
    return "rider" if file == RIDER else file.removesuffix(".yml")


def anchor(*parts: str) -> str:
    """The anchor of a page's key: ``rigging-points-rating``."""
    return "-".join(parts).replace("_", "-").replace(" ", "-")


def explained_on(page: str) -> Iterator[Place]:
    """The keys that a page explains, in the order in which they are met."""
    seen: set[Address] = set()
    for place in homes().values():
        address = address_of(place)
        if address.page == page and address not in seen:
            seen.add(address)
            yield place
