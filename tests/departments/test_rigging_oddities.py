"""What is odd about steel, and what is not."""

import pytest

from builder.pack import Finding
from tests.departments.rigged import BEAM, LIMITS, described, hang, points, published

ODD = ("point-beyond-beam", "one-spot", "unlike-neighbours", "points-over-hoists", "letter-old", "letter-undated")  # fmt: skip  # noqa: E501
HOIST = "hoists: [{name: H, count: 2, rating: 1 t, weight: 50 kg, headroom: 0.6 m}]\n"


def odd(text: str) -> list[Finding]:
    """What is odd in a text."""
    return [finding for finding in published(text).findings if finding.code in ODD]


def told(text: str) -> list[str]:
    """The sentences of what is odd in a text."""
    return [finding.sentence for finding in odd(text)]


def test_points_on_their_beam_are_not_odd() -> None:
    assert told(LIMITS + BEAM + points(-20, -3, 0, 3, 20.3)) == []


def test_a_point_beyond_its_beam_has_no_room_left_that_anybody_could_count_on() -> None:
    text = LIMITS + BEAM + points(3, 96)
    assert told(text) == [
        "P2 is at 96 m SL, and beam B1 is told from 20.00 m SR to 20.00 m SL: that is 76.00 m"
        " beyond its end. Is it centimetres? Then write '96 cm SL'. Is the decimal point in the"
        " wrong place? Then write '9.6 m SL'."
    ]
    item = published(text).section.item("point", "P2")
    assert item is not None
    for name in ("limit", "left"):
        figure = item.figure(name)
        assert figure is not None
        assert (figure.value, figure.missing) == (None, ("a place on its beam",))


def test_a_point_beyond_its_beam_is_still_held_against_its_limit() -> None:
    text = (
        LIMITS
        + BEAM
        + points(96)
        + hang(1, loads="{what: Bell, by: house, weight: 1500 kg}", first_m=96, last_m=96)
    )
    assert "limit-passed" in {finding.code for finding in published(text).findings}


def test_one_height_of_low_steel_tells_of_no_end() -> None:
    beam = (
        "beams: [{name: B1, runs: across, depth: 0 m, low_steel: [{across: 0 m, height: 8 m}]}]\n"
    )
    assert told(LIMITS + beam + points(12)) == []


def test_a_beam_in_feet_is_measured_in_feet() -> None:
    beam = (
        "beams: [{name: B1, runs: up and down stage, across: 0 ft, low_steel: [{depth: 10 ft DS,"
        " height: 24 ft}, {depth: 30 ft US, height: 24 ft}]}]\n"
    )
    text = LIMITS + beam + "points: [{name: P1, beam: B1, depth: 28 m US}]\n"
    assert told(text) == [
        "P1 is at 28 m US, and beam B1 is told from 3.05 m DS to 9.14 m US: that is 18.86 m beyond"
        " its end. Is it feet? Then write '28 ft US'. Is the decimal point in the wrong place? Then"
        " write '2.8 m US'."
    ]


def test_two_points_on_one_spot_are_told_once_each() -> None:
    assert told(LIMITS + BEAM + points(3, 3, 3)) == [
        "P1 and P2 are at one spot, 3 m SL on beam B1. Was a line copied, or is a side, SL or SR,"
        " US or DS, written wrong?",
        "P1 and P3 are at one spot, 3 m SL on beam B1. Was a line copied, or is a side, SL or SR,"
        " US or DS, written wrong?",
    ]


def test_a_point_may_take_the_place_of_one_that_is_out_of_service() -> None:
    assert told(LIMITS + BEAM + points(3, 3, more=", condition: out of service")) == []


def test_beams_that_cross_may_each_have_a_point_there() -> None:
    beams = BEAM.rstrip().removesuffix("]") + (
        ", {name: B2, runs: up and down stage, across: 0 m, low_steel: [{depth: 5 m DS, height: 8"
        " m}, {depth: 5 m US, height: 8 m}]}]\n"
    )
    crossing = points(0) + "  - {name: Q1, beam: B2, depth: 0 m}\n"
    assert told(LIMITS + beams + crossing) == []


@pytest.mark.parametrize(
    ("rating", "question"),
    [
        ("2200 kg", " Is it pounds? Then write '2200 lb'."),
        ("10 t", " Is the decimal point in the wrong place? Then write '1 t'."),
    ],
)
def test_points_rated_far_above_the_hoists_are_asked_about(rating: str, question: str) -> None:
    text = LIMITS.replace("1000 kg", rating) + BEAM + points(3) + HOIST
    assert told(text) == [
        f"Each point may carry {rating}, and the largest hoist here is rated for 1 t.{question}"
    ]


@pytest.mark.parametrize("rating", ["1000 kg", "2 t", "3000 kg", "500 kg", "unknown", "none"])
def test_points_that_carry_more_or_less_than_a_hoist_are_usual(rating: str) -> None:
    assert told(LIMITS.replace("1000 kg", rating) + BEAM + points(3) + HOIST) == []


def test_without_hoists_nothing_stands_beside_a_rating() -> None:
    assert told(LIMITS.replace("1000 kg", "2200 kg") + BEAM + points(3)) == []


def test_the_line_of_a_point_and_an_exception_are_asked_about_too() -> None:
    text = (
        LIMITS
        + "exceptions: [{beams: [B1], each_point: 2200 kg}]\n"
        + BEAM
        + points(3, more=", rating: 1100 lb (500 kg)")
        + HOIST
    )
    assert told(text) == [
        "Each point of B1 may carry 2200 kg, and the largest hoist here is rated for 1 t. Is it"
        " pounds? Then write '2200 lb'."
    ]


def test_metres_written_for_feet_are_told_too() -> None:
    beam = (
        "beams: [{name: B1, runs: across, depth: 0 ft, low_steel: [{across: 9 ft SR, height: 7.3"
        " ft}, {across: 0 ft, height: 24 ft}, {across: 9 ft SL, height: 24 ft}]}]\n"
    )
    assert told(LIMITS + beam + points(1)) == [
        "The low steel of B1 is 7.3 ft, and the other heights of low steel lie at 24 ft. Is it"
        " metres? Then write '7.3 m'."
    ]


def test_steel_that_is_low_under_a_balcony_is_not_asked_about() -> None:
    beam = BEAM.replace("height: 8 m up", "height: 3.9 m up")
    assert told(LIMITS + beam + points(3)) == [], "no other reading of 3.9 m comes near 10 m"


def test_a_letter_within_the_house_s_limit_is_not_old() -> None:
    letter = "letter: {from_whom: engineer, dated: 2025-06-01}\n"
    assert told(letter + LIMITS + BEAM) == []


def test_a_letter_past_the_house_s_limit_is_asked_about_and_quotes_its_age() -> None:
    (finding,) = odd("letter: {from_whom: engineer, dated: 2 May 2023 rev B}\n" + LIMITS + BEAM)
    assert finding.sentence == (
        "The engineer's letter is dated '2 May 2023 rev B', 1126 days before this revision. The"
        " house's own limit for a check is 365 days. Does the engineer still stand by it, with"
        " everything that was hung or cut since?"
    )
    assert finding.asks_about == "2 May 2023 rev B, 3 years old"


def test_a_letter_that_names_a_year_alone_is_as_young_as_it_can_be() -> None:
    assert told("letter: {from_whom: engineer, dated: spring 2025}\n" + LIMITS + BEAM) == []


def test_a_letter_without_a_year_cannot_be_judged() -> None:
    (sentence,) = told("letter: {from_whom: engineer, dated: revision C}\n" + LIMITS + BEAM)
    assert sentence == (
        "The engineer's letter is dated 'revision C', which names no year, so nobody can tell how"
        " old it is."
    )


@pytest.mark.parametrize("letter", ["", "letter: unknown\n", "letter: none\n"])
def test_a_letter_that_is_not_there_has_no_age(letter: str) -> None:
    assert told(letter + LIMITS + BEAM) == []
    assert described(letter + LIMITS + BEAM).beams
