"""
How high hangs go: with hoists, dead hung on a steel, and what other departments hang below the
hook.
"""

import pytest

from builder.exchange import HungLoad
from builder.pack import Level
from tests.departments.rigged import BEAM, LIMITS, figure, found, hang, item, number, points

STOCK = (
    "hoists: [{name: Hollin 500, count: 3, rating: 500 kg, weight: 30 kg, headroom: 500"
    " mm}]\ntrusses: [{name: T40, in_all: 40 m, height: 400 mm}]\n"
)
HEAD = LIMITS + STOCK + BEAM + points(0, 10, 20)
"""
The beam rises from 8 m at 20 m stage right to 10 m at 20 m stage left: 9 m at P1, 9.5 m at P2, 10 m
at P3.
"""
DEAD = HEAD + hang(1, loads="{what: Sign, by: house, weight: 9 kg}", last_m=0.0).replace(
    "{point: P1}", "{point: P1, steel: 2 m}"
)


def array(top_m: float | None, bottom_m: float | None) -> HungLoad:
    """Boxes that sound hangs on Truss."""
    return HungLoad("sound", "9 boxes", "Truss", 300.0, top_m=top_m, bottom_m=bottom_m)


@pytest.mark.source("by hand: 9 - 0.5 - 0.4 = 8.1 m at the lowest of the points")
def test_a_truss_on_hoists_goes_as_high_as_its_lowest_point_lets_it() -> None:
    text = HEAD + hang(1, 3, loads="", hoist="Hollin 500", more=", truss: T40")
    assert number(text, "hang", "Truss", "highest-trim") == pytest.approx(8.1)


@pytest.mark.source("by hand: 9 - 2 = 7 m")
def test_a_dead_hang_hangs_below_steel_by_the_length_of_its_steel() -> None:
    assert number(DEAD, "hang", "Truss", "highest-hook") == pytest.approx(7.0)
    assert "dead hung" in figure(DEAD, "hang", "Truss", "highest-hook").note


def test_a_dead_hang_whose_steel_nobody_tells_says_so() -> None:
    told = figure(DEAD.replace(", steel: 2 m", ""), "hang", "Truss", "highest-hook")
    assert told.value is None
    assert told.missing == ("the length of the steel",)


@pytest.mark.source("by hand: 9 - 0.5 - 1 = 7.5 m")
def test_a_steel_besides_a_hoist_counts_too() -> None:
    text = DEAD.replace("steel: 2 m", "steel: 1 m, hoist: Hollin 500")
    assert number(text, "hang", "Truss", "highest-hook") == pytest.approx(7.5)


@pytest.mark.source("by hand: hook at 9 - 2 = 7 m, top of the boxes at 6.4 m, so 0.6 m between")
def test_the_lowest_box_and_the_room_above_the_top_one_are_told() -> None:
    assert number(DEAD, "hang", "Truss", "lowest-box", array(6.4, 4.1)) == 4.1
    assert number(DEAD, "hang", "Truss", "room-above", array(6.4, 4.1)) == pytest.approx(0.6)


def test_no_height_is_told_of_what_does_not_tell_one() -> None:
    told = item(DEAD, "hang", "Truss", array(None, None))
    assert told.figure("lowest-box") is None
    assert told.figure("room-above") is None


@pytest.mark.parametrize(("top_m", "count"), [(7.0, 0), (7.01, 1)])
def test_boxes_that_are_told_higher_than_the_hook_goes_are_a_caution(
    top_m: float, count: int
) -> None:
    assert [each.level for each in found(DEAD, "trim-too-high", array(top_m, 4.0))] == [
        Level.CAUTION
    ] * count
