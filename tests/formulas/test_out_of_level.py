"""
The most a support can carry out of level: against every taut set by another library, dense grids
and random draws.
"""

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas import beams
from builder.formulas.loads import Load, PointLoad, UniformLoad, total_load_kg
from builder.formulas.out_of_level import out_of_level
from builder.formulas.slack import held
from builder.formulas.statics import reactions

EI_KN_M2 = 2000.0


def drawn_truss(rng: np.random.Generator, supports: int) -> tuple[list[Load], tuple[float, ...]]:
    """
    A truss with its own weight and three point loads, centre of mass between the outer supports.
    """
    while True:
        at = np.cumsum(rng.uniform(1, 5, supports))
        loads: list[Load] = [UniformLoad(0, float(at[-1] + 1), float(rng.uniform(5, 40)))]
        loads += [
            PointLoad(float(rng.uniform(0, at[-1])), float(rng.uniform(0, 500))) for _ in range(3)
        ]
        if held(loads, at).stability == "held":
            return loads, tuple(float(x) for x in at)


def peak_by_every_taut_set(
    loads: list[Load], supports_m: tuple[float, ...], index: int, tolerance_m: float
) -> float:
    """
    One linear program for each set of taut supports, solved by HiGHS: exact, and shares no step
    with the search.
    """
    optimize = pytest.importorskip("scipy.optimize")
    beam = beams.condensed_beam(supports_m)
    level = np.array(beams.level_reactions_kg(beam, [load.as_body_load for load in loads]))
    stiff = np.array(beams.stiffness_kg_per_m(beam, EI_KN_M2)) * tolerance_m
    best = -np.inf
    for pattern in itertools.product((False, True), repeat=len(supports_m)):
        taut = np.array(pattern)
        bounds = [(-1, 1) if is_taut else (None, 1) for is_taut in pattern]
        asked = {"A_ub": stiff[taut], "b_ub": level[taut]} if taut.any() else {}
        if not taut.all():
            asked |= {"A_eq": stiff[~taut], "b_eq": level[~taut]}
        solved = optimize.linprog(stiff[index], bounds=bounds, **asked)
        if solved.status == 0:
            best = max(best, level[index] - solved.fun)
    return float(best)


@pytest.mark.source(
    "scipy 1.17.1 (HiGHS): one linear program for each of the 2^N sets of taut supports"
)
@pytest.mark.parametrize(("supports", "cases"), [(2, 2), (3, 8), (4, 8), (5, 5), (6, 2)])
def test_the_peak_is_that_of_every_taut_set_tried(supports: int, cases: int) -> None:
    rng = np.random.default_rng(supports)
    for _ in range(cases):
        loads, at = drawn_truss(rng, supports)
        index = int(rng.integers(supports))
        found = out_of_level(loads, at, tolerance_m=0.01, ei_kn_m2=EI_KN_M2)[index]
        assert found.proven
        assert found.most_kg == pytest.approx(
            peak_by_every_taut_set(loads, at, index, 0.01), abs=1e-6 * total_load_kg(loads)
        )


@pytest.mark.source(
    "dense grid by brute force: three supports depend on one number, how far the middle is below"
    " the line of the others"
)
def test_three_hoists_against_a_dense_grid() -> None:
    loads, at = drawn_truss(np.random.default_rng(5), 3)
    found = out_of_level(loads, at, tolerance_m=0.01, ei_kn_m2=EI_KN_M2)
    grid = [
        held(loads, at, settlements_m=(0, drop, 0), ei_kn_m2=EI_KN_M2).reactions_kg
        for drop in np.linspace(-0.02, 0.02, 2001)
    ]
    for index, extremes in enumerate(found):
        assert extremes.most_kg == pytest.approx(max(case[index] for case in grid), abs=1e-6)
        assert extremes.least_kg == pytest.approx(min(case[index] for case in grid), abs=1e-6)


def two_numbers_of_four(at: tuple[float, ...], drop_m: np.ndarray) -> np.ndarray:
    """
    Levels of the two inner of four supports, as drops below the line of the outer ones, reached
    from levels within the tolerance.
    """
    share = (np.array(at[1:3]) - at[0]) / (at[3] - at[0])
    return drop_m[:, 1:3] - (drop_m[:, :1] * (1 - share) + drop_m[:, 3:] * share)


@pytest.mark.source("by brute force: every level of a grid of 9 steps for four supports")
def test_four_hoists_against_a_dense_grid() -> None:
    loads, at = drawn_truss(np.random.default_rng(11), 4)
    found = out_of_level(loads, at, tolerance_m=0.01, ei_kn_m2=EI_KN_M2)
    steps = np.linspace(-0.01, 0.01, 9)
    levels = np.array(list(itertools.product(steps, repeat=4)))
    reduced = np.unique(two_numbers_of_four(at, levels).round(9), axis=0)
    grid = np.array(
        [
            held(loads, at, settlements_m=(0, *pair, 0), ei_kn_m2=EI_KN_M2).reactions_kg
            for pair in reduced
        ]
    )
    most = np.array([extremes.most_kg for extremes in found])
    assert np.all(grid.max(axis=0) <= most + 1e-6)
    assert np.all(grid.max(axis=0) >= 0.93 * most)


def batch_reactions(
    loads: list[Load], at: tuple[float, ...], settlements_m: np.ndarray
) -> np.ndarray:
    """
    Reactions for many levels at once, by trying every taut set on all of them: no step of the
    shipped solver.
    """
    beam = beams.condensed_beam(at)
    stiff = np.array(beams.stiffness_kg_per_m(beam, EI_KN_M2))
    level = beams.level_reactions_kg(beam, [load.as_body_load for load in loads])
    pull = np.array(level) - settlements_m @ stiff
    tolerance_kg = 1e-7 * total_load_kg(loads)
    found = np.full_like(pull, np.nan)
    for size in range(len(at) - 1):
        for released in map(list, itertools.combinations(range(len(at)), size)):
            rise = -pull[:, released] @ np.linalg.inv(stiff[np.ix_(released, released)])
            left = pull + rise @ stiff[released]
            good = (rise >= -1e-9).all(axis=1) & (left >= -tolerance_kg).all(axis=1)
            found[good] = left[good]
    return found


@pytest.mark.source(
    "100,000 random levels and all corners, solved by trying every taut set on each"
)
@pytest.mark.parametrize("supports", [4, 6])
def test_no_corner_and_no_random_level_is_above_the_peak(supports: int) -> None:
    rng = np.random.default_rng(supports)
    loads, at = drawn_truss(rng, supports)
    most = np.array(
        [
            extremes.most_kg
            for extremes in out_of_level(loads, at, tolerance_m=0.01, ei_kn_m2=EI_KN_M2)
        ]
    )
    draws = np.vstack(
        (
            rng.uniform(-0.01, 0.01, (100_000, supports)),
            list(itertools.product((-0.01, 0.01), repeat=supports)),
        )
    )
    drawn = batch_reactions(loads, at, draws)
    assert not np.isnan(drawn).any()
    assert np.all(drawn.max(axis=0) <= most + 1e-6 * total_load_kg(loads))
    assert np.all(drawn.max(axis=0) >= 0.5 * most)


@pytest.mark.source(
    "by hand: the search names levels that give the peak, so the peak is reached; all-taut and"
    " corner answers differ from it"
)
def test_the_levels_that_give_the_peak_are_named_and_corners_fall_short() -> None:
    loads: list[Load] = [UniformLoad(0, 17.5, 60)]
    at = tuple(3.5 * i for i in range(6))
    found = out_of_level(loads, at, tolerance_m=0.01, ei_kn_m2=EI_KN_M2)
    for index, extremes in enumerate(found):
        assert max(abs(level) for level in extremes.settlements_m) <= 0.01
        reached = held(loads, at, settlements_m=extremes.settlements_m, ei_kn_m2=EI_KN_M2)
        assert reached.reactions_kg[index] == pytest.approx(extremes.most_kg, abs=1e-6)
    corners = batch_reactions(
        loads, at, np.array(list(itertools.product((-0.01, 0.01), repeat=6)))
    ).max(axis=0)
    short_of = [
        1 - corner / extremes.most_kg for corner, extremes in zip(corners, found, strict=True)
    ]
    assert max(short_of) > 0.01
    assert min(short_of) > -1e-9
    assert [extremes.most_kg for extremes in found] == pytest.approx(
        [extremes.most_kg for extremes in reversed(found)], rel=1e-9
    )


@pytest.mark.source(
    "by hand: no tolerance is the level beam; places in any order; what tips has no answer"
)
def test_edges_of_the_envelope() -> None:
    loads: list[Load] = [UniformLoad(0, 7, 60)]
    level = out_of_level(loads, (7, 0, 3.5), tolerance_m=0, ei_kn_m2=EI_KN_M2)
    assert [extremes.most_kg for extremes in level] == pytest.approx((78.75, 78.75, 262.5))
    assert [extremes.least_kg for extremes in level] == pytest.approx((78.75, 78.75, 262.5))
    assert out_of_level(loads, (4, 7), tolerance_m=0.01, ei_kn_m2=EI_KN_M2) == ()
    assert out_of_level(loads, (3.5,), tolerance_m=0.01, ei_kn_m2=EI_KN_M2)[
        0
    ].most_kg == pytest.approx(420)
    with pytest.raises(ValueError, match=r"tolerance_m must be a number of at least 0, got -0\.01"):
        out_of_level(loads, (0, 7), tolerance_m=-0.01, ei_kn_m2=EI_KN_M2)
    with pytest.raises(
        ValueError, match="ei_kn_m2 must be a number above 0 where supports are out of level, got 0"
    ):
        out_of_level(loads, (0, 7), tolerance_m=0.01, ei_kn_m2=0)


@pytest.mark.source(
    "the bound of a search is told: with one case allowed the answer still encloses the true one"
)
def test_a_search_cut_short_says_so_and_does_not_understate(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    loads: list[Load] = [UniformLoad(0, 17.5, 60)]
    at = tuple(3.5 * i for i in range(6))
    whole = out_of_level(loads, at, tolerance_m=0.01, ei_kn_m2=EI_KN_M2)
    for name in ("MOST_CASES", "MOST_STEPS"):
        with monkeypatch.context() as patch:
            patch.setattr(f"builder.formulas.out_of_level.{name}", 1)
            cut = out_of_level(loads, at, tolerance_m=0.01, ei_kn_m2=EI_KN_M2)
        assert not all(extremes.proven for extremes in cut)
        assert all(
            short.most_kg >= full.most_kg - 1e-6 for short, full in zip(cut, whole, strict=True)
        )
        assert all(
            short.least_kg <= full.least_kg + 1e-6 for short, full in zip(cut, whole, strict=True)
        )


@pytest.mark.law
@settings(max_examples=25)
@given(st.integers(0, 10_000), st.integers(2, 6), st.floats(0.001, 0.01), st.floats(1, 3))
def test_a_wider_tolerance_never_narrows_the_envelope(
    seed: int, supports: int, tolerance_m: float, times: float
) -> None:
    loads, at = drawn_truss(np.random.default_rng(seed), supports)
    narrow = out_of_level(loads, at, tolerance_m=tolerance_m, ei_kn_m2=EI_KN_M2)
    wide = out_of_level(loads, at, tolerance_m=tolerance_m * times, ei_kn_m2=EI_KN_M2)
    slop_kg = 1e-6 * total_load_kg(loads)
    nominal = held(loads, at).reactions_kg
    for inner, outer, kg in zip(narrow, wide, nominal, strict=True):
        assert outer.most_kg >= inner.most_kg - slop_kg
        assert outer.least_kg <= inner.least_kg + slop_kg
        assert inner.least_kg - slop_kg <= kg <= inner.most_kg + slop_kg


@pytest.mark.law
@settings(max_examples=15)
@given(st.integers(0, 10_000), st.integers(2, 6))
def test_where_nothing_can_go_slack_the_peak_is_the_closed_form(seed: int, supports: int) -> None:
    loads, at = drawn_truss(np.random.default_rng(seed), supports)
    stiff = np.array(beams.stiffness_kg_per_m(beams.condensed_beam(at), EI_KN_M2))
    level = np.array(reactions(loads, at))
    if level.min() <= 0:
        return
    tolerance_m = 0.5 * float((level / np.maximum(np.abs(stiff).sum(axis=1), 1e-9)).min())
    tolerance_m = min(tolerance_m, 0.05)
    found = out_of_level(loads, at, tolerance_m=tolerance_m, ei_kn_m2=EI_KN_M2)
    expected = level + np.abs(stiff).sum(axis=1) * tolerance_m
    assert [extremes.most_kg for extremes in found] == pytest.approx(list(expected), rel=1e-7)
