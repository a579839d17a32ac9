"""A house that is closed or taken each week or each year, on the date of a show."""

from datetime import date, timedelta
from typing import Any

import pytest

from builder.fit.closed.regular import regular_on
from builder.fit.interpreter import fit
from builder.reading.values.days import weekday_on
from tests.fit.sample import Record, a_list, asks, item, pack, rider, value

WIDTH = asks("stage width", low=10.0)


def regular(what: str, *days: str, **more: str) -> Record:
    """Something that comes back."""
    told = {"from" if key == "from_" else key: value(text) for key, text in more.items()}
    listed = {"days": a_list(*days)} if days else {}
    return item("regular", what, what=value(what), **listed, **told)


BAND = regular("the town band", "Tuesday", from_="17:00", first_month="September", last_month="May")
SUMMER = regular(
    "the summer closure",
    first_month="June",
    begins="its last week",
    last_month="September",
    ends="its first Monday",
)
MARKET = regular("the market", "Thursday", "Friday")


def judged(regulars: list[Record], plays: str) -> Record:
    """What a show on a date comes to in a house."""
    house: Any = pack(
        house=[item("configuration", "Standing"), *regulars],
        stage=[item("deck", "Deck", usable_width=value("16 m", 16.0))],
    )
    show: Any = rider(WIDTH, plays=plays)
    result: Record = fit(house, [show])
    return result


def on_date(regulars: list[Record], plays: str) -> tuple[str, str]:
    """The verdict on the date, or of the show where nothing is said of it."""
    last = judged(regulars, plays)["verdicts"][-1]
    return (last["verdict"], last["reason"]) if last["title"] == "Date of the show" else ("", "")


def test_the_day_of_the_week_is_that_of_the_calendar() -> None:
    # Against Python's own calendar, over leap years, centuries and their ends.
    first = date(1896, 2, 27)
    for step in range(0, 80_000, 13):
        day = first + timedelta(days=step)
        assert weekday_on(day.isoformat()) == day.strftime("%A")


@pytest.mark.parametrize(
    ("plays", "word"),
    [
        ("2026-12-01", "ask"),
        ("2026-12-02", ""),
        ("2026-06-02", ""),
        ("2026-05-26", "ask"),
        ("2026-09-01", "ask"),
    ],
)
def test_an_evening_that_is_taken_each_week_is_asked_in_its_months(plays: str, word: str) -> None:
    assert on_date([BAND], plays)[0] == word


@pytest.mark.parametrize(
    ("plays", "word"),
    [
        ("2026-05-31", ""),
        ("2026-06-02", "ask"),
        ("2026-07-01", "short"),
        ("2026-08-31", "short"),
        ("2026-09-20", "ask"),
        ("2026-10-01", ""),
    ],
)
def test_a_part_of_the_year_is_short_within_and_asked_at_its_ends(plays: str, word: str) -> None:
    assert on_date([SUMMER], plays)[0] == word


def test_a_whole_day_of_the_week_is_short_all_year_and_tells_why() -> None:
    words = "The house is not free for the market, on Thursday, Friday."
    assert on_date([BAND, MARKET], "2026-12-03") == ("short", words)
    assert on_date([BAND, MARKET], "2026-12-05") == ("", "")
    assert judged([MARKET], "2026-12-03")["acts"][0]["verdict"] == "short"


def test_every_day_is_each_day_and_months_may_go_over_the_new_year() -> None:
    winter = regular("the ice rink", "every day", first_month="November", last_month="February")
    held: Any = winter
    dates = ("2026-10-31", "2026-11-01", "2027-01-15", "2027-02-28", "2027-03-01")
    assert [regular_on(held, day) for day in dates] == ["no", "yes", "yes", "yes", "no"]


def test_what_is_sure_is_told_before_what_is_asked() -> None:
    assert on_date([BAND, regular("works", "Tuesday")], "2026-12-01")[0] == "short"


def test_figures_that_are_not_final_are_told_with_each_verdict_on_them() -> None:
    works = item("works", "New rope locks", departments=a_list("stage"), not_final=a_list("arbors"))
    first = judged([works], "")["verdicts"][0]
    words = "Not final, the house says: arbors (New rope locks)."
    assert (first["verdict"], first["notes"]) == ("fits, with a note", [words])
    other = item("works", "New seats", departments=a_list("sound"))
    assert judged([other], "")["verdicts"][0]["verdict"] == "fits"
    whole = item("works", "New boards", departments=a_list("stage"))
    (note,) = judged([whole], "")["verdicts"][0]["notes"]
    assert note == "Not final, the house says: its figures of stage (New boards)."


@pytest.mark.parametrize("key", ["days", "first_month", "last_month"])
def test_what_comes_back_on_nobody_knows_which_days_is_asked(key: str) -> None:
    known = {"first_month": "September", "last_month": "May"}
    told = {name: value(text) for name, text in known.items() if name != key}
    told |= {} if key == "days" else {"days": a_list("Tuesday")}
    told[key] = value("", standing="unknown")
    band = item("regular", "the town band", what=value("the town band"), **told)
    assert on_date([band], "2026-12-01")[0] == "ask"


def test_works_that_name_no_department_are_told_everywhere() -> None:
    works = item("works", "New rope locks")
    (note,) = judged([works], "")["verdicts"][0]["notes"]
    assert note == "Not final, the house says: its figures of stage (New rope locks)."
