"""A configuration that is closed answers every need; what a house asks for an effect is told."""

from typing import Any

import pytest

from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import Record, a_list, asks, item, pack, rider, value
from tests.fit.test_headroom import QUARRY


def house(**closed: str) -> Record:
    """Two configurations, each with a deck; the first is in a state."""
    decks = [
        item("deck", f"Deck {name}", usable_width=value("16 m", 16.0), configurations=a_list(name))
        for name in ("Standing", "Seated")
    ]
    capacity = value("900", 900.0)
    return pack(
        house=[
            item("configuration", "Standing", capacity=capacity, **closed),
            item("configuration", "Seated", capacity=capacity),
        ],
        stage=decks,
        sound=[item("mix", "Mix", width=value("4 m", 4.0))],
    )


NEEDS = (
    asks("stage width", low=10.0),
    asks("capacity", low=500.0),
    asks("mix position width", low=2.0),
    asks("mix position depth", low=2.0),
)


@pytest.mark.parametrize(
    ("closed", "reason"),
    [
        ({"condition": "out of service"}, "Standing: It is out of service."),
        ({"terms": "not for visitors"}, "Standing: It is not for visitors."),
    ],
)
def test_a_closed_configuration_answers_every_need(closed: dict[str, str], reason: str) -> None:
    where: Any = house(**closed)
    named: Any = rider(*NEEDS, configuration="Standing")
    found = fit(where, [named])["verdicts"]
    assert [(one["verdict"], one["reason"]) for one in found] == [("short", reason)] * len(NEEDS)


def test_a_show_that_names_none_plays_in_one_that_is_open() -> None:
    where: Any = house(condition="out of service")
    show: Any = rider(*NEEDS)
    result = fit(where, [show])
    assert result["judged_in"][0].startswith("Judged in the configuration Seated;")
    assert [one["verdict"] for one in result["verdicts"]] == ["fits", "fits", "fits", "ask"]


def test_what_the_house_asks_for_an_effect_is_told_with_it() -> None:
    texts = read_folder(QUARRY).texts
    effects = (
        "effects: [{name: flames, allowed: by arrangement, notice: 14 days, asks: A watcher of the"
        " house is paid by the show.}, {name: haze, allowed: yes}, {name: lasers, allowed: no,"
        " asks: Nothing helps.}]\n"
    )
    lines = texts["house.yml"].split("\n")
    start = next((n for n, line in enumerate(lines) if line.startswith("effects:")), None)
    if start is not None:
        ends = [n for n in range(start + 1, len(lines)) if lines[n] and lines[n][0] not in " -"]
        del lines[start : ends[0] if ends else len(lines)]
    made = {"house.yml": "\n".join(lines) + effects, "stage.yml": texts["stage.yml"]}
    needs = ", ".join(f"{{what: {name}, is: yes}}" for name in ("flames", "haze", "lasers"))
    asked = rider_of(f"act: A\nneeds: [{needs}]\n", file="a.yml", rules=RULES)
    flames, haze, lasers = fit(fit_record(pack_of(venue_of(made))), [asked])["verdicts"]
    assert (
        "flames: ask 14 days before the show; A watcher of the house is paid by the show."
        in (flames["notes"])
    )
    assert (flames["verdict"], haze["verdict"]) == ("fits, with a note", "fits")
    assert (lasers["verdict"], lasers["notes"]) == ("short", [])
