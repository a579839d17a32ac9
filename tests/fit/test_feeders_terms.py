"""
What is fed from something is no better than all that feeds it: outlets, services and outlets for
buses behind a board, a service and an intake in several states.

That what hangs on a switch which is off or closed cannot be used is common practice, no source. A
board that is not for visitors is another thing: it stands locked, and its outlets may be theirs,
so those are asked about, unless their own line says so.
"""

from typing import Any

import pytest

from builder.bearers.telling import section_as_told
from builder.fit.interpreter import fit
from builder.fit.published import section_record
from builder.fit.verdicts import ASK, FITS, NOTED, RANK, SHORT
from builder.fit.wanted import wanted_of
from builder.registry import RULES
from tests.departments.powered import INTAKE, published
from tests.fit.sample import Record, asks, pack, rider
from tests.fit.test_circuits import circuits
from tests.fit.test_deep import load

HOUSE = (
    "verified: {on: 2026-05-01, by: electrician, how: measured}\n" + INTAKE + "services:\n"
    "  - {name: Main, fed_from: Intake, system: 230/400 V three phase, rating: 400 A,"
    " connectors: none}\n"
    "  - {name: Switch, fed_from: Main, system: 230/400 V three phase, rating: 125 A,"
    " connectors: [lugs]}\n"
    "boards: [{name: Board, fed_from: Main, rating: 63 A}]\n"
    "outlets: [{place: Wing, connector: Blue 16, count: 6, rating: 16 A, breaker: 16 A,"
    " phases: in turn, fed_from: Board}]\n"
    "shore_power: [{place: Dock, kind: buses, connector: Blue 32, count: 2, rating: 32 A,"
    " phases: in turn, fed_from: Board}]\n"
)
STATES = {
    "condition: limited": (NOTED, "limited"),
    "terms: extra charge": (NOTED, "extra charge"),
    "terms: by arrangement": (NOTED, "by arrangement"),
    "terms: not for visitors": (ASK, "not for visitors"),
    "condition: out of service": (SHORT, "out of service"),
}
NEEDS = {
    "circuits": circuits(2, 10.0, system="230 V single phase"),
    "feed": load(32.0, system="230/400 V three phase"),
    "shore": asks("shore outlets", low=1.0),
    "shore current": asks("shore current", low=16.0),
}
FEEDERS = {
    "Intake": tuple(NEEDS),
    "Main": tuple(NEEDS),
    "Board": ("circuits", "shore", "shore current"),
}
"""What feeds what is asked, near and far."""


def with_keys(text: str, name: str, keys: str) -> str:
    """A house with further keys on a line."""
    return text.replace(f"name: {name},", f"name: {name}, {keys},", 1)


def verdict(text: str, need: Record) -> Any:
    """The verdict on a need in a house."""
    section = section_record(published(text).section, {}, wanted_of(RULES.values()))
    record: Any = {**pack(), "sections": [section]}
    (found,) = fit(record, [rider(need)])["verdicts"]  # type: ignore[list-item]
    return found


@pytest.mark.parametrize("need", NEEDS)
def test_where_all_is_there_it_fits(need: str) -> None:
    found = verdict(HOUSE, NEEDS[need])
    assert found["verdict"] in (FITS, NOTED), found
    assert not any("Intake" in note or "Main," in note for note in found["notes"])


@pytest.mark.parametrize("state", STATES)
@pytest.mark.parametrize(
    ("feeder", "need"), [(name, need) for name, needs in FEEDERS.items() for need in needs]
)
def test_no_verdict_is_better_than_what_feeds_it(feeder: str, need: str, state: str) -> None:
    found = verdict(with_keys(HOUSE, feeder, f"{state}, note: Oil leaks"), NEEDS[need])
    word, told = STATES[state]
    assert found["verdict"] == word, found
    words = " ".join((found["reason"], *found["notes"]))
    if need != "shore" or word != SHORT:
        assert told in words
        assert feeder in words
    assert RANK[found["verdict"]] >= RANK[verdict(HOUSE, NEEDS[need])["verdict"]]


@pytest.mark.parametrize("need", ["circuits", "shore", "shore current"])
def test_what_its_own_line_opens_is_open_and_tells_what_feeds_it(need: str) -> None:
    text = HOUSE.replace("fed_from: Board}", "fed_from: Board, terms: included}")
    found = verdict(with_keys(text, "Board", "terms: not for visitors"), NEEDS[need])
    assert found["verdict"] == NOTED, found
    assert any("Board, which feeds" in note for note in found["notes"])


def test_the_terms_of_what_is_nearer_count_before_those_of_what_is_farther() -> None:
    text = with_keys(HOUSE, "Intake", "terms: not for visitors")
    assert verdict(text, NEEDS["circuits"])["verdict"] == ASK
    found = verdict(with_keys(text, "Board", "terms: by arrangement"), NEEDS["circuits"])
    assert found["verdict"] == NOTED
    assert any("Board, which feeds Blue 16: by arrangement." in note for note in found["notes"])
    assert any("Intake, which feeds Blue 16: not for visitors." in note for note in found["notes"])


def test_closed_outlets_do_not_stand_in_the_way_of_open_ones() -> None:
    more = (
        "outlets: [{place: Wing, connector: Blue 16, count: 6, rating: 16 A, breaker: 16 A,"
        " phases: in turn, fed_from: Switch}, "
    )
    text = with_keys(HOUSE.replace("outlets: [", more), "Board", "terms: not for visitors")
    assert verdict(text, NEEDS["circuits"])["verdict"] in (FITS, NOTED)


def test_what_is_free_at_outlets_waits_for_terms_where_their_board_is_closed() -> None:
    closed = with_keys(HOUSE, "Board", "terms: not for visitors")
    lacks = missing_of(closed)
    assert lacks
    assert all("the outlet's terms, for Board is not for visitors" in each for each in lacks)
    assert missing_of(HOUSE) == []
    open_ones = closed.replace("fed_from: Board}", "fed_from: Board, terms: included}")
    assert missing_of(open_ones) == []


def missing_of(text: str) -> list[tuple[str, ...]]:
    """What the figures of what is available at outlets lack."""
    return [
        figure.missing
        for item in published(text).section.items
        if item.kind.startswith("available")
        for figure in item.figures
        if figure.missing
    ]


@pytest.mark.parametrize("kind", ["outlet", "shore", "board", "service"])
def test_a_row_says_what_feeds_it(kind: str) -> None:
    section = section_as_told(published(with_keys(HOUSE, "Intake", "condition: limited")).section)
    (row, *_) = section.of_kind(kind)
    assert row.note == "Intake, which feeds it: limited."
    assert row.condition == "in service"
    dead = section_as_told(
        published(with_keys(HOUSE, "Intake", "condition: out of service")).section
    )
    assert {row.condition for row in dead.of_kind(kind)} == {"out of service"}
