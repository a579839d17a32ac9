"""
Spots between points: which points make one, three legs, legs of stock lengths, and where a point
may not be pulled.
"""

import pytest

from builder.pack import Level
from tests.departments.rigged import figure, found, number, problems

STEEL = "low_steel: [{across: 20 m SR, height: 10 m up}, {across: 20 m SL, height: 10 m up}]"
BEAMS = (
    f"beams:\n  - {{name: B1, runs: across, depth: 0 m, {STEEL}}}\n  - {{name: B2, runs: across,"
    f" depth: 8 m US, {STEEL}}}\n"
)
POINTS = (
    "points:\n  - {name: P1, beam: B1, across: 0 m}\n  - {name: P2, beam: B2, across: 0 m}\n"
    "  - {name: P3, beam: B1, across: 6 m SL}\n  - {name: P4, beam: B2, across: 6 m SR}\n"
)
CROWD = "".join(
    f"  - {{name: Q{number}, beam: B{1 + number % 2}, across: {number / 10} m SL}}\n"
    for number in range(1, 101)
)
STEELS = (
    "steels: [{name: Two, count: 2, length: 2 m, rating: 1 t}, {name: Three, count: 4, length: 3 m,"
    " rating: 1 t}]\n"
)


def text(
    wanted: str = "",
    *,
    rule: str = "bridles_allowed: {allowed: yes}\n",
    limits: str = "",
    bridle: str = "",
    exceptions: str = "",
    more: str = "",
) -> str:
    """Two beams 8 m apart at 10 m, with two points each."""
    head = f"limits: {{whole_roof: 9 t, each_beam: 3 t, each_point: 500 kg{limits}}}\n{exceptions}"
    spots = f"wanted_spots: [{{name: Spot, {wanted}}}]\n" if wanted else ""
    return (
        head
        + rule
        + BEAMS
        + POINTS
        + (f"bridles: [{{name: Ball, {bridle}}}]\n" if bridle else "")
        + spots
        + more
    )


def apex(
    across: str = "0 m", depth: str = "4 m US", height: str = "7 m up", load: str = "300 kg"
) -> str:
    """A wanted apex, in the middle between P1 and P2: two legs of 5 m over 4 m, 3 m below steel."""
    return f"apex: {{across: {across}, depth: {depth}, height: {height}}}, load: {load}"


def standing(lengths: str, legs: str = "[P1, P2]", load: str = "300 kg") -> str:
    """A standing bridle by the lengths of its legs."""
    return f"legs: {legs}, leg_lengths: [{lengths}], load: {load}"


@pytest.mark.source(
    "by hand, two 3-4-5 triangles back to back: T = 300 x 5 / 6 = 250 kg, sideways 300 x 4 / 6 ="
    " 200 kg, angle 2 atan(4/3) = 106.26 deg"
)
def test_the_points_that_make_a_spot_are_found_with_legs_pulls_angle_and_headroom() -> None:
    made = figure(text(apex()), "wanted-spot", "Spot", "points").value
    assert made is not None
    assert made.text == "P1 and P2"
    for name, expected in (
        ("leg-p1", 5.0),
        ("tension-p2", 250.0),
        ("sideways", 200.0),
        ("headroom", 3.0),
    ):
        assert number(text(apex()), "wanted-spot", "Spot", name) == pytest.approx(expected)
    assert number(text(apex()), "wanted-spot", "Spot", "angle") == pytest.approx(106.26, abs=0.005)


def test_a_wanted_spot_puts_no_load_on_any_point() -> None:
    assert number(text(apex()), "point", "P1", "carried") == 0.0


@pytest.mark.parametrize("rule", ["bridles_allowed: {allowed: no}\n", "bridles_allowed: none\n"])
def test_a_house_without_bridles_offers_no_points(rule: str) -> None:
    (told,) = found(text(apex(), rule=rule), "spot-without-bridle")
    assert "the house" in told.sentence
    assert figure(text(apex(), rule=rule), "wanted-spot", "Spot", "points").value is None


def test_a_house_that_has_not_said_is_asked_first() -> None:
    assert "Nobody has said" in figure(text(apex(), rule=""), "wanted-spot", "Spot", "points").note


@pytest.mark.parametrize(
    ("limits", "lacks"),
    [
        (", directions: unknown", "which way points may be pulled"),
        (", directions: at an angle, widest_lean: unknown", "how far a pull may lean"),
    ],
)
def test_points_of_which_nobody_knows_how_they_may_be_pulled_make_no_spot(
    limits: str, lacks: str
) -> None:
    assert figure(text(apex(), limits=limits), "wanted-spot", "Spot", "points").missing == (lacks,)


@pytest.mark.source(
    "by hand, as above: 106.26 deg between the legs, each leans 53.13 deg and pulls 250 kg at 300"
    " kg, so 500 kg at 600 kg"
)
@pytest.mark.parametrize(
    ("changed", "count"),
    [
        ({"rule": "bridles_allowed: {allowed: yes, widest_angle: 107 deg}\n"}, 0),
        ({"rule": "bridles_allowed: {allowed: yes, widest_angle: 106 deg}\n"}, 1),
        ({"rule": "bridles_allowed: {allowed: between some beams, beams: [B1]}\n"}, 1),
        ({"limits": ", directions: straight down only"}, 1),
        ({"limits": ", directions: at an angle, widest_lean: 53 deg"}, 1),
        ({"limits": ", directions: at an angle, widest_lean: 54 deg"}, 0),
        ({"wanted": apex(load="599 kg")}, 0),
        ({"wanted": apex(load="601 kg")}, 1),
        ({"wanted": apex(height="8 m up")}, 1),
        ({"wanted": apex(across="3 m SR", depth="1 m US")}, 1),
        ({"bridle": standing("5 m, 5 m", load="1 kg")}, 1),
    ],
)
def test_points_that_would_break_a_rule_make_no_spot(changed: dict[str, str], count: int) -> None:
    written = {"wanted": apex()} | changed
    assert len(found(text(**written), "spot-without-bridle")) == count


@pytest.mark.source(
    "by hand: the middle of the triangle (0, 0), (6, 0), (-6, 8) is at (0, 8/3); each leg carries a"
    " third, 100 kg, straight down"
)
def test_three_legs_share_a_load_over_the_middle_of_their_triangle_evenly() -> None:
    wanted = f"legs: 3, {apex(depth='2.6666667 m US', height='2 m up')}"
    only = "bridles_allowed: {allowed: yes}\n"
    spot = text(wanted, rule=only).replace("  - {name: P2, beam: B2, across: 0 m}\n", "")
    for name, run_m in (
        ("p1", 8 / 3),
        ("p3", (36 + 64 / 9) ** 0.5),
        ("p4", (36 + (16 / 3) ** 2) ** 0.5),
    ):
        length_m = (run_m**2 + 64) ** 0.5
        assert number(spot, "wanted-spot", "Spot", f"leg-{name}") == pytest.approx(
            length_m, abs=1e-5
        )
        assert number(spot, "wanted-spot", "Spot", f"tension-{name}") == pytest.approx(
            100 * length_m / 8, abs=1e-3
        )
        assert number(spot, "wanted-spot", "Spot", f"sideways-{name}") == pytest.approx(
            100 * run_m / 8, abs=1e-3
        )


@pytest.mark.source(
    "by hand: 3 m + 2 m make each leg of a 3-4-5 triangle, so the apex lands 4 m along and 3 m"
    " below"
)
def test_legs_from_stock_are_told_with_where_the_apex_lands() -> None:
    made = figure(text(apex(), more=STEELS), "wanted-spot", "Spot", "from-stock").value
    assert made is not None
    assert made.text in ("P1: Two + Three; P2: Two + Three", "P1: Three + Two; P2: Three + Two")
    assert number(text(apex(), more=STEELS), "wanted-spot", "Spot", "off") == pytest.approx(
        0.0, abs=1e-9
    )


@pytest.mark.parametrize(
    "wrong",
    [
        ("count: 2, length: 2 m", "count: 1, length: 2 m"),
        ("count: 4, length: 3 m, rating: 1 t", "count: 4, length: 3 m, rating: 249 kg"),
    ],
)
def test_steels_that_are_too_few_or_too_weak_make_no_legs(wrong: tuple[str, str]) -> None:
    assert (
        figure(text(apex(), more=STEELS.replace(*wrong)), "wanted-spot", "Spot", "from-stock").value
        is None
    )


@pytest.mark.source(
    "by hand: legs of 5 m over 8 m between level anchors land in the middle, 3 m below 10 m"
)
def test_a_standing_bridle_by_its_leg_lengths_tells_where_the_apex_lands() -> None:
    lands = figure(text(bridle=standing("5 m, 5 m")), "bridle", "Ball", "lands").value
    assert lands is not None
    assert lands.text == "centre, 4.00 m US, 7.00 m up"
    assert number(
        text(bridle=standing("5 m, 5 m")), "bridle", "Ball", "tension-p1"
    ) == pytest.approx(250.0)


def test_legs_that_cannot_reach_are_told_with_their_place_and_count_as_unknown() -> None:
    (told,) = found(text(bridle=standing("3 m, 5 m")), "bridle-not-worked-out")
    assert "legs that meet between and below its two points" in told.sentence
    assert told.place is not None
    assert figure(text(bridle=standing("3 m, 5 m")), "point", "P1", "carried").value is None


def test_a_standing_bridle_of_three_legs_puts_all_its_load_on_its_points() -> None:
    bridle = "legs: [P1, P3, P4], apex: {across: 0 m, depth: 2 m US, height: 3 m up}, load: 300 kg"
    assert number(text(bridle=bridle), "roof", "", "carried") == pytest.approx(300.0)
    (told,) = found(
        text(bridle=bridle.replace("depth: 2 m US", "depth: 2 m DS")), "bridle-not-worked-out"
    )
    assert "inside the triangle" in told.sentence


@pytest.mark.parametrize(("lean_allowed", "count"), [("53 deg", 2), ("54 deg", 0)])
def test_a_leg_that_leans_farther_than_its_point_may_is_a_danger(
    lean_allowed: str, count: int
) -> None:
    told = found(
        text(
            bridle=standing("5 m, 5 m"),
            limits=f", directions: at an angle, widest_lean: {lean_allowed}",
        ),
        "direction-forbidden",
    )
    assert [each.level for each in told] == [Level.DANGER] * count


def test_an_exception_lets_the_points_of_one_beam_be_pulled_at_an_angle() -> None:
    allowed = "exceptions: [{beams: [B1], directions: at an angle, widest_lean: 60 deg}]\n"
    (told,) = found(
        text(
            bridle=standing("5 m, 5 m"),
            limits=", directions: straight down only",
            exceptions=allowed,
        ),
        "direction-forbidden",
    )
    assert (
        "to P2 leans 53 deg from straight down. By the rule for all points it may be pulled"
        " straight down only." in told.sentence
    )


def test_directions_that_nobody_states_forbid_nothing() -> None:
    for limits in ("", ", directions: ?"):
        assert found(text(bridle=standing("5 m, 5 m"), limits=limits), "direction-forbidden") == []


def test_a_leg_on_a_point_that_carries_something_else_is_told() -> None:
    two = text(bridle=standing("5 m, 5 m")).replace(
        "bridles: [",
        "bridles: [{name: Other, legs: [P1, P4], leg_lengths: [7 m, 7 m], load: 9 kg}, ",
    )
    assert len(found(two, "point-shared")) == 1
    assert found(text(bridle=standing("5 m, 5 m")), "point-shared") == []


@pytest.mark.source("by hand, as above: the leg of 300 kg pulls 250 kg, times 1.2 is 300 kg")
@pytest.mark.parametrize(("rating", "count"), [("301 kg", 0), ("299 kg", 2)])
def test_the_factor_of_the_house_counts_on_the_pull_in_a_leg(rating: str, count: int) -> None:
    written = text(
        bridle=standing("5 m, 5 m"), more="dynamic_factor: {factor: 1.2, source: the letter}\n"
    ).replace("each_point: 500 kg", f"each_point: {rating}")
    assert len(found(written, "bridle-leg-over-point")) == count


@pytest.mark.parametrize(
    ("bridle", "said"),
    [
        ("legs: [P1, P2], load: 9 kg", "needs either 'apex', or 'leg_lengths'"),
        (
            "legs: [P1, P2], leg_lengths: [5 m], load: 9 kg",
            "needs one length for each of its 2 legs",
        ),
        ("legs: [P1], leg_lengths: [5 m], load: 9 kg", "must name two or three different points"),
    ],
)
def test_a_bridle_that_cannot_be_meant_is_refused(bridle: str, said: str) -> None:
    assert any(said in problem for problem in problems(text(bridle=bridle)))


def test_a_spot_of_four_legs_is_refused() -> None:
    assert any("from 2 to 3 is possible" in told for told in problems(text(f"legs: 4, {apex()}")))


def test_of_hundreds_of_free_points_the_nearest_are_looked_at_and_the_rest_are_told() -> None:
    spots = ", ".join(f"{{name: S{number}, {apex()}}}" for number in range(30))
    crowded = text(more=f"wanted_spots: [{spots}]\n").replace(POINTS, POINTS + CROWD)
    points = figure(crowded, "wanted-spot", "S0", "points")
    assert points.working.steps[-1] == (
        "Only the nearest points were looked at, 59 farther ones not."
    )
