"""
The bound by tables: against every choice, against an integer program on mixes of 120 and 208 V, and
where it must say nothing.
"""

import random
from itertools import product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from builder.formulas.circuits import Load, Node, standing, tree_of
from builder.formulas.free_circuits import Outlet, free_at_once
from builder.formulas.nested_bounds import Item
from builder.formulas.nested_grid import bound_by_grid
from builder.formulas.phasors import PHASES, line_currents

SETS = (*((phase,) for phase in PHASES), ("L1", "L2"), ("L2", "L3"), ("L1", "L3"), PHASES)


@st.composite
def small(draw: st.DrawFn) -> tuple[list[Item], dict[tuple[str, str], int]]:
    """Two panels under a supply, a few outlets of a few sizes on each."""
    items = []
    for number in range(draw(st.integers(1, 5))):
        path = draw(st.sampled_from([("A", "Supply"), ("B", "Supply"), ("Supply",)]))
        weight_ma = draw(st.sampled_from([8_000, 16_000, 24_000]))
        items.append(
            Item(
                f"i{number}", path, draw(st.sampled_from(SETS)), weight_ma, draw(st.integers(1, 3))
            )
        )
    room = {
        (name, phase): draw(st.integers(0, 60)) * 1000
        for name in ("A", "B", "Supply")
        for phase in PHASES
    }
    return items, room


def best_of_every_choice(items: list[Item], room: dict[tuple[str, str], int]) -> int:
    """Most items, by trying every number of each."""
    best = 0
    for numbers in product(*(range(item.count + 1) for item in items)):
        used: dict[tuple[str, str], int] = {}
        for item, number in zip(items, numbers, strict=True):
            for node in item.path:
                for phase in item.phases:
                    used[node, phase] = used.get((node, phase), 0) + number * item.weight_ma
        if all(room[key] >= current_ma for key, current_ma in used.items()):
            best = max(best, sum(numbers))
    return best


@pytest.mark.law
@settings(max_examples=60)
@given(small())
def test_small_tables_give_the_most_of_every_choice(
    case: tuple[list[Item], dict[tuple[str, str], int]],
) -> None:
    assert bound_by_grid(*case) == best_of_every_choice(*case)


@pytest.mark.law
def test_wide_limits_give_a_bound_that_no_choice_passes(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("builder.formulas.nested_grid.MOST_CELLS", 8)
    rng = random.Random(3)
    for _ in range(40):
        items = [
            Item(
                f"i{k}",
                rng.choice([("A", "S"), ("B", "S")]),
                rng.choice(SETS),
                rng.choice([8000, 16000]),
                rng.randint(1, 2),
            )
            for k in range(4)
        ]
        room = {
            (name, phase): rng.randint(0, 40) * 1000 for name in ("A", "B", "S") for phase in PHASES
        }
        assert bound_by_grid(items, room) >= best_of_every_choice(items, room)


@pytest.mark.source(
    "by hand: 13.331 A and 16.003 A have no common measure above 1 mA, so a room of 400 A would"
    " make 400,000 units"
)
def test_currents_without_a_common_measure_say_nothing() -> None:
    items = [Item("a", ("S",), ("L1",), 13_331, 40), Item("b", ("S",), ("L1",), 16_003, 40)]
    assert bound_by_grid(items, {("S", "L1"): 400_000}) == 80


def a_208_v_house(seed: int) -> tuple[list[Node], list[Load], list[Outlet]]:
    """
    Services of 120/208 V with panels of outlets between line and neutral, between two lines, and on
    three.
    """
    rng = random.Random(seed)
    services = rng.randint(1, 3)
    nodes, loads, outlets = (
        [Node("Supply", None, rng.choice([100, 150]) * services, continuous_share=0.8)],
        [],
        [],
    )
    for k in range(services):
        nodes.append(Node(f"S{k}", "Supply", rng.choice([100, 200]), continuous_share=0.8))
        loads.append(
            Load(
                f"l{k}",
                f"S{k}",
                line_currents(
                    phases=(rng.choice(PHASES),), current_a=rng.randint(1, 20), power_factor=0.9
                ),
            )
        )
        for panel in (f"P{k}.{j}" for j in range(rng.randint(1, 2))):
            nodes.append(Node(panel, f"S{k}", rng.choice([60, 100]), continuous_share=0.8))
            outlets += [
                Outlet(
                    f"{panel} {some}",
                    panel,
                    some,
                    rng.choice([16, 24, 32, 40]),
                    count=rng.randint(1, 4),
                )
                for some in SETS
            ]
    return nodes, loads, outlets


@pytest.mark.source(
    "scipy 1.14 or newer, scipy.optimize.milp (HiGHS): the most outlets as an integer program"
)
@pytest.mark.parametrize("seed", range(8))
def test_mixes_of_120_and_208_v_are_proven_and_equal_an_integer_program(seed: int) -> None:
    nodes, loads, outlets = a_208_v_house(seed)
    tree, stands = tree_of(nodes), standing(nodes, loads)
    rows = [(name, k) for name in tree.nodes for k in range(3)]
    used = np.array(
        [
            [o.ampere_a * (n in tree.path[o.node] and PHASES[k] in o.phases) for o in outlets]
            for n, k in rows
        ]
    )
    left = [max(0.0, stands[n].limit_a[k] - stands[n].booked_a[k]) + 1e-6 for n, k in rows]
    counts = [outlet.count for outlet in outlets]
    solved = milp(
        -np.ones(len(outlets)),
        constraints=LinearConstraint(used, -np.inf, left),
        integrality=np.ones(len(outlets)),
        bounds=Bounds(0, counts),
    )
    found = free_at_once(nodes, loads, outlets)
    assert found.proven
    assert found.outlets == round(-solved.fun)
