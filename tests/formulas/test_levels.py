"""Sums, budgets and doses against regulations, textbooks and laws."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import levels
from builder.formulas.levels import CANADA, NIOSH, OSHA, NoiseCriterion

LEVELS = st.floats(0, 140)
CRITERIA = st.sampled_from([OSHA, NIOSH, CANADA])


@pytest.mark.source(
    "by hand: 10 lg 2 = 3.01 dB and 20 lg 2 = 6.02 dB; two equal sounds 120 degrees apart are as"
    " loud as one"
)
def test_two_equal_sounds() -> None:
    assert levels.incoherent_sum_db([90, 90]) == pytest.approx(93.01, abs=0.005)


@pytest.mark.source("acoustic-toolbox 0.2.2, dbsum: 90 dB + 87 dB = 91.76 dB")
def test_unequal_sounds_add_as_energy() -> None:
    assert levels.incoherent_sum_db([90, 87]) == pytest.approx(91.76, abs=0.005)


@pytest.mark.source(
    "by hand: limit 99 dB over 60 min, 102 dB for 15 min: 10 lg((60 - 15 * 10^0.3) / 45) = -1.75 dB"
)
def test_a_loud_start_leaves_less_for_the_rest() -> None:
    left_db = levels.remaining_level_db(
        limit_db=99, period_min=60, level_so_far_db=102, elapsed_min=15
    )
    assert left_db == pytest.approx(97.25, abs=0.005)


@pytest.mark.source(
    "by hand: 105.1 dB for a quarter of the period spends all of 99 dB (10 lg 4 = 6.02 dB)"
)
def test_a_spent_budget_has_no_level_left() -> None:
    assert (
        levels.remaining_level_db(limit_db=99, period_min=60, level_so_far_db=105.1, elapsed_min=15)
        is None
    )
    assert (
        levels.remaining_level_db(limit_db=99, period_min=60, level_so_far_db=105.0, elapsed_min=15)
        is not None
    )


OSHA_ROWS = [
    (80, 32),
    (85, 16),
    (88, 10.6),
    (90, 8),
    (92, 6.1),
    (95, 4),
    (97, 3),
    (100, 2),
    (105, 1),
    (110, 0.5),
    (115, 0.25),
    (120, 0.125),
]


@pytest.mark.source("29 CFR 1910.95, appendix A, table G-16a")
@pytest.mark.parametrize(("level_dba", "hours"), OSHA_ROWS)
def test_osha_reference_durations(level_dba: float, hours: float) -> None:
    assert levels.allowed_hours(level_dba, OSHA) == pytest.approx(
        hours, abs=0.05 if hours > 1 else 0.0005
    )


@pytest.mark.source(
    "from memory: NIOSH 98-126, table 1-1: 85 dB(A) 8 h, 88 dB(A) 4 h, 100 dB(A) 15 min; the rule"
    " 85/8/3 was found in print"
)
@pytest.mark.parametrize(("level_dba", "hours"), [(85, 8), (88, 4), (100, 0.25)])
def test_niosh_durations(level_dba: float, hours: float) -> None:
    assert levels.allowed_hours(level_dba, NIOSH) == pytest.approx(hours, abs=0.002)


@pytest.mark.source(
    "Canada, NJC occupational health and safety directive, table of levels: 87 dB(A) 8.0 h, 94"
    " dB(A) 1.6 h, 100 dB(A) 0.40 h"
)
@pytest.mark.parametrize(("level_dba", "hours"), [(87, 8.0), (94, 1.6), (100, 0.40)])
def test_canadian_durations(level_dba: float, hours: float) -> None:
    assert levels.allowed_hours(level_dba, CANADA) == pytest.approx(
        hours, abs=0.05 if hours > 1 else 0.005
    )


@pytest.mark.source(
    "29 CFR 1910.95, appendix A, table G-16a: 92 dB(A) is 6.1 h, so 8 h are 131 % (132 % unrounded)"
)
def test_dose_of_a_long_call() -> None:
    assert levels.noise_dose_percent([(92, 8)], OSHA) == pytest.approx(131.95, abs=0.01)
    assert levels.noise_dose_percent([(85, 4), (88, 2)], NIOSH) == pytest.approx(100)


@pytest.mark.law
@given(st.lists(LEVELS, min_size=1, max_size=8))
def test_energies_never_sum_to_less_than_the_loudest(found_db: list[float]) -> None:
    total_db = levels.incoherent_sum_db(found_db)
    assert max(found_db) - 1e-9 <= total_db <= max(found_db) + 10 * math.log10(len(found_db)) + 1e-9


@pytest.mark.law
@given(LEVELS, st.floats(0, 99), st.floats(100, 600), LEVELS)
def test_the_level_left_fills_the_limit_exactly(
    so_far_db: float, elapsed_min: float, period_min: float, limit_db: float
) -> None:
    left_db = levels.remaining_level_db(
        limit_db=limit_db, period_min=period_min, level_so_far_db=so_far_db, elapsed_min=elapsed_min
    )
    if left_db is None or elapsed_min < 0.01:
        return
    energy = 10 ** (so_far_db / 10) * elapsed_min + 10 ** (left_db / 10) * (
        period_min - elapsed_min
    )
    met_db = 10 * math.log10(energy / period_min)
    assert met_db == pytest.approx(limit_db, abs=1e-6)


@pytest.mark.law
@given(LEVELS, st.floats(0.1, 24), CRITERIA)
def test_an_exchange_rate_louder_doubles_the_dose(
    level_dba: float, hours: float, criterion: NoiseCriterion
) -> None:
    louder = levels.noise_dose_percent([(level_dba + criterion.exchange_db, hours)], criterion)
    assert louder == pytest.approx(2 * levels.noise_dose_percent([(level_dba, hours)], criterion))


@pytest.mark.law
def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="levels_db must hold at least one level, got none"):
        levels.incoherent_sum_db([])
    with pytest.raises(
        ValueError, match="elapsed_min must be at least 0 and below period_min 60, got 60"
    ):
        levels.remaining_level_db(limit_db=99, period_min=60, level_so_far_db=90, elapsed_min=60)
    with pytest.raises(ValueError, match="levels_db must be finite, got nan"):
        levels.allowed_hours(math.nan, OSHA)
