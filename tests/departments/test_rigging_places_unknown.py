"""
Points, beams and hangs whose place nobody knows: they are counted, carry and are told; what needs
the place is missing and names it, and nothing of them is promised.

Shares are by hand statics: one support carries all, two at the ends of a uniform load half each.
"""

import pytest

from builder.departments.rigging.page.shown import not_drawn
from builder.departments.rigging.page.summary import count_words, low_steel
from builder.departments.rigging.publish import offer
from builder.pack import Standing, Value
from tests.departments.rigged import (
    BEAM,
    LIMITS,
    described,
    figure,
    found,
    hang,
    item,
    points,
    problems,
    published,
)

SPACED = LIMITS.replace("each_point: 1000 kg", "each_point: 1000 kg, spacing_at_least: 3 m")
UNPLACED = points(0, 20, 10).replace("across: 10 m SL", "across: unknown")
"""P1 and P2 at the ends of the truss, and P3 somewhere along the beam."""
LIGHTS = "{what: Lights, by: lighting, weight: 400 kg}"
WHERE_P3 = "where P3 is along beam B1"


def value(text: str, kind: str, name: str, key: str) -> Value:
    """The value of a figure."""
    told = figure(text, kind, name, key).value
    assert told is not None
    return told


def undrawn(text: str) -> list[str]:
    """What the page says is not on the plan."""
    return not_drawn(published(text).section)


def test_a_point_of_unknown_place_has_its_limit_and_at_most_that_left() -> None:
    text = LIMITS + BEAM + UNPLACED
    assert value(text, "point", "P3", "limit").number == 1000.0
    assert value(text, "point", "P3", "carried").number == 0.0
    assert value(text, "point", "P3", "left").ends == (None, 1000.0)
    assert value(text, "point", "P1", "left").number == 1000.0


def test_its_coordinates_are_told_as_far_as_they_are_known() -> None:
    told = item(LIMITS + BEAM + UNPLACED, "point", "P3")
    across, depth = told.fact("at.across"), told.fact("at.depth")
    assert across is not None
    assert across.standing is Standing.UNKNOWN
    assert depth is not None
    assert depth.value is not None
    assert depth.value.number == 0.0
    assert undrawn(LIMITS + BEAM + UNPLACED) == ["P3"]


def test_the_steel_over_it_is_missing_and_names_its_place() -> None:
    text = LIMITS + BEAM + UNPLACED
    assert figure(text, "point", "P3", "low-steel").missing == (WHERE_P3,)


@pytest.mark.source("by hand: the beam rises from 8 m at 20 m SR to 10 m at 20 m SL, 9 m at 0")
def test_the_lowest_steel_over_points_has_two_ends_where_one_may_be_anywhere() -> None:
    text = LIMITS + BEAM + UNPLACED
    assert value(text, "beam", "B1", "lowest-steel").ends == pytest.approx((8.0, 9.0))
    assert value(text, "beam", "B1", "highest-steel").number == pytest.approx(10.0)
    assert value(text, "roof", "", "lowest-steel").ends == pytest.approx((8.0, 9.0))


def test_a_single_point_carries_what_hangs_on_it_wherever_it_is() -> None:
    text = LIMITS + BEAM + UNPLACED + hang(3, loads=LIGHTS, first_m=5, last_m=5)
    assert value(text, "point", "P3", "carried").number == pytest.approx(400.0)
    assert value(text, "point", "P3", "left").ends == (None, pytest.approx(600.0))
    assert found(text, "hang-not-held") == []


def test_the_shares_of_two_points_are_missing_where_one_is_unplaced() -> None:
    text = LIMITS + BEAM + UNPLACED + hang(1, 3, loads=LIGHTS)
    share = item(text, "support", "P1").figure("share")
    assert share is not None
    assert share.missing == (WHERE_P3,)
    along = item(text, "support", "P1").figure("along")
    assert along is not None
    assert along.missing == (WHERE_P3,)
    assert value(text, "hang", "Truss", "total").number == pytest.approx(400.0)
    assert value(text, "beam", "B1", "left").ends == (None, 3000.0)
    (finding,) = found(text, "hang-not-held")
    assert f"it needs {WHERE_P3}" in finding.sentence


def test_a_loaded_point_that_may_be_near_leaves_its_neighbours_nothing_for_certain() -> None:
    loaded = UNPLACED + hang(3, loads=LIGHTS, first_m=5, last_m=5)
    assert value(SPACED + BEAM + loaded, "point", "P1", "left").ends == (None, 1000.0)
    assert value(LIMITS + BEAM + loaded, "point", "P1", "left").number == 1000.0
    assert value(SPACED + BEAM + UNPLACED, "point", "P1", "left").number == 1000.0


def test_points_full_at_once_are_told_at_most() -> None:
    known = value(LIMITS + BEAM + points(0, 20, 10), "roof", "", "full-at-once")
    assert known.ends == (3.0, 3.0)
    assert value(LIMITS + BEAM + UNPLACED, "roof", "", "full-at-once").ends == (None, 3.0)


SPOT = """wanted_spots: [{name: Centre, load: 100 kg,
  apex: {across: 2 m SL, depth: 0 m, height: 6 m up}}]
bridles_allowed: {allowed: "yes"}
"""


def test_no_points_are_picked_for_a_spot_while_others_may_be_nearer() -> None:
    near = points(0, 5).replace("across: 5 m SL", "across: unknown")
    made = figure(LIMITS + BEAM + points(0, 4) + SPOT, "wanted-spot", "Centre", "points")
    assert made.value is not None
    unsure = LIMITS + BEAM + near + SPOT
    made = figure(unsure, "wanted-spot", "Centre", "points")
    assert made.missing == ("where P2 is along beam B1",)
    assert found(unsure, "spot-without-bridle") == []


def test_a_bridle_to_a_point_of_unknown_place_names_it() -> None:
    bridle = """bridles: [{name: Fill, legs: [P1, P3], load: 50 kg,
  apex: {across: 5 m SL, depth: 0 m, height: 6 m up}}]
"""
    text = LIMITS + BEAM + UNPLACED + bridle
    (finding,) = found(text, "bridle-not-worked-out")
    assert finding.sentence == f"Fill needs {WHERE_P3}. Its pulls are in no figure."


@pytest.mark.parametrize("key", ["runs: across", "depth: 0 m"])
def test_a_beam_may_run_and_lie_nobody_knows_how(key: str) -> None:
    beam = BEAM.replace(key, f"{key.split(':')[0]}: unknown")
    text = LIMITS + beam + points(0, 20)
    assert problems(text) == []
    assert value(text, "point", "P1", "limit").number == 1000.0
    assert value(text, "beam", "B1", "lowest-steel").ends[0] is not None
    assert undrawn(text) == ["P1", "P2"]


def test_a_beam_that_lies_nobody_knows_where_still_tells_the_steel_along_it() -> None:
    text = LIMITS + BEAM.replace("depth: 0 m", "depth: unknown") + points(0, 20)
    assert value(text, "point", "P1", "low-steel").number == pytest.approx(9.0)
    assert value(text, "point", "P1", "left").number == 1000.0


def test_a_beam_without_known_heights_names_them() -> None:
    text = LIMITS + BEAM.split(", low_steel")[0] + ", low_steel: unknown}]\n" + points(0, 20)
    assert figure(text, "point", "P1", "low-steel").missing == ("the height of beam B1",)
    assert figure(text, "beam", "B1", "lowest-steel").missing == ("the height of beam B1",)


def test_a_height_somewhere_along_a_beam_leaves_all_others_open() -> None:
    text = LIMITS + BEAM.replace("across: 20 m SR", "across: unknown") + points(0, 20)
    told = figure(text, "point", "P1", "low-steel").missing
    assert told == ("where the heights of beam B1 are along it",)
    assert value(text, "beam", "B1", "lowest-steel").ends == (8.0, 10.0)


def test_what_hangs_for_good_may_be_unknown_and_then_counts_as_at_least_nothing() -> None:
    text = LIMITS + BEAM.replace("depth: 0 m", "depth: 0 m, standing: unknown") + points(0, 20)
    assert value(text, "beam", "B1", "left").ends == (None, 3000.0)
    assert value(text, "point", "P1", "left").ends == (None, 1000.0)
    assert figure(text, "beam", "B1", "carried").missing == ("what hangs for good on beam B1",)


TWO = LIMITS + BEAM + points(0, 20)


def without_ends(text: str) -> str:
    """The same with one end of the truss that nobody knows."""
    return text.replace("last_end: {across: 20.0 m SL, depth: 0 m}", "last_end: unknown")


def test_a_hang_of_unknown_place_weighs_and_names_its_ends() -> None:
    text = without_ends(TWO + hang(1, 2, loads=LIGHTS))
    assert value(text, "hang", "Truss", "total").number == pytest.approx(400.0)
    ends = ("where the ends of Truss are",)
    assert figure(text, "hang", "Truss", "length").missing == ends
    share = item(text, "support", "P1").figure("share")
    assert share is not None
    assert share.missing == ends
    assert value(text, "roof", "", "left").ends[0] is None
    assert undrawn(text) == ["Truss"]
    assert offer(described(text)).overhead[0].ends is None


@pytest.mark.source("by hand: 400 kg of lights at least, for the truss of 5 kg/m has no length")
def test_a_weight_by_length_of_a_hang_without_ends_counts_as_at_least_the_rest() -> None:
    text = without_ends(TWO + hang(1, loads=LIGHTS, more=", weight: 5 kg/m"))
    assert value(text, "hang", "Truss", "total").ends == (pytest.approx(400.0), None)
    assert value(text, "point", "P1", "carried").ends == (pytest.approx(400.0), None)
    assert value(text, "point", "P1", "left").ends == (None, pytest.approx(600.0))


def test_a_load_somewhere_along_a_hang_leaves_its_supports_open() -> None:
    text = TWO + hang(1, 2, loads="{what: Lamp, by: lighting, weight: 50 kg, at: unknown}")
    share = item(text, "support", "P1").figure("share")
    assert share is not None
    assert share.missing == ("where along it Lamp hangs",)
    where = item(text, "load", "Lamp").fact("place")
    assert where is not None
    assert where.value is not None
    assert where.value.text == "50.0 kg, nobody knows where along it"
    alone = text.replace("{point: P1}, {point: P2}", "{point: P1}")
    assert value(alone, "point", "P1", "carried").number == pytest.approx(50.0)


def test_a_hang_on_points_that_nobody_knows_leaves_at_most_everywhere() -> None:
    text = TWO + hang(1, 2, loads=LIGHTS).replace(
        "supports: [{point: P1}, {point: P2}]", "supports: unknown"
    )
    assert value(text, "hang", "Truss", "total").number == pytest.approx(400.0)
    assert value(text, "point", "P1", "left").ends == (None, 1000.0)
    assert value(text, "roof", "", "left").ends == (None, 9000.0)
    assert "which points carry it" in figure(text, "hang", "Truss", "highest-hook").missing
    (finding,) = found(text, "hang-not-held")
    assert "it needs which points carry it" in finding.sentence


def test_a_hang_whose_loads_nobody_knows_carries_its_own_weight_at_least() -> None:
    text = TWO + hang(1, 2, loads=LIGHTS, more=", weight: 10 kg/m, trim: 6 m up").replace(
        f"loads: [{LIGHTS}]", "loads: unknown"
    )
    assert value(text, "point", "P1", "carried").ends == (pytest.approx(100.0), None)
    assert value(text, "hang", "Truss", "underside").ends == (None, 6.0)
    assert value(text, "by", "house", "weight").ends == (pytest.approx(200.0), None)


def test_what_nobody_knows_who_hung_may_be_of_any_department() -> None:
    other = "{what: Box, by: unknown, weight: 30 kg}"
    text = TWO + hang(1, 2, loads=f"{LIGHTS}, {other}")
    assert value(text, "by", "lighting", "weight").ends == (pytest.approx(400.0), None)
    assert value(text, "by", "nobody knows who", "weight").ends == (pytest.approx(30.0), None)
    assert value(text, "point", "P1", "carried").number == pytest.approx(215.0)


def test_a_dead_hang_on_steel_of_unknown_length_has_no_trim() -> None:
    text = TWO + hang(1, 2, loads=LIGHTS).replace("point: P1", "point: P1, steel: unknown")
    assert "the length of the steel" in figure(text, "hang", "Truss", "highest-hook").missing


def test_bridles_that_nobody_knows_leave_at_most_on_every_point() -> None:
    text = TWO + "bridles: unknown\n"
    assert value(text, "point", "P1", "left").ends == (None, 1000.0)
    assert value(text, "roof", "", "left").ends == (None, 9000.0)


def test_the_first_page_tells_counts_and_heights_from_their_ends() -> None:
    text = LIMITS + BEAM + UNPLACED
    section = published(text).section
    full = section.items[0].figure("full-at-once")
    assert full is not None
    assert full.value is not None
    assert count_words(full.value) == "at most 3"
    words = "".join(str(word) for word in low_steel(section.items[0]).words)
    assert "8.00 m to 9.00 m" in words
    assert ", highest " in words
