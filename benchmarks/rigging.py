"""
How fast hoist loads are: 30 trusses on 200 points, nominal and each hoist slack, against the
fastest beam library present.

Run with ``python -m benchmarks.rigging``. The libraries solve the same beams as if supports could
push; ours also releases those that would. Then the exact worst out of level, for which no library
has an answer, points that can be full at once, and the demo's own hangs. Cases come from a fixed
seed.
"""

import time
from collections.abc import Callable
from functools import partial
from importlib.util import find_spec, module_from_spec, spec_from_file_location
from itertools import pairwise
from pathlib import Path
from types import ModuleType

import numpy as np

from builder.departments.rigging.description import Rigging
from builder.departments.rigging.hangs.bodies import bodies, envelope, shares
from builder.departments.rigging.steel.geometry import overhead
from builder.departments.sound.description import Sound
from builder.departments.sound.hanging import hung_loads
from builder.formulas.full_at_once import full_points
from builder.formulas.limits import GroupLimit, RatedPoint
from builder.formulas.loads import PointLoad, UniformLoad, total_load_kg
from builder.formulas.out_of_level import out_of_level
from builder.formulas.slack import Held, each_slack, held
from builder.formulas.statics import reactions
from builder.reading.reader import read


def library_models() -> ModuleType:
    """The tests' models of a truss in other libraries, so that both compare with the same."""
    path = Path(__file__).parents[1] / "tests" / "formulas" / "test_reference_trusses.py"
    spec = spec_from_file_location("reference_trusses", path)
    assert spec is not None  # the file is part of this repository  # noqa: S101
    assert spec.loader is not None  # as above  # noqa: S101
    module = module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


MODELS = library_models()
Truss = MODELS.Truss
EI_KN_M2: float = MODELS.EI_KN_M2
EI_KG_M2: float = MODELS.EI_KG_M2
Solver = Callable[[Truss], list[float]]


def thirty_trusses() -> list[Truss]:
    """Twenty trusses on seven hoists and ten on six: 200 points."""
    rng = np.random.default_rng(30)
    return [a_truss(rng, 7 if k < 20 else 6) for k in range(30)]


def a_truss(rng: np.random.Generator, hoists: int) -> Truss:
    """
    A truss with its own weight, a part-uniform load and eight point loads, a metre over at each
    end.
    """
    supports = [
        round(float(x), 2)
        for x in 1 + np.cumsum(np.concatenate(([0], rng.uniform(2, 5, hoists - 1))))
    ]
    length = round(supports[-1] + 1, 2)
    spread = UniformLoad(round(length / 4, 2), round(length / 2, 2), float(rng.uniform(5, 40)))
    hung = [
        PointLoad(round(float(x), 2), float(rng.uniform(20, 300)))
        for x in rng.uniform(0.5, length - 0.5, 8)
    ]
    return Truss(
        length,
        (UniformLoad(0.0, length, float(rng.uniform(10, 30))), spread, *hung),
        tuple(supports),
    )


def by_pycba(truss: Truss) -> list[float]:
    """Reactions by pycba. [kg]"""
    import pycba

    nodes = sorted({0.0, truss.length_m, *truss.supports_m})
    held_at = set(truss.supports_m)
    fixed = [code for x in nodes for code in ((-1 if x in held_at else 0), 0)]
    rows: list[list[float]] = []
    for member, (start, end) in enumerate(pairwise(nodes), 1):
        for load in truss.loads:
            if isinstance(load, PointLoad):
                if start <= load.at_m < end:
                    rows.append([member, 2, load.load_kg, load.at_m - start, 0])
            elif min(end, load.to_m) > max(start, load.from_m):
                first, last = max(start, load.from_m), min(end, load.to_m)
                rows.append([member, 3, load.load_kg_per_m, first - start, last - first])
    beam = pycba.BeamAnalysis(np.diff(nodes), np.full(len(nodes) - 1, EI_KG_M2), fixed, rows)
    beam.analyze()
    return [float(kg) for kg in beam.beam_results.R]


def by_anastruct_level(truss: Truss) -> list[float]:
    """Reactions by anastruct. [kg]"""
    return MODELS.by_anastruct(truss, list(range(len(truss.supports_m))))[0]


def solvers() -> dict[str, Solver]:
    """The libraries that are installed."""
    known: dict[str, tuple[str, Solver]] = {
        "pycba": ("pycba", by_pycba),
        "anastruct": ("anastruct", by_anastruct_level),
        "PyNiteFEA": ("Pynite", MODELS.by_pynite),
    }
    return {name: solver for name, (module, solver) in known.items() if find_spec(module)}


def cases_of(truss: Truss) -> list[Truss]:
    """Nominal, then each hoist gone."""
    gone = [truss.supports_m[:k] + truss.supports_m[k + 1 :] for k in range(len(truss.supports_m))]
    return [truss, *(Truss(truss.length_m, truss.loads, supports) for supports in gone)]


def ours(truss: Truss) -> list[Held]:
    """Nominal, then each hoist slack, with all that would push released."""
    return [held(truss.loads, truss.supports_m), *each_slack(truss.loads, truss.supports_m)]


def timed(work: Callable[[], object], repeats: int = 1) -> float:
    """Least time of a few runs. [s]"""
    least = float("inf")
    for _ in range(repeats):
        start = time.perf_counter()
        work()
        least = min(least, time.perf_counter() - start)
    return least


def greatest_difference(trusses: list[Truss], solver: Solver) -> tuple[float, int, int]:
    """
    Greatest difference as a share of the load, in how many cases, and how many were left out
    because more hoists went slack.
    """
    worst, compared, left_out = 0.0, 0, 0
    for truss in trusses:
        for k, (case, found) in enumerate(zip(cases_of(truss), ours(truss), strict=True)):
            if found.stability != "held" or len(found.slack) != (k > 0):
                left_out += 1
                continue
            kept = [kg for i, kg in enumerate(found.reactions_kg) if i not in found.slack]
            theirs = solver(case)
            worst = max(
                worst,
                max(abs(a - b) for a, b in zip(kept, theirs, strict=True))
                / total_load_kg(truss.loads),
            )
            compared += 1
    return worst, compared, left_out


def all_solved(solver: Solver, cases: list[Truss]) -> list[list[float]]:
    """Every case by one library."""
    return [solver(case) for case in cases]


def report_reactions(trusses: list[Truss]) -> None:
    """Times, ratio and greatest difference."""
    cases = [case for truss in trusses for case in cases_of(truss)]
    all_ours_s = timed(lambda: [ours(truss) for truss in trusses], 5)
    as_beam_s = timed(lambda: [reactions(case.loads, case.supports_m) for case in cases], 5)
    print(
        f"{sum(len(truss.supports_m) for truss in trusses)} points, {len(trusses)} trusses,"
        f" {len(cases)} cases"
    )
    print(f"  ours, slack hoists released   {all_ours_s * 1000:9.1f} ms")
    print(f"  ours, as if they could push   {as_beam_s * 1000:9.1f} ms")
    found = {name: timed(partial(all_solved, solver, cases)) for name, solver in solvers().items()}
    for name, seconds in found.items():
        worst, compared, left_out = greatest_difference(trusses, solvers()[name])
        print(
            f"  {name:<28}  {seconds * 1000:9.1f} ms  greatest difference {worst:.1e} of the load"
            f" in {compared} cases"
        )
        print(f"{'':44}{left_out} cases left out, where more hoists went slack or the body tips")
    if found:
        fastest = min(found, key=lambda name: found[name])
        with_slack, as_beam = found[fastest] / all_ours_s, found[fastest] / as_beam_s
        print(
            f"  ratio to the fastest ({fastest}): {with_slack:.1f} with slack hoists released,"
            f" {as_beam:.1f} as if they could push"
        )


def report_envelope(trusses: list[Truss]) -> None:
    """Exact worst out of level, against corners and random levels."""
    seconds = timed(
        lambda: [
            out_of_level(truss.loads, truss.supports_m, tolerance_m=0.01, ei_kn_m2=EI_KN_M2)
            for truss in trusses
        ]
    )
    print(f"worst out of level by 10 mm, exact: {seconds * 1000:.0f} ms for {len(trusses)} trusses")
    rng = np.random.default_rng(10)
    short = []
    for truss in trusses[:3]:
        peaks = [
            extremes.most_kg
            for extremes in out_of_level(
                truss.loads, truss.supports_m, tolerance_m=0.01, ei_kn_m2=EI_KN_M2
            )
        ]
        levels = rng.uniform(-0.01, 0.01, (2000, len(truss.supports_m)))
        drawn = [
            held(
                truss.loads, truss.supports_m, settlements_m=list(row), ei_kn_m2=EI_KN_M2
            ).reactions_kg
            for row in levels
        ]
        short += [1 - max(row[i] for row in drawn) / peak for i, peak in enumerate(peaks)]
    print(
        f"  2,000 random levels fall short of it by up to {max(short):.1%}, and pass it by"
        f" {max(0.0, -min(short)):.1e}"
    )


def report_limits() -> None:
    """Two hundred points on 25 beams under crossing zones and a roof."""
    rng = np.random.default_rng(200)
    points = [
        RatedPoint(
            f"P{k}",
            float(rng.integers(2, 11) * 100),
            groups=(f"beam {k // 8}", f"zone {k % 3}", "roof"),
            at_m=1.2 * (k % 8),
        )
        for k in range(200)
    ]
    limits = [GroupLimit(f"beam {b}", 2500, least_spacing_m=1.5) for b in range(25)] + [
        GroupLimit(f"zone {z}", 7000) for z in range(3)
    ]
    limits.append(GroupLimit("roof", 18000))
    start = time.perf_counter()
    found = full_points(points, limits)
    seconds = time.perf_counter() - start
    print(
        f"full at once: {len(found.names)} of 200 points (at most {found.at_most}, proven"
        f" {found.proven}) in {seconds * 1000:.0f} ms"
    )


def report_demo() -> None:
    """The exact worst cases of the demo's own hangs, as they are worked out at every build."""
    venue = Path(__file__).parents[1] / "venue"
    rigging = read(
        (venue / "rigging.yml").read_text(encoding="utf-8"), file="rigging.yml", kind=Rigging
    )
    sound = read((venue / "sound.yml").read_text(encoding="utf-8"), file="sound.yml", kind=Sound)
    hung = bodies(rigging, tuple(overhead(rigging.points, rigging.beams)), tuple(hung_loads(sound)))
    level = rigging.limits.level_within
    within_m = level.m if level else None
    found = [shares(body, within_m) for body in hung]
    every_s = timed(lambda: [shares(body, within_m) for body in hung], 5)
    envelope_s = timed(lambda: [envelope(body, within_m) for body in hung], 5)
    extremes = [extreme for part in found for extreme in part.level]
    proven = sum(extreme.proven for extreme in extremes)
    print(
        f"the demo's {len(hung)} hangs on {sum(len(body.supports_m) for body in hung)} points, out"
        " of level as the house states, exact:"
    )
    print(
        f"  {envelope_s * 1000:.0f} ms (aim: below 1,000 ms), {proven} of {len(extremes)} points"
        " proven"
    )
    print(f"  with nominal and each hoist slack {every_s * 1000:.0f} ms")


def main() -> None:
    """Print what was measured in this run."""
    trusses = thirty_trusses()
    report_reactions(trusses)
    report_envelope(trusses)
    report_limits()
    report_demo()


if __name__ == "__main__":
    main()
