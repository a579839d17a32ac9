"""
How good and how fast placing on phases and counting free outlets are.

Run with ``python benchmarks/power.py``. Small cases are compared with every choice there is; the
large one is a house of 12 services, 400 outlets and 200 loads; then the same at several sizes.
Cases come from a fixed seed.
"""

import random
import time
from itertools import product

from builder.formulas.circuits import Load, Node, standing, tree_of
from builder.formulas.free_circuits import Outlet, free_at_once
from builder.formulas.phases import ExtraLoad, Placing, place_on_phases
from builder.formulas.phasors import PHASES, line_currents

PAIRS = (("L1", "L2"), ("L2", "L3"), ("L1", "L3"))
SHAPES = (("L1",), ("L2",), ("L3",), ("L1",), ("L2",), ("L3",), ("L1", "L2"), PHASES)


def a_house(
    rng: random.Random, *, services: int, outlets: int, supply_a: float = 63.0
) -> tuple[list[Node], list[Load], list[Outlet]]:
    """
    A supply of so many ampere for each service, services with two distros each, and outlets that
    add up to more than the services.
    """
    nodes = [Node("Supply", None, rating_a=supply_a * services)]
    for k in range(services):
        nodes.append(Node(f"Service {k}", "Supply", rng.choice([100, 125, 200])))
        nodes += [Node(f"Distro {k}.{j}", f"Service {k}", 63) for j in range(2)]
    standing_loads = [
        Load(
            f"standing {k}",
            f"Service {k}",
            line_currents(phases=PHASES, current_a=rng.randrange(200) / 10, power_factor=0.9),
        )
        for k in range(services)
    ]
    places = [node.name for node in nodes[1:]]
    entries = [
        Outlet(
            f"o{k}", rng.choice(places), rng.choice(SHAPES), rng.choice([10, 16, 16, 20, 32, 63])
        )
        for k in range(outlets)
    ]
    return nodes, standing_loads, entries


def some_loads(rng: random.Random, nodes: list[Node], count: int) -> list[ExtraLoad]:
    """Single-phase loads of 1 to 12 A, in tenths of an ampere, on distros and services."""
    places = [node.name for node in nodes[1:]]
    return [
        ExtraLoad(f"x{k}", rng.choice(places), rng.randrange(10, 121) / 10) for k in range(count)
    ]


def best_count(nodes: list[Node], loads: list[Load], outlets: list[Outlet]) -> int:
    """Most outlets at once, by trying every choice."""
    room = {name: here.limit_a for name, here in standing(nodes, loads).items()}
    booked = {name: here.booked_a for name, here in standing(nodes, loads).items()}
    parent = {node.name: node.fed_from for node in nodes}
    best = 0
    for choice in product((0, 1), repeat=len(outlets)):
        if sum(choice) <= best:
            continue
        used = {name: list(row) for name, row in booked.items()}
        for outlet, taken in zip(outlets, choice, strict=True):
            here: str | None = outlet.node if taken else None
            while here is not None:
                for phase in outlet.phases:
                    used[here][PHASES.index(phase)] += outlet.ampere_a
                here = parent[here]
        if all(used[n][k] <= room[n][k] + 1e-9 for n in used for k in range(3)):
            best = sum(choice)
    return best


def best_squares(nodes: list[Node], loads: list[Load], extra: list[ExtraLoad]) -> float | None:
    """Least sum of squares of a placing that holds, by trying every placing."""
    before = standing(nodes, loads)
    parent = {node.name: node.fed_from for node in nodes}
    best: float | None = None
    for phases in product(range(3), repeat=len(extra)):
        used = {name: list(here.booked_a) for name, here in before.items()}
        for load, phase in zip(extra, phases, strict=True):
            here: str | None = load.node
            while here is not None:
                used[here][phase] += load.current_a
                here = parent[here]
        if all(used[n][k] <= before[n].limit_a[k] + 1e-9 for n in used for k in range(3)):
            squares = sum(a * a for row in used.values() for a in row)
            best = squares if best is None else min(best, squares)
    return best


def squares_of(placing: Placing) -> float:
    """Sum of squares over all nodes and phases. [A²]"""
    return sum(a * a for _, row in placing.booked_a for a in row)


def compare_small(cases: int) -> None:
    """Both answers against every choice."""
    rng = random.Random(7)
    same_count = proven = same_verdict = same_squares = placed = 0
    for _ in range(cases):
        nodes, loads, outlets = a_house(rng, services=2, outlets=11)
        nodes[0] = Node("Supply", None, rng.choice([40, 63, 80]))
        found = free_at_once(nodes, loads, outlets)
        proven += found.proven
        same_count += found.outlets == best_count(nodes, loads, outlets)
        extra = some_loads(rng, nodes, 7)
        nodes[0] = Node("Supply", None, rng.choice([25, 30, 40]))
        placing, squares = place_on_phases(nodes, loads, extra), best_squares(nodes, loads, extra)
        same_verdict += (placing.verdict == "placed") == (squares is not None)
        if squares is not None and placing.verdict == "placed":
            placed += 1
            same_squares += abs(squares_of(placing) - squares) < 0.01
    print(
        f"free at once, small: {same_count} of {cases} equal the best of every choice, {proven}"
        " proven"
    )
    print(
        f"placing, small: {same_verdict} of {cases} verdicts equal those of every placing,"
        f" {same_squares} of {placed} placed are as even"
    )


def quick_against_exact(cases: int) -> None:
    """The quick search alone against the exact one, on services that the exact one can finish."""
    rng = random.Random(11)
    worst_a, same, finished = 0.0, 0, 0
    for _ in range(cases):
        nodes = [Node("Service", None, 100)]
        extra = [ExtraLoad(f"x{k}", "Service", rng.randrange(10, 121) / 10) for k in range(11)]
        exact = place_on_phases(nodes, [], extra, step_bound=400_000)
        quick = place_on_phases(nodes, [], extra, step_bound=2_000)
        if exact.evenest and exact.verdict == quick.verdict == "placed":
            finished += 1
            gap_a = max(quick.booked_a[0][1]) - max(exact.booked_a[0][1])
            same += abs(gap_a) < 0.01
            worst_a = max(worst_a, gap_a)
    print(
        f"quick search against exact, one service of 11 loads: {same} of {finished} equal, highest"
        f" phase at most {worst_a:.1f} A above"
    )


def solver_count(
    nodes: list[Node], loads: list[Load], outlets: list[Outlet], *, counted: bool = False
) -> str:
    """
    Most outlets at once by the mixed-integer solver of scipy, where that is installed.

    ``counted`` takes each entry as often as it is there.
    """
    try:
        import numpy as np
        from scipy.optimize import Bounds, LinearConstraint, milp
    except ImportError:
        return "no scipy"
    tree, found = tree_of(nodes), standing(nodes, loads)
    rows = [(name, k) for name in tree.nodes for k in range(3)]
    used = np.array(
        [
            [o.ampere_a * (n in tree.path[o.node] and PHASES[k] in o.phases) for o in outlets]
            for n, k in rows
        ]
    )
    left = [found[n].limit_a[k] - found[n].booked_a[k] + 1e-6 for n, k in rows]
    ones = np.ones(len(outlets))
    most = [outlet.count if counted else 1 for outlet in outlets]
    result = milp(
        -ones,
        constraints=LinearConstraint(used, -np.inf, left),
        integrality=ones,
        bounds=Bounds(0, most),
        options={"time_limit": 60},
    )
    return f"{-result.fun:.0f}"


def large() -> None:
    """
    The house of 12 services, its growth, and supplies that bind less, where services bind as well
    and proof is harder.
    """
    print(
        "services  outlets  loads  supply | free at once: outlets  at most  proven  steps  solver  "
        "    s | placing: verdict                  s"
    )
    sizes = (
        (3, 100, 50, 63),
        (6, 200, 100, 63),
        (12, 400, 200, 63),
        (24, 800, 400, 63),
        (12, 400, 200, 90),
        (12, 400, 200, 110),
    )
    for services, outlet_count, load_count, supply_a in sizes:
        rng = random.Random(services)
        nodes, loads, outlets = a_house(
            rng, services=services, outlets=outlet_count, supply_a=supply_a
        )
        start = time.perf_counter()
        found = free_at_once(nodes, loads, outlets)
        free_s = time.perf_counter() - start
        extra = some_loads(rng, nodes, load_count)
        start = time.perf_counter()
        placing = place_on_phases(nodes, loads, extra)
        place_s = time.perf_counter() - start
        print(
            f"{services:8} {outlet_count:8} {load_count:6} {supply_a:5} A | {found.outlets:22}"
            f" {found.at_most:8} {found.proven!s:>7} {found.steps:6}"
            f" {solver_count(nodes, loads, outlets):>7} {free_s:6.2f} | {placing.verdict:26}"
            f" {place_s:6.2f}"
        )


def a_208_v_house(rng: random.Random) -> tuple[list[Node], list[Load], list[Outlet]]:
    """
    Services of 120/208 V at 80 %, with panels of outlets between line and neutral, between two
    lines, and on three.
    """
    services = rng.randint(1, 6)
    nodes = [Node("Supply", None, rng.choice([100, 150, 200]) * services, continuous_share=0.8)]
    standing_loads, entries = [], []
    for k in range(services):
        nodes.append(Node(f"S{k}", "Supply", rng.choice([100, 200, 400]), continuous_share=0.8))
        standing_loads.append(
            Load(
                f"even {k}",
                f"S{k}",
                line_currents(phases=PHASES, current_a=rng.randrange(400) / 10, power_factor=0.9),
            )
        )
        for panel in (f"P{k}.{j}" for j in range(rng.randint(1, 3))):
            nodes.append(Node(panel, f"S{k}", rng.choice([60, 100, 125]), continuous_share=0.8))
            entries += [
                Outlet(f"{panel} {phase}", panel, (phase,), 16, count=rng.randint(1, 6))
                for phase in PHASES
            ]
            entries += [
                Outlet(
                    f"{panel} {pair}",
                    panel,
                    pair,
                    rng.choice([16, 24, 24, 32, 40]),
                    count=rng.randint(0, 4),
                )
                for pair in PAIRS
            ]
            entries.append(Outlet(f"{panel} three", panel, PHASES, 24, count=rng.randint(0, 3)))
    return nodes, standing_loads, entries


def mixes_of_208_v(cases: int) -> None:
    """
    How many mixes of 120 and 208 V are proven, and whether the count is that of an integer program.
    """
    proven = same = 0
    start = time.perf_counter()
    houses = [a_208_v_house(random.Random(seed)) for seed in range(cases)]
    answers = [free_at_once(*house) for house in houses]
    took_s = time.perf_counter() - start
    for house, found in zip(houses, answers, strict=True):
        proven += found.proven
        same += solver_count(*house, counted=True) in (str(found.outlets), "no scipy")
    print(
        f"free at once, 120/208 V: {proven} of {cases} proven, {same} equal an integer program,"
        f" {took_s / cases:.2f} s each"
    )


def main() -> None:
    """Print all comparisons."""
    mixes_of_208_v(60)
    compare_small(40)
    quick_against_exact(20)
    large()


if __name__ == "__main__":
    main()
