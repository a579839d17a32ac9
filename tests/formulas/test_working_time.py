"""Calls of crew on the clock: breaks, paid hours, rest, against the laws that state them."""

from datetime import UTC, datetime, timedelta

import pytest

from builder.formulas.working_time import (
    Step,
    Stretch,
    meal_breaks,
    next_call_s,
    paid_hours,
    stretches,
)

H = 3600.0


def worked(hours: float, *, start: float = 8.0) -> tuple[Stretch, ...]:
    """Work without a break, so long."""
    return ((start * H, (start + hours) * H),)


@pytest.mark.source(
    "California Labor Code 512 as quoted by a law office: a meal period of 30 min for more than 5 h"
    " worked, a second for more than 10 h: 0 for 5.0, 1 for 5.5, 2 for 10.5"
)
@pytest.mark.parametrize(("hours", "breaks"), [(5.0, 0), (5.5, 1), (10.0, 1), (10.5, 2)])
def test_a_meal_is_due_when_work_passes_five_hours(hours: float, breaks: int) -> None:
    assert meal_breaks(span_s=hours * H, after_s=5 * H, break_s=0) == breaks
    # The same hours of work with their breaks of half an hour in between.
    span_s = (hours + 0.5 * breaks) * H
    assert meal_breaks(span_s=span_s, after_s=5 * H, break_s=0.5 * H) == breaks


@pytest.mark.source(
    "ArbZG section 4, first sentence and last: never more than 6 h without a break: 9 h of work and"
    " 30 min have one"
)
def test_nobody_works_longer_than_the_house_says_without_a_break() -> None:
    assert meal_breaks(span_s=9.5 * H, after_s=6 * H, break_s=0.5 * H) == 1
    found = stretches(start_s=8 * H, span_s=9.5 * H, after_s=6 * H, break_s=0.5 * H)
    assert found == ((8 * H, 14 * H), (14.5 * H, 17.5 * H))


@pytest.mark.source("by hand: 09:00 to 24:00, a break of an hour each 5 h: at 14:00 and 20:00")
def test_breaks_stand_where_they_are_due() -> None:
    found = stretches(start_s=9 * H, span_s=15 * H, after_s=5 * H, break_s=H)
    assert found == ((9 * H, 14 * H), (15 * H, 20 * H), (21 * H, 24 * H))


@pytest.mark.source(
    "California Labor Code 510 as quoted by a law office: 1.5 over 8 h, 2 over 12 h; 14 h worked"
    " are 8 + 4 x 1.5 + 2 x 2 = 18 h of pay"
)
def test_pay_hours_of_a_long_day() -> None:
    steps = (Step(1.5, after_s=8 * H), Step(2.0, after_s=12 * H))
    assert paid_hours(worked=worked(14), steps=steps) == pytest.approx(18.0, abs=1e-9)


@pytest.mark.source("by hand: 20:00 to 02:00 is 4 h at 1 and 2 h past midnight at 2: 8 h")
@pytest.mark.parametrize("step", [Step(2.0, from_s=0.0), Step(2.0, from_s=0.0, until_s=8 * H)])
def test_hours_past_midnight_count_by_their_factor(step: Step) -> None:
    assert paid_hours(worked=((20 * H, 26 * H),), steps=(step,)) == pytest.approx(8.0)


@pytest.mark.source("by hand: 22:00 to 06:00 at 1.25; 20:00 to 24:00 is 2 + 2 x 1.25 = 4.5 h")
def test_a_part_of_the_night_may_pass_midnight() -> None:
    step = Step(1.25, from_s=22 * H, until_s=6 * H)
    assert paid_hours(worked=((20 * H, 24 * H),), steps=(step,)) == pytest.approx(4.5)
    assert paid_hours(worked=((24 * H, 32 * H),), steps=(step,)) == pytest.approx(6 * 1.25 + 2)


@pytest.mark.source(
    "by hand: 14:00 to 02:00, 1.5 after 8 h and 2 from midnight: 8 + 2 x 1.5 + 2 x 2 = 15 h, not"
    " 2 x 3 = 6 h past midnight"
)
def test_the_higher_of_two_steps_counts_and_they_are_not_multiplied() -> None:
    steps = (Step(1.5, after_s=8 * H), Step(2.0, from_s=0.0, until_s=8 * H))
    assert paid_hours(worked=((14 * H, 26 * H),), steps=steps) == pytest.approx(15.0)


@pytest.mark.source("by hand: 5 h, a break, 5 h: overtime after 8 h begins in the second stretch")
def test_a_break_does_not_count_as_work_done() -> None:
    halves = ((8 * H, 13 * H), (14 * H, 19 * H))
    assert paid_hours(worked=halves, steps=(Step(1.5, after_s=8 * H),)) == pytest.approx(11.0)


@pytest.mark.source(
    "Directive 2003/88/EC Art. 3: 11 h of rest; a load-out that ends 02:30 is followed at 13:30:"
    " Python's datetime"
)
def test_the_earliest_next_call() -> None:
    night = datetime(2026, 6, 10, tzinfo=UTC)
    ends = night + timedelta(days=1, hours=2, minutes=30)
    next_s = next_call_s(end_s=(ends - night).total_seconds(), rest_s=11 * H)
    assert night + timedelta(seconds=next_s) == datetime(2026, 6, 11, 13, 30, tzinfo=UTC)


@pytest.mark.law
@pytest.mark.source("the longest day under 11 h of rest is 24 - 11 = 13 h")
def test_a_day_and_its_rest_fill_24_hours() -> None:
    assert next_call_s(end_s=13 * H, rest_s=11 * H) == 24 * H


@pytest.mark.source("by hand: the functions' own ranges")
def test_what_makes_no_sense_is_refused() -> None:
    for refused in (
        lambda: meal_breaks(span_s=-1, after_s=H, break_s=0),
        lambda: meal_breaks(span_s=H, after_s=0, break_s=0),
        lambda: paid_hours(worked=((H, 0.0),), steps=()),
        lambda: next_call_s(end_s=0, rest_s=-1),
        lambda: Step(-1.0),
    ):
        with pytest.raises(ValueError, match="must be"):
            refused()
