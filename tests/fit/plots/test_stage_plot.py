"""
A stage plot on a small stage, each case on both sides of its boundary and reasoned by hand.

The deck is 16 m wide about the centre line and 10 m deep from the reference line, and carries 5 kPa
and 500 kg on one foot.
"""

import pytest

from builder.fit.interpreter import fit
from builder.fit.plots import in_the_way, notes
from builder.fit.plots.sentences import NO_DECK, SMALLER
from builder.formulas import rectangles
from builder.formulas.rectangles import overlap_m
from tests.fit.plot_pairs import box
from tests.fit.sample import Record, a_list, item, rider, value
from tests.fit.stages import outline, piece, plot, plotted, stage, word

NOTED = "fits, with a note"
LEVEL = {
    "level_with_deck": value("yes"),
    "load": value("3 kPa", 3000.0),
    "clear_height": value("4 m", 4.0),
}
WING = (item("wing", "stage left", **LEVEL), box(8.0, 12.0, 0.0, 6.0))
COLUMN = (item("obstruction", "Column"), box(1.0, 1.4, 5.0, 5.4))
DUCT = (item("obstruction", "Duct", from_height=value("3 m", 3.0)), box(-8.0, 8.0, 8.0, 9.0))
PIT = (
    item("zone", "Pit cover", load=value("2 kPa", 2000.0), point_load=value("100 kg", 100.0)),
    box(-2.0, 2.0, 0.0, 2.0),
)


def part(found: Record, name: str) -> Record:
    """The part of a plot's verdict on one rectangle."""
    return dict(next(each for each in found["parts"] if each["title"] == name))


def test_what_stands_as_asked_is_one_line_with_the_least_room_to_an_edge() -> None:
    found = plotted(stage(), piece("A", (0, 5)), piece("B", (6, 5)))
    assert (found["verdict"], found["parts"], found["margin"]) == (
        "fits",
        [],
        ["+1.00 m", "+3'-3 1/2\""],
    )
    assert (
        found["reason"] == "Deck: 2 of 2 as asked: A, B. The least room to an edge is 1.00 m, at B."
    )
    assert (found["fact"]["key"], found["fact"]["text"]) == ("x.deck.Deck", "16.00 m × 10.00 m")


# Half of 2 m beyond 7 m is 8 m, the edge. 25 mm more is rounding, a hair more is not.
@pytest.mark.parametrize(
    ("across_m", "verdict"),
    [(7.0, "fits"), (7.025, NOTED), (7.0251, "short"), (-7.025, NOTED), (-7.0251, "short")],
)
def test_an_edge_may_be_passed_by_rounding_alone(across_m: float, verdict: str) -> None:
    assert word(stage(), piece(at=(across_m, 5))) == verdict


@pytest.mark.parametrize(
    ("upstage_m", "verdict"), [(9.025, NOTED), (9.0251, "short"), (0.975, NOTED), (0.9749, "short")]
)
def test_so_in_depth(upstage_m: float, verdict: str) -> None:
    assert word(stage(), piece(at=(0, upstage_m))) == verdict


def test_what_rounding_let_pass_is_noted() -> None:
    found = plotted(
        stage(COLUMN), piece("A", (7.02, 9)), piece("B", (5.04, 9)), piece("C", (0.01, 5))
    )
    assert [(each["title"], each["reason"]) for each in found["parts"]] == [
        (
            "A",
            (
                "20 mm over the edge stage left, within the tolerance for rounding; 20 mm into B,"
                " within the tolerance for rounding."
            ),
        ),
        ("B", "20 mm into A, within the tolerance for rounding."),
        ("C", "10 mm into Column, within the tolerance for rounding."),
    ]


def test_a_rectangle_over_an_edge_tells_by_how_much_and_which_move_mends_it() -> None:
    found = part(plotted(stage(), piece("Drum riser", (0, 9.45))), "Drum riser")
    assert found["margin"] == ["−450 mm", "−1'-5 1/2\""]
    assert found["reason"] == "450 mm over the edge upstage of the deck."
    assert (found["remedy"], found["who"]) == ("Move it 450 mm (1'-5 1/2\") downstage.", "the show")


def test_over_a_corner_the_move_goes_both_ways() -> None:
    found = part(plotted(stage(), piece("A", (7.5, 9.5))), "A")
    assert (
        found["remedy"]
        == "Move it 500 mm (1'-7 1/2\") to stage right and 500 mm (1'-7 1/2\") downstage."
    )


def test_a_move_is_not_told_where_the_edge_would_still_be_crossed_into_a_wing() -> None:
    # 500 mm upstage alone would leave it 600 mm in the wing, which is to ask; both moves leave it
    # on the deck.
    found = part(plotted(stage((WING[0], box(8.0, 12.0, 0.0, 9.0))), piece("A", (7.6, 0.5))), "A")
    assert (
        found["remedy"]
        == "Move it 600 mm (1'-11 1/2\") to stage right and 500 mm (1'-7 1/2\") upstage."
    )


THRUST = [
    *([-8.0, 0.0], [-2.0, 0.0], [-2.0, -3.0], [2.0, -3.0]),
    *([2.0, 0.0], [8.0, 0.0], [8.0, 10.0], [-8.0, 10.0]),
]


@pytest.mark.parametrize(("across_m", "side"), [(-1.9, "left"), (1.9, "right")])
def test_what_stands_over_the_side_of_a_thrust_moves_back_onto_it(
    across_m: float, side: str
) -> None:
    # 1 m square about 1.9 m reaches to 2.4 m, 400 mm past the side of the thrust.
    found = part(plotted(stage(deck=THRUST), piece("A", (across_m, -1.5), (1.0, 1.0))), "A")
    assert found["remedy"] == f"Move it 400 mm (1'-3 1/2\") to stage {side}."


APSE = [
    *([-8.0, 0.0], [8.0, 0.0], [8.0, 10.0], [2.0, 10.0]),
    *([2.0, 13.0], [-2.0, 13.0], [-2.0, 10.0], [-8.0, 10.0]),
]


@pytest.mark.parametrize(
    ("deck", "upstage_m", "way"), [(APSE, 9.8, "downstage"), (THRUST, 0.2, "upstage")]
)
def test_what_stands_over_an_edge_that_is_not_the_farthest_moves_back_over_it(
    deck: list[list[float]], upstage_m: float, way: str
) -> None:
    # 1 m square about 9.8 m reaches to 10.3 m, and about 0.2 m to -0.3 m: 300 mm past the edge.
    found = part(plotted(stage(deck=deck), piece("A", (5.0, upstage_m), (1.0, 1.0))), "A")
    assert found["remedy"] == f"Move it 300 mm (1'-0\") {way}."


# 12 m deep on a deck of 10 m: no move helps, a quarter turn does, 12 m of 16 m.
def test_where_no_move_helps_a_turn_may() -> None:
    assert (
        part(plotted(stage(), piece("Wall", (0, 5), (1.0, 12.0))), "Wall")["remedy"]
        == "Turn it by a quarter."
    )


def test_a_turned_rectangle_stands_where_its_corners_do() -> None:
    # Turned by 45 degrees, 2 m by 2 m reach 1.4142 m from the centre. 25 mm along both of its sides
    # are 35 mm at the corner.
    assert word(stage(), piece(at=(0, 1.380), turned_deg=45.0)) == NOTED
    assert word(stage(), piece(at=(0, 1.42), turned_deg=45.0)) == "fits"
    assert word(stage(), piece(at=(0, 1.378), turned_deg=45.0)) == "short"
    assert word(stage(), piece(at=(0, 5), size=(1, 12), turned_deg=90.0)) == "fits"


def test_larger_than_the_deck_by_more_than_rounding_is_short_though_each_edge_is_passed_by_less() -> (  # noqa: E501
    None
):
    assert word(stage(), piece(at=(0, 5), size=(16.025, 2))) == NOTED
    assert word(stage(), piece(at=(0, 5), size=(16.04, 2))) == "short"


def test_beside_a_thrust_there_is_no_floor() -> None:
    thrust = [
        [-8.0, 0.0],
        [-2.0, 0.0],
        [-2.0, -3.0],
        [2.0, -3.0],
        [2.0, 0.0],
        [8.0, 0.0],
        [8.0, 10.0],
        [-8.0, 10.0],
    ]
    assert word(stage(deck=thrust), piece(at=(0, -2))) == "fits"
    assert word(stage(deck=thrust), piece(at=(1.5, -1.5))) == "short"
    assert word(stage(deck=thrust), piece(at=(5, -2))) == "short"


# The column stands at 1.0 m to 1.4 m. A riser of 2 m about 0 m ends at 1 m.
@pytest.mark.parametrize(
    ("across_m", "verdict"),
    [(0.0, "fits"), (0.025, NOTED), (0.0251, "short"), (2.375, NOTED), (2.3749, "short")],
)
def test_a_column_is_in_the_way(across_m: float, verdict: str) -> None:
    assert word(stage(COLUMN), piece(at=(across_m, 5))) == verdict


def test_past_a_column_the_shortest_move_is_told_with_the_house_s_fact() -> None:
    found = part(plotted(stage(COLUMN), piece("A", (0.2, 5))), "A")
    assert (found["reason"], found["remedy"]) == (
        "Column stands 200 mm inside it.",
        'Move it 200 mm (8") to stage right.',
    )
    assert found["fact"]["key"] == "x.obstruction.Column"


@pytest.mark.parametrize(
    ("height_m", "verdict"), [(3.0, "fits"), (3.001, "short"), (3.025, "short"), (None, NOTED)]
)
def test_what_hangs_is_in_the_way_of_what_is_higher(height_m: float | None, verdict: str) -> None:
    assert word(stage(DUCT), piece(at=(0, 8), height_m=height_m)) == verdict


def test_how_high_something_hangs_is_asked_where_nobody_knows() -> None:
    duct = (item("obstruction", "Duct", from_height=value(standing="unknown")), DUCT[1])
    found = plotted(stage(duct), piece(at=(0, 8)))
    assert (found["verdict"], found["parts"][0]["question"].split("?")[0]) == (
        "ask",
        "How high above the deck is the underside of Duct",
    )


@pytest.mark.parametrize(
    ("height_m", "verdict"), [(6.0, "fits"), (6.001, "short"), (6.025, "short")]
)
def test_the_clear_height_of_the_deck_is_kept(height_m: float, verdict: str) -> None:
    assert word(stage(), piece(height_m=height_m)) == verdict
    assert word(stage(clear_height=value(standing="unknown")), piece(height_m=height_m)) == "ask"
    assert word(stage(clear_height=value(standing="none")), piece(height_m=height_m)) == "fits"


# Two of 2 m about 0 m and 2 m touch. 25 mm into each other is rounding.
@pytest.mark.parametrize(
    ("across_m", "verdict"), [(2.0, "fits"), (1.975, NOTED), (1.9749, "short")]
)
def test_two_rectangles_may_touch_and_not_overlap(across_m: float, verdict: str) -> None:
    assert word(stage(), piece("A", (0, 5)), piece("B", (across_m, 5))) == verdict


def test_an_overlap_is_told_on_both_with_the_move_that_ends_it() -> None:
    found = plotted(stage(), piece("A", (0, 5)), piece("B", (1.7, 5)))
    assert [each["reason"] for each in found["parts"]] == [
        "It overlaps B by 300 mm.",
        "It overlaps A by 300 mm.",
    ]
    assert part(found, "B")["remedy"] == "Move it 300 mm (1'-0\") to stage left."


def test_a_ring_kept_clear_around_a_thing_is_in_its_way_no_more_and_in_all_others_way() -> None:
    tower = piece("Tower", (0, 5), (2.0, 2.0))
    ring = piece("Ring", (0, 5), (4.0, 4.0), lane=True, around="Tower")
    desk = piece("Desk", (1.5, 5), (0.5, 0.5))
    assert word(stage(), tower, ring) == "fits"
    assert shorts(plotted(stage(), tower, ring, desk)) == {"Ring", "Desk"}
    assert shorts(plotted(stage(), tower, {**ring, "around": ""})) == {"Tower", "Ring"}


def shorts(found: Record) -> set[str]:
    """The rectangles of a plot that are short."""
    return {each["title"] for each in found["parts"] if each["verdict"] == "short"}


def test_a_lane_is_kept_clear_and_lanes_may_cross() -> None:
    lane = piece("Lane", (0, 5), (1.0, 9.0), lane=True)
    assert part(plotted(stage(), lane, piece("Desk", (0, 5))), "Desk")["reason"].startswith(
        "It stands in the lane Lane by "
    )
    assert word(stage(), lane, piece("Other lane", (0, 5), (9.0, 1.0), lane=True)) == "fits"


def test_what_only_should_be_there_gives_way_and_does_not_make_the_show_short() -> None:
    result = fit(stage(), [rider(plot(piece("A"), piece("B", strictness="should")))])
    found = result["verdicts"][0]
    assert [(each["title"], each["verdict"]) for each in found["parts"]] == [("B", "short")]
    assert (found["verdict"], found["strictness"], result["verdict"]) == (
        "short",
        "should",
        "fits, with a note",
    )


# 4 m² at 5 kPa carry 20,000 N: 20,000 / 9.80665 = 2,039.4324 kg. There is no tolerance.
@pytest.mark.parametrize(
    ("weight_kg", "verdict"), [(2039.4, "fits, with a note"), (2039.5, "short")]
)
def test_weight_is_spread_evenly_and_has_no_tolerance(weight_kg: float, verdict: str) -> None:
    assert word(stage(), piece(weight_kg=weight_kg)) == verdict


# 150 psf, exactly: 150 lb on each square foot.
def test_a_load_at_the_limit_fits_in_pounds_and_feet_too() -> None:
    psf = value("150 psf", 150 * 0.45359237 * 9.80665 / 0.3048**2)
    assert (
        word(stage(load=psf), piece(size=(8 * 0.3048, 8 * 0.3048), weight_kg=64 * 150 * 0.45359237))
        == "fits, with a note"
    )


def test_too_heavy_tells_the_floor_it_would_need() -> None:
    found = part(plotted(stage(), piece("A", weight_kg=4078.8648)), "A")
    assert found["reason"] == "10.00 kPa spread evenly on Deck, which carries 5.00 kPa."
    assert found["margin"] == ["−5.00 kPa", "−104 psf"]
    assert (
        found["remedy"]
        == "Spread it over 8.00 m² (86.1 sq ft) or more; a structural engineer decides."
    )
    assert (found["who"], found["fact"]["key"]) == ("the house's engineer", "x.deck.Deck.load")


@pytest.mark.parametrize(("foot_kg", "verdict"), [(500.0, NOTED), (500.1, "short")])
def test_one_foot_is_held_against_the_largest_single_load(foot_kg: float, verdict: str) -> None:
    assert word(stage(), piece(foot_kg=foot_kg)) == verdict
    assert word(stage(point_load=value(standing="unknown")), piece(foot_kg=foot_kg)) == "ask"


# The pit cover carries 2 kPa: 8,000 N on 4 m², 815.77 kg. Half of the riser stands on it.
@pytest.mark.parametrize(("weight_kg", "verdict"), [(815.7, "fits, with a note"), (815.8, "short")])
def test_a_weaker_zone_binds_even_where_only_a_part_stands_on_it(
    weight_kg: float, verdict: str
) -> None:
    assert word(stage(PIT), piece(at=(0, 2), weight_kg=weight_kg)) == verdict


def test_off_the_weaker_zone_the_deck_binds_and_a_move_is_told() -> None:
    assert word(stage(PIT), piece(at=(0, 3), weight_kg=1000)) == "fits, with a note"
    assert (
        part(plotted(stage(PIT), piece("A", (0, 2.5), weight_kg=1000)), "A")["remedy"]
        == "Move it 500 mm (1'-7 1/2\") upstage."
    )


def test_a_stronger_zone_binds_in_place_of_the_deck_where_it_lies_under_all() -> None:
    pad = (item("zone", "Pad", load=value("20 kPa", 20000.0)), box(-2.0, 2.0, 3.0, 7.0))
    assert word(stage(pad), piece(weight_kg=4000)) == "fits, with a note"
    assert word(stage(pad), piece(at=(1.5, 5), weight_kg=4000)) == "short"


def test_what_a_floor_carries_is_asked_where_nobody_knows() -> None:
    found = plotted(stage(load=value(standing="unknown")), piece("A", weight_kg=100))
    assert found["verdict"] == "ask"
    assert (
        found["question"]
        == "What uniform load does Deck carry, by whose letter? (Act, rider line 5: A, 2 m wide.)"
    )


def test_a_limit_that_can_only_be_less_proves_a_shortage_and_no_fit() -> None:
    at_most = value("at most 5 kPa", most=5000.0)
    assert word(stage(load=at_most), piece(weight_kg=100)) == "ask"
    assert word(stage(load=at_most), piece(weight_kg=4000)) == "short"


def test_a_wing_holds_what_stands_in_it_with_its_own_limits() -> None:
    assert word(stage(WING), piece(at=(10, 3))) == "fits"
    assert word(stage(WING), piece(at=(10, 3), height_m=4.1)) == "short"
    # 3 kPa on 4 m² are 12,000 N, 1,223.7 kg.
    assert word(stage(WING), piece(at=(10, 3), weight_kg=1223)) == "fits, with a note"
    assert word(stage(WING), piece(at=(10, 3), weight_kg=1224)) == "short"
    assert word(stage(WING), piece(at=(10, 3), on="deck")) == "short"
    assert word(stage(WING), piece(at=(0, 3), on="stage left")) == "short"


def test_a_wing_with_a_step_is_told() -> None:
    low = (item("wing", "stage left", level_with_deck=value("no")), WING[1])
    assert (
        part(plotted(stage(low), piece("A", (10, 3))), "A")["reason"]
        == "The wing stage left is not level with the deck."
    )
    assert part(plotted(stage(low), piece("A", (8, 3))), "A")["verdict"] == "short"


def test_heights_over_a_wing_with_a_step_are_asked_for_they_are_published_from_the_deck() -> None:
    low = (
        item("wing", "stage left", level_with_deck=value("no"), clear_height=value("4 m", 4.0)),
        WING[1],
    )
    found = part(plotted(stage(low), piece("A", (10, 3), height_m=2.0)), "A")
    assert (found["verdict"], found["question"].split("?")[0]) == (
        "ask",
        "How high is the floor of this wing against the deck",
    )


def test_a_zone_out_of_service_takes_nothing_and_a_limited_one_is_told() -> None:
    for condition, verdict in (
        ("out of service", "short"),
        ("limited", NOTED),
        ("in service", "fits"),
    ):
        pit = (item("zone", "Pit cover", condition=condition), PIT[1])
        assert word(stage(pit), piece(at=(0, 1))) == verdict


def test_what_goes_nowhere_tells_how_much_smaller_it_would_have_to_be() -> None:
    # 20 m by 11 m on 16 m by 10 m.
    assert (
        part(plotted(stage(), piece("Wall", (0, 5), (20, 11))), "Wall")["remedy"]
        == "Make it smaller by 4.00 m (13'-1 1/2\") across and 1.00 m (3'-3 1/2\") in depth, or"
        " leave it off this stage."
    )


def test_what_is_too_large_for_its_wing_is_told_the_other() -> None:
    right = (item("wing", "stage right", level_with_deck=value("yes")), box(-16.0, -8.0, 0.0, 8.0))
    found = part(
        plotted(stage(WING, right), piece("Desk", (10, 3), (5, 5), on="stage left")), "Desk"
    )
    assert found["remedy"].startswith(
        "By its size it goes in the wing stage right. Make it smaller by 1.00 m (3'-3 1/2\") across"
    )


def test_across_the_edge_into_a_level_wing_is_asked() -> None:
    found = part(plotted(stage(WING), piece("A", (7.5, 3))), "A")
    assert (found["verdict"], found["reason"]) == (
        "ask",
        "It reaches 500 mm off the deck into the wing stage left.",
    )


def test_partly_in_a_wing_and_partly_on_nothing_is_short() -> None:
    assert word(stage(WING), piece(at=(7.5, 0.5))) == "short"


def test_a_wing_that_the_pack_lacks_is_asked() -> None:
    assert plotted(stage(), piece("A", on="stage right"))["question"].startswith(
        "How large is the wing stage right"
    )


def test_without_a_place_only_sizes_are_looked_at_and_the_rest_is_one_question() -> None:
    found = plotted(stage(), piece("A", None), piece("B", None), piece("C"))
    assert (found["verdict"], [each["title"] for each in found["parts"]]) == (
        "ask",
        ["2 without a place"],
    )
    assert (
        found["parts"][0]["reason"]
        == "The rider gives no place; only sizes were looked at. Together 8.00 m² are asked on the"
        " deck, which has 160 m²."
    )


# Each of 16 m by 2.6 m, 41.6 m²: two are 83.2 m², four are 166.4 m², and the deck has 160 m².
@pytest.mark.parametrize(
    ("strictnesses", "verdict", "area"),
    [
        (("must", "must", "should", "should"), "ask", "83.2 m²"),
        (("should", "should", "should", "should"), "short", "166 m²"),
        (("must", "must", "must", "must"), "short", "166 m²"),
    ],
)
def test_without_a_place_what_only_should_be_there_takes_no_floor_from_what_must(
    strictnesses: tuple[str, ...], verdict: str, area: str
) -> None:
    pieces = [
        piece(f"P{index}", None, (16.0, 2.6), strictness=strictness)
        for index, strictness in enumerate(strictnesses)
    ]
    (found,) = plotted(stage(), *pieces)["parts"]
    assert found["verdict"] == verdict
    assert area in found["reason"]


def test_a_stage_without_a_deck_is_asked_about_its_deck() -> None:
    empty = stage()
    empty["sections"][0]["items"] = []
    asked = plotted(empty, piece("A"))
    assert (asked["verdict"], asked["reason"]) == ("ask", NO_DECK)
    assert plotted({**empty, "sections": []}, piece("A"))["reason"] == NO_DECK


@pytest.mark.parametrize(("width_m", "verdict"), [(16.025, "ask"), (16.026, "short")])
def test_without_a_place_what_is_wider_than_the_deck_is_short(width_m: float, verdict: str) -> None:
    assert word(stage(), piece(at=None, size=(width_m, 1))) == verdict


def test_without_a_place_what_is_deeper_than_the_deck_may_be_turned() -> None:
    assert (
        part(plotted(stage(), piece("Wall", None, (1, 12))), "Wall")["remedy"]
        == "Turn it by a quarter."
    )


# 4 of 16 m by 2.6 m are 166.4 m²; the deck has 160 m².
def test_more_floor_than_the_deck_has_is_short_whatever_the_places() -> None:
    found = plotted(stage(), *(piece(f"R{index}", None, (16, 2.6)) for index in range(4)))
    assert (found["verdict"], found["margin"]) == ("short", ["−6.40 m²", "−68.9 sq ft"])


@pytest.mark.parametrize("condition", ["in service", "out of service"])
def test_a_deck_that_is_not_in_use_holds_nothing(condition: str) -> None:
    pack = stage()
    pack["sections"][0]["items"][0]["condition"] = condition
    assert word(pack, piece()) == ("fits" if condition == "in service" else "short")


def test_an_outline_that_nobody_drew_and_a_deck_that_is_not_there_are_asked() -> None:
    pack = stage()
    pack["sections"][0]["outlines"] = []
    assert plotted(pack, piece())["reason"] == "Deck: its outline is not drawn."
    assert word({**pack, "sections": []}, piece()) == "ask"
    assert (
        plotted(stage(configurations=a_list("Seated")), piece(), configuration="Standing")[
            "verdict"
        ]
        == "ask"
    )


def test_of_several_decks_the_one_that_takes_the_plot_is_chosen_and_named() -> None:
    pack = stage()
    pack["sections"][0]["items"].append(item("deck", "Thrust"))
    pack["sections"][0]["outlines"].append(outline("deck", "Thrust", box(-8.0, 8.0, -3.0, 10.0)))
    assert plotted(pack, piece("A", (0, -1)))["reason"].startswith("Thrust: 1 of 1 as asked: A.")


def test_what_is_as_long_as_the_deck_is_wide_is_turned_by_just_a_quarter() -> None:
    # 3 m by 16 m on a deck of 16 m by 10 m. At 91 degrees it would be 16 cos 1° + 3 sin 1° = 16.05
    # m wide.
    found = plotted(stage(), piece(at=None, size=(3.0, 16.0)))
    assert (found["verdict"], found["parts"][0]["remedy"]) == ("short", "Turn it by a quarter.")


def test_what_only_should_be_there_and_must_be_asked_about_leaves_the_show_as_it_is() -> None:
    open_one = piece("B", (5, 5), strictness="should", weight_kg=100.0)
    pack = stage(load=value(standing="unknown"))
    found = plotted(pack, piece("A", (0, 5)), open_one)
    assert (found["verdict"], found["strictness"]) == ("ask", "should")


def test_what_is_no_larger_than_the_deck_and_finds_no_place_beside_a_column_is_to_be_smaller() -> (
    None
):
    found = part(plotted(stage(COLUMN), piece("A", (0, 5), (15.0, 9.0))), "A")
    assert (found["verdict"], found["remedy"]) == ("short", SMALLER)


def test_of_several_decks_one_that_must_be_asked_about_is_better_than_one_that_is_too_small() -> (
    None
):
    wide = item("deck", "Wide", load=value(standing="unknown"))
    pack = stage((wide, box(-8.0, 8.0, 0.0, 10.0)), deck=box(-1.0, 1.0, 0.0, 2.0))
    assert word(pack, piece("A", (0, 5), weight_kg=100.0)) == "ask"


@pytest.mark.parametrize(("across_m", "is_past"), [(6.5, True), (-6.5, True), (6.0, False)])
def test_past_the_clear_width_is_noted_on_either_side(across_m: float, is_past: bool) -> None:
    # 2 m about 6.5 m reach to 7.5 m, half of 14 m is 7 m.
    found = plotted(stage(usable_width=value("14 m", 14.0)), piece("A", (across_m, 5)))
    past = [each for each in found["parts"] if "the clear width of 14.00 m" in each["reason"]]
    assert (past != []) == is_past


def test_where_nothing_stands_as_asked_no_name_is_told_as_good() -> None:
    found = plotted(stage(), piece("A", (8, 5)))
    assert found["reason"].startswith("Deck: 0 of 1 as asked; short: A.")


def test_a_deck_that_takes_all_is_better_than_one_too_small_for_what_may_give_way() -> None:
    wide = item("deck", "Wide", load=value("5 kPa", 5000.0))
    pack = stage((wide, box(-8.0, 8.0, 0.0, 10.0)), deck=box(-1.0, 1.0, 0.0, 2.0))
    assert word(pack, piece("A", (0, 5), strictness="should")) == "fits"


def test_past_what_is_clear_is_noted() -> None:
    found = plotted(stage(usable_depth=value("9 m", 9.0)), piece("A", (0, 8.5)))
    assert (
        found["parts"][0]["reason"]
        == "It reaches past the clear depth of 9.00 m, if that counts from the front edge."
    )
    assert word(stage(usable_depth=value("9 m", 9.0)), piece("A", (0, 8))) == "fits"


# A riser of 2 m about (0, 8), which stays, and one about (0, 6.5): 500 mm into each other.
@pytest.mark.parametrize(("stays", "verdict"), [("yes", "short"), ("no", None), ("", "ask")])
def test_what_stays_of_one_act_is_in_the_way_of_another(stays: str, verdict: str | None) -> None:
    headliner = rider(plot(piece("Drum riser", (0, 8), stays=stays)), act="Headliner")
    opener = rider(plot(piece("Opener's riser", (0, 6.5), stays="no")), act="Opener")
    day = [
        each
        for each in fit(stage(), [headliner, opener])["verdicts"]
        if each["title"] == "Stage plot of Opener beside what stays"
    ]
    assert [each["verdict"] for each in day] == ([verdict] if verdict else [])
    if verdict == "short":
        assert (
            day[0]["reason"]
            == "Opener's riser overlaps Drum riser of Headliner by 500 mm, which stays."
        )


def test_beside_what_stays_there_may_be_room_or_nobody_has_said_where() -> None:
    opener = rider(plot(piece("Opener's riser", (0, 2), stays="no")), act="Opener")
    for at, verdict in (((0.0, 8.0), "fits"), (None, "ask")):
        headliner = rider(plot(piece("Drum riser", at, stays="yes")), act="Headliner")
        assert fit(stage(), [headliner, opener])["verdicts"][-1]["verdict"] == verdict


def crowd(apart_m: float) -> list[Record]:
    """A hundred turned rectangles of 2 m by 1 m, ten by ten."""
    spots = [((index % 10 - 4.5) * apart_m, index // 10 * apart_m) for index in range(100)]
    return [
        piece(f"R{index}", spot, (2.0, 1.0), turned_deg=7.0 * index)
        for index, spot in enumerate(spots)
    ]


def compared(monkeypatch: pytest.MonkeyPatch, *pieces: Record) -> int:
    """How often two rectangles are compared exactly for a plot."""
    calls: list[int] = []

    def counted(one: Record, other: Record) -> float:
        calls.append(1)
        return overlap_m(one, other)

    for module in (rectangles, in_the_way, notes):
        monkeypatch.setattr(module, "overlap_m", counted)
    plotted(stage(deck=box(-20.0, 20.0, -5.0, 40.0)), *pieces)
    return len(calls)


def test_rectangles_that_are_far_apart_are_never_compared_exactly(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    assert compared(monkeypatch, *crowd(2.3)) == 0


def test_a_crowd_is_compared_exactly_only_with_who_is_near_and_for_few_moves(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    # At 1.5 m apart, a circle of 2.24 m about a centre holds 8 others: 800 near pairs, looked at
    # twice at most; each of 8 neighbours offers 4 moves, and each move ends at the first overlap:
    # the rest stays within ten times that many.
    assert 800 <= compared(monkeypatch, *crowd(1.5)) < 16000


def test_a_move_onto_a_floor_that_carries_less_is_not_told_as_one_that_mends() -> None:
    # The column of 1 m pushes 0.7 m; on either side lies a zone for 100 Pa, and 200 kg on 4 m² are
    # 490 Pa.
    weak = [
        (item("zone", name, load=value("100 Pa", 100.0)), box(*sides, -1.0, 11.0))
        for name, sides in (("L", (1.05, 9.0)), ("R", (-9.0, -1.05)))
    ]
    column = (item("obstruction", "Column"), box(-0.5, 0.5, 0.0, 10.0))
    found = part(plotted(stage(*weak, column), piece("A", (0, 5), weight_kg=200)), "A")
    assert found["reason"].startswith("Column stands")
    assert "Move it" not in found["remedy"]


def unsaid(name: str, *more: tuple[Record, list[list[float]]]) -> Record:
    """A stage that does not know of one of its lists what stands in it."""
    there = stage(*more)
    whole = item("whole", "Stage", **{name: value(standing="unknown")})
    there["sections"][0]["items"].append(whole)
    return there


def test_what_stands_is_asked_where_nobody_knows_what_is_in_the_way() -> None:
    found = plotted(unsaid("obstructions"), piece("A"))
    assert found["verdict"] == "ask"
    assert "What stands or hangs in the way" in found["parts"][0]["question"]
    assert word(unsaid("obstructions", COLUMN), piece(at=(1.0, 5))) == "short"


@pytest.mark.parametrize("weight_kg", [100.0, 9000.0])
def test_a_load_is_asked_where_the_floor_may_carry_less_or_more_in_parts(weight_kg: float) -> None:
    assert word(unsaid("zones"), piece(weight_kg=weight_kg)) == "ask"
    assert word(unsaid("zones"), piece(height_m=1.0)) == "fits"
