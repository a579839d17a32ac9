"""A place for every load at once: by hand, and against a general solver of integer programmes."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import LinearConstraint, milp

from builder.formulas.load_places import Feed, Line, Places, Steps, ask_too_much, places_for
from builder.formulas.phase_room import PHASES, Room, way_along
from tests.formulas.test_circuit_rows import TREE, row, taken

Loads = list[Feed | Line]


def feed(amount: float, *nodes: str) -> Feed:
    """A feed on three phases that may go on some nodes."""
    ways = [way_along(TREE[node], [*PHASES]) for node in nodes]
    return {"sort": "feed", "amount": amount, "ways": ways}


def line(number: int, amount: float, *rows: tuple[str, list[str]]) -> Line:
    """A number of circuits on rows, each of a node and its phases."""
    return {
        "sort": "line",
        "number": number,
        "rows": [
            row(f"{node} {phases} {index}", phases, node=node, amount=amount)
            for index, (node, phases) in enumerate(rows)
        ],
    }


def even(supply: float, one: float, two: float) -> Room:
    """The same on each phase of a supply and its two boards."""
    return {
        node: dict.fromkeys(PHASES, amount)
        for node, amount in (("Supply", supply), ("One", one), ("Two", two))
    }


def placed(loads: Loads, room: Room, steps: int = 20000) -> Places | None:
    """Where the loads stand."""
    return places_for(loads, taken(room), {"left": steps})


@pytest.mark.source("by hand: 40 A fit on either board, 50 A on One alone, so the first gives way")
def test_a_load_goes_back_where_a_later_one_has_no_place() -> None:
    loads: Loads = [feed(40.0, "One", "Two"), feed(50.0, "One")]
    found = placed(loads, even(100.0, 60.0, 45.0))
    assert found is not None
    assert found["choices"] == [[1], [0]]
    assert found["taken"]["room"]["Supply"] == dict.fromkeys(PHASES, 10.0)


@pytest.mark.source(
    "by hand: spread evenly, one circuit of 20 A leaves One 25 A of 45 A, too little for a feed of"
    " 40 A; both circuits on Two take its 40 A and leave One free"
)
def test_circuits_are_shared_otherwise_where_a_later_load_needs_it() -> None:
    loads: Loads = [line(2, 20.0, ("One", ["L1"]), ("Two", ["L1"])), feed(40.0, "One")]
    found = placed(loads, even(99.0, 45.0, 40.0))
    assert found is not None
    assert found["choices"] == [[1, 1], [0]]


@pytest.mark.law
def test_the_search_says_that_it_gave_up() -> None:
    loads: Loads = [feed(40.0, "One", "Two"), feed(50.0, "One")]
    steps: Steps = {"left": 1}
    assert places_for(loads, taken(even(100.0, 60.0, 45.0)), {"left": 20000}) is not None
    assert places_for(loads, taken(even(100.0, 60.0, 45.0)), steps) is None
    assert steps["left"] < 0


@pytest.mark.source("by hand: two feeds of 40 A ask 240 A of a supply with 3 x 70 A")
def test_a_sum_above_all_phases_is_a_proof() -> None:
    loads: Loads = [feed(40.0, "One"), feed(40.0, "Two")]
    assert ask_too_much(loads, even(70.0, 60.0, 60.0), 0.0)
    assert not ask_too_much(loads, even(80.0, 60.0, 60.0), 0.0)


@st.composite
def shows(draw: st.DrawFn) -> tuple[Loads, Room]:
    """A few feeds and lines of circuits on a supply with two boards."""
    room: Room = {
        node: {phase: float(draw(st.integers(5, 60))) for phase in PHASES} for node in TREE
    }
    loads: Loads = []
    nodes = st.sampled_from(sorted(TREE))
    phases = st.sampled_from([["L1"], ["L2"], ["L3"], ["L1", "L2"], ["L2", "L3"]])
    for _ in range(draw(st.integers(1, 3))):
        if draw(st.booleans()):
            on = draw(st.lists(nodes, min_size=1, max_size=3, unique=True))
            loads.append(feed(float(draw(st.integers(1, 30))), *on))
        else:
            rows = draw(st.lists(st.tuples(nodes, phases), min_size=1, max_size=3))
            loads.append(line(draw(st.integers(1, 4)), float(draw(st.integers(1, 20))), *rows))
    return loads, room


def has_places_by_solver(loads: Loads, room: Room) -> bool:
    """Whether all loads can stand at the same time, by scipy's solver."""
    columns = [
        (
            number,
            way,
            load["amount"] if load["sort"] == "feed" else load["rows"][0]["amount"],
        )
        for number, load in enumerate(loads)
        for way in (
            load["ways"] if load["sort"] == "feed" else [each["way"] for each in load["rows"]]
        )
    ]
    demand = [
        [
            amount * any(step["node"] == node and phase in step["phases"] for step in way)
            for _, way, amount in columns
        ]
        for node in room
        for phase in room[node]
    ]
    limits = [room[node][phase] for node in room for phase in room[node]]
    whole = [[float(of == number) for of, *_ in columns] for number in range(len(loads))]
    wanted = [1.0 if load["sort"] == "feed" else load["number"] for load in loads]
    answer = milp(
        np.zeros(len(columns)),
        integrality=np.ones(len(columns)),
        constraints=[
            LinearConstraint(demand, ub=limits),
            LinearConstraint(whole, lb=wanted, ub=wanted),
        ],
    )
    return bool(answer.status == 0)


@pytest.mark.source("scipy 1.17, optimize.milp: whether the same limits can all be held")
@settings(max_examples=80, deadline=None)
@given(shows())
def test_loads_have_places_where_a_solver_finds_some(show: tuple[Loads, Room]) -> None:
    loads, room = show
    possible = has_places_by_solver(loads, room)
    assert (placed(loads, room) is not None) == possible
    assert not (possible and ask_too_much(loads, room, 0.0))
