"""
Reactions of hung bodies against handbooks, published rigging examples and the laws of statics.
"""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import loads as hung
from builder.formulas import statics
from builder.formulas.gravity import STANDARD_GRAVITY_M_S2
from builder.formulas.loads import Load, PointLoad, UniformLoad
from builder.formulas.statics import reactions

KIP_KG = 453.59237
FOOT_M = 0.3048
KIP_N = 4448.2216152605

HICKS_TABLE_2_1 = {
    2: (0.5, 0.5),
    3: (3 / 8, 10 / 8, 3 / 8),
    4: (4 / 10, 11 / 10, 11 / 10, 4 / 10),
    5: (11 / 28, 32 / 28, 26 / 28, 32 / 28, 11 / 28),
    6: (15 / 38, 43 / 38, 37 / 38, 37 / 38, 43 / 38, 15 / 38),
    7: (41 / 104, 118 / 104, 100 / 104, 106 / 104, 100 / 104, 118 / 104, 41 / 104),
    8: (56 / 142, 161 / 142, 137 / 142, 143 / 142, 143 / 142, 137 / 142, 161 / 142, 56 / 142),
}


@pytest.mark.source(
    "Hicks, Civil Engineering Formulas, Table 2.1, p. 50: uniformly loaded continuous beams over"
    " equal spans"
)
@pytest.mark.parametrize("hoists", sorted(HICKS_TABLE_2_1))
def test_a_uniform_load_on_equally_spaced_hoists(hoists: int) -> None:
    found = reactions([UniformLoad(0, hoists - 1, 1)], range(hoists))
    assert found == pytest.approx(HICKS_TABLE_2_1[hoists], abs=1e-9)


@pytest.mark.source(
    "Hicks, Civil Engineering Formulas, Table 2.1, p. 50: 10/8 of wL for the middle of three"
    " supports, 62.5 % of the whole"
)
def test_the_middle_of_three_hoists_takes_far_more_than_a_third() -> None:
    first, middle, last = reactions([UniformLoad(0, 12, 50)], (0, 6, 12))
    assert middle / 600 == pytest.approx(0.625, abs=1e-9)
    assert first == pytest.approx(last)


@pytest.mark.source(
    "common practice: a published rigging article, 1300 kg spread on 3 hoists: 806 kg in the middle"
    " (its 62 %); on 4: 481 kg inner (37 %)"
)
@pytest.mark.parametrize(("hoists", "inner_kg"), [(3, 806), (4, 481)])
def test_a_published_rigging_example(hoists: int, inner_kg: float) -> None:
    assert reactions([UniformLoad(0, 10, 130)], np.linspace(0, 10, hoists))[1] == pytest.approx(
        inner_kg, rel=0.01
    )


@pytest.mark.source(
    "D. L. Hall, Rigging Math (Made Simple), Lesson 9: span 20 ft, 100 lb at 17.5 ft and 200 lb at"
    " 5 ft from L2: 137.5, 162.5 lb"
)
def test_two_hoists_and_two_point_loads() -> None:
    loads = [PointLoad(20 - 17.5, 100), PointLoad(20 - 5, 200)]
    assert statics.two_support_reactions(loads, (0, 20)) == pytest.approx((137.5, 162.5), abs=0.05)
    assert reactions(loads, (0, 20)) == pytest.approx((137.5, 162.5), abs=0.05)


@pytest.mark.source(
    "by hand, moments about the first support; PyNiteFEA 3.2.0 gives 10.333 and 3.667"
)
def test_two_supports_with_overhangs() -> None:
    loads = [PointLoad(0, 4), UniformLoad(0, 10, 1)]
    assert statics.two_support_reactions(loads, (2, 8)) == pytest.approx((31 / 3, 11 / 3), abs=1e-9)
    assert reactions(loads, (8, 2)) == pytest.approx((11 / 3, 31 / 3), abs=1e-9)


@pytest.mark.source("by hand: 100 kg, 1 m outside a 4 m span, levers the far support by 25 kg")
def test_a_load_beyond_the_support_asks_the_other_to_push_and_is_not_clipped() -> None:
    assert statics.two_support_reactions([PointLoad(5, 100)], (0, 4)) == pytest.approx((-25, 125))


@pytest.mark.source(
    "beam diagram of a handbook: three equal spans, one end span unloaded: 0.383, 1.20, 0.450,"
    " -0.033 wL"
)
def test_two_of_three_spans_loaded() -> None:
    assert reactions([UniformLoad(0, 2, 1)], (0, 1, 2, 3)) == pytest.approx(
        (0.383, 1.2, 0.45, -0.033), abs=0.0005
    )


@pytest.mark.source(
    "by hand from the three-moment equation: 13/32, 22/32, -3/32 P for one span, 5/16, 22/16, 5/16"
    " P for both; PyNiteFEA 3.2.0 agrees"
)
@pytest.mark.parametrize(
    ("at_m", "shares"),
    [((0.5,), (13 / 32, 22 / 32, -3 / 32)), ((0.5, 1.5), (5 / 16, 22 / 16, 5 / 16))],
)
def test_point_loads_at_mid_span(at_m: tuple[float, ...], shares: tuple[float, ...]) -> None:
    assert reactions([PointLoad(at, 1) for at in at_m], (0, 1, 2)) == pytest.approx(
        shares, abs=1e-9
    )


@pytest.mark.source(
    "MATHalino reviewer, three-moment equation: overhangs of 1.319 m on 3 supports 3 m apart, 300"
    " N/m: three reactions of 863.8 N"
)
def test_the_overhang_that_makes_three_reactions_equal() -> None:
    found = reactions([UniformLoad(0, 6 + 2 * 1.319, 300)], (1.319, 4.319, 7.319))
    assert found == pytest.approx((863.8,) * 3, abs=0.5)


@pytest.mark.source(
    "A. Kassimali, Structural Analysis, App. D, Fig. D.5: MA = -97.5, MB = -142.5 k-ft; the fixed"
    " end as the middle of a mirrored beam"
)
def test_three_moment_equation_with_a_fixed_end() -> None:
    half = [PointLoad(10, 45), UniformLoad(20, 50, 1.8), PointLoad(60, 9)]
    mirrored = [PointLoad(-10, 45), UniformLoad(-50, -20, 1.8), PointLoad(-60, 9)]
    *_, at_b, at_c = reactions(half + mirrored, (-50, -20, 0, 20, 50))
    moment_b = at_c * 30 - 1.8 * 30 * 15 - 9 * 40
    moment_a = at_b * 20 + at_c * 50 - 45 * 10 - 1.8 * 30 * 35 - 9 * 60
    assert moment_b == pytest.approx(-142.5, abs=0.05)
    assert moment_a == pytest.approx(-97.5, abs=0.05)


@pytest.mark.source(
    "A. Kassimali, Structural Analysis, Example 13.14 (hand arithmetic, rounded; PyNiteFEA 3.2.0:"
    " -1.181, 122.542, -61.540, 60.180 k)"
)
def test_settled_supports() -> None:
    ei_kn_m2 = 29000 * 7800 * KIP_N / 1000 * 0.0254**2
    settled_m = [inch * 0.0254 for inch in (0, 0.625, 1.5, 0.75)]
    loads = [UniformLoad(0, 60 * FOOT_M, 2 * KIP_KG / FOOT_M)]
    found_kg = reactions(
        loads,
        [feet * FOOT_M for feet in (0, 20, 40, 60)],
        settlements_m=settled_m,
        ei_kn_m2=ei_kn_m2,
    )
    found_kip = [kg / KIP_KG for kg in found_kg]
    assert found_kip == pytest.approx([-1.181, 122.542, -61.540, 60.180], abs=0.0005)
    for found, printed, tolerance in zip(
        found_kip, (-1.098, 122.373, -61.451, 60.176), (0.1, 0.2, 0.1, 0.1), strict=True
    ):
        assert found == pytest.approx(printed, abs=tolerance)


@pytest.mark.source(
    "beam theory by hand: centre of three hoists loses 6 EI d / L^3 = 120 N, ends gain half;"
    " PyNiteFEA 3.2.0: 6250 -> 6130 N"
)
def test_a_centre_hoist_ten_millimetres_low() -> None:
    per_newton = 1 / STANDARD_GRAVITY_M_S2
    found = reactions(
        [UniformLoad(0, 20, 500 * per_newton)],
        (0, 10, 20),
        settlements_m=(0, 0.01, 0),
        ei_kn_m2=2000,
    )
    assert [kg / per_newton for kg in found] == pytest.approx((1935, 6130, 1935), abs=0.5)


@pytest.mark.source("by hand: the load hangs plumb under a lone support")
def test_a_lone_support_carries_all_when_it_is_over_the_centre_of_mass() -> None:
    loads = [PointLoad(1, 100), UniformLoad(0, 4, 25), PointLoad(3, 100)]
    assert hung.centre_of_mass_m(loads) == pytest.approx(2)
    assert hung.total_load_kg(loads) == pytest.approx(300)
    assert reactions(loads, (2.0,)) == pytest.approx((300,))
    with pytest.raises(
        ValueError,
        match=r"supports_m: a lone support must be over the centre of mass at 2 m, got 2\.1",
    ):
        reactions(loads, (2.1,))


@pytest.mark.source("by hand: what statics cannot answer")
@pytest.mark.parametrize(
    ("given", "message"),
    [
        ({"supports_m": ()}, "supports_m must hold at least 1 support, got 0"),
        ({"supports_m": (0, 4, 4)}, "supports_m must be at least 0.01 m apart, got 4 and 4"),
        ({"supports_m": (0, math.nan)}, "supports_m must be a finite number, got nan"),
        ({"supports_m": (0, 4), "length_m": 4}, "at_m must be on the body, 0 to 4 m, got 5"),
        (
            {"supports_m": (0, 7), "length_m": 6},
            "supports_m must be on the body, 0 to 6 m, got 7",
        ),
        ({"supports_m": (0, 4), "length_m": 0}, "length_m must be a number above 0, got 0"),
        (
            {"supports_m": (0, 4), "settlements_m": (0, 0)},
            "ei_kn_m2 must be a number above 0 where supports are out of level, got None",
        ),
        (
            {"supports_m": (0, 4), "settlements_m": (0,)},
            "settlements_m must hold one value for each of 2 supports, got 1",
        ),
    ],
)
def test_errors_name_what_is_wrong(given: dict[str, object], message: str) -> None:
    with pytest.raises(ValueError, match="^" + message.replace(".", r"\.") + "$"):
        reactions([PointLoad(5, 100)], **given)  # type: ignore[arg-type]  # wrong arguments are the test


lengths = st.floats(0.5, 8)
weights = st.floats(0, 2000)
places = st.floats(-3, 40)
point_loads = st.builds(PointLoad, places, weights)
uniform_loads = st.builds(
    lambda start, length, per_m: UniformLoad(start, start + length, per_m),
    places,
    lengths,
    st.floats(0, 200),
)
load_lists = st.lists(st.one_of(point_loads, uniform_loads), min_size=1, max_size=6)
support_lists = st.lists(lengths, min_size=1, max_size=7).map(
    lambda spans: tuple(np.cumsum([0.0, *spans]))
)


def scale_of(loads: list[Load]) -> float:
    return hung.total_load_kg(loads) * 100 + 1


@pytest.mark.law
@given(load_lists, support_lists)
def test_force_and_moment_are_in_equilibrium(
    loads: list[Load], supports_m: tuple[float, ...]
) -> None:
    found = reactions(loads, supports_m)
    moment_kgm = sum(load.total_kg * load.centre_m for load in loads)
    assert sum(found) == pytest.approx(hung.total_load_kg(loads), abs=1e-9 * scale_of(loads))
    assert sum(kg * at for kg, at in zip(found, supports_m, strict=True)) == pytest.approx(
        moment_kgm, abs=1e-8 * scale_of(loads)
    )


def mirrored(load: Load) -> Load:
    return (
        PointLoad(-load.at_m, load.load_kg)
        if isinstance(load, PointLoad)
        else UniformLoad(-load.to_m, -load.from_m, load.load_kg_per_m)
    )


@pytest.mark.law
@given(load_lists, support_lists)
def test_the_mirror_image_has_mirrored_reactions(
    loads: list[Load], supports_m: tuple[float, ...]
) -> None:
    found = reactions([mirrored(load) for load in loads], [-at for at in supports_m])
    assert found == pytest.approx(reactions(loads, supports_m), abs=1e-8 * scale_of(loads))


@pytest.mark.law
@given(load_lists, load_lists, support_lists)
def test_loads_add_up(some: list[Load], more: list[Load], supports_m: tuple[float, ...]) -> None:
    apart = np.array(reactions(some, supports_m)) + np.array(reactions(more, supports_m))
    assert reactions(some + more, supports_m) == pytest.approx(
        apart, abs=1e-9 * scale_of(some + more)
    )


@pytest.mark.law
@given(load_lists, st.tuples(places, places))
def test_two_supports_agree_with_plain_statics(
    loads: list[Load], pair: tuple[float, float]
) -> None:
    if abs(pair[0] - pair[1]) > 0.2:
        assert reactions(loads, pair) == pytest.approx(
            statics.two_support_reactions(loads, pair), abs=1e-8 * scale_of(loads)
        )


@pytest.mark.law
@given(support_lists, st.floats(-1, 1), st.floats(-1, 1), load_lists)
def test_moving_or_tilting_all_supports_as_one_changes_nothing(
    supports_m: tuple[float, ...], drop_m: float, tilt: float, loads: list[Load]
) -> None:
    moved_m = [drop_m + tilt * at for at in supports_m]
    found = reactions(loads, supports_m, settlements_m=moved_m, ei_kn_m2=10)
    assert found == pytest.approx(reactions(loads, supports_m), abs=1e-6 * scale_of(loads))


@pytest.mark.source("by hand: two supports are two")
def test_statics_alone_needs_exactly_two_supports() -> None:
    with pytest.raises(ValueError, match="supports_m must hold 2 supports, got 3"):
        statics.two_support_reactions([], (0, 1, 2))  # type: ignore[arg-type]  # the wrong number is the test
