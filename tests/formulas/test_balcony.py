"""The shadow of a balcony, by hand."""

import math

import numpy as np
import pytest

from builder.formulas.balcony import over_edge

FLAT = ((-10.0, 30.0, 3.0), (10.0, 30.0, 3.0), (10.0, 40.0, 3.0), (-10.0, 40.0, 3.0))


@pytest.mark.source(
    "by hand: from 30 m up to an ear at 0.3 m, 36 m out, the line is at 30 - 29.7 x 30/36 = 5.25 m"
    " over the edge at 3 m"
)
def test_a_line_that_comes_in_above_the_edge_is_blocked() -> None:
    found = over_edge((0, 0, 30), np.array([[0.0, 36.0, 0.3]]), corners_m=FLAT)
    assert found.blocked.tolist() == [True]
    assert found.source_to_edge_m[0] == pytest.approx(math.hypot(30, 27))
    assert found.edge_to_ear_m[0] == pytest.approx(math.hypot(6, 2.7))


@pytest.mark.source(
    "by hand: from 9 m up the same line is at 9 - 8.7 x 30/36 = 1.75 m over the edge: free below 3"
    " m, blocked by 1.26 m of slab"
)
@pytest.mark.parametrize(("thickness_m", "blocked"), [(0.0, False), (1.24, False), (1.26, True)])
def test_a_thicker_balcony_blocks_more(thickness_m: float, blocked: bool) -> None:
    found = over_edge(
        (0, 0, 9), np.array([[0.0, 36.0, 0.3]]), corners_m=FLAT, thickness_m=thickness_m
    )
    assert found.blocked.tolist() == [blocked]


@pytest.mark.source("by hand: ears on the balcony, in front of it, and beside it have a free line")
def test_only_ears_below_are_in_the_shadow() -> None:
    ears = np.array([[0.0, 36.0, 4.2], [0.0, 25.0, 0.3], [25.0, 36.0, 0.3], [0.0, 36.0, 0.3]])
    assert over_edge((0, 0, 30), ears, corners_m=FLAT).blocked.tolist() == [
        False,
        False,
        False,
        True,
    ]


@pytest.mark.law
def test_a_source_below_the_balcony_is_free_and_a_negative_thickness_is_refused() -> None:
    assert not over_edge((0, 0, 1), np.array([[0.0, 36.0, 0.3]]), corners_m=FLAT).blocked.any()
    assert not over_edge((0, 32, 2.5), np.array([[0.0, 36.0, 0.3]]), corners_m=FLAT).blocked.any()
    with pytest.raises(ValueError, match="thickness_m"):
        over_edge((0, 0, 1), np.array([[0.0, 36.0, 0.3]]), corners_m=FLAT, thickness_m=-1)
