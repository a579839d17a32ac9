"""Currents in whole milliampere."""

import pytest

from builder.formulas.milliampere import ceil_ma, floor_ma


@pytest.mark.source("by hand")
def test_what_is_asked_is_rounded_up_and_what_is_free_down() -> None:
    assert (ceil_ma(12.8001), floor_ma(12.8009)) == (12801, 12800)
    assert (ceil_ma(-0.0005), floor_ma(-0.0005)) == (0, -1)


@pytest.mark.source("by hand: 0.3 - 0.2 is 0.09999999999999998 in floats, and a tenth by hand")
def test_a_whole_milliampere_is_not_lost_to_arithmetic() -> None:
    assert floor_ma(0.3 - 0.2) == 100
    assert ceil_ma(0.1 + 0.2) == 300
