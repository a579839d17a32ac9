"""The most items under nested limits, against every choice there is."""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas.nested_bounds import (
    Item,
    bound_by_branches,
    bound_by_kinds,
    demand_of,
    on_one_set,
    singles,
    upper_bound,
)
from builder.formulas.nested_limits import most_items

PATHS = (("a", "root"), ("b", "root"), ("c", "a", "root"), ("root",))
PHASE_SETS = (("L1",), ("L2",), ("L3",), ("L1", "L2"), ("L2", "L3"), ("L1", "L2", "L3"))


@st.composite
def cases(draw: st.DrawFn) -> tuple[list[Item], dict[tuple[str, str], int]]:
    room = {
        (node, phase): draw(st.integers(0, 12))
        for node in ("root", "a", "b", "c")
        for phase in ("L1", "L2", "L3")
    }
    items = [
        Item(
            f"i{k}",
            draw(st.sampled_from(PATHS)),
            draw(st.sampled_from(PHASE_SETS)),
            draw(st.integers(1, 6)),
            draw(st.integers(1, 3)),
        )
        for k in range(draw(st.integers(0, 5)))
    ]
    return items, room


def fits(items: list[Item], numbers: tuple[int, ...], room: dict[tuple[str, str], int]) -> bool:
    used = dict.fromkeys(room, 0)
    for item, number in zip(items, numbers, strict=True):
        for node in item.path:
            for phase in item.phases:
                used[node, phase] += number * item.weight_ma
    return all(used[key] <= room[key] for key in room)


@pytest.mark.law
@settings(max_examples=300)
@given(cases())
def test_what_is_called_proven_is_the_best_of_all_choices(
    case: tuple[list[Item], dict[tuple[str, str], int]],
) -> None:
    items, room = case
    choice = most_items(items, room, step_bound=20_000)
    every = (
        numbers
        for numbers in product(*(range(item.count + 1) for item in items))
        if fits(items, numbers, room)
    )
    best = max(sum(numbers) for numbers in every)
    assert fits(items, tuple(choice.taken[item.name] for item in items), room)
    assert choice.at_most >= best
    assert choice.taken.total() == best == choice.at_most
    if items:
        assert upper_bound(items, room) >= best
        assert bound_by_kinds(items, room) >= best
        assert bound_by_branches(items, room) >= best


ITEMS_AND_ROOM = (
    (
        [
            Item("two of b", ("b", "root"), ("L1", "L2"), 3, 3),
            Item("one of b", ("b", "root"), ("L2",), 6, 1),
            Item("two of a", ("a", "root"), ("L2", "L3"), 8, 3),
            Item("two of the root", ("root",), ("L1", "L3"), 5, 2),
            Item("small", ("b", "root"), ("L1", "L3"), 2, 2),
        ],
        {"root": (20, 15, 12), "a": (21, 25, 12), "b": (9, 6, 12)},
    ),
    (
        [
            Item("small", ("root",), ("L1", "L2"), 2, 3),
            Item("two of b", ("b", "root"), ("L2", "L3"), 3, 2),
            Item("one of c", ("c", "a", "root"), ("L1",), 5, 1),
            Item("others of b", ("b", "root"), ("L1", "L3"), 5, 3),
            Item("one of b", ("b", "root"), ("L1",), 8, 1),
        ],
        {"root": (19, 7, 15), "a": (13, 5, 8), "b": (24, 9, 22), "c": (12, 9, 17)},
    ),
    (
        [
            Item("three", ("a", "root"), ("L1", "L2", "L3"), 2, 3),
            Item("one of a", ("a", "root"), ("L2",), 8, 3),
            Item("two of c", ("c", "a", "root"), ("L1", "L3"), 4, 2),
            Item("small", ("a", "root"), ("L3",), 2, 3),
            Item("others of c", ("c", "a", "root"), ("L2", "L3"), 5, 2),
        ],
        {"root": (9, 15, 25), "a": (17, 22, 24), "c": (20, 17, 23)},
    ),
)
"""Where neither the first answer nor the bounds are the end: the search goes to its leaves."""


@pytest.mark.law
@pytest.mark.parametrize(("items", "rooms"), ITEMS_AND_ROOM)
def test_a_search_to_its_leaves_finds_the_best_of_all_choices(
    items: list[Item], rooms: dict[str, tuple[int, int, int]]
) -> None:
    room = {
        (node, phase): left
        for node, of_node in rooms.items()
        for phase, left in zip(("L1", "L2", "L3"), of_node, strict=True)
    }
    every = product(*(range(item.count + 1) for item in items))
    best = max(sum(numbers) for numbers in every if fits(items, numbers, room))
    found = most_items(items, room, step_bound=20_000)
    assert fits(items, tuple(found.taken[item.name] for item in items), room)
    assert found.taken.total() == found.at_most == best


@pytest.mark.law
@given(cases(), st.integers(0, 3))
def test_a_search_that_gives_up_still_brackets_the_best(
    case: tuple[list[Item], dict[tuple[str, str], int]], step_bound: int
) -> None:
    items, room = case
    short, full = (
        most_items(items, room, step_bound=step_bound),
        most_items(items, room, step_bound=20_000),
    )
    assert fits(items, tuple(short.taken[item.name] for item in items), room)
    assert short.taken.total() <= full.taken.total() <= short.at_most


@pytest.mark.source(
    "by hand: 3 x 15 A left over hold no third outlet of 16 A a phase, though they add up to 45 A:"
    " 3 x 3 single ones of 16 A in 63 A"
)
def test_leftovers_of_three_phases_are_not_added_up() -> None:
    room = dict.fromkeys([("root", phase) for phase in ("L1", "L2", "L3")], 63)
    items = [Item(phase, ("root",), (phase,), 16, 5) for phase in ("L1", "L2", "L3")]
    items.append(Item("three", ("root",), ("L1", "L2", "L3"), 16, 1))
    assert upper_bound(items, room) == 11
    assert bound_by_kinds(items, room) == 9


@pytest.mark.source(
    "by hand: 63 A holds three of 16 A on each phase, or three of 16 A on all phases in step"
)
def test_exact_choices_by_kind() -> None:
    room = dict.fromkeys([("root", phase) for phase in ("L1", "L2", "L3")], 63)
    assert singles([Item(p, ("root",), (p,), 16, 5) for p in ("L1", "L2")], room) == {
        "L1": 3,
        "L2": 3,
    }
    assert on_one_set([Item("three", ("root",), ("L1", "L2", "L3"), 16, 5)], room) == {"three": 3}


@pytest.mark.source(
    "by hand: four of 16 A behind a 32 A limit let 32 A through to a root that could be asked for"
    " 32 + 20 A"
)
def test_a_limit_holds_back_what_arrives_above_it() -> None:
    room = {("root", "L1"): 100, ("a", "L1"): 32}
    items = [
        Item("behind", ("a", "root"), ("L1",), 16, 4),
        Item("beside", ("root",), ("L1",), 20, 1),
    ]
    assert demand_of(items, room) == {("a", "L1"): 64, ("root", "L1"): 52}
