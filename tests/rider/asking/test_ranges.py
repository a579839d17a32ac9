"""What an amount in a rider can be at all, and that nothing else comes to the check."""

from pathlib import Path

import pytest

from builder.files import read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack
from builder.pipeline import pack_of, venue_of
from builder.rider.table import LANGUAGE
from tests.laws import share
from tests.rider.riders import drawn, problems, read

ROOT = Path(__file__).parents[3]
POSSIBLE = "is possible here; check the number and its unit [impossible]"
COUNTED = "is possible here; write how many [impossible]"


@pytest.fixture(scope="module")
def demo() -> FitPack:
    """What the check reads of the demo."""
    folder = read_folder(ROOT / "venue")
    return fit_record(pack_of(venue_of(folder.texts, folder.photos)))


@pytest.mark.parametrize(
    ("line", "problem"),
    [
        (
            "power: [{for: x, current: 16 A, phases: single, count: 0}]",
            f"2:56 power[1].count: '0' cannot be: from 1 to 1,000,000 {COUNTED}",
        ),
        (
            "power: [{for: x, current: 0 A}]",
            f"2:27 power[1].current: '0 A' cannot be: above zero and at most 100,000 A {POSSIBLE}",
        ),
        ("trucks: {count: 0}", f"2:17 trucks.count: '0' cannot be: from 1 to 1,000,000 {COUNTED}"),
        (
            "trucks: {count: 1, length: 12 km}",
            "2:28 trucks.length: '12 km' cannot be: above zero and at most 10,000 m " + POSSIBLE,
        ),
        (
            "needs: [{what: stage width, at least: 1000 km}]",
            f"2:39 at least: '1000 km' cannot be: from zero to 10,000 m {POSSIBLE}",
        ),
        (
            "needs: [{what: forklifts, at least: 999999999999}]",
            f"2:37 at least: '999999999999' cannot be: from 0 to 1,000,000 {COUNTED}",
        ),
        (
            "level: {at: 300 dB(A)}",
            f"2:13 level.at: '300 dB(A)' cannot be: from -50 dB to 194 dB {POSSIBLE}",
        ),
        (
            "stays on deck: 20 km",
            f"2:16 stays on deck: '20 km' cannot be: from zero to 10,000 m {POSSIBLE}",
        ),
    ],
)
def test_what_cannot_be_is_told_with_what_can(line: str, problem: str) -> None:
    assert problems(f"act: A\n{line}\n") == [f"rider.yml:{problem}"]


@pytest.mark.parametrize("line", ["stays on deck: 0 m", "clock: {check: 0 min}"])
def test_nothing_is_possible_where_it_says_something(line: str) -> None:
    assert problems(f"act: A\n{line}\n") == []


def test_every_count_and_quantity_of_riders_has_a_range() -> None:
    for keys in LANGUAGE["groups"].values():
        for rule in keys:
            assert (rule["range"] is not None) == (rule["sort"] in ("count", "quantity"))


@pytest.mark.laws
@pytest.mark.parametrize("seed", share(range(2000), law="a damaged rider is answered", usually=20))
def test_whatever_can_be_read_of_a_rider_is_answered(demo: FitPack, seed: int) -> None:
    rider = read(drawn(1, seed)[0])["rider"]
    answered = fit(demo, [rider])
    own = [found for found in answered["verdicts"] if found["act"] == rider["act"]]
    assert len(own) >= len(rider["requirements"])
