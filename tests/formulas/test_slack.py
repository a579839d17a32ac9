"""Supports that cannot push: published and library cases, and contact conditions as laws."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.gravity import STANDARD_GRAVITY_M_S2
from builder.formulas.loads import PointLoad, UniformLoad, centre_of_mass_m, total_load_kg
from builder.formulas.releasing import released_supports
from builder.formulas.slack import each_slack, held
from builder.formulas.statics import reactions

KG_PER_N = 1 / STANDARD_GRAVITY_M_S2


@pytest.mark.source(
    "PyNiteFEA 3.2.0, one-way springs of 1e9 N/m, EI 2e6 N m2: 500, 500, 0 N, free end rises 31.25"
    " mm (linear: 406.25, 687.5, -93.75)"
)
def test_an_end_hoist_that_would_push_lifts_off() -> None:
    loads = [PointLoad(5, 1000 * KG_PER_N)]
    assert reactions(loads, (0, 10, 20))[2] / KG_PER_N == pytest.approx(-93.75)
    found = held(loads, (0, 10, 20), ei_kn_m2=2000)
    assert [kg / KG_PER_N for kg in found.reactions_kg] == pytest.approx((500, 500, 0), abs=0.5)
    assert found.slack == (2,)
    assert found.rise_m == pytest.approx((0, 0, 0.03125), abs=5e-6)
    assert found.stability == "held"


@pytest.mark.source(
    "beam theory by hand: 5 w (2 L)^4 / (384 EI) = 0.5208 m makes the centre of three hoists slack;"
    " w 500 N/m, L 10 m, EI 2e6 N m2"
)
@pytest.mark.parametrize(("drop_m", "slack"), [(0.5203, ()), (0.5213, (1,))])
def test_a_centre_hoist_let_down_far_enough_goes_slack(
    drop_m: float, slack: tuple[int, ...]
) -> None:
    found = held(
        [UniformLoad(0, 20, 500 * KG_PER_N)],
        (0, 10, 20),
        settlements_m=(0, drop_m, 0),
        ei_kn_m2=2000,
    )
    assert found.slack == slack
    assert [kg / KG_PER_N for kg in found.reactions_kg] == pytest.approx((5000, 0, 5000), abs=8)


@pytest.mark.source(
    "statics by hand; PyNiteFEA 3.2.0 for four hoists: 8.125, 0, 20.625, 1.25 with the second"
    " let go"
)
def test_each_hoist_let_go_in_turn() -> None:
    three = each_slack([UniformLoad(0, 20, 1)], (0, 10, 20))
    assert three[1].reactions_kg == pytest.approx((10, 0, 10), abs=1e-6)
    assert three[1].slack == (1,)
    assert three[2].reactions_kg == pytest.approx((0, 20, 0), abs=1e-6)
    assert three[2].stability == "balanced"
    four = each_slack([UniformLoad(0, 30, 1)], (0, 10, 20, 30))
    assert four[1].reactions_kg == pytest.approx((8.125, 0, 20.625, 1.25), abs=0.001)


@pytest.mark.source("by hand: the centre of mass at 5 m is outside what is left")
def test_a_body_that_nothing_holds_tips() -> None:
    loads = [UniformLoad(0, 10, 10)]
    assert held(loads, (0, 4)).stability == "tips"
    assert held(loads, (6, 8, 10)).reactions_kg == ()
    assert [case.stability for case in each_slack(loads, (0, 6))] == ["tips", "tips"]
    assert [case.stability for case in each_slack(loads, (1, 5))] == ["balanced", "tips"]
    assert [case.stability for case in each_slack(loads, (5,))] == ["tips"]
    assert held(loads, (5,)).reactions_kg == pytest.approx((100,))
    assert held(loads, (4,)).stability == "tips"


@pytest.mark.source(
    "by hand: places in any order, answers in the order given; no load is no reaction"
)
def test_answers_come_in_the_order_of_the_supports() -> None:
    found = held([PointLoad(5, 1000)], (20, 0, 10), ei_kn_m2=2000)
    assert found.slack == (0,)
    assert found.reactions_kg == pytest.approx((0, 500, 500))
    assert found.rise_m is not None
    assert found.rise_m[0] > 0
    assert held([], (0, 3)).reactions_kg == (0, 0)
    assert each_slack([UniformLoad(0, 30, 1)], (10, 0, 20, 30))[0].reactions_kg == pytest.approx(
        (0, 8.125, 20.625, 1.25)
    )


@pytest.mark.source("by hand: two of three supports must carry a load of 1 whose third would push")
def test_what_pushes_is_released() -> None:
    stiffness = np.outer((1.0, -2.0, 1.0), (1.0, -2.0, 1.0)).tolist()
    assert released_supports([0.4, 0.7, -0.1], stiffness) == [2]
    assert released_supports([0.4, 0.3, 0.3], stiffness) == []
    assert released_supports([2.0, 0.0, -1.0], np.zeros((3, 3)).tolist()) is None


@pytest.mark.source("by hand: settlements need a stiffness above 0")
def test_settlements_without_stiffness_are_refused() -> None:
    with pytest.raises(
        ValueError,
        match="ei_kn_m2 must be a number above 0 where supports are out of level, got None",
    ):
        held([PointLoad(1, 1)], (0, 2), settlements_m=(0, 0.01))
    with pytest.raises(
        ValueError,
        match="ei_kn_m2 must be a number above 0 where supports are out of level, got -1",
    ):
        held([PointLoad(1, 1)], (0, 2), ei_kn_m2=-1)


trusses = st.lists(st.floats(0.5, 6), min_size=1, max_size=7).map(
    lambda spans: tuple(float(x) for x in np.cumsum([0.0, *spans]))
)
levels = st.lists(st.floats(-0.02, 0.02), min_size=8, max_size=8)
shares = st.lists(st.tuples(st.floats(-0.1, 1.1), st.floats(1, 1000)), min_size=1, max_size=4)


@pytest.mark.law
@given(trusses, shares, levels)
def test_nothing_pushes_nothing_is_passed_through_and_all_is_in_equilibrium(
    supports_m: tuple[float, ...], placed: list[tuple[float, float]], levels_m: list[float]
) -> None:
    loads = [PointLoad(share * supports_m[-1], kg) for share, kg in placed]
    settled_m = levels_m[: len(supports_m)]
    found = held(loads, supports_m, settlements_m=settled_m, ei_kn_m2=2000)
    total_kg, centre_m = total_load_kg(loads), centre_of_mass_m(loads)
    assert (found.stability == "tips") == (not -1e-6 <= centre_m <= supports_m[-1] + 1e-6)
    if found.stability != "held" or found.rise_m is None:
        return
    assert min(found.reactions_kg) >= 0
    assert min(found.rise_m) >= 0
    assert sum(found.reactions_kg) == pytest.approx(total_kg, rel=1e-6)
    assert np.dot(found.reactions_kg, supports_m) == pytest.approx(
        total_kg * centre_m, abs=1e-6 * total_kg * supports_m[-1]
    )
    assert all(
        kg <= 1e-6 * total_kg or rise == 0
        for kg, rise in zip(found.reactions_kg, found.rise_m, strict=True)
    )
    lowered_m = [low - rise for low, rise in zip(settled_m, found.rise_m, strict=True)]
    as_if_fixed = reactions(loads, supports_m, settlements_m=lowered_m, ei_kn_m2=2000)
    assert found.reactions_kg == pytest.approx(as_if_fixed, abs=1e-5 * total_kg)


@pytest.mark.law
@given(trusses, shares)
def test_a_taut_body_carries_as_if_supports_could_push(
    supports_m: tuple[float, ...], placed: list[tuple[float, float]]
) -> None:
    loads = [PointLoad(share * supports_m[-1], kg) for share, kg in placed]
    as_beam = reactions(loads, supports_m)
    if min(as_beam) > 1e-3:
        found = held(loads, supports_m)
        assert found.slack == ()
        assert found.reactions_kg == pytest.approx(as_beam)


@pytest.mark.law
@given(trusses, shares)
def test_letting_a_support_go_is_a_beam_without_it(
    supports_m: tuple[float, ...], placed: list[tuple[float, float]]
) -> None:
    loads = [PointLoad(share * supports_m[-1], kg) for share, kg in placed]
    for gone, case in enumerate(each_slack(loads, supports_m)):
        rest = supports_m[:gone] + supports_m[gone + 1 :]
        if case.stability == "held":
            expected = held(loads, rest).reactions_kg
            assert case.reactions_kg[:gone] + case.reactions_kg[gone + 1 :] == pytest.approx(
                expected, abs=1e-5 * total_load_kg(loads)
            )
        else:
            assert held(loads, rest).stability == case.stability


@pytest.mark.law
@given(trusses, shares, levels)
def test_the_mirror_image_is_held_the_same_way(
    supports_m: tuple[float, ...], placed: list[tuple[float, float]], levels_m: list[float]
) -> None:
    loads = [PointLoad(share * supports_m[-1], kg) for share, kg in placed]
    turned = [PointLoad(-load.at_m, load.load_kg) for load in loads]
    settled_m = levels_m[: len(supports_m)]
    found = held(loads, supports_m, settlements_m=settled_m, ei_kn_m2=2000)
    mirrored = held(turned, [-at for at in supports_m], settlements_m=settled_m, ei_kn_m2=2000)
    assert mirrored.stability == found.stability
    assert mirrored.reactions_kg == pytest.approx(
        found.reactions_kg, abs=1e-6 * total_load_kg(loads)
    )


@pytest.mark.source(
    "by hand: supports 10 mm and 20 m apart in one body; force and moment still balance"
)
def test_supports_close_together_beside_long_spans_are_still_resolved() -> None:
    loads = [PointLoad(20, 500), PointLoad(41, 300), UniformLoad(0, 45, 8)]
    supports_m = (0, 0.02, 20, 20.05, 20.1, 40, 40.01)
    found = held(loads, supports_m)
    assert found.stability == "held"
    assert sum(found.reactions_kg) == pytest.approx(total_load_kg(loads), rel=1e-4)
    assert np.dot(found.reactions_kg, supports_m) == pytest.approx(
        total_load_kg(loads) * centre_of_mass_m(loads), rel=1e-4
    )
