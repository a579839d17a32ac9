"""Decks and floor loads."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.formulas.deck import decks_needed, floor_load_kpa, floor_mass_left_kg

FT, LB = 0.3048, 0.45359237


@pytest.mark.source(
    "by hand: 24 x 12 ft of 8 x 2 ft decks is 3 x 6 = 18; a published sheet lists 15, which leaves"
    " a sixth of it open"
)
def test_a_published_riser_lacks_three_decks() -> None:
    found = decks_needed(width_m=24 * FT, depth_m=12 * FT, deck_width_m=8 * FT, deck_depth_m=2 * FT)
    assert (found.decks, found.across, found.deep, found.turned) == (18, 3, 6, False)
    assert found.beyond_m2 == pytest.approx(0, abs=1e-9)


@pytest.mark.source("by hand: 2 x 1 m decks under 3 x 2 m: three turned, four unturned")
def test_turning_the_decks_can_save_some() -> None:
    found = decks_needed(width_m=3, depth_m=2, deck_width_m=2, deck_depth_m=1)
    assert (found.decks, found.turned) == (3, True)


@pytest.mark.source("ASCE 7 as printed: 150 psf is 7.18 kPa")
def test_pounds_on_a_square_foot() -> None:
    assert floor_load_kpa(mass_kg=150 * LB, area_m2=FT * FT) == pytest.approx(7.18, abs=0.005)


@pytest.mark.source("by hand: 5 kPa on 10 m² carries 5099 kg; 1099 kg stand there")
def test_what_a_floor_may_still_take() -> None:
    assert floor_mass_left_kg(limit_kpa=5, standing_kg=1099, area_m2=10) == pytest.approx(
        4000, abs=0.5
    )
    assert floor_mass_left_kg(limit_kpa=5, standing_kg=6000, area_m2=10) < 0


@pytest.mark.law
@given(st.floats(0.1, 30), st.floats(0.1, 30), st.floats(0.3, 3), st.floats(0.3, 3))
def test_the_decks_cover_what_was_asked(
    width_m: float, depth_m: float, deck_width_m: float, deck_depth_m: float
) -> None:
    found = decks_needed(
        width_m=width_m, depth_m=depth_m, deck_width_m=deck_width_m, deck_depth_m=deck_depth_m
    )
    one, other = (deck_depth_m, deck_width_m) if found.turned else (deck_width_m, deck_depth_m)
    assert found.across * one >= width_m - 1e-4
    assert found.deep * other >= depth_m - 1e-4
    assert found.decks * deck_width_m * deck_depth_m - width_m * depth_m == pytest.approx(
        found.beyond_m2, abs=1e-2
    )


@pytest.mark.law
@given(st.floats(0, 1e4), st.floats(0.1, 100))
def test_a_load_at_the_limit_leaves_nothing(mass_kg: float, area_m2: float) -> None:
    limit_kpa = floor_load_kpa(mass_kg=mass_kg, area_m2=area_m2)
    assert floor_mass_left_kg(
        limit_kpa=limit_kpa, standing_kg=mass_kg, area_m2=area_m2
    ) == pytest.approx(0, abs=1e-6)


@pytest.mark.law
def test_no_area_is_refused() -> None:
    with pytest.raises(ValueError, match="area_m2 must be a number above 0, got 0"):
        floor_load_kpa(mass_kg=1, area_m2=0)
    with pytest.raises(ValueError, match="deck_width_m must be a number above 0, got 0"):
        decks_needed(width_m=1, depth_m=1, deck_width_m=0, deck_depth_m=1)
