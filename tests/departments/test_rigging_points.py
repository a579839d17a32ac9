"""What points carry and have left, which limit binds, and findings at their boundaries."""

import pytest

from builder.exchange import HungLoad
from builder.pack import Level
from tests.departments.rigged import BEAM, LIMITS, figure, found, hang, item, number, points

THREE = LIMITS + BEAM + points(0, 10, 20)
HOIST = "hoists: [{name: Hollin 500, count: 4, rating: 500 kg, weight: 30 kg, headroom: 500 mm}]\n"


def uniform(kg: float) -> str:
    """A load over the whole hang."""
    return f"{{what: Lights, by: lighting, weight: {kg} kg}}"


def lone(kg: float) -> str:
    """A load that hangs from P1 alone."""
    return (
        LIMITS
        + BEAM
        + points(0, 10, 20)
        + hang(1, loads=f"{{what: Sign, by: scenery, weight: {kg} kg}}", last_m=0.0)
    )


@pytest.mark.source(
    "Hicks, Civil Engineering Formulas, Table 2.1: three supports, equal spans, 3/8, 10/8, 3/8 of w"
    " L; half a millimetre of rounding"
)
def test_a_uniform_load_on_three_points_puts_five_eighths_on_the_middle() -> None:
    text = THREE + hang(1, 2, 3, loads=uniform(1600))
    assert [number(text, "point", name, "carried") for name in ("P1", "P2", "P3")] == pytest.approx(
        [300.0, 1000.0, 300.0], abs=0.05
    )


@pytest.mark.source(
    "Hicks, Civil Engineering Formulas, Table 2.1: four supports, equal spans, 0.4, 1.1, 1.1, 0.4"
    " of w L"
)
def test_a_uniform_load_on_four_points_puts_eleven_thirtieths_on_each_inner_one() -> None:
    text = LIMITS + BEAM + points(0, 5, 10, 15) + hang(1, 2, 3, 4, loads=uniform(1500), last_m=15.0)
    assert [number(text, "point", f"P{n}", "carried") for n in (1, 2, 3, 4)] == pytest.approx(
        [200.0, 550.0, 550.0, 200.0], abs=0.05
    )


@pytest.mark.source(
    "Hall, Rigging Math, Lesson 9: span 20, 100 at 17.5 and 200 at 5 from the second point: 137.5"
    " and 162.5"
)
def test_two_points_share_by_statics() -> None:
    loads = (
        "{what: One, by: video, weight: 100 kg, at: 2.5 m}, {what: Two, by: drape, weight: 200 kg,"
        " at: 15 m}"
    )
    text = LIMITS + BEAM + points(0, 20) + hang(1, 2, loads=loads)
    assert number(text, "point", "P1", "carried") == pytest.approx(137.5, abs=0.05)
    assert number(text, "point", "P2", "carried") == pytest.approx(162.5, abs=0.05)


def test_the_hoist_hangs_on_the_point_too() -> None:
    text = THREE + HOIST + hang(1, 2, 3, loads=uniform(800), hoist="Hollin 500")
    assert number(text, "point", "P1", "carried") == pytest.approx(150.0 + 30.0)
    assert number(text, "roof", "", "carried") == pytest.approx(800.0 + 3 * 30.0)


def test_loads_of_other_departments_count_and_keep_who_hung_them() -> None:
    text = THREE + hang(1, 3, loads=uniform(100))
    offered = HungLoad("sound", "4 boxes", "truss", 200.0, at_m=5.0)
    assert number(text, "point", "P1", "carried", offered) == pytest.approx(50.0 + 150.0)
    assert number(text, "by", "sound", "weight", offered) == 200.0
    assert number(text, "by", "lighting", "weight", offered) == 100.0


def test_a_load_offered_by_its_place_from_the_datum_is_put_along_the_hang() -> None:
    text = THREE + hang(1, 3, loads=uniform(100))
    by_place = HungLoad("sound", "4 boxes", "Truss", 200.0, across_m=5.0, depth_m=0.0)
    in_the_middle = HungLoad("sound", "4 boxes", "Truss", 200.0)
    assert number(text, "point", "P1", "carried", by_place) == pytest.approx(200.0)
    assert number(text, "point", "P1", "carried", in_the_middle) == pytest.approx(150.0)


@pytest.mark.parametrize(("depth_m", "count"), [(0.3, 0), (0.35, 1)])
def test_a_load_offered_beside_its_hang_is_told(depth_m: float, count: int) -> None:
    beside = HungLoad("sound", "4 boxes", "Truss", 200.0, across_m=5.0, depth_m=depth_m)
    assert len(found(THREE + hang(1, 3, loads=uniform(100)), "load-off-hang", beside)) == count


def test_a_load_on_a_hang_that_is_not_here_is_told_and_in_no_figure() -> None:
    stray = HungLoad("sound", "4 boxes", "Delay", 200.0)
    (told,) = found(THREE, "load-without-hang", stray)
    assert (
        told.sentence
        == "4 boxes, told by sound, hangs on Delay, which is no hang here. Its weight is in no"
        " figure."
    )
    assert number(THREE, "roof", "", "carried", stray) == 0.0


def test_the_nearest_stated_rule_rates_a_point() -> None:
    exceptions = (
        "exceptions: [{beams: [B1], each_point: 600 kg}, {points: [P2], each_point: 300 kg}]\n"
    )
    text = LIMITS + exceptions + BEAM + points(0, 10, 20, more=", rating: 250 kg")
    assert [number(text, "point", name, "limit") for name in ("P1", "P2", "P3")] == [
        250.0,
        300.0,
        600.0,
    ]


def test_a_beam_binds_where_it_has_less_left_than_the_point() -> None:
    text = (
        "limits: {whole_roof: 9 t, each_beam: 1.2 t, each_point: 1000 kg}\n"
        + BEAM
        + points(0, 10, 20)
        + hang(1, loads=uniform(900), last_m=0.0)
    )
    left = figure(text, "point", "P3", "left")
    assert (left.value.number if left.value else None, left.note) == (300.0, "beam B1")
    assert figure(text, "point", "P1", "binds").value.text == "the point"  # type: ignore[union-attr]  # a missing value fails the test as it should


def test_the_roof_and_a_zone_bind_in_their_turn() -> None:
    roof = (
        "limits: {whole_roof: 1 t, each_beam: 3 t, each_point: 1000 kg}\n"
        + BEAM
        + points(0, 10)
        + hang(1, loads=uniform(400), last_m=0.0)
    )
    assert figure(roof, "point", "P2", "left").note == "the whole roof"
    zone = (
        roof.replace("whole_roof: 1 t", "whole_roof: 5 t")
        + "zones: [{name: Stage, beams: [B1], limit: 900 kg}]\n"
    )
    assert figure(zone, "point", "P2", "left").note == "zone Stage"
    assert number(zone, "point", "P2", "left") == 500.0


def test_few_points_can_be_full_at_once_and_the_sum_of_ratings_hides_it() -> None:
    text = (
        "limits: {whole_roof: 2.5 t, each_beam: 3 t, each_point: 1000 kg}\n"
        + BEAM
        + points(0, 5, 10, 15)
    )
    full = figure(text, "roof", "", "full-at-once").value
    assert full is not None
    assert full.text == "2 of 4 points"
    assert number(text, "roof", "", "sum") == 4000.0


def test_a_point_out_of_service_or_unrated_is_not_counted_on_and_has_nothing_left_to_tell() -> None:
    out = LIMITS + BEAM + points(0, 10, more=", condition: out of service")
    assert figure(out, "point", "P1", "left").missing == ("a point in service",)
    unknown = LIMITS + BEAM + points(0, 10, more=", rating: ?")
    assert figure(unknown, "point", "P1", "limit").missing == ("a limit: not known yet",)
    assert figure(unknown, "roof", "", "full-at-once").value.text == "1 to 2 of 2 points"  # type: ignore[union-attr]  # as above


@pytest.mark.parametrize(("written", "said"), [("?", "not known yet"), ("none", "none")])
def test_unknown_none_and_not_stated_limits_stay_three_things(written: str, said: str) -> None:
    text = f"limits: {{whole_roof: {written}, each_point: 1000 kg}}\n" + BEAM + points(0)
    assert figure(text, "roof", "", "limit").missing == (f"a limit: {said}",)
    assert figure(
        "limits: {each_point: 1000 kg}\n" + BEAM + points(0), "roof", "", "limit"
    ).missing == ("a limit: not stated",)


@pytest.mark.source("by hand: 8 m at 20 m SR rising to 10 m at 20 m SL is 9.25 m at 5 m SL")
def test_low_steel_is_read_between_the_heights_stated() -> None:
    assert number(LIMITS + BEAM + points(5), "point", "P1", "low-steel") == pytest.approx(9.25)


def test_beyond_the_heights_stated_there_is_no_low_steel() -> None:
    assert figure(LIMITS + BEAM + points(21), "point", "P1", "low-steel").value is None


@pytest.mark.parametrize(
    ("kg", "level"),
    [(900.0, None), (900.1, Level.CAUTION), (1000.0, Level.CAUTION), (1000.1, Level.DANGER)],
    ids=["at 90 %", "above", "at it", "over"],
)
def test_a_point_is_told_above_nine_tenths_and_a_danger_above_its_limit(
    kg: float, level: Level | None
) -> None:
    told = [
        finding.level
        for code in ("limit-near", "limit-passed")
        for finding in found(lone(kg), code)
    ]
    assert told == ([level] if level else [])


def test_what_is_too_much_is_said_in_numbers() -> None:
    (told,) = found(lone(1240), "limit-passed")
    assert (
        told.sentence == "P1 carries 1,240 kg of 1,000 kg (Truss, hoist counted): 240 kg too much."
    )
    assert told.subject == "rigging.point.p1"
    assert told.place is not None


@pytest.mark.parametrize(
    ("limit", "subject"), [("each_beam", "rigging.beam.b1"), ("whole_roof", "rigging.roof")]
)
def test_beams_and_the_roof_are_told_over_their_limits(limit: str, subject: str) -> None:
    rules = {"whole_roof": "9 t", "each_beam": "8 t", "each_point": "5 t"} | {limit: "1000 kg"}
    text = (
        f"limits: {{{', '.join(f'{key}: {value}' for key, value in rules.items())}}}\n"
        + BEAM
        + points(0)
        + hang(1, loads=uniform(1001), last_m=0.0)
    )
    (told,) = found(text, "limit-passed")
    assert told.subject == subject
    assert found(text.replace("1001 kg", "900 kg"), "limit-passed") == []


def test_a_zone_over_its_limit_is_told_by_its_name() -> None:
    (told,) = found(
        lone(600) + "zones: [{name: Stage zone, beams: [B1], limit: 500 kg}]\n", "limit-passed"
    )
    assert told.sentence == "Stage zone carries 600 kg of 500 kg: 100 kg too much."


def test_a_hang_on_a_point_that_is_out_of_service_is_a_danger() -> None:
    text = (
        LIMITS
        + BEAM
        + points(0, more=", condition: out of service")
        + hang(1, loads=uniform(10), last_m=0.0)
    )
    assert [told.level for told in found(text, "point-out-of-service")] == [Level.DANGER]
    assert found(text.replace("out of service", "limited"), "point-out-of-service") == []


def test_a_hang_on_a_point_of_a_beam_that_is_out_of_service_is_a_danger_that_names_the_beam() -> (
    None
):
    beam = BEAM.replace("runs: across", "runs: across, condition: out of service")
    text = LIMITS + beam + points(0) + hang(1, loads=uniform(10), last_m=0.0)
    assert [(told.level, told.sentence) for told in found(text, "point-out-of-service")] == [
        (Level.DANGER, "P1 is on B1, which is out of service, and Truss hangs on it.")
    ]


def test_a_hang_on_a_point_with_no_known_rating_is_a_caution() -> None:
    text = LIMITS + BEAM + points(0, more=", rating: ?") + hang(1, loads=uniform(10), last_m=0.0)
    assert [told.level for told in found(text, "point-rating-unknown")] == [Level.CAUTION]


def test_loaded_points_at_the_spacing_are_no_finding_and_nearer_are_one() -> None:
    limits = (
        "limits: {whole_roof: 9 t, each_beam: 3 t, each_point: 1000 kg, spacing_at_least: 1.2 m}\n"
    )
    for across_m, count in ((1.2, 0), (1.1, 1)):
        text = limits + BEAM + points(0, across_m) + hang(1, 2, loads=uniform(10), last_m=across_m)
        assert len(found(text, "spacing-too-small")) == count


def test_a_free_point_too_near_to_a_loaded_one_has_nothing_left() -> None:
    limits = (
        "limits: {whole_roof: 9 t, each_beam: 3 t, each_point: 1000 kg, spacing_at_least: 1.2 m}\n"
    )
    text = limits + BEAM + points(0, 1.0, 5.0) + hang(1, loads=uniform(10), last_m=0.0)
    assert number(text, "point", "P2", "left") == 0.0
    assert figure(text, "point", "P2", "left").note == "spacing to a loaded neighbour"
    assert number(text, "point", "P3", "left") == 1000.0


def test_limits_of_beams_above_the_roof_are_a_note_and_equal_ones_are_none() -> None:
    assert [
        told.level
        for told in found(
            "limits: {whole_roof: 2 t, each_beam: 3 t}\n" + BEAM, "ratings-exceed-roof"
        )
    ] == [Level.NOTE]
    assert found("limits: {whole_roof: 3 t, each_beam: 3 t}\n" + BEAM, "ratings-exceed-roof") == []


@pytest.mark.source("by hand: 300 kg and 30 kg of hoist, times 1.2, are 396 kg")
def test_the_house_factor_is_on_load_and_hoist_and_is_shown_with_its_source() -> None:
    factor = "dynamic_factor: {factor: 1.2, source: The engineer's letter}\n"
    text = factor + THREE + HOIST + hang(1, loads=uniform(300), last_m=0.0, hoist="Hollin 500")
    carried = figure(text, "point", "P1", "carried")
    assert number(text, "point", "P1", "carried") == pytest.approx(396.0)
    assert any(
        "1.2, from The engineer's letter" in entered.text for entered in carried.working.inputs
    )
    assert number(text.replace(factor, ""), "point", "P1", "carried") == pytest.approx(330.0)


def test_every_figure_carries_the_caution_on_loads() -> None:
    text = THREE + HOIST + hang(1, 2, 3, loads=uniform(800), hoist="Hollin 500")
    for kind in ("point", "beam", "roof", "hang", "support"):
        assert all(
            found.caution.startswith("Planning figures.") for found in item(text, kind).figures
        )


def test_the_steps_of_what_is_left_keep_the_letters_of_names() -> None:
    text = LIMITS + BEAM + points(0, 5) + hang(1, 2, loads="")
    text = text.replace("B1", "FOH truss A")
    steps = figure(text, "point", "P1", "left").working.steps
    assert any(step.startswith("Beam FOH truss A: ") for step in steps), steps
