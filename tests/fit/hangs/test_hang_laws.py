"""Laws of the hang plan that hold for every roof and plan drawn by chance."""

import copy
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.fit.hangs.loads import loads_of, most_on_kg
from builder.fit.interpreter import fit
from tests.fit.hang_pairs import a_hang, rigging_items
from tests.fit.pairs import Dice
from tests.fit.sample import Record, asks, pack, rider

SEEDS = st.integers(0, 1_000_000)


def drawn(seed: int) -> tuple[list[Record], list[Record]]:
    """A roof and a plan of a few hangs."""
    dice = Dice(seed)
    blank = {**asks("x"), "sort": "hang", "department": "rigging"}
    return rigging_items(dice), [
        {**blank, **a_hang(dice)} for _ in range(dice.random.randint(1, 4))
    ]


def words(house: list[Record], hangs: list[Record]) -> list[str]:
    """The verdicts' words."""
    return [each["verdict"] for each in fit(pack(rigging=house), [rider(*hangs)])["verdicts"]]


def never_from_fit_to_short(before: list[str], after: list[str]) -> bool:
    """Whether no fit became a short."""
    return not any(
        one.startswith("fits") and other == "short"
        for one, other in zip(before, after, strict=True)
    )


def lighter(hangs: list[Record], chance: random.Random) -> list[Record]:
    """The same plan with one hang at a share of its weight."""
    found = copy.deepcopy(hangs)
    one, share = chance.choice(found), chance.choice([0.0, 0.5, 0.9])
    for each in one["supports"]:
        each["load_kg"] = None if each["load_kg"] is None else each["load_kg"] * share
    for load in one["loads"]:
        load["kg"] *= share
    return found


@settings(max_examples=150)
@given(SEEDS)
def test_less_load_never_turns_a_fit_into_a_short(seed: int) -> None:
    house, hangs = drawn(seed)
    assert never_from_fit_to_short(
        words(house, hangs), words(house, lighter(hangs, random.Random(seed)))
    )


@settings(max_examples=150)
@given(SEEDS)
def test_more_rating_never_turns_a_fit_into_a_short(seed: int) -> None:
    house, hangs = drawn(seed)
    stronger = copy.deepcopy(house)
    for item in stronger:
        for name in ("limit", "left"):
            if (
                item["kind"] != "hoist"
                and name in item["values"]
                and item["values"][name]["number"] is not None
                and seed % 3
            ):
                item["values"][name]["number"] += 250.0
    assert never_from_fit_to_short(words(house, hangs), words(stronger, hangs))


@settings(max_examples=150)
@given(SEEDS)
def test_where_every_number_is_unknown_nothing_fits_and_nothing_passes_a_limit(seed: int) -> None:
    house, hangs = drawn(seed)
    for item in house:
        item["numbers"].pop("carried", None)
        for name in ("limit", "left", "spacing_at_least"):
            if name in item["values"]:
                item["values"][name] = {
                    **item["values"][name],
                    "number": None,
                    "standing": "unknown",
                    "text": "",
                }
    for each in fit(pack(rigging=house), [rider(*hangs)])["verdicts"]:
        assert not each["verdict"].startswith("fits")
        assert "too much" not in each["reason"]


@settings(max_examples=150)
@given(SEEDS)
def test_all_of_a_hang_comes_on_its_supports_in_every_case(seed: int) -> None:
    house, hangs = drawn(seed)
    for hang in hangs:
        brought, count = loads_of(hang, house_of(house)), len(hang["supports"])
        factor = next(
            (
                item["values"]["factor"]["number"]
                for item in house
                if item["kind"] == "dynamic_factor"
            ),
            1.0,
        )
        total_kg = sum(load["kg"] for load in hang["loads"]) + sum(
            support["load_kg"] or 0.0 for support in hang["supports"]
        )
        # Load cells let each support carry so much more than its level load.
        held = hang["held"]
        shares = [1.0] if held is None else [1.0, 1.0 + held]
        wholes = [pytest.approx(total_kg * factor * share) for share in shares]
        for case in brought["high"]:
            for way in case:
                assert sum(kg for parts in way for kg in parts) in wholes
        every = [(support, 1.0) for support in range(count)]
        most_kg = most_on_kg(brought["high"], every, brought["hoist_high"])
        assert most_kg - brought["hoist_high"] * count in wholes


@settings(max_examples=150)
@given(SEEDS)
def test_a_house_and_a_plan_in_the_mirror_answer_alike(seed: int) -> None:
    house, hangs = drawn(seed)
    mirrored_house, mirrored = copy.deepcopy(house), copy.deepcopy(hangs)
    for item in mirrored_house:
        if "at.across" in item["numbers"]:
            item["numbers"]["at.across"] *= -1
    for hang in mirrored:
        for support in hang["supports"]:
            support["across_m"] = None if support["across_m"] is None else -support["across_m"]
    assert words(house, hangs) == words(mirrored_house, mirrored)


def house_of(items: list[Record]) -> Record:
    """The items as a section."""
    return {"key": "rigging", "items": items}
