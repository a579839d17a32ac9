"""Houses of several stages for the tests."""

from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from builder.files import Folder, read_folder
from builder.fit.published import fit_record
from builder.fit.records import FitPack, RiderAsked
from builder.pack import Figure, Pack, Space
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of
from builder.spaces.joining import spaces_of

ROOT = Path(__file__).parent.parent.parent
ROOMS = ROOT / "tests" / "venues" / "rooms"


@cache
def rooms() -> Folder:
    """The test venue of three spaces, one out of service."""
    return read_folder(ROOMS)


def texts_with(changes: Mapping[str, str] | None = None, **replaced: Any) -> dict[str, str]:
    """The files of that venue; ``changes`` are whole texts by path."""
    return {**rooms().texts, **(changes or {}), **replaced}


def edited(path: str, old: str, new: str) -> dict[str, str]:
    """The files of that venue with some words of one file in other words."""
    text = rooms().texts[path]
    assert old in text, (path, old)
    return {**rooms().texts, path: text.replace(old, new)}


def pack(texts: Mapping[str, str] | None = None) -> Pack:
    """The pack of a venue, as published."""
    return pack_of(venue_of(texts or rooms().texts, rooms().photos))


def in_space(whole: Pack, name: str) -> Pack:
    """One space of a pack as a house of one stage."""
    return next(own for space, own in spaces_of(whole).items() if space.name == name)


def space(whole: Pack, name: str) -> Space:
    """A space by its name."""
    return next(each for each in whole.spaces if each.name == name)


def figure(whole: Pack, name: str, key: str) -> Figure:
    """A figure of a space by its plain key."""
    return next(each for each in figures(in_space(whole, name)) if each.key == key)


def figures(whole: Pack) -> Iterator[Figure]:
    """Every figure of a pack."""
    return (each for item in whole.items() for each in item.figures)


def number(whole: Pack, name: str, key: str) -> float:
    """The number of a figure of a space. [SI]"""
    value = figure(whole, name, key).value
    assert value is not None, (name, key)
    assert value.number is not None, (name, key)
    return value.number


def record(texts: Mapping[str, str] | None = None) -> FitPack:
    """What the check reads of a venue."""
    return fit_record(pack(texts))


def asked(*riders: str) -> list[RiderAsked]:
    """Riders as the check takes them."""
    return [rider_of(text, file="rider.yml", rules=RULES) for text in riders]
