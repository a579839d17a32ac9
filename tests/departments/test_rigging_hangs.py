"""
What hangs carry on their supports, worst cases, trim, the maker's table, stock, and findings at
their boundaries.
"""

import pytest

from builder.pack import Item, Level
from tests.departments.rigged import (
    BEAM,
    LIMITS,
    figure,
    found,
    hang,
    item,
    number,
    points,
    published,
)

THREE = LIMITS + BEAM + points(0, 10, 20)
HOIST = "hoists: [{name: Hollin 500, count: 3, rating: 500 kg, weight: 30 kg, headroom: 500 mm}]\n"
TRUSS = (
    "trusses: [{name: Cawdry T40, in_all: 20 m, height: 400 mm, table: [{span: 4 m, uniform: 2000"
    " kg}, {span: 8 m, uniform: 1000 kg}, {span: 12 m, uniform: 600 kg}]}]\n"
)


def at(kg: float, place_m: float) -> str:
    """A load at one place."""
    return f"{{what: Screen, by: video, weight: {kg} kg, at: {place_m} m}}"


def supports(text: str) -> list[Item]:
    """The supports of the one hang of a text."""
    return list(published(text).section.of_kind("support"))


@pytest.mark.source(
    "PyNiteFEA 3.2.0 with one-way springs: 1000 N at 5 m on supports at 0, 10, 20 m gives 500, 500,"
    " 0; rigid ones would give -93.75"
)
def test_a_hoist_cannot_push_so_the_far_one_goes_slack_and_is_told() -> None:
    text = THREE + hang(1, 2, 3, loads=at(1000, 5))
    assert [each.number("share") for each in supports(text)] == pytest.approx(
        [500.0, 500.0, 0.0], abs=0.05
    )
    (told,) = found(text, "support-slack")
    assert told.level is Level.CAUTION
    assert (
        told.sentence
        == "P3 carries nothing of Truss. It would have to push with 94 kg, and a hoist cannot push;"
        " the others carry all."
    )


def test_a_support_that_carries_a_little_is_not_slack() -> None:
    uniform = "{what: Lights, by: lighting, weight: 800 kg}"
    assert found(THREE + hang(1, 2, 3, loads=f"{at(1000, 5)}, {uniform}"), "support-slack") == []


@pytest.mark.source(
    "Hicks Table 2.1 without the middle support: each end carries 10 of w L where it carried 3.75"
    " (of 20), by statics"
)
def test_the_worst_with_one_hoist_slack_is_half_the_truss_on_each_end() -> None:
    text = THREE + hang(1, 2, 3, loads="{what: Lights, by: lighting, weight: 2000 kg}")
    assert [each.number("share") for each in supports(text)] == pytest.approx(
        [375.0, 1250.0, 375.0], abs=0.05
    )
    assert supports(text)[0].number("one-slack") == pytest.approx(1000.0, abs=0.05)


@pytest.mark.source(
    "by hand from the settlement of a middle support, dR = 6 EI d / L^3, with d = 20 mm between"
    " middle and ends: EI 2000 kN m2, L 10 m"
)
def test_out_of_level_hoists_move_load_as_the_stiffness_says() -> None:
    limits = "limits: {whole_roof: 9 t, each_beam: 3 t, each_point: 2000 kg, level_within: 10 mm}\n"
    text = (
        limits
        + BEAM
        + points(0, 10, 20)
        + hang(
            1,
            2,
            3,
            loads="{what: Lights, by: lighting, weight: 2000 kg}",
            more=", stiffness: 2000 kN m2",
        )
    )
    moved_kg = 6 * 2000e3 * 0.020 / 10**3 / 9.80665
    assert supports(text)[1].number("uneven") == pytest.approx(1250.0 + moved_kg, abs=0.05)


def test_without_stiffness_there_is_no_envelope_out_of_level() -> None:
    limits = "limits: {whole_roof: 9 t, each_point: 2000 kg, level_within: 10 mm}\n"
    text = (
        limits
        + BEAM
        + points(0, 10, 20)
        + hang(1, 2, 3, loads="{what: Lights, by: lighting, weight: 2000 kg}")
    )
    lacking = supports(text)[1].figure("uneven")
    assert lacking is not None
    assert lacking.missing == ("its bending stiffness",)


@pytest.mark.source(
    "by hand: with an end hoist slack, the middle one is under the centre of mass and carries all"
    " 1500 kg"
)
def test_points_that_hold_only_while_hoists_share_as_planned_are_a_note() -> None:
    text = THREE + hang(1, 2, 3, loads="{what: Lights, by: lighting, weight: 1500 kg}")
    assert found(text.replace("each_point: 1000 kg", "each_point: 1500 kg"), "over-if-uneven") == []
    (told,) = found(text.replace("each_point: 1000 kg", "each_point: 1499 kg"), "over-if-uneven")
    assert told.level is Level.NOTE
    assert (
        told.sentence
        == "Truss keeps these points within their limit only while its hoists share as planned: P2"
        " (1,500 kg with one hoist slack)."
    )


def test_a_load_on_the_end_is_on_the_hang_and_one_beyond_it_is_a_danger_counted_at_the_end() -> (
    None
):
    assert found(THREE + hang(1, 3, loads=at(100, 20)), "load-off-hang") == []
    text = THREE + hang(1, 3, loads=at(100, 20.4))
    (told,) = found(text, "load-off-hang")
    assert told.level is Level.DANGER
    assert (
        told.sentence
        == "Screen is 0.40 m off Truss, which is 20.00 m long. It is counted at the nearest place"
        " on it: mend its place."
    )
    assert number(text, "point", "P3", "carried") == pytest.approx(100.0)


def test_supports_on_one_side_of_the_load_cannot_hold_it() -> None:
    text = THREE + hang(1, 2, loads=at(100, 15))
    (told,) = found(text, "hang-not-held")
    assert told.level is Level.DANGER
    assert figure(text, "point", "P1", "carried").missing == (
        "supports on both sides of the centre of mass",
    )
    assert figure(text, "roof", "", "carried").missing == ("what P1 carries", "what P2 carries")
    assert found(THREE + hang(1, 2, loads=at(100, 9)), "hang-not-held") == []


@pytest.mark.parametrize(("place_m", "count"), [(10.0, 0), (10.04, 0), (10.1, 1)])
def test_a_single_support_must_be_over_the_centre_of_mass(place_m: float, count: int) -> None:
    text = THREE + hang(2, loads=at(100, place_m))
    assert len(found(text, "support-off-centre")) == count
    assert number(text, "point", "P2", "carried") == 100.0


def test_a_point_beside_its_hang_is_told() -> None:
    near = THREE + hang(1, 3, loads=at(100, 10)).replace("depth: 0 m", "depth: 0.3 m US")
    assert found(near, "support-off-hang") == []
    assert len(found(near.replace("0.3 m US", "0.4 m US"), "support-off-hang")) == 2


def test_a_hoist_at_its_rating_is_no_finding_and_above_it_is_a_danger() -> None:
    for kg, count in ((1000.0, 0), (1001.0, 2)):
        text = THREE + HOIST + hang(1, 3, loads=at(kg, 10), hoist="Hollin 500")
        assert [told.level for told in found(text, "hoist-over-rating")] == [Level.DANGER] * count


@pytest.mark.source(
    "by hand: 8.5 m and 9.5 m of steel at the two ends less 0.5 m of hoist and 0.4 m of truss; the"
    " lower end decides"
)
def test_the_houses_factor_counts_on_hoists_and_truss_too() -> None:
    factor = "dynamic_factor: {factor: 1.25, source: the engineer's letter}\n"
    for kg, count in ((800.0, 0), (801.0, 2)):
        text = THREE + HOIST + factor + hang(1, 3, loads=at(kg, 10), hoist="Hollin 500")
        assert len(found(text, "hoist-over-rating")) == count
    assert "with the house's factor 1.25" in found(text, "hoist-over-rating")[0].sentence


def test_a_level_truss_trims_by_its_lowest_point() -> None:
    text = (
        LIMITS
        + BEAM
        + TRUSS
        + HOIST
        + points(-10, 10)
        + hang(
            1,
            2,
            loads=at(10, 10),
            first_m=-10,
            last_m=10,
            more=", truss: Cawdry T40",
            hoist="Hollin 500",
        )
    )
    assert number(text, "hang", "Truss", "highest-trim") == pytest.approx(7.6)


def test_a_stated_trim_at_the_highest_is_no_finding_and_above_it_is_one() -> None:
    for trim, count in (("7.6 m", 0), ("7.7 m", 1)):
        more = f", truss: Cawdry T40, trim: {trim} up"
        text = (
            LIMITS
            + BEAM
            + TRUSS
            + HOIST
            + points(-10, 10)
            + hang(1, 2, loads=at(10, 10), first_m=-10, last_m=10, more=more, hoist="Hollin 500")
        )
        assert len(found(text, "trim-too-high")) == count


def test_a_dead_hang_needs_the_length_of_its_steel_for_a_trim() -> None:
    text = (
        LIMITS
        + BEAM
        + TRUSS
        + points(-10, 10)
        + hang(1, 2, loads=at(10, 10), first_m=-10, last_m=10, more=", truss: Cawdry T40")
    )
    assert figure(text, "hang", "Truss", "highest-trim").missing == ("the length of the steel",)


def on_table(span_m: float, kg: float) -> str:
    """A truss over one span with a uniform load."""
    load = f"{{what: Lights, by: lighting, weight: {kg} kg}}"
    return (
        LIMITS.replace("1000", "5000")
        + BEAM
        + TRUSS
        + points(0, span_m)
        + hang(1, 2, loads=load, last_m=span_m, more=", truss: Cawdry T40")
    )


@pytest.mark.source(
    "by hand: 1/P halfway between 1/2000 and 1/1000 is 1/1333.3; a straight line would promise 1500"
)
def test_the_makers_table_is_read_inwards_and_does_not_promise_more() -> None:
    shown = figure(on_table(6.0, 800), "hang", "Truss", "span-1").value
    assert shown is not None
    assert shown.text == "800 kg of 1,333 kg"


@pytest.mark.parametrize(("kg", "count"), [(1000.0, 0), (1001.0, 1)])
def test_a_span_at_what_the_table_allows_is_no_finding_and_above_it_is_a_danger(
    kg: float, count: int
) -> None:
    assert [told.level for told in found(on_table(8.0, kg), "truss-over-table")] == [
        Level.DANGER
    ] * count


def test_two_supports_at_one_place_leave_no_span_and_no_share_and_the_rest_is_told() -> None:
    text = on_table(8.0, 800).replace("P2, beam: B1, across: 8.0 m SL", "P2, beam: B1, across: 0 m")
    truss = item(text, "hang", "Truss")
    assert truss.figure("span-1") is None
    assert truss.figure("total") is not None
    shares = [each.figure("share") for each in supports(text)]
    assert [share.missing for share in shares if share] == [
        ("supports at different places along the hang",)
    ] * 2


@pytest.mark.source("by hand, simple beam: P L / 4 at the middle equals W L / 8 for W = 2 P")
def test_a_point_load_counts_twice_against_a_table_of_uniform_loads() -> None:
    text = on_table(8.0, 1).replace("{what: Lights, by: lighting, weight: 1 kg}", at(400, 4))
    assert number(text, "hang", "Truss", "span-1") == 800.0


@pytest.mark.source(
    "beam diagrams, simple beam, load W over a length a in the middle: M = W (2 L - a) / 8, so 950"
    " kg over 1 m of 8 m bend as 1,781 kg spread evenly (by hand)"
)
def test_a_load_over_a_short_part_of_a_span_is_held_to_the_table_by_its_bending() -> None:
    short = "{what: Wall, by: video, weight: 950 kg, from: 3.5 m, to: 4.5 m}"
    text = on_table(8.0, 1).replace("{what: Lights, by: lighting, weight: 1 kg}", short)
    assert number(text, "hang", "Truss", "span-1") == pytest.approx(1781.25)
    assert figure(text, "hang", "Truss", "span-1").note == "178 %"
    (told,) = found(text, "truss-over-table")
    assert told.sentence == (
        "Truss carries 1,781 kg on a span of 8.00 m, counted as a uniform load by bending and"
        " shear; the table of Cawdry T40 allows 1,000 kg."
    )


@pytest.mark.source("statics by hand: 700 kg 0.5 m from a support of 8 m shear as 2 × 656.25 kg")
def test_a_load_near_a_support_is_held_to_the_table_by_its_shear() -> None:
    text = on_table(8.0, 1).replace("{what: Lights, by: lighting, weight: 1 kg}", at(700, 0.5))
    assert number(text, "hang", "Truss", "span-1") == pytest.approx(1312.5)


@pytest.mark.parametrize(
    ("span_m", "levels"), [(12.0, []), (12.5, [Level.CAUTION]), (3.5, [Level.NOTE])]
)
def test_nothing_is_read_beyond_the_table(span_m: float, levels: list[Level]) -> None:
    assert [told.level for told in found(on_table(span_m, 10), "span-outside-table")] == levels


def test_hoists_and_truss_in_stock_are_counted_down() -> None:
    text = (
        THREE
        + TRUSS
        + HOIST
        + hang(1, 2, 3, loads=at(10, 10), more=", truss: Cawdry T40", hoist="Hollin 500")
    )
    assert item(text, "hoist").text("free") == "0"
    assert number(text, "truss", "Cawdry T40", "free") == 0.0
    assert found(text, "hoists-short") == found(text, "truss-short") == []
    assert len(found(text.replace("count: 3", "count: 2"), "hoists-short")) == 1
    assert len(found(text.replace("in_all: 20 m", "in_all: 19 m"), "truss-short")) == 1
