"""Ways and distances of permanent lines."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.tie_lines import (
    changes_by_switcher,
    straight_m,
    ways_in_all,
    ways_through,
    working_ways,
)

METRES = st.floats(-500, 500)
POINT = st.tuples(METRES, METRES, METRES)


@pytest.mark.source(
    "a published house list: ways '1-12 (11 working)', '4 (2 working)'; common practice, no source"
)
def test_dead_ways_are_taken_off_once_each() -> None:
    assert working_ways(ways=12, dead=(7,)) == 11
    assert working_ways(ways=4, dead=(1, 3, 3)) == 2


@pytest.mark.source(
    "by hand: 24 + 12 ways beside each other make 36; a panel of 8, a line of 12 and a switcher of"
    " 6 pass 6"
)
def test_ways_beside_each_other_add_up_and_ways_in_a_row_pass_the_least() -> None:
    assert ways_in_all((24, 12)) == 36
    assert ways_in_all(()) == 0
    assert ways_through((8, 12, 6)) == 6


@pytest.mark.source("common practice, no source")
def test_two_consoles_change_over_by_the_switcher_where_each_has_an_input_of_its_own() -> None:
    assert changes_by_switcher(before=("S", 1), after=("S", 2))
    assert not changes_by_switcher(before=("S", 1), after=("S", 1))
    assert not changes_by_switcher(before=("S", 1), after=("T", 2))


@pytest.mark.source("by hand: the 3-4-5 triangle, and the 2-3-6 box whose diagonal is 7")
def test_the_straight_line_between_two_places() -> None:
    assert straight_m((0, 0, 0), (3, -4, 0)) == pytest.approx(5)
    assert straight_m((1, 1, 1), (3, 4, 7)) == pytest.approx(7)


@pytest.mark.law
@given(POINT, POINT, POINT)
def test_a_detour_is_never_shorter(
    start: tuple[float, float, float],
    by: tuple[float, float, float],
    end: tuple[float, float, float],
) -> None:
    assert straight_m(start, end) <= straight_m(start, by) + straight_m(by, end) + 1e-9
    assert straight_m(start, end) == straight_m(end, start)


@pytest.mark.law
@given(st.lists(st.integers(0, 300), min_size=1), st.integers(0, 300))
def test_nothing_in_a_row_lets_more_pass(counts: list[int], another: int) -> None:
    assert ways_through([*counts, another]) <= ways_through(counts) <= ways_in_all(counts)


@pytest.mark.law
def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^dead must hold ways from 1 to 4, got 5$"):
        working_ways(ways=4, dead=(5,))
    with pytest.raises(ValueError, match=r"^counts must hold at least one count, got none$"):
        ways_through(())
    with pytest.raises(ValueError, match=r"^start_m and end_m must be finite"):
        straight_m((0, 0, float("nan")), (0, 0, 0))
    with pytest.raises(
        ValueError, match=r"^before and after must have inputs of 1 or more, got 0$"
    ):
        changes_by_switcher(before=("S", 0), after=("S", 1))
    with pytest.raises(ValueError, match="counts"):
        ways_in_all((-1,))
