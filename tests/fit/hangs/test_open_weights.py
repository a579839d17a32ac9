"""A hang whose rider does not say what it weighs: asked, and nothing is promised beside it."""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.fit.records import RiderAsked, Verdict
from builder.fit.verdicts import RANK
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.sweep import houses, riders

SPOT = "across: {} m {}, depth: 4.9 m US"
OPEN = "{name: Open, trim: 7 m, below steel: 1 m, supports: [{across: 0 m, depth: 4.9 m US}]}"
LIGHT = (
    "{name: Light, hoists: counted, supports: [{across: 3.2 m SR, depth: 4.9 m US, load: 10 kg}]}"
)
HEAVY = (
    "{name: Heavy, hoists: counted, supports: [{across: 3.2 m SL, depth: 4.9 m US, load: 90 t}]}"
)


def told(*hangs: str) -> dict[str, Verdict]:
    """The verdicts on some hangs in the demo's house, by title."""
    text = f"act: A\nhangs: [{', '.join(hangs)}]\n"
    found = fit(houses()[0], [rider_of(text, file="a.yml", rules=RULES)])["verdicts"]
    return {answer["title"]: answer for answer in found}


def test_the_act_is_asked_and_the_trim_is_judged() -> None:
    found = told(OPEN)
    hang, trim = found["Hang: Open"], found["Trim of Open"]
    assert (hang["verdict"], hang["question"]) == ("ask", "")
    assert hang["reason"].startswith("The rider does not say what it weighs.")
    assert hang["act_question"].startswith("What does it weigh")
    assert "a weight that is not said" in hang["need"]
    assert trim["verdict"].startswith("fits")


def test_nothing_is_promised_beside_it_and_what_is_short_stays_short() -> None:
    assert told(LIGHT)["Hang: Light"]["verdict"].startswith("fits")
    beside = told(OPEN, LIGHT, HEAVY)
    assert beside["Hang: Light"]["verdict"] == "ask"
    assert "Hang: Open: the rider does not say" in beside["Hang: Light"]["reason"]
    assert beside["Hang: Heavy"]["verdict"] == "short"
    assert told(LIGHT, OPEN)["Hang: Light"]["verdict"].startswith("fits")


def opened(rider: RiderAsked, place: int) -> RiderAsked:
    """A rider that does not say what one of its hangs weighs."""
    needs: list[Any] = list(rider["requirements"])
    supports = [{**support, "load_kg": None} for support in needs[place]["supports"]]
    needs[place] = {**needs[place], "supports": supports, "loads": []}
    return {**rider, "requirements": needs}


def hangs_of(rider: RiderAsked) -> list[int]:
    """The places of a rider's hangs among all that it asks."""
    return [at for at, need in enumerate(rider["requirements"]) if need["sort"] == "hang"]


@pytest.mark.law
@pytest.mark.parametrize("number", range(len(riders())))
def test_not_saying_what_a_hang_weighs_makes_no_verdict_better(number: int) -> None:
    rider = riders()[number]
    usual = fit(houses()[0], [rider])["verdicts"]
    for place in hangs_of(rider):
        now = fit(houses()[0], [opened(rider, place)])["verdicts"]
        better = [
            (was["title"], was["verdict"], answer["verdict"])
            for was, answer in zip(usual, now, strict=True)
            if RANK[answer["verdict"]] < RANK[was["verdict"]] and answer["verdict"] != "ask"
        ]
        assert better == []
        assert now[place]["verdict"] in ("ask", "short")
