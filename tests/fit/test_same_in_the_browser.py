"""
The check in Python and as the page runs it, in a real browser: thousands of riders and packs, and
not one byte of difference.
"""

import json
from collections import Counter
from functools import cache
from typing import Any

import pytest
from playwright.sync_api import Browser

from builder.fit.interpreter import fit
from builder.fit.verdicts import RANK
from tests.fit.chromium import page_with
from tests.fit.pairs import Dice, a_pair
from tests.fit.plot_pairs import a_rectangle
from tests.fit.sample import Record, rider
from tests.fit.stages import plot, stage
from tests.laws import share

PAIRS = share(range(5000), law="the check is the same in the browser", usually=1200)
AT_ONCE = 300
SORTED_JSON = """(pairs) => {
  const sorted = (value) => Array.isArray(value) ? value.map(sorted)
    : value !== null && typeof value === "object" ? Object.fromEntries(Object.keys(value).sort().map((key) => [key, sorted(value[key])])) : value;
  return JSON.parse(pairs).map(([pack, riders]) => JSON.stringify(sorted(housecheck.fit(pack, riders))));
}"""  # noqa: E501


def in_python(seed: int) -> str:
    """A pair's result as JSON."""
    return json.dumps(fit(*a_pair(seed)), sort_keys=True, ensure_ascii=False, separators=(",", ":"))


def in_the_browser(browser: Browser) -> list[str]:
    """Every pair's result as JSON, from the scripts that the site serves."""
    found: list[str] = []
    with page_with(browser) as page:
        for start in range(0, len(PAIRS), AT_ONCE):
            # The pairs travel as text: the browser's own reader of JSON makes the numbers, as it
            # does with a published pack.
            pairs = [a_pair(seed) for seed in PAIRS[start : start + AT_ONCE]]
            found += page.evaluate(SORTED_JSON, json.dumps(pairs))
    return found


@pytest.mark.laws
@pytest.mark.browser
def test_the_check_gives_the_same_in_the_browser_to_the_byte(browser: Browser) -> None:
    expected = [in_python(seed) for seed in PAIRS]
    different = [
        seed
        for seed, ours, theirs in zip(PAIRS, expected, in_the_browser(browser), strict=True)
        if ours != theirs
    ]
    assert different == []


def a_crowd(seed: int) -> list[Any]:
    """A deck and a plot of as many rectangles as a rider may have."""
    dice = Dice(seed)
    rectangles: list[Record] = [a_rectangle(dice, index, dice.yes(0.3)) for index in range(100)]
    return [stage(), [rider(plot(*rectangles))]]


@pytest.mark.browser
def test_they_agree_on_crowded_stage_plots_too(browser: Browser) -> None:
    crowds = [a_crowd(seed) for seed in range(4)]
    expected = [
        json.dumps(fit(*each), sort_keys=True, ensure_ascii=False, separators=(",", ":"))
        for each in crowds
    ]
    with page_with(browser) as page:
        assert page.evaluate(SORTED_JSON, json.dumps(crowds)) == expected
    assert all("Move it" in each for each in expected)


@cache
def reached() -> list[dict[str, Any]]:
    """The verdicts of the first quarter of the pairs."""
    return [found for seed in range(600) for found in fit(*a_pair(seed))["verdicts"]]


def test_the_pairs_reach_every_verdict_and_every_kind_of_requirement() -> None:
    words = Counter(found["verdict"] for found in reached())
    sorts = Counter((found["title"].split()[-1], found["verdict"]) for found in reached())
    bridles = sum("A bridle that meets" in note for found in reached() for note in found["notes"])
    assert set(words) == set(RANK)
    assert min(words.values()) > 100
    assert bridles > 2
    for sort in ("power", "plot", "hang", "trim", "trucks", "ends", "level"):
        assert {word for name, word in sorts if name == sort} >= {"ask", "short"}
        assert {word for name, word in sorts if name == sort} & {"fits", "fits, with a note"}


SAID = (
    "over the edge",
    "it overlaps",
    "stands in the lane",
    "inside it",
    "hangs above",
    "higher than",
    "spread evenly",
    "on one foot",
    "wider than",
)
SAID += (
    "off the deck into",
    "not level",
    "within the tolerance",
    "out of service",
    "no wing",
    "clear depth",
    "no place",
    "whether that stays",
)
SAID += (
    "Move it",
    "Turn it",
    "Spread it",
    "Build it lower",
    "By its size",
    "Make it smaller",
    "which stays",
)


def test_the_pairs_reach_everything_that_is_found_about_a_stage_plot() -> None:
    plots = [found for found in reached() if "plot" in found["title"].lower()]
    text = " ".join(
        " ".join([each["reason"], *each["notes"], each["remedy"]])
        for found in plots
        for each in (found, *found["parts"])
    )
    assert [words for words in SAID if words not in text] == []
