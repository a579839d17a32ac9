"""What terminal and page call: plain data in, plain data out, and the same in both."""

import json

import pytest
from playwright.sync_api import Browser

from builder.rider.entry import read_form, write_rider
from builder.rider.table import LANGUAGE
from builder.rider.units import UNITS
from tests.laws import share
from tests.rider.compiled import in_the_browser
from tests.rider.named import named_riders
from tests.rider.riders import RULE_RECORDS, drawn, problems, read
from tests.rider.text.trees import RIDERS, spoiled


def test_what_can_be_read_is_there_beside_what_is_wrong() -> None:
    rider = read(
        "act: A\nneeds:\n  - {what: moon, is: yes}\n  - {what: haze, is: yes}\n"
        "clock: {load in: '9:00', doors: soon, ends: '22:00'}\n"
    )
    assert rider["parts"] == ["needs[2]", "clock", "clock"]
    assert [each["title"] for each in rider["rider"]["requirements"][1:]] == [
        "Load-in",
        "End of the show",
    ]
    assert rider["rider"]["clock"] is None
    assert [mistake["part"] for mistake in rider["mistakes"]] == ["needs[1]", "clock"]


def test_a_text_that_is_no_yaml_leaves_nothing_but_mistakes() -> None:
    rider = read("act: A\nact: B\n")
    assert rider["rider"]["requirements"] == []
    assert rider["tree"]["entries"] == []
    assert [mistake["code"] for mistake in rider["mistakes"]] == ["duplicate-key"]


def test_the_date_and_how_firm_it_is_stand_beside_the_rider() -> None:
    rider = read("act: A\nplays: 2026-12-05\nbooking: second hold\nclock: {ends: '22:00'}\n")
    assert (rider["plays"], rider["booking"]) == ("2026-12-05", "second hold")
    assert rider["rider"]["requirements"][0]["need"] == "ends at 22:00 on a Saturday"
    assert read("act: A\n")["booking"] == "confirmed"


def test_mistakes_stand_in_the_order_of_the_text_each_once() -> None:
    told = problems("act: A\nplot: [{name: A}, {name: B}]\nneeds: [{what: x}]\nzzz: 1\n")
    places = [tuple(int(part) for part in each.split(" ")[0].split(":")[1:]) for each in told]
    assert places == sorted(places)
    assert len(told) == len(set(told)) == 6


@pytest.mark.parametrize("text", RIDERS)
def test_a_rider_is_plain_data_and_comes_back_from_what_is_written(text: str) -> None:
    rider = read(text)
    assert json.loads(json.dumps(rider)) == rider
    again = read_form(read(write_rider(rider["tree"]))["tree"], LANGUAGE, RULE_RECORDS, UNITS)
    assert rider["mistakes"] == again["mistakes"] == []
    needs = [[each["need"] for each in one["rider"]["requirements"]] for one in (rider, again)]
    assert needs[0] == needs[1] != []


@pytest.mark.laws
@pytest.mark.browser
def test_the_page_reads_riders_as_the_terminal_does(browser: Browser) -> None:
    seeds = share(range(100), law="riders in the browser", usually=2)
    texts = [*RIDERS, *named_riders(), *(text for seed in seeds for text in drawn(100, seed))]
    texts += [text for seed in seeds for text in spoiled(50, seed)]
    portions = [texts[start : start + 200] for start in range(0, len(texts), 200)]
    given = [[portion, LANGUAGE, RULE_RECORDS, UNITS] for portion in portions]
    answers = [
        in_the_browser(browser, "tests.rider.rider_calls.read_all", [each])[0] for each in given
    ]
    found = [rider for answer in answers for rider in answer]
    ours = [read(text) for text in texts]
    different = [text for text, one, other in zip(texts, ours, found, strict=True) if one != other]
    assert different == []
    assert sum(one["mistakes"] == [] for one in ours) > 150
    assert sum(one["mistakes"] != [] for one in ours) > 100
