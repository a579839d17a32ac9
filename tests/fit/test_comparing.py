"""
One requirement against facts: the boundary from both sides, and every way of not having a value.
"""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.fit.margins import tolerance
from tests.fit.sample import RULES, Record, asks, item, pack, rider, value


def only(requirement: Record, **sections: list[Record]) -> Record:
    """The verdict on one requirement."""
    found: Record = fit(pack(**sections), [rider(requirement)])["verdicts"][0]
    return found


def deck(name: str = "Deck", **more: Record) -> Record:
    """A deck."""
    return item("deck", name, **more)


@pytest.mark.parametrize(
    ("house_m", "verdict"),
    [
        (12.0, "fits"),
        (11.976, "fits, with a note"),
        (11.974, "short"),
        (11.0, "short"),
        (30.0, "fits"),
    ],
)
def test_a_length_has_25_mm_for_rounding_and_no_more(house_m: float, verdict: str) -> None:
    found = only(asks("stage width", low=12.0), stage=[deck(usable_width=value("x", house_m))])
    assert found["verdict"] == verdict


def test_forty_feet_are_enough_for_a_rider_that_rounds_them_to_12_2_m() -> None:
    # 40 ft are exactly 12.192 m (yard and pound agreement of 1959).
    found = only(asks("stage width", low=12.2), stage=[deck(usable_width=value("40 ft", 12.192))])
    assert found["verdict"] == "fits, with a note"
    assert found["notes"] == ["Short by 8 mm, within the tolerance for rounding."]


@pytest.mark.parametrize(("house", "verdict"), [(2, "fits"), (1, "short"), (3, "fits")])
def test_a_count_has_no_tolerance(house: int, verdict: str) -> None:
    forklift = item(
        "vehicle", "Lift", kind=value("forklift"), count=value(str(house), float(house))
    )
    assert only(asks("forklifts", low=2.0), access=[forklift])["verdict"] == verdict


@pytest.mark.parametrize(("house_pa", "verdict"), [(7200.0, "fits"), (7199.0, "short")])
def test_what_is_limited_by_law_or_letter_has_no_tolerance(house_pa: float, verdict: str) -> None:
    assert (
        only(asks("deck load", low=7200.0), stage=[deck(load=value("x", house_pa))])["verdict"]
        == verdict
    )


@pytest.mark.parametrize(
    ("house_m", "verdict"), [(0.9, "fits"), (1.5, "fits"), (0.87, "short"), (1.53, "short")]
)
def test_a_height_between_two_limits_fails_on_both_sides(house_m: float, verdict: str) -> None:
    found = only(
        asks("deck height", "between", low=0.9, high=1.5), stage=[deck(height=value("x", house_m))]
    )
    assert found["verdict"] == verdict


def test_a_shortage_says_by_how_much_in_both_systems_what_would_mend_it_and_who_could() -> None:
    found = only(asks("stage width", low=12.0), stage=[deck(usable_width=value("11 m", 11.0))])
    assert found["reason"] == "Short by 1.00 m."
    assert found["margin"] == ["−1.00 m", "−3'-3 1/2\""]
    assert found["remedy"].startswith("Turn or leave out a riser")
    assert found["who"] == "the show, or hire"
    assert found["fact"]["key"] == "x.deck.Deck.usable_width"


def test_unknown_is_asked_and_the_rider_s_line_is_quoted() -> None:
    found = only(
        asks("stage width", low=12.0), stage=[deck(usable_width=value(standing="unknown"))]
    )
    assert found["verdict"] == "ask"
    assert (
        found["question"]
        == "What is the clear width of the deck, between what always stands there? (Act, rider line"
        " 3: stage width, at least.)"
    )


@pytest.mark.parametrize(
    "sections",
    [
        {},
        {"stage": []},
        {"stage": [deck()]},
        {"stage": [deck(usable_width=value(standing="not stated"))]},
    ],
)
def test_what_nobody_said_is_asked(sections: dict[str, list[Record]]) -> None:
    assert only(asks("stage width", low=12.0), **sections)["verdict"] == "ask"


def test_none_is_short() -> None:
    assert (
        only(asks("stage width", low=12.0), stage=[deck(usable_width=value(standing="none"))])[
            "verdict"
        ]
        == "short"
    )


def test_no_vehicles_at_all_is_short() -> None:
    whole = item("whole", "Access", vehicles=value(standing="none"))
    assert only(asks("forklifts", low=1.0), access=[whole])["verdict"] == "short"


def test_no_dock_above_the_road_is_a_height_of_zero() -> None:
    dock = item("dock", "Door", height=value(standing="none"))
    assert only(asks("dock height", low=1.1), access=[dock])["reason"] == "Short by 1.10 m."
    assert only(asks("dock height", "at most", high=0.2), access=[dock])["verdict"] == "fits"


def test_a_dock_without_a_door_does_not_limit_its_width() -> None:
    dock = item("dock", "Ramp", door_width=value(standing="none"))
    assert only(asks("dock door width", low=2.4), access=[dock])["verdict"] == "fits"


def test_how_many_of_how_many_are_out_is_a_note() -> None:
    wedges = {"kind": value("wedge"), "count": value("14", 14.0), "working": value("13", 13.0)}
    some = item("monitor", "Quarrel", state="1 of 14 out of service", note="No horn.", **wedges)
    found = only(asks("wedges", low=12.0), sound=[{**some, "condition": "limited"}])
    assert found["notes"] == ["Quarrel: 1 of 14 out of service. No horn."]
    plain = item("monitor", "Quarrel", state="1 of 14 out of service", **wedges)
    assert only(asks("wedges", low=12.0), sound=[plain])["notes"] == [
        "Quarrel: 1 of 14 out of service."
    ]


def test_an_old_check_and_a_limited_item_are_notes() -> None:
    old = deck(
        usable_width=value(
            "14 m",
            14.0,
            stale=True,
            checked="2019-01-01 by crew, memory, 2,567 days before this revision",
        )
    )
    old |= {"condition": "limited", "note": "Boards are soft."}
    found = only(asks("stage width", low=12.0), stage=[old])
    assert found["verdict"] == "fits, with a note"
    assert found["notes"] == [
        "Deck is limited: Boards are soft.",
        "Old check: 2019-01-01 by crew, memory, 2,567 days before this revision.",
    ]


def test_a_fact_that_was_never_checked_is_a_note() -> None:
    assert (
        only(
            asks("stage width", low=12.0),
            stage=[deck(usable_width=value("14 m", 14.0, checked=""))],
        )["verdict"]
        == "fits, with a note"
    )


@pytest.mark.parametrize("more", [{"condition": "out of service"}, {"terms": "not for visitors"}])
def test_what_a_visitor_cannot_use_does_not_count(more: dict[str, str]) -> None:
    broken = {**deck(usable_width=value("14 m", 14.0)), **more}
    assert only(asks("stage width", low=12.0), stage=[broken])["verdict"] == "short"


def test_only_some_decks_that_do_are_named() -> None:
    wide, narrow = (
        deck("Wide", usable_width=value("14 m", 14.0)),
        deck("Narrow", usable_width=value("9 m", 9.0)),
    )
    found = only(asks("stage width", low=12.0), stage=[narrow, wide])
    assert found["verdict"] == "fits, with a note"
    assert found["notes"] == ["Only in: Wide."]


def test_low_steel_that_some_beams_have_names_them() -> None:
    beams = [
        item("beam", name, **{"lowest-steel": value("x", height_m)})
        for name, height_m in (("Front", 9.4), ("Hall", 8.1), ("Back", 8.6))
    ]
    found = only(asks("low steel", low=8.53), rigging=beams)
    assert found["verdict"] == "fits, with a note"
    assert found["notes"] == ["Only under: Front, Back."]


def test_every_wing_must_be_level_not_one_of_them() -> None:
    level, lower = (
        item("wing", "stage left", level_with_deck=value("yes", 1.0)),
        item("wing", "stage right", level_with_deck=value("no", 0.0)),
    )
    assert only(asks("level wings", "is", words="yes"), stage=[level, lower])["verdict"] == "short"
    assert only(asks("level wings", "is", words="yes"), stage=[level])["verdict"] == "fits"


def test_what_the_show_brings_is_not_needed() -> None:
    assert only(asks("stage width", low=12.0, carried="show"), stage=[])["verdict"] == "not needed"


def test_an_amount_that_the_rider_does_not_know_is_asked() -> None:
    assert (
        only(asks("stage width", "unknown"), stage=[deck(usable_width=value("14 m", 14.0))])[
            "verdict"
        ]
        == "ask"
    )


@pytest.mark.parametrize(
    ("said", "wish", "verdict"),
    [
        ("yes", "yes", "fits"),
        ("by arrangement", "yes", "fits, with a note"),
        ("no", "yes", "short"),
        ("no", "no", "fits"),
        ("yes", "no", "fits"),
    ],
)
def test_an_effect_is_allowed_by_arrangement_or_not(said: str, wish: str, verdict: str) -> None:
    assert (
        only(asks("haze", "is", words=wish), house=[item("effect", "haze", allowed=value(said))])[
            "verdict"
        ]
        == verdict
    )


def test_a_sum_that_may_be_larger_is_asked_and_one_that_is_large_enough_fits() -> None:
    known = item("riser", "A", rolling=value("yes"), count=value("2", 2.0))
    unknown = item("riser", "B", rolling=value("yes"), count=value(standing="unknown"))
    assert only(asks("rolling risers", low=3.0), stage=[known, unknown])["verdict"] == "ask"
    assert only(asks("rolling risers", low=2.0), stage=[known, unknown])["verdict"] == "fits"
    assert only(asks("rolling risers", low=3.0), stage=[known])["verdict"] == "short"


def test_a_figure_that_can_only_be_less_never_fits() -> None:
    free = deck(usable_width=value("at most 14 m", most=14.0))
    assert only(asks("stage width", low=12.0), stage=[free])["verdict"] == "ask"
    assert only(asks("stage width", low=15.0), stage=[free])["verdict"] == "short"


def test_alternatives_take_the_best() -> None:
    dock = item("dock", "Door", height=value("0.2 m", 0.2))
    lift = item("vehicle", "Lift", kind=value("forklift"), count=value("1", 1.0))
    parts = [asks("dock height", low=1.1), asks("forklifts", low=1.0)]
    found = only(
        {**asks("dock height"), "sort": "any", "any": parts, "title": "Dock or forklift"},
        access=[dock, lift],
    )
    assert found["verdict"] == "fits"
    assert found["reason"] == "forklifts, at least: Exactly enough."


def test_a_should_that_is_short_does_not_make_the_show_short() -> None:
    house = pack(stage=[deck(usable_width=value("9 m", 9.0))])
    should = fit(house, [rider(asks("stage width", low=12.0, strictness="should"))])
    assert should["verdict"] == "fits, with a note"
    assert fit(house, [rider(asks("stage width", low=12.0))])["verdict"] == "short"


def test_the_opening_to_the_deck_is_not_told_from_a_way_to_the_hall_floor() -> None:
    to_deck = item(
        "route", "To the deck", leads_to=value("deck"), tightest_width=value("2.1 m", 2.1)
    )
    to_hall = item(
        "route",
        "To the hall",
        leads_to=value("audience floor"),
        tightest_width=value("2.4 m", 2.4),
    )
    assert only(asks("opening width", low=2.3), access=[to_deck, to_hall])["verdict"] == "short"
    assert only(asks("opening width", low=2.3), access=[to_hall])["verdict"] == "ask"


def test_no_shore_power_is_no_outlet_for_buses() -> None:
    found = only(
        asks("shore outlets", low=2.0),
        power=[item("rules", "House rules on power", shore_power=value(standing="none"))],
    )
    assert (found["verdict"], found["reason"]) == ("short", "The house has none.")


def test_a_point_whose_rating_nobody_knows_makes_no_fit_and_no_shortage() -> None:
    rated, unrated = (
        item("point", "R1", limit=value("500 kg", 500.0)),
        item("point", "R2", limit=value(standing="unknown")),
    )
    assert only(asks("points", low=1.0), rigging=[rated, unrated])["verdict"] == "fits"
    found = only(asks("points", low=2.0), rigging=[rated, unrated])
    assert (found["verdict"], found["reason"]) == (
        "ask",
        "The house has not said all of it: 1 are known.",
    )
    assert only(asks("points", low=2.0), rigging=[rated, rated])["verdict"] == "fits"
    assert only(asks("points", low=3.0), rigging=[rated, unrated])["verdict"] == "short"


def test_what_two_acts_ask_alike_is_one_question_that_quotes_both() -> None:
    riders = [
        rider(asks("stage width", low=low, line=line), act=act)
        for act, low, line in (("A", 12.0, 4), ("B", 10.0, 7))
    ]
    questions = fit(pack(stage=[]), riders)["questions"]
    assert [each["department"] for each in questions] == ["stage"]
    ask = "What is the clear width of the deck, between what always stands there?"
    assert questions[0]["questions"] == [
        f"{ask} (A, rider line 4: stage width, at least; B, rider line 7: stage width, at least.)"
    ]


@pytest.mark.parametrize(
    ("house_m", "reason", "margin"),
    [
        (
            12.0003,
            "less than 1 mm to spare.",
            ["less than 1 mm to spare", 'less than 1/2" to spare'],
        ),
        (12.003, "3 mm to spare.", ["+3 mm", 'less than 1/2" to spare']),
        (11.9997, "Within the tolerance.", ["less than 1 mm short", 'less than 1/2" short']),
        (12.0, "Exactly enough.", ["0.00 m", '0"']),
    ],
)
def test_a_margin_too_small_to_print_is_told_in_words(
    house_m: float, reason: str, margin: list[str]
) -> None:
    found = only(asks("stage width", low=12.0), stage=[deck(usable_width=value("x", house_m))])
    assert (found["reason"], found["margin"]) == (reason, margin)


def test_an_amount_that_the_rider_does_not_know_is_asked_of_the_act_with_what_the_house_has() -> (
    None
):
    split = item("split", "Split", ways=value("56", 56.0))
    found = only(asks("inputs", "unknown"), sound=[split])
    assert (found["verdict"], found["fact"]["text"], found["margin"]) == ("ask", "56", ["", ""])
    assert (
        found["act_question"]
        == "Act, rider line 3: inputs. How many do you need? The house has 56."
    )
    longer = only(asks("stage width", "unknown"), stage=[deck(usable_width=value("14 m", 14.0))])
    assert (
        longer["act_question"]
        == "Act, rider line 3: stage width. How much do you need? The house has 14 m."
    )
    haze = only(
        asks("haze", "unknown"), house=[item("effect", "haze", allowed=value("by arrangement"))]
    )
    assert haze["act_question"].endswith("Do you need it? The house says by arrangement.")


@pytest.mark.parametrize(
    "sections",
    [{}, {"sound": []}, {"sound": [item("split", "Split", ways=value(standing="unknown"))]}],
)
def test_an_amount_that_neither_side_knows_is_asked_of_the_house(
    sections: dict[str, list[Record]],
) -> None:
    assert only(asks("inputs", "unknown"), **sections)["question"].startswith(
        "How many input lines are there"
    )


def test_of_stock_those_count_that_work_and_all_where_the_line_does_not_say() -> None:
    # 13 of 14, all 4, nobody knows how many of 10, none of what is out of service: 17 are known.
    fourteen = item(
        "stock", "A", kind=value("microphone"), count=value("14", 14.0), working=value("13", 13.0)
    )
    four = item("stock", "B", kind=value("microphone"), count=value("4", 4.0))
    ten = item(
        "stock",
        "C",
        kind=value("microphone"),
        count=value("10", 10.0),
        working=value(standing="unknown"),
    )
    out = item(
        "stock", "D", condition="out of service", kind=value("microphone"), count=value("5", 5.0)
    )
    stand = item("stock", "E", kind=value("stand"), count=value("30", 30.0))
    there = {"sound": [fourteen, four, ten, out, stand]}
    assert only(asks("microphones", low=17.0), **there)["fact"]["text"] == "17"
    assert only(asks("microphones", low=17.0), **there)["verdict"] == "fits, with a note"
    assert only(asks("microphones", low=18.0), **there)["verdict"] == "ask"
    assert only(asks("microphones", low=18.0), sound=[fourteen, four, out])["verdict"] == "short"


def test_wedges_of_two_models_are_not_matched() -> None:
    # The larger line has 13 that work; 13 and 8 of another model make no 14 alike.
    lines = [("A", "wedge", 14.0, 13.0), ("B", "wedge", 8.0, 8.0), ("C", "side fill", 20.0, 20.0)]
    stock = [
        item(
            "monitor", name, kind=value(kind), count=value("x", count), working=value("y", working)
        )
        for name, kind, count, working in lines
    ]
    assert only(asks("wedges", low=13.0), sound=stock)["verdict"] == "fits"
    assert only(asks("wedges", low=14.0), sound=stock)["verdict"] == "short"


def test_ways_that_do_not_work_are_told_with_the_inputs() -> None:
    split = item("split", "Split", ways=value("56", 56.0))
    box, dark = (
        item("dropbox", "A", note="Bent shell.", dead=value("11")),
        item("dropbox", "B", condition="out of service"),
    )
    found = only(asks("inputs", low=48.0), sound=[split, box, dark])
    assert (found["verdict"], found["notes"]) == (
        "fits, with a note",
        ["A, ways that do not work: 11. Bent shell.", "B is out of service."],
    )
    assert only(asks("inputs", low=48.0), sound=[split, item("dropbox", "A")])["verdict"] == "fits"
    closed = item("dropbox", "A", terms="not for visitors")
    found = only(asks("inputs", low=48.0), sound=[split, closed])
    assert (found["verdict"], found["notes"]) == (
        "fits, with a note",
        ["A: It is not for visitors."],
    )
    assert only(asks("inputs", low=57.0), sound=[split, box])["notes"] == []


def test_of_two_decks_one_that_must_be_asked_about_is_better_than_one_that_is_too_small() -> None:
    small = deck("Small", usable_width=value("11.9 m", 11.9))
    unknown = deck("Unknown", usable_width=value(standing="unknown"))
    for decks in ([small, unknown], [unknown, small]):
        assert only(asks("stage width", low=12.0), stage=decks)["verdict"] == "ask"


@pytest.mark.parametrize(
    ("kind", "tolerated"),
    [
        *[("mass", 5.0), ("load", 5.0), ("area", 5.0), ("length", 0.025)],
        *[("count", 0.0), ("duration", 0.0), ("level", 0.0), ("current", 0.0)],
    ],
)
def test_rounding_may_cost_half_a_percent_of_a_weight_load_or_area_and_nothing_of_a_count(
    kind: str, tolerated: float
) -> None:
    rule: Any = {**RULES[0], "kind": kind, "legal": False}
    assert tolerance(rule, 1000.0) == pytest.approx(tolerated)
    assert tolerance({**rule, "legal": True}, 1000.0) == 0


@pytest.mark.parametrize(("wanted", "told"), [(2.0, True), (3.0, False)])
def test_what_is_said_of_things_that_are_added_up_is_told_where_they_are_enough(
    wanted: float, told: bool
) -> None:
    forklift = item(
        "vehicle",
        "Lift",
        condition="limited",
        note="lifts 1 m at most",
        kind=value("forklift"),
        count=value("2", 2.0),
    )
    found = only(asks("forklifts", low=wanted), access=[forklift])
    assert any("lifts 1 m at most" in note for note in found["notes"]) == told


def test_one_line_that_is_enough_is_the_fact_and_two_are_told_together() -> None:
    def lift(name: str, count: float) -> Record:
        return item("vehicle", name, kind=value("forklift"), count=value(f"{count:g}", count))

    one = only(asks("forklifts", low=2.0), access=[lift("Old", 2.0)])["fact"]
    both = only(asks("forklifts", low=2.0), access=[lift("Old", 2.0), lift("New", 3.0)])["fact"]
    assert (one["item"], one["text"]) == ("Old", "2")
    assert (both["item"], both["text"]) == ("2 together", "5")
