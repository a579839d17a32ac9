"""Workings that a house of feet and pounds can follow."""

import re
from pathlib import Path

import pytest

from builder.pack import Working
from builder.pipeline import pack_of, venue_of
from builder.working import in_both

QUARRY = Path(__file__).parent / "venues" / "quarry"


@pytest.mark.parametrize(
    ("step", "told"),
    [
        (
            "2,722 kg − 472.5 kg = 2,249.1 kg",
            "2,722 kg (6,000 lb) − 472.5 kg (1,040 lb) = 2,249.1 kg (4,958 lb)",
        ),
        ("spread over 14.00 m", "spread over 14.00 m (45.9 ft)"),
        ("35.11 kg/m and 7.5 kPa", "35.11 kg/m (23.6 lb/ft) and 7.5 kPa (157 psf)"),
        ("0.0 kg × 1.2", "0.0 kg × 1.2"),
        (
            "M = 3,441 kg m, EI = 2,100 kN·m², 12 m²",
            "M = 3,441 kg m, EI = 2,100 kN·m², 12 m² (129 sq ft)",
        ),
        ("−46 kg", "−46 kg (−101 lb)"),
    ],
)
def test_a_step_tells_each_measure_in_both_units(step: str, told: str) -> None:
    """
    By hand: 1 lb = 0.45359237 kg, 1 ft = 0.3048 m exactly (international yard and pound agreement
    of 1959); 1 psf = 47.880 Pa.
    """
    assert in_both(Working("", (), (), (step,))).steps == (told,)


def test_only_a_house_of_feet_and_pounds_reads_them() -> None:
    texts = {path.name: path.read_text("utf-8") for path in QUARRY.glob("*.yml")}
    metric = {**texts, "house.yml": texts["house.yml"].replace("units: imperial", "units: metric")}
    steps = [
        [
            step
            for item in pack_of(venue_of(each)).items()
            for figure in item.figures
            for step in figure.working.steps
        ]
        for each in (texts, metric)
    ]
    assert len([step for step in steps[0] if " lb)" in step]) > 20
    assert not [step for step in steps[1] if re.search(r"kg \([\d,.]+ lb\)", step)]
    assert len(steps[0]) == len(steps[1])
