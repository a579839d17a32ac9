"""
The laws of a whole house: what takes something away makes no verdict better and raises nothing that
is left, free or counted.
"""

import math
import random
import re
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from builder.fit.published import fit_record
from builder.reading.nodes import spoken
from builder.reading.written import Line
from tests.facts import records_of_venue, spots
from tests.house_laws import (
    HOUSES,
    Change,
    answers,
    better,
    other,
    pack_of_files,
    pack_with,
    promises,
    raised,
    usual_answers,
    usual_promises,
)
from tests.laws import share
from tests.sweep import at, composed, paths

RELIEVING = ("hangs", "standing_loads", "obstructions", "noise_limits", "curfews", "quiet_hours")


def out_of_service() -> Iterator[Change]:
    """Every line that can be out of service, but for what weighs, draws or stands in the way."""
    for house in HOUSES:
        for file, record, _ in records_of_venue(house):
            path = record.path_in_file
            if isinstance(record, Line) and path[0] not in RELIEVING:
                yield Change(house, file, f"{path} out", put_out(path))


def put_out(path: tuple[str | int, ...]) -> Callable[[Any], None]:
    """Put the line at a path out of service."""

    def make(data: Any) -> None:
        at(data, path)["condition"] = "out of service"
        at(data, path).pop("out", None)

    return make


OUT = tuple(out_of_service())


@pytest.mark.laws
@pytest.mark.parametrize("change", share(OUT, law="house: out of service", usually=1), ids=str)
def test_a_line_out_of_service_raises_nothing_and_makes_no_verdict_better(change: Change) -> None:
    nothing_more(change)


LESS_IS_LESS = {
    "Approach": ("longest_truck", "lowest_clearance", "weight_limit"),
    "Beam": ("low_steel",),
    "Configuration": ("capacity", "wheelchair_places"),
    "Deck": ("usable_width", "usable_depth", "clear_height", "load", "point_load"),
    "Dock": ("trucks_at_once", "door_width", "door_height"),
    "Furnishing": ("count", "length"),
    "Generator": ("prime", "breaker"),
    "Hoist": ("count", "rating"),
    "Limits": ("whole_roof", "each_beam", "each_point"),
    "LimitException": ("each_beam", "each_point"),
    "LowSteel": ("height",),
    "MixPosition": ("width", "depth"),
    "MonitorPosition": ("width", "depth", "mixes"),
    "MonitorStock": ("count", "working"),
    "Network": ("wired_rate", "internet_down", "internet_up"),
    "NoiseLimit": ("level",),
    "Obstruction": ("from_height",),
    "Parking": ("count", "length"),
    "Passage": ("width", "height", "weight_limit", "floor_load"),
    "PermanentLine": ("ways", "working", "free"),
    "Place": ("width", "depth"),
    "Point": ("rating",),
    "Processor": ("inputs",),
    "Radio": ("channels", "working"),
    "Riser": ("count", "makes_up"),
    "Split": ("ways", "legs"),
    "Stock": ("count", "working"),
    "Storage": ("area",),
    "SubLine": ("count",),
    "TableRow": ("uniform",),
    "TalkbackStation": ("count", "working"),
    "Truss": ("in_all",),
    "Vehicle": ("count", "capacity"),
    "Wing": ("clear_height", "load"),
    "Zone": ("load", "point_load", "limit"),
}
"""The keys that promise less where their number is smaller, by record; the currents of power have
a law of their own in `test_power_laws.py`."""
NUMBER = re.compile(r"[0-9][0-9,]*(?:\.[0-9]+)?")


def lowered() -> Iterator[Change]:
    """Every limit, rating and count that is stated, a tenth lower."""
    for house in HOUSES:
        for spot in spots(house):
            if spot.key.name in LESS_IS_LESS.get(spot.record.__name__, ()):
                less = tenth_less(spot.value, is_whole=not spot.quantities)
                if less != spot.value:
                    what = f"{spoken(spot.path)} = {less}"
                    yield Change(house, spot.file, what, written(spot.path, less))


def tenth_less(text: str, *, is_whole: bool) -> str:
    """A number a tenth lower; a count at least one lower."""

    def less(found: re.Match[str]) -> str:
        number = float(found[0].replace(",", "")) * 0.9
        return f"{math.floor(number)}" if is_whole else f"{number:.6g}"

    return NUMBER.sub(less, text)


def written(path: tuple[str | int, ...], text: str) -> Callable[[Any], None]:
    """Write another value at a path."""

    def make(data: Any) -> None:
        at(data, path[:-1])[path[-1]] = text

    return make


LOWER = tuple(lowered())


@pytest.mark.laws
@pytest.mark.parametrize("change", share(LOWER, law="house: lower", usually=1), ids=str)
def test_a_lower_limit_rating_or_count_makes_no_verdict_better(change: Change) -> None:
    nothing_more(change)


def nothing_more(change: Change) -> None:
    """What takes something away promises no more."""
    pack = pack_with(change)
    if pack is None:
        return
    assert raised(usual_promises(change.house), promises(pack)) == []
    assert better(usual_answers(change.house), answers(fit_record(pack))) == []


SEQUENCES = {
    "chains": "the sum is the same, and each is told",
    "corners": "corners go around",
    "coverage": "bands rise",
    "hand_over": "the day goes on",
    "lines": "an address is written in order",
    "outline": "corners go around",
    "passages": "one comes after the other",
    "parts": "one comes after the other",
    "splay": "boxes from the top",
    "standing_loads": "power has a law of its own",
    "wind": "steps rise",
}
"""Lists that are a sequence, with the reason."""


def reordered() -> Iterator[Change]:
    """Every list of lines that is no sequence, backwards, and shuffled."""
    for house in HOUSES:
        for file, data in composed(house).items():
            for path in paths(data):
                lines = at(data, path)
                is_list = isinstance(lines, list) and len(lines) > 1
                if is_list and isinstance(lines[0], dict) and not is_sequence(file, path):
                    for seed in (1, 2):
                        yield Change(
                            house, file, f"{spoken(path)} shuffled {seed}", order(path, seed)
                        )


def is_sequence(file: str, path: tuple[str | int, ...]) -> bool:
    """Whether what stands at a path is in an order that means something."""
    is_address = path[-1] == "lines" and file != "lines.yml"
    return is_address or (path[-1] != "lines" and path[-1] in SEQUENCES)


def order(path: tuple[str | int, ...], seed: int) -> Callable[[Any], None]:
    """Put a list in another order."""

    def make(data: Any) -> None:
        lines = at(data, path)
        if seed == 1:
            lines.reverse()
        else:
            random.Random(seed).shuffle(lines)

    return make


ORDERS = tuple(reordered())


@pytest.mark.laws
@pytest.mark.parametrize("change", share(ORDERS, law="house: order of lines", usually=1), ids=str)
def test_the_order_of_lines_changes_no_verdict(change: Change) -> None:
    pack = pack_with(change)
    assert pack is not None
    assert other(usual_answers(change.house), answers(fit_record(pack))) == []


@pytest.mark.parametrize("house", HOUSES)
def test_the_order_of_files_changes_no_verdict(house: str) -> None:
    pack = pack_of_files(house, dict(reversed(composed(house).items())))
    assert other(usual_answers(house), answers(fit_record(pack))) == []


def test_the_laws_can_fail() -> None:
    """A house that promises more is found by each comparison."""
    change = Change("quarry", "stage.yml", "wider", written(("decks", 0, "usable_width"), "60 ft"))
    pack = pack_with(change)
    assert pack is not None
    assert "Stage width" in " ".join(better(usual_answers("quarry"), answers(fit_record(pack))))
    lifted = Change("quarry", "rigging.yml", "more", written(("limits", "whole_roof"), "20,000 lb"))
    pack = pack_with(lifted)
    assert pack is not None
    assert "rigging.roof.left" in " ".join(raised(usual_promises("quarry"), promises(pack)))


def test_the_laws_take_every_kind_of_line() -> None:
    assert len(OUT) > 350
    assert len(LOWER) > 200
    assert len(ORDERS) > 80
