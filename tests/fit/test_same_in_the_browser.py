"""
The check in Python and as the page runs it, in a real browser: thousands of riders and packs, and
not one byte of difference.
"""

from collections import Counter
from collections.abc import Iterable
from functools import cache
from typing import Any

import pytest
from playwright.sync_api import Browser

from builder.fit.interpreter import fit
from builder.fit.verdicts import RANK
from builder.site.engine import GLOBAL_NAME, engine_scripts
from tests.fit.pairs import Dice, a_pair
from tests.fit.plot_pairs import a_rectangle
from tests.fit.recording import Recorded, recording
from tests.fit.replaying import OFFERED_AS, differences
from tests.fit.sample import Record, rider
from tests.fit.stages import plot, stage
from tests.laws import share

PAIRS = share(range(5000), law="the check is the same in the browser", usually=150)
OF_THE_SITE = f"window.{OFFERED_AS} = {{ 'builder.fit.interpreter.fit': {GLOBAL_NAME}.fit }};"
"""What makes the script that the site serves answer to a replay."""


def judged(pairs: Iterable[tuple[Record, list[Record]]]) -> Recorded:
    """The check's calls on packs and riders, and what each gives."""
    recorded = Recorded()
    judge = recording(fit, recorded)
    for pair in pairs:
        judge(*pair)
    return recorded


@pytest.mark.laws
@pytest.mark.browser
def test_the_check_gives_the_same_in_the_browser_to_the_byte(browser: Browser) -> None:
    recorded = judged(a_pair(seed) for seed in PAIRS)
    assert len(recorded.results) == len(PAIRS)
    assert differences(browser, "".join(engine_scripts()) + OF_THE_SITE, recorded) == []


def a_crowd(seed: int) -> tuple[Record, list[Record]]:
    """A deck and a plot of as many rectangles as a rider may have."""
    dice = Dice(seed)
    rectangles: list[Record] = [a_rectangle(dice, index, dice.yes(0.3)) for index in range(100)]
    return stage(), [rider(plot(*rectangles))]


@pytest.mark.browser
def test_they_agree_on_crowded_stage_plots_too(browser: Browser) -> None:
    recorded = judged(a_crowd(seed) for seed in range(4))
    assert len(recorded.results) == 4
    assert differences(browser, "".join(engine_scripts()) + OF_THE_SITE, recorded) == []
    assert all("Move it" in each for each in recorded.results.values())


@cache
def reached() -> list[dict[str, Any]]:
    """The verdicts of the first pairs."""
    return [found for seed in range(560) for found in fit(*a_pair(seed))["verdicts"]]


def test_the_pairs_reach_every_verdict_and_every_kind_of_requirement() -> None:
    words = Counter(found["verdict"] for found in reached())
    sorts = Counter((found["title"].split()[-1], found["verdict"]) for found in reached())
    bridles = sum("A bridle that meets" in note for found in reached() for note in found["notes"])
    assert set(words) == set(RANK)
    assert min(words.values()) > 50
    assert bridles > 1
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
