"""
The laws of the way, the floor and the day, tried on the demo and the quarry with riders that ask a
little and a little more than there is: no line out of service, no smaller opening, height or count
makes a verdict better, and the order of rider files changes none.
"""

import re
from collections.abc import Callable, Iterator
from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest
import yaml

from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack
from builder.fit.verdicts import RANK
from builder.pipeline import pack_of, venue_of
from builder.reading.problems import Refused
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.laws import share

ROOT = Path(__file__).parents[1]
HOUSES = {"demo": ROOT / "venue", "quarry": ROOT / "tests" / "venues" / "quarry"}
FILES = ("house.yml", "access.yml", "stage.yml", "lines.yml")
Data = dict[str, Any]

NEEDS = (
    "stage width, at least: {a} m",
    "stage depth, at least: {b} m",
    "clear height, at least: {c} m",
    "wing width stage left, at least: {d} m",
    "wing height stage right, at least: {d} m",
    "dock door width, at least: {e} m",
    "opening width, at least: {e} m",
    "opening height, at least: {e} m",
    "dock spaces, at least: {n}",
    "forklifts, at least: {n}",
    "truck parking, at least: {n}",
    "bus parking, at least: {n}",
    "storage area, at least: {a} m2",
    "rolling risers, at least: {n}",
    "analogue lines to the mix position, at least: {a}",
    "fibres to the mix position, at least: {n}",
    "capacity, at least: {a}",
)
SIZES = (
    {"a": 8, "b": 5, "c": 5, "d": 2, "e": 1.5, "n": 1},
    {"a": 16, "b": 9, "c": 7.2, "d": 3.8, "e": 2.4, "n": 2},
    {"a": 24, "b": 12, "c": 9, "d": 6, "e": 3, "n": 5},
)


def rider_text(size: Data, act: str) -> str:
    """A rider that asks everything in one size."""
    needs = "".join(f"  - {{what: {need.format(**size)}}}\n" for need in NEEDS)
    width, high = f"{size['e'] * 0.8:.3g}", size["c"]
    return (
        f"act: {act}\nneeds:\n{needs}"
        "trucks: {count: 1, length: 9 m, length of: whole truck, largest case:"
        f" {{width: {width} m, height: {width} m, weight: 600 kg}}}}\n"
        f"plot:\n  - {{name: Tower, width: 2 m, depth: 2 m, height: {high} m, weight: 300 kg, at:"
        " {across: 2 m SL, depth: 5 m US}}\n"
        "  - {name: Desk, on: stage left, width: 2 m, depth: 2 m, height: 2 m, at: {across: 9.9 m"
        " SL, depth: 4 m US}}\n"
        "stays on deck: 1 m\n"
    )


@cache
def texts_of(house: str) -> dict[str, str]:
    """The files of a house that these laws look at."""
    found = read_folder(HOUSES[house]).texts
    # Which drive lines a console reaches is told by the sound file, which is not read here.
    return {name: re.sub(r"\n +reaches: .*", "", found[name]) for name in FILES}


@cache
def data_of(house: str, name: str) -> Data:
    """One file of a house as data. Every value stays a text, as the reader has it."""
    return dict(yaml.load(texts_of(house)[name], Loader=yaml.BaseLoader))  # noqa: S506


def record_of(house: str, name: str = "", data: Data | None = None) -> FitPack | None:
    """What the check reads of a house with one file changed; None where the reader refuses it."""
    texts = dict(texts_of(house))
    if data is not None:
        texts[name] = yaml.safe_dump(data, sort_keys=False, allow_unicode=True)
    try:
        return fit_record(pack_of(venue_of(texts, read_folder(HOUSES[house]).photos)))
    except Refused:
        return None


def words(record: FitPack, *sizes: int) -> dict[tuple[str, str, int], str]:
    """The verdicts of acts in some sizes, by act, title and strictness, fits with and without."""
    riders = [
        rider_of(rider_text(SIZES[size], f"Act {size}"), file="a.yml", rules=RULES)
        for size in sizes
    ]
    found: dict[tuple[str, str, int], str] = {}
    for answer in fit(record, riders)["verdicts"]:
        word = "fits" if answer["verdict"].startswith("fits") else answer["verdict"]
        found[answer["act"], answer["title"] + answer["strictness"], answer["line"]] = word
    return found


@dataclass(frozen=True)
class Change:
    """A change of one file that can only take something away."""

    house: str
    file: str
    what: str
    make: Callable[[Data], None]

    def __str__(self) -> str:
        return f"{self.house} {self.file}: {self.what}"


LINES = {
    "access.yml": ("approaches", "docks", "routes", "vehicles", "parking", "storage"),
    "stage.yml": ("decks", "wings", "risers", "furnishings"),
    "lines.yml": ("lines",),
}
SMALLER = (
    *("width", "height", "door_width", "door_height", "lowest_clearance", "longest_truck"),
    *("usable_width", "usable_depth", "clear_height", "weight_limit", "load", "point_load"),
    *("area", "count", "free", "working", "trucks_at_once"),
)
"""The keys whose number may only get smaller: less room, fewer things. A deck may be too high."""


CLOSED = (("condition", "out of service"), ("terms", "not for visitors"))


def changes() -> Iterator[Change]:
    """Every line out of service or closed to visitors, every number of these keys smaller."""
    for house in HOUSES:
        for file, groups in LINES.items():
            for group in groups:
                lines = data_of(house, file).get(group, [])
                for index, line in enumerate(lines if isinstance(lines, list) else []):
                    at = (group, index)
                    yield Change(
                        house, file, f"{at} out", with_key(at, "condition", "out of service")
                    )
                    yield Change(
                        house, file, f"{at} closed", with_key(at, "terms", "not for visitors")
                    )
                    yield from smaller(house, file, at, line)
                    for number, passage in enumerate(line.get("passages", ())):
                        inner = (*at, "passages", number)
                        out = with_key(inner, "condition", "out of service")
                        yield Change(house, file, f"{inner} out", out)
                        yield from smaller(house, file, inner, passage)


def smaller(house: str, file: str, at: tuple[str | int, ...], line: Data) -> Iterator[Change]:
    """Each number of a line a fifth smaller, or one fewer."""
    for key in SMALLER:
        if file == "stage.yml" and at[0] in ("decks", "risers") and key == "height":
            continue
        amount = str(line.get(key, "")).split(" ")
        if not amount[0].replace(".", "").isdecimal():
            continue
        if len(amount) == 1:
            less = str(max(int(float(amount[0])) - 1, 0))
        else:
            less = f"{float(amount[0]) * 0.8:g} {amount[1]}"
        yield Change(house, file, f"{at} {key} {less}", with_key(at, key, less))


def with_key(at: tuple[str | int, ...], key: str, text: str) -> Callable[[Data], None]:
    """Set a key of a line."""

    def make(data: Data) -> None:
        line: Any = data
        for step in at:
            line = line[step]
        line.pop("out", None)
        line[key] = text

    return make


ALL = tuple(changes())


@cache
def usual(house: str) -> tuple[dict[tuple[str, str, int], str], ...]:
    """The verdicts in a house as it is, each act alone."""
    record = record_of(house)
    assert record is not None
    return tuple(words(record, size) for size in range(len(SIZES)))


@pytest.mark.laws
@pytest.mark.parametrize(
    "number",
    share(range(len(ALL)), law="way: nothing taken away makes more", usually=8),
)
def test_what_takes_something_away_makes_no_verdict_better(number: int) -> None:
    change = ALL[number]
    data = deepcopy(data_of(change.house, change.file))
    change.make(data)
    record = record_of(change.house, change.file, data)
    if record is None:
        return
    for size, was in enumerate(usual(change.house)):
        now = words(record, size)
        better = {
            key: (was[key], word)
            for key, word in now.items()
            if key in was and RANK[word] < RANK[was[key]]
        }
        assert better == {}, f"{change}, size {size}"


@pytest.mark.parametrize("house", sorted(HOUSES))
def test_the_order_of_rider_files_changes_no_verdict(house: str) -> None:
    record = record_of(house)
    assert record is not None
    first, *others = [words(record, *order) for order in permutations(range(len(SIZES)))]
    assert all(other == first for other in others)


@pytest.mark.parametrize("house", sorted(HOUSES))
def test_the_riders_meet_fits_and_shortages(house: str) -> None:
    """The laws would say nothing of a rider whose every line is asked."""
    met = {word for found in usual(house) for word in found.values()}
    assert {"fits", "short"} <= met
