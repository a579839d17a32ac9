"""Nested limits by hand, against every subset, and against an integer solver."""

import itertools
from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.formulas.full_at_once import full_points
from builder.formulas.limits import GroupLimit, RatedPoint, left_on_points, sum_of_ratings_kg

FOOT_M = 0.3048
LB_KG = 0.45359237


def published_roof() -> tuple[list[RatedPoint], list[GroupLimit]]:
    """
    Seven beams of 36 ft with a place every 5 ft, 2000 lb a point, 6000 lb a beam, 20,000 lb the
    roof.
    """
    points = [
        RatedPoint(
            f"B{beam}-{k}", 2000 * LB_KG, groups=(f"beam {beam}", "roof"), at_m=5 * FOOT_M * k
        )
        for beam in range(1, 8)
        for k in range(8)
    ]
    limits = [
        GroupLimit(f"beam {beam}", 6000 * LB_KG, least_spacing_m=5 * FOOT_M) for beam in range(1, 8)
    ]
    return points, [*limits, GroupLimit("roof", 20000 * LB_KG)]


@pytest.mark.source(
    "by hand from a published house rule: 2000 lb a point, 6000 lb a beam, 20,000 lb a roof: 3 full"
    " points a beam, 10 on the roof"
)
def test_a_published_roof_holds_ten_full_points_of_fifty_six() -> None:
    points, limits = published_roof()
    found = full_points(points, limits)
    assert len(found.names) == 10
    assert found.proven
    assert found.at_most == 10
    assert found.load_kg == pytest.approx(20000 * LB_KG)
    assert found.sum_of_ratings_kg == pytest.approx(56 * 2000 * LB_KG)
    assert sum_of_ratings_kg(points[:8]) == pytest.approx(16000 * LB_KG)
    assert len(full_points(points[:8], limits).names) == 3
    assert (
        max(sum(name.startswith(f"B{beam}-") for name in found.names) for beam in range(1, 8)) <= 3
    )


@pytest.mark.source(
    "by hand: the same roof without a spacing rule, where beams of 2000 to 2700 lb a point hold 3"
    " or 2 and the roof of 20,000 lb holds 3 of 2000, 2 of 2100, 2 of 2200, 2 of 2300: 19,200"
)
def test_groups_that_nest_are_solved_in_one_pass_however_many_points_they_hold() -> None:
    points = [
        RatedPoint(f"B{beam}-{k}", (1900 + 100 * beam) * LB_KG, groups=(f"beam {beam}", "roof"))
        for beam in range(1, 9)
        for k in range(8)
    ]
    limits = [GroupLimit(f"beam {beam}", 6000 * LB_KG) for beam in range(1, 9)]
    found = full_points(points, [*limits, GroupLimit("roof", 20000 * LB_KG)])
    assert found.proven
    assert len(found.names) == 9
    assert found.load_kg == pytest.approx(19200 * LB_KG)


@pytest.mark.source(
    "by hand: 500 kg points, 800 kg beam with 450 kg on it leaves 350; 1000 kg roof with 900 kg"
    " leaves 100"
)
def test_which_limit_binds() -> None:
    limits = [GroupLimit("beam", 800), GroupLimit("roof", 2000, carried_kg=300)]
    points = [
        RatedPoint("P1", 500, 400, ("beam", "roof")),
        RatedPoint("P2", 500, 50, ("beam", "roof")),
        RatedPoint("P3", 500, 0, ("roof",)),
    ]
    assert [(left.left_kg, left.binds) for left in left_on_points(points, limits)] == [
        (100, "P1"),
        (350, "beam"),
        (500, "P3"),
    ]
    tight = [limits[0], GroupLimit("roof", 1000, carried_kg=450)]
    assert [(left.left_kg, left.binds) for left in left_on_points(points, tight)] == [
        (100, "P1"),
        (100, "roof"),
        (100, "roof"),
    ]


@pytest.mark.source("by hand: 1200 kg on a 1000 kg point is 200 kg too much; nothing is clipped")
def test_an_overload_is_negative() -> None:
    found = left_on_points([RatedPoint("P1", 1000, 1200, ("roof",))], [GroupLimit("roof", 900)])[0]
    assert (found.left_kg, found.binds) == (-300, "roof")
    assert full_points([RatedPoint("P1", 1000, 1200)], []).names == ()


@pytest.mark.source(
    "by hand: 1.5 m apart by rule; the point 1 m beside a loaded one has nothing left, the one 1.5"
    " m away has"
)
def test_a_point_too_near_to_a_loaded_one_has_nothing_left() -> None:
    limits = [GroupLimit("beam", 5000, least_spacing_m=1.5)]
    points = [
        RatedPoint("A", 500, 200, ("beam",), 0),
        RatedPoint("B", 500, 0, ("beam",), 1),
        RatedPoint("C", 500, 0, ("beam",), 1.5),
    ]
    found = left_on_points(points, limits)
    assert [(left.left_kg, left.binds, left.by_spacing) for left in found] == [
        (300, "A", False),
        (0, "beam", True),
        (500, "C", False),
    ]
    assert full_points(points, limits).names == ("A", "C")


@pytest.mark.source("by hand: names, groups and places that cannot be")
def test_limits_refuse_what_they_cannot_place() -> None:
    with pytest.raises(
        ValueError, match="groups of point 'P' must be among the limits, got 'roof'"
    ):
        left_on_points([RatedPoint("P", 1, groups=("roof",))], [])
    with pytest.raises(ValueError, match="points must have names of their own, got 'P' twice"):
        full_points([RatedPoint("P", 1), RatedPoint("P", 1)], [])
    with pytest.raises(
        ValueError, match="at_m of point 'P' must be given for the spacing rule of 'beam', got None"
    ):
        full_points(
            [RatedPoint("P", 1, groups=("beam",))], [GroupLimit("beam", 1, least_spacing_m=1)]
        )
    with pytest.raises(ValueError, match="rating_kg must be a number of at least 0, got -1"):
        RatedPoint("P", -1)
    with pytest.raises(ValueError, match="limit_kg must be a number of at least 0, got -1"):
        GroupLimit("roof", -1)


def keeps_all_limits(
    full: Sequence[RatedPoint], points: Sequence[RatedPoint], limits: Sequence[GroupLimit]
) -> bool:
    """The rules, written out: no search, no grouping."""
    chosen = {point.name for point in full}
    if any(point.carried_kg > point.rating_kg for point in full):
        return False
    for limit in limits:
        members = [point for point in points if limit.name in point.groups]
        hung = limit.carried_kg + sum(
            point.rating_kg if point.name in chosen else point.carried_kg for point in members
        )
        if any(point.name in chosen for point in members) and hung > limit.limit_kg + 1e-6:
            return False
        loaded = [point for point in members if point.name in chosen or point.carried_kg > 0]
        for one, two in itertools.combinations(loaded, 2):
            near = (
                limit.least_spacing_m > 0
                and abs((one.at_m or 0) - (two.at_m or 0)) < limit.least_spacing_m - 1e-9
            )
            if near and (one.name in chosen or two.name in chosen):
                return False
    return True


def most_by_every_subset(points: Sequence[RatedPoint], limits: Sequence[GroupLimit]) -> int:
    for size in range(len(points), 0, -1):
        if any(
            keeps_all_limits(full, points, limits) for full in itertools.combinations(points, size)
        ):
            return size
    return 0


def drawn_roof(
    seed: int, count: int, *, crossing: bool
) -> tuple[list[RatedPoint], list[GroupLimit]]:
    """Beams with spacing rules under a roof; zones across the beams where asked."""
    rng = np.random.default_rng(seed)
    beams = 1 + count // 4
    points = []
    for k in range(count):
        groups = [f"beam {k % beams}", "roof"] + (
            [f"zone {int(rng.integers(2))}"] if crossing else []
        )
        carried = float(rng.integers(0, 3) * 60) if rng.random() < 0.3 else 0.0
        points.append(
            RatedPoint(
                f"P{k}",
                float(rng.integers(1, 6) * 100),
                carried,
                tuple(groups),
                float(rng.integers(0, 8)) * 0.5,
            )
        )
    limits = [
        GroupLimit(
            f"beam {b}", float(rng.integers(2, 12) * 100), 0, float(rng.integers(0, 4) * 0.5)
        )
        for b in range(beams)
    ]
    limits += (
        [GroupLimit(f"zone {z}", float(rng.integers(2, 15) * 100)) for z in range(2)]
        if crossing
        else []
    )
    return points, [
        *limits,
        GroupLimit("roof", float(rng.integers(3, 25) * 100), float(rng.integers(0, 4) * 50)),
    ]


@pytest.mark.source("every subset of up to 10 points, by the rules written out")
@pytest.mark.parametrize("crossing", [False, True])
def test_no_larger_set_exists(crossing: bool) -> None:
    for seed in range(60):
        points, limits = drawn_roof(seed, 4 + seed % 7, crossing=crossing)
        found = full_points(points, limits)
        assert found.proven
        assert len(found.names) == most_by_every_subset(points, limits), seed
        assert keeps_all_limits(
            [point for point in points if point.name in found.names], points, limits
        )


@pytest.mark.source(
    "scipy 1.17.1 (HiGHS) mixed-integer program, 48 points with zones that cross the beams"
)
@pytest.mark.parametrize("seed", range(4))
def test_an_integer_solver_finds_as_many(seed: int) -> None:
    optimize = pytest.importorskip("scipy.optimize")
    points, limits = drawn_roof(seed, 48, crossing=True)
    found = full_points(points, limits)
    rows, rooms = [], []
    barred = np.array([point.carried_kg > point.rating_kg for point in points])
    for limit in limits:
        inside = np.array([limit.name in point.groups for point in points])
        room = (
            limit.limit_kg
            - limit.carried_kg
            - sum(point.carried_kg for point in points if limit.name in point.groups)
        )
        rows.append(
            inside * np.array([max(point.rating_kg - point.carried_kg, 0) for point in points])
        )
        rooms.append(max(room, 0))
        barred |= inside & (room < 0)
        for one, two in itertools.combinations(range(len(points)), 2):
            first, second = points[one], points[two]
            gap = abs((first.at_m or 0) - (second.at_m or 0))
            if (
                inside[one]
                and inside[two]
                and limit.least_spacing_m > 0
                and gap < limit.least_spacing_m - 1e-9
            ):
                rows.append(np.eye(len(points))[one] + np.eye(len(points))[two])
                rooms.append(1)
                barred[one] |= second.carried_kg > 0
                barred[two] |= first.carried_kg > 0
    solved = optimize.milp(
        -np.ones(len(points)),
        integrality=np.ones(len(points)),
        bounds=optimize.Bounds(0, np.where(barred, 0, 1)),
        constraints=optimize.LinearConstraint(np.array(rows), -np.inf, np.array(rooms)),
    )
    assert len(found.names) <= round(-solved.fun) <= found.at_most
    assert not found.proven or len(found.names) == round(-solved.fun)
    assert keeps_all_limits(
        [point for point in points if point.name in found.names], points, limits
    )


@pytest.mark.source(
    "the bound of the search is told: cut after one case, the true number still lies between the"
    " two stated"
)
def test_a_search_cut_short_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    cut_short = 0
    for seed in range(30):
        points, limits = drawn_roof(seed, 10, crossing=True)
        whole = full_points(points, limits)
        with monkeypatch.context() as patch:
            patch.setattr("builder.formulas.full_at_once.MOST_CASES", 1)
            cut = full_points(points, limits)
        assert len(cut.names) <= len(whole.names) <= cut.at_most
        cut_short += not cut.proven
    assert cut_short > 0


@pytest.mark.law
@given(st.integers(0, 10_000), st.integers(0, 9), st.floats(0, 300))
def test_more_load_never_leaves_more(seed: int, which: int, more_kg: float) -> None:
    points, limits = drawn_roof(seed, 10, crossing=True)
    heavier = list(points)
    old = points[which]
    heavier[which] = RatedPoint(
        old.name, old.rating_kg, old.carried_kg + more_kg, old.groups, old.at_m
    )
    for before, after in zip(
        left_on_points(points, limits), left_on_points(heavier, limits), strict=True
    ):
        assert after.left_kg <= before.left_kg + 1e-9


@pytest.mark.law
@settings(max_examples=50)
@given(st.integers(0, 10_000), st.floats(0, 1000))
def test_a_higher_roof_limit_never_means_fewer_points(seed: int, more_kg: float) -> None:
    points, limits = drawn_roof(seed, 9, crossing=False)
    roof = limits[-1]
    raised = [*limits[:-1], GroupLimit(roof.name, roof.limit_kg + more_kg, roof.carried_kg)]
    assert len(full_points(points, raised).names) >= len(full_points(points, limits).names)
