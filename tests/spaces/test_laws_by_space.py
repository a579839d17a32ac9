"""
Laws of a house of several stages: each space is answered as a house of its own, a space less
changes nothing elsewhere but what is shared, and knowing less in one promises no more in another.
"""

import json
from collections.abc import Iterator, Mapping
from functools import cache
from itertools import permutations
from typing import Any

import pytest
import yaml

from builder.departments.house.description import House
from builder.files import Folder, read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.verdicts import RANK
from builder.pack import Item, Pack
from builder.pipeline import pack_of, venue_of
from builder.reading.written import InSpaces
from tests.laws import share
from tests.spaces.houses import ROOT, asked, edited, in_space, pack, rooms

VENUES = {
    "demo": ROOT / "venue",
    "quarry": ROOT / "tests" / "venues" / "quarry",
}
RIDERS = sorted((ROOT / "tests" / "riders").glob("*.yml"))
NOT_OF_A_SPACE = {"house.yml", "log.yml"}
HOUSE = "house.yml"


@cache
def folder(venue: str) -> Folder:
    """The files of a test venue."""
    return read_folder(VENUES[venue])


@cache
def house(venue: str) -> dict[str, Any]:
    """What a house says of itself, as text throughout."""
    said: dict[str, Any] = yaml.load(folder(venue).texts[HOUSE], Loader=yaml.BaseLoader)  # noqa: S506
    return said


def by_space() -> set[str]:
    """The lists of ``house.yml`` whose lines may be of one space."""
    return {
        key
        for key in House.model_fields
        if any(issubclass(each, InSpaces) for each in records(House.model_fields[key].annotation))
    }


def records(annotation: Any) -> Iterator[type]:
    """The classes within an annotation."""
    if isinstance(annotation, type):
        yield annotation
    for part in getattr(annotation, "__args__", ()):
        yield from records(part)


def lines(venue: str, key: str, space: str) -> list[dict[str, Any]]:
    """The lines of a list of a house, as those of a space where it is named."""
    said = house(venue).get(key, [])
    found = said if isinstance(said, list) else []
    return [{**line, "spaces": [space]} if space else line for line in found]


def house_of(base: str, spaces: Mapping[str, str]) -> str:
    """
    A house with what one house says of all, and with the lines of each of its spaces: venues by the
    name of the space. An empty name makes it a house of one stage.
    """
    said = {key: value for key, value in house(base).items() if key not in by_space()}
    for key in by_space():
        found = [line for name, venue in spaces.items() for line in lines(venue, key, name)]
        said |= {key: found} if found else {}
    # What is hired names its sheet among the documents of its own house.
    said["documents"] = [
        line for venue in {base, *spaces.values()} for line in lines(venue, "documents", "")
    ]
    if "" not in spaces:
        said["spaces"] = [{"name": name} for name in spaces]
    return json.dumps(said)


def own_files(venue: str, within: str) -> dict[str, str]:
    """The files of a venue but for those of the house, in a folder."""
    return {
        f"{within}{path}": text
        for path, text in folder(venue).texts.items()
        if path not in NOT_OF_A_SPACE
    }


@cache
def together(one: str, other: str) -> Pack:
    """Two venues under one roof."""
    texts = {HOUSE: house_of(one, {"North": one, "South": other})}
    texts |= own_files(one, "spaces/north/") | own_files(other, "spaces/south/")
    return pack_of(venue_of(texts, {**folder(one).photos, **folder(other).photos}))


@cache
def alone(base: str, venue: str) -> Pack:
    """A venue by itself, with what another says of the house."""
    texts = {HOUSE: house_of(base, {"": venue}), **own_files(venue, "")}
    return pack_of(venue_of(texts, {**folder(base).photos, **folder(venue).photos}))


PAIRS = list(permutations(VENUES, 2))


@pytest.mark.laws
@pytest.mark.parametrize(
    ("one", "other"), share(PAIRS, law="two venues under one roof are two houses", usually=1)
)
def test_each_space_is_described_and_answered_as_a_house_of_its_own(one: str, other: str) -> None:
    both = together(one, other)
    for name, venue in (("North", one), ("South", other)):
        own, by_itself = in_space(both, name), alone(one, venue)
        for section in own.sections:
            if section.key != "house":
                before = by_itself.section(section.key)
                assert before is not None
                assert [said(each) for each in section.items] == [
                    said(each) for each in before.items
                ]
        for path in share(RIDERS, law=f"riders in {one} beside {other}", usually=2):
            text = path.read_text("utf-8")
            inside = fit(fit_record(both), asked(f"space: {name}\n{text}"))
            outside = fit(fit_record(by_itself), asked(text))
            assert answers(inside) == answers(outside), (path.name, name)


def said(item: Item) -> object:
    """What a line says and what is worked out of it, wherever it was written."""
    return (
        item.key,
        item.name,
        item.condition,
        tuple((fact.key, fact.standing, fact.value) for fact in item.facts),
        tuple((each.key, each.value, each.missing) for each in item.figures),
    )


def answers(result: Any) -> list[tuple[str, str, list[str]]]:
    """What each need of a show is answered."""
    return [(each["title"], each["verdict"], each["margin"]) for each in result["verdicts"]]


# A space less, where a supply is shared.


@pytest.mark.parametrize("gone", ["Great hall", "Studio B", "Yard"])
def test_a_space_less_changes_elsewhere_only_what_is_shared(gone: str) -> None:
    whole = pack()
    key = next(space.key for space in whole.spaces if space.name == gone)
    less = pack(without(gone, key))
    for space in less.spaces:
        before, after = (in_space(each, space.name) for each in (whole, less))
        for section in after.sections:
            old = {item.key: item for item in (before.section(section.key) or section).items}
            for item in section.items:
                if section.key in ("house", "power"):
                    beside = item.place is not None and "/" not in item.place.file
                    assert beside or item.key in old, (space.name, item.key)
                else:
                    assert said(old[item.key]) == said(item), (space.name, item.key)


def without(name: str, key: str) -> dict[str, str]:
    """The test venue without one of its spaces."""
    texts = {
        path: text for path, text in rooms().texts.items() if not path.startswith(f"spaces/{key}/")
    }
    kept = [
        line
        for line in texts[HOUSE].splitlines()
        if f"name: {name}," not in line and f"spaces: [{name}]" not in line
    ]
    return {**texts, HOUSE: "\n".join(kept)}


# Knowing less of one space promises no more in another.

STUDIO = "spaces/studio-b/power.yml"
LESS = [
    ("draws: 9 kW", "draws: unknown"),
    ("draws: 9 kW", "draws: about 9 kW"),
    ("draws: 9 kW", "draws: up to 9 kW"),
    ("draws: 9 kW", "draws: at least 9 kW"),
    ("draws: 9 kW", "draws: 8 to 10 kW"),
    ("draws: 9 kW", "draws: {disputed: [{says: 9 kW, by: a}, {says: 12 kW, by: b}]}"),
    ("power_factor: 1.0", "power_factor: unknown"),
    ("power_factor: 1.0", "power_factor: 0.8 to 1"),
    ("draws: 9 kW, phases: all", "draws: 9 kW, phases: unknown"),
    ("draws: 9 kW, phases: all", "draws: 9 kW"),
    ("rating: 32 A, breaker: 32 A", "rating: unknown, breaker: unknown"),
    ("what: Studio dimmers,", "what: Studio dimmers, condition: unknown,"),
]
AMPERES = range(20, 72, 4)


def power_in_the_hall(texts: Mapping[str, str]) -> list[int]:
    """How good the answers to loads of several sizes are in the hall; less is better."""
    loads = [
        "act: A\nspace: Great hall\n"
        f"power: [{{for: lighting, current: {size} A, system: 230/400 V three phase}}]"
        for size in AMPERES
    ]
    record = fit_record(pack(texts))
    return [RANK[fit(record, asked(load))["verdicts"][0]["verdict"]] for load in loads]


@pytest.mark.parametrize(("old", "new"), LESS)
def test_knowing_less_in_one_space_promises_no_more_in_another(old: str, new: str) -> None:
    before, after = power_in_the_hall(rooms().texts), power_in_the_hall(edited(STUDIO, old, new))
    assert min(before) < max(before)
    for size, was, now in zip(AMPERES, before, after, strict=True):
        assert now >= min(was, RANK["ask"]), (size, was, now)


def test_a_space_of_which_no_power_is_known_promises_no_more_in_another() -> None:
    text = rooms().texts[STUDIO]
    none_known = text[: text.index("standing_loads:")] + "standing_loads: unknown\n"
    before = power_in_the_hall(rooms().texts)
    after = power_in_the_hall({**rooms().texts, STUDIO: none_known})
    for was, now in zip(before, after, strict=True):
        assert now >= min(was, RANK["ask"])
