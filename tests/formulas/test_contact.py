"""Supports that cannot push: each case against published and library values, on plain records."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.beams import BodyLoad
from builder.formulas.contact import (
    PLUMB_M,
    hung_body,
    level_case,
    slack_case,
    weight_of,
    without_pushing,
)


def at(place_m: float, kg: float) -> BodyLoad:
    """A load at one place."""
    return {"from_m": place_m, "to_m": place_m, "kg": kg}


def spread(from_m: float, to_m: float, kg: float) -> BodyLoad:
    """A spread load."""
    return {"from_m": from_m, "to_m": to_m, "kg": kg}


@pytest.mark.source(
    "PyNiteFEA 3.2.0 with one-way springs: 1,000 N at 5 m on 0, 10, 20 m gives 500, 500, 0 N; a"
    " beam that may push gives -93.75 N"
)
def test_a_support_that_would_push_carries_nothing() -> None:
    body = hung_body([at(5.0, 1000.0)], (20.0, 0.0, 10.0))
    assert body["pull_kg"] == pytest.approx([406.25, 687.5, -93.75])
    case = level_case(body)
    assert case["kg"] == pytest.approx([0.0, 500.0, 500.0])
    assert case["rise"][1:] == [0.0, 0.0]
    assert case["rise"][0] > 0
    assert case["stability"] == "held"


@pytest.mark.source("PyNiteFEA 3.2.0: 8.125, 0, 20.625, 1.25 with the second of four let go")
def test_one_support_let_go() -> None:
    body = hung_body([spread(0.0, 30.0, 30.0)], (30.0, 0.0, 10.0, 20.0))
    assert slack_case(body, 2)["kg"] == pytest.approx([1.25, 8.125, 0.0, 20.625])


@pytest.mark.source("by hand: 4 kg at 1 m and 6 kg from 2 m to 4 m act at (4 + 18) / 10 = 2.2 m")
def test_the_weight_of_a_body() -> None:
    assert weight_of([at(1.0, 4.0), spread(2.0, 4.0, 6.0)]) == pytest.approx((10.0, 2.2))
    assert weight_of([]) == (0.0, 0.0)


@pytest.mark.source("by hand: the centre of mass tells which supports can hold a body")
@pytest.mark.parametrize(
    ("centre_m", "stability", "kg"),
    [
        (0.0, "balanced", [10.0, 0.0]),
        (PLUMB_M / 2, "balanced", [10.0, 0.0]),
        (1.0, "held", [7.5, 2.5]),
        (4.0, "balanced", [0.0, 10.0]),
        (4.0 + 2 * PLUMB_M, "tips", []),
        (-2 * PLUMB_M, "tips", []),
    ],
)
def test_where_the_weight_hangs(centre_m: float, stability: str, kg: list[float]) -> None:
    case = level_case(hung_body([at(centre_m, 10.0)], (0.0, 4.0)))
    assert (case["stability"], case["kg"]) == (stability, pytest.approx(kg))


@pytest.mark.law
@pytest.mark.parametrize("count", range(1, 400))
def test_a_body_hung_by_one_of_two_supports_always_has_a_case(count: int) -> None:
    """Where the centre is off by just so much, rounding must not leave it between two cases."""
    place_m = count / 100
    for off_m in (PLUMB_M, -PLUMB_M):
        body = hung_body([at(place_m, 48.0)], (place_m - 3.0, place_m + off_m))
        assert slack_case(body, 0)["stability"] in ("balanced", "tips")


@pytest.mark.source("by hand: a stiffness of nothing leaves no way to carry what pushes")
def test_what_is_not_found_is_told() -> None:
    nothing = [[1e-30, 0.0, 0.0], [0.0, 1e-30, 0.0], [0.0, 0.0, 1e-30]]
    assert without_pushing([2.0, -3.0, -1.0], nothing)["stability"] == "unresolved"


HAND_M = 0.1
"""Hoists closer than a hand hang in no roof; five and more such may stay unresolved, and say so."""


@pytest.mark.law
@given(
    st.lists(st.tuples(st.floats(0, 1), st.floats(1, 900)), min_size=1, max_size=4),
    st.lists(st.one_of(st.just(0.01), st.floats(0.01, 9)), min_size=2, max_size=19),
)
def test_twenty_supports_carry_the_whole_load_or_say_that_they_are_too_close_together(
    placed: list[tuple[float, float]], gaps: list[float]
) -> None:
    places_m = [sum(gaps[:index]) for index in range(len(gaps) + 1)]
    loads = [at(share * places_m[-1], kg) for share, kg in placed]
    total_kg = sum(kg for _, kg in placed)
    case = level_case(hung_body(loads, places_m))
    if case["stability"] == "unresolved":
        assert len([gap for gap in gaps if gap < HAND_M]) >= 4
        return
    assert case["stability"] in ("held", "balanced")
    assert sum(case["kg"]) == pytest.approx(total_kg, rel=1e-6)
    assert min(case["kg"]) >= 0
