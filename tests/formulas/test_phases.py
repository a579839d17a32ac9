"""
Placing single-phase loads: a published hard case, an exact dynamic program and every placing as
oracles, and laws.
"""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas.circuits import Load, Node, standing
from builder.formulas.phases import ExtraLoad, place_on_phases
from builder.formulas.phasors import PHASES, line_currents


def single(node: str, phase: str, current_a: float, name: str = "load") -> Load:
    return Load(name, node, line_currents(phases=(phase,), current_a=current_a, power_factor=1))


def extras(node: str, *amperes: float) -> list[ExtraLoad]:
    return [ExtraLoad(f"x{k}", node, a) for k, a in enumerate(amperes)]


@pytest.mark.source(
    "Graham 1969: 5, 5, 4, 4, 3, 3, 3 on three: largest first alone reaches 11, the best is 9"
)
def test_the_case_that_largest_first_alone_gets_wrong() -> None:
    placed = place_on_phases([Node("S", None, 9)], [], extras("S", 5, 5, 4, 4, 3, 3, 3))
    assert (placed.verdict, placed.evenest) == ("placed", True)
    assert placed.booked_a == (("S", (9.0, 9.0, 9.0)),)


@pytest.mark.source("by hand: 10 A stand on L1, so two loads of 10 A go on L2 and L3")
def test_standing_loads_are_evened_out() -> None:
    placed = place_on_phases([Node("S", None, 32)], [single("S", "L1", 10)], extras("S", 10, 10))
    assert sorted(phase for _, phase in placed.phase_of) == ["L2", "L3"]


@pytest.mark.source(
    "by hand: four loads of 20 A on three phases of 32 A: 80 A of 96 A, yet two would have to share"
    " a phase"
)
def test_impossible_by_looking_at_every_placing() -> None:
    placed = place_on_phases([Node("S", None, 32)], [], extras("S", 20, 20, 20, 20))
    assert placed.verdict == "impossible"
    assert placed.why == "every placing was looked at and each one is above a limit"


@pytest.mark.source("by hand: 100 A on 3 x 32 A; 40 A on any 32 A phase")
def test_impossible_by_sum_and_by_size_says_so() -> None:
    too_much = place_on_phases([Node("S", None, 32)], [], extras("S", *[25] * 4))
    assert too_much.why == "100 A are to go on S, which has 96 A left on its phases together"
    too_large = place_on_phases([Node("S", None, 32)], [], extras("S", 40))
    assert too_large.why == "x0 draws 40 A and no phase of S has more than 32 A left"


@pytest.mark.source(
    "by hand: the same four loads of 20 A; with no exact step left nothing is known"
)
def test_a_search_that_is_cut_short_does_not_say_impossible() -> None:
    placed = place_on_phases([Node("S", None, 32)], [], extras("S", 20, 20, 20, 20), step_bound=5)
    assert placed.verdict == "not found within the bound"
    assert placed.phase_of == ()


@pytest.mark.source("by hand: the distro has L2 alone")
def test_a_load_goes_only_where_its_node_has_a_phase() -> None:
    nodes = [Node("S", None, 63), Node("D", "S", 16, phases=("L2",))]
    assert place_on_phases(nodes, [], extras("D", 10)).phase_of == (("x0", "L2"),)


@pytest.mark.law
@pytest.mark.parametrize(
    ("extra", "message"),
    [
        (extras("Attic", 5), "node of load 'x0' must be a node, got 'Attic', which does not exist"),
        (extras("S", 0), "current_a of load 'x0' must be a number above 0, got 0"),
        (
            [*extras("S", 1), *extras("S", 2)],
            "extra loads must have names of their own, got 'x0' twice",
        ),
    ],
)
def test_loads_that_make_no_sense_are_refused(extra: list[ExtraLoad], message: str) -> None:
    with pytest.raises(ValueError) as caught:  # noqa: PT011
        place_on_phases([Node("S", None, 32)], [], extra)
    assert message in str(caught.value)


@st.composite
def houses(draw: st.DrawFn, most: int = 6) -> tuple[list[Node], list[Load], list[ExtraLoad]]:
    nodes = [Node("n0", None, draw(st.integers(10, 120)))]
    for k in range(1, draw(st.integers(1, 4))):
        phases = draw(st.sampled_from([PHASES, PHASES, ("L1", "L3")])) if k == 3 else PHASES
        nodes.append(
            Node(
                f"n{k}",
                f"n{draw(st.integers(0, min(k - 1, 1)))}",
                draw(st.integers(10, 63)),
                phases=phases,
            )
        )
    some = st.sampled_from([node.name for node in nodes])
    loads = [
        single(draw(some), "L1", draw(st.integers(0, 15))) for _ in range(draw(st.integers(0, 2)))
    ]
    extra = [
        ExtraLoad(f"x{k}", draw(some), draw(st.integers(1, 30)))
        for k in range(draw(st.integers(0, most)))
    ]
    return nodes, loads, extra


def with_placed(
    nodes: list[Node], loads: list[Load], extra: list[ExtraLoad], phases: tuple[str, ...]
) -> tuple[bool, float]:
    """Does every breaker hold (where it held before or gained), and the sum of squares."""
    before = standing(nodes, loads)
    after = standing(
        nodes,
        [
            *loads,
            *(single(x.node, p, x.current_a, x.name) for x, p in zip(extra, phases, strict=True)),
        ],
    )
    pairs = [
        (before[n].booked_a[k], after[n].booked_a[k], after[n].limit_a[k])
        for n in after
        for k in range(3)
    ]
    return all(now <= limit + 1e-9 or now == was for was, now, limit in pairs), sum(
        now**2 for _, now, _ in pairs
    )


@pytest.mark.law
@settings(max_examples=150)
@given(houses())
def test_the_verdict_is_that_of_every_placing_tried(
    case: tuple[list[Node], list[Load], list[ExtraLoad]],
) -> None:
    nodes, loads, extra = case
    wired = {node.name: node.phases for node in nodes}
    tried = [
        with_placed(nodes, loads, extra, phases)
        for phases in product(*(wired[x.node] for x in extra))
    ]
    holding = [squares for holds, squares in tried if holds]
    placed = place_on_phases(nodes, loads, extra)
    assert placed.verdict == ("placed" if holding else "impossible")
    if holding:
        holds, squares = with_placed(
            nodes, loads, extra, tuple(phase for _, phase in placed.phase_of)
        )
        assert holds
        assert squares == pytest.approx(min(holding))


@pytest.mark.law
@given(houses(most=25), st.integers(0, 400))
def test_no_plan_breaks_a_breaker_up_the_tree(
    case: tuple[list[Node], list[Load], list[ExtraLoad]], step_bound: int
) -> None:
    nodes, loads, extra = case
    placed = place_on_phases(nodes, loads, extra, step_bound=step_bound)
    if placed.verdict == "placed":
        phases = tuple(phase for _, phase in placed.phase_of)
        assert with_placed(nodes, loads, extra, phases)[0]
        after = standing(
            nodes,
            [
                *loads,
                *(
                    single(x.node, p, x.current_a, x.name)
                    for x, p in zip(extra, phases, strict=True)
                ),
            ],
        )
        for name, row in placed.booked_a:
            assert row == pytest.approx(after[name].booked_a, abs=0.001)


def least_highest_phase(weights: list[int], cap: int) -> int | None:
    """
    Exact dynamic program for one service: bit b of row a is set where L1 can carry a and L2 b.

    None where nothing holds.
    """
    rows = [0] * (cap + 1)
    rows[0] = 1
    mask = (1 << (cap + 1)) - 1
    for w in weights:
        rows = [
            (rows[a] | rows[a] << w | (rows[a - w] if a >= w else 0)) & mask for a in range(cap + 1)
        ]
    # L3 carries the rest; a state stands for a set of loads on L1 and L2, so the rest is what is
    # left of the total.
    total = sum(weights)
    highest = [
        max(a, b, total - a - b)
        for a in range(cap + 1)
        for b in range(cap + 1)
        if rows[a] >> b & 1 and 0 <= total - a - b <= cap
    ]
    return min(highest, default=None)


@pytest.mark.law
@settings(max_examples=40)
@given(st.lists(st.integers(5, 160), min_size=3, max_size=22), st.integers(160, 420))
def test_an_exact_dynamic_program_never_contradicts_the_verdict(
    tenths: list[int], cap: int
) -> None:
    placed = place_on_phases(
        [Node("S", None, cap / 10)], [], extras("S", *(t / 10 for t in tenths)), step_bound=20_000
    )
    exact = least_highest_phase(tenths, cap)
    if placed.verdict == "impossible":
        assert exact is None
    if placed.verdict == "placed":
        assert exact is not None
        assert max(placed.booked_a[0][1]) >= exact / 10 - 1e-9


@pytest.mark.source("by hand: 100 A on 3 x 32 A is seen by adding up, so no placing is looked at")
def test_what_is_impossible_by_sum_takes_no_step() -> None:
    assert place_on_phases([Node("S", None, 32)], [], extras("S", *[25] * 4)).steps == 0


@pytest.mark.source(
    "by hand: a neutral of 63 A less 20 A of lamps leaves 43 A on L1, 63 A elsewhere"
)
def test_a_neutral_smaller_than_its_lines_holds_extra_loads_too() -> None:
    nodes = [Node("S", None, 125, neutral_a=63)]
    placed = place_on_phases(nodes, [single("S", "L1", 20)], extras("S", 60, 60, 43))
    assert placed.verdict == "placed"
    assert dict(placed.phase_of)[placed.phase_of[2][0]] == "L1"
    full = place_on_phases(nodes, [single("S", "L1", 20)], extras("S", 60, 60, 44))
    assert full.verdict == "impossible"


@pytest.mark.source("by hand: 100 A / (0.5 × 2 / √3) = 173.2 A on each line behind the transformer")
def test_extra_loads_behind_a_transformer_are_held_by_its_source() -> None:
    nodes = [
        Node("S", None, 100),
        Node("T", "S", 400, parent_a_per_a=0.5, winding="three lines"),
    ]
    assert place_on_phases(nodes, [], extras("T", 173, 173, 173)).verdict == "placed"
    assert place_on_phases(nodes, [], extras("T", 174, 173, 173)).verdict == "impossible"
