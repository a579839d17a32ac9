"""
Seeded random trusses against two finite element libraries: rigid supports, hoists that cannot push,
and each hoist let go.
"""

from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import Any

import numpy as np
import pytest

from builder.formulas.loads import Load, PointLoad, UniformLoad, total_load_kg
from builder.formulas.slack import each_slack, held
from builder.formulas.statics import reactions

EI_KN_M2 = 2000.0
EI_KG_M2 = EI_KN_M2 * 1000 / 9.80665


@dataclass(frozen=True)
class Truss:
    """A body, its loads and its supports. [m], [kg]"""

    length_m: float
    loads: tuple[Load, ...]
    supports_m: tuple[float, ...]

    def stations(self) -> list[float]:
        """Every place where something begins, ends, stands or hangs."""
        found = {0.0, self.length_m, *self.supports_m}
        for load in self.loads:
            found |= {load.at_m} if isinstance(load, PointLoad) else {load.from_m, load.to_m}
        return sorted(found)

    def hung_kg(self) -> dict[float, float]:
        """Point loads by place: this library keeps only the last load given at a node."""
        found: dict[float, float] = {}
        for load in self.loads:
            if isinstance(load, PointLoad):
                found[load.at_m] = found.get(load.at_m, 0.0) + load.load_kg
        return found

    def uniform_kg_per_m(self, start_m: float, end_m: float) -> float:
        """Sum of the uniform loads over a stretch between two stations."""
        middle_m = (start_m + end_m) / 2
        return sum(
            load.load_kg_per_m
            for load in self.loads
            if isinstance(load, UniformLoad) and load.from_m < middle_m < load.to_m
        )


def drawn(rng: np.random.Generator, *, one_sided: bool = False) -> Truss:
    """
    A truss of 3 to 8 hoists with overhangs, own weight, part-uniform and point loads; one-sided
    ones have their load bunched up.
    """
    hoists = int(rng.integers(3, 9))
    supports = np.round(0.5 + np.cumsum(rng.uniform(1.0, 5.0, hoists)), 2)
    length = round(float(supports[-1] + 1), 2)
    loads: list[Load] = [
        UniformLoad(0.0, length, float(rng.uniform(2, 4) if one_sided else rng.uniform(8, 30)))
    ]
    start = round(float(rng.uniform(0, length / 2)), 2)
    loads.append(
        UniformLoad(
            start, round(start + float(rng.uniform(0.5, length / 3)), 2), float(rng.uniform(5, 60))
        )
    )
    reach = length / 3 if one_sided else length
    offset = float(rng.uniform(0, length - reach))
    loads += [
        PointLoad(round(float(offset + rng.uniform(0, reach)), 2), float(rng.uniform(20, 600)))
        for _ in range(int(rng.integers(1, 5)))
    ]
    return Truss(length, tuple(loads), tuple(float(x) for x in supports))


def by_pynite(truss: Truss, *, one_way: bool = False) -> list[float]:
    """Reactions by PyNiteFEA, rigid supports or stiff springs that cannot push. [kg]"""
    from Pynite import FEModel3D

    model: Any = FEModel3D()
    model.add_material("M", 200e9, 80e9, 0.3, 0)
    inertia = EI_KG_M2 / 200e9
    model.add_section("S", A=1e-2, Iy=inertia, Iz=inertia, J=inertia)
    stations = truss.stations()
    for k, x in enumerate(stations):
        model.add_node(f"N{k}", x, 0, 0)
    for k, (start, end) in enumerate(pairwise(stations)):
        model.add_member(f"B{k}", f"N{k}", f"N{k + 1}", "M", "S")
        per_m = truss.uniform_kg_per_m(start, end)
        if per_m:
            model.add_member_dist_load(f"B{k}", "Fy", -per_m, -per_m)
    for load in truss.loads:
        if isinstance(load, PointLoad):
            model.add_node_load(f"N{stations.index(load.at_m)}", "FY", -load.load_kg)
    nodes = [f"N{stations.index(x)}" for x in truss.supports_m]
    for k, node in enumerate(nodes):
        model.def_support(node, k == 0, not one_way, True, k == 0, True, False)
        if one_way:
            model.def_support_spring(node, "DY", 1e11, "-")
    model.analyze(sparse=False)
    return [float(model.nodes[node].RxnFY["Combo 1"]) for node in nodes]


def by_anastruct(truss: Truss, taut: list[int]) -> tuple[list[float], list[float]]:
    """
    Reactions by anastruct with only some supports in place, and the rise of the body at every
    support. [kg], [m]
    """
    from anastruct import SystemElements

    system: Any = SystemElements(EI=EI_KG_M2, EA=1e9)
    stations = truss.stations()
    for k, (start, end) in enumerate(pairwise(stations)):
        system.add_element(location=[[start, 0], [end, 0]])
        per_m = truss.uniform_kg_per_m(start, end)
        if per_m:
            system.q_load(q=-per_m, element_id=k + 1)
    for at_m, load_kg in truss.hung_kg().items():
        system.point_load(node_id=stations.index(at_m) + 1, Fy=-load_kg)
    ids = [stations.index(x) + 1 for x in truss.supports_m]
    for k in taut:
        if k == taut[0]:
            system.add_support_hinged(node_id=ids[k])
        else:
            system.add_support_roll(node_id=ids[k])
    system.solve()
    found = [system.get_node_results_system(node_id=ids[k]) for k in range(len(ids))]
    return [pull_of(result, k in taut) for k, result in enumerate(found)], [
        -float(result["uy"]) for result in found
    ]


def pull_of(result: dict[str, Any], held: bool) -> float:
    """The library's sign is that of the force on the support."""
    return -float(result["Fy"]) if held else 0.0


@cache
def level_trusses() -> tuple[Truss, ...]:
    rng = np.random.default_rng(2026)
    return tuple(drawn(rng) for _ in range(200))


@cache
def bunched_trusses() -> tuple[Truss, ...]:
    """
    Trusses with their load bunched up, so that many hoists would have to push; those that tip are
    left out.
    """
    rng = np.random.default_rng(1125)
    every = (drawn(rng, one_sided=True) for _ in range(260))
    return tuple(
        [truss for truss in every if held(truss.loads, truss.supports_m).stability == "held"][:200]
    )


def far_off(
    found: tuple[float, ...] | list[float], expected: tuple[float, ...] | list[float], truss: Truss
) -> float:
    """Greatest difference as a share of the load."""
    return max(
        abs(one - other) for one, other in zip(found, expected, strict=True)
    ) / total_load_kg(truss.loads)


@pytest.mark.source("PyNiteFEA 3.2.0, 200 random trusses of 3 to 8 hoists with overhangs")
def test_reactions_are_those_of_pynite() -> None:
    pytest.importorskip("Pynite")
    for truss in level_trusses():
        assert far_off(reactions(truss.loads, truss.supports_m), by_pynite(truss), truss) < 1e-7


@pytest.mark.source("anastruct 1.7.0, 200 random trusses of 3 to 8 hoists with overhangs")
def test_reactions_are_those_of_anastruct() -> None:
    pytest.importorskip("anastruct")
    for truss in level_trusses():
        pulls, _ = by_anastruct(truss, list(range(len(truss.supports_m))))
        assert far_off(reactions(truss.loads, truss.supports_m), pulls, truss) < 5e-6


@pytest.mark.source(
    "PyNiteFEA 3.2.0, one-way springs of 1e11 kg/m, 200 random trusses with bunched loads"
)
def test_slack_hoists_are_those_of_pynite() -> None:
    pytest.importorskip("Pynite")
    slack = 0
    for truss in bunched_trusses():
        found = held(truss.loads, truss.supports_m)
        slack += bool(found.slack)
        assert far_off(found.reactions_kg, by_pynite(truss, one_way=True), truss) < 1e-4
    assert slack > 100


@pytest.mark.source(
    "anastruct 1.7.0, 200 random trusses with the slack hoists taken out: reactions, and the rise"
    " above each slack hoist"
)
def test_the_rise_above_slack_hoists_is_that_of_anastruct() -> None:
    pytest.importorskip("anastruct")
    for truss in bunched_trusses():
        found = held(truss.loads, truss.supports_m, ei_kn_m2=EI_KN_M2)
        pulls, rises_m = by_anastruct(
            truss, [k for k in range(len(truss.supports_m)) if k not in found.slack]
        )
        assert far_off(found.reactions_kg, pulls, truss) < 5e-6
        assert found.rise_m == pytest.approx(rises_m, abs=1e-6)
        assert min(rises_m) > -1e-6


@pytest.mark.source("PyNiteFEA 3.2.0, one-way springs, each hoist of 30 random trusses let go")
def test_each_hoist_let_go_is_as_in_pynite() -> None:
    pytest.importorskip("Pynite")
    for truss in level_trusses()[:30]:
        for gone, case in enumerate(each_slack(truss.loads, truss.supports_m)):
            if case.stability != "held":
                continue
            left = truss.supports_m[:gone] + truss.supports_m[gone + 1 :]
            pulls = by_pynite(Truss(truss.length_m, truss.loads, left), one_way=True)
            assert (
                far_off(case.reactions_kg[:gone] + case.reactions_kg[gone + 1 :], pulls, truss)
                < 1e-4
            )
