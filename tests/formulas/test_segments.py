"""Where a beam lies over an area."""

import pytest

from builder.formulas.polygons import contains
from builder.formulas.segments import parts_inside

L_SHAPE = [(0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (2.0, 2.0), (2.0, 5.0), (0.0, 5.0)]


@pytest.mark.source("by hand: a line at a depth of 4 m is 2 m within the L, one at 1 m is 4 m")
def test_a_segment_is_cut_at_the_sides_of_a_polygon() -> None:
    assert parts_inside(L_SHAPE, ((-1, 4), (5, 4))) == [
        (pytest.approx(1 / 6), pytest.approx(3 / 6))
    ]
    assert parts_inside(L_SHAPE, ((-1, 1), (5, 1))) == [
        (pytest.approx(1 / 6), pytest.approx(5 / 6))
    ]


@pytest.mark.source("by hand: outside the L, and a segment of no length within it")
def test_a_segment_may_lie_outside_or_be_a_point() -> None:
    assert parts_inside(L_SHAPE, ((10, 0), (10, 5))) == []
    assert parts_inside(L_SHAPE, ((1, 1), (1, 1))) == [(0.0, 1.0)]


@pytest.mark.law
def test_the_middle_of_every_part_is_inside_and_no_part_is_longer_than_the_segment() -> None:
    for step in range(40):
        ends = ((-3 + step / 7, -2.0), (6 - step / 5, 7.0))
        parts = parts_inside(L_SHAPE, ends)
        assert sum(end - begin for begin, end in parts) <= 1
        for begin, end in parts:
            middle = (begin + end) / 2
            spot = tuple(first + middle * (last - first) for first, last in zip(*ends, strict=True))
            assert contains(L_SHAPE, (spot[0], spot[1]))


@pytest.mark.source(
    "by hand: the line (2 + 4 t, 1 + 2 t) meets the slope x + y = 5 of a triangle at t = 1/3"
)
def test_a_slanted_segment_is_cut_at_a_slanted_side() -> None:
    triangle = [(1.0, 0.0), (5.0, 0.0), (1.0, 4.0)]
    assert parts_inside(triangle, ((2, 1), (6, 3))) == [(0.0, pytest.approx(1 / 3))]
