"""A number outside its range is refused with its name and value."""

import math

import pytest

from builder.formulas.ranges import above_zero, checked_power_factor, not_negative


@pytest.mark.law
@pytest.mark.parametrize("value", [-1, math.inf, math.nan])
def test_numbers_that_are_negative_or_not_finite_are_refused(value: float) -> None:
    with pytest.raises(ValueError, match=r"length_m must be a number of at least 0, got"):
        not_negative("length_m", value)


@pytest.mark.law
@pytest.mark.parametrize("value", [0, -1, math.inf, math.nan])
def test_numbers_that_are_not_above_zero_are_refused(value: float) -> None:
    with pytest.raises(ValueError, match=r"length_m must be a number above 0, got"):
        above_zero("length_m", value)


@pytest.mark.law
def test_numbers_within_range_are_handed_on() -> None:
    assert (not_negative("x_m", 0), above_zero("x_m", 2), checked_power_factor(1)) == (0, 2, 1)
