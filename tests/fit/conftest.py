"""The last test of each file plays the file's calls again in a browser."""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.fit.recording import Recorded, recorded_calls
from tests.fit.replaying import differences, replay_script
from tests.laws import HOW_MUCH

HERE = Path(__file__).parent
LAST = "test_its_calls_give_the_same_in_the_browser"
LEAST = {
    "arrangements/test_arrangements.py": (1, 30),
    "arrangements/test_arrangement_laws.py": (2, 300),
    "arrangements/test_belonging.py": (1, 12),
    "arrangements/test_closed.py": (1, 4),
    "arrangements/test_in_doubt.py": (1, 8),
    "arrangements/test_instead.py": (1, 6),
    "arrangements/test_settings.py": (2, 200),
    "arrangements/test_set_for_all.py": (1, 60),
    "clock/test_day.py": (2, 500),
    "hangs/test_beams_terms.py": (1, 45),
    "hangs/test_bridles.py": (1, 25),
    "hangs/test_by_rule.py": (1, 70),
    "hangs/test_cases.py": (1, 200),
    "hangs/test_hang_laws.py": (3, 1000),
    "hangs/test_open_weights.py": (1, 10),
    "hangs/test_places_unknown.py": (1, 10),
    "hangs/test_plan.py": (1, 70),
    "plots/test_drawing.py": (2, 12),
    "spaces/test_spaces.py": (1, 13),
    "test_headroom.py": (1, 40),
    "test_show_day.py": (1, 25),
    "test_way_in.py": (1, 40),
    "needs/test_composed.py": (1, 12),
    "needs/test_contradictions.py": (1, 10),
    "needs/test_ends.py": (3, 100),
    "needs/test_kinds.py": (1, 20),
    "plots/test_plot_laws.py": (1, 500),
    "plots/test_stage_plot.py": (2, 2000),
    "test_circuits.py": (1, 130),
    "test_comparing.py": (1, 70),
    "test_counting.py": (1, 3),
    "test_deep.py": (2, 80),
    "test_feeders_terms.py": (1, 60),
    "test_from_memory.py": (1, 5),
    "test_house_closed.py": (1, 40),
    "test_house_regular.py": (2, 12),
    "test_laws.py": (1, 400),
    "test_loudness.py": (1, 15),
    "test_one_question.py": (1, 10),
    "test_risers.py": (1, 12),
    "test_power_more.py": (1, 40),
    "test_power_ways.py": (1, 12),
    "test_power_reasons.py": (1, 40),
    "test_reference_acts.py": (1, 20),
    "test_whole_day.py": (1, 6),
    "test_sentences.py": (1, 4),
    "test_hired_stage.py": (1, 10),
    "test_silence.py": (1, 6),
    "test_wording.py": (8, 50),
    "test_work.py": (1, 6),
}
"""
How many functions of the check the tests of a file call, and how many different calls they make, at
least. A new file is added here.
"""
WITHOUT_CALLS = {
    "test_published.py": "what it calls stays in Python: it reads the pack's own records",
    "test_replaying.py": "it tests the replay",
    "test_same_in_the_browser.py": "it makes its calls in both languages itself",
}


def told(path: Path) -> str:
    """A file of these tests as the tables name it."""
    return path.relative_to(HERE).as_posix()


class FileWithReplay(pytest.Module):
    """A file of tests with one more, the last: the calls of the others, made again."""

    others: int

    def collect(self) -> Iterator[pytest.Item | pytest.Collector]:
        """The file's tests, then the replay."""
        tests = list(super().collect())
        self.others = len(tests)
        yield from tests
        replay = pytest.Function.from_parent(self, name=LAST, callobj=replay_calls)
        replay.add_marker(pytest.mark.browser)
        yield replay

    def runs_whole(self, items: list[pytest.Item]) -> bool:
        """Whether this process runs every test of the file; laws run one by one on demand."""
        mine = sum(item.parent is self for item in items)
        return mine == self.others + 1 and HOW_MUCH not in os.environ


def pytest_pycollect_makemodule(
    module_path: Path, parent: pytest.Collector
) -> pytest.Module | None:
    """Every file of these tests gets a replay, but for those that say why not."""
    if told(module_path) in WITHOUT_CALLS:
        return None
    return FileWithReplay.from_parent(parent, path=module_path)


@pytest.fixture(scope="module", autouse=True)
def calls() -> Iterator[Recorded]:
    """What the tests of a file call."""
    with recorded_calls() as recorded:
        yield recorded


def replay_calls(browser: Browser, calls: Recorded, request: pytest.FixtureRequest) -> None:
    """Every recorded call gives the same in the browser, and enough were made."""
    assert calls.left_out == {}
    assert differences(browser, replay_script(), calls) == []
    if request.node.parent.runs_whole(request.session.items):
        functions, different = LEAST[told(request.node.path)]
        assert len(calls.functions()) >= functions
        assert len(calls.results) >= different
