"""
Outlets that can be loaded fully: alone, and all at the same time.

Counts are redone by hand beside each test.
"""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.departments.powered import INTAKE, SWITCH, figure, found, item, number, published

OUTLETS = "outlets: [{}]\n"
BLUE = (
    "{{place: {}, connector: IEC 60309 16 A 3-pin blue, count: {}, rating: 16 A, phases: {},"
    " fed_from: Switch}}"
)
RED = (
    "{{place: {}, connector: IEC 60309 63 A 5-pin red, count: {}, rating: 63 A, phases: all,"
    " fed_from: Switch}}"
)


@pytest.mark.source(
    "by hand: 125 A holds seven of 16 A on each phase, 21 of the 24 that stand on three"
)
def test_outlets_in_turn_are_counted_phase_by_phase() -> None:
    text = INTAKE + SWITCH + OUTLETS.format(BLUE.format("Stage", 24, "in turn"))
    assert item(text, "available").text("there") == "24"
    assert number(text, "available", "alone") == 21


@pytest.mark.source(
    "by hand: seven on three phases in turn stand 3, 2, 2; 40 A holds two of 16 A on each, so six"
)
def test_a_number_that_does_not_divide_begins_with_the_first_phase() -> None:
    text = (
        INTAKE
        + SWITCH.replace("125 A", "40 A")
        + OUTLETS.format(BLUE.format("Stage", 7, "in turn"))
    )
    assert number(text, "available", "alone") == 6


@pytest.mark.source(
    "by hand: 125 A holds seven of 16 A; 13 that all hang on L1 are no more than seven"
)
def test_outlets_on_one_phase_share_that_phase() -> None:
    assert (
        number(
            INTAKE + SWITCH + OUTLETS.format(BLUE.format("Stage", 13, "L1")), "available", "alone"
        )
        == 7
    )


@pytest.mark.source(
    "by hand: one of 63 A leaves 62 A, which holds three of 16 A on each phase; without it seven"
    " fit on each"
)
def test_places_at_the_same_time_take_from_each_other() -> None:
    text = (
        INTAKE
        + SWITCH
        + OUTLETS.format(f"{RED.format('Left', 1)}, {BLUE.format('Right', 21, 'in turn')}")
    )
    alone = [
        number(text, "available", "alone", of=name)
        for name in ("Left: IEC 60309 63 A 5-pin red", "Right: IEC 60309 16 A 3-pin blue")
    ]
    assert alone == [1, 21]
    assert figure(text, "available-in-all", "at-once").value.text == "21 of 22"  # type: ignore[union-attr]


@pytest.mark.source(
    "by hand: 50 A holds three of 16 A on each phase, nine in all; three places on one board get"
    " three each"
)
def test_places_on_the_same_board_share_what_there_is() -> None:
    outlets = ", ".join(BLUE.format(place, 9, "in turn") for place in ("Left", "Right", "Centre"))
    text = INTAKE + SWITCH.replace("125 A", "50 A") + OUTLETS.format(outlets)
    assert [
        number(text, "available", "at-once", of=f"{place}: IEC 60309 16 A 3-pin blue")
        for place in ("Left", "Right", "Centre")
    ] == [3, 3, 3]
    assert figure(text, "available-in-all", "at-once").value.text == "9 of 27"  # type: ignore[union-attr]


@pytest.mark.law
@given(counts=st.lists(st.integers(1, 9), min_size=1, max_size=5), limit_a=st.integers(16, 200))
@settings(max_examples=30)
def test_sharing_out_changes_no_sum_and_no_place_gets_more_than_it_has(
    counts: list[int], limit_a: int
) -> None:
    outlets = ", ".join(
        BLUE.format(f"Place {index}", count, "L1") for index, count in enumerate(counts)
    )
    section = published(
        INTAKE + SWITCH.replace("125 A", f"{limit_a} A") + OUTLETS.format(outlets)
    ).section
    at_once = [each.number("at-once") or 0 for each in section.of_kind("available")]
    assert sum(at_once) == min(sum(counts), limit_a // 16)
    assert all(got <= count for got, count in zip(at_once, counts, strict=True))


@pytest.mark.source(
    "by hand: at 80 % a 16 A outlet asks 12.8 A and a 125 A switch gives 100 A: seven on one phase"
)
def test_the_continuous_share_counts_for_outlets_and_services_alike() -> None:
    text = (
        "continuous_share: 80 %\n"
        + INTAKE
        + SWITCH
        + OUTLETS.format(BLUE.format("Stage", 13, "L1"))
    )
    assert number(text, "available", "alone") == 7


@pytest.mark.source("by hand: 125 A less 30 A leaves 95 A, which holds five of 16 A")
def test_what_stands_already_is_taken_off() -> None:
    loads = "standing_loads: [{what: A, on: Switch, draws: 30 A, power_factor: 1}]\n"
    assert (
        number(
            INTAKE + SWITCH + loads + OUTLETS.format(BLUE.format("Stage", 13, "L1")),
            "available",
            "alone",
        )
        == 5
    )


def test_outlets_out_of_service_or_not_for_visitors_are_not_available() -> None:
    for more in ("condition: out of service", "terms: not for visitors"):
        text = INTAKE + SWITCH + OUTLETS.format(BLUE.format("Stage", 3, f"L1, {more}"))
        assert published(text).section.of_kind("available") == ()


def test_outlets_of_one_connector_at_one_place_stand_together() -> None:
    text = (
        INTAKE
        + SWITCH
        + OUTLETS.format(f"{BLUE.format('Stage', 2, 'L1')}, {BLUE.format('Stage', 3, 'L2')}")
    )
    assert [
        (each.name, each.text("there")) for each in published(text).section.of_kind("available")
    ] == [("Stage: IEC 60309 16 A 3-pin blue", "5")]


@pytest.mark.parametrize(
    ("change", "missing"),
    [
        (("rating: 16 A", "rating: '?'"), "the outlet's rating"),
        ((", phases: L1", ""), "the outlet's phases"),
    ],
)
def test_outlets_that_say_too_little_are_not_counted_and_say_why(
    change: tuple[str, str], missing: str
) -> None:
    text = INTAKE + SWITCH + OUTLETS.format(BLUE.format("Stage", 3, "L1")).replace(*change)
    assert figure(text, "available", "alone").missing == (missing,)
    assert "not counted: Stage" in figure(text, "available-in-all", "at-once").note


def test_outlets_below_a_service_of_unknown_rating_are_not_counted() -> None:
    text = (
        INTAKE
        + "services: [{name: Switch, fed_from: Intake, rating: '?'}]\n"
        + OUTLETS.format(BLUE.format("Stage", 3, "L1"))
    )
    assert figure(text, "available", "at-once").missing == ("the rating of Switch",)


@pytest.mark.source("by hand: 32 A × 230 V = 7.36 kVA each; √3 × 400 V × 63 A = 43.6 kVA")
def test_shore_outlets_tell_their_power() -> None:
    shore = (
        "shore_power: [{{place: Dock, connector: {}, count: 2, rating: {}, phases: {}, fed_from:"
        " Switch}}]\n"
    )
    blue = INTAKE + SWITCH + shore.format("IEC 60309 32 A 3-pin blue", "32 A", "in turn")
    assert number(blue, "shore", "capacity") == pytest.approx(7360)
    red = INTAKE + SWITCH + shore.format("IEC 60309 63 A 5-pin red", "63 A", "all")
    assert number(red, "shore", "capacity") == pytest.approx(43_648, abs=1)


def test_shore_power_that_is_none_is_an_answer() -> None:
    fact = item("shore_power: none\n" + INTAKE, "rules").fact("shore_power")
    assert fact is not None
    assert fact.standing == "none"
    unsaid = item(INTAKE, "rules").fact("shore_power")
    assert unsaid is not None
    assert unsaid.standing == "not stated"


@pytest.mark.parametrize(
    ("connector", "near"),
    [
        ("IEC 60309 16 A 3-pin bleu", "IEC 60309 16 A 3-pin blue"),
        ("NEMA L21-3", "NEMA L21-30"),
        ("IEC 60309 16 A 3-pin blue", ""),
        ("IEC 60309 63 A 5-pin", ""),
        ("lugs for bare tails M12", ""),
    ],
)
def test_a_connector_written_much_like_a_known_one_is_asked_about(
    connector: str, near: str
) -> None:
    outlet = (
        f"outlets: [{{place: Left, connector: {connector}, count: 1, rating: 16 A, phases: L1,"
        " fed_from: Switch}]\n"
    )
    service = SWITCH.replace("rating: 125 A", f"connectors: [{connector}], rating: 125 A")
    for text in (INTAKE + SWITCH + outlet, INTAKE + service):
        told = found(text, "connector-unknown")
        assert [f"did you mean '{near}'?" in each.sentence for each in told] == (
            [True] if near else []
        )
