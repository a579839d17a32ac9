"""
Loads that would lift a support count as nothing there, against statics by hand and an independent
beam library.
"""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas.beams import BodyLoad
from builder.formulas.contact import hung_body, level_case, slack_case
from builder.formulas.unrelieved import EVERY, Ways, parts_kg, unrelieved_kg, ways_held


def at(place_m: float, kg: float) -> BodyLoad:
    """A load at one place."""
    return {"from_m": place_m, "to_m": place_m, "kg": kg}


def ways(loads: list[BodyLoad], places_m: list[float], slack: int = EVERY) -> Ways:
    """The ways in which supports hold, as planned or with one slack."""
    body = hung_body(loads, places_m)
    case = level_case(body) if slack == EVERY else slack_case(body, slack)
    return ways_held(loads, places_m, case["kg"] or [0.0] * len(places_m), slack)


@pytest.mark.source(
    "statics by hand: supports at 0 and 10 m; 400 kg at 5 m bring 200 and 200, 100 kg at 14 m bring"
    " -40 and 140"
)
def test_a_load_beyond_an_end_takes_nothing_off_the_other_support() -> None:
    loads = [at(5.0, 400.0), at(14.0, 100.0)]
    assert parts_kg(loads, [0.0, 10.0], [0, 1]) == [
        pytest.approx([200.0, 200.0]),
        pytest.approx([-40.0, 140.0]),
    ]
    found = ways(loads, [0.0, 10.0])
    assert unrelieved_kg(found, [(0, 1.0)]) == pytest.approx(200.0)
    assert unrelieved_kg(found, [(1, 1.0)]) == pytest.approx(340.0)
    assert unrelieved_kg(found, [(0, 1.0), (1, 1.0)]) == pytest.approx(500.0)


@pytest.mark.source("by hand: no support pushes, so none carries more than all that hangs")
def test_no_support_carries_more_than_the_whole_weight() -> None:
    found = ways([at(20.0, 100.0), at(2.0, 900.0)], [0.0, 10.0])
    assert unrelieved_kg(found, [(1, 1.0)]) == pytest.approx(380.0)
    heavy = ways([at(20.0, 400.0), at(2.0, 600.0)], [0.0, 10.0])
    assert unrelieved_kg(heavy, [(1, 1.0)]) == pytest.approx(920.0)
    heavier = ways([at(20.0, 490.0), at(0.0, 510.0)], [0.0, 10.0])
    assert unrelieved_kg(heavier, [(1, 1.0)]) == pytest.approx(980.0)
    most = ways([at(30.0, 490.0), at(-9.9, 510.0)], [0.0, 10.0], EVERY)
    assert unrelieved_kg(most, [(1, 1.0)]) == pytest.approx(1000.0)


drawn = st.lists(st.builds(at, st.floats(0, 20), st.floats(1, 900)), min_size=1, max_size=4)
gaps = st.lists(st.floats(1, 8), min_size=1, max_size=4)


@pytest.mark.law
@settings(max_examples=150)
@given(drawn, gaps)
def test_no_choice_of_the_loads_brings_more(loads: list[BodyLoad], apart: list[float]) -> None:
    places = [sum(apart[:index]) for index in range(len(apart) + 1)]
    if level_case(hung_body(loads, places))["stability"] == "tips":
        return
    found = ways(loads, places)
    for count in range(1, len(loads) + 1):
        for some in combinations(loads, count):
            case = level_case(hung_body(some, places))
            if case["stability"] != "held" or min(hung_body(some, places)["pull_kg"]) < 0:
                continue
            for support, kg in enumerate(case["kg"]):
                assert kg <= unrelieved_kg(found, [(support, 1.0)]) + 1e-6 * 1000


@pytest.mark.law
@settings(max_examples=150)
@given(drawn, gaps)
def test_all_loads_together_never_bring_more(loads: list[BodyLoad], apart: list[float]) -> None:
    places = [sum(apart[:index]) for index in range(len(apart) + 1)]
    body = hung_body(loads, places)
    cases = [(EVERY, level_case(body)), *((one, slack_case(body, one)) for one in body["order"])]
    for slack, case in cases:
        if case["stability"] in ("tips", "unresolved") or (slack != EVERY and len(places) < 3):
            continue
        found = ways(loads, places, slack)
        for support, kg in enumerate(case["kg"]):
            assert kg <= unrelieved_kg(found, [(support, 1.0)]) + 1e-6 * 1000
