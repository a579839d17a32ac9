"""The day that a text tells of."""

from datetime import date

import pytest

from builder.reading.dates import latest_day


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("2024-11-19, revision C", date(2024, 11, 19)),
        ("letter 5 of 2026-04-28", date(2026, 4, 28)),
        ("19 November 2024", date(2024, 11, 19)),
        ("Nov 19, 2024 rev. C", date(2024, 11, 19)),
        ("November 2024", date(2024, 11, 30)),
        ("Feb. 2024", date(2024, 2, 29)),
        ("31 February 2023", date(2023, 2, 28)),
        ("2023-02-31", date(2023, 12, 31)),
        ("19.11.2024", date(2024, 12, 31)),
        ("11/19/2024", date(2024, 12, 31)),
        ("spring 2024", date(2024, 12, 31)),
        ("2019, revised 2022", date(2022, 12, 31)),
        ("March 2020, checked 2024-05-06", date(2024, 5, 6)),
        ("drawing 20241 rev C", None),
        ("No. 1,998.5", None),
        ("revision C", None),
        ("may be old", None),
        ("", None),
    ],
)
def test_a_text_tells_the_latest_day_that_it_can_mean(text: str, day: date | None) -> None:
    assert latest_day(text) == day
