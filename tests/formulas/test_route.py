"""The route: tightest places, slopes, forklifts, docks."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import route as rt

LB, INCH = 0.45359237, 0.0254


@pytest.mark.source(
    "by hand: four doors in series, the third the narrowest; the lift carries the least"
)
def test_the_tightest_place_is_named_by_each_limit() -> None:
    doors = [
        rt.Opening("Dock door", width_m=3, height_m=3.2),
        rt.Opening("Corridor", width_m=2.4, height_m=3.0, carries_kg=2000),
        rt.Opening("Third door", width_m=2.13, height_m=3.0),
        rt.Opening("Lift", width_m=2.5, height_m=3.4, carries_kg=1200, length_m=4),
    ]
    found = rt.tightest(doors)
    assert found.width_m == rt.Least(2.13, "Third door")
    assert found.height_m == rt.Least(3.0, "Corridor")
    assert found.carries_kg == rt.Least(1200, "Lift")
    assert found.length_m == rt.Least(4, "Lift")
    assert dict(found.unknown)["carries_kg"] == ("Dock door", "Third door")


@pytest.mark.source("by hand: three steps, a door without any, and a flight of eleven")
def test_steps_on_a_way_add_up() -> None:
    assert rt.on_the_way([3, 0, 11]) == 14
    assert rt.on_the_way([]) == 0
    with pytest.raises(ValueError, match="count must be a number of at least 0, got -1"):
        rt.on_the_way([3, -1])


@pytest.mark.law
def test_a_route_that_states_nothing_has_no_tightest_place() -> None:
    assert rt.tightest([rt.Opening("Door")]).width_m is None
    with pytest.raises(ValueError, match="width_m of 'Door' must be a number above 0, got 0"):
        rt.tightest([rt.Opening("Door", width_m=0)])


@pytest.mark.source(
    "OSHA eTool field calculation: 5000 lb at 24 in gives 4285 lb at 28 in and 4000 lb at 30 in;"
    " 4000 lb gives 2666 lb at 36 in"
)
@pytest.mark.parametrize(
    ("rated_lb", "centre_in", "capacity_lb"),
    [(5000, 28, 4285), (5000, 30, 4000), (4000, 36, 2666), (5000, 20, 5000)],
)
def test_forklift_at_another_load_centre(
    rated_lb: float, centre_in: float, capacity_lb: float
) -> None:
    capacity_kg = rt.forklift_capacity_kg(
        rated_kg=rated_lb * LB, rated_centre_m=24 * INCH, load_centre_m=centre_in * INCH
    )
    assert capacity_kg / LB == pytest.approx(capacity_lb, abs=1)


@pytest.mark.source("by hand: seven trucks at three docks are three rounds of 40 minutes")
def test_trucks_come_in_rounds() -> None:
    assert rt.unloading_min(trucks=7, docks_at_once=3, minutes_per_truck=40) == 120


@pytest.mark.law
@given(st.integers(0, 40), st.integers(1, 10), st.floats(1, 120))
def test_more_docks_never_take_longer(trucks: int, docks: int, minutes: float) -> None:
    few = rt.unloading_min(trucks=trucks, docks_at_once=docks, minutes_per_truck=minutes)
    assert (
        rt.unloading_min(trucks=trucks, docks_at_once=docks + 1, minutes_per_truck=minutes) <= few
    )
    assert few >= trucks / docks * minutes - 1e-9


@pytest.mark.law
def test_angles_and_docks_out_of_range_are_refused() -> None:
    with pytest.raises(ValueError, match="docks_at_once must be a number above 0, got 0"):
        rt.unloading_min(trucks=1, docks_at_once=0, minutes_per_truck=1)
