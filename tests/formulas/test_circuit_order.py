"""Single-phase circuits in order: by hand, against the exact count of outlets at once, and laws."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas.circuit_order import circuits_in_order
from builder.formulas.circuits import Load, Node, standing
from builder.formulas.free_circuits import Outlet, free_at_once
from builder.formulas.phasors import PHASES, line_currents

BOARD = Node("Board", None, rating_a=63, continuous_share=0.8)


def on(node: str, phase: str, current_a: float) -> Load:
    """A standing load on one phase."""
    return Load(
        f"on {phase}", node, line_currents(phases=(phase,), current_a=current_a, power_factor=1)
    )


def sockets(count: int, current_a: float = 12.8, node: str = "Board") -> list[Outlet]:
    """So many sockets on each phase."""
    return [Outlet(f"{node} {phase}", node, (phase,), current_a, count=count) for phase in PHASES]


@pytest.mark.source(
    "by hand: 50.4 A less 12.4 A on L2 are 38.0 A; L1 and L3 take one each, then all have 37.6 or"
    " 38.0 A, so L2 is next"
)
def test_the_phase_with_most_left_comes_first() -> None:
    order = circuits_in_order([BOARD], [on("Board", "L2", 12.4)], sockets(7))
    assert [each.phase for each in order[:3]] == ["L1", "L3", "L2"]
    assert [round(each.left_a, 3) for each in order[:3]] == [50.4, 50.4, 38.0]


@pytest.mark.source("by hand: 50.4 A hold three of 12.8 A on each phase, for four are 51.2 A")
def test_it_stops_where_none_more_holds() -> None:
    order = circuits_in_order([BOARD], [], sockets(7))
    assert [sum(each.phase == phase for each in order) for phase in PHASES] == [3, 3, 3]


@pytest.mark.source("by hand: a 10 A breaker cannot feed 12.8 A")
def test_a_socket_behind_a_smaller_breaker_is_left_out() -> None:
    weak = Outlet("Weak", "Board", ("L1",), 12.8, count=4, breaker_a=10)
    assert {each.outlet for each in circuits_in_order([BOARD], [], [weak, *sockets(1)])} == {
        "Board L1",
        "Board L2",
        "Board L3",
    }


@pytest.mark.law
@pytest.mark.parametrize(
    ("outlets", "message"),
    [
        (
            [Outlet("A", "Nowhere", ("L1",), 16)],
            "node of outlet 'A' must be a node, got 'Nowhere', which does not exist",
        ),
        (
            [Outlet("A", "Board", PHASES, 16)],
            "outlet 'A' must have one phase of 'Board', got ('L1', 'L2', 'L3')",
        ),
        (
            [Outlet("A", "Board", ("L1",), 16), Outlet("B", "Board", ("L1",), 10)],
            "outlets must be for one current, got 10 A, 16 A",
        ),
    ],
)
def test_what_cannot_be_ordered_is_refused(outlets: list[Outlet], message: str) -> None:
    with pytest.raises(
        ValueError, match="^" + message.replace("(", r"\(").replace(")", r"\)") + "$"
    ):
        circuits_in_order([BOARD], [], outlets)


@st.composite
def houses(draw: st.DrawFn) -> tuple[list[Node], list[Load], list[Outlet]]:
    """A supply with two boards, loads on all, sockets on the boards."""
    nodes = [Node("Supply", None, draw(st.integers(20, 120)))]
    nodes += [
        Node(
            name,
            "Supply",
            draw(st.integers(10, 80)),
            parent_a_per_a=draw(st.sampled_from([1.0, 0.5])),
        )
        for name in ("One", "Two")
    ]
    loads = [
        on(draw(st.sampled_from(["Supply", "One", "Two"])), phase, draw(st.integers(1, 40)))
        for phase in draw(st.sets(st.sampled_from(PHASES)))
    ]
    current_a = float(draw(st.integers(1, 20)))
    return (
        nodes,
        loads,
        [
            outlet
            for name in ("One", "Two")
            for outlet in sockets(draw(st.integers(0, 4)), current_a, name)
        ],
    )


@pytest.mark.law
@settings(max_examples=60)
@given(houses())
def test_their_number_is_the_most_that_fit_at_once_and_no_limit_is_passed(
    house: tuple[list[Node], list[Load], list[Outlet]],
) -> None:
    nodes, loads, outlets = house
    order = circuits_in_order(nodes, loads, outlets)
    if all(node.parent_a_per_a == nodes[1].parent_a_per_a for node in nodes[1:]):
        exact = free_at_once(nodes, loads, outlets)
        assert exact.proven
        assert len(order) == exact.outlets
    taken = [
        on("One" if each.outlet.startswith("One") else "Two", each.phase, outlets[0].ampere_a)
        for each in order
    ]
    before, after = standing(nodes, loads), standing(nodes, [*loads, *taken])
    assert all(
        min(after[name].free_a[k], 0) >= min(before[name].free_a[k], 0) - 2e-2
        for name in after
        for k in range(3)
    )
