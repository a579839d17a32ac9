"""Chains and sums, with mistakes that were really published."""

from math import fsum

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.dimensions import chain_gap_m, sum_gap

INCH = 0.0254


@pytest.mark.source(
    """by hand: 24'-6" and 3'-10" are 28'-4", 10 inches more than the 27'-6" that was published"""
)
def test_a_chain_that_does_not_close() -> None:
    gap_m = chain_gap_m(
        parts_m=[(24 * 12 + 6) * INCH, (3 * 12 + 10) * INCH], total_m=(27 * 12 + 6) * INCH
    )
    assert gap_m == pytest.approx(-10 * INCH)


@pytest.mark.source("by hand: 27 bars, of which 21 and 5, lack one")
def test_a_sum_that_does_not_match() -> None:
    assert sum_gap(parts=[21, 5], total=27) == 1


@pytest.mark.law
@given(st.lists(st.floats(0, 100), min_size=1))
def test_a_chain_closes_on_its_own_sum(parts_m: list[float]) -> None:
    assert chain_gap_m(parts_m=parts_m, total_m=fsum(parts_m)) == 0


@pytest.mark.law
def test_nothing_to_add_is_refused() -> None:
    with pytest.raises(ValueError, match="parts_m must hold at least one length, got none"):
        chain_gap_m(parts_m=[], total_m=1)
    with pytest.raises(ValueError, match="parts must hold at least one count, got none"):
        sum_gap(parts=[], total=1)
    with pytest.raises(ValueError, match="parts and total must be a number of at least 0, got -1"):
        sum_gap(parts=[1], total=-1)
