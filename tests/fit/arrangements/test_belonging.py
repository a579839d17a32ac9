"""
Deck heights that can be set, wings, ways in and positions answer with their setting and with the
configuration they belong to, and all needs of a show in one and the same.
"""

from functools import cache
from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack
from builder.pipeline import pack_of, venue_of
from builder.reading.problems import Refused
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import Record

HOUSE = """
language: 2
name: A
what: A hall.
town: B
setting: indoors
time_zone: UTC
revision: {number: 1, on: 2026-01-02, by: e}
configurations:
  - {name: End stage, audience: seated, capacity: 900}
  - {name: In the round, audience: seated, capacity: 600}
"""
STAGE = """
datum: {centre_line: A stud., reference_line: The edge.}
decks:
  - name: End deck
    configurations: [End stage]
    outline:
      - {across: 6 m SR, depth: 0 m}
      - {across: 6 m SL, depth: 0 m}
      - {across: 6 m SL, depth: 9 m US}
      - {across: 6 m SR, depth: 9 m US}
    usable_width: 12 m
    height: set from 0.9 m to 1.4 m
  - name: Round deck
    configurations: [In the round]
    outline:
      - {across: 3 m SR, depth: 0 m}
      - {across: 3 m SL, depth: 0 m}
      - {across: 3 m SL, depth: 6 m US}
      - {across: 3 m SR, depth: 6 m US}
    usable_width: 6 m
    height: set to 0.4 m or 0.6 m
wings:
  - name: stage left
    configurations: [End stage]
    outline:
      - {across: 6 m SL, depth: 0 m}
      - {across: 10 m SL, depth: 0 m}
      - {across: 10 m SL, depth: 9 m US}
      - {across: 6 m SL, depth: 9 m US}
    clear_height: 5 m
places:
  - {name: Dock, at: {across: 12 m SL, depth: 5 m US}}
  - {name: Deck, at: {across: 0 m SL, depth: 2 m US}}
  - {name: Desk, at: {across: 0 m SL, depth: 20 m DS}}
  - {name: Corner, at: {across: 5 m SL, depth: 5 m US}}
"""
ACCESS = """
docks: [{name: Dock, place: Dock}]
routes:
  - name: Straight
    from_dock: Dock
    to_place: Deck
    leads_to: deck
    configurations: [End stage]
    passages: [{name: Great door, width: 3 m, height: 3 m}]
  - name: Around
    from_dock: Dock
    to_place: Deck
    leads_to: deck
    configurations: [In the round]
    passages: [{name: Small door, width: 1 m, height: 2 m}]
"""
SOUND = """
mix_position: {place: Desk, width: 4 m, depth: 3 m, ears: 1.4 m, configurations: [End stage]}
monitor_position: {place: Corner, width: 2 m, configurations: [End stage]}
"""

LINES = """
consoles: [{name: Visitor, place: Desk, configurations: [End stage]}]
lines: [{name: Snake, kind: analogue, from: {place: Corner}, to: {place: Desk}, ways: 48, free: 48}]
"""


@cache
def house() -> FitPack:
    """A house of two configurations, in which nearly everything belongs to one of them."""
    texts = {"house.yml": HOUSE, "stage.yml": STAGE, "access.yml": ACCESS, "sound.yml": SOUND}
    texts["lines.yml"] = LINES
    return fit_record(pack_of(venue_of(texts, {})))


def judged(needs: str, configuration: str = "", more: str = "") -> Record:
    """What a show comes to that asks some needs."""
    named = f"configuration: {configuration}\n" if configuration else ""
    text = f"act: A\n{named}{more}" + (f"needs: [{needs}]\n" if needs else "")
    result: Any = fit(house(), [rider_of(text, file="rider.yml", rules=RULES)])
    return result


def words(result: Record) -> list[str]:
    """The words of all verdicts."""
    return [answer["verdict"] for answer in result["verdicts"]]


@pytest.mark.parametrize(
    ("need", "set_to"),
    [
        ("{what: deck height, at least: 1.2 m}", "Set to 1.20 m."),
        ("{what: deck height, at most: 1 m}", "Set to 1.00 m."),
        ("{what: deck height, between: [1.1 m, 1.3 m]}", "Set to 1.10 m."),
    ],
)
def test_a_deck_height_is_answered_with_what_it_is_set_to(need: str, set_to: str) -> None:
    (answer,) = judged(need, "End stage")["verdicts"]
    assert answer["verdict"] == "fits, with a note"
    assert answer["notes"][0] == set_to
    assert answer["fact"]["item"] == "End deck"


def test_a_height_that_one_configuration_alone_has_is_set_there() -> None:
    result = judged("{what: deck height, between: [0.35 m, 0.45 m]}")
    assert result["verdicts"][0]["notes"][0] == "Set to 400 mm."
    assert result["judged_in"][0].startswith("Judged in the configuration In the round;")
    assert words(judged("{what: deck height, between: [0.45 m, 0.55 m]}")) == ["short"]


def test_the_height_of_one_deck_and_the_width_of_another_are_no_fit() -> None:
    low, wide = "{what: deck height, at most: 0.6 m}", "{what: stage width, at least: 10 m}"
    assert words(judged(low))[0].startswith("fits")
    assert words(judged(wide))[0].startswith("fits")
    assert "short" in words(judged(f"{low}, {wide}"))


@pytest.mark.parametrize(
    "need",
    [
        "{what: wing height stage left, at least: 4 m}",
        "{what: mix position width, at least: 3 m}",
        "{what: monitor position width, at least: 1 m}",
        "{what: analogue lines to the mix position, at least: 24}",
    ],
)
def test_what_belongs_to_one_configuration_answers_in_that_one_only(need: str) -> None:
    assert words(judged(need, "End stage"))[0].startswith("fits")
    (answer,) = judged(need, "In the round")["verdicts"]
    assert answer["verdict"] == "ask"
    assert answer["reason"] == "The house has not said for the configuration In the round."
    result = judged(need)
    assert result["judged_in"][0].startswith("Judged in the configuration End stage;")


def test_a_case_goes_by_the_door_of_the_configuration_that_the_show_plays_in() -> None:
    case = "trucks: {count: 1, largest case: {width: 2 m, height: 2.5 m}}\n"
    reasons = {}
    for name in ("End stage", "In the round"):
        (answer,) = judged("", name, case)["verdicts"]
        reasons[name] = [part["verdict"] for part in answer["parts"]] or [answer["verdict"]]
    assert "short" not in reasons["End stage"]
    assert "short" in reasons["In the round"]


def test_one_need_is_never_answered_from_another_configuration_than_its_neighbour() -> None:
    """A low deck is there in the round only, a wide way in and a mix position at the end only."""
    low = "{what: deck height, at most: 0.6 m}"
    for need in ("{what: mix position width, at least: 3 m}", "{what: stage width, at least: 8 m}"):
        for order in (f"{low}, {need}", f"{need}, {low}"):
            result = judged(order)
            assert any(word in ("short", "ask") for word in words(result))
            known = {part["item"] for part in (a["fact"] for a in result["verdicts"]) if part}
            assert not {"End deck", "Round deck"} <= known


def test_a_configuration_that_the_house_does_not_name_is_refused() -> None:
    wrong = SOUND.replace("[End stage]", "[Thrust]", 1)
    with pytest.raises(Refused) as refused:
        venue_of({"house.yml": HOUSE, "stage.yml": STAGE, "sound.yml": wrong}, {})
    (problem,) = refused.value.problems
    assert "Thrust" in str(problem)


def test_a_wing_of_another_configuration_holds_nothing_of_a_stage_plot() -> None:
    at = "{across: 8 m SL, depth: 4 m US}"
    plot = f"plot: [{{name: Desk, width: 2 m, depth: 1 m, at: {at}, on: stage left}}]\n"
    assert judged("", "End stage", plot)["verdicts"][0]["verdict"] != "short"
    (answer,) = judged("", "In the round", plot)["verdicts"]
    assert answer["verdict"] in ("ask", "short")
    fact = answer["fact"]
    assert fact is None or "stage left" not in fact["item"]
