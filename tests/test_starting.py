"""What stands as in the starting venue is told until it is changed."""

from collections.abc import Mapping
from pathlib import Path

import pytest

from builder.files import read_folder
from builder.pack import Finding
from builder.pipeline import pack_of, venue_of
from builder.starter import venue_files
from builder.starting import as_it_began, kept_in, starting_files

TEXTS = venue_files()
LAST = (
    "Write what is true of the house, or delete it. A line that is true as it stands says so with"
    " verified."
)
ROOT = Path(__file__).parent.parent
CODE = "starting-venue"


def findings(texts: Mapping[str, str]) -> dict[str, Finding]:
    """The findings about the starting venue, by file."""
    told = [finding for finding in pack_of(venue_of(texts)).findings if finding.code == CODE]
    assert all(finding.place for finding in told)
    return {finding.place.file: finding for finding in told if finding.place}


def changed(file: str, *changes: tuple[str, str]) -> dict[str, str]:
    """The starting venue with one file changed."""
    text = TEXTS[file]
    for before, after in changes:
        assert text.count(before) == 1, before
        text = text.replace(before, after)
    return {**TEXTS, file: text}


def kept(texts: Mapping[str, str], file: str) -> str:
    """What a file keeps of the starting venue, as its finding says it; empty where it has none."""
    if file not in findings(texts):
        return ""
    return findings(texts)[file].sentence.partition("nobody's: ")[2].partition(". Write")[0]


def everything_kept(texts: Mapping[str, str], key: str) -> list[str]:
    """All that a department's file keeps of the starting venue."""
    descriptions = venue_of(texts).descriptions
    return [each.what for each in kept_in(descriptions[key], starting_files()[key])]


def test_the_untouched_venue_is_told_file_by_file() -> None:
    told = findings(TEXTS)
    assert set(told) == {
        f"{name}.yml"
        for name in (
            "house",
            "access",
            "stage",
            "flying",
            "sound",
            "power",
            "lines",
            "rooms",
            "crew",
        )
    }
    assert told["house.yml"].sentence == (
        "Still as in the venue to start from, which is nobody's: verified, name, what, town,"
        f" time_zone and 7 more. {LAST}"
    )
    assert told["house.yml"].level.value == "caution"


def test_a_file_in_which_nobody_knows_anything_yet_says_nothing_of_its_own() -> None:
    assert "rigging.yml" not in findings(TEXTS)


def test_each_line_is_told_until_something_on_it_changes() -> None:
    assert kept(TEXTS, "power.yml") == (
        "verified, supplies (Intake), services (Stage left switch), outlets (Stage left),"
        " standing_loads (House loudspeakers)"
    )
    fuse = changed("power.yml", ("rating: 100 A, breaker: 100 A", "rating: 80 A, breaker: 80 A"))
    assert "supplies" not in kept(fuse, "power.yml")
    assert "services (Stage left switch)" in kept(fuse, "power.yml")


def test_six_microphones_are_told_and_five_are_not() -> None:
    five = changed("sound.yml", ("count: 6, working: 6", "count: 5, working: 5"))
    assert "stock (Vocal microphone)" in everything_kept(TEXTS, "sound")
    assert "stock (Vocal microphone)" not in everything_kept(five, "sound")
    assert "stock (Boom stand)" in everything_kept(five, "sound")


def test_a_line_that_is_true_as_it_stands_says_so_with_verified() -> None:
    stamp = "verified: {on: 2026-02-01, by: electrician, how: nameplate}"
    true = changed("power.yml", ("breaker: 100 A}", f"breaker: 100 A, {stamp}}}"))
    assert "supplies" not in kept(true, "power.yml")


def test_a_group_within_a_line_that_was_changed_is_told_too() -> None:
    deck = changed("stage.yml", ("usable_width: 7.6 m", "usable_width: 7.2 m"))
    assert "outline of decks (Deck)" in kept(deck, "stage.yml")


def test_a_choice_or_a_number_of_the_house_itself_may_be_the_same() -> None:
    assert "setting" not in kept(TEXTS, "house.yml")
    assert "units" not in kept(TEXTS, "house.yml")
    assert "continuous_share" not in kept(TEXTS, "power.yml")


@pytest.mark.parametrize("folder", [ROOT / "venue", ROOT / "tests" / "venues" / "quarry"])
def test_a_venue_of_its_own_is_told_nothing(folder: Path) -> None:
    read = read_folder(folder)
    assert as_it_began(venue_of(read.texts, read.photos).descriptions) == ()


def test_a_file_that_was_deleted_is_not_told() -> None:
    texts = {name: TEXTS[name] for name in ("house.yml", "stage.yml")}
    assert set(findings(texts)) == set(texts)
