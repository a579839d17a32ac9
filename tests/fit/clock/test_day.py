"""
The day's clock: sums done by hand beside each expected value.

How long things take is common practice, no source, where the rider does not say.
"""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.fit.interpreter import fit
from builder.fit.wording import lasting
from tests.fit.clock_pairs import clock, parts
from tests.fit.sample import Record, item, pack, rider, value

BEFORE = "Load-in and checks before doors"
MEALS = {"meal_after": 5.0, "meal_break": 1.0}


def house(
    *,
    ready_min: float | None = 0.0,
    crew_h: dict[str, float] | None = None,
    quiet: tuple[Record, ...] | None = (),
    **hours: float,
) -> Record:
    """
    A house that says all of its day: no meals, no quiet hours and nothing kept before doors unless
    told so.
    """
    told = {name: value(f"{hour} h", hour * 3600) for name, hour in hours.items()}
    if ready_min is not None:
        told["checks_end_before_doors"] = value("x", ready_min * 60)
    if quiet == ():
        told["quiet_hours"] = value(standing="none")
    crew = (
        {name: value("x", hour * 3600) for name, hour in (crew_h or {}).items()}
        if crew_h is not None
        else {"meal_break": value(standing="none")}
    )
    return pack(
        house=[item("identity", "Hall", **told), *(quiet or ()), item("crew", "Local crew", **crew)]
    )


def quiet(days: str, first: float, last: float) -> Record:
    """Quiet hours."""
    return item(
        "quiet", days, **{"from": value("x", first * 3600), "until": value("x", last * 3600)}
    )


def day(where: Record, *clocks: tuple[str, Record]) -> Record:
    """The result of a day of acts by name."""
    return fit(where, [rider(act=act, clock=each) for act, each in clocks])


def one(where: Record, **told: Any) -> Record:
    """The verdict on the time before doors for one act."""
    return verdict(day(where, ("Act", clock(**told))), BEFORE)


def verdict(result: Record, title: str) -> Record:
    """The verdict under a title."""
    found: Record = next(each for each in result["verdicts"] if each["title"] == title)
    return {**found, "asked": found["question"] + found["act_question"]}


def rows(result: Record) -> list[tuple[str, str, str, str]]:
    """The table without lengths."""
    return [(row["start"], row["end"], row["what"], row["whose"]) for row in result["day"]]


@pytest.mark.parametrize(
    ("check_min", "word", "margin"),
    [(90, "fits", "0 min"), (91, "short", "−1 min"), (60, "fits", "+30 min")],
)
def test_one_act_closes_by_doors_or_says_by_how_much_not(
    check_min: float, word: str, margin: str
) -> None:
    # 10:00 and 7 h set-up is 17:00; 90 min check is 18:30; the house keeps 30 min: doors at 19:00
    # just close.
    found = one(house(ready_min=30), load_in=10, set_up=420, check=check_min, doors=19)
    assert (found["verdict"], found["margin"][0]) == (word, margin)


def test_the_last_act_on_checks_first_and_the_sum_is_of_both() -> None:
    # 11:00 + set-up 240 + check 90 + clearing 15 + the opener's set-up 20 + check 45 = 410 min is
    # 17:50; doors 18:30 less 30 min is 18:00.
    headliner = (
        "Headliner",
        clock(
            load_in=11,
            set_up=240,
            check=90,
            clear_after_check=15,
            doors=18.5,
            on_stage=20.5,
            set=100,
        ),
    )
    opener = (
        "Opener",
        clock(load_in=14, set_up=20, check=45, on_stage=19.25, set=40, changeover=25),
    )
    result = day(house(ready_min=30), opener, headliner)
    assert verdict(result, BEFORE)["margin"][0] == "+10 min"
    assert rows(result)[:6] == [
        ("11:00", "15:00", "set-up", "Headliner"),
        ("15:00", "16:30", "check", "Headliner"),
        ("16:30", "16:45", "clearing the deck", "Headliner"),
        ("16:45", "17:05", "set-up", "Opener"),
        ("17:05", "17:50", "check", "Opener"),
        ("17:50", "18:00", "to spare", ""),
    ]
    assert result == day(house(ready_min=30), headliner, opener) | {
        "acts": result["acts"],
        "verdicts": result["verdicts"],
    }


def test_an_opener_that_loads_in_late_holds_the_checks_up() -> None:
    # The headliner is done at 14:00; the opener's truck is opened at 17:00, 20 + 30 min are 17:50:
    # ten minutes late for 17:40.
    headliner = (
        "Headliner",
        clock(
            load_in=9, set_up=240, check=60, clear_after_check=0, doors=17 + 40 / 60, on_stage=21
        ),
    )
    opener = ("Opener", clock(load_in=17, set_up=20, check=30, on_stage=19))
    assert verdict(day(house(), headliner, opener), BEFORE)["margin"][0] == "−10 min"


def test_a_meal_break_that_is_due_stops_the_set_up_and_pushes_the_check() -> None:
    # Load-in 09:00, a break due after 5 h at 14:00, 60 min of it; 6 h set-up end at 16:00, 90 min
    # check at 17:30.
    result = day(house(crew_h=MEALS), ("Act", clock(load_in=9, set_up=360, check=90, doors=18)))
    assert verdict(result, BEFORE)["margin"][0] == "+30 min"
    assert rows(result)[:5] == [
        ("09:00", "14:00", "set-up", "Act"),
        ("14:00", "15:00", "meal break", "House"),
        ("15:00", "16:00", "set-up", "Act"),
        ("16:00", "17:30", "check", "Act"),
        ("17:30", "18:00", "to spare", ""),
    ]


def test_a_check_is_not_broken_by_a_meal_so_an_agreed_check_may_begin_late() -> None:
    # Set-up ends at 14:00; a check of 90 min from 14:15 would run over 14:30, when the break is
    # due; 14:00 and 60 min is 15:00: 45 min late.
    found = one(house(crew_h=MEALS), load_in=9.5, set_up=270, check=90, check_from=14.25, doors=18)
    assert (found["verdict"], found["margin"][0]) == ("short", "−45 min")
    assert found["reason"].startswith(
        "It does not close at the check of Act, agreed for 14:15: it can begin 45 min late."
    )


@pytest.mark.parametrize(("set_up_min", "margin"), [(210, "+3 h"), (211, "+59 min")])
def test_a_break_is_due_only_for_work_beyond_its_time(set_up_min: float, margin: str) -> None:
    # 10:00 + 210 + 90 min is 15:00, exactly five hours: no break. One minute more, and a break of
    # 60 min comes before the check: 16:01 plus 60 less.
    found = one(
        house(crew_h=MEALS),
        load_in=10,
        set_up=set_up_min,
        check=90,
        doors=18 if set_up_min == 210 else 17,
    )
    assert found["margin"][0] == margin


def test_a_check_waits_for_quiet_hours_and_the_wait_is_a_meal_break() -> None:
    # 09:00 + 4 h 30 is 13:30; a check of 90 min would be heard after 14:00, so it begins at 15:30
    # and ends at 17:00. The wait of 2 h is the break.
    result = day(
        house(crew_h=MEALS, quiet=(quiet("Monday to Friday", 14, 15.5),)),
        ("Act", clock(load_in=9, set_up=270, check=90, doors=17.5)),
    )
    assert verdict(result, BEFORE)["margin"][0] == "+30 min"
    assert rows(result)[1] == ("13:30", "15:30", "waiting: quiet hours", "House")


@pytest.mark.parametrize(("until", "word"), [(14.0, "fits"), (14 + 1 / 60, "short")])
def test_an_agreed_check_in_quiet_hours_does_not_close(until: float, word: str) -> None:
    assert (
        one(
            house(quiet=(quiet("every day", 12, until),)),
            load_in=9,
            set_up=240,
            check=60,
            check_from=14,
            doors=18,
        )["verdict"]
        == word
    )


def test_quiet_hours_over_midnight_hold_in_the_morning_too() -> None:
    # Quiet from 22:00 until 10:00: the check waits from 09:00 for 10:00 and ends at 11:00.
    assert (
        one(house(quiet=(quiet("every day", 22, 10),)), load_in=8, set_up=60, check=60, doors=12)[
            "margin"
        ][0]
        == "+60 min"
    )


def test_quiet_hours_of_other_days_do_not_matter_and_a_day_not_named_is_asked() -> None:
    where = house(quiet=(quiet("Saturday and Sunday", 12, 18),))
    told = {"load_in": 9, "set_up": 240, "check": 60, "doors": 18}
    assert one(where, **told)["verdict"] == "fits"
    assert one(where, **told, day="saturday")["verdict"] == "short"
    assert "On which day of the week is the show?" in one(where, **told, day="")["asked"]


@pytest.mark.parametrize(("until", "word"), [(13, "fits"), (14, "ask"), (18, "ask")])
def test_the_weekday_is_asked_only_where_the_days_differ_in_what_decides(
    until: float, word: str
) -> None:
    """The check is from 13:00 to 14:00: hours that end before it are no reason to ask."""
    where = house(quiet=(quiet("Saturday and Sunday", 11, until),))
    found = one(where, load_in=9, set_up=240, check=60, doors=18, day="")
    assert found["verdict"] == word
    assert ("On which day of the week" in found["asked"]) == (word == "ask")


def test_doors_are_worked_back_from_the_first_note_where_the_house_says_how_long_before() -> None:
    told = {"load_in": 10, "set_up": 240, "check": 60, "on_stage": 20, "set": 90}
    found = one(house(doors_before_show=1.0, ready_min=0), **told)
    assert (found["verdict"], found["margin"][0]) == ("fits, with a note", "+4 h")
    assert found["notes"] == [
        "Doors at 19:00, 60 min before the first note at 20:00, as the house keeps."
    ]
    silent = one(house(ready_min=0), **told)
    assert (silent["verdict"], "When are doors?" in silent["asked"]) == ("ask", True)
    said = one(house(doors_before_show=1.0, ready_min=0), **told, doors=18.5)
    assert said["margin"][0] == "+3 h 30 min"


def test_set_up_that_nobody_stated_is_not_asked_where_the_check_is_agreed_and_no_meal_is_due_before_it() -> (  # noqa: E501
    None
):
    told = {"load_in": 13, "check": 60, "check_from": 17, "doors": 19}
    assert one(house(crew_h=MEALS), **told)["verdict"] == "fits"
    assert (
        "A meal break is due before your check."
        in one(house(crew_h=MEALS), **(told | {"load_in": 11.5}))["asked"]
    )


WHOLE = {"load_in": 10, "set_up": 240, "check": 60, "doors": 19}


@pytest.mark.parametrize("lacks", sorted(WHOLE))
def test_what_nobody_said_is_asked_with_what_is_common_at_most_in_the_question(lacks: str) -> None:
    assert one(house(), **WHOLE)["verdict"] == "fits"
    found = one(house(), **{name: told for name, told in WHOLE.items() if name != lacks})
    assert (found["verdict"], found["margin"]) == ("ask", ["", ""])
    assert "?" in found["asked"]
    assert ("common practice, no source" in found["asked"]) == (lacks in ("set_up", "check"))


@pytest.mark.parametrize(
    "lacks", [{"ready_min": None}, {"crew_h": {}}, {"crew_h": {"meal_after": 2.0}}, {"quiet": None}]
)
def test_what_the_house_has_not_said_is_asked(lacks: dict[str, Any]) -> None:
    found = one(house(**lacks), **WHOLE)
    assert found["verdict"] == "ask"
    assert "?" in found["asked"] or "How long before doors" in found["asked"]


def test_the_length_of_a_meal_does_not_decide_where_none_is_due() -> None:
    assert one(house(crew_h={"meal_after": 5.0}), **WHOLE)["verdict"] == "fits"


def test_what_is_known_can_be_too_much_already() -> None:
    found = one(house(), load_in=10, set_up=600, doors=19)
    assert (found["verdict"], found["margin"][0]) == ("short", "−60 min")
    assert "at least 60 min late" in found["reason"]
    assert "how long is your check" in found["asked"]


def test_two_times_for_doors_are_asked() -> None:
    acts = [
        (name, clock(load_in=9, set_up=60, check=30, clear_after_check=0, doors=doors, on_stage=on))
        for name, doors, on in (("A", 18, 19), ("B", 19, 21))
    ]
    assert (
        "When are doors? The riders say 18:00 or 19:00."
        in verdict(day(house(), *acts), BEFORE)["asked"]
    )


def test_what_would_mend_it_is_proven_and_kept_within_the_house_s_hours() -> None:
    # 30 min late: load in at 07:30, where the house allows it; a check of 60 min; doors at 19:30,
    # where the first act is on at 20:00 or later.
    told = {"load_in": 8, "set_up": 600, "check": 90, "doors": 19, "on_stage": 20, "set": 60}
    assert (
        one(house(load_in_from=7), **told)["remedy"]
        == "Any of these closes it: load in at 07:30; shorten the check of Act to 60 min; open"
        " doors at 19:30."
    )
    assert (
        one(house(load_in_from=8, doors_before_show=0.75), **told)["remedy"]
        == "Any of these closes it: shorten the check of Act to 60 min."
    )
    assert one(house(load_in_from=8), load_in=8, set_up=720, check=30, doors=19)[
        "remedy"
    ].startswith("No single change closes it")


GAP = {"strike": 6.0}
PARTS = {"roll_on": 4, "patch": 3, "lines": 24.0, "lines_a_minute": 5.0, "monitors": 4, "spare": 3}


def gap(
    minutes: float, *, strike: float | None = 6, told: dict[str, Any] | None = None, **more: Any
) -> Record:
    """The verdict on a changeover with a gap of so many minutes from 19:25."""
    first = clock(on_stage=18.75, set=40, **({"strike": strike} if strike is not None else {}))
    second = clock(
        on_stage=19 + 25 / 60 + minutes / 60,
        set=60,
        **({"parts": parts(**told)} if told else {}),
        **more,
    )
    return verdict(
        day(house(), ("Opener", first), ("Headliner", second)), "Changeover to Headliner"
    )


@pytest.mark.parametrize(
    ("minutes", "word", "margin"),
    [(25, "fits", "+0.2 min"), (24, "short", "−0.8 min"), (30, "fits", "+5.2 min")],
)
def test_a_changeover_is_the_sum_of_its_parts(minutes: float, word: str, margin: str) -> None:
    # strike 6 + roll 4 + patch 3 + 24 lines / 5 a minute = 4.8 + monitors 4 + spare 3 = 24.8 min
    # (parts and rate: common practice, no source).
    found = gap(minutes, told=PARTS)
    assert (found["verdict"], found["margin"][0]) == (word, margin)


def test_lines_checked_and_patched_before_cost_nothing_in_the_gap() -> None:
    # 24.8 less 4.8 of lines less 3 of patch is 17 min.
    assert gap(17, told=PARTS | {"patch": 0, "before": True})["margin"][0] == "0 min"


def test_a_short_changeover_says_what_helps_and_whether_it_is_enough() -> None:
    # 20 min of 24.8: 4.8 min short; the lines take 4.8 min.
    assert gap(20, told=PARTS)["remedy"].startswith(
        "What helps: check the lines of Headliner during the set before, which saves 4.8 min;"
        " shorten"
    )
    assert "which is not all of it" in gap(15, told=PARTS)["remedy"]
    assert "Headliner begins at 19:50." in gap(20, changeover=25)["remedy"]


@pytest.mark.parametrize(
    ("told", "question"),
    [
        ({}, "all in or by its parts? Commonly 15 to 30 min"),
        (
            {name: each for name, each in PARTS.items() if name != "lines_a_minute"},
            "Commonly 4 to 6",
        ),
        (
            {name: each for name, each in PARTS.items() if name != "lines"},
            "how many lines do you check?",
        ),
        ({name: each for name, each in PARTS.items() if name != "spare"}, "what goes wrong"),
    ],
)
def test_a_changeover_that_nobody_stated_whole_is_asked(
    told: dict[str, Any], question: str
) -> None:
    found = gap(60, told=told)
    assert found["verdict"] == "ask"
    assert question in found["asked"]


def test_a_set_is_not_shortened_by_more_than_it_lasts() -> None:
    # Opener plays 40 min. 60 min less 25 are 35 too few, 60 less 15 are 45.
    assert "shorten the set of Opener to 5 min" in gap(25, changeover=60)["remedy"]
    assert "shorten the set" not in gap(15, changeover=60)["remedy"]


def test_no_gap_at_all_is_told_without_a_sign() -> None:
    assert gap(0, changeover=20)["reason"].startswith("19:25 to 19:25 is 0 min. ")


def test_a_gap_below_nothing_is_short_though_no_part_of_the_changeover_is_stated() -> None:
    found = gap(-5, strike=None, told={"lines_a_minute": 5.0})
    assert found["verdict"] == "short"
    assert found["reason"].startswith("19:25 to 19:20 is −5 min. ")
    assert "It takes" not in found["reason"]


def test_a_strike_that_the_act_before_does_not_state_is_asked_unless_the_changeover_is_stated_all_in() -> (  # noqa: E501
    None
):
    assert (
        "Opener: how long do you take to clear the deck"
        in gap(60, strike=None, told=PARTS)["asked"]
    )
    assert gap(25, strike=None, told=PARTS, changeover=25)["verdict"] == "fits"


def test_of_a_changeover_stated_twice_the_longer_counts() -> None:
    assert gap(24, told=PARTS, changeover=20)["verdict"] == "short"
    assert gap(25, told=PARTS, changeover=20)["verdict"] == "fits, with a note"
    assert gap(25, told=PARTS, changeover=26)["verdict"] == "short"


def test_acts_whose_order_is_not_known_are_asked() -> None:
    result = day(house(), ("A", clock(on_stage=19, set=60)), ("B", clock(doors=18)))
    assert [(each["title"], each["verdict"]) for each in result["verdicts"]] == [
        ("Order of the acts", "ask")
    ]
    assert "B: when are you on stage" in result["verdicts"][0]["act_question"]


@pytest.mark.parametrize(("on_stage", "word"), [(19.75, "fits"), (19.7, "short"), (18.5, "short")])
def test_the_first_act_is_on_after_doors_and_the_time_the_house_wants(
    on_stage: float, word: str
) -> None:
    where = house(doors_before_show=0.75)
    assert (
        verdict(
            day(where, ("A", clock(on_stage=on_stage, doors=19, set=60))),
            "From doors to the first act",
        )["verdict"]
        == word
    )


@pytest.mark.parametrize(
    ("ends", "word", "margin"),
    [(23.0, "fits", "0 min"), (22.5, "short", "−30 min"), (0.5, "fits", "+90 min")],
)
def test_a_set_ends_when_the_rider_says_or_does_not(ends: float, word: str, margin: str) -> None:
    # 21:30 and 90 min is 23:00; 00:30 is the night after.
    found = verdict(day(house(), ("A", clock(on_stage=21.5, set=90, ends=ends))), "Set of A")
    assert (found["verdict"], found["margin"][0]) == (word, margin)


@pytest.mark.parametrize(("until", "word"), [(1.0, "fits"), (0.75, "short"), (23.0, "short")])
def test_a_load_out_after_midnight_is_held_to_the_night_s_hour(until: float, word: str) -> None:
    # 23:00 and 2 h is 01:00.
    result = day(
        house(load_out_until=until), ("A", clock(load_in=12, ends=23, set=60, load_out=120))
    )
    assert verdict(result, "Load-out of A")["verdict"] == word


def test_the_crew_s_day_beyond_the_longest_call_should_not_be_and_a_short_load_out_is_paid_as_the_shortest() -> (  # noqa: E501
    None
):
    # 06:00 to 00:30 is 18 h 30.
    told = {"load_in": 6, "ends": 22.5, "set": 60, "load_out": 120}
    long = day(house(crew_h={"longest_call": 14}, load_out_until=1), ("A", clock(**told)))
    assert verdict(long, "The crew's day")["margin"][0] == "−4 h 30 min"
    assert long["verdict"] == "fits, with a note"
    short = day(
        house(crew_h={"longest_call": 19, "shortest_call": 4}, load_out_until=1),
        ("A", clock(**told)),
    )
    assert verdict(short, "The crew's day")["notes"] == [
        "A crew called for the load-out alone: 2 h is paid as the shortest call of 4 h."
    ]


def test_the_table_goes_from_load_in_to_the_last_truck_over_midnight() -> None:
    where = house(ready_min=30)
    where["sections"][0]["items"].append(
        item("curfew", "every day", music_ends=value("x", 0.5 * 3600), strictness=value("hard"))
    )
    result = day(
        where,
        ("A", clock(load_in=15, set_up=120, check=60, doors=19, on_stage=22, set=135, load_out=90)),
    )
    assert rows(result) == [
        ("15:00", "17:00", "set-up", "A"),
        ("17:00", "18:00", "check", "A"),
        ("18:00", "18:30", "to spare", ""),
        ("18:30", "19:00", "hall made ready", "House"),
        ("19:00", "22:00", "doors", "House"),
        ("22:00", "00:15 the next day", "set", "A"),
        ("00:15 the next day", "01:45 the next day", "load-out", "A"),
        ("00:30 the next day", "00:30 the next day", "curfew", "House"),
    ]


def test_the_table_of_a_day_that_does_not_close_is_in_the_order_of_its_starts_too() -> None:
    # 15:00 and 2 h is 17:00; 105 min of check end at 18:45; the hall is made ready from 18:00 to
    # doors at 18:30, and nothing is to spare before it.
    result = day(
        house(ready_min=30),
        ("A", clock(load_in=15, set_up=120, check=105, doors=18.5, on_stage=20, set=60)),
    )
    assert rows(result) == [
        ("15:00", "17:00", "set-up", "A"),
        ("17:00", "18:45", "check", "A"),
        ("18:00", "18:30", "hall made ready", "House"),
        ("18:30", "20:00", "doors", "House"),
        ("20:00", "21:00", "set", "A"),
    ]


def test_a_curfew_stands_behind_a_load_out_that_begins_before_it() -> None:
    where = house()
    where["sections"][0]["items"].append(
        item("curfew", "every day", music_ends=value("x", 23.5 * 3600), strictness=value("hard"))
    )
    result = day(
        where,
        ("A", clock(load_in=15, set_up=120, check=60, doors=19, on_stage=21, set=90, load_out=60)),
    )
    assert [(start, what) for start, _, what, _ in rows(result)][-2:] == [
        ("22:30", "load-out"),
        ("23:30", "curfew"),
    ]


def test_a_rider_that_says_no_more_than_load_in_and_end_gets_no_table() -> None:
    assert day(house(), ("A", clock(load_in=10, ends=23)))["day"] == []
    assert fit(house(), [rider()])["day"] == []


def test_a_length_that_nobody_stated_leaves_the_times_after_it_open_until_an_agreed_one() -> None:
    headliner = (
        "H",
        clock(load_in=9, set_up=60, clear_after_check=0, doors=19, on_stage=21, set=60),
    )
    opener = ("O", clock(load_in=9, set_up=20, check=30, check_from=17, on_stage=20, set=30))
    assert rows(day(house(), headliner, opener))[:4] == [
        ("09:00", "10:00", "set-up", "H"),
        ("10:00", "?", "check", "H"),
        ("?", "?", "set-up", "O"),
        ("17:00", "17:30", "check", "O"),
    ]


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (0, "0 min"),
        (288, "4.8 min"),
        (7199, "2 h"),
        (7140, "119 min"),
        (8100, "2 h 15 min"),
        (66600, "18 h 30 min"),
    ],
)
def test_lengths_of_a_day_are_told_in_hours_and_minutes(seconds: float, words: str) -> None:
    assert lasting(seconds) == words


lengths = st.one_of(st.none(), st.integers(0, 40).map(lambda quarters: quarters * 15.0))
houses = st.builds(
    house,
    ready_min=st.sampled_from([None, 0.0, 30.0]),
    crew_h=st.sampled_from([None, {}, MEALS, {"meal_after": 3.0, "meal_break": 0.5}]),
    quiet=st.sampled_from(
        [
            None,
            (),
            (quiet("every day", 13, 15),),
            (quiet("every day", 14, 14.5), quiet("every day", 16, 18)),
        ]
    ),
)
ONE_DAY = {"set_up": lengths, "check": lengths, "line_check": lengths}
acts = st.fixed_dictionaries(
    ONE_DAY | {"clear_after_check": lengths, "check_from": st.sampled_from([None, 14.0, 16.0])}
)


def two(
    where: Record, headliner: dict[str, Any], opener: dict[str, Any], doors: float = 19.0
) -> str:
    """The word on the time before doors of two acts; empty where neither says anything of it."""
    whole = [
        {name: told for name, told in each.items() if told is not None}
        for each in (headliner, opener)
    ]
    clocks = [
        clock(load_in=9, doors=doors, on_stage=on, **told)
        for on, told in zip((22, 20), whole, strict=True)
    ]
    answers = day(where, ("H", clocks[0]), ("O", clocks[1]))["verdicts"]
    return next((str(each["verdict"]) for each in answers if each["title"] == BEFORE), "")


@given(houses, acts, acts, st.sampled_from(sorted(ONE_DAY)), st.integers(1, 8))
def test_a_shorter_piece_of_work_never_turns_a_fit_into_a_short(
    where: Record, first: Any, second: Any, name: str, less: int
) -> None:
    if first[name] is not None and two(where, first, second).startswith("fits"):
        assert two(where, {**first, name: max(0.0, first[name] - less * 15)}, second) != "short"


@given(houses, acts, acts, st.integers(0, 40))
def test_later_doors_never_turn_a_fit_into_a_short(
    where: Record, first: Any, second: Any, quarters: int
) -> None:
    if two(where, first, second, 17.0).startswith("fits"):
        assert two(where, first, second, 17.0 + quarters / 8).startswith("fits")


@given(houses, acts, acts, st.data())
def test_a_short_stays_short_whatever_the_answers_are(
    where: Record, first: Any, second: Any, data: st.DataObject
) -> None:
    if two(where, first, second) == "short":
        answers = st.integers(0, 16).map(lambda quarters: quarters * 15.0)
        known = [
            {
                name: data.draw(answers) if told is None and name != "check_from" else told
                for name, told in each.items()
            }
            for each in (first, second)
        ]
        assert two(where, *known) == "short"


@given(houses, acts, acts, st.sampled_from(["check", "clear_after_check"]))
def test_what_nobody_said_never_fits(where: Record, first: Any, second: Any, name: str) -> None:
    assert not two(where, {**first, name: None}, second).startswith("fits")


@given(st.integers(0, 60).map(float), st.integers(0, 60).map(float), st.integers(0, 90))
def test_a_shorter_set_before_never_turns_a_changeover_into_a_short(
    minutes: float, wanted: float, less: int
) -> None:
    def word(set_min: float) -> str:
        first, second = (
            clock(on_stage=19, set=set_min),
            clock(on_stage=20.5 + minutes / 60, set=60, changeover=wanted),
        )
        return str(verdict(day(house(), ("A", first), ("B", second)), "Changeover to B")["verdict"])

    if word(90).startswith("fits"):
        assert word(90 - less).startswith("fits")


# Quarters of an hour from 18:00 to 05:45 of the night after, as a clock on the wall tells them.
evenings = st.integers(72, 119)


@given(evenings, evenings, evenings, st.integers(0, 20))
def test_a_later_curfew_or_a_shorter_set_never_turns_a_fit_into_a_short(
    ends: int, one: int, other: int, less: int
) -> None:
    def word(curfew: int, end: int) -> str:
        where = pack(
            house=[
                item(
                    "curfew",
                    "every day",
                    music_ends=value("x", curfew * 900.0 % 86400),
                    strictness=value("hard"),
                )
            ]
        )
        asks = {
            "act": "A",
            "line": 1,
            "sort": "ends",
            "department": "house",
            "title": "T",
            "need": "n",
            "strictness": "must",
            "carried": "house",
        }
        return str(
            fit(
                where,
                [rider({**asks, "time_s": end * 900.0 % 86400, "day": ""})],
            )["verdict"]
        )

    early, late = sorted((one, other))
    if word(early, ends).startswith("fits"):
        assert word(late, ends).startswith("fits")
        assert word(early, max(72, ends - less)).startswith("fits")


def test_questions_to_the_acts_and_to_the_house_stand_apart() -> None:
    result = day(house(ready_min=None), ("Act", clock(load_in=9.0, set_up=2.0, doors=19.0)))
    (ours,) = [each["questions"] for each in result["questions"]]
    (theirs,) = result["act_questions"]
    assert "How long before doors" in ours[0]
    assert "how long is your check" not in ours[0]
    assert theirs["act"] == "Act"
    assert "Act: how long is your check" in theirs["questions"][0]
    assert "How long before doors" not in theirs["questions"][0]


def test_doors_alone_ask_nothing_about_the_work_before_them() -> None:
    result = day(house(ready_min=None), ("Act", clock(doors=19.0)))
    assert (result["verdicts"], result["questions"], result["act_questions"]) == ([], [], [])


@pytest.mark.parametrize(
    ("first", "last", "word"), [(12.0, 15.0, "ask"), (9.0, 12.0, "fits"), (16.0, 17.0, "fits")]
)
def test_hours_in_which_some_things_alone_are_quiet_are_asked_where_a_check_falls_in_them(
    first: float, last: float, word: str
) -> None:
    # The check runs from 13:00 to 14:00.
    subs = quiet("every day", first, last)
    subs["values"]["only"] = value("subs", standing="stated")
    found = one(house(quiet=(subs,)), load_in=9, set_up=240, check=60, check_from=13, doors=18)
    assert found["verdict"] == word
    assert ("without subs" in str(found["asked"])) == (word == "ask")
