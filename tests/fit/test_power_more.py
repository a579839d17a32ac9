"""
What a load asks of its feed beyond current and voltage: the part of the stage, a breaker and a
transformer of its own, wires, and what its residual current device trips at.
"""

import pytest

from builder.fit.areas import by_area
from builder.fit.interpreter import fit
from tests.fit.sample import Record, item, pack, rider, value
from tests.fit.test_circuits import circuits, outlet
from tests.fit.test_deep import first, load
from tests.fit.test_power_reasons import board, switch

BLANK = {"at": "", "own": False, "apart": False, "isolated": False, "wires": 0.0, "trips_a": None}
DECK = {"kind": "deck", "name": "Deck", "corners": [[-6, 0], [6, 0], [6, 9], [-6, 9]]}
"""A deck of 12 m by 9 m, upstage of the datum."""


def wants(current_a: float = 32.0, **more: object) -> Record:
    """A feed that asks more."""
    return {**load(current_a), "more": {**BLANK, **more}}


def on(requirement: Record, *power: Record, places: tuple[Record, ...] = ()) -> Record:
    """The verdict on one load of a house with a drawn deck."""
    house = pack(power=list(power), stage=list(places))
    house["sections"] = [
        {**section, "outlines": [DECK]} if section["key"] == "stage" else section
        for section in house["sections"]
    ]
    (found,) = fit(house, [rider(requirement)])["verdicts"]
    return found


def at(across_m: float, depth_m: float) -> Record:
    """Where something is on the plan."""
    return {"at__across": value("x", across_m), "at__depth": value("x", depth_m)}


# The part of the stage, by the middle of a deck of 12 m by 9 m.


@pytest.mark.parametrize(
    ("wanted", "across_m", "depth_m", "verdict"),
    [
        ("stage left", 5.0, 1.0, "fits"),
        ("stage left", -5.0, 1.0, "short"),
        ("upstage", 0.0, 8.0, "fits"),
        ("upstage", 0.0, 4.0, "short"),
        ("upstage left", 5.0, 8.0, "fits"),
        ("upstage left", 5.0, 1.0, "short"),
        ("upstage centre", 1.9, 8.0, "fits"),
        ("upstage centre", 2.1, 8.0, "short"),
        ("downstage", 0.0, -1.5, "fits"),
        ("downstage", 0.0, -2.5, "short"),
        ("stage left", 5.0, -30.0, "short"),
        ("wing stage left", 8.0, 3.0, "fits"),
        ("wing stage left", 5.0, 3.0, "short"),
    ],
)
def test_a_part_of_the_stage_is_told_by_the_plan(
    wanted: str, across_m: float, depth_m: float, verdict: str
) -> None:
    found = on(wants(at=wanted), switch(100.0, **at(across_m, depth_m)))
    assert found["verdict"].split(",")[0] == verdict


@pytest.mark.parametrize(
    ("asked", "there", "word"),
    [
        ("stage left", "stage left", "fits"),
        ("stage left", "downstage left", "fits"),
        ("stage left", "wing stage left", "fits"),
        ("upstage left", "stage left", "ask"),
        ("upstage left", "downstage left", "short"),
        ("upstage", "centre stage", "ask"),
        ("upstage", "audience", "short"),
        ("stage left", "backstage", "ask"),
        ("stage left", "stage right", "short"),
    ],
)
def test_a_part_of_the_stage_is_told_by_the_part_that_the_house_names(
    asked: str, there: str, word: str
) -> None:
    assert by_area(asked, there) == word
    place = item("place", "Corner", area=value(there))
    found = on(wants(at=asked), switch(100.0, place=value("Corner")), places=(place,))
    assert found["verdict"].split(",")[0] == word


def test_a_feed_of_which_nobody_says_where_it_is_is_asked_and_the_reason_names_the_place() -> None:
    assert on(wants(at="upstage"), switch(100.0))["verdict"] == "ask"
    found = on(wants(at="upstage"), switch(100.0, place=value("Pit wall"), **at(0.0, 1.0)))
    assert found["reason"] == "Switch: it is at Pit wall, not upstage."


def test_circuits_are_told_by_the_place_of_their_outlets() -> None:
    wanted = {**circuits(2, 16.0), "more": {**BLANK, "at": "stage left"}}
    line = outlet(3)
    left = item("place", "Left", area=value("stage left"))
    right = item("place", "Right", area=value("stage right"))
    for place, verdict in ((left, "fits"), (right, "short")):
        there = {**line, "values": {**line["values"], "place": value(place["name"])}}
        assert on(wanted, board(), there, places=(place,))["verdict"].split(",")[0] == verdict
    assert on(wanted, board(), line)["verdict"] == "ask"


# A breaker of its own.


def test_a_breaker_of_its_own_needs_the_house_to_say_that_nothing_else_hangs_on_it() -> None:
    breaker = value("63 A", 63.0)
    alone = switch(100.0, breaker=breaker, shared_with=value(standing="none"))
    assert first(wants(own=True), power=[alone])["verdict"] == "fits"
    silent = switch(100.0, breaker=breaker)
    assert first(wants(own=True), power=[silent])["verdict"] == "ask"
    shared = switch(100.0, breaker=breaker, shared_with=value("house dimmers"))
    assert first(wants(own=True), power=[shared])["verdict"] == "short"
    unknown = switch(100.0, shared_with=value(standing="none"))
    assert first(wants(own=True), power=[unknown])["verdict"] == "ask"


@pytest.mark.parametrize("kind", ["load", "board", "outlet"])
def test_what_the_house_feeds_from_it_too_makes_it_short(kind: str) -> None:
    service = switch(100.0, breaker=value("63 A", 63.0), shared_with=value(standing="none"))
    name = "on" if kind == "load" else "fed_from"
    other = item(kind, "Hoists on standby", **{name: value("Switch")})
    found = first(wants(own=True), power=[service, other])
    assert found["verdict"] == "short"
    assert "its breaker feeds Hoists on standby too" in found["reason"]


def test_another_load_of_the_show_on_the_same_service_is_asked_about() -> None:
    service = switch(100.0, breaker=value("63 A", 63.0), shared_with=value(standing="none"))
    house = pack(power=[service])
    found = fit(house, [rider(wants(own=True), {**load(10.0), "title": "Power for video"})])
    assert [each["verdict"] for each in found["verdicts"]] == ["ask", "fits"]
    assert "Power for video stands there too" in found["verdicts"][0]["reason"]


def test_three_phase_sockets_with_a_breaker_each_are_asked_about_before_a_feed_is_short() -> None:
    shared = switch(100.0, breaker=value("63 A", 63.0), shared_with=value("dimmers"))
    sockets = item(
        "outlet",
        "IEC 60309 32 A 5-pin",
        place=value("Left"),
        count=value("2", 2.0),
        rating=value("32 A", 32.0),
        breaker=value("32 A", 32.0),
        phases=value("all"),
        fed_from=value("Switch"),
    )
    found = first(wants(32.0, own=True), power=[shared, sockets])
    assert found["verdict"] == "ask"
    assert "At Left there are sockets of three phases with a breaker each" in found["reason"]
    assert first(wants(33.0, own=True), power=[shared, sockets])["verdict"] == "short"


# Transformer, wires, residual current device.


@pytest.mark.parametrize(
    ("more", "values", "verdict"),
    [
        ({"isolated": True}, {"transformer": value("63 kVA", 63_000.0)}, "fits"),
        ({"isolated": True}, {"transformer": value(standing="none")}, "short"),
        ({"isolated": True}, {"transformer": value(standing="unknown")}, "ask"),
        ({"isolated": True}, {}, "ask"),
        ({"wires": 5.0}, {"wires": value("5", 5.0)}, "fits"),
        ({"wires": 5.0}, {"wires": value("4", 4.0)}, "short"),
        ({"wires": 5.0}, {}, "ask"),
        ({"trips_a": 0.03}, {"residual_current_device": value("30 mA", 0.03)}, "fits"),
        ({"trips_a": 0.03}, {"residual_current_device": value("300 mA", 0.3)}, "short"),
        ({"trips_a": 0.03}, {"residual_current_device": value(standing="none")}, "short"),
        ({"trips_a": 0.03}, {"residual_current_device": value(standing="unknown")}, "ask"),
        ({"trips_a": 0.03}, {}, "ask"),
    ],
)
def test_what_is_between_a_feed_and_the_house_is_told_or_asked(
    more: Record, values: Record, verdict: str
) -> None:
    assert first(wants(**more), power=[switch(100.0, **values)])["verdict"] == verdict


def test_circuits_are_isolated_with_what_feeds_them() -> None:
    wanted = {**circuits(2, 16.0), "more": {**BLANK, "isolated": True}}
    isolated = board(transformer=value("10 kVA", 10_000.0))
    assert first(wanted, power=[isolated, outlet(3)])["verdict"] == "fits"
    assert first(wanted, power=[board(), outlet(3)])["verdict"] == "ask"


# Another transformer than dimmers.


def fed(name: str, above: str, **more: Record) -> Record:
    """A service that is fed from something."""
    return switch(100.0, name, fed_from=value(above), **more)


def test_dimmers_behind_the_same_transformer_make_it_short_and_behind_another_do_not() -> None:
    intake, other = item("supply", "Intake"), item("supply", "Second intake")
    dimmed = fed("Dimmer switch", "Intake", dimmers=value("yes"))
    wanted = wants(apart=True)
    found = first(wanted, power=[intake, fed("Switch", "Intake"), dimmed])
    assert found["verdict"] == "short"
    assert "it shares the transformer of Intake with Dimmer switch" in found["reason"]
    beside = [fed("Switch", "Second intake"), dimmed]
    assert first(wanted, power=[intake, other, *beside])["verdict"] == "ask"
    kva = value("630 kVA", 630_000.0)
    both = [item("supply", name, transformer=kva) for name in ("Intake", "Second intake")]
    assert first(wanted, power=[*both, *beside])["verdict"].startswith("fits")
    own = fed("Switch", "Intake", transformer=value("63 kVA", 63_000.0))
    assert first(wanted, power=[both[0], own, dimmed])["verdict"].startswith("fits")


def test_a_source_that_nobody_names_is_asked_about() -> None:
    assert first(wants(apart=True), power=[switch(100.0)])["verdict"] == "ask"
