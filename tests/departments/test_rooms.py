"""Rooms: what they hold together, what a show may have of them, and how the page tells it."""

from typing import Any

import pytest

from builder.departments.rooms import ROOMS
from builder.departments.rooms.description import Rooms
from builder.departments.rooms.figures import whole_figures
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pack import Pack, Revision
from builder.pipeline import pack_of, venue_of
from builder.reading.problems import Refused
from builder.reading.reader import read
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.sweep import folder

HEAD = "verified: {on: 2026-05-20, by: us, how: measured}\ndressing_rooms:\n"
A = "  - {name: A, persons: 4, showers: 1}\n"
B = "  - {name: B, count: 3, persons: 6, showers: none}\n"


def rooms(text: str) -> Rooms:
    """A description of rooms."""
    return read(text, file="rooms.yml", kind=Rooms)


def figures(text: str) -> dict[str, Any]:
    """The sums of all rooms, by name: their two ends."""
    found = whole_figures(rooms(text), "rooms.whole")
    return {
        each.key.removeprefix("rooms.whole."): each.value.ends if each.value else each.missing
        for each in found
    }


@pytest.mark.source("counting by hand: 1 + 3 rooms, 4 + 3 × 6 persons, 1 + 3 × 0 + 2 showers")
def test_rooms_persons_and_showers_are_counted_room_by_room() -> None:
    text = f"{HEAD}{A}{B}washrooms:\n  - {{name: Landing, showers: 2}}\n"
    assert figures(text) == {
        "dressing-rooms": (4.0, 4.0),
        "persons": (22.0, 22.0),
        "showers": (3.0, 3.0),
    }


def test_what_nobody_knows_leaves_the_upper_end_open() -> None:
    found = figures(f"{HEAD}{A}  - {{name: B, persons: unknown}}\nwashrooms: none\n")
    assert found == {"dressing-rooms": (2.0, 2.0), "persons": (4.0, None), "showers": (1.0, None)}


def test_what_is_known_in_part_is_counted_at_both_ends() -> None:
    found = figures(f"{HEAD}  - {{name: B, count: 2 to 3, persons: 5 to 6}}\n")
    assert found["dressing-rooms"] == (2.0, 3.0)
    assert found["persons"] == (10.0, 18.0)


def test_without_a_word_on_washrooms_nothing_is_said_of_showers() -> None:
    assert "showers" not in figures(f"{HEAD}{A}")


@pytest.mark.parametrize(
    "out", ["condition: out of service, note: Damp.", "terms: not for visitors"]
)
def test_what_a_show_cannot_have_is_in_no_sum(out: str) -> None:
    found = figures(f"{HEAD}{A}  - {{name: B, count: 3, persons: 6, {out}}}\nwashrooms: none\n")
    assert (found["dressing-rooms"], found["persons"]) == ((1.0, 1.0), (4.0, 4.0))


def test_a_house_without_dressing_rooms_says_none() -> None:
    assert figures("dressing_rooms: none\nwashrooms: none\n") == {
        "dressing-rooms": (0.0, 0.0),
        "persons": (0.0, 0.0),
        "showers": (0.0, 0.0),
    }
    assert figures("dressing_rooms: unknown\n") == {}


def pack(text: str) -> Pack:
    """The demo with other rooms."""
    there = folder("demo")
    return pack_of(venue_of({**there.texts, "rooms.yml": text}, there.photos))


def verdicts(text: str, *needs: str) -> list[str]:
    """What needs of rooms come to."""
    lines = "".join(f"  - {{{need}}}\n" for need in needs)
    rider = rider_of(f"act: A\nneeds:\n{lines}", file="rider.yml", rules=RULES)
    return [each["verdict"] for each in fit(fit_record(pack(text)), [rider])["verdicts"]]


TWO = f"{HEAD}{A}{B}rooms:\n  - {{name: Desk, use: office}}\n  - {{name: Box, use: unknown}}\n"


@pytest.mark.parametrize(
    ("need", "verdict"),
    [
        ("what: dressing rooms, at least: 4", "fits"),
        ("what: dressing rooms, at least: 5", "short"),
        ("what: persons in dressing rooms, at least: 22", "fits"),
        ("what: persons in dressing rooms, at least: 23", "short"),
        ("what: persons in one dressing room, at least: 6", "fits"),
        ("what: persons in one dressing room, at least: 7", "short"),
        ("what: step-free dressing room, is: yes", "ask"),
        # Nobody has said what the box is for: it may be an office.
        ("what: offices, at least: 1", "fits"),
        ("what: offices, at least: 2", "ask"),
        ("what: showers, at least: 1", "fits"),
        ("what: showers, at least: 2", "ask"),
        ("what: washing machines, at least: 1", "ask"),
    ],
)
def test_a_show_is_answered_by_the_rooms(need: str, verdict: str) -> None:
    assert verdicts(TWO, need) == [verdict]


@pytest.mark.parametrize(
    ("what", "verdict"),
    [
        ("none", "short"),
        ("unknown", "ask"),
        ("at least 20", "fits"),
        ("at least 10", "ask"),
        ("2 to 8", "short"),
    ],
)
def test_a_room_that_holds_nobody_adds_nothing(what: str, verdict: str) -> None:
    text = f"{HEAD}{A}  - {{name: B, persons: {what}}}\n"
    assert verdicts(text, "what: persons in dressing rooms, at least: 24") == [verdict]


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        (f"{TWO}equipment: none\n", "short"),
        (f"{TWO}equipment:\n  - {{what: washing machine, count: 2, working: 1}}\n", "short"),
        (f"{TWO}equipment:\n  - {{what: washing machine, count: 2}}\n", "fits"),
        (f"{TWO}equipment:\n  - {{what: washing machine}}\n", "ask"),
    ],
)
def test_machines_that_work_are_counted(text: str, verdict: str) -> None:
    assert verdicts(text, "what: washing machines, at least: 2") == [verdict]


def test_a_demo_without_a_file_of_rooms_is_asked() -> None:
    there = folder("demo")
    texts = {file: text for file, text in there.texts.items() if file != "rooms.yml"}
    whole = pack_of(venue_of(texts, there.photos))
    rider = rider_of(
        "act: A\nneeds:\n  - {what: showers, at least: 1}\n", file="rider.yml", rules=RULES
    )
    assert [each["verdict"] for each in fit(fit_record(whole), [rider])["verdicts"]] == ["ask"]


def test_a_page_without_rooms_says_which_kind_of_absence_it_is() -> None:
    for text, words in (
        ("dressing_rooms: none\n", "There are no dressing rooms."),
        ("washrooms: none\n", "No dressing room is described."),
    ):
        section = pack(text).section("rooms")
        assert section is not None
        page = ROOMS.pages(section, empty(section))[0]
        assert words in str(page.blocks)


def empty(section: Any) -> Pack:
    """A pack of one section."""
    return Pack("Hall", Revision("1", "2026-01-01", "us", "0"), (section,), ())


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("{name: A, persons: -3}", "persons"),
        ("{name: A, area: 20}", "unit-missing"),
        ("{persons: 4}", "name is missing here"),
    ],
)
def test_what_cannot_be_read_is_told_with_its_line(line: str, told: str) -> None:
    with pytest.raises(Refused, match=told):
        rooms(f"{HEAD}  - {line}\n")
