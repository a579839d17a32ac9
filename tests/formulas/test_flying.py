"""What a line set balances and leaves."""

import pytest

from builder.formulas.flying import balanced_kg, left_on_pipe_kg


@pytest.mark.source(
    "by hand, virtual work: an arbor falls 1 m while the pipe rises 2 m, so m g 1 m = p g 2 m"
)
def test_a_double_purchase_arbor_holds_twice_what_hangs() -> None:
    assert balanced_kg(arbor_kg=500.0, purchase=1) == 500.0
    assert balanced_kg(arbor_kg=500.0, purchase=2) == 250.0


@pytest.mark.source("by hand: 453.6 kg in the arbor, a pipe of 60 kg and a cloth of 100 kg")
def test_what_hangs_comes_off_what_may() -> None:
    may = balanced_kg(arbor_kg=453.6, purchase=1) - 60.0
    assert left_on_pipe_kg(may_hang_kg=may, hangs_kg=100.0) == pytest.approx(293.6)
    assert left_on_pipe_kg(may_hang_kg=50.0, hangs_kg=80.0) == -30.0


@pytest.mark.source("the range that each parameter states")
@pytest.mark.parametrize("weight", [-1.0, float("nan"), float("inf")])
def test_weights_below_nothing_are_refused(weight: float) -> None:
    with pytest.raises(ValueError, match="arbor_kg"):
        balanced_kg(arbor_kg=weight, purchase=1)
    with pytest.raises(ValueError, match="hangs_kg"):
        left_on_pipe_kg(may_hang_kg=1.0, hangs_kg=weight)
    with pytest.raises(ValueError, match="purchase"):
        balanced_kg(arbor_kg=1.0, purchase=3)  # type: ignore[arg-type]
