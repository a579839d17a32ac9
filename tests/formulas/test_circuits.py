"""The power tree: by hand, against a second library, and laws on random trees."""

import math
import random
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.circuits import Load, Node, booked_a, limit_a, standing, tree_of
from builder.formulas.phasors import PHASES, line_currents

SUPPLY = Node("Intake", None, rating_a=400)
RIGHT = Node("Stage right", "Intake", rating_a=125)
LEFT = Node("Stage left", "Intake", rating_a=400, breaker_a=200, continuous_share=0.8)
DISTRO = Node("Distro", "Stage right", rating_a=63)


def on(
    node: str,
    phases: tuple[str, ...],
    current_a: float,
    power_factor: float = 1.0,
    leading: bool = False,
) -> Load:
    return Load(
        f"load on {node}",
        node,
        line_currents(
            phases=phases, current_a=current_a, power_factor=power_factor, leading=leading
        ),
    )


@pytest.mark.source(
    "by hand: 63 - 10 A free on the distro's L1; 125 - 80 = 45 A on L2, where the service binds"
)
def test_the_node_that_binds_is_named() -> None:
    found = standing(
        [SUPPLY, RIGHT, LEFT, DISTRO], [on("Distro", ("L1",), 10), on("Stage right", ("L2",), 80)]
    )
    assert found["Distro"].free_a == pytest.approx((53, 45, 63))
    assert found["Distro"].binding == ("Distro", "Stage right", "Distro")
    assert found["Intake"].free_a == pytest.approx((390, 320, 400))


@pytest.mark.source("by hand: min(400, 200) times 0.8 is 160 A")
def test_the_smaller_of_rating_and_breaker_counts_times_the_share() -> None:
    assert limit_a(LEFT) == (160, 160, 160)
    assert limit_a(Node("one", None, 32, phases=("L2",))) == (0, 32, 0)


@pytest.mark.source("phasor sum, power-grid-model 1.12: 100/80/60 A leave 34.641 A in the neutral")
def test_the_neutral_of_a_service_is_the_phasor_sum() -> None:
    loads = [on("Stage left", (phase,), a) for phase, a in zip(PHASES, (100, 80, 60), strict=True)]
    assert standing([SUPPLY, LEFT], loads)["Intake"].neutral.total_a == pytest.approx(
        34.641, abs=0.0005
    )


@pytest.mark.source("by hand: 100 A at 208 V are 43.33 A at 480 V")
def test_a_transformer_scales_the_current() -> None:
    nodes = [Node("Vault", None, 100), Node("Panel", "Vault", 400, parent_a_per_a=208 / 480)]
    found = standing(nodes, [on("Panel", PHASES, 100)])
    assert abs(found["Vault"].carried[0]) == pytest.approx(43.33, abs=0.005)
    assert found["Panel"].free_a[0] == pytest.approx((100 - 100 * 208 / 480) * 480 / 208)
    assert found["Panel"].binding[0] == "Vault"


@pytest.mark.source("by hand: 70 A on a 63 A node leaves -7 A")
def test_an_overload_shows_as_less_than_nothing() -> None:
    assert standing([SUPPLY, RIGHT, DISTRO], [on("Distro", ("L3",), 70)])["Distro"].free_a[
        2
    ] == pytest.approx(-7)


@pytest.mark.source(
    "by hand: 10 A at 0.5 lagging and 10 A at 0.5 leading book 20 A though they carry 10 A"
)
def test_booked_counts_sizes_whatever_the_angles() -> None:
    pair = [on("Intake", ("L1",), 10, 0.5), on("Intake", ("L1",), 10, 0.5, leading=True)]
    assert booked_a(pair)[0] == pytest.approx(20)
    assert abs(standing([SUPPLY], pair)["Intake"].carried[0]) == pytest.approx(10)


@pytest.mark.law
@pytest.mark.parametrize(
    ("nodes", "message"),
    [
        ([Node("A", "A", 10)], "fed_from of 'A' must be another node, got itself"),
        ([Node("A", "B", 10)], "fed_from of 'A' must be a node, got 'B', which does not exist"),
        (
            [Node("A", "B", 10), Node("B", "A", 10)],
            "fed_from must lead to a supply, got a loop: A from B from A",
        ),
        (
            [Node("A", None, 10), Node("A", None, 10)],
            "nodes must have names of their own, got 'A' twice",
        ),
        ([Node("A", None, -1)], "rating_a of 'A' must be a number of at least 0, got -1"),
        (
            [Node("A", None, 1, breaker_a=-2)],
            "breaker_a of 'A' must be a number of at least 0, got -2",
        ),
        (
            [Node("A", None, 1, continuous_share=0)],
            "continuous_share of 'A' must be above 0 and at most 1, got 0",
        ),
        ([Node("A", None, 1, phases=())], "phases of 'A' must be some of L1, L2, L3"),
        (
            [Node("A", None, 9, phases=("L1",)), Node("B", "A", 9, phases=("L2",))],
            "phases of 'B' must be among those of 'A'",
        ),
        (
            [Node("A", None, 1, parent_a_per_a=0)],
            "parent_a_per_a of 'A' must be a number above 0, got 0",
        ),
    ],
)
def test_what_is_no_tree_is_refused(nodes: list[Node], message: str) -> None:
    with pytest.raises(ValueError) as caught:  # noqa: PT011
        tree_of(nodes)
    assert message in str(caught.value)


@pytest.mark.law
def test_a_load_on_nothing_or_on_a_missing_phase_is_refused() -> None:
    with pytest.raises(
        ValueError, match="node of load 'load on Attic' must be a node, got 'Attic'"
    ):
        standing([SUPPLY], [on("Attic", ("L1",), 1)])
    with pytest.raises(
        ValueError, match="phases of load 'load on One' must be among those of 'One'"
    ):
        standing([Node("One", None, 10, phases=("L1",))], [on("One", ("L2",), 1)])


@st.composite
def trees(draw: st.DrawFn) -> list[Node]:
    count = draw(st.integers(1, 8))
    nodes = [Node("n0", None, draw(st.floats(50, 800)))]
    for k in range(1, count):
        parent = f"n{draw(st.integers(0, k - 1))}"
        nodes.append(
            Node(
                f"n{k}",
                parent,
                draw(st.floats(10, 400)),
                parent_a_per_a=draw(st.sampled_from([1.0, 1.0, 0.5])),
            )
        )
    return nodes


@st.composite
def trees_with_loads(draw: st.DrawFn) -> tuple[list[Node], list[Load]]:
    nodes = draw(trees())
    phases = st.sampled_from([("L1",), ("L2",), ("L3",), ("L1", "L2"), ("L2", "L3"), PHASES])
    loads = [
        on(
            draw(st.sampled_from(nodes)).name,
            draw(phases),
            draw(st.floats(0, 60)),
            draw(st.floats(0.1, 1)),
            draw(st.booleans()),
        )
        for _ in range(draw(st.integers(0, 10)))
    ]
    return nodes, loads


@pytest.mark.law
@given(trees_with_loads())
def test_kirchhoff_holds_at_every_node(case: tuple[list[Node], list[Load]]) -> None:
    nodes, loads = case
    found = standing(nodes, loads)
    for node in nodes:
        for k in range(3):
            own = sum(load.currents[k] for load in loads if load.node == node.name)
            fed = sum(
                found[child.name].carried[k] * child.parent_a_per_a
                for child in nodes
                if child.fed_from == node.name
            )
            assert found[node.name].carried[k] == pytest.approx(own + fed, abs=1e-9)


@pytest.mark.law
@given(trees_with_loads(), st.floats(0, 60), st.floats(0.1, 1), st.booleans(), st.integers(0, 7))
def test_adding_a_load_never_frees_capacity(
    case: tuple[list[Node], list[Load]],
    current_a: float,
    power_factor: float,
    leading: bool,
    where: int,
) -> None:
    nodes, loads = case
    extra = on(nodes[where % len(nodes)].name, ("L1", "L2"), current_a, power_factor, leading)
    before, after = standing(nodes, loads), standing(nodes, [*loads, extra])
    for name in before:
        assert all(
            a <= b + 1e-9 for a, b in zip(after[name].free_a, before[name].free_a, strict=True)
        )


@pytest.mark.law
@given(trees_with_loads(), st.data())
def test_any_part_of_the_loads_carries_no_more_than_was_booked(
    case: tuple[list[Node], list[Load]], data: st.DataObject
) -> None:
    nodes, loads = case
    some = [load for load in loads if data.draw(st.booleans())]
    booked, carried = standing(nodes, loads), standing(nodes, some)
    for name in booked:
        assert all(
            abs(i) <= b + 1e-9
            for i, b in zip(carried[name].carried, booked[name].booked_a, strict=True)
        )


@pytest.mark.law
@given(trees_with_loads())
def test_free_is_never_more_than_any_node_up_the_tree_leaves(
    case: tuple[list[Node], list[Load]],
) -> None:
    nodes, loads = case
    tree, found = tree_of(nodes), standing(nodes, loads)
    for name in tree.nodes:
        for k in range(3):
            left = [
                (found[up].limit_a[k] - found[up].booked_a[k]) * tree.scale[up] / tree.scale[name]
                for up in tree.path[name]
            ]
            assert found[name].free_a[k] == pytest.approx(min(left))
            assert found[name].binding[k] in tree.path[name]


@pytest.mark.source(
    "power-grid-model 1.12 (LF Energy), asymmetric power flow with constant-current loads on random"
    " radial feeders"
)
@pytest.mark.parametrize("seed", range(6))
def test_a_power_flow_library_finds_the_same_feeder_currents(seed: int) -> None:
    """Short, thick feeders, so that voltage angles turn by less than the tolerance."""
    pgm = pytest.importorskip("power_grid_model")
    np = pytest.importorskip("numpy")
    rng = random.Random(seed)
    nodes = [
        Node("n0", None, 800),
        *(Node(f"n{k}", f"n{rng.randrange(k)}", 400) for k in range(1, 8)),
    ]
    amperes = {node.name: [rng.uniform(0, 60) for _ in PHASES] for node in nodes}
    loads = [
        on(name, (phase,), a, 0.9)
        for name, row in amperes.items()
        for phase, a in zip(PHASES, row, strict=True)
    ]
    index = {node.name: k for k, node in enumerate(nodes)}
    volts, count = 400.0, len(nodes)
    grid_nodes = pgm.initialize_array("input", "node", count)
    grid_nodes["id"], grid_nodes["u_rated"] = range(count), volts
    lines = pgm.initialize_array("input", "line", count - 1)
    lines["id"], lines["to_node"] = range(100, 99 + count), range(1, count)
    lines["from_node"] = [index[str(node.fed_from)] for node in nodes[1:]]
    for field, value in {
        "from_status": 1,
        "to_status": 1,
        "r1": 1e-5,
        "x1": 1e-6,
        "c1": 0,
        "tan1": 0,
        "r0": 1e-5,
        "x0": 1e-6,
    }.items():
        lines[field] = value
    lines["c0"], lines["tan0"], lines["i_n"] = 0, 0, 1000
    source = pgm.initialize_array("input", "source", 1)
    source["id"], source["node"], source["status"], source["u_ref"], source["sk"] = (
        200,
        0,
        1,
        1.0,
        1e12,
    )
    drawn = pgm.initialize_array("input", "asym_load", count)
    drawn["id"], drawn["node"], drawn["status"], drawn["type"] = (
        range(300, 300 + count),
        range(count),
        1,
        2,
    )
    watts = np.array([amperes[node.name] for node in nodes]) * volts / math.sqrt(3)
    drawn["p_specified"], drawn["q_specified"] = watts * 0.9, watts * math.sqrt(1 - 0.9**2)
    model = pgm.PowerGridModel(
        {"node": grid_nodes, "line": lines, "source": source, "asym_load": drawn}
    )
    result = model.calculate_power_flow(symmetric=False)
    found = standing(nodes, loads)
    for k, node in enumerate(nodes[1:]):
        ours = [abs(current) for current in found[node.name].carried]
        assert list(result["line"]["i_to"][k]) == pytest.approx(ours, abs=0.02)


@pytest.mark.source(
    "by hand: behind a transformer that takes 0.5 A for each ampere, third harmonics of 8, 6 and"
    " 4 A are 4, 3 and 2 A at the supply: 9 A in its neutral"
)
def test_third_harmonics_are_told_in_the_ampere_of_the_node() -> None:
    behind = Node("Behind", "Intake", rating_a=100, parent_a_per_a=0.5)
    load = Load("dimmers", "Behind", line_currents(phases=PHASES, current_a=20, power_factor=1))
    load = replace(load, third_harmonic_a=(8.0, 6.0, 4.0))
    found = standing([SUPPLY, behind], [load])
    assert found["Behind"].neutral.third_harmonic_a == pytest.approx(18)
    assert found["Intake"].neutral.third_harmonic_a == pytest.approx(9)
