"""The command that chooses phases for extra single-phase loads."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from builder.cli import main

ROOT = Path(__file__).parents[2]
POWER = """
continuous_share: 80 %
supplies: [{name: Intake, system: 230/400 V three phase, rating: 400 A}]
services:
  - {name: Switch, fed_from: Intake, system: 230/400 V three phase, rating: 50 A}
  - {name: Shut, fed_from: Intake, system: 230/400 V three phase, rating: unknown}
standing_loads: [{what: Lamps, on: Switch, draws: 10 A, phases: L1, power_factor: 1}, {what: Oven, on: Shut, draws: unknown}]
"""  # noqa: E501


@pytest.fixture
def venue(tmp_path: Path) -> Path:
    """A house with one switch."""
    house = (ROOT / "tests" / "venues" / "quarry" / "house.yml").read_text("utf-8")
    (tmp_path / "house.yml").write_text(house, "utf-8")
    (tmp_path / "power.yml").write_text(POWER, "utf-8")
    return tmp_path


def run(venue: Path, *words: str) -> Result:
    """What the command answers."""
    return CliRunner().invoke(main, ["phases", *words, "--venue", str(venue)])


def test_each_load_gets_a_phase_and_what_is_left_is_told(venue: Path) -> None:
    # 50 A at 80 % are 40 A; the lamps leave 30, 40 and 40 A. The large load goes where most is
    # left, the small ones even it out.
    found = run(venue, "Switch", "keys: 16 A", "2 x 6 A")
    assert found.exit_code == 0
    assert found.output.splitlines()[:5] == [
        "Switch has free for hours: L1 30.0 A, L2 40.0 A, L3 40.0 A",
        "  1. keys  16 A on L2",
        "  2.       6 A on L3",
        "  3.       6 A on L3",
        "Left then: L1 30.0 A, L2 24.0 A, L3 28.0 A, bound by Switch",
    ]
    assert "No placing is more even." in found.output
    assert "Planning figures." in found.output
    assert "Oven" not in found.output or "Less what Oven draws" in found.output


def test_loads_that_do_not_fit_are_told_with_the_proof(venue: Path) -> None:
    assert run(venue, "switch", "40 A").exit_code == 0
    found = run(venue, "Switch", "40.5 A")
    assert found.exit_code == 1
    assert (
        "They do not fit: 1. draws 40.5 A and no phase of Switch has more than 40 A left."
        in found.output
    )


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("Swich", "16 A"), "did you mean 'Switch'?"),
        (("Zoo", "16 A"), "on must be one of Intake, Switch, Shut, got 'Zoo'"),
        (("Shut", "16 A"), "Shut needs the rating of Shut"),
        (("Switch", "16"), "LOADS: '16' needs a unit; write '16 A'"),
        (("Switch", "0 A"), "LOADS must be above 0 A and 200 in all at most, got '0 A'"),
        (
            ("Switch", "201 x 1 A"),
            "LOADS must be above 0 A and 200 in all at most, got '201 x 1 A'",
        ),
        (("Switch", ""), "LOADS must be written like '16 A' or '4 x 10 A', got ''"),
    ],
)
def test_what_cannot_be_answered_is_refused(
    venue: Path, words: tuple[str, ...], message: str
) -> None:
    found = run(venue, *words)
    assert found.exit_code == 2
    assert message in found.output


def test_a_venue_without_power_and_one_with_problems_say_so(venue: Path) -> None:
    (venue / "power.yml").write_text("supplies: [{name: Intake, rating: much}]", "utf-8")
    assert run(venue, "Intake", "16 A").exit_code == 1
    (venue / "power.yml").unlink()
    assert "has no power.yml" in run(venue, "Intake", "16 A").output
