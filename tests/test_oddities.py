"""Rules that hold for any kind of thing."""

import pytest

from builder.exchange import Statement
from builder.oddities import (
    Named,
    Standing,
    middle_without,
    on_one_spot,
    told_differently,
    unlike_neighbours,
)
from builder.reading.problems import Where
from builder.reading.quantities import Height, Length, Quantity


def stated(
    file: str, value: Quantity | int, within: float = 0.0, fact: str = "width of"
) -> Statement:
    """A statement of how wide the mix position is."""
    return Statement(fact, "Mix position", value, Where(file, 3, 5), within)


def metres(text: str) -> Length:
    """A length."""
    return Length.parse(text)


def thing(
    name: str, across_m: float, depth_m: float = 0.0, height_m: float | None = 1.0
) -> Standing:
    """A thing at a spot."""
    return Standing("box", name, across_m, depth_m, height_m, Where("f", 1, 1), "there")


def pairs(*things: Standing) -> list[str]:
    """Which things are at one spot."""
    return [finding.sentence.split(" are at")[0] for finding in on_one_spot(things)]


def test_one_fact_told_alike_in_two_files_is_nothing() -> None:
    assert (
        list(told_differently([stated("a.yml", metres("4.8 m")), stated("b.yml", metres("4.8 m"))]))
        == []
    )


@pytest.mark.parametrize(
    ("first", "second"),
    [("4.8 m", "15 ft 9 in"), ("4.8 m", "4.80 m"), ("16 ft", "4.88 m"), ("5 m", "4.98 m")],
)
def test_rounding_and_another_unit_are_no_difference(first: str, second: str) -> None:
    told = told_differently([stated("a.yml", metres(first)), stated("b.yml", metres(second))])
    assert list(told) == []


def test_one_fact_told_differently_quotes_both_files() -> None:
    (finding,) = told_differently(
        [stated("stage.yml", metres("4.8 m")), stated("sound.yml", metres("5.8 m"))]
    )
    assert finding.sentence == (
        "sound.yml says that the width of Mix position is 5.8 m, and stage.yml says 4.8 m. Which"
        " one is right?"
    )
    assert finding.asks_about == "5.8 m beside 4.8 m"
    assert finding.place is not None
    assert finding.place.file == "sound.yml"


def test_any_of_several_statements_of_one_file_will_do() -> None:
    house = [stated("house.yml", 38), stated("house.yml", 32)]
    assert list(told_differently([*house, stated("sound.yml", 32)])) == []
    (finding,) = told_differently([*house, stated("sound.yml", 83)])
    assert finding.asks_about == "83 beside 38 or 32"


def test_it_is_told_where_the_fact_is_stated_the_fewest_times() -> None:
    lines = [stated("lines.yml", metres(path)) for path in ("62 m", "71 m")]
    for statements in (
        [*lines, stated("a.yml", metres("26 m"))],
        [stated("z.yml", metres("26 m")), *lines],
    ):
        (finding,) = told_differently(statements)
        assert finding.place is not None
        assert finding.place.file in ("a.yml", "z.yml")


def test_a_fact_that_one_file_states_twice_is_that_file_s_own_matter() -> None:
    assert list(told_differently([stated("house.yml", 38), stated("house.yml", 32)])) == []


def test_names_that_differ_in_capitals_name_one_thing() -> None:
    other = Statement("width of", "mix  position", metres("9 m"), Where("b.yml"))
    assert len(list(told_differently([stated("a.yml", metres("4.8 m")), other]))) == 1


def test_different_facts_of_one_thing_are_not_compared() -> None:
    assert (
        list(
            told_differently(
                [stated("a.yml", metres("4.8 m")), stated("b.yml", metres("3 m"), fact="depth of")]
            )
        )
        == []
    )


def test_a_statement_may_allow_more_than_rounding() -> None:
    paths = [stated("a.yml", metres("62 m")), stated("b.yml", metres("66 m"), within=0.1)]
    assert list(told_differently(paths)) == []


def test_a_floor_so_far_down_is_a_deck_so_far_up() -> None:
    down = stated("b.yml", Height.parse("1.35 m down"))
    assert list(told_differently([stated("a.yml", metres("1.35 m")), down])) == []


def test_things_a_centimetre_apart_are_two() -> None:
    assert pairs(thing("a", 1.0), thing("b", 1.011)) == []
    assert pairs(thing("a", 1.0), thing("b", 1.009)) == ["A and b"]


def test_cells_hide_no_pair_at_their_edges() -> None:
    """Things are looked up by cells of a centimetre: a pair over an edge must be found too."""
    for step in range(100):
        at = step * 0.0013
        assert pairs(thing("a", at, -at), thing("b", at + 0.006, -at - 0.006)) == ["A and b"]


def test_things_above_each_other_are_two_and_an_unknown_height_may_be_the_same() -> None:
    assert pairs(thing("a", 1, height_m=1), thing("b", 1, height_m=2)) == []
    assert pairs(thing("a", 1, height_m=None), thing("b", 1, height_m=2)) == ["A and b"]


def test_ten_thousand_things_on_one_spot_are_told_without_comparing_all() -> None:
    assert len(pairs(*(thing(f"t{number}", 1) for number in range(10_000)))) == 9_999


def heights(*texts: str) -> list[Named]:
    """Some heights."""
    return [
        Named(f"h{number}", Height.parse(text), Where("f")) for number, text in enumerate(texts)
    ]


def unlike(*texts: str) -> list[str]:
    """Which of some heights are asked about."""
    return [finding.asks_about for finding in unlike_neighbours(heights(*texts), "the others")]


def test_a_height_like_the_others_in_feet_is_asked_about() -> None:
    assert unlike("10 m", "33 m", "9.8 m") == ["33 m"]


def test_what_one_beam_says_at_both_ends_is_asked_about_once() -> None:
    roof = heights("10 m", "33 m", "9.8 m", "9.9 m")
    both = [*roof, roof[1]]
    assert [told.asks_about for told in unlike_neighbours(both, "the others")] == ["33 m"]


def test_heights_within_twice_of_each_other_are_usual() -> None:
    assert unlike("10 m", "19 m", "9.8 m") == []


def test_a_roof_from_eaves_to_ridge_is_usual() -> None:
    assert unlike("3.9 m", "10 m") == []
    assert unlike("3.9 m", "10 m", "4 m") == []


def test_a_far_height_without_another_reading_is_not_asked_about() -> None:
    assert unlike("10 m", "21 m", "4 m") == []


def test_one_height_alone_has_no_neighbours() -> None:
    assert unlike("33 m") == []
    assert unlike() == []


def test_of_two_heights_that_differ_both_could_be_wrong() -> None:
    assert unlike("10 m", "33 m") == ["33 m"], "10 m read in any other unit is nothing like 33 m"
    assert unlike("10 m", "36 m") == [], "36 ft are 11 m, and one other height tells not so much"


def test_the_middle_leaves_the_value_itself_out() -> None:
    ordered = heights("1 m", "2 m", "3 m", "10 m")
    assert [middle_without(ordered, index) for index in range(4)] == [3.0, 3.0, 2.0, 2.0]
    assert middle_without(heights("1 m", "5 m", "9 m"), 1) == 5.0


def test_zero_and_less_have_no_size_to_compare() -> None:
    assert unlike("0 m", "0 m", "33 m") == []
