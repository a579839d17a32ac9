"""A show that asks for lines to the mix position is held against those that are free."""

from functools import cache
from pathlib import Path
from typing import Any

import pytest

from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.departments.lined import item

CHECKED = "verified: {on: 2026-05-02, by: system engineer, how: measured}\n"
QUARRY = Path(__file__).parents[1] / "venues" / "quarry"


def verdict(lines: str, what: str, least: int) -> str:
    """The verdict on one wish, in a venue with these lines."""
    texts = {
        name: text
        for name, text in read_folder(QUARRY).texts.items()
        if name in ("house.yml", "stage.yml")
    }
    house = fit_record(pack_of(venue_of({**texts, "lines.yml": CHECKED + lines})))
    rider = rider_of(
        f"act: A\nneeds: [{{what: {what}, at least: {least}}}]\n", file="a.yml", rules=RULES
    )
    (found,) = fit(house, [rider])["verdicts"]
    return str(found["verdict"])


def fibres(*free: str) -> str:
    """Lines of fibre from stage left to the mix position."""
    each = [
        f"  - {{name: F{count}, kind: fibre, from: {{place: Stage left}}, to: {{place: Mix"
        f" position}}, ways: 8, working: 8, free: {words}}}\n"
        for count, words in enumerate(free)
    ]
    return "lines:\n" + "".join(each) + "consoles: [{name: Mix, place: Mix position, by: [F0]}]\n"


@pytest.mark.parametrize(("least", "answer"), [(6, "fits"), (7, "short")])
def test_as_many_as_are_free_fit_and_one_more_falls_short(least: int, answer: str) -> None:
    assert verdict(fibres("4", "2"), "fibres to the mix position", least) == answer


def test_where_one_line_does_not_say_the_answer_is_a_question_not_a_least() -> None:
    assert verdict(fibres("4", "unknown"), "fibres to the mix position", 5) == "ask"


def test_a_house_without_permanent_lines_falls_short_and_one_that_says_nothing_is_asked() -> None:
    assert verdict("lines: none\n", "fibres to the mix position", 1) == "short"
    assert verdict("labels: unknown\n", "fibres to the mix position", 1) == "ask"


def test_kinds_are_asked_apart() -> None:
    assert verdict(fibres("4"), "data lines to the mix position", 1) != "fits"


def asked(lines: str, wish: str) -> str:
    """
    The verdict on a wish as a rider writes it, in a venue with these lines; an empty text is the
    quarry's own.
    """
    folder = read_folder(QUARRY)
    texts = {
        name: text
        for name, text in folder.texts.items()
        if name in ("house.yml", "stage.yml", "lines.yml")
    }
    if lines:
        texts["lines.yml"] = CHECKED + lines
    rider = rider_of(f"act: A\nneeds: [{{{wish}}}]\n", file="a.yml", rules=RULES)
    (found,) = fit(fit_record(pack_of(venue_of(texts))), [rider])["verdicts"]
    return str(found["verdict"])


STATIONS = """talkback_channels: [{name: A}, {name: B}]
talkback_stations:
  - {place: Stage left, kind: desk station, count: 2, working: %s}
  - {place: Mix position, kind: belt pack, count: 3}
  - {place: Stage right, kind: socket, count: 9}
"""


@pytest.mark.parametrize(
    ("working", "least", "answer"), [("1", 4, "fits"), ("1", 5, "short"), ("unknown", 4, "ask")]
)
def test_stations_that_work_are_counted_and_sockets_are_not(
    working: str, least: int, answer: str
) -> None:
    assert asked(STATIONS % working, f"what: intercom stations, at least: {least}") == answer


@pytest.mark.parametrize(("least", "answer"), [(2, "fits"), (3, "short")])
def test_channels_are_counted(least: int, answer: str) -> None:
    assert asked(STATIONS % 2, f"what: intercom channels, at least: {least}") == answer


@pytest.mark.parametrize(
    ("state", "stations", "channels"),
    [
        ("condition: limited", "fits", "fits, with a note"),
        ("terms: by arrangement", "fits", "fits, with a note"),
        ("terms: not for visitors", "short", "short"),
        ("condition: out of service", "short", "short"),
    ],
)
def test_a_station_talks_on_no_channel_that_is_gone(
    state: str, stations: str, channels: str
) -> None:
    """Common practice, no source: a pack whose only channel is dead is a dead pack."""
    text = (
        f"talkback_channels: [{{name: A, {state}}}]\n"
        "talkback_stations: [{place: Stage left, kind: belt pack, count: 2, channels: [A]}]\n"
    )
    assert asked(text, "what: intercom stations, at least: 1") == stations
    assert asked(text, "what: intercom channels, at least: 1") == channels


@pytest.mark.parametrize("state", ["condition: limited", "terms: by arrangement"])
def test_stations_and_networks_that_are_not_simply_there_are_told(state: str) -> None:
    text = f"talkback_channels: [{{name: A}}]\ntalkback_stations: [{{place: Stage left, {state},"
    station = f"{text} kind: belt pack, count: 2, channels: [A]}}]\n"
    assert asked(station, "what: intercom stations, at least: 2") == "fits, with a note"
    network = f"networks: [{{name: N, internet_down: 40 Mbit/s, {state}}}%s]\n"
    assert asked(network % "", "what: internet, is: yes") == "fits, with a note"
    other = ", {name: M, internet_down: 4 Mbit/s}"
    assert asked(network % other, "what: internet, is: yes") == "fits"


@pytest.mark.parametrize(
    ("network", "answer"),
    [
        ("[{name: N, internet_down: 40 Mbit/s}]", "fits"),
        ("[{name: N, internet_down: none}]", "short"),
        ("[{name: N, internet_down: unknown}]", "ask"),
        ("[{name: N, internet_down: none}, {name: M}]", "ask"),
        ("[{name: N, internet_down: 40 Mbit/s, terms: not for visitors}]", "ask"),
        ("none", "short"),
        ("unknown", "ask"),
    ],
)
def test_internet_is_there_not_there_or_asked(network: str, answer: str) -> None:
    assert asked(f"networks: {network}\n", "what: internet, is: yes") == answer


@pytest.mark.parametrize(("at", "answer"), [("Mix position", "fits"), ("Stage left", "short")])
def test_a_network_at_the_mix_position_needs_a_socket_there(at: str, answer: str) -> None:
    text = (
        "consoles: [{name: Mix, place: Mix position, by: none}]\nnetworks: [{name: N, at:"
        f" [{at}]}}]\n"
    )
    assert asked(text, "what: network at the mix position, is: yes") == answer


def test_the_quarry_has_internet_at_the_mix_position_and_no_intercom() -> None:
    # Its lines.yml: a site link of 40 Mbit/s at the mix position; talkback channels: none; 30 of 38
    # ways of the snake free.
    assert asked("", "what: internet, is: yes") == "fits"
    assert asked("", "what: network at the mix position, is: yes") == "fits"
    assert asked("", "what: intercom stations, at least: 1") == "short"
    assert asked("", "what: analogue lines to the mix position, at least: 30") == "fits"
    assert asked("", "what: lighting control lines, at least: 1") == "ask"


DEMO = Path(__file__).parents[2] / "venue"


@pytest.mark.parametrize(
    ("wish", "answer"),
    [
        ("what: intercom channels, at least: 2", "fits"),  # A and B
        ("what: intercom channels, at least: 3", "short"),
        ("what: intercom stations, at least: 6", "fits, with a note"),
        # Nobody knows whether the dimmer room's works.
        ("what: intercom stations, at least: 7", "ask"),
        ("what: intercom stations, at least: 8", "short"),
        ("what: internet, is: yes", "fits"),  # the production network, 500 Mbit/s
        ("what: network at the mix position, is: yes", "fits"),
        ("what: lighting control lines, at least: 1", "short"),  # they begin in the dimmer room
    ],
)
def test_what_the_demo_answers(wish: str, answer: str) -> None:
    rider = rider_of(f"act: A\nneeds: [{{{wish}}}]\n", file="a.yml", rules=RULES)
    (found,) = fit(demo(), [rider])["verdicts"]
    assert found["verdict"] == answer


@cache
def demo() -> dict[str, Any]:
    """The demo's part of the pack that the check reads."""
    folder = read_folder(DEMO)
    return fit_record(pack_of(venue_of(folder.texts, folder.photos)))


def test_packs_that_go_with_people_count_without_a_place_and_say_so() -> None:
    text = "talkback_stations: [{kind: belt pack, count: 6, wired: yes, connector: XLR 3-pin}]\n"
    assert asked(text, "what: intercom stations, at least: 6") == "fits"
    assert asked(text, "what: intercom stations, at least: 7") == "short"
    assert item(text, "station").name == "no fixed place"


def test_cue_lights_and_relays_are_told_with_what_they_reach() -> None:
    lights = item("cue_lights: [{name: Cue, count: 8, worked_from: Desk}]\n", "cue-lights")
    assert (lights.text("count"), lights.text("worked_from")) == ("8", "Desk")
    relay = item("relays: [{name: Video, kind: video, rooms: [Green room]}]\n", "relay")
    assert (relay.text("kind"), relay.text("rooms")) == ("video", "Green room")


def test_a_kind_that_the_house_has_nowhere_is_short_and_what_is_there_counts() -> None:
    assert verdict("has_no: [fibre]\n", "fibres to the mix position", 1) == "short"
    assert verdict("has_no: [fibre]\n", "data lines to the mix position", 1) == "ask"
    assert verdict("has_no: [fibre]\n" + fibres("4"), "fibres to the mix position", 4) == "fits"


@pytest.mark.parametrize(
    ("relay", "answer"),
    [
        ("everywhere: yes", "fits"),
        ("everywhere: no, rooms: [Green room]", "short"),
        ("rooms: [Green room]", "ask"),
    ],
)
def test_calls_in_every_room_are_answered_by_the_sound_relay(relay: str, answer: str) -> None:
    house = fit_record(
        pack_of(
            venue_of(
                {
                    **{
                        name: text
                        for name, text in read_folder(QUARRY).texts.items()
                        if name in ("house.yml", "stage.yml")
                    },
                    "lines.yml": CHECKED + f"relays: [{{name: Calls, kind: audio, {relay}}}]\n",
                }
            )
        )
    )
    asked = rider_of(
        "act: A\nneeds: [{what: stage relay everywhere, is: yes}]\n", file="a.yml", rules=RULES
    )
    assert fit(house, [asked])["verdicts"][0]["verdict"] == answer
