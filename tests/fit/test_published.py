"""What the check reads of a pack."""

import pytest

from builder.fit.published import checked
from builder.pack import Verified


@pytest.mark.parametrize(
    ("days", "words"),
    [
        (-27, "3 weeks after"),
        (-1, "1 day after"),
        (0, "0 days before"),
        (13, "13 days before"),
        (14, "2 weeks before"),
        (119, "3 months before"),
        (800, "2 years before"),
    ],
)
def test_the_age_of_a_check_is_told_in_words_and_one_after_the_revision_is_told_as_such(
    days: int, words: str
) -> None:
    assert (
        checked(Verified("2026-03-02", "bar manager", "measured", days))
        == f"2026-03-02 by bar manager, measured, {words} this revision"
    )


def test_a_check_that_nobody_tells_is_no_words() -> None:
    assert checked(None) == ""
