"""Shows on the books in words, of verdicts made by hand: each sentence that a crew may meet."""

from collections.abc import Iterator
from datetime import date
from itertools import permutations
from typing import Any, cast

import pytest

from builder.fit.records import FitPack, RiderAsked, Verdict
from builder.fit.verdicts import ASK, FITS, NOT_NEEDED, NOTED, SHORT
from builder.registry import RULES
from builder.shows.booked import CONFIRMED, Booked, Books, ShowDay, books_of
from builder.shows.judging import Judged, Outlook, Turned, answers, pairs, says, turned, weight
from builder.shows.telling import (
    counted,
    head,
    named_lines,
    names_in,
    outlook_lines,
    outlook_record,
    shortage,
    turn_words,
    turned_lines,
)

ON = date(2026, 10, 12)
PACK = cast(FitPack, {"sections": [], "cautions": []})


def verdict(
    word: str,
    by: str = "",
    *,
    title: str = "Power for sound",
    need: str = "32 A",
    item: str = "",
    reason: str = "",
    notes: tuple[str, ...] = (),
    strictness: str = "must",
) -> Verdict:
    """A verdict with no more than the words about shows read."""
    found: dict[str, Any] = {
        "act": "A",
        "line": 4,
        "department": "power",
        "title": title,
        "need": need,
        "strictness": strictness,
        "verdict": word,
        "reason": reason or (f"Short by {by}." if by else "No such outlet."),
        "fact": {"item": item} if item else None,
        "margin": [by and f"−{by}", by and f"−{by}"],
        "notes": list(notes),
        "remedy": "",
        "who": "",
    }
    return cast(Verdict, found)


def show(
    act: str = "A", plays: str = "2026-12-05", booking: str = CONFIRMED, **asks: Any
) -> Booked:
    """A show on the books."""
    asked = {"act": act, "configuration": "", "not_read": [], **asks}
    day = date.fromisoformat(plays)
    return Booked(f"shows/{act}.yml", day, booking, cast(RiderAsked, asked))


def judged(*verdicts: Verdict, one: Booked | None = None, **where: str) -> Judged:
    """A show, judged."""
    one = one or show()
    return Judged(ShowDay(one.plays, one.booking, (one,)), one, verdicts, **where)


def outlook(*coming: Judged, past: tuple[Booked, ...] = ()) -> Outlook:
    """Shows to come."""
    return Outlook(ON, coming, past, PACK)


def turn(was: Verdict | None, now: Verdict | None) -> Turned:
    """A verdict that turns."""
    return Turned(judged(*([now or was] if now or was else [])), was, now)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("was", "now", "words"),
    [
        (verdict(FITS), verdict(SHORT, "32 A"), "power for sound fits now, would be short by 32 A"),
        (
            verdict(SHORT, "32 A"),
            verdict(SHORT, "40 A"),
            "power for sound is short by 32 A now, would be short by 40 A",
        ),
        (
            verdict(SHORT, "32 A"),
            verdict(NOTED, notes=("Worn.",)),
            "power for sound is short by 32 A now, would fit",
        ),
        (
            verdict(FITS),
            verdict(NOTED, notes=("Worn.", "Old.")),
            "power for sound fits now, would fit, with a note: Worn",
        ),
        (verdict(FITS), verdict(NOTED), "power for sound fits now, would fit, with a note"),
        (verdict(NOTED), verdict(FITS), "power for sound fits now, would fit"),
        (
            verdict(FITS),
            verdict(ASK, reason="Nobody knows its rating."),
            "power for sound fits now, would be to ask (Nobody knows its rating)",
        ),
        (
            verdict(FITS),
            verdict(SHORT, reason="The board is out."),
            "power for sound fits now, would be short (The board is out)",
        ),
        (verdict(NOT_NEEDED), verdict(FITS), "power for sound is not needed now, would fit"),
        (verdict(FITS), verdict(NOT_NEEDED), "power for sound fits now, would not be needed"),
        (None, verdict(SHORT, "32 A"), "power for sound would be short by 32 A"),
        (
            verdict(SHORT, "32 A"),
            None,
            "power for sound is short by 32 A now, would no longer be told",
        ),
        (
            verdict(FITS, item="Left"),
            verdict(FITS, item="Right"),
            "power for sound still fits: by Right in place of Left",
        ),
        (
            verdict(FITS, item="Left"),
            verdict(FITS),
            "power for sound still fits: by nothing stated in place of Left",
        ),
        (
            verdict(FITS, item="All together"),
            verdict(FITS, item="Right"),
            "power for sound still fits: by Right in place of nothing stated",
        ),
    ],
)
def test_a_verdict_that_turns_is_told_before_and_after(
    was: Verdict | None, now: Verdict | None, words: str
) -> None:
    assert turn_words(turn(was, now)) == words


def test_what_was_asked_is_told_where_a_show_asks_for_several_of_that_name() -> None:
    one, other = verdict(SHORT, "2 A"), verdict(FITS, need="16 A")
    twice = Turned(judged(one, other), None, one)
    assert turn_words(twice) == "power for sound, 32 A, would be short by 2 A"


def test_without_a_verdict_before_and_after_there_is_no_turn() -> None:
    with pytest.raises(ValueError, match="before and after"):
        _ = turn(None, None).found


def test_a_verdict_is_another_by_its_word_its_shortage_and_its_line() -> None:
    assert says(verdict(SHORT, "2 A")) != says(verdict(SHORT, "3 A"))
    assert says(verdict(FITS, "2 A")) == says(verdict(FITS, "3 A"))
    assert says(verdict(FITS, item="Left")) != says(verdict(FITS, item="Right"))
    assert answers(verdict(FITS, item="Left and right together")) == ""
    assert answers(verdict(FITS, item="Together")) == "Together"


def test_what_becomes_short_stands_first_what_must_be_before_what_should() -> None:
    left, right = verdict(FITS, item="Left"), verdict(FITS, item="Right")
    shorter = turn(verdict(SHORT, "2 A"), verdict(SHORT, "3 A"))
    order = [
        turn(verdict(FITS), verdict(SHORT, "2 A")),
        turn(verdict(FITS), verdict(SHORT, "2 A", strictness="should")),
        turn(verdict(FITS), verdict(ASK)),
        turn(verdict(SHORT, "2 A"), verdict(NOTED)),
        turn(verdict(SHORT, "2 A"), verdict(FITS)),
        turn(verdict(FITS), None),
        turn(verdict(FITS), verdict(FITS, strictness="should")),
        turn(left, right),
    ]
    first, should, ask, noted, fits, gone, _, last = order
    for some in permutations([first, should, ask, noted, fits, last], 3):
        wanted = [each for each in order if each in some]
        assert sorted(some, key=weight) == wanted
    assert weight(gone)[:2] == (False, True)
    assert weight(shorter) == weight(first)


def test_verdicts_are_held_against_those_on_the_same_requirement() -> None:
    one, other = verdict(FITS, item="Left"), verdict(FITS, item="Right")
    new = verdict(FITS, title="Weight")
    assert pairs([one, other], [other, one, new]) == [(one, other), (other, one), (None, new)]
    assert pairs([one, other], [one]) == [(one, one), (other, None)]


def test_shows_of_one_day_are_told_apart_from_each_other_and_from_the_day() -> None:
    one, other = show(), show("B")
    day = ShowDay(one.plays, CONFIRMED, (one, other))
    fits, short = verdict(FITS), verdict(SHORT, "2 A")
    both = [Judged(day, one, (fits,)), Judged(day, other, (fits,)), Judged(day, None, (fits,))]
    (turn_of_b,) = turned(outlook(*both), outlook(both[0], Judged(day, other, (short,)), both[2]))
    assert turn_of_b.judged.show is other
    (turn_of_all,) = turned(outlook(*both), outlook(*both[:2], Judged(day, None, (short,))))
    assert turn_of_all.judged.show is None


def test_a_reason_that_names_an_act_is_warned_of() -> None:
    books = Books((show("Sallow Kestrel"),))
    assert list(named_lines("Horn blown.", books)) == []
    assert lines(named_lines("For sallow kestrel.", books)) == (
        "The reason names Sallow Kestrel from your books, and the log is published. Give the order"
        " again without it if that is too early."
    )


def test_what_is_short_stands_below_its_show_and_the_caution_below_all() -> None:
    told = list(outlook_lines(outlook(judged(verdict(SHORT, "2 A"), verdict(FITS)))))
    assert told[:3] == [
        "Shows on the books from 2026-10-12 on:",
        "  Saturday 5 December, A: 1 short, 1 fit",
        "    short by 2 A: Power for sound, 32 A",
    ]
    assert len(told) > 3
    for line in told[3:]:
        assert line.startswith("  ")
        assert line[2] != " "


def test_a_show_that_only_one_state_has_turns_all_its_verdicts() -> None:
    one = judged(verdict(SHORT, "2 A"))
    (gone,) = turned(outlook(one), outlook())
    assert (gone.judged, gone.before, gone.after) == (one, one.verdicts[0], None)
    (new,) = turned(outlook(), outlook(one))
    assert (new.judged, new.before, new.after) == (one, None, one.verdicts[0])
    assert turned(outlook(one), outlook(one)) == ()


@pytest.mark.parametrize(
    ("found", "words"),
    [
        (verdict(SHORT, "2 A"), "short by 2 A: Power for sound, 32 A"),
        (
            verdict(SHORT, "2 A", strictness="should"),
            "short (should) by 2 A: Power for sound, 32 A",
        ),
        (verdict(SHORT), "short: Power for sound, 32 A: No such outlet"),
    ],
)
def test_what_is_short_says_by_how_much_or_why(found: Verdict, words: str) -> None:
    assert shortage(found) == words


@pytest.mark.parametrize(
    ("one", "words"),
    [
        (show(), "Saturday 5 December, A"),
        (show(plays="2027-01-02"), "Saturday 2 January 2027, A"),
        (show(booking="first hold"), "Saturday 5 December, A, first hold"),
    ],
)
def test_a_show_is_told_by_day_act_and_hold(one: Booked, words: str) -> None:
    assert head(judged(one=one), ON) == words
    the_day = Judged(ShowDay(one.plays, one.booking, (one,)), None, ())
    assert head(the_day, ON) == words.replace(", A", ", all acts together")


def first(found: Outlook) -> str:
    """The line of the first show to come."""
    return list(outlook_lines(found))[1]


def test_where_a_show_is_judged_is_told_where_its_rider_leaves_that_open() -> None:
    there = {"configuration": "Seated", "space": "Hall"}
    fits = verdict(FITS)
    assert first(outlook(judged(fits, **there))) == (
        "  Saturday 5 December, A, in Hall, Seated: 1 fit"
    )
    named = show(configuration="Seated")
    assert ", in Hall: 1 fit" in first(outlook(judged(fits, one=named, **there)))
    alone = judged(fits, one=named, configuration="Seated")
    assert first(outlook(alone)) == "  Saturday 5 December, A: 1 fit"
    one = show()
    the_day = Judged(ShowDay(one.plays, CONFIRMED, (one,)), None, (fits,), "Seated", "Hall")
    assert first(outlook(the_day)) == "  Saturday 5 December, all acts together: 1 fit"


@pytest.mark.parametrize(
    ("verdicts", "not_read", "words"),
    [
        ((), [], "its rider asks nothing"),
        ((), ["x"], "its rider asks nothing; 1 line of its rider not judged"),
        ((verdict(FITS),), ["x", "y"], "1 fit; 2 lines of its rider not judged"),
        ((verdict(NOT_NEEDED),), [], "nothing is needed of the house"),
        (
            (verdict(FITS), verdict(SHORT), verdict(FITS), verdict(NOT_NEEDED)),
            [],
            "1 short, 2 fit",
        ),
    ],
)
def test_verdicts_are_counted_the_worst_first(
    verdicts: tuple[Verdict, ...], not_read: list[str], words: str
) -> None:
    assert counted(judged(*verdicts, one=show(not_read=not_read))) == words


def test_an_outlook_without_shows_tells_only_that_and_who_has_played() -> None:
    assert list(outlook_lines(outlook())) == ["No show is on the books from 2026-10-12 on."]
    past = (show("B", "2026-10-01"), show("C", "2026-10-02"))
    assert list(outlook_lines(outlook(past=past)))[1:] == [
        "  Played before 2026-10-12, not judged: B (2026-10-01), C (2026-10-02)."
    ]


def lines(found: Iterator[str]) -> str:
    """Lines in one."""
    return " ".join(" ".join(found).split())


def test_files_that_could_not_be_judged_are_told_apart_from_those_judged_in_part() -> None:
    one = judged(verdict(FITS))
    said = lines(turned_lines((), outlook(one), ["shows/A.yml", "shows/B.yml"]))
    assert said == (
        "Shows on the books: no verdict changes."
        " Not judged, for 'housepack check' finds problems in them: shows/B.yml."
        " Judged in part, for 'housepack check' finds problems in them: shows/A.yml."
    )
    assert lines(turned_lines((), outlook(), ())) == ""
    told = lines(turned_lines([turn(verdict(FITS), verdict(SHORT, "2 A"))], outlook(one), ()))
    assert told == (
        "Shows on the books that this changes: Saturday 5 December, A: power for sound fits now,"
        " would be short by 2 A"
    )


def test_acts_that_a_text_names_are_found_whatever_the_capitals() -> None:
    books = Books((show("Sallow Kestrel"), show("Alder"), show("Alder", "2026-12-06")))
    assert names_in("For the ALDER show", books) == ("Alder",)
    assert names_in("Horn blown.", books) == ()


def test_programs_get_who_else_plays_and_what_the_day_comes_to() -> None:
    one, other = show(), show("B", not_read=["x", "y"])
    day = ShowDay(one.plays, CONFIRMED, (one, other))
    short = verdict(SHORT, "2 A")
    found = outlook(
        Judged(day, one, (verdict(FITS), short), "Seated", "Hall"),
        Judged(day, other, (verdict(FITS),)),
        Judged(day, None, (verdict(FITS),)),
        past=(show("C", "2026-10-01"),),
    )
    record = outlook_record(found)
    first, second, both = record["coming"]
    assert first["together_with"] == ["B"]
    assert (first["space"], first["configuration"], first["verdict"]) == ("Hall", "Seated", SHORT)
    assert (first["counts"]["short"], first["counts"]["fits"], first["counts"]["ask"]) == (1, 1, 0)
    assert [each["margin"] for each in first["short"]] == [["−2 A", "−2 A"]]
    assert (second["verdict"], second["not_read"]) == (ASK, 2)
    assert (both["file"], both["act"], both["not_read"]) == ("", "", 0)
    assert both["together_with"] == ["A", "B"]
    assert both["verdict"] == ASK
    assert record["past"] == [{"file": "shows/C.yml", "act": "C", "plays": "2026-10-01"}]


def test_on_one_date_the_firm_ones_stand_first_then_the_holds_then_by_file() -> None:
    bookings = {"E": "", "D": "first hold", "C": "second hold", "B": "third hold", "A": ""}
    texts = {
        f"shows/{act}.yml": f"act: {act}\nplays: 2026-12-05\n"
        + (f"booking: {booking}\n" if booking else "")
        + "needs: [{what: stage width, at least: 5 m}]\n"
        for act, booking in bookings.items()
    }
    assert [each.act for each in books_of(texts, RULES).shows] == ["A", "E", "D", "C", "B"]
