"""
Clock, level, trucks, power at the same time, and days with several acts; each on both sides of its
boundary.
"""

import pytest

from builder.fit.clock.times import holds_on
from builder.fit.interpreter import fit
from tests.fit.sample import Record, a_list, asks, item, pack, rider, value


def first(requirement: Record, **sections: list[Record]) -> Record:
    """The verdict on one requirement."""
    found: Record = fit(pack(**sections), [rider(requirement)])["verdicts"][0]
    return found


def ends(hour: float, day: str = "tuesday") -> Record:
    """A show that ends at an hour."""
    return {**asks("x"), "sort": "ends", "time_s": hour * 3600, "day": day}


def curfew(days: str, hour: float, strictness: str = "hard") -> Record:
    """A curfew."""
    return item("curfew", days, music_ends=value("x", hour * 3600), strictness=value(strictness))


@pytest.mark.parametrize(
    ("hour", "verdict"), [(22.5, "fits"), (22.0, "fits"), (22 + 31 / 60, "short"), (0.5, "short")]
)
def test_a_show_must_end_by_the_curfew_and_after_midnight_is_later(
    hour: float, verdict: str
) -> None:
    assert first(ends(hour), house=[curfew("Sunday to Thursday", 22.5)])["verdict"] == verdict


def test_a_curfew_after_midnight_is_on_the_evening_before() -> None:
    assert (
        first(ends(23.5), house=[curfew("every day", 0.5)])["reason"]
        == "60 min before the curfew at 00:30."
    )


def test_a_soft_curfew_that_is_passed_is_asked() -> None:
    assert first(ends(23.0), house=[curfew("every day", 22.5, "soft")])["verdict"] == "ask"


def test_a_curfew_that_nobody_calls_hard_or_soft_is_asked_when_it_is_passed() -> None:
    open_curfew = item("curfew", "every day", music_ends=value("x", 22.5 * 3600))
    assert first(ends(22.5), house=[open_curfew])["verdict"] == "fits"
    late = first(ends(23.0), house=[open_curfew])
    assert late["verdict"] == "ask"
    assert late["reason"].endswith("Whether somebody may extend it is not said.")


def test_a_rider_without_a_day_is_asked_only_where_the_days_differ() -> None:
    both = [curfew("Sunday to Thursday", 22.5), curfew("Friday and Saturday", 23.5)]
    assert first(ends(23.0, ""), house=both)["verdict"] == "ask"
    assert first(ends(22.0, ""), house=both)["verdict"] == "fits"
    assert first(ends(23.75, ""), house=both)["verdict"] == "short"


def test_a_curfew_in_words_that_name_no_days_is_asked() -> None:
    assert first(ends(22.0), house=[curfew("term time", 23.0)])["verdict"] == "ask"


@pytest.mark.parametrize(
    ("words", "day", "holds"),
    [
        ("Sunday to Thursday", "sunday", "yes"),
        ("Sunday to Thursday", "friday", "no"),
        ("Friday and Saturday", "saturday", "yes"),
        ("Monday, Wednesday", "tuesday", "no"),
        ("Friday to Monday", "friday", "yes"),
        ("Friday to Monday", "monday", "yes"),
        ("Friday to Monday", "tuesday", "no"),
        ("Friday to Monday", "thursday", "no"),
        ("Tuesday to Thursday", "tuesday", "yes"),
        ("Tuesday to Thursday", "thursday", "yes"),
        ("Tuesday to Thursday", "monday", "no"),
        ("every day", "monday", "yes"),
        ("school holidays", "monday", "unclear"),
    ],
)
def test_words_for_days_are_read_or_said_to_be_unclear(words: str, day: str, holds: str) -> None:
    assert holds_on(words, day) == holds


def level(db: float, **more: object) -> Record:
    """A wished level, whole unless told otherwise."""
    whole = {
        "sort": "level",
        "level_db": db,
        "weighting": "A",
        "metric": "equivalent level",
        "over_s": 900.0,
        "place": "mix position",
    }
    return {**asks("x"), **whole, **more}


def limit(
    text: str,
    db: float,
    *,
    over_s: float = 900.0,
    place: str = "mix position",
    metric: str = "equivalent level",
) -> Record:
    """A noise limit."""
    return item(
        "noise",
        "Limit",
        level=value(text, db),
        metric=value(metric),
        over=value("x", over_s),
        measured_at=value(place),
    )


@pytest.mark.parametrize(
    ("db", "verdict"), [(98.0, "fits"), (98.1, "short"), (105.0, "short"), (90.0, "fits")]
)
def test_a_level_against_a_limit_of_the_same_terms_has_no_tolerance(
    db: float, verdict: str
) -> None:
    assert first(level(db), house=[limit("98 dB(A)", 98.0)])["verdict"] == verdict


def test_a_wish_above_the_limit_says_by_how_much_and_that_hiring_does_not_help() -> None:
    found = first(level(105.0), house=[limit("98 dB(A)", 98.0)])
    assert found["reason"] == "Above the limit of 98 dB(A) by 7.0 dB."
    assert "Hiring a larger system does not help" in found["remedy"]


@pytest.mark.parametrize(
    "lacks", [{"weighting": ""}, {"metric": ""}, {"over_s": None}, {"place": ""}]
)
def test_an_ambiguous_level_is_asked_never_guessed(lacks: dict[str, object]) -> None:
    assert first(level(60.0, **lacks), house=[limit("98 dB(A)", 98.0)])["verdict"] == "ask"


@pytest.mark.parametrize(
    "other",
    [
        limit("98 dB(C)", 98.0),
        limit("98 dB(A)", 98.0, metric="peak level"),
        limit("98 dB(A)", 98.0, place="the neighbour's window"),
        limit("98 dB", 98.0),
        limit("98 dB(A)", 98.0, metric=""),
        limit("98 dB(A)", 98.0, place=""),
    ],
)
def test_a_limit_in_other_terms_is_asked(other: Record) -> None:
    assert first(level(80.0), house=[other])["verdict"] == "ask"


def test_a_mean_over_a_longer_time_than_the_limit_s_does_not_show_that_it_fits() -> None:
    assert (
        first(level(95.0, over_s=3600.0), house=[limit("98 dB(A)", 98.0, over_s=900.0)])["verdict"]
        == "ask"
    )
    assert (
        first(level(95.0, over_s=900.0), house=[limit("98 dB(A)", 98.0, over_s=3600.0)])["verdict"]
        == "fits"
    )


def trucks(**sizes: float) -> Record:
    """Trucks with these sizes."""
    names = ("length", "height", "weight", "case_width", "case_height", "case_weight")
    whole = {"sort": "trucks", "count": 1.0, "length_of": "whole truck"}
    return {**asks("x"), **whole, **dict.fromkeys(names), **sizes}


def way_in(name: str, length_m: float, width_m: float) -> list[Record]:
    """An approach, its dock and its route."""
    return [
        item(
            "approach",
            f"{name} road",
            longest_truck=value("x", length_m),
            lowest_clearance=value(standing="none"),
        ),
        item("dock", name, approach=value(f"{name} road"), trucks_at_once=value("1", 1.0)),
        item(
            "route",
            f"{name} route",
            from_dock=value(name),
            leads_to=value("deck"),
            tightest_width=value("x", width_m),
        ),
    ]


@pytest.mark.parametrize(
    ("length", "width", "verdict"),
    [(16.5, 2.0, "fits"), (16.6, 2.0, "short"), (16.5, 2.1, "short")],
)
def test_trucks_and_case_must_pass_by_one_and_the_same_way(
    length: float, width: float, verdict: str
) -> None:
    section = [*way_in("Yard", 16.5, 2.0), *way_in("Lane", 9.0, 3.0)]
    assert first(trucks(length=length, case_width=width), access=section)["verdict"] == verdict


def test_a_way_that_nobody_measured_is_asked_before_another_is_called_short() -> None:
    assert (
        first(trucks(length=12.0, case_height=2.0), access=way_in("Yard", 16.5, 2.0))["verdict"]
        == "ask"
    )
    assert (
        first(trucks(length=18.0, case_height=2.0), access=way_in("Yard", 16.5, 2.0))["verdict"]
        == "short"
    )


def load(current: float, **more: object) -> Record:
    """A three-phase load."""
    blank = {
        "sort": "power",
        "use": "sound",
        "current_a": current,
        "count": 1.0,
        "phases": "three",
        "system": "",
        "connector": "",
    }
    return {**asks("x"), **blank, "within_m": None, "of": "", "apart": False, "more": None, **more}


def feed(
    name: str,
    free: float,
    above: str = "",
    kind: str = "service",
    condition: str = "in service",
    **more: Record,
) -> Record:
    """A service or supply with free current on its phases."""
    values = {
        "free__L1": value("x", free),
        "free__L2": value("x", free + 5),
        "rating": value("x", free),
        **more,
    }
    return item(
        kind, name, condition=condition, **values, **({"fed_from": value(above)} if above else {})
    )


def words(*loads: Record, power: list[Record]) -> list[str]:
    """The verdicts of loads that are placed together."""
    return [found["verdict"] for found in fit(pack(power=power), [rider(*loads)])["verdicts"]]


@pytest.mark.parametrize(("current", "verdict"), [(63.0, "fits"), (63.1, "short")])
def test_a_load_is_held_to_the_phase_with_least_free(current: float, verdict: str) -> None:
    assert words(load(current), power=[feed("Switch", 63.0)]) == [verdict]


@pytest.mark.parametrize(("current", "margin"), [(44.0, "+19.0 A"), (70.0, "−7.00 A")])
def test_a_load_says_what_is_left_or_lacks_beside_it(current: float, margin: str) -> None:
    found = fit(pack(power=[feed("Switch", 63.0)]), [rider(load(current))])["verdicts"][0]
    assert found["margin"][0] == margin


def test_two_loads_that_fit_alone_may_not_fit_together() -> None:
    one = [feed("Switch", 100.0)]
    assert words(load(60.0), load(60.0), power=one) == ["fits", "short"]
    assert words(load(60.0), load(40.0), power=one) == ["fits", "fits"]
    assert words(load(60.0), load(60.0), power=[*one, feed("Other", 60.0)]) == ["fits", "fits"]


def test_what_feeds_two_services_limits_them_together() -> None:
    tree = [
        feed("Intake", 100.0, kind="supply"),
        feed("A", 80.0, "Intake"),
        feed("B", 80.0, "Intake"),
    ]
    assert words(load(80.0), load(20.0), power=tree) == ["fits", "fits"]
    assert words(load(80.0), load(21.0), power=tree) == ["fits", "short"]


def test_an_early_load_makes_room_for_a_later_one_that_has_less_choice() -> None:
    large, small = feed("Large", 100.0), feed("Small", 50.0)
    assert words(load(50.0), load(100.0), power=[large, small]) == ["fits", "fits"]


def test_the_margin_is_what_is_left_beside_all_loads_and_upstream() -> None:
    tree = [
        feed("Intake", 110.0, kind="supply"),
        feed("A", 80.0, "Intake"),
        feed("B", 80.0, "Intake"),
    ]
    found = fit(pack(power=tree), [rider(load(60.0), load(40.0))])["verdicts"]
    # 110 A at the intake less 60 A and 40 A leave 10 A, which is less than the 20 A and 40 A left
    # on the services.
    assert [each["margin"][0] for each in found] == ["+10.0 A", "+10.0 A"]


def between(
    name: str, least_a: float, most_a: float, fed_from: str = "", kind: str = "service"
) -> Record:
    """A feed of which only a least and a most are known to be free."""
    found = feed(name, most_a, fed_from, kind=kind)
    for phase in ("L1", "L2", "L3"):
        if f"free.{phase}" in found["values"]:
            found["values"][f"free.{phase}"] |= {"number": None, "least": least_a, "most": most_a}
    return found


@pytest.mark.parametrize(
    ("wanted_a", "verdict"),
    [(60.0, "fits"), (60.1, "ask"), (100.0, "ask"), (110.0, "ask"), (110.1, "short")],
)
def test_between_the_least_and_the_most_that_a_feed_has_free_the_answer_is_a_question(
    wanted_a: float, verdict: str
) -> None:
    intake = between("Intake", 60.0, 110.0, kind="supply")
    assert words(load(wanted_a), power=[intake, feed("A", 200.0, "Intake")]) == [verdict]


def test_the_question_names_what_nobody_has_measured() -> None:
    intake = between("Intake", 60.0, 110.0, kind="supply")
    found = fit(pack(power=[intake, feed("A", 200.0, "Intake")]), [rider(load(70.0))])["verdicts"][
        0
    ]
    known = (
        "Intake has at least 60.0 A and at most 110 A free before the show's loads, for the house"
        " has not measured all that it draws."
    )
    assert found["reason"] == known
    assert "Which service can we have" in found["question"]


def test_what_is_surely_free_is_taken_before_what_may_be() -> None:
    # 40 A are surely free on the second switch; the first, which comes first in the pack, has
    # between nothing and 90 A.
    found = fit(
        pack(power=[between("First", 0.0, 39.0), feed("Second", 40.0)]), [rider(load(39.0))]
    )["verdicts"][0]
    assert (found["verdict"], found["reason"][:10]) == ("fits", "On Second;")


def test_free_current_that_is_only_an_upper_bound_is_asked() -> None:
    bound = feed("Switch", 0.0)
    for phase in ("free.L1", "free.L2"):
        bound["values"][phase] |= {"number": None, "most": 100.0}
    assert words(load(50.0), power=[bound]) == ["ask"]


def test_a_service_below_one_that_is_out_of_service_is_short_and_says_why() -> None:
    power = [
        feed("Intake", 100, kind="supply"),
        feed("Main", 60, "Intake", "board", condition="out of service"),
        feed("Small", 30, "Main"),
    ]
    found = first(load(20), power=power)
    assert (found["verdict"], found["reason"]) == (
        "short",
        "Small: Main, which feeds it, is out of service.",
    )


def test_another_system_is_short_and_one_not_stated_is_asked() -> None:
    wish = load(50.0, system="120/208 V three phase")
    assert words(wish, power=[feed("A", 100.0, system=value("230/400 V three phase 50 Hz"))]) == [
        "short"
    ]
    assert words(wish, power=[feed("A", 100.0)]) == ["ask"]
    assert words(wish, power=[feed("A", 100.0, system=value("120/208 V three phase 60 Hz"))]) == [
        "fits"
    ]


def test_distance_is_taken_in_a_straight_line_and_said_to_be_so() -> None:
    spot = item("place", "Stage left", at__across=value("x", 3.0), at__depth=value("x", 4.0))
    switch = feed("Switch", 100.0, at__across=value("x", 0.0), at__depth=value("x", 0.0))
    for within_m, verdict in ((5.0, "fits, with a note"), (4.99, "short")):
        wish = load(50.0, within_m=within_m, of="Stage left")
        found = fit(pack(stage=[spot], power=[switch]), [rider(wish)])["verdicts"][0]
        assert found["verdict"] == verdict
    assert "5.00 m from Stage left in a straight line" in found["reason"]


def test_what_adds_up_over_a_day_is_judged_together() -> None:
    buses = item("parking", "buses", what=value("buses"), count=value("3", 3.0))
    day = fit(
        pack(access=[buses]), [rider(asks("bus parking", low=2.0), act=name) for name in ("A", "B")]
    )
    assert [(found["act"], found["verdict"]) for found in day["verdicts"]] == [
        ("A", "fits"),
        ("B", "fits"),
        ("The day", "short"),
    ]
    assert day["verdicts"][2]["need"] == "at least 4 together (2 + 2)"
    assert day["verdict"] == "short"


def test_power_of_all_acts_is_placed_at_the_same_time() -> None:
    day = fit(
        pack(power=[feed("Switch", 100.0)]),
        [rider(load(60.0), act="A"), rider(load(60.0), act="B")],
    )
    assert [found["verdict"] for found in day["verdicts"]] == ["fits", "short"]


@pytest.mark.parametrize(
    ("stays_m", "verdict"), [(5.1, "fits"), (5.11, "short"), (None, "ask"), (0.0, "fits")]
)
def test_an_opener_has_the_depth_in_front_of_what_stays_less_an_aisle(
    stays_m: float | None, verdict: str
) -> None:
    # 10 m less 0.9 m aisle less 4 m wanted leaves 5.1 m for what stays. The aisle of 0.9 m is
    # common practice.
    deck = item("deck", "Deck", usable_depth=value("10 m", 10.0))
    opener = rider(asks("stage depth", low=4.0), act="Opener", stays_m=0.0)
    day = fit(pack(stage=[deck]), [opener, rider(act="Headliner", stays_m=stays_m)])
    found = [each["verdict"] for each in day["verdicts"] if each["act"] == "The day"]
    assert found == ([] if stays_m == 0.0 else [verdict])


def test_a_service_of_another_voltage_is_not_mended_by_drawing_less() -> None:
    power = [feed("Switch", 100.0, system=value("230/400 V three phase 50 Hz"))]
    found = fit(pack(power=power), [rider(load(63.0, system="120/208 V three phase"))])["verdicts"][
        0
    ]
    assert (found["verdict"], found["reason"]) == (
        "short",
        "Switch: other system, 230/400 V three phase 50 Hz.",
    )
    assert found["remedy"].startswith(
        "Hire a transformer, where the frequency suits, or a generator of the system asked for."
    )


def notes(requirement: Record, **more: Record) -> list[str]:
    """The notes of a load on one service."""
    found: list[str] = fit(pack(power=[feed("Switch", 100.0, **more)]), [rider(requirement)])[
        "verdicts"
    ][0]["notes"]
    return found


def test_a_load_without_a_voltage_is_told_the_house_s() -> None:
    system = value("230/400 V three phase 50 Hz")
    assert notes(load(63.0), system=system) == [
        "The rider states no voltage; this is 230/400 V three phase 50 Hz."
    ]
    assert notes(load(63.0, system="230/400 V three phase"), system=system) == []


def test_a_load_on_a_service_that_is_kept_for_something_else_is_told_so() -> None:
    assert notes(load(63.0, use="rigging"), dedicated_to=value("sound")) == [
        "The house keeps it for sound."
    ]
    assert notes(load(63.0), dedicated_to=value("sound and stage")) == []


@pytest.mark.parametrize(
    "use", ["light", "lighting", "control", "ound", "Sound and lighting", "lighting  control"]
)
def test_a_use_that_is_only_like_what_a_service_is_kept_for_is_another(use: str) -> None:
    kept = value("sound and lighting control")
    assert notes(load(63.0, use=use), dedicated_to=kept) == [
        "The house keeps it for sound and lighting control."
    ]


@pytest.mark.parametrize("use", ["Sound", "lighting control", "Sound and lighting control"])
def test_a_service_is_kept_for_each_use_that_the_house_names(use: str) -> None:
    kept = value("sound and lighting control")
    assert notes(load(63.0, use=use), dedicated_to=kept) == []


@pytest.mark.parametrize(
    ("asked", "house"),
    [
        ("16 A", "IEC 60309 16 A 3-pin blue"),
        ("IEC 60309 125 A", "IEC 60309 125 A 5-pin red"),
        ("M12", "lugs for bare tails, M12"),
    ],
)
def test_a_service_s_connector_is_not_another_whose_name_holds_its_own(
    asked: str, house: str
) -> None:
    has = a_list("IEC 60309 63 A 5-pin red", house)
    assert notes(load(63.0, connector=asked), connectors=has) == [
        f"Connector: {asked} asked, the house has IEC 60309 63 A 5-pin red, {house}. Whoever"
        " connects decides on an adapter."
    ]
    assert notes(load(63.0, connector=house.upper()), connectors=has) == []


def test_a_place_without_a_distance_is_told_and_one_that_the_house_does_not_name_is_asked() -> None:
    stage = [
        item("place", "Stage left", **{"at.across": value("x", 8.0), "at.depth": value("x", -2.0)})
    ]
    switch = feed("Switch", 100.0, **{"at.across": value("x", -4.0), "at.depth": value("x", -7.0)})
    near = fit(pack(power=[switch], stage=stage), [rider(load(63.0, of="Stage left"))])["verdicts"][
        0
    ]
    assert near["notes"] == [
        "13.00 m from Stage left in a straight line; the cable path is longer."
    ]
    nowhere = fit(pack(power=[switch], stage=stage), [rider(load(63.0, of="Stage middle"))])[
        "verdicts"
    ][0]
    assert (nowhere["verdict"], nowhere["reason"]) == (
        "ask",
        "Switch: x stated; the house names no place Stage middle, but Stage left.",
    )


@pytest.mark.source(
    "common practice, no source: a three-phase system is called by its voltage between lines"
)
@pytest.mark.parametrize(
    ("wish", "house", "verdict"),
    [
        ("400V", "230/400 V three phase 50 Hz", "fits"),
        ("400 V three phase", "230/400 V three phase 50 Hz", "fits"),
        ("208V", "120/208 V three phase 60 Hz", "fits"),
        ("230 V", "230/400 V three phase 50 Hz", "short"),
        ("208 V", "230/400 V three phase 50 Hz", "short"),
        ("230/400 V", "400 V three phase 50 Hz", "ask"),
        ("400 V", "230 V three phase 50 Hz", "ask"),
        ("400 V", "400 V three phase 50 Hz", "fits"),
        ("208 V", "400 V three phase 50 Hz", "short"),
        ("400 V", "400 V three phase line to line 50 Hz", "fits"),
        ("230/400 V", "230 V three phase line to line 50 Hz", "short"),
    ],
)
def test_a_three_phase_load_may_name_the_voltage_between_lines_alone(
    wish: str, house: str, verdict: str
) -> None:
    assert words(load(50.0, system=wish), power=[feed("A", 100.0, system=value(house))]) == [
        verdict
    ]


def test_trucks_without_a_size_are_asked_and_never_fit() -> None:
    found = first(trucks(), access=way_in("Yard", 16.5, 2.0))
    assert (found["verdict"], found["reason"]) == (
        "ask",
        "The rider gives no size of a truck or a case, so no way in can be judged.",
    )
