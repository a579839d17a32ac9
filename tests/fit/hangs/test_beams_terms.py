"""
What stands on a beam is no better than the beam: points with a tag, and points told by a rule, on
beams in five states.

That a pick on steel which may not be used may not be used either is common practice, no source.
"""

from typing import Any

import pytest

from builder.bearers.borne import bearing
from builder.bearers.telling import section_as_told
from builder.fit.interpreter import fit
from builder.fit.published import section_record
from builder.fit.verdicts import FITS, NOTED, RANK, SHORT
from builder.fit.wanted import wanted_of
from builder.pack import Section
from builder.registry import RULES
from tests.departments.rigged import BEAM, LIMITS, points, published
from tests.fit.sample import Record, asks, pack, rider

STATES = {
    "in service": (FITS, ""),
    "condition: limited": (NOTED, "limited"),
    "terms: extra charge": (NOTED, "extra charge"),
    "terms: by arrangement": (NOTED, "by arrangement"),
    "condition: out of service": (SHORT, "out of service"),
    "terms: not for visitors": (SHORT, "not for visitors"),
}
"""The verdict on what would fit on a beam that is all there, and the word that must be told."""
GROUP = "point_groups: [{name: Along, beams: [B1], anywhere: yes, spacing_at_least: 1.5 m}]\n"
SURE = (
    "verified: {on: 2026-05-01, by: head rigger, how: measured}\nbridles_allowed: {allowed: no}\n"
)
"""Checked, and no bridle beside a beam that cannot be used."""
TAGGED, BY_RULE = SURE + LIMITS + BEAM + points(0.0, 4.0), SURE + LIMITS + BEAM + GROUP
WITHOUT_A_WORD = SURE + LIMITS.replace("each_point", "spacing_at_least: 1 m, each_point") + BEAM
HOUSES = {"tagged": TAGGED, "by rule": BY_RULE, "no word of points": WITHOUT_A_WORD}


def in_state(text: str, state: str, of: str = "name: B1") -> str:
    """A house with a line in a state, and why."""
    if state == "in service":
        return text
    return text.replace(of, f"{of}, {state}, note: The paint is wet.", 1)


def record_of(text: str) -> Any:
    """What the check reads of a house's rigging."""
    section = section_record(published(text).section, {}, wanted_of(RULES.values()))
    return {**pack(), "sections": [section]}


def a_hang(point: str, across_m: float | None) -> Record:
    """100 kg on a point, or at a spot on the beam."""
    support = {"point": point, "across_m": across_m, "depth_m": 0.0, "apex_m": None, "at_m": 0.0}
    return {
        **asks("hang"),
        "sort": "hang",
        "department": "rigging",
        "supports": [{**support, "load_kg": None}],
        "loads": [{"from_m": 0.0, "to_m": 0.0, "kg": 100.0}],
        "hoists": "none",
        "hoist_kg": 0.0,
        "held": None,
    }


def wishes(name: str) -> list[Record]:
    """All that a show may ask of points, little enough that a beam all there gives it."""
    hang = a_hang("P1", None) if name == "tagged" else a_hang("", 3.0)
    rules = [asks("points", low=1.0), asks("point rating", low=100.0)]
    return [hang, *rules, asks("point left", low=100.0)]


def verdicts(text: str, *needs: Record) -> list[Any]:
    """The verdicts on some needs in a house."""
    return list(fit(record_of(text), [rider(*needs)])["verdicts"])  # type: ignore[list-item]


@pytest.mark.parametrize("state", STATES)
@pytest.mark.parametrize("name", HOUSES)
def test_no_verdict_on_a_point_is_better_than_its_beam(name: str, state: str) -> None:
    word, told = STATES[state]
    needs = wishes(name)
    for need, usual, found in zip(
        needs,
        verdicts(HOUSES[name], *needs),
        verdicts(in_state(HOUSES[name], state), *needs),
        strict=True,
    ):
        what = f"{need['what']}: {found}"
        assert RANK[found["verdict"]] >= RANK[usual["verdict"]], what
        if state == "in service":
            assert found == usual
            continue
        assert found["verdict"] != FITS, what
        assert RANK[found["verdict"]] >= RANK[word], what
        if word == NOTED and usual["verdict"] == FITS:
            assert any(told in note for note in found["notes"]), what


@pytest.mark.parametrize("state", STATES)
@pytest.mark.parametrize("name", ["tagged", "by rule"])
def test_a_hang_on_a_beam_that_is_all_there_is_as_good_as_its_beam(name: str, state: str) -> None:
    (found,) = verdicts(in_state(HOUSES[name], state), wishes(name)[0])
    word, told = STATES[state]
    assert found["verdict"] == word
    words = " ".join((found["reason"], *found["notes"]))
    assert told in words
    assert told == "" or "B1" in words


def test_a_note_names_the_beam_and_why() -> None:
    (found,) = verdicts(in_state(TAGGED, "condition: limited"), a_hang("P1", None))
    assert "B1, which P1 is on: limited. The paint is wet." in found["notes"]


@pytest.mark.parametrize("state", [state for state in STATES if state != "in service"])
@pytest.mark.parametrize("name", ["tagged", "by rule"])
def test_a_zone_bears_the_beams_in_it(name: str, state: str) -> None:
    zone = "zones: [{name: Back, beams: [B1], limit: 3 t}]\n"
    (found,) = verdicts(in_state(HOUSES[name] + zone, state, "name: Back"), wishes(name)[0])
    word, told = STATES[state]
    assert found["verdict"] == word
    assert told in " ".join((found["reason"], *found["notes"]))


TWO = BEAM.replace("]}]", "]}, " + BEAM[BEAM.index("{name") :].strip()[:-1] + "]").replace(
    "name: B1, runs: across, depth: 0 m", "name: B2, runs: across, depth: 5 m US", 1
)
"""B2 and B1, alike but for their place."""


def on_two(count: str, state: str) -> str:
    """Points on two beams, of which B1 is in a state."""
    group = f"{{name: Along, beams: [B1, B2], anywhere: yes, spacing_at_least: 2 m{count}}}"
    return in_state(LIMITS + TWO + f"point_groups: [{group}]\n", state)


@pytest.mark.parametrize(
    ("count", "state", "word"),
    [
        # 40 m at 2 m: 21 on each beam.
        ("", "condition: limited", NOTED),
        ("", "condition: out of service", NOTED),
        ("", "terms: not for visitors", "ask"),
        (", count: 12", "terms: by arrangement", NOTED),
        (", count: 12", "condition: out of service", "ask"),
        (", count: 12", "terms: not for visitors", "ask"),
    ],
)
def test_points_on_two_beams_of_which_one_is_not_all_there(
    count: str, state: str, word: str
) -> None:
    (found,) = verdicts(on_two(count, state), asks("points", low=10.0))
    assert found["verdict"] == word
    assert "B1, which points of Along are on" in " ".join((found["reason"], *found["notes"]))


def test_points_on_two_beams_that_are_both_closed_are_closed() -> None:
    text = in_state(on_two("", "terms: not for visitors"), "terms: not for visitors", "name: B2")
    (found,) = verdicts(text, asks("points", low=1.0))
    assert found["verdict"] == SHORT


def as_shown(text: str) -> Section:
    """The section as the pages tell it."""
    section = published(text).section
    return section_as_told(section)


@pytest.mark.parametrize(("name", "kind"), [("tagged", "point"), ("by rule", "point-group")])
def test_a_row_says_what_its_beam_is(name: str, kind: str) -> None:
    (row, *_) = as_shown(in_state(HOUSES[name], "condition: limited")).of_kind(kind)
    assert row.note.startswith("B1, which ")
    assert row.note.endswith(": limited.")
    (row, *_) = as_shown(in_state(HOUSES[name], "condition: out of service")).of_kind(kind)
    assert row.condition == "out of service"


@pytest.mark.parametrize("name", HOUSES)
def test_nothing_is_said_where_all_is_there(name: str) -> None:
    assert bearing(published(HOUSES[name]).section) == {}
    assert as_shown(HOUSES[name]) == published(HOUSES[name]).section
