"""
The laws of rigging, tried on the rigging of two houses and on one whose hangs cross beams: no line
out of service or on harder terms, further load, further hang or smaller limit raises what is left
or how many points can be full, nor makes the verdict on a hang better; and what a hang counts at
its worst is never below what an independent beam finds for any choice of its loads, any hoist slack
and any heights within the tolerance.

What has no end is the least that can be told: unknown is −1 at least, and no more at most.
"""

import json
import random
from collections.abc import Callable, Iterator
from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np
import pytest

from builder.department import Surroundings
from builder.departments.rigging.description import Rigging
from builder.departments.rigging.publish import publish
from builder.departments.rigging.steel.totals import whole_of
from builder.departments.sound.description import Sound
from builder.departments.sound.hanging import hung_loads
from builder.exchange import Offers
from builder.fit.interpreter import fit
from builder.fit.published import fit_record, section_record
from builder.fit.records import FitPack, Section
from builder.fit.verdicts import RANK
from builder.fit.wanted import wanted_of
from builder.formulas.gravity import STANDARD_GRAVITY_M_S2
from builder.pack import Section as PackSection
from builder.pipeline import pack_of, venue_of
from builder.reading.reader import read
from tests.departments.rigged import AGEING
from tests.fit.sample import Record, asks, rider
from tests.laws import share
from tests.sweep import composed, folder

Data = dict[str, Any]
OUT = ("points", "beams", "hoists")
BEARERS = ("points", "point_groups", "beams", "zones")
HARDER = (
    ("condition", "limited"),
    ("terms", "by arrangement"),
    ("terms", "not for visitors"),
    ("condition", "out of service"),
)
FAR = 1e9
KEPT = ("left", "alone", "full-at-once", "free")
CROSSED: Data = {
    "limits": {
        "whole_roof": "4 t",
        "each_beam": "1500 kg",
        "each_point": "800 kg",
        "spacing_at_least": "none",
        "level_within": "10 mm",
    },
    "exceptions": [{"beams": ["B1"], "each_beam": "1200 kg"}],
    "zones": [{"name": "Back", "beams": ["B1", "B2"], "limit": "2 t"}],
    "bridles_allowed": {"allowed": "yes"},
    "beams": [
        {
            "name": f"B{n}",
            "runs": "across",
            "depth": f"{n * 5} m US",
            "low_steel": [
                {"across": "9 m SR", "height": "9 m up"},
                {"across": "9 m SL", "height": "9 m up"},
            ],
        }
        for n in range(3)
    ],
    "points": [
        {"name": f"C{n}{side}", "beam": f"B{n}", "across": f"{across} m SL"}
        for n in range(3)
        for side, across in (("a", 0), ("b", 4), ("c", 8))
    ],
    "hoists": [
        {
            "name": "H",
            "count": 8,
            "rating": "500 kg",
            "weight": "30 kg",
            "headroom": "500 mm",
        }
    ],
    "hangs": [
        {
            "name": "Spine",
            "first_end": {"across": "0 m", "depth": "0 m"},
            "last_end": {"across": "0 m", "depth": "12 m US"},
            "weight": "10 kg/m",
            "stiffness": "2,000 kN·m2",
            "supports": [{"point": f"C{n}a", "hoist": "H"} for n in range(3)],
            "loads": [
                {"what": "Lights", "by": "lighting", "weight": "300 kg"},
                {"what": "Bell", "by": "scenery", "weight": "60 kg", "at": "12 m"},
            ],
        }
    ],
    "bridles": [
        {
            "name": "Ball",
            "legs": ["C0b", "C1b"],
            "apex": {"across": "4 m SL", "depth": "2 m US", "height": "6 m up"},
            "load": "40 kg",
            "by": "house",
        }
    ],
}
"""A house whose hang crosses beams, with an overhang and a bridle."""
HOUSES = ("demo", "quarry", "crossed")


@cache
def house(name: str) -> Data:
    """The rigging of a house, as data."""
    return CROSSED if name == "crossed" else dict(composed(name)["rigging.yml"])


@cache
def offers(name: str) -> Offers:
    """What the other departments of a house hang."""
    if name == "crossed":
        return Offers()
    text = folder(name).texts["sound.yml"]
    return Offers(loads=tuple(hung_loads(read(text, file="sound.yml", kind=Sound))))


def described(data: Data) -> Rigging:
    """The description that data makes."""
    return read(json.dumps(data, ensure_ascii=False), file="rigging.yml", kind=Rigging)


def section_of(name: str, data: Data) -> PackSection:
    """What the rigging of a house publishes."""
    return publish(described(data), Surroundings(offers(name), AGEING, "metric")).section


@cache
def bare_pack() -> FitPack:
    """The demo as the check reads it, for its rules."""
    there = folder("demo")
    return fit_record(pack_of(venue_of(there.texts, there.photos)))


def words(name: str, section: PackSection) -> list[str]:
    """The verdicts on hangs that ask nearly all, and a little more, of each point by itself."""
    rigging: Section = section_record(section, {}, wanted_of(()))
    record: FitPack = {**bare_pack(), "sections": [rigging]}
    found: list[str] = []
    for hang in shows(name):
        found += [each["verdict"] for each in fit(record, [rider(hang)])["verdicts"]]
    return found


@cache
def shows(name: str) -> tuple[Record, ...]:
    """A load on each point, and trusses over three of them."""
    points = [point["name"] for point in house(name)["points"]]
    singles = [a_hang((point,), kg) for point in points[::3] for kg in (150.0, 420.0, 700.0)]
    threes = [a_hang(tuple(points[at : at + 3]), 300.0) for at in range(0, len(points) - 2, 4)]
    return (*singles, *threes)


def a_hang(points: tuple[str, ...], kg: float) -> Record:
    """A show's hang on some points, 4 m apart along it, with a load beyond its end."""
    supports = [
        {
            "point": point,
            "across_m": None,
            "depth_m": None,
            "apex_m": None,
            "at_m": index * 4.0,
            "load_kg": None,
        }
        for index, point in enumerate(points)
    ]
    span_m = (len(points) - 1) * 4.0
    loads = [{"from_m": 0.0, "to_m": span_m, "kg": kg}]
    if len(points) > 1:
        loads.append({"from_m": span_m + 1, "to_m": span_m + 1, "kg": kg / 8})
    return {
        **asks("hang"),
        "sort": "hang",
        "department": "rigging",
        "supports": supports,
        "loads": loads,
        "hoists": "house",
        "hoist_kg": 0.0,
        "held": None,
    }


def promises(section: PackSection) -> dict[str, tuple[float, float]]:
    """What every figure of what is left, or how many, is at least and at most."""
    found: dict[str, tuple[float, float]] = {}
    for item in section.items:
        for figure in item.figures:
            name = figure.key[len(item.key) + 1 :]
            if name in KEPT and item.kind != "truss":
                least, most = figure.value.ends if figure.value else (None, None)
                is_told = figure.value is not None
                found[f"{item.kind} {item.name} {name}"] = (
                    -FAR if least is None else least,
                    (FAR if is_told else -FAR) if most is None else most,
                )
    return found


@dataclass(frozen=True)
class Change:
    """
    A change of a house that can only take something away. ``of_points`` where each point may carry
    less: more of them can be loaded fully then.
    """

    house: str
    what: str
    make: Callable[[Data], None]
    of_points: bool = False

    def __str__(self) -> str:
        return f"{self.house}: {self.what}"


def changes() -> Iterator[Change]:
    """Every line out of service, every limit smaller, further loads and hangs."""
    for name in HOUSES:
        data = house(name)
        for group in OUT:
            for index, _ in enumerate(data.get(group, [])):
                yield Change(name, f"{group}[{index}] out", out_of_service(group, index))
        for group in BEARERS:
            for index, _ in enumerate(data.get(group, [])):
                for key, word in HARDER:
                    yield Change(name, f"{group}[{index}] {word}", harder(group, index, key, word))
        for key in ("whole_roof", "each_beam", "each_point"):
            yield Change(name, f"limits.{key} 300 kg", smaller(key), key == "each_point")
        for index, hang in enumerate(data.get("hangs", [])):
            for at, load in enumerate(further()):
                yield Change(name, f"load {at} on {hang['name']}", loaded(index, load))
        taken = {each["point"] for hang in data.get("hangs", []) for each in hang["supports"]}
        taken |= {leg for bridle in data.get("bridles", []) for leg in bridle["legs"]}
        for point in data["points"]:
            if point["name"] not in taken:
                yield Change(name, f"a hang on {point['name']}", hung(point, data))


def out_of_service(group: str, index: int) -> Callable[[Data], None]:
    """Put a line out of service."""

    def make(data: Data) -> None:
        data[group][index]["condition"] = "out of service"
        data[group][index].pop("working", None)

    return make


def harder(group: str, index: int, key: str, word: str) -> Callable[[Data], None]:
    """Put a line in a harder state, or on harder terms."""

    def make(data: Data) -> None:
        data[group][index][key] = word

    return make


def smaller(key: str) -> Callable[[Data], None]:
    """A general limit of 300 kg."""

    def make(data: Data) -> None:
        data["limits"][key] = "300 kg"

    return make


def further() -> tuple[Data, ...]:
    """Loads at the ends and the middle of a hang, and over all of it."""
    load = {"what": "Further", "by": "house", "weight": "35 kg"}
    return (load, {**load, "at": "0.1 m"}, {**load, "at": "2.3 m"}, {**load, "weight": "120 kg"})


def loaded(index: int, load: Data) -> Callable[[Data], None]:
    """A further load on a hang."""

    def make(data: Data) -> None:
        hang = data["hangs"][index]
        hang["loads"] = [*hang.get("loads", []), load]

    return make


def hung(point: Data, house_data: Data) -> Callable[[Data], None]:
    """A further hang on a point."""
    beam = next(each for each in house_data["beams"] if each["name"] == point["beam"])
    end = {
        "across": point.get("across", beam.get("across")),
        "depth": point.get("depth", beam.get("depth")),
    }

    def make(data: Data) -> None:
        more = {
            "name": "Further",
            "first_end": end,
            "last_end": end,
            "weight_in_all": "70 kg",
            "supports": [{"point": point["name"]}],
        }
        data["hangs"] = [*data.get("hangs", []), more]

    return make


ALL = tuple(changes())


@cache
def usual(name: str) -> tuple[dict[str, tuple[float, float]], list[str]]:
    """What a house promises and answers as it is."""
    section = section_of(name, house(name))
    return promises(section), words(name, section)


@pytest.mark.laws
@pytest.mark.parametrize(
    "number", share(range(len(ALL)), law="rigging: nothing taken away leaves more", usually=8)
)
def test_what_takes_something_away_raises_nothing_and_makes_no_verdict_better(number: int) -> None:
    change = ALL[number]
    data = deepcopy(house(change.house))
    change.make(data)
    section = section_of(change.house, data)
    before, was = usual(change.house)
    raised = {
        key: (before[key], ends)
        for key, ends in promises(section).items()
        if key in before
        and not (change.of_points and key.endswith("full-at-once"))
        and any(a > b + 1e-6 for a, b in zip(ends, before[key], strict=True))
    }
    assert raised == {}, str(change)
    for index, (old, new) in enumerate(zip(was, words(change.house, section), strict=True)):
        better = RANK[plain(new)] < RANK[plain(old)]
        assert not better, f"{change}: show {index} was {old}, is {new}"


def plain(word: str) -> Any:
    """A fit, with or without a note."""
    return "fits" if word.startswith("fits") else word


STATES = 10_000


@pytest.mark.laws
@pytest.mark.parametrize(
    "seed", share(range(100), law="rigging: the worst against random states", usually=2)
)
@pytest.mark.parametrize("name", ["demo", "crossed"])
def test_no_state_of_a_hang_brings_more_than_is_counted(name: str, seed: int) -> None:
    dice = random.Random(f"{name} {seed}")
    whole = whole_of(described(house(name)), offers(name).loads)
    hangs = [
        (body, part)
        for body, part in zip(whole.bodies, whole.shares, strict=True)
        if len(body.supports_m) > 2 and not isinstance(body.hang.stiffness, str)
    ]
    tolerance = whole.rigging.limits.level_within
    tolerance_m = tolerance.m if tolerance else 0.0
    for _ in range(STATES // 100):
        body, part = dice.choice(hangs)
        loads = [each.load for each in body.hung if each.own_weight or dice.random() < 0.7]
        held = [index for index in range(len(body.supports_m)) if dice.random() < 0.9]
        one_slack = len(body.supports_m) - len(held) <= 1
        is_level = dice.random() < 0.5
        if not one_slack or (not is_level and len(held) < len(body.supports_m)):
            continue
        low_m = [0.0 if is_level else dice.uniform(-tolerance_m, tolerance_m) for _ in held]
        ei = getattr(body.hang.stiffness, "kn_m2", 2000.0)
        places = [body.supports_m[index] for index in held]
        found = beam_reactions_kg([load.as_body_load for load in loads], places, low_m, ei)
        if found is None or min(found) < 0:
            continue
        carried = dict(zip(held, found, strict=True))
        groups = [(index,) for index in held]
        groups.append(tuple(sorted(dice.sample(range(len(body.supports_m)), 2))))
        for group in groups:
            kg = sum(carried.get(index, 0.0) for index in group)
            assert kg <= part.uneven_kg(group)[0] + 0.01, (body.hang.name, group, held, low_m)


def beam_reactions_kg(
    loads: list[Any], places_m: list[float], low_m: list[float], ei_kn_m2: float
) -> list[float] | None:
    """
    Reactions of an elastic line by Macaulay's brackets, an independent way of the same beam:
    y = c0 + c1 x + sum R_i <x - a_i>³ / 6 EI − loads; y is given at each support, and forces and
    moments balance (Hibbeler, Mechanics of Materials, ch. 12, from memory). [kg]
    """
    count = len(places_m)
    if count < 2:
        return None
    ei = ei_kn_m2 * 1000 / STANDARD_GRAVITY_M_S2
    origin = min([*places_m, *(load["from_m"] for load in loads)])
    rows = np.zeros((count + 2, count + 2))
    right = np.zeros(count + 2)
    for row, at_m in enumerate(places_m):
        rows[row, count] = 1.0
        rows[row, count + 1] = at_m - origin
        for column, place_m in enumerate(places_m):
            rows[row, column] = max(at_m - place_m, 0.0) ** 3 / 6 / ei
        right[row] = -low_m[row] + sum(bracket(load, at_m) for load in loads) / ei
    rows[count, :count] = 1.0
    right[count] = sum(load["kg"] for load in loads)
    rows[count + 1, :count] = [place_m - origin for place_m in places_m]
    right[count + 1] = sum(
        load["kg"] * ((load["from_m"] + load["to_m"]) / 2 - origin) for load in loads
    )
    return [float(kg) for kg in np.linalg.solve(rows, right)[:count]]


def bracket(load: Any, at_m: float) -> float:
    """What a load bends down at a place, times EI. [kg·m³]"""
    if load["to_m"] == load["from_m"]:
        return float(load["kg"] * max(at_m - load["from_m"], 0.0) ** 3 / 6)
    per_m = load["kg"] / (load["to_m"] - load["from_m"])
    begin, end = max(at_m - load["from_m"], 0.0), max(at_m - load["to_m"], 0.0)
    return float(per_m * (begin**4 - end**4) / 24)
