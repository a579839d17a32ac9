"""Words and lines that are of one space and not of the whole house."""

from collections.abc import Mapping
from datetime import date
from html import unescape

import pytest

from builder.fit.interpreter import fit
from builder.pack import Revision
from builder.pipeline import document_of, venue_of
from builder.registry import RULES
from builder.render.markdown import render
from builder.shows.booked import books_of
from builder.shows.judging import outlook
from builder.shows.telling import outlook_lines
from builder.stock.lines import lines_of
from builder.stock.sheet import sheet_to_print
from tests.spaces.houses import asked, edited, pack, record, rooms

HOUSE, HALL, STUDIO = "house.yml", "spaces/hall/", "spaces/studio-b/"
WIDE = "needs: [{what: stage width, at least: 10 m}]"
NARROW = "needs: [{what: stage width, at least: 5 m}]"
CLOSED = "closed:\n  - {from: 2026-07-01, until: 2026-08-15, why: New floor., spaces: [Studio B]}\n"


def house_with(more: str) -> dict[str, str]:
    """The test venue with more lines in its house."""
    return {**rooms().texts, HOUSE: f"{rooms().texts[HOUSE]}\n{more}"}


def pages(texts: Mapping[str, str]) -> dict[str, str]:
    """The pages of a venue."""
    found = render(document_of(pack(texts))).pages
    return {path: unescape(text) for path, text in found.items() if isinstance(text, str)}


# When one space is closed.


def test_a_space_that_is_closed_is_told_as_such_and_not_as_the_house() -> None:
    text = pages(house_with(CLOSED))
    words = "Studio B, from 2026-07-01 until 2026-08-15. New floor."
    assert words in text["studio-b.md"]
    assert words in text["index.md"]
    assert words in text["spaces.md"]
    assert "2026-07-01" not in text["hall.md"]
    assert not [path for path, each in text.items() if "whole house, from" in each]


def test_what_of_a_space_is_closed_is_told_with_the_space() -> None:
    text = pages(house_with(CLOSED.replace("spaces:", "departments: [power], spaces:")))
    assert "Power in Studio B, from 2026-07-01" in text["index.md"]


def test_a_closure_that_is_over_stands_on_no_first_page() -> None:
    text = pages(house_with(CLOSED.replace("2026-07-01", "2026-01-01").replace("08-15", "02-15")))
    assert "2026-02-15" not in text["index.md"]
    assert "2026-02-15" not in text["spaces.md"]


@pytest.mark.parametrize(
    ("closed", "reason"),
    [
        (CLOSED, "Closed from 2026-07-01 until 2026-08-15 (New floor): Studio B."),
        (
            CLOSED.replace("spaces:", "departments: [stage], spaces:"),
            "Closed from 2026-07-01 until 2026-08-15 (New floor): stage, in Studio B.",
        ),
        (
            CLOSED.replace(", spaces: [Studio B]", ""),
            "The house is closed from 2026-07-01 until 2026-08-15 (New floor).",
        ),
    ],
)
def test_a_show_is_told_what_is_closed(closed: str, reason: str) -> None:
    rider = asked(f"act: A\nplays: 2026-07-20\nspace: Studio B\n{NARROW}")
    result = fit(record(house_with(closed)), rider)
    assert reason in {each["reason"] for each in result["verdicts"]}


def test_another_space_is_open_meanwhile() -> None:
    rider = asked(f"act: A\nplays: 2026-07-20\nspace: Great hall\n{WIDE}")
    assert fit(record(house_with(CLOSED)), rider)["verdict"] == "fits"


# Lines of the house that are of one space.


OWN = """effects:
  - {name: haze, allowed: no, spaces: [Studio B]}
  - {name: haze, allowed: yes, spaces: [Great hall]}
  - {name: flames, allowed: no}
rules:
  - {rule: No street shoes on the floor., spaces: [Studio B]}
hired:
  - {name: Roof over the yard, departments: [stage], spaces: [Yard]}
works:
  - {what: New winches, departments: [rigging], spaces: [Great hall]}
regularly:
  - {what: the choir's rehearsal, days: [Wednesday], spaces: [Studio B]}
"""


@pytest.mark.parametrize(
    ("words", "in_space"),
    [
        ("No street shoes", "studio-b"),
        ("Roof over the yard", "yard"),
        ("New winches", "hall"),
        ("choir's rehearsal", "studio-b"),
    ],
)
def test_what_is_of_one_space_stands_on_its_pages_alone(words: str, in_space: str) -> None:
    having = [path for path, text in pages(house_with(OWN)).items() if words in text]
    assert having
    assert {path.removesuffix("-house.md") for path in having} == {in_space}


@pytest.mark.parametrize(
    ("space", "verdicts"),
    [
        ("Studio B", ["short", "short"]),
        ("Great hall", ["fits", "short"]),
        ("Yard", ["short", "short"]),
    ],
)
def test_what_is_allowed_is_answered_by_space(space: str, verdicts: list[str]) -> None:
    needs = "needs: [{what: haze, is: yes}, {what: flames, is: yes}]"
    result = fit(record(house_with(OWN)), asked(f"act: A\nspace: {space}\n{needs}"))
    assert [each["verdict"] for each in result["verdicts"] if each["title"] != "Space"][
        :2
    ] == verdicts


def test_what_is_said_for_one_space_alone_is_said_of_no_other() -> None:
    haze_in_studio = "effects:\n  - {name: haze, allowed: yes, spaces: [Studio B]}\n"
    rider = asked("act: A\nspace: Great hall\nneeds: [{what: haze, is: yes}]")
    assert fit(record(house_with(haze_in_studio)), rider)["verdict"] == "ask"


# A configuration that only one space has.


def test_a_show_that_names_a_configuration_plays_in_the_space_that_has_it() -> None:
    result = fit(record(), asked(f"act: A\nconfiguration: Black room\n{WIDE}"))
    assert result["acts"][0]["arrangement"]["space"] == "Studio B"
    assert result["verdict"] == "short"


def test_a_configuration_that_no_space_has_is_asked_and_no_space_is_left_out() -> None:
    result = fit(record(), asked(f"act: A\nconfiguration: Ballroom\n{WIDE}"))
    assert result["judged_in"][0].startswith("Judged in Great hall; of 3 spaces")


def test_a_configuration_of_several_spaces_leaves_these_open() -> None:
    texts = edited(HOUSE, "name: Black room", "name: Standing")
    texts[f"{STUDIO}stage.yml"] = texts[f"{STUDIO}stage.yml"].replace("Black room", "Standing")
    result = fit(record(texts), asked(f"act: A\nconfiguration: Standing\n{WIDE}"))
    assert result["judged_in"][0].startswith("Judged in Great hall; of 2 spaces")


# The spaces side by side.


def test_the_small_print_of_an_answer_is_words_on_the_page_that_compares() -> None:
    more = "mix_position: {place: Mix position, width: 4 m, depth: 3 m, under_balcony: no}\n"
    text = pages({**rooms().texts, f"{HALL}sound.yml": more})["spaces.md"]
    assert "from the reference line" in text
    assert "Small(" not in text


# Shows on the books, and counting.


def test_shows_on_the_books_say_in_which_space_each_plays() -> None:
    texts = {
        "a.yml": f"act: Wide\nplays: 2026-09-01\nspace: Great hall\n{WIDE}",
        "b.yml": f"act: Narrow\nplays: 2026-09-01\nspace: Studio B\n{NARROW}",
        "c.yml": f"act: Any\nplays: 2026-09-02\n{WIDE}",
    }
    told = list(outlook_lines(outlook(books_of(texts, RULES), pack(), date(2026, 6, 1))))
    assert [line.strip().split(":")[0] for line in told if "September" in line] == [
        "Tuesday 1 September, Wide, in Great hall",
        "Tuesday 1 September, Narrow, in Studio B",
        "Tuesday 1 September, all acts together",
        "Wednesday 2 September, Any, in Great hall",
    ]


def test_two_spaces_with_a_place_of_one_name_are_counted_apart() -> None:
    kept = "stock:\n  - {name: NAME, kind: stand, count: 4, kept: Stage cupboard}\n"
    texts = {
        **rooms().texts,
        f"{HALL}sound.yml": kept.replace("NAME", "Hall stand"),
        f"{STUDIO}sound.yml": kept.replace("NAME", "Studio stand"),
    }
    names = {space.folder: space.name for space in venue_of(texts).spaces}
    printed = sheet_to_print(
        lines_of(venue_of(texts).files), "Shed", Revision("3", "2026-01-02", "us", "abc"), names
    )
    assert "Stage cupboard, Great hall" in printed
    assert "Stage cupboard, Studio B" in printed
    assert "Microphone trunk<" in printed
