"""Outlines against polygons drawn by hand and against an independent library."""

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas.outlines import Fault, fault_of
from builder.formulas.polygons import Point

SQUARE: list[Point] = [(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)]
EIGHTHS = st.integers(-6, 6).map(lambda number: number / 8)
CORNERS = st.lists(st.tuples(EIGHTHS, EIGHTHS), min_size=3, max_size=9)


@pytest.mark.source("by hand: drawn on squared paper")
@pytest.mark.parametrize(
    ("corners", "fault"),
    [
        (SQUARE, None),
        (SQUARE[::-1], None),
        ([*SQUARE[:2], (4.0, 1.0), *SQUARE[2:]], None),
        ([(0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (2.0, 2.0), (2.0, 4.0), (0.0, 4.0)], None),
        (SQUARE[:2], Fault("few corners", 2)),
        ([], Fault("few corners", 0)),
        ([*SQUARE, SQUARE[0]], Fault("corner twice", 1, 5)),
        ([SQUARE[0], SQUARE[1], SQUARE[1], SQUARE[2]], Fault("corner twice", 2, 3)),
        ([SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3]], Fault("sides meet", 1, 3)),
        ([*SQUARE[:3], (2.0, 0.0)], Fault("sides meet", 1, 3)),
        ([(0.0, 0.0), (4.0, 0.0), (2.0, 0.0)], Fault("sides meet", 1, 2)),
        ([(0.0, 0.0), (5e-4, 0.0), (0.0, 5e-4)], Fault("no area")),
    ],
)
def test_outlines_drawn_by_hand(corners: list[Point], fault: Fault | None) -> None:
    assert fault_of(corners) == fault


@pytest.mark.source("shapely 2, Polygon.is_valid and Polygon.area, eighths of a metre, exact")
@settings(deadline=None, max_examples=400)
@given(CORNERS)
def test_outlines_are_those_that_an_independent_library_calls_simple(corners: list[Point]) -> None:
    simple = len(set(corners)) == len(corners) and shapely.Polygon(corners).is_valid
    assert (fault_of(corners) is None) == simple


@pytest.mark.law
@given(CORNERS, st.integers(0, 8), st.booleans())
def test_where_an_outline_begins_and_which_way_it_goes_round_does_not_matter(
    corners: list[Point], start: int, backwards: bool
) -> None:
    turned = [*corners[start % len(corners) :], *corners[: start % len(corners)]]
    other = fault_of(turned[::-1] if backwards else turned)
    assert (fault_of(corners) is None) == (other is None)
