"""Every key in every place where it may be written."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from builder.explaining.paragraph import spelt
from builder.keys import Key, keys_of, value_of, within
from builder.overview.log import LOG, Log
from builder.reading.written import Written
from builder.registry import DEPARTMENTS
from builder.rider.description import Rider

RIDER = "a rider"


@dataclass(frozen=True, slots=True)
class Place:
    """A key where it may be written: the file, and the keys it stands under."""

    file: str
    under: tuple[str, ...]
    key: Key

    @property
    def words(self) -> str:
        """The place in words, such as ``stage.yml, decks``."""
        return ", ".join((self.file, *self.under))

    @property
    def dotted(self) -> str:
        """The place as a crew may ask for it: ``stage.decks.name``."""
        file = "rider" if self.file == RIDER else self.file.removesuffix(".yml")
        return ".".join((file, *self.under, self.key.name))


def files() -> Mapping[str, type[Written]]:
    """The description of each kind of file."""
    departments = {f"{department.key}.yml": department.description for department in DEPARTMENTS}
    return {**departments, LOG: Log, RIDER: Rider}


@cache
def places() -> tuple[Place, ...]:
    """Every key in every place where it may be written, files in the order of the site."""
    return tuple(every_place())


def every_place() -> Iterator[Place]:
    """Every place, file by file, what is nearer to the left margin first."""
    for file, kind in files().items():
        waiting: list[tuple[tuple[str, ...], type[Written]]] = [((), kind)]
        while waiting:
            under, record = waiting.pop(0)
            for key in keys_of(record):
                yield Place(file, under, key)
                if key.name not in under:
                    inner = dict.fromkeys(within(key.field.annotation))
                    waiting += [((*under, key.name), each) for each in inner]


@cache
def places_by_name() -> Mapping[str, tuple[Place, ...]]:
    """The places of each key, by the key however it is spelt."""
    found: dict[str, tuple[Place, ...]] = {}
    for place in places():
        name = spelt(place.key.name)
        found[name] = (*found.get(name, ()), place)
    return found


def places_meant(word: str) -> list[Place]:
    """Where a key stands that a word names: ``name``, ``decks.name`` or ``stage.decks.name``."""
    if word.endswith(".yml"):
        return []
    *before, name = [spelt(part) for part in re.sub(r"\.yml\b", "", word).split(".")]
    return [place for place in places_by_name().get(name, ()) if is_under(place, before)]


def is_under(place: Place, names: list[str]) -> bool:
    """Whether a key stands under some names, one within the other, others between them or not."""
    above = iter(spelt(part) for part in place.dotted.split(".")[:-1])
    return all(name in above for name in names)


def by_meaning(found: Iterable[Place]) -> Iterable[list[Place]]:
    """Places whose key says the same and takes the same."""
    alike: dict[tuple[str, str], list[Place]] = {}
    for place in found:
        alike.setdefault((place.key.meaning, value_of(place.key.field)), []).append(place)
    return alike.values()
