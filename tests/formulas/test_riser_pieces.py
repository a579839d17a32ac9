"""Risers from like pieces: how many, how large, and whether the stock gives all of them."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.riser_pieces import laid, shared_out


@pytest.mark.source("by hand: pieces of 2 m by 1 m, one metre the other way where that is less")
@pytest.mark.parametrize(
    ("wanted", "pieces", "size"),
    [
        ((2.0, 1.0), 1, (2.0, 1.0)),
        ((1.0, 2.0), 1, (1.0, 2.0)),
        ((8.0, 2.0), 8, (8.0, 2.0)),
        ((2.5, 2.0), 3, (3.0, 2.0)),
        ((2.02, 1.02), 1, (2.0, 1.0)),
        ((2.03, 1.0), 2, (4.0, 1.0)),
    ],
)
def test_as_few_pieces_as_make_it(
    wanted: tuple[float, float], pieces: int, size: tuple[float, float]
) -> None:
    found = laid(*wanted, 2.0, 1.0)
    assert (found["pieces"], (found["width_m"], found["depth_m"])) == (pieces, size)


@pytest.mark.law
def test_a_size_is_above_nothing() -> None:
    with pytest.raises(ValueError, match="size_m must be a number above 0, got 0"):
        laid(1.0, 0.0, 2.0, 1.0)


@pytest.mark.law
@given(
    st.lists(st.lists(st.integers(-1, 4), min_size=3, max_size=3), max_size=4),
    st.lists(st.integers(0, 6), min_size=3, max_size=3),
)
def test_a_choice_is_found_where_one_of_all_holds(
    needed: list[list[int]], stock: list[int]
) -> None:
    def holds(kinds: tuple[int, ...]) -> bool:
        taken = [0, 0, 0]
        for row, kind in zip(needed, kinds, strict=True):
            if row[kind] < 0:
                return False
            taken[kind] += row[kind]
        return all(use <= there for use, there in zip(taken, stock, strict=True))

    found = shared_out(needed, stock, [10_000])
    there = any(holds(kinds) for kinds in product(range(3), repeat=len(needed)))
    assert (found is not None) == there
    assert found is None or holds(tuple(found))


@pytest.mark.law
def test_a_search_that_runs_out_of_steps_says_so() -> None:
    steps = [1]
    assert shared_out([[1, 1], [1, 1]], [0, 5], steps) is None
    assert steps[0] < 0
