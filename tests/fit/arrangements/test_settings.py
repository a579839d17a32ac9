"""
A value that the house can set stands at one setting for a whole show: the one that suits it best.
"""

from itertools import product
from random import Random

import pytest

from builder.fit.arrangements.evenings import MOST
from builder.fit.arrangements.telling import fare_of
from builder.fit.interpreter import fit
from tests.fit.sample import RULES, Record, a_list, asks, item, pack, rider, value
from tests.laws import share

FOOT_M = 0.3048
"""The international foot, exact: NIST Special Publication 811, appendix B."""
HIGH = asks("deck height", low=1.2)
LOW = asks("deck height", "at most", high=1.0)


def set_from(least: float, most: float) -> Record:
    """A value that is set anywhere between two ends, in metres."""
    text = f"set from {least} m to {most} m"
    return value(text, None, least=least, most=most, can_be_set=True)


def set_to_feet(*feet: float) -> Record:
    """A value that is set to one of some lengths in feet."""
    text = f"set to {' or '.join(f'{each:g} ft' for each in feet)}"
    metres = [each * FOOT_M for each in feet]
    ends = {"least": metres[0], "most": metres[-1]}
    return value(text, None, **ends, can_be_set=True, settings=metres)


def deck(height: Record, name: str = "Deck", **more: Record | str) -> Record:
    """A deck of a height."""
    return item("deck", name, height=height, **more)


def judged(items: list[Record], *needs: Record) -> Record:
    """What a show with some needs comes to on these decks."""
    result: Record = fit(pack(stage=items), [rider(*needs)])
    return result


def words(result: Record) -> list[str]:
    """The words of all verdicts."""
    return [answer["verdict"] for answer in result["verdicts"]]


ANYWHERE = set_from(0.9, 1.4)


def test_two_needs_that_no_one_setting_meets_do_not_both_fit() -> None:
    assert sorted(words(judged([deck(ANYWHERE)], HIGH, LOW))) == ["fits, with a note", "short"]


@pytest.mark.parametrize(
    ("need", "amount", "also"), [(HIGH, "1.20 m", "3'-11\""), (LOW, "1.00 m", "3'-3 1/2\"")]
)
def test_each_of_them_alone_fits_and_its_setting_is_told(
    need: Record, amount: str, also: str
) -> None:
    result = judged([deck(ANYWHERE)], need)
    (answer,) = result["verdicts"]
    assert answer["verdict"] == "fits, with a note"
    assert answer["notes"] == [f"Set to {amount}."]
    assert answer["fact"]["text"] == f"{amount} (set from 0.9 m to 1.4 m)"
    assert answer["fact"]["also"] == also
    assert result["judged_in"] == [f"Set for this show: Deck, height: {amount} ({also})."]
    assert result["others"] == []
    (chosen,) = result["acts"][0]["arrangement"]["settings"]
    assert (chosen["item"], chosen["number"]) == ("Deck", need["low"] or need["high"])
    assert chosen["key"] == answer["fact"]["key"]


def test_what_no_verdict_leans_on_is_no_setting_of_the_arrangement() -> None:
    result = judged([deck(set_from(1.3, 1.4))], HIGH)
    assert result["acts"][0]["arrangement"]["settings"] == []


def test_settings_in_feet_are_chosen_among_those_that_the_house_names() -> None:
    stage = [deck(set_to_feet(4, 5))]
    above, below = asks("deck height", low=1.45), asks("deck height", "at most", high=1.3)
    between = asks("deck height", "between", low=1.3, high=1.45)
    assert judged(stage, above)["verdicts"][0]["notes"] == ["Set to 1.52 m."]
    assert judged(stage, below)["verdicts"][0]["notes"] == ["Set to 1.22 m."]
    assert sorted(words(judged(stage, above, below))) == ["fits, with a note", "short"]
    assert words(judged(stage, between)) == ["short"]
    assert words(judged([deck(set_to_feet(4, 4.5, 5))], between)) == ["fits, with a note"]
    feet = asks("deck height", low=4.5 * FOOT_M)
    told = judged([deck(set_from(3 * FOOT_M, 5 * FOOT_M))], feet)["judged_in"]
    assert told == ["Set for this show: Deck, height: 1.37 m (4'-6\")."]


@pytest.mark.parametrize(
    ("need", "word"),
    [
        (asks("deck height", low=0.8), "fits"),
        (asks("deck height", "at most", high=1.5), "fits"),
        (asks("deck height", low=1.5), "short"),
        (asks("deck height", "between", low=0.8, high=1.5), "fits"),
    ],
)
def test_what_any_setting_does_or_none_needs_no_choice(need: Record, word: str) -> None:
    result = judged([deck(ANYWHERE)], need)
    assert words(result) == [word]
    assert result["judged_in"] == []
    assert result["verdicts"][0]["notes"] == []


def test_what_nobody_knows_is_not_chosen() -> None:
    height = value("0.9 m to 1.4 m", None, least=0.9, most=1.4)
    (answer,) = judged([deck(height)], HIGH)["verdicts"]
    assert answer["verdict"] == "ask"
    assert answer["reason"] == "It is 0.9 m to 1.4 m, for not all is known."


@pytest.mark.parametrize(
    "state", [{"condition": "out of service"}, {"terms": "not for visitors"}], ids=str
)
def test_a_line_that_cannot_be_used_is_set_to_nothing(state: Record) -> None:
    result = judged([deck(ANYWHERE, **state)], HIGH)
    assert words(result) == ["short"]
    assert result["judged_in"] == []
    beside = judged([deck(ANYWHERE, **state), deck(ANYWHERE, "Other")], HIGH, LOW)
    assert sorted(words(beside)) == ["fits, with a note", "short"]


def test_values_of_two_lines_are_set_each_by_itself() -> None:
    house = pack(stage=[deck(ANYWHERE)], access=[item("dock", "Dock", height=set_from(0.8, 1.3))])
    result = fit(house, [rider(HIGH, asks("dock height", "at most", high=1.0))])
    assert words(result) == ["fits, with a note", "fits, with a note"]
    assert result["judged_in"] == [
        "Set for this show: Deck, height: 1.20 m (3'-11\"); Dock, height: 1.00 m (3'-3 1/2\")."
    ]


def test_acts_of_one_day_find_one_setting() -> None:
    riders = [rider(HIGH, act="One"), rider(LOW, act="Two")]
    assert sorted(words(fit(pack(stage=[deck(ANYWHERE)]), riders))) == [
        "fits, with a note",
        "short",
    ]


def test_what_stays_on_deck_is_judged_at_the_same_setting() -> None:
    depth = item("deck", "Deck", usable_depth=set_from(6.0, 10.0))
    riders = [
        rider(asks("stage depth", low=8.0), act="One", stays_m=0.0),
        rider(act="Two", stays_m=1.0),
    ]
    result = fit(pack(stage=[depth]), riders)
    # 8 m, 1 m that stays and the aisle of 0.9 m need more than the 8 m that the act asks.
    assert words(result) == ["fits, with a note", "fits, with a note"]
    assert result["verdicts"][1]["fact"]["text"] == "9.90 m (set from 6.0 m to 10.0 m)"


def test_alternatives_are_set_too() -> None:
    either = asks("deck height", sort="any", any=[asks("deck height", low=2.0), LOW])
    assert judged([deck(ANYWHERE)], either)["judged_in"] == [
        "Set for this show: Deck, height: 1.00 m (3'-3 1/2\")."
    ]


def configured() -> Record:
    """A house of two configurations, each with a deck that is set."""
    return pack(
        house=[item("configuration", "Low"), item("configuration", "Tall")],
        stage=[
            deck(set_from(0.5, 1.1), "Low deck", configurations=a_list("Low")),
            deck(ANYWHERE, "Tall deck", configurations=a_list("Tall")),
        ],
    )


def test_other_configurations_are_told_at_their_best_and_their_settings_are_not_listed() -> None:
    result = fit(configured(), [rider(HIGH)])
    assert result["judged_in"] == [
        "Judged in the configuration Tall; of 2, none suits this show better.",
        "Set for this show: Tall deck, height: 1.20 m (3'-11\").",
        "In Low: 1 short; worse there: deck height.",
    ]
    assert len(result["others"]) == 1


def test_between_configurations_of_one_day_nothing_is_chosen() -> None:
    riders = [
        rider(HIGH, act="One", configuration="Tall"),
        rider(act="Two", configuration="Low"),
    ]
    answer = fit(configured(), riders)["verdicts"][0]
    assert answer["verdict"] == "ask"
    assert answer["reason"] == "It is set from 0.9 m to 1.4 m; ask to what for this show."


def test_an_unknown_configuration_leaves_what_depends_on_settings_to_ask() -> None:
    result = fit(configured(), [rider(HIGH, configuration="Round")])
    assert words(result) == ["ask"]


def test_more_than_are_compared_are_asked() -> None:
    decks = [deck(ANYWHERE, f"Deck {number}") for number in range(4)]
    # Each is set to one of the amounts asked, the lower end or the upper one.
    assert 4**3 <= MOST < 4**4
    assert words(judged(decks[:3], HIGH, LOW)) == ["fits, with a note"] * 2
    # A deck that cannot be used is set to nothing, so it does not count.
    broken = deck(ANYWHERE, "Broken", condition="out of service")
    assert words(judged([*decks[:3], broken], HIGH, LOW)) == ["fits, with a note"] * 2
    more = asks("deck height", low=1.5), asks("deck height", low=0.5)
    result = judged(decks, HIGH, LOW, *more)
    assert words(result) == ["ask", "ask", "short", "fits"]
    assert result["judged_in"] == []


@pytest.mark.parametrize(
    ("needs", "amount"),
    [
        ([HIGH, asks("deck height", low=1.1)], "1.20 m"),
        ([LOW, asks("deck height", "at most", high=1.1)], "1.00 m"),
    ],
    ids=["more", "less"],
)
def test_where_all_ask_for_more_or_all_for_less_one_setting_is_enough(
    needs: list[Record], amount: str
) -> None:
    many = [deck(ANYWHERE, f"Deck {number}") for number in range(10)]
    for answer in judged(many, *needs)["verdicts"]:
        assert answer["verdict"] == "fits, with a note"
        assert f"Set to {amount}." in answer["notes"]


def some_height(dice: Random) -> tuple[Record, list[float]]:
    """A height in decimetres that is set, and every exact one that it may be set to. [m]"""
    least = dice.randint(5, 12)
    most = least + dice.randint(1, 6)
    if dice.random() < 0.5:
        sampled = [step / 20 for step in range(2 * least, 2 * most + 1)]
        return set_from(least / 10, most / 10), sampled
    metres = sorted({least / 10, most / 10, dice.randint(least, most) / 10})
    ends = {"least": metres[0], "most": metres[-1]}
    return value("set to", None, **ends, can_be_set=True, settings=metres), metres


def some_needs(dice: Random, what: str) -> list[Record]:
    """Needs of a height, in decimetres. [m]"""
    needs = []
    for _ in range(dice.randint(1, 3)):
        low = dice.randint(4, 18)
        high = low + dice.randint(0, 3)
        way = dice.choice(["at least", "at most", "between"])
        strictness = dice.choice(["must", "must", "should"])
        needs.append(asks(what, way, low=low / 10, high=high / 10, strictness=strictness))
    return needs


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(range(2000), law="the best exact value", usually=25))
def test_a_show_fares_as_at_the_best_of_all_exact_values_put_in_its_place(seed: int) -> None:
    dice = Random(seed)
    height, exact = some_height(dice)
    other, other_exact = some_height(dice)
    show = [rider(*some_needs(dice, "deck height"), *some_needs(dice, "dock height"))]

    def fare(one: Record, two: Record) -> tuple[int, int, int]:
        house = pack(stage=[deck(one)], access=[item("dock", "Dock", height=two)])
        return fare_of(fit(house, show)["verdicts"])

    # Needs of a deck read no dock, so what is best of one does not hang on the other.
    decks = [fare(value("x", each), other) for each in exact]
    docks = [fare(height, value("x", each)) for each in other_exact]
    assert fare(height, other) == min(decks) == min(docks)


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(range(2000), law="the best of two decks", usually=10))
def test_two_decks_fare_as_at_the_best_pair_of_exact_values(seed: int) -> None:
    dice = Random(seed)
    one, exact = some_height(dice)
    two, other_exact = some_height(dice)
    show = [rider(*some_needs(dice, "deck height")[:2])]

    def fare(first: Record, second: Record) -> tuple[int, int, int]:
        house = pack(stage=[deck(first, "One"), deck(second, "Two")])
        return fare_of(fit(house, show)["verdicts"])

    # Needs turn at whole decimetres, so every second of many samples tells the same.
    samples = [each[::2] if len(each) > 3 else each for each in (exact, other_exact)]
    best = min(fare(value("x", first), value("x", second)) for first, second in product(*samples))
    assert fare(one, two) == best


def test_the_rules_of_heights_are_no_sums_and_not_legal() -> None:
    # The laws above stand on it: what adds up is counted by its least, not set.
    rules = [rule for rule in RULES if rule["key"] in ("deck height", "dock height")]
    assert [(rule["combine"], rule["legal"]) for rule in rules] == [("best", False)] * 2
