"""When the neutral binds before the lines."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.load_ratings import cable_rating_with_third_harmonic_a
from builder.formulas.neutral_limits import third_harmonic_that_fills_neutral
from builder.formulas.phasors import PHASES, line_currents, neutral_current


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
