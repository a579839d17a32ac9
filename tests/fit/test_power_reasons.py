"""
What a load on power is told beside its verdict: the true reason, what is known, the class of its
voltage, and where else there is something.
"""

import pytest

from builder.fit.interpreter import fit
from tests.fit.sample import Record, item, pack, rider, value
from tests.fit.test_circuits import circuits, feed, outlet
from tests.fit.test_deep import first, load

EUROPE = "230/400 V three phase 50 Hz"


def board(free_a: float = 63.0, name: str = "Board", **more: Record) -> Record:
    """A board with as much free on each phase."""
    return feed(name, (free_a, free_a, free_a), **more)


def switch(free_a: float | None, name: str = "Switch", **more: Record) -> Record:
    """A service of which the rating is known, and what is free only if it is given."""
    free = {} if free_a is None else {f"free__L{k}": value("x", free_a) for k in (1, 2, 3)}
    return item("service", name, **free, rating=value("400 A", 400.0), **more)


def told(requirement: Record, *power: Record, **sections: list[Record]) -> tuple[str, str]:
    """The verdict and the reason of one load."""
    found = first(requirement, power=list(power), **sections)
    return found["verdict"], found["reason"]


def place(name: str, across_m: float) -> Record:
    """A place of the stage on the reference line."""
    return item("place", name, at__across=value("x", across_m), at__depth=value("x", 0.0))


# Not stated is asked.


@pytest.mark.parametrize("phases", [value(standing="unknown"), None])
def test_outlets_whose_phases_nobody_states_are_asked_about(phases: Record | None) -> None:
    line = outlet(9)
    line["values"] = {key: each for key, each in line["values"].items() if key != "phases"}
    if phases is not None:
        line["values"]["phases"] = phases
    verdict, reason = told(circuits(2, 16.0), board(), line)
    assert (verdict, "their rating or phases" in reason) == ("ask", True)


def test_outlets_without_a_phase_on_a_board_of_one_phase_are_on_that() -> None:
    single = item("board", "Board", free__L2=value("x", 63.0), wired=value("L2"))
    line = outlet(3)
    del line["values"]["phases"]
    assert told(circuits(3, 16.0), single, line)[0] == "fits"
    assert told(circuits(3, 16.0), single, {**outlet(3, phases="all")})[0] == "fits"


def test_a_house_that_lists_no_outlets_is_asked() -> None:
    assert told(circuits(2, 16.0), board()) == (
        "ask",
        "The house has not said which outlets it has.",
    )


def test_more_outlets_than_all_that_are_counted_are_short_whatever_else_is_unknown() -> None:
    line = outlet(3)
    line["values"]["phases"] = value(standing="unknown")
    assert told(circuits(4, 16.0), board(), line)[0] == "short"
    assert told(circuits(3, 16.0), board(), line)[0] == "ask"


# A rating is a rating.


@pytest.mark.parametrize(("current_a", "verdict"), [(400.0, "ask"), (400.1, "short")])
def test_more_than_a_rating_is_short_whatever_is_free_behind_it(
    current_a: float, verdict: str
) -> None:
    found = first(load(current_a), power=[switch(None)])
    assert found["verdict"] == verdict
    if verdict == "short":
        assert found["reason"] == "Switch: rated 400 A."
        assert found["margin"][0] == "−0.10 A"


@pytest.mark.parametrize(("current_a", "verdict"), [(16.0, "ask"), (16.1, "short")])
def test_more_than_outlets_are_rated_for_is_short_whatever_feeds_them(
    current_a: float, verdict: str
) -> None:
    line = outlet(9, fed="A board that nobody rated", rating=value("16 A", 16.0))
    assert told(circuits(2, current_a), line)[0] == verdict


def test_a_rating_that_is_too_small_is_no_other_voltage() -> None:
    line = outlet(9, rating=value("16 A", 16.0))
    found = first(
        circuits(2, 32.0, system="230 V single phase"), power=[board(system=value(EUROPE)), line]
    )
    assert (found["verdict"], found["reason"]) == (
        "short",
        "0 such outlets of 2. The largest outlets there are of 16 A.",
    )
    assert found["remedy"].startswith("Bring a distribution board")


def test_what_outlets_carry_for_hours_is_a_note_where_more_is_asked() -> None:
    line = outlet(3, **{"for-hours": value("12.8 A", 12.8)})
    more = first(circuits(1, 16.0), power=[board(), line])
    assert more["verdict"] == "fits, with a note"
    assert more["notes"] == ["For hours on end one of Stage left may carry 12.8 A."]
    assert first(circuits(1, 12.8), power=[board(), line])["verdict"] == "fits"


# What is known is answered.


def test_what_is_known_of_a_service_is_told_beside_what_is_asked() -> None:
    bare = switch(None, wires=value("5", 5.0), place=value("Upstage right"))
    wish = load(400.0, system="230/400 V three phase", connector="lugs")
    assert told(wish, bare) == (
        "ask",
        "Switch: 400 A, Upstage right, 5 wires stated; its system is not stated, its connectors are"
        " not stated, what is free is not known.",
    )


def test_the_service_meant_for_the_department_is_named_first() -> None:
    other = switch(None, "Other", dedicated_to=value("lighting"))
    own = switch(None, "Own", dedicated_to=value("sound"))
    assert told(load(100.0), other, own)[1].startswith("Own: ")
    assert told(load(500.0), other, own)[1].startswith("Own: ")


def test_the_sum_that_is_asked_is_told_beside_the_sum_that_is_stated() -> None:
    power = [switch(100.0, "A"), switch(100.0, "B")]
    found = fit(pack(power=power), [rider(load(90.0), load(80.0), load(30.0))])["verdicts"]
    assert [each["verdict"] for each in found] == ["fits", "fits", "short"]
    assert found[2]["reason"].endswith(
        "In all 200 A on each phase are asked; 2 services are rated 800 A together."
    )
    assert "In all" not in found[0]["reason"]
    assert "In all" not in first(load(900.0), power=power)["reason"]


def test_a_load_on_three_phases_is_not_put_on_a_service_of_two() -> None:
    two = switch(100.0, wired=value("L1 L2"))
    assert told(load(50.0), two) == ("short", "Switch: L1 L2 alone.")
    assert told(load(50.0), switch(100.0, wired=value("L1 L2 L3")))[0] == "fits"


# Nominal voltages of one class.

CLASS = "One supply serves both (IEC 60038)"


@pytest.mark.source(
    "IEC 60038, clause 4, from memory: 230 V came of 220 and 240, 400 V of 380 and 415"
)
@pytest.mark.parametrize(
    ("wish", "verdict"),
    [
        ("400 V", "fits"),
        ("230/400 V three phase", "fits"),
        ("3 phase 400 V", "fits"),
        ("415 V", "fits, with a note"),
        ("380 V three phase", "fits, with a note"),
        ("220/380 V three phase", "fits, with a note"),
        ("240 / 415 v", "fits, with a note"),
        ("208 V", "short"),
        ("480 V", "short"),
        ("500 V", "short"),
    ],
)
def test_a_feed_of_another_nominal_voltage_of_the_class_is_a_note(wish: str, verdict: str) -> None:
    found = first(load(50.0, system=wish), power=[switch(100.0, system=value(EUROPE))])
    assert found["verdict"] == verdict
    assert any(CLASS in note for note in found["notes"]) == (verdict == "fits, with a note")


@pytest.mark.source("IEC 60038, clause 4, from memory")
@pytest.mark.parametrize(
    ("wish", "house", "verdict"),
    [
        ("240 V single phase", EUROPE, "fits, with a note"),
        ("220 V", EUROPE, "fits, with a note"),
        ("230 V", EUROPE, "fits"),
        ("230 V", "240/415 V three phase 50 Hz", "fits, with a note"),
        ("120 V", EUROPE, "short"),
        ("200 V", EUROPE, "short"),
        ("250 V", EUROPE, "short"),
    ],
)
def test_circuits_of_another_nominal_voltage_of_the_class_are_a_note(
    wish: str, house: str, verdict: str
) -> None:
    found = first(circuits(2, 16.0, system=wish), power=[board(system=value(house)), outlet(9)])
    assert found["verdict"] == verdict


def test_a_system_without_a_voltage_is_told_the_house_s() -> None:
    found = first(load(50.0, system="three phase"), power=[switch(100.0, system=value(EUROPE))])
    assert found["notes"] == [f"The rider states no voltage; this is {EUROPE}."]


@pytest.mark.parametrize(
    ("house", "verdict"),
    [
        ("230 V three phase 50 Hz", "ask"),
        ("230 V single phase 50 Hz", "fits"),
        ("230/400 V three phase 50 Hz", "fits"),
    ],
)
def test_one_voltage_of_three_phases_says_not_what_a_circuit_has(house: str, verdict: str) -> None:
    power = [board(system=value(house)), outlet(9)]
    assert told(circuits(2, 16.0, system="230 V"), *power)[0] == verdict


def test_a_service_whose_voltage_is_between_nobody_knows_what_is_asked() -> None:
    service = switch(100.0, system=value("400 V three phase"))
    assert told(load(50.0, system="230/400 V"), service) == (
        "ask",
        "Switch: 400 A, 400 V three phase stated; 400 V three phase: between lines or to neutral is"
        " not stated.",
    )


# A count without a current, and places.


def test_a_count_of_outlets_may_be_asked_without_a_current() -> None:
    line = outlet(9, rating=value("16 A", 16.0))
    found = first(circuits(9, 0.0), power=[board(20.0), line])
    assert found["verdict"] == "fits, with a note"
    assert found["notes"] == ["The rider states no current; these are of 16 A."]
    assert told(circuits(10, 0.0), board(20.0), line)[0] == "short"


def test_a_place_that_the_house_does_not_name_is_answered_with_its_names() -> None:
    lines = [outlet(2), outlet(2, place=value("Dock")), outlet(2, place=value("Dock"))]
    assert told(circuits(1, 16.0, of="Pit"), board(), *lines) == (
        "ask",
        "The house names no place Pit. Its places with outlets: Stage left, Dock.",
    )


def test_a_place_without_outlets_is_answered_with_the_nearest_that_has_some() -> None:
    stage = [place("Pit", 0.0), place("Stage left", 9.0), place("Dock", -5.0)]
    lines = [outlet(2), {**outlet(2, place=value("Dock")), "key": "x.dock"}]
    wish = circuits(1, 16.0, of="Pit")
    assert told(wish, board(), *lines, stage=stage) == (
        "short",
        "0 such outlets of 1. The nearest place with such outlets is Dock, 5.00 m away in a"
        " straight line.",
    )
    nowhere = [item("place", "Pit")]
    assert told(wish, board(), *lines, stage=nowhere)[1] == (
        "0 such outlets of 1. Such outlets are at Stage left, Dock."
    )


# Transformers.


def behind(lines: float, ratio: float, free_a: float, wired: str = "L1 L2 L3") -> list[Record]:
    """A supply with as much free, and a board behind a transformer on it."""
    through = {"through": value("x", ratio), "stands_on": value("x", lines)}
    supply = feed("Supply", (free_a, free_a, free_a), kind="supply")
    panel = feed("Board", (999.0, 999.0, 999.0), "Supply", wired=value(wired), **through)
    beside = feed("Beside", (999.0, 999.0, 999.0), "Supply")
    return [supply, panel, beside]


@pytest.mark.source(
    "OpenDSS 0.14.5: 160 A on one line of 120/240 V are 40 A in both lines of 480 V; 100 A of 208 V"
    " up to 43.3 A in one line of a 480 V source and 25.0 A in the others"
)
@pytest.mark.parametrize(
    ("lines", "ratio", "wired", "current_a", "beside_a"),
    [
        (2.0, 0.5, "L1 L2", 160.0, (40.0, 40.0, 0.0)),
        (3.0, 208 / 480, "L1 L2 L3", 100.0, (43.33, 25.02, 25.02)),
        (1.0, 208 / 480, "L1 L2 L3", 100.0, (43.33, 0.0, 0.0)),
    ],
)
def test_a_circuit_behind_a_transformer_takes_from_its_source_what_it_is_there(
    lines: float, ratio: float, wired: str, current_a: float, beside_a: tuple[float, ...]
) -> None:
    power = behind(lines, ratio, 100.0, wired)
    rows = [outlet(1, phases="L1", rating_a=400.0)]
    for k, taken_a in enumerate(beside_a, 1):
        beside = outlet(1, phases=f"L{k}", rating_a=400.0, fed="Beside")
        house = pack(power=[*power, *rows, {**beside, "name": "B", "key": "x.b"}])
        for left_a in (100 - taken_a - 0.02, 100 - taken_a + 0.02)[: 2 if taken_a else 1]:
            wishes = (
                circuits(1, current_a, connector="IEC 60309 16 A"),
                circuits(1, left_a, connector="B"),
            )
            found = [each["verdict"] for each in fit(house, [rider(*wishes)])["verdicts"]]
            assert found == ["fits", "fits" if left_a < 100 - taken_a else found[1]]
            assert (found[1] == "fits") == (left_a < 100 - taken_a)


@pytest.mark.source("OpenDSS 0.14.5: an even 100 A of 208 V is 43.33 A on each line of 480 V")
@pytest.mark.parametrize(("current_a", "verdict"), [(56.6, "fits"), (56.7, "short")])
def test_a_feed_behind_a_transformer_takes_its_ratio(current_a: float, verdict: str) -> None:
    power = behind(3.0, 208 / 480, 100.0)
    for one in power[1:]:
        one["kind"] = "service"
    power[1]["values"]["system"] = value("120/208 V three phase")
    power[2]["values"]["system"] = value("277/480 V three phase")
    wishes = [load(100.0, system="120/208 V"), load(current_a, system="277/480 V")]
    found = fit(pack(power=power), [rider(*wishes)])["verdicts"]
    assert [each["verdict"] for each in found] == ["fits", verdict]
