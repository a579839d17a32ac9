"""
A list of which a house knows a part: one more line that leaves open how many there are and of which
kind. No show is then short of such things, and none is told that they are there.
"""

import json
from collections.abc import Mapping
from copy import deepcopy
from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pack import Pack
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.knowing_less import usual_pack
from tests.sweep import composed, folder

MANY = 9_000
"""More than any house has."""
ON_BOARD = {"place": "Rope Street dock", "fed_from": "Dock shore board"}
OTHERS: Mapping[tuple[str, str], Mapping[str, Any]] = {
    ("rigging.yml", "hoists"): {"rating": "unknown", "headroom": "unknown", "weight": "unknown"},
    ("stage.yml", "furnishings"): {"kind": "unknown"},
    ("stage.yml", "risers"): {},
    ("sound.yml", "stock"): {"kind": "unknown"},
    ("sound.yml", "monitors"): {"kind": "unknown"},
    ("access.yml", "vehicles"): {"kind": "unknown"},
    ("rooms.yml", "dressing_rooms"): {"persons": "unknown"},
}
SHORT_OF = {
    "hoists": {"house hoists"},
    "furnishings": {
        "legs",
        "borders",
        "dance floor rolls",
        "carpets",
        "pianos",
        "steps to the deck",
    },
    "risers": {"rolling risers"},
    "stock": {"direct boxes", "microphone stands"},
    "monitors": {"drum fills"},
    "vehicles": {"forklifts", "pallet trucks", "access platforms"},
    "dressing_rooms": {"dressing rooms", "persons in dressing rooms"},
}
"""What a show of everything is short of in the demo, by the list that tells it."""


def pack_with_others(file: str, key: str) -> Pack:
    """The demo with one more line in a list, of which nobody knows how many there are."""
    data = deepcopy(composed("demo")[file])
    data[key].append({"name": "Others", "count": "unknown", **OTHERS[file, key]})
    there = folder("demo")
    texts = {**there.texts, file: json.dumps(data, indent=1, ensure_ascii=False)}
    return pack_of(venue_of(texts, there.photos))


def verdicts(pack: Pack, names: set[str], count: int) -> dict[str, str]:
    """What a show that wants so many of each is told, by what it wants."""
    needs = "".join(f"  - {{what: {name}, at least: {count}}}\n" for name in sorted(names))
    rider = rider_of(f"act: Many\nneeds:\n{needs}", file="many.yml", rules=RULES)
    found = fit(fit_record(pack), [rider])["verdicts"]
    return {RULES_BY_TITLE[each["title"]]: each["verdict"] for each in found}


RULES_BY_TITLE = {rule.title: key for key, rule in RULES.items()}


@pytest.mark.parametrize(("file", "key"), OTHERS)
def test_where_nobody_knows_how_many_more_there_are_no_show_is_short_of_them(
    file: str, key: str
) -> None:
    wanted = SHORT_OF[key]
    assert set(verdicts(usual_pack("demo"), wanted, MANY).values()) == {"short"}
    assert set(verdicts(pack_with_others(file, key), wanted, MANY).values()) == {"ask"}


@pytest.mark.parametrize(("file", "key"), OTHERS)
def test_what_is_there_for_certain_is_still_told(file: str, key: str) -> None:
    before = verdicts(usual_pack("demo"), SHORT_OF[key], 1)
    after = verdicts(pack_with_others(file, key), SHORT_OF[key], 1)
    fit_before = {name for name, verdict in before.items() if verdict.startswith("fits")}
    assert {name for name in fit_before if not after[name].startswith("fits")} == set()
