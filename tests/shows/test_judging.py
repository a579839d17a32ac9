"""Verdicts on the shows to come, and which of them a change of the demo turns."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from builder.files import read_folder
from builder.pack import Pack
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.shows.booked import Books, books_of
from builder.shows.judging import Outlook, outlook, turned
from builder.shows.telling import outlook_lines, outlook_record, turned_lines

ON = date(2026, 10, 12)
DEMO = read_folder(Path(__file__).parent.parent.parent / "venue")
TEXTS = {key: DEMO.texts[key] for key in ("house.yml", "access.yml", "stage.yml", "power.yml")}
"""The demo without what takes long to compute and no test here asks."""
CHARGERS = (
    "standing_loads:\n",
    (
        "standing_loads:\n  - {what: Chargers, on: SL lighting switch, draws: 10 A, phases: L1,"
        " power_factor: 0.95}\n"
    ),
)


def pack(old: str = "", new: str = "") -> Pack:
    """The demo's pack, with the text of its power file changed."""
    assert old in TEXTS["power.yml"]
    texts = {**TEXTS, "power.yml": TEXTS["power.yml"].replace(old, new, 1)} if old else TEXTS
    return pack_of(venue_of(texts, DEMO.photos))


@pytest.fixture(scope="module")
def before() -> Pack:
    """The demo's pack."""
    return pack()


def books(**shows: str) -> Books:
    """Books with a rider a word, all on one day unless the text says another."""
    texts = {
        f"shows/{name}.yml": (
            f"act: {name}\n{'' if 'plays' in text else 'plays: 2026-12-05'}\n{text}"
        )
        for name, text in shows.items()
    }
    found = books_of(texts, RULES)
    assert not found.problems
    return found


def told(lines: object) -> str:
    """Lines as one text, however they were broken."""
    return " ".join(" ".join(lines).split())  # type: ignore[call-overload]  # an iterator of lines, whichever room made it


def turns(shows: Books, before: Pack, after: Pack) -> str:
    """What a change turns, in words."""
    now = outlook(shows, after, ON)
    return told(turned_lines(turned(outlook(shows, before, ON), now), now, ()))


def free_a(found: Pack) -> float:
    """What is free on the fullest phase of the lighting switch, the largest service, in A."""
    section = found.section("power")
    assert section is not None
    item = next(
        item
        for item in section.items
        if item.kind == "service" and item.name == "SL lighting switch"
    )
    return min(
        figure.value.number
        for figure in item.figures
        if ".free.L" in figure.key and figure.value and figure.value.number is not None
    )


def lighting(current_a: float) -> str:
    """A show whose lighting needs so much on each phase."""
    return f"power:\n  - {{for: lighting, current: {current_a:.3f} A}}\n"


def test_a_verdict_turns_at_the_ampere_that_a_new_load_takes(before: Pack) -> None:
    # By hand: 10 A more on L1, the fullest phase, are 10 A less of what is free.
    after = pack(*CHARGERS)
    was_a, left_a = free_a(before), free_a(after)
    assert was_a - left_a == pytest.approx(10.0, abs=1e-9)
    assert (
        turns(books(Just=lighting(left_a - 0.01)), before, after)
        == "Shows on the books: no verdict changes."
    )
    over = turns(books(Over=lighting(left_a + 0.01)), before, after)
    assert (
        "Saturday 5 December, Over: power for lighting fits now, would be short by 0.01 A" in over
    )
    assert (
        turns(books(Never=lighting(was_a + 1)), before, before)
        == "Shows on the books: no verdict changes."
    )


def test_a_show_that_was_short_already_is_told_when_it_gets_shorter(before: Pack) -> None:
    said = turns(books(Worse=lighting(free_a(before) + 1)), before, pack(*CHARGERS))
    assert "power for lighting is short by 1.00 A now, would be short by 11.0 A" in said


def test_a_service_out_of_service_takes_the_outlets_below_it_along(before: Pack) -> None:
    after = pack(
        "  - name: SR sound switch\n", "  - name: SR sound switch\n    condition: out of service\n"
    )
    said = turns(
        books(
            A=(
                "power:\n  - {for: backline, current: 16 A, count: 2, phases: single, of: Stage"
                " left}\n"
            )
        ),
        before,
        after,
    )
    assert (
        "power for backline fits now, would be short by 2 (0 such outlets of 2. SR sound switch is"
        " out of service" in said
    )


def test_what_becomes_short_stands_before_what_another_service_answers(before: Pack) -> None:
    after = pack(
        "  - name: SL lighting switch\n",
        "  - name: SL lighting switch\n    condition: out of service\n",
    )
    shows = books(
        Early="plays: 2026-11-01\npower:\n  - {for: lighting, current: 63 A}\n",
        Late="plays: 2026-12-05\npower:\n  - {for: lighting, current: 200 A}\n",
    )
    said = turns(shows, before, after)
    assert said.index("Late: power for lighting fits now, would be short") < said.index(
        "Early: power for lighting still fits"
    )
    assert "in place of SL lighting switch" in said


def test_a_fit_that_gets_a_note_tells_it_and_a_sum_that_is_still_enough_is_not_told(
    before: Pack,
) -> None:
    worn = TEXTS["access.yml"].replace(
        "kind: forklift, count: 1,", "kind: forklift, count: 1, condition: limited, note: Slow.,"
    )
    after = pack_of(venue_of({**TEXTS, "access.yml": worn}, DEMO.photos))
    said = turns(books(A="needs:\n  - {what: forklift capacity, at least: 1 t}\n"), before, after)
    assert (
        "rated capacity of a forklift fits now, would fit, with a note: Yard forklift is limited:"
        " Slow" in said
    )
    fewer = pack_of(
        venue_of(
            {
                **TEXTS,
                "access.yml": (
                    TEXTS["access.yml"].replace("what: buses, count: 2", "what: buses, count: 3")
                ),
            },
            DEMO.photos,
        )
    )
    assert (
        turns(books(A="needs:\n  - {what: bus parking, at least: 1}\n"), fewer, before)
        == "Shows on the books: no verdict changes."
    )


def test_a_change_and_its_opposite_turn_nothing(before: Pack) -> None:
    shows = books(
        A=lighting(40), B="needs:\n  - {what: stage depth, at least: 3 m}\nstays on deck: 1 m\n"
    )
    assert turned(outlook(shows, before, ON), outlook(shows, pack(), ON)) == ()


def test_acts_of_one_date_share_the_power_and_what_adds_up(before: Pack) -> None:
    need = "needs:\n  - {what: bus parking, at least: 2}\n"
    alone, both = outlook(books(A=need), before, ON), outlook(books(A=need, B=need), before, ON)
    assert not any(judged.short for judged in alone.coming)
    (the_day,) = [judged for judged in both.coming if judged.show is None]
    assert [found["title"] for found in the_day.short] == ["Parking for buses"]
    heads = told(outlook_lines(both))
    assert "Saturday 5 December, all acts together: 1 short" in heads
    assert "short by 2: Parking for buses, at least 4 together (2 + 2)" in heads


def test_a_verdict_that_only_one_state_has_is_told_too(before: Pack) -> None:
    found = outlook(books(A=lighting(300)), before, ON)
    (judged,) = found.coming
    none = replace(found, coming=(replace(judged, verdicts=()),))
    assert "A: power for lighting would be short by" in told(
        turned_lines(turned(none, found), found, ())
    )
    assert "A: power for lighting is short by" in told(turned_lines(turned(found, none), none, ()))
    assert told(turned_lines(turned(found, none), none, ())).endswith(
        "now, would no longer be told"
    )
    assert "would be short by" in told(
        turned_lines(turned(replace(found, coming=()), found), found, ())
    )


def test_a_hold_is_told_as_one_and_its_day_with_it(before: Pack) -> None:
    need = "needs:\n  - {what: bus parking, at least: 2}\n"
    found = outlook(books(A=need, B=f"plays: 2026-12-05\nbooking: second hold\n{need}"), before, ON)
    assert "Saturday 5 December, all acts together, second hold: 1 short" in told(
        outlook_lines(found)
    )


def only(found: Outlook) -> str:
    """The lines of an outlook in one."""
    return told(outlook_lines(found))


def test_shows_that_have_played_are_named_and_not_judged(before: Pack) -> None:
    found = only(
        outlook(
            books(Old="plays: 2026-10-11\nquestions: [x]", New="plays: 2027-01-02\nquestions: [x]"),
            before,
            ON,
        )
    )
    assert "Played before 2026-10-12, not judged: Old (2026-10-11)." in found
    assert "Saturday 2 January 2027, New: 1 to ask" in found
    assert only(outlook(books(Old="plays: 2026-10-11"), before, ON)).startswith(
        "No show is on the books from 2026-10-12 on."
    )


def test_a_show_that_leaves_its_configuration_open_is_told_which_where_that_decides(
    before: Pack,
) -> None:
    many = "needs: [{what: capacity, at least: '1900'}]"
    seats = "needs: [{what: wheelchair places, at least: '14'}]"
    found = only(outlook(books(Many=many), before, ON))
    # Only the first configuration of the demo holds 2,050; the others 1,120 and 1,860.
    assert "Saturday 5 December, Many, in Standing, end stage: 1 fit" in found
    named = only(outlook(books(A=f"configuration: Seated, end stage\n{many}"), before, ON))
    assert "Saturday 5 December, A: 1 short" in named
    (show,) = outlook_record(outlook(books(A=f"{seats}"), before, ON))["coming"]
    assert show["configuration"] == "Standing, end stage"


def test_a_caution_stands_beside_what_is_short(before: Pack) -> None:
    found = only(outlook(books(A=lighting(300)), before, ON))
    assert "Only licensed electricians connect" in found


def test_programs_get_what_is_short_with_its_remedy(before: Pack) -> None:
    (show,) = outlook_record(outlook(books(A=lighting(300)), before, ON))["coming"]
    assert (show["file"], show["act"], show["plays"], show["booking"], show["verdict"]) == (
        "shows/A.yml",
        "A",
        "2026-12-05",
        "confirmed",
        "short",
    )
    assert show["counts"]["short"] == 1
    assert (
        show["short"][0]["remedy"]
        == "Hire a generator, or share with another department and draw less."
    )


def test_a_show_on_a_date_on_which_the_house_is_closed_is_short() -> None:
    closed = "closed: [{from: 2026-12-01, until: 2026-12-10, why: New boards.}]\n"
    shut = pack_of(venue_of({**TEXTS, "house.yml": TEXTS["house.yml"] + closed}, DEMO.photos))
    shows = books(
        Within="needs: [{what: stage width, at least: 5 m}]\n",
        After="plays: 2026-12-18\nneeds: [{what: stage width, at least: 5 m}]\n",
    )
    within, after = outlook(shows, shut, ON).coming
    reason = "The house is closed from 2026-12-01 until 2026-12-10 (New boards)."
    assert [found["reason"] for found in within.short] == [reason, reason]
    assert (within.verdict, after.verdict) == ("short", "fits")
    assert reason.rstrip(".") in told(outlook_lines(outlook(shows, shut, ON)))


def test_closing_the_house_turns_the_shows_of_that_date_only(before: Pack) -> None:
    closed = "closed: [{from: 2026-12-05, until: 2026-12-05}]\n"
    shut = pack_of(venue_of({**TEXTS, "house.yml": TEXTS["house.yml"] + closed}, DEMO.photos))
    shows = books(
        On="needs: [{what: stage width, at least: 5 m}]\n",
        Beside="plays: 2026-12-06\nneeds: [{what: stage width, at least: 5 m}]\n",
    )
    turns = turned(outlook(shows, before, ON), outlook(shows, shut, ON))
    assert {turn.judged.show.act for turn in turns if turn.judged.show} == {"On"}
    assert {turn.found["title"] for turn in turns} == {"Stage width, clear", "Date of the show"}
