"""Ways from place to place: what works, what is free, and what nobody has said."""

from dataclasses import replace

import pytest

from builder.department import Surroundings
from builder.exchange import Offers, Shape, Spot
from builder.pack import Standing
from tests.departments.lined import (
    AROUND,
    DECK,
    DOCK,
    MIX,
    STAGE,
    codes,
    figure,
    findings,
    item,
    line,
    lines,
    published,
)


def shown(text: str, name: str, kind: str = "pair") -> str:
    """A figure's text, or what it lacks."""
    found = figure(text, kind, name)
    return found.value.text if found.value else f"needs {', '.join(found.missing)}"


def test_lines_of_a_kind_between_two_places_add_up_whichever_way_they_run() -> None:
    text = lines(
        line(more="working: 23, free: 20"),
        line("Return", more="working: 12, free: 4", start="Mix", end="Stage", ways=12),
    )
    (pair,) = published(text).section.of_kind("pair")
    assert pair.name == "Stage – Mix"
    assert shown(text, "analogue.working") == "35 of 36"
    assert shown(text, "analogue.free") == "24"
    assert figure(text, "pair", "analogue.free").note == "Send 20, Return 4"
    assert figure(text, "pair", "analogue.free").working.steps == ("20 + 4 = 24",)


def test_kinds_are_kept_apart() -> None:
    text = lines(
        line(more="working: 24, free: 24"),
        line("Data", "copper data", "working: 8, free: 6", ways=8),
    )
    assert (shown(text, "analogue.free"), shown(text, "copper-data.free")) == ("24", "6")


def test_what_one_line_does_not_say_makes_the_sum_a_least() -> None:
    text = lines(
        line(more="working: 24, free: 20"), line("More", more="working: ?, free: ?", ways=12)
    )
    assert shown(text, "analogue.working") == "at least 24 of 36"
    assert (
        figure(text, "pair", "analogue.free").note
        == "not known yet for More; Send 20, More not known yet"
    )


def test_what_no_line_says_is_no_number() -> None:
    assert shown(lines(line()), "analogue.free") == "needs a count that is not stated"
    assert (
        shown(lines(line(more="free: ?")), "analogue.free") == "needs a count that is not known yet"
    )
    assert (
        shown(lines(line(more="free: ?"), line("More")), "analogue.free")
        == "needs a count that is not known yet or not stated"
    )
    assert figure(lines(line()), "pair", "analogue.free").value is None


def test_unknown_none_and_not_stated_stay_three_things() -> None:
    standings = []
    for more in ("free: ?", "free: none", ""):
        fact = item(lines(line(more=more)), "line").fact("free")
        assert fact is not None
        standings.append(fact.standing)
    assert standings == [Standing.UNKNOWN, Standing.NONE, Standing.NOT_STATED]
    assert shown(lines(line(more="free: none")), "analogue.free") == "0"


def test_dead_ways_that_are_named_are_taken_off_where_no_count_is_given() -> None:
    text = lines(line(more="dead: [3, 9]", ways=12))
    assert shown(text, "working-ways", "line") == "10"
    assert shown(text, "analogue.working") == "10 of 12"


def test_a_line_out_of_service_or_not_for_visitors_has_nothing_free() -> None:
    out = lines(line(more="working: 24, free: 24, condition: out of service"))
    assert (shown(out, "analogue.working"), shown(out, "analogue.free")) == ("0 of 24", "0")
    closed = lines(line(more="working: 24, free: 24, terms: not for visitors"))
    assert (shown(closed, "analogue.working"), shown(closed, "analogue.free")) == ("24 of 24", "0")


def test_lines_on_the_same_cores_count_once_and_both_say_so() -> None:
    tap = line("Tap", more="working: 12, free: 10, shared_with: [Send]", ways=12)
    text = lines(line(more="working: 12, free: 10", ways=12), tap)
    assert shown(text, "analogue.free") == "10"
    assert [each.text("shared_with") for each in published(text).section.of_kind("line")] == [
        "Tap",
        "Send",
    ]


def test_the_lines_from_stage_to_mix_tell_analogue_by_its_direction() -> None:
    text = lines(
        line(more="free: 23"),
        line("Back", more="free: 4", start="Mix", end="Stage", ways=12),
        line("Drive", more="free: 8, terms: not for visitors", start="Mix", end="Stage", ways=8),
        line("Aside", more="free: 9", end="Dock"),
    )
    text += "consoles: [{name: Mix, place: Mix, by: [Send]}]\n"
    assert (
        shown(text, "analogue.free", "stage-to-mix"),
        shown(text, "analogue-back.free", "stage-to-mix"),
    ) == ("23", "4")


def test_as_many_free_as_work_is_no_finding_and_one_more_is_one() -> None:
    assert codes(lines(line(more="working: 22, dead: [1, 2], free: 22"))) == []
    (found,) = findings(lines(line(more="working: 22, dead: [1, 2], free: 23")))
    assert found.code == "free-over-working"
    assert found.sentence == "Send: 23 ways are said to be free, but only 22 of 24 work."


def test_more_free_than_there_are_is_a_finding_where_nobody_says_how_many_work() -> None:
    assert codes(lines(line(more="free: 24"))) == []
    assert (
        findings(lines(line(more="free: 25")))[0].sentence
        == "Send: 25 ways are said to be free, but only 24 are there."
    )


def test_ways_that_do_not_work_are_named() -> None:
    assert codes(lines(line(more="working: 23, dead: [7]"))) == []
    (found,) = findings(lines(line(more="working: 22, dead: [7]")))
    assert found.code == "dead-ways-unnamed"
    assert found.sentence.startswith("Send: 2 of 24 ways do not work, and only way 7 is named.")


def spots(*more: Spot) -> Surroundings:
    """A stage with a wing, and these places beside the usual ones."""
    wing = Shape(
        "stage", "wing", "stage left", ((10.0, 0.0), (14.0, 0.0), (14.0, 9.0), (10.0, 9.0))
    )
    return replace(AROUND, exchange=Offers(spots=(STAGE, MIX, DOCK, *more), shapes=(DECK, wing)))


@pytest.mark.parametrize(
    ("across_m", "depth_m", "counts"),
    [
        (9.0, 2.0, True),
        (12.0, 4.0, True),  # in the wing
        (0.0, -0.4, True),  # a panel on the front of the deck
        (0.0, -0.6, False),  # on the floor before it
        (13.0, 11.5, False),  # a room behind the stage, upstage of the datum
    ],
)
def test_a_line_from_the_stage_begins_on_the_deck_or_in_a_wing(
    across_m: float, depth_m: float, counts: bool
) -> None:
    text = lines(line("Control", "DMX", "free: 2", start="Somewhere"))
    text += "consoles: [{name: Desk, place: Mix, by: none}]\n"
    around = spots(Spot("stage", "place", "Somewhere", across_m, depth_m))
    found = published(text, around).section.item("stage-to-mix")
    free = found.figure("dmx.free") if found else None
    assert free is not None
    assert free.value is not None
    assert free.value.text == ("2" if counts else "0")
    assert free.note == ("" if counts else "Control runs from Somewhere to Mix")


def test_what_a_line_from_the_stage_drives_and_on_what_terms_it_is_there_is_told() -> None:
    text = lines(
        line(more="free: 8, terms: by arrangement"),
        line("Tap", more="free: 8, condition: limited, shared_with: [Send]"),
        line("Presenter", more="free: 8"),
        line("Plain", more="free: 8"),
    )
    text += (
        "consoles: [{name: Desk, place: Mix, by: none}, {name: Talk, place: Stage, by:"
        " [Presenter]}]\n"
    )
    assert figure(text, "stage-to-mix", "analogue.free").note == (
        "Send: by arrangement, same cores as Tap; Presenter: the house drives Talk by it"
    )


UNSURE = line("Tail", more="working: 12, free: 12", ways=12).replace(
    "to: {place: Mix}", "to: unknown"
)


def test_a_line_of_which_an_end_is_not_known_may_join_any_places_that_its_other_end_is_of() -> None:
    text = lines(line(more="working: 24, free: 20"), UNSURE)
    assert shown(text, "analogue.free") == "at least 20"
    assert shown(text, "analogue.working") == "at least 24"
    assert figure(text, "pair", "analogue.free").note.startswith("with an end not known for Tail")
    apart = lines(line("Other", start="Dock", more="working: 24, free: 20"), UNSURE)
    assert shown(apart, "analogue.free") == "20"


def test_from_stage_to_mix_such_a_line_may_count_and_is_missing() -> None:
    text = lines(line(more="free: 23"), UNSURE) + "consoles: [{name: Mix, place: Mix}]\n"
    assert shown(text, "analogue.free", "stage-to-mix") == "needs what each line has"
    sure = lines(line(more="free: 23")) + "consoles: [{name: Mix, place: Mix}]\n"
    assert shown(sure, "analogue.free", "stage-to-mix") == "23"


def test_the_straight_line_of_a_line_without_an_end_names_it() -> None:
    (tail,) = published(lines(UNSURE)).section.of_kind("line")
    straight = tail.figure("straight")
    assert straight is not None
    assert straight.missing == ("where both ends of Tail are",)


def test_which_ways_are_dead_may_be_unknown_and_then_how_many_work_is() -> None:
    text = lines(line(more="dead: unknown"))
    assert shown(text, "working-ways", "line") == "needs which ways are dead"
    assert shown(text, "analogue.working") == "needs a count that is not stated"
    assert codes(lines(line(more="working: 20, dead: unknown, free: 4"))) == []
