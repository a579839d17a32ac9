"""When the neutral binds before the lines."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.load_ratings import cable_rating_with_third_harmonic_a
from builder.formulas.neutral_limits import (
    largest_part_a,
    left_in_neutral_a,
    third_harmonic_that_fills_neutral,
)
from builder.formulas.phasors import PHASES, line_currents, neutral_current

currents_a = st.complex_numbers(max_magnitude=100)


@pytest.mark.source(
    "IEC 60364-5-52:2009, Annex E principle: 25 A lines with 44 % make 3 × 0.44 × 25 = 33 A; a"
    " neutral like its lines is full at 1/3"
)
@pytest.mark.parametrize(
    ("neutral_left_a", "line_a", "share"),
    [(33, 25, 0.44), (100, 100, 1 / 3), (0, 50, 0), (800, 255, 800 / 765)],
)
def test_the_share_that_fills_the_neutral(
    neutral_left_a: float, line_a: float, share: float
) -> None:
    assert third_harmonic_that_fills_neutral(
        neutral_left_a=neutral_left_a, line_a=line_a
    ) == pytest.approx(share)


@pytest.mark.source(
    "IEC 60364-5-52:2009, Table E.52.1: to 33 % the line current decides, above it the neutral's"
)
def test_a_neutral_like_its_lines_binds_where_the_standard_turns_to_it() -> None:
    share = third_harmonic_that_fills_neutral(neutral_left_a=25, line_a=25)
    assert share == pytest.approx(0.33, abs=0.004)
    assert cable_rating_with_third_harmonic_a(
        line_a=25, third_harmonic_share=0.33
    ) == pytest.approx(25 / 0.86)
    assert cable_rating_with_third_harmonic_a(
        line_a=25, third_harmonic_share=0.34
    ) == pytest.approx(3 * 0.34 * 25 / 0.86)


@pytest.mark.law
@given(st.floats(1, 1000), st.floats(1, 1000))
def test_a_load_of_that_share_carries_in_the_neutral_what_was_left(
    neutral_left_a: float, line_a: float
) -> None:
    share = third_harmonic_that_fills_neutral(neutral_left_a=neutral_left_a, line_a=line_a)
    even = line_currents(phases=PHASES, current_a=line_a, power_factor=1)
    assert neutral_current(even, third_harmonic_a=[share * line_a] * 3).total_a == pytest.approx(
        neutral_left_a
    )


@pytest.mark.law
def test_nothing_on_the_lines_and_an_overloaded_neutral_are_refused() -> None:
    with pytest.raises(ValueError, match=r"^line_a must be a number above 0, got 0"):
        third_harmonic_that_fills_neutral(neutral_left_a=10, line_a=0)
    with pytest.raises(ValueError, match=r"^neutral_left_a must be .*got -1"):
        third_harmonic_that_fills_neutral(neutral_left_a=-1, line_a=10)


@pytest.mark.source(
    "by hand: 5, 12 and 13 make a right triangle: √(13² − 5²) = 12 A, less 4 A that return already"
)
def test_third_harmonics_and_single_loads_take_from_the_neutral() -> None:
    left = left_in_neutral_a(limit_a=13, third_harmonic_a=5, line_returns_a=4)
    assert left == pytest.approx(8)
    assert left_in_neutral_a(limit_a=13, third_harmonic_a=15, line_returns_a=4) == -6


@pytest.mark.law
@given(st.lists(st.tuples(st.floats(0, 50), st.floats(0, 50)), min_size=3, max_size=3))
def test_a_neutral_carries_no_more_than_the_line_with_most_between_line_and_neutral(
    amperes: list[tuple[float, float]],
) -> None:
    loads = [
        line_currents(phases=(phase,), current_a=a, power_factor=0.9)
        for phase, pair in zip(PHASES, amperes, strict=True)
        for a in pair
    ]
    total = abs(sum(current for load in loads for current in load))
    assert total <= max(sum(pair) for pair in amperes) + 1e-9


@pytest.mark.law
@given(st.lists(currents_a, max_size=7))
def test_the_largest_part_is_that_of_every_part_tried(currents: list[complex]) -> None:
    every = [
        abs(sum(one for k, one in enumerate(currents) if number >> k & 1))
        for number in range(2 ** len(currents))
    ]
    assert largest_part_a(currents) == pytest.approx(max(every), abs=1e-9)


@pytest.mark.law
@given(st.lists(st.complex_numbers(max_magnitude=100), max_size=7), st.complex_numbers())
def test_one_more_current_never_makes_the_largest_part_smaller(
    currents: list[complex], more: complex
) -> None:
    assert largest_part_a([*currents, more]) >= largest_part_a(currents) - 1e-9
