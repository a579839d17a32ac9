"""How many points find room along a beam."""

import pytest

from builder.formulas.points_along import least_at_centres, most_along


@pytest.mark.source("counted by hand: posts along a fence, one more than there are gaps")
@pytest.mark.parametrize(
    ("length_m", "spacing_m", "count"),
    [(0.0, 1.5, 1), (1.49, 1.5, 1), (1.5, 1.5, 2), (40.0, 1.5, 27), (12.192, 1.524, 9)],
)
def test_one_more_than_there_are_whole_gaps(length_m: float, spacing_m: float, count: int) -> None:
    # The last is 40 ft at 5 ft: eight gaps.
    assert most_along(length_m=length_m, spacing_m=spacing_m) == count


@pytest.mark.source("counted by hand: posts along a fence, one more than there are gaps")
def test_a_beam_in_feet_holds_as_many_as_the_same_in_metres() -> None:
    # 33 ft at 11 ft, where the quotient in metres is a hair below 3.
    assert most_along(length_m=33 * 0.3048, spacing_m=11 * 0.3048) == 4


@pytest.mark.source("counted by hand: 100 ft at 11 ft, the first at 0 or at 10.9 ft")
def test_equal_centres_hold_one_more_or_less_by_where_the_first_is() -> None:
    assert least_at_centres(length_m=100 * 0.3048, centres_m=11 * 0.3048) == 9
    assert most_along(length_m=100 * 0.3048, spacing_m=11 * 0.3048) == 10


@pytest.mark.law
@pytest.mark.parametrize(("length_m", "spacing_m"), [(-1.0, 1.0), (1.0, 0.0), (1.0, -1.0)])
def test_what_is_no_length_is_refused(length_m: float, spacing_m: float) -> None:
    with pytest.raises(ValueError, match="must be a number"):
        most_along(length_m=length_m, spacing_m=spacing_m)
