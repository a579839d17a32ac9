"""A beam condensed to its supports: influence lines and stiffness."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas import beams
from builder.formulas.gravity import STANDARD_GRAVITY_M_S2


def at(place_m: float, kg: float) -> beams.BodyLoad:
    """A load at one place."""
    return {"from_m": place_m, "to_m": place_m, "kg": kg}


@pytest.mark.source(
    "by hand: half of a load at mid span goes to either end; stiffness of two supports is nil"
)
def test_a_beam_condensed_once_serves_many_loads() -> None:
    beam = beams.condensed_beam((6, 0))
    assert beam["supports_m"] == [0, 6]
    assert beams.level_reactions_kg(beam, [at(3, 10)]) == pytest.approx([5, 5])
    assert np.array(beams.stiffness_kg_per_m(beam, 2000)) == pytest.approx(np.zeros((2, 2)))


@pytest.mark.source(
    "beam theory by hand: moving the middle of three supports L apart takes 6 EI / L^3, half of it"
    " at either end"
)
def test_the_stiffness_of_three_supports() -> None:
    stiffness = np.array(beams.condensed_beam((0, 4, 8))["stiffness_per_m3"])
    assert stiffness == pytest.approx(np.outer((1, -2, 1), (1, -2, 1)) * 1.5 / 4**3)
    in_kg = beams.stiffness_kg_per_m(beams.condensed_beam((0, 4, 8)), 100)
    assert in_kg[1][1] * STANDARD_GRAVITY_M_S2 == pytest.approx(6 * 100_000 / 4**3)


@pytest.mark.source("by hand: places that make no beam")
def test_one_support_is_no_beam() -> None:
    with pytest.raises(ValueError, match="supports_m must hold at least 2 supports, got 1"):
        beams.condensed_beam((1,))
    with pytest.raises(
        ValueError, match=r"supports_m must be at least 0\.01 m apart, got 1 and 1\.005"
    ):
        beams.condensed_beam((1, 1.005))


trusses = st.lists(st.floats(0.5, 6), min_size=1, max_size=7).map(
    lambda spans: tuple(float(x) for x in np.cumsum([0.0, *spans]))
)


@pytest.mark.law
@given(trusses)
def test_a_load_at_a_support_is_carried_there_alone(supports_m: tuple[float, ...]) -> None:
    beam = beams.condensed_beam(supports_m)
    for k, at_m in enumerate(supports_m):
        assert beams.level_reactions_kg(beam, [at(at_m, 1)]) == pytest.approx(
            np.eye(len(supports_m))[k], abs=1e-9
        )


@pytest.mark.law
@given(trusses, st.floats(-1, 1), st.floats(-1, 1))
def test_the_stiffness_takes_no_force_for_a_straight_move(
    supports_m: tuple[float, ...], drop: float, tilt: float
) -> None:
    stiffness = np.array(beams.condensed_beam(supports_m)["stiffness_per_m3"])
    assert stiffness == pytest.approx(stiffness.T)
    size = 1 + np.abs(stiffness).max()
    assert stiffness @ (drop + tilt * np.array(supports_m)) == pytest.approx(
        np.zeros(len(supports_m)), abs=1e-9 * size * (1 + supports_m[-1])
    )
    assert np.linalg.eigvalsh(stiffness).min() >= -1e-9 * size
