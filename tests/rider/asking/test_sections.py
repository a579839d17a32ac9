"""Each section of a rider as the check takes it: SI by hand from what the rider says."""

from typing import Any

import pytest

from tests.rider.riders import read

FOOT_M = 0.3048
POUND_KG = 0.45359237


def asked(section: str, number: int = 0) -> Any:
    """One requirement of a rider of a name and one section."""
    found = read(f"act: A\n{section}\n")
    assert found["mistakes"] == []
    return found["rider"]["requirements"][number]


def part(record: Any, *names: str) -> list[Any]:
    """Some of its values."""
    return [record[name] for name in names]


def test_a_feed_on_three_phases() -> None:
    feed = asked("power: [{for: sound, current: 63 A, within: 20 ft, of: Stage left}]")
    assert part(feed, "sort", "line", "department") == ["power", 2, "power"]
    assert part(feed, "use", "current_a", "phases") == ["sound", 63.0, "three"]
    assert part(feed, "within_m", "of", "apart") == [
        pytest.approx(20 * FOOT_M),
        "Stage left",
        False,
    ]
    assert part(feed, "carried", "strictness") == ["house", "must"]


def test_single_circuits_with_a_system_and_a_connector_apart_from_dimmers() -> None:
    line = asked(
        "power: [{for: backline, current: 16 A, count: 4, phases: single, apart from dimmers: yes,"
        " strictness: should}]"
    )
    assert part(line, "current_a", "count", "phases", "apart") == [16.0, 4.0, "single", True]
    assert part(line, "strictness", "within_m") == ["should", None]
    assert line["need"].startswith("4 × 16 A")


@pytest.mark.parametrize(
    ("words", "who"),
    [("", "house"), (", carried by: show", "show"), (", carried by: hire", "hire")],
)
def test_who_brings_it(words: str, who: str) -> None:
    need = asked(f"needs: [{{what: inputs, at least: 24{words}}}]")
    assert part(need, "carried", "low", "high", "way") == [who, 24.0, 24.0, "at least"]


def test_a_need_between_two_amounts_has_both() -> None:
    need = asked("needs: [{what: deck height, between: [3 ft, 5 ft]}]")
    assert part(need, "way", "low", "high") == [
        "between",
        pytest.approx(3 * FOOT_M),
        pytest.approx(5 * FOOT_M),
    ]


def test_a_rectangle_of_the_plot() -> None:
    plot = asked(
        "plot: [{name: Riser, width: 8 ft, depth: 6 ft, at: {across: 4 ft SR, depth: 12 ft US},"
        " height: 2 ft, weight: 500 lb, turned: 30 deg, strictness: should}]"
    )
    assert part(plot, "sort", "need", "strictness") == ["plot", "1 rectangle", "must"]
    (riser,) = plot["rectangles"]
    assert part(riser, "name", "strictness", "lane", "on") == ["Riser", "should", False, ""]
    assert part(riser, "width_m", "depth_m", "height_m") == [
        pytest.approx(feet * FOOT_M) for feet in (8, 6, 2)
    ]
    assert part(riser, "across_m", "upstage_m", "turned_deg") == [
        pytest.approx(-4 * FOOT_M),
        pytest.approx(12 * FOOT_M),
        pytest.approx(30),
    ]
    assert part(riser, "weight_kg", "foot_kg") == [pytest.approx(500 * POUND_KG), None]


def test_trucks_and_the_largest_case() -> None:
    trucks = asked(
        "trucks: {count: 2, length: 14 m, height: 4 m, weight: 18 t, largest case: {width: 0.8 m,"
        " height: 1.3 m, weight: 300 kg}}"
    )
    assert part(trucks, "count", "length", "height", "weight") == [2.0, 14.0, 4.0, 18000.0]
    assert trucks["need"] == (
        "2, 14 m long, 4 m high, 18 t gross; largest case 0.8 m wide, 1.3 m high, 300 kg heavy"
    )
    assert asked("trucks: {count: 2, length: 14 m}")["need"] == "2, 14 m long"
    trailer = asked("trucks: {count: 2, length: 14 m, length of: trailer}")
    assert trailer["need"] == "2, 14 m long, the trailer alone"
    assert (trucks["length_of"], trailer["length_of"]) == ("", "trailer")
    assert part(trucks, "case_width", "case_height", "case_weight") == [0.8, 1.3, 300.0]


def test_the_clock_asks_for_the_load_in_and_the_end() -> None:
    text = 'clock: {day: Friday, load in: "16:00", ends: "23:30", set: 90 min}'
    load_in, ends = asked(text), asked(text, 1)
    assert part(load_in, "sort", "time_s", "day") == ["load in", 16 * 3600.0, "friday"]
    assert part(ends, "sort", "time_s", "day") == ["ends", 23.5 * 3600.0, "friday"]
    clock: Any = read(f"act: A\n{text}\n")["rider"]["clock"]
    assert part(clock, "set", "doors", "changeover") == [5400.0, None, None]


def test_the_end_is_worked_out_from_the_first_note_and_the_set_where_both_are_said() -> None:
    ends = asked('clock: {day: Friday, on stage: "21:00", set: 90 min}')
    assert part(ends, "sort", "time_s") == ["ends", 22.5 * 3600.0]
    assert "22:30" in ends["need"]
    for words in ('on stage: "21:00"', "set: 90 min"):
        clock = read(f"act: A\nclock: {{day: Friday, {words}}}\n")["rider"]["requirements"]
        assert [need["sort"] for need in clock if need["sort"] == "ends"] == []


def test_a_level_with_its_terms() -> None:
    level = asked(
        "level: {at: 102 dB(A), metric: equivalent level, over: 15 min, place: mix position}"
    )
    assert part(level, "level_db", "weighting", "metric") == [102.0, "A", "equivalent level"]
    assert part(level, "over_s", "place") == [900.0, "mix position"]


def test_what_stays_and_the_revision() -> None:
    found = read(
        "act: A\nrevision: {number: 7, on: 2026-05-03, by: B}\nstays on deck: 10 ft\n"
        "configuration: Seated\nneeds: [{what: inputs, at least: 1}]\n"
    )
    rider = found["rider"]
    assert rider["stays_m"] == pytest.approx(10 * FOOT_M)
    assert rider["revision"] == "7 of 2026-05-03"
    assert rider["configuration"] == "Seated"
    assert found["parts"] == ["needs[1]"]


def test_a_hang_with_its_weight_a_metre_and_loads_at_places_spread_and_all_along() -> None:
    hang = asked(
        "hangs: [{name: W, length: 10 m, weight: 12 kg/m, hoists: show, hoist weight: 30 kg,"
        " loads: [{what: a, weight: 20 kg, count: 2, at: 3 m}, {what: b, weight: 40 kg, from: 1 m,"
        " to: 5 m}, {what: c, weight: 50 kg}], supports: [{point: R1, at: 1 m}, {across: 2 m SR,"
        " depth: 3 m US, at: 9 m, apex: 8 m}]}]"
    )
    assert [part(load, "from_m", "to_m", "kg") for load in hang["loads"]] == [
        [0.0, 10.0, 120.0],
        [3.0, 3.0, 40.0],
        [1.0, 5.0, 40.0],
        [0.0, 10.0, 50.0],
    ]
    assert [part(one, "point", "across_m", "depth_m") for one in hang["supports"]] == [
        ["R1", None, None],
        ["", -2.0, 3.0],
    ]
    assert [part(one, "at_m", "apex_m", "load_kg") for one in hang["supports"]] == [
        [1.0, None, None],
        [9.0, 8.0, None],
    ]
    assert part(hang, "hoists", "hoist_kg") == ["show", 30.0]
    assert hang["need"].startswith("2 supports, 250 kg (551 lb) in all")


def test_a_hang_of_one_support_and_a_weight_in_all() -> None:
    hang = asked("hangs: [{name: W, supports: [{point: R1, load: 26 kg}]}]")
    assert hang["loads"] == []
    assert part(hang, "hoists", "hoist_kg") == ["", 0.0]
    assert part(hang["supports"][0], "at_m", "load_kg") == [0.0, 26.0]
    assert hang["need"].startswith("1 support, 26.0 kg (57.3 lb) in all")
    whole = asked("hangs: [{name: W, weight in all: 80 kg, supports: [{point: R1}]}]")
    assert [part(load, "from_m", "to_m", "kg") for load in whole["loads"]] == [[0.0, 0.0, 80.0]]


def test_an_amount_that_nobody_knows_asks_for_nothing_in_numbers() -> None:
    need = asked("needs: [{what: inputs, at least: unknown}]")
    assert part(need, "way", "low", "high", "words") == ["unknown", 0.0, 0.0, ""]


@pytest.mark.parametrize("place", ["at: 1 m", "from: 0 m, to: 1 m"])
def test_a_load_with_a_place_needs_no_length_of_its_hang(place: str) -> None:
    hang = asked(
        f"hangs: [{{name: W, loads: [{{what: a, weight: 20 kg, {place}}}],"
        " supports: [{point: R1, at: 0 m}, {point: R2, at: 2 m}]}]"
    )
    assert hang["loads"][0]["kg"] == 20.0
