"""A show in a house of several stages: each act in one space, judged as a whole."""

import json
from copy import deepcopy
from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.fit.records import FitPack
from builder.fit.spaces.sentences import AT_ONCE
from tests.spaces.houses import asked, record, texts_with

WIDE = "needs:\n  - {what: stage width, at least: 10 m}\n  - {what: capacity, at least: 500}\n"
SMALL = "needs:\n  - {what: stage width, at least: 5 m}\n  - {what: capacity, at least: 100}\n"
DEEP = "needs:\n  - {what: stage width, at least: 10 m}\n  - {what: stage depth, at least: 9 m}\n"


def show(act: str, needs: str, space: str = "") -> str:
    """A rider."""
    where = f"space: {space}\n" if space else ""
    return f"act: {act}\n{where}{needs}"


def words(result: Any, act: str) -> list[str]:
    """The verdicts of an act, in its own order."""
    return [each["verdict"] for each in result["verdicts"] if each["act"] == act]


def places(result: Any) -> list[str]:
    """The space of each act, in the riders' order."""
    return [act["arrangement"]["space"] for act in result["acts"]]


def test_a_show_is_judged_in_the_one_space_that_suits_it_best() -> None:
    result = fit(record(), asked(show("Wide", WIDE)))
    assert places(result) == ["Great hall"]
    assert words(result, "Wide") == ["fits", "fits"]
    assert (
        result["judged_in"][0] == "Judged in Great hall; of 3 spaces, none suits this show better."
    )
    assert result["judged_in"][1].startswith("In Studio B; Yard: 2 short")


def test_a_show_that_names_a_space_is_held_to_it() -> None:
    result = fit(record(), asked(show("Wide", WIDE, "Studio B")))
    assert places(result) == ["Studio B"]
    assert words(result, "Wide") == ["short", "short"]
    assert result["judged_in"] == ["Judged in Studio B."]
    assert {each["fact"]["item"] for each in result["verdicts"] if each["fact"]} == {
        "Studio floor",
        "Black room",
    }


def test_two_needs_are_never_met_by_two_rooms() -> None:
    result = fit(record(), asked(show("Deep", DEEP)))
    assert places(result) == ["Great hall"]
    assert words(result, "Deep") == ["fits", "short"]


def test_a_space_out_of_service_answers_nothing() -> None:
    result = fit(record(), asked(show("Small", SMALL, "Yard")))
    assert words(result, "Small") == ["short", "short"]
    assert {each["reason"] for each in result["verdicts"]} == {"Yard: It is out of service."}


def test_a_space_of_which_nobody_knows_whether_it_works_is_asked() -> None:
    house: Any = deepcopy(record())
    for section in house["sections"]:
        for item in section["items"]:
            if item["kind"] == "space" and item["name"] == "Yard":
                item["condition"] = "unknown"
    result = fit(house, asked(show("Small", SMALL, "Yard")))
    assert words(result, "Small") == ["ask", "ask"]
    assert "Is this in service on the day of the show: Yard?" in json.dumps(result)


def test_a_space_that_the_house_has_not_is_asked_with_the_names_of_those_that_it_has() -> None:
    result = fit(record(), asked(show("Wide", WIDE, "Ballroom")))
    assert words(result, "Wide") == ["fits", "fits", "ask"]
    assert result["verdicts"][-1]["reason"] == (
        "The house has no space Ballroom; it has: Great hall; Studio B; Yard."
    )
    assert "which space is meant by Ballroom" in json.dumps(result["act_questions"])
    assert result["verdict"] == "ask"


def test_a_space_whose_name_holds_another_is_another() -> None:
    result = fit(record(), asked(show("Wide", WIDE, "Great")))
    assert result["verdicts"][-1]["title"] == "Space"


def test_an_act_plays_where_another_of_the_day_says_that_it_plays() -> None:
    result = fit(record(), asked(show("Wide", WIDE), show("Small", SMALL, "Studio B")))
    assert places(result) == ["Studio B", "Studio B"]


def test_acts_in_two_spaces_are_each_judged_in_their_own_and_what_these_share_is_asked() -> None:
    riders = asked(
        show("Small", SMALL, "Studio B"),
        show("Wide", WIDE, "Great hall"),
        show("Third", SMALL, "Studio B"),
    )
    result = fit(record(), riders)
    assert places(result) == ["Studio B", "Great hall", "Studio B"]
    firsts = [(each["act"], each["title"]) for each in result["verdicts"][:6]]
    assert [act for act, _ in firsts] == ["Small", "Small", "Wide", "Wide", "Third", "Third"]
    assert [each["verdict"] for each in result["verdicts"][:6]] == ["fits"] * 6
    shared = next(
        each for each in result["verdicts"] if each["title"] == "Several spaces on one day"
    )
    assert shared["verdict"] == "ask"
    assert shared["reason"].endswith("all of them at once: Sound, Access, Power.")


def in_two(first: int, second: int, what: str = "microphones") -> list[Any]:
    """What two acts in two spaces are told together of one thing that the spaces share."""
    need = f"needs:\n  - {{what: {what}, at least: %s}}\n"
    riders = asked(show("A", need % first, "Great hall"), show("B", need % second, "Studio B"))
    found = fit(record(), riders)["verdicts"]
    return [each for each in found if each["act"] == "The day" and each["title"] != AT_ONCE]


def test_what_two_spaces_share_is_added_up_where_both_have_a_show() -> None:
    # Nine microphones work, for all spaces together.
    (told,) = in_two(2, 6)
    assert told["verdict"] == "fits, with a note"
    assert told["need"] == "at least 8 together (2 + 6)"
    assert told["reason"] == "1 to spare."


def test_what_is_free_again_after_one_act_is_asked_where_it_does_not_serve_both_at_once() -> None:
    (told,) = in_two(6, 6)
    assert told["verdict"] == "ask"
    assert told["reason"] == (
        "There is enough for each of them, and not for all at the same hours. Short by 3."
    )
    assert "at the same hours" in told["act_question"]
    assert told["question"] == ""


def test_what_one_act_alone_is_short_of_is_not_told_twice() -> None:
    assert in_two(20, 6) == []


def test_places_at_the_one_dock_add_up_over_the_spaces() -> None:
    (told,) = in_two(1, 1, "dock spaces")
    assert told["verdict"] == "short"
    assert told["reason"] == "Short by 1."


def test_what_a_space_has_for_itself_is_not_added_up_with_what_all_share() -> None:
    own = "stock:\n  - {name: Own microphone, kind: microphone, count: 20, working: 20}\n"
    house = record(texts_with(**{"spaces/hall/sound.yml": own}))
    need = "needs:\n  - {what: microphones, at least: 9}\n"
    riders = asked(show("A", need, "Great hall"), show("B", need, "Studio B"))
    told = [each for each in fit(house, riders)["verdicts"] if each["act"] == "The day"]
    assert [each["title"] for each in told] == [AT_ONCE]


def test_one_space_alone_has_nothing_to_share() -> None:
    result = fit(record(), asked(show("A", SMALL, "Studio B"), show("B", SMALL, "Studio B")))
    assert not [each for each in result["verdicts"] if each["title"] == AT_ONCE]


@pytest.mark.parametrize("gone", ["Studio B", "Yard"])
def test_a_space_less_changes_no_verdict_in_another(gone: str) -> None:
    whole = record()
    rider = asked(show("Wide", WIDE, "Great hall"))
    before = fit(whole, rider)["verdicts"]
    assert fit(without(whole, gone), rider)["verdicts"] == before


def without(pack: FitPack, name: str) -> FitPack:
    """A house without one of its spaces."""
    gone = next(space for space in pack["spaces"] if space["name"] == name)
    return {
        **pack,
        "sections": [each for each in pack["sections"] if each.get("space", "") != gone["key"]],
        "spaces": [space for space in pack["spaces"] if space != gone],
    }
