"""
The laws of power, tried on the power of three houses and on riders that fit nearly everywhere and
that ask a little more than there is: no line out of service or on harder terms, further load,
further act or smaller rating makes a verdict better or raises what is free; names and orders change
none.

A standing load that is out of service draws nothing, so it is no case. Where most is left changes
which place takes which outlet, so of the counts of all places at once only the whole is compared.
Loads are placed one after the other, so one that has no place any more may leave its own to the
next: each load is compared by itself, and of several the first that comes out otherwise.
"""

import json
import random
from collections.abc import Callable, Iterator
from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.fit.published import fit_record, section_record
from builder.fit.records import FitPack, Section
from builder.fit.verdicts import RANK
from builder.fit.wanted import wanted_of
from builder.pack import Item
from builder.pack import Section as PackSection
from builder.pipeline import pack_of, venue_of
from tests.departments.powered import published
from tests.fit.sample import Record, rider
from tests.fit.test_circuits import circuits
from tests.fit.test_deep import load
from tests.laws import share
from tests.sweep import composed, folder

Data = dict[str, Any]
FEEDS = ("supplies", "generators", "services", "boards")
OUTLETS = ("outlets", "shore_power")
HARDER = (
    ("condition", "limited"),
    ("terms", "by arrangement"),
    ("terms", "not for visitors"),
)
NEVER_RAISED = ("free.", "free-least.", "free-kva", "neutral-left", "alone", "holds")
AMPERES = ("rating", "breaker", "neutral_rating")
STEPPED: Data = {
    "continuous_share": "80 %",
    "usual_power_factor": 0.9,
    "supplies": [
        {"name": "Vault", "system": "277/480 V three phase", "rating": "200 A", "breaker": "200 A"}
    ],
    "generators": [
        {
            "name": "Set",
            "system": "120/208 V three phase",
            "prime": "100 kVA",
            "rated_power_factor": 0.8,
            "altitude_derating": "none",
            "temperature_derating": "none",
        }
    ],
    "services": [
        {
            "name": "House",
            "fed_from": "Vault",
            "system": "120/208 V three phase",
            "phases": "all",
            "rating": "400 A",
            "neutral_rating": "150 A",
            "dedicated_to": "lighting",
        },
        {
            "name": "Legs",
            "fed_from": "Vault",
            "system": "120/240 V split phase",
            "phases": "L1 L2",
            "rating": "100 A",
        },
        {"name": "Tails", "fed_from": "Set", "system": "120/208 V three phase", "rating": "300 A"},
    ],
    "boards": [{"name": "Stage", "fed_from": "House", "rating": "100 A"}],
    "outlets": [
        {"place": "Stage left", "connector": "A", "count": 9, "rating": "20 A", "phases": "in turn",
         "fed_from": "Stage"},
        {"place": "Stage left", "connector": "B", "count": 3, "rating": "30 A", "phases": "L1 L2",
         "fed_from": "House"},
        {"place": "Stage right", "connector": "A", "count": 4, "rating": "20 A", "phases": "L1",
         "fed_from": "Legs"},
    ],
    "standing_loads": [
        {"what": "Lamps", "on": "Stage", "draws": "30 A", "phases": "L2", "third_harmonic": "20 %"},
        {"what": "Heat", "on": "Vault", "draws": "40 kW", "phases": "all"},
    ],
}  # fmt: skip
"""A house behind transformers, with a small neutral and a generator."""
SHOWS = {
    "little": (
        load(32.0),
        load(16.0, use="lighting", system="230/400 V three phase"),
        circuits(2, 10.0),
        circuits(1, 16.0, connector="A"),
    ),
    "more": (
        load(80.0),
        load(120.0, use="lighting"),
        load(60.0, use="video", system="120/208 V three phase"),
        circuits(8, 16.0),
        circuits(5, 12.0, system="208 V single phase"),
        circuits(4, 0.0),
    ),
}


@cache
def house(name: str) -> Data:
    """The power of a house, as data."""
    return STEPPED if name == "stepped" else dict(composed(name)["power.yml"])


@cache
def bare_pack() -> FitPack:
    """The demo as the check reads it: its rules, and its stage, which names places."""
    there = folder("demo")
    return fit_record(pack_of(venue_of(there.texts, there.photos)))


def section_of(data: Data) -> PackSection:
    """What the power of a house publishes."""
    return published(json.dumps(data, ensure_ascii=False)).section


def record_of(section: PackSection) -> FitPack:
    """What the check reads, with this power."""
    bare = bare_pack()
    power: Section = section_record(section, {}, wanted_of(()))
    others = [each for each in bare["sections"] if each["key"] == "stage"]
    return {**bare, "sections": [*others, power]}


def words(data: Data, *shows: tuple[Record, ...]) -> list[str]:
    """The verdicts on the loads of some shows in a house, in order."""
    return words_on(record_of(section_of(data)), *shows)


def words_on(record: FitPack, *shows: tuple[Record, ...]) -> list[str]:
    """The same on what the check reads."""
    riders: Any = [rider(*loads, act=f"Act {index}") for index, loads in enumerate(shows)]
    return [found["verdict"] for found in fit(record, riders)["verdicts"]]


def promises(section: PackSection) -> dict[str, tuple[float, float]]:
    """What every figure of what is left, or how many, is at least and at most; −1 for unknown."""
    found: dict[str, tuple[float, float]] = {}
    for item in section.items:
        for figure in item.figures:
            name = figure.key[len(item.key) + 1 :]
            is_whole = item.kind == "available-in-all"
            if is_whole or name.startswith(NEVER_RAISED):
                least, most = figure.value.ends if figure.value else (None, None)
                found[f"{told(item)}.{name}"] = (
                    -1.0 if least is None else least,
                    -1.0 if most is None else most,
                )
    return found


def told(item: Item) -> str:
    """An item by what no change of its line's place changes."""
    return f"{item.kind} {item.name}"


@dataclass(frozen=True)
class Change:
    """
    A change of a house that can only take something away. ``of_outlets`` where outlets get smaller:
    more of them can be loaded fully then.
    """

    house: str
    what: str
    make: Callable[[Data], None]
    of_outlets: bool = False

    def __str__(self) -> str:
        return f"{self.house}: {self.what}"


def changes() -> Iterator[Change]:
    """Every line out of service, every number of ampere smaller, a further load on everything."""
    for name in ("demo", "quarry", "stepped"):
        data = house(name)
        for group in (*FEEDS, *OUTLETS):
            lines = data.get(group, [])
            for index, line in enumerate(lines if isinstance(lines, list) else []):
                yield Change(name, f"{group}[{index}] out", out_of_service(group, index))
                for key, word in HARDER:
                    yield Change(name, f"{group}[{index}] {word}", harder(group, index, key, word))
                yield from smaller(name, group, index, line)
                if group in FEEDS:
                    yield from loaded(name, line["name"])


def out_of_service(group: str, index: int) -> Callable[[Data], None]:
    """Put a line out of service."""

    def make(data: Data) -> None:
        data[group][index]["condition"] = "out of service"
        data[group][index].pop("out", None)

    return make


def harder(group: str, index: int, key: str, word: str) -> Callable[[Data], None]:
    """Put a line in a harder state, or on harder terms than it has."""

    def make(data: Data) -> None:
        line = data[group][index]
        if line.get("condition") != "out of service" and line.get("terms") != "not for visitors":
            line[key] = word

    return make


def smaller(name: str, group: str, index: int, line: Data) -> Iterator[Change]:
    """
    Each of a line's currents, its transformer and its machine by a fifth smaller.

    Not of what a load of unknown size hangs on: a smaller breaker there says that it draws less.
    """
    loads = house(name).get("standing_loads", [])
    if any(each["on"] == line.get("name") and each["draws"] == "unknown" for each in loads):
        return
    for key in (*AMPERES, "transformer", "prime"):
        amount = str(line.get(key, "")).split(" ")
        if len(amount) == 2 and amount[0].replace(".", "").isdecimal():
            less = f"{float(amount[0]) * 0.8:g} {amount[1]}"

            def make(data: Data, key: str = key, less: str = less) -> None:
                data[group][index][key] = less

            yield Change(name, f"{group}[{index}].{key} {less}", make, group in OUTLETS)


LOADS: tuple[Data, ...] = (
    {"draws": "12 A", "phases": "L1", "power_factor": 1, "third_harmonic": "30 %"},
    {"draws": "3 kW", "phases": "L2", "power_factor": 0.6},
    {"draws": "9 kVA", "power_factor": 0.8, "third_harmonic": "40 %"},
    {"draws": "unknown"},
)


def loaded(name: str, feed: str) -> Iterator[Change]:
    """A further load on something."""
    for number, more in enumerate(LOADS):

        def make(data: Data, more: Data = more) -> None:
            lines = [
                *data.get("standing_loads", []),
                {"what": "A further load", "on": feed, **more},
            ]
            data["standing_loads"] = lines

        yield Change(name, f"load {number} on {feed}", make)


def changed(change: Change) -> Data | None:
    """The house with the change; None where a load asks a phase that is not there."""
    data = deepcopy(house(change.house))
    change.make(data)
    try:
        section_of(data)
    except AssertionError:
        raise
    except Exception as wrong:  # a refusal is no case: nothing is published then
        if type(wrong).__name__ != "Refused":
            raise
        return None
    return data


ALL = tuple(changes())


@pytest.mark.laws
@pytest.mark.parametrize(
    "number", share(range(len(ALL)), law="power: nothing taken away makes more", usually=10)
)
def test_what_takes_something_away_raises_nothing_and_makes_no_verdict_better(number: int) -> None:
    change = ALL[number]
    less = changed(change)
    if less is None:
        return
    before, after = usual_promises(change.house), promises(section_of(less))
    raised = {
        key: (before[key], ends)
        for key, ends in after.items()
        if key in before
        and not (change.of_outlets and key.endswith(("alone", "at-once", "holds")))
        and any(a > b + 1e-6 for a, b in zip(ends, before[key], strict=True))
    }
    assert raised == {}, str(change)
    record = record_of(section_of(less))
    for shown in judged():
        was, now = usual_words(change.house)[shown], words_on(record, judged()[shown])
        assert is_no_better(was, now), f"{change}, {shown}: {was} became {now}"


@cache
def judged() -> dict[str, tuple[Record, ...]]:
    """Each show as a whole, and each of its loads by itself."""
    found = dict(SHOWS)
    for name, show in SHOWS.items():
        found |= {f"{name} {index}": (one,) for index, one in enumerate(show)}
    return found


@cache
def usual_words(name: str) -> dict[str, list[str]]:
    """The verdicts on all of these in a house as it is."""
    record = record_of(section_of(house(name)))
    return {shown: words_on(record, show) for shown, show in judged().items()}


@cache
def usual_promises(name: str) -> dict[str, tuple[float, float]]:
    """What a house promises as it is."""
    return promises(section_of(house(name)))


def is_no_better(was: list[str], now: list[str]) -> bool:
    """Whether the first verdict that differs is graver, or none differs."""
    for before, after in zip(was, now, strict=True):
        if plain(before) != plain(after):
            return RANK[after] > RANK[plain(before)]
    return True


def plain(word: str) -> str:
    """A fit, with or without a note: a note that is gone is no better verdict."""
    return "fits" if word.startswith("fits") else word


HOUSES = ("demo", "quarry", "stepped")


@pytest.mark.parametrize("name", HOUSES)
def test_a_further_act_makes_no_verdict_better(name: str) -> None:
    data = house(name)
    for first, second in (("little", "more"), ("more", "little"), ("more", "more")):
        alone = words(data, SHOWS[first])
        beside = words(data, SHOWS[first], SHOWS[second])[: len(alone)]
        behind = words(data, SHOWS[second], SHOWS[first])[len(SHOWS[second]) :][: len(alone)]
        assert is_no_better(alone, beside)
        assert is_no_better(alone, behind)


@pytest.mark.parametrize("name", HOUSES)
def test_acts_that_all_fit_in_one_order_fit_in_the_other(name: str) -> None:
    one = words(house(name), SHOWS["little"], SHOWS["more"])
    other = words(house(name), SHOWS["more"], SHOWS["little"])
    assert all(plain(word) == "fits" for word in one) == all(
        plain(word) == "fits" for word in other
    )


@pytest.mark.parametrize("name", HOUSES)
def test_names_change_no_verdict(name: str) -> None:
    data, names = house(name), {}
    for group in FEEDS:
        for index, line in enumerate(data.get(group, [])):
            names[line["name"]] = f"Qx {group[:2]} {index}"
    for index, line in enumerate(data.get("outlets", [])):
        names.setdefault(line["place"], f"Qx place {index}")
        names.setdefault(line["connector"], f"Qx plug {index}")
    renamed = renamed_in(data, names)
    for show in SHOWS.values():
        assert words(renamed, renamed_in(show, names)) == words(data, show)
    before = {key: ends for key, ends in promises(section_of(data)).items() if "free" in key}
    after = promises(section_of(renamed))
    assert sorted(before.values()) == sorted(ends for key, ends in after.items() if "free" in key)


def renamed_in(data: Any, names: dict[str, str]) -> Any:
    """The data with every text that is a name changed."""
    if isinstance(data, dict):
        return {key: renamed_in(each, names) for key, each in data.items()}
    if isinstance(data, list | tuple):
        return [renamed_in(each, names) for each in data]
    return names.get(data, data) if isinstance(data, str) else data


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(range(60), law="power: order of lines", usually=3))
def test_the_order_of_lines_changes_no_verdict_and_nothing_that_is_free(seed: int) -> None:
    name, dice = HOUSES[seed % len(HOUSES)], random.Random(seed)
    data = house(name)
    shuffled = deepcopy(data)
    for group in (*FEEDS, *OUTLETS, "standing_loads"):
        if isinstance(shuffled.get(group), list):
            dice.shuffle(shuffled[group])
    before, after = promises(section_of(data)), promises(section_of(shuffled))
    assert before.keys() == after.keys()
    for key, ends in before.items():
        assert after[key] == pytest.approx(ends, abs=1e-6), key
    for show in SHOWS.values():
        first, second = words(data, show), words(shuffled, show)
        assert [plain(word) for word in first] == [plain(word) for word in second]
