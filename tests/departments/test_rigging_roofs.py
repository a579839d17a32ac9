"""
A hired roof as its sheet tells it: trusses at their stations without ends or points, what hangs on
one for good, ballast, base pads, and steps of wind.
"""

import pytest

from builder.pack import Level
from tests.departments.rigged import LIMITS, figure, found, item, problems

TRUSS = "{name: D, runs: across, depth: 8 m US, underside: 5.4 m up%s}"
GROUP = "point_groups: [{name: Any, beams: [D], anywhere: yes, spacing_at_least: 1 m}]\n"


def roof(more: str = "", rest: str = GROUP) -> str:
    """A truss told by its station and its one height."""
    return f"{LIMITS}beams: [{TRUSS % more}]\n{rest}"


def value(text: str, kind: str, of: str, name: str) -> str:
    """What a figure says, empty where it says nothing."""
    told = figure(text, kind, of, name).value
    return "" if told is None else told.text


def screen(weight: str) -> str:
    """A screen that hangs on the truss for good."""
    return f", standing: [{{what: Screen, by: video, weight: {weight}}}]"


def test_a_truss_needs_no_ends_and_tells_its_one_height() -> None:
    assert problems(roof()) == []
    assert value(roof(), "beam", "D", "lowest-steel") == "5.40 m"
    assert figure(roof(), "beam", "D", "lowest-steel").note == "all along"
    assert value(roof(), "point-group", "Any", "points") == ""


def test_a_height_in_part_is_told_at_both_ends() -> None:
    text = roof().replace("5.4 m up", "5 to 5.4 m up")
    assert value(text, "beam", "D", "lowest-steel") == "5.00 m"
    assert value(text, "beam", "D", "highest-steel") == "5.40 m"


def test_a_height_told_twice_or_not_at_all_is_refused() -> None:
    twice = roof(", low_steel: [{across: 0 m, height: 5 m up}]")
    (problem,) = problems(twice)
    assert "would be told twice" in problem
    (problem,) = problems(roof().replace(", underside: 5.4 m up", ""))
    assert "has no height of low steel" in problem


def test_a_truss_may_lie_nobody_knows_where_and_its_points_still_count() -> None:
    text = roof().replace("depth: 8 m US", "depth: unknown")
    assert problems(text) == []
    points = "points: [{name: P1, beam: D, across: 1 m SL, rating: 250 kg}]\n"
    text = roof(rest=points).replace("depth: 8 m US", "depth: unknown")
    assert problems(text) == []
    assert value(text, "point", "P1", "limit") == "250 kg"
    assert value(text, "point", "P1", "low-steel") == "5.40 m"


# Limits of 3 t on the beam and 9 t on the roof, less what hangs there: sums by hand.
@pytest.mark.parametrize(
    ("weight", "carried", "on_beam", "on_roof"),
    [
        ("400 kg", "400 kg", "2,600 kg", "8,600 kg"),
        ("250 to 400 kg", "250 kg to 400 kg", "2,600 kg to 2,750 kg", "8,600 kg to 8,750 kg"),
        ("at least 250 kg", "at least 250 kg", "at most 2,750 kg", "at most 8,750 kg"),
        ("unknown", "", "at most 3,000 kg", "at most 9,000 kg"),
    ],
)
def test_what_hangs_for_good_counts_on_beam_and_roof(
    weight: str, carried: str, on_beam: str, on_roof: str
) -> None:
    text = roof(screen(weight))
    assert value(text, "beam", "D", "carried") == carried
    assert value(text, "beam", "D", "left") == on_beam
    assert value(text, "roof", "Whole roof", "left") == on_roof


def test_a_zone_carries_what_hangs_on_its_beams_and_the_house_s_factor_holds_for_it() -> None:
    rest = (
        f"{GROUP}zones: [{{name: Back, beams: [D], limit: 2 t}}]\n"
        "dynamic_factor: {factor: 1.25, source: the letter}\n"
    )
    assert value(roof(screen("400 kg"), rest), "zone", "Back", "left") == "1,500 kg"


def test_on_which_points_it_hangs_nobody_says_so_a_point_is_left_at_most() -> None:
    assert value(roof(), "point-group", "Any", "left") == "1,000 kg"
    assert value(roof(screen("400 kg")), "point-group", "Any", "left") == "at most 1,000 kg"


def test_more_standing_weight_never_leaves_more() -> None:
    left = [
        figure(roof(screen(f"{kg} kg")), "roof", "Whole roof", "left").value
        for kg in (1, 400, 4000, 9000)
    ]
    numbers = [each.number for each in left if each and each.number is not None]
    assert numbers == sorted(numbers, reverse=True)
    assert len(numbers) == len(set(numbers)) == len(left)


@pytest.mark.parametrize(
    ("pressure", "tested", "is_told"),
    [
        ("120 kN/m2", "90 kN/m2", True),
        ("120 kN/m2", "120 kN/m2", False),
        ("100 to 120 kN/m2", "110 kN/m2", True),
        ("120 kN/m2", "90 to 130 kN/m2", True),
        ("2500 psf", "at least 4000 psf", False),
        ("unknown", "90 kN/m2", False),
        ("120 kN/m2", "unknown", False),
    ],
)
def test_ground_that_was_tested_at_less_than_the_pads_press_is_told(
    pressure: str, tested: str, is_told: bool
) -> None:
    pads = f"base_pads: {{pressure: {pressure}, ground_tested: {tested}}}\n"
    told = found(roof(rest=pads), "ground-too-weak")
    assert [each.level for each in told] == ([Level.CAUTION] if is_told else [])


def test_ballast_and_steps_of_wind_are_told_with_their_numbers() -> None:
    rest = (
        "ballast: [{what: Block with a guy, count: 4, weight: 800 kg, keep_clear: 2 m}]\n"
        "wind: [{name: roof down, at: 18 m/s, do: Lower the roof., takes: 25 min, sheet_says: 20"
        " m/s}]\nwind_areas: [{name: Skin, area: 80 m2, coefficient: 1.3}]\n"
    )
    ballast = item(roof(rest=rest), "ballast", "Block with a guy")
    assert (ballast.number("count"), ballast.number("weight")) == (4, 800)
    step = item(roof(rest=rest), "wind", "roof down")
    assert (step.number("takes"), step.number("sheet_says")) == (25 * 60, 20)
    assert figure(roof(rest=rest), "wind-area", "Skin", "roof-down").value is not None


@pytest.mark.parametrize(
    ("acts_at", "sheet", "is_told"),
    [
        ("11 m/s", "12.5 m/s", False),
        ("12.5 m/s", "12.5 m/s", False),
        ("13 m/s", "12.5 m/s", True),
        ("13 m/s", "12 to 14 m/s", True),
        ("30 mph", "12.5 m/s", True),  # 13.4 m/s
        ("13 m/s", "unknown", False),
    ],
)
def test_a_step_at_more_wind_than_the_sheet_gives_is_a_danger(
    acts_at: str, sheet: str, is_told: bool
) -> None:
    rest = f"wind: [{{name: lower, at: {acts_at}, do: Sheets down., sheet_says: {sheet}}}]\n"
    told = found(roof(rest=rest), "wind-later-than-sheet")
    assert [each.level for each in told] == ([Level.DANGER] if is_told else [])
