"""A show that asks for lines to the mix position is held against those that are free."""

from pathlib import Path

import pytest

from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of

CHECKED = "verified: {on: 2026-05-02, by: system engineer, how: measured}\n"
QUARRY = Path(__file__).parents[1] / "venues" / "quarry"


def verdict(lines: str, what: str, least: int) -> str:
    """The verdict on one wish, in a venue with these lines."""
    texts = {name: text for name, text in read_folder(QUARRY).texts.items() if name in ("house.yml", "stage.yml")}
    house = fit_record(pack_of(venue_of({**texts, "lines.yml": CHECKED + lines})))
    rider = rider_of(f"act: A\nneeds: [{{what: {what}, at least: {least}}}]\n", file="a.yml", rules=RULES)
    (found,) = fit(house, [rider])["verdicts"]
    return str(found["verdict"])


def fibres(*free: str) -> str:
    """Lines of fibre from stage left to the mix position."""
    each = [
        f"  - {{name: F{count}, kind: fibre, from: {{place: Stage left}}, to: {{place: Mix position}}, ways: 8, working: 8, free: {words}}}\n"
        for count, words in enumerate(free)
    ]
    return "lines:\n" + "".join(each) + "consoles: [{name: Mix, place: Mix position, by: [F0]}]\n"


@pytest.mark.parametrize(("least", "answer"), [(6, "fits"), (7, "short")])
def test_as_many_as_are_free_fit_and_one_more_falls_short(least: int, answer: str) -> None:
    assert verdict(fibres("4", "2"), "fibres to the mix position", least) == answer


def test_where_one_line_does_not_say_the_answer_is_a_question_not_a_least() -> None:
    assert verdict(fibres("4", "?"), "fibres to the mix position", 5) == "ask"


def test_a_house_without_permanent_lines_falls_short_and_one_that_says_nothing_is_asked() -> None:
    assert verdict("lines: none\n", "fibres to the mix position", 1) == "short"
    assert verdict("labels: ?\n", "fibres to the mix position", 1) == "ask"


def test_kinds_are_asked_apart() -> None:
    assert verdict(fibres("4"), "data lines to the mix position", 1) != "fits"
