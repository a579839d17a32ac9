"""Riders in ``shows/``, read: dates, holds, days, and what is wrong with a file."""

from datetime import date

import pytest

from builder.registry import RULES
from builder.shows.booked import Books, books_of

NEED = "needs:\n  - {what: stage width, at least: 5 m}\n"


def books(**shows: str) -> Books:
    """Books with a rider a word: its act is the word, the text its other lines."""
    return books_of(
        {f"shows/{name}.yml": f"act: {name}\n{text}\n{NEED}" for name, text in shows.items()}, RULES
    )


def days(found: Books, on: date = date(2026, 1, 1)) -> list[tuple[str, str, list[str]]]:
    """Each day: its date, which hold, and who would play."""
    return [
        (day.plays.isoformat(), day.booking, [show.act for show in day.shows])
        for day in found.days(on)
    ]


def test_shows_stand_by_date_and_the_day_itself_is_still_to_come() -> None:
    found = books(Late="plays: 2026-12-05", Soon="plays: 2026-11-02", Gone="plays: 2026-11-01")
    assert days(found, date(2026, 11, 2)) == [
        ("2026-11-02", "confirmed", ["Soon"]),
        ("2026-12-05", "confirmed", ["Late"]),
    ]
    assert [show.act for show in found.past(date(2026, 11, 2))] == ["Gone"]


def test_confirmed_acts_of_one_date_are_one_day() -> None:
    assert days(books(A="plays: 2026-12-05", B="plays: 2026-12-05")) == [
        ("2026-12-05", "confirmed", ["A", "B"])
    ]


def test_who_plays_last_stands_first_so_that_what_is_short_is_short_for_the_opener() -> None:
    ends = "plays: 2026-12-05\nclock: {ends: '%s'}"
    found = books(
        Opener=ends % "20:40", Silent="plays: 2026-12-05", Head=ends % "22:30", Late=ends % "01:00"
    )
    assert days(found) == [("2026-12-05", "confirmed", ["Late", "Head", "Opener", "Silent"])]


def test_holds_of_one_date_stand_against_each_other_and_beside_what_is_confirmed() -> None:
    found = books(
        Opener="plays: 2026-12-05",
        One="plays: 2026-12-05\nbooking: first hold",
        With="plays: 2026-12-05\nbooking: first hold",
        Two="plays: 2026-12-05\nbooking: second hold",
    )
    assert days(found) == [
        ("2026-12-05", "confirmed", ["Opener"]),
        ("2026-12-05", "first hold", ["One", "Opener", "With"]),
        ("2026-12-05", "second hold", ["Opener", "Two"]),
    ]


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        (
            "note: x",
            (
                "shows/A.yml:1:1 plays is missing; write the date of the show, like plays:"
                " 2026-12-05 [missing-key]"
            ),
        ),
        (
            "plays: 5.12.2026",
            (
                "shows/A.yml:2:8 plays: '5.12.2026' is not a date, year first; write"
                " year-month-day, like 2026-03-02 [date-unreadable]"
            ),
        ),
        (
            "plays: 2026-12-05\nclock: {day: Friday, ends: '22:00'}",
            (
                "shows/A.yml:3:14 day: 'Friday' is not the day of the week of 2026-12-05, which is"
                " a Saturday; mend the one that is wrong, or leave the day out [day-differs]"
            ),
        ),
    ],
)
def test_what_is_wrong_with_a_show_is_a_problem_with_its_line_and_hides_no_other(
    text: str, problem: str
) -> None:
    found = books(A=text, B="plays: 2026-12-05")
    assert [str(each) for each in found.problems] == [problem]
    assert [show.act for show in found.shows] == ["B"]


def test_one_act_twice_on_one_date_is_a_problem_of_the_later_file() -> None:
    text = f"act: A\nplays: 2026-12-05\n{NEED}"
    found = books_of(
        {
            "shows/one.yml": text,
            "shows/two.yml": text,
            "shows/next.yml": text.replace("-05", "-06"),
        },
        RULES,
    )
    assert [str(each) for each in found.problems] == [
        "shows/two.yml:1:6 act: 'A' plays on 2026-12-05 in shows/one.yml already; keep one of the"
        " two files [show-twice]"
    ]
    assert len(found.shows) == 2


def test_the_date_tells_the_day_of_the_week() -> None:
    (show,) = books(A="plays: 2026-12-05\nclock: {ends: '22:00'}").shows
    (ends,) = [each for each in show.asks["requirements"] if each["sort"] == "ends"]
    assert (ends["day"], ends["need"]) == ("saturday", "ends at 22:00 on a Saturday")


IN_PART = "plays: 2026-12-05\nneeds:\n  - {what: stage width, at least: 9 m}\n  - {what: moon}\n"


def test_a_show_of_which_a_line_cannot_be_read_is_on_the_books_all_the_same() -> None:
    found = books_of({"shows/a.yml": f"act: A\n{IN_PART}"}, RULES)
    assert [show.act for show in found.shows] == ["A"]
    assert len(found.shows[0].asks["not_read"]) == 1
    assert [problem.where.line for problem in found.problems] == [5]


@pytest.mark.parametrize(
    "doubt",
    [
        "plays: 5.12.2026",
        "plays: 2026-12-05\nbooking: perhaps",
        "plays: 2026-12-05\nclock: {day: Friday, ends: '22:00'}",
    ],
)
def test_a_show_whose_date_or_booking_is_in_doubt_is_not_judged(doubt: str) -> None:
    found = books_of({"shows/a.yml": f"act: A\n{doubt}\n{NEED}"}, RULES)
    assert not found.shows
    assert found.problems
