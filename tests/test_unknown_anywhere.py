"""
`unknown` is read wherever a house may not know: everywhere but at names and at what tells two
things apart. Where it is still refused is counted, and the count only goes down.
"""

import json
from collections.abc import Iterator
from copy import deepcopy
from dataclasses import dataclass
from functools import cache

import pytest
from pydantic.fields import FieldInfo

from builder.files import read_folder
from builder.pack import Fact, Section, Standing
from builder.pipeline import pack_of, venue_of
from builder.reading.fields import mark_of
from builder.reading.maybe import OrAbsent, is_numeric
from builder.reading.nodes import compose, spoken
from builder.reading.problems import Refused
from builder.reading.reader import read
from tests.knowing_less import Less, pack_with, wrong_figures, wrong_verdicts
from tests.laws import share
from tests.sweep import DESCRIPTIONS, HOUSES, ROOT, Path_, at, field_at, is_prose, paths

IDENTIFIES = {
    ("house.yml", "addresses.use"): "tells two addresses apart",
    ("house.yml", "effects.name"): "is the name of the effect",
    ("house.yml", "language"): "says how to read the files",
    ("house.yml", "units"): "says how figures are shown, which is the house's to choose",
    ("house.yml", "revision"): "is the state of the description itself",
    ("house.yml", "revision.on"): "is the state of the description itself",
    ("access.yml", "parking.what"): "tells two lines of parking apart",
    ("house.yml", "stale_after_days"): "is the house's own choice",
    ("stage.yml", "distances.from"): "tells two distances apart",
    ("stage.yml", "distances.to"): "tells two distances apart",
    ("stage.yml", "wings.name"): "tells two wings apart",
}
"""Keys that hold no name and yet tell what a line is."""
WHY_REFUSED = {
    (file, key): why
    for line in (ROOT / "tests" / "unknown_still_refused.txt").read_text("utf-8").splitlines()
    for file, key, why in [line.split(maxsplit=2)]
}
"""Keys at some place of which `unknown` is refused, by file, each with why."""
STILL_REFUSED = frozenset(WHY_REFUSED)
"""The same keys. The list only grows shorter."""


@dataclass(frozen=True, slots=True)
class Spot:
    """A place of a venue that holds no name."""

    venue: str
    file: str
    path: Path_

    def __str__(self) -> str:
        return f"{self.venue}/{self.file} {spoken(self.path)}"

    @property
    def key(self) -> tuple[str, str]:
        """The file, and the keys that lead there."""
        return self.file, ".".join(step for step in self.path if isinstance(step, str))


@cache
def texts(venue: str) -> dict[str, str]:
    """The files of a venue that departments read."""
    there = read_folder(HOUSES[venue]).texts
    return {file: text for file, text in there.items() if file in DESCRIPTIONS}


def spots() -> Iterator[Spot]:
    """Every place of every venue that holds no name and tells no two things apart."""
    for venue in HOUSES:
        for file, text in texts(venue).items():
            for path in paths(compose(text, file).data):
                spot = Spot(venue, file, path)
                field = field_at(DESCRIPTIONS[file], path)
                is_key = isinstance(path[-1], str) and field is not None and not is_prose(field)
                if is_key and spot.key not in IDENTIFIES:
                    yield spot


def with_unknown(spot: Spot) -> str:
    """The file's text with `unknown` at the place."""
    data = deepcopy(compose(texts(spot.venue)[spot.file], spot.file).data)
    at(data, spot.path[:-1])[spot.path[-1]] = "unknown"
    return json.dumps(data, indent=1, ensure_ascii=False)


def power_with_unknown_depth(across: str = "4 m SR") -> str:
    """The demo's power with the first service somewhere on one line."""
    data = deepcopy(compose(texts("demo")["power.yml"], "power.yml").data)
    data["services"][0]["at"] = {"across": across, "depth": "unknown"}
    return json.dumps(data, indent=1, ensure_ascii=False)


def photos() -> dict[str, bytes]:
    """The photos of the demo."""
    return dict(read_folder(HOUSES["demo"]).photos)


def every_fact(section: Section) -> Iterator[Fact]:
    """The facts of the items of a section."""

    for item in section.items:
        yield from item.facts


def is_refused(spot: Spot) -> bool:
    """Whether the file is refused where nobody knows what stands at the place."""
    try:
        read(with_unknown(spot), file=spot.file, kind=DESCRIPTIONS[spot.file])
    except Refused:
        return True
    return False


SPOTS = tuple(spots())
KNOWN_LESS = tuple(spot for spot in SPOTS if spot.key not in STILL_REFUSED)


@pytest.mark.laws
@pytest.mark.parametrize("spot", share(KNOWN_LESS, law="unknown anywhere", usually=60), ids=str)
def test_unknown_is_read_wherever_a_house_may_not_know(spot: Spot) -> None:
    assert not is_refused(spot)


def test_no_key_stays_on_the_list_of_those_that_refuse_it() -> None:
    drawn = share(sorted(STILL_REFUSED), law="unknown still refused", usually=12)
    for key in drawn:
        assert any(is_refused(spot) for spot in SPOTS if spot.key == key), key


def is_number(field: FieldInfo) -> bool:
    """Whether a key holds a number that may be unknown."""
    return mark_of(field, OrAbsent) is not None and is_numeric(field.annotation)


def left_out() -> Iterator[Less]:
    """
    Each key that stands in the demo or the quarry, once: one that can be left out, or that takes
    `unknown` and holds no number. Numbers have a law of their own, in all their forms.
    """
    seen = set()
    for spot in KNOWN_LESS:
        field = field_at(DESCRIPTIONS[spot.file], spot.path)
        known = field is None or is_number(field)
        if spot.venue in ("demo", "quarry") and not known and spot.key not in seen:
            seen.add(spot.key)
            yield Less(spot.venue, spot.file, spot.path, "unknown")


@pytest.mark.laws
@pytest.mark.parametrize("less", share(left_out(), law="unknown left out", usually=3), ids=str)
def test_what_counts_as_left_out_is_published_as_unknown_and_promises_no_more(less: Less) -> None:
    try:
        pack = pack_with(less)
    except Refused as refused:
        # Lines that name something of a list need the list.
        assert {problem.code for problem in refused.problems} == {"reference-unknown"}  # noqa: PT017
        return
    better = [told for told in wrong_verdicts(less, pack) if promises_more(told)]
    assert better == []
    assert [told for told in wrong_figures(less, pack) if ": gone, was " not in told] == []


def promises_more(told: str) -> bool:
    """Whether a verdict that changed is now better: `...: ask -> fits`."""
    before, after = told.rpartition(": ")[2].split(" -> ")
    order = ("short", "ask", "fits, with a note", "fits")
    return order.index(after) > order.index(before)


def test_a_position_with_an_unknown_part_is_unknown_and_tells_what_is_known() -> None:
    pack = pack_of(venue_of({**texts("demo"), "power.yml": power_with_unknown_depth()}, photos()))
    facts = {fact.key: fact for section in pack.sections for fact in every_fact(section)}
    at_supply = next(key for key in facts if key.endswith(".at") and "power.service." in key)
    assert facts[at_supply].standing is Standing.UNKNOWN
    assert facts[f"{at_supply}.depth"].standing is Standing.UNKNOWN
    across = facts[f"{at_supply}.across"].value
    assert across is not None
    assert across.text.endswith(("SL", "SR"))


def test_what_is_wrong_within_such_a_position_is_still_refused() -> None:
    text = power_with_unknown_depth(across="two bananas")
    with pytest.raises(Refused) as wrong:
        read(text, file="power.yml", kind=DESCRIPTIONS["power.yml"])
    assert [problem.path for problem in wrong.value.problems] == ["services[1].at.across"]
