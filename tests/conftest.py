"""
What holds for all tests: a formula test says where its expected value comes from, or does not run;
how tests are shared out; the seed of the laws; one browser a process.
"""

import os
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, sync_playwright
from playwright.sync_api import Error as BrowserError
from xdist.scheduler import LoadScopeScheduling

from tests.laws import HOW_MUCH, repeating, seed
from tests.remembering import remember

settings.register_profile("no clock", deadline=None)
settings.load_profile("no clock")
# A deadline would measure the machine, and a busy one would fail the tests.

GENERATED_BY = "hypothesis_seed"
"""The option of Hypothesis's own plugin."""
CHROMIUM = Path("/usr/bin/chromium")
QUIET = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--no-first-run",
]

TOGETHER = {
    "tests/site/test_check_page.py": "check your show",
    "tests/site/test_check_weight.py": "check your show",
    "tests/site/test_demo.py": "the demo's site",
    "tests/site/test_rows.py": "the demo's site",
    "tests/site/test_search.py": "the demo's site",
}
"""Files of which several look at one site, by what they look at: each group makes the site once."""


class TogetherByFile(LoadScopeScheduling):
    """
    A file's tests run in one process, so that what they share is made once; so do those that
    look at one site. Laws run one by one when many cases are asked of them, for one law may
    take as long as all others.
    """

    def _split_scope(self, nodeid: str) -> str:
        if HOW_MUCH in os.environ:
            return nodeid
        file = nodeid.split("::", 1)[0]
        return TOGETHER.get(file, file)


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> TogetherByFile:
    """
    How tests are shared out among processes.

    The package's own groups by mark (`--dist loadgroup`) do nothing under pytest 9.2.
    """
    return TogetherByFile(config, log)


@pytest.hookimpl(tryfirst=True)
def pytest_configure(config: pytest.Config) -> None:
    """
    Draw the seed before other processes start, so that all have the same, and give it to what
    Hypothesis draws too: a run is repeated by its seed alone.
    """
    drawn = seed()
    if config.getoption(GENERATED_BY) is None:
        setattr(config.option, GENERATED_BY, str(drawn))


def pytest_runtest_setup() -> None:
    """What departments publish is kept for the tests that follow."""
    remember()


def pytest_terminal_summary(terminalreporter: Any) -> None:
    """Tell how to draw the same cases of the laws again."""
    terminalreporter.write_line(repeating())


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Refuse a formula test that names neither a source nor a law."""
    bare = [
        item.nodeid
        for item in items
        if "tests/formulas/" in item.nodeid and not names_its_ground(item)
    ]
    if bare:
        listed = "\n  ".join(sorted(bare)[:20])
        raise pytest.UsageError(
            f"{len(bare)} formula tests name no source: mark each with @pytest.mark.source('where"
            f" the value is from') or @pytest.mark.law.\n  {listed}"
        )


def names_its_ground(item: pytest.Item) -> bool:
    """True where a test has a source with text, or is a law for all inputs."""
    source = item.get_closest_marker("source")
    return item.get_closest_marker("law") is not None or (
        source is not None and bool(source.args) and bool(str(source.args[0]).strip())
    )


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """
    Chromium. Without it tests are left out, unless HOUSEPACK_BROWSER=required says that they must
    run.
    """
    with sync_playwright() as playwright:
        try:
            found = playwright.chromium.launch(
                executable_path=CHROMIUM if CHROMIUM.exists() else None, args=QUIET
            )
        except BrowserError as failure:
            if os.environ.get("HOUSEPACK_BROWSER") == "required":
                pytest.fail(
                    "HOUSEPACK_BROWSER=required, but Chromium does not start:"
                    f" {failure.message.splitlines()[0]}"
                )
            pytest.skip(
                "Chromium is not installed; HOUSEPACK_BROWSER=required makes this a failure."
            )
        yield found
        found.close()
