"""
What the house sets stands at one value for plots, trucks, sums and needs of one show alike.
"""

from itertools import product
from random import Random
from typing import Any

import pytest

from builder.fit.arrangements.telling import fare_of
from builder.fit.interpreter import fit
from tests.fit.plot_pairs import box
from tests.fit.sample import Record, asks, item, pack, rider, value
from tests.fit.stages import piece, plot, stage
from tests.laws import share


def set_from(least: float, most: float, unit: str = " m") -> Record:
    """A value that is set anywhere between two ends."""
    text = f"set from {least:g}{unit} to {most:g}{unit}"
    return value(text, None, least=least, most=most, can_be_set=True)


def set_to(*choices: float, unit: str = " m") -> Record:
    """A value that is set to one of some."""
    text = f"set to {' or '.join(f'{each:g}{unit}' for each in choices)}"
    ends = {"least": choices[0], "most": choices[-1]}
    return value(text, None, **ends, can_be_set=True, settings=list(choices))


def words(result: Any) -> list[str]:
    """The words of all verdicts."""
    return [answer["verdict"] for answer in result["verdicts"]]


def trucks(**sizes: float) -> Record:
    """Trucks and the largest case, of sizes in metres."""
    blank = dict.fromkeys(
        ("length", "height", "weight", "case_width", "case_height", "case_weight")
    )
    return {
        **asks("trucks", sort="trucks", department="access"),
        **blank,
        "count": 1.0,
        "length_of": "whole truck",
        **sizes,
    }


def way_in(**limits: Record) -> list[Record]:
    """A road of these limits, its dock, and a route to the deck."""
    leads = {"from_dock": value("Dock"), "leads_to": value("deck")}
    return [
        item("approach", "Road", **limits),
        item("dock", "Dock", approach=value("Road"), height=set_from(0.8, 1.4)),
        item("route", "In", **leads),
    ]


# Stage plots.


def test_a_plot_sets_the_clear_height_that_its_highest_piece_needs_and_tells_it() -> None:
    house = stage(clear_height=set_from(4.0, 8.0))
    show = rider(plot(piece("Tower", height_m=6.0), piece("Low", at=(4.0, 5.0), height_m=1.0)))
    result = fit(house, [show])
    assert words(result) == ["fits, with a note"]
    assert result["judged_in"] == ["Set for this show: Deck, clear_height: 6.00 m (19'-8\")."]
    (tower, _) = result["verdicts"][0]["parts"]
    assert tower["reason"] == "Deck, clear_height: set to 6.00 m."
    assert result["verdicts"][0]["leans_on"] == ["x.deck.Deck.clear_height"]


@pytest.mark.parametrize(("height_m", "word"), [(4.0, "fits"), (8.1, "short"), (None, "fits")])
def test_a_plot_that_any_setting_takes_or_none_sets_nothing(
    height_m: float | None, word: str
) -> None:
    result = fit(stage(clear_height=set_from(4.0, 8.0)), [rider(plot(piece(height_m=height_m)))])
    assert words(result) == [word]
    assert result["judged_in"] == []


def test_a_screen_that_is_set_goes_above_what_stands_under_it() -> None:
    screen = (item("obstruction", "Screen", from_height=set_to(3.0, 5.0)), box(-2.0, 2.0, 4.0, 6.0))
    under, beside = piece(height_m=4.0), piece(at=(6.0, 5.0), height_m=4.0)
    result = fit(stage(screen), [rider(plot(under))])
    assert result["judged_in"] == ["Set for this show: Screen, from_height: 5.00 m (16'-5\")."]
    assert words(fit(stage(screen), [rider(plot(beside))])) == ["fits"]
    assert words(fit(stage(screen), [rider(plot(piece(height_m=5.5)))])) == ["short"]


@pytest.mark.parametrize(
    ("height_m", "word"), [(3.0, "fits"), (4.0, "ask"), (5.2, "short"), (None, "fits, with a note")]
)
def test_a_screen_that_nobody_knows_exactly_is_read_at_both_ends(
    height_m: float | None, word: str
) -> None:
    low = value("3 m to 5 m", None, least=3.0, most=5.0)
    screen = (item("obstruction", "Screen", from_height=low), box(-2.0, 2.0, 4.0, 6.0))
    assert words(fit(stage(screen), [rider(plot(piece(height_m=height_m)))])) == [word]


def test_a_plot_and_a_need_that_want_two_heights_of_a_deck_do_not_both_fit() -> None:
    # The wing's clear height is asked by a rule as well as by what stands in the wing.
    level = {"level_with_deck": value("yes")}
    wing = item("wing", "stage left", clear_height=set_from(3.0, 6.0), **level)
    house = stage((wing, box(8.0, 12.0, 0.0, 10.0)))
    tall = plot(piece("Tower", at=(10.0, 5.0), height_m=5.0, on="stage left"))
    low = asks("wing height stage left", "at most", high=4.0)
    assert words(fit(house, [rider(tall)])) == ["fits, with a note"]
    assert words(fit(house, [rider(low)])) == ["fits, with a note"]
    assert sorted(words(fit(house, [rider(tall, low)]))) == ["fits, with a note", "short"]


# Trucks.


def test_trucks_set_the_limits_of_the_way_that_they_take_and_tell_them() -> None:
    house = pack(
        access=way_in(longest_truck=set_from(12.0, 18.0), lowest_clearance=set_to(3.5, 4.2))
    )
    result = fit(house, [rider(trucks(length=16.5, height=4.0))])
    assert words(result) == ["fits, with a note"]
    assert result["judged_in"] == [
        "Set for this show: Road, longest_truck: 16.50 m (54'-1 1/2\");"
        " Road, lowest_clearance: 4.20 m (13'-9 1/2\")."
    ]
    assert "Road, longest_truck: set to 16.50 m." in result["verdicts"][0]["notes"]
    assert words(fit(house, [rider(trucks(length=12.0, height=3.5))])) == ["fits"]
    assert words(fit(house, [rider(trucks(length=18.5))])) == ["short"]


def test_a_way_that_is_closed_sets_nothing() -> None:
    road, dock, route = way_in(longest_truck=set_from(12.0, 18.0))
    house = pack(access=[road, {**dock, "condition": "out of service"}, route])
    result = fit(house, [rider(trucks(length=16.5))])
    assert words(result) == ["short"]
    assert result["judged_in"] == []


# What adds up.


def risers(*counts: Record) -> Record:
    """A house with rolling risers on so many lines."""
    rolling = {"rolling": value("yes")}
    return pack(
        stage=[
            item("riser", f"Riser {number}", count=count, **rolling)
            for number, count in enumerate(counts)
        ]
    )


def test_a_sum_sets_what_the_other_lines_leave_to_it() -> None:
    house = risers(value("4", 4.0), set_from(0, 6, ""))
    result = fit(house, [rider(asks("rolling risers", low=7.0))])
    assert words(result) == ["fits, with a note"]
    assert result["judged_in"] == ["Set for this show: Riser 1, count: 3."]
    assert result["verdicts"][0]["notes"] == ["Riser 1, count: set to 3."]
    assert words(fit(house, [rider(asks("rolling risers", low=4.0))])) == ["fits"]
    assert words(fit(house, [rider(asks("rolling risers", low=11.0))])) == ["short"]


def test_two_lines_of_a_sum_are_set_together() -> None:
    result = fit(
        risers(set_to(1, 3, unit=""), set_to(2, 5, unit="")),
        [rider(asks("rolling risers", low=8.0))],
    )
    assert result["judged_in"] == ["Set for this show: Riser 0, count: 3; Riser 1, count: 5."]


def test_what_acts_ask_together_is_set_for_the_day() -> None:
    house = risers(set_from(2, 6, ""))
    riders = [rider(asks("rolling risers", low=2.0, act=act), act=act) for act in ("One", "Two")]
    result = fit(house, riders)
    assert words(result) == ["fits, with a note"] * 3
    assert result["judged_in"] == ["Set for this show: Riser 0, count: 4."]


def test_what_stays_on_deck_sets_the_depth_though_each_act_alone_needs_no_choice() -> None:
    house = pack(stage=[item("deck", "Deck", usable_depth=set_from(6.0, 10.0))])
    riders = [
        rider(asks("stage depth", low=5.0, act="One"), act="One", stays_m=0.0),
        rider(act="Two", stays_m=1.5),
    ]
    # 5 m for the act, 1.5 m that stays, and the aisle of 0.9 m between.
    assert fit(house, riders)["judged_in"] == [
        "Set for this show: Deck, usable_depth: 7.40 m (24'-3 1/2\")."
    ]


@pytest.mark.parametrize(
    ("depth", "word"),
    [
        (value("8 to 9 m", None, least=8.0, most=9.0), "fits"),
        (value("7 to 9 m", None, least=7.0, most=9.0), "ask"),
        (value("6 to 7 m", None, least=6.0, most=7.0), "short"),
        (value("at least 7 m", None, least=7.0), "ask"),
        (value("up to 7 m", None, most=7.0), "short"),
    ],
)
def test_a_depth_in_front_that_is_known_in_part_is_read_at_both_ends(
    depth: Record, word: str
) -> None:
    house = pack(stage=[item("deck", "Deck", usable_depth=depth)])
    riders = [
        rider(asks("stage depth", low=5.0, act="One"), act="One", stays_m=0.0),
        rider(act="Two", stays_m=1.5),
    ]
    assert words(fit(house, riders))[-1] == word


# Laws.


def a_choice(dice: Random, least: int, most: int) -> tuple[Record, list[float]]:
    """A value in halves that is set, and exact ones that it may be set to."""
    low = dice.randint(2 * least, 2 * most - 2)
    high = dice.randint(low + 1, 2 * most)
    if dice.random() < 0.6:
        return set_from(low / 2, high / 2), [step / 4 for step in range(2 * low, 2 * high + 1)]
    choices = sorted({low / 2, dice.randint(low, high) / 2, high / 2})
    return set_to(*choices), choices


def a_house(clear: Record, screen: Record, road: Record, count: Record) -> Record:
    """A house with a deck, a screen over half of it, a road, and rolling risers on two lines."""
    over = (item("obstruction", "Screen", from_height=screen), box(-8.0, 0.0, 0.0, 10.0))
    rolling = {"rolling": value("yes")}
    more = [
        (item("riser", "One", count=value("3", 3.0), **rolling), []),
        (item("riser", "Two", count=count, **rolling), []),
    ]
    house = stage(over, *more, clear_height=clear)
    access = pack(access=way_in(longest_truck=road))["sections"]
    return {**house, "sections": [*house["sections"], *access]}


def a_show(dice: Random) -> Record:
    """A show with a plot of two, trucks and risers, some of which only should be there."""

    def must() -> str:
        return dice.choice(["must", "must", "should"])

    plots = plot(
        piece("A", at=(-4.0, 5.0), height_m=dice.randint(4, 18) / 2, strictness=must()),
        piece("B", at=(4.0, 5.0), height_m=dice.randint(4, 18) / 2, strictness=must()),
    )
    return rider(
        plots,
        {**trucks(length=dice.randint(20, 40) / 2), "strictness": must()},
        asks("rolling risers", low=float(dice.randint(2, 9)), strictness=must()),
        asks("rolling risers", low=float(dice.randint(2, 9)), strictness=must()),
        asks("dock height", "between", low=1.0, high=1.2),
    )


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(range(1000), law="the best for plots and sums", usually=10))
def test_a_show_fares_as_at_the_best_exact_values_of_all_that_it_reads(seed: int) -> None:
    dice = Random(seed)
    clear, heights = a_choice(dice, 2, 9)
    screen, lows = a_choice(dice, 2, 9)
    road, lengths = a_choice(dice, 10, 20)
    counts = [float(each) for each in sorted({dice.randint(0, 3), dice.randint(4, 7)})]
    count = set_to(*counts, unit="")
    show = [a_show(dice)]

    def fare(*values: Record) -> tuple[int, int, int]:
        return fare_of(fit(a_house(*values), show)["verdicts"])

    # Each is read by needs of its own, but for the two heights, which one plot reads.
    # Heights turn at halves, so every second of many samples tells the same.
    samples = [each[::2] if len(each) > 3 else each for each in (heights, lows)]
    exact = [
        fare(value("x", one), value("x", other), road, count) for one, other in product(*samples)
    ]
    whole = fare(clear, screen, road, count)
    assert whole == min(exact)
    assert whole == min(fare(clear, screen, value("x", each), count) for each in lengths)
    assert whole == min(fare(clear, screen, road, value("x", each)) for each in counts)
