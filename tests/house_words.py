"""
The same house in other words: every name or text another, or every quantity in the other system.
"""

import json
import re
from collections.abc import Callable, Iterator
from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from typing import Any

from builder.fit.records import RiderAsked
from builder.keys import refers_to
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.facts import Spot, put, spots
from tests.house_laws import Files
from tests.sweep import composed, composed_riders

LANGUAGE = {
    "days": "weekdays are told in words",
    "hours": "hours of a limit are told in words",
    "connector": "connectors are known by the words of the trade",
    "connectors": "connectors are known by the words of the trade",
    "photo": "the name of a file",
    "measured_at": "the mix position is known by the words of the trade, as well as by its name",
}
"""Keys whose words are language, each with the reason."""
NAMING = ("configuration", "of", "place", "point", "for", "connector")
"""The keys of a rider that say a name of the house."""


@dataclass(frozen=True, slots=True)
class Renaming:
    """Every word of one key of a house becomes another, wherever the house or a rider says it."""

    house: str
    file: str
    record: str
    key: str

    def __str__(self) -> str:
        return f"{self.house}/{self.file} {self.record}.{self.key}"

    @property
    def names(self) -> dict[str, str]:
        """The new word for each."""
        found = dict.fromkeys(spot.value for spot in worded(self.house) if self.is_of(spot))
        return {name: f"Qx {self.key} {number}" for number, name in enumerate(found)}

    def is_of(self, spot: Spot) -> bool:
        """Whether a text stands under the key."""
        return (spot.file, spot.record.__name__, spot.key.name) == (
            self.file,
            self.record,
            self.key,
        )

    @property
    def files(self) -> Files:
        """The house's files so renamed."""
        names, files = self.names, deepcopy(composed(self.house))
        for spot in spots(self.house):
            if spot.value in names and (spot.is_words or refers_to(spot.key.field)):
                put(files[spot.file], spot.path, names[spot.value])
        return files

    @property
    def shows(self) -> tuple[RiderAsked, ...]:
        """The riders that say the new words."""
        return shows_as(lambda text: self.names.get(text, text), NAMING)


@cache
def worded(house: str) -> tuple[Spot, ...]:
    """Every text of a house that is a name or prose."""
    return tuple(spot for spot in spots(house) if spot.is_words and spot.key.name not in LANGUAGE)


def renamings(house: str) -> Iterator[Renaming]:
    """A renaming for each key that holds words."""
    kinds = dict.fromkeys(
        (spot.file, spot.record.__name__, spot.key.name) for spot in worded(house)
    )
    return (Renaming(house, *kind) for kind in kinds)


def shows_as(other: Callable[[str], str], keys: tuple[str, ...] = ()) -> tuple[RiderAsked, ...]:
    """All riders with each text as it becomes, of all keys or some."""
    return tuple(
        rider_of(
            json.dumps(with_texts(data, other, keys), ensure_ascii=False), file=file, rules=RULES
        )
        for file, data in composed_riders().items()
    )


def with_texts(
    data: Any, other: Callable[[str], str], keys: tuple[str, ...] = (), key: str = ""
) -> Any:
    """The data of a rider with its texts as they become."""
    if isinstance(data, dict):
        return {name: with_texts(part, other, keys, name) for name, part in data.items()}
    if isinstance(data, list):
        return [with_texts(part, other, keys, key) for part in data]
    return other(data) if isinstance(data, str) and (not keys or key in keys) else data


FOOT, POUND, GRAVITY = 0.3048, 0.45359237, 9.80665
OTHER_UNIT: dict[str, tuple[str, float]] = {
    "m": ("ft", 1 / FOOT),
    "mm": ("in", 12 / (1000 * FOOT)),
    "m2": ("sq ft", 1 / FOOT**2),
    "kg": ("lb", 1 / POUND),
    "t": ("lb", 1000 / POUND),
    "kg/m": ("lb/ft", FOOT / POUND),
    "kPa": ("psf", 1000 * FOOT**2 / (POUND * GRAVITY)),
    "ft": ("m", FOOT),
    "in": ("mm", 1000 * FOOT / 12),
    "sq ft": ("m2", FOOT**2),
    "lb": ("kg", POUND),
    "short ton": ("kg", 2000 * POUND),
    "lb/ft": ("kg/m", POUND / FOOT),
    "psf": ("kPa", POUND * GRAVITY / (1000 * FOOT**2)),
}
"""A unit, and the other system's with how many of it make one; NIST SP 811 (2008), Appendix B.8."""
NUMBER = r"([0-9][0-9,]*(?:\.[0-9]+)?)"
FEET_AND_INCHES = re.compile(r"([0-9]+) ft ([0-9]+(?:\.[0-9]+)?) in(?![a-z])")
FRACTION = re.compile(r"([0-9]+) ([0-9]+)/([0-9]+) in(?![a-z])")
AMOUNT = re.compile(
    NUMBER + " (" + "|".join(sorted(OTHER_UNIT, key=len, reverse=True)) + r")(?![A-Za-z0-9/·])"
)
DIGITS = 10


def in_other_units(text: str) -> str:
    """A quantity's words in the other system."""
    text = FRACTION.sub(lambda found: f"{sixteenths(found)} in", text)
    text = FEET_AND_INCHES.sub(lambda found: f"{feet(found)} ft", text)
    return AMOUNT.sub(amount_in_other, text)


def sixteenths(found: re.Match[str]) -> float:
    """Inches and a fraction of one, in inches."""
    return int(found[1]) + int(found[2]) / int(found[3])


def feet(found: re.Match[str]) -> str:
    """Feet and inches, in feet."""
    return f"{int(found[1]) + float(found[2]) / 12:.{DIGITS}f}"


def amount_in_other(found: re.Match[str]) -> str:
    """One amount in the other system."""
    unit, factor = OTHER_UNIT[found[2]]
    number = float(found[1].replace(",", "")) * factor
    return f"{number:.{DIGITS}f} {unit}"


def converted(house: str, file: str) -> Any:
    """The data of a house's file with every quantity in the other system."""
    data = deepcopy(composed(house)[file])
    for spot in spots(house):
        if spot.file == file and spot.quantities:
            put(data, spot.path, in_other_units(spot.value))
    if file == "house.yml":
        data["units"] = "imperial" if data.get("units") == "metric" else "metric"
    return data
