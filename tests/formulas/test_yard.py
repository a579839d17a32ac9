"""Trucks in yards: by hand, by symmetry, and against the turning radii of a standard."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas.tractrix import Piece, Vehicle, drive
from builder.formulas.turning import longest_trailer_wheelbase_m, turn_on_arc
from builder.formulas.vehicles import CENTRE_RADIUS_M, VEHICLES, overall_length_m, vehicle_named
from builder.formulas.yard import bodies, fits_yard

LONG = vehicle_named("WB-62")


def street(length_m: float, width_m: float) -> list[tuple[float, float]]:
    return [
        (-30, -width_m / 2),
        (length_m, -width_m / 2),
        (length_m, width_m / 2),
        (-30, width_m / 2),
    ]


@pytest.mark.source(
    "by hand: an 8.5 ft truck in the middle of a 4 m street has (4 - 2.591) / 2 = 0.705 m on both"
    " sides"
)
def test_straight_down_a_street() -> None:
    found = fits_yard(LONG, [Piece(20)], street(60, 4), start=(0, 0), heading_rad=0)
    assert found.fits
    assert found.clearance_m == pytest.approx(0.705, abs=0.0005)
    assert not fits_yard(
        LONG, [Piece(20)], street(60, 4), start=(0, 0), heading_rad=0, margin_m=0.8
    ).fits


@pytest.mark.source("by hand: 4 ft of bonnet ahead of the axle pass the end of the street")
def test_the_overhang_counts() -> None:
    assert fits_yard(LONG, [Piece(18.7)], street(20, 4), start=(0, 0), heading_rad=0).fits
    assert not fits_yard(LONG, [Piece(18.8)], street(20, 4), start=(0, 0), heading_rad=0).fits


@pytest.mark.source(
    "AASHTO Green Book: WB-62 on 41 ft comes 7.4 ft near the centre of its turn; an obstacle of 7"
    " ft stays clear, one of 8 ft does not"
)
@pytest.mark.parametrize(("reach_ft", "fits"), [(7.0, True), (8.0, False)])
def test_a_corner_that_the_trailer_cuts(reach_ft: float, fits: bool) -> None:
    radius = CENTRE_RADIUS_M["WB-62"]
    turn = turn_on_arc(LONG, centre_radius_m=radius)
    assert turn.inside_radius_m == pytest.approx(7.4 * 0.3048, abs=0.05 * 0.3048)
    obstacle = [
        (reach_ft * 0.3048 * math.cos(a), reach_ft * 0.3048 * math.sin(a))
        for a in (math.radians(30 * k) for k in range(12))
    ]
    # The obstacle is joined to the border by a slit on the far side, where the truck never comes.
    yard = [
        (60.0, -60.0),
        (60.0, 60.0),
        (-60.0, 60.0),
        (-60.0, -60.0),
        (-0.01, -60.0),
        *(obstacle[9 - k] for k in range(12)),
        (0.01, -60.0),
    ]
    found = fits_yard(
        LONG,
        [Piece(radius * math.pi, radius), Piece(25)],
        yard,
        start=(radius, 0.0),
        heading_rad=math.pi / 2,
    )
    assert found.fits == fits


@pytest.mark.source(
    "AASHTO Green Book overall lengths from memory: 19, 30, 45.5, 69 and 73.5 ft; Directive"
    " 96/53/EC: 16.50 m"
)
def test_overall_lengths() -> None:
    feet = [overall_length_m(vehicle) / 0.3048 for vehicle in VEHICLES[:5]]
    assert feet == pytest.approx([19, 30, 45.5, 69, 73.5], abs=0.05)
    assert overall_length_m(VEHICLES[5]) == pytest.approx(16.5, abs=0.005)


@pytest.mark.source(
    "Directive 96/53/EC, Annex I, 1.5 and 4.4: ring of 12.50 and 5.30 m (by Regulation (EU)"
    " 1230/2012, 3.1); kingpin to front corner at most 2.04 m, to rear at most 12.00 m"
)
def test_the_european_truck_is_within_its_directive() -> None:
    truck = VEHICLES[5]
    assert math.hypot(truck.trailer_front_m, truck.width_m / 2) <= 2.04
    assert truck.trailer_m + truck.rear_overhang_m == pytest.approx(12.0)
    assert truck.trailer_m <= longest_trailer_wheelbase_m(width_m=truck.width_m)


@pytest.mark.law
@settings(max_examples=15)
@given(st.floats(3, 12), st.floats(0, 2))
def test_a_wider_street_never_turns_a_fit_into_a_miss(width_m: float, more_m: float) -> None:
    path = [Piece(4, 60), Piece(4, -60)]
    narrow, wide = (
        fits_yard(LONG, path, street(40, w), start=(0, 0), heading_rad=0, step_m=0.5)
        for w in (width_m, width_m + more_m)
    )
    assert wide.fits or not narrow.fits


@pytest.mark.law
@settings(max_examples=15)
@given(st.sampled_from(VEHICLES), st.floats(12, 40))
def test_bodies_keep_their_size(vehicle: Vehicle, radius_m: float) -> None:
    for pose in drive(vehicle, [Piece(20, radius_m)], start=(0, 0), heading_rad=0, step_m=1.0):
        for body in bodies(vehicle, pose):
            assert math.dist(body[0], body[1]) == pytest.approx(vehicle.width_m)
            assert math.dist(body[0], body[2]) == pytest.approx(math.dist(body[1], body[3]))


@pytest.mark.law
def test_a_yard_that_is_no_polygon_and_a_vehicle_nobody_knows_are_refused() -> None:
    with pytest.raises(ValueError, match="corners must be at least three, got 2"):
        fits_yard(LONG, [Piece(1)], [(0, 0), (1, 1)], start=(0, 0), heading_rad=0)
    with pytest.raises(ValueError, match=r"name must be one of P, .*, got 'lorry'"):
        vehicle_named("lorry")
