"""
Mistakes that real houses published, and further ones: each is one small edit of the demo, and what
the check then tells is read whole, with the line it points at.
"""

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import pytest
import yaml

from builder.files import read_folder
from builder.pack import Pack, Standing
from builder.pipeline import pack_of, venue_of
from builder.reading.problems import Refused
from builder.stock.comparison import compare
from tests.laws import share

ROOT = Path(__file__).parent.parent
LISTED = yaml.safe_load((ROOT / "tests" / "mistakes.yml").read_text(encoding="utf-8"))
NEEDS = {
    "house": ["house"],
    "stage": ["house", "stage"],
    "access": ["house", "stage", "access"],
    "rigging": ["house", "stage", "rigging"],
    "sound": ["house", "stage", "rigging", "sound"],
    "power": ["house", "stage", "power"],
    "lines": ["house", "stage", "rigging", "sound", "lines"],
}
"""The files that are read for each department: the others have nothing to do with it."""
Texts = Mapping[str, str]


class Told(NamedTuple):
    """A problem or finding: its file, its line there, and its whole text."""

    file: str
    line: int
    text: str


@cache
def demo() -> Texts:
    """The demo's files; the audience is left out, for its maps take long and tell nothing here."""
    texts = dict(read_folder(ROOT / "venue").texts)
    before, rest = texts["sound.yml"].split("\naudience:", 1)
    texts["sound.yml"] = f"{before}\nmonitor_position:{rest.split('monitor_position:', 1)[1]}"
    return texts


def edited(mistake: Mapping[str, Any]) -> dict[str, str]:
    """The files that a mistake is looked at in, with its edits."""
    texts = {f"{key}.yml": demo()[f"{key}.yml"] for key in NEEDS[mistake["looks_at"]]}
    for edit in mistake["edits"]:
        assert edit["was"] in texts[edit["file"]], "the demo no longer says this"
        texts[edit["file"]] = texts[edit["file"]].replace(edit["was"], edit["becomes"], 1)
    return texts


@cache
def known(looks_at: str) -> frozenset[tuple[str, str]]:
    """What is told of the demo as it is."""
    texts = edited({"looks_at": looks_at, "edits": ()})
    return frozenset((told.file, told.text) for told in all_told(texts))


def all_told(texts: Texts) -> list[Told]:
    """Every problem, or every finding, of some files."""
    try:
        pack = pack_of(venue_of(texts, read_folder(ROOT / "venue").photos))
    except Refused as refused:
        return [
            Told(problem.where.file, problem.where.line, str(problem).split(" ", 1)[1])
            for problem in refused.problems
        ]
    return [
        Told(
            finding.place.file if finding.place else "",
            finding.place.line if finding.place else 0,
            f"{finding.level.value}: {finding.sentence} [{finding.code}]",
        )
        for finding in pack.findings
    ]


@pytest.mark.laws
@pytest.mark.parametrize(
    "mistake",
    share([*LISTED["published"], *LISTED["further"]], law="mistakes are told", usually=40),
    ids=lambda mistake: str(mistake["what"]),
)
def test_a_mistake_is_told_with_its_line(mistake: Mapping[str, Any]) -> None:
    texts = edited(mistake)
    before = known(mistake["looks_at"])
    new = [told for told in all_told(texts) if (told.file, told.text) not in before]
    assert [told.text for told in new] == [told["text"] for told in mistake["told"]]
    for told, expected in zip(new, mistake["told"], strict=True):
        assert told.file == expected["file"]
        assert expected["line"] in texts[told.file].splitlines()[told.line - 1]


def test_no_mistake_is_listed_without_being_told() -> None:
    assert all(mistake["told"] for mistake in (*LISTED["published"], *LISTED["further"]))


def pack(texts: Texts) -> Pack:
    """The pack of some files."""
    return pack_of(venue_of(texts, read_folder(ROOT / "venue").photos))


def test_copies_of_a_pack_that_drift_apart_are_told_apart_line_by_line() -> None:
    """Published: two versions of one venue's list, fifteen fixtures in one and sixteen in other."""
    texts = {name: demo()[name] for name in ("house.yml", "stage.yml")}
    later = {
        **texts,
        "stage.yml": texts["stage.yml"].replace("steps, count: 4", "steps, count: 5"),
    }
    (part,) = compare(pack(texts), pack(later)).parts
    assert [(each.item, each.label, each.before, each.after) for each in part.differences] == [
        ("Stage steps", "Count", "4", "5")
    ]


def test_a_limit_of_the_roof_stands_beside_the_sum_of_its_beams() -> None:
    """Published: 2,000 lb a point, seven beams of 6,000 lb, and a roof of 20,000 lb."""
    assert (
        "rigging.yml",
        "note: The beams' limits add up to 22,600 kg, and the whole roof carries 14,000 kg. Do not"
        " add limits up: the roof's own binds first. [ratings-exceed-roof]",
    ) in known("rigging")


def test_two_sources_of_one_value_are_told_apart_by_who_checked_it_and_how() -> None:
    """Published: a tunnel of 430 ft in one source and about 200 ft in another, neither dated."""
    made = pack({name: demo()[name] for name in ("house.yml", "stage.yml", "access.yml")})
    lane = next(item for item in made.items() if item.name == "Basin Lane")
    clearance = lane.fact("lowest_clearance")
    assert clearance is not None
    assert clearance.verified is not None
    assert (clearance.verified.by, clearance.verified.how, clearance.verified.stale) == (
        "stage manager",
        "memory",
        True,
    )


def test_what_shows_stop_on_is_never_a_blank() -> None:
    """Published: six labels without a value."""
    texts = {name: demo()[name] for name in ("house.yml", "stage.yml")}
    texts["stage.yml"] = texts["stage.yml"].replace("    clear_height: 9.1 m\n", "")
    deck = next(item for item in pack(texts).items() if item.name == "End stage")
    height = deck.fact("clear_height")
    assert height is not None
    assert height.standing is Standing.NOT_STATED


def test_no_label_loses_its_value_in_the_published_data() -> None:
    """Published: a table whose labels and values came out of a document in two separate columns."""
    made = pack({name: demo()[name] for name in ("house.yml", "stage.yml", "rigging.yml")})
    facts = [fact for item in made.items() for fact in item.facts]
    assert facts
    assert [fact.key for fact in facts if not fact.label] == []
    assert [
        fact.key
        for fact in facts
        if (fact.value is None) == (fact.standing in (Standing.STATED, Standing.ASSUMED))
    ] == []
