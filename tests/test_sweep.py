"""
Every key of the demo, the quarry, the starting venue and of four shows, written in ways that nobody
means: it ends in problems that say where and what to do, or in a pack, pages and verdicts, within
bounds that are counted.
"""

import re

import pytest

from tests.laws import share
from tests.sweep import (
    ROOT,
    Case,
    Outcome,
    outcome,
    rider_cases,
    rider_outcome,
    venue_cases,
)

CODES = set(re.findall("^## (.+)$", (ROOT / "docs" / "problems.md").read_text("utf-8"), re.M))
MOST_PACK_BYTES = 8_000_000
MOST_PAGE_BYTES = 8_000_000
MOST_POINTS = 12_000
MOST_VERDICT_BYTES = 2_000_000


FOUND = (
    Case("demo", "rigging.yml", ("points", 44, "across"), "tiny"),
    Case("demo", "flying.yml", ("line_sets", 4, "hung_weight"), "beyond"),
    Case("demo", "sound.yml", ("fills", 0, "boxes"), "left out"),
    Case("demo", "sound.yml", ("fills", 1, "boxes"), "empty"),
)
"""What once ended in an exception. It is tried each time."""


def is_told(made: Outcome) -> bool:
    """Whether every problem has a line, a reason and a code that the guide explains."""
    return all(
        problem.where.line > 0 and problem.reason and problem.code in CODES
        for problem in made.problems
    )


@pytest.mark.laws
@pytest.mark.parametrize("case", share(venue_cases(), law="odd venues", usually=12), ids=str)
def test_an_odd_value_ends_in_problems_or_in_a_pack_of_bounded_size(case: Case) -> None:
    made = outcome(case)
    assert is_told(made)
    assert bool(made.problems) != (made.pack_bytes > 0)
    assert made.pack_bytes <= MOST_PACK_BYTES
    assert made.page_bytes <= MOST_PAGE_BYTES
    assert made.points <= MOST_POINTS


@pytest.mark.parametrize("case", FOUND, ids=str)
def test_what_once_ended_in_an_exception_does_not_again(case: Case) -> None:
    made = outcome(case)
    assert is_told(made)
    assert bool(made.problems) != (made.pack_bytes > 0)


@pytest.mark.laws
@pytest.mark.parametrize("case", share(rider_cases(), law="odd riders", usually=30), ids=str)
def test_an_odd_value_of_a_rider_ends_in_problems_or_in_verdicts(case: Case) -> None:
    made = rider_outcome(case)
    assert is_told(made)
    assert bool(made.problems) != (made.verdict_bytes > 0)
    assert made.verdict_bytes <= MOST_VERDICT_BYTES


@pytest.mark.laws
@pytest.mark.parametrize("case", share(venue_cases(), law="remembering", usually=2)[:40], ids=str)
def test_what_a_change_does_not_reach_may_be_remembered(case: Case) -> None:
    assert outcome(case) == outcome(case, remembering=False)
