"""Which riders make one show day."""

import pytest

from builder.rider.same_day import same_name_words, several_dates_words


@pytest.mark.parametrize(
    ("names", "words"),
    [
        ([], ""),
        (["A", "B"], ""),
        (["", ""], ""),
        (["A", "a"], ""),
        (["A", "B", "A"], "Two acts are called A; give each a name of its own."),
        (["B", "A", "B", "A"], "Two acts are called A, B; give each a name of its own."),
    ],
)
def test_two_acts_of_one_name_are_told(names: list[str], words: str) -> None:
    assert same_name_words(names) == words


@pytest.mark.parametrize(
    ("dates", "told"),
    [
        ([], ""),
        (["2026-12-01", "", "2026-12-01"], ""),
        (["2026-12-08", "", "2026-12-01"], "several dates: 2026-12-01, 2026-12-08. They"),
    ],
)
def test_acts_of_several_dates_are_told(dates: list[str], told: str) -> None:
    words = several_dates_words(dates)
    assert told in words
    assert (words == "") == (told == "")
