"""What nobody knows to work is judged in service and out, and asked where that decides."""

from typing import Any

import pytest

from builder.fit.arrangements.in_doubt import MOST_ALONE
from builder.fit.interpreter import fit
from tests.fit.sample import Record, asks, item, pack, rider, value


def house(*decks: Record, **configuration: str) -> Any:
    """A house with one configuration and some decks."""
    return pack(
        house=[item("configuration", "Standing", capacity=value("900", 900.0), **configuration)],
        stage=list(decks),
    )


def deck(name: str, width_m: float, condition: str = "unknown") -> Record:
    """A deck in a state."""
    return item("deck", name, usable_width=value(f"{width_m:g} m", width_m), condition=condition)


def answer_of(house: Any) -> Any:
    """The verdict on a show that is 10 m wide."""
    show: Any = rider(asks("stage width", low=10.0))
    [answer] = fit(house, [show])["verdicts"]
    return answer


def test_what_fits_only_with_a_thing_in_doubt_is_asked_by_its_name() -> None:
    answer = answer_of(house(deck("Deck A", 16.0)))
    assert answer["verdict"] == "ask"
    assert answer["reason"] == (
        "Nobody knows whether this is in service: Deck A. Without it: Deck A: It is out of service."
    )
    assert answer["question"].startswith("Is this in service on the day of the show: Deck A?")
    assert answer["fact"]["item"] == "Deck A"


def test_what_is_short_either_way_is_short_and_not_asked() -> None:
    assert answer_of(house(deck("Deck A", 8.0)))["verdict"] == "short"


@pytest.mark.parametrize("condition", ["in service", "limited"])
def test_another_that_surely_works_answers_for_it(condition: str) -> None:
    answer = answer_of(house(deck("Deck A", 16.0), deck("Deck B", 12.0, condition)))
    assert answer["verdict"] in ("fits", "fits, with a note")
    assert answer["fact"]["item"] == "Deck B"


@pytest.mark.parametrize("count", [2, MOST_ALONE + 1])
def test_where_no_one_alone_decides_all_are_named(count: int) -> None:
    names = [f"Deck {number}" for number in range(count)]
    answer = answer_of(house(*(deck(name, 16.0) for name in names)))
    assert answer["verdict"] == "ask"
    assert f"service: {', '.join(names)}. Without" in answer["reason"]


def test_of_two_in_doubt_only_the_one_that_decides_is_named() -> None:
    answer = answer_of(house(deck("Deck A", 16.0), deck("Deck B", 8.0)))
    assert "service: Deck A. Without" in answer["reason"]


def test_a_configuration_in_doubt_is_asked() -> None:
    answer = answer_of(house(deck("Deck A", 16.0, "in service"), condition="unknown"))
    assert answer["verdict"] == "ask"
    assert "Standing" in answer["question"]
