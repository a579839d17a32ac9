"""What each node leaves to further loads, and what goes through a transformer."""

import cmath
import math
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas.circuit_order import circuits_in_order
from builder.formulas.circuits import Load, Node, standing, tree_of
from builder.formulas.free_circuits import Outlet, free_at_once
from builder.formulas.phasors import PHASES
from builder.formulas.rooms import rooms_for

SUPPLY = Node("Supply", None, 100)


def behind(rating_a: float, ratio: float = 0.5, **more: float) -> Node:
    """A transformer that mixes lines."""
    return Node("T", "Supply", rating_a, parent_a_per_a=ratio, winding="three lines", **more)


@pytest.mark.source(
    "by hand: 100 A / (0.5 × 2 / √3) = 173.2 A on each line; a transformer of 80 A takes 80 × 0.5 ×"
    " 2 / √3 = 46.19 A of each line of the supply"
)
def test_a_transformer_takes_its_share_of_its_source_before_others() -> None:
    for rating_a, left_t, left_s in ((400, 173.205, 0.0), (80, 80, 53.812)):
        nodes = [SUPPLY, behind(rating_a)]
        rooms = rooms_for(tree_of(nodes), standing(nodes, []), ["T"])
        assert rooms.left_a["T"] == pytest.approx((left_t,) * 3, abs=0.001)
        assert rooms.left_a["Supply"] == pytest.approx((left_s,) * 3, abs=0.001)
        assert rooms.path["T"] == ("T",)


@pytest.mark.law
def test_nothing_is_set_aside_where_nothing_stands_behind_it() -> None:
    nodes = [SUPPLY, behind(80)]
    rooms = rooms_for(tree_of(nodes), standing(nodes, []), ["Supply"])
    assert rooms.left_a["Supply"] == (100, 100, 100)
    assert not rooms.shared_out


@pytest.mark.source("by hand: 46.19 A set aside of 100 A leave three of 16 A a line, not six")
def test_outlets_beside_a_transformer_are_counted_beside_what_it_may_ask() -> None:
    rows = [
        Outlet("behind", "T", ("L1",), 16, 5),
        Outlet("beside", "Supply", ("L1",), 16, 6),
    ]
    found = free_at_once([SUPPLY, behind(80)], [], rows)
    assert dict(found.taken) == {"behind": 5, "beside": 3}
    assert (found.at_most, found.proven) == (11, False)


@pytest.mark.law
@settings(max_examples=60)
@given(
    st.floats(20, 120),
    st.floats(0.3, 1.2),
    st.lists(st.integers(0, 4), min_size=3, max_size=3),
    st.integers(0, 5),
    st.sampled_from([0.0, 0.9, -0.9]),
)
def test_outlets_that_are_counted_hold_before_a_delta_of_any_group(
    rating_a: float, ratio: float, counts: list[int], beside: int, lag: float
) -> None:
    nodes = [SUPPLY, behind(rating_a, ratio)]
    rows = [Outlet(phase, "T", (phase,), 16, n) for phase, n in zip(PHASES, counts, strict=True)]
    rows += [Outlet(f"B {phase}", "Supply", (phase,), 16, beside) for phase in PHASES]
    taken = dict(free_at_once(nodes, [], rows).taken)
    lags = (0.0, lag, 0.0)
    drawn = [
        cmath.rect(16 * taken[phase], k * -2 * math.pi / 3 - lags[k])
        for k, phase in enumerate(PHASES)
    ]
    for k, turn in product(range(3), (1, -1)):
        delta_a = abs(drawn[k] - drawn[(k + turn) % 3]) * ratio / math.sqrt(3)
        assert delta_a + 16 * taken[f"B {PHASES[k]}"] <= 100 + 1e-6


@pytest.mark.source("by hand: 100 A / (0.5 × 2 / √3) = 173.2 A on each line hold ten of 16 A")
def test_the_next_circuits_behind_a_transformer_stop_where_its_source_does() -> None:
    rows = [Outlet(phase, "T", (phase,), 16, 20) for phase in PHASES]
    assert len(circuits_in_order([SUPPLY, behind(400)], [], rows)) == 30


@pytest.mark.source("by hand: 63 A less 20 A that return already leave 43 A: two of 16 A on L1")
def test_a_neutral_smaller_than_its_lines_holds_the_next_circuits() -> None:
    nodes = [Node("Supply", None, 125, neutral_a=63)]
    loads = [Load("lamp", "Supply", (20 + 0j, 0j, 0j))]
    rows = [Outlet(phase, "Supply", (phase,), 16, 9) for phase in PHASES]
    order = [each.phase for each in circuits_in_order(nodes, loads, rows)]
    assert (order.count("L1"), order.count("L2"), order.count("L3")) == (2, 3, 3)
