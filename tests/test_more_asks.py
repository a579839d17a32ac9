"""What a description tells can be asked: enough fits, one more is short, and silence is asked."""

import re

import pytest

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import pack
from tests.sweep import folder, houses

GOOD = {"fits", "fits, with a note"}


@pytest.mark.parametrize(
    ("what", "enough", "more"),
    [
        ("van parking", "6", "7"),
        ("first row distance", "1.6 m", "1.7 m"),
        ("pianos", "1", "2"),
        ("steps to the deck", "4", "5"),
        ("house hoists", "6", "7"),
        ("house truss", "12 m", "12.1 m"),
        ("console inputs", "96", "97"),
        ("returns from the mix position", "4", "5"),
        ("crossover width", "1.2 m", "1.3 m"),
        ("legs", "8", "9"),
        ("borders", "4", "5"),
        ("carpets", "3", "4"),
        ("temperature", "22 °C", "22.5 °C"),
        ("temperature", "71 °F", "72 °F"),
        ("console outputs", "40", "41"),
        ("side fills", "4", "5"),
        ("drum fills", "1", "2"),
        ("internet rate", "500 Mbit/s", "1 Gbit/s"),
        ("internet rate up", "200 Mbit/s", "201 Mbit/s"),
        ("weight on the way", "2000 kg", "2001 kg"),
        ("analogue drive lines", "1", "40"),
    ],
)
def test_the_demo_answers_with_what_its_files_say(what: str, enough: str, more: str) -> None:
    needs = "".join(f"  - {{what: {what}, at least: {amount}}}\n" for amount in (enough, more))
    rider = rider_of(f"act: A\nneeds:\n{needs}", file="a.yml", rules=RULES)
    first, second = (answer["verdict"] for answer in fit(houses()[0], [rider])["verdicts"])
    assert first in GOOD
    assert second == "short"


@pytest.mark.parametrize(
    ("need", "verdict"),
    [
        ("what: rake, at most: 0 %", "fits"),
        ("what: outdoors, is: no", "fits"),
        ("what: outdoors, is: yes", "short"),
        ("what: roof, is: yes", "fits"),
        ("what: low trim, at most: 1.3 m", "fits"),
        ("what: low trim, at most: 1.2 m", "short"),
        ("what: proscenium width, at least: 10 m", "fits"),
        ("what: proscenium height, at least: 6 m", "fits"),
        ("what: line sets, at least: 1", "fits"),
        ("what: line sets, at least: 3", "ask"),
        ("what: line sets, at least: 4", "short"),
        ("what: sprung floor, is: yes", "short"),
        ("what: dance floor rolls, at least: 1", "short"),
        ("what: cycloramas, at least: 1", "ask"),
        ("what: cue lights, at least: 1", "ask"),
        ("what: spot lines, at least: 1", "ask"),
        ("what: music stands, at least: 1", "ask"),
        ("what: chairs, at least: 95", "ask"),
        ("what: steps on the way, at most: 0", "fits"),
        ("what: lifts on the way, at most: 0", "fits"),
        ("what: first row distance, at most: 1.1 m", "short"),
        ("what: mix position cover, is: yes", "short"),
        ("what: mix position cover, is: no", "fits"),
        ("what: capacity, at most: 100000", "fits"),
    ],
)
def test_the_demo_answers_other_ways_of_asking(need: str, verdict: str) -> None:
    rider = rider_of(f"act: A\nneeds: [{{{need}}}]\n", file="a.yml", rules=RULES)
    (answer,) = fit(houses()[0], [rider])["verdicts"]
    assert answer["verdict"] == verdict


@pytest.mark.parametrize("what", ["car parking", "pianos", "house hoists", "console inputs"])
def test_a_house_that_says_nothing_of_it_is_asked(what: str) -> None:
    rider = rider_of(f"act: A\nneeds: [{{what: {what}, at least: 1}}]\n", file="a.yml", rules=RULES)
    (answer,) = fit(pack(), [rider])["verdicts"]  # type: ignore[arg-type]
    assert answer["verdict"] == "ask"


def test_where_there_is_no_first_row_nothing_limits_its_distance() -> None:
    there = folder("demo")
    standing = re.sub(r'"first_row": "[^"]*"', '"first_row": "none"', there.texts["stage.yml"])
    house = pack_of(venue_of({**there.texts, "stage.yml": standing}, there.photos))
    needs = "needs: [{what: first row distance, at least: 40 m}]"
    rider = rider_of(f"act: A\n{needs}\n", file="a.yml", rules=RULES)
    (answer,) = fit(fit_record(house), [rider])["verdicts"]
    assert (answer["verdict"], answer["reason"]) == ("fits", "Nothing limits it.")
