"""Stage: outlines, areas, chains that do not close, places for others."""

from dataclasses import replace
from datetime import date

import pytest

from builder.department import Published, Surroundings
from builder.departments.stage.description import Stage
from builder.departments.stage.page import blocks
from builder.departments.stage.publish import offer, publish
from builder.document import Heading, Table
from builder.exchange import Offers, Overhang
from builder.pack import Standing
from builder.reading.problems import Refused
from builder.reading.reader import read
from builder.reading.references import problems_with_names
from builder.stating import Ageing

AROUND = Surroundings(Offers(), Ageing(date(2026, 6, 1), 365), "metric")
HEAD = "datum: {centre_line: a stud, reference_line: the edge}\n"
SQUARE = (
    "[{across: 3 m SR, depth: 0 m}, {across: 3 m SL, depth: 0 m}, {across: 3 m SL, depth: 4 m US},"
    " {across: 3 m SR, depth: 4 m US}]"
)
DECK = HEAD + f"decks: [{{name: Deck, configurations: [Standing], outline: {SQUARE}%s}}]\n"


def stage(text: str) -> Stage:
    """The description that a text holds."""
    return read(text, file="stage.yml", kind=Stage)


def published(text: str) -> Published:
    """What a text publishes."""
    return publish(stage(text), AROUND)


def problems(text: str) -> list[str]:
    """What is refused of a text."""
    with pytest.raises(Refused) as refused:
        stage(text)
    return [str(problem) for problem in refused.value.problems]


def codes(text: str) -> list[str]:
    """The codes of the findings on a text."""
    return [finding.code for finding in published(text).findings]


def test_the_area_of_a_deck_is_that_of_its_outline() -> None:
    item = published(DECK % "").section.item("deck")
    assert item is not None
    assert item.number("area") == pytest.approx(24.0)
    figure = item.figure("area")
    assert figure is not None
    assert figure.working.references[0].source


def test_a_corner_on_the_wrong_side_is_told_with_its_number_and_line() -> None:
    slip = (DECK % "").replace(
        "{across: 3 m SR, depth: 4 m US}]", "{across: 3 m SL, depth: 4 m US}]"
    )
    assert problems(slip) == [
        "stage.yml:2:153 decks[1].outline[4] is the same spot as corner 3 of the outline; is a"
        " side, SL or SR, US or DS, written wrong? The outline closes by itself, so leave the first"
        " corner out at its end [corner-twice]"
    ]


def test_an_outline_whose_corners_all_differ_is_no_finding() -> None:
    assert codes(DECK % "") == []


def test_an_outline_of_two_corners_is_refused() -> None:
    two = (
        HEAD
        + "decks: [{name: D, configurations: [S], outline: [{across: 0 m, depth: 0 m}, {across: 1 m"
        " SL, depth: 0 m}]}]\n"
    )
    assert problems(two) == [
        "stage.yml:2:49 decks[1].outline has 2 corners, and an outline needs at least three; write"
        " the corners in order around it [outline-open]"
    ]


def test_an_outline_that_crosses_itself_is_refused_with_the_sides_that_meet() -> None:
    crossed = (
        (DECK % "")
        .replace("across: 3 m SL, depth: 4 m US", "across: X")
        .replace("across: 3 m SR, depth: 4 m US", "across: 3 m SL, depth: 4 m US")
        .replace("across: X", "across: 3 m SR, depth: 4 m US")
    )
    assert problems(crossed) == [
        "stage.yml:2:153 decks[1].outline[4] crosses itself: the side that begins at corner 4 meets"
        " the side that begins at corner 2; write the corners in order around it [outline-crosses]"
    ]


def test_a_usable_width_equal_to_the_outline_is_no_finding_and_above_it_is_one() -> None:
    assert codes(DECK % ", usable_width: 6 m") == []
    assert codes(DECK % ", usable_width: 6.01 m") == ["usable-exceeds-outline"]


def test_a_chain_that_closes_is_no_finding() -> None:
    assert (
        codes(HEAD + "decks: []\nchains: [{name: A, parts: [9.6 m, 1.2 m], whole: 10.8 m}]\n") == []
    )


def test_a_chain_that_does_not_close_is_told_with_both_sums() -> None:
    """Published: 24 ft 6 in and 3 ft 10 in against a stated 27 ft 6 in; they make 28 ft 4 in."""
    chain = (
        'chains: [{name: Curtain to edge, parts: ["24\'-6\\"", "3\'-10\\""], whole: "27\'-6\\""}]\n'
    )
    (finding,) = published(HEAD + "decks: []\n" + chain).findings
    assert finding.code == "chain-open"
    assert finding.sentence.startswith("Curtain to edge: 24'-6\" + 3'-10\" makes 8.64 m")


def test_decks_that_make_another_area_than_stated_are_told() -> None:
    """
    Published: 15 decks of 8 by 2 ft stated as 24 by 12 ft; they make 240 square feet, not 288.
    """
    riser = "risers: [{name: Deck, count: 15, width: 8 ft, depth: 2 ft, makes_up: %s sq ft}]\n"
    assert codes(HEAD + "decks: []\n" + riser % "288") == ["area-differs"]
    assert codes(HEAD + "decks: []\n" + riser % "240") == []


def test_places_and_outlines_are_offered_in_metres_from_the_datum() -> None:
    text = (
        DECK % ""
        + "places: [{name: Mix, at: {across: 2 ft SR, depth: 90 ft DS, height: 4 ft down}}]\n"
    )
    offers = offer(stage(text))
    spot = offers.spot("place", "Mix")
    assert spot is not None
    assert (spot.across_m, spot.depth_m, spot.height_m) == pytest.approx(
        (-0.6096, -27.432, -1.2192)
    )
    assert offers.shapes[0].corners[2] == (3.0, 4.0)
    assert offers.datum is not None
    assert offers.datum.centre_line == "a stud"


WING = "wings: [{name: stage left, outline: [%s]}]\n"
RECTANGLE = (
    "{across: 3 m SL, depth: 0 m}, {across: 7 m SL, depth: 0 m}, {across: 7 m SL, depth: 5 m US},"
    " {across: 3 m SL, depth: 5 m US}"
)
SLANTED = RECTANGLE.replace("{across: 7 m SL, depth: 5 m US}", "{across: 5 m SL, depth: 5 m US}")
COLUMN = (
    "obstructions: [{name: Column, outline: [{across: %s m SL, depth: 2 m US}, "
    + "{across: 9 m SL, depth: 2 m US}, {across: 9 m SL, depth: 3 m US}]%s}]\n"
)


def sizes(text: str) -> list[str]:
    """Width and depth of the wing as told."""
    found = [
        figure.value
        for item in published(DECK % "" + text).section.of_kind("wing")
        for figure in item.figures
    ]
    return [value.text for value in found if value]


def test_a_wing_is_as_wide_and_deep_as_its_outline() -> None:
    # From 3 m to 7 m stage left, from the edge to 5 m upstage.
    assert sizes(WING % RECTANGLE) == ["4.00 m", "5.00 m"]


@pytest.mark.parametrize(
    ("text", "most"),
    [
        (WING % SLANTED, True),
        (WING % RECTANGLE + COLUMN % (7, ""), False),
    ],
)
def test_a_wing_that_is_no_clear_rectangle_is_at_most_so_large(text: str, most: bool) -> None:
    assert [size.startswith("at most ") for size in sizes(text)] == [most, most]


def test_a_wing_with_something_in_it_is_as_wide_at_least_as_what_is_free_beside_the_deck() -> None:
    # The wing begins at 3 m stage left, the column at 6 m.
    assert sizes(WING % RECTANGLE + COLUMN % (6, "")) == ["3.00 m to 4.00 m", "at most 5.00 m"]
    beside = WING % RECTANGLE + COLUMN % (3, "")
    assert sizes(beside) == ["at most 4.00 m", "at most 5.00 m"]
    undrawn = COLUMN % (6, "") + "  - {name: Ladder, area: wing stage left}\n"
    assert sizes(WING % RECTANGLE + undrawn.replace("[{", "\n  - {", 1).replace("}]}]", "}]}"))[
        0
    ].startswith("at most")


def test_what_hangs_in_a_wing_takes_nothing_of_its_floor() -> None:
    assert sizes(WING % RECTANGLE + COLUMN % (6, ", from_height: 4 m up")) == ["4.00 m", "5.00 m"]


def test_two_wings_of_one_side_are_refused() -> None:
    wing = f"{{name: stage left, outline: {SQUARE}}}"
    told = problems_with_names([stage(DECK % "" + f"wings: [{wing}, {wing}]\n")])
    assert [problem.value for problem in told if problem.code == "duplicate-name"] == ["stage left"]


def test_a_chain_without_parts_is_a_problem_with_its_line() -> None:
    text = DECK % "" + "chains: [{name: Edge to wall, parts: [], whole: 4 m}]\n"
    assert problems(text) == [
        "stage.yml:3:38 Edge to wall has no parts that could make up the whole; write the"
        " distances, one after the other, or take the chain out [chain-empty]"
    ]


def test_a_stage_may_know_of_no_datum_no_deck_no_zone_and_nothing_in_the_way() -> None:
    text = "datum: unknown\ndecks: unknown\nzones: unknown\nobstructions: unknown\n"
    whole = published(text).section.item("whole")
    assert whole is not None
    told = {fact.key.rsplit(".", 1)[-1]: fact.standing for fact in whole.facts}
    unknown = {key for key, standing in told.items() if standing is Standing.UNKNOWN}
    assert {"datum", "decks", "zones", "obstructions"} <= unknown
    assert published(text).section.item("datum") is None
    assert offer(stage(text)).datum is None
    assert offer(stage(text)).floors_drawn is False


def test_a_wing_is_at_most_so_wide_where_nobody_knows_what_is_in_the_way() -> None:
    wing = f"wings: [{{name: stage left, outline: {SQUARE}}}]\n"
    exact = published(DECK % "" + wing).section.item("wing")
    unsure = published(DECK % "" + wing + "obstructions: unknown\n").section.item("wing")
    assert exact is not None
    assert unsure is not None
    width, at_most = exact.figure("width"), unsure.figure("width")
    assert width is not None
    assert width.value is not None
    assert width.value.number == 6.0
    assert at_most is not None
    assert at_most.value is not None
    assert at_most.value.ends == (None, 6.0)


def test_a_hang_of_unknown_place_may_be_over_a_deck_and_bounds_it_only_from_below() -> None:
    low = Overhang("Bar", None, (3.0, 3.0), (), comes_down=False)
    around = replace(AROUND, exchange=Offers(overhead=(low,), overhead_told=True))
    text = DECK % ", clear_height: 6 m"
    deck = publish(stage(text), around).section.item("deck")
    assert deck is not None
    clear = deck.figure("clear-under-rig")
    assert clear is not None
    assert clear.value is not None
    assert clear.value.ends == (3.0, 6.0)


def test_what_else_is_told_of_decks_stands_before_the_datum() -> None:
    section = published(DECK % ", surface: ply").section
    headings = [block.text for block in blocks(section) if isinstance(block, Heading)]
    assert headings[:3] == ["Deck", "Deck: more", "Datum"]


def test_a_distance_is_named_once() -> None:
    text = DECK % "" + "distances: [{from: edge of stage, to: back wall, length: 9 m}]\n"
    [table] = [
        block
        for block in blocks(published(text).section)
        if isinstance(block, Table) and block.summary == "Distances"
    ]
    assert table.rows[0].cells[0] == ["edge of stage to back wall"]


@pytest.mark.parametrize(
    ("told", "depth"),
    [
        ("proscenium: none\n", "8.40 m"),
        ("distances: [{from: edge of stage, to: curtain line, length: 1.2 m}]\n", "7.20 m"),
        (
            "distances: [{from: edge of stage, to: curtain line, length: 1.2 m, at: centre},"
            " {from: edge of stage, to: curtain line, length: 0.7 m, at: stage left}]\n",
            "7.20 m",
        ),
        ("", "at most 8.40 m"),
    ],
)
def test_the_depth_behind_the_curtain_leaves_out_the_apron(told: str, depth: str) -> None:
    # 8.4 m from the edge, of which the deepest 1.2 m lie in front of the curtain line.
    text = DECK % ", usable_depth: 8.4 m" + told
    (deck,) = published(text).section.of_kind("deck")
    found = deck.figure("behind-curtain")
    assert found is not None
    assert found.value is not None
    assert found.value.text == depth
    assert found.caution


def test_rolls_of_dance_floor_cover_what_they_cover_edge_to_edge_and_none_covers_nothing() -> None:
    def area(rolls: str) -> float | None:
        text = DECK % "" + f"furnishings: [{{name: Floor, kind: dance floor, {rolls}}}]\n"
        (item,) = published(text).section.of_kind("furnishing")
        found = item.figure("area")
        return found.value.number if found and found.value else None

    # Six rolls of 1.5 m by 11 m: 99 m2.
    assert area("count: 6, each_width: 1.5 m, each_length: 11 m") == pytest.approx(99.0)
    assert area("count: none") == 0.0
    assert area("count: 6, each_length: 11 m") is None
