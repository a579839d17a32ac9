"""A house that is closed, or some departments of it, on the date of a show, before it and after."""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from tests.fit.sample import Record, a_list, asks, item, pack, rider, value

WIDTH = asks("stage width", low=10.0)
TOO_WIDE = asks("stage width", low=20.0)
MIX = asks("mix position width", low=2.0, department="sound")
EITHER = {**WIDTH, "sort": "any", "any": [WIDTH, MIX]}
WORKS = "The house is closed from 2026-07-01 until 2026-08-15 (works on the floor)."


def day(text: str) -> Record:
    """An end of a closure; of an empty text, an unknown one."""
    return value(text, standing="stated" if text else "unknown")


def closure(first: str, last: str, *departments: str, why: str = "Works on the floor.") -> Record:
    """A closure."""
    more = {"why": value(why)} if why else {}
    names = {"departments": a_list(*departments)} if departments else {}
    return item("closure", "Closed", **{"from": day(first)}, until=day(last), **more, **names)


WHOLE = closure("2026-07-01", "2026-08-15", why="works on the floor.")


def judged(closures: list[Record], *needs: Record, plays: str = "", **more: Any) -> Record:
    """What a show on a date comes to in a house; the pack's revision is of 2026-01-11."""
    house: Any = pack(
        house=[item("configuration", "Standing"), *closures],
        stage=[item("deck", "Deck", usable_width=value("16 m", 16.0))],
        sound=[item("mix", "Mix", width=value("4 m", 4.0))],
    )
    show: Any = rider(*needs, plays=plays, **more)
    result: Record = fit(house, [show])
    return result


def words(result: Record) -> list[str]:
    """The words of all verdicts."""
    return [answer["verdict"] for answer in result["verdicts"]]


@pytest.mark.parametrize("date", ["2026-07-01", "2026-07-20", "2026-08-15"])
def test_a_closed_house_answers_every_need_and_the_date(date: str) -> None:
    result = judged([WHOLE], WIDTH, MIX, plays=date)
    assert [(one["verdict"], one["reason"]) for one in result["verdicts"]] == [("short", WORKS)] * 3
    last = result["verdicts"][-1]
    assert (last["title"], last["need"], last["strictness"]) == ("Date of the show", date, "must")
    assert last["remedy"] == "Play on another date, or ask whether it can be opened on this one."
    assert last["fact"]["text"] == "2026-08-15"
    assert result["verdict"] == result["acts"][0]["verdict"] == "short"
    assert result["questions"] == []


def test_what_only_should_be_is_no_show_in_a_closed_house_either() -> None:
    needs = {**WIDTH, "strictness": "should"}
    assert judged([WHOLE], needs, plays="2026-07-20")["verdict"] == "short"


@pytest.mark.parametrize("date", ["2026-06-30", "2026-08-16", "2025-07-20", "2027-07-20"])
def test_on_another_date_a_closure_changes_nothing(date: str) -> None:
    without = judged([], WIDTH, TOO_WIDE, MIX, plays=date)
    assert judged([WHOLE], WIDTH, TOO_WIDE, MIX, plays=date) == without
    assert words(without) == ["fits", "short", "fits"]


def test_what_is_short_without_that_keeps_its_reason_and_is_told_of_the_closure() -> None:
    found = judged([WHOLE], TOO_WIDE, plays="2026-07-20")["verdicts"][0]
    alone = judged([], TOO_WIDE)["verdicts"][0]
    assert (found["verdict"], found["reason"]) == ("short", alone["reason"])
    assert found["notes"] == [*alone["notes"], WORKS]


def test_what_the_show_brings_needs_no_house() -> None:
    result = judged([WHOLE], {**WIDTH, "carried": "show"}, plays="2026-07-20")
    assert words(result) == ["not needed", "short"]


def test_a_show_without_a_date_is_asked_for_it_once() -> None:
    result = judged([WHOLE], WIDTH, MIX)
    assert words(result) == ["fits", "fits", "ask"]
    found = result["verdicts"][-1]
    assert found["reason"] == f"{WORKS} The rider does not say when it plays."
    assert found["need"] == "not said"
    assert found["question"] == ""
    question = f"On which date do you play? {WORKS} (Act: Date of the show, not said.)"
    assert result["act_questions"] == [{"act": "Act", "questions": [question]}]


def test_a_closure_that_is_over_when_the_pack_is_issued_asks_no_date() -> None:
    over = closure("2025-12-01", "2026-01-10")
    assert words(judged([over], WIDTH)) == ["fits"]
    assert words(judged([closure("2025-12-01", "2026-01-11")], WIDTH)) == ["fits", "ask"]
    assert words(judged([closure("2025-12-01", "2026-01")], WIDTH)) == ["fits", "ask"]
    assert words(judged([closure("2025-12-01", "2025")], WIDTH)) == ["fits"]


def test_a_form_that_asks_nothing_is_asked_nothing() -> None:
    assert judged([WHOLE])["verdicts"] == []
    assert words(judged([WHOLE], plays="2026-07-20")) == ["short"]


@pytest.mark.parametrize(
    ("first", "last", "date", "word"),
    [
        ("2026-07", "2026-08-15", "2026-06-30", ""),
        ("2026-07", "2026-08-15", "2026-07-01", "ask"),
        ("2026-07", "2026-08-15", "2026-07-31", "ask"),
        ("2026-07", "2026-08-15", "2026-08-01", "short"),
        ("2026-07-01", "2026-08", "2026-07-31", "short"),
        ("2026-07-01", "2026-08", "2026-08-01", "ask"),
        ("2026-07-01", "2026-08", "2026-09-01", ""),
        ("2026", "2026", "2026-07-20", "ask"),
        ("2025", "2027", "2026-07-20", "short"),
        ("2026", "2026", "2027-01-01", ""),
        ("", "2026-08-15", "2026-07-20", "ask"),
        ("", "2026-08-15", "2026-08-16", ""),
        ("2026-07-01", "", "2026-06-30", ""),
        ("2026-07-01", "", "2027-07-20", "ask"),
        ("2026-07-01", "further notice", "2026-06-30", ""),
        ("2026-07-01", "further notice", "2031-07-20", "short"),
        ("2026-07", "further notice", "2026-07-20", "ask"),
    ],
)
def test_ends_known_in_part_close_what_they_surely_take_in_and_ask_the_rest(
    first: str, last: str, date: str, word: str
) -> None:
    result = judged([closure(first, last)], WIDTH, plays=date)
    assert (
        words(result) == {"": ["fits"], "ask": ["fits", "ask"], "short": ["short", "short"]}[word]
    )


def test_whether_an_uncertain_closure_takes_in_the_date_is_asked_of_the_house() -> None:
    result = judged([closure("2026-07-01", "", why="")], WIDTH, plays="2026-09-01")
    reason = (
        "The house is closed from 2026-07-01 until a day that it does not know yet. Whether that"
        " takes in 2026-09-01 is not known."
    )
    assert result["verdicts"][-1]["reason"] == reason
    asked = "Are you open to shows on 2026-09-01? (Act: Date of the show, 2026-09-01.)"
    assert result["questions"] == [{"department": "house", "questions": [asked]}]
    assert result["act_questions"] == []


def test_further_notice_is_told_in_these_words() -> None:
    result = judged([closure("2026-07-01", "further notice", why="")], WIDTH, plays="2027-01-01")
    reason = "The house is closed from 2026-07-01 until further notice."
    assert result["verdicts"][0]["reason"] == reason


def test_departments_that_are_closed_answer_their_own_needs_only() -> None:
    part = closure("2026-07-01", "2026-08-15", "stage", "flying", why="")
    result = judged([part], WIDTH, MIX, plays="2026-07-20")
    assert words(result) == ["short", "fits"]
    reason = "Closed from 2026-07-01 until 2026-08-15: stage, flying."
    assert result["verdicts"][0]["reason"] == reason
    assert words(judged([part], WIDTH)) == ["fits", "ask"]
    assert words(judged([part], MIX)) == ["fits"]
    assert words(judged([part], {**WIDTH, "carried": "show"})) == ["not needed"]


def test_of_alternatives_one_that_is_open_is_asked() -> None:
    part = closure("2026-07-01", "2026-08-15", "stage")
    result = judged([part], EITHER, plays="2026-07-20")
    assert words(result) == ["ask"]
    assert result["verdicts"][0]["reason"].endswith("What else meets this need may be open.")
    both = closure("2026-07-01", "2026-08-15", "stage", "sound")
    assert words(judged([both], EITHER, plays="2026-07-20")) == ["short"]


def test_of_two_closures_each_counts() -> None:
    autumn = closure("2026-10-01", "2026-10-31")
    for order in ([WHOLE, autumn], [autumn, WHOLE]):
        assert words(judged(order, WIDTH, plays="2026-07-20")) == ["short", "short"]
        assert words(judged(order, WIDTH, plays="2026-10-20")) == ["short", "short"]
        assert words(judged(order, WIDTH, plays="2026-09-20")) == ["fits"]
        assert len(judged(order, WIDTH)["verdicts"]) == 2


def test_a_house_that_does_not_know_when_it_is_closed_is_asked() -> None:
    unsure = [item("identity", "House", closed=value(standing="unknown"))]
    result = judged(unsure, WIDTH, plays="2026-07-20")
    assert words(result) == ["fits", "ask"]
    assert result["questions"][0]["questions"][0].startswith("Are you open to shows on 2026-07-20?")
    undated = judged(unsure, WIDTH)["questions"][0]["questions"][0]
    assert undated.startswith("On which dates are you closed to shows?")
    for standing in ("none", "not stated"):
        open_house = [item("identity", "House", closed=value(standing=standing))]
        assert words(judged(open_house, WIDTH)) == ["fits"]


def test_an_act_that_tells_no_date_plays_on_that_of_the_others() -> None:
    house: Any = pack(house=[WHOLE], stage=[item("deck", "Deck", usable_width=value("16 m", 16.0))])
    dated: Any = rider(WIDTH, act="One", plays="2026-07-20")
    other: Any = rider(WIDTH, act="Two")
    for order in ([dated, other], [other, dated]):
        result = fit(house, order)
        assert {answer["verdict"] for answer in result["verdicts"]} == {"short"}
        assert [answer["verdict"] for answer in result["acts"]] == ["short", "short"]
    both_open: Any = [{**dated, "plays": "2026-09-20"}, other]
    assert fit(house, both_open)["verdict"] == "fits"


def test_what_the_acts_ask_together_is_closed_too() -> None:
    house: Any = pack(house=[WHOLE], stage=[item("deck", "Deck", usable_depth=value("10 m", 10.0))])
    depth = asks("stage depth", low=2.0)
    one: Any = rider(depth, act="One", plays="2026-07-20", stays_m=1.0)
    two: Any = rider(depth, act="Two", stays_m=1.0)
    result = fit(house, [one, two])
    of_the_day = [answer for answer in result["verdicts"] if answer["act"] == "The day"]
    assert of_the_day
    assert {answer["verdict"] for answer in result["verdicts"]} == {"short"}
