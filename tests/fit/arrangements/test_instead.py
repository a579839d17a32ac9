"""A show is judged with what a configuration has in place of the usual."""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from tests.fit.sample import asks, item, pack, rider, value

USUAL, OTHER = "Standing", "Round"


def house() -> Any:
    """Two configurations; in the second one deck is narrower and the other one is gone."""
    found = pack(
        house=[item("configuration", USUAL), item("configuration", OTHER)],
        stage=[
            item("deck", "Deck", usable_width=value("12 m", 12.0)),
            item("deck", "Apron", usable_width=value("14 m", 14.0)),
        ],
    )
    stage = next(section for section in found["sections"] if section["key"] == "stage")
    apron = stage["items"][1]["key"]
    narrow = item("deck", "Deck", usable_width=value("9 m", 9.0))
    stage["instead"] = [
        {
            "configurations": [OTHER],
            "items": [{**narrow, "key": stage["items"][0]["key"]}],
            "without": [apron],
            "outlines": [],
        }
    ]
    return found


@pytest.mark.parametrize(
    ("name", "low", "word"),
    [
        (USUAL, 13.0, "fits"),
        (USUAL, 15.0, "short"),
        (OTHER, 8.0, "fits"),
        (OTHER, 10.0, "short"),
        (OTHER, 13.0, "short"),
    ],
)
def test_a_show_meets_what_is_there_in_its_configuration(name: str, low: float, word: str) -> None:
    show: Any = rider(asks("stage width", low=low), configuration=name)
    [answer] = fit(house(), [show])["verdicts"]
    assert answer["verdict"].startswith(word)


def test_a_show_that_names_none_plays_where_it_fares_best() -> None:
    show: Any = rider(asks("stage width", low=13.0))
    result = fit(house(), [show])
    assert result["verdict"].startswith("fits")
    assert result["acts"][0]["arrangement"]["configuration"] == USUAL
