"""What was only remembered is a note in every verdict that leans on it."""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from tests.fit.sample import Record, asks, item, pack, rider, value

WORDS = "2026-01-01 by crew, memory, 10 days before this revision"
NOTE = f"From memory, neither measured nor read from a drawing: {WORDS}."


def answer(**more: Any) -> Record:
    """A need of 10 m of stage width against a house that has 12 m."""
    shown = value("12 m", 12.0, **more)
    house = pack(stage=[item("deck", "Deck", usable_width=shown)])
    found: Record = fit(house, [rider(asks("stage width", low=10.0))])["verdicts"][0]
    return found


def test_a_measured_value_is_a_plain_fit() -> None:
    assert (answer()["verdict"], answer()["notes"]) == ("fits", [])


def test_a_remembered_value_is_a_fit_with_a_note() -> None:
    found = answer(remembered=True, checked=WORDS)
    assert (found["verdict"], found["notes"]) == ("fits, with a note", [NOTE])


def test_an_old_and_remembered_value_says_both() -> None:
    found = answer(remembered=True, stale=True, checked=WORDS)
    assert found["notes"] == [f"Old check: {WORDS}.", NOTE]


@pytest.mark.parametrize("standing", ["unknown", "not stated"])
def test_what_nobody_knows_has_no_such_note(standing: str) -> None:
    assert NOTE not in answer(remembered=True, standing=standing)["notes"]
