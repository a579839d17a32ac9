"""Outlets that can be loaded at once: by hand, and laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.circuits import Load, Node, standing
from builder.formulas.free_circuits import Outlet, free_at_once
from builder.formulas.phasors import PHASES, line_currents

SERVICE = Node("Service", None, rating_a=63)


def on(node: str, phase: str, current_a: float) -> Load:
    return Load(
        "standing", node, line_currents(phases=(phase,), current_a=current_a, power_factor=1)
    )


@pytest.mark.source("by hand: three 16 A outlets on one 63 A phase leave 15 A, so three of four")
def test_ratings_of_outlets_add_up_to_more_than_the_service() -> None:
    found = free_at_once(
        [SERVICE], [], [Outlet("Wall", "Service", ("L1",), 16, count=4, connector="16 A")]
    )
    assert (found.outlets, found.at_most, found.proven) == (3, 3, True)
    assert found.by_connector == (("16 A", 3),)


@pytest.mark.source(
    "by hand: with 20 A standing on L1, two of four 16 A outlets there; four of four on L2 with"
    " 64 A"
)
def test_standing_loads_come_off_first() -> None:
    outlets = [
        Outlet("One", "Service", ("L1",), 16, count=4),
        Outlet("Two", "Service", ("L2",), 15.75, count=4),
    ]
    assert free_at_once([SERVICE], [on("Service", "L1", 20)], outlets).taken == (
        ("One", 2),
        ("Two", 4),
    )


@pytest.mark.source(
    "by hand: one 32 A three-phase outlet and one 16 A a phase fill 48 of 63 A; a second 32 A does"
    " not fit, three more 15 A do"
)
def test_outlets_of_one_and_three_phases_share_a_service() -> None:
    outlets = [Outlet("Big", "Service", PHASES, 32, count=2)] + [
        Outlet(f"Small {p}", "Service", (p,), 15, count=2) for p in PHASES
    ]
    found = free_at_once([SERVICE], [], outlets)
    assert (found.outlets, found.proven) == (7, True)


@pytest.mark.source("by hand: a 63 A outlet behind a 32 A breaker can never be loaded fully")
def test_an_outlet_above_its_breaker_is_reported_and_not_counted() -> None:
    nodes = [SERVICE, Node("Distro", "Service", 63, breaker_a=32)]
    outlets = [
        Outlet("Sixty-three", "Distro", PHASES, 63),
        Outlet("Own way", "Service", ("L1",), 32, breaker_a=16),
        Outlet("Sixteen", "Distro", ("L1",), 16, count=2),
    ]
    found = free_at_once(nodes, [], outlets)
    assert found.above_breaker == ("Sixty-three", "Own way")
    assert found.taken == (("Sixty-three", 0), ("Own way", 0), ("Sixteen", 2))


@pytest.mark.source(
    "by hand: 50 A at the low side of a 2:1 transformer are 25 A above; a 60 A supply feeds two,"
    " not three"
)
def test_outlets_behind_a_transformer_count_by_its_ratio() -> None:
    nodes = [Node("Vault", None, 60), Node("Panel", "Vault", 400, parent_a_per_a=0.5)]
    assert free_at_once(nodes, [], [Outlet("Way", "Panel", ("L2",), 50, count=3)]).outlets == 2


@pytest.mark.law
@pytest.mark.parametrize(
    ("outlets", "message"),
    [
        (
            [Outlet("A", "Attic", ("L1",), 16)],
            "node of outlet 'A' must be a node, got 'Attic', which does not exist",
        ),
        ([Outlet("A", "Service", (), 16)], "phases of outlet 'A' must be among those of 'Service'"),
        (
            [Outlet("A", "Service", ("L1",), 0)],
            "ampere_a of outlet 'A' must be a number above 0, got 0",
        ),
        (
            [Outlet("A", "Service", ("L1",), 16, count=-1)],
            "count of outlet 'A' must be a number of at least 0, got -1",
        ),
        (
            [Outlet("A", "Service", ("L1",), 16), Outlet("A", "Service", ("L2",), 16)],
            "outlets must have names of their own, got 'A' twice",
        ),
    ],
)
def test_outlets_that_make_no_sense_are_refused(outlets: list[Outlet], message: str) -> None:
    with pytest.raises(ValueError) as caught:  # noqa: PT011
        free_at_once([SERVICE], [], outlets)
    assert message in str(caught.value)


@st.composite
def houses(draw: st.DrawFn) -> tuple[list[Node], list[Load], list[Outlet]]:
    nodes = [Node("n0", None, draw(st.integers(30, 250)))]
    nodes += [
        Node(f"n{k}", f"n{draw(st.integers(0, k - 1))}", draw(st.integers(16, 125)))
        for k in range(1, draw(st.integers(1, 5)))
    ]
    some_node, some_phase = st.sampled_from([node.name for node in nodes]), st.sampled_from(PHASES)
    loads = [
        on(draw(some_node), draw(some_phase), draw(st.floats(0, 20)))
        for _ in range(draw(st.integers(0, 3)))
    ]
    sets = st.sampled_from([("L1",), ("L2",), ("L3",), ("L1", "L2"), PHASES])
    outlets = [
        Outlet(
            f"o{k}",
            draw(some_node),
            draw(sets),
            draw(st.sampled_from([10, 16, 20, 32, 63])),
            draw(st.integers(1, 4)),
        )
        for k in range(draw(st.integers(1, 6)))
    ]
    return nodes, loads, outlets


@pytest.mark.law
@given(houses())
def test_no_answer_breaks_a_breaker_up_the_tree(
    case: tuple[list[Node], list[Load], list[Outlet]],
) -> None:
    nodes, loads, outlets = case
    found, before = free_at_once(nodes, loads, outlets), standing(nodes, loads)
    entry = {outlet.name: outlet for outlet in outlets}
    plugged = [
        Load(
            name,
            entry[name].node,
            line_currents(phases=(phase,), current_a=entry[name].ampere_a * number, power_factor=1),
        )
        for name, number in found.taken
        for phase in entry[name].phases
        if number
    ]
    for name, after in standing(nodes, [*loads, *plugged]).items():
        for k in range(3):
            overloaded_before = before[name].booked_a[k] > before[name].limit_a[k]
            assert after.booked_a[k] <= after.limit_a[k] + 1e-6 or (
                overloaded_before and after.booked_a[k] == before[name].booked_a[k]
            )


@pytest.mark.law
@given(houses(), st.floats(0, 40), st.sampled_from(PHASES))
def test_another_standing_load_never_frees_an_outlet(
    case: tuple[list[Node], list[Load], list[Outlet]], current_a: float, phase: str
) -> None:
    nodes, loads, outlets = case
    before, after = (
        free_at_once(nodes, loads, outlets),
        free_at_once(nodes, [*loads, on("n0", phase, current_a)], outlets),
    )
    assert after.outlets <= before.at_most
