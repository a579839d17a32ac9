"""What a house has not said is one question, however many lines of a rider hang on it."""

import json
from collections.abc import Callable, Mapping
from copy import deepcopy
from functools import cache
from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack, Result, RiderAsked
from builder.pipeline import pack_of, venue_of
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import asks, item, pack, rider, value
from tests.sweep import RIDERS, folder

Change = Callable[[Any], None]
MANY = "demanding.yml"
HANGS = "\n".join(
    f"  - {{name: H{at}, hoists: counted, supports: [{{across: {at} m SL, depth: 4.9 m US, load: 10"
    " kg}]}"
    for at in (1, 3, 6)
)


def key_unknown(*path: str | int) -> Change:
    """Nobody knows what stands at a path."""

    def change(data: Any) -> None:
        for step in path[:-1]:
            data = data[step]
        data[path[-1]] = "unknown"

    return change


LACKS: Mapping[str, tuple[str, Change, tuple[str, ...]]] = {
    "access": (
        "access.yml",
        key_unknown("vehicles"),
        ("Access platforms", "Forklifts", "Pallet trucks", "Rated capacity of a forklift"),
    ),
    "sound": (
        "sound.yml",
        key_unknown("splits"),
        (
            "Input lines from the stage",
            "Legs of the split, the direct one included",
            "Ways of the split",
        ),
    ),
    "power": (
        "power.yml",
        key_unknown("shore_power"),
        ("Outlets for buses", "Rating of an outlet for buses"),
    ),
    "stage": ("stage.yml", key_unknown("furnishings"), ("Crowd barrier",)),
    "rigging": (
        "rigging.yml",
        key_unknown("limits", "whole_roof"),
        ("What may still hang in all, the house's rig in place",),
    ),
}
"""What a house does not know, one thing in each department, and which needs hang on it."""


WEIGHT = "Can you tell the weight of Front truss itself?"


def items_of(record: FitPack, key: str) -> list[Any]:
    """The items of a section."""
    return [item for each in record["sections"] if each["key"] == key for item in each["items"]]


def test_a_hang_that_nobody_weighed_is_one_question_for_all_that_hangs_on_it() -> None:
    there = folder("demo")
    data = json.loads(there.texts["rigging.yml"])
    key_unknown("hangs", 0, "weight")(data)
    texts = {**there.texts, "rigging.yml": json.dumps(data, ensure_ascii=False)}
    record = fit_record(pack_of(venue_of(texts, there.photos)))
    assert {item["words"].get("open", "") for item in items_of(house(), "rigging")} == {""}
    needs = "act: A\nneeds: [{what: flown total, at least: 100 kg}]\n"
    result = fit(record, [rider_of(f"{needs}hangs:\n{HANGS}\n", file="a.yml", rules=RULES)])
    (question,) = [each for each in asked(result) if "weight of" in each]
    assert question.startswith(WEIGHT)
    assert "What may still hang in all" in question
    assert "Hang: H1" in question
    assert not any("what hangs there already" in each for each in asked(result))


MORE: Mapping[str, tuple[str, Change, tuple[str, ...]]] = {
    "route": (
        "access.yml",
        key_unknown("routes", 0, "leads_to"),
        (
            "Tightest height from a dock to the deck",
            "Tightest width from a dock to the deck",
        ),
    )
}
"""What a house knows in part of one thing."""


def house(*lacks: str) -> FitPack:
    """The demo, not knowing some things."""
    there = folder("demo")
    texts = dict(there.texts)
    for name in lacks:
        file, change, _ = {**LACKS, **MORE}[name]
        data = deepcopy(json.loads(texts[file]))
        change(data)
        texts[file] = json.dumps(data, ensure_ascii=False)
    return fit_record(pack_of(venue_of(texts, there.photos)))


@cache
def many_lines() -> RiderAsked:
    """A rider of many lines."""
    path = next(path for path in RIDERS if path.name == MANY)
    return rider_of(path.read_text("utf-8"), file=path.name, rules=RULES)


def titles(question: str) -> list[str]:
    """The needs that a question names, as their titles begin."""
    return sorted(part.partition(": ")[2] for part in question.split("rider line ")[1:])


def asked(result: Result) -> list[str]:
    """Every question to the house."""
    return [question for group in result["questions"] for question in group["questions"]]


@pytest.mark.parametrize("name", [*LACKS, *MORE])
def test_what_a_house_does_not_know_is_one_question_that_names_every_need(name: str) -> None:
    before, after = fit(house(), [many_lines()]), fit(house(name), [many_lines()])
    (question,) = [each for each in asked(after) if each not in asked(before)]
    needs = ({**LACKS, **MORE})[name][2]
    assert len(titles(question)) == len(needs)
    for told, need in zip(titles(question), needs, strict=True):
        assert told.startswith(need)
    for now, was in zip(after["verdicts"], before["verdicts"], strict=True):
        assert now["verdict"] == ("ask" if now["title"] in needs else was["verdict"])


def test_one_thing_unknown_in_each_department_is_one_question_for_each() -> None:
    before, after = fit(house(), [many_lines()]), fit(house(*LACKS), [many_lines()])
    new = {
        group["department"]: [each for each in group["questions"] if each not in asked(before)]
        for group in after["questions"]
    }
    counts = {department: len(questions) for department, questions in new.items() if questions}
    assert counts == dict.fromkeys(LACKS, 1)
    lacking = [answer for answer in after["verdicts"] if answer["lacks"]]
    assert all(answer["verdict"] == "ask" for answer in lacking)
    assert "access.whole.vehicles" in {
        lack["key"] for answer in lacking for lack in answer["lacks"]
    }


def test_two_figures_of_one_point_lack_one_thing() -> None:
    point = item("point", "P1", limit=value(standing="unknown"), left=value(standing="unknown"))
    for name in ("limit", "left"):
        point["words"][f"{name}.lacks"] = "a limit"
    both = [asks("point rating", low=100.0), asks("point left", low=100.0)]
    (question,) = asked(fit(pack(rigging=[point]), [rider(*both)]))
    assert question.startswith("What do you say of this: P1, a limit? (Act, rider line 3: ")
    (alone,) = asked(fit(pack(rigging=[point]), [rider(both[0])]))
    assert alone.startswith("What does the strongest point carry? (")


def test_two_needs_of_what_a_house_lists_none_of_ask_for_all_of_the_sort() -> None:
    both = [asks("deck load", low=100.0), asks("point load", low=100.0)]
    (question,) = asked(fit(pack(stage=[]), [rider(*both)]))
    assert question.startswith("What do you say of this: stage, every deck that there is? (")


def test_two_facts_of_one_thing_stay_two_questions() -> None:
    deck = item(
        "deck", "Deck", load=value(standing="unknown"), point_load=value(standing="unknown")
    )
    both = [asks("deck load", low=100.0), asks("point load", low=100.0)]
    assert len(asked(fit(pack(stage=[deck]), [rider(*both)]))) == 2


def test_hangs_under_one_limit_ask_for_it_once() -> None:
    text = f"act: Act\nhangs:\n{HANGS}\n"
    show = rider_of(text, file="a.yml", rules=RULES)
    before, after = fit(house(), [show]), fit(house("rigging"), [show])
    questions = [each for each in asked(after) if each not in asked(before)]
    about_roof = [each for each in questions if "the whole roof" in each]
    assert len(about_roof) == 1
    assert all(f"Hang: H{at}" in about_roof[0] for at in (1, 3, 6))


@pytest.mark.parametrize(
    ("path", "words"),
    [
        (("limits", "each_point"), "a limit by the rule for each point"),
        (("limits", "spacing_at_least"), "how near two loaded points may be to each other"),
    ],
)
def test_a_rule_for_all_points_that_nobody_knows_is_one_question(
    path: tuple[str, str], words: str
) -> None:
    data = deepcopy(json.loads(folder("demo").texts["rigging.yml"]))
    key_unknown(*path)(data)
    there = {**folder("demo").texts, "rigging.yml": json.dumps(data, ensure_ascii=False)}
    lacking = fit_record(pack_of(venue_of(there, folder("demo").photos)))
    shows = [rider_of(each.read_text("utf-8"), file=each.name, rules=RULES) for each in RIDERS]
    (theatre,) = [show for show in shows if show["act"] == "Pale Ferrymen"]
    questions = [each for each in asked(fit(lacking, [theatre])) if words in each]
    assert len(questions) == 1
    assert questions[0].count("Hang: ") > 1
    assert not any("How near may two" in each for each in asked(fit(lacking, [theatre])))
