"""
What supports carry, by the check's own beam: against published values, and against the house's
formulas for hangs by chance.
"""

from math import fsum

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.fit.hangs.cases import TIPS, cases_of
from builder.formulas.beams import BodyLoad
from builder.formulas.loads import PointLoad, UniformLoad
from builder.formulas.slack import each_slack, held


def at(place_m: float, kg: float) -> BodyLoad:
    """A load at one place."""
    return {"from_m": place_m, "to_m": place_m, "kg": kg}


def spread(from_m: float, to_m: float, kg: float) -> BodyLoad:
    """A spread load."""
    return {"from_m": from_m, "to_m": to_m, "kg": kg}


def carried(loads: list[BodyLoad], places_m: list[float]) -> list[list[float]]:
    """
    What each support carries of all loads, case by case: the last way of a case is the one in which
    only those hold that carry. Where one would have to push even so, the body tips: no case.
    """
    ways = [case[-1] for case in cases_of(loads, places_m)["cases"]]
    sums = [[fsum(on_one) for on_one in zip(*way, strict=True)] for way in ways]
    total_kg = fsum(load["kg"] for load in loads)
    return [kg for kg in sums if min(kg) > -1e-6 * total_kg]


def level(loads: list[BodyLoad], places_m: list[float]) -> list[float]:
    """What each support carries, all level."""
    return carried(loads, places_m)[0]


@pytest.mark.source(
    "D. L. Hall, Rigging Math (Made Simple), Lesson 9: span 20 ft, 100 lb at 17.5 ft and 200 lb at"
    " 5 ft from L2: 137.5, 162.5 lb"
)
def test_two_supports_by_statics() -> None:
    assert level([at(17.5, 100.0), at(5.0, 200.0)], [20.0, 0.0]) == pytest.approx([137.5, 162.5])


@pytest.mark.source(
    "by hand: 4 kg at 0 and 10 kg spread over a 10 m truss, supports at 2 m and 8 m: moments give"
    " 10.333 and 3.667 kg"
)
def test_a_load_on_an_overhang_levers_the_far_support() -> None:
    assert level([at(0.0, 4.0), spread(0.0, 10.0, 10.0)], [2.0, 8.0]) == pytest.approx(
        [31 / 3, 11 / 3]
    )


@pytest.mark.source(
    "Hicks, Civil Engineering Formulas, Table 2.1, p. 50: uniformly loaded continuous beams over"
    " equal spans"
)
@pytest.mark.parametrize(
    "shares",
    [
        (3 / 8, 10 / 8, 3 / 8),
        (0.4, 1.1, 1.1, 0.4),
        (11 / 28, 32 / 28, 26 / 28, 32 / 28, 11 / 28),
        (15 / 38, 43 / 38, 37 / 38, 37 / 38, 43 / 38, 15 / 38),
    ],
)
def test_equal_spans_under_an_even_load(shares: tuple[float, ...]) -> None:
    count = len(shares)
    found = level(
        [spread(0.0, 4.0 * (count - 1), 400.0 * (count - 1))],
        [4.0 * index for index in range(count)],
    )
    assert found == pytest.approx([400 * share for share in shares])


@pytest.mark.source(
    "beam theory by hand: P at the middle of both spans of three supports: 5/16, 22/16, 5/16 of P"
)
def test_a_load_at_the_middle_of_each_span() -> None:
    assert level([at(5.0, 160.0), at(15.0, 160.0)], [0.0, 10.0, 20.0]) == pytest.approx(
        [50.0, 220.0, 50.0]
    )


@pytest.mark.source(
    "PyNiteFEA 3.2.0 with one-way springs: 1,000 N at 5 m on 0, 10, 20 m gives 500, 500, 0 N; a"
    " beam that may push gives -93.75 N"
)
def test_a_support_that_would_push_is_let_go() -> None:
    assert level([at(5.0, 1000.0)], [0.0, 10.0, 20.0]) == pytest.approx([500.0, 500.0, 0.0])


@pytest.mark.source(
    "statics by hand: w = 1 kg/m over three supports 10 m apart; the middle one slack leaves 10 and"
    " 10, an end one slack hangs all on the middle"
)
def test_each_of_three_supports_slack_in_turn() -> None:
    cases = carried([spread(0.0, 20.0, 20.0)], [0.0, 10.0, 20.0])
    assert cases == [
        pytest.approx(case) for case in ([3.75, 12.5, 3.75], [0, 20, 0], [10, 0, 10], [0, 20, 0])
    ]


@pytest.mark.source(
    "PyNiteFEA 3.2.0: w = 1 over four supports 10 m apart, the second let go: 8.125, 0, 20.625,"
    " 1.25"
)
def test_the_second_of_four_supports_slack() -> None:
    cases = carried([spread(0.0, 30.0, 30.0)], [0.0, 10.0, 20.0, 30.0])
    assert cases[2] == pytest.approx([8.125, 0, 20.625, 1.25])


@pytest.mark.parametrize(("centre_m", "why"), [(-0.01, TIPS), (0.0, ""), (4.0, ""), (4.01, TIPS)])
def test_weight_outside_the_supports_is_told_and_not_worked_out(centre_m: float, why: str) -> None:
    assert cases_of([at(centre_m, 100.0)], [0.0, 4.0])["why"] == why


loads = st.lists(
    st.builds(
        lambda from_m, length_m, kg: (from_m, from_m + length_m, kg),
        st.floats(-1, 21),
        st.one_of(st.just(0.0), st.floats(0.1, 9)),
        st.floats(1, 900),
    ),
    min_size=1,
    max_size=5,
)
gaps = st.lists(st.floats(0.3, 6), min_size=1, max_size=7)


@given(loads, gaps, st.randoms(use_true_random=False))
def test_the_check_and_the_house_s_figures_have_the_same_cases_which_hold_the_whole_load(
    drawn: list[tuple[float, float, float]], apart: list[float], order: object
) -> None:
    places = [sum(apart[:index]) for index in range(len(apart) + 1)]
    order.shuffle(places)  # type: ignore[attr-defined]  # hypothesis hands out a Random
    ours = carried([spread(*each) for each in drawn], places)
    theirs = [PointLoad(a, kg) if a == b else UniformLoad(a, b, kg / (b - a)) for a, b, kg in drawn]
    level = held(theirs, places)
    slack = each_slack(theirs, places)
    in_order = sorted(range(len(places)), key=lambda index: places[index])
    every = [level, *(slack[index] for index in in_order if len(places) > 2)]
    if level.stability == "tips":
        assert ours == []
        return
    total_kg = sum(kg for _, _, kg in drawn)
    moment_kgm = sum(kg * (a + b) / 2 for a, b, kg in drawn)
    assert ours == [
        pytest.approx(list(case.reactions_kg), abs=1e-6 * total_kg)
        for case in every
        if case.stability != "tips"
    ]
    for case in ours:
        carried_kgm = sum(kg * place for kg, place in zip(case, places, strict=True))
        assert sum(case) == pytest.approx(total_kg)
        assert carried_kgm == pytest.approx(moment_kgm, abs=1e-6 * total_kg)
        assert min(case) >= 0


@given(loads, gaps)
def test_a_hang_seen_from_the_other_end_carries_the_same(
    told: list[tuple[float, float, float]], apart: list[float]
) -> None:
    places = [sum(apart[:index]) for index in range(len(apart) + 1)]
    ours = carried([spread(*each) for each in told], places)
    mirrored = carried([spread(-b, -a, kg) for a, b, kg in told], [-place for place in places])
    total_kg = sum(kg for _, _, kg in told)
    assert (ours == []) == (mirrored == [])
    for one, other in zip(ours[:1], mirrored[:1], strict=True):
        assert one == pytest.approx(other, abs=1e-6 * total_kg)
