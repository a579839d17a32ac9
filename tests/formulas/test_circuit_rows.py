"""Circuits on rows of outlets: by hand, and against a general solver of integer programmes."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from builder.formulas.circuit_rows import Row, Taken, filled, is_nested, next_row
from builder.formulas.phase_room import PHASES, Room, least_left, less, way_along

TREE = {"Supply": ["Supply"], "One": ["One", "Supply"], "Two": ["Two", "Supply"]}


def row(
    key: str,
    phases: list[str],
    *,
    node: str = "Supply",
    slots: int = 9,
    amount: float = 10.0,
    preferred: bool = True,
) -> Row:
    """A row of outlets."""
    return {
        "key": key,
        "way": way_along(TREE[node], phases),
        "phases": phases,
        "slots": slots,
        "amount": amount,
        "per_ampere": 1.0,
        "preferred": preferred,
    }


def taken(room: Room) -> Taken:
    """Nothing is taken yet."""
    return {"room": room, "used": {}}


def most_by_solver(rows: list[Row], room: Room) -> int:
    """The most circuits that hold at the same time, by scipy's solver."""
    limits = [(node, phase) for node in room for phase in room[node]]
    demand = [
        [
            sum(
                each["amount"] * step["times"]
                for step in each["way"]
                if step["node"] == node and phase in step["phases"]
            )
            for each in rows
        ]
        for node, phase in limits
    ]
    answer = milp(
        -np.ones(len(rows)),
        integrality=np.ones(len(rows)),
        bounds=Bounds(0, [each["slots"] for each in rows]),
        constraints=LinearConstraint(demand, ub=[room[node][phase] for node, phase in limits]),
    )
    return round(-answer.fun)


@pytest.mark.source("by hand: 25 A less 10 A leave 15 A, below the 20 A of L2; 20 less 10 leave 10")
def test_the_next_circuit_goes_where_most_is_left() -> None:
    rows = [row("a", ["L1"]), row("b", ["L2"])]
    room = {"Supply": {"L1": 25.0, "L2": 20.0, "L3": 0.0}}
    assert filled(rows, 4, taken(room))["rows"] == [0, 1, 0, 1]


@pytest.mark.source(
    "by hand: the row with the connector asked for is filled first, though less full"
)
def test_a_preferred_row_is_filled_before_one_with_more_left() -> None:
    rows = [row("a", ["L1"], preferred=False), row("b", ["L2"], slots=1)]
    room = {"Supply": {"L1": 30.0, "L2": 10.0, "L3": 0.0}}
    assert filled(rows, 2, taken(room))["rows"] == [1, 0]


@pytest.mark.law
def test_where_no_figure_says_what_is_left_no_circuit_goes() -> None:
    assert next_row([row("a", ["L1"])], taken({"Supply": {"L2": 99.0}})) is None
    assert least_left({"Supply": {"L2": 99.0}}, way_along(["Supply"], ["L1"])) is None


@pytest.mark.law
def test_taking_from_a_room_leaves_the_room_given_as_it_is() -> None:
    room: Room = {"Supply": {"L1": 20.0, "L2": 20.0}, "One": {"L1": 5.0}}
    assert less(room, way_along(["Supply"], ["L1"]), 8.0) == {
        "Supply": {"L1": 12.0, "L2": 20.0},
        "One": {"L1": 5.0},
    }
    assert room["Supply"]["L1"] == 20.0


@pytest.mark.source(
    "by hand: 9 A take 3 A of L1 of the source and 2 A of L2 and L3; its 12 A of L1 would let 36 A"
    " through, its 4 A of L2 18 A"
)
def test_behind_a_transformer_less_is_taken_and_on_more_lines() -> None:
    way = [
        {"node": "T", "phases": ["L1"], "times": 1.0},
        {"node": "Supply", "phases": ["L1"], "times": 1 / 3},
        {"node": "Supply", "phases": ["L2", "L3"], "times": 2 / 9},
    ]
    room: Room = {"T": {"L1": 99.0}, "Supply": {"L1": 12.0, "L2": 4.0, "L3": 9.0}}
    assert least_left(room, way) == pytest.approx(18)
    left = less(room, way, 9.0)
    assert left["T"]["L1"] == 90
    assert list(left["Supply"].values()) == pytest.approx([9, 2, 7])


@st.composite
def houses(draw: st.DrawFn) -> tuple[list[Row], Room]:
    """A supply with two boards, and rows of outlets on them, on one phase each."""
    room: Room = {
        node: {phase: float(draw(st.integers(0, 60))) for phase in PHASES} for node in TREE
    }
    rows = [
        row(
            f"{index}",
            [draw(st.sampled_from(PHASES))],
            node=draw(st.sampled_from(sorted(TREE))),
            slots=draw(st.integers(0, 4)),
            amount=7.0,
        )
        for index in range(draw(st.integers(1, 5)))
    ]
    return rows, room


@pytest.mark.source("scipy 1.17, optimize.milp: the most circuits under the same limits")
@settings(max_examples=60, deadline=None)
@given(houses())
def test_circuits_on_one_phase_each_are_as_many_as_a_solver_finds(
    house: tuple[list[Row], Room],
) -> None:
    rows, room = house
    assert is_nested(rows)
    assert len(filled(rows, 99, taken(room))["rows"]) == most_by_solver(rows, room)
