"""
Rectangles against outlines, compared with a geometry library; turns compared with the machine's own
cosine.
"""

from math import cos, radians, sin

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import Polygon, intersection

from builder.formulas.polygons import Point
from builder.formulas.rectangles import (
    Rectangle,
    beyond,
    corners_of,
    gap_m,
    into_m,
    lies_within,
    meets,
    overlap_m,
    overlaps,
    passes_through,
    quarter_turned,
    rectangle,
    shared_m2,
    toward,
    turn,
)

spots = st.floats(-12, 12, allow_nan=False)
sizes = st.floats(0.2, 10, allow_nan=False)
turns = st.sampled_from([0.0, 90.0, 45.0, -30.0, 7.5, 200.0])
rects = st.builds(
    lambda x, y, w, d, t: rectangle(x, y, width_m=w, depth_m=d, turned_deg=t),
    spots,
    spots,
    sizes,
    sizes,
    turns,
)
THRUST = [
    (-8.0, 0.0),
    (-2.0, 0.0),
    (-2.0, -3.0),
    (2.0, -3.0),
    (2.0, 0.0),
    (8.0, 0.0),
    (8.0, 10.0),
    (-8.0, 10.0),
]
ASLANT = [(-6.0, 0.0), (6.0, 0.0), (8.0, 8.0), (0.0, 11.0), (-8.0, 8.0)]
DECK = [(-8.0, 0.0), (8.0, 0.0), (8.0, 10.0), (-8.0, 10.0)]
outlines = st.sampled_from([THRUST, ASLANT, list(reversed(THRUST)), DECK])
near = st.builds(
    lambda x, y, w, d, t: rectangle(x, y, width_m=w, depth_m=d, turned_deg=t),
    st.floats(-4, 4),
    st.floats(2, 6),
    st.floats(0.2, 3),
    st.floats(0.2, 3),
    turns,
)
HAIR_M = 1e-6
NO_AREA_M2 = 1e-8
"""What the library may give where two outlines only touch: 50 m of a line one grid step wide."""
TOLERANCE_M = 0.025
"""What the check lets pass for rounding."""


def polygon(rect: Rectangle, less_m: float = 0.0) -> Polygon:
    """A rectangle as the library has it, smaller by this at each side."""
    return Polygon(
        corners_of(
            {**rect, "width": rect["width"] - 2 * less_m, "depth": rect["depth"] - 2 * less_m}
        )
    )


def library_shared_m2(one: Polygon, other: Polygon) -> float:
    """
    The floor that two polygons share, by the library on a grid of a tenth of a nanometre. Without a
    grid it gives none for two turned rectangles of one line: 3 x 1.5 m about 1.5 x 1.5 m at -30°.
    """
    return float(intersection(one, other, grid_size=1e-10).area)


@pytest.mark.source("the machine's own cosine and sine")
@given(st.floats(-1000, 1000, allow_nan=False))
def test_the_series_turns_as_the_cosine_and_sine_do(turned_deg: float) -> None:
    assert turn(turned_deg) == pytest.approx(
        [cos(radians(turned_deg)), sin(radians(turned_deg))], abs=1e-12
    )


@pytest.mark.law
@pytest.mark.parametrize(
    ("turned_deg", "expected"),
    [(0.0, [1, 0]), (90.0, [0, 1]), (-90.0, [0, -1]), (180.0, [-1, 0]), (450.0, [0, 1])],
)
def test_a_quarter_is_exact(turned_deg: float, expected: list[float]) -> None:
    assert list(turn(turned_deg)) == expected


@pytest.mark.source("shapely 2.2, contains of a polygon shrunk by the tolerance")
@given(rects, outlines)
def test_what_lies_within_lies_within_by_a_library_too(
    rect: Rectangle, corners: list[Point]
) -> None:
    deck = Polygon(corners)
    inner = polygon(rect, TOLERANCE_M)
    assume(deck.buffer(-HAIR_M).contains(inner) == deck.buffer(HAIR_M).contains(inner))
    assert lies_within(rect, corners, TOLERANCE_M) == deck.contains(inner)


@pytest.mark.source("shapely 2.2, area of the intersection with a polygon shrunk by the tolerance")
@given(rects, outlines)
def test_what_meets_shares_floor_by_a_library_too(rect: Rectangle, corners: list[Point]) -> None:
    shared = library_shared_m2(Polygon(corners), polygon(rect, TOLERANCE_M))
    assume(shared < NO_AREA_M2 or shared > HAIR_M)
    assert meets(rect, corners, TOLERANCE_M) == (shared > NO_AREA_M2)


@pytest.mark.source("shapely 2.2, area of the intersection")
@given(rects, outlines)
def test_the_shared_floor_is_that_of_a_library(rect: Rectangle, corners: list[Point]) -> None:
    assert shared_m2(rect, corners) == pytest.approx(
        library_shared_m2(Polygon(corners), polygon(rect)), abs=NO_AREA_M2
    )


@pytest.mark.source("shapely 2.2, distance to the border")
@given(near, outlines)
def test_the_room_to_the_nearest_edge_is_that_of_a_library(
    rect: Rectangle, corners: list[Point]
) -> None:
    deck = Polygon(corners)
    assert not deck.contains(polygon(rect)) or gap_m(rect, corners) == pytest.approx(
        deck.exterior.distance(polygon(rect)), abs=1e-9
    )


@pytest.mark.source("shapely 2.2, intersection before and after a move")
@given(rects, rects)
def test_an_overlap_is_one_by_a_library_and_the_told_move_is_the_least_that_ends_it(
    one: Rectangle, other: Rectangle
) -> None:
    by_m = overlap_m(one, other)
    assume(abs(by_m) > HAIR_M)
    assert (by_m > 0) == (library_shared_m2(polygon(one), polygon(other)) > NO_AREA_M2)
    assert by_m == pytest.approx(overlap_m(other, one))
    if by_m > 0:
        ways = [
            (rect["cos"] * way, rect["sin"] * way)
            for each in (one, other)
            for rect in (each, quarter_turned(each))
            for way in (1, -1)
        ]
        clear = [
            polygon(
                {**one, "x": one["x"] + x * (by_m + HAIR_M), "y": one["y"] + y * (by_m + HAIR_M)}
            )
            for x, y in ways
        ]
        assert any(library_shared_m2(moved, polygon(other)) < NO_AREA_M2 for moved in clear)
        short = [
            polygon({**one, "x": one["x"] + x * by_m * 0.99, "y": one["y"] + y * by_m * 0.99})
            for x, y in ways
        ]
        assert all(library_shared_m2(moved, polygon(other)) > NO_AREA_M2 for moved in short)


@pytest.mark.law
@given(rects, rects)
def test_an_overlap_of_no_more_than_the_tolerance_is_none(one: Rectangle, other: Rectangle) -> None:
    assert overlaps(one, other, TOLERANCE_M) == (overlap_m(one, other) > TOLERANCE_M + 1e-9)


@pytest.mark.source(
    "by hand: 2 m about (7.5, 9.5) on a deck to 8 m stage left and 10 m upstage reaches 8.5 m and"
    " 10.5 m"
)
def test_it_tells_how_far_over_which_edges() -> None:
    over = beyond(rectangle(7.5, 9.5, width_m=2, depth_m=2), DECK, TOLERANCE_M)
    assert over == [{"side": "stage left", "over_m": 0.5}, {"side": "upstage", "over_m": 0.5}]


@pytest.mark.source(
    "by hand: a square of 2 m turned by 45 degrees reaches its half diagonal, 1.4142 m"
)
def test_a_turned_rectangle_reaches_its_diagonal() -> None:
    (over,) = beyond(
        rectangle(0, 1, width_m=2, depth_m=2, turned_deg=45),
        DECK,
        TOLERANCE_M,
    )
    assert (over["side"], over["over_m"]) == ("downstage", pytest.approx(2**0.5 - 1))


@pytest.mark.law
@given(rects, outlines)
def test_stage_left_and_right_are_alike(rect: Rectangle, corners: list[Point]) -> None:
    mirrored = {**rect, "x": -rect["x"], "sin": -rect["sin"]}
    other = [(-across, depth) for across, depth in corners]
    sides = {"stage left": "stage right", "stage right": "stage left"}
    mine = sorted((each["side"], each["over_m"]) for each in beyond(rect, corners, TOLERANCE_M))
    theirs = sorted(
        (sides.get(each["side"], each["side"]), each["over_m"])
        for each in beyond(mirrored, other, TOLERANCE_M)
    )
    assert lies_within(rect, corners, TOLERANCE_M) == lies_within(mirrored, other, TOLERANCE_M)
    assert mine == [(side, pytest.approx(over_m)) for side, over_m in theirs]


@pytest.mark.source("by hand: y = x + 1.5 leaves the square of 2 m about 0 at (-0.5, 1)")
@pytest.mark.parametrize(
    ("side", "expected"),
    [
        (((-2.0, -0.5), (0.0, 1.5)), True),
        (((-2.0, 0.5), (0.0, 2.5)), False),
        (((-0.5, -0.5), (0.5, 0.5)), True),
        (((1.0, -2.0), (1.0, 2.0)), False),
        (((-3.0, 0.0), (-1.0, 0.0)), False),
        (((0.0, 0.0), (0.0, 0.0)), False),
    ],
)
def test_a_side_passes_through_the_inside_of_a_box(
    side: tuple[Point, Point], expected: bool
) -> None:
    assert passes_through((-1.0, 1.0, -1.0, 1.0), side) == expected


@pytest.mark.source("by hand: 0.7 m of width each at 0.6 m from each other share 0.1 m")
def test_an_overlap_of_just_the_tolerance_is_none_however_numbers_round() -> None:
    one, other = (rectangle(x, 0.2, width_m=0.7, depth_m=0.7, turned_deg=0) for x in (0.1, 0.7))
    assert overlap_m(one, other) == pytest.approx(0.1)
    assert not overlaps(one, other, 0.1)
    assert not overlaps(one, other, 0.1 - 5e-10)
    assert overlaps(one, other, 0.099)


@pytest.mark.source("by hand: a wall 0.1 m within the edge of a box is not past a tolerance of 0.1")
def test_an_edge_just_the_tolerance_within_does_not_pass_through() -> None:
    box = rectangle(0, 0, width_m=2, depth_m=2, turned_deg=0)
    wall = [(0.9, -5.0), (5.0, -5.0), (5.0, 5.0), (0.9, 5.0)]
    assert not meets(box, wall, 0.1)
    assert not meets(box, wall, 0.1 - 5e-10)
    assert meets(box, wall, 0.099)


@pytest.mark.source("by hand: the larger part of a direction says its side, however short it is")
@pytest.mark.parametrize(
    ("direction", "side"),
    [
        ((0.5, 0.1), "stage left"),
        ((-0.5, 0.1), "stage right"),
        ((0.1, 0.5), "upstage"),
        ((0.1, -0.5), "downstage"),
    ],
)
def test_a_direction_points_to_a_side(direction: Point, side: str) -> None:
    assert toward(direction) == side


@pytest.mark.source(
    "by hand: a box from -1 to 1 m each way; an outline from 0.4 to 9 m across and -9 to 9 m"
    " upstage is cleared by 0.6 m, and so on for each side"
)
@pytest.mark.parametrize(
    ("low", "high", "move_m"),
    [
        ((0.4, -9), (9, 9), 0.6),
        ((-9, -9), (-0.3, 9), 0.7),
        ((-9, 0.2), (9, 9), 0.8),
        ((-9, -9), (9, -0.1), 0.9),
        ((-9, -9), (9, 9), 10),
    ],
)
def test_the_shortest_move_that_clears_an_outline(low: Point, high: Point, move_m: float) -> None:
    box = rectangle(0, 0, width_m=2, depth_m=2, turned_deg=0)
    outline = [low, (high[0], low[1]), high, (low[0], high[1])]
    assert into_m(box, outline) == pytest.approx(move_m)
