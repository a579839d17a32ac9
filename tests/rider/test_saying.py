"""Verdicts in words for the terminal and for an e-mail, line by line, by hand."""

import json
from typing import Any

from builder.cautions import EVERYWHERE
from builder.rider import saying

Record = dict[str, Any]
FACT = {
    "key": "deck.width",
    "item": "Deck",
    "label": "Usable width",
    "text": "12.00 m",
    "also": "39'-4 1/2\"",
    "standing": "stated",
    "checked": "2026-01-01 by crew",
}


def verdict(word: str = "fits", title: str = "stage width", **more: Any) -> Record:
    """A verdict of Act."""
    blank = {
        "act": "Act",
        "line": 3,
        "title": title,
        "need": "at least 11 m",
        "verdict": word,
        "strictness": "must",
        "reason": "+1.00 m to spare.",
        "margin": ["", ""],
        "fact": None,
        "notes": [],
        "remedy": "",
        "who": "",
        "question": "",
        "act_question": "",
        "lacks": [],
        "parts": [],
    }
    return {**blank, **more}


def result(*verdicts: Record, **more: Any) -> Record:
    """The result of a check of Act alone."""
    blank = {
        "venue": "Hall",
        "revision": {"number": "4", "on": "2026-01-11"},
        "verdict": "short",
        "verdicts": list(verdicts),
        "acts": [{"act": "Act", "revision": "", "verdict": "short"}],
        "not_read": [],
        "judged_in": [],
        "others": [],
        "day": [],
        "questions": [],
        "act_questions": [],
        "cautions": [],
    }
    return {**blank, **more}


def lines(found: Any) -> list[str]:
    """The lines of a verdict."""
    return saying.text_lines(found)


def test_a_fit_whose_reason_says_its_margin_again_is_one_line_and_its_fact() -> None:
    whole = verdict(fact=FACT, margin=["+1.00 m", "+3'-3 1/2\""], reason="1.00 m to spare.")
    assert lines(whole) == [
        "  + fits: stage width, at least 11 m [+1.00 m / +3'-3 1/2\"]",
        "      House: Deck, Usable width: 12.00 m (39'-4 1/2\") [deck.width]; checked 2026-01-01 by"
        " crew",
    ]
    of_one_system = {**whole, "margin": ["+2", ""], "reason": "2 to spare."}
    assert "      2 to spare." not in lines(of_one_system)
    assert "      1.00 m to spare." in lines({**whole, "fact": None})
    assert "      1.00 m to spare." in lines({**whole, "verdict": "ask"})
    assert "      2.00 m to spare." in lines({**whole, "reason": "2.00 m to spare."})


def test_a_margin_in_one_system_and_what_only_should_be_there_are_told() -> None:
    short = verdict("short", strictness="should", margin=["−1", ""], reason="1 too few.")
    assert lines(short) == [
        "  X short: stage width, at least 11 m (should) [−1]",
        "      1 too few.",
    ]
    assert lines({**short, "strictness": "must", "margin": ["", ""]})[0] == (
        "  X short: stage width, at least 11 m"
    )


def test_notes_and_the_remedy_stand_below_and_what_is_not_needed_says_no_more() -> None:
    short = verdict("short", reason="r.", notes=["n."], remedy="Do it.", who="the show")
    assert lines(short)[1:] == [
        "      r.",
        "      Note: n.",
        "      Remedy: Do it. Who could: the show.",
    ]
    assert len(lines({**short, "verdict": "not needed"})) == 1


def test_a_fact_without_words_is_told_by_its_standing() -> None:
    unknown = {**FACT, "text": "", "also": "", "standing": "unknown", "checked": ""}
    assert lines(verdict("ask", reason="r.", fact=unknown))[2] == (
        "      House: Deck, Usable width: unknown [deck.width]"
    )


def test_parts_stand_set_in_the_gravest_first_and_a_fact_from_above_is_not_told_again() -> None:
    parts = [
        verdict("fits", "A", reason="r.", fact=FACT),
        verdict("short", "B", reason="r.", fact={**FACT, "item": "Wing"}),
    ]
    found = lines(verdict("short", reason="r.", fact=FACT, parts=parts))
    heads = [line for line in found if line.strip()[:1] in ("X", "+")]
    assert heads == [
        "  X short: stage width, at least 11 m",
        "      X short: B, at least 11 m",
        "      + fits: A, at least 11 m",
    ]
    houses = [line.strip().split(",")[0] for line in found if "House:" in line]
    assert houses == ["House: Deck", "House: Wing"]


def test_the_day_stands_after_the_acts_and_an_act_tells_its_revision() -> None:
    day: Any = result(
        verdict(),
        verdict("short", act="The day"),
        acts=[{"act": "Act", "revision": "2", "verdict": "fits"}],
    )
    assert [part["head"] for part in saying.acts(day)] == [
        "Act, rider 2: FITS",
        "The day, all acts together",
    ]
    alone: Any = result(verdict())
    assert [part["head"] for part in saying.acts(alone)] == ["Act: SHORT"]
    assert saying.counted(alone) == "1 fit."
    nothing: Any = result()
    assert saying.counted(nothing) == "Nothing is asked."


def test_the_day_is_a_table_whose_columns_are_as_wide_as_their_widest_cell() -> None:
    row = {"start": "10:00", "end": "11:00", "long": "1 h", "what": "load-in", "whose": "Act"}
    told: Any = result(day=[row])
    assert saying.day_lines(told) == [
        "The day, each thing as early as it can be",
        "",
        "  start  end    long  what     whose",
        "  10:00  11:00  1 h   load-in  Act",
        "",
    ]
    nothing: Any = result()
    assert saying.day_lines(nothing) == []


def test_questions_stand_by_department() -> None:
    told: Any = result(questions=[{"department": "stage", "questions": ["How wide?"]}])
    assert saying.question_lines(told) == [
        "Questions to the house",
        "",
        "  Stage",
        "  - How wide?",
        "",
    ]
    nothing: Any = result()
    assert saying.question_lines(nothing) == []


def test_an_e_mail_has_a_row_for_each_verdict_and_each_of_its_parts() -> None:
    part = verdict("short", "B", reason="r.", margin=["−1 m", "−3 ft"])
    assert saying.rows_of(verdict("short", reason="w.", parts=[part])) == [  # type: ignore[arg-type]
        ("short", "stage width, at least 11 m", "", "w."),
        ("short", "B, at least 11 m", "−1 m / −3 ft", "r."),
    ]
    row = {"start": "10:00", "end": "11:00", "long": "1 h", "what": "load-in", "whose": "Act"}
    with_day: Any = result(verdict(), day=[row])
    without: Any = result(verdict())
    assert "load-in" in saying.as_markdown(with_day)
    assert saying.as_markdown(without).startswith("# Hall, revision 4: short\n\n## Act: SHORT\n")
    assert "\n## The day, each thing as early as it can be\n" in saying.as_markdown(with_day)
    assert "as early as it can be" not in saying.as_markdown(without)


def test_for_programs_keys_are_sorted_one_a_line_with_the_caution() -> None:
    alone: Any = result()
    told = saying.as_json(alone)
    assert told.startswith('{\n "act_questions": [],\n "acts": [\n  {\n   "act": "Act",')
    assert told.endswith("}\n")
    assert json.loads(told) == {**alone, "caution": EVERYWHERE}


def test_the_whole_text_begins_with_what_decides_and_ends_with_the_cautions() -> None:
    told: Any = result(
        verdict("short", reason="r."), judged_in=["Judged in Seated."], cautions=["Take care."]
    )
    lines_told = saying.as_text(told).splitlines()
    assert lines_told[:4] == [
        "Hall, revision 4 of 2026-01-11: SHORT",
        "1 short.",
        "Judged in Seated.",
        "",
    ]
    assert "Act: SHORT" in lines_told
    assert "Take care." in lines_told
    assert saying.as_text(told).endswith("\n")


def test_questions_to_the_acts_stand_after_those_to_the_house_under_their_own_head() -> None:
    told: Any = result(
        questions=[{"department": "stage", "questions": ["How wide?"]}],
        act_questions=[{"act": "A | B", "questions": ["How long is your check?"]}],
    )
    assert saying.question_lines(told)[5:] == [
        "Questions to the acts",
        "",
        "  A | B",
        "  - How long is your check?",
        "",
    ]
    said = saying.as_markdown(told)
    assert said.index("## Questions to the house: stage") < said.index("## Questions to the acts: ")
