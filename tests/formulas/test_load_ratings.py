"""Continuous, harmonic and dimmer ratings against the codes that ask for them."""

import pytest

from builder.formulas import load_ratings as ratings


@pytest.mark.source(
    "IEC 60364-5-52:2009, Table E.52.1 with BS 7671 Table 4Aa worked case 1; 39 A examples from"
    " memory, arithmetic by hand"
)
@pytest.mark.parametrize(
    ("line_a", "share", "rating_a", "tolerance"),
    [
        (25, 0.32, 29, 0.1),
        (25, 0.44, 38.4, 0.05),
        (39, 0.20, 45.3, 0.05),
        (39, 0.40, 54.4, 0.05),
        (39, 0.50, 58.5, 0.05),
        (39, 0.1, 39, 0.05),
    ],
)
def test_cable_rating_with_third_harmonic(
    line_a: float, share: float, rating_a: float, tolerance: float
) -> None:
    assert ratings.cable_rating_with_third_harmonic_a(
        line_a=line_a, third_harmonic_share=share
    ) == pytest.approx(rating_a, abs=tolerance)


@pytest.mark.source(
    "IEC 60364-5-52:2009, Table E.52.1: above 33 % the neutral decides; a web page keeps 25/0.86 ="
    " 29.1 A at 44 %, which is wrong"
)
def test_the_published_wrong_harmonic_rating_is_not_ours() -> None:
    assert (
        ratings.cable_rating_with_third_harmonic_a(line_a=25, third_harmonic_share=0.44) > 29.1 + 5
    )


@pytest.mark.source("NFPA 70, 520.53(O)(2), code quiz in EC&M: 620 A lines need an 806 A neutral")
def test_neutral_of_phase_control_dimmers() -> None:
    assert ratings.dimmer_neutral_rating_a(line_rating_a=620) == pytest.approx(806, abs=0.5)


@pytest.mark.source(
    "NFPA 70, 210.20(A) and 215.2(A)(1): 16 A gives 20 A; 80 A with 20 A not continuous gives 120"
    " A; 200 A carries 160 A"
)
def test_continuous_loads() -> None:
    assert ratings.breaker_needed_a(continuous_a=16) == pytest.approx(20)
    assert ratings.breaker_needed_a(continuous_a=80, other_a=20) == pytest.approx(120)
    assert ratings.continuous_limit_a(breaker_a=200) == pytest.approx(160)


@pytest.mark.law
@pytest.mark.parametrize("share", [0, -0.1, 1.2])
def test_a_continuous_share_outside_its_range_is_refused(share: float) -> None:
    with pytest.raises(ValueError, match=r"continuous_share must be above 0 and at most 1, got"):
        ratings.continuous_limit_a(breaker_a=100, continuous_share=share)
