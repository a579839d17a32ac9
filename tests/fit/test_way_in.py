"""
The way in: which route leads to the deck is said by the route, its tightest opening decides, and a
truck is tractor and trailer.
"""

from datetime import date

import pytest

from builder.department import Surroundings
from builder.departments.access.description import Access
from builder.departments.access.publish import publish
from builder.exchange import Offers
from builder.fit.interpreter import fit
from builder.fit.published import section_record
from builder.fit.records import FitPack
from builder.fit.wanted import wanted_of
from builder.reading.reader import read
from builder.registry import RULES
from builder.rider.asked import rider_of
from builder.stating import Ageing
from tests.fit.sample import Record, pack

AROUND = Surroundings(Offers(), Ageing(date(2026, 6, 1), 365), "metric")
CHECKED = "verified: {on: 2026-05-02, by: stage manager, how: measured}\n"
DOOR = "door_width: 3 m, door_height: 3 m"


def house(
    *routes: str, dock: str = DOOR, road: str = "longest_truck: 16.5 m", of: str = ""
) -> Record:
    """A house with one road, one dock and these routes."""
    text = (
        f"{CHECKED}approaches: [{{name: Road, {road}}}]\n"
        f"docks: [{{name: Dock, approach: Road, trucks_at_once: 2, {dock}}}]\n{of}"
        f"routes: [{', '.join(routes)}]\n"
    )
    section = publish(read(text, file="access.yml", kind=Access), AROUND).section
    whole = pack()
    return {**whole, "sections": [section_record(section, {}, wanted_of(RULES.values()))]}


def route(
    *passages: str, name: str = "In", to: str = "Upstage", leads: str = "leads_to: deck"
) -> str:
    """A route by these passages."""
    each = ", ".join(f"{{name: P{count}, {words}}}" for count, words in enumerate(passages))
    parts = [f"name: {name}", "from_dock: Dock", f"to_place: {to}", *([leads] if leads else [])]
    return f"{{{', '.join(parts)}, passages: [{each}]}}"


def found(record: Record, asked: str) -> Record:
    """The verdict on what one rider asks."""
    rider = rider_of(f"act: A\n{asked}\n", file="a.yml", rules=RULES)
    typed: FitPack = record  # type: ignore[assignment]
    (answer,) = fit(typed, [rider])["verdicts"]
    return dict(answer)


def case(record: Record, width: str = "2 m", height: str = "2 m") -> str:
    """The verdict on a truck with a case of this size."""
    asked = f"trucks: {{count: 1, largest case: {{width: {width}, height: {height}}}}}"
    return str(found(record, asked)["verdict"])


def opening(record: Record, width: str = "2 m") -> str:
    """The verdict on an opening of this width to the deck."""
    return str(found(record, f"needs: [{{what: opening width, at least: {width}}}]")["verdict"])


WIDE, NARROW = "width: 3 m, height: 3 m", "width: 1 m, height: 3 m"


@pytest.mark.parametrize("place", ["Mix position", "FOH", "Upstage left", "Plats 7"])
def test_the_route_says_that_it_leads_to_the_deck_and_the_name_of_a_place_does_not(
    place: str,
) -> None:
    narrow = route(NARROW)
    hall = route(WIDE, name="Wide", to=place, leads="leads_to: audience floor")
    assert (case(house(narrow, hall)), opening(house(narrow, hall))) == ("short", "short")
    deck = route(WIDE, name="Wide", to=place)
    assert (case(house(narrow, deck)), opening(house(narrow, deck))) == ("fits", "fits")
    unsaid = route(WIDE, name="Wide", to=place, leads="")
    assert (case(house(narrow, unsaid)), opening(house(narrow, unsaid))) == ("ask", "ask")


def test_what_is_asked_names_the_route_that_does_not_say_where_it_leads() -> None:
    unsaid = house(route(WIDE, leads="leads_to: unknown"))
    answer = found(unsaid, "needs: [{what: opening width, at least: 2 m}]")
    assert answer["reason"] == "The house has not said everything: In, leads to."
    asked = "trucks: {count: 1, largest case: {width: 2 m}}"
    assert found(unsaid, asked)["reason"] == ("By Dock: not stated whether In leads to the deck.")


def test_a_route_that_leads_elsewhere_alone_says_nothing_of_the_way_to_the_deck() -> None:
    record = house(route(WIDE, leads="leads_to: elsewhere"))
    assert (case(record), opening(record)) == ("ask", "ask")


def test_the_door_of_the_dock_is_part_of_the_way() -> None:
    tight = house(route(WIDE), dock="door_width: 1.9 m, door_height: 3 m")
    assert (case(tight), opening(tight)) == ("short", "short")
    assert case(house(route(WIDE), dock="door_width: 3 m, door_height: 1.9 m")) == "short"
    none = house(route(WIDE), dock="door_width: none, door_height: none")
    assert (case(none), opening(none)) == ("fits", "fits")


@pytest.mark.parametrize("dock", ["door_width: unknown, door_height: 3 m", "door_height: 3 m"])
def test_a_door_of_unknown_width_makes_no_fit_and_a_shortage_elsewhere_stays_one(
    dock: str,
) -> None:
    assert (case(house(route(WIDE), dock=dock)), opening(house(route(WIDE), dock=dock))) == (
        "ask",
        "ask",
    )
    assert case(house(route(NARROW), dock=dock)) == "short"


@pytest.mark.parametrize("width", ["", "width: unknown, ", "width: at most 3 m, "])
def test_one_passage_of_unknown_width_reaches_the_verdict(width: str) -> None:
    record = house(route(WIDE, f"{width}height: 3 m"))
    assert (case(record), opening(record)) == ("ask", "ask")
    narrow = house(route(WIDE, f"{width}height: 3 m", NARROW))
    assert (case(narrow), opening(narrow)) == ("short", "short")


def test_two_passages_of_one_name_are_two() -> None:
    twice = route(WIDE, "height: 3 m").replace("P1", "P0").replace("P0, height", "P0, height")
    known_last = route("height: 3 m", WIDE).replace("P1", "P0")
    assert (opening(house(twice)), opening(house(known_last))) == ("ask", "ask")


@pytest.mark.parametrize(("wanted", "word"), [("3 m", "fits"), ("3.001 m", "short")])
def test_a_door_gives_nothing_to_rounding(wanted: str, word: str) -> None:
    """25 mm were allowed: a door is a door (common practice, no source)."""
    assert case(house(route(WIDE)), width=wanted) == word
    assert case(house(route(WIDE)), height=wanted) == word
    assert opening(house(route(WIDE)), width=wanted) == word
    asked = f"needs: [{{what: dock door width, at least: {wanted}}}]"
    assert found(house(route(WIDE)), asked)["verdict"] == word


@pytest.mark.parametrize(
    ("line", "word"),
    [
        ("condition: out of service", "short"),
        ("terms: not for visitors", "short"),
        ("condition: limited", "fits, with a note"),
        ("terms: by arrangement", "fits, with a note"),
    ],
)
def test_a_passage_or_a_dock_that_is_closed_closes_the_way(line: str, word: str) -> None:
    door = house(route(WIDE, f"{WIDE}, {line}"))
    assert (case(door), opening(door)) == (word, word)
    dock = house(route(WIDE), dock=f"{DOOR}, {line}")
    assert (case(dock), opening(dock)) == (word, word)


@pytest.mark.parametrize(
    ("line", "word"),
    [
        ("condition: out of service", "short"),
        ("terms: not for visitors", "short"),
        ("condition: limited", "fits, with a note"),
        ("terms: by arrangement", "fits, with a note"),
    ],
)
def test_a_road_bears_the_docks_on_it_and_the_routes_from_them(line: str, word: str) -> None:
    """What is reached only by a closed road is not reached (common practice, no source)."""
    road = house(route(WIDE), road=f"longest_truck: 16.5 m, {line}, note: Ice")
    for need in ("opening width", "dock door width"):
        answer = found(road, f"needs: [{{what: {need}, at least: 2 m}}]")
        assert answer["verdict"] == word
        assert "Road, by which trucks come to" in " ".join((answer["reason"], *answer["notes"]))
    assert found(road, "needs: [{what: dock spaces, at least: 1}]")["verdict"] == word


def truck(record: Record, words: str) -> Record:
    """The verdict on one truck."""
    return found(record, f"trucks: {{count: 1, {words}}}")


def test_a_truck_is_tractor_and_trailer_and_its_length_is_asked_where_that_is_not_said() -> None:
    record = house(route(WIDE))
    assert truck(record, "length: 16 m, length of: whole truck")["verdict"] == "fits"
    trailer = truck(record, "length: 53 ft, length of: trailer")
    assert (trailer["verdict"], trailer["reason"]) == (
        "ask",
        "By Dock: truck length given of the trailer alone, and the limit is for tractor and"
        " trailer.",
    )
    silent = truck(record, "length: 16 m")
    assert silent["verdict"] == "ask"
    assert silent["act_question"] == (
        "A, rider line 2: how long is your longest truck, tractor and trailer together? The house"
        " lets in 16.5 m."
    )
    for of in ("", ", length of: trailer", ", length of: whole truck"):
        assert truck(record, f"length: 17 m{of}")["verdict"] == "short"


def test_where_nothing_limits_a_truck_nobody_asks_what_its_length_is_of() -> None:
    free = house(route(WIDE), road="longest_truck: none")
    assert truck(free, "length: 53 ft")["verdict"] == "fits"
    unsaid = house(route(WIDE), road="slope: 2 %")
    answer = truck(unsaid, "length: 53 ft")
    assert answer["verdict"] == "ask"
    assert answer["question"].startswith("How do trucks come")


def test_a_limit_for_the_trailer_is_held_against_the_trailer() -> None:
    record = house(route(WIDE), road="longest_trailer: 40 ft")
    assert truck(record, "length: 40 ft, length of: trailer")["verdict"] == "fits"
    assert truck(record, "length: 53 ft, length of: trailer")["verdict"] == "short"
    assert truck(record, "length: 40 ft, length of: whole truck")["verdict"] == "fits"
    whole = truck(record, "length: 16 m, length of: whole truck")
    assert whole["verdict"] == "ask"
    assert whole["act_question"] == (
        "A, rider line 2: how long is your longest trailer, without its tractor? The house lets in"
        " 40 ft."
    )
    assert truck(record, "length: 53 ft")["verdict"] == "ask"


def test_of_two_limits_on_length_both_hold() -> None:
    record = house(route(WIDE), road="longest_trailer: 40 ft, longest_truck: 15 m")
    assert truck(record, "length: 12 m, length of: whole truck")["verdict"] == "fits"
    assert truck(record, "length: 15.1 m, length of: whole truck")["verdict"] == "short"
    assert truck(record, "length: 41 ft, length of: trailer")["verdict"] == "short"
    assert truck(record, "length: 39 ft, length of: trailer")["verdict"] == "ask"
