"""What a show needs before it can be judged: the rules of plans and of the day's clock."""

import pytest

from builder.fit.whole_day import needs_more
from tests.fit.clock_pairs import a_clock
from tests.fit.pairs import Dice
from tests.fit.sample import Record, asks, item, pack, rider, value
from tests.fit.stages import piece, plot

HANG = asks("Truss", sort="hang", supports=[], loads=[], hoists="none", hoist_kg=0.0)
TRIM = asks("Trim of Truss", sort="trim", trim_m=8.0, below_m=1.0)


@pytest.mark.parametrize(
    ("requirements", "needed"),
    [((), False), ((asks("capacity"),), False), ((plot(piece()),), True), ((HANG, TRIM), True)],
)
def test_a_plan_needs_more_rules_than_a_need(
    requirements: tuple[Record, ...], needed: bool
) -> None:
    assert needs_more([rider(), rider(*requirements, act="B")], pack()) is needed


def test_a_clock_needs_them_without_any_plan() -> None:
    clocks = [a_clock(Dice(seed), 0) for seed in range(20)]
    said = [clock for clock in clocks if clock is not None]
    assert said
    assert all(needs_more([rider(), rider(act="B", clock=clock)], pack()) for clock in said)


def test_a_house_that_is_closed_at_times_needs_them_for_any_show() -> None:
    closed = item("closure", "Closed", **{"from": value("2026-07-01"), "until": value("2026-08")})
    unsure = item("identity", "House", closed=value(standing="unknown"))
    assert [needs_more([rider()], pack(house=[each])) for each in (closed, unsure)] == [True, True]
    assert not needs_more([rider()], pack(house=[item("identity", "House")]))
