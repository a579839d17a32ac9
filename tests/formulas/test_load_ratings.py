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
