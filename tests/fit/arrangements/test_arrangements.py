"""
A show is judged in one arrangement of the house: the one that its rider names, else the best whole
one.
"""

import pytest

from builder.fit.arrangements.evenings import MOST
from builder.fit.interpreter import fit
from tests.fit.sample import Record, a_list, asks, item, pack, rider, value

STANDING, SEATED, THRUST = "Standing, end stage", "Seated", "Standing, end stage, long thrust"


def deck(name: str, width_m: float, *configurations: str, **more: Record) -> Record:
    """A deck of a width that stands in some configurations, or in all."""
    listed = {"configurations": a_list(*configurations)} if configurations else {}
    width = value(f"{width_m:.1f} m", width_m)
    return item("deck", name, usable_width=width, **listed, **more)


def holds(name: str, persons: float) -> Record:
    """A configuration of the house with its capacity."""
    return item("configuration", name, capacity=value(f"{persons:.0f}", persons))


def hall() -> Record:
    """A narrow deck before many, a wide one before few."""
    return pack(
        house=[holds(STANDING, 2000.0), holds(SEATED, 800.0)],
        stage=[deck("Narrow", 9.0, STANDING), deck("Wide", 14.0, SEATED)],
        access=[item("dock", "Dock")],
    )


WIDE = asks("stage width", low=12.0)
MANY = asks("capacity", low=1500.0, department="house")


def words(result: Record) -> list[str]:
    """The words of all verdicts."""
    return [answer["verdict"] for answer in result["verdicts"]]


def test_a_deck_of_one_configuration_and_the_capacity_of_another_are_no_fit() -> None:
    result = fit(hall(), [rider(WIDE, MANY)])
    assert result["verdict"] == "short"
    assert words(result) == ["short", "fits"]
    assert result["judged_in"] == [
        "Judged in the configuration Standing, end stage; of 2, none suits this show better.",
        "In Seated: 1 short; worse there: capacity; better there: stage width.",
    ]


@pytest.mark.parametrize(
    ("need", "configuration"), [(WIDE, SEATED), (MANY, STANDING), (asks("stage width"), STANDING)]
)
def test_one_of_them_alone_fits_in_its_own_configuration(need: Record, configuration: str) -> None:
    result = fit(hall(), [rider(need)])
    assert result["verdict"] == "fits"
    assert result["acts"][0]["arrangement"] == {
        "space": "",
        "configuration": configuration,
        "settings": [],
    }


def test_both_fit_where_one_configuration_has_both() -> None:
    house = pack(
        house=[holds(STANDING, 2000.0), holds(SEATED, 800.0)],
        stage=[deck("Narrow", 9.0, SEATED), deck("Wide", 14.0, STANDING)],
    )
    assert words(fit(house, [rider(WIDE, MANY)])) == ["fits", "fits"]


def test_fewest_short_come_first_then_fewest_to_ask_then_the_order_of_the_house() -> None:
    names = ("A", "B", "C", "D")
    house = pack(
        house=[item("configuration", "A"), *(holds(name, 900.0) for name in names[1:])],
        stage=[deck("Narrow", 9.0, "B"), deck("Wide", 14.0, "A", "C", "D")],
    )
    result = fit(house, [rider(WIDE, asks("capacity", low=500.0))])
    assert result["acts"][0]["arrangement"] == {
        "space": "",
        "configuration": "C",
        "settings": [],
    }
    assert result["judged_in"] == [
        "Judged in the configuration C; of 4, none suits this show better.",
        "In A: 1 to ask; worse there: capacity.",
        "In B: 1 short; worse there: stage width.",
        "In D: the same verdicts.",
    ]
    assert [(each["short"], each["ask"]) for each in result["others"]] == [(0, 1), (1, 0), (0, 0)]


def test_what_only_should_be_turns_no_show_short_by_the_choice_of_an_arrangement() -> None:
    house = pack(
        house=[item("configuration", name) for name in ("A", "B")],
        stage=[
            deck("Narrow", 9.0, "A", height=value("1 m", 1.0), load=value("9 kPa", 9000.0)),
            deck("Wide", 14.0, "B", height=value("0.5 m", 0.5), load=value("1 kPa", 1000.0)),
        ],
    )
    shoulds = [
        asks("deck height", low=0.9, strictness="should"),
        asks("deck load", low=5000.0, strictness="should"),
    ]
    result = fit(house, [rider(WIDE, *shoulds)])
    assert result["acts"][0]["arrangement"] == {
        "space": "",
        "configuration": "B",
        "settings": [],
    }
    assert result["verdict"] == "fits, with a note"


def test_a_house_with_one_arrangement_says_nothing_of_it() -> None:
    for house in ([], [holds("As it is", 900.0)]):
        listed = ("As it is",) if house else ()
        result = fit(pack(house=house, stage=[deck("D", 14.0, *listed)]), [rider(WIDE)])
        assert (words(result), result["judged_in"], result["others"]) == (["fits"], [], [])


def test_lines_alone_may_name_the_configurations() -> None:
    house = pack(stage=[deck("Narrow", 9.0, STANDING), deck("Wide", 14.0, SEATED)])
    result = fit(house, [rider(WIDE, asks("stage width", "at most", high=10.0))])
    # Nothing is at least 12 m and at most 10 m wide, so the later one has a note.
    assert sorted(words(result)) == ["fits, with a note", "short"]


def test_a_line_of_which_nobody_knows_where_it_stands_answers_nowhere() -> None:
    wide = deck("Wide", 14.0, configurations=value(standing="unknown"))
    house = pack(house=[holds(STANDING, 9.0), holds(SEATED, 9.0)], stage=[wide])
    assert words(fit(house, [rider(WIDE)])) == ["ask"]
    shared = deck("Wide", 14.0, configurations=value(standing="not stated"))
    house = pack(house=[holds(STANDING, 9.0), holds(SEATED, 9.0)], stage=[shared])
    assert words(fit(house, [rider(WIDE)])) == ["fits"]


def test_a_rider_that_names_its_configuration_is_held_to_it() -> None:
    result = fit(hall(), [rider(WIDE, configuration=STANDING)])
    assert words(result) == ["short"]
    assert result["judged_in"] == ["Judged in the configuration Standing, end stage."]
    assert result["others"] == []


def test_a_configuration_that_the_house_does_not_name_is_asked_with_the_names_that_it_has() -> None:
    result = fit(hall(), [rider(WIDE, MANY, asks("dock spaces", low=1.0), configuration="Round")])
    width, capacity, docks = result["verdicts"]
    assert (width["verdict"], capacity["verdict"], docks["verdict"]) == ("ask", "ask", "ask")
    assert (
        width["reason"]
        == "The house names no configuration Round; it names: Standing, end stage; Seated."
    )
    assert (
        width["act_question"]
        == "Act: which configuration is meant by Round? The house names: Standing, end stage;"
        " Seated."
    )
    assert capacity["act_question"] == width["act_question"]
    assert docks["reason"] == "The house has not said all of it: 0 are known."
    assert result["acts"][0]["arrangement"] == {"space": "", "configuration": "", "settings": []}


def test_a_name_means_nothing_to_a_house_that_names_no_configuration() -> None:
    house = pack(stage=[deck("Wide", 14.0)])
    assert words(fit(house, [rider(WIDE, configuration="Round")])) == ["fits"]


def test_what_stands_in_all_configurations_answers_a_name_that_the_house_does_not_have() -> None:
    shared = pack(house=[holds(STANDING, 9.0)], stage=[deck("Wide", 14.0)])
    assert words(fit(shared, [rider(WIDE, configuration="Round")])) == ["fits"]


@pytest.mark.parametrize(
    ("written", "verdict"),
    [(STANDING, "short"), (THRUST, "fits"), ("Standing", "ask"), ("end stage", "ask")],
)
def test_a_configuration_is_not_taken_for_another_whose_name_holds_its_own(
    written: str, verdict: str
) -> None:
    house = pack(
        house=[item("configuration", name) for name in (STANDING, THRUST, SEATED)],
        stage=[deck("Wide", 14.0, THRUST, SEATED), deck("Plain", 9.0, STANDING)],
    )
    assert words(fit(house, [rider(WIDE, configuration=written)])) == [verdict]


def test_a_configuration_that_the_house_names_without_a_deck_for_it_is_asked_of_the_house() -> None:
    house = pack(house=[item("configuration", SEATED)], stage=[deck("Wide", 14.0, STANDING)])
    answer = fit(house, [rider(WIDE, configuration=SEATED)])["verdicts"][0]
    assert (answer["verdict"], answer["reason"]) == (
        "ask",
        "The house has not said for the configuration Seated.",
    )


def crowd_of(number: int) -> Record:
    """A house with many configurations; the last has a wide deck, the others a narrow one."""
    names = [f"No. {index}" for index in range(number)]
    decks = [deck("Narrow", 9.0, *names[:-1]), deck("Wide", 14.0, names[-1])]
    return pack(house=[item("configuration", name) for name in names], stage=decks)


def test_as_many_configurations_as_are_compared_are_compared() -> None:
    result = fit(crowd_of(MOST), [rider(WIDE)])
    assert words(result) == ["fits"]
    assert result["judged_in"][1:] == [
        "In " + "; ".join(f"No. {index}" for index in range(63)) + ": 1 short; worse there: stage"
        " width."
    ]


def test_of_one_more_the_show_has_to_name_one() -> None:
    result = fit(crowd_of(MOST + 1), [rider(WIDE)])
    answer = result["verdicts"][0]
    assert answer["verdict"] == "ask"
    assert answer["reason"] == (
        "The house has 65 configurations, more than the 64 that are compared, and the rider names"
        " none."
    )
    assert answer["act_question"].startswith("In which configuration of the house do we play?")
    assert (result["judged_in"], result["others"]) == ([], [])
    named = rider(WIDE, configuration="No. 64")
    assert words(fit(crowd_of(MOST + 1), [named])) == ["fits"]


def test_more_than_a_few_different_others_are_counted() -> None:
    names = [f"No. {index}" for index in range(8)]
    house = pack(
        house=[holds(name, 900.0) for name in names],
        stage=[deck("Wide", 14.0, names[0])]
        + [deck(f"D{index}", 9.0 - index, names[index]) for index in range(1, 8)],
    )
    widths = [asks("stage width", low=10.0 - index, title=f"Width {index}") for index in range(8)]
    told = fit(house, [rider(*widths)])["judged_in"]
    assert told[0].startswith("Judged in the configuration No. 0;")
    # 8 m are short of the 10 m and the 9 m.
    assert told[1] == "In No. 1: 2 short; worse there: Width 0."
    assert told[-1] == "And 3 more, no better."
    assert len(told) == 6


# Several acts on one day.


def test_acts_that_name_no_configuration_play_together_in_one() -> None:
    result = fit(hall(), [rider(WIDE, act="A"), rider(MANY, act="B")])
    assert [act["arrangement"]["configuration"] for act in result["acts"]] == [STANDING] * 2
    assert words(result) == ["short", "fits"]


def test_an_act_plays_where_another_of_the_day_says_that_it_plays() -> None:
    result = fit(hall(), [rider(WIDE, act="A"), rider(MANY, act="B", configuration=SEATED)])
    assert [act["arrangement"]["configuration"] for act in result["acts"]] == [SEATED] * 2
    assert words(result) == ["fits", "short"]
    assert result["judged_in"] == ["Judged in the configuration Seated."]


def test_acts_that_name_different_ones_are_each_judged_in_their_own_and_the_change_is_asked() -> (
    None
):
    acts = [
        rider(WIDE, act="A", configuration=SEATED),
        rider(MANY, WIDE, act="B", configuration=STANDING),
    ]
    result = fit(hall(), acts)
    assert words(result) == ["fits", "fits", "short", "ask"]
    change = result["verdicts"][-1]
    assert (change["act"], change["title"]) == ("The day", "Changeover of configuration")
    assert change["need"] == "A in Seated; B in Standing, end stage"
    assert change["question"] == (
        "Can the house change between these on one day, and how long does it take? (The day:"
        " Changeover of configuration, A in Seated; B in Standing, end stage.)"
    )
    assert result["judged_in"] == [
        "Each act is judged in its own configuration: A in Seated; B in Standing, end stage."
    ]


def test_a_third_act_plays_in_the_better_of_the_two_that_are_named() -> None:
    acts = [
        rider(act="A", configuration=STANDING),
        rider(act="B", configuration=SEATED),
        rider(WIDE, act="C"),
    ]
    result = fit(hall(), acts)
    assert result["acts"][2]["arrangement"] == {
        "space": "",
        "configuration": SEATED,
        "settings": [],
    }
    assert result["judged_in"] == [
        "Each act is judged in its own configuration: A in Standing, end stage; B in Seated; C in"
        " Seated.",
        "In Standing, end stage: 1 short, 1 to ask; worse there: stage width.",
    ]


def test_what_adds_up_over_the_day_has_to_be_there_in_every_configuration_of_the_day() -> None:
    def risers(name: str, count: float, configuration: str) -> Record:
        listed = {"configurations": a_list(configuration)}
        rolling = value("yes")
        return item("riser", name, rolling=rolling, count=value("x", count), **listed)

    house = pack(
        house=[holds(STANDING, 9.0), holds(SEATED, 9.0)],
        stage=[risers("Many", 8.0, STANDING), risers("Few", 3.0, SEATED)],
    )
    need = asks("rolling risers", low=2.0)
    for mine, other, verdict in ((STANDING, STANDING, "fits"), (STANDING, SEATED, "short")):
        acts = [
            rider(need, act="A", configuration=mine),
            rider(need, act="B", configuration=other),
        ]
        told = [each for each in fit(house, acts)["verdicts"] if "together" in each["need"]]
        assert [each["verdict"] for each in told] == [verdict]


def test_each_act_has_its_own_deck_in_front_of_what_the_others_leave() -> None:
    deep, shallow = (
        item("deck", name, usable_depth=value("x", depth_m), configurations=a_list(where))
        for name, depth_m, where in (("Deep", 12.0, STANDING), ("Shallow", 7.0, SEATED))
    )
    house = pack(house=[holds(STANDING, 9.0), holds(SEATED, 9.0)], stage=[deep, shallow])
    need = asks("stage depth", low=4.0)
    acts = [
        rider(need, act="A", configuration=STANDING, stays_m=3.0),
        rider(need, act="B", configuration=SEATED, stays_m=3.0),
    ]
    told = {each["title"]: each["verdict"] for each in fit(house, acts)["verdicts"][2:]}
    assert told["Deck depth for A in front of what stays"] == "fits"
    assert told["Deck depth for B in front of what stays"] == "short"
