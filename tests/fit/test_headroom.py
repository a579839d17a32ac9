"""
What the house has hung bounds the clear height of a deck and everything that stands under it.

By hand: what stands under a truss has to be lower than the lowest edge on it (common practice, no
source).
"""

from functools import cache
from pathlib import Path

import pytest

from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import Record

QUARRY = Path(__file__).parents[1] / "venues" / "quarry"
CHECKED = "verified: {on: 2026-05-02, by: head rigger, how: measured}\n"
STAGE = (
    CHECKED
    + "datum: {centre_line: A line, reference_line: Deck edge}\n"
    + "decks:\n  - name: Deck\n    configurations: [Lawn open]\n    outline:\n"
    + "".join(
        f"      - {{across: {across}, depth: {depth}}}\n"
        for across, depth in (
            ("8 m SR", "0 m"),
            ("8 m SL", "0 m"),
            ("8 m SL", "9 m US"),
            ("8 m SR", "9 m US"),
        )
    )
    + "    usable_width: 16 m\n    usable_depth: 9 m\n    height: 1 m\n"
)
STEEL = (
    CHECKED
    + "limits: {each_point: 1 t}\n"
    + "beams: [{name: B, runs: across, depth: 4 m US, low_steel: [{across: 0 m, height: 12 m"
    " up}]}]\n"
    + "points: [{name: P1, beam: B, across: 5 m SR}, {name: P2, beam: B, across: 5 m SL}]\n"
)


def hang(more: str = "", *, trim: str = "trim: 7.6 m up", depth: str = "4 m US") -> str:
    """A truss across the stage."""
    words = ", ".join(part for part in (trim, more) if part)
    return (
        f"hangs: [{{name: Back truss, first_end: {{across: 7 m SR, depth: {depth}}}, last_end:"
        f" {{across: 7 m SL, depth: {depth}}}, weight: 10 kg/m, supports: [{{point: P1}}, {{point:"
        f" P2}}], {words}}}]\n"
    )


@cache
def house(hangs: str | None, clear: str = "clear_height: 9.6 m") -> FitPack:
    """A house with a deck, and steel with these hangs above it; None for no file of rigging."""
    texts = dict(read_folder(QUARRY).texts)
    assert "units: imperial" in texts["house.yml"]
    metric = texts["house.yml"].replace("units: imperial", "units: metric")
    made = {"house.yml": metric, "stage.yml": f"{STAGE}    {clear}\n"}
    if hangs is not None:
        made["rigging.yml"] = STEEL + hangs
    return fit_record(pack_of(venue_of(made)))


def verdict(record: FitPack, asked: str) -> Record:
    """The verdict on what a rider asks."""
    rider = rider_of(f"act: A\n{asked}\n", file="a.yml", rules=RULES)
    (found,) = fit(record, [rider])["verdicts"]
    return dict(found)


def clear(record: FitPack, height: str) -> str:
    """The verdict on a clear height."""
    asked = f"needs: [{{what: clear height, at least: {height}}}]"
    return str(verdict(record, asked)["verdict"])


def tower(record: FitPack, height: str, *, depth: str = "4 m US") -> Record:
    """The verdict on a tower of a height at a depth."""
    high = f", height: {height}" if height else ""
    return verdict(
        record,
        "plot: [{name: Tower, width: 1 m, depth: 1 m, at: {across: 0 m, depth:"
        f" {depth}}}{high}}}]",
    )


MAY, STAYS, UNSAID = hang("comes_down: yes"), hang("comes_down: no"), hang()


@pytest.mark.parametrize(
    ("height", "may", "stays", "unsaid"),
    [
        ("7.6 m", "fits, with a note", "fits, with a note", "fits, with a note"),
        ("7.61 m", "ask", "short", "ask"),
        ("8.5 m", "ask", "short", "ask"),
        ("9.6 m", "ask", "short", "ask"),
        ("9.61 m", "short", "short", "short"),
    ],
)
def test_the_rig_of_the_house_bounds_the_clear_height(
    height: str, may: str, stays: str, unsaid: str
) -> None:
    found = [clear(house(hangs), height) for hangs in (MAY, STAYS, UNSAID)]
    assert found == [may, stays, unsaid]


def test_both_heights_are_told() -> None:
    asked = "needs: [{what: clear height, at least: 8.5 m}]"
    assert verdict(house(MAY), asked)["reason"] == (
        "It is 7.60 m to 9.60 m: 7.60 m as the house's rig hangs (Back truss), 9.60 m with it away."
    )
    low = "needs: [{what: clear height, at least: 5 m}]"
    assert verdict(house(UNSAID), low)["notes"][0] == (
        "7.60 m as the house's rig hangs (Back truss), 9.60 m with it away; not said whether it may"
        " come down: Back truss."
    )


def test_what_hangs_beside_the_deck_bounds_nothing_on_it() -> None:
    aside = hang("comes_down: no", depth="2 m DS")
    assert clear(house(aside), "9.6 m") == "fits"
    assert tower(house(aside), "8.5 m")["verdict"] == "fits"


def test_a_hang_of_unknown_trim_makes_no_fit_and_the_steel_still_makes_a_shortage() -> None:
    for trim in ("", "trim: unknown", "trim: at most 8 m up"):
        record = house(hang("comes_down: no", trim=trim))
        assert clear(record, "3 m") == "ask"
        assert clear(record, "9.7 m") == "short"
        assert tower(record, "3 m")["verdict"] == "ask"
    assert clear(house(hang("comes_down: no", trim="trim: at most 8 m up")), "8.1 m") == "short"


def test_a_screen_that_hangs_lower_than_its_truss_counts_by_its_lowest_edge() -> None:
    load = "loads: [{what: Screen, by: video, weight: 90 kg, underside: %s}], comes_down: no"
    screen = house(hang(load % "5 m up"))
    assert (clear(screen, "5 m"), clear(screen, "5.1 m")) == ("fits, with a note", "short")
    assert tower(screen, "5.1 m")["verdict"] == "short"
    unknown = house(hang(load % "unknown"))
    assert (clear(unknown, "3 m"), clear(unknown, "7.7 m")) == ("ask", "short")


def test_no_hangs_is_not_the_same_as_nobody_having_said() -> None:
    assert clear(house("hangs: none\n"), "9.6 m") == "fits"
    assert tower(house("hangs: none\n"), "8.5 m")["verdict"] == "fits"
    for silent in ("", "hangs: unknown\n"):
        assert clear(house(silent), "5 m") == "ask"
        assert tower(house(silent), "8.5 m")["verdict"] == "ask"
        assert clear(house(silent), "9.7 m") == "short"
    assert clear(house(None), "9.6 m") == "fits, with a note"


def test_a_roof_without_end_is_bounded_by_the_rig_alone() -> None:
    free = "clear_height: none"
    assert clear(house("hangs: none\n", free), "30 m") == "fits"
    assert clear(house(MAY, free), "7.6 m") == "fits, with a note"
    assert clear(house(MAY, free), "7.7 m") == "ask"
    assert clear(house(STAYS, free), "7.7 m") == "short"


@pytest.mark.parametrize(("hangs", "word"), [(MAY, "ask"), (STAYS, "short"), (UNSAID, "ask")])
def test_a_tower_of_8_5_m_under_a_truss_at_7_6_m_does_not_fit_without_a_word(
    hangs: str, word: str
) -> None:
    answer = tower(house(hangs), "8.5 m")
    assert answer["verdict"] == word
    (part,) = answer["parts"]
    assert part["reason"].startswith("Back truss hangs above it, 7.60 m up, lower than it is high")
    assert tower(house(hangs), "7.6 m")["verdict"] == "fits"
    assert tower(house(hangs), "8.5 m", depth="7 m US")["verdict"] == "fits"


def test_a_thing_of_unknown_height_under_a_truss_is_told() -> None:
    answer = tower(house(STAYS), "")
    assert answer["verdict"] == "fits, with a note"
    assert "the rider does not say how high this is" in answer["parts"][0]["reason"]


def test_headroom_gives_nothing_to_rounding() -> None:
    """25 mm were allowed under what cannot be moved."""
    bare = house("hangs: none\n")
    assert (tower(bare, "9.6 m")["verdict"], tower(bare, "9.61 m")["verdict"]) == ("fits", "short")
    assert (clear(bare, "9.6 m"), clear(bare, "9.61 m")) == ("fits", "short")
