"""A day, or only the month or the year in which something was done."""

from datetime import date

import pytest

from builder.reading.dated import age_days, dated
from builder.reading.numerals import Unreadable
from builder.reading.reader import read
from builder.reading.review import review
from builder.reading.written import DepartmentFile
from builder.stating import Ageing

ON = date(2026, 6, 1)


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("2026-03-02", date(2026, 3, 2), date(2026, 3, 2)),
        ("2024-02", date(2024, 2, 1), date(2024, 2, 29)),
        ("2025-12", date(2025, 12, 1), date(2025, 12, 31)),
        ("2026", date(2026, 1, 1), date(2026, 12, 31)),
    ],
)
def test_a_month_or_a_year_is_all_of_its_days(text: str, first: date, last: date) -> None:
    found = dated(text)
    assert (found.first, found.last, str(found)) == (first, last, text)
    assert found.is_day == (first == last)


@pytest.mark.parametrize(
    "text",
    ["", "26", "2026-13", "2026-00", "2026-2", "2026-02-30", "0000", "March 2026", "03-2026"],
)
def test_what_is_no_date_is_told_how_to_write_one(text: str) -> None:
    with pytest.raises(Unreadable) as told:
        dated(text)
    assert "or only the month or the year, like 2026-03 or 2026" in told.value.advice


@pytest.mark.parametrize(
    ("text", "days"),
    [
        ("2026-05-31", 1),
        ("2026-05", 1),
        ("2025", 152),
        ("2026-06", 0),
        ("2026", 0),
        ("2026-07", -30),
    ],
)
def test_an_age_is_what_it_is_at_least(text: str, days: int) -> None:
    assert age_days(dated(text), ON) == days


@pytest.mark.parametrize(
    ("text", "stale", "words"),
    [
        ("2025-06-01", False, "12 months before this revision"),
        ("2025-06", False, "at least 11 months before this revision"),
        ("2025-05", True, "at least 12 months before this revision"),
        ("2025", True, "at least 5 months before this revision"),
        ("2026", False, "about when this revision was made"),
    ],
)
def test_a_check_is_stale_as_soon_as_it_may_be(text: str, stale: bool, words: str) -> None:
    file = read(
        f"verified: {{on: {text}, by: rigger, how: measured}}\n", file="f.yml", kind=DepartmentFile
    )
    checked = Ageing(ON, 365).checked(file.verification)
    assert checked is not None
    assert (checked.on, checked.stale, checked.age) == (text, stale, words)
    codes = [remark.code for remark in review(file, on=ON, stale_after_days=365)]
    assert codes == (["stale"] if stale else [])


def test_a_remark_names_the_month_alone() -> None:
    file = read(
        "verified: {on: 2025-05, by: rigger, how: measured}\n", file="f.yml", kind=DepartmentFile
    )
    (remark,) = review(file, on=ON, stale_after_days=365)
    assert remark.sentence == (
        "Last checked in 2025-05, perhaps 396 days before this revision. The house's own limit is"
        " 365 days."
    )
    late = read(
        "verified: {on: 2026-07, by: rigger, how: measured}\n", file="f.yml", kind=DepartmentFile
    )
    (remark,) = review(late, on=ON, stale_after_days=365)
    assert remark.code == "verified-later"
