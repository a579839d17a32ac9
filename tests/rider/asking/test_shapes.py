"""A value, a list or a group in another's place, keys nobody knows, and what is missing."""

import pytest

from tests.rider.riders import problems

KNOWN = (
    "act, revision, plays, booking, space, configuration, needs, power, hangs, risers, plot,"
    " trucks, clock, crew, tasks, level, other levels, stays on deck, questions, note"
)
LIKE_A_NAME = "write it like Stage right company switch [wrong-shape]"
SHAPES = [
    (
        "needs: none",
        "2:8 needs: 'none' should be a list; leave the key out where there is nothing to list"
        " [wrong-shape]",
    ),
    (
        "needs: haze",
        "2:8 needs: 'haze' should be a list; begin each entry with '- ', and give it keys such as"
        " what, at least, at most [wrong-shape]",
    ),
    (
        "questions: One?",
        "2:12 questions: 'One?' should be a list; write [One?] [wrong-shape]",
    ),
    (
        "questions: 'One, two?'",
        "2:12 questions: 'One, two?' should be a list; begin each entry with '- ' [wrong-shape]",
    ),
    (
        "questions: [[a]]",
        "2:13 questions[1] should be one value, not a group or a list; write it like Hung from the"
        " purlins. [wrong-shape]",
    ),
    (
        "trucks: 2",
        "2:9 trucks: '2' should be a group of keys; write keys such as count, length, length of,"
        " height [wrong-shape]",
    ),
    (
        "needs: [haze]",
        "2:9 needs[1]: 'haze' should be a group of keys; write keys such as what, at least, at"
        " most, between [wrong-shape]",
    ),
    (
        "needs: [{what: [a], is: yes}]",
        f"2:16 needs[1].what should be one value, not a group or a list; {LIKE_A_NAME}",
    ),
    (
        "needs: [{what: deck height, between: 1 m}]",
        "2:38 needs[1].between: '1 m' should be a list; write [1 m] [wrong-shape]",
    ),
    (
        "needs: [{what: deck height, between: [1 m]}]",
        "2:38 needs[1].between is a list of 1, and two values belong here; write the least and the"
        " most, like [1 m, 2 m] [wrong-shape]",
    ),
    (
        "needs: [{what: haze, is: yes, strictness: Must}]",
        "2:43 needs[1].strictness: 'Must' is not one of the choices; did you mean 'must'? write one"
        " of: must, should [choice-unknown]",
    ),
    (
        "needs: [{what: haze, is: yes, strictness: [must]}]",
        "2:43 needs[1].strictness is not one of the choices; write one of: must, should"
        " [choice-unknown]",
    ),
    ("nedes: []", "2:1 nedes is not a key here; did you mean 'needs'? [unknown-key]"),
    ("zzzz: 1", f"2:1 zzzz is not a key here; known here: {KNOWN} [unknown-key]"),
    (
        "trucks: {}",
        "2:9 trucks.count is missing here; write it, or write 'unknown' where the field allows not"
        " knowing [missing-key]",
    ),
    (
        "plot: [{name: A, width: 1 m, depth: 1 m, at: {across: centre}}]",
        "2:46 plot[1].at.depth is missing here; write it, or write 'unknown' where the field allows"
        " not knowing [missing-key]",
    ),
    (
        "configuration: ''",
        "2:16 configuration is empty; write a value, `unknown` if nobody knows it yet, `none`, or"
        " leave the key out [empty-value]",
    ),
    (
        f"configuration: {'x' * 81}",
        f"2:16 configuration: '{'x' * 59}…' is 81 characters long, and 80 is the most; shorten it"
        " [text-too-long]",
    ),
    (
        "plays: 5.12.2026",
        "2:8 plays: '5.12.2026' is not a date, year first; write year-month-day, like 2026-03-02"
        " [date-unreadable]",
    ),
    (
        "plays: 2026-12-05\nclock: {day: Friday}",
        "3:14 day: 'Friday' is not the day of the week of 2026-12-05, which is a Saturday; mend the"
        " one that is wrong, or leave the day out [day-differs]",
    ),
    (
        "clock: {changeover parts: {lines a minute: 0}}",
        "2:44 lines a minute: '0' is no rate; write how many lines your crew checks in a minute"
        " [number-out-of-range]",
    ),
]


@pytest.mark.parametrize(("line", "problem"), SHAPES)
def test_what_stands_in_another_s_place_is_told_with_what_belongs_there(
    line: str, problem: str
) -> None:
    assert problems(f"act: A\n{line}\n") == [f"rider.yml:{problem}"]


def test_a_rider_without_an_act_is_told_at_its_first_line() -> None:
    assert problems("note: B\n") == [
        "rider.yml:1:1 act is missing here; write it, or write 'unknown' where the field allows not"
        " knowing [missing-key]"
    ]
