"""The quick search and the exact one on the same task."""

import pytest

from builder.formulas.phase_proof import TooManySteps, every_placing
from builder.formulas.phase_search import Task, largest_first

GRAHAM_CASE = Task(
    weights=(5, 5, 4, 4, 3, 3, 3),
    paths=(("s",),) * 7,
    choices=((0, 1, 2),) * 7,
    room={"s": (9, 9, 9)},
    booked={"s": (0, 0, 0)},
)


@pytest.mark.source(
    "Graham 1969: largest first alone puts 11, 8 and 8 on the three, 2 above 9; the sum of squares"
    " is 249"
)
def test_largest_first_alone_misses() -> None:
    found = largest_first(GRAHAM_CASE, step_bound=0)
    assert (found.over_ma, found.squares) == (2, 249)


@pytest.mark.source("Graham 1969: the best is 9, 9 and 9; by hand, the sum of squares is 243")
def test_the_exact_way_finds_the_best() -> None:
    found = every_placing(GRAHAM_CASE, step_bound=10_000)
    assert found.phases is not None
    assert found.squares == 243


@pytest.mark.law
def test_a_bound_that_is_reached_ends_the_exact_way() -> None:
    with pytest.raises(TooManySteps):
        every_placing(GRAHAM_CASE, step_bound=10)
