"""Workings can be redone by hand: the numbers that a reader needs stand in them."""

import pytest

from tests.departments.rigged import BEAM, LIMITS, figure, hang, points

THREE = (
    LIMITS
    + BEAM
    + points(0, 10, 20)
    + hang(1, 2, 3, loads="{what: Lights, by: lighting, weight: 1600 kg}")
)


@pytest.mark.source(
    "Hicks, Civil Engineering Formulas, Table 2.1: three supports, 3/8, 10/8, 3/8 of w L = 800 kg;"
    " by hand w L^2 / 8 = 1000 kg m"
)
def test_the_check_of_three_moments_is_filled_in() -> None:
    steps = figure(THREE, "support", "P2", "share").working.steps
    assert (
        "Check, shares × places: 300.0 × 0.00 + 1000.0 × 10.00 + 300.0 × 20.00 = 16,000 kg m, as"
        " each load × its middle gives." in steps
    )
    assert any("P2 -1000.0" in step for step in steps)
    # By hand: 2 x (-1000) x 20 = -40,000 on the left; w L^3 / 4 = 80 x 1000 / 4 = 20,000 for each
    # span.
    assert (
        "P2: (0.0) × 10.00 + 2 × (-1000.0) × 20.00 + (0.0) × 10.00 = -40,000; −(20,000 + 20,000) ="
        " -40,000 kg m²." in steps
    )


@pytest.mark.source(
    "by hand: point loads off the middle and an overhang: both sides of the equation agree for the"
    " right shares"
)
@pytest.mark.parametrize(
    "loads",
    [
        (
            "{what: A, by: video, weight: 600 kg, at: 6 m}, {what: B, by: video, weight: 900 kg,"
            " from: 8 m, to: 21 m}"
        ),
        "{what: A, by: video, weight: 300 kg}, {what: B, by: video, weight: 80 kg, at: 0.2 m}",
    ],
)
def test_both_sides_of_the_check_agree(loads: str) -> None:
    steps = figure(
        LIMITS + BEAM + points(1, 9, 14, 21) + hang(1, 2, 3, 4, loads=loads, last_m=22.0),
        "support",
        "P2",
        "share",
    ).working.steps
    checks = [step for step in steps if step.endswith("kg m².")]
    assert len(checks) == 2
    for check in checks:
        left, right = (
            part.split(" = ")[-1].split(" ")[0].rstrip(";").replace(",", "")
            for part in check.split("; ")
        )
        assert float(left) == pytest.approx(float(right), abs=2.0)


def test_lengths_and_places_along_a_hang_tell_their_numbers() -> None:
    assert figure(THREE, "hang", "Truss", "length").working.steps == (
        "√((20.00 − (0.00))² + (0.00 − (0.00))²) = 20.00 m",
    )
    assert figure(THREE, "support", "P2", "along").working.steps == (
        "a = ((10.00) × (20.00) + (0.00) × (0.00)) / 20.00 = 10.00 m",
    )


@pytest.mark.source(
    "by hand: 1600 kg x 10 / 20 = 800 kg; 1/P = 1/1000 + (1/500 - 1/1000) x 0.5 = 0.0015, P ="
    " 667 kg"
)
def test_a_span_tells_its_loads_and_the_rows_it_lies_between() -> None:
    truss = (
        "trusses: [{name: T, in_all: 40 m, table: [{span: 8 m, uniform: 1000 kg}, {span: 12 m,"
        " uniform: 500 kg}]}]\n"
    )
    text = (
        LIMITS
        + truss
        + BEAM
        + points(0, 10, 20)
        + hang(1, 2, 3, loads="{what: Lights, by: lighting, weight: 1600 kg}", more=", truss: T")
    )
    steps = figure(text, "hang", "Truss", "span-1").working.steps
    # 80 kg/m over 10 m: M = w L² / 8 = 1,000 kg·m, as much as 8 M / L = 800 kg spread evenly.
    assert any("1,000.0 kg·m" in step for step in steps)
    assert "The larger counts: 800.0 kg." in steps
    assert "Table: 1/P = 1/1,000 + (1/500 − 1/1,000) × 0.500, P = 667 kg" in steps
