"""Areas and distances on plan."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LinearRing, Polygon
from shapely import box as library_box

from builder.formulas.polygons import (
    Point,
    box_around,
    contains,
    cut_off,
    distance_to_side_m,
    extent_m,
    polygon_area_m2,
    sides_cross,
    sides_of,
    strip_around,
    twice_area_m2,
)

L_SHAPE = [(0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (2.0, 2.0), (2.0, 5.0), (0.0, 5.0)]


@pytest.mark.source("by hand: 4 x 2 and 2 x 3 m are 14 m²; a 3-4-5 triangle is 6 m²")
def test_areas() -> None:
    assert polygon_area_m2(L_SHAPE) == pytest.approx(14)
    assert polygon_area_m2([(0, 0), (4, 0), (0, 3)]) == pytest.approx(6)


@pytest.mark.source("by hand: the L is 4 m wide and 5 m deep; from 13.2 m to 8.4 m is 4.8 m")
def test_extents() -> None:
    assert extent_m(L_SHAPE) == (4.0, 5.0)
    assert extent_m([(8.4, 0.0), (13.2, 0.0), (13.2, 9.0), (8.4, 9.0)]) == pytest.approx((4.8, 9.0))
    with pytest.raises(ValueError, match="corners must be at least one, got none"):
        extent_m([])


@pytest.mark.source("shapely 2.2, area and direction of a ring")
def test_the_sign_of_twice_the_area_tells_which_way_round() -> None:
    for corners in (L_SHAPE, L_SHAPE[::-1]):
        sign = 1 if LinearRing(corners).is_ccw else -1
        assert twice_area_m2(corners) == pytest.approx(sign * 2 * Polygon(corners).area)
    assert twice_area_m2([]) == 0


@pytest.mark.source("shapely 2.2, bounds")
def test_the_box_around_a_polygon() -> None:
    left, front, right, back = Polygon(L_SHAPE).bounds
    assert box_around(L_SHAPE) == (left, right, front, back)


@pytest.mark.source("shapely 2.2, area of the intersection with a half plane")
@pytest.mark.parametrize(("axis", "limit_m", "way"), [(0, 3.0, 1.0), (1, 1.5, -1.0), (1, 9.0, 1.0)])
def test_what_is_left_on_one_side_of_a_line(axis: int, limit_m: float, way: float) -> None:
    low = [-99.0, -99.0]
    high = [99.0, 99.0]
    (low if way > 0 else high)[axis] = limit_m
    expected = Polygon(L_SHAPE).intersection(library_box(*low, *high)).area
    left: list[Point] = cut_off(L_SHAPE, axis, limit_m, way)
    assert abs(twice_area_m2(left)) / 2 == pytest.approx(expected)


@pytest.mark.source("by hand: the notch of an L is outside")
def test_inside_and_outside() -> None:
    assert contains(L_SHAPE, (1, 4))
    assert not contains(L_SHAPE, (3, 4))


@pytest.mark.source("by hand: 3-4-5 from a corner, 2 from the middle of a side")
def test_distance_to_a_side() -> None:
    assert distance_to_side_m((-3, 4), ((0, 0), (5, 0))) == pytest.approx(5)
    assert distance_to_side_m((2, -2), ((0, 0), (5, 0))) == pytest.approx(2)
    assert distance_to_side_m((3, 4), ((0, 0), (0, 0))) == pytest.approx(5)


@pytest.mark.law
def test_a_border_that_crosses_itself_is_refused() -> None:
    with pytest.raises(ValueError, match="corners must go round without crossing"):
        polygon_area_m2([(0, 0), (2, 2), (2, 0), (0, 2)])
    with pytest.raises(ValueError, match="corners must be at least three, got 2"):
        polygon_area_m2([(0, 0), (1, 1)])


@pytest.mark.law
def test_touching_is_not_crossing() -> None:
    assert sides_cross(((0, 0), (2, 2)), ((0, 2), (2, 0)))
    assert not sides_cross(((0, 0), (1, 1)), ((1, 1), (2, 0)))
    assert len(sides_of(L_SHAPE)) == len(L_SHAPE)


@pytest.mark.law
@given(
    st.integers(3, 40),
    st.floats(0.5, 50),
    st.floats(-100, 100),
    st.floats(-100, 100),
    st.floats(0, 6),
)
def test_regular_polygons_have_the_closed_form_area(
    count: int, radius_m: float, x_m: float, y_m: float, turn: float
) -> None:
    corners = [
        (
            x_m + radius_m * math.cos(turn + math.tau * k / count),
            y_m + radius_m * math.sin(turn + math.tau * k / count),
        )
        for k in range(count)
    ]
    assert polygon_area_m2(corners) == pytest.approx(
        count / 2 * radius_m**2 * math.sin(math.tau / count)
    )
    assert contains(corners, (x_m, y_m))


@pytest.mark.source("plane geometry by hand: a 3-4-5 triangle, 0.5 m to each side and beyond")
def test_a_strip_about_a_segment_and_a_square_about_a_point() -> None:
    strip = strip_around((0.0, 0.0), (3.0, 4.0), 0.5)
    corners = [(0.1, -0.7), (3.7, 4.1), (2.9, 4.7), (-0.7, -0.1)]
    for found, wanted in zip(strip, corners, strict=True):
        assert found == pytest.approx(wanted)
    assert polygon_area_m2(strip) == pytest.approx(6.0 * 1.0)
    assert strip_around((2.0, 1.0), (2.0, 1.0), 0.5) == [
        (1.5, 0.5),
        (2.5, 0.5),
        (2.5, 1.5),
        (1.5, 1.5),
    ]
