"""Turns against the design vehicles of the Green Book and the European circle."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas.tractrix import Piece, Vehicle, drive, rear_axles
from builder.formulas.turning import (
    longest_trailer_wheelbase_m,
    outer_wheel_radius_m,
    steady_radius_m,
    turn_on_arc,
)

FT = 0.3048


def vehicle_ft(width: float, wheelbase: float, trailer: float = 0.0) -> Vehicle:
    return Vehicle("test", width * FT, wheelbase * FT, 0, 0, trailer * FT)


@pytest.mark.source(
    "AASHTO Green Book minimum inside radii by US Army SDDCTEA: P 14.4, WB-40 19.3, WB-62 7.4 ft;"
    " SU-30 28 ft 4 in; centreline radii, wheelbases and WB-67's 1.9 ft from memory"
)
@pytest.mark.parametrize(
    ("vehicle", "centre_radius_ft", "inside_ft", "tolerance_ft"),
    [
        (vehicle_ft(7, 11), 21, 14.4, 0.05),
        (vehicle_ft(8, 20), 38, 28.4, 0.05),
        (vehicle_ft(8, 12.5, 25.5), 36, 19.3, 0.05),
        (vehicle_ft(8.5, 19.5, 41), 41, 7.4, 0.05),
        (
            vehicle_ft(8.5, 19.5, 45.5),
            41,
            1.9,
            0.1,
        ),  # the book cuts rather than rounds, or the value is remembered so
    ],
    ids=["P", "SU-30", "WB-40", "WB-62", "WB-67"],
)
def test_inside_radius_of_design_vehicles(
    vehicle: Vehicle, centre_radius_ft: float, inside_ft: float, tolerance_ft: float
) -> None:
    turn = turn_on_arc(vehicle, centre_radius_m=centre_radius_ft * FT)
    assert turn.inside_radius_m / FT == pytest.approx(inside_ft, abs=tolerance_ft)


@pytest.mark.source(
    "AASHTO Green Book minimum design turning radius of WB-62, 44.8 ft, by US Army SDDCTEA"
)
def test_outside_radius_of_a_long_articulated_truck() -> None:
    outer_m = outer_wheel_radius_m(front_radius_m=41 * FT, wheelbase_m=19.5 * FT, width_m=8.5 * FT)
    assert outer_m / FT == pytest.approx(44.8, abs=0.05)
    assert (
        turn_on_arc(vehicle_ft(8.5, 19.5, 41), centre_radius_m=41 * FT).outside_radius_m >= outer_m
    )


@pytest.mark.source(
    "AASHTO Green Book minimum design turning radii by US Army SDDCTEA: P 23.8, WB-40 39.9 ft; the"
    " book's centreline radii are whole feet, and from memory, so the pairs agree to 0.3 ft and no"
    " closer"
)
@pytest.mark.parametrize(
    ("centre_ft", "wheelbase_ft", "width_ft", "outer_ft"), [(21, 11, 7, 23.8), (36, 12.5, 8, 39.9)]
)
def test_outside_radius_of_shorter_vehicles(
    centre_ft: float, wheelbase_ft: float, width_ft: float, outer_ft: float
) -> None:
    outer_m = outer_wheel_radius_m(
        front_radius_m=centre_ft * FT, wheelbase_m=wheelbase_ft * FT, width_m=width_ft * FT
    )
    assert outer_m / FT == pytest.approx(outer_ft, abs=0.3)


@pytest.mark.source(
    "independent tractrix integration validated on four AASHTO radii: 16.9 ft for WB-62, 19.2 ft"
    " for WB-67, 90 degrees on 50 ft"
)
@pytest.mark.parametrize(("trailer_ft", "offtracking_ft"), [(41, 16.9), (45.5, 19.2)])
def test_offtracking_of_a_quarter_turn(trailer_ft: float, offtracking_ft: float) -> None:
    turn = turn_on_arc(vehicle_ft(8.5, 19.5, trailer_ft), centre_radius_m=50 * FT, turn_deg=90)
    assert turn.offtracking_m / FT == pytest.approx(offtracking_ft, abs=0.05)


@pytest.mark.source(
    "Regulation (EU) 1230/2012, Annex I, part D, 3.1 (formula from memory): 8.135 m for 2.55 m"
    " width"
)
def test_longest_wheelbase_within_the_european_circle() -> None:
    assert longest_trailer_wheelbase_m(width_m=2.55) == pytest.approx(8.135, abs=0.0005)
    with pytest.raises(ValueError, match="width_m must leave room in the ring"):
        longest_trailer_wheelbase_m(width_m=11)


@pytest.mark.source(
    "by hand: 41^2 < 19.5^2 + 41^2, so on 41 ft a WB-62 never settles; on 5 m a 3 m wheelbase"
    " settles at 4 m"
)
def test_a_train_that_never_settles_is_refused_not_guessed() -> None:
    with pytest.raises(
        ValueError, match=r"front_radius_m must be at least 13\.84 for these wheelbases"
    ):
        steady_radius_m(front_radius_m=41 * FT, wheelbases_m=[19.5 * FT, 41 * FT])
    assert steady_radius_m(front_radius_m=5, wheelbases_m=[3]) == pytest.approx(4)


@pytest.mark.law
@settings(max_examples=25)
@given(st.floats(2, 6), st.floats(0.1, 8), st.floats(1.2, 3))
def test_many_rounds_settle_on_the_steady_circle(
    wheelbase_m: float, trailer_m: float, margin: float
) -> None:
    vehicle = Vehicle("v", 2.5, wheelbase_m, 0, 0, trailer_m)
    radius = margin * math.hypot(wheelbase_m, trailer_m)
    end = drive(
        vehicle,
        [Piece(radius * 30, radius)],
        start=(radius, 0),
        heading_rad=math.pi / 2,
        step_m=0.1,
    )[-1]
    expected = steady_radius_m(front_radius_m=radius, wheelbases_m=[wheelbase_m, trailer_m])
    assert math.hypot(*rear_axles(vehicle, end)[-1]) == pytest.approx(expected, rel=1e-3)
